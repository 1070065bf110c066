//! What the designer writes down: decisions given by other means, what a person says of an answer in their name,
//! and conditions that are met.

use std::fmt;

use serde::Serialize;
use serde_json::Value;

use crate::digest::Digest;
use crate::ledger::{
    Attestation, Chain, Confirmed, Decided, Decision, During, Fact, Issue, IssuedItem, ItemDecision, Line, Met, Moment,
    NotTheirs, Purpose, Refused, Statement, Statements, Vouched,
};

use super::error::RecordError;
use super::receive::{Outcome, Receiver, Refusal, fault, issued};

/// How the designer names an item.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ItemName {
    /// By its room's folder and its id.
    Of(String, String),
    /// By its number on the drawings.
    Tag(String),
}

impl fmt::Display for ItemName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Of(room, item) => write!(f, "{room}/{item}"),
            Self::Tag(tag) => f.write_str(tag),
        }
    }
}

impl ItemName {
    /// The item of an issue that is meant.
    fn item_of<'i>(&self, issue: &'i Issue) -> Result<&'i IssuedItem, Refusal> {
        match self {
            Self::Of(room, item) => issue.item(room, item).ok_or_else(|| Refusal::NoItem(self.to_string())),
            Self::Tag(tag) => {
                let found = issue.items.iter().find(|item| item.tag.eq_ignore_ascii_case(tag));
                found.ok_or_else(|| Refusal::NoItem(tag.clone()))
            }
        }
    }
}

/// A decision that was given by other means.
#[derive(Clone, Debug)]
pub struct ByHand {
    /// The approver, by id.
    pub who: String,
    /// The items.
    pub items: Vec<ItemName>,
    /// What was decided of them.
    pub decision: Decision,
    /// The option that was chosen.
    pub option: Option<String>,
    /// The approver's words.
    pub note: Option<String>,
    /// How it was given.
    pub how: String,
    /// When it was given: a day, or a moment.
    pub given: Option<During>,
    /// The scan of a signed sheet: its bytes, and the ending of its name.
    pub scan: Option<(Vec<u8>, String)>,
}

/// What is kept of it. The same words of the same items are one fact, until the person says something else.
#[derive(Serialize)]
struct KeptDecision<'a> {
    format: &'static str,
    book: &'a str,
    issue: u32,
    who: &'a str,
    how: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    given: Option<During>,
    items: &'a [ItemDecision],
    #[serde(skip_serializing_if = "Option::is_none")]
    scan: Option<String>,
    /// The how-manieth time that the same was said, where something else was said between.
    #[serde(skip_serializing_if = "Option::is_none")]
    again: Option<u32>,
}

impl ByHand {
    /// The issue that was the newest when it was given, which is the one that the person had seen; none where it was
    /// given before there was any, which the review tells.
    fn answers(&self, chain: &Chain) -> Option<u32> {
        let given = self.given?;
        let numbers = chain.lines.iter().filter(|line| line.at <= given.until).filter_map(|line| match &line.fact {
            Fact::Issued(issued) => Some(issued.number),
            _ => None,
        });
        numbers.max()
    }

    /// Whether an issue for approval asks of the same items as a later one shows: that one is answered.
    fn is_asked_in(&self, asking: &Issue, later: &Issue) -> bool {
        let mark = |name: &ItemName, issue| name.item_of(issue).ok().map(|item: &IssuedItem| item.mark);
        let is_same = |name| mark(name, later).is_some_and(|shown| mark(name, asking) == Some(shown));
        later.purpose != Purpose::Approval && self.items.iter().all(is_same)
    }

    /// Each item with the mark that it was issued with in the issue that is answered, and is issued with still.
    fn asked(&self, issue: &Issue, newest: &Issue) -> Result<Vec<ItemDecision>, Refusal> {
        let asked = |name: &ItemName| {
            let found = name.item_of(issue)?;
            let (room, item) = (&found.room, &found.item);
            let (decision, option, note) = (self.decision, self.option.clone(), self.note.clone());
            let asked =
                ItemDecision { room: room.clone(), item: item.clone(), mark: found.mark, decision, option, note };
            let holds = newest.item(room, item).is_some_and(|now| now.is(&asked.mark));
            match fault(&asked, issue, issue) {
                None if holds => Ok(asked),
                None => Err(Refusal::SeenOtherwise(name.to_string(), issue.number, newest.number)),
                Some(why) => Err(Refusal::NotSo(Refused { room: room.clone(), item: item.clone(), why })),
            }
        };
        self.items.iter().map(asked).collect()
    }
}

