//! Puts openings and fixtures in their place, each by its own measure.

use crate::book::{DetailName, End, Fixture, HungLights, Opening, PartIs, ProductOption, Room, Selection, Slot};
use crate::site::fitting::build_up;
use crate::source::{Span, Spanned};
use crate::units::Length;
use crate::vocabulary::{Kind, Mount, Trait};

use super::Plan;
use super::fault::{PlanFault, Wrong};
use super::frame::{divided, length, nm};
use super::place::Placing;
use super::thing::{Stands, Thing, What};

/// More lights than hang over anything.
const MOST_LIGHTS: u32 = 200;

impl<'a> Placing<'a> {
    /// An opening cut into the middle of a cabinet, or into the counter over it.
    ///
    /// Of several that are cut into one counter, each is in the middle of its share.
    pub(super) fn held(
        &mut self,
        opening: &'a Opening,
        (cabinet, counter): (usize, Option<Length>),
        (number, of): (i64, i64),
        span: Span,
    ) {
        let Some(holder) = self.plan.things.get(cabinet).cloned() else { return };
        let let_in = opening.takes_one(Trait::CutIntoCounter);
        let width = opening.governing_width().unwrap_or(holder.width());
        // Where the two differ, that is told: it does not stand in the cabinet beside as well.
        let width = if let_in { width } else { width.min(holder.width()) };
        let share = (2 * i128::from(number) + 1, 2 * i128::from(of.max(1)));
        let centre = holder.along.0 + length(divided(nm(holder.width()) * share.0, share.1));
        let from = centre - width.half();
        let deep = opening.governing_depth().unwrap_or(holder.out.1 - holder.out.0);
        let spare = (holder.out.1 - holder.out.0 - deep).max(Length::ZERO);
        // A sink or cooktop is set in the middle of the depth; an oven's front is the cabinet's, and so is that of a bowl
        // with a front of its own.
        let is_in_the_middle = let_in && !has_its_own_front(self.room, opening);
        let front = if is_in_the_middle { holder.out.1 - spare.half() } else { holder.out.1 };
        // What is let into a counter reaches down from its top, not up from the floor of the cabinet under it.
        let top = opening.counter_height.get().copied().or(counter).filter(|_| let_in);
        let hangs = top.map(|top| top - height_of(self.room, opening).unwrap_or_default());
        let low = opening.sill.get().copied().or(hangs).unwrap_or(holder.low);
        self.plan.things.push(Thing {
            name: &opening.name.value,
            what: What::Opening,
            opening: Some(opening),
            kind: opening.takes.get().copied(),
            along: (from, from + width),
            out: (front - deep, front),
            low,
            high: height_of(self.room, opening).map(|height| low + height),
            handles: Length::ZERO,
            row: None,
            within: Some(cabinet),
            span,
            ..holder
        });
    }

    /// Says so when an opening is set out a second time.
    pub(super) fn once(&mut self, opening: &'a Opening, span: Span) {
        let placed = self.plan.things.iter().find(|thing| thing.is_opening(opening)).map(|thing| thing.span);
        if let Some(first) = placed {
            let item = Some(opening.name.value.clone());
            self.plan.faults.push(PlanFault { wrong: Wrong::Twice, item, span, also: Some(first) });
        }
    }

    /// An opening that has its own place at a wall.
    pub(super) fn opening_at_a_wall(&mut self, opening: &'a Opening) {
        let Some(number) = self.wall(&opening.wall, &opening.name) else { return };
        let Some(from) = opening.at.get().copied() else { return };
        let Some(width) = opening.governing_width() else { return };
        self.once(opening, opening.span);
        self.within(number, (from, from + width), &opening.name, opening.span);
        let Some(frame) = self.plan.walls.get(number).map(|wall| wall.frame) else { return };
        let low = opening.sill.get().copied().unwrap_or_default();
        self.plan.things.push(Thing {
            name: &opening.name.value,
            what: What::Opening,
            opening: Some(opening),
            kind: opening.takes.get().copied(),
            stands: Stands::Wall(number),
            frame,
            along: (from, from + width),
            out: (Length::ZERO, opening.governing_depth().or(of_what_goes_in(self.room, opening)).unwrap_or_default()),
            handles: Length::ZERO,
            low,
            high: height_of(self.room, opening).map(|height| low + height),
            row: None,
            within: None,
            span: opening.span,
        });
    }

