//! An approver's newest word on an item.

use std::collections::{BTreeMap, HashMap};

use crate::book::Book;
use crate::digest::Digest;
use crate::ledger::{
    Attestation, Decided, Decision, IssuedItem, ItemContent, ItemDecision, Moment, Named, Signed, Statement,
    Statements, Terms, Vouched, WhoMust,
};
use crate::shown::{self, Change, ChangedField, Marked, MarkedField};
use crate::units::is_same_name;

use super::held::is_same_who;
use super::name_of;

/// What one approver said last of an item.
#[derive(Clone, Debug)]
pub struct ApproverDecision {
    /// The approver, by id.
    pub who: String,
    /// The name.
    pub name: String,
    /// What was decided.
    pub decision: Decision,
    /// The option that was chosen, by its id.
    pub option: Option<String>,
    /// In the approver's words.
    pub note: Option<String>,
    /// When it was made, by the clock where it was made.
    pub made: Moment,
    /// The response that says so.
    pub response: Digest,
    /// The issue that was answered.
    pub issue: u32,
    /// How it was given.
    pub given: Given,
    /// The name under it.
    pub signed: Option<Signed>,
    /// The mark that was decided on.
    pub mark: Digest,
    /// It is of what the item is now.
    pub holds: bool,
    /// What changed since; nothing while it holds.
    pub changes: Vec<Change>,
    /// The condition of an approval as noted was met.
    pub met: bool,
    /// What else the same person said, where nobody can know which of it was said last: the decision,
    /// and the option.
    pub rivals: Vec<(Decision, Option<String>)>,
    /// It approves, several options stand open, and it names none.
    pub lacks_option: bool,
    /// It approves, others had to approve when it was given than by the newest issue, and not all of them did.
    pub on_other_terms: bool,
}

/// How it is known whose word it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Given {
    /// By the approver's own key.
    ByPrivateLink,
    /// Without a key, and confirmed with the person.
    Confirmed,
    /// Without a key, and not confirmed: it does not count yet.
    Unsigned,
    /// Written down by the designer: how and when.
    ByHand(String),
}

impl Given {
    /// Of a response that came with its proof, was confirmed with the person, or neither.
    pub fn of(given: &Decided, vouched: &Vouched) -> Self {
        match given.by {
            Attestation::PrivateLink => Self::ByPrivateLink,
            Attestation::Hand => Self::ByHand(given.how.clone().unwrap_or_default()),
            Attestation::Unsigned if vouched.is_proved(&given.response) => Self::ByPrivateLink,
            Attestation::Unsigned if vouched.is_confirmed(&given.response) => Self::Confirmed,
            Attestation::Unsigned => Self::Unsigned,
        }
    }

    /// Whether it counts.
    pub fn is_known(&self) -> bool {
        *self != Self::Unsigned
    }
}

/// Whether what was said under an approver's id is theirs: the terms of the issue that it answers may give that id
/// another name, and then another person signed.
pub(super) fn is_theirs(book: &Book, given: &Decided, id: &str, name: &str) -> bool {
    let terms = book.record.issues.get(&given.issue).and_then(|issue| issue.terms.as_ref());
    let then = terms.and_then(|terms| terms.approvers.iter().find(|one| one.id == id));
    then.is_none_or(|then| is_same_name(&then.name, name))
}

fn is_agreed(decision: Decision) -> bool {
    matches!(decision, Decision::Approved | Decision::ApprovedAsNoted)
}

impl ApproverDecision {
    /// Approved, with or without a condition.
    pub fn approves(&self) -> bool {
        is_agreed(self.decision)
    }

    /// It is the approver's own, of what the item is now, and the last that they said.
    pub fn stands(&self) -> bool {
        self.holds && self.given.is_known() && self.rivals.is_empty() && !self.lacks_option && !self.on_other_terms
    }

    /// Approved on a condition that nobody has said to be met.
    pub fn is_conditional(&self) -> bool {
        self.decision == Decision::ApprovedAsNoted && !self.met
    }
}

/// What an item's words follow from.
pub(super) struct Facts<'a> {
    pub book: &'a Book,
    pub now: &'a Marked,
    pub said: &'a Statements<'a>,
    /// Every item of each issue.
    pub issued: &'a BTreeMap<u32, HashMap<(&'a str, &'a str), &'a IssuedItem>>,
    /// Who must approve by the newest issue for approval, where it says so.
    pub terms: Option<&'a Terms>,
}

