//! What people say of items, on which device, by which clock, and when it comes in.

use bookmatch::digest::Digest;
use bookmatch::ledger::{
    Attestation, Decided, Decision, Device, During, Fact, Issue, IssuedItem, ItemDecision, Moment,
};

use super::history::{DAY, History};

/// By how much the clocks of the devices are wrong, in seconds.
const WRONG_BY: [i64; 4] = [0, 140, -200, DAY];

impl History {
    /// Somebody answers an issue; it comes in at once, or is under way.
    pub(super) fn somebody_says(&mut self) {
        let Some(newest) = self.issues.len().checked_sub(1) else { return };
        let by = match self.dice.below(10) {
            0..7 => Attestation::PrivateLink,
            7..9 => Attestation::Unsigned,
            _ => Attestation::Hand,
        };
        let answered = if by == Attestation::Hand || self.dice.is(80) { newest } else { self.dice.below(newest + 1) };
        let issue = self.issues[answered].clone();
        let who = (*self.dice.one(&["ada", "ada", "ada", "sven", "sven", "sven", "teo"])).to_string();
        let items = self.decides(&issue);
        if items.is_empty() {
            return;
        }
        let (how, given) = self.given(by);
        let (device, made) = self.on_device(by);
        let parts = format!("{who} {made} {} {}", self.lines.len(), self.under_way.len());
        let decided = Decided {
            response: Digest::of(parts.as_bytes()),
            issue: issue.number,
            who,
            by,
            key: (by == Attestation::PrivateLink).then(|| "0a1b2c3d".into()),
            how,
            given,
            made,
            device,
            signed: None,
            items,
            refused: vec![],
        };
        if by != Attestation::Hand && self.dice.is(35) {
            self.under_way.push(decided);
        } else {
            self.comes_in(decided);
        }
    }

    /// What is said of some of the items of an issue.
    fn decides(&mut self, issue: &Issue) -> Vec<ItemDecision> {
        let mut items = vec![];
        for item in &issue.items {
            if self.dice.is(if item.item == "range" { 85 } else { 50 }) {
                items.push(self.decision(item));
            }
        }
        items
    }

    fn decision(&mut self, item: &IssuedItem) -> ItemDecision {
        let decision = match self.dice.below(100) {
            0..62 => Decision::Approved,
            62..76 => Decision::ApprovedAsNoted,
            76..88 => Decision::ReviseAndResubmit,
            _ => Decision::Rejected,
        };
        let agreed = matches!(decision, Decision::Approved | Decision::ApprovedAsNoted);
        let ids = ["steel", "steel", "steel", "black"];
        let option = match item.shown().options().count() {
            0 | 1 => None,
            _ if item.shown().is_open() => (agreed && self.dice.is(96)).then(|| self.dice.one(&ids)),
            _ => self.dice.is(20).then(|| self.dice.one(&ids)),
        };
        let notes = ["if it is quiet", "if it is matt"];
        let note = (decision == Decision::ApprovedAsNoted || self.dice.is(10)).then(|| *self.dice.one(&notes));
        ItemDecision {
            room: item.room.clone(),
            item: item.item.clone(),
            mark: item.mark,
            decision,
            option: option.map(|id| (*id).to_string()),
            note: note.map(str::to_string),
        }
    }

    /// How the designer says that it was given, and when.
    fn given(&mut self, by: Attestation) -> (Option<String>, Option<During>) {
        if by != Attestation::Hand {
            return (None, None);
        }
        let day = Self::day(self.clock - DAY * self.dice.between(0, 2));
        let about = Self::moment(self.clock - self.dice.between(0, DAY));
        match self.dice.below(5) {
            0 => (Some("on the telephone".into()), None),
            1 => (Some(format!("on paper, {}", day.iso())), None),
            2 => (Some(format!("on paper, {}, or on {}", day.iso(), Self::day(self.clock).iso())), None),
            3 => (Some("on paper".into()), During::day(day)),
            _ => (Some("in the showroom".into()), Some(During { from: about, until: about })),
        }
    }

    /// The device that it is made on, and the moment by its clock.
    pub(super) fn on_device(&mut self, by: Attestation) -> (Option<Device>, Moment) {
        if by == Attestation::Hand {
            return (None, Self::moment(self.clock));
        }
        let at = *self.dice.one(&[0, 0, 0, 1, 1, 1, 2, 2, 3]);
        self.turns[at] += 1;
        // A device that was set up again counts anew; an old page does not count at all.
        let turn = if self.dice.is(3) { 1 } else { self.turns[at] };
        let wrong = if self.dice.is(4) { self.dice.between(-2 * DAY, 2 * DAY) } else { WRONG_BY[at] };
        let device = Device { id: format!("{at:032x}"), turn };
        (self.dice.is(90).then_some(device), Self::moment(self.clock + wrong))
    }

    /// A response comes in: those of its decisions that the program takes, where the history is strict.
    pub(super) fn comes_in(&mut self, mut decided: Decided) {
        if self.strict {
            let (issues, answered) = (&self.issues, decided.issue);
            let issue = |number: u32| issues.iter().find(|issue| issue.number == number);
            let newest = issues.last();
            decided.items.retain(|asked| {
                let item = issue(answered).and_then(|issue| issue.item(&asked.room, &asked.item));
                let now = newest.and_then(|newest| newest.item(&asked.room, &asked.item));
                let agreed = matches!(asked.decision, Decision::Approved | Decision::ApprovedAsNoted);
                let lacks = agreed && asked.option.is_none() && item.is_some_and(|item| item.shown().is_open());
                now.is_some_and(|now| now.is(&asked.mark)) && !lacks
            });
        }
        if !decided.items.is_empty() {
            self.record(Fact::Decided(decided));
        }
    }

    /// One of those that are under way comes in.
    pub(super) fn something_comes_late(&mut self) {
        if !self.under_way.is_empty() {
            let at = self.dice.below(self.under_way.len());
            let decided = self.under_way.swap_remove(at);
            self.comes_in(decided);
        }
    }

    /// Responses on record that prove nothing by themselves.
    pub(super) fn unproved(&self) -> Vec<Decided> {
        let unsigned = |fact: &Fact| match fact {
            Fact::Decided(decided) if decided.by == Attestation::Unsigned => Some(decided.clone()),
            _ => None,
        };
        self.lines.iter().filter_map(|line| unsigned(&line.fact)).collect()
    }
}
