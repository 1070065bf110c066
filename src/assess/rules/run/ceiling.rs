//! Tall units and wall cabinets under the ceiling.

mod openings;
mod windows;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::book::{Ceiling, Fixture, Opening, PartIs, Room, Run, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::plan::{Plan, Thing, What, chosen_for};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Trade};

declare! {
    /// What stands or hangs in the room is higher than the ceiling
    ///
    /// ## What it checks
    /// The top of each tall unit and wall cabinet of a run, with the run's `crown`, and of its panels and
    /// fillers, against the least ceiling above it: under a slope, over its own footprint. Both are taken from the finished floor;
    /// a ceiling that was measured from the present floor has the `floor build-up` taken off. For what
    /// is chosen as a cabinet without a run, for appliances, mirrors, shower glass, furniture that holds things, and whatever stands at a fixture of
    /// the plan, height and `sill` against the ceiling over its opening or fixture; where that slopes and nobody says where the cabinet stands, it asks. Exactly as high passes. An opening whose own sill and height reach more than
    /// {1"} past the ceiling is asked about, and so is a window in a wall whose head is.
    ///
    /// ## Why it matters
    /// A floor of {3/4"} turns a stock pantry into a special one, at half as much
    /// again and weeks later.
    ///
    /// ## Remedy
    /// Order the unit lower, leave the moulding off or take a lower one, or move it from under the slope.
    ///
    /// ## Example
    /// ```yaml
    /// ceiling: {height: 96", measured from: present floor}
    /// floor build-up: 3/4"
    /// runs: {pantries: {wall: A, parts: [{tall: pantry, width: 24", height: 96"}]}}
    /// ```
    /// From the finished floor {95 1/4"} is left, and the pantry is {96"} high.
    ///
    /// ## Source
    /// The book's own figures and the field measurement.
    "run/ceiling", Stop,
    due: CabinetsOrdered, tells: [Installer],
    judges: stands,
    sources: ["the field measurement", "the book's own figures"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        for run in &room.runs {
            findings.extend(worst(context, room, run));
        }
        findings.extend(without_a_run(context, room));
        findings.extend(room.openings.iter().filter_map(|opening| openings::judge(context, room, opening)));
        findings.extend(windows::judge(context, room));
    }
}

/// A top against the ceiling above it.
struct Top<'a> {
    name: &'a str,
    high: Length,
    ceiling: Length,
    at: Span,
}

/// One finding a run: the parts that are most too high, and as high.
fn worst(context: &Context<'_>, room: &Room, run: &Run) -> Option<Remark> {
    let crown = run.crown.get().copied().unwrap_or_default();
    let bottom = run.above_floor.get().copied();
    let tops = run.parts.iter().filter_map(|part| {
        let reaches_up = bottom.is_some() || matches!(part.is, PartIs::Tall(_));
        let beside = matches!(part.is, PartIs::Panel(_) | PartIs::Filler(_)) && bottom.is_none();
        let own = (matches!(part.is, PartIs::Cabinet(_) | PartIs::Tall(_)) && reaches_up) || beside;
        let of_run = run.height.get().filter(|_| reaches_up);
        let height = part.height.get().or(of_run).filter(|_| own)?;
        let high = bottom.unwrap_or_default() + *height + if beside { Length::ZERO } else { crown };
        Some(Top { name: part.is.word(), high, ceiling: ceiling_over(context, room, part.span)?, at: part.span })
    });
    let too_high: Vec<Top<'_>> = tops.filter(|top| top.high > top.ceiling).collect();
    let most = too_high.iter().map(|top| top.high - top.ceiling).max()?;
    let top = too_high.iter().find(|top| top.high - top.ceiling == most)?;
    let same = too_high.iter().filter(|other| (other.high, other.ceiling) == (top.high, top.ceiling));
    let names: Vec<Phrase> = same.map(|other| Phrase::name(other.name)).collect();
    let each = if names.len() > 1 { "each of " } else { "" };
    let what = if crown > Length::ZERO { " with its moulding" } else { "" };
    let names = Phrase::series(names);
    Some(finding(context, room, top, phrase!("{each}{names}{what}", each, names, what)).thing(&run.name))
}

/// The least ceiling over what is written there, or the level one.
fn ceiling_over(context: &Context<'_>, room: &Room, written: Span) -> Option<Length> {
    let placed = context.site.plan(room).and_then(|plan| {
        let thing = plan.things.iter().find(|thing| thing.span == written)?;
        plan.ceiling_over(thing, thing.out)
    });
    placed.or_else(|| level(room))
}

