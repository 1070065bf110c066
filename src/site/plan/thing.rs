//! A thing in its place: what it is, the wall or island it stands at, its footprint and its height.

use crate::book::{End, Fixture, Island, IslandSide, Opening, Part, PartIs, Run};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

use super::frame::Frame;
use super::shape::ConvexShape;

/// A thing in its place.
#[derive(Clone, Debug)]
pub struct Thing<'a> {
    /// Its name in the book, or what a part of a run is.
    pub name: &'a str,
    /// What it is.
    pub what: What<'a>,
    /// The opening that stands there, if it is one.
    pub opening: Option<&'a Opening>,
    /// Its kind, of an opening or a fixture.
    pub kind: Option<Kind>,
    /// What it stands at.
    pub stands: Stands,
    /// The front of that, seen by someone who stands before the thing.
    pub frame: Frame,
    /// From the frame's left end to its left and its right side.
    pub along: (Length, Length),
    /// From the frame out to its back and its front, doors counted and handles not.
    pub out: (Length, Length),
    /// How far handles stand out before its front, where the book says so.
    pub handles: Length,
    /// Its bottom from the finished floor.
    pub low: Length,
    /// Its top, where it is known.
    pub high: Option<Length>,
    /// The row that it stands in, by its number.
    pub row: Option<usize>,
    /// The thing that it is cut into, by its number.
    pub within: Option<usize>,
    /// Where it is written.
    pub span: Span,
}

/// What a thing is.
#[derive(Clone, Copy, Debug)]
pub enum What<'a> {
    /// A part of a run or of an island's side.
    Part(&'a Part),
    /// An opening with its own place at a wall, or one cut into a cabinet.
    Opening,
    /// A fixture.
    Fixture(&'a Fixture),
    /// An island, with its counter.
    Island(&'a Island),
}

/// What a thing stands at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stands {
    /// A wall, by its number.
    Wall(usize),
    /// A side of an island, by the island's number.
    Island(usize, IslandSide),
}

/// Whatever is less high than this above the floor is in the way of someone who walks.
pub const HEAD: Length = Length::from_inches(48);

/// How high a tall unit is at least (common practice: from 80" up; none ends below 72").
const TALL: Length = Length::from_inches(72);

impl<'a> Thing<'a> {
    /// Its width.
    pub fn width(&self) -> Length {
        self.along.1 - self.along.0
    }

    /// The middle of its width, along its frame.
    pub fn centre(&self) -> Length {
        self.along.0 + self.width().half()
    }

    /// What it covers in plan, handles left out.
    pub fn footprint(&self) -> ConvexShape {
        ConvexShape::rectangle(&self.frame, self.along, self.out)
    }

    /// The same thing, so much nearer to what it stands at.
    pub fn moved_back(&self, by: Length) -> Self {
        Self { out: (self.out.0 - by, self.out.1 - by), ..self.clone() }
    }

    /// What it covers with its handles, or as far out as a front of that depth reaches.
    pub fn covers(&self, front: Length) -> ConvexShape {
        ConvexShape::rectangle(&self.frame, self.along, (self.out.0, front.max(self.out.1)))
    }

    /// The part of a run that it is.
    pub fn part(&self) -> Option<&'a Part> {
        match self.what {
            What::Part(part) => Some(part),
            _ => None,
        }
    }

    /// From the frame's left end to the left and right edge of its doors and drawers: of a blind corner, what is not
    /// blind.
    pub fn fronts(&self) -> (Length, Length) {
        let own = self.part().and_then(|part| Some((part, *part.door_width.get()?)));
        let Some((part, each)) = own else { return self.along };
        let doors = part.doors.get().copied().filter(|doors| *doors > 0).unwrap_or(1);
        let wide = each.times(i64::from(doors)).min(self.width());
        match self.blind_side(part) {
            End::Left => (self.along.1 - wide, self.along.1),
            End::Right => (self.along.0, self.along.0 + wide),
        }
    }

    /// The side at which a blind corner is blind: the one that is written, else the one nearer to an end of its wall.
    fn blind_side(&self, part: &Part) -> End {
        let nearer = if self.along.0 <= self.frame.length() - self.along.1 { End::Left } else { End::Right };
        part.blind.get().copied().unwrap_or(nearer)
    }

    /// The side at which part of its front lies blind, where its doors take less than its width.
    pub fn is_blind_at(&self) -> Option<End> {
        let part = self.part().filter(|part| part.door_width.get().is_some())?;
        Some(self.blind_side(part))
    }

    /// Whether it is a filler or a panel, which nobody opens.
    pub fn is_closure(&self) -> bool {
        self.part().is_some_and(|part| matches!(part.is, PartIs::Filler(_) | PartIs::Panel(_)))
    }

    /// Whether it is that opening.
    pub fn is_opening(&self, opening: &Opening) -> bool {
        self.opening.is_some_and(|own| std::ptr::eq(own, opening))
    }

    /// Whether it is of that kind.
    pub fn is(&self, kind: Kind) -> bool {
        self.kind == Some(kind)
    }

    /// Whether its kind has that trait.
    pub fn has(&self, what: Trait) -> bool {
        self.kind.is_some_and(|kind| kind.is(what))
    }

    /// Whether it stands in the way of someone who walks.
    pub fn is_in_the_way(&self) -> bool {
        self.low < HEAD && self.within.is_none()
    }

    /// Its top, as far as it is known: a tall unit, of which nobody says how high it is, is as high as the least of them.
    pub fn top(&self) -> Option<Length> {
        let is_tall = self.part().is_some_and(|part| matches!(part.is, PartIs::Tall(_)));
        self.high.or_else(|| is_tall.then(|| self.low + TALL))
    }

    /// Whether it is set on another thing of its wall, all of it.
    pub fn is_set_on(&self, other: &Self) -> bool {
        let along = self.along.0 >= other.along.0 && self.along.1 <= other.along.1;
        let in_height = self.low >= other.low && self.high.is_some_and(|high| Some(high) <= other.high);
        self.frame == other.frame && along && in_height
    }

    /// Whether its height and another's have some of it in common; what is not known has none.
    pub fn is_level_with(&self, low: Length, high: Option<Length>) -> bool {
        let top = |low: Length, high: Option<Length>| high.unwrap_or(low + Length::from_inches(1));
        self.low < top(low, high) && low < top(self.low, self.top())
    }
}

