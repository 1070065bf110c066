//! Doors and drawers that open into one another, and bodies in one another's place.

mod bodies;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::Room;
use crate::finding::{Id, Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::plan::{HoleIs, Opens, Plan, Sweep, Thing, What, settled, with_handles};
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
    /// against what stands across from them or around the corner, with its handles. Two appliances'
    /// doors, or an appliance's and a door of the room, must not sweep the same floor either. What
    /// touches at most passes. Needs the room's plan: runs, islands or `wall` and `at`. And no two bodies
    /// may stand in one place, at the heights that they have: cabinets, appliances, fixtures, doorways and
    /// windows; it names the way that is shortest to part them.
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
        let Some(plan) = context.site.plan(room) else { continue };
        findings.extend(bodies::clash(context, plan));
        let movers = movers(context, plan, room);
        let mut found: Vec<Clash> = Vec::new();
        for (number, mover) in movers.iter().enumerate() {
            let bodies = plan.things.iter().filter_map(|body| strikes(context, plan, mover, body));
            let others = movers.iter().take(number).filter_map(|other| meet(context, plan, mover, other));
            for clash in bodies.chain(others) {
                let is_known =
                    |known: &Clash| known.0 == clash.0 && known.1.subject.option() == clash.1.subject.option();
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
    Door,
}

impl<'a> Mover<'a> {
    fn thing(&self) -> Option<&'a Thing<'a>> {
        match self.is {
            Moves::Appliance(_, thing) | Moves::Cabinet(thing) => Some(thing),
            Moves::Door => None,
        }
    }

    fn is_appliance(&self) -> bool {
        matches!(self.is, Moves::Appliance(..))
    }
}

fn movers<'a>(context: &Context<'a>, plan: &'a Plan<'a>, room: &Room) -> Vec<Mover<'a>> {
    let mut movers = Vec::new();
    for fitted in context.site.fitted().filter(|fitted| std::ptr::eq(fitted.room, room)) {
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
        movers.extend(sweeps.map(|sweep| Mover { name: hole.name(), is: Moves::Door, sweep, span: hole.span() }));
    }
    movers
}

/// A pair by its names, and what is to be told of it.
type Clash = ((String, String), Remark);