fn level(room: &Room) -> Option<Length> {
    match room.ceiling.get()? {
        Ceiling::Level(height) => Some(*height),
        Ceiling::Sloped { .. } => None,
    }
}

/// Cabinets that are chosen for an opening of their own, or for no opening at all: against the ceiling over
/// their place; where that is not known under a slope, against its sides.
fn without_a_run(context: &Context<'_>, room: &Room) -> Vec<Remark> {
    let things = room.selections.iter().filter(|selection| is_held_against_it(room, selection));
    let mut found: Vec<Remark> = things.filter_map(|selection| of_its_own(context, room, selection)).collect();
    if let Some(plan) = context.site.plan(room) {
        found.extend(plan.things.iter().filter_map(|thing| of_a_fixture(context, room, plan, thing)));
    }
    found
}

/// Whether a selection is held against the ceiling here: what stands upright, and what stands at a fixture of which
/// the plan itself does not say how high it is.
fn is_held_against_it(room: &Room, selection: &Selection) -> bool {
    if let Some(fixture) = fixture_of(room, selection) {
        return fixture.height.is_absent();
    }
    let appliance = selection.kind.get().is_some_and(|kind| kind.trade() == Trade::Appliance);
    appliance
        || selection.is_any(&[
            Kind::Cabinet,
            Kind::MirrorCabinet,
            Kind::Mirror,
            Kind::ShowerGlass,
            Kind::StorageFurniture,
        ])
}

/// Whether it is told here that what is chosen reaches past the ceiling.
pub(in crate::assess::rules) fn stops(context: &Context<'_>, room: &Room, selection: &Selection) -> bool {
    let told = || of_its_own(context, room, selection).is_some_and(|told| told.severity == Severity::Stop);
    is_held_against_it(room, selection) && told()
}

/// The fixture of the plan that a selection stands at: by its own name there, or by the opening of both.
fn fixture_of<'a>(room: &'a Room, selection: &Selection) -> Option<&'a Fixture> {
    room.fixtures.iter().find(|fixture| {
        let by_opening = || fixture.opening.get().filter(|name| selection.place.get() == Some(*name)).is_some();
        by_opening() || chosen_for(room, fixture).is_some_and(|chosen| std::ptr::eq(chosen, selection))
    })
}

/// A fixture of which the plan itself says how high it is.
fn of_a_fixture(context: &Context<'_>, room: &Room, plan: &Plan<'_>, thing: &Thing<'_>) -> Option<Remark> {
    let What::Fixture(fixture) = thing.what else { return None };
    let at = fixture.height.span()?;
    let (high, ceiling) = (thing.high?, plan.ceiling_over(thing, thing.out).or_else(|| level(room))?);
    let top = Top { name: thing.name, high, ceiling, at };
    (high > ceiling).then(|| finding(context, room, &top, Phrase::name(thing.name)).part(thing.name))
}

/// A thing that is chosen, against the ceiling over its place.
fn of_its_own(context: &Context<'_>, room: &Room, selection: &Selection) -> Option<Remark> {
    // A cabinet that an oven is built into does not stand on the oven's sill.
    let stands_there = |opening: &&Opening| {
        !selection.is(Kind::Cabinet) || room.goes_into(&opening.name).any(|other| std::ptr::eq(other, selection))
    };
    let opening = selection.place.get().and_then(|place| room.opening(place)).filter(stands_there);
    let fixture = fixture_of(room, selection);
    let sill = opening.and_then(|opening| opening.sill.get()).or_else(|| fixture?.sill.get());
    let bottom = sill.copied().unwrap_or_default();
    let height = selection.settled()?.size.height.spanned()?;
    let high = bottom + height.value.least.or(height.value.most)?;
    let name = &selection.name.value;
    let top = |ceiling| Top { name, high, ceiling, at: height.span };
    let placed = context.site.plan(room).and_then(|plan| {
        let at_the_fixture = || {
            let fixture = fixture?;
            plan.things.iter().find(|thing| matches!(thing.what, What::Fixture(own) if std::ptr::eq(own, fixture)))
        };
        let thing = opening.and_then(|opening| plan.opening(opening)).or_else(at_the_fixture)?;
        plan.ceiling_over(thing, thing.out)
    });
    let (low, most) = match (placed, room.ceiling.get()?) {
        (Some(there), _) => (there, there),
        (None, Ceiling::Level(there)) => (*there, *there),
        (None, Ceiling::Sloped { low, high, .. }) => (*low, *high),
    };
    if high > most {
        return Some(finding(context, room, &top(most), Phrase::name(name)).selection(&selection.name));
    }
    (high > low && selection.is(Kind::Cabinet)).then(|| {
        let of_room = |length| say_room(length, context.book.project.units);
        let message = phrase!("`{name}` reaches {} above the finished floor, and the ceiling, from {} to {}, is not known where it stands", name, of_room(high), of_room(low), of_room(most));
        let finding = Remark::query(height.span, message).room(&room.folder).selection(&selection.name);
        finding.remedy("say where it stands: `wall` and `at` of its opening, and `low at` of the ceiling")
    })
}

