//! A rule whose check failed.

use crate::assess::rules::{Check, declare};

declare! {
    /// A rule's check failed on this book, so that nothing was checked by it
    ///
    /// ## What it checks
    /// That every rule came to its end. The other rules are not touched by one that fails.
    ///
    /// ## Why it matters
    /// What was not checked is not known to be right. It can't be waived; the rule's caution stands.
    ///
    /// ## Remedy
    /// The fault is in `bookmatch`, not in the book: report it, with the smallest book that shows it. Until
    /// it is mended check by hand what the rule's page (`bookmatch explain RULE`) says.
    ///
    /// ## Example
    /// ```yaml
    /// # no book should bring this about
    /// ```
    ///
    /// ## Source
    /// What is not known is not passed (common practice).
    "source/unchecked", Stop,
    due: AtOnce, tells: [],
    sources: ["common practice"],
    caution: None,
    remedy: "this is a fault in bookmatch: report it with the smallest book \
    that shows it; until then check by hand what `bookmatch explain` says of the rule",
    Check::Reading
}
