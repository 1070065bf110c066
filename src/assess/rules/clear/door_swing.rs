//! Doors of the room, of a shower and of a mirror cabinet against what they meet as they open.

mod unsaid;

pub use unsaid::ask as ask_where_doors_swing;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{Doorway, Room};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::hinge_sides;
use crate::site::plan::{Hole, Plan, Sweep, Thing, What};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention, Trade};

declare! {
    /// A door meets something as it opens
    ///
    /// ## What it checks
    /// What each door that swings into the room sweeps, and what a shower's door sweeps, against the
    /// fixtures, cabinets and islands that stand there, the wall across, and the other doors' sweeps.
    /// Where a door has no place in a plan, its leaf against the `free swing` that was measured. A
    /// mirror cabinet's door against a light at its hinges, where the maker's sheet gives a clearance.
    /// (Appliances are judged by `fit/clash`.) What touches at most passes.
    ///
    /// ## Why it matters
    /// Entry door, shower door, drawers and toilet all want the one free spot of a bath. A door that
    /// stops at the toilet's rim lets nobody past.
    ///
    /// ## Remedy
    /// Hang the door on its other side, let it swing out or slide, or move what it meets.
    ///
    /// ## Example
    /// ```yaml
    /// outline: 8' x 5'
    /// doors: {bath door: {wall: D, at: 4", width: 28", hinge: right, swings: in}}
    /// fixtures: {toilet: {wall: A, centre: 18", width: 15", depth: 28"}}
    /// ```
    ///
    /// ## Source
    /// Common practice; the maker's sheet.
    "clear/door-swing", Query,
    due: RoughInClosed, tells: [Installer],
    judges: [MirrorCabinet, Door, ShowerGlass],
    sources: ["common practice", "the maker's sheet"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        if let Some(plan) = context.site.plan(room) {
            in_plan(context, plan, findings);
            findings.extend(unsaid::either_way(context, plan));
        }
        findings.extend(room.doors.iter().filter_map(|door| as_measured(context, room, door)));
    }
    findings.extend(context.site.fitted().filter_map(|fitted| mirror(context, &fitted)));
}

/// A door in its place.
struct Opening<'a> {
    name: &'a str,
    sweep: Sweep,
    span: Span,
    hole: Option<&'a Hole<'a>>,
}

fn in_plan(context: &Context<'_>, plan: &Plan<'_>, findings: &mut Findings<'_>) {
    let doors = plan.holes.iter().flat_map(|hole| {
        let opening = move |sweep| Opening { name: hole.name(), sweep, span: hole.span(), hole: Some(hole) };
        plan.door_sweeps(hole).into_iter().map(opening)
    });
    let showers = plan.things.iter().filter(|thing| matches!(thing.what, What::Fixture(_))).flat_map(|thing| {
        let opening = move |sweep| Opening { name: thing.name, sweep, span: thing.span, hole: None };
        plan.sweeps(thing, None).into_iter().map(opening)
    });
    let all: Vec<Opening<'_>> = doors.chain(showers).collect();
    let mut told: Vec<(&str, Option<&str>)> = Vec::new();
    for (number, door) in all.iter().enumerate() {
        let struck = met_first(plan, door).into_iter();
        let struck = struck.map(|(body, free)| (Some(body.name), Some(free), Some(body.span)));
        let others = all.iter().take(number).filter(|other| other.name != door.name);
        let others = others.filter(|other| other.sweep.shape.overlaps(&door.sweep.shape));
        let wall = door.hole.and_then(|hole| across(plan, hole, door.sweep.reach));
        let all_met = struck.chain(others.map(|other| (Some(other.name), None, Some(other.span))));
        for (met, free, at) in all_met.chain(wall.map(|free| (None, Some(free), None))) {
            if !told.contains(&(door.name, met)) {
                told.push((door.name, met));
                findings.push(finding(context, plan.room, door, met, (free, at)));
            }
        }
    }
}

