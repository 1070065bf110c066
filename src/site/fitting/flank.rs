//! What stands beside an opening, fillers and panels seen through: by row and plan.

use crate::book::{End, InRow, Opening, Part, PartIs, ProductOption, Room, Run, RunEnd};
use crate::site::plan::{CasingBeside, ConvexShape, Met, Plan, Thing, depths, settled};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Trait;

use super::{Side, everywhere, front_edge};

/// What stands beside an opening, past fillers and panels.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Flank {
    /// What it is called.
    pub what: String,
    /// Whether that is a word of ours, which every language has.
    pub is: FlankIs,
    /// From the opening's edge to it.
    pub gap: Length,
    /// Whether it stands further out than the opening's front, as a wall across does.
    pub is_proud: bool,
    /// Whether it rises above the counter.
    pub is_tall: bool,
    /// Whether it is of the building.
    pub is_built: bool,
    /// Whether the pull of its door is at this side, and stands out before the door of what is chosen here.
    pub pull_is_proud: bool,
    /// Where the row or the place is written that this follows from.
    pub span: Span,
}

/// What stands beside an opening, where the book gives it no name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FlankIs {
    /// It is called as the book calls it.
    Named,
    /// A wall, by its letter.
    Wall(String),
    /// What a row meets at its end.
    End(RunEnd),
    /// A filler.
    Filler,
    /// A panel.
    Panel,
}

impl FlankIs {
    fn met(met: &Met<'_, '_>, plan: &Plan<'_>) -> Self {
        let closure = |part: &Part| match part.is {
            PartIs::Filler(_) => Self::Filler,
            PartIs::Panel(_) => Self::Panel,
            _ => Self::Named,
        };
        match met {
            Met::Thing(thing) => thing.part().map_or(Self::Named, closure),
            Met::Wall(number) => match plan.walls.get(*number) {
                Some(wall) if wall.name() == wall.letter => Self::Wall(wall.letter.to_string()),
                _ => Self::Named,
            },
        }
    }
}

/// What stands at a side of an opening: by the plan where it has a place there, else by the row that it is a
/// part of. None where neither tells, or not all that is written there could be read.
pub fn flank(room: &Room, plan: Option<&Plan<'_>>, opening: &Opening, side: Side) -> Option<Flank> {
    if room.partly_unread {
        return None;
    }
    let placed = plan.and_then(|plan| Some((plan, plan.opening(opening)?)));
    match placed {
        Some((plan, own)) => in_plan(plan, own, opening, side),
        None => in_row(room, &room.part_of(&opening.name)?, opening, side),
    }
}

/// Where the front of what goes into the opening is, at least.
fn front(room: &Room, opening: &Opening) -> Option<Length> {
    front_edge(room, opening).max(in_the_row_s_fronts(room, opening))
}

/// The fronts of the row that the opening stands in, where what goes into it bears a panel of theirs or a face upon
/// them: its niche may be less deep.
fn in_the_row_s_fronts(room: &Room, opening: &Opening) -> Option<Length> {
    let option = settled(room, opening)?;
    let is_among_them = option.panel.get().is_some() || option.fit.get().is_some_and(|fit| fit.face.get().is_some());
    let row = room.part_of(&opening.name).filter(|_| is_among_them)?;
    row.depth().map(|depth| depth.value)
}

