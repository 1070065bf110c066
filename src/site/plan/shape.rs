//! Convex shapes in plan: whether two overlap, how far they are apart, what of one lies in a strip.

use crate::units::Length;

use super::frame::{Frame, GRAIN, Point, length, nm, rounded_root};

/// A convex shape by its corners, going round either way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConvexShape(Vec<Point>);

/// Sines of the first ninth parts of a right angle, in billionths: a quarter circle has 16 chords.
const SINES: [i128; 17] = [
    0,
    98_017_140,
    195_090_322,
    290_284_677,
    382_683_432,
    471_396_737,
    555_570_233,
    634_393_284,
    707_106_781,
    773_010_453,
    831_469_612,
    881_921_264,
    923_879_533,
    956_940_336,
    980_785_280,
    995_184_727,
    1_000_000_000,
];
const BILLION: i128 = 1_000_000_000;
/// Into so many parts an edge is divided to find a place on it.
const PARTS: i128 = 100_000_000;
/// Half the width of a straight way: two grains.
const HAIR: Length = Length::from_nanometres(50);

impl ConvexShape {
    /// A convex shape.
    pub fn new(corners: Vec<Point>) -> Self {
        Self(corners)
    }

    /// The rectangle between two places along a frame and two out from it.
    pub fn rectangle(frame: &Frame, along: (Length, Length), out: (Length, Length)) -> Self {
        Self(frame.rectangle(along, out))
    }

    /// What a leaf sweeps from shut, lying along the frame from its hinge, to a right angle: a quarter
    /// circle drawn with 16 chords, so that it is nowhere larger than the true one, and at most 1/800
    /// of the leaf smaller. The hinge stands `along` and `out` from the frame's left end.
    pub fn swept(frame: &Frame, (along, out): (Length, Length), leaf: Length, turn: Turn) -> Self {
        let hinge = along;
        let part = |sine: i128| length(nm(leaf) * sine / BILLION);
        let mut corners = vec![frame.at(hinge, out)];
        for (cosine, sine) in SINES.iter().rev().zip(SINES) {
            let (along, away) = (part(*cosine), part(sine));
            let along = if turn.to_the_right { hinge + along } else { hinge - along };
            let away = if turn.before { out + away } else { out - away };
            corners.push(frame.at(along, away));
        }
        Self(corners)
    }

    /// Its corners.
    pub fn corners(&self) -> &[Point] {
        &self.0
    }

    /// Whether they share more than an edge. Less than a grain, which no tape reads, is nothing.
    pub fn overlaps(&self, other: &Self) -> bool {
        self.0.len() > 2
            && other.0.len() > 2
            && !self.is_far_from(other)
            && !self.is_beside(other)
            && !other.is_beside(self)
    }

    /// Whether one lies wholly to one side of the other on the paper: most pairs, and soon seen.
    fn is_far_from(&self, other: &Self) -> bool {
        let apart = |place: fn(&Point) -> Length| {
            let reach = |shape: &Self| (shape.0.iter().map(place).min(), shape.0.iter().map(place).max());
            let (own, others) = (reach(self), reach(other));
            own.1 <= others.0 || others.1 <= own.0
        };
        apart(|point| point.x) || apart(|point| point.y)
    }

    /// Whether one lies at least so far to one side of the other on the paper.
    pub fn is_as_far_as(&self, other: &Self, far: Length) -> bool {
        let apart = |place: fn(&Point) -> Length| {
            let reach = |shape: &Self| Some((shape.0.iter().map(place).min()?, shape.0.iter().map(place).max()?));
            reach(self).zip(reach(other)).is_some_and(|(own, its)| own.1 + far <= its.0 || its.1 + far <= own.0)
        };
        apart(|point| point.x) || apart(|point| point.y)
    }

    /// Whether one of its edges has all of the other shape on one side and itself on the other.
    fn is_beside(&self, other: &Self) -> bool {
        let ends = self.0.iter().zip(self.0.iter().cycle().skip(1));
        ends.filter(|(from, to)| from != to).any(|(from, to)| {
            let (x, y) = from.to(*to);
            let across = |point: &Point| {
                let (px, py) = from.to(*point);
                px * y - py * x
            };
            let own = self.0.iter().map(across);
            let (low, high) = (own.clone().min().unwrap_or(0), own.max().unwrap_or(0));
            let others = other.0.iter().map(across);
            let (least, most) = (others.clone().min().unwrap_or(0), others.max().unwrap_or(0));
            let nothing = GRAIN * (x.abs() + y.abs() + 1);
            least + nothing >= high || most <= low + nothing
        })
    }

