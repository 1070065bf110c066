//! A response as it comes in: its limits, its form, and its digest.

use std::fmt;

use serde::Deserialize;
use serde_json::Value;

use crate::digest::{Digest, canonical};
use crate::ledger::photograph::PhotographFault;
use crate::ledger::{Decision, Device, Drawing, Head, ItemDecision, Moment, Read};

use super::delivered::{HandedAcknowledgement, HandedDelivery};
use super::once;
use super::photographs::{self, MAX_HANDED, Photographs};

/// The largest response without photographs, in bytes.
pub const MAX_BYTES: usize = 256 * 1024;
/// How deep lists and objects may stand in each other.
const MAX_DEPTH: usize = 8;
/// The most decisions or readings.
const MAX_ITEMS: usize = 2_000;
/// The longest note or statement, in characters.
const MAX_NOTE: usize = 4_000;
/// The longest name or id.
const MAX_NAME: usize = 200;

/// What `format` says of decisions.
pub const RESPONSE: &str = "bookmatch response 1";
/// What `format` says of readings.
pub const READINGS: &str = "bookmatch readings 1";
/// What `format` says of a delivery.
pub const DELIVERY: &str = "bookmatch delivery 1";
/// What `format` says of an acknowledgement.
pub const ACKNOWLEDGEMENT: &str = "bookmatch acknowledgement 1";

/// Something that was handed over.
#[derive(Clone, Debug, PartialEq)]
pub struct Submission {
    /// Of the canonical JSON without `mac`.
    pub digest: Digest,
    /// The bytes that `mac` is of.
    pub signed: Vec<u8>,
    /// As it came, without photographs.
    pub value: Value,
    /// What it says.
    pub says: SubmissionKind,
    /// The photographs that came with it, by their digests: no part of what it says, which names them.
    pub(super) photographs: Photographs,
}

/// What was handed over.
#[derive(Clone, Debug, PartialEq)]
pub enum SubmissionKind {
    /// Decisions of an approver.
    Decisions(Decisions),
    /// Readings at openings.
    Readings(HandedReadings),
    /// What came in a delivery.
    Delivery(HandedDelivery),
    /// That an issue came to hand.
    Acknowledgement(HandedAcknowledgement),
}

/// Decisions of an approver.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Decisions {
    /// Which form it is of.
    pub format: String,
    /// The book's id.
    pub book: String,
    /// The issue that is answered.
    pub issue: u32,
    /// The approver, by its id.
    pub who: String,
    /// Makes two responses that say the same two.
    pub nonce: String,
    /// When it was made, by the clock where it was made.
    pub made: Moment,
    /// The device that it was made on, and the how-manieth there; older pages do not say it.
    #[serde(default)]
    pub device: Option<Device>,
    /// The line of the ledger that names the issue, as the page stated it; older pages do not.
    #[serde(default)]
    pub ledger: Option<Head>,
    /// What was decided.
    pub items: Vec<ItemDecision>,
    /// The name under it.
    pub signed: Signature,
    /// The proof of the key, if there is one.
    #[serde(default)]
    pub mac: Option<Digest>,
}

/// A name under a statement.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Signature {
    /// The name as typed.
    pub name: String,
    /// What was signed.
    pub statement: String,
    /// The signature as an SVG path of whole numbers; empty when none was drawn.
    pub drawing: String,
}

/// Readings at openings.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandedReadings {
    /// Which form it is of.
    pub format: String,
    /// The book's id.
    pub book: String,
    /// The issue of the sheet, if there was one.
    #[serde(default)]
    pub issue: Option<u32>,
    /// Who measured.
    pub by: String,
    /// Makes two that say the same two.
    pub nonce: String,
    /// When it was made, by the clock where it was made.
    pub made: Moment,
    /// The line of the ledger that names the issue, as the page stated it; older pages do not.
    #[serde(default)]
    pub ledger: Option<Head>,
    /// What was read.
    pub readings: Vec<Read>,
}

/// Why bytes are no response.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Malformed {
    /// Larger than a response can be.
    TooLarge,
    /// Lists and objects stand too deep in each other.
    TooDeep,
    /// Not JSON, or not of the form: in words.
    NotTheForm(String),
    /// A text that is empty, too long or holds what it can't: its place.
    Text(&'static str),
    /// More decisions or readings than there can be, or none.
    Count(usize),
    /// The same item twice: room and item.
    Twice(String, String),
    /// A photograph is not as it may be.
    Photograph(PhotographFault),
    /// Approved as noted, and no note: room and item.
    NoNote(String, String),
    /// It came otherwise than approved, and it is not said how, or what became of it: room and item.
    NotSaid(String, String),
}

