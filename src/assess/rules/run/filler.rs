//! Room for drawers and doors beside a wall or in an inside corner.

use super::width;
use crate::assess::codes::metric;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, casing, say};
use crate::book::{DetailName, End, PartIs, ProductOption, Room, Run, RunEnd, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::plan::{Met, Plan, Thing, with_handles};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention, Trait};

/// Beside drawers (common practice: 3/4" of door, 1" of pull, 1 1/4" to spare).
const BESIDE_DRAWERS: Length = Length::from_inches(3);
/// Beside a door that hangs on that side (common practice).
const BESIDE_A_DOOR: Length = Length::from_sixty_fourths(96);
/// The pull that is reckoned with in that.
const USUAL_HANDLE: Length = Length::from_inches(1);
/// How thick a front is (common practice).
const FRONT: Length = Length::from_sixty_fourths(48);
/// Before the handle of an appliance around the corner (common practice: 4 1/2" to 6").
const BEFORE_A_HANDLE: Length = Length::from_sixty_fourths(288);

declare! {
    /// Drawers or doors beside a wall or in a corner have too little room to open
    ///
    /// ## What it checks
    /// Beside each cabinet, in front of its own front, the distance to a wall, to the casing of a door or window
    /// in it, or to whatever stands across the corner: {3"} beside drawers, {1 1/2"} beside a door that hangs on that side, {4 1/2"} where
    /// an appliance with a handle stands around the corner, and more beside drawers where the row around the
    /// corner has `handles` that stand out more than {1"}. In a run without a wall of the outline, the
    /// fillers and panels at an end that meets a `wall` or a `corner`. Exactly as much passes. Of a blind corner the
    /// door counts (`door width`), {1"} beside it where it hangs on its far side; and no front may lie behind what
    /// stands around the corner.
    ///
    /// ## Why it matters
    /// A drawer that strikes the handle around the corner comes out half-way for good, and a door that
    /// strikes the wall never lets its shelves out.
    ///
    /// ## Remedy
    /// Put a filler there, {3"} on both sides of an inside corner, or leave the blind corner wider.
    ///
    /// ## Example
    /// ```yaml
    /// runs:
    ///   sink wall: {left end: wall, parts: [{filler: 1"}, {cabinet: drawers, width: 24", drawers: 3}]}
    /// ```
    ///
    /// ## Source
    /// Common practice: {3/4"} of door, {1"} of pull and {1 1/4"} to spare make {3"}.
    "run/filler", Query,
    due: CabinetsOrdered, tells: [Installer],
    judges: [Cabinet],
    sources: ["common practice", "the book's own figures"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in context.book.rooms.iter().filter(|room| !room.partly_unread) {
        let plan = context.site.plan(room);
        if let Some(plan) = plan {
            findings.extend(plan.things.iter().filter_map(|thing| beside(context, plan, thing)));
        }
        for run in &room.runs {
            let placed = plan.is_some_and(|plan| plan.rows.iter().any(|row| row.of.name() == run.name.value));
            let ends = [End::Left, End::Right].into_iter().filter(|_| !placed);
            findings.extend(ends.filter_map(|end| at_the_end(context, room, run, end)));
        }
    }
}

/// A side of a cabinet, and what it needs there.
struct Wanted {
    side: End,
    needed: Length,
    what: &'static str,
}

/// How far the pulls of a room's cabinets stand out: as its row says, as their words say, else as usual.
fn pull(room: &Room, said: Option<Length>) -> Length {
    let words = |option: &ProductOption| {
        let style = option.words(DetailName::DoorStyle).map_or("", |(style, _)| style);
        let said = [style, option.finish.text(), option.name.text(), option.description.text(), option.model.text()];
        Mention::WithoutPulls.is_in_any(said)
    };
    let mut cabinets = room.selections.iter().filter(|selection| selection.is(Kind::Cabinet)).peekable();
    let none = cabinets.peek().is_some() && cabinets.flat_map(Selection::standing).all(words);
    said.unwrap_or(if none { Length::ZERO } else { USUAL_HANDLE })
}

/// What drawers or doors need at a side.
fn wanted(drawers: bool, doors: u32, hinge: Option<End>, side: End, pull: Length) -> Option<Wanted> {
    if drawers {
        let needed = BESIDE_DRAWERS - (USUAL_HANDLE - pull).max(Length::ZERO);
        return Some(Wanted { side, needed, what: "drawers" });
    }
    let hangs_there = doors > 1 || (doors == 1 && hinge == Some(side));
    hangs_there.then_some(Wanted { side, needed: BESIDE_A_DOOR, what: "a door" })
}

/// The worse side of a placed cabinet.
fn beside(context: &Context<'_>, plan: &Plan<'_>, thing: &Thing<'_>) -> Option<Remark> {
    let part = thing.part().filter(|part| matches!(part.is, PartIs::Cabinet(_) | PartIs::Tall(_)))?;
    let drawers = part.drawers.get().is_some_and(|count| *count > 0);
    let doors = part.doors.get().copied().unwrap_or(0);
    if let Some(covered) = covered(context, plan, thing, drawers || doors > 0) {
        return Some(covered);
    }
    let pull = pull(plan.room, Some(thing.handles).filter(|said| *said > Length::ZERO));
    let sides = [End::Left, End::Right].into_iter();
    let blind = thing.is_blind_at().filter(|_| doors > 0 && !drawers);
    let wanted = sides.filter_map(|side| {
        let usual = wanted(drawers, doors, part.hinge.get().copied(), side, pull);
        // A door that hangs on its far side comes past the pulls around the corner.
        let passes = Wanted { side, needed: USUAL_HANDLE, what: "the door of a blind corner" };
        usual.or_else(|| (blind == Some(side)).then_some(passes))
    });
    let front = Thing { along: thing.fronts(), ..thing.clone() };
    let short = wanted.filter_map(|wanted| {
        let before = (thing.out.1, thing.out.1 + BESIDE_DRAWERS);
        let met = plan.beside_between(&front, wanted.side, before);
        let met = met.and_then(|met| {
            let needed = needed_before(plan, thing, met.to, met.distance, wanted.needed)?;
            Some((met.distance, phrase!("`{}`", met.to.name(plan)), needed))
        });
        let trim = plan.casing_beside(&front, wanted.side, before);
        let trim = trim.map(|trim| (trim.gap, casing(trim.of), wanted.needed));
        let (gap, what, needed) = met.into_iter().chain(trim).max_by_key(|(gap, _, needed)| *needed - *gap)?;
        let needed = metric::advised(needed, gap, context.book.project.units);
        (gap < needed).then_some((Wanted { needed, ..wanted }, gap, what))
    });
    let (wanted, gap, met) = short.max_by_key(|(wanted, gap, _)| wanted.needed - *gap)?;
    let filler = filler_beside(plan, thing, wanted.side);
    let there = Beside { cabinet: thing.name, gap, met, at: thing.span, filler };
    Some(finding(context, plan.room, &wanted, &there))
}

/// Doors or drawers that lie behind what stands around the corner.
fn covered(context: &Context<'_>, plan: &Plan<'_>, thing: &Thing<'_>, opens: bool) -> Option<Remark> {
    let (other, covered) = plan.stands_before(thing, thing.fronts(), Length::from_inches(1)).filter(|_| opens)?;
    let message = phrase!(
        "{} of the front of `{}` lies behind `{}`, and can't be opened there",
        say(covered, context.book.project.units),
        thing.name,
        other.name
    );
    let finding = Remark::query(thing.span, message).room(&plan.room.folder).part(thing.name);
    let finding = finding.also(other.span, Phrase::name(other.name)).source("the book's own figures");
    Some(finding.remedy("move one of them; of a blind corner say how wide its door is: `door width: …`"))
}

/// How wide the filler is that stands in its row at that side of a cabinet.
fn filler_beside(plan: &Plan<'_>, thing: &Thing<'_>, side: End) -> Option<Length> {
    let touches = |other: &&Thing<'_>| match side {
        End::Left => other.along.1 == thing.along.0,
        End::Right => other.along.0 == thing.along.1,
    };
    let of_its_row = plan.things.iter().filter(|other| other.row.is_some() && other.row == thing.row);
    let is_filler = |other: &&Thing<'_>| other.part().is_some_and(|part| matches!(part.is, PartIs::Filler(_)));
    of_its_row.filter(touches).find(is_filler).map(Thing::width)
}