    /// What is let into a counter, and set out by itself, is cut into the cabinet that it stands over: whoever stands
    /// before it stands before that, and neither is in the other's place.
    pub(super) fn carried(&mut self) {
        let carries = |holder: &Thing<'_>, basin: &Thing<'_>| {
            let is_cabinet = holder.is(Kind::Cabinet)
                || holder.is(Kind::Counter)
                || holder.part().is_some_and(|part| matches!(part.is, PartIs::Cabinet(_)));
            let middle = basin.frame.at(basin.centre(), (basin.out.0 + basin.out.1).half());
            is_cabinet && holder.within.is_none() && holder.footprint().contains(middle)
        };
        let things = &self.plan.things;
        let holder = |basin: &Thing<'_>| things.iter().position(|holder| carries(holder, basin));
        let is_free =
            |thing: &Thing<'_>| thing.row.is_none() && thing.within.is_none() && thing.has(Trait::CutIntoCounter);
        let found: Vec<Option<usize>> =
            things.iter().map(|thing| Some(thing).filter(|thing| is_free(thing)).and_then(holder)).collect();
        for (thing, holder) in self.plan.things.iter_mut().zip(found) {
            thing.within = thing.within.or(holder);
        }
    }

    /// A fixture on its centreline.
    pub(super) fn fixture(&mut self, fixture: &'a Fixture) {
        let Some(number) = self.wall(&fixture.wall, &fixture.name) else { return };
        let Some(frame) = self.plan.walls.get(number).map(|wall| wall.frame) else { return };
        let opening = fixture.opening.get().and_then(|name| self.room.opening(name));
        let Some(sizes) = size_of(self.room, fixture, opening) else { return };
        if let Some(opening) = opening {
            self.once(opening, fixture.name.span);
        }
        let Some(centre) = fixture.centre.get().copied() else { return };
        let centre = if fixture.from == End::Right { frame.length() - centre } else { centre };
        let from = centre - sizes.width.half();
        let along = (from, from + sizes.width);
        self.within(number, along, &fixture.name, fixture.name.span);
        let back = fixture.off_wall.get().copied().unwrap_or_default();
        self.plan.things.push(Thing {
            name: &fixture.name.value,
            what: What::Fixture(fixture),
            opening,
            kind: sizes.kind,
            stands: Stands::Wall(number),
            frame,
            along,
            out: (back, back + sizes.depth),
            handles: Length::ZERO,
            low: sizes.low,
            high: sizes.high,
            row: None,
            within: None,
            span: fixture.name.span,
        });
    }
}

impl Plan<'_> {
    /// Whether a thing that is cut into a counter has a front of its own, which stands where the cabinet's is.
    pub fn has_its_own_front(&self, thing: &Thing<'_>) -> bool {
        let opening = thing.opening.filter(|opening| opening.takes_one(Trait::CutIntoCounter));
        thing.within.is_some() && opening.is_some_and(|opening| has_its_own_front(self.room, opening))
    }

    /// How far before the middle of the depth such a thing stands; nothing for any other.
    pub fn moved_to_the_face(&self, thing: &Thing<'_>) -> Length {
        let holder = thing.within.and_then(|at| self.things.get(at)).filter(|_| self.has_its_own_front(thing));
        let spare = holder.map(|holder| (holder.out.1 - holder.out.0) - (thing.out.1 - thing.out.0));
        spare.unwrap_or_default().max(Length::ZERO).half()
    }
}

/// Whether whatever can be taken for an opening is a bowl with a front of its own.
fn has_its_own_front(room: &Room, opening: &Opening) -> bool {
    let mut options = room.goes_into(&opening.name).flat_map(|selection| selection.standing()).peekable();
    options.peek().is_some() && options.all(|option| option.mount() == Some(Mount::Apron))
}

/// The height of an opening in the plan, where all stands on the finished floor: its least, less what is still to be laid
/// under it.
pub fn height_of(room: &Room, opening: &Opening) -> Option<Length> {
    let least = opening.height.get().and_then(|readings| readings.least())?;
    Some(least.value - build_up(room, opening))
}

/// How far what goes into an opening stands out from its wall, with the air behind it: while the client chooses, the
/// deepest.
fn of_what_goes_in(room: &Room, opening: &Opening) -> Option<Length> {
    let drops_in = opening.takes_one(Trait::DropsIn);
    let options = room.goes_into(&opening.name).filter(|_| !drops_in).flat_map(|selection| selection.standing());
    let depth = |option: &ProductOption| {
        let air = option.fit.get().and_then(|fit| fit.air.back.get()).filter(|air| air.holds.is_empty());
        Some(*option.size.depth.get()? + air.map_or(Length::ZERO, |air| air.length))
    };
    options.filter_map(depth).max()
}

/// The size of a fixture.
struct FixtureSize {
    kind: Option<Kind>,
    width: Length,
    depth: Length,
    low: Length,
    high: Option<Length>,
}

/// What is chosen for a fixture: the selection that it names, else what goes into its opening, else the room's only one
/// of its kind.
pub fn chosen_for<'a>(room: &'a Room, fixture: &Fixture) -> Option<&'a Selection> {
    if let Some(name) = fixture.selection.get() {
        return room.selections.iter().find(|selection| selection.name.value == *name);
    }
    let Some(opening) = fixture.opening.get() else { return only_one_for(room, fixture) };
    let opening = room.opening(opening)?;
    room.selections.iter().find(|selection| selection.place.get() == Some(&opening.name.value))
}