/// A run, or what stands in a side of an island, in its place.
#[derive(Clone, Debug)]
pub struct Row<'a> {
    /// What it is.
    pub of: RowOf<'a>,
    /// What it stands at.
    pub stands: Stands,
    /// The front of that.
    pub frame: Frame,
    /// From the frame's left end to its two ends.
    pub along: (Length, Length),
    /// Its counter, where there is one.
    pub counter: Option<Counter>,
    /// Whether it stands on the floor.
    pub on_floor: bool,
    /// Its things from left to right, by their numbers.
    pub things: Vec<usize>,
    /// Whether every part of it has a width.
    pub is_whole: bool,
}

/// What a row is.
#[derive(Clone, Copy, Debug)]
pub enum RowOf<'a> {
    /// A run.
    Run(&'a Run),
    /// A side of an island.
    Side(&'a Island, IslandSide),
}

impl<'a> RowOf<'a> {
    /// Its name in the book.
    pub fn name(&self) -> &'a str {
        match self {
            Self::Run(run) => &run.name.value,
            Self::Side(island, _) => &island.name.value,
        }
    }

    /// Where it is written.
    pub fn span(&self) -> Span {
        match self {
            Self::Run(run) => run.name.span,
            Self::Side(island, _) => island.name.span,
        }
    }
}

/// The counter of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Counter {
    /// From the frame out to its back edge.
    pub back: Length,
    /// From the frame out to its front edge.
    pub front: Length,
    /// Its top from the finished floor.
    pub height: Option<Length>,
}

impl Counter {
    /// From its back to its front edge.
    pub fn depth(&self) -> Length {
        self.front - self.back
    }
}
