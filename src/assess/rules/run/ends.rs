//! Sides of cabinets that are seen, and have no finished end.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::Room;
use crate::finding::{Remark, phrase};
use crate::site::{SeenSide, seen_sides};

declare! {
    /// A side that is seen has no finished end and no panel
    ///
    /// ## What it checks
    /// Where a run ends in the open (by its `right end: open`, or by the plan), where a tall cabinet stands
    /// over what is beside it, and at the sides of an island in which nothing stands: whether the cabinet
    /// there is `finished` on that side, the run has `finished ends`, the island's side is `finished`, the
    /// cabinets' own selection says so, or a panel ends the row. What is said to be raw there is told; a
    /// dishwasher has no side of its own, and wants a panel there. Where nobody says, `complete/site` asks.
    ///
    /// ## Why it matters
    /// The side of a box is raw board. A finished end or a panel that was not ordered with the cabinets
    /// comes weeks later, in another batch of paint or veneer.
    ///
    /// ## Remedy
    /// Order a finished end, or put a panel at the end of the row.
    ///
    /// ## Example
    /// ```yaml
    /// runs:
    ///   sink wall: {right end: open, parts: [{cabinet: drawers, width: 24", finished: left}]}
    /// ```
    ///
    /// ## Source
    /// common practice: finished ends stand in the cabinet schedule.
    "run/ends", Query,
    due: CabinetsOrdered, tells: [Installer],
    judges: [Cabinet],
    sources: ["common practice"],
    caution: None,
    remedy: "order a finished end there, or put a panel at the end of the row",
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let seen = seen_sides(context.site.plan(room), room);
        findings.extend(seen.iter().filter_map(|side| raw(room, side)));
    }
}

fn raw(room: &Room, side: &SeenSide<'_>) -> Option<Remark> {
    let (_, at) = side.finished.filter(|(finished, _)| !finished)?;
    let message = if side.wants_panel {
        phrase!("`{}` stands at the open {} of `{}`, with no panel beside it", side.of, side.side, side.row)
    } else {
        phrase!("the {} of `{}` in `{}` is seen, and is not finished", side.side, side.of, side.row)
    };
    let finding = Remark::query(side.at, message).room(&room.folder).part(side.of).source("common practice");
    Some(match at {
        Some(at) => finding.also(at, "what is finished"),
        None => finding,
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn run(run: &str) -> Trial {
        Trial::of("run/ends").room(&format!("runs: {{sink wall: {{left end: wall, {run}}}}}"))
    }

    /// Source: trade reports section 2b: finished ends stand in the cabinet schedule.
    #[test]
    fn an_end_that_is_seen_is_finished_or_has_a_panel() {
        let last = |finished: &str| {
            run(&format!("right end: open, parts: [{{filler: 3\"}}, {{cabinet: drawers, width: 24\"{finished}}}]"))
        };
        last(", finished: left")
            .finds("the right end of `drawers` in `sink wall` is seen, and is not finished")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:2:75"]);
        last(", finished: right").stays_silent();
        last(", finished: both").stays_silent();
        // What run and part say adds up.
        let both = "right end: open, finished ends: both, parts: [{cabinet: drawers, width: 24\"";
        run(&format!("{both}, finished: left}}]")).stays_silent();
        run(&format!("{both}, finished: none}}]")).finds_one();
        // Where nobody says, it is asked, not told.
        last("").stays_silent();
        run("right end: open, finished ends: none, parts: [{cabinet: drawers, width: 24\"}]").finds_one();
        run("right end: open, finished ends: none, parts: [{cabinet: drawers, width: 24\"}, {panel: 3/4\"}]")
            .stays_silent();
        run("right end: wall, finished ends: none, parts: [{cabinet: drawers, width: 24\"}]").stays_silent();
    }

    #[test]
    fn a_dishwasher_with_nothing_beside_it_wants_a_panel() {
        let washer = |beside: &str| {
            Trial::of("run/ends").opening("dishwasher", &format!("{{takes: dishwasher, width: 24\", {beside}}}"))
        };
        washer("left: base cabinet, right: nothing")
            .finds("`dishwasher` stands at the open right side of `dishwasher`, with no panel beside it")
            .weighs("query");
        washer("right: {what: wall, gap: 14\"}").finds_one();
        washer("left: panel, right: base cabinet").stays_silent();
        washer("right: {what: wall, gap: 1\"}").stays_silent();
    }

    #[test]
    fn the_plan_tells_where_a_run_ends_in_the_open() {
        let planned = |outline: &str| {
            Trial::of("run/ends").room(&format!(
                "outline: {outline}\nruns: {{sink wall: {{wall: A, finished ends: left, parts: [{{cabinet: drawers, width: 120\"}}]}}}}"
            ))
        };
        planned("12' x 10'").finds_one();
        planned("10' x 10'").stays_silent();
    }

    #[test]
    fn a_tall_cabinet_is_seen_over_its_neighbour_and_an_island_from_all_sides() {
        let tall = |finished: &str| {
            run(&format!(
                "right end: wall, parts: [{{cabinet: drawers, width: 24\"}}, {{tall: pantry, width: 24\"{finished}}}]"
            ))
        };
        tall(", finished: none").finds("the left side of `pantry` in `sink wall` is seen, and is not finished");
        tall(", finished: left").stays_silent();
        let island = |back: &str| {
            Trial::of("run/ends").room(&format!(
                "islands: {{island: {{wall side: {{parts: [{{cabinet: drawers, width: 24\"}}]}}, room side: {{{back}}}}}}}"
            ))
        };
        island("finished: false").finds("the room side of `island` in `island` is seen, and is not finished");
        island("finished: true").stays_silent();
    }

    #[test]
    fn a_dishwasher_has_no_side_to_be_seen() {
        let last = |more: &str| {
            run(&format!("right end: open, finished ends: left, parts: [{{opening: dish}}{more}]"))
                .opening("dish", "{takes: dishwasher}")
        };
        last("").finds("`dish` stands at the open right end of `sink wall`, with no panel beside it").weighs("query");
        last(", {panel: 3/4\"}").stays_silent();
    }
}
