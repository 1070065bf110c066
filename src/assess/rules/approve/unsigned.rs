//! Responses that bear no key.

use crate::assess::Context;
use crate::assess::rules::{Check, declare};
use crate::finding::{Finding, Severity};

declare! {
    /// A response bears no key, and nobody has confirmed it
    ///
    /// ## What it checks
    /// Responses that did not come by a private link: they are recorded, shown as unsigned, and count
    /// for nothing until the designer has confirmed them with the person.
    ///
    /// ## Why it matters
    /// Anyone who has the page can type a name.
    ///
    /// ## Remedy
    /// Ask the person by another way, and record it: `bookmatch receive --confirm DIGITS --by NAME`.
    /// Private links (`bookmatch invite`) spare the asking.
    ///
    /// ## Example
    /// ```text
    /// a response for Ada Marrowby to issue 1 (12 items) bears no key
    /// ```
    ///
    /// ## Source
    /// The record's own format: a response by private link is authenticated with HMAC-SHA-256 (RFC 2104).
    "approve/unsigned", Query,
    sources: ["RFC 2104"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    let approvers = &context.book.project.approvers;
    for unsigned in &context.approvals.unsigned {
        let approver = approvers.iter().find(|approver| approver.name == unsigned.who).or(approvers.first());
        let Some(approver) = approver else { continue };
        let items = if unsigned.items == 1 { "1 item".to_string() } else { format!("{} items", unsigned.items) };
        let message = format!("a response for {} to issue {} ({items}) bears no key", unsigned.who, unsigned.issue);
        let digits: String = unsigned.response.to_string().chars().take(8).collect();
        let remedy = format!(
            "ask the person, and record it: `bookmatch receive --confirm {digits} --by NAME`; or don't count it"
        );
        findings.push(Finding::new(RULE.code, Severity::Query, approver.id.span, message).remedy(remedy));
    }
}
