//! Doors and drawers that open into one another, and bodies in one another's place.

mod bodies;
mod doorways;
mod hinged;
mod mounted;
mod opens_before;
mod taps;
mod vanities;
mod windows;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{DoorHinge, Hinge, Room};
use crate::finding::{Id, Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::plan::{Hole, HoleIs, Opens, Plan, Sweep, Thing, What, settled, with_handles};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Trade;

/// The guideline that no two of these doors may meet.
const GUIDELINE: &str = "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 2";

declare! {
    /// Two things open into each other, or stand in one place
    ///
    /// ## What it checks
    /// The floor that each appliance's door or drawer sweeps (from the maker's `fit.door`, its case
    /// standing as deep as it is), what the doors of the room sweep, and cabinets' drawers and doors:
    /// against what stands across from them or around the corner: appliances with their handles, fixtures, furniture,
    /// islands and other rows. Two appliances'
    /// doors, or an appliance's and a door of the room, must not sweep the same floor either. What
    /// touches at most passes. Needs the room's plan: runs, islands or `wall` and `at`. And no two bodies
    /// may stand in one place, at the heights that they have: cabinets, appliances, fixtures, doorways and
    /// windows; it names the way that is shortest to part them. What an option's own door closes of a doorway is told of
    /// that option alone. Besides: two that keep food cold, or a washer and a dryer,
    /// beside one another whose doors are hinged at the side that they share; a counter, or what stands up from
    /// it to no more than {8"}, before a window of its wall; the splash of a vanity before the mirror over it; a tap that is higher than what hangs over it, or
    /// than the sill of a window that opens into the room.
    ///
    /// ## Why it matters
    /// A refrigerator of the same width that is {2"} deeper keeps the dishwasher around the corner
    /// from opening. On a plan both look right.
    ///
    /// ## Remedy
    /// Move one of them, put a filler in the corner, hang the door on its other side, or choose one that
    /// reaches less far.
    ///
    /// ## Example
    /// ```yaml
    /// outline: 12' x 7' 6"
    /// runs:
    ///   left: {wall: A, parts: [{gap: 30"}, {opening: range}]}
    ///   right: {wall: C, from: right, parts: [{gap: 30"}, {opening: dishwasher}]}
    /// ```
    /// Across an aisle of {42"} an oven door of {21"} and a dishwasher's of {26"} meet.
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 2; the maker's sheet.
    "fit/clash", Query,
    due: WithThing, tells: [Installer],
    judges: placed,
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 2", "the maker's sheet"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(hinged::together(context, room));
        findings.extend(taps::clash(context, room));
        let Some(plan) = context.site.plan(room) else { continue };
        findings.extend(bodies::clash(context, plan));
        findings.extend(doorways::closed_by_options(context, plan, room));
        findings.extend(windows::clash(context, plan));
        findings.extend(vanities::clash(context, plan));
        findings.extend(mounted::ask(plan));
        let movers = movers(context, plan, room);
        let mut found: Vec<Clash> = Vec::new();
        for (number, mover) in movers.iter().enumerate() {
            let bodies = struck_first(plan, mover).into_iter().map(|met| strikes(context, plan, mover, met));
            let others = movers.iter().take(number).filter_map(|other| meet(context, plan, mover, other));
            for clash in bodies.chain(others) {
                // A pair is told at the appliance that opens; from the other side it is the same corner.
                let of = clash.1.subject.option();
                let is_known = |known: &Clash| known.0 == clash.0 && (of.is_none() || known.1.subject.option() == of);
                if !found.iter().any(is_known) {
                    found.push(clash);
                }
            }
        }
        findings.extend(once_for_all_options(room, found));
    }
}

/// Where every option of a selection opens into the same thing, that is told once.
fn once_for_all_options(room: &Room, found: Vec<Clash>) -> Vec<Remark> {
    let mut told: Vec<Clash> = Vec::new();
    for (pair, mut finding) in found {
        let selection = room.selections.iter().find(|selection| Some(Id::of(&selection.name)) == finding.subject.id());
        let options = selection.map_or(1, |selection| selection.standing().len());
        let known = told.iter().filter(|known| known.0 == pair).count();
        if options > 1 && known + 1 == options && finding.subject.option().is_some() {
            finding.message = finding.message.of_each_option();
            finding.subject = finding.subject.of_each_option();
            told.retain(|known| known.0 != pair);
        }
        told.push((pair, finding));
    }
    told.into_iter().map(|(_, finding)| finding).collect()
}