impl Receiver {
    /// Records a decision that was given by other means, of the items as the issue showed them that was the newest
    /// when it was given.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn by_hand(&self, given: &ByHand, at: Moment) -> Result<Outcome, Refusal> {
        let mut open = self.store().open()?;
        let book = open.chain().opening().ok_or(Refusal::OtherBook)?.book.clone();
        if !self.may_decide(&given.who) {
            return Err(Refusal::NoApprover(given.who.clone()));
        }
        let newest = issued(open.chain()).map(|issued| issued.number).max().ok_or(Refusal::OtherBook)?;
        let number = given.answers(open.chain()).unwrap_or(newest);
        let issue = |number| match self.issue(open.chain(), number) {
            Ok(found) => found.ok_or(Refusal::NoIssue(number)),
            Err(error) => Err(error.into()),
        };
        let asking = issued(open.chain()).filter(|one| one.purpose == Purpose::Approval && one.number < number);
        let number = match asking.map(|issued| issued.number).max() {
            Some(asking) if given.is_asked_in(&*issue(asking)?, &*issue(number)?) => asking,
            _ => number,
        };
        let items = given.asked(&*issue(number)?, &*issue(newest)?)?;
        let scan = given.scan.as_ref().map(|(bytes, ending)| format!("{}.{ending}", Digest::of(bytes)));
        let mut kept = KeptDecision {
            format: "bookmatch by hand 1",
            book: &book,
            issue: number,
            who: &given.who,
            how: &given.how,
            given: given.given,
            items: &items,
            scan: scan.clone(),
            again: None,
        };
        let (kept, response) = loop {
            let value: Value = serde_json::to_value(&kept).map_err(|_| RecordError::NotExact)?;
            let response = Digest::of_json(&value).map_err(|_| RecordError::NotExact)?;
            match line_of(open.chain(), &response) {
                None => break (value, response),
                Some(line) if is_last_word(open.chain(), line, &given.who, &items) => return Ok(Outcome::Already),
                Some(_) => kept.again = Some(kept.again.map_or(2, |again| again + 1)),
            }
        };
        if let (Some((bytes, _)), Some(name)) = (&given.scan, &scan) {
            open.keep("scans", name, bytes)?;
        }
        open.keep_response(&kept, &response)?;
        let (who, how) = (given.who.clone(), Some(given.how.clone()));
        let (by, key, signed, refused) = (Attestation::Hand, None, None, vec![]);
        let (made, given, device) = (at, given.given, None);
        let fact = Decided { response, issue: number, who, by, key, how, given, made, device, signed, items, refused };
        open.append(at, Fact::Decided(fact))?;
        Ok(Outcome::Recorded(vec![]))
    }

    /// Confirms an unsigned response, readings or a delivery with the person: named by the first digits of its digest.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn confirm(&self, digits: &str, by: &str, at: Moment) -> Result<Outcome, Refusal> {
        let mut open = self.store().open()?;
        let response = unproved(open.chain(), digits, true).ok_or_else(|| Refusal::NoResponse(digits.into()))?;
        if Vouched::of(&open.chain().lines).is_confirmed(&response) {
            return Ok(Outcome::Already);
        }
        let on = at.day().ok_or(Refusal::OtherBook)?;
        open.append(at, Fact::Confirmed(Confirmed { response, by: by.into(), on }))?;
        Ok(Outcome::Recorded(vec![]))
    }

    /// Records that unsigned responses are not of the person whom they name: each named by the first digits of
    /// its digest. All of them, or none.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn not_theirs(&self, named: &[String], by: &str, note: Option<&str>, at: Moment) -> Result<Outcome, Refusal> {
        let mut open = self.store().open()?;
        let on = at.day().ok_or(Refusal::OtherBook)?;
        let found =
            |digits: &String| unproved(open.chain(), digits, false).ok_or_else(|| Refusal::NoResponse(digits.clone()));
        let mut responses = named.iter().map(found).collect::<Result<Vec<Digest>, Refusal>>()?;
        let vouched = Vouched::of(&open.chain().lines);
        responses.retain(|response| !vouched.is_not_theirs(response));
        responses.sort_unstable();
        responses.dedup();
        if responses.is_empty() {
            return Ok(Outcome::Already);
        }
        for response in responses {
            let (by, note) = (by.into(), note.map(str::to_owned));
            open.append(at, Fact::NotTheirs(NotTheirs { response, by, note, on }))?;
        }
        Ok(Outcome::Recorded(vec![]))
    }

    /// The room and the id of an item: a number on the drawings is that of the newest issue.
    fn item_meant(&self, chain: &Chain, name: &ItemName) -> Result<(String, String), Refusal> {
        if let ItemName::Of(room, item) = name {
            return Ok((room.clone(), item.clone()));
        }
        let number = issued(chain).map(|issued| issued.number).max().ok_or(Refusal::OtherBook)?;
        let issue = self.issue(chain, number)?.ok_or(Refusal::NoIssue(number))?;
        name.item_of(&issue).map(|found| (found.room.clone(), found.item.clone()))
    }

    /// Closes the condition of one approval as noted, and no other: that of the response whose digest begins
    /// with `digits`, which may be left out where one condition alone is open.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn met(&self, met: &Closed<'_>, at: Moment) -> Result<Outcome, Refusal> {
        let mut open = self.store().open()?;
        let (room, item) = self.item_meant(open.chain(), met.item)?;
        let (room, item) = (room.as_str(), item.as_str());
        if is_closed(open.chain(), (room, item), met) {
            return Ok(Outcome::Already);
        }
        let none = || Refusal::NoCondition(room.into(), item.into());
        let (mark, response) = {
            let statements = Statements::of(&open.chain().lines);
            let conditions = statements.open_conditions(room, item);
            let named = |one: &Statement<'_>| one.decided.response.to_string().starts_with(met.digits.unwrap_or(""));
            let found: Vec<&Statement<'_>> = conditions.iter().filter(|one| named(one)).collect();
            match found.as_slice() {
                [] => return Err(none()),
                [one] => (one.asked.mark, one.decided.response),
                several => return Err(Refusal::Conditions(several.iter().map(|one| condition(one)).collect())),
            }
        };
        let on = at.day().ok_or(Refusal::OtherBook)?;
        let (by, note) = (met.by.into(), met.note.into());
        let fact = Met { room: room.into(), item: item.into(), mark, response: Some(response), by, note, on };
        open.append(at, Fact::Met(fact))?;
        Ok(Outcome::Recorded(vec![]))
    }
}

