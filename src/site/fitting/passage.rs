//! The way in: what is left when a thing is carried through each narrow point.

use crate::book::{Book, NarrowPoint, ProductOption, Room};
use crate::site::doorways::RoomDoor;
use crate::units::{Length, Sides, System, Weight};

/// Play that whoever carries a thing usually needs, in width and in height, once in all (trade reports
/// F-111: smallest dimension and one inch more).
pub const fn play_on_the_way(units: System) -> Length {
    units.usual(Length::from_inches(1), Length::from_millimetres(25))
}

/// A narrow point, and what is left there: negative where the thing does not pass. The play that
/// whoever carries it needs is not taken off.
#[derive(Clone, Copy, Debug)]
pub struct Passage<'a> {
    /// The point.
    pub point: &'a NarrowPoint,
    /// Whether its size is the plan's alone: nobody measured it.
    pub is_planned: bool,
    /// What is left for the carton; none when its size is not written.
    pub carton: Option<Length>,
    /// What is left for the body out of its carton, doors off; none when its size is not written.
    pub doors_off: Option<Length>,
    /// What is left for the body as it stands; none when its size is not written.
    pub body: Option<Length>,
}

/// How a thing passes a narrow point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passes {
    /// With the play that is usual.
    Freely,
    /// It goes through, with less.
    Tightly,
    /// It is larger than the point.
    Not,
}

impl Passes {
    /// What so much left over means.
    pub fn with(spare: Length, units: System) -> Self {
        match spare {
            short if short.is_negative() => Self::Not,
            tight if tight < play_on_the_way(units) => Self::Tightly,
            _ => Self::Freely,
        }
    }
}

/// Every narrow point on the way to a room, the book's first, at last its door where it has one, and what is left
/// there.
pub fn way_in<'a>(
    book: &'a Book,
    room: &'a Room,
    door: Option<&'a RoomDoor>,
    option: &ProductOption,
) -> Vec<Passage<'a>> {
    let fit = option.fit.get();
    let carton = fit.and_then(|fit| fit.carton.get());
    let doors_off = fit.and_then(|fit| fit.doors_off.get());
    let body = body(option);
    let points = book.project.way_in.iter().chain(&room.way_in).map(|point| (point, false));
    let points = points.chain(door.map(|door| (&door.point, door.is_planned)));
    let passage = |(point, is_planned)| Passage {
        point,
        is_planned,
        carton: carton.map(|sides| spare(point, sides)),
        doors_off: doors_off.map(|sides| spare(point, sides)),
        body: body.as_ref().map(|sides| left(point, sides)),
    };
    points.map(passage).collect()
}

/// The point with the least left, the first of equals. A doorway that nobody measured is told where nothing else is in
/// the way, and what does not go through at all: whether it is tight there nobody can say.
pub fn tightest<'p, 'a>(
    passages: &'p [Passage<'a>],
    spare: impl Fn(&Passage<'a>) -> Option<Length>,
) -> Option<(Length, &'p Passage<'a>)> {
    let known = |planned: bool| {
        let all = passages.iter().filter(move |passage| passage.is_planned == planned);
        let left = all.filter_map(|passage| Some((spare(passage)?, passage)));
        left.min_by_key(|(spare, _)| *spare)
    };
    let (written, planned) = (known(false), known(true).filter(|(spare, _)| spare.is_negative()));
    match written {
        Some((spare, _)) if spare.is_negative() => written,
        _ => planned.or(written),
    }
}

/// A room's own door where it is what stands in the way of a thing.
#[derive(Clone, Debug)]
pub struct DoorInTheWay {
    /// Its name and size.
    pub point: NarrowPoint,
    /// What is left for the carton; none when its size is not written.
    pub carton: Option<Length>,
    /// What is left for the body out of its carton, doors off; likewise.
    pub doors_off: Option<Length>,
}

