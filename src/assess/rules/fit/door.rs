//! Doors and drawers: floor in front, and room to swing beside a wall.

mod unsaid;

use crate::assess::codes::metric;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, casing, say};
use crate::book::Hinge;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::{
    NeededBefore, Side, casing_beside, flank, floor_before, hinge_sides, may_stand_in_the_door_s_way,
    stands_in_the_door_s_way,
};
use crate::source::Span;
use crate::units::{Length, Wrote};
use crate::vocabulary::{Mention, Trait, words_of};

/// What a refrigerator usually needs to a wall at its hinges (trade reports F-11: 2" to 2 1/2").
const USUAL_AT_THE_WALL: Length = Length::from_sixty_fourths(160);

declare! {
    /// A door does not open: too little floor in front, or a wall at its hinges
    ///
    /// ## What it checks
    /// The clear floor in front of the opening against what the sheet asks for, and against the
    /// reach of door or drawer with what of the case stands out. Where the opening does not say what is `in front`,
    /// the plan does: what stands across, and the wall there, unless a door is in it. Where a sheet does not say how far
    /// the door of an oven, a dishwasher, a refrigerator or a washer opens, and such doors may need more floor than there is
    /// ({24"}, {28"}, the width of the thing), it asks. On the side of the hinges, the gap
    /// to a wall, or to anything that stands out past the opening's front, against the sheet's wall
    /// clearance: trim and baseboard are part of the wall, and so is the casing of a door or window in it. What
    /// stands there is as the opening says, else as its run and the plan have it, past fillers and panels, and as
    /// far out as the door of what is chosen there. Where a refrigerator's sheet gives none,
    /// less than {2 1/2"} is asked about. A door that can be hung either way needs one free side.
    /// Exactly as much as asked for passes.
    ///
    /// ## Why it matters
    /// A door that stops at ninety degrees traps the drawers inside for as long as the thing lasts.
    ///
    /// ## Remedy
    /// Add a filler on the hinge side, have the door hung on the other side, or move the opening.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   fridge: {takes: refrigerator, left: {what: wall, gap: 1"}}
    /// ```
    /// A refrigerator hinged at the left that needs {2 1/2"} to a wall cannot open its drawers here.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement; else common practice: {2 1/2"} at the wall.
    "fit/door", Stop,
    due: WithThing, tells: [Installer],
    judges: opens,
    sources: ["the maker's sheet", "the field measurement", "common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        findings.extend(in_front(context, &fitted).or_else(|| unsaid::reach(context, &fitted)));
        let (sides, one_is_enough) = hinge_sides(fitted.option);
        let struck: Vec<_> = sides.iter().filter_map(|side| at_the_hinges(context, &fitted, *side)).collect();
        if !one_is_enough {
            findings.extend(struck);
        } else if struck.len() == sides.len() {
            findings.extend(struck.into_iter().take(1));
        }
    }
}

fn in_front(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let door = fitted.option.fit.get()?.door.get()?;
    let reach = [&door.drops, &door.swings, &door.pulls].into_iter().filter_map(|reach| reach.get().copied()).max();
    let needed = NeededBefore { asked: door.in_front.get().copied(), reach };
    let plan = context.site.plan(fitted.room);
    let short = floor_before(plan, fitted.room, fitted.opening, fitted.option, needed)?;
    let message = phrase!(
        "{} of floor is clear in front of the opening `{}`, {} less than the {} needed to open it",
        say(short.there),
        fitted.opening.name.value,
        say(short.needed - short.there),
        say(short.needed)
    );
    let finding = fitted.finding(Severity::Stop, short.at, message);
    let finding = match short.met {
        Some((name, at)) => finding.also(at, Phrase::name(&name)),
        None => finding,
    };
    Some(finding.remedy("move what stands opposite, or choose a model that reaches less far"))
}

/// How far before its opening a door is looked for that nobody says the swing of (common practice).
const USUAL_SWING: Length = Length::from_inches(24);

/// From the edge of a cabinet's door to its pull (common practice: 1 1/2" to 2 1/2").
const PULL_FROM_ITS_EDGE: Length = Length::from_inches(2);

/// What stands at the hinges: its name, how far away, and where that is written.
struct Struck {
    what: Phrase,
    gap: Length,
    span: Span,
}