    /// Whether a place lies in it or on its edge.
    pub fn contains(&self, place: Point) -> bool {
        let sides = self.edges().map(|(from, to)| {
            let ((x, y), (px, py)) = (from.to(to), from.to(place));
            px * y - py * x
        });
        let (mut left, mut right) = (false, false);
        for side in sides {
            left |= side > 0;
            right |= side < 0;
        }
        self.0.len() > 2 && !(left && right)
    }

    /// How far apart they are; nothing where they touch or overlap.
    pub fn distance(&self, other: &Self) -> Length {
        if self.overlaps(other) {
            return Length::ZERO;
        }
        let one = self.0.iter().flat_map(|corner| other.edges().map(|edge| from_edge(*corner, edge)));
        let two = other.0.iter().flat_map(|corner| self.edges().map(|edge| from_edge(*corner, edge)));
        one.chain(two).min().unwrap_or_default()
    }

    /// The nearest place of each to the other; none where they touch or overlap.
    pub fn nearest(&self, other: &Self) -> Option<(Point, Point)> {
        if self.overlaps(other) {
            return None;
        }
        let one = self.0.iter().flat_map(|corner| other.edges().map(|edge| (*corner, foot(*corner, edge))));
        let two = other.0.iter().flat_map(|corner| self.edges().map(|edge| (foot(*corner, edge), *corner)));
        one.chain(two).min_by_key(|(one, other)| one.distance(*other))
    }

    /// Its sides, each from corner to corner.
    pub fn edges(&self) -> impl Iterator<Item = (Point, Point)> {
        self.0.iter().copied().zip(self.0.iter().copied().cycle().skip(1)).take(self.0.len())
    }

    /// How far out from a frame what of it lies between two places along is: its nearest and its
    /// farthest. None where nothing of it does.
    pub fn within(&self, frame: &Frame, along: (Length, Length)) -> Option<(Length, Length)> {
        between(&self.0, |corner| frame.local(corner), along)
    }

    /// How far along a frame what of it lies between two places out is: its first and its last place.
    pub fn beside(&self, frame: &Frame, out: (Length, Length)) -> Option<(Length, Length)> {
        let across = |corner| {
            let (along, out) = frame.local(corner);
            (out, along)
        };
        between(&self.0, across, out)
    }
}

/// Which way a leaf turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turn {
    /// Whether the leaf, shut, lies to the right of its hinge.
    pub to_the_right: bool,
    /// Whether it opens out before the frame rather than behind it.
    pub before: bool,
}

/// How far the second coordinate of a shape reaches, least and most, where its first lies between two bounds
/// by more than a grain; none where nothing of it does.
fn between(
    corners: &[Point],
    local: impl Fn(Point) -> (i128, i128),
    bounds: (Length, Length),
) -> Option<(Length, Length)> {
    let (from, to) = (nm(bounds.0) + GRAIN, nm(bounds.1) - GRAIN);
    if from >= to {
        return None;
    }
    let mut reach: Option<(i128, i128)> = None;
    let mut add = |at: i128| reach = Some(reach.map_or((at, at), |(least, most)| (least.min(at), most.max(at))));
    let mut before = local(*corners.last()?);
    for place in corners.iter().map(|corner| local(*corner)) {
        if (from..=to).contains(&place.0) {
            add(place.1);
        }
        for bound in [from, to] {
            if (before.0 < bound) != (place.0 < bound) {
                let part = super::frame::divided((place.1 - before.1) * (bound - before.0), place.0 - before.0);
                add(before.1 + part);
            }
        }
        before = place;
    }
    reach.map(|(least, most)| (length(least), length(most)))
}

