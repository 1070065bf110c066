//! An opening: what goes in, how it was measured, and what stands around it.

use super::{
    Below, CutOut, FreeVents, Hollow, HousingCabinet, Landing, Neighbour, ServicePoints, Services, Setting,
    TakenFigure, Waiver,
};
use crate::ledger::Side;
use crate::source::Span;
use crate::units::{Date, Length, phrase};
use crate::vocabulary::{
    Code, Faults, Kind, Lengths, Readings, Shown, ShownValue, Slot, Trait, TwoLengths, Usual, name, record, words,
};

words! {
    /// The floor that heights were measured from.
    pub enum MeasuredFrom {
        FinishedFloor = "finished floor",
        PresentFloor = "present floor",
    }
}

words! {
    /// The faces that widths and depths were measured from.
    pub enum MeasuredBetween {
        FinishedWalls = "finished walls",
        Studs = "studs",
    }
}

record! {
    shown
    item
    pub struct Opening = OPENING("opening", "a hole that something goes into: measured, with what stands around it") {
        takes: Slot<Kind> = required "takes", "the kind of thing that goes in", "range";
        wall: Slot<String> = "wall", "the wall that it is at, where no run holds it", "A" as name::Wall;
        at: Slot<Length> = "at", "from that wall's left end, seen from inside the room, to it", "40\"";
        width: Slot<Readings> = "width",
            "clear width at the floor, in the middle and at the top; the least governs",
            "[30 1/16\", 30\", 30 1/8\"]";
        height: Slot<Readings> = "height",
            "clear height at the left, in the middle and at the right",
            "[70 1/2\", 70 1/2\", 70 5/8\"]";
        depth: Slot<Readings> = "depth",
            "clear depth from the front edge to the wall or whatever stands before it",
            "25 1/2\"";
        diagonals: Slot<(Length, Length)> = "diagonals", "both diagonals, to see whether it is square", "[46 7/8\", 47\"]" as TwoLengths;
        plumb: Slot<Plumb> = "plumb",
            "distances of each side from one plumb line",
            "{left: [1\", 1 1/8\", 1\"], right: [31\", 31\", 31 1/8\"]}";
        sill: Slot<Length> = "sill",
            "how far its bottom is above the finished floor; left out, it stands on the floor",
            "31\"";
        measured_from: Slot<MeasuredFrom> = "measured from",
            "the floor its height was measured from",
            "finished floor";
        measured_between: Slot<MeasuredBetween> = "measured between",
            "the faces that its width and depth were measured from; finished ones if left out",
            "studs";
        wall_build_up: Slot<WallBuildUp> = "wall build-up",
            "board, mortar and tile still to come on the studs that it was measured between",
            "{left: 5/8\", right: 5/8\", back: 7/8\"}";
        measured: Slot<Measured> = "measured",
            "who measured, and when; left out, it is as planned",
            "{on: 2027-01-11, by: site lead}";
        left: Slot<Neighbour> = "left", "what stands to the left of it", "base cabinet";
        right: Slot<Neighbour> = "right",
            "what stands to the right of it",
            "{what: wall, gap: 2 1/2\"}";
        above: Slot<Neighbour> = "above",
            "what is above it; `nothing`, where nothing stands or hangs there up to the ceiling",
            "{what: wall cabinet, height: 66\", material: burns}";
        in_front: Slot<Length> = "in front", "clear floor in front of it, to whatever stands opposite", "42\"";
        counter_depth: Slot<Length> = "counter depth",
            "from the wall to the counter's front edge beside it",
            "25 1/2\"";
        counter_height: Slot<Length> = "counter height",
            "top of the counter beside it, from the finished floor",
            "36\"";
        landing: Slot<Box<Landing>> = "landing",
            "counter beside, behind or across from it, to set things down on",
            "{left: 12\", right: 15\"}" => unmarked "it is for the checks: nothing is cut by it";
        cabinet: Slot<Box<HousingCabinet>> = "cabinet",
            "the cabinet that it is cut into",
            "{inside width: 34 1/2\", inside depth: 23 1/2\"}";
        setting: Slot<Setting> = "set",
            "where the front of what goes in is meant to be: in one plane with the fronts beside it, or before them",
            "flush";
        made_for: Slot<CutOut> = "made for", "the type of unit that it is made for", "slide-in";
        service: Services = "service",
            "what is there to connect it to",
            "{power: 120 V 15 A 5-15, gas: 65000 Btu/h}";
        below: Slot<Below> = "below",
            "what stands below a cooktop or a sink",
            "{what: drawer, clear: 5\"}";
        vents: FreeVents = "vents",
            "free cross-sections through which what goes in breathes",
            "{bottom: 200 cm2, top: 200 cm2}";
        apron_opening: Slot<Length> = "apron opening", "height left in the cabinet's front for a sink's apron", "8\"";
        hollow: Slot<Box<Hollow>> = "hollow", "the wall that it goes into, probed", "{cavity: 3 1/2\"}";
        pair: Slot<String> = "pair", "the opening beside or above it whose thing is joined to this one", "freezer";
        points: Slot<Box<ServicePoints>> = "service points",
            "where each service comes out",
            "{power: {from left: 6\", height: 12\"}}";
        note: Slot<String> = "note", "a line for the installer", "Old flue behind: probe before fixing.";
        waivers: Vec<Waiver> = "waive",
            "findings set aside for this opening",
            "[{rule: …, because: …, by: …, on: …}]" => unmarked "what is found is no part of the opening";
    }
    besides {
        /// What the book itself says, where a newer reading on record took its place.
        as_written: Option<AsWritten>;
        /// The figures that a reading on record has, each with who read it, in the order in which they were read.
        taken: Vec<TakenFigure>;
        /// What was read from a floor on which nobody knows what is still to be laid: its height is not known.
        unlevelled: Vec<Side>;
        /// Where it is written.
        span: Span = |fields| fields.name.as_ref().map_or(fields.span, |name| name.span);
    }
}

