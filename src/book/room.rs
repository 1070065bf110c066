//! A room as measured: its size, its openings and what stands around them.

use super::{
    Access, BackPanel, Below, Burning, Clearances, CounterRun, CutOut, Each, Hollow, Landing, Layout, LookUp,
    NarrowPoint, Outline, Photo, Seating, Selection, ServicePoint, Setting, Waiver,
};
use crate::source::{Span, Spanned};
use crate::units::{Date, Length};
use crate::vocabulary::{Kind, Named, Readings, Slot, Trait, record};

/// A room.
#[derive(Debug)]
pub struct Room {
    /// The name of its folder.
    pub folder: String,
    /// What the household calls it.
    pub name: Slot<String>,
    /// The letter of its sheets, unique in the book.
    pub letter: String,
    /// Where in the house it is.
    pub whereabouts: Slot<String>,
    /// A sentence that opens its page, in Markdown.
    pub intro: Slot<String>,
    /// Its finished faces.
    pub outline: Slot<Outline>,
    /// What stands where in it.
    pub layout: Layout,
    /// Ceiling height from the finished floor.
    pub ceiling: Slot<Ceiling>,
    /// Whether the ceiling burns.
    pub ceiling_burning: Slot<Burning>,
    /// Still to be laid on the floor that the openings were measured from.
    pub floor_build_up: Slot<Length>,
    /// How many cook at once.
    pub cooks: Slot<u32>,
    /// Distances in it.
    pub clearances: Clearances,
    /// Where people sit in it.
    pub seating: Named<Seating>,
    /// The standard of access that it is planned by, where it differs from the book's.
    pub access_profile: Slot<&'static str>,
    /// What it offers in access.
    pub access: Access,
    /// The picture that opens it.
    pub photo: Option<Photo>,
    /// More pictures.
    pub photos: Vec<Photo>,
    /// Its openings, in the order written.
    pub openings: Vec<Opening>,
    /// Stretches of counter between sink, cooktop and refrigerator.
    pub counters: Named<CounterRun>,
    /// Narrow points on the way to it, after those of the book.
    pub way_in: Vec<NarrowPoint>,
    /// What is chosen in it, in the order of files and records.
    pub selections: Vec<Selection>,
    /// Why it is so.
    pub notes: Vec<Note>,
    /// For the office alone, in Markdown.
    pub private: Slot<String>,
    /// Findings set aside for this room.
    pub waivers: Vec<Waiver>,
    /// Where `room.yaml` begins; none when the room has no such file.
    pub span: Option<Span>,
    /// Finds openings and selections by name.
    pub look_up: LookUp,
}

impl Room {
    /// What the household calls it, or its folder.
    pub fn title(&self) -> &str {
        self.name.get().map_or(&self.folder, |name| name)
    }
}

/// A ceiling.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ceiling {
    /// Level, at that height from the finished floor.
    Level(Length),
    /// Rising.
    Sloped {
        /// The least height.
        low: Length,
        /// The greatest height.
        high: Length,
        /// Whether it rises along the room's length rather than its width.
        along_length: bool,
        /// The wall from which it rises, by its letter or name.
        low_at: Slot<String>,
    },
}

/// Prose in Markdown, from a file in the room's folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// Its path.
    pub path: String,
    /// Its text.
    pub markdown: String,
}

