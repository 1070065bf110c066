//! A room's outline: its corners, its walls in order, its area, and what an outline can't be.

use crate::book::{Outline, Room, WallIs, WallNote};
use crate::source::{Span, Spanned};
use crate::units::{Area, Length, letter};

use super::fault::{PlanFault, Wrong};
use super::frame::{Frame, Point, nm};
use super::shape::ConvexShape;

/// More corners than any room has: past it an outline is not read on.
const MOST_CORNERS: usize = 300;

/// A wall, seen from inside the room.
#[derive(Clone, Debug)]
pub struct Wall<'a> {
    /// Its letter.
    pub letter: String,
    /// What the book says of it.
    pub note: Option<&'a WallNote>,
    /// Its finished face.
    pub frame: Frame,
    /// The same as a shape, to be met.
    pub face: ConvexShape,
}

impl Wall<'_> {
    /// What it is called, or its letter.
    pub fn name(&self) -> &str {
        self.note.and_then(|note| note.called.get()).unwrap_or(&self.letter)
    }

    /// Its length: of the outline, or as measured, where that is less.
    pub fn length(&self) -> Length {
        self.measured().map_or(self.frame.length(), |measured| measured.value.min(self.frame.length()))
    }

    /// The least length that was measured on it.
    pub fn measured(&self) -> Option<&Spanned<Length>> {
        self.note?.length.get()?.least()
    }

    /// Whether there is no wall at all on this side.
    pub fn is_open(&self) -> bool {
        self.note.and_then(|note| note.is.get()) == Some(&WallIs::Open)
    }

    /// How high it is, where it ends below the ceiling.
    pub fn height(&self) -> Option<Length> {
        self.note?.height.get().copied()
    }
}

/// The corners of a room in the order written; a rectangle's clockwise from its far left corner.
pub fn corners(room: &Room) -> Option<(Vec<(Point, Span)>, Span)> {
    let outline = room.outline.spanned()?;
    let corners = match &outline.value {
        Outline::Rectangle(length, width) => {
            let (zero, span) = (Length::ZERO, outline.span);
            let all = [(zero, *width), (*length, *width), (*length, zero), (zero, zero)];
            all.into_iter().map(|(x, y)| (Point::new(x, y), span)).collect()
        }
        Outline::Corners(corners) => {
            corners.iter().map(|corner| (Point::new(corner.value.0, corner.value.1), corner.span)).collect()
        }
    };
    Some((corners, outline.span))
}

/// The walls of an outline, or what is wrong with it.
pub fn walls<'a>(room: &'a Room, corners: &[(Point, Span)], span: Span) -> Result<Vec<Wall<'a>>, Vec<PlanFault>> {
    let fault = |wrong, span| PlanFault { wrong, item: None, span, also: None };
    if corners.len() < 3 {
        return Err(vec![fault(Wrong::FewCorners(corners.len()), span)]);
    }
    if corners.len() > MOST_CORNERS {
        return Err(vec![fault(Wrong::ManyCorners(corners.len()), span)]);
    }
    let next = corners.iter().cycle().skip(1);
    let ends: Vec<((Point, Point), Span)> =
        corners.iter().zip(next).map(|((from, span), (to, _))| ((*from, *to), *span)).collect();
    let short: Vec<PlanFault> = ends
        .iter()
        .enumerate()
        .filter(|(_, ((from, to), _))| from == to)
        .map(|(at, (_, span))| fault(Wrong::NoLength(letter(at)), *span))
        .collect();
    if !short.is_empty() {
        return Err(short);
    }
    for (one, (first, span)) in ends.iter().enumerate() {
        for (two, (second, _)) in ends.iter().enumerate().skip(one + 1) {
            let next = two == one + 1;
            let last = one == 0 && two == ends.len() - 1;
            let crosses = match (next, last) {
                (true, _) => folds_back(*first, *second),
                (_, true) => folds_back(*second, *first),
                _ => meet(*first, *second),
            };
            if crosses {
                return Err(vec![fault(Wrong::Crosses(letter(one), letter(two)), *span)]);
            }
        }
    }
    let clockwise = twice_area(corners) < 0;
    let wall = |(at, ((from, to), _)): (usize, &((Point, Point), Span))| {
        let (from, to) = (*from, *to);
        let frame = if clockwise { Frame::between(from, to) } else { Frame::between(to, from) }?;
        let letter = letter(at);
        let note = room.walls.iter().find(|note| note.name.value.eq_ignore_ascii_case(&letter));
        let face = ConvexShape::new(vec![frame.left(), frame.right()]);
        Some(Wall { letter, note, frame, face })
    };
    Ok(ends.iter().enumerate().filter_map(wall).collect())
}

/// Twice the area inside, below zero when the corners go round clockwise.
fn twice_area(corners: &[(Point, Span)]) -> i128 {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|((a, _), (b, _))| nm(a.x) * nm(b.y) - nm(b.x) * nm(a.y)).sum()
}

/// The area inside.
pub fn area(corners: &[(Point, Span)]) -> Area {
    Area::from_square_nanometres(twice_area(corners).abs() / 2)
}

/// Whether a point is inside, or on a wall.
pub fn is_inside(walls: &[Wall<'_>], point: Point) -> bool {
    let mut inside = false;
    for wall in walls {
        let (from, to) = (wall.frame.left(), wall.frame.right());
        let side = turn(from, to, point);
        let (along, out) = wall.frame.local(point);
        if out.abs() <= 1 && along >= -1 && along <= nm(wall.frame.length()) + 1 {
            return true;
        }
        if (from.y > point.y) != (to.y > point.y) && (side > 0) == (to.y > from.y) {
            inside = !inside;
        }
    }
    inside
}

/// Which side of a way a point lies on: above zero to the left, below to the right.
fn turn(from: Point, to: Point, point: Point) -> i128 {
    let (x, y) = from.to(to);
    let (px, py) = from.to(point);
    x * py - y * px
}

/// Whether two walls that are not neighbours cross or touch.
fn meet((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let sides = (turn(a, b, c).signum() * turn(a, b, d).signum(), turn(c, d, a).signum() * turn(c, d, b).signum());
    if sides.0 > 0 || sides.1 > 0 {
        return false;
    }
    let apart = |a: Length, b: Length, c: Length, d: Length| a.max(b) < c.min(d) || c.max(d) < a.min(b);
    !apart(a.x, b.x, c.x, d.x) && !apart(a.y, b.y, c.y, d.y)
}

/// Whether a wall runs back along the one before it.
fn folds_back((a, b): (Point, Point), (_, c): (Point, Point)) -> bool {
    let ((x, y), (u, v)) = (a.to(b), b.to(c));
    x * v - y * u == 0 && x * u + y * v < 0
}
