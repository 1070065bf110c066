//! What of the pages is not worded in their language.

use crate::assess::rules::{Check, declare};

declare! {
    /// Findings and cautions that are not worded in a language of the pages
    ///
    /// ## What it checks
    /// Whether the book asks for pages in a language in which some findings or cautions have no words. All
    /// else that pages, sheets, drawings and forms say of their own is worded in each language of the
    /// theme. A finding or a caution that is not stands in English on such a page, marked as English. What
    /// the designer writes stands as it is written.
    ///
    /// ## Why it matters
    /// A caution that its reader can't read protects nobody.
    ///
    /// ## Remedy
    /// Say to whoever signs or installs what the English ones mean, cautions first.
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
