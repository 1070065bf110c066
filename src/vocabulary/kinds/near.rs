//! The kinds that may be meant by a name that is none's.

use crate::finding::{Phrase, phrase};

use super::Kind;
use crate::vocabulary::{JOINS, nearest};

/// The most kinds that are offered.
const MOST_OFFERED: usize = 4;

/// One slip of the pen in so many letters: a short word that is near may be another thing.
const SLIP_IN: usize = 6;

/// The kinds whose own word is the one that the name ends with, or is near to it; where none is, those that share
/// a word with it.
pub fn near_kinds(name: &str) -> Phrase {
    let listed = "`bookmatch explain kinds` lists them all; `item` is for what has no kind of its own";
    let slip = |near: &&str| {
        let one_in = name.chars().count() / SLIP_IN;
        strsim::damerau_levenshtein(&name.to_lowercase(), &near.to_lowercase()) <= one_in.max(1)
    };
    if let Some(near) = nearest(name, Kind::ALL.iter().flat_map(|kind| kind.words())).filter(slip) {
        return phrase!("did you mean `{near}`?", near);
    }
    let near = [shared(parts(name).last().into_iter().collect(), true), shared(parts(name).collect(), false)]
        .into_iter()
        .find(|near| !near.is_empty());
    near.map_or(listed.into(), |near| {
        let named = Phrase::joined(near.into_iter().map(Phrase::name), ", ");
        phrase!("did you mean {}? {listed}", named, listed)
    })
}

/// The names of kinds that have one of these words, or end with it.
fn shared(written: Vec<&str>, at_the_end: bool) -> Vec<&'static str> {
    let has = |kind: &&Kind| {
        kind.words().any(|known| {
            let mut own = parts(known).skip(if at_the_end { parts(known).count().saturating_sub(1) } else { 0 });
            own.any(|own| written.iter().any(|word| is_same_word(word, own)))
        })
    };
    Kind::ALL.iter().filter(has).map(|kind| kind.name()).take(MOST_OFFERED).collect()
}

/// The words of a name, but for the shortest.
fn parts(name: &str) -> impl Iterator<Item = &str> {
    name.split(JOINS).filter(|word| word.chars().count() > 2)
}

/// Whether two words are one: but for case, an `s` at the end, or a slip of the pen.
fn is_same_word(one: &str, other: &str) -> bool {
    let plain = |word: &str| word.to_lowercase().trim_end_matches('s').to_owned();
    let (one, other) = (plain(one), plain(other));
    one == other || one.chars().count() > 4 && strsim::damerau_levenshtein(&one, &other) <= 1
}

#[cfg(test)]
mod tests {
    use super::near_kinds;

    #[test]
    fn a_slip_is_mended_and_another_thing_is_not_offered() {
        let offered = |name: &str| near_kinds(name).text().to_string();
        assert!(offered("celing light").contains("did you mean `ceiling light`?"));
        assert!(offered("refridgerator").contains("did you mean `refrigerator`?"));
        for name in ["humidor", "plinth"] {
            assert!(!offered(name).contains("did you mean"), "{name}: {}", offered(name));
        }
    }
}
