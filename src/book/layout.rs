//! A room's plan as written: outline, walls, doors, windows, runs, islands, fixtures, hung lights.

use super::{Burning, Readings, Slot};
use crate::source::{Span, Spanned};
use crate::units::Length;
use crate::vocabulary::Kind;

/// The finished faces of a room.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outline {
    /// Length and width.
    Rectangle(Length, Length),
    /// Corners, going round: to the right of a point, and up from it, as on a sheet of paper.
    Corners(Vec<Spanned<(Length, Length)>>),
}

impl Outline {
    /// Length and width, of a rectangle or of the least one around the corners.
    pub fn extent(&self) -> (Length, Length) {
        match self {
            Self::Rectangle(length, width) => (*length, *width),
            Self::Corners(corners) => {
                let spread = |side: fn(&(Length, Length)) -> Length| {
                    let sides = corners.iter().map(|corner| side(&corner.value));
                    let most = sides.clone().max().unwrap_or_default();
                    most - sides.min().unwrap_or_default()
                };
                (spread(|corner| corner.0), spread(|corner| corner.1))
            }
        }
    }
}

/// What stands where in a room, beside its openings.
#[derive(Debug, Default)]
pub struct Layout {
    /// What is said of its walls.
    pub walls: Vec<WallNote>,
    /// Doors and cased openings.
    pub doors: Vec<Doorway>,
    /// Windows.
    pub windows: Vec<Window>,
    /// Rows of cabinets.
    pub runs: Vec<Run>,
    /// Islands and peninsulas.
    pub islands: Vec<Island>,
    /// Things on their centrelines.
    pub fixtures: Vec<Fixture>,
    /// Lights set out over something.
    pub lights: Vec<HungLights>,
}

impl Layout {
    /// Whether nothing at all is written of it.
    pub fn is_empty(&self) -> bool {
        self.walls.is_empty()
            && self.doors.is_empty()
            && self.windows.is_empty()
            && self.runs.is_empty()
            && self.islands.is_empty()
            && self.fixtures.is_empty()
            && self.lights.is_empty()
    }
}

/// An end of a wall or run, or a side that a door hangs on; seen from inside the room.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum End {
    /// Left.
    #[default]
    Left,
    /// Right.
    Right,
}

impl End {
    /// The end of that word.
    pub fn of(word: &str) -> Self {
        if word == "right" { Self::Right } else { Self::Left }
    }