/// What a door meets: of a row what it meets first, which ends its way; nothing that stands before the doorway
/// itself, which is told already.
fn met_first<'p, 'a>(plan: &'p Plan<'a>, door: &Opening<'_>) -> Vec<(&'p Thing<'a>, Length)> {
    let mut met: Vec<(&Thing<'a>, Length)> = Vec::new();
    for body in plan.things.iter().filter(|body| is_judged(door, body)) {
        let is_told = plan.faults.iter().any(|fault| fault.is_of(body.span, door.span));
        let Some(free) = door.sweep.meets(&body.covers(plan.front(body))).filter(|_| !is_told) else { continue };
        match met.iter_mut().find(|(known, _)| known.row.is_some() && known.row == body.row) {
            Some(known) if known.1 > free => *known = (body, free),
            Some(_) => {}
            None => met.push((body, free)),
        }
    }
    // Where one part of a row stands before the doorway, so does the row.
    let closes = |row: Option<usize>| {
        let parts = plan.things.iter().filter(move |part| part.row == row && row.is_some());
        parts.into_iter().any(|part| plan.faults.iter().any(|fault| fault.is_of(part.span, door.span)))
    };
    met.retain(|(body, _)| !closes(body.row));
    met
}

/// Whether a thing is judged here: an appliance is not, and nothing that hangs above the door.
fn is_judged(door: &Opening<'_>, body: &Thing<'_>) -> bool {
    let appliance = body.kind.is_some_and(|kind| kind.trade() == Trade::Appliance);
    let own = body.name == door.name && body.span == door.span;
    !appliance && !own && body.within.is_none() && door.sweep.is_level_with(body)
}

/// How far a door of the room turns before it meets the wall across.
fn across(plan: &Plan<'_>, hole: &Hole<'_>, leaf: Length) -> Option<Length> {
    let free = plan.clear_to_a_wall(&hole.frame, hole.along)?;
    (free < leaf).then_some(free)
}

/// A door and what it meets; the wall across where that has no name.
fn finding(
    context: &Context<'_>,
    room: &Room,
    door: &Opening<'_>,
    met: Option<&str>,
    (free, at): (Option<Length>, Option<Span>),
) -> Remark {
    let say = |length| say(length, context.book.project.units);
    let quoted = met.map_or_else(|| Phrase::from("the wall across"), Phrase::name);
    let leaf = say(door.sweep.reach);
    let sweeps = if door.hole.is_some() { Phrase::name(door.name) } else { phrase!("the door of `{}`", door.name) };
    let message = match free {
        Some(free) => phrase!(
            "{sweeps} sweeps {leaf} from its hinge and meets {quoted} at {}, {} too soon",
            sweeps,
            leaf,
            quoted,
            say(free),
            say(door.sweep.reach - free)
        ),
        None => phrase!("the doors of `{}` and {quoted} sweep the same floor", door.name, quoted),
    };
    let finding = Remark::query(door.span, message).room(&room.folder).part(door.name);
    let finding = match at {
        Some(at) => finding.also(at, quoted),
        None => finding,
    };
    finding.remedy("hang it on its other side, let it swing out or slide, or move what it meets")
}

/// A door of which only the leaf and the free floor are known.
fn as_measured(context: &Context<'_>, room: &Room, door: &Doorway) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let free = door.free_swing.spanned()?;
    let leaf = *door.leaf.get().or_else(|| door.width.get())?;
    let by = Some(leaf - free.value).filter(|by| *by > Length::ZERO)?;
    let message = phrase!(
        "the leaf of `{}` is {} wide, {} more than the {} of free floor where it swings",
        door.name.value,
        say(leaf),
        say(by),
        say(free.value)
    );
    let finding = Remark::query(free.span, message).room(&room.folder).thing(&door.name);
    Some(finding.remedy("hang it on its other side, let it swing out or slide, or move what it meets"))
}

/// A mirror cabinet's door beside a light at its hinges.
fn mirror(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    fitted.selection.kind.get().filter(|kind| **kind == Kind::MirrorCabinet)?;
    let needed = *fitted.option.fit.get()?.door.get()?.wall_clearance.get()?;
    let (sides, _) = hinge_sides(fitted.option);
    let near = sides.iter().filter_map(|side| {
        let neighbour = side.of(fitted.opening).spanned()?;
        let is_light = Mention::Light.is_in(&neighbour.what);
        let gap = neighbour.gap.get().copied().unwrap_or_default();
        (is_light && gap < needed).then_some((*side, neighbour, gap))
    });
    let (side, neighbour, gap) = near.min_by_key(|(_, _, gap)| *gap)?;
    let message = phrase!(
        "`{}` is {} from the hinges at the {} of the mirror cabinet, {} less than the {} that the maker's sheet asks for",
        neighbour.what,
        say(gap),
        side.word(),
        say(needed - gap),
        say(needed)
    );
    let finding = fitted.finding(Severity::Query, neighbour.span, message);
    Some(finding.source("the maker's sheet").remedy("move the light, or hang the door on its other side"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn bath(door: &str, fixtures: &str) -> Trial {
        Trial::of("clear/door-swing")
            .room(&format!("outline: 8' x 5'\ndoors: {{bath door: {{wall: D, {door}}}}}\nfixtures:\n{fixtures}"))
    }

    const TOILET: &str = "  toilet: {wall: A, centre: 18\", width: 15\", depth: 28\", takes: toilet}";

    /// Source: trade reports F-125 (everything that opens in one spot).
    #[test]
    fn a_door_that_stops_at_the_toilet_is_told() {
        bath("at: 4\", width: 28\", hinge: left, swings: in", TOILET).stays_silent();
        bath("at: 26\", width: 30\", hinge: right, swings: in", TOILET)
            .finds("`bath door` sweeps 30\" (762 mm) from its hinge and meets `toilet` at 10 1/2\" (267 mm), 19 1/2\" (495 mm) too soon");
        bath("at: 26\", width: 30\", hinge: right, swings: out", TOILET).stays_silent();
        bath("at: 26\", width: 30\", hinge: right, swings: in, slides: true", TOILET).stays_silent();
    }

    /// Source: trade reports F-125.
    #[test]
    fn a_shower_s_door_and_the_room_s_door_keep_apart() {
        let shower = |leaf: &str| {
            format!(
                "  shower: {{wall: B, centre: 30\", width: 60\", depth: 36\", height: 80\", door: {leaf}, hinge: left}}"
            )
        };
        bath("at: 15\", width: 30\", hinge: right, swings: in", &shower("32\"")).finds_one();
        bath("at: 15\", width: 30\", hinge: right, swings: in", &shower("22\"")).stays_silent();
    }

    /// Source: arithmetic: the toilet stands 27" out and 36" from the shower's glass; a leaf of 30" hung on the side of the
    /// toilet's wall meets it, wherever leaf and hinge are written.
    #[test]
    fn the_glass_that_is_chosen_swings_as_what_is_set_out_does() {
        let shower = |place: &str, glass: &str| {
            Trial::of("clear/door-swing")
                .room(&format!(
                    "outline: 8' x 5'\nfixtures:\n  shower: {{wall: B, centre: 30\", width: 60\", depth: 36\", height: 80\"{place}}}\n  wc: {{wall: A, centre: 40\", width: 14 1/2\", depth: 27\", height: 30\", takes: toilet}}"
                ))
                .selection("selection: Screen\nkind: shower glass", glass)
        };
        let (leaf, hung) = ("size: {width: 30\", height: 76\"}", "size: {width: 30\", height: 76\"}\nhinge: left");
        let by_sheet = "size: {width: 58\", height: 76\"}\nhinge: left\nfit: {door: {swings: 30\"}}";
        for (place, glass) in [
            (", selection: Screen", hung),
            (", takes: shower set", hung),
            (", takes: shower tray, hinge: left", leaf),
            (", takes: shower set", by_sheet),
            (", door: 30\", hinge: left", ""),
        ] {
            shower(place, glass)
                .finds("the door of `shower` sweeps 30\" (762 mm) from its hinge and meets `wc` at 12 3/4\" (324 mm), 17 1/4\" (438 mm) too soon");
        }
        shower(", selection: Screen", "size: {width: 16\", height: 76\"}\nhinge: right").stays_silent();
        shower(", selection: Screen", "size: {width: 30\", height: 76\"}").stays_silent();
    }

    /// A row 24" deep along wall A, from 34" before the door: all of it is in the way, and its first part is told.
    #[test]
    fn of_a_row_a_door_meets_the_first_and_of_what_closes_its_way_in_fit_clash_tells() {
        let mudroom = |starts: &str, hinge: &str| {
            Trial::of("clear/door-swing").room(&format!(
                "outline: 12' x 8'\ndoors: {{side door: {{wall: D, at: 40\", width: 32\", hinge: {hinge}, swings: in}}}}\nruns: {{lockers: {{wall: A, starts: {starts}, parts: [{{filler: 2\"}}, {{tall: broom closet, width: 8\", height: 84\"}}, {{cabinet: bench, width: 24\"}}]}}}}"
            ))
        };
        mudroom("14\"", "right").stays_silent();
        let far = |hinge: &str| {
            Trial::of("clear/door-swing").room(&format!(
                "outline: 12' x 8'\ndoors: {{side door: {{wall: D, at: 43\", width: 32\", hinge: {hinge}, swings: in}}}}\nruns: {{lockers: {{wall: A, starts: 13\", parts: [{{filler: 2\"}}, {{tall: broom closet, width: 8\", height: 84\"}}, {{cabinet: bench, width: 24\"}}]}}}}"
            ))
        };
        far("right").finds("`side door` sweeps 32\" (813 mm) from its hinge and meets `filler` at 13\" (330 mm), 19\" (483 mm) too soon");
        let near = |at: &str| {
            Trial::of("clear/door-swing").room(&format!(
                "outline: 12' x 8'\ndoors: {{side door: {{wall: D, at: {at}, width: 32\", hinge: right, swings: in}}}}\nruns: {{lockers: {{wall: A, parts: [{{filler: 2\"}}, {{tall: broom closet, width: 24\", height: 84\"}}]}}}}"
            ))
        };
        near("43\"").stays_silent();
    }

    /// Source: trade reports F-125.
    #[test]
    fn a_leaf_wider_than_the_hall_meets_the_wall_across() {
        let hall = |wide: &str| {
            Trial::of("clear/door-swing").room(&format!(
                "outline: 12' x {wide}\ndoors: {{closet: {{wall: A, at: 40\", width: 34\", hinge: left, swings: in}}}}"
            ))
        };
        hall("33\"").finds("`closet` sweeps 34\" (864 mm) from its hinge and meets the wall across at 33\" (838 mm), 1\" (25.4 mm) too soon");
        hall("34\"").stays_silent();
    }

    /// Source: trade reports F-125.
    #[test]
    fn without_a_plan_the_measured_floor_counts() {
        let door = |free: &str| {
            Trial::of("clear/door-swing").room(&format!("doors: {{bath door: {{leaf: 28\", free swing: {free}}}}}"))
        };
        door("27\"").finds("the leaf of `bath door` is 28\" (711 mm) wide, 1\" (25.4 mm) more than the 27\" (686 mm) of free floor where it swings");
        door("28\"").stays_silent();
    }

    #[test]
    fn a_mirror_s_door_wants_what_its_sheet_asks_beside_a_light() {
        let mirror = |gap: &str, hinge: &str| {
            Trial::of("clear/door-swing")
                .opening("mirror", &format!("{{takes: mirror cabinet, left: {{what: wall light, gap: {gap}}}}}"))
                .selection(
                    "selection: Mirror\nkind: mirror cabinet\nplace: mirror",
                    &format!("hinge: {hinge}\nfit: {{door: {{wall clearance: 5\"}}}}"),
                )
        };
        mirror("4\"", "left").finds_one();
        mirror("5\"", "left").stays_silent();
        mirror("4\"", "right").stays_silent();
    }
}
