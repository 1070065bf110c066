//! Bodies that stand in one another's place.

use super::doorways;
use crate::assess::{Context, say};
use crate::finding::{Id, Phrase, Remark, phrase};
use crate::site::plan::{Plan, PlanFault, What, Wrong, chosen_for};
use crate::source::Span;

/// Every pair of bodies of a room that are in one place.
pub fn clash(context: &Context<'_>, plan: &Plan<'_>) -> Vec<Remark> {
    let told = plan.faults.iter().filter_map(|fault| {
        let finding = told(context, plan, fault).or_else(|| doorways::closes(context, plan, fault))?;
        let spans = [Some(fault.span), fault.also].into_iter().flatten();
        Some(finding.about_others(spans.flat_map(|span| written_at(plan, span))))
    });
    told.collect()
}

/// What stands where that is written: openings, fixtures, and what is chosen for them. Each has pages of its own.
fn written_at(plan: &Plan<'_>, span: Span) -> Vec<Id> {
    let there = plan.things.iter().filter(|thing| thing.span == span);
    let ids = there.flat_map(|thing| {
        let opening = thing.opening.map(|opening| Id::of(&opening.name));
        let fixture = if let What::Fixture(fixture) = thing.what { Some(fixture) } else { None };
        let chosen = fixture.and_then(|fixture| chosen_for(plan.room, fixture)).map(|chosen| Id::of(&chosen.name));
        opening.into_iter().chain(fixture.map(|fixture| Id::of(&fixture.name))).chain(chosen)
    });
    ids.collect()
}

/// Whether that two stand in one place is told: what follows from it is not told as well.
pub fn is_told(plan: &Plan<'_>, one: Span, other: Span) -> bool {
    plan.faults.iter().any(|fault| fault.is_of(one, other))
}