/// What the opening says stands there, where a door would strike it; else what its row or the plan says past fillers.
fn struck(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    side: Side,
    (needed, is_asked): (Length, bool),
) -> Option<Struck> {
    let said = side.of(fitted.opening).spanned();
    let by_words = said
        .filter(|said| !said.gap.is_faulty() && stands_in_the_door_s_way(said, fitted.room, fitted.opening))
        .map(|said| Struck {
            what: phrase!("`{}`", said.what),
            gap: said.gap.get().copied().unwrap_or(Length::ZERO),
            span: said.span,
        });
    let placed = || {
        let beside = flank(fitted.room, context.site.plan(fitted.room), fitted.opening, side)?;
        let what = beside.what;
        if beside.is_proud {
            return Some(Struck { what: phrase!("`{}`", what), gap: beside.gap, span: beside.span });
        }
        // Only where the sheet says how far its door comes round: else nobody knows whether it reaches the pull.
        let pull = is_asked && beside.pull_is_proud;
        let gap = beside.gap + PULL_FROM_ITS_EDGE;
        pull.then(|| Struck { what: phrase!("the pull of `{}`", what), gap, span: beside.span })
    };
    let at_the_wall_across = || {
        let plan = context.site.plan(fitted.room)?;
        let swings = fitted.option.fit.get().and_then(|fit| fit.door.get()?.swings.get().copied());
        let beside = casing_beside(plan, fitted.opening, side, swings.unwrap_or(USUAL_SWING))?;
        Some(Struck { what: casing(beside.of), gap: beside.gap, span: fitted.opening.span })
    };
    let near = |struck: &Struck| struck.gap < needed;
    // Where the opening itself says that it is free there, that was looked at.
    // A filler or a panel ends the run there, and not what stands past it.
    let is_said =
        said.is_some_and(|said| said.is_nothing() || !said.gap.is_absent() && !Mention::Closure.is_in(&said.what));
    let is_said = is_said && !said.is_some_and(|said| may_stand_in_the_door_s_way(said));
    let looked_up = || placed().into_iter().chain(at_the_wall_across()).min_by_key(|struck| struck.gap);
    by_words.filter(near).or_else(|| looked_up().filter(|struck| !is_said && near(struck)))
}

fn at_the_hinges(context: &Context<'_>, fitted: &Placement<'_>, side: Side) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let door = fitted.option.fit.get().and_then(|fit| fit.door.get());
    let asked = door.and_then(|door| door.wall_clearance.get().copied());
    let is_refrigerator = fitted.selection.has(Trait::Cools);
    let most = asked.or_else(|| is_refrigerator.then_some(USUAL_AT_THE_WALL))?;
    let Some(struck) = struck(context, fitted, side, (most, asked.is_some())) else {
        return unknown_beside(context, fitted, side, most);
    };
    let needed = asked.unwrap_or(metric::advised(USUAL_AT_THE_WALL, struck.gap, context.book.project.units));
    let (severity, whose) = match asked {
        Some(_) => (Severity::Stop, "that the maker's sheet asks for"),
        None => (Severity::Query, "that is usual"),
    };
    let angle = door.map_or("", |door| door.angle.text());
    let to_open = if angle.is_empty() { Phrase::default() } else { phrase!(" to open to {angle}", Wrote(angle)) };
    let message = phrase!(
        "{} is {} from the hinges at the {} of the opening `{}`, {} less than the {} {whose}{to_open}",
        struck.what,
        say(struck.gap),
        side.word(),
        fitted.opening.name.value,
        say(needed - struck.gap),
        say(needed),
        whose,
        to_open
    );
    let finding = || fitted.finding(severity, struck.span, message);
    let source = if asked.is_some() { "" } else { "common practice" };
    // With a door at each side there is no other side to hang one on.
    let remedy = match fitted.option.hinge.get() {
        Some(Hinge::Both) => "add a filler there, or choose one whose doors open in less",
        _ => "add a filler there, or have the door hung on the other side",
    };
    (struck.gap < needed).then(|| finding().source(source).remedy(remedy))
}

