//! The facts that a ledger holds, each with its own words in JSON.

use serde::{Deserialize, Serialize};

use crate::digest::Digest;
use crate::units::{Date, Length};

use super::{Device, During, Moment};

/// What a line says happened.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is")]
pub enum Fact {
    /// The ledger was begun; always its first line.
    #[serde(rename = "opened")]
    Opened(Opened),
    /// An issue was frozen.
    #[serde(rename = "issued")]
    Issued(Issued),
    /// An approver was given a key.
    #[serde(rename = "invited")]
    Invited(Invited),
    /// An approver's key no longer counts.
    #[serde(rename = "withdrawn")]
    Withdrawn(Withdrawn),
    /// An approver decided.
    #[serde(rename = "decided")]
    Decided(Decided),
    /// An unsigned response, or readings, were confirmed with the person.
    #[serde(rename = "confirmed")]
    Confirmed(Confirmed),
    /// The condition of an approval as noted was met.
    #[serde(rename = "condition met")]
    Met(Met),
    /// Openings were measured.
    #[serde(rename = "measured")]
    Measured(Measured),
    /// Readings were taken back.
    #[serde(rename = "taken back")]
    TakenBack(TakenBack),
}

/// The ledger was begun.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Opened {
    /// The book's id: 32 hex digits, random.
    pub book: String,
    /// What the book was called then.
    pub title: String,
}

/// What an issue is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Purpose {
    /// To be approved.
    #[serde(rename = "approval")]
    Approval,
    /// To be built from.
    #[serde(rename = "construction")]
    Construction,
}

impl Purpose {
    /// The word that is written and printed.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Approval => "approval",
            Self::Construction => "construction",
        }
    }
}

/// An issue was frozen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Issued {
    /// Its number, from 1.
    pub number: u32,
    /// What it is for.
    #[serde(rename = "for")]
    pub purpose: Purpose,
    /// Its day.
    pub on: Date,
    /// Of the bytes of its file.
    pub sha256: Digest,
    /// How many items it holds.
    pub items: u32,
}

/// An approver was given a key.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Invited {
    /// The approver, by its id.
    pub who: String,
    /// The key's id: the first 8 hex digits of the SHA-256 of its 32 bytes.
    pub key: String,
    /// The day.
    pub on: Date,
}

/// An approver's key no longer counts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Withdrawn {
    /// The approver, by its id.
    pub who: String,
    /// The key's id.
    pub key: String,
    /// The day.
    pub on: Date,
}

/// How it is known whose decision it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum By {
    /// By the approver's own key.
    #[serde(rename = "private link")]
    PrivateLink,
    /// It is not known: the response bears no key.
    #[serde(rename = "unsigned")]
    Unsigned,
    /// The designer wrote it down.
    #[serde(rename = "hand")]
    Hand,
}

/// What was decided of an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Decision {
    /// Approved.
    #[serde(rename = "approved")]
    Approved,
    /// Approved on a condition, which the note says.
    #[serde(rename = "approved as noted")]
    ApprovedAsNoted,
    /// To be revised and asked again.
    #[serde(rename = "revise and resubmit")]
    ReviseAndResubmit,
    /// Rejected.
    #[serde(rename = "rejected")]
    Rejected,
}

impl Decision {
    /// The words that are written and printed.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Approved => "approved",
            Self::ApprovedAsNoted => "approved as noted",
            Self::ReviseAndResubmit => "revise and resubmit",
            Self::Rejected => "rejected",
        }
    }
}

/// A name under a statement.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Signed {
    /// The name as typed.
    pub name: String,
    /// What was signed.
    pub statement: String,
    /// Whether a signature was drawn; the drawing is in the response.
    pub drawn: bool,
}

/// A decision of one item.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Asked {
    /// The room, by its folder.
    pub room: String,
    /// The selection, by its id.
    pub item: String,
    /// What was shown.
    pub mark: Digest,
    /// What was decided.
    pub decision: Decision,
    /// The option that was chosen, by its id.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub option: Option<String>,
    /// In the approver's words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// A decision that was not taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Refused {
    /// The room, by its folder.
    pub room: String,
    /// The selection, by its id.
    pub item: String,
    /// Why not.
    pub why: String,
}

