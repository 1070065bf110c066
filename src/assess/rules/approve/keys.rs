//! Keys that others can read.

use crate::assess::rules::{Check, declare};

declare! {
    /// Others on this computer can read an approver's key
    ///
    /// ## What it checks
    /// Whether the keys in `record/keys`, and that folder, are for their owner alone, where the system
    /// keeps such rights.
    ///
    /// ## Why it matters
    /// Whoever has a key decides in that person's name.
    ///
    /// ## Remedy
    /// Take the right from others: `chmod -R go= record/keys`. Where somebody may have read a key, make a new
    /// one with `bookmatch invite --renew WHO`, and send the new link.
    ///
    /// ## Example
    /// ```text
    /// others on this computer can read `record/keys/ada.key`
    /// ```
    ///
    /// ## Source
    /// The record's own rule: keys are written for their owner alone (mode 600).
    "approve/keys", Query,
    due: WithThing, tells: [],
    sources: ["the record's own rule"],
    caution: None,
    Check::Reading
}
