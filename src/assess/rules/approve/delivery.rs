//! Deliveries that nobody has confirmed.

use std::sync::Arc;

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, phrase};
use crate::ledger::Received;
use crate::source::Place;
use crate::units::Wrote;

declare! {
    /// A delivery was received, and nobody has confirmed it
    ///
    /// ## What it checks
    /// What was handed over of deliveries, and the designer has neither confirmed nor taken back. Nothing counts
    /// as received as approved until then; what came damaged or different is told by `order/claim` at once.
    ///
    /// ## Why it matters
    /// Anyone who has the pages of the trades can say that something came. Things are set by it.
    ///
    /// ## Remedy
    /// Ask who received it, and record it: `bookmatch receive --confirm DIGITS --by NAME`. What is wrong is
    /// taken back, before or after: `bookmatch receive --withdraw DIGITS --by NAME`.
    ///
    /// ## Example
    /// ```text
    /// 3 items of Oren & Daughters (4711), received by Teo Varrick on 3 Apr 2027, wait to be confirmed
    /// ```
    ///
    /// ## Source
    /// Trade practice: whoever answers for the order answers for its receipt.
    "approve/delivery", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.approvals.deliveries.waiting.iter().map(told));
}

fn told(received: &Arc<Received>) -> Remark {
    let count = received.items.len();
    let items: Phrase = if count == 1 { "1 item".into() } else { phrase!("{count} items", count) };
    let (from, note) = (Wrote(&received.delivery.from), Wrote(&received.delivery.note));
    let of = if received.delivery.from.is_empty() {
        phrase!("{note}", note)
    } else {
        phrase!("{from} ({note})", from, note)
    };
    let message = phrase!(
        "{items} of {of}, received by {} on {}, {waits} to be confirmed",
        items,
        of,
        Wrote(&received.by),
        received.on,
        if count == 1 { Phrase::from("waits") } else { "wait".into() }
    );
    let digits = received.response.short(8);
    let remedy = phrase!(
        "ask who received it, and record it: `bookmatch receive --confirm {digits} --by NAME`, or take it back with \
         `--withdraw {digits}`; until then it counts for nothing",
        digits,
        digits
    );
    Remark::query(Place::Path("record/ledger.jsonl".into()), message).remedy(remedy)
}