/// An approver decided.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Decided {
    /// Of the canonical JSON of the response without its `mac`.
    pub response: Digest,
    /// The issue that was answered.
    pub issue: u32,
    /// The approver, by its id.
    pub who: String,
    /// How it is known whose decision it is.
    pub by: By,
    /// The key's id, when by private link.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub key: Option<String>,
    /// How and when it was given, as the designer wrote it, when by hand.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub how: Option<String>,
    /// Between which moments it was given, when by hand and where that was said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub given: Option<During>,
    /// When it was made, by the clock where it was made; when by hand, when it was written down.
    pub made: Moment,
    /// The device that it was made on, and the how-manieth there, where the page said so.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub device: Option<Device>,
    /// The name under it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub signed: Option<Signed>,
    /// The decisions.
    pub items: Vec<Asked>,
    /// Those that were not taken.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub refused: Vec<Refused>,
}

/// An unsigned response, or readings, were confirmed with the person.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Confirmed {
    /// The response.
    pub response: Digest,
    /// Who asked the person.
    pub by: String,
    /// The day.
    pub on: Date,
}

/// The condition of an approval as noted was met.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Met {
    /// The room, by its folder.
    pub room: String,
    /// The selection, by its id.
    pub item: String,
    /// The mark that was approved as noted.
    pub mark: Digest,
    /// The response that stated the condition. Older lines do not say it: they close the condition that
    /// was stated last of that mark.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub response: Option<Digest>,
    /// Who says so.
    pub by: String,
    /// How it was met.
    pub note: String,
    /// The day.
    pub on: Date,
}

/// Readings were taken back: they count no longer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TakenBack {
    /// The response that they came in.
    pub response: Digest,
    /// Who says so.
    pub by: String,
    /// Why.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// The day.
    pub on: Date,
}

/// Openings were measured. It counts once it is confirmed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Measured {
    /// Of the canonical JSON of the response.
    pub response: Digest,
    /// Who measured.
    pub by: String,
    /// The day, by the clock where it was measured.
    pub on: Date,
    /// The moment, by the same clock; older lines do not say it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub made: Option<Moment>,
    /// What was read.
    pub readings: Vec<Read>,
}

/// What of an opening was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// Clear width.
    Width,
    /// Clear height.
    Height,
    /// Clear depth.
    Depth,
    /// A diagonal, by the side of its foot.
    Diagonal,
    /// From one plumb line at the left to the opening's left side.
    PlumbLeft,
    /// From the same line to the opening's right side.
    PlumbRight,
}

impl Side {
    /// The word that is shown.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Width => "width",
            Self::Height => "height",
            Self::Depth => "depth",
            Self::Diagonal => "diagonal",
            Self::PlumbLeft => "from the plumb line to the left side",
            Self::PlumbRight => "from the plumb line to the right side",
        }
    }
}

/// Where in an opening it was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Spot {
    /// At the floor.
    Floor,
    /// In the middle.
    Middle,
    /// At the top.
    Top,
    /// At the left.
    Left,
    /// At the right.
    Right,
}

impl Spot {
    /// The word that is shown.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Floor => "floor",
            Self::Middle => "middle",
            Self::Top => "top",
            Self::Left => "left",
            Self::Right => "right",
        }
    }
}

/// One reading.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Read {
    /// The room, by its folder.
    pub room: String,
    /// The opening, by its name.
    pub opening: String,
    /// What was measured.
    pub what: Side,
    /// Where, if that was said.
    pub at: Option<Spot>,
    /// The length, in nanometres.
    #[serde(with = "nanometres")]
    pub length: Length,
}

/// A length as the text of its nanometres.
mod nanometres {
    use serde::{Deserialize, Deserializer, Serializer};

    use crate::units::Length;

    pub fn serialize<S: Serializer>(length: &Length, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&length.nanometres())
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Length, D::Error> {
        let text = String::deserialize(deserializer)?;
        let nanometres: i64 = text.parse().map_err(serde::de::Error::custom)?;
        if nanometres.to_string() != text {
            return Err(serde::de::Error::custom("not a whole number of nanometres"));
        }
        Ok(Length::from_nanometres(nanometres))
    }
}