/// What is boxed since few openings have it is shown as it is.
macro_rules! boxed {
    ($($of:ty),*) => {
        $(impl Shown for Box<$of> {
            fn shown(&self) -> ShownValue {
                self.as_ref().shown()
            }
        })*
    };
}
boxed!(HousingCabinet, Hollow, ServicePoints);

impl Opening {
    /// Whether it takes things of that kind.
    pub fn takes_a(&self, kind: Kind) -> bool {
        self.takes.get() == Some(&kind)
    }

    /// Whether what it takes has that trait.
    pub fn takes_one(&self, what: Trait) -> bool {
        self.takes.get().is_some_and(|kind| kind.is(what))
    }

    /// Whether its height is taken from the floor: no sill is given, and what it takes is let neither into a
    /// counter from above nor into a front.
    pub fn stands_on_the_floor(&self) -> bool {
        let hole = self.takes_one(Trait::DropsIn) || self.takes_one(Trait::LapsOver);
        self.sill.is_absent() && !hole
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

    /// Where the reading is written that its depth follows from.
    pub fn depth_at(&self) -> Option<Span> {
        Some(self.depth.get()?.least()?.span)
    }

    /// What is still to come on the faces that it was measured between; none when it must be asked.
    pub fn to_come_on_its_walls(&self) -> Option<WallBuildUp> {
        match self.measured_between.get() {
            Some(MeasuredBetween::Studs) => self.wall_build_up.get().copied(),
            _ => Some(WallBuildUp::default()),
        }
    }
}

/// Sizes of an opening as the book itself has them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
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

record! {
    shown
    #[derive(Copy, Default)]
    pub struct WallBuildUp = WALL_BUILD_UP("wall build-up", "what is still to come on each of the walls that an opening was measured between; left out, nothing") {
        left: Length = "left", "on the wall at its left", "5/8\"" as Usual;
        right: Length = "right", "on the wall at its right", "5/8\"" as Usual;
        back: Length = "back", "on the wall behind it", "7/8\"" as Usual;
    }
}

record! {
    shown
    pub struct Plumb = PLUMB("plumb readings", "distances of the left and the right side from one plumb line, at the same heights") {
        left: Vec<Length> = "left",
            "from the line to the left side, at the floor, in the middle, at the top",
            "[1\", 1 1/8\", 1\"]" as Lengths;
        right: Vec<Length> = "right",
            "from the line to the right side, at the same heights",
            "[31\", 31\", 31 1/8\"]" as Lengths;
    }
    then Plumb::when_read
}

impl Plumb {
    /// Both sides must be measured at the same heights.
    fn when_read(self, at: Span, faults: &mut Faults) -> Option<Self> {
        let (left, right) = (self.left.len(), self.right.len());
        if left != right {
            let message = phrase!("{left} readings stand for the left side and {right} for the right", left, right);
            faults.stop(Code::WRONG_TYPE, at, message, "measure both sides at the same heights");
            return None;
        }
        Some(self)
    }

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
    shown
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
    shown
    #[derive(Default)]
    pub struct MeasuredAgain = MEASURED_AGAIN("second measurement", "who measured an opening a second time: somebody else") {
        on: Slot<Date> = "on", "the day", "2027-01-18";
        by: Slot<String> = "by", "who", "the joiner";
    }
}
