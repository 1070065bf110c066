//! A drain: its pipe, where it comes up, and what it goes through or into.

use crate::units::Length;

use super::hole::without_hole;
use super::phrase::{self, Face, Meaning};
use super::pipe::Pipe;
use super::raised::is_led_up;
use super::{InWords, Side, denied};

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
    /// What it goes through, or into.
    pub ways: DrainWays,
    /// Whether a toilet's outlet meets it in the floor or in the wall.
    pub goes: Option<OutletGoes>,
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
        // What has a distance to the wall comes up out of the floor.
        let by_distance = rough_in.map(|_| OutletGoes::IntoTheFloor);
        Self {
            pipe: Pipe::of_words(&without_hole(words)),
            rough_in,
            side: Side::read(words),
            ways: DrainWays::of(words),
            goes: OutletGoes::of_drain(words).or(by_distance),
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

/// Where a toilet's outlet goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OutletGoes {
    /// Into the floor, so far from the wall.
    IntoTheFloor,
    /// Through the wall, so high above the floor.
    ThroughTheWall,
}

/// What a drain in the wall is called.
const IN_THE_WALL: [&str; 26] = [
    "through the wall",
    "through wall",
    "in the wall",
    "in wall",
    "into the wall",
    "out of the wall",
    "wall outlet",
    "wall discharge",
    "outlet to wall",
    "to the wall behind",
    "rear outlet",
    "rear discharge",
    "back outlet",
    "horizontal",
    "p trap",
    "a pared",
    "a la pared",
    "en pared",
    "en la pared",
    "waagerecht",
    "waagrecht",
    "wandabgang",
    "in der wand",
    "aus der wand",
    "sortie murale",
    "carrier",
];
/// What one in the floor is called.
const IN_THE_FLOOR: [&str; 24] = [
    "through the floor",
    "through floor",
    "in the floor",
    "in floor",
    "into the floor",
    "out of the floor",
    "floor outlet",
    "floor flange",
    "floor discharge",
    "flange on the floor",
    "trap to floor",
    "outlet to floor",
    "pipe to floor",
    "soil to floor",
    "bottom outlet",
    "s trap",
    "vertical",
    "a suelo",
    "al suelo",
    "en el suelo",
    "senkrecht",
    "bodenabgang",
    "im boden",
    "in den boden",
];
/// A flange is one in the floor, where nothing says that it is in the wall.
const FLANGES: [&str; 3] = ["closet flange", "toilet flange", "pan collar"];

impl OutletGoes {
    /// Where the words of a drain say that it is, if in one place.
    fn of_drain(words: &str) -> Option<Self> {
        let lower = words.to_lowercase().replace(['-', '‐', '‑'], " ");
        let parts: Vec<&str> = lower.split([',', ';', '(', ')']).collect();
        let named = |known: &[&str]| {
            parts.iter().any(|part| known.iter().any(|word| part.match_indices(word).any(|(at, _)| is_said(part, at))))
        };
        // `suelo, 110 mm, 23 cm a la pared`: what begins with the floor tells how far from the wall.
        if parts.first().is_some_and(|first| ["suelo", "en suelo", "floor", "boden"].contains(&first.trim())) {
            let others = IN_THE_WALL.into_iter().filter(|word| !["a la pared", "a pared"].contains(word));
            let walls: Vec<&str> = others.collect();
            return if named(&walls) { None } else { Some(Self::IntoTheFloor) };
        }
        match (named(&IN_THE_WALL), named(&IN_THE_FLOOR)) {
            (true, true) => None,
            (true, false) => Some(Self::ThroughTheWall),
            (false, true) => Some(Self::IntoTheFloor),
            (false, false) => named(&FLANGES).then_some(Self::IntoTheFloor),
        }
    }
}

/// Whether a word that begins there begins a word, and nothing before it denies it.
fn is_said(part: &str, at: usize) -> bool {
    let before = part.get(..at).unwrap_or_default();
    let begins = before.chars().next_back().is_none_or(|letter| !letter.is_alphanumeric());
    begins && !denied(before)
}

/// All ways that the words of a drain name, and whether they say that a dishwasher's is not there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct DrainWays {
    /// Each as the place of its own among [`DrainWay::ALL`].
    named: [bool; DrainWay::ALL.len()],
    /// Whether its words say that there is no loop, or a low one.
    pub without_a_loop: bool,
}

