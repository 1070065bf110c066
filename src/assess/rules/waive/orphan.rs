//! A waiver that meets nothing.

use crate::assess::rules::{Check, declare};

declare! {
    /// A waiver sets nothing aside any more
    ///
    /// ## What it checks
    /// Every waiver against what its rule finds at the place where the waiver stands. A room of which
    /// a file could not be read is left alone.
    ///
    /// ## Why it matters
    /// The fault was mended, or moved. A waiver that waits for it sets the next fault aside, which
    /// nobody has looked at.
    ///
    /// ## Remedy
    /// Take the waiver out; or, where the finding stands elsewhere, move it there.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   range: {takes: range, width: 30 1/4", waive: [{rule: fit/width, …}]}     # it fits now
    /// ```
    ///
    /// ## Source
    /// The book's own format.
    "waive/orphan", Query,
    due: GoodsOrdered, tells: [],
    sources: ["the book's own format"],
    caution: None,
    Check::OfWaivers
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    const WAIVER: &str = "{rule: fit/width, because: to be eased, by: Ines, on: 2027-01-02}";

    fn range(width: &str) -> Trial {
        Trial::of("waive/orphan")
            .opening("range", &format!("{{takes: range, width: {width}, waive: [{WAIVER}]}}"))
            .selection("selection: Range\nkind: range\nplace: range", "size: {width: 30\"}")
    }

    #[test]
    fn a_waiver_whose_fault_was_mended_is_told() {
        range("29 7/8\"").stays_silent();
        range("30 1/4\"").finds("the waiver of `fit/width` by Ines (2 Jan 2027) sets nothing aside any more");
    }

    #[test]
    fn a_waiver_that_is_past_and_meets_nothing_is_told_once() {
        let past = WAIVER.replace("2027-01-02", "2027-01-02, until: 2027-01-03");
        let trial =
            |rule| Trial::of(rule).selection(&format!("selection: Rug\nkind: rug\nwaive: [{past}]"), "finish: wool");
        trial("waive/orphan").finds_one();
        trial("waive/expired").stays_silent();
    }

    #[test]
    fn a_waiver_of_the_whole_book_is_of_use_when_it_meets_one_finding() {
        let book = format!("waive: [{WAIVER}]");
        let trial = |width: &str| {
            Trial::of("waive/orphan")
                .book(&book)
                .opening("range", &format!("{{takes: range, width: {width}}}"))
                .selection("selection: Range\nkind: range\nplace: range", "size: {width: 30\"}")
        };
        trial("29\"").stays_silent();
        trial("31\"").finds_one();
    }
}