/// A hole that something goes into.
#[derive(Debug)]
pub struct Opening {
    /// Its name in the room.
    pub name: Spanned<String>,
    /// The kind of thing that goes in.
    pub takes: Slot<Kind>,
    /// The wall that it is at, where no run holds it.
    pub wall: Slot<String>,
    /// From that wall's left end.
    pub at: Slot<Length>,
    /// Clear width: at the floor, in the middle, at the top.
    pub width: Slot<Readings>,
    /// Clear height: left, middle, right.
    pub height: Slot<Readings>,
    /// Clear depth.
    pub depth: Slot<Readings>,
    /// Both diagonals.
    pub diagonals: Slot<(Length, Length)>,
    /// Distances of both sides from one plumb line.
    pub plumb: Slot<Plumb>,
    /// How far its bottom is above the finished floor; absent: it stands on the floor.
    pub sill: Slot<Length>,
    /// Whether its height was measured from the finished floor; absent: not said.
    pub from_finished_floor: Slot<bool>,
    /// Whether its width and depth were measured between studs; absent: between finished walls.
    pub between_studs: Slot<bool>,
    /// What is still to come on those studs; absent: nobody says.
    pub wall_build_up: Slot<WallBuildUp>,
    /// Who measured; absent: as planned.
    pub measured: Slot<Measured>,
    /// What the book itself says, where a newer reading on record took its place.
    pub as_written: Option<AsWritten>,
    /// What stands to the left.
    pub left: Slot<Neighbour>,
    /// What stands to the right.
    pub right: Slot<Neighbour>,
    /// What is above.
    pub above: Slot<Neighbour>,
    /// Clear floor in front.
    pub in_front: Slot<Length>,
    /// From the wall to the counter's front edge.
    pub counter_depth: Slot<Length>,
    /// Top of the counter from the finished floor.
    pub counter_height: Slot<Length>,
    /// Counter around it, to set things down on.
    pub landing: Slot<Landing>,
    /// The cabinet that it is cut into.
    pub cabinet: Slot<HousingCabinet>,
    /// Where the front of what goes in is meant to be.
    pub setting: Slot<Setting>,
    /// The type of unit that it is made for.
    pub made_for: Slot<CutOut>,
    /// What is there to connect to.
    pub service: Services,
    /// What stands below.
    pub below: Slot<Below>,
    /// Height left in the cabinet's front for an apron.
    pub apron_opening: Slot<Length>,
    /// The wall that it goes into.
    pub hollow: Slot<Hollow>,
    /// The opening whose thing is joined to this one.
    pub pair: Slot<String>,
    /// Where each service comes out.
    pub points: Slot<Each<ServicePoint>>,
    /// A line for the installer.
    pub note: Slot<String>,
    /// Findings set aside for this opening.
    pub waivers: Vec<Waiver>,
    /// Where it is written.
    pub span: Span,
}

impl Opening {
    /// Whether it takes things of that kind.
    pub fn takes_a(&self, kind: Kind) -> bool {
        self.takes.get() == Some(&kind)
    }

    /// Whether what it takes has that trait.
    pub fn takes_one(&self, what: Trait) -> bool {
        self.takes.get().is_some_and(|kind| kind.is(what))
    }

    /// The governing width between finished faces: the least reading, or what is left between the two
    /// sides seen from one plumb line, `min(right) − max(left)`, whichever is less. None where it was
    /// measured between studs and nobody says what comes on them.
    pub fn governing_width(&self) -> Option<Length> {
        let least = self.width.get().and_then(|readings| readings.least()).map(|least| least.value);
        let plumb = self.plumb.get().and_then(Plumb::between);
        let measured = least.into_iter().chain(plumb).min()?;
        let to_come = self.to_come_on_its_walls()?;
        Some(measured - to_come.left - to_come.right)
    }

    /// The width between finished faces where it is greatest: no part of the opening is known to be
    /// wider. None as for the governing width.
    pub fn widest(&self) -> Option<Length> {
        let most = self.width.get().and_then(|readings| readings.greatest()).map(|most| most.value);
        let plumb = self.plumb.get().and_then(Plumb::at_most);
        let measured = most.into_iter().chain(plumb).max()?;
        let to_come = self.to_come_on_its_walls()?;
        Some(measured - to_come.left - to_come.right)
    }

    /// The governing depth to the finished wall: the least reading. None as for the width.
    pub fn governing_depth(&self) -> Option<Length> {
        let least = self.depth.get().and_then(|readings| readings.least())?.value;
        Some(least - self.to_come_on_its_walls()?.back)
    }

    /// What is still to come on the faces that it was measured between; none when it must be asked.
    pub fn to_come_on_its_walls(&self) -> Option<WallBuildUp> {
        match self.between_studs.get() {
            Some(true) => self.wall_build_up.get().copied(),
            _ => Some(WallBuildUp::default()),
        }
    }
}

/// Sizes of an opening as the book itself has them.
#[derive(Clone, Debug, Default)]
pub struct AsWritten {
    /// Width.
    pub width: Slot<Readings>,
    /// Height.
    pub height: Slot<Readings>,
    /// Depth.
    pub depth: Slot<Readings>,
    /// Both diagonals.
    pub diagonals: Slot<(Length, Length)>,
    /// Distances from one plumb line.
    pub plumb: Slot<Plumb>,
    /// Who measured.
    pub measured: Slot<Measured>,
}