impl DrainWays {
    fn of(words: &str) -> Self {
        let lower = words.to_lowercase().replace(['-', '‐', '‑'], " ").replace(" but ", ", ");
        let parts: Vec<&str> = lower.split([',', ';', '(', ')', '.', ':']).collect();
        let met = |known: &[&str], is: bool| {
            parts.iter().any(|part| {
                let begins = |at: usize| part.get(..at).and_then(|before| before.chars().next_back());
                let mut met = known.iter().flat_map(|word| part.match_indices(word)).map(|(at, _)| at);
                met.any(|at| !begins(at).is_some_and(char::is_alphanumeric) && is_raised(part, at) == is)
            })
        };
        let led_up = parts.iter().any(|part| is_led_up(part));
        let named = DrainWay::ALL.map(|way| met(way.words(), true) || way == DrainWay::HighLoop && led_up);
        let is_raised = named.iter().zip(DrainWay::ALL).any(|(named, way)| *named && way.is_of_a_dishwasher());
        let lacks = [DrainWay::AirGap, DrainWay::HighLoop].iter().any(|way| met(way.words(), false));
        Self { named, without_a_loop: lacks && !is_raised }
    }

    /// Whether that way is named.
    pub fn names(self, way: DrainWay) -> bool {
        self.named.iter().zip(DrainWay::ALL).any(|(named, known)| *named && known == way)
    }

    /// The one way that is named.
    pub fn only(self) -> Option<DrainWay> {
        let mut told = self.named.iter().zip(DrainWay::ALL).filter(|(named, _)| **named).map(|(_, way)| way);
        told.next().filter(|_| told.next().is_none())
    }

    /// What a dishwasher's hose is led through: an air gap, a high loop, or either.
    pub fn of_a_dishwasher(self) -> Option<&'static str> {
        match (self.names(DrainWay::AirGap), self.names(DrainWay::HighLoop)) {
            (true, true) => Some("an air gap or a high loop"),
            (true, false) => Some(DrainWay::AirGap.word()),
            (false, true) => Some(DrainWay::HighLoop.word()),
            (false, false) => None,
        }
    }
}

/// Whether a loop or an air gap that is named there is meant to be: nothing before or behind it says that it is not, or
/// that the hose hangs low.
fn is_raised(part: &str, at: usize) -> bool {
    let (before, from) = (part.get(..at).unwrap_or_default(), part.get(at..).unwrap_or_default());
    let low = before.split_whitespace().any(|word| ["low", "bajo", "baja", "tiefe"].contains(&word));
    let lacks = ["missing", "not ", "falta", "fehlt", "later", "to come", "yet"].iter().any(|word| from.contains(word));
    let other = ["instead of", "in place of", "in lieu of", "rather than"];
    let is_replaced =
        other.iter().any(|words| before.trim_end().trim_end_matches(" an").trim_end_matches(" a").ends_with(words));
    !low && !lacks && !is_replaced && !denied(before)
}

impl DrainWay {
    /// Each of them.
    const ALL: [Self; 5] = [Self::AirGap, Self::HighLoop, Self::Standpipe, Self::Tub, Self::FloorDrain];

