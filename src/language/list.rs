//! Several things in a row, as a language joins them.

/// How the last two of a row are joined, and the others.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Joins {
    /// Between two that are not the last.
    pub between: String,
    /// Before the last.
    pub last: String,
    /// Before a last one that begins with one of these letters, another word stands: Spanish has `e` for `y`
    /// before the sound `i`.
    pub before: Vec<Before>,
}

/// Another word before the last of a row, where that begins so.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Before {
    pub last: String,
    pub letters: Vec<String>,
    pub but_not: Vec<String>,
}

impl Joins {
    /// What stands before the last of a row, by how that begins.
    pub fn last_before(&self, last: &str) -> &str {
        let word = last.to_lowercase();
        let begins = |letters: &[String]| letters.iter().any(|start| word.starts_with(start.as_str()));
        let other = self.before.iter().find(|before| begins(&before.letters) && !begins(&before.but_not));
        other.map_or(&self.last, |before| &before.last)
    }

    /// What stands before each of a row but the first, by the texts of all.
    pub fn joints<'a>(&'a self, parts: &[String]) -> Vec<&'a str> {
        let last = parts.len().saturating_sub(1);
        let joint = |(at, part): (usize, &String)| if at == last { self.last_before(part) } else { &self.between };
        parts.iter().enumerate().skip(1).map(joint).collect()
    }
}