/// What is still to come on the walls around an opening.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct WallBuildUp {
    /// At its left.
    pub left: Length,
    /// At its right.
    pub right: Length,
    /// Behind it.
    pub back: Length,
}

/// Distances of both sides from one plumb line, at the same heights.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plumb {
    /// To the left side.
    pub left: Vec<Length>,
    /// To the right side.
    pub right: Vec<Length>,
}

impl Plumb {
    /// The width between the two sides.
    pub fn between(&self) -> Option<Length> {
        Some(*self.right.iter().min()? - *self.left.iter().max()?)
    }

    /// The greatest width at any of the heights.
    pub fn at_most(&self) -> Option<Length> {
        self.left.iter().zip(&self.right).map(|(left, right)| *right - *left).max()
    }
}

record! {
    #[derive(Default)]
    pub struct Measured = MEASURED("measurement", "who measured an opening, when, and with what") {
        on: Slot<Date> = "on", "the day", "2027-01-11";
        by: Slot<String> = "by", "who", "site lead";
        with: Slot<String> = "with", "the instrument", "steel tape";
        again: Slot<MeasuredAgain> = "again",
            "who measured it a second time, before cabinets or stone are ordered",
            "{on: 2027-01-18, by: the joiner}";
    }
}

record! {
    #[derive(Default)]
    pub struct MeasuredAgain = MEASURED_AGAIN("second measurement", "who measured an opening a second time: somebody else") {
        on: Slot<Date> = "on", "the day", "2027-01-18";
        by: Slot<String> = "by", "who", "the joiner";
    }
}

record! {
    short "what" as String;
    pub struct Neighbour = NEIGHBOUR("neighbour", "what stands beside or above an opening") {
        what: String = "what", "what it is", "wall";
        gap: Slot<Length> = "gap", "from the opening's edge to it, trim and baseboard counted as part of it", "2 1/2\"";
        height: Slot<Length> = "height", "its lower edge from the finished floor, for what is above", "66\"";
        top: Slot<Length> = "top", "its top from the finished floor, for what stands beside", "84\"";
        depth: Slot<Length> = "depth", "how far it stands out from the wall", "12\"";
        burning: Slot<Burning> = "material",
            "whether it burns, for what stands near a cooking surface; left out, it counts as burning",
            "does not burn";
    }
}

impl Neighbour {
    /// The word for nothing at all.
    pub const NOTHING: &'static str = "nothing";

    /// Whether it is said that nothing stands there.
    pub fn is_nothing(&self) -> bool {
        self.what.eq_ignore_ascii_case(Self::NOTHING)
    }
}

record! {
    #[derive(Default)]
    pub struct HousingCabinet = INSIDE("housing cabinet", "the cabinet that an oven, cooktop or sink is cut into, inside") {
        inside_width: Slot<Length> = "inside width", "clear between its sides", "34 1/2\"";
        inside_depth: Slot<Length> = "inside depth",
            "from its front edge to the back panel, or to an outlet that stands proud",
            "23 1/2\"";
        inside_height: Slot<Length> = "inside height", "clear height", "28\"";
        outside_width: Slot<Length> = "outside width", "over its sides or stiles", "36\"";
        sides: Slot<Length> = "sides", "thickness of each of its sides; the usual one if left out", "3/4\"";
        stiles: Slot<Length> = "stiles", "width of each stile of its face frame", "1 1/2\"";
        back_panel: Slot<BackPanel> = "back panel", "whether the back panel is cut away behind it", "whole";
    }
}

record! {
    group
    #[derive(Default)]
    pub struct Services = SERVICE("services", "power, gas, water and air as they are at the opening") {
        power: Slot<String> = "power", "volts, amperes and receptacle", "120 V 15 A 5-15";
        gas: Slot<String> = "gas", "what the branch carries", "65000 Btu/h";
        water: Slot<String> = "water", "line and valve", "1/4\" with shut-off, 8\" AFF";
        drain: Slot<String> = "drain", "size and height", "1 1/2\", 16\" AFF";
        duct: Slot<String> = "duct", "size and way out", "8\" round, through the roof";
        blocking: Slot<String> = "blocking", "what holds brackets and bars", "solid blocking 66\" to 70\" AFF";
    }
}
