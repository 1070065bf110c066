//! Several things named in a sentence.

/// `a`, `a and b`, `a, b and c`.
pub fn series<T: AsRef<str>>(parts: &[T]) -> String {
    let words = |parts: &[T]| parts.iter().map(AsRef::as_ref).collect::<Vec<&str>>().join(", ");
    match parts {
        [before @ .., last] if !before.is_empty() => format!("{} and {}", words(before), last.as_ref()),
        few => words(few),
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
}
