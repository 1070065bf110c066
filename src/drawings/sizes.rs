//! What the drawings of an opening say: sizes as measured and as made, and what stands around.
//!
//! Left and right are as one sees the opening from the room. A gap may be negative: the thing lies
//! over the edge. Whether that is a misfit the verdict alone says.

use crate::language::Words;
use crate::units::System;
use crate::units::length::Length;

/// How an opening misses what goes into it, in one direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Misfit {
    /// The opening is so much too small.
    TooSmall(Length),
    /// The opening is so much larger than the maker's sheet allows.
    TooLarge(Length),
}

/// What the verdict says does not meet; a drawing shows these and works out none of its own.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Misfits {
    pub width: Option<Misfit>,
    pub height: Option<Misfit>,
    pub depth: Option<Misfit>,
}

/// How far a thing's front lies over the edges of its hole, both sides together: no misfit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Laps {
    pub width: Option<Length>,
    pub height: Option<Length>,
}

/// What is behind an opening.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Behind {
    /// A finished wall.
    #[default]
    Wall,
    /// The other side of an island: depths are measured from there, and no wall is drawn.
    Island,
}

/// What an opening stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Foot {
    /// The finished floor.
    Floor,
    /// Something so high above the finished floor: a sill, the cabinet under the counter that it is cut into.
    Above(Length),
    /// How high is not known: no floor is drawn.
    Unknown,
}

/// An opening seen from the room, with what goes into it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpeningFront {
    /// Unique in its page; the names inside the drawing begin with it.
    pub id: String,
    /// What goes in, or the opening's own name: `refrigerator`.
    pub name: String,
    /// The item's number on the sheets: `K-07`.
    pub tag: String,
    pub opening: Face,
    pub thing: Option<Thing>,
    pub needs: Needs,
    pub left: Neighbour,
    pub right: Neighbour,
    pub above: Neighbour,
    pub services: Vec<Service>,
    /// Top of the counter above the finished floor.
    pub counter: Option<Length>,
    pub misfits: Misfits,
    pub units: System,
    /// The language that it is worded in.
    pub words: Words,
}

/// The opening's own sizes, to finished faces.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Face {
    /// One width, or one at each height where the tape was held.
    pub widths: Vec<Reading>,
    /// From its foot.
    pub height: Length,
    pub foot: Foot,
    /// Still to be laid on the floor that was there when the opening was measured; the heights
    /// here have it taken off already.
    pub floor_build_up: Option<Length>,
    /// False: as planned, to be verified in the field.
    pub measured: bool,
}

/// A width, and where the tape was held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reading {
    pub held: ReadAt,
    pub width: Length,
}

/// Where in the opening's height a width was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ReadAt {
    Top,
    Middle,
    Floor,
    /// One width for the whole height.
    Throughout,
}

/// A product that stands in the opening, as its maker gives it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Thing {
    pub name: String,
    pub width: Length,
    /// Two heights where its legs can be turned.
    pub height: Between,
    /// From the opening's left edge, where the opening is narrowest, to the thing.
    pub gap_left: Length,
    /// Of what hangs from the top of its opening, a hob in its counter or a basin on its wall: how far below that top its
    /// own is. None of what stands.
    pub hangs: Option<Length>,
    pub door: Door,
    pub handle: bool,
    pub laps: Laps,
}

/// A size with limits; both the same where there is only one figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Between {
    pub least: Length,
    pub most: Length,
}

/// What a maker's sheet asks of a size: at least, at most, or between.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Limits {
    pub least: Option<Length>,
    pub most: Option<Length>,
}

/// What the thing asks of the opening.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Needs {
    pub width: Limits,
    pub height: Limits,
    pub depth: Limits,
}

/// How the thing opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Door {
    /// It has none, or it slides.
    None,
    /// Hinged at its foot; `reach` is how far it stands out from the front when down.
    Drops { reach: Length },
    /// Hinged at a side; `leaf` is how far it stands out from the front at a right angle.
    Swings { leaf: Length, hinge: Hinged },
}

/// On which side a door hangs, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hinged {
    /// On that side.
    At(Hand),
    /// Two leaves, one at each side, that meet in the middle.
    BothSides,
    /// Nobody says: no leaf is drawn.
    Unknown,
}

/// A side, seen from the room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hand {
    Left,
    Right,
}

/// What stands beside or above the opening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Neighbour {
    pub kind: Beside,
    /// As the book says it: `base cabinet`.
    pub words: String,
    /// For what hangs above: its underside above the finished floor.
    pub underside: Option<Length>,
}

/// How far up a neighbour goes, and whether it is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Beside {
    /// Built, and drawn cut.
    Wall,
    /// As tall as the opening.
    Tall,
    /// As tall as the counter.
    Base,
    /// Nothing that matters.
    Open,
}

/// Where power, water, gas or a drain comes out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Service {
    pub what: String,
    /// From the opening's left edge.
    pub from_left: Length,
    /// Above the finished floor.
    pub above_floor: Length,
}

