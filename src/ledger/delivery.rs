//! What came in a delivery, held beside what was approved, as a fact of the ledger.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::digest::Digest;
use crate::units::Date;

use super::{Device, Moment};

/// Somebody looked at what a delivery brought. It counts once it is confirmed; what is said of the same delivery
/// later is a fact of its own, and takes nothing away.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Received {
    /// Of the canonical JSON of the response.
    pub response: Digest,
    /// Which delivery it was.
    pub delivery: Delivery,
    /// Who received it.
    pub by: String,
    /// The day, by the clock where it was received.
    pub on: Date,
    /// The moment, by the same clock.
    pub made: Moment,
    /// The device that it was made on, and the how-manieth there, where the page said so.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub device: Option<Device>,
    /// What was looked at.
    pub items: Vec<ItemReceived>,
}

/// A delivery: by its supplier and what its own paper says.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Delivery {
    /// The supplier, as the book names it; empty where it names none.
    pub from: String,
    /// Which of several loads of that supplier, as the book names it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<String>,
    /// The number on its delivery note, or what was written where it had none.
    pub note: String,
}

/// What came of one item.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ItemReceived {
    /// The room, by its folder.
    pub room: String,
    /// The selection, by its id.
    pub item: String,
    /// The option that was approved, by its id.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub option: Option<String>,
    /// The mark of what it was held beside.
    pub mark: Digest,
    /// Each thing that was looked at, and how it came.
    pub lines: Vec<LineReceived>,
    /// What became of it; said where anything of it is not as approved.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kept: Option<Kept>,
    /// In the words of whoever received it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// Photographs that were taken of it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos: Vec<PhotoTaken>,
}

/// One thing that was looked at.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LineReceived {
    /// What.
    pub of: Looked,
    /// How it came.
    pub came: Came,
    /// What came instead, or how it is damaged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub words: Option<String>,
}

/// A photograph, by which its file is known again.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PhotoTaken {
    /// The name of its file.
    pub name: String,
    /// Of its bytes; absent where the device could not read it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sha256: Option<Digest>,
    /// How many they are, where it was handed over with what is said of it, and stands in the record. Of another its
    /// name alone came.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bytes: Option<u32>,
}

impl PhotoTaken {
    /// The digest and the size of one that was handed over.
    pub fn carried(&self) -> Option<(Digest, u32)> {
        self.sha256.zip(self.bytes)
    }
}

impl Received {
    /// The photographs that were handed over, with their sizes.
    pub fn photographs(&self) -> BTreeMap<Digest, u32> {
        self.items.iter().flat_map(|item| &item.photos).filter_map(PhotoTaken::carried).collect()
    }
}

/// What is looked at of an item, in the order of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Looked {
    /// Maker and model.
    Model,
    /// Finish, colour and material.
    Finish,
    /// Its sizes.
    Size,
    /// On which side its door hangs, in which direction it runs.
    Hand,
    /// Which ends are finished.
    Ends,
    /// How many, or how much.
    Number,
    /// All else that was approved.
    Rest,
}

impl Looked {
    /// All of them, in the order of the page.
    pub const ALL: [Self; 7] =
        [Self::Model, Self::Finish, Self::Size, Self::Hand, Self::Ends, Self::Number, Self::Rest];

    /// The word that is written.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Model => "model",
            Self::Finish => "finish",
            Self::Size => "size",
            Self::Hand => "hand",
            Self::Ends => "ends",
            Self::Number => "number",
            Self::Rest => "rest",
        }
    }

    /// The words that the office reads.
    pub const fn told(self) -> &'static str {
        match self {
            Self::Hand => "hand",
            Self::Ends => "finished ends",
            Self::Rest => "the rest",
            other => other.word(),
        }
    }
}

/// How something came.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Came {
    /// As it was approved.
    Approved,
    /// Otherwise than it was approved.
    Different,
    /// Damaged.
    Damaged,
}

impl Came {
    /// The word that is written and told.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Approved => "as approved",
            Self::Different => "different",
            Self::Damaged => "damaged",
        }
    }
}

/// What became of what came otherwise than it was approved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Kept {
    /// It was taken all the same.
    #[serde(rename = "taken")]
    Taken,
    /// It was sent back.
    #[serde(rename = "sent back")]
    SentBack,
    /// It stands aside until the office has said.
    #[serde(rename = "set aside")]
    SetAside,
}

impl Kept {
    /// The words that are written and told.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Taken => "taken",
            Self::SentBack => "sent back",
            Self::SetAside => "set aside",
        }
    }
}

impl ItemReceived {
    /// Whether all of it came as it was approved.
    pub fn is_as_approved(&self) -> bool {
        self.lines.iter().all(|line| line.came == Came::Approved)
    }

    /// What of it came otherwise, and how.
    pub fn otherwise(&self) -> impl Iterator<Item = &LineReceived> {
        self.lines.iter().filter(|line| line.came != Came::Approved)
    }

    /// Whether two say the same of it.
    pub fn says_as(&self, other: &Self) -> bool {
        let how = |one: &Self| {
            let mut lines: Vec<(Looked, Came)> = one.lines.iter().map(|line| (line.of, line.came)).collect();
            lines.sort_unstable();
            (lines, one.kept, one.mark)
        };
        how(self) == how(other)
    }
}