/// The line that holds a decision.
fn line_of(chain: &Chain, response: &Digest) -> Option<u32> {
    let is_it = |fact: &Fact| matches!(fact, Fact::Decided(decided) if decided.response == *response);
    chain.lines.iter().find(|line| is_it(&line.fact)).map(|line| line.number)
}

/// Whether nothing that counts was recorded since a line of what that person says of those items.
fn is_last_word(chain: &Chain, number: u32, who: &str, items: &[ItemDecision]) -> bool {
    let is_of = |asked: &ItemDecision| items.iter().any(|item| (&item.room, &item.item) == (&asked.room, &asked.item));
    let vouched = Vouched::of(&chain.lines);
    let said = |line: &Line| match &line.fact {
        Fact::Decided(decided) if decided.who == who && vouched.is_known(decided) => {
            // What was confirmed since counts since then, whenever it came in.
            let since = line.number > number || is_confirmed_since(chain, number, &decided.response);
            since && decided.items.iter().any(is_of)
        }
        _ => false,
    };
    !chain.lines.iter().any(said)
}

/// Whether a response was confirmed after a line.
fn is_confirmed_since(chain: &Chain, number: u32, response: &Digest) -> bool {
    let is_it = |fact: &Fact| matches!(fact, Fact::Confirmed(one) if one.response == *response);
    chain.lines.iter().any(|line| line.number > number && is_it(&line.fact))
}

/// A condition that is met.
#[derive(Clone, Copy, Debug)]
pub struct Closed<'a> {
    /// The item.
    pub item: &'a ItemName,
    /// The first digits of the response that stated the condition.
    pub digits: Option<&'a str>,
    /// Who says that it is met.
    pub by: &'a str,
    /// How it was met.
    pub note: &'a str,
}

/// Whether the same was recorded before, of the same condition, and no condition was stated since.
fn is_closed(chain: &Chain, of: (&str, &str), met: &Closed<'_>) -> bool {
    let is_of = |room: &str, item: &str| (room, item) == of;
    let vouched = Vouched::of(&chain.lines);
    let last = chain.lines.iter().rev().find_map(|line| match &line.fact {
        Fact::Met(one) if is_of(&one.room, &one.item) => {
            let named = one.response.is_none_or(|response| response.to_string().starts_with(met.digits.unwrap_or("")));
            Some(named && one.note == met.note)
        }
        Fact::Decided(decided) if vouched.is_known(decided) => {
            let states =
                |asked: &ItemDecision| is_of(&asked.room, &asked.item) && asked.decision == Decision::ApprovedAsNoted;
            decided.items.iter().any(states).then_some(false)
        }
        _ => None,
    });
    last == Some(true)
}

/// "ada 1a2b3c4d: if it is quiet".
fn condition(one: &Statement<'_>) -> String {
    let digits: String = one.decided.response.to_string().chars().take(8).collect();
    format!("{} {digits}: {}", one.decided.who, one.asked.note.as_deref().unwrap_or_default())
}

/// The unsigned response, or readings, delivery or acknowledgement where they may be meant, whose digest begins so; none when there is
/// none, or more than one.
fn unproved(chain: &Chain, digits: &str, or_readings: bool) -> Option<Digest> {
    let is_short = digits.len() < 8;
    let bare = chain.lines.iter().filter_map(|line| match &line.fact {
        Fact::Decided(decided) if decided.by == Attestation::Unsigned => Some(decided.response),
        Fact::Measured(measured) if or_readings => Some(measured.response),
        Fact::Received(received) if or_readings => Some(received.response),
        Fact::Acknowledged(one) if or_readings => Some(one.response),
        _ => None,
    });
    let mut found = bare.filter(|response| !is_short && response.to_string().starts_with(digits));
    found.next().filter(|first| found.all(|other| other == *first))
}
