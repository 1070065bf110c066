//! Rows of cabinets along a wall, and what stands in them.

use super::{Burning, Splash};
use crate::source::{Span, Spanned};
use crate::units::{Length, phrase};
use crate::vocabulary::{Code, Faults, Readings, Slot, Usual, name, record, words};

words! {
    /// An end of a wall or run, or a side that a door hangs on; seen from inside the room.
    #[derive(Default)]
    pub enum End {
        #[default]
        Left = "left" also "left hand" "left side" "left hand side" "on the left" "hinged left" "left-hinged" "L" "LH" "lh",
        Right = "right" also "right hand" "right side" "right hand side" "on the right" "hinged right" "right-hinged" "R" "RH" "rh",
    }
}

impl End {
    /// The other one.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

words! {
    /// What a run can meet at its ends.
    pub enum RunEnd {
        Wall = "wall",
        Corner = "corner",
        Open = "open",
    }
}

words! {
    /// Sides of a cabinet, or ends of a run, that are finished to be seen.
    pub enum FinishedSides {
        Left = "left",
        Right = "right",
        Both = "both" also "all",
        None = "none",
    }
}

words! {
    /// Sides of a room's cabinets that are finished to be seen.
    pub enum CabinetEnds {
        All = "all" also "both",
        Left = "left",
        Right = "right",
        None = "none",
    }
}

impl CabinetEnds {
    /// Whether that side is one of them.
    pub fn has(self, end: End) -> bool {
        match self {
            Self::All => true,
            Self::None => false,
            Self::Left => end == End::Left,
            Self::Right => end == End::Right,
        }
    }
}

impl FinishedSides {
    /// Whether that side is one of them.
    pub fn has(self, end: End) -> bool {
        match self {
            Self::Both => true,
            Self::None => false,
            Self::Left => end == End::Left,
            Self::Right => end == End::Right,
        }
    }
}

record! {
    item
    pub struct Run = RUN("run", "cabinets, fillers, appliances and gaps in a row along a wall") {
        wall: Slot<String> = "wall", "the wall that it stands against", "A" as name::Wall;
        from: End = "from", "the end from which it is set out; the left if left out", "left" as Usual;
        starts: Slot<Length> = "starts", "from that end of the wall to its first part", "25 1/2\"";
        above_floor: Slot<Length> = "above floor",
            "its lower edge from the finished floor, for wall cabinets and shelves; left out, it stands on the floor",
            "54\"";
        depth: Slot<Length> = "depth", "from the wall to the front of its doors", "24\"";
        height: Slot<Length> = "height", "height of its cabinets", "34 1/2\"";
        counter: CounterOfRun = "counter", "the counter on it", "{depth: 25 1/2\", height: 36\"}";
        handles: Slot<Length> = "handles", "how far its handles stand out from the doors", "1 3/8\"";
        toe_kick: Slot<Length> = "toe kick", "height of the recess at its foot, from the finished floor", "4\"";
        crown: Slot<Length> = "crown", "height of the moulding or closure above its cabinets", "3\"";
        space: Slot<Readings> = "space",
            "clear length from end to end as measured; the least governs",
            "[73 1/2\", 73 5/8\"]";
        left_end: Slot<RunEnd> = "left end", "what it meets at its left end", "wall";
        right_end: Slot<RunEnd> = "right end", "what it meets at its right end", "open";
        finished_ends: Slot<FinishedSides> = "finished ends",
            "which of its ends have a finished side, where they are seen",
            "right";
        burning: Slot<Burning> = "material",
            "whether it burns, for what stands near a cooking surface; left out, it counts as burning",
            "does not burn";
        note: Slot<String> = "note", "a line for the joiner", "Scribed to the wall on site.";
        parts: Vec<Part> = "parts",
            "what stands in it, one beside the other from the end where it starts",
            "[{filler: 3\"}, {cabinet: drawers, width: 24\", drawers: 3}, {opening: range}]";
    }
}

record! {
    group
    #[derive(Default)]
    pub struct CounterOfRun = COUNTER("counter of a run", "the counter that lies on a run's cabinets") {
        depth: Slot<Length> = "depth", "from the wall to its front edge", "25 1/2\"";
        height: Slot<Length> = "height", "its top from the finished floor", "36\"";
        splash: Slot<Splash> = "splash", "what stands up from it along the wall", "{thickness: 3/4\", height: 4\"}";
    }
}

record! {
    pub struct Part = PART("part of a run", "one thing in a run: a cabinet, a tall unit, a filler, a panel, a gap, or an opening by its name") {
        cabinet: Slot<String> = "cabinet", "a cabinet, by what it is", "drawers";
        tall: Slot<String> = "tall", "a tall unit, by what it is", "pantry";
        filler: Slot<Length> = "filler", "a filler so wide", "3\"";
        panel: Slot<Length> = "panel", "a panel so thick", "3/4\"";
        gap: Slot<Length> = "gap", "nothing, so wide", "36\"";
        opening: Slot<String> = "opening", "an opening, as wide as it measures", "range" as name::Opening;
        width: Slot<Length> = "width", "width of a cabinet or tall unit", "24\"";
        depth: Slot<Length> = "depth", "depth, where it is not the run's", "15\"";
        height: Slot<Length> = "height", "height, where it is not the run's", "90\"";
        doors: Slot<u32> = "doors", "how many doors", "2";
        drawers: Slot<u32> = "drawers", "how many drawers or pull-outs", "3";
        hinge: Slot<End> = "hinge", "the side a single door hangs on", "left";
        door_width: Slot<Length> = "door width",
            "width of each door or drawer front, where they take less than its own width: of a blind corner",
            "18\"";
        blind: Slot<End> = "blind",
            "the side at which it lies blind in the corner; left out, the one nearer to an end of its wall",
            "left";
        stiles: Slot<Length> = "stiles", "width of each stile of its face frame", "1 1/2\"";
        finished: Slot<FinishedSides> = "finished", "which of its sides are finished to be seen", "left";
        burning: Slot<Burning> = "material",
            "whether it burns, for what stands near a cooking surface; left out, it counts as burning",
            "does not burn";
        note: Slot<String> = "note", "a line for the joiner", "False front.";
        holds: Vec<Spanned<String>> = "holds",
            "openings cut into it: a sink, a cooktop, an oven",
            "[sink]" as name::Opening;
    }
    besides {
        /// What it is, by the one of its first six keys that is written.
        is: PartIs = |_| PartIs::Gap(Length::ZERO);
        /// Where it is written.
        span: Span = |fields| fields.span;
    }
    then Part::when_read
}

impl Part {
    /// It must be one thing, and no more.
    fn when_read(self, at: Span, faults: &mut Faults) -> Option<Self> {
        let absent = [self.cabinet.is_absent(), self.tall.is_absent(), self.opening.is_absent()].into_iter();
        let absent = absent.chain([&self.filler, &self.panel, &self.gap].map(Slot::is_absent));
        let message = match absent.filter(|absent| !absent).count() {
            1 => return Some(Self { is: self.read_as()?, ..self }),
            0 => phrase!("this part of a run says not what it is"),
            several => phrase!("this part of a run is {several} things at once", several),
        };
        let remedy = "write one of `cabinet`, `tall`, `filler`, `panel`, `gap` and `opening`";
        faults.stop(Code::WRONG_TYPE, at, message, remedy);
        None
    }