/// The nearest thing or wall at that side of a thing in its place.
fn in_plan(plan: &Plan<'_>, own: &Thing<'_>, opening: &Opening, side: Side) -> Option<Flank> {
    // An inch before the wall behind, which is not beside.
    let inch = Length::from_inches(1);
    let front = front(plan.room, opening).map_or(own.out.1, |edge| own.out.0 + edge).max(own.out.1);
    let out = (own.out.0 + inch, front.max(own.out.0 + inch.times(2)));
    let gap = |shape: &ConvexShape| {
        let (first, last) = shape.beside(&own.frame, out)?;
        let gap = if side == Side::Left { own.along.0 - last } else { first - own.along.1 };
        (gap > -inch).then(|| gap.max(Length::ZERO))
    };
    let door =
        settled(plan.room, opening).and_then(|option| depths(own, option)).map_or(front, |own| own.door.max(front));
    // A filler or a panel is seen through, unless the door that opens beside it strikes its front.
    let is_seen_through = |other: &Thing<'_>| {
        other.is_closure() && !(plan.share_a_face(own, other) && other.out.1 > door && other.out.1 > front)
    };
    let beside = plan.things.iter().filter(|other| {
        !std::ptr::eq(*other, own)
            && !is_seen_through(other)
            && other.within.is_none()
            && !is_a_gap(other)
            && other.is_level_with(own.low, own.high)
    });
    let things = beside.filter_map(|other| Some((gap(&other.footprint())?, Met::Thing(other))));
    let walls = plan.walls.iter().enumerate().filter(|(_, wall)| !wall.is_open());
    let walls = walls.filter_map(|(number, wall)| {
        let face = ConvexShape::new(vec![wall.frame.left(), wall.frame.right()]);
        Some((gap(&face)?, Met::Wall(number)))
    });
    let (gap, met) = things.chain(walls).min_by_key(|(gap, _)| *gap)?;
    let (is_proud, is_tall) = match met.thing() {
        None => (true, true),
        Some(other) => (stands_out(plan, own, other, front), rises(other)),
    };
    let pull_is_proud = met.thing().is_some_and(|other| {
        let door = settled(plan.room, opening).and_then(|option| depths(own, option)).map_or(front, |own| own.door);
        let at_this_side = other.part().is_some_and(|part| has_its_pull_at(part, side));
        at_this_side && plan.share_a_face(own, other) && stands_out_at(other.out.1, other.handles, door)
    });
    Some(Flank {
        what: met.name(plan),
        is: FlankIs::met(&met, plan),
        gap,
        is_proud,
        is_tall,
        is_built: met.thing().is_none(),
        pull_is_proud,
        span: own.span,
    })
}

/// Whether a thing beside stands further out than an opening's front: its body, or the door of what is chosen
/// for it, past the door of what is chosen here.
fn stands_out(plan: &Plan<'_>, own: &Thing<'_>, other: &Thing<'_>, front: Length) -> bool {
    let door = |thing: &Thing<'_>| {
        let option = settled(plan.room, thing.opening?)?;
        depths(thing, option).map(|depths| depths.door)
    };
    let far = (own.along.0 - Length::from_inches(1200), own.along.1 + Length::from_inches(1200));
    let reaches = |shape: ConvexShape| shape.within(&own.frame, far).map(|(_, far)| far);
    let body = reaches(other.footprint()).is_some_and(|reach| reach > front);
    let chosen = door(other).and_then(|out| reaches(other.covers(out)));
    body || chosen.is_some_and(|reach| reach > door(own).map_or(front, |own| own.max(front)))
}

/// A casing at the wall across that side, as far out as a door that swings so far comes by.
pub fn casing_beside<'a>(plan: &Plan<'a>, opening: &Opening, side: Side, swings: Length) -> Option<CasingBeside<'a>> {
    let own = plan.opening(opening)?;
    let front = front_edge(plan.room, opening).map_or(own.out.1, |edge| own.out.0 + edge).max(own.out.1);
    let end = if side == Side::Left { End::Left } else { End::Right };
    plan.casing_beside(own, end, (own.out.0 + Length::from_inches(1), front + swings))
}

fn is_a_gap(thing: &Thing<'_>) -> bool {
    thing.part().is_some_and(|part| matches!(part.is, PartIs::Gap(_)))
}

fn rises(thing: &Thing<'_>) -> bool {
    thing.part().is_some_and(|part| matches!(part.is, PartIs::Tall(_))) || thing.has(Trait::StandsTall)
}

/// Whether the only door of a cabinet hangs on its far side, seen from an opening that it stands beside, so that its
/// pull is at the near one.
fn has_its_pull_at(part: &Part, side: Side) -> bool {
    let far = if side == Side::Left { End::Left } else { End::Right };
    part.doors.get() == Some(&1) && part.hinge.get() == Some(&far)
}

/// Whether a pull on a front stands out before a door.
fn stands_out_at(front: Length, pull: Length, door: Length) -> bool {
    pull > Length::ZERO && front + pull > door
}

