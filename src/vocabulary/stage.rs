//! Stages of a job that milestones are named after, and which of them come before which.

use super::hold_point::{HoldPoint, sets};
use super::kinds::Kind;

/// A stage of a job, where a milestone's name tells it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// What was there is taken out.
    Demolition,
    /// Pipes, wires and ducts are laid, until the walls are closed over them.
    RoughIn,
    /// Tile is set.
    Tile,
    /// Floors are laid.
    Floors,
    /// Cabinets are set.
    Cabinets,
    /// Counters are templated.
    Template,
    /// Counters are set.
    Counters,
    /// Fixtures, appliances and lights are connected.
    FitOff,
}

/// What demolition is called.
const DEMOLITION: [&str; 11] = [
    "demolition",
    "demo",
    "strip out",
    "tear out",
    "demolición",
    "derribo",
    "abbruch",
    "riving",
    "rivning",
    "rückbau",
    "démolition",
];
/// What the last visit of the trades is called.
const FIT_OFF: [&str; 8] =
    ["fit off", "second fix", "2nd fix", "trim out", "final connections", "feinmontage", "fertigmontage", "remates"];

impl Stage {
    /// The stage that a milestone of that name ends with.
    pub fn of(milestone: &str) -> Option<Self> {
        let plain = milestone.trim().to_lowercase().replace('-', " ");
        let is = |point: HoldPoint| point.rank(milestone).is_some();
        if DEMOLITION.contains(&plain.as_str()) {
            Some(Self::Demolition)
        } else if is(HoldPoint::RoughInClosed) {
            Some(Self::RoughIn)
        } else if is(HoldPoint::TileSet) {
            Some(Self::Tile)
        } else if sets(milestone, Kind::Floor) {
            Some(Self::Floors)
        } else if sets(milestone, Kind::Cabinet) {
            Some(Self::Cabinets)
        } else if is(HoldPoint::CounterTemplated) {
            Some(Self::Template)
        } else if sets(milestone, Kind::Counter) {
            Some(Self::Counters)
        } else {
            FIT_OFF.contains(&plain.as_str()).then_some(Self::FitOff)
        }
    }

    /// Whether a job can't come to another stage before it is through this one (trade practice). Floors and cabinets go
    /// either way, and so do tile and what is hung on it.
    pub fn comes_before(self, other: Self) -> bool {
        use Stage::{Cabinets, Counters, Demolition, FitOff, RoughIn, Template};
        match self {
            Demolition => other != Demolition,
            RoughIn => !matches!(other, Demolition | RoughIn),
            Cabinets => matches!(other, Template | Counters | FitOff),
            Template => matches!(other, Counters | FitOff),
            Counters => other == FitOff,
            Self::Tile | Self::Floors | FitOff => false,
        }
    }
}