impl Facts<'_> {
    /// The newest word of each approver, in the book's order. One that is not known to be the
    /// approver's own never takes the place of one that is.
    pub fn words(&self, room: &str, item: &str) -> Vec<ApproverDecision> {
        let words = self.book.project.approvers.iter().filter_map(|approver| {
            let mut newest = self.said.newest(room, item, &approver.id.value);
            newest.retain(|said| is_theirs(self.book, said.decided, &approver.id, &approver.name));
            let (first, rivals) = newest.split_first()?;
            Some(self.word(*first, rivals))
        });
        words.collect()
    }

    fn word(&self, said: Statement<'_>, rivals: &[Statement<'_>]) -> ApproverDecision {
        let Statement { decided: given, asked, .. } = said;
        let holds = self.holds(asked);
        ApproverDecision {
            name: name_of(self.book, &given.who),
            who: given.who.clone(),
            decision: asked.decision,
            option: asked.option.clone(),
            note: asked.note.clone(),
            made: given.made,
            response: given.response,
            issue: given.issue,
            given: Given::of(given, self.said.vouched()),
            signed: given.signed.clone(),
            mark: asked.mark,
            holds,
            changes: if holds { vec![] } else { self.changes(given.issue, asked) },
            met: self.said.is_met(given, asked),
            rivals: rivals.iter().map(|one| (one.asked.decision, one.asked.option.clone())).collect(),
            on_other_terms: holds && is_agreed(asked.decision) && !self.counts_now(given, asked),
            lacks_option: holds && is_agreed(asked.decision) && asked.option.is_none() && shown::is_open(self.now),
        }
    }

    /// Whether a word is of what the item is now: of all of it, or of all but options that are not chosen.
    fn holds(&self, asked: &ItemDecision) -> bool {
        let option = asked.option.as_deref();
        let issued = || self.issued_as(asked);
        shown::holds(asked.mark, option, self.now)
            || issued().is_some_and(|issued| shown::holds_for_the_chosen(issued, option, self.now))
    }

    /// The item as it was issued under the mark that was decided on.
    fn issued_as(&self, asked: &ItemDecision) -> Option<&IssuedItem> {
        let key = (asked.room.as_str(), asked.item.as_str());
        let mut issued = self.issued.values().rev().filter_map(|all| all.get(&key).copied());
        issued.find(|issued| issued.mark == asked.mark)
    }

    /// Whether an approval counts by the newest issue's terms: it was given on those, or all had approved the same who
    /// had to on its own. Else to strike somebody out would approve what that one never signed.
    fn counts_now(&self, given: &Decided, asked: &ItemDecision) -> bool {
        let then = self.book.record.issues.get(&given.issue).and_then(|issue| issue.terms.as_ref());
        let Some((then, now)) = then.zip(self.terms) else { return true };
        is_same_who(then, now)
            || then.approval == WhoMust::Any
            || then.approvers.iter().all(|one| one.id == given.who || self.agrees(one, asked))
    }

    /// Whether somebody approved an item as it is now, and as another did.
    fn agrees(&self, who: &Named, with: &ItemDecision) -> bool {
        let mut newest = self.said.newest(&with.room, &with.item, &who.id);
        newest.retain(|said| is_theirs(self.book, said.decided, &who.id, &who.name));
        let [Statement { decided, asked, .. }] = newest.as_slice() else { return false };
        let option = asked.option.as_deref();
        let names_one = option.is_some() || !shown::is_open(self.now);
        let same_option = with.option.as_deref().zip(option).is_none_or(|(one, other)| one == other);
        // Of who decides still, an open condition is told of itself.
        let decides = self.book.project.approvers.iter().any(|one| one.id.value == who.id);
        let is_met = asked.decision == Decision::Approved || decides || self.said.is_met(decided, asked);
        let is_known = self.said.is_known(decided) && is_agreed(asked.decision);
        is_known && is_met && names_one && same_option && self.holds(asked)
    }

    /// What changed since the issue in which that mark was shown.
    fn changes(&self, issue: u32, asked: &ItemDecision) -> Vec<Change> {
        let issues = self.issued;
        let shown = |number: &u32| issues.get(number)?.get(&(asked.room.as_str(), asked.item.as_str()));
        let is_it = |number: &&u32| shown(number).is_some_and(|issued| issued.mark == asked.mark);
        let issued = issues.keys().rev().find(is_it).or(Some(&issue)).and_then(shown);
        let units = self.book.project.units;
        let changes = issued.map_or(vec![], |issued| shown::changes(&issued.content, &self.now.content));
        // That the option was written down that they chose themselves is no change.
        let content = ItemContent(&self.now.content);
        let is_theirs = asked.option.is_some() && asked.option.as_deref() == content.chosen();
        let is_told = |change: &Change| !(is_theirs && change.what == ChangedField::Marked(MarkedField::Chosen));
        changes.into_iter().filter(is_told).map(|change| change.in_units(units)).collect()
    }
}