/// From the wall to the door of a thing, the air behind it counted.
fn to_its_door(option: &ProductOption) -> Option<Length> {
    let size = &option.size;
    let behind = option.fit.get().map_or(Length::ZERO, |fit| everywhere(&fit.air.back));
    let door = [&size.depth_with_door, &size.depth].into_iter().find_map(|depth| depth.get().copied())?;
    Some(door + behind)
}

/// Another opening of the row.
fn an_opening(room: &Room, part: &Part, name: &str, opening: &Opening, gap: Length) -> Flank {
    let other = room.opening(name);
    let is_tall = other.is_some_and(|other| other.takes_one(Trait::StandsTall));
    let stands = |opening: &Opening| to_its_door(settled(room, opening)?);
    let own = front(room, opening).into_iter().chain(stands(opening)).max();
    let is_proud = other.and_then(stands).zip(own).is_some_and(|(other, own)| other > own);
    let (what, is) = (name.to_owned(), FlankIs::Named);
    Flank { what, is, gap, is_proud, is_tall, is_built: false, pull_is_proud: false, span: part.span }
}

/// A filler or a panel that stands out past the door beside it.
fn closure_in_the_way(part: &Part, gap: Length) -> Flank {
    let (what, is) = match part.is {
        PartIs::Panel(_) => ("panel".to_owned(), FlankIs::Panel),
        _ => ("filler".to_owned(), FlankIs::Filler),
    };
    Flank { what, is, gap, is_proud: true, is_tall: false, is_built: false, pull_is_proud: false, span: part.span }
}

/// The nearest part of a row without a place, or what the row meets at its end.
fn in_row(room: &Room, place: &InRow<'_>, opening: &Opening, side: Side) -> Option<Flank> {
    let run = place.run?;
    let towards_the_end = (run.from == crate::book::End::Left) == (side == Side::Right);
    let beside: Vec<_> = if towards_the_end {
        place.parts.get(place.number + 1..)?.iter().collect()
    } else {
        place.parts.get(..place.number)?.iter().rev().collect()
    };
    let mut gap = Length::ZERO;
    let door = settled(room, opening).and_then(to_its_door).max(in_the_row_s_fronts(room, opening));
    let door = door.or_else(|| front_edge(room, opening));
    for part in beside {
        let (what, depth, is_tall) = match &part.is {
            PartIs::Filler(width) | PartIs::Panel(width) | PartIs::Gap(width) => {
                let stands_out = part.depth.get().zip(door).is_some_and(|(deep, door)| *deep > door);
                if stands_out && !matches!(part.is, PartIs::Gap(_)) {
                    return Some(closure_in_the_way(part, gap));
                }
                gap = gap + *width;
                continue;
            }
            PartIs::Cabinet(what) => (what.as_str(), part.depth.get().or_else(|| run.depth.get()), false),
            PartIs::Tall(what) => (what.as_str(), part.depth.get().or_else(|| run.depth.get()), true),
            PartIs::Opening(name) => return Some(an_opening(room, part, name, opening, gap)),
        };
        let is_proud = depth.zip(front(room, opening)).is_some_and(|(depth, edge)| *depth > edge);
        let pull_is_proud = has_its_pull_at(part, side)
            && depth
                .zip(run.handles.get())
                .zip(door)
                .is_some_and(|((out, pull), door)| stands_out_at(*out, *pull, door));
        return Some(Flank {
            what: what.to_string(),
            is: FlankIs::Named,
            gap,
            is_proud,
            is_tall,
            is_built: false,
            pull_is_proud,
            span: part.span,
        });
    }
    at_the_end(run, place, side, gap)
}

/// What a row meets at its end.
fn at_the_end(run: &Run, place: &InRow<'_>, side: Side, gap: Length) -> Option<Flank> {
    let meets = if side == Side::Left { run.left_end.get() } else { run.right_end.get() };
    let what = meets.filter(|meets| **meets != RunEnd::Open)?;
    Some(Flank {
        what: what.to_string(),
        is: FlankIs::End(*what),
        gap,
        is_proud: true,
        is_tall: true,
        is_built: true,
        pull_is_proud: false,
        span: place.part.span,
    })
}