/// What is needed before that wall or thing; none for what stands in the same row, or what is told
/// elsewhere: a handle that the drawer strikes outright.
fn needed_before(plan: &Plan<'_>, thing: &Thing<'_>, met: Met<'_, '_>, gap: Length, usual: Length) -> Option<Length> {
    let Met::Thing(other) = met else { return Some(usual) };
    if (other.row.is_some() && other.row == thing.row) || plan.share_a_face(thing, other) {
        return None;
    }
    // With a filler on both sides of the corner, a pull has passed before the row around it begins, unless it is so long
    // that it strikes the filler's neighbour.
    let filled = |side| filler_beside(plan, thing, side).is_some_and(|wide| wide >= BESIDE_DRAWERS);
    let both = other.is_closure() && other.width() >= BESIDE_DRAWERS && (filled(End::Left) || filled(End::Right));
    if both && gap >= FRONT + other.handles {
        return Some(usual);
    }
    if other.is_closure() || !other.has(Trait::HasHandles) {
        // Where the row around the corner says how far its handles stand out, that counts, not the usual inch.
        let more = (other.handles - USUAL_HANDLE).max(Length::ZERO);
        return Some(if usual == BESIDE_A_DOOR { usual } else { usual + more });
    }
    let option = other.opening.and_then(|opening| crate::site::plan::settled(plan.room, opening));
    let handle = with_handles(other, option) - other.out.1;
    (gap >= handle).then_some(BEFORE_A_HANDLE)
}

