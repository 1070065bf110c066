//! A number on drawings that is not the one that was issued.

use crate::assess::rules::{Check, declare};

declare! {
    /// A tag is written otherwise than it was issued, or was issued for another thing
    ///
    /// ## What it checks
    /// Tags that the book writes, against those of its issues. What was issued keeps its number by
    /// itself, wherever in the folder it stands and whatever is added later; a number that was issued
    /// once is given to nothing else, though its thing may be gone.
    ///
    /// ## Why it matters
    /// Sheets, orders and cartons bear the number. A K-05 that was the hood in January and is the sink in
    /// March is opened, fitted and paid for as the wrong thing.
    ///
    /// ## Remedy
    /// Write the number as it was issued, or take the tag out: the thing keeps its own.
    ///
    /// ## Example
    /// ```yaml
    /// selection: Hood
    /// tag: K-06     # issued as K-05
    /// ```
    ///
    /// ## Source
    /// Trade practice: a number on drawings is never used again.
    "source/tag", Stop,
    due: AtOnce, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::approve::tests::{BOTH, issued};
    use crate::assess::rules::trial::Trial;

    /// The range was issued as K-01 and the cabinets as K-02; then the book writes this of the range.
    fn range(now: &str) -> Trial {
        issued(BOTH, "").now("source/tag", now)
    }

    #[test]
    fn a_tag_written_otherwise_than_it_was_issued_is_told_where_it_stands() {
        range("tag: K-09")
            .finds("`Range` was issued as `K-01`, and its tag is `K-09` now")
            .weighs("stop")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:6"])
            .remedies("write `K-01` after `tag`, or take the tag out: it keeps its number");
        range("tag: K-01").stays_silent();
        range("").stays_silent();
    }

    #[test]
    fn a_number_that_was_issued_is_given_to_nothing_else() {
        let sink =
            |tag: &str| range("").file("rooms/kitchen/sink.yaml", format!("selection: Sink\nkind: sink\ntag: {tag}\n"));
        sink("K-02")
            .finds("the tag `K-02` was issued for `cabinets`, and `Sink` bears it now")
            .points_at(&["rooms/kitchen/sink.yaml:3:6"]);
        sink("K-07").stays_silent();
    }
}
