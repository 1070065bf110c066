//! Air around the chosen thing, where it holds only somewhere or is left out.

mod below;
mod vents;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{Clearance, Neighbour, Opening, Slot, Vents};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::counter_height;
use crate::site::fitting::{
    DimensionCheck, Fitting, Housing, Side, above, flank, is_under_a_counter, recess, rises_above_counter,
};
use crate::source::Spanned;
use crate::units::{Length, Wrote};
use crate::vocabulary::{Hazard, Mention};

declare! {
    /// Air that the sheet asks for is missing at a side, above or behind
    ///
    /// ## What it checks
    /// Clear space that the sheet asks for only somewhere along a side (`2" above counter`) against
    /// the gap to what stands there: above the counter, only what rises above it counts. The same
    /// above and behind. And whether a thing that breathes at its rear, top or sides, or at several of them, is
    /// closed in with nothing left there; and the free cross-sections that the sheet asks for
    /// (`air: {bottom: 200 cm2, top: 200 cm2}`) against those of the opening (`vents`); by the opening, the cabinet of a run that holds it, the counter over
    /// it, and what the plan has hang over it. What stands beside is as the opening says, else as its run and the plan have it. Air along a whole side is part of the width, height and depth, and
    /// told by those rules. Exactly as much as asked for passes.
    ///
    /// ## Why it matters
    /// A flame beside a wall chars it; a refrigerator that cannot breathe fails early and loudly.
    ///
    /// ## Remedy
    /// Move the opening, add a filler beside it, or choose a model that breathes at the front.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   range: {takes: range, right: {what: wall, gap: 1"}}
    /// ```
    /// A range whose sheet asks for {2"} above the counter stands {1"} too near to this wall.
    ///
    /// ## Source
    /// The maker's own sheet. That something closed in needs air where it breathes is common
    /// practice, and only asked about.
    "fit/air", Stop,
    due: WithThing, tells: [Installer],
    judges: placed,
    sources: ["the maker's sheet", "common practice"],
    caution: Some(Hazard::Heat),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let fitting = context.site.fitting(&fitted);
        findings.extend([Side::Left, Side::Right].into_iter().filter_map(|side| beside(context, &fitted, side)));
        findings.extend(above_and_behind(context, &fitted, &fitting));
        findings.extend(closed_in(context, &fitted, &fitting));
        findings.extend(below::judge(context, &fitted, &fitting));
        findings.extend(vents::judge(context, &fitted));
    }
}

/// Air that holds only somewhere along a side, against what stands there.
fn beside(context: &Context<'_>, fitted: &Placement<'_>, side: Side) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let air = &fitted.option.fit.get()?.air;
    let asked = partial(if side == Side::Left { &air.left } else { &air.right })?;
    // Above the counter a filler that ends a run hides nothing of what stands past it.
    let hides = |said: &&Spanned<Neighbour>| !(asked.above && Mention::Closure.is_in(&said.what));
    let (what, gap, at) = match side.of(fitted.opening).spanned().filter(hides) {
        Some(said) if said.gap.is_faulty() || (asked.above && !rises_above_counter(said)) => return None,
        Some(said) => (said.what.clone(), said.gap.get().copied().unwrap_or(Length::ZERO), said.span),
        // By its row or the plan, fillers seen through.
        None => {
            let beside = flank(fitted.room, context.site.plan(fitted.room), fitted.opening, side)?;
            if asked.above && !beside.is_tall {
                return None;
            }
            (beside.what, beside.gap, beside.span)
        }
    };
    let short = Some(asked.length - gap).filter(|short| *short > Length::ZERO)?;
    let message = phrase!(
        "`{}` to the {} of the opening `{}` is {} away, {} less than the {} {} that the maker's sheet asks for",
        what,
        side.word(),
        fitted.opening.name.value,
        say(gap),
        say(short),
        say(asked.length),
        Wrote(&asked.holds)
    );
    let finding = fitted.finding(Severity::Stop, at, message);
    Some(finding.remedy("move the opening, add a filler beside it, or choose a model that asks for less"))
}

