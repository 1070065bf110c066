//! Vouched an answer is that bears no key: what was recorded after the person was asked.

use std::collections::{BTreeMap, BTreeSet};

use crate::digest::Digest;

use super::{Attestation, Decided, Fact, Line, Measured};

/// What was recorded of answers that prove nothing by themselves. Of "confirmed" and "not theirs" the later
/// one counts.
#[derive(Clone, Debug, Default)]
pub struct Vouched {
    /// Whether the person said that it is theirs.
    asked: BTreeMap<Digest, bool>,
    /// Responses that came with their proof too.
    proved: BTreeSet<Digest>,
    /// Readings, deliveries and acknowledgements that were taken back.
    back: BTreeSet<Digest>,
}

impl Vouched {
    /// By the lines of a ledger.
    pub fn of(lines: &[Line]) -> Self {
        let mut vouched = Self::default();
        for line in lines {
            match &line.fact {
                Fact::Confirmed(one) => _ = vouched.asked.insert(one.response, true),
                Fact::NotTheirs(one) => _ = vouched.asked.insert(one.response, false),
                Fact::Decided(decided) if decided.by != Attestation::Unsigned => {
                    _ = vouched.proved.insert(decided.response)
                }
                Fact::TakenBack(one) => _ = vouched.back.insert(one.response),
                _ => {}
            }
        }
        vouched
    }

    /// Whether the person said that it is theirs.
    pub fn is_confirmed(&self, response: &Digest) -> bool {
        self.asked.get(response) == Some(&true)
    }

    /// Whether the person said that it is not theirs.
    pub fn is_not_theirs(&self, response: &Digest) -> bool {
        self.asked.get(response) == Some(&false)
    }

    /// Whether it is known that a response is of whom it names.
    pub fn is_known(&self, decided: &Decided) -> bool {
        let response = &decided.response;
        decided.by != Attestation::Unsigned || self.is_proved(response) || self.is_confirmed(response)
    }

    /// Whether a response came with its proof, if only when it came again.
    pub fn is_proved(&self, response: &Digest) -> bool {
        self.proved.contains(response)
    }

    /// Whether nobody has asked yet whose a response is, and nothing proves it.
    pub fn waits(&self, decided: &Decided) -> bool {
        let response = &decided.response;
        decided.by == Attestation::Unsigned && !self.asked.contains_key(response) && !self.is_proved(response)
    }

    /// Whether readings, or what was said of a delivery, were taken back.
    pub fn is_back(&self, response: &Digest) -> bool {
        self.back.contains(response)
    }

    /// Whether readings wait to be confirmed or taken back.
    pub fn readings_wait(&self, measured: &Measured) -> bool {
        self.is_open(&measured.response)
    }

    /// Whether what anybody can have sent, and is no decision, waits to be confirmed or taken back.
    pub fn is_open(&self, response: &Digest) -> bool {
        !self.is_confirmed(response) && !self.is_back(response)
    }
}