/// Something that opens.
struct Mover<'a> {
    name: &'a str,
    is: Moves<'a>,
    sweep: Sweep,
    span: Span,
}

/// What opens.
enum Moves<'a> {
    Appliance(Placement<'a>, &'a Thing<'a>),
    Cabinet(&'a Thing<'a>),
    Door(&'a Hole<'a>),
}

impl<'a> Mover<'a> {
    fn thing(&self) -> Option<&'a Thing<'a>> {
        match self.is {
            Moves::Appliance(_, thing) | Moves::Cabinet(thing) => Some(thing),
            Moves::Door(_) => None,
        }
    }

    fn is_appliance(&self) -> bool {
        matches!(self.is, Moves::Appliance(..))
    }

    /// The cabinet whose door or drawer it is.
    fn cabinet(&self) -> Option<&'a Thing<'a>> {
        match self.is {
            Moves::Cabinet(thing) => Some(thing),
            Moves::Appliance(..) | Moves::Door(_) => None,
        }
    }

    /// Whether it has a door at each side, and no other side to hang one on.
    fn hangs_on_both(&self) -> bool {
        match &self.is {
            Moves::Appliance(fitted, _) => fitted.option.hinge.get() == Some(&Hinge::Both),
            Moves::Cabinet(thing) => thing.part().and_then(|part| part.doors.get()).is_some_and(|doors| *doors > 1),
            Moves::Door(hole) => match hole.is {
                HoleIs::Door(door) => door.hinge.get() == Some(&DoorHinge::Both),
                HoleIs::Window(_) => false,
            },
        }
    }
}

fn movers<'a>(context: &Context<'a>, plan: &'a Plan<'a>, room: &Room) -> Vec<Mover<'a>> {
    let mut movers = Vec::new();
    for fitted in context.site.fitted_in(room) {
        let Some((_, thing)) = fitted.placed(context.site) else { continue };
        let sweeps = plan.sweeps(thing, Some(fitted.option)).into_iter();
        movers.extend(sweeps.map(|sweep| Mover {
            name: &fitted.opening.name.value,
            is: Moves::Appliance(fitted, thing),
            sweep,
            span: thing.span,
        }));
    }
    for thing in plan.things.iter().filter(|thing| matches!(thing.what, What::Part(_)) && thing.opening.is_none()) {
        let sweeps = plan.sweeps(thing, None).into_iter();
        movers.extend(sweeps.map(|sweep| Mover {
            name: thing.name,
            is: Moves::Cabinet(thing),
            sweep,
            span: thing.span,
        }));
    }
    for hole in plan.holes.iter().filter(|hole| matches!(hole.is, HoleIs::Door(_))) {
        let sweeps = plan.door_sweeps(hole).into_iter();
        movers.extend(sweeps.map(|sweep| Mover { name: hole.name(), is: Moves::Door(hole), sweep, span: hole.span() }));
    }
    movers
}

/// A pair by its names, and what is to be told of it.
type Clash = ((String, String), Remark);

/// What something that opens strikes, and after how much of its way: of a row what it strikes first.
fn struck_first<'p, 'a>(plan: &'p Plan<'a>, mover: &Mover<'_>) -> Vec<(&'p Thing<'a>, Length)> {
    let mut met: Vec<(&Thing<'a>, Length)> = Vec::new();
    for body in &plan.things {
        let Some(free) = struck(plan, mover, body) else { continue };
        match met.iter_mut().find(|(known, _)| known.row.is_some() && known.row == body.row) {
            Some(known) if known.1 > free => *known = (body, free),
            Some(_) => {}
            None => met.push((body, free)),
        }
    }
    met
}

/// After how much of its way something that opens strikes a body.
fn struck(plan: &Plan<'_>, mover: &Mover<'_>, body: &Thing<'_>) -> Option<Length> {
    // Between cabinets and walls there is `run/filler`; what doors of the room meet, `clear/door-swing` tells.
    let of_appliances = mover.is_appliance() || is_appliance(body);
    if !(of_appliances || opens_before::may_strike(plan, mover.cabinet(), body))
        || body.within.is_some()
        || body.is_closure()
    {
        return None;
    }
    if !mover.sweep.is_level_with(body) || mover.thing().is_some_and(|thing| stand_together(plan, thing, body)) {
        return None;
    }
    // Two that stand in one place are to be moved first.
    if bodies::is_told(plan, mover.span, body.span) {
        return None;
    }
    if let Some(cabinet) = mover.cabinet().filter(|_| !of_appliances) {
        return mover.sweep.meets(&opens_before::struck_part(cabinet, body));
    }
    let option = body.opening.and_then(|opening| settled(plan.room, opening));
    let front = plan.front(body).max(with_handles(body, option));
    mover.sweep.meets(&body.covers(front))
}

/// What opens against what stands there.
fn strikes(context: &Context<'_>, plan: &Plan<'_>, mover: &Mover<'_>, (body, free): (&Thing<'_>, Length)) -> Clash {
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "{} reaches {} and strikes `{}` after {}, {} too soon",
        opening_part(mover),
        say(mover.sweep.reach),
        body.name,
        say(free),
        say(mover.sweep.reach - free)
    );
    let finding = finding(mover, plan.room, message).also(body.span, Phrase::name(body.name));
    (pair(mover.name, body.name), finding)
}