/// Air that holds only somewhere above or behind, against what is left there.
fn above_and_behind(context: &Context<'_>, fitted: &Placement<'_>, fitting: &Fitting) -> Vec<Remark> {
    let say = |length| say(length, context.book.project.units);
    let Some(fit) = fitted.option.fit.get() else { return vec![] };
    let judge = |(place, slot, gauge): (&'static str, &Slot<Clearance>, &DimensionCheck)| {
        let asked = partial(slot)?;
        let left = gauge.play().filter(|left| *left < asked.length && gauge.too_small_by().is_none())?;
        let message = phrase!(
            "{} is left {place} it in the opening `{}`, {} less than the {} {} that the maker's sheet asks for",
            say(left),
            place,
            fitted.opening.name.value,
            say(asked.length - left),
            say(asked.length),
            Wrote(&asked.holds)
        );
        let at = gauge.there_at.unwrap_or(fitted.opening.span);
        let finding = fitted.finding(Severity::Stop, at, message);
        Some(finding.remedy("have the opening made larger there, or choose a model that asks for less"))
    };
    [("above", &fit.air.top, &fitting.height), ("behind", &fit.air.back, &fitting.depth)]
        .into_iter()
        .filter_map(judge)
        .collect()
}

/// A thing that breathes where nothing is left, and whose sheet says nothing of how much it needs: told once,
/// of every such place.
fn closed_in(context: &Context<'_>, fitted: &Placement<'_>, fitting: &Fitting) -> Option<Remark> {
    let vents = fitted.option.fit.get()?.air.vents_at.get()?;
    let shut = vents.0.iter().filter_map(|place| Some((place, left_at(context, fitted, fitting, place.value)?)));
    let at_the_front = vents.0.iter().any(|place| place.value == Vents::Front);
    let shut: Vec<_> = shut.filter(|(place, (_, left))| *left <= closes(place.value, at_the_front)).collect();
    let (first, _) = shut.first().filter(|_| is_closed_in(context, fitted))?;
    let places = Phrase::joined(shut.iter().map(|(place, _)| place.value), " and its ");
    let sides = Phrase::joined(shut.iter().map(|(_, (side, _))| *side), " or ");
    let nothing = shut.iter().all(|(_, (_, left))| *left <= Length::ZERO);
    let little = if nothing { "nothing" } else { "next to nothing" };
    let message = phrase!(
        "it breathes at its {} and is closed in by the opening `{}`, with {little} left {} it",
        places,
        fitted.opening.name.value,
        little,
        sides
    );
    let finding = fitted.finding(Severity::Query, first.span, message).source("common practice");
    Some(finding.remedy("ask the maker how much air it needs there, or choose one that breathes at the front"))
}

/// What leaves no more is closed to what breathes there: warm air that goes up, and
/// nowhere out at the front, wants more than the play of a gap.
fn closes(place: Vents, at_the_front: bool) -> Length {
    /// Common practice: 1/2 in is what is left to get a thing in.
    const GAP: Length = Length::from_sixty_fourths(32);
    if place == Vents::Top && !at_the_front { GAP } else { Length::ZERO }
}

/// What is left at a place where it breathes; none where its sheet says how much it needs, or nobody knows.
fn left_at(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    fitting: &Fitting,
    place: Vents,
) -> Option<(&'static str, Length)> {
    let air = &fitted.option.fit.get()?.air;
    let (side, left, is_said) = match place {
        Vents::Rear => {
            let depth = &fitting.depth;
            let there = depth.there.or_else(|| recess(fitted.room, fitted.opening).map(|(recess, _)| recess));
            ("behind", there.zip(depth.body).map(|(there, body)| there - body), !air.back.is_absent())
        }
        Vents::Top => {
            let under = || left_under_the_counter(context, fitted);
            // What needs nothing above it does not breathe there.
            let is_said =
                air.top.get().is_some_and(|air| air.length > Length::ZERO || air.vent.is_some()) || air.top.is_faulty();
            ("above", fitting.height.play().or_else(under), is_said)
        }
        Vents::Sides => ("beside", fitting.width.play(), !air.left.is_absent() || !air.right.is_absent()),
        Vents::Front | Vents::Bottom => return None,
    };
    left.filter(|_| !is_said).map(|left| (side, left))
}

