//! What of the pages is not worded in their language.

use crate::assess::rules::{Check, declare};

declare! {
    /// Findings that are not worded in a language of the pages
    ///
    /// ## What it checks
    /// Whether the book asks for pages in a language other than English, in which findings have no words
    /// yet. They stand in English on such a page, marked as English; so do the pages of the office. All
    /// else that the client's pages, the sheets, drawings and forms say of their own, cautions too, is
    /// worded in each language of the theme. What the designer writes stands as it is written.
    ///
    /// ## Why it matters
    /// A finding that its reader can't read helps nobody.
    ///
    /// ## Remedy
    /// Say to whoever signs or installs what the English ones mean.
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
    fn a_language_says_what_of_it_stays_english() {
        let book = |languages: &str| Trial::of("complete/language").book(&format!("languages: {languages}"));
        book("[es]").finds_one().weighs("note");
        book("{client: es, installer: [es, en], office: en}").finds_one();
        book("[en]").stays_silent();
        book("en").stays_silent();
        book("[en, es]").finds_one().weighs("note");
    }
}