/// An opening cut from front to back and seen from its right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpeningSide {
    pub id: String,
    pub name: String,
    pub opening: Face,
    /// From the finished wall at the back to the face of what stands beside.
    pub depth: Option<Length>,
    pub needs: Needs,
    pub thing: Option<Deep>,
    /// As [`Thing::hangs`].
    pub hangs: Option<Length>,
    pub height: Option<Between>,
    /// From the finished wall to the edge of the counter.
    pub counter_edge: Option<Length>,
    pub counter: Option<Length>,
    pub services: Vec<Service>,
    pub behind: Behind,
    pub misfits: Misfits,
    pub units: System,
    /// The language that it is worded in.
    pub words: Words,
}

/// A product from its back to its front.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Deep {
    pub name: String,
    /// From the finished wall to its back: the air that it keeps there, or what its front leaves.
    pub behind: Length,
    /// Whether that is known: what is let into a counter is drawn somewhere in it, and no figure is told of where.
    pub is_set: bool,
    /// Its three depths, each from its own back.
    pub body: Length,
    pub with_door: Option<Length>,
    pub with_handle: Option<Length>,
    pub door: Door,
}

/// An opening from above, with the door open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpeningPlan {
    pub id: String,
    pub name: String,
    pub tag: String,
    /// The least width.
    pub width: Length,
    pub depth: Option<Length>,
    pub measured: bool,
    pub thing: Option<Deep>,
    pub thing_width: Option<Length>,
    pub gap_left: Length,
    pub left: Neighbour,
    pub right: Neighbour,
    pub counter_edge: Option<Length>,
    pub across: Option<Across>,
    pub behind: Behind,
    pub misfits: Misfits,
    pub units: System,
    /// The language that it is worded in.
    pub words: Words,
}

/// What stands on the other side of the aisle.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Across {
    pub words: String,
    /// From the finished wall behind the opening.
    pub distance: Length,
}

/// One of several options in its opening, small, from above.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OptionPlan {
    pub id: String,
    /// The option's letter.
    pub letter: String,
    pub name: String,
    /// The opening's least width.
    pub opening: Length,
    pub width: Length,
    pub gap_left: Length,
    pub thing: Deep,
    pub counter_edge: Option<Length>,
    pub misfits: Misfits,
    pub laps: Laps,
    pub units: System,
    /// The language that it is worded in.
    pub words: Words,
}

impl Face {
    /// The least of the readings, which governs.
    pub fn governing(&self) -> Length {
        let widths = self.widths.iter().map(|reading| reading.width);
        widths.min().unwrap_or(Length::ZERO)
    }

    /// The greatest of the readings.
    pub fn widest(&self) -> Length {
        let widths = self.widths.iter().map(|reading| reading.width);
        widths.max().unwrap_or(Length::ZERO)
    }

    /// The opening's bottom above the finished floor; where that is not known, the drawing begins with it.
    pub fn bottom(&self) -> Length {
        match self.foot {
            Foot::Above(height) => height,
            Foot::Floor | Foot::Unknown => Length::ZERO,
        }
    }

    /// The opening's top above the finished floor.
    pub fn top(&self) -> Length {
        self.bottom() + self.height
    }
}

impl OpeningFront {
    /// Room left at the right of the thing; negative where it lies over the edge.
    pub fn gap_right(&self) -> Option<Length> {
        let thing = self.thing.as_ref()?;
        Some(self.opening.governing() - thing.width - thing.gap_left)
    }

    /// Room left above the thing at its lowest; negative where it is higher than the opening.
    pub fn gap_above(&self) -> Option<Length> {
        let thing = self.thing.as_ref()?;
        Some(thing.hangs.unwrap_or(self.opening.height - thing.height.least))
    }

    /// Room left below a thing that hangs.
    pub fn gap_below(&self) -> Option<Length> {
        let thing = self.thing.as_ref()?;
        Some(self.opening.height - thing.hangs? - thing.height.least).filter(|gap| *gap > Length::ZERO)
    }
}

impl OptionPlan {
    /// Room left at the right of the thing; negative where it lies over the edge.
    pub fn gap_right(&self) -> Length {
        self.opening - self.width - self.gap_left
    }
}

impl Misfit {
    /// By how much.
    pub fn by(self) -> Length {
        match self {
            Misfit::TooSmall(by) | Misfit::TooLarge(by) => by,
        }
    }
}

impl Deep {
    /// From the finished wall to the front, the door included.
    pub fn front(&self) -> Length {
        self.behind + self.with_door.unwrap_or(self.body)
    }

    /// How far it stands out past the edge of a counter; negative where it stays behind.
    pub fn past(&self, edge: Option<Length>) -> Option<Length> {
        edge.filter(|_| self.is_set).map(|edge| self.farthest() - edge)
    }

    /// From the finished wall to whatever stands out farthest.
    pub fn farthest(&self) -> Length {
        let reaches = [self.with_door, self.with_handle];
        let most = reaches.into_iter().flatten().max().unwrap_or(self.body);
        self.behind + most.max(self.body)
    }
}
