//! The facts that a ledger holds, each with its own words in JSON.

use serde::{Deserialize, Serialize};

use crate::digest::Digest;
use crate::units::Date;

use super::{Acknowledged, Device, During, Measured, Moment, Received, Sent, TakenBack};

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
    /// An unsigned response, readings or a delivery were confirmed with the person.
    #[serde(rename = "confirmed")]
    Confirmed(Confirmed),
    /// An unsigned response is not of the person whom it names.
    #[serde(rename = "not theirs")]
    NotTheirs(NotTheirs),
    /// The condition of an approval as noted was met.
    #[serde(rename = "condition met")]
    Met(Met),
    /// Openings were measured.
    #[serde(rename = "measured")]
    Measured(Measured),
    /// Readings, or what was said of a delivery, were taken back.
    #[serde(rename = "taken back")]
    TakenBack(TakenBack),
    /// Somebody looked at what a delivery brought.
    #[serde(rename = "received")]
    Received(Received),
    /// An issue was sent to somebody.
    #[serde(rename = "sent")]
    Sent(Sent),
    /// Somebody says that an issue came to hand.
    #[serde(rename = "acknowledged")]
    Acknowledged(Acknowledged),
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
pub enum Attestation {
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
pub struct ItemDecision {
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
    pub by: Attestation,
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
    pub items: Vec<ItemDecision>,
    /// Those that were not taken.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub refused: Vec<Refused>,
}

/// An unsigned response, readings or a delivery were confirmed with the person.
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

/// An unsigned response is not of the person whom it names.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NotTheirs {
    /// The response.
    pub response: Digest,
    /// Who asked the person.
    pub by: String,
    /// What the person said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// The day.
    pub on: Date,
}
