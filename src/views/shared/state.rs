//! States of decision, of fit and of a finding: a word and a shape, never a colour alone.

use crate::assess::approval::{ApprovalState, ApproverDecision, ItemApproval};
use crate::book::{Approver, Room, Selection};
use crate::finding::{Counts, Finding, Severity};
use crate::language::{Words, say};
use crate::ledger::Decision;
use crate::views::pages::PageBuilder;
use serde::Serialize;

/// A word and the shape that stands beside it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct State {
    pub shape: StateShape,
    /// What it is, and of whom, in the reader's words: `Waiting for Sven`.
    pub word: String,
}

impl State {
    /// A state in the given words.
    pub fn new(shape: StateShape, word: impl Into<String>) -> State {
        State { shape, word: word.into() }
    }
}

/// The shapes that the theme can draw, each for one meaning.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum StateShape {
    /// Solid disc with the tick cut out.
    Approved,
    /// Half a disc, and written lines.
    ApprovedAsNoted,
    /// Broken ring: nobody has decided yet.
    Waiting,
    /// Triangle with an exclamation mark: an earlier approval is void.
    ChangedSinceSigned,
    /// Ring that turns back.
    ReviseAndResubmit,
    /// Ring, crossed.
    Rejected,
    /// An opening with a thing inside it.
    Fits,
    /// An opening with a hatched thing that goes past it.
    DoesNotFit,
    /// An opening with a question in it: a figure is missing, or only a general default speaks.
    FitUnknown,
    /// A broken opening: not measured yet.
    NotMeasured,
    /// Solid octagon with a bar: a finding that stops the work.
    Stop,
    /// Ring with a question mark: a finding that wants an answer.
    Query,
    /// Written lines: advice.
    Note,
    /// A line drawn through: a finding that was waived.
    Waived,
}

impl StateShape {
    /// The decisions, in the order in which a page counts them.
    pub const DECISIONS: [StateShape; 6] = [
        StateShape::Approved,
        StateShape::ApprovedAsNoted,
        StateShape::Waiting,
        StateShape::ChangedSinceSigned,
        StateShape::ReviseAndResubmit,
        StateShape::Rejected,
    ];
}

impl PageBuilder<'_> {
    /// How far the decision on a selection has come. Before anything was issued nothing is approved, so
    /// every item waits: for a choice, or for signatures.
    /// What nobody has confirmed to be an approver's own is nothing yet.
    pub fn decision(&self, room: &Room, selection: &Selection) -> State {
        let item = self.subject.assessment.approvals.item(room, selection);
        let item = item.filter(|item| item.standing != ApprovalState::Unsigned);
        item.map_or_else(|| unissued(self.words, selection), |item| standing(self.words, item, selection))
    }

    /// How far the decision has come, for the office: what is to be confirmed is told.
    pub fn decision_for_office(&self, room: &Room, selection: &Selection) -> State {
        let item = self.subject.assessment.approvals.item(room, selection);
        item.map_or_else(|| unissued(self.words, selection), |item| standing(self.words, item, selection))
    }

    /// What one approver is known to have said of a selection.
    pub fn said_by(&self, approver: &Approver, room: &Room, selection: &Selection) -> State {
        self.known_word(&approver.id.value, room, selection)
            .map_or_else(|| unissued(self.words, selection), |word| self.stands_of(room, selection, word))
    }

    /// What somebody said of a selection in an approver's name, for the office.
    pub fn said_for_office(&self, approver: &Approver, room: &Room, selection: &Selection) -> State {
        let item = self.subject.assessment.approvals.item(room, selection);
        let word = item.and_then(|item| item.words.iter().find(|word| word.who == approver.id.value));
        word.map_or_else(|| unissued(self.words, selection), |word| self.stands_of(room, selection, word))
    }

    /// What somebody said; where another came than they approved, and was taken, that.
    fn stands_of(&self, room: &Room, selection: &Selection, word: &ApproverDecision) -> State {
        match self.came_otherwise(room, selection) && word.approves() {
            true => came_otherwise(self.words),
            false => said(self.words, word),
        }
    }

    /// Whether another came of a selection than was approved, and was taken.
    pub fn came_otherwise(&self, room: &Room, selection: &Selection) -> bool {
        let item = self.subject.assessment.approvals.item(room, selection);
        item.is_some_and(|item| item.standing == ApprovalState::CameOtherwise)
    }

    /// What is known to be approvers' own of a selection: all that stands on a page of those who decide.
    pub fn known_words(&self, room: &Room, selection: &Selection) -> impl Iterator<Item = &ApproverDecision> {
        let item = self.subject.assessment.approvals.item(room, selection);
        item.into_iter().flat_map(|item| &item.words).filter(|word| word.given.is_known())
    }

    /// What is known to be one approver's own of a selection.
    pub fn known_word(&self, who: &str, room: &Room, selection: &Selection) -> Option<&ApproverDecision> {
        self.known_words(room, selection).find(|word| word.who == who)
    }
}

