//! A drain: its pipe, where it comes up, and what it goes through or into.

use crate::units::Length;

use super::phrase::{self, Face, Meaning};
use super::pipe::Pipe;
use super::{InWords, Side};

/// A drain, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Drain {
    /// The pipe.
    pub pipe: Pipe,
    /// How far from the wall it comes up, and from which face of it, where its words name one such distance.
    pub rough_in: Option<(Length, Face)>,
    /// The side at which it is.
    pub side: Option<Side>,
    /// How deep the water is that its trap holds.
    pub seal: Option<Length>,
    /// What it goes through, or into, where its words name one such way.
    pub way: Option<DrainWay>,
    /// How high a standpipe ends above the trap below it.
    pub above_trap: Option<Length>,
}

impl InWords for Drain {
    fn of_words(words: &str) -> Self {
        let from_wall = phrase::lengths(words).into_iter().filter_map(|told| match told.is {
            Meaning::FromWall(face) => Some((told.length, face)),
            _ => None,
        });
        let all: Vec<(Length, Face)> = from_wall.collect();
        let rough_in = if let [only] = all.as_slice() { Some(*only) } else { None };
        let first = |is: Meaning| phrase::lengths(words).into_iter().find(|told| told.is == is).map(|told| told.length);
        let (seal, above_trap) = (first(Meaning::Seal), first(Meaning::AboveTrap));
        Self {
            pipe: Pipe::of_words(words),
            rough_in,
            side: Side::read(words),
            way: DrainWay::of(words),
            seal,
            above_trap,
        }
    }
}

/// What water goes through, or into, on its way into the drain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrainWay {
    /// Through a fitting that lets air in.
    AirGap,
    /// Through a hose that is led up under the counter.
    HighLoop,
    /// Into a pipe that stands up.
    Standpipe,
    /// Into a tub or a sink.
    Tub,
    /// Into a drain in the floor.
    FloorDrain,
}

impl DrainWay {
    fn of(words: &str) -> Option<Self> {
        let lower = words.to_lowercase();
        let named = |words: &[&str]| words.iter().any(|word| lower.contains(word));
        let all = [
            (Self::AirGap, named(&["air gap", "air-gap", "airgap"])),
            (Self::HighLoop, named(&["high loop", "high-loop", "loop under the counter"])),
            (Self::Standpipe, named(&["standpipe", "stand pipe", "stand-pipe"])),
            (Self::Tub, named(&["laundry tub", "utility sink", "laundry sink", "into the tub", "into the sink"])),
            (Self::FloorDrain, named(&["floor drain", "gully", "sumidero"])),
        ];
        let mut told = all.into_iter().filter(|(_, is)| *is).map(|(way, _)| way);
        told.next().filter(|_| told.next().is_none())
    }

    /// Whether what a sheet asks is not met by what is there: of each pair, one is no other (common practice).
    pub fn is_not(self, there: Self) -> bool {
        let of_a_dishwasher = |way| matches!(way, Self::AirGap | Self::HighLoop);
        // An air gap does all that a loop does.
        self != there
            && of_a_dishwasher(self) == of_a_dishwasher(there)
            && (self, there) != (Self::HighLoop, Self::AirGap)
    }

    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Self::AirGap => "an air gap",
            Self::HighLoop => "a high loop",
            Self::Standpipe => "a standpipe",
            Self::Tub => "a tub or sink",
            Self::FloorDrain => "a floor drain",
        }
    }
}