/// Whether two straight lines have a place in common, their ends counted.
pub fn meet((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let turn = |from: Point, to: Point, place: Point| {
        let ((x, y), (px, py)) = (from.to(to), from.to(place));
        (x * py - y * px).signum()
    };
    let lies = |from: Point, to: Point, place: Point| {
        let within = |one: Length, two: Length, at: Length| one.min(two) <= at && at <= one.max(two);
        within(from.x, to.x, place.x) && within(from.y, to.y, place.y)
    };
    let (one, two) = (turn(a, b, c), turn(a, b, d));
    let (three, four) = (turn(c, d, a), turn(c, d, b));
    if one * two < 0 && three * four < 0 {
        return true;
    }
    (one == 0 && lies(a, b, c))
        || (two == 0 && lies(a, b, d))
        || (three == 0 && lies(c, d, a))
        || (four == 0 && lies(c, d, b))
}

/// The place of a straight edge that is nearest to a point.
fn foot(point: Point, (from, to): (Point, Point)) -> Point {
    let (x, y) = from.to(to);
    let (px, py) = from.to(point);
    let square = x * x + y * y;
    let along = px * x + py * y;
    if square == 0 || along <= 0 {
        return from;
    }
    if along >= square {
        return to;
    }
    // Of that much of the edge, in a hundred millionths: past what the grain can tell.
    let part = |side: i128| length(super::frame::divided(side * super::frame::divided(along * PARTS, square), PARTS));
    Point::new(from.x + part(x), from.y + part(y))
}

/// From a point to a straight edge.
fn from_edge(point: Point, (from, to): (Point, Point)) -> Length {
    let (x, y) = from.to(to);
    let (px, py) = from.to(point);
    let square = x * x + y * y;
    let along = px * x + py * y;
    if square == 0 || along <= 0 {
        return from.distance(point);
    }
    if along >= square {
        return to.distance(point);
    }
    let across = super::frame::divided((px * y - py * x).abs(), square.isqrt().max(1));
    if x == 0 || y == 0 { length(across) } else { length(super::frame::grained(across)) }
}

/// How far a straight way between two places goes through a shape.
pub fn through(shape: &ConvexShape, from: Point, to: Point) -> Length {
    let Some(way) = Frame::between(from, to) else { return Length::ZERO };
    let line = ConvexShape::new(vec![from, to]);
    if shape.is_beside(&line) || line.is_beside(shape) {
        return Length::ZERO;
    }
    let Some((start, end)) = shape.beside(&way, (-HAIR, HAIR)) else { return Length::ZERO };
    let (start, end) = (start.max(Length::ZERO), end.min(way.length()));
    let inside = end - start;
    if inside > rounded_root(GRAIN, GRAIN) { inside } else { Length::ZERO }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(x: i64, y: i64) -> Point {
        Point::new(Length::from_inches(x), Length::from_inches(y))
    }

    fn square(x: i64, y: i64, side: i64) -> ConvexShape {
        ConvexShape::new(vec![at(x, y), at(x + side, y), at(x + side, y + side), at(x, y + side)])
    }

    #[test]
    fn shapes_that_share_an_edge_or_a_corner_do_not_overlap() {
        assert!(square(0, 0, 10).overlaps(&square(9, 9, 10)));
        assert!(square(0, 0, 10).overlaps(&square(2, 2, 3)));
        assert!(!square(0, 0, 10).overlaps(&square(10, 0, 10)));
        assert!(!square(0, 0, 10).overlaps(&square(10, 10, 10)));
    }

    #[test]
    fn a_place_is_in_a_shape_or_out_of_it() {
        assert!(square(0, 0, 10).contains(at(5, 5)) && square(0, 0, 10).contains(at(10, 5)));
        assert!(!square(0, 0, 10).contains(at(11, 5)) && !square(0, 0, 10).contains(at(5, -1)));
    }

    #[test]
    fn distances_are_exact_square_to_the_paper_and_to_the_grain_across() {
        assert_eq!(square(0, 0, 10).distance(&square(52, 3, 10)), Length::from_inches(42));
        assert_eq!(square(0, 0, 10).distance(&square(13, 14, 10)), Length::from_inches(5));
        assert_eq!(square(0, 0, 10).distance(&square(5, 5, 10)), Length::ZERO);
    }

    #[test]
    fn a_leaf_reaches_its_own_width_before_it_and_beside_it_and_no_corner() {
        let wall = Frame::between(at(0, 0), at(100, 0)).unwrap();
        let leaf = Length::from_inches(30);
        let turn = Turn { to_the_right: true, before: true };
        let swept = ConvexShape::swept(&wall, (Length::from_inches(20), Length::ZERO), leaf, turn);
        assert!(swept.overlaps(&square(20, -30, 2)));
        assert!(!swept.overlaps(&square(20, -32, 2)));
        assert!(!swept.overlaps(&square(44, -28, 4)), "the far corner is not swept");
        assert!(swept.overlaps(&square(38, -20, 4)));
    }

    #[test]
    fn what_lies_before_a_stretch_of_wall_is_how_far_out() {
        let wall = Frame::between(at(0, 0), at(100, 0)).unwrap();
        let along = (Length::from_inches(10), Length::from_inches(20));
        assert_eq!(square(18, -50, 10).within(&wall, along), Some((Length::from_inches(40), Length::from_inches(50))));
        assert_eq!(square(20, -50, 10).within(&wall, along), None);
    }

    #[test]
    fn a_way_across_a_corner_goes_through_what_it_cuts_off() {
        let cut = through(&square(0, 0, 30), at(24, -8), at(30 + 8, 6));
        assert_eq!(cut, Length::ZERO, "touches the corner at most");
        let cut = through(&square(0, 0, 30), at(-10, 10), at(40, 10));
        assert_eq!(cut, Length::from_inches(30));
    }
}
