//! A length without its unit.

use crate::assess::rules::{Check, declare};

declare! {
    /// A length has no unit
    ///
    /// ## What it checks
    /// Every length says its unit: inches, feet, millimetres, centimetres or metres.
    ///
    /// ## Why it matters
    /// A length with no unit is how expensive mistakes begin: 36 may be inches to whoever writes it
    /// and centimetres to whoever reads it.
    ///
    /// ## Remedy
    /// Write its unit after it: `…"`, `…'` or `… mm`.
    ///
    /// ## Example
    /// ```yaml
    /// width: 36     # 36" or 36 mm?
    /// ```
    ///
    /// ## Source
    /// The book's own format; the inch is `25.4 mm` exactly (NIST SP 811).
    "source/bare-length", Stop,
    due: AtOnce, tells: [],
    sources: ["the book's own format", "NIST SP 811"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_bare_number_says_how_to_write_it() {
        let found = Trial::of("source/bare-length").room("floor build-up: 36").finds("`36` has no unit");
        found.remedies("write `36\"` for inches or `36 mm` for millimetres");
        for written in ["36\"", "36 mm", "3'", "36 in", "3.6 cm"] {
            Trial::of("source/bare-length").room(&format!("floor build-up: {written}")).stays_silent();
        }
    }

    #[test]
    fn each_bare_reading_of_a_list_is_told() {
        Trial::of("source/bare-length").opening("a", "{takes: range, width: [30, 30\", 31]}").run().counts(2);
    }
}