/// The end of a run that has no place in the outline.
fn at_the_end(context: &Context<'_>, room: &Room, run: &Run, end: End) -> Option<Remark> {
    let meets = if end == End::Left { run.left_end.get() } else { run.right_end.get() };
    let meets = meets.filter(|meets| **meets != RunEnd::Open)?;
    let mut parts: Vec<_> = run.parts.iter().collect();
    if run.from != end {
        parts.reverse();
    }
    let (mut gap, mut filler) = (Length::ZERO, None);
    for part in parts {
        if let PartIs::Cabinet(_) | PartIs::Tall(_) = part.is {
            let drawers = part.drawers.get().is_some_and(|count| *count > 0);
            let doors = part.doors.get().copied().unwrap_or(0);
            let pull = pull(room, run.handles.get().copied());
            let wanted = wanted(drawers, doors, part.hinge.get().copied(), end, pull)?;
            let needed = metric::advised(wanted.needed, gap, context.book.project.units);
            let wanted = Wanted { needed, ..wanted };
            let there =
                Beside { cabinet: part.is.word(), gap, met: phrase!("`{meets}`", meets), at: part.span, filler };
            return (gap < wanted.needed).then(|| finding(context, room, &wanted, &there));
        }
        if let PartIs::Opening(_) = part.is {
            return None;
        }
        gap = gap + width(room, &part.is, None)?;
        if let PartIs::Filler(wide) = part.is {
            filler = Some(wide);
        }
    }
    None
}

/// What stands beside a cabinet.
struct Beside<'a> {
    cabinet: &'a str,
    gap: Length,
    met: Phrase,
    at: Span,
    /// The width of a filler that stands there already.
    filler: Option<Length>,
}