impl fmt::Display for Malformed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge => write!(
                f,
                "it is larger than {} KiB, or than {} KiB with photographs",
                MAX_BYTES / 1024,
                MAX_HANDED / 1024
            ),
            Self::TooDeep => write!(f, "lists and objects stand more than {MAX_DEPTH} deep in each other"),
            Self::NotTheForm(why) => write!(f, "it is not a response: {why}"),
            Self::Text(place) => write!(f, "the text of `{place}` is missing, too long, or no such text"),
            Self::Count(0) => f.write_str("it says nothing of any item"),
            Self::Count(count) => write!(f, "it speaks of {count} items, and {MAX_ITEMS} are the most"),
            Self::Twice(room, item) => write!(f, "it decides `{room}/{item}` twice"),
            Self::Photograph(fault) => write!(f, "a photograph can't be taken: {fault}"),
            Self::NotSaid(room, item) => write!(
                f,
                "`{room}/{item}` came otherwise than it was approved, and it is not said how, or what became of it"
            ),
            Self::NoNote(room, item) => write!(f, "it approves `{room}/{item}` as noted, and there is no note"),
        }
    }
}

impl Submission {
    /// Reads what was handed over.
    ///
    /// # Errors
    /// When it passes a limit or is not of the form.
    pub fn read(bytes: &[u8]) -> Result<Submission, Malformed> {
        let Outline { deepest, outside } = outline(bytes);
        // What stands outside of texts is what takes more memory once it is read.
        if bytes.len() > MAX_HANDED || outside > MAX_BYTES {
            return Err(Malformed::TooLarge);
        }
        if deepest > MAX_DEPTH {
            return Err(Malformed::TooDeep);
        }
        let form = |why: &dyn fmt::Display| Malformed::NotTheForm(crate::record::plain(&why.to_string()));
        let mut value = once::value(bytes).map_err(|error| form(&error))?;
        let is_delivery = value.get("format").and_then(Value::as_str) == Some(DELIVERY);
        let photographs = if is_delivery { photographs::take_out(&mut value)? } else { Photographs::new() };
        if photographs.is_empty() && bytes.len() > MAX_BYTES {
            return Err(Malformed::TooLarge);
        }
        let mut without = value.clone();
        if let Some(fields) = without.as_object_mut() {
            fields.remove("mac");
        }
        let signed = canonical(&without).map_err(|error| form(&error))?;
        if signed.len() > MAX_BYTES {
            return Err(Malformed::TooLarge);
        }
        let says = Self::said(&value, &photographs)?;
        Ok(Submission { digest: Digest::of(&signed), signed, value, says, photographs })
    }

    /// What it says, by its form.
    fn said(value: &Value, photographs: &Photographs) -> Result<SubmissionKind, Malformed> {
        let form = |why: &dyn fmt::Display| Malformed::NotTheForm(crate::record::plain(&why.to_string()));
        let format = value.get("format").and_then(Value::as_str).unwrap_or_default();
        let says = match format {
            RESPONSE => SubmissionKind::Decisions(serde_json::from_value(value.clone()).map_err(|error| form(&error))?),
            READINGS => SubmissionKind::Readings(serde_json::from_value(value.clone()).map_err(|error| form(&error))?),
            DELIVERY => SubmissionKind::Delivery(serde_json::from_value(value.clone()).map_err(|error| form(&error))?),
            ACKNOWLEDGEMENT => {
                SubmissionKind::Acknowledgement(serde_json::from_value(value.clone()).map_err(|error| form(&error))?)
            }
            _ => return Err(form(&"its `format` is unknown")),
        };
        match &says {
            SubmissionKind::Decisions(decisions) => decisions.check()?,
            SubmissionKind::Readings(readings) => readings.check()?,
            SubmissionKind::Delivery(delivery) => {
                delivery.check()?;
                delivery.holds(photographs)?;
            }
            SubmissionKind::Acknowledgement(one) => one.check()?,
        }
        Ok(says)
    }
}

