//! States of decision, of fit and of a finding: a word and a shape, never a colour alone.

use crate::assess::approval::{ApprovalState, ApproverDecision, ItemApproval};
use crate::book::{Approver, Room, Selection};
use crate::finding::{Counts, Finding, Severity};
use crate::ledger::Decision;
use crate::units::series;
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::count;
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
        item.map_or_else(|| unissued(selection), |item| standing(item, selection))
    }

    /// How far the decision has come, for the office: what is to be confirmed is told.
    pub fn decision_for_office(&self, room: &Room, selection: &Selection) -> State {
        let item = self.subject.assessment.approvals.item(room, selection);
        item.map_or_else(|| unissued(selection), |item| standing(item, selection))
    }

    /// What one approver is known to have said of a selection.
    pub fn said_by(&self, approver: &Approver, room: &Room, selection: &Selection) -> State {
        self.known_word(&approver.id.value, room, selection).map_or_else(|| unissued(selection), said)
    }

    /// What somebody said of a selection in an approver's name, for the office.
    pub fn said_for_office(&self, approver: &Approver, room: &Room, selection: &Selection) -> State {
        let item = self.subject.assessment.approvals.item(room, selection);
        let word = item.and_then(|item| item.words.iter().find(|word| word.who == approver.id.value));
        word.map_or_else(|| unissued(selection), said)
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

fn unissued(selection: &Selection) -> State {
    let word = if selection.settled().is_some() { "Waiting for signatures" } else { "Waiting: choose one" };
    State::new(StateShape::Waiting, word)
}

fn standing(item: &ItemApproval, selection: &Selection) -> State {
    let names = |who: &[String]| series(who);
    match &item.standing {
        ApprovalState::NotIssued => State::new(StateShape::Waiting, "Not asked yet"),
        ApprovalState::Waiting if selection.settled().is_none() => {
            State::new(StateShape::Waiting, "Waiting: choose one")
        }
        ApprovalState::Waiting => State::new(StateShape::Waiting, "Waiting for signatures"),
        ApprovalState::Unsigned => State::new(StateShape::Waiting, "Unsigned: to be confirmed"),
        ApprovalState::Partly(_) => State::new(StateShape::Waiting, format!("Waiting for {}", names(&item.waits_for))),
        ApprovalState::Conflict => State::new(StateShape::ReviseAndResubmit, "Not agreed yet"),
        ApprovalState::Stale(who) => {
            State::new(StateShape::ChangedSinceSigned, format!("Changed since {} signed", names(who)))
        }
        ApprovalState::Revise(who) => {
            State::new(StateShape::ReviseAndResubmit, format!("To be revised for {}", names(who)))
        }
        ApprovalState::Rejected(who) => State::new(StateShape::Rejected, format!("Rejected by {}", names(who))),
        ApprovalState::Condition(_) => State::new(StateShape::ApprovedAsNoted, "Approved as noted"),
        ApprovalState::Held => State::new(StateShape::ChangedSinceSigned, "Approved, and held: ask again"),
        ApprovalState::Approved => State::new(StateShape::Approved, "Approved"),
    }
}

fn said(word: &ApproverDecision) -> State {
    if !word.holds {
        return State::new(StateShape::ChangedSinceSigned, "Changed since signed");
    }
    if !word.rivals.is_empty() {
        return State::new(StateShape::ReviseAndResubmit, "Said both; which last is not known");
    }
    if word.lacks_option {
        return State::new(StateShape::Waiting, "Approved, and no option chosen");
    }
    let unsigned = if word.given.is_known() { "" } else { ", unsigned" };
    let (shape, words) = match word.decision {
        Decision::Approved => (StateShape::Approved, "Approved"),
        Decision::ApprovedAsNoted if word.met => (StateShape::Approved, "Approved as noted, and met"),
        Decision::ApprovedAsNoted => (StateShape::ApprovedAsNoted, "Approved as noted"),
        Decision::ReviseAndResubmit => (StateShape::ReviseAndResubmit, "Revise and resubmit"),
        Decision::Rejected => (StateShape::Rejected, "Rejected"),
    };
    let shape = if unsigned.is_empty() { shape } else { StateShape::Waiting };
    State::new(shape, format!("{words}{unsigned}"))
}

/// A finding's weight.
pub fn severity(finding: &Finding) -> State {
    if finding.waived.is_some() {
        return State::new(StateShape::Waived, "waived");
    }
    let shape = match finding.severity {
        Severity::Stop => StateShape::Stop,
        Severity::Query => StateShape::Query,
        Severity::Note => StateShape::Note,
    };
    State::new(shape, finding.severity.word())
}

/// How many findings of each weight.
pub fn counts(counts: Counts) -> Vec<State> {
    let all = [
        (StateShape::Stop, count(counts.stops, "stop", "stops")),
        (StateShape::Query, count(counts.queries, "query", "queries")),
        (StateShape::Note, count(counts.notes, "note", "notes")),
        (StateShape::Waived, format!("{} waived", counts.waived)),
    ];
    let told = all.into_iter().filter(|(shape, _)| *shape != StateShape::Waived || counts.waived > 0);
    told.map(|(shape, word)| State::new(shape, word)).collect()
}