/// Something is told to stand nearer than the door wants, and neither a figure, nor a known word, nor the plan says
/// whether the door meets it.
fn unknown_beside(context: &Context<'_>, fitted: &Placement<'_>, side: Side, needed: Length) -> Option<Remark> {
    let said = side.of(fitted.opening).spanned().filter(|said| may_stand_in_the_door_s_way(said))?;
    let gap = said.gap.get().copied().filter(|gap| *gap < needed)?;
    // What the plan has there under the same name stands as far out as the plan says.
    let is_the_same = |planned: &str| words_of(planned).iter().any(|word| words_of(&said.what).contains(word));
    let planned = flank(fitted.room, context.site.plan(fitted.room), fitted.opening, side);
    let is_planned = planned.is_some_and(|planned| is_the_same(&planned.what));
    if is_planned || said.depth.is_faulty() {
        return None;
    }
    let message = phrase!(
        "`{}` is {} from the hinges at the {} of the opening `{}`, and nobody says how far it stands out",
        said.what,
        say(gap, context.book.project.units),
        side.word(),
        fitted.opening.name.value
    );
    let remedy = phrase!(
        "measure it from the wall behind and add it at the opening, `{side}: {{what: …, depth: …}}`; of a wall, write \
         `wall`",
        side.word()
    );
    Some(fitted.finding(Severity::Query, said.span, message).remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn fridge(opening: &str, option: &str) -> Trial {
        Trial::of("fit/door")
            .opening("fridge", &format!("{{takes: refrigerator, {opening}}}"))
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", option)
    }

    /// Source: trade reports F-11 (2" to 2 1/2" at a wall; with thick panels at least 4 1/2").
    #[test]
    fn a_wall_at_the_hinges_nearer_than_the_sheet_asks_is_told() {
        let sheet = "hinge: left\nfit: {door: {wall clearance: 4 1/2\"}}";
        fridge("left: {what: wall, gap: 2 1/2\"}", sheet)
            .finds("`wall` is 2 1/2\" (64 mm) from the hinges at the left of the opening `fridge`, 2\" (51 mm) less than the 4 1/2\" (114 mm) that the maker's sheet asks for")
            .weighs("stop");
        fridge("left: {what: wall, gap: 4 1/2\"}", sheet).stays_silent();
        fridge("right: {what: wall, gap: 1\"}", sheet).stays_silent();
        fridge("left: wall cabinet", sheet).stays_silent();
    }

    #[test]
    fn what_nobody_says_the_depth_of_is_asked_about() {
        let sheet = "hinge: left\nfit: {door: {wall clearance: 2 1/2\"}}";
        for what in
            ["gable", "radiator", "door frame", "water heater", "oven tower", "tall housing", "boiler cupboard tower"]
        {
            fridge(&format!("left: {{what: {what}, gap: 1\"}}"), sheet).finds_one().weighs("query");
        }
        fridge("left: {what: gable, gap: 1\"}", sheet)
            .finds("`gable` is 1\" (25.4 mm) from the hinges at the left of the opening `fridge`, and nobody says how far it stands out")
            .points_at(&["rooms/kitchen/room.yaml:3:39"]);
        for what in ["tabique", "pared de ladrillo", "partition", "pipe chase", "pilar", "column of the house wall"] {
            fridge(&format!("left: {{what: {what}, gap: 1\"}}"), sheet).finds_one().weighs("stop");
        }
        fridge("left: {what: gable, gap: 3\"}", sheet).stays_silent();
        fridge("counter depth: 25 1/2\", left: {what: gable, gap: 1\", depth: 24\"}", sheet).stays_silent();
        fridge("left: {what: base cabinet, gap: 1\"}", sheet).stays_silent();
    }

    /// Source: trade reports F-11: a panel is struck as a wall is, where it stands out past the door.
    #[test]
    fn a_panel_that_stands_out_past_the_door_is_not_seen_through() {
        let beside = |part: &str, place: &str| {
            fridge(
                "width: 36 1/4\", height: 72\", depth: 26\"",
                "hinge: left\nsize: {width: 35 3/4\", depth: 24\", depth with door: 27\"}\nfit: {door: {wall clearance: 2 1/2\"}}",
            )
            .room(&format!(
                "outline: 14' x 10'\nruns: {{a: {{{place}depth: 24\", parts: [{{tall: pantry, width: 24\", height: 84\"}}, {{{part}}}, {{opening: fridge}}]}}}}"
            ))
        };
        for place in ["wall: A, starts: 30\", ", ""] {
            beside("panel: 3/4\", depth: 30\", height: 84\"", place).finds_one().weighs("stop").says("`panel` is 0\"");
            beside("filler: 2\", depth: 30\", height: 84\"", place).finds_one();
            beside("panel: 3/4\", height: 84\"", place).stays_silent();
            beside("panel: 3/4\", depth: 26\", height: 84\"", place).stays_silent();
        }
    }

    /// Source: trade reports F-11 (freestanding ones typically ask for 2" to 2 1/2").
    #[test]
    fn without_a_sheet_s_figure_the_usual_one_is_only_asked_about() {
        fridge("left: {what: door casing, gap: 2\"}", "hinge: left").finds_one().weighs("query");
        fridge("left: {what: door casing, gap: 2 1/2\"}", "hinge: left").stays_silent();
    }

    #[test]
    fn what_stands_out_past_the_counter_is_struck_as_a_wall_is() {
        let opening = |depth: &str| format!("counter depth: 25 1/2\", left: {{what: pantry, depth: {depth}}}");
        let sheet = "hinge: left\nfit: {door: {wall clearance: 2\"}}";
        fridge(&opening("30\""), sheet).finds_one();
        fridge(&opening("25 1/2\""), sheet).stays_silent();
    }

    #[test]
    fn both_doors_need_room_and_one_that_hangs_either_way_needs_one_side() {
        let walls = "left: wall, right: {what: wall, gap: 3\"}";
        let hinge = |side: &str| format!("hinge: {side}\nfit: {{door: {{wall clearance: 2 1/2\"}}}}");
        fridge(walls, &hinge("both")).finds_one();
        fridge(walls, &hinge("either")).stays_silent();
        fridge("left: wall, right: wall", &hinge("either")).finds_one();
    }

    /// Source: trade reports section 3 (21" to 22" free in front of a built-in's door), F-09 (2" deeper).
    #[test]
    fn a_door_needs_the_floor_that_it_sweeps() {
        let door = "fit: {door: {swings: 20\", in front: 21\"}}";
        fridge("in front: 20 15/16\"", door).finds_one().weighs("stop");
        fridge("in front: 21\"", door).stays_silent();
        let deeper = "size: {depth: 27\"}\nfit: {door: {swings: 20\"}}";
        fridge("in front: 21\", depth: 25\"", deeper).finds_one();
        fridge("in front: 22\", depth: 25\"", deeper).stays_silent();
    }

    #[test]
    fn while_the_client_still_chooses_a_struck_wall_is_a_query() {
        let two = "hinge: left\noptions:\n  - {id: wide, fit: {door: {wall clearance: 4\"}}}\n  - {id: slim, fit: {door: {wall clearance: 2\"}}}";
        fridge("left: {what: wall, gap: 3\"}", two).finds_one().weighs("query");
    }

    /// Source: trade reports F-11: 1" of filler at a wall, where the sheet asks 2 1/2".
    #[test]
    fn past_fillers_and_panels_the_run_says_what_stands_at_the_hinges() {
        let sheet = "hinge: left\nfit: {door: {wall clearance: 2 1/2\"}}";
        let run = |outline: &str, parts: &str| {
            fridge("width: 36\", depth: 25\"", sheet)
                .room(&format!("{outline}left end: wall, depth: 24\", parts: [{parts}]}}}}"))
        };
        for outline in ["runs: {cold wall: {", "outline: 12' x 10'\nruns: {cold wall: {wall: A, "] {
            run(outline, "{filler: 1\"}, {panel: 3/4\"}, {opening: fridge}").finds_one().weighs("stop");
            run(outline, "{filler: 1 3/4\"}, {panel: 3/4\"}, {opening: fridge}").stays_silent();
            run(outline, "{filler: 1\"}, {tall: pantry, width: 24\", depth: 27\"}, {opening: fridge}").finds_one();
            // A filler that the opening names hides no wall past it.
            for filler in ["filler, gap: 1\"", "scribe, gap: 0\"", "Passleiste, gap: 1\""] {
                let left = format!("width: 36\", left: {{what: {filler}}}");
                let named = |wide: &str| {
                    fridge(&left, sheet)
                        .room(&format!("{outline}left end: wall, parts: [{{filler: {wide}}}, {{opening: fridge}}]}}}}"))
                };
                named("1\"").finds_one().weighs("stop");
                named("3\"").stays_silent();
            }
            run(outline, "{cabinet: base, width: 24\"}, {opening: fridge}").stays_silent();
            run(outline, "{opening: fridge}, {tall: pantry, width: 24\", depth: 27\"}, {filler: 3\"}").finds_one();
        }
    }

    /// Source: arithmetic; trade reports F-11: a door that comes round strikes the pull of the cabinet beside it.
    #[test]
    fn the_pull_of_a_door_beside_the_hinges_is_struck_where_it_stands_out() {
        let beside = |hinge: &str, handles: &str, sheet: &str| {
            let option =
                format!("hinge: left\nsize: {{depth: 24\", depth with door: 24\"}}\nfit: {{door: {{{sheet}}}}}");
            fridge("width: 36\", depth: 24\"", &option).room(&format!(
                "runs: {{cold wall: {{handles: {handles}, left end: wall, depth: 24\", parts: [{{tall: pantry, width: 24\", doors: 1, hinge: {hinge}}}, {{opening: fridge}}]}}}}"
            ))
        };
        let sheet = "wall clearance: 4 1/2\"";
        beside("left", "1 1/2\"", sheet)
            .finds("the pull of `pantry` is 2\" (51 mm) from the hinges at the left of the opening `fridge`, 2 1/2\" (64 mm) less than the 4 1/2\" (114 mm) that the maker's sheet asks for");
        beside("right", "1 1/2\"", sheet).stays_silent();
        beside("left", "0\"", sheet).stays_silent();
        beside("left", "1 1/2\"", "wall clearance: 2\"").stays_silent();
        beside("left", "1 1/2\"", "").stays_silent();
    }

    /// Source: arithmetic: a hall of 48" less a machine of 31 1/2" leaves 16 1/2" for a door of 19".
    #[test]
    fn the_plan_tells_what_is_in_front_where_the_opening_does_not() {
        let washer = |outline: &str, opening: &str, door: &str| {
            Trial::of("fit/door")
                .room(&format!("outline: {outline}"))
                .opening("w", &format!("{{takes: washer, wall: A, at: 40\", width: 28\"{opening}}}"))
                .selection(
                    "selection: W\nkind: washer\nplace: w",
                    &format!("size: {{width: 27\", depth: 31 1/2\"}}\nfit: {{door: {{{door}}}}}"),
                )
        };
        washer("10' x 4'", "", "swings: 19\"")
            .finds("16 1/2\" (419 mm) of floor is clear in front of the opening `w`, 2 1/2\" (64 mm) less than the 19\" (483 mm) needed to open it")
            .weighs("stop")
            .points_at(&["rooms/kitchen/room.yaml:4:3"]);
        washer("10' x 4'", "", "swings: 19\", in front: 24\"").finds_one().says("needed to open it");
        washer("10' x 5'", "", "swings: 19\", in front: 24\"").stays_silent();
        washer("10' x 4'", ", in front: 16\"", "swings: 19\"").finds_one().says("16\" (406 mm) of floor is clear");
        washer("10' x 4'", ", depth: 34\"", "swings: 19\"").finds_one();
        // A door in the wall across is opened first.
        washer("10' x 4'\ndoors: {hall: {wall: C, at: 30\", width: 60\", slides: true}}", "", "swings: 19\"")
            .stays_silent();
    }

    /// Source: arithmetic: an island 44 1/2" before the counter's edge.
    #[test]
    fn an_island_is_in_front_by_the_plan() {
        let range = |away: &str| {
            Trial::of("fit/door")
                .room(&format!("outline: 14' x 14'\nruns: {{w: {{wall: A, starts: 48\", depth: 24\", counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{{opening: range}}]}}}}\nislands: {{island: {{wall: A, at: 40\", away: {away}, size: 72\" x 36\", height: 36\"}}}}"))
                .opening("range", "{takes: range, width: 30\", depth: 25 1/2\"}")
                .selection("selection: Range\nkind: range\nplace: range", "size: {depth: 25\"}\nfit: {door: {drops: 20 1/2\", in front: 48\"}}")
        };
        range("70\"").finds_one().says("44 1/2\" (1130 mm) of floor is clear in front of the opening `range`");
        range("73 1/2\"").stays_silent();
    }
}
