//! Words that are near to what was written, and when it is certain which one is meant.

use super::words_of;

/// The most names that one that is nobody's is compared with.
const MOST_COMPARED: usize = 500;

/// The known word that is nearest to what was written, if one is near.
pub fn nearest<'k>(written: &str, known: impl Iterator<Item = &'k str>) -> Option<&'k str> {
    near(written, known).min_by_key(|(distance, _)| *distance).map(|(_, word)| word)
}

/// The known word that is meant beyond doubt: the only one that is near.
pub fn only_near<'k>(written: &str, known: impl Iterator<Item = &'k str>) -> Option<&'k str> {
    let mut near = near(written, known).map(|(_, word)| word);
    let first = near.next()?;
    near.all(|other| other == first).then_some(first)
}

/// The known word that is the same but for its case and for what stands between its parts: `Wall Oven`, `wall_oven`.
pub fn same_but_for_case<'k>(written: &str, known: impl Iterator<Item = &'k str>) -> Option<&'k str> {
    let written = plain(written);
    let mut same = known.filter(|word| plain(word) == written);
    let first = same.next()?;
    same.all(|other| other == first).then_some(first)
}

/// Words that only join others.
const JOINING: [&str; 14] =
    ["of", "to", "the", "with", "for", "at", "in", "from", "a", "an", "its", "incl", "including", "and"];

/// The only known word of several parts that has the parts of what was written, whatever their order and what joins
/// them: `hinge height` for `height to hinge`.
pub fn of_the_same_words<'k>(written: &str, known: impl Iterator<Item = &'k str>) -> Option<&'k str> {
    let parts = |word: &str| -> Vec<String> {
        let mut parts: Vec<String> =
            words_of(word).into_iter().filter(|part| !JOINING.contains(&part.as_str())).collect();
        parts.sort_unstable();
        parts
    };
    let wanted = parts(written);
    let several = words_of(written).len() > 1 && !wanted.is_empty();
    let mut same = known.filter(|word| several && parts(word) == wanted);
    let first = same.next()?;
    same.all(|other| other == first).then_some(first)
}

/// Whether a word can stand in a file as it is, without quotes.
pub fn is_plain(word: &str) -> bool {
    let mut letters = word.chars();
    letters.next().is_some_and(char::is_alphabetic)
        && letters.all(|letter| letter.is_alphanumeric() || matches!(letter, ' ' | '-' | '_'))
}

fn plain(word: &str) -> String {
    word.to_lowercase().replace(['_', '-'], " ")
}

/// The known words that are near, each with how far it is.
fn near<'k>(written: &str, known: impl Iterator<Item = &'k str>) -> impl Iterator<Item = (usize, &'k str)> {
    let written = plain(written);
    let length = written.chars().count();
    let allowed = (length / 3).clamp(1, 3);
    // In a book of thousands of names thousands may be wrong.
    known
        .take(MOST_COMPARED)
        .filter(move |word| word.chars().count().abs_diff(length) <= allowed)
        .map(move |word| (strsim::damerau_levenshtein(&written, &plain(word)), word))
        .filter(move |(distance, _)| *distance <= allowed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_meant_is_certain_where_one_word_alone_is_near() {
        let known = || ["width", "height", "depth"].into_iter();
        assert_eq!((nearest("widht", known()), only_near("widht", known())), (Some("width"), Some("width")));
        let two = || ["left", "lefts"].into_iter();
        assert_eq!((nearest("leftt", two()).is_some(), only_near("leftt", two())), (true, None));
        assert_eq!(same_but_for_case("Wall_Oven", ["wall oven", "range"].into_iter()), Some("wall oven"));
        assert_eq!(same_but_for_case("wal oven", ["wall oven"].into_iter()), None);
    }

    #[test]
    fn a_word_is_plain_when_a_file_may_hold_it_without_quotes() {
        assert!(is_plain("wall oven") && is_plain("K-04"));
        assert!(!is_plain("a: b") && !is_plain("4 seats") && !is_plain("#1") && !is_plain(""));
    }
}