fn told(context: &Context<'_>, plan: &Plan<'_>, fault: &PlanFault) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let Wrong::Clashes { other, along, in_height, out } = &fault.wrong else { return None };
    let item = fault.item.as_deref()?;
    let ways = [(along, "along the wall"), (in_height, "in height"), (out, "from the wall")];
    let shortest = ways.into_iter().filter_map(|(by, way)| Some(((*by)?, way))).min_by_key(|(by, _)| *by);
    let (how, remedy) = match shortest {
        Some((by, way)) => {
            let by = say(by);
            (
                phrase!(", and {by} {way} would part them", by, way),
                phrase!("move one of them {by} {way}, or choose a smaller one", by, way),
            )
        }
        None => (Phrase::default(), "move one of them, or choose a smaller one".into()),
    };
    let message = phrase!("`{item}` stands where `{other}` is{how}", item, other, how);
    let finding = Remark::stop(fault.span, message).remedy(remedy);
    let finding = finding.room(&plan.room.folder).part(item);
    Some(match fault.also {
        Some(also) => finding.also(also, phrase!("`{other}`", other)),
        None => finding,
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn room(lines: &str) -> Trial {
        Trial::of("fit/clash").room(lines)
    }

    #[test]
    fn two_things_do_not_stand_in_one_place() {
        let toilet = |centre: &str| {
            format!(
                "outline: 10' x 8'\ndoors: {{hall door: {{wall: A, at: 0\", width: 32\"}}}}\nfixtures:\n  toilet: {{wall: A, centre: {centre}, width: 15\", depth: 28\"}}\n  basin: {{wall: A, centre: 60\", width: 24\", depth: 20\"}}"
            )
        };
        room(&toilet("40\"")).stays_silent();
        room(&toilet("55\""))
            .finds("`basin` stands where `toilet` is, and 14 1/2\" (368 mm) along the wall would part them")
            .weighs("stop")
            .points_at(&["rooms/kitchen/room.yaml:6:3"])
            .remedies("move one of them 14 1/2\" (368 mm) along the wall, or choose a smaller one");
        room(&toilet("38\""))
            .finds("`toilet` stands where `hall door` is, and 1 1/2\" (38.1 mm) along the wall would part them");
    }

    /// Arithmetic: a cabinet from 54" to 84" before a window from 44" up to 56": 2" in height part them.
    #[test]
    fn the_direction_that_is_shortest_to_mend_is_named() {
        let upper = |above_floor: &str| {
            room(&format!(
                "outline: 12' x 8'\nwindows: {{yard: {{wall: A, at: 36\", width: 36\", sill: 44\", height: 12\"}}}}\nruns: {{uppers: {{wall: A, starts: 30\", above floor: {above_floor}, depth: 12\", height: 30\", parts: [{{cabinet: plates, width: 30\"}}]}}}}"
            ))
        };
        upper("54\"").finds("`plates` stands where `yard` is, and 2\" (51 mm) in height would part them");
        upper("56\"").stays_silent();
    }

    /// The height of a run is that of what stands tall in it; where nobody says it, it is more than a counter's.
    #[test]
    fn a_tall_unit_stands_before_a_window_however_its_height_is_said() {
        let robe = |run: &str, part: &str, sill: &str| {
            room(&format!(
                "outline: 10' x 9'\nwindows: {{win: {{wall: A, at: 30\", width: 30\", sill: {sill}, height: 50\"}}}}\nruns: {{robe: {{wall: A, depth: 24\"{run}, parts: [{{filler: 2\"}}, {{tall: a, width: 40\"{part}}}]}}}}"
            ))
        };
        for (run, part) in [(", height: 84\"", ""), ("", ", height: 84\""), ("", "")] {
            robe(run, part, "30\"").finds_one();
        }
        robe(", height: 84\"", "", "85\"").stays_silent();
    }

    /// Where one stands in a shower is no body: its window, a bar, a seat and its glass are in nobody's place.
    #[test]
    fn what_belongs_in_a_shower_stands_in_it() {
        let shower = |other: &str| {
            room(&format!(
                "outline: 8' x 5'\nwindows: {{yard: {{wall: A, at: 30\", width: 24\", sill: 54\", height: 20\", glass: tempered}}}}\nfixtures:\n  shower: {{wall: A, centre: 45\", width: 48\", depth: 36\", height: 80\", takes: shower set}}\n  other: {{{other}}}"
            ))
        };
        shower("wall: A, centre: 45\", width: 24\", depth: 3\", sill: 34\", height: 2\", takes: grab bar")
            .stays_silent();
        shower("wall: A, centre: 32\", width: 18\", depth: 15\", height: 18\", takes: shower seat").stays_silent();
        shower("wall: A, centre: 69\", width: 1\", depth: 36\", height: 78\", takes: shower glass").stays_silent();
        shower("wall: A, centre: 70\", width: 20\", depth: 24\", height: 30\", takes: toilet").finds_one();
    }

    /// A basin that is set out by itself is cut into the cabinet under it, before or after it in the file.
    #[test]
    fn a_basin_is_in_the_cabinet_that_it_is_let_into() {
        let vanity = "vanity: {wall: A, centre: 40\", width: 36\", depth: 21\", height: 34\", takes: cabinet}";
        let basin = |centre: &str| {
            format!(
                "basin: {{wall: A, centre: {centre}, width: 17\", depth: 13\", height: 6\", sill: 28\", takes: basin}}"
            )
        };
        let both = |one: &str, other: &str| room(&format!("outline: 8' x 5'\nfixtures:\n  {one}\n  {other}"));
        both(vanity, &basin("40\"")).stays_silent();
        both(&basin("40\""), vanity).stays_silent();
        both(vanity, &basin("60\"")).finds_one();
    }

    /// All bodies are taken from the finished floor: what a floor to come takes from an opening is gone in the plan too.
    #[test]
    fn an_opening_that_was_measured_from_the_present_floor_ends_lower() {
        let bridge = |height: &str, floor: &str| {
            room(&format!(
                "outline: 12' x 8'\nfloor build-up: {floor}\nruns:\n  tall: {{wall: A, parts: [{{opening: refrigerator}}]}}\n  over it: {{wall: A, above floor: 72\", depth: 24\", height: 12\", parts: [{{cabinet: bridge, width: 36\"}}]}}"
            ))
            .opening("refrigerator", &format!("{{takes: refrigerator, width: 36\", depth: 24\", {height}}}"))
        };
        bridge("height: 72 3/4\"", "3/4\"").stays_silent();
        bridge("height: 72 3/4\", measured from: present floor", "3/4\"").stays_silent();
        bridge("height: 72\", measured from: finished floor", "3/4\"").stays_silent();
        bridge("height: 72 3/4\", measured from: finished floor", "3/4\"").finds_one().weighs("stop");
        bridge("height: 73\"", "3/4\"").finds_one().weighs("stop");
        let dishwasher = |height: &str| {
            room(
                "outline: 12' x 8'\nfloor build-up: 20 mm\nwindows: {yard: {wall: A, at: 10\", width: 40\", sill: 38\", height: 40\", casing: 3\"}}\nruns: {low: {wall: A, parts: [{opening: dishwasher}]}}",
            )
            .opening("dishwasher", &format!("{{takes: dishwasher, width: 24\", depth: 24\", height: {height}}}"))
        };
        dishwasher("35 1/2\"").stays_silent();
        dishwasher("36 1/2\"").finds_one();
    }

    #[test]
    fn it_has_a_hold_point_and_can_be_waived_where_it_is_meant() {
        let lines = "outline: 10' x 8'\nfixtures:\n  bench: {wall: A, centre: 55\", width: 15\", depth: 28\"}\n  trough: {wall: A, centre: 60\", width: 24\", depth: 20\"}";
        let found = room(lines).finds_one();
        assert!(found.findings()[0].by.is_some());
        let waived = room(&format!(
            "{lines}\nwaive: [{{rule: fit/clash, because: the trough hangs over the bench, by: Ada, on: 2027-01-10}}]"
        ));
        assert!(waived.run().findings().iter().all(|finding| finding.waived.is_some()));
    }

    /// A row 24" deep along wall A ends at wall D, where the doorway begins 2" or 26" from the corner.
    #[test]
    fn a_row_does_not_close_the_doorway_of_the_next_wall() {
        // Wall D is 98" long from its left end at the far corner, and its right end is at wall A.
        let galley = |at: &str, row: &str| {
            room(&format!(
                "outline: 12' x 98\"\ndoors: {{hall: {{wall: D, at: {at}, width: 36\", height: 80\"}}}}\nruns: {{sink wall: {{wall: A, {row}}}}}"
            ))
        };
        let row = "parts: [{cabinet: drawers, width: 30\"}, {cabinet: bin, width: 18\"}]";
        galley("60\"", row)
            .finds("`drawers` stands before `hall` and closes 22\" (559 mm) of its 36\" (914 mm)")
            .weighs("stop")
            .remedies("move one of them 22\" (559 mm) along the doorway's or window's wall, or choose a smaller one");
        galley("38\"", row).stays_silent();
        // Behind a filler, and a foot of floor at most, there is no way through either.
        galley("60\"", "parts: [{filler: 3\"}, {cabinet: drawers, width: 30\"}]").finds_one();
        galley("60\"", "starts: 8\", parts: [{tall: larder, width: 24\", height: 84\"}]").finds_one();
        galley("60\"", "starts: 40\", parts: [{cabinet: drawers, width: 30\"}]").stays_silent();
        // Wall cabinets above the door's head are in nobody's way.
        galley("60\"", "above floor: 81\", height: 15\", depth: 24\", parts: [{cabinet: top, width: 30\"}]")
            .stays_silent();
        galley("60\"", "depth: 12\", above floor: 54\", height: 30\", parts: [{cabinet: cups, width: 30\"}]")
            .finds_one();
    }

    #[test]
    fn nothing_else_stands_before_a_doorway_or_covers_the_next_wall_s_window() {
        let bench = |at: &str| {
            room(&format!(
                "outline: 12' x 98\"\ndoors: {{hall: {{wall: D, at: 20\", width: 36\", height: 80\"}}}}\nislands: {{island: {{wall: A, at: {at}, away: 40\", size: 60\" x 30\", height: 36\"}}}}"
            ))
        };
        bench("1/2\"").finds_one().weighs("stop");
        bench("48\"").stays_silent();
        let larder = |part: &str| {
            room(&format!(
                "outline: 12' x 98\"\nwindows: {{yard: {{wall: D, at: 62\", width: 30\", sill: 40\", height: 40\"}}}}\nruns: {{sink wall: {{wall: A, parts: [{part}]}}}}"
            ))
        };
        larder("{tall: larder, width: 24\", height: 84\"}").finds_one();
        larder("{cabinet: drawers, width: 24\", height: 34 1/2\"}").stays_silent();
    }

    /// A window in the slope takes up no wall: it is above a cabinet, not behind it.
    #[test]
    fn a_window_in_the_roof_is_in_no_cabinet_s_place() {
        let bath = |ceiling: &str, name: &str, more: &str| {
            room(&format!(
                "outline: 12' x 8'\nceiling: {ceiling}\nwindows: {{{name}: {{wall: C, at: 30\", width: 30\", sill: 50\", height: 46\"{more}}}}}\nruns: {{low: {{wall: C, height: 56\", parts: [{{tall: linen, width: 60\", height: 56\"}}]}}}}"
            ))
        };
        let sloped = "{low: 62\", high: 102\", low at: C}";
        bath(sloped, "light", "").stays_silent();
        bath(sloped, "light", ", in: roof").stays_silent();
        bath("{low: 62\", high: 102\", rises along: width}", "roof window", "").stays_silent();
        bath(sloped, "light", ", in: wall").finds_one();
        bath("{low: 62\", high: 102\", low at: A}", "light", "").finds_one();
        bath("8' 6\"", "roof window", "").finds_one();
    }

    /// A machine in a closet is reached through its doors; in a room it stands before them.
    #[test]
    fn what_stands_in_a_closet_does_not_close_its_door() {
        let closet = |deep: &str| {
            room(&format!(
                "outline: 60\" x {deep}\ndoors: {{way: {{wall: C, at: 10\", width: 48\", height: 80\", slides: true}}}}"
            ))
            .opening("washer", &format!("{{takes: washer, wall: A, at: 2\", width: 28\", depth: {deep}}}"))
        };
        closet("32\"").stays_silent();
        closet("48\"").finds_one().says("`washer` stands before `way`");
    }

    /// A shower is stood in to the height of its head, and a mirror on a wall is as thick as its pane.
    #[test]
    fn a_shower_without_a_height_and_a_mirror_without_a_depth_are_bodies() {
        let bath = |lines: &str| room(&format!("outline: 9' x 7'\nfixtures:\n{lines}"));
        let shower = "  shower: {wall: B, centre: 42\", width: 84\", depth: 36\", takes: shower}\n";
        let warmer = |centre: &str, kind: &str| {
            bath(&format!(
                "{shower}  other: {{wall: A, centre: {centre}, sill: 46\", width: 20\", height: 30\", depth: 5\", takes: {kind}}}"
            ))
        };
        for kind in ["towel warmer", "mirror cabinet", "sconce"] {
            warmer("70\"", kind)
                .finds("`other` stands where `shower` is, and 8\" (203 mm) along the wall would part them")
                .points_at(&["rooms/kitchen/room.yaml:5:3"]);
            warmer("60\"", kind).stays_silent();
        }
        // What belongs in a shower is in it.
        warmer("85\"", "grab bar").stays_silent();
        let over_a_mirror = |sill: &str, wide: &str| {
            bath(&format!(
                "  mirror: {{wall: A, centre: 40\", sill: 42\", width: 28\", height: 36\", takes: mirror}}\n  light: {{wall: A, centre: 40\", sill: {sill}, width: {wide}, height: 6\", depth: 5\", takes: vanity light}}"
            ))
        };
        over_a_mirror("74\"", "24\"")
            .finds("`light` stands where `mirror` is, and 4\" (102 mm) in height would part them");
        over_a_mirror("79\"", "24\"").stays_silent();
        // It is set on the glass, and in nobody's place.
        over_a_mirror("70\"", "6\"").finds("`light` is set on the glass of `mirror`").weighs("query");
    }

    /// Source: common practice: no tall unit ends below 72".
    #[test]
    fn a_tall_unit_of_unknown_height_hides_what_hangs_behind_it() {
        let bath = |height: &str, starts: &str, thing: &str| {
            room(&format!(
                "outline: 9' x 7'\nruns: {{tall: {{wall: A, starts: {starts}, depth: 20\", parts: [{{tall: linen, width: 24\"{height}}}]}}}}\nfixtures: {{other: {{wall: A, centre: 40\", width: 24\", {thing}}}}}"
            ))
        };
        for thing in [
            "sill: 40\", height: 36\", takes: mirror",
            "sill: 66\", takes: sconce",
            "sill: 60\", depth: 8\", takes: shelf",
            "sill: 48\", height: 36\", takes: mirror cabinet",
        ] {
            for height in ["", ", height: 84\""] {
                bath(height, "50\"", thing)
                    .finds_one()
                    .says("`other` stands where `linen` is, and 2\" (51 mm) along the wall would part them");
                bath(height, "52\"", thing).stays_silent();
            }
        }
        // What hangs over a low cabinet is not behind it.
        bath(", height: 34\"", "50\"", "sill: 66\", takes: sconce").stays_silent();
        let window = |height: &str| {
            room(&format!(
                "outline: 9' x 7'\nwindows: {{yard: {{wall: A, at: 30\", width: 30\", sill: 40\", height: 30\"}}}}\nruns: {{tall: {{wall: A, starts: 50\", depth: 20\", parts: [{{tall: linen, width: 24\"{height}}}]}}}}"
            ))
        };
        window("").finds_one();
        window(", height: 36\"").stays_silent();
    }
}
