//! What each person said of each item, and which of it counts: the newest, where that can be known.

use std::collections::{BTreeMap, BTreeSet};

use crate::digest::Digest;

use super::{Decided, Decision, During, Fact, ItemDecision, Line, Met, MomentFault, ResponseOrder, Vouched};

/// One decision of one item, with the line that holds it.
#[derive(Clone, Copy, Debug)]
pub struct Statement<'a> {
    /// The line.
    pub line: &'a Line,
    /// The response.
    pub decided: &'a Decided,
    /// The decision of the item.
    pub asked: &'a ItemDecision,
}

/// A room, an item, and who said it.
type Of<'a> = (&'a str, &'a str, &'a str);

/// Every statement of a ledger.
#[derive(Debug, Default)]
pub struct Statements<'a> {
    known: BTreeMap<Of<'a>, Vec<Statement<'a>>>,
    unknown: BTreeMap<Of<'a>, Statement<'a>>,
    order: ResponseOrder,
    vouched: Vouched,
    /// Conditions that are met: the response that stated them, room and item.
    met: BTreeSet<(Digest, &'a str, &'a str)>,
}

impl<'a> Statements<'a> {
    /// All that the lines of a ledger hold.
    pub fn of(lines: &'a [Line]) -> Self {
        let vouched = Vouched::of(lines);
        let is_known = |decided: &Decided| vouched.is_known(decided);
        let mut all = Self { order: ResponseOrder::of(lines, &is_known), ..Self::default() };
        let mut stated = BTreeMap::new();
        for line in lines {
            match &line.fact {
                // What a stranger said is said by nobody who is asked.
                Fact::Decided(decided) if !is_known(decided) && vouched.is_not_theirs(&decided.response) => {}
                Fact::Decided(decided) => {
                    for asked in &decided.items {
                        let statement = Statement { line, decided, asked };
                        let of = (asked.room.as_str(), asked.item.as_str(), decided.who.as_str());
                        match is_known(decided) {
                            true => all.knows(of, statement),
                            false => _ = all.unknown.insert(of, statement),
                        }
                        if asked.decision == Decision::ApprovedAsNoted && is_known(decided) {
                            stated.insert((of.0, of.1, asked.mark), decided.response);
                        }
                    }
                }
                Fact::Met(met) => {
                    let Met { room, item, mark, response, .. } = met;
                    // An older line closes what was stated last of that mark, and nothing else.
                    let closes = response.or_else(|| stated.get(&(room.as_str(), item.as_str(), *mark)).copied());
                    all.met.extend(closes.map(|response| (response, room.as_str(), item.as_str())));
                }
                _ => {}
            }
        }
        all.vouched = vouched;
        all
    }

    /// Takes in what is known to be somebody's. A response that came again with its proof says it once.
    fn knows(&mut self, of: Of<'a>, statement: Statement<'a>) {
        let said = self.known.entry(of).or_default();
        let response = statement.decided.response;
        if self.order.came(statement.line, statement.decided).0 != statement.line.number {
            said.retain(|one| one.decided.response != response);
        }
        said.push(statement);
    }

    /// Whether it is known that the response is of whom it names.
    pub fn is_known(&self, decided: &Decided) -> bool {
        self.vouched.is_known(decided)
    }

    /// Vouched the answers are that bear no key.
    pub fn vouched(&self) -> &Vouched {
        &self.vouched
    }

