//! Floor that is clear before things, and what stands beside a thing.

use crate::book::{Doorway, End, IslandSide, ProductOption};
use crate::units::Length;

use super::frame::{Frame, GRAIN, nm};
use super::shape::ConvexShape;
use super::thing::{Row, RowOf, Stands, Thing, What};
use super::{HoleIs, Plan, body};

/// How far before a thing what parts the floor there is looked for: as much as anything asks for.
const BEFORE: Length = Length::from_inches(60);

/// What a straight look from a thing meets first.
#[derive(Clone, Copy, Debug)]
pub enum Met<'p, 'a> {
    /// Another thing.
    Thing(&'p Thing<'a>),
    /// A wall, by its number.
    Wall(usize),
}

impl<'a> Met<'_, 'a> {
    /// What it is called.
    pub fn name(&self, plan: &Plan<'a>) -> String {
        match self {
            Self::Thing(thing) => thing.name.to_string(),
            Self::Wall(number) => match plan.walls.get(*number) {
                Some(wall) if wall.name() != wall.letter => wall.name().to_string(),
                Some(wall) => format!("wall {}", wall.letter),
                None => "wall".into(),
            },
        }
    }

    /// The thing, if it is one.
    pub fn thing(&self) -> Option<&Thing<'a>> {
        match self {
            Self::Thing(thing) => Some(thing),
            Self::Wall(_) => None,
        }
    }
}

/// Clear floor, and what ends it.
#[derive(Clone, Copy, Debug)]
pub struct Clear<'p, 'a> {
    /// How much.
    pub distance: Length,
    /// What ends it.
    pub to: Met<'p, 'a>,
}

impl Clear<'_, '_> {
    /// The wall that ends it, by its number, if one does.
    pub fn wall(&self) -> Option<usize> {
        match self.to {
            Met::Wall(number) => Some(number),
            Met::Thing(_) => None,
        }
    }
}

impl<'a> Plan<'a> {
    /// How far out a thing reaches from its frame, handles left out: its front, the edge of the
    /// counter over it, or the door of what was chosen for it, whichever is farthest.
    pub fn front(&self, thing: &Thing<'a>) -> Length {
        self.front_with(thing, thing.opening.and_then(|opening| body::settled(self.room, opening)))
    }

    /// The same with that option in its place, chosen or not; or with none.
    pub fn front_with(&self, thing: &Thing<'a>, option: Option<&ProductOption>) -> Length {
        // A basin is reached over the cabinet that carries it; an island's sides have fronts of their own.
        let holder = thing.within.and_then(|at| self.things.get(at)).filter(|it| !matches!(it.what, What::Island(_)));
        let carried = holder.unwrap_or(thing);
        let counter = self.row_of(thing).filter(|row| row.carries(carried)).and_then(|row| row.counter);
        let door = option.and_then(|option| body::depths(thing, option)).map(|depths| depths.door);
        [Some(thing.out.1.max(carried.out.1)), counter.map(|counter| counter.front), door]
            .into_iter()
            .flatten()
            .max()
            .unwrap_or_default()
    }

