//! Tells at a glance that a key is not written, as most of those that are asked for are not.

/// A Bloom filter of keys: a bit for the length of each and its outer letters.
#[derive(Clone, Copy, Debug, Default)]
pub struct KeyFilter(u64);

impl KeyFilter {
    /// Takes a key in.
    pub fn add(&mut self, key: &str) {
        self.0 |= bit(key);
    }

    /// Whether the key may be among those taken in: never no for one that is.
    pub fn may_hold(self, key: &str) -> bool {
        self.0 & bit(key) != 0
    }
}

fn bit(key: &str) -> u64 {
    let (first, last) = (key.bytes().next().unwrap_or_default(), key.bytes().next_back().unwrap_or_default());
    1 << ((key.len() ^ usize::from(first) ^ (usize::from(last) << 3)) % 64)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_that_was_taken_in_may_be_there_and_most_others_are_not() {
        let mut filter = KeyFilter::default();
        assert!(!filter.may_hold("maker") && !filter.may_hold(""));
        ["maker", "model", "", "Höhe", "…"].iter().for_each(|key| filter.add(key));
        assert!(["maker", "model", "", "Höhe", "…"].iter().all(|key| filter.may_hold(key)));
        assert!(["size", "finish", "price"].iter().any(|key| !filter.may_hold(key)));
    }
}
