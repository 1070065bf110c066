//! What the designer records of what was said: whose it is, which conditions are met, what came in deliveries.

use bookmatch::digest::Digest;
use bookmatch::ledger::{
    Attestation, Came, Confirmed, Decided, Decision, Delivery, Fact, ItemReceived, Kept, LineReceived, Looked, Met,
    NotTheirs, Received, TakenBack,
};

use super::history::{DAY, History};

const BY: &str = "Ines Tarrow";

impl History {
    /// The designer asks whose a response is.
    pub(super) fn somebody_is_asked(&mut self) {
        let unproved = self.unproved();
        if unproved.is_empty() {
            return;
        }
        let (response, by, on) = (self.dice.one(&unproved).response, BY.to_string(), Self::day(self.clock));
        let fact = if self.dice.is(70) {
            Fact::Confirmed(Confirmed { response, by, on })
        } else {
            Fact::NotTheirs(NotTheirs { response, by, note: None, on })
        };
        self.record(fact);
    }

    /// A response that came without its proof comes again with it.
    pub(super) fn proof_comes(&mut self) {
        let unproved = self.unproved();
        if !unproved.is_empty() {
            let decided = self.dice.one(&unproved).clone();
            let (by, key) = (Attestation::PrivateLink, Some("0a1b2c3d".into()));
            self.comes_in(Decided { by, key, ..decided });
        }
    }

    /// A condition is met: that of one response, or, as older lines say it, of a mark.
    pub(super) fn condition_is_met(&mut self) {
        let noted = |fact: &Fact| match fact {
            Fact::Decided(decided) => {
                let noted = decided.items.iter().filter(|asked| asked.decision == Decision::ApprovedAsNoted);
                noted.map(|asked| (decided.response, asked.clone())).collect()
            }
            _ => vec![],
        };
        let noted: Vec<_> = self.lines.iter().flat_map(|line| noted(&line.fact)).collect();
        if noted.is_empty() {
            return;
        }
        let (response, asked) = self.dice.one(&noted).clone();
        let response = self.dice.is(75).then_some(response);
        let (by, note, on) = (BY.into(), "seen".into(), Self::day(self.clock));
        self.record(Fact::Met(Met { room: asked.room, item: asked.item, mark: asked.mark, response, by, note, on }));
    }

    /// Somebody looks at what a delivery brought.
    pub(super) fn delivery_comes(&mut self) {
        if self.issues.is_empty() {
            return;
        }
        let newest = self.issues.len() - 1;
        let at = if self.dice.is(75) { newest } else { self.dice.below(newest + 1) };
        let items = &self.issues[at].items;
        if items.is_empty() {
            return;
        }
        let item = self.dice.one(items).clone();
        let came = *self.dice.one(&[Came::Approved, Came::Different, Came::Damaged]);
        let kept = (came != Came::Approved).then(|| *self.dice.one(&[Kept::Taken, Kept::Taken, Kept::SentBack]));
        let is_open = item.shown().is_open();
        let ahead = if self.dice.is(8) { DAY } else { 0 };
        let (device, _) = self.on_device(Attestation::PrivateLink);
        let received = Received {
            response: Digest::of(format!("delivery {}", self.lines.len()).as_bytes()),
            delivery: Delivery { from: "Ardwin".into(), load: None, note: self.lines.len().to_string() },
            by: "Teo".into(),
            on: Self::day(self.clock),
            made: Self::moment(self.clock + ahead - self.dice.between(0, 2 * DAY)),
            device,
            items: vec![ItemReceived {
                room: item.room,
                item: item.item,
                option: is_open.then(|| "steel".into()),
                mark: item.mark,
                lines: vec![LineReceived { of: Looked::Finish, came, words: None }],
                kept,
                note: None,
                photos: vec![],
            }],
        };
        self.deliveries.push(received.clone());
        self.record(Fact::Received(received));
    }

    /// It is confirmed, or taken back.
    pub(super) fn delivery_is_asked_about(&mut self) {
        if self.deliveries.is_empty() {
            return;
        }
        let (response, by, on) = (self.dice.one(&self.deliveries).response, BY.to_string(), Self::day(self.clock));
        let fact = if self.dice.is(85) {
            Fact::Confirmed(Confirmed { response, by, on })
        } else {
            Fact::TakenBack(TakenBack { response, by, note: None, on })
        };
        self.record(fact);
    }
}