    /// What it is; none where that could not be read.
    fn read_as(&self) -> Option<PartIs> {
        let named = [
            self.cabinet.get().cloned().map(PartIs::Cabinet),
            self.tall.get().cloned().map(PartIs::Tall),
            self.opening.spanned().cloned().map(PartIs::Opening),
        ];
        let wide = [
            self.filler.get().copied().map(PartIs::Filler),
            self.panel.get().copied().map(PartIs::Panel),
            self.gap.get().copied().map(PartIs::Gap),
        ];
        named.into_iter().chain(wide).flatten().next()
    }
}

/// What a part of a run is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PartIs {
    /// A cabinet, by what it is.
    Cabinet(String),
    /// A tall unit, by what it is.
    Tall(String),
    /// A filler so wide.
    Filler(Length),
    /// A panel so thick.
    Panel(Length),
    /// Nothing, so wide.
    Gap(Length),
    /// An opening by its name.
    Opening(Spanned<String>),
}

impl PartIs {
    /// What it is called in findings.
    pub fn word(&self) -> &str {
        match self {
            Self::Cabinet(what) | Self::Tall(what) => what,
            Self::Filler(_) => "filler",
            Self::Panel(_) => "panel",
            Self::Gap(_) => "gap",
            Self::Opening(name) => &name.value,
        }
    }
}
