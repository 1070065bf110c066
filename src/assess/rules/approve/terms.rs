//! Who must approve, changed after it was asked.

use super::ordered;
use crate::assess::approval::{ApprovalState, HoldReason, TermsChange};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, Term, TermMoved, money_terms, of_money};
use crate::finding::{Phrase, Remark, phrase};

declare! {
    /// Who must approve has changed since the issue
    ///
    /// ## What it checks
    /// Whether `approvers` and `approval` are what they were when the newest issue for approval was made:
    /// each issue states them. While they differ, nothing counts as approved to be ordered. An id that
    /// bears another name than in the issue that was answered is another person's: what was signed under
    /// the first name is not theirs. A query; an item that is ordered stops the work. The rate of tax and the allowances
    /// are told likewise where they are others than in that issue: what was approved stands, and its sum is another.
    ///
    /// ## Why it matters
    /// Whoever signs signs on terms: that both must, or that one may. To strike out an owner, or to let one
    /// do, after the signatures are there is to order on what nobody agreed to.
    ///
    /// ## Remedy
    /// Put `approvers` and `approval` back as they were; or issue the book again, so that the new terms are
    /// on record and on the pages: `bookmatch issue --for approval`. What all had signed who had to stands then; what
    /// some of them had signed is asked again of all who decide now.
    ///
    /// ## Example
    /// ```text
    /// who must approve changed since issue 1: `approval` from `all` to `any`
    /// ```
    ///
    /// ## Source
    /// Trade practice: all who decide must agree, in writing.
    "approve/terms", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(money(context));
    let terms = context.approvals.held.iter().find_map(|held| match held {
        HoldReason::Terms(issue, changes) => Some((issue, changes)),
        _ => None,
    });
    let Some((issue, changes)) = terms else { return };
    let approvers = &context.book.project.approvers;
    let of_who = changes.iter().any(TermsChange::is_of_who);
    let of_prices = !changes.iter().all(TermsChange::is_of_who);
    let what = match (of_who, of_prices) {
        (true, true) => "who must approve, and what the prices are that they approve,",
        (false, true) => "what the prices are that are approved",
        (_, false) => "who must approve",
    };
    let told = Phrase::joined(changes.iter().map(TermsChange::words), "; ");
    let message = phrase!("{what} changed since issue {issue}: {told}", what, issue, told);
    let remedy = "put it back as it was, or issue the book again: `bookmatch issue --for approval`";
    let file = crate::source::Place::Path("record/ledger.jsonl".into());
    let place = approvers.first().map_or(file, |approver| approver.id.span.into());
    findings.push(Remark::query(place, message).remedy(remedy));
    for (room, selection) in context.book.selections() {
        let held = context.approvals.item(room, selection).is_some_and(|item| item.standing == ApprovalState::Held);
        if held {
            let why = if of_who {
                "and who must approve changed since it was asked"
            } else {
                "and what its price is changed since it was asked"
            };
            findings.extend(ordered(context, (room, selection), why));
        }
    }
}

/// The rate of tax or an allowance that is another one than those who approve were shown.
fn money(context: &Context<'_>) -> Option<Remark> {
    let (number, _) = context.approvals.issue?;
    let issue = context.book.record.issues.get(&number)?;
    let project = &context.book.project;
    // What could not be read has been told, and is not gone.
    if context.book.project_partly_unread || !context.book.not_read().is_empty() {
        return None;
    }
    let now = money_terms(context.book);
    let currency = project.currency.map_or(issue.currency.as_str(), |currency| currency.code());
    let moved: Vec<TermMoved> = of_money((issue.money.as_ref()?, &issue.currency), (&now, currency)).collect();
    let first = moved.first()?;
    let of_tax = || project.tax.span().filter(|_| first.what == Term::Tax);
    let called = project.allowances.iter().find(|allowed| match &first.what {
        Term::Allowance(name) | Term::AllowanceIncludes(name) => allowed.name.value == *name,
        _ => false,
    });
    let file = crate::source::Place::Path("book.yaml".into());
    let place = of_tax().or_else(|| called.map(|allowed| allowed.name.span)).map_or(file, Into::into);
    let told = Phrase::joined(moved.iter().map(TermMoved::words), "; ");
    let message = phrase!("what was agreed of money changed since issue {number}: {told}", number, told);
    let remedy = "put it back as it was, or issue the book again, so that its change order tells it: `bookmatch issue \
                  --for approval`";
    Some(Remark::query(place, message).remedy(remedy))
}
