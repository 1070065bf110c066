//! Letters in place of numbers.

/// A to Z, then AA, AB and so on: no two places have one letter.
pub fn letter(at: usize) -> String {
    let last = u8::try_from(at % 26).map_or('A', |at| char::from(b'A' + at));
    match at / 26 {
        0 => last.to_string(),
        more => format!("{}{last}", letter(more - 1)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_go_on_after_z() {
        assert_eq!([letter(0), letter(25), letter(26), letter(53)], ["A", "Z", "AA", "BB"]);
    }
}
