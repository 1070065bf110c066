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
    sources: ["common practice"],
    caution: None,
    Check::Reading
}
