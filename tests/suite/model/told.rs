//! A history and what the program makes of it, as one line of JSON.

use bookmatch::assess::approval::{ApprovalState, Approvals, ApproverDecision, HoldReason, ItemApproval};
use bookmatch::book::Book;
use bookmatch::ledger::{Issue, IssuedItem, MomentFault};
use bookmatch::vocabulary::Version;
use serde_json::{Value, json};

use super::books::Books;
use super::history::History;

/// Every state that an item may be in.
pub const STATES: [&str; 12] = [
    "not asked",
    "waiting",
    "unsigned",
    "approved by some",
    "not agreed",
    "changed since signed",
    "to be revised",
    "rejected",
    "approved as noted",
    "approved, and held",
    "came otherwise than approved",
    "approved",
];

/// A history with what it came to.
pub fn line(number: u64, history: &History, books: &Books, came_to: Value) -> Value {
    let lines = history.lines.iter().map(|line| json!({"line": line.number, "at": line.at, "fact": line.fact}));
    let shown = |version: Version| {
        let items = books.items(&history.stand, version, version).iter();
        items.map(|item| json!({"room": item.room, "item": item.item, "mark": item.mark})).collect::<Vec<_>>()
    };
    let versions = Version::ALL.map(shown);
    json!({
        "history": number,
        "lines": lines.collect::<Vec<_>>(),
        "issues": history.issues.iter().map(issue).collect::<Vec<_>>(),
        "now": {"terms": books.terms(&history.stand), "by version": versions},
        "came to": came_to,
    })
}

/// An issue, its contents by their marks.
fn issue(issue: &Issue) -> Value {
    let item = |item: &IssuedItem| json!({"room": item.room, "item": item.item, "tag": item.tag, "name": item.name, "mark": item.mark, "also": item.also});
    let items: Vec<Value> = issue.items.iter().map(item).collect();
    json!({"number": issue.number, "for": issue.purpose, "on": issue.on, "terms": issue.terms, "items": items})
}

/// What the program makes of a book.
pub fn came_to(book: &Book) -> Value {
    let approvals = Approvals::of(book);
    let items = book.selections().map(|(room, selection)| {
        let orderable = approvals.is_orderable(room, selection);
        let told = approvals.item(room, selection).map_or(json!({}), item);
        json!({"room": room.folder, "item": selection.id, "orderable": orderable, "told": told})
    });
    let withdrawn = approvals.withdrawn.iter().map(|gone| {
        json!({"room": gone.room, "tag": gone.tag, "name": gone.name, "issue": gone.issue, "approved by": gone.approved_by})
    });
    let unsigned = approvals.unsigned.iter().map(|one| {
        let waiting: Vec<Value> = one.waiting.iter().map(|one| json!([one.response, one.issue, one.items])).collect();
        json!({"who": one.who, "name": one.name, "waiting": waiting})
    });
    let odd = approvals.odd.iter().map(|(line, odd)| json!([line.number, fault(*odd)]));
    json!({
        "items": items.collect::<Vec<_>>(),
        "withdrawn": withdrawn.collect::<Vec<_>>(),
        "unsigned": unsigned.collect::<Vec<_>>(),
        "odd": odd.collect::<Vec<_>>(),
        "held": approvals.held.iter().map(held).collect::<Vec<_>>(),
        "ahead": approvals.ahead.map(|ahead| json!([ahead.issue, ahead.on, ahead.made])),
    })
}

fn item(item: &ItemApproval) -> Value {
    let whose = match &item.standing {
        ApprovalState::Partly(whose)
        | ApprovalState::Stale(whose)
        | ApprovalState::Revise(whose)
        | ApprovalState::Rejected(whose)
        | ApprovalState::Condition(whose) => whose.clone(),
        _ => vec![],
    };
    json!({
        "state": item.standing.word(),
        "whose": whose,
        "asked": item.asked,
        "waits for": item.waits_for,
        "chosen": item.chosen(),
        "words": item.words.iter().map(word).collect::<Vec<_>>(),
    })
}

fn word(word: &ApproverDecision) -> Value {
    json!({
        "who": word.who,
        "decision": word.decision.words(),
        "option": word.option,
        "response": word.response,
        "known": word.given.is_known(),
        "holds": word.holds,
        "on other terms": word.on_other_terms,
        "names no option": word.lacks_option,
        "met": word.met,
        "not known which": word.rivals.iter().map(|(decision, option)| json!([decision.words(), option])).collect::<Vec<_>>(),
    })
}

const fn fault(odd: MomentFault) -> &'static str {
    match odd {
        MomentFault::Ahead => "ahead",
        MomentFault::BeforeIssue(_) => "before its issue",
        MomentFault::Backwards => "backwards",
    }
}

fn held(held: &HoldReason) -> Value {
    match held {
        HoldReason::Terms(_, changes) => json!(["terms", changes.len()]),
        HoldReason::MadeLater { on, made, .. } => json!(["made later", on, made]),
        HoldReason::BeforeAnother { other: (number, day), .. } => json!(["before another", number, day]),
    }
}