    /// The row that a thing stands in, or that it is cut into.
    pub fn row_of(&self, thing: &Thing<'a>) -> Option<&Row<'a>> {
        let row = thing.row.or_else(|| self.things.get(thing.within?)?.row)?;
        self.rows.get(row)
    }

    /// Clear floor straight before a thing, over its whole width, from its front as [`Plan::front`]
    /// has it; none where the room is open on that side.
    pub fn clear_before(&self, thing: &Thing<'a>) -> Option<Clear<'_, 'a>> {
        self.clear_from(thing, self.front(thing))
    }

    /// The same from a front so far out: that of an option which may still be chosen.
    pub fn clear_from(&self, thing: &Thing<'a>, front: Length) -> Option<Clear<'_, 'a>> {
        self.clear_of(thing, front, &|_| false)
    }

    /// The same before the middle quarter of its width alone, whatever it, or what else stands at its wall, reaches
    /// out.
    pub fn clear_before_its_middle(&self, thing: &Thing<'a>, front: Length) -> Option<Clear<'_, 'a>> {
        let side = thing.width().half().half().half().times(3);
        let middle = Thing { along: (thing.along.0 + side, thing.along.1 - side), ..thing.clone() };
        self.clear_of(&middle, front, &|other| other.stands == thing.stands && !matches!(other.what, What::Island(_)))
    }

    /// The same before the stretch of it, so wide, that has the most: a tub is entered anywhere along its side. Before
    /// all of what is narrower.
    pub fn clear_before_its_best(&self, thing: &Thing<'a>, wide: Length) -> Option<Clear<'_, 'a>> {
        let (first, last) = thing.along;
        if thing.width() <= wide {
            return self.clear_before(thing);
        }
        let front = self.front(thing);
        let ends =
            self.standing().filter_map(|(_, covered)| covered.to_front.beside(&thing.frame, (front, front + BEFORE)));
        // The best stretch lies at an end of the thing, or at a side of what stands before it.
        let from = ends.flat_map(|(left, right)| [left - wide, right]).chain([first, last - wide]);
        let stretches = from.filter(|from| *from >= first && *from + wide <= last);
        let clear = stretches.filter_map(|from| {
            let stretch = Thing { along: (from, from + wide), ..thing.clone() };
            self.clear_of(&stretch, front, &|other| std::ptr::eq(other, thing))
        });
        clear.max_by_key(|clear| clear.distance)
    }

    /// The same, some things left out of sight.
    pub(super) fn clear_of(
        &self,
        thing: &Thing<'a>,
        front: Length,
        is_left_out: &dyn Fn(&Thing<'a>) -> bool,
    ) -> Option<Clear<'_, 'a>> {
        let island = match thing.stands {
            Stands::Island(number, _) => self.room.islands.get(number).map(|island| island.name.value.as_str()),
            Stands::Wall(_) => None,
        };
        let own = |other: &Thing<'a>| {
            std::ptr::eq(thing, other)
                || is_left_out(other)
                || (thing.row.is_some() && thing.row == other.row)
                || self.is_cut_into(thing, other)
                || (matches!(other.what, What::Island(_)) && Some(other.name) == island)
        };
        self.look(&thing.frame, thing.along, front, &own)
    }

    /// Clear floor before a side of an island, from the edge of its counter.
    pub fn clear_behind(&self, island: &crate::book::Island, side: IslandSide) -> Option<Clear<'_, 'a>> {
        let row = self.rows.iter().find(|row| match row.of {
            RowOf::Side(of, at) => std::ptr::eq(of, island) && at == side,
            RowOf::Run(_) => false,
        })?;
        let own = |other: &Thing<'a>| matches!(other.what, What::Island(of) if std::ptr::eq(of, island));
        self.look(&row.frame, (Length::ZERO, row.frame.length()), Length::ZERO, &own)
    }

    /// Floor before a thing, from so far out, to the wall across, whatever stands between.
    pub fn to_the_wall_before(&self, thing: &Thing<'a>, front: Length) -> Option<Clear<'_, 'a>> {
        self.look(&thing.frame, thing.along, front, &|_| true)
    }

    /// Whether the wall of that number has a hole without a leaf straight before a thing.
    pub fn stands_open_before(&self, thing: &Thing<'a>, wall: usize) -> bool {
        self.doorways_before(thing, wall).any(Doorway::has_no_leaf)
    }

    /// Whether the wall of that number has a door straight before a thing, which may stand open.
    pub fn has_a_door_before(&self, thing: &Thing<'a>, wall: usize) -> bool {
        self.doorways_before(thing, wall).next().is_some()
    }

    /// The doorways of a wall that the middle of a thing stands before.
    fn doorways_before(&self, thing: &Thing<'a>, wall: usize) -> impl Iterator<Item = &'a Doorway> {
        let centre = nm(thing.centre());
        let here = self.holes.iter().filter(move |hole| {
            let end = |along: Length| thing.frame.local(hole.frame.at(along, Length::ZERO)).0;
            let (one, other) = (end(hole.along.0), end(hole.along.1));
            hole.wall == wall && one.min(other) <= centre && centre <= one.max(other)
        });
        here.filter_map(|hole| match hole.is {
            HoleIs::Door(door) => Some(door),
            HoleIs::Window(_) => None,
        })
    }

    /// How far the wall across is from a stretch of a frame, whatever stands between.
    pub fn clear_to_a_wall(&self, frame: &Frame, along: (Length, Length)) -> Option<Length> {
        self.look(frame, along, Length::ZERO, &|_| true).map(|clear| clear.distance)
    }

    /// What is met first before a stretch of a frame, from so far out.
    fn look(
        &self,
        frame: &Frame,
        along: (Length, Length),
        front: Length,
        is_own: &dyn Fn(&Thing<'a>) -> bool,
    ) -> Option<Clear<'_, 'a>> {
        let ahead = |shape: &ConvexShape| {
            let (near, far) = shape.within(frame, along)?;
            (nm(far) > nm(front) + GRAIN).then(|| (near - front).max(Length::ZERO))
        };
        let things = self.standing().filter(|(other, _)| other.is_in_the_way() && !is_own(other));
        let things = things.filter_map(|(other, covered)| Some((ahead(&covered.to_front)?, Met::Thing(other))));
        let walls = self.walls.iter().enumerate().filter(|(_, wall)| !wall.is_open());
        let walls = walls.filter_map(|(number, wall)| Some((ahead(&wall.face)?, Met::Wall(number))));
        let first = things.chain(walls).min_by_key(|(distance, _)| *distance)?;
        Some(Clear { distance: first.0, to: first.1 })
    }

    fn is_cut_into(&self, thing: &Thing<'a>, other: &Thing<'a>) -> bool {
        let holder = |one: &Thing<'a>| one.within.and_then(|at| self.things.get(at));
        let row = self.row_of(thing).map(std::ptr::from_ref);
        holder(thing).is_some_and(|holder| std::ptr::eq(holder, other))
            || (row.is_some() && row == self.row_of(other).map(std::ptr::from_ref))
    }

    /// What stands beside a thing, from its back to its front, at its own height, and how far away.
    pub fn beside(&self, thing: &Thing<'a>, side: End) -> Option<Clear<'_, 'a>> {
        self.beside_between(thing, side, (thing.out.0, thing.out.1.max(thing.out.0 + Length::from_inches(1))))
    }

    /// What stands beside a thing between two distances out from its frame: before its front, say,
    /// where its drawers come out.
    pub fn beside_between(&self, thing: &Thing<'a>, side: End, out: (Length, Length)) -> Option<Clear<'_, 'a>> {
        let from = if side == End::Left { thing.along.0 } else { thing.along.1 };
        let away = |shape: &ConvexShape| {
            let (first, last) = shape.beside(&thing.frame, out)?;
            let gap = if side == End::Left { from - last } else { first - from };
            (nm(gap) >= -GRAIN).then(|| gap.max(Length::ZERO))
        };
        let things = self.standing().filter(|(other, _)| {
            !std::ptr::eq(*other, thing)
                && other.within.is_none_or(|holder| thing.within == Some(holder))
                && !self.holds(other, thing)
                && thing.is_level_with(other.low, other.top())
        });
        let things = things.filter_map(|(other, covered)| Some((away(&covered.footprint)?, Met::Thing(other))));
        let walls = self.walls.iter().enumerate().filter(|(_, wall)| !wall.is_open());
        let walls = walls.filter_map(|(number, wall)| Some((away(&wall.face)?, Met::Wall(number))));
        let nearest = things.chain(walls).min_by_key(|(gap, _)| *gap)?;
        Some(Clear { distance: nearest.0, to: nearest.1 })
    }

    /// What stands before a stretch of a thing's front, nearer than so far, and how much of it that covers: the most.
    pub fn stands_before(
        &self,
        thing: &Thing<'a>,
        along: (Length, Length),
        near: Length,
    ) -> Option<(&Thing<'a>, Length)> {
        let before = (thing.out.1, thing.out.1 + near);
        let covers = |shape: &ConvexShape| {
            let (first, last) = shape.beside(&thing.frame, before)?;
            let covered = last.min(along.1) - first.max(along.0);
            (nm(covered) > GRAIN).then_some(covered)
        };
        let others = self.standing().filter(|(other, _)| {
            !std::ptr::eq(*other, thing)
                && other.within.is_none()
                && other.stands != thing.stands
                && !matches!(other.what, What::Island(_))
                && thing.is_level_with(other.low, other.top())
        });
        let covered = others.filter_map(|(other, shape)| Some((other, covers(&shape.footprint)?)));
        covered.max_by_key(|(_, covered)| *covered)
    }

    fn holds(&self, holder: &Thing<'a>, held: &Thing<'a>) -> bool {
        held.within.and_then(|at| self.things.get(at)).is_some_and(|other| std::ptr::eq(other, holder))
    }

    /// From a thing's centreline to whatever stands beside it.
    pub fn to_side(&self, thing: &Thing<'a>, side: End) -> Option<Clear<'_, 'a>> {
        let beside = self.beside(thing, side)?;
        let half = thing.centre() - thing.along.0;
        let half = if side == End::Left { half } else { thing.width() - half };
        Some(Clear { distance: beside.distance + half, to: beside.to })
    }

    /// From a thing's centreline to that of the nearest fixture at the same wall on that side.
    pub fn to_next_fixture(&self, thing: &Thing<'a>, side: End) -> Option<(&Thing<'a>, Length)> {
        let away = |other: &Thing<'a>| {
            let away =
                if side == End::Left { thing.centre() - other.centre() } else { other.centre() - thing.centre() };
            (away > Length::ZERO).then_some(away)
        };
        let is_one =
            |other: &Thing<'a>| other.frame == thing.frame && other.kind.is_some() && !self.holds(other, thing);
        let fixtures = self.things.iter().filter(|other| is_one(other));
        fixtures.filter_map(|other| Some((other, away(other)?))).min_by_key(|(_, away)| *away)
    }
}

impl Thing<'_> {
    /// Whether one works at its front: cabinets, appliances, islands; no filler, and no fixture of a bath.
    pub fn is_worked_at(&self) -> bool {
        match self.what {
            What::Part(_) => !self.is_closure(),
            What::Opening | What::Island(_) => true,
            What::Fixture(_) => false,
        }
    }
}

/// How far out from its frame a thing reaches with its handles: that option's, or a cabinet's own.
pub fn with_handles(thing: &Thing<'_>, option: Option<&ProductOption>) -> Length {
    let chosen = option.and_then(|option| body::depths(thing, option)).map(|depths| depths.handle);
    chosen.unwrap_or_default().max(thing.out.1 + thing.handles)
}