/// The room's own door, where carton or body go through it with less than is usual, and through no other point with
/// less: the narrow point that the verdict is of.
pub fn door_in_the_way(book: &Book, room: &Room, door: &RoomDoor, option: &ProductOption) -> Option<DoorInTheWay> {
    let passages = way_in(book, room, Some(door), option);
    let units = book.project.units;
    let governs = |spare: fn(&Passage<'_>) -> Option<Length>| {
        tightest(&passages, spare).is_some_and(|(left, at)| {
            Passes::with(left, units) != Passes::Freely && std::ptr::eq(at.point, &door.point)
        })
    };
    let own = passages.iter().find(|passage| std::ptr::eq(passage.point, &door.point))?;
    (governs(|passage| passage.carton) || governs(|passage| passage.doors_off)).then(|| DoorInTheWay {
        point: door.point.clone(),
        carton: own.carton,
        doors_off: own.doors_off,
    })
}

/// The least side of a thing as it is carried past what is built in: without its doors, else as it stands. And whether
/// that is what its maker gives for it.
pub fn least_side(option: &ProductOption) -> Option<(Length, bool)> {
    let bare = option.fit.get().and_then(|fit| fit.doors_off.get()).map(Sides::sorted);
    let is_given = bare.is_some();
    Some((*bare.or_else(|| body(option))?.first()?, is_given))
}

/// A thing as it stands, by its own size, the least side first.
fn body(option: &ProductOption) -> Option<Vec<Length>> {
    let size = &option.size;
    let height = size.height.get().and_then(|height| height.least.or(height.most))?;
    let mut sides = vec![*size.width.get()?, *size.depth.get()?, height];
    sides.sort_unstable();
    Some(sides)
}

/// The least side of what does not go through every door; the longest of what does not turn in every hall;
/// the weight of what is not carried by hand (common practice).
const LARGE: Length = Length::from_inches(28);
const LONG: Length = Length::from_inches(60);
const HEAVY: Weight = Weight::from_pounds(150);

/// Whether a thing is so large or heavy that how it comes in must be known before it is ordered: no side
/// less than 28", the longest 60" or more, or 150 lb (common practice).
pub fn is_large(option: &ProductOption) -> bool {
    let fit = option.fit.get();
    let written = fit.and_then(|fit| fit.carton.get().or_else(|| fit.doors_off.get())).map(Sides::sorted);
    let sides = written.or_else(|| body(option));
    let is_large = sides.as_deref().is_some_and(|sides| {
        sides.first().is_some_and(|shortest| *shortest >= LARGE) || sides.last().is_some_and(|longest| *longest >= LONG)
    });
    is_large || fit.and_then(|fit| fit.weight.get()).is_some_and(|weight| *weight >= HEAVY)
}

/// What is left beside or above a box at a narrow point, whichever is less, turned whichever way suits best.
pub fn spare(point: &NarrowPoint, sides: &Sides) -> Length {
    left(point, &sides.sorted())
}

/// The same of sides in any order.
fn left(point: &NarrowPoint, sides: &[Length]) -> Length {
    let upright = |(up, tall): (usize, &Length)| {
        let plan = || sides.iter().enumerate().filter(|(at, _)| *at != up).map(|(_, side)| *side);
        let (shorter, longer) = (plan().min().unwrap_or_default(), plan().max().unwrap_or_default());
        let hall = if point.turns { least_hall_around_a_corner(shorter, longer) } else { shorter };
        let through = (point.height - *tall).min(point.width - hall);
        // In a lift it stands, one side to the back, the other across.
        let in_it =
            |deep: Length| (deep - longer).min(point.width - shorter).max((deep - shorter).min(point.width - longer));
        point.depth.get().map_or(through, |deep| through.min(in_it(*deep)))
    };
    sides.iter().enumerate().map(upright).max().unwrap_or(Length::ZERO)
}