fn unissued(words: Words, selection: &Selection) -> State {
    let key = if selection.settled().is_some() { "stands.signatures" } else { "stands.choose" };
    State::new(StateShape::Waiting, say!(words, key))
}

fn standing(words: Words, item: &ItemApproval, selection: &Selection) -> State {
    let names = |who: &[String]| words.series(who);
    let waiting = |key: &str| State::new(StateShape::Waiting, say!(words, key));
    match &item.standing {
        ApprovalState::NotIssued => waiting("stands.not_asked"),
        ApprovalState::Waiting if selection.settled().is_none() => waiting("stands.choose"),
        ApprovalState::Waiting => waiting("stands.signatures"),
        ApprovalState::Unsigned => waiting("stands.to_confirm"),
        ApprovalState::Partly(_) => {
            State::new(StateShape::Waiting, say!(words, "stands.for", who = names(&item.waits_for)))
        }
        ApprovalState::Conflict => match item.rejected_by() {
            who if who.is_empty() => State::new(StateShape::ReviseAndResubmit, say!(words, "stands.not_agreed")),
            who => State::new(StateShape::Rejected, say!(words, "stands.not_agreed_rejected", who = names(&who))),
        },
        ApprovalState::Stale(who) => {
            State::new(StateShape::ChangedSinceSigned, say!(words, "stands.changed", who = names(who)))
        }
        ApprovalState::Unread => waiting("stands.not_known"),
        ApprovalState::Revise(who) => {
            State::new(StateShape::ReviseAndResubmit, say!(words, "stands.revise", who = names(who)))
        }
        ApprovalState::Rejected(who) => {
            State::new(StateShape::Rejected, say!(words, "stands.rejected", who = names(who)))
        }
        ApprovalState::Condition(_) => State::new(StateShape::ApprovedAsNoted, say!(words, "state.approved_as_noted")),
        ApprovalState::Held => State::new(StateShape::ChangedSinceSigned, say!(words, "stands.held")),
        ApprovalState::CameOtherwise => came_otherwise(words),
        ApprovalState::Approved => State::new(StateShape::Approved, say!(words, "state.approved")),
    }
}

fn came_otherwise(words: Words) -> State {
    State::new(StateShape::ChangedSinceSigned, say!(words, "stands.came"))
}

fn said(words: Words, word: &ApproverDecision) -> State {
    if word.on_other_terms {
        return State::new(StateShape::Waiting, say!(words, "stands.other_terms"));
    }
    if !word.holds {
        return State::new(StateShape::ChangedSinceSigned, say!(words, "state.changed_since_signed"));
    }
    if !word.rivals.is_empty() {
        return State::new(StateShape::ReviseAndResubmit, say!(words, "stands.said_both"));
    }
    if word.lacks_option {
        return State::new(StateShape::Waiting, say!(words, "stands.no_option"));
    }
    let (shape, key) = match word.decision {
        Decision::ApprovedAsNoted if word.met => (StateShape::Approved, "stands.met"),
        Decision::Approved => (StateShape::Approved, decision_key(word.decision)),
        Decision::ApprovedAsNoted => (StateShape::ApprovedAsNoted, decision_key(word.decision)),
        Decision::ReviseAndResubmit => (StateShape::ReviseAndResubmit, decision_key(word.decision)),
        Decision::Rejected => (StateShape::Rejected, decision_key(word.decision)),
    };
    let said = say!(words, key);
    match word.given.is_known() {
        true => State::new(shape, said),
        false => State::new(StateShape::Waiting, say!(words, "stands.unsigned", state = said)),
    }
}

/// The key of a review stamp's words.
pub fn decision_key(decision: Decision) -> &'static str {
    match decision {
        Decision::Approved => "state.approved",
        Decision::ApprovedAsNoted => "state.approved_as_noted",
        Decision::ReviseAndResubmit => "state.revise_and_resubmit",
        Decision::Rejected => "state.rejected",
    }
}

/// A finding's weight.
pub fn severity(words: Words, finding: &Finding) -> State {
    if finding.waived.is_some() {
        return State::new(StateShape::Waived, say!(words, "weighs.waived"));
    }
    let (shape, key) = match finding.severity {
        Severity::Stop => (StateShape::Stop, "weighs.stop"),
        Severity::Query => (StateShape::Query, "weighs.query"),
        Severity::Note => (StateShape::Note, "weighs.note"),
    };
    State::new(shape, say!(words, key))
}

/// How many findings of each weight.
pub fn counts(words: Words, counts: Counts) -> Vec<State> {
    let all = [
        (StateShape::Stop, say!(words, "weighs.stops", n = counts.stops)),
        (StateShape::Query, say!(words, "weighs.queries", n = counts.queries)),
        (StateShape::Note, say!(words, "weighs.notes", n = counts.notes)),
        (StateShape::Waived, say!(words, "weighs.so_many_waived", n = counts.waived)),
    ];
    let told = all.into_iter().filter(|(shape, _)| *shape != StateShape::Waived || counts.waived > 0);
    told.map(|(shape, word)| State::new(shape, word)).collect()
}