/// The only thing of a kind that is chosen in a room, for the only fixture of that kind that it sets out: neither of them
/// need name the other. A set of fittings is not the shower that they hang in, and cabinets in runs are none of a
/// fixture's.
fn only_one_for<'a>(room: &'a Room, fixture: &Fixture) -> Option<&'a Selection> {
    let kind = *fixture.takes.get().filter(|_| fixture.selection.is_absent() && fixture.opening.is_absent())?;
    let is_in_runs = || kind == Kind::Cabinet && !room.runs.is_empty();
    let is_alone = || room.fixtures.iter().filter(|other| other.takes.get() == Some(&kind)).count() == 1;
    if kind == Kind::ShowerSet || is_in_runs() || !is_alone() {
        return None;
    }
    let mut chosen = room.selections.iter().filter(|selection| selection.is(kind));
    let only = chosen.next().filter(|_| chosen.next().is_none())?;
    let one = |option: &ProductOption| option.quantity.get().is_none_or(|count| count.whole() == Some(1));
    // One that goes into an opening which the plan sets out stands there.
    let is_set_out = |name: &String| {
        let opening = room.opening(name);
        opening.is_none_or(|opening| !opening.wall.is_absent())
            || room.part_of(name).is_some()
            || room.holder(name).is_some()
            || room.fixtures.iter().any(|fixture| fixture.opening.get() == Some(name))
    };
    let is_free = only.place.get().is_none_or(|name| !is_set_out(name));
    Some(only).filter(|only| is_free && only.standing().iter().all(one))
}

/// Width and depth of an option as it stands at a fixture's place: a tub or a tray with its end to the wall where the
/// plan has it so, and what goes into the wall without the part that is in it.
pub fn sides_at(fixture: &Fixture, option: &ProductOption) -> (Option<Spanned<Length>>, Option<Spanned<Length>>) {
    let side = |slot: &Slot<Length>| slot.spanned().map(|side| Spanned::new(side.value, side.span));
    let of = |own: Option<Spanned<Length>>, name: DetailName| {
        own.or_else(|| option.length(name).map(|(length, at)| Spanned::new(length, at)))
    };
    // What stands out from a wall is as deep as that; what has a length is as wide.
    let width = side(&option.size.width).or_else(|| side(&option.size.length));
    let (width, depth) = (width, of(side(&option.size.depth), DetailName::Projection));
    let planned = fixture.width.get().zip(fixture.depth.get());
    let is_long = |kind: &Kind| [Kind::Bathtub, Kind::ShowerTray, Kind::ShowerSet].contains(kind);
    let turns = || fixture.takes.get().is_none_or(is_long);
    if let (Some((along, out)), Some(wide), Some(deep)) = (planned, &width, &depth)
        && turns()
        && (*along < *out && wide.value > deep.value || *along > *out && wide.value < deep.value)
    {
        return (depth, width);
    }
    let within = option.length(DetailName::Recess).map_or(Length::ZERO, |(within, _)| within);
    (width, depth.map(|deep| Spanned::new((deep.value - within).max(Length::ZERO), deep.span)))
}

/// The larger of what the plan writes and what is chosen, which must have its place; else that of its opening; none
/// without a width.
fn size_of(room: &Room, fixture: &Fixture, opening: Option<&Opening>) -> Option<FixtureSize> {
    let selection = chosen_for(room, fixture);
    let options = selection.map(|selection| selection.standing()).unwrap_or_default();
    // While the client chooses, the largest must have its place.
    let of = |size: &dyn Fn(&ProductOption) -> Option<Length>| options.iter().filter_map(size).max();
    let wide = of(&|option| Some(sides_at(fixture, option).0?.value));
    let deep = of(&|option| Some(sides_at(fixture, option).1?.value));
    let width = fixture.width.get().copied().max(wide);
    let depth = fixture.depth.get().copied().max(deep);
    let height = fixture.height.get().copied();
    let height = height.or_else(|| of(&|option| option.size.height.get().and_then(|height| height.least)));
    let low = fixture.sill.get().or_else(|| opening?.sill.get()).copied().unwrap_or_default();
    let kind = fixture.takes.get().or_else(|| opening?.takes.get()).or_else(|| selection?.kind.get()).copied();
    let high = height.or_else(|| height_of(room, opening?)).map(|height| low + height);
    let width = width.or_else(|| opening.and_then(Opening::governing_width))?;
    let depth = depth.or_else(|| opening.and_then(Opening::governing_depth)).unwrap_or_default();
    Some(FixtureSize { kind, width, depth, low, high })
}

/// Where lights hang along something so long: as written, or evenly, half a space at both ends.
pub fn spaced(hung: &HungLights, long: Length) -> Vec<Length> {
    if let Some(at) = hung.at.get() {
        return at.0.iter().map(|at| at.value).collect();
    }
    let count = i128::from(hung.count.get().copied().unwrap_or(0).min(MOST_LIGHTS));
    (0..count).map(|number| length(divided(nm(long) * (2 * number + 1), 2 * count))).collect()
}