/// The least width of two halls that meet at a right angle, so that a box of that plan gets round.
///
/// Unturned, pushed on sideways, it needs its longer side. Turned, its outer side of length `q`
/// slides along both outer walls; at an angle `t` the inner corner of halls `w` wide lies
/// `w(sin t + cos t) − q sin t cos t` from that side, which must be at least the shorter side `p`.
/// That is least at 45°: `w√2 − q/2 ≥ p`, so `8w² ≥ (q + 2p)²`, which whole numbers decide exactly.
pub fn least_hall_around_a_corner(shorter: Length, longer: Length) -> Length {
    let reach = i128::from((longer + shorter.times(2)).nanometres());
    let square = (reach * reach + 7) / 8;
    let turned = if square > 0 { (square - 1).isqrt() + 1 } else { 0 };
    longer.min(Length::from_nanometres(i64::try_from(turned).unwrap_or(i64::MAX)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    /// A hall corner with a box in it, tried by moving and turning in small steps: geometry's
    /// formula is not used here. Unit: a fortieth of the halls' width.
    struct Corner {
        hall: f64,
        shorter: f64,
        longer: f64,
    }

    /// The box's centre, and its angle in steps of 3 degrees, either way.
    type Pose = (i32, i32, i32);

    impl Corner {
        /// The halls run along both axes between 0 and `hall`; everything past the inner corner
        /// `(hall, hall)` is wall.
        fn is_free(&self, (x, y, turn): Pose) -> bool {
            // It turns with its ends along both outer walls: against the way that angles are counted.
            let angle = f64::from(-turn) * 3.0_f64.to_radians();
            let (sin, cos) = angle.sin_cos();
            let (x, y) = (f64::from(x), f64::from(y));
            let (a, b) = (self.longer / 2.0, self.shorter / 2.0);
            let slack = 1e-9;
            let corners =
                [(a, b), (a, -b), (-a, b), (-a, -b)].map(|(u, v)| (x + u * cos - v * sin, y + u * sin + v * cos));
            let inside =
                |(x, y): (f64, f64)| x > -slack && y > -slack && (x < self.hall + slack || y < self.hall + slack);
            let (dx, dy) = (self.hall - x, self.hall - y);
            let pierced = (dx * cos + dy * sin).abs() < a - slack && (dy * cos - dx * sin).abs() < b - slack;
            corners.into_iter().all(inside) && !pierced
        }

        /// Whether it gets from the hall along x into the hall along y.
        fn passes(&self) -> bool {
            let far = 110;
            let starts = [-30, 0, 30].into_iter().flat_map(|turn| (0..=40).map(move |y| (far, y, turn)));
            let mut open: Vec<Pose> = starts.filter(|pose| self.is_free(*pose)).collect();
            let mut seen: BTreeSet<Pose> = open.iter().copied().collect();
            while let Some((x, y, turn)) = open.pop() {
                if y >= far {
                    return true;
                }
                let near = [(1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1)];
                for pose in near.map(|(dx, dy, dt)| (x + dx, y + dy, turn + dt)) {
                    let within = pose.0 <= far && pose.1 <= far && (-30..=30).contains(&pose.2);
                    if within && self.is_free(pose) && seen.insert(pose) {
                        open.push(pose);
                    }
                }
            }
            false
        }
    }

    /// Checked against moving a box about: 8 % to spare must pass, 2 % too little must not (the
    /// steps are coarse, so that they can miss a passage, never invent one of that much).
    #[test]
    fn the_width_of_a_turn_agrees_with_a_box_moved_in_small_steps() {
        for (shorter, longer) in [(20, 20), (10, 40), (16, 60), (24, 50), (30, 36), (36, 39), (8, 80)] {
            let length = Length::from_millimetres;
            let least = least_hall_around_a_corner(length(shorter), length(longer)).nanometres() as f64 / 1e6;
            let corner = |scale: f64| Corner {
                hall: 40.0,
                shorter: shorter as f64 * 40.0 / (least * scale),
                longer: longer as f64 * 40.0 / (least * scale),
            };
            assert!(corner(1.08).passes(), "{shorter} × {longer} passes");
            assert!(!corner(0.98).passes(), "{shorter} × {longer} does not pass");
        }
    }

    /// 8w² ≥ (q + 2p)², and no lesser whole number does it.
    #[test]
    fn the_least_hall_is_exact() {
        for (shorter, longer) in [(762_000_001, 1_524_000_003), (1, 5), (25_400_000, 99_000_000)] {
            let at = Length::from_nanometres;
            let hall = i128::from(least_hall_around_a_corner(at(shorter), at(longer)).nanometres());
            let reach = i128::from(longer + 2 * shorter);
            let enough = |hall: i128| 8 * hall * hall >= reach * reach || hall >= i128::from(longer);
            assert!(enough(hall) && !enough(hall - 1));
        }
    }
}
