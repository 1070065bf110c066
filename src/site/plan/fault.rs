//! What is wrong with a plan as written.

use crate::source::Span;
use crate::units::Length;

/// One thing that cannot be as it is written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlanFault {
    /// What is wrong.
    pub wrong: Wrong,
    /// What it concerns, by its name in the book.
    pub item: Option<String>,
    /// Where it is written.
    pub span: Span,
    /// Where the other thing is written, if there are two.
    pub also: Option<Span>,
}

impl PlanFault {
    /// Whether it is of the work, and not of the file: two bodies that can't both stand as they are written.
    pub fn is_of_the_work(&self) -> bool {
        matches!(self.wrong, Wrong::Clashes { .. } | Wrong::Closes { .. })
    }

    /// Whether it tells of the two that are written there.
    pub fn is_of(&self, one: Span, other: Span) -> bool {
        let both = (Some(self.span), self.also);
        self.is_of_the_work() && (both == (Some(one), Some(other)) || both == (Some(other), Some(one)))
    }
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wrong {
    /// Fewer than three corners.
    FewCorners(usize),
    /// More corners than a room has.
    ManyCorners(usize),
    /// Two corners of a wall are one place.
    NoLength(String),
    /// Two walls cross or touch.
    Crosses(String, String),
    /// A wall that the outline does not have, and those that it has.
    UnknownWall(String, Vec<String>),
    /// A wall is named, and the room has no outline.
    NoOutline(String),
    /// It reaches past an end of its wall.
    Outside {
        /// The wall.
        wall: String,
        /// How far past the end.
        by: Length,
        /// How long the wall is.
        long: Length,
    },
    /// Two doors or windows are in one place of a wall.
    Overlaps {
        /// The other one.
        other: String,
        /// How far they share the wall.
        by: Length,
    },
    /// It stands in the place of something else: no fault of the file, but one of the work.
    Clashes {
        /// The other thing.
        other: String,
        /// How far one of them is to be moved along the wall.
        along: Option<Length>,
        /// How far in height, where one of them hangs or ends below the other's top.
        in_height: Option<Length>,
        /// How far from the wall.
        out: Option<Length>,
    },
    /// It stands before a doorway that it does not leave free: one of the work likewise.
    Closes {
        /// The doorway.
        door: String,
        /// How much of its width is closed.
        by: Length,
        /// Its width.
        of: Length,
    },
    /// It reaches out of the room.
    OutOfRoom,
    /// It is set out at two places.
    Twice,
}
