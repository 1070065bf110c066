//! What the designer writes down: decisions given by other means, confirmations, and conditions that are met.

use serde::Serialize;
use serde_json::Value;

use crate::digest::Digest;
use crate::ledger::{Asked, By, Chain, Confirmed, Decided, Decision, Fact, Issue, Met, Moment, Refused};

use super::error::RecordError;
use super::receive::{Outcome, Receiver, Refusal, fault, is_recorded, issued};

/// A decision that was given by other means.
#[derive(Clone, Debug)]
pub struct ByHand {
    /// The approver, by id.
    pub who: String,
    /// The items: room and selection.
    pub items: Vec<(String, String)>,
    /// What was decided of them.
    pub decision: Decision,
    /// The option that was chosen.
    pub option: Option<String>,
    /// The approver's words.
    pub note: Option<String>,
    /// How and when it was given.
    pub how: String,
    /// The scan of a signed sheet: its bytes, and the ending of its name.
    pub scan: Option<(Vec<u8>, String)>,
}

/// What is kept of it; the same words of the same items are one fact.
#[derive(Serialize)]
struct Kept<'a> {
    format: &'static str,
    book: &'a str,
    issue: u32,
    who: &'a str,
    how: &'a str,
    items: &'a [Asked],
    #[serde(skip_serializing_if = "Option::is_none")]
    scan: Option<String>,
}

impl ByHand {
    /// Each item with the mark that it was issued with.
    fn asked(&self, issue: &Issue) -> Result<Vec<Asked>, Refusal> {
        let asked = |(room, item): &(String, String)| {
            let found = issue.item(room, item).ok_or_else(|| Refusal::NoItem(room.clone(), item.clone()))?;
            let (decision, option, note) = (self.decision, self.option.clone(), self.note.clone());
            let asked = Asked { room: room.clone(), item: item.clone(), mark: found.mark, decision, option, note };
            match fault(&asked, issue, issue) {
                None => Ok(asked),
                Some(why) => Err(Refusal::NothingHolds(vec![Refused { room: room.clone(), item: item.clone(), why }])),
            }
        };
        self.items.iter().map(asked).collect()
    }
}

impl Receiver {
    /// Records a decision that was given by other means, of the items as they were issued last.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn by_hand(&self, given: &ByHand, at: Moment) -> Result<Outcome, Refusal> {
        let mut open = self.store().open()?;
        let book = open.chain().opening().ok_or(Refusal::OtherBook)?.book.clone();
        if !self.may_decide(&given.who) {
            return Err(Refusal::NoApprover(given.who.clone()));
        }
        let number = issued(open.chain()).map(|issued| issued.number).max().ok_or(Refusal::OtherBook)?;
        let issue = self.issue(open.chain(), number)?.ok_or(Refusal::NoIssue(number))?;
        let items = given.asked(&issue)?;
        let scan = given.scan.as_ref().map(|(bytes, ending)| format!("{}.{ending}", Digest::of(bytes)));
        let kept = Kept {
            format: "bookmatch by hand 1",
            book: &book,
            issue: number,
            who: &given.who,
            how: &given.how,
            items: &items,
            scan: scan.clone(),
        };
        let kept: Value = serde_json::to_value(kept).map_err(|_| RecordError::NotExact)?;
        let response = Digest::of_json(&kept).map_err(|_| RecordError::NotExact)?;
        if is_recorded(open.chain(), &response, true) {
            return Ok(Outcome::Already);
        }
        if let (Some((bytes, _)), Some(name)) = (&given.scan, &scan) {
            open.keep("scans", name, bytes)?;
        }
        open.keep_response(&kept, &response)?;
        let (who, how) = (given.who.clone(), Some(given.how.clone()));
        let (by, key, signed, refused) = (By::Hand, None, None, vec![]);
        let fact = Decided { response, issue: number, who, by, key, how, made: at, signed, items, refused };
        open.append(at, Fact::Decided(fact))?;
        Ok(Outcome::Recorded(vec![]))
    }

    /// Confirms an unsigned response with the person: named by the first digits of its digest.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn confirm(&self, digits: &str, by: &str, at: Moment) -> Result<Outcome, Refusal> {
        let mut open = self.store().open()?;
        let response = unsigned(open.chain(), digits).ok_or_else(|| Refusal::NoResponse(digits.into()))?;
        let confirmed = |fact: &Fact| matches!(fact, Fact::Confirmed(one) if one.response == response);
        if open.chain().lines.iter().any(|line| confirmed(&line.fact)) {
            return Ok(Outcome::Already);
        }
        let on = at.day().ok_or(Refusal::OtherBook)?;
        open.append(at, Fact::Confirmed(Confirmed { response, by: by.into(), on }))?;
        Ok(Outcome::Recorded(vec![]))
    }

    /// Closes the condition of an approval as noted.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn met(&self, item: &(String, String), by: &str, note: &str, at: Moment) -> Result<Outcome, Refusal> {
        let mut open = self.store().open()?;
        let noted = open.chain().lines.iter().rev().find_map(|line| match &line.fact {
            Fact::Decided(decided) => decided.items.iter().find(|asked| {
                (&asked.room, &asked.item) == (&item.0, &item.1) && asked.decision == Decision::ApprovedAsNoted
            }),
            _ => None,
        });
        let mark = noted.map(|asked| asked.mark).ok_or_else(|| Refusal::NoCondition(item.0.clone(), item.1.clone()))?;
        let (room, item) = item.clone();
        let same = |fact: &Fact| matches!(fact, Fact::Met(met) if (&met.room, &met.item, met.mark) == (&room, &item, mark) && met.note == note);
        if open.chain().lines.iter().any(|line| same(&line.fact)) {
            return Ok(Outcome::Already);
        }
        let on = at.day().ok_or(Refusal::OtherBook)?;
        open.append(at, Fact::Met(Met { room, item, mark, by: by.into(), note: note.into(), on }))?;
        Ok(Outcome::Recorded(vec![]))
    }
}

/// The unsigned response whose digest begins so; none when there is none, or more than one.
fn unsigned(chain: &Chain, digits: &str) -> Option<Digest> {
    let is_short = digits.len() < 8;
    let bare = chain.lines.iter().filter_map(|line| match &line.fact {
        Fact::Decided(decided) if decided.by == By::Unsigned => Some(decided.response),
        _ => None,
    });
    let mut found = bare.filter(|response| !is_short && response.to_string().starts_with(digits));
    found.next().filter(|first| found.all(|other| other == *first))
}