    /// What somebody said last of an item: one statement; several where nobody can know which of them was
    /// made last and they do not say the same; none where nothing was said. What is not known to be theirs
    /// never takes the place of what is.
    pub fn newest(&self, room: &str, item: &str, who: &str) -> Vec<Statement<'a>> {
        match self.known.get(&(room, item, who)) {
            Some(said) => self.last_of(said),
            None => self.unknown.get(&(room, item, who)).copied().into_iter().collect(),
        }
    }

    /// The statements of an item whose newest word is a condition that is open: whose, in order of their ids.
    pub fn open_conditions(&self, room: &str, item: &str) -> Vec<Statement<'a>> {
        let of_item = self.known.iter().filter(|((in_room, of, _), _)| (*in_room, *of) == (room, item));
        let newest = of_item.flat_map(|(_, said)| self.last_of(said));
        newest
            .filter(|one| one.asked.decision == Decision::ApprovedAsNoted && !self.is_met(one.decided, one.asked))
            .collect()
    }

    /// Whether the condition that a decision states is met.
    pub fn is_met(&self, decided: &Decided, asked: &ItemDecision) -> bool {
        self.met.contains(&(decided.response, asked.room.as_str(), asked.item.as_str()))
    }

    /// Statements whose moments can't be, with what is wrong with them.
    pub fn odd(&self) -> impl Iterator<Item = (u32, MomentFault)> {
        self.order.all_odd()
    }

    fn during(&self, one: &Statement<'_>) -> During {
        self.order.during(one.line, one.decided)
    }

    /// Whether anything tells that one was said before another: the device, an issue between, or the clocks.
    fn tells(&self, one: &Statement<'_>, other: &Statement<'_>) -> bool {
        let by_device = match (&one.decided.device, &other.decided.device) {
            (Some(one), Some(other)) => one.id == other.id && one.turn < other.turn,
            _ => false,
        };
        let came = self.order.came(one.line, one.decided).0;
        let by_issue = came < self.order.issue_line(other.decided.issue);
        by_device || by_issue || self.during(one).until < self.during(other).from
    }

    /// Whether one was certainly said after another: signs that contradict each other tell nothing.
    fn is_after(&self, one: &Statement<'_>, other: &Statement<'_>) -> bool {
        self.tells(other, one) && !self.tells(one, other)
    }

    /// Those that nothing else was certainly said after; one alone where they all say the same.
    fn last_of(&self, said: &[Statement<'a>]) -> Vec<Statement<'a>> {
        let start = said.iter().max_by_key(|one| self.during(one).from);
        let issue = said.iter().max_by_key(|one| self.order.issue_line(one.decided.issue));
        let mut turns: BTreeMap<&str, &Statement<'_>> = BTreeMap::new();
        for one in said {
            let Some(device) = &one.decided.device else { continue };
            let newest = turns.entry(&device.id).or_insert(one);
            if newest.decided.device.as_ref().is_some_and(|newest| newest.turn < device.turn) {
                *newest = one;
            }
        }
        let is_before = |one: &Statement<'_>| {
            let turn = one.decided.device.as_ref().and_then(|device| turns.get(device.id.as_str()).copied());
            let mut likely = [start, issue, turn].into_iter().flatten();
            // Where none of these tells, nothing does.
            let is_told = likely.clone().any(|other| self.tells(one, other));
            is_told
                && (likely.any(|other| self.is_after(other, one)) || said.iter().any(|other| self.is_after(other, one)))
        };
        let mut last: Vec<Statement<'a>> = said.iter().filter(|one| !is_before(one)).copied().collect();
        if last.is_empty() {
            // Each is before another, in a circle: then nothing is known.
            last = said.to_vec();
        }
        last.sort_by_key(|one| (caution(one.asked.decision), one.decided.made, one.decided.response));
        let same = last.first().is_some_and(|first| last.iter().all(|one| says_the_same(first.asked, one.asked)));
        if same { last.pop().into_iter().collect() } else { last }
    }
}

/// What stands in the way most comes first.
fn caution(decision: Decision) -> u8 {
    match decision {
        Decision::Rejected => 0,
        Decision::ReviseAndResubmit => 1,
        Decision::ApprovedAsNoted => 2,
        Decision::Approved => 3,
    }
}

fn says_the_same(one: &ItemDecision, other: &ItemDecision) -> bool {
    let of = |asked: &ItemDecision| (asked.mark, asked.decision, asked.option.clone());
    of(one) == of(other) && (one.decision != Decision::ApprovedAsNoted || one.note == other.note)
}