    /// By which it is known, by the beginnings of words, with spaces for hyphens.
    fn words(self) -> &'static [&'static str] {
        match self {
            Self::AirGap => &["air gap", "airgap", "air break", "interrupción de aire", "freier auslauf"],
            Self::HighLoop => &[
                "high loop",
                "loop",
                "swan neck",
                "hose clipped up",
                "hose raised",
                "bucle",
                "lazo",
                "cuello de cisne",
                "schlaufe",
                "schlauchbogen",
                "hochschlaufe",
                "hochgeführt",
            ],
            Self::Standpipe => &["standpipe", "stand pipe"],
            Self::Tub => &["laundry tub", "utility sink", "laundry sink", "into the tub", "into the sink"],
            Self::FloorDrain => &["floor drain", "gully", "sumidero"],
        }
    }

    fn is_of_a_dishwasher(self) -> bool {
        matches!(self, Self::AirGap | Self::HighLoop)
    }

    /// Whether what a sheet asks is not met by what is there: of each pair, one is no other (common practice).
    pub fn is_not(self, there: Self) -> bool {
        // An air gap does all that a loop does.
        self != there
            && self.is_of_a_dishwasher() == there.is_of_a_dishwasher()
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_loop_is_named_denied_or_not_told() {
        let read = |words: &str| {
            let ways = Drain::of_words(words).ways;
            (ways.of_a_dishwasher(), ways.without_a_loop)
        };
        for high in [
            "to the disposer, high loop",
            "high-loop",
            "hose looped up under the counter",
            "con bucle alto",
            "Schlauch mit Hochschlaufe",
            "no air gap, but a high loop",
            "hose fastened high under the countertop, then into the disposer",
            "dishwasher wye, hose up and over",
            "hose hooked high under the worktop, to trap spigot",
            "al sifón, manguera elevada bajo la encimera",
            "desagüe al sifón, manguera sujeta arriba bajo la encimera",
            "Schlauch hoch unter der Arbeitsplatte befestigt",
            "to the trap (high loop)",
        ] {
            assert_eq!(read(high), (Some("a high loop"), false), "{high}");
        }
        assert_eq!(read("high loop or air gap"), (Some("an air gap or a high loop"), false));
        for low in [
            "low loop",
            "direct to the waste, no loop",
            "to the trap without high loop",
            "no air gap",
            "high loop missing",
            "sin bucle",
            "ohne Schlaufe",
        ] {
            assert_eq!(read(low), (None, true), "{low}");
        }
        for unsaid in [
            "to the disposer",
            "1 1/2\" at the sink",
            "by plumber",
            "al sifón",
            "hose to the trap under the counter",
            "hose not fastened up under the counter",
            "hose clipped low under the counter",
            "hose to be hooked up under the worktop later",
            "spigot 500 mm high, hose to the trap",
            "hose clipped to the high-level spigot",
        ] {
            assert_eq!(read(unsaid), (None, false), "{unsaid}");
        }
    }

    #[test]
    fn of_two_distances_the_one_from_the_wall_behind_is_the_rough_in() {
        let told = |words: &str| Drain::of_words(words).rough_in.map(|(distance, _)| distance);
        for words in [
            "3\" closet flange, 12\" from the finished wall, 17\" from the left wall",
            "12\" from finished back wall, 18\" from side wall, 3\"",
            "3\" flange, rough-in 12\", 17\" off the side wall",
            "12\" rough-in, 3\", 18\" from the finished right-hand wall",
            "3\", 12\" off the wall, 16\" off the sidewall",
            "3\" flange in the floor, 12\" to the finished wall, 15\" to the tub wall",
        ] {
            assert_eq!(told(words), Some(Length::from_inches(12)), "{words}");
        }
        assert_eq!(told("3\" flange, 17\" from the left wall"), None);
        assert_eq!(told("3\", 12\" from the wall, 14\" from the wall"), None);
    }

    #[test]
    fn a_toilet_s_drain_is_in_the_wall_or_in_the_floor() {
        let goes = |words: &str| Drain::of_words(words).goes;
        for floor in [
            "110 mm soil through the floor",
            "floor outlet",
            "S-trap to floor, 110 mm",
            "110 mm, salida a suelo",
            "3\" closet flange",
            "3\" flange, 12\" from the finished wall",
            "12\" rough-in",
            "DN 100 senkrecht",
            "suelo, 110 mm, 23 cm a la pared",
        ] {
            assert_eq!(goes(floor), Some(OutletGoes::IntoTheFloor), "{floor}");
        }
        for wall in [
            "rear outlet, 4\" AFF",
            "3\" closet flange in the wall",
            "110 mm, salida a pared a 180 mm",
            "4\" P-trap",
            "110 mm a la pared",
            "DN 90, Abgang waagerecht",
        ] {
            assert_eq!(goes(wall), Some(OutletGoes::ThroughTheWall), "{wall}");
        }
        for unsaid in [
            "110 mm soil",
            "110 mm soil, 220 mm above finished floor",
            "3\" flange, rough-in to be checked",
            "90 mm",
            "P-trap or S-trap",
            "suelo, 110 mm, o salida horizontal",
        ] {
            assert_eq!(goes(unsaid), None, "{unsaid}");
        }
    }
}
