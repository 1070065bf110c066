//! Responses that bear no key.

use crate::assess::Context;
use crate::assess::approval::{Unsigned, WaitingResponse};
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, phrase};
use crate::units::Wrote;

declare! {
    /// Responses bear no key, and nobody has confirmed them
    ///
    /// ## What it checks
    /// Responses that did not come by a private link: they are recorded, and count for nothing until the
    /// designer has confirmed them with the person. One that is not theirs is left out for good, until it is
    /// confirmed all the same: of the two, what was recorded later counts. At most 20 wait in one name, 60 in
    /// all and 4 MiB in all; what comes in beyond is not taken, and whoever sends it is told so. Answers by
    /// private link are never held up by them.
    ///
    /// ## Why it matters
    /// Anyone who has the page can type a name.
    ///
    /// ## Remedy
    /// Ask the person by another way, and record what they say: `bookmatch receive --confirm DIGITS --by NAME`,
    /// or `bookmatch receive --not-theirs DIGITS --by NAME`, which may name several.
    /// Private links (`bookmatch invite`) spare the asking.
    ///
    /// ## Example
    /// ```text
    /// a response for Ada Marrowby to issue 1 (12 items) bears no key
    /// ```
    ///
    /// ## Source
    /// The record's own format: a response by private link is authenticated with HMAC-SHA-256 (RFC 2104). The
    /// limits are of our own choice.
    "approve/unsigned", Query,
    due: WithThing, tells: [],
    sources: ["RFC 2104"],
    caution: None,
    Check::Book(check)
}

/// So many are named by their digits.
const NAMED: usize = 3;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let approvers = &context.book.project.approvers;
    for unsigned in &context.approvals.unsigned {
        let approver = approvers.iter().find(|approver| approver.id.value == unsigned.who).or(approvers.first());
        let Some(approver) = approver else { continue };
        let remedy = match unsigned.waiting.as_slice() {
            [one] => {
                let digits = one.response.short(8);
                phrase!(
                    "ask the person, and record what they say: `bookmatch receive --confirm {digits} --by NAME`, or \
                     `--not-theirs {digits}`; until then it counts for nothing",
                    digits,
                    digits
                )
            }
            several => phrase!(
                "ask the person, and record what they say of each: `bookmatch receive --confirm DIGITS --by NAME`, or \
                 `--not-theirs DIGITS`, which may name several; their digits: {}; until then they count for nothing",
                digits(several)
            ),
        };
        findings.push(Remark::query(approver.id.span, message(unsigned)).remedy(remedy));
    }
}

fn message(unsigned: &Unsigned) -> Phrase {
    let name = Wrote(&unsigned.name);
    match unsigned.waiting.as_slice() {
        [one] => {
            let items = if one.items == 1 { Phrase::from("1 item") } else { phrase!("{} items", one.items) };
            phrase!("a response for {name} to issue {} ({items}) bears no key", name, one.issue, items)
        }
        several => phrase!("{} responses for {name} bear no key", several.len(), name),
    }
}

/// "1a2b3c4d, 5e6f7081, 92a3b4c5, and 17 more on the office's first page".
fn digits(waiting: &[WaitingResponse]) -> Phrase {
    let named = waiting.iter().take(NAMED).map(|one| phrase!("{}", Wrote(&one.response.short(8))));
    match waiting.len().saturating_sub(NAMED) {
        0 => Phrase::joined(named, ", "),
        more => phrase!("{}, and {more} more on the office's first page", Phrase::joined(named, ", "), more),
    }
}
