//! Which of two statements was made first, as far as it can be known.
//!
//! What counts is when a thing was said, not when it arrived. Three things tell:
//!
//! 1. The device's own count, where one device said both.
//! 2. An issue: what was recorded before it was made was said before any answer to it.
//! 3. The moments that they bear, where they are further apart than two clocks may differ. A decision
//!    that the designer wrote down bears the time in which it was given; one whose clock is shown to be
//!    wrong was made at some moment between its issue and its receipt.
//!
//! Where none of them tells, or they contradict each other, the order is not known, and nobody may guess it.
//! A response that came again, with its proof, was recorded when it came first.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::digest::Digest;
use crate::units::Date;

use super::{Attestation, Decided, Fact, Line, Moment};

/// How far two clocks may differ, in seconds: five minutes. Common practice: clocks that are set by the
/// network differ by seconds, those that are set by hand by minutes.
pub const TOLERANCE: i64 = 300;
/// By which a day anywhere on earth may begin before, or end after, the day in universal time, in hours.
const ZONES: (i64, i64) = (14, 12);
const HOUR: i64 = 3_600;

/// A device, and how many responses were signed on it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Device {
    /// Its id, made at random by the page: 32 hex digits.
    pub id: String,
    /// The how-manieth response it is of that device, from 1.
    pub turn: u32,
}

/// A time in which something was said: the first moment and the last that it can have been.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct During {
    /// The first.
    pub from: Moment,
    /// The last.
    pub until: Moment,
}

impl During {
    /// A day, wherever on earth it was.
    pub fn day(day: Date) -> Option<During> {
        let start = Moment::midnight(day)?;
        Some(During { from: start.plus_seconds(-ZONES.0 * HOUR), until: start.plus_seconds((24 + ZONES.1) * HOUR - 1) })
    }

    fn about(moment: Moment) -> During {
        During { from: moment.plus_seconds(-TOLERANCE), until: moment.plus_seconds(TOLERANCE) }
    }
}

/// What is wrong with the moment of a statement.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MomentFault {
    /// It lies ahead of its receipt.
    Ahead,
    /// It lies before the issue that it answers was made.
    BeforeIssue(u32),
    /// The clock of its device went backwards.
    Backwards,
}

/// What the order of statements follows from.
#[derive(Clone, Debug, Default)]
pub struct ResponseOrder {
    /// The line of each issue and its moment, by its number.
    issues: BTreeMap<u32, (u32, Moment)>,
    /// The line that each response came in with first, and its moment.
    came: BTreeMap<Digest, (u32, Moment)>,
    /// Statements whose clock is shown to be wrong, by line.
    odd: BTreeMap<u32, MomentFault>,
}

impl ResponseOrder {
    /// From a ledger. `counts` tells what is known to be said by whom it names.
    pub fn of(lines: &[Line], counts: &dyn Fn(&Decided) -> bool) -> Self {
        let mut order = Self::default();
        let mut devices: BTreeMap<&str, Vec<(u32, Moment, u32)>> = BTreeMap::new();
        for line in lines {
            match &line.fact {
                Fact::Issued(issued) => _ = order.issues.entry(issued.number).or_insert((line.number, line.at)),
                Fact::Decided(decided) => {
                    let came = *order.came.entry(decided.response).or_insert((line.number, line.at));
                    if !counts(decided) {
                        continue;
                    }
                    if let Some(device) = &decided.device {
                        devices.entry(&device.id).or_default().push((device.turn, decided.made, came.0));
                    }
                    if let Some(odd) = order.odd_in_itself(came.1, decided) {
                        order.odd.insert(came.0, odd);
                    }
                }
                _ => {}
            }
        }
        for turns in devices.values_mut() {
            turns.sort_unstable();
            let mut newest = None;
            let runs_back = turns.iter().any(|(_, made, _)| {
                let back = newest.is_some_and(|newest: Moment| made.plus_seconds(TOLERANCE) < newest);
                newest = newest.max(Some(*made));
                back
            });
            if runs_back {
                for (_, _, line) in turns {
                    order.odd.entry(*line).or_insert(MomentFault::Backwards);
                }
            }
        }
        order
    }

    fn odd_in_itself(&self, came: Moment, decided: &Decided) -> Option<MomentFault> {
        let (from, until) = match (decided.by, decided.given) {
            (Attestation::Hand, Some(given)) => (given.from, given.until),
            (Attestation::Hand, None) => return None,
            _ => (decided.made, decided.made),
        };
        let issued = self.issues.get(&decided.issue);
        if from > came.plus_seconds(TOLERANCE) {
            return Some(MomentFault::Ahead);
        }
        let before = issued.is_some_and(|(_, issued)| until.plus_seconds(TOLERANCE) < *issued);
        before.then_some(MomentFault::BeforeIssue(decided.issue))
    }

    /// What is wrong with the moment of the statement in a line.
    pub fn odd(&self, line: u32) -> Option<MomentFault> {
        self.odd.get(&line).copied()
    }

    /// All lines whose moments are wrong, in their order.
    pub fn all_odd(&self) -> impl Iterator<Item = (u32, MomentFault)> {
        self.odd.iter().map(|(line, odd)| (*line, *odd))
    }

    /// The line of an issue.
    pub(super) fn issue_line(&self, number: u32) -> u32 {
        self.issues.get(&number).map_or(0, |(line, _)| *line)
    }

    /// The line that the statement of another line came in with first: its own, or an earlier one without its proof.
    pub(super) fn came(&self, line: &Line, decided: &Decided) -> (u32, Moment) {
        self.came.get(&decided.response).copied().unwrap_or((line.number, line.at))
    }

    /// Between which moments a statement was made.
    pub fn during(&self, line: &Line, decided: &Decided) -> During {
        let (number, at) = self.came(line, decided);
        let issued = self.issues.get(&decided.issue).map_or(at, |(_, issued)| *issued);
        let anywhen = During { from: issued.min(at), until: at };
        if self.odd.contains_key(&number) {
            return anywhen;
        }
        match (decided.by, decided.given) {
            (Attestation::Hand, Some(given)) => given,
            (Attestation::Hand, None) => {
                decided.how.as_deref().and_then(day_in).and_then(During::day).unwrap_or(anywhen)
            }
            _ => During::about(decided.made),
        }
    }
}

/// The one day that some words name, such as "on paper, 2027-01-16"; none where they name several.
pub fn day_in(words: &str) -> Option<Date> {
    let is_part = |letter: char| letter.is_ascii_digit() || letter == '-';
    let mut days = words.split(|letter| !is_part(letter)).filter_map(|word| Date::parse(word).ok());
    let first = days.next()?;
    days.all(|other| other == first).then_some(first)
}