fn finding(context: &Context<'_>, room: &Room, wanted: &Wanted, there: &Beside<'_>) -> Remark {
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` has {} to {} at its {}, {} less than the {} usual beside {}",
        there.cabinet,
        say(there.gap),
        there.met,
        wanted.side,
        say(wanted.needed - there.gap),
        say(wanted.needed),
        wanted.what
    );
    let finding = Remark::query(there.at, message).room(&room.folder).part(there.cabinet);
    let clear = "show that fronts and handles clear as they open";
    finding.source("common practice").remedy(match there.filler {
        Some(wide) => phrase!("make the filler {} wide, or {clear}", say(wide + wanted.needed - there.gap), clear),
        None => phrase!("put a filler there, or {clear}", clear),
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn run(parts: &str) -> Trial {
        Trial::of("run/filler").room(&format!("outline: 10' x 8'\nruns: {{sink wall: {{wall: A, parts: [{parts}]}}}}"))
    }

    /// Source: check values HW-03 (3" beside drawers), HW-04 (1 1/2" beside doors alone).
    #[test]
    fn drawers_beside_a_wall_want_three_inches_and_doors_half_of_that() {
        let drawers = "{cabinet: drawers, width: 24\", drawers: 3}";
        run(&format!("{{filler: 2\"}}, {drawers}"))
            .finds("`drawers` has 2\" (51 mm) to `wall D` at its left, 1\" (25.4 mm) less than the 3\" (76 mm) usual beside drawers")
            .weighs("query");
        run(&format!("{{filler: 3\"}}, {drawers}")).stays_silent();
        let door = |hinge: &str| format!("{{filler: 1\"}}, {{cabinet: spices, width: 12\", doors: 1, hinge: {hinge}}}");
        run(&door("left")).finds_one();
        run(&door("right")).stays_silent();
        run("{filler: 1 1/2\"}, {cabinet: plates, width: 30\", doors: 2}").stays_silent();
    }

    /// Source: check values HW-03, without its inch of pull: 3/4" of door and 1 1/4" to spare.
    #[test]
    fn fronts_without_pulls_want_an_inch_less() {
        let drawers = |filler: &str, handles: &str, style: &str| {
            Trial::of("run/filler")
                .room(&format!("outline: 10' x 8'\nruns: {{sink wall: {{wall: A{handles}, parts: [{{filler: {filler}}}, {{cabinet: drawers, width: 24\", drawers: 3}}]}}}}"))
                .selection("selection: Cabinets\nkind: cabinet", &format!("door style: {style}"))
        };
        for style in
            ["flat melamine, finger pull", "handleless, gola profile", "lisas, sin tiradores", "slab, push to open"]
        {
            drawers("2\"", "", style).stays_silent();
            drawers("50 mm", "", style).stays_silent();
            drawers("1 3/4\"", "", style).finds_one().weighs("query");
        }
        drawers("2\"", "", "shaker").finds_one();
        drawers("2 1/2\"", ", handles: 1/2\"", "shaker").stays_silent();
        drawers("2 1/4\"", ", handles: 1/2\"", "shaker").finds_one();
    }

    /// Source: check values HW-03 (a corner filler with drawers).
    #[test]
    fn an_inside_corner_wants_them_on_both_sides() {
        let corner = |filler: &str| {
            Trial::of("run/filler").room(&format!(
                "outline: 10' x 8'\nruns:\n  back: {{wall: A, from: right, starts: 24\", parts: [{{filler: {filler}}}, {{cabinet: drawers, width: 24\", drawers: 3}}]}}\n  side: {{wall: B, parts: [{{cabinet: blind corner, width: 27\"}}, {{cabinet: plates, width: 30\", doors: 2}}]}}"
            ))
        };
        corner("3\"").stays_silent();
        corner("2\"").finds_one();
    }

    /// Source: check values HW-04 (near an appliance's handle 4 1/2" to 6").
    #[test]
    fn around_the_corner_from_a_range_they_want_more() {
        let corner = |filler: &str| {
            Trial::of("run/filler")
                .room(&format!(
                    "outline: 12' x 10'\nruns:\n  back: {{wall: A, from: right, starts: 25\", parts: [{{filler: {filler}}}, {{cabinet: drawers, width: 24\", drawers: 3}}]}}\n  side: {{wall: B, starts: 25\", parts: [{{opening: range}}]}}"
                ))
                .opening("range", "{takes: range, width: 30\", height: 36\", depth: 25\"}")
        };
        corner("4 1/2\"").stays_silent();
        corner("3\"").finds("`drawers` has 3\" (76 mm) to `range` at its right, 1 1/2\" (38.1 mm) less than the 4 1/2\" (114 mm) usual beside drawers");
    }

    /// Source: arithmetic: a row 24" deep leaves 12" of a corner unit of 36"; check values HW-04 beside its door.
    #[test]
    fn the_door_of_a_blind_corner_comes_past_the_row_around_it() {
        let corner = |unit: &str, row: &str| {
            Trial::of("run/filler").room(&format!(
                "outline: 12' x 10'\nruns:\n  back: {{wall: A, depth: 24\", parts: [{{cabinet: blind corner, width: 42\", {unit}}}, {{cabinet: plates, width: 30\"}}]}}\n  side: {{wall: D, from: right, starts: 24\", depth: 24\"{row}, parts: [{{cabinet: pans, width: 30\"}}]}}"
            ))
        };
        corner("doors: 1, hinge: left", "")
            .finds("24\" (610 mm) of the front of `blind corner` lies behind `pans`, and can't be opened there")
            .weighs("query");
        corner("doors: 1, hinge: left, door width: 20\"", "").finds_one();
        corner("doors: 1, hinge: left, door width: 17\"", "")
            .finds("`blind corner` has 1\" (25.4 mm) to `pans` at its left, 1/2\" (12.7 mm) less than the 1 1/2\" (38.1 mm) usual beside a door");
        corner("doors: 1, hinge: left, door width: 16 1/2\"", "").stays_silent();
        corner("doors: 1, hinge: right, door width: 17\"", "").stays_silent();
        corner("doors: 1, hinge: right, door width: 17\"", ", handles: 1 1/2\"").finds_one();
        corner("doors: 1, hinge: left, door width: 16\", blind: left", "").stays_silent();
        corner("doors: 1, hinge: left, door width: 16\", blind: right", "").finds_one();
        corner("drawers: 2, door width: 15\"", "").stays_silent();
        corner("drawers: 2", "").finds_one();
    }

    /// Source: check values HW-03.
    #[test]
    fn a_run_without_a_place_is_judged_by_what_stands_at_its_ends() {
        let run = |filler: &str| {
            Trial::of("run/filler").room(&format!(
                "runs: {{sink wall: {{left end: wall, right end: open, parts: [{{filler: {filler}}}, {{cabinet: drawers, width: 24\", drawers: 3}}]}}}}"
            ))
        };
        run("2 1/2\"").finds_one();
        run("3\"").stays_silent();
    }

    /// Source: check values HW-03: 3/4" of door, the pull, 1 1/4" to spare: a pull of 2" wants 4".
    #[test]
    fn the_handles_around_the_corner_are_reckoned_with_as_they_are() {
        let corner = |filler: &str, handles: &str| {
            Trial::of("run/filler").room(&format!(
                "outline: 10' x 8'\nruns:\n  back: {{wall: A, from: right, starts: 24\", parts: [{{filler: {filler}}}, {{cabinet: drawers, width: 24\", drawers: 3}}]}}\n  side: {{wall: B, handles: {handles}, parts: [{{cabinet: blind corner, width: 27\"}}, {{cabinet: plates, width: 30\", doors: 2}}]}}"
            ))
        };
        corner("3\"", "1\"").stays_silent();
        corner("3\"", "2\"").finds_one().weighs("query");
        corner("4\"", "2\"").stays_silent();
        let filled = |handles: &str, its: &str| {
            Trial::of("run/filler").room(&format!(
                "outline: 10' x 8'\nruns:\n  back: {{wall: A, from: right, starts: 24\", parts: [{{filler: 3\"}}, {{cabinet: drawers, width: 24\", drawers: 3}}]}}\n  side: {{wall: B, starts: 24\", handles: {handles}, parts: [{{filler: {its}}}, {{cabinet: plates, width: 30\", doors: 2}}]}}"
            ))
        };
        filled("1 3/8\"", "3\"").stays_silent();
        filled("1 3/8\"", "2\"").finds_one();
        filled("2 1/2\"", "3\"").finds_one();
    }
}