impl Decisions {
    fn check(&self) -> Result<(), Malformed> {
        line("who", &self.who)?;
        nonce(&self.nonce)?;
        device(self.device.as_ref())?;
        line("signed.name", &self.signed.name)?;
        text("signed.statement", &self.signed.statement)?;
        if !is_drawing(&self.signed.drawing) {
            return Err(Malformed::Text("signed.drawing"));
        }
        count(self.items.len())?;
        let mut seen = std::collections::BTreeSet::new();
        for asked in &self.items {
            line("room", &asked.room)?;
            line("item", &asked.item)?;
            asked.option.as_deref().map_or(Ok(()), |option| line("option", option))?;
            asked.note.as_deref().map_or(Ok(()), |note| text("note", note))?;
            if !seen.insert((&asked.room, &asked.item)) {
                return Err(Malformed::Twice(asked.room.clone(), asked.item.clone()));
            }
            if asked.decision == Decision::ApprovedAsNoted && asked.note.is_none() {
                return Err(Malformed::NoNote(asked.room.clone(), asked.item.clone()));
            }
        }
        Ok(())
    }
}

impl HandedReadings {
    fn check(&self) -> Result<(), Malformed> {
        line("by", &self.by)?;
        nonce(&self.nonce)?;
        count(self.readings.len())?;
        for read in &self.readings {
            line("room", &read.room)?;
            line("opening", &read.opening)?;
            // From a tenth of a millimetre to a hundred metres.
            if !(100_000..=100_000_000_000).contains(&read.length.nanometres()) {
                return Err(Malformed::Text("length"));
            }
        }
        Ok(())
    }
}

pub(super) fn count(count: usize) -> Result<(), Malformed> {
    if (1..=MAX_ITEMS).contains(&count) { Ok(()) } else { Err(Malformed::Count(count)) }
}

/// A name or an id: on one line, not empty.
pub(super) fn line(place: &'static str, text: &str) -> Result<(), Malformed> {
    let fits = !text.trim().is_empty() && text.chars().count() <= MAX_NAME && !text.chars().any(char::is_control);
    if fits { Ok(()) } else { Err(Malformed::Text(place)) }
}

/// A note or a statement: several lines, not empty.
pub(super) fn text(place: &'static str, text: &str) -> Result<(), Malformed> {
    let odd = |letter: char| letter.is_control() && !matches!(letter, '\n' | '\r' | '\t');
    let fits = !text.trim().is_empty() && text.chars().count() <= MAX_NOTE && !text.chars().any(odd);
    if fits { Ok(()) } else { Err(Malformed::Text(place)) }
}

pub(super) fn nonce(text: &str) -> Result<(), Malformed> {
    hex("nonce", text)
}

pub(super) fn device(device: Option<&Device>) -> Result<(), Malformed> {
    device.map_or(Ok(()), |device| hex("device.id", &device.id))
}

/// 32 hex digits.
fn hex(place: &'static str, text: &str) -> Result<(), Malformed> {
    let fits = text.len() == 32 && text.bytes().all(|digit| matches!(digit, b'0'..=b'9' | b'a'..=b'f'));
    if fits { Ok(()) } else { Err(Malformed::Text(place)) }
}

/// A drawing that can be shown, or none.
fn is_drawing(text: &str) -> bool {
    text.is_empty() || Drawing::parse(text).is_some()
}

/// What can be told of bytes without reading them.
struct Outline {
    /// How deep lists and objects stand in each other.
    deepest: usize,
    /// How many bytes stand outside of texts.
    outside: usize,
}

fn outline(bytes: &[u8]) -> Outline {
    let (mut depth, mut deepest, mut outside, mut in_text, mut escaped) = (0usize, 0, 0, false, false);
    for byte in bytes {
        outside += usize::from(!in_text);
        match byte {
            _ if escaped => escaped = false,
            b'\\' if in_text => escaped = true,
            b'"' => in_text = !in_text,
            b'[' | b'{' if !in_text => {
                depth += 1;
                deepest = deepest.max(depth);
            }
            b']' | b'}' if !in_text => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    Outline { deepest, outside }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn depth_counts_what_stands_outside_of_texts() {
        let Outline { deepest, outside } = outline(br#"{"a":[{"b":"[[[[\"[["}],"c":[]}"#);
        assert_eq!((deepest, outside), (3, 16));
        assert_eq!(Submission::read("[".repeat(200_000).as_bytes()), Err(Malformed::TooDeep));
    }

    #[test]
    fn a_drawing_may_be_left_out_and_is_else_a_path_of_whole_numbers() {
        assert!(is_drawing("") && is_drawing("M12 40L13 41"));
        assert!(!is_drawing("M1 1\"/><script>"));
    }
}