    /// Its word.
    pub fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    /// The other one.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// What is said of a wall.
#[derive(Debug)]
pub struct WallNote {
    /// Its letter.
    pub letter: Spanned<String>,
    /// What it is called.
    pub name: Slot<String>,
    /// Its length as measured.
    pub length: Slot<Readings>,
    /// Its height, where it ends below the ceiling.
    pub height: Slot<Length>,
    /// `wall`, `half wall` or `open`.
    pub is: Slot<&'static str>,
    /// Whether it burns.
    pub burning: Slot<Burning>,
}

/// A door or a cased opening.
#[derive(Debug)]
pub struct Doorway {
    /// Its name in the room.
    pub name: Spanned<String>,
    /// The wall that it is in.
    pub wall: Slot<String>,
    /// From the wall's left end.
    pub at: Slot<Length>,
    /// Clear width between the jambs.
    pub width: Slot<Length>,
    /// Clear height.
    pub height: Slot<Length>,
    /// Width of the leaf, or of each of two.
    pub leaf: Slot<Length>,
    /// `left`, `right` or `both`.
    pub hinge: Slot<&'static str>,
    /// `in` or `out`.
    pub swings: Slot<&'static str>,
    /// Whether it slides.
    pub slides: Slot<bool>,
    /// Width of the trim around it.
    pub casing: Slot<Length>,
    /// How far that stands out from the wall.
    pub casing_thickness: Slot<Length>,
    /// Whether it burns.
    pub burning: Slot<Burning>,
    /// Free floor from its hinge, as measured.
    pub free_swing: Slot<Length>,
}

/// A window.
#[derive(Debug)]
pub struct Window {
    /// Its name in the room.
    pub name: Spanned<String>,
    /// Whether it is in the roof rather than in the wall; absent: not said.
    pub in_roof: Slot<bool>,
    /// The wall that it is in, or that it stands above.
    pub wall: Slot<String>,
    /// From the wall's left end.
    pub at: Slot<Length>,
    /// Its width.
    pub width: Slot<Length>,
    /// Its sill from the finished floor.
    pub sill: Slot<Length>,
    /// Its height.
    pub height: Slot<Length>,
    /// How it opens.
    pub opens: Slot<&'static str>,
    /// Its glass.
    pub glass: Slot<String>,
    /// Level distance to the edge of the nearest tub or shower.
    pub from_water: Slot<Length>,
    /// What stands under it.
    pub above: Slot<String>,
    /// Width of the trim around it.
    pub casing: Slot<Length>,
    /// How far that stands out from the wall.
    pub casing_thickness: Slot<Length>,
    /// Whether its casing, and what hangs at it, burns.
    pub burning: Slot<Burning>,
}

/// A row of cabinets along a wall.
#[derive(Debug)]
pub struct Run {
    /// Its name in the room.
    pub name: Spanned<String>,
    /// The wall that it stands against.
    pub wall: Slot<String>,
    /// The end from which it is set out.
    pub from: End,
    /// From that end to its first part.
    pub starts: Slot<Length>,
    /// Its lower edge from the finished floor; absent: it stands on it.
    pub above_floor: Slot<Length>,
    /// From the wall to the front of its doors.
    pub depth: Slot<Length>,
    /// Height of its cabinets.
    pub height: Slot<Length>,
    /// From the wall to the counter's front edge.
    pub counter_depth: Slot<Length>,
    /// The counter's top from the finished floor.
    pub counter_height: Slot<Length>,
    /// How far handles stand out from the doors.
    pub handles: Slot<Length>,
    /// Height of the moulding above its cabinets.
    pub crown: Slot<Length>,
    /// Clear length from end to end, as measured.
    pub space: Slot<Readings>,
    /// What it meets at its left: `wall`, `corner` or `open`.
    pub left_end: Slot<&'static str>,
    /// What it meets at its right.
    pub right_end: Slot<&'static str>,
    /// Whether what stands in it burns, where a part does not say.
    pub burning: Slot<Burning>,
    /// What stands in it, from the end where it starts.
    pub parts: Vec<Part>,
}

/// One thing in a run.
#[derive(Debug)]
pub struct Part {
    /// What it is.
    pub is: PartIs,
    /// Its width, as written for a cabinet or tall unit.
    pub width: Slot<Length>,
    /// Its depth, where it is not the run's.
    pub depth: Slot<Length>,
    /// Its height, where it is not the run's.
    pub height: Slot<Length>,
    /// How many doors.
    pub doors: Slot<u32>,
    /// How many drawers.
    pub drawers: Slot<u32>,
    /// The side a single door hangs on.
    pub hinge: Slot<&'static str>,
    /// Width of each stile of its face frame.
    pub stiles: Slot<Length>,
    /// Openings cut into it.
    pub holds: Vec<Spanned<String>>,
    /// Whether it burns.
    pub burning: Slot<Burning>,
    /// Where it is written.
    pub span: Span,
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

/// An island or peninsula.
#[derive(Debug)]
pub struct Island {
    /// Its name in the room.
    pub name: Spanned<String>,
    /// The wall that it is set out from.
    pub wall: Slot<String>,
    /// From the wall's left end to its left end.
    pub at: Slot<Length>,
    /// From the wall's face to the edge of its counter.
    pub away: Slot<Length>,
    /// Its counter: along the wall, away from it.
    pub size: Slot<(Length, Length)>,
    /// Whether the first side of its size runs away from the wall.
    pub turned: Slot<bool>,
    /// Its top from the finished floor.
    pub height: Slot<Length>,
    /// Depth of its cabinets, where a part gives none.
    pub depth: Slot<Length>,
    /// How far its handles stand out from the doors.
    pub handles: Slot<Length>,
    /// Its sides, in the order of [`IslandSide::ALL`].
    pub sides: [IslandEdge; 4],
}

impl Island {
    /// What is said of a side.
    pub fn side(&self, side: IslandSide) -> &IslandEdge {
        match side {
            IslandSide::Wall => &self.sides[0],
            IslandSide::Room => &self.sides[1],
            IslandSide::Left => &self.sides[2],
            IslandSide::Right => &self.sides[3],
        }
    }
}

/// A side of an island.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum IslandSide {
    /// It faces the wall that the island is set out from.
    Wall,
    /// It faces away from that wall.
    Room,
    /// Its left, seen facing the wall.
    Left,
    /// Its right.
    Right,
}

impl IslandSide {
    /// Every side.
    pub const ALL: [Self; 4] = [Self::Wall, Self::Room, Self::Left, Self::Right];

    /// Its key in the book.
    pub fn word(self) -> &'static str {
        match self {
            Self::Wall => "wall side",
            Self::Room => "room side",
            Self::Left => "left side",
            Self::Right => "right side",
        }
    }
}

/// What is said of a side of an island.
#[derive(Debug, Default)]
pub struct IslandEdge {
    /// From the body to the counter's edge.
    pub overhang: Slot<Length>,
    /// How many sit there.
    pub seats: Slot<u32>,
    /// What stands in it, from left to right.
    pub parts: Vec<Part>,
}

/// A thing set out by its centreline.
#[derive(Debug)]
pub struct Fixture {
    /// Its name in the room.
    pub name: Spanned<String>,
    /// The wall that it stands against.
    pub wall: Slot<String>,
    /// From an end of the wall to its centreline.
    pub centre: Slot<Length>,
    /// That end.
    pub from: End,
    /// From the wall to its back.
    pub off_wall: Slot<Length>,
    /// Along the wall.
    pub width: Slot<Length>,
    /// From back to front.
    pub depth: Slot<Length>,
    /// Its height.
    pub height: Slot<Length>,
    /// Its bottom from the finished floor.
    pub sill: Slot<Length>,
    /// Its kind.
    pub takes: Slot<Kind>,
    /// What is chosen for it.
    pub selection: Slot<String>,
    /// The opening that stands there.
    pub opening: Slot<String>,
    /// Whether it burns.
    pub burning: Slot<Burning>,
    /// Width of a door that swings out of it.
    pub door: Slot<Length>,
    /// The side that its door hangs on.
    pub hinge: Slot<&'static str>,
}

/// Lights set out over something.
#[derive(Debug)]
pub struct HungLights {
    /// Their name in the room.
    pub name: Spanned<String>,
    /// The lights.
    pub selection: Slot<String>,
    /// The island or run that they hang over.
    pub over: Slot<String>,
    /// How many.
    pub count: Slot<u32>,
    /// Their centres from its left end.
    pub at: Slot<Readings>,
}
