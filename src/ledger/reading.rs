//! What was read of a tape at openings, as facts of the ledger.

use serde::{Deserialize, Serialize};

use crate::digest::Digest;
use crate::units::{Date, Length};

use super::Moment;

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
    /// How far its bottom is above the floor.
    Sill,
    /// Clear floor in front of it.
    InFront,
    /// From the wall to the front edge of the counter beside it.
    CounterDepth,
    /// From the floor to the top of the counter beside it.
    CounterHeight,
    /// Clear between the sides of the cabinet that it is cut into.
    InsideWidth,
    /// From that cabinet's front edge to its back panel.
    InsideDepth,
    /// Clear height of that cabinet.
    InsideHeight,
    /// From the top of the counter to what stands below.
    Below,
    /// Height left in the cabinet's front for a sink's apron.
    Apron,
    /// From the studs' face to whatever is behind.
    Cavity,
    /// From the wall to the centre of a toilet's outlet.
    RoughIn,
    /// From the wall to the mark of a valve.
    Valve,
    /// Where power comes out; `at` says what was read of it.
    Power,
    /// Where gas comes out, likewise.
    Gas,
    /// Where water comes out, likewise.
    Water,
    /// Where the drain is, likewise.
    Drain,
    /// Where the duct is, likewise.
    Duct,
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
            Self::Sill => "bottom above the floor",
            Self::InFront => "clear in front",
            Self::CounterDepth => "depth of the counter",
            Self::CounterHeight => "top of the counter",
            Self::InsideWidth => "inside width of the cabinet",
            Self::InsideDepth => "inside depth of the cabinet",
            Self::InsideHeight => "inside height of the cabinet",
            Self::Below => "down to what is below",
            Self::Apron => "opening for the apron",
            Self::Cavity => "cavity of the wall",
            Self::RoughIn => "rough-in",
            Self::Valve => "depth of the valve",
            Self::Power => "power",
            Self::Gas => "gas",
            Self::Water => "water",
            Self::Drain => "drain",
            Self::Duct => "duct",
        }
    }
}

/// Where in an opening it was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ReadingSpot {
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
    /// Of a service, from the opening's left edge.
    FromLeft,
    /// Of a service, above the floor.
    Height,
    /// Of a service, out from the wall.
    Proud,
}

impl ReadingSpot {
    /// The word that is shown.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Floor => "floor",
            Self::Middle => "middle",
            Self::Top => "top",
            Self::Left => "left",
            Self::Right => "right",
            Self::FromLeft => "distance from the left edge",
            Self::Height => "height",
            Self::Proud => "distance from the wall",
        }
    }
}

/// The face that something was read from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ReadFrom {
    /// The floor of that day, on which something is still to be laid.
    PresentFloor,
    /// The finished floor.
    FinishedFloor,
    /// Studs, on which something is still to come.
    Studs,
    /// Finished walls.
    FinishedWalls,
}

impl ReadFrom {
    /// The word that is shown.
    pub const fn word(self) -> &'static str {
        match self {
            Self::PresentFloor => "present floor",
            Self::FinishedFloor => "finished floor",
            Self::Studs => "studs",
            Self::FinishedWalls => "finished walls",
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
    pub at: Option<ReadingSpot>,
    /// The length, in nanometres.
    #[serde(with = "nanometres")]
    pub length: Length,
    /// The face that it was read from, where that was said; older readings do not say it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<ReadFrom>,
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
