//! Points of a plan, and the frame of a wall or an island's side: along it and out from it.
//!
//! Where a frame runs square to the paper everything is exact. Along an oblique one a place is
//! rounded to the nanometre (its direction is divided by an integer square root), and a distance
//! to the nearest [`GRAIN`], which gives back every 64th of an inch and hundredth of a millimetre.

use crate::units::Length;

/// What oblique distances are rounded to: a divisor of 1/64 in (396 875 nm) and of 0.01 mm.
pub const GRAIN: i128 = 25;

/// A place in plan: to the right and up, from a point of the designer's choice.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Point {
    /// To the right.
    pub x: Length,
    /// Up.
    pub y: Length,
}

impl Point {
    /// A point.
    pub const fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }

    /// From this point to another, in nanometres.
    pub fn to(self, other: Self) -> (i128, i128) {
        (nm(other.x) - nm(self.x), nm(other.y) - nm(self.y))
    }

    /// The straight distance to another.
    pub fn distance(self, other: Self) -> Length {
        let (x, y) = self.to(other);
        rounded_root(x, y)
    }

    /// Half-way to another.
    pub fn middle(self, other: Self) -> Self {
        let between = |one: Length, two: Length| length((nm(one) + nm(two)).div_euclid(2));
        Self { x: between(self.x, other.x), y: between(self.y, other.y) }
    }
}

/// A length in nanometres, wide enough to multiply.
pub fn nm(length: Length) -> i128 {
    length.nanometres().into()
}

/// So many nanometres as a length; past what can be held, the longest.
pub fn length(nanometres: i128) -> Length {
    let most = if nanometres < 0 { i64::MIN } else { i64::MAX };
    Length::from_nanometres(i64::try_from(nanometres).unwrap_or(most))
}

/// A quotient to the nearest whole number.
pub fn divided(over: i128, under: i128) -> i128 {
    let (over, under) = if under < 0 { (-over, -under) } else { (over, under) };
    (over + under / 2).div_euclid(under.max(1))
}

/// To the nearest [`GRAIN`].
pub fn grained(nanometres: i128) -> i128 {
    divided(nanometres, GRAIN) * GRAIN
}

/// The length of a vector: exact when it is square to the paper, else to the grain.
pub fn rounded_root(x: i128, y: i128) -> Length {
    if x == 0 || y == 0 {
        return length(x.abs() + y.abs());
    }
    length(grained(root(x.saturating_mul(x).saturating_add(y.saturating_mul(y)))))
}

fn root(square: i128) -> i128 {
    square.max(0).isqrt()
}

/// The front of a wall or of an island's side: its left end, and which way is right, seen by someone
/// who stands before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Frame {
    left: Point,
    right: Point,
    /// From left to right.
    way: (i128, i128),
    /// Length of that.
    long: i128,
    /// One step to the right, to the right and up the paper, where it runs square to that.
    step: Option<(i64, i64)>,
}

impl Frame {
    /// The frame between its left and its right end; none when they are one point.
    pub fn between(left: Point, right: Point) -> Option<Self> {
        let way = left.to(right);
        let long = root(way.0.checked_mul(way.0)?.checked_add(way.1.checked_mul(way.1)?)?);
        let sign = |part: i128| i64::from(part > 0) - i64::from(part < 0);
        let step = (way.0 == 0 || way.1 == 0).then(|| (sign(way.0), sign(way.1)));
        (long > 0).then_some(Self { left, right, way, long, step })
    }

    /// Its left end.
    pub fn left(&self) -> Point {
        self.left
    }

    /// Its right end.
    pub fn right(&self) -> Point {
        self.right
    }

    /// From end to end.
    pub fn length(&self) -> Length {
        rounded_root(self.way.0, self.way.1)
    }

    /// Whether it runs square to the paper, so that all along it is exact.
    pub fn is_square(&self) -> bool {
        self.step.is_some()
    }

    /// The place so far from its left end and so far out before it.
    pub fn at(&self, along: Length, out: Length) -> Point {
        // Most frames: exact, and nothing to divide.
        if let Some((x, y)) = self.step {
            let place = |from: Length, right: i64, out_by: i64| from + along.times(right) + out.times(out_by);
            return Point { x: place(self.left.x, x, y), y: place(self.left.y, y, -x) };
        }
        let (along, out) = (nm(along), nm(out));
        let part = |over: i128| length(divided(over, self.long));
        Point {
            x: self.left.x + part(along * self.way.0 + out * self.way.1),
            y: self.left.y + part(along * self.way.1 - out * self.way.0),
        }
    }

    /// How far along and how far out a place is.
    pub fn local(&self, place: Point) -> (i128, i128) {
        let (x, y) = self.left.to(place);
        if let Some((right, up)) = self.step {
            let (right, up) = (i128::from(right), i128::from(up));
            return (x * right + y * up, x * up - y * right);
        }
        let along = divided(x * self.way.0 + y * self.way.1, self.long);
        let out = divided(x * self.way.1 - y * self.way.0, self.long);
        (grained(along), grained(out))
    }

    /// The rectangle between two places along and two out.
    pub fn rectangle(&self, along: (Length, Length), out: (Length, Length)) -> Vec<Point> {
        vec![self.at(along.0, out.0), self.at(along.1, out.0), self.at(along.1, out.1), self.at(along.0, out.1)]
    }

    /// Whether another faces it, straight or at less than half a right angle.
    pub fn faces(&self, other: &Self) -> bool {
        let ((x, y), (u, v)) = (self.way, other.way);
        let (along, across) = (x * u + y * v, x * v - y * u);
        along < 0 && along.abs() > across.abs()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn inches(inches: i64) -> Length {
        Length::from_inches(inches)
    }

    fn at(x: i64, y: i64) -> Point {
        Point::new(inches(x), inches(y))
    }

    #[test]
    fn before_a_wall_at_the_top_of_the_paper_right_is_right_and_out_is_down() {
        let wall = Frame::between(at(0, 100), at(120, 100)).unwrap();
        assert_eq!(wall.at(inches(30), inches(24)), at(30, 76));
        assert_eq!(wall.local(at(30, 76)), (nm(inches(30)), nm(inches(24))));
        assert_eq!(wall.length(), inches(120));
    }

    #[test]
    fn before_a_wall_at_the_right_of_the_paper_right_is_down_and_out_is_left() {
        let wall = Frame::between(at(120, 100), at(120, 0)).unwrap();
        assert_eq!(wall.at(inches(30), inches(24)), at(96, 70));
    }

    /// A right triangle of 3, 4 and 5 has an oblique side that is known exactly.
    #[test]
    fn along_an_oblique_wall_every_sixty_fourth_comes_back() {
        let wall = Frame::between(at(0, 0), at(36, 48)).unwrap();
        assert_eq!(wall.length(), inches(60));
        for sixty_fourths in [1, 7, 1601, 2688] {
            let along = Length::from_sixty_fourths(sixty_fourths);
            let place = wall.at(along, inches(24));
            assert_eq!(wall.local(place), (nm(along), nm(inches(24))));
        }
        assert_eq!(at(0, 0).distance(at(36, 48)), inches(60));
    }

    #[test]
    fn two_ends_at_one_point_are_no_wall() {
        assert_eq!(Frame::between(at(5, 5), at(5, 5)), None);
    }
}