/// What opens against what stands there.
fn strikes(context: &Context<'_>, plan: &Plan<'_>, mover: &Mover<'_>, body: &Thing<'_>) -> Option<Clash> {
    // Between cabinets and walls there is `run/filler`; before fixtures and cabinets, `clear/door-swing`.
    if !(mover.is_appliance() || is_appliance(body)) || body.within.is_some() || body.is_closure() {
        return None;
    }
    if !mover.sweep.is_level_with(body) || mover.thing().is_some_and(|thing| stand_together(plan, thing, body)) {
        return None;
    }
    let option = body.opening.and_then(|opening| settled(plan.room, opening));
    let front = plan.front(body).max(with_handles(body, option));
    let free = mover.sweep.meets(&body.covers(front))?;
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
    Some((pair(mover.name, body.name), finding))
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
    let door = (one.is_appliance() && matches!(other.is, Moves::Door))
        || (other.is_appliance() && matches!(one.is, Moves::Door));
    if !(both || door) || one.name == other.name || !one.sweep.shape.overlaps(&other.sweep.shape) {
        return None;
    }
    // What stands one above the other opens one above the other.
    if !one.sweep.is_level_with_sweep(&other.sweep) {
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
        Moves::Door => Phrase::name(mover.name),
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
        Opens::Swings => "hang it on the other side, move one of them, or choose one whose door reaches less far",
        _ => "move one of them, put a filler in the corner, or choose one that reaches less far",
    };
    finding.remedy(remedy)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn galley(width: &str, shift: &str) -> Trial {
        Trial::of("fit/clash")
            .room(&format!(
                "outline: 12' x {width}\nruns:\n  left: {{wall: A, parts: [{{gap: 30\"}}, {{opening: range}}]}}\n  right: {{wall: C, from: right, parts: [{{gap: {shift}}}, {{opening: dishwasher}}]}}"
            ))
            .opening("range", "{takes: range, width: 30\", depth: 24\", height: 36\"}")
            .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
            .selection("selection: Range\nkind: range\nplace: range", "size: {width: 30\", depth: 24\"}\nfit: {door: {drops: 21\"}}")
            .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "size: {width: 24\", depth: 24\"}\nfit: {door: {drops: 26\"}}")
    }

    /// Source: check values KP-02 (no two appliance doors may foul each other: overlap of swept areas 0).
    #[test]
    fn two_doors_that_drop_towards_each_other_are_told() {
        galley("90\"", "33\"")
            .finds("the door of `dishwasher` and the door of `range` sweep the same floor: they reach 26\" (660 mm) and 21\" (533 mm)")
            .weighs("query");
        galley("95\"", "33\"").stays_silent();
        galley("90\"", "60\"").stays_silent();
    }

    /// Source: check values KP-02 (a dishwasher's door, 24" open, across the arc of an entry door).
    #[test]
    fn a_door_of_the_room_keeps_clear_of_an_appliance_s_door() {
        let room = |hinge: &str| {
            Trial::of("fit/clash")
                .room(&format!(
                    "outline: 12' x 8'\ndoors: {{yard door: {{wall: B, at: 26\", width: 32\", height: 80\", hinge: {hinge}, swings: in}}}}\nruns: {{back: {{wall: A, from: right, starts: 12\", parts: [{{opening: dishwasher}}]}}}}"
                ))
                .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
                .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "size: {width: 24\", depth: 24\"}\nfit: {door: {drops: 24\"}}")
        };
        room("left").finds_one();
        room("right").finds_one();
        let far = Trial::of("fit/clash")
            .room("outline: 12' x 8'\ndoors: {yard door: {wall: B, at: 62\", width: 32\", height: 80\", hinge: right, swings: in}}\nruns: {back: {wall: A, from: right, starts: 12\", parts: [{opening: dishwasher}]}}")
            .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
            .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "fit: {door: {drops: 24\"}}");
        far.stays_silent();
    }

    #[test]
    fn doors_one_above_the_other_pass() {
        let machine = |takes: &str, sill: &str| {
            format!("{{takes: {takes}, wall: A, at: 30\", sill: {sill}, width: 29\", height: 39\", depth: 30\"}}")
        };
        Trial::of("fit/clash")
            .room("outline: 9' x 7'")
            .opening("washer", &machine("washer", "0\""))
            .opening("dryer", &machine("dryer", "39\""))
            .selection("selection: Washer\nkind: washer\nplace: washer\nhinge: left", "fit: {door: {swings: 19\"}}")
            .selection("selection: Dryer\nkind: dryer\nplace: dryer\nhinge: left", "fit: {door: {swings: 19\"}}")
            .stays_silent();
    }

    /// Source: trade reports F-09 (two inches deeper, and the dishwasher around the corner no longer opens).
    #[test]
    fn a_deeper_refrigerator_around_the_corner_keeps_a_dishwasher_shut() {
        let corner = |depth: &str, handle: &str| {
            Trial::of("fit/clash")
                .room("outline: 12' x 10'\nruns:\n  back: {wall: A, from: right, starts: 32\", parts: [{opening: dishwasher}]}\n  side: {wall: B, starts: 30\", parts: [{opening: fridge}]}")
                .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
                .opening("fridge", "{takes: refrigerator, width: 36\", depth: 29\", height: 70\"}")
                .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "size: {width: 24\", depth: 24\"}\nfit: {door: {drops: 26\"}}")
                .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", &format!("size: {{width: 35 3/4\", depth: {depth}, depth with handle: {handle}}}"))
        };
        corner("29\"", "31 1/2\"").stays_silent();
        corner("31\"", "33 1/2\"")
            .finds("the door of `dishwasher` reaches 26\" (660 mm) and strikes `fridge` after 6\" (152 mm), 20\" (508 mm) too soon");
    }

    /// Source: check values KP-02. An island 8' x 3' whose counter's edge is 44" before the wall, set out from
    /// each of the four: what opens towards it from wall A meets it all the same.
    #[test]
    fn an_island_is_met_from_whichever_wall_it_is_set_out() {
        let room = |island: &str| {
            Trial::of("fit/clash")
                .room(&format!(
                    "outline: 16' x 12'\nruns: {{back: {{wall: A, parts: [{{gap: 60\"}}, {{opening: dishwasher}}]}}}}\nislands: {{island: {{{island}, height: 36\"}}}}"
                ))
                .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
                .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "size: {width: 24\", depth: 24\"}\nfit: {door: {drops: 26\"}}")
        };
        for (near, far) in [
            ("wall: A, at: 48\", away: 44\", size: 96\" x 36\"", "wall: A, at: 48\", away: 50\", size: 96\" x 36\""),
            ("wall: C, at: 48\", away: 64\", size: 96\" x 36\"", "wall: C, at: 48\", away: 58\", size: 96\" x 36\""),
            ("wall: D, at: 64\", away: 48\", size: 36\" x 96\"", "wall: D, at: 58\", away: 48\", size: 36\" x 96\""),
            (
                "wall: B, at: 44\", away: 48\", size: 96\" x 36\", turned: true",
                "wall: B, at: 50\", away: 48\", size: 96\" x 36\", turned: true",
            ),
        ] {
            room(near).finds("the door of `dishwasher` reaches 26\" (660 mm) and strikes `island` after 20\" (508 mm), 6\" (152 mm) too soon");
            room(far).stays_silent();
        }
    }

    /// Source: check values HW-06 (a drawer beside a refrigerator's handle around the corner).
    #[test]
    fn a_drawer_strikes_the_handle_around_the_corner() {
        let corner = |filler: &str| {
            Trial::of("fit/clash")
                .room(&format!("outline: 12' x 10'\nruns:\n  back: {{wall: A, from: right, starts: 27\", parts: [{{filler: {filler}}}, {{cabinet: drawers, width: 24\", drawers: 3}}]}}\n  side: {{wall: B, starts: 30\", parts: [{{opening: fridge}}]}}"))
                .opening("fridge", "{takes: refrigerator, width: 36\", depth: 27\", height: 70\"}")
                .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", "size: {width: 35 3/4\", depth: 27\", depth with handle: 30 1/4\"}")
        };
        corner("3\"").finds_one();
        corner("3 3/8\"").stays_silent();
    }
}