/// Whether two things are one beside the other in a row, or one in the other.
fn stand_together(plan: &Plan<'_>, one: &Thing<'_>, other: &Thing<'_>) -> bool {
    let same_row = plan.row_of(one).zip(plan.row_of(other)).is_some_and(|(one, other)| std::ptr::eq(one, other));
    let own_island = matches!(other.what, What::Island(_)) && plan.is_at_an_island(one) && at_island(one, other);
    std::ptr::eq(one, other) || same_row || own_island || plan.share_a_face(one, other)
}

fn at_island(one: &Thing<'_>, island: &Thing<'_>) -> bool {
    one.footprint().overlaps(&island.footprint())
}

fn is_appliance(thing: &Thing<'_>) -> bool {
    thing.kind.is_some_and(|kind| kind.trade() == Trade::Appliance)
}

/// Two doors that sweep the same floor.
fn meet(context: &Context<'_>, plan: &Plan<'_>, one: &Mover<'_>, other: &Mover<'_>) -> Option<Clash> {
    let both = one.is_appliance() && other.is_appliance();
    let door = (one.is_appliance() && matches!(other.is, Moves::Door(_)))
        || (other.is_appliance() && matches!(one.is, Moves::Door(_)));
    if !(both || door) || one.name == other.name || !one.sweep.shape.overlaps(&other.sweep.shape) {
        return None;
    }
    // Two at one wall open side by side, each before itself: where they overlap, a width is wrong, and told elsewhere.
    if one.thing().zip(other.thing()).is_some_and(|(one, other)| plan.share_a_face(one, other)) {
        return None;
    }
    // What is in one cabinet opens one above the other, or `fit/cabinet` tells.
    let holder = |mover: &Mover<'_>| mover.thing().and_then(|thing| thing.within);
    if holder(one).is_some() && holder(one) == holder(other) {
        return None;
    }
    // What stands one above the other opens one above the other.
    if !one.sweep.is_level_with_sweep(&other.sweep) || bodies::is_told(plan, one.span, other.span) {
        return None;
    }
    let say = |length: Length| say(length, context.book.project.units);
    let message = phrase!(
        "{} and {} sweep the same floor: they reach {} and {}",
        opening_part(one),
        opening_part(other),
        say(one.sweep.reach),
        say(other.sweep.reach)
    );
    let of = if one.is_appliance() { one } else { other };
    let with = if one.is_appliance() { other } else { one };
    let finding = finding(of, plan.room, message).also(with.span, Phrase::name(with.name)).source(GUIDELINE);
    Some((pair(one.name, other.name), finding))
}

fn opening_part(mover: &Mover<'_>) -> Phrase {
    match mover.is {
        Moves::Door(_) => Phrase::name(mover.name),
        _ => phrase!("the {} of `{}`", mover.sweep.how.word(), mover.name),
    }
}

fn pair(one: &str, other: &str) -> (String, String) {
    let (one, other) = (one.to_string(), other.to_string());
    if one < other { (one, other) } else { (other, one) }
}

fn finding(mover: &Mover<'_>, room: &Room, message: Phrase) -> Remark {
    let finding = match &mover.is {
        Moves::Appliance(fitted, _) => fitted.finding(Severity::Query, mover.span, message),
        _ => Remark::query(mover.span, message).room(&room.folder).part(mover.name),
    };
    let remedy = match mover.sweep.how {
        Opens::Swings if mover.hangs_on_both() => {
            "move one of them, put a filler in the corner, or choose one whose doors reach less far"
        }
        Opens::Swings => "hang it on the other side, move one of them, or choose one whose door reaches less far",
        _ => "move one of them, put a filler in the corner, or choose one that reaches less far",
    };
    finding.remedy(remedy)
}

#[cfg(test)]
mod tests;
