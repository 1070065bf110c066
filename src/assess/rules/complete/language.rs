//! A language of the pages that is not whole yet.

use crate::assess::rules::{Check, declare};

declare! {
    /// The pages are only in part in the language that the book asks for
    ///
    /// ## What it checks
    /// Whether the book asks for `es`. The pages' own words are set in the first of its `languages`. In
    /// Spanish these are: headings, labels, buttons, and the words of signing, on screen and on paper. In
    /// English these remain: verdicts (`Fits`, `passes`), findings and their remedies, cautions, the
    /// lines under drawings, and sentences that are made from figures. What the designer writes stands as
    /// it is written.
    ///
    /// ## Why it matters
    /// A caution that its reader can't read protects nobody, and a sheet that is half in another
    /// language is signed without being understood.
    ///
    /// ## Remedy
    /// Give the English parts to whoever signs or installs in words of theirs, cautions first; or leave
    /// `es` out until it is whole.
    ///
    /// ## Example
    /// ```yaml
    /// languages: [es]
    /// ```
    ///
    /// ## Source
    /// The words of the standard theme.
    "complete/language", Note,
    due: WithThing, tells: [],
    sources: ["the words of the standard theme"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn spanish_says_what_it_covers() {
        let book = |languages: &str| Trial::of("complete/language").book(&format!("languages: [{languages}]"));
        let found = book("es").finds_one().weighs("note");
        assert!(
            found.findings()[0]
                .message
                .text()
                .contains("headings, labels, buttons and the words of signing are Spanish")
        );
        assert!(found.findings()[0].message.text().contains("cautions"));
        book("es, en").finds_one();
        book("en").stays_silent();
        book("en, es")
            .finds("the pages are set in the first of the languages alone, `en`; `es` is not used")
            .weighs("note");
    }
}