fn finding(context: &Context<'_>, room: &Room, top: &Top<'_>, what: Phrase) -> Remark {
    let say = |length| say(length, context.book.project.units);
    let of_room = |length| say_room(length, context.book.project.units);
    let message = phrase!(
        "{what} reaches {} above the finished floor, {} more than the {} of the ceiling over it",
        what,
        of_room(top.high),
        say(top.high - top.ceiling),
        of_room(top.ceiling)
    );
    let finding = Remark::stop(top.at, message).room(&room.folder);
    let finding = match room.ceiling.span() {
        Some(span) => finding.also(span, "the ceiling"),
        None => finding,
    };
    finding
        .remedy("order it lower, take a lower moulding or none, or move it; have the ceiling measured where it stands")
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn whatever_stands_or_hangs_goes_under_the_ceiling() {
        let thing = |kind: &str, opening: &str, height: &str| {
            Trial::of("run/ceiling")
                .room("ceiling: 96\"")
                .opening("place", &format!("{{takes: {kind}, width: 36\"{opening}}}"))
                .selection(
                    &format!("selection: It\nkind: {kind}\nplace: place"),
                    &format!("size: {{height: {height}}}"),
                )
        };
        thing("hood", ", sill: 66\"", "36\"")
            .finds("`It` reaches 8'-6\" (2591 mm) above the finished floor, 6\" (152 mm) more than the 8'-0\" (2438 mm) of the ceiling over it")
            .weighs("stop");
        thing("hood", ", sill: 66\"", "24\" to 42\"").stays_silent();
        thing("mirror cabinet", ", sill: 60\"", "40\"").finds_one();
        thing("mirror cabinet", ", sill: 40\"", "40\"").stays_silent();
        thing("refrigerator", "", "97\"").finds_one();
        Trial::of("run/ceiling")
            .room("ceiling: 78\"")
            .selection("selection: Glass\nkind: shower glass", "size: {height: 80\"}")
            .finds_one();
        let run = |height: &str| {
            Trial::of("run/ceiling").room(&format!(
                "ceiling: 90\"\nruns: {{pantries: {{height: {height}, parts: [{{tall: pantry, width: 24\"}}]}}}}"
            ))
        };
        run("91\"").finds_one();
        run("90\"").stays_silent();
    }

    fn pantry(room: &str, height: &str) -> Trial {
        Trial::of("run/ceiling").room(&format!(
            "{room}\nruns: {{pantries: {{wall: A, parts: [{{tall: pantry, width: 24\", height: {height}}}]}}}}"
        ))
    }

    /// Source: trade reports F-71 (96" stock in 96" of ceiling with new tile wants 94").
    #[test]
    fn a_new_floor_takes_its_thickness_from_a_pantry() {
        let room = "outline: 10' x 8'\nfloor build-up: 3/4\"\nceiling: {height: [96\", 96 1/8\"], measured from: present floor}";
        pantry(room, "96\"")
            .finds("`pantry` reaches 8'-0\" (2438 mm) above the finished floor, 3/4\" (19 mm) more than the 7'-11 1/4\" (2419 mm) of the ceiling over it")
            .weighs("stop");
        pantry(room, "94\"").stays_silent();
        pantry("outline: 10' x 8'\nfloor build-up: 3/4\"\nceiling: 96\"", "96\"").stays_silent();
    }

    /// Source: trade reports F-71 (crown and all against the least ceiling).
    #[test]
    fn moulding_counts_and_so_does_the_lower_edge_of_wall_cabinets() {
        let run = |crown: &str| {
            Trial::of("run/ceiling").room(&format!(
                "ceiling: 96\"\nruns: {{uppers: {{above floor: 54\", height: 39\", crown: {crown}, parts: [{{cabinet: glass doors, width: 30\"}}]}}}}"
            ))
        };
        run("3 1/4\"").finds("`glass doors` with its moulding reaches 8'-0 1/4\" (2445 mm) above the finished floor, 1/4\" (6.4 mm) more than the 8'-0\" (2438 mm) of the ceiling over it");
        run("3\"").stays_silent();
    }

    #[test]
    fn a_panel_or_a_filler_stands_under_the_same_ceiling() {
        let run = |part: &str| {
            Trial::of("run/ceiling").room(&format!(
                "outline: 10' x 8'\nceiling: 84\"\nruns: {{side: {{wall: A, crown: 3\", parts: [{{{part}}}]}}}}"
            ))
        };
        run("panel: 3/4\", height: 84 1/2\"").finds_one().weighs("stop");
        run("filler: 3\", height: 84 1/2\"").finds_one();
        run("panel: 3/4\", height: 84\"").stays_silent();
        run("filler: 3\"").stays_silent();
    }

    /// A ceiling from 84" at wall A to 108" over 96": 90" above the front of a pantry 24" deep.
    #[test]
    fn under_a_slope_the_lowest_point_over_it_governs() {
        let slope = |low: &str| format!("outline: 10' x 8'\nceiling: {{low: 84\", high: 108\", low at: {low}}}");
        pantry(&slope("A"), "84 1/8\"").finds_one();
        pantry(&slope("A"), "84\"").stays_silent();
        pantry(&slope("C"), "102\"").stays_silent();
        pantry(&slope("C"), "102 1/8\"").finds_one();
    }

    /// A ceiling from 50" at wall C to 108" over 96": 66" at the back of a shower 36" deep at wall A less 0.
    #[test]
    fn a_fixture_and_what_stands_at_it_go_under_the_slope() {
        let bath = |wall: &str, fixture: &str, selection: &str, option: &str| {
            Trial::of("run/ceiling")
                .room(&format!("outline: 12' x 8'\nceiling: {{low: 50\", high: 108\", low at: C}}\nfixtures: {{dusj: {{wall: {wall}, centre: 30\", width: 36\", depth: 36\", {fixture}}}}}"))
                .selection(selection, option)
        };
        let glass = "selection: Glass\nkind: shower glass";
        bath("C", "takes: shower, selection: Glass", glass, "size: {height: 79\"}")
            .finds("`Glass` reaches 6'-7\" (2007 mm) above the finished floor, 29\" (737 mm) more than the 4'-2\" (1270 mm) of the ceiling over it")
            .weighs("stop");
        bath("A", "takes: shower, selection: Glass", glass, "size: {height: 79\"}").stays_silent();
        // As the plan says, told once; and of any kind.
        bath("C", "takes: shower, height: 79\", selection: Glass", glass, "size: {height: 79\"}").finds_one();
        bath("C", "takes: shower, height: 79\"", glass, "model: G 1").finds_one();
        bath("A", "takes: shower, height: 79\"", glass, "model: G 1").stays_silent();
        bath("C", "takes: bathtub, selection: Tub", "selection: Tub\nkind: bathtub", "size: {height: 58\"}")
            .finds_one();
        bath("C", "takes: bathtub, selection: Tub", "selection: Tub\nkind: bathtub", "size: {height: 22\"}")
            .stays_silent();
        bath("C", "takes: toilet, selection: Toilet", "selection: Toilet\nkind: toilet", "size: {height: 52\"}")
            .finds_one();
    }

    #[test]
    fn a_cabinet_without_a_run_stands_under_the_same_ceiling() {
        let cabinet = |height: &str| {
            Trial::of("run/ceiling")
                .room("ceiling: 90\"")
                .selection("selection: Linen press\nkind: cabinet", &format!("size: {{height: {height}}}"))
        };
        cabinet("90 1/2\"").finds_one();
        cabinet("90\"").stays_silent();
    }

    /// A ceiling from 60" at wall C to 108" at wall A over 96": 96" above the front of a press 24" deep at wall A.
    #[test]
    fn under_a_slope_a_cabinet_without_a_run_is_held_against_the_ceiling_over_its_place() {
        let press = |place: &str, height: &str| {
            Trial::of("run/ceiling")
                .room("outline: 10' x 8'\nceiling: {low: 60\", high: 108\", low at: C}")
                .opening("press", &format!("{{takes: cabinet, width: 36\", depth: 24\"{place}}}"))
                .selection("selection: Press\nkind: cabinet\nplace: press", &format!("size: {{height: {height}}}"))
        };
        press(", wall: A, at: 12\"", "96\"").stays_silent();
        press(", wall: A, at: 12\"", "96 1/8\"").finds_one().weighs("stop");
        press(", wall: C, at: 12\"", "60\"").stays_silent();
        press(", wall: C, at: 12\"", "84\"").finds_one().weighs("stop");
        press("", "84\"").finds_one().weighs("query");
        press("", "60\"").stays_silent();
        press("", "109\"").finds_one().weighs("stop");
    }
}
