//! Readings of a tape: taken in, and taken back. They count once the designer has confirmed them.

use crate::digest::Digest;
use crate::ledger::{Chain, Fact, Measured, Moment, TOLERANCE, TakenBack};

use super::flood::Waits;
use super::receive::{Outcome, Receiver, Refusal, is_of, is_recorded, issued};
use super::response::{HandedReadings, Malformed, Submission};
use super::store::Open;

/// So many digits name a response.
const DIGITS: usize = 8;

impl Receiver {
    /// Takes in what was read at openings.
    pub(super) fn measured(
        &self,
        open: &mut Open<'_>,
        handed: &Submission,
        says: &HandedReadings,
        at: Moment,
    ) -> Result<Outcome, Refusal> {
        if !is_of(open.chain(), &says.book) {
            return Err(Refusal::OtherBook);
        }
        if let Some(stated) = says.ledger.filter(|stated| !stated.is_in(&open.chain().lines)) {
            return Err(Refusal::OtherLedger(stated.line));
        }
        if let Some(number) = says.issue.filter(|number| issued(open.chain()).all(|issued| issued.number != *number)) {
            return Err(Refusal::NoIssue(number));
        }
        if is_recorded(open.chain(), &handed.digest, false) {
            return Ok(Outcome::Already);
        }
        if says.made > at.plus_seconds(TOLERANCE) {
            return Err(Refusal::Ahead(says.made));
        }
        for read in &says.readings {
            if !self.openings.contains(&(read.room.clone(), read.opening.clone())) {
                return Err(Refusal::NoOpening(read.room.clone(), read.opening.clone()));
            }
        }
        open.may_wait(Waits::Readings, &says.by, handed.signed.len())?;
        let on = says.made.day().ok_or(Refusal::Malformed(Malformed::Text("made")))?;
        let (by, made, readings) = (says.by.clone(), Some(says.made), says.readings.clone());
        open.keep_response(&handed.value, &handed.digest)?;
        open.append(at, Fact::Measured(Measured { response: handed.digest, by, on, made, readings }))?;
        Ok(Outcome::Waiting)
    }

    /// Takes readings, a delivery or an acknowledgement back, whether they were confirmed or not: named by the first digits of their digest, or
    /// by who made them where that is one alone.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn take_back(&self, named: &str, by: &str, note: Option<&str>, at: Moment) -> Result<Outcome, Refusal> {
        let mut open = self.store().open()?;
        let found = standing(open.chain(), named);
        let [response] = found.as_slice() else {
            let digits = found.iter().map(|one| one.to_string().chars().take(DIGITS).collect());
            return match digits.collect::<Vec<String>>() {
                none if none.is_empty() && was_taken_back(open.chain(), named) => Ok(Outcome::Already),
                several => Err(Refusal::Readings(named.into(), several)),
            };
        };
        let on = at.day().ok_or(Refusal::OtherBook)?;
        let fact = TakenBack { response: *response, by: by.into(), note: note.map(str::to_owned), on };
        open.append(at, Fact::TakenBack(fact))?;
        Ok(Outcome::Recorded(vec![]))
    }
}

/// What of that name was handed in without a key and was not taken back.
fn standing(chain: &Chain, named: &str) -> Vec<Digest> {
    let bare = chain.lines.iter().filter_map(|line| match &line.fact {
        Fact::Measured(one) => Some((one.response, &one.by)),
        Fact::Received(one) => Some((one.response, &one.by)),
        Fact::Acknowledged(one) => Some((one.response, &one.by)),
        _ => None,
    });
    let by_digits = |response: &Digest| named.len() >= DIGITS && response.to_string().starts_with(named);
    let found = bare.filter(|(response, by)| by_digits(response) || *by == named).map(|(response, _)| response);
    found.filter(|response| !is_back(chain, &|one| one == response)).collect()
}

fn was_taken_back(chain: &Chain, named: &str) -> bool {
    named.len() >= DIGITS && is_back(chain, &|one| one.to_string().starts_with(named))
}

fn is_back(chain: &Chain, is_it: &dyn Fn(&Digest) -> bool) -> bool {
    chain.lines.iter().any(|line| matches!(&line.fact, Fact::TakenBack(back) if is_it(&back.response)))
}
