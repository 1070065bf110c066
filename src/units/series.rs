//! Several things named in a sentence.

/// `a`, `a and b`, `a, b and c`.
pub fn series<T: AsRef<str>>(parts: &[T]) -> String {
    let words = |parts: &[T]| parts.iter().map(AsRef::as_ref).collect::<Vec<&str>>().join(", ");
    match parts {
        [before @ .., last] if !before.is_empty() => format!("{} and {}", words(before), last.as_ref()),
        few => words(few),
    }
}

/// `a, b and c`; of more than `most` the first ones, and how many more there are: `a, b and 3 more`.
pub fn series_of_most<T: AsRef<str>>(parts: &[T], most: usize) -> String {
    let first: Vec<&str> = parts.iter().take(most).map(AsRef::as_ref).collect();
    match parts.len().saturating_sub(most) {
        0 => series(&first),
        more => format!("{} and {more} more", first.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_is_joined_by_and() {
        assert_eq!(series::<&str>(&[]), "");
        assert_eq!(series(&["a"]), "a");
        assert_eq!(series(&["a", "b"]), "a and b");
        assert_eq!(series(&["a", "b", "c"]), "a, b and c");
    }

    #[test]
    fn of_many_the_first_are_named_and_the_rest_counted() {
        assert_eq!(series_of_most(&["a", "b", "c"], 3), "a, b and c");
        assert_eq!(series_of_most(&["a", "b", "c", "d", "e"], 3), "a, b, c and 2 more");
    }
}