/// Whether it is closed in, by everything that is around it: a cabinet of the opening or of the run, the
/// counter over it, what is above it by the opening or by the plan.
fn is_closed_in(context: &Context<'_>, fitted: &Placement<'_>) -> bool {
    let plan = context.site.plan(fitted.room);
    let housed = || Housing::of(fitted.room, fitted.opening, context.book.project.units).is_some();
    let height = fitted.option.size.height.get().and_then(|height| height.least.or(height.most));
    let over = || above(plan, fitted.room, fitted.opening);
    let near = || {
        over()
            .and_then(|over| Some(over.left(fitted.room, fitted.opening)? - height?))
            .is_some_and(|left| left <= CLOSED)
    };
    is_closed_above(fitted.opening) || housed() || is_under_a_counter(plan, fitted.room, fitted.opening) || near()
}

/// What hangs so near above it, or nearer, closes it in (common practice).
const CLOSED: Length = Length::from_inches(3);

/// What is left between it and the counter that goes over it, its thickness taken off where it is known.
fn left_under_the_counter(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Length> {
    let plan = context.site.plan(fitted.room);
    is_under_a_counter(plan, fitted.room, fitted.opening).then_some(())?;
    let top = counter_height(fitted.room, fitted.opening).value()?;
    let height = fitted.option.size.height.get().and_then(|height| height.least.or(height.most))?;
    Some(top - height - fitted.opening.sill.get().copied().unwrap_or_default())
}

/// Whether the opening is a box: in a cabinet, or bounded by what is above it.
fn is_closed_above(opening: &Opening) -> bool {
    let least = opening.height.get().and_then(|readings| readings.least()).map(|least| least.value);
    let sill = opening.sill.get().copied().unwrap_or_default();
    let above = opening.above.get().is_some_and(|above| {
        let edge = above.height.get().map(|edge| *edge - sill);
        !above.is_nothing() && edge.is_none_or(|edge| least.is_none_or(|least| edge <= least))
    });
    above || opening.cabinet.get().is_some()
}

fn partial(slot: &Slot<Clearance>) -> Option<&Clearance> {
    slot.get().filter(|clearance| !clearance.holds.is_empty())
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(right: &str, option: &str) -> Trial {
        Trial::of("fit/air")
            .opening("range", &format!("{{takes: range, width: 30\", right: {right}}}"))
            .selection("selection: Range\nkind: range\nplace: range", option)
    }

    /// Source: a sheet's own figure; trade reports section 6 (2" to what stands beside).
    #[test]
    fn a_wall_nearer_than_the_sheet_asks_above_the_counter_is_told_with_a_caution() {
        let sheet = "fit: {air: {left: 0\", right: 2\" above counter}}";
        range("{what: wall, gap: 1\"}", sheet)
            .finds("`wall` to the right of the opening `range` is 1\" (25.4 mm) away, 1\" (25.4 mm) less than the 2\" (51 mm) above counter that the maker's sheet asks for")
            .weighs("stop")
            .cautions();
        range("{what: wall, gap: 2\"}", sheet).stays_silent();
        range("wall cabinet", sheet).finds_one();
        range("base cabinet", sheet).stays_silent();
    }

    #[test]
    fn air_along_a_whole_side_is_left_to_the_width() {
        range("wall", "fit: {air: {right: 2\"}}").stays_silent();
    }

    #[test]
    fn while_the_client_still_chooses_missing_air_is_a_query() {
        range("wall", "options:\n  - {id: gas, fit: {air: {right: 2\" above counter}}}\n  - {id: coil}")
            .finds_one()
            .weighs("query")
            .cautions();
    }

    /// Source: trade reports section 6 (freestanding refrigerator: 1" above).
    #[test]
    fn air_above_the_hinge_is_what_is_left_there() {
        let fridge = |height: &str| {
            Trial::of("fit/air").opening("fridge", &format!("{{takes: refrigerator, height: {height}}}")).selection(
                "selection: Refrigerator\nkind: refrigerator\nplace: fridge",
                "size: {height: 69\", height to hinge: 70\"}\nfit: {air: {top: 1\" above hinge}}",
            )
        };
        fridge("70 15/16\"").finds_one().weighs("stop");
        fridge("71\"").stays_silent();
    }

    /// Source: trade reports section 6 (under-counter units breathe at the front); common practice.
    #[test]
    fn a_closed_in_unit_that_breathes_at_the_rear_with_nothing_behind_it_is_asked_about() {
        let cooler = |depth: &str, vents: &str| {
            Trial::of("fit/air")
                .opening("cooler", &format!("{{takes: refrigerator, depth: {depth}, above: counter}}"))
                .selection(
                    "selection: Cooler\nkind: refrigerator\nplace: cooler",
                    &format!("size: {{depth: 24\"}}\nfit: {{air: {{vents at: {vents}}}}}"),
                )
        };
        cooler("24\"", "rear")
            .finds("it breathes at its rear and is closed in by the opening `cooler`, with nothing left behind it")
            .weighs("query");
        cooler("25\"", "rear").stays_silent();
        cooler("24\"", "front").stays_silent();
    }

    /// Under a bridge the gap that lets a thing in lets no warm air out. Source: common practice.
    #[test]
    fn what_breathes_at_its_top_wants_more_than_a_gap() {
        let fridge = |bridge: &str, air: &str| {
            Trial::of("fit/air")
                .opening(
                    "bay",
                    &format!("{{takes: refrigerator, height: 84\", above: {{what: bridge, height: {bridge}}}}}"),
                )
                .selection(
                    "selection: It\nkind: refrigerator\nplace: bay",
                    &format!("size: {{height: 83 1/2\"}}\nfit: {{air: {{{air}}}}}"),
                )
        };
        fridge("84\"", "top: 0\", vents at: top")
            .finds("it breathes at its top and is closed in by the opening `bay`, with next to nothing left above it")
            .weighs("query");
        fridge("84\"", "vents at: [rear, top]").finds_one();
        fridge("84\"", "vents at: [front, top]").stays_silent();
        fridge("84\"", "top: 1/2\", vents at: top").stays_silent();
        fridge("84\"", "top: 0\", vents at: front").stays_silent();
    }

    #[test]
    fn what_stands_beside_is_known_by_the_run_past_its_fillers() {
        let of = |parts: &str, right: &str| {
            Trial::of("fit/air")
                .room(&format!("runs: {{range wall: {{right end: wall, parts: [{{opening: range}}, {parts}]}}}}"))
                .opening("range", &format!("{{takes: range, width: 30\", above: nothing{right}}}"))
                .selection("selection: Range\nkind: range\nplace: range", "fit: {air: {right: 2\" above counter}}")
        };
        let beside = |parts: &str| of(parts, "");
        let said = |parts: &str, right: &str| of(parts, &format!(", right: {right}"));
        beside("{filler: 1\"}").finds_one().weighs("stop");
        beside("{filler: 2\"}").stays_silent();
        said("{filler: 1\"}", "{what: filler, gap: 0\"}").finds_one().weighs("stop");
        said("{filler: 2\"}", "{what: filler, gap: 0\"}").stays_silent();
        beside("{tall: pantry, width: 24\"}").finds_one();
        beside("{cabinet: drawers, width: 24\"}").stays_silent();
    }

    #[test]
    fn a_cabinet_of_the_run_closes_it_in_as_one_of_the_opening_does() {
        let unit = |part: &str, vents: &str| {
            Trial::of("fit/air")
                .room(&format!("runs: {{tall wall: {{parts: [{part}]}}}}"))
                .opening("bay", "{takes: microwave, depth: 20\", height: 18\"}")
                .selection(
                    "selection: Microwave\nkind: microwave\nplace: bay",
                    &format!("size: {{depth: 20\", height: 18\"}}\nfit: {{air: {{vents at: {vents}}}}}"),
                )
        };
        let held = "{tall: ovens, width: 30\", holds: [bay]}";
        unit(held, "rear").finds_one().weighs("query");
        unit(held, "top").finds_one();
        unit(held, "front").stays_silent();
        unit("{opening: bay}", "rear").stays_silent();
    }
}
