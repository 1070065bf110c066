//! Aisles between counters in which people work.

use super::access::tells_the_aisle;
use super::{Figure, Measure, passage};
use crate::assess::Context;
use crate::assess::codes::{WORK_AISLE_MORE, WORK_AISLE_ONE};
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Remark, Severity, phrase};
use crate::site::distances::{AisleWith, aisles, aisles_with_options};

declare! {
    /// A work aisle is too narrow for those who cook there
    ///
    /// ## What it checks
    /// The `work aisle` between counters, tall cabinets or appliances that face each other, between their
    /// fronts: at least {42"} for one cook, {48"} where the room has two or more
    /// `cooks`. Of what is still to be chosen each option is looked at in its place, with its door: one that would
    /// leave less is told alone.
    ///
    /// ## Why it matters
    /// An oven door, a dishwasher and a person share that floor. {6"} too few are felt every evening.
    ///
    /// ## Remedy
    /// Make the island shallower, or move it, before the cabinets are ordered.
    ///
    /// ## Example
    /// ```yaml
    /// cooks: 2
    /// clearances: {work aisle: 45"}     # enough for one
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 6.
    "clear/work-aisle", Query,
    due: CabinetsOrdered, tells: [Client],
    living: "living.clear.work_aisle",
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 6"],
    caution: None,
    Check::Book(check)
}

const ONE_COOK: Figure = Figure::of(&WORK_AISLE_ONE).told("advised for one cook");
const SEVERAL: Figure = Figure::of(&WORK_AISLE_MORE).told("advised for two or more cooks");

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        if tells_the_aisle(context, room) {
            continue;
        }
        let several = room.cooks.get().is_some_and(|cooks| *cooks > 1);
        // A galley has no island to move.
        let remedy = match room.islands.is_empty() {
            true => "plan shallower cabinets on one side, or more width between them, before the cabinets are ordered",
            false => "make the island shallower or move it, before the cabinets are ordered",
        };
        let measure = |name, there, remedy| Measure {
            room,
            item: None,
            is: (name, "wide"),
            there,
            advised: Some(if several { SEVERAL } else { ONE_COOK }),
            code: passage(context),
            remedy,
        };
        let told = aisles(context.site, room, true).into_iter();
        findings.extend(told.filter_map(|(name, there)| measure(name, there, remedy).judge(context)));
        let by_option = aisles_with_options(context.site, room).into_iter().filter_map(|one| {
            let name = phrase!("the work aisle before `{}`", one.with.opening.name.value);
            let found = measure(name, one.wide, LESS_DEEP).judge(context)?;
            Some(of_an_option(found, &one))
        });
        findings.extend(by_option);
    }
}

/// How it is mended where one of several is too deep.
const LESS_DEEP: &str = "choose one that is less deep with its door, or plan more width before it";

/// What is found of one option that can still be taken: it bars that one where it would stop once it is taken.
fn of_an_option(found: Remark, of: &AisleWith<'_>) -> Remark {
    let severity = if of.is_written_wider { Severity::Stop } else { found.severity };
    let told = of.with.finding(severity, found.place.clone(), found.message.clone());
    told.source(found.source).remedy(found.remedy)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn aisle(cooks: u32, widths: &str) -> Trial {
        Trial::of("clear/work-aisle").room(&format!("cooks: {cooks}\nclearances: {{work aisle: {widths}}}"))
    }

    /// Source: check values KP-09: 42 passes, 41.9 fails.
    #[test]
    fn one_cook_needs_forty_two_inches() {
        aisle(1, "42\"").stays_silent();
        aisle(1, "41.9\"").finds_one().weighs("query");
        aisle(1, "41 1/2\"")
            .finds("the work aisle is 41 1/2\" (1054 mm) wide, 1/2\" (12.7 mm) less than the 42\" (1067 mm) advised for one cook");
    }

    /// Source: check values KP-10; top check value 7: an aisle of 45 is enough for one cook, not for two.
    #[test]
    fn two_cooks_need_forty_eight() {
        aisle(1, "45\"").stays_silent();
        aisle(2, "45\"").finds_one();
        aisle(2, "48\"").stays_silent();
    }

    #[test]
    fn a_figure_that_the_book_sets_itself_counts_and_stops() {
        let own =
            "codes: {figures: [{figure: work aisle for one cook, is: 44\", because: the cook is tall, by: Ines}]}";
        aisle(1, "43\"").book(own)
            .finds("the work aisle is 43\" (1092 mm) wide, 1\" (25.4 mm) less than the 44\" (1118 mm) that the book asks for")
            .weighs("stop");
        aisle(1, "44\"").book(own).stays_silent();
    }

    #[test]
    fn the_narrowest_place_counts() {
        aisle(1, "[44\", 41\", 43\"]").finds_one();
        aisle(1, "[44\", 42\", 43\"]").stays_silent();
    }

    /// A metric kitchen is planned in rounded feet: 1200 mm for two cooks, where 48" are 1219 mm; the same of
    /// walkways, landings, seats, showers and of what the trade leaves between lights and beside drawers.
    #[test]
    fn no_metric_kitchen_is_short_by_what_a_foot_was_rounded_by() {
        let metric = |rule: &'static str, lines: &str| Trial::of(rule).metric().room(lines);
        for (rule, enough, short) in [
            (
                "clear/work-aisle",
                "cooks: 2\nclearances: {work aisle: 1200 mm}",
                "cooks: 2\nclearances: {work aisle: 1150 mm}",
            ),
            (
                "clear/work-aisle",
                "cooks: 1\nclearances: {work aisle: 1.05 m}",
                "cooks: 1\nclearances: {work aisle: 1000 mm}",
            ),
            ("clear/walkway", "clearances: {walkway: 900 mm}", "clearances: {walkway: 850 mm}"),
            ("clear/shower", "clearances: {shower: 900 mm x 900 mm}", "clearances: {shower: 860 mm x 900 mm}"),
            (
                "clear/prep",
                "clearances: {preparation counter: 900 mm x 600 mm}",
                "clearances: {preparation counter: 900 mm x 560 mm}",
            ),
            ("clear/doorway", "clearances: {doorways: {hall: 800 mm}}", "clearances: {doorways: {hall: 780 mm}}"),
            ("clear/frontage", "clearances: {counter frontage: 3950 mm}", "clearances: {counter frontage: 3900 mm}"),
            ("top/seats", "seating: {bar: {edge: 1800 mm, seats: 3}}", "seating: {bar: {edge: 1750 mm, seats: 3}}"),
        ] {
            metric(rule, enough).stays_silent();
            metric(rule, short).finds_one();
        }
        let sink = |left: &str| {
            Trial::of("clear/landing")
                .metric()
                .opening("sink", &format!("{{takes: sink, landing: {{left: {left}, right: 450 mm}}}}"))
        };
        sink("600 mm").stays_silent();
        sink("560 mm").finds_one();
        metric("clear/work-aisle", "cooks: 2\nclearances: {work aisle: 1150 mm}").finds(
            "the work aisle is 1150 mm (≈ 45 1/4\") wide, 50 mm (≈ 1 15/16\") less than the 1200 mm (≈ 47 1/4\") advised for two or more cooks",
        );
    }

    /// A figure that the book sets itself is what it is, and so is one in a book that is measured in inches.
    #[test]
    fn a_figure_of_the_book_s_own_is_not_rounded() {
        let own =
            "codes: {figures: [{figure: work aisle for two cooks or more, is: 1220 mm, because: so, by: the firm}]}";
        Trial::of("clear/work-aisle")
            .metric()
            .book(own)
            .room("cooks: 2\nclearances: {work aisle: 1200 mm}")
            .finds_one();
        Trial::of("clear/work-aisle").metric().room("cooks: 2\nclearances: {work aisle: 47 1/2\"}").finds_one();
    }

    /// A refrigerator 30" deep with its door across from a counter of 24" in a room of 90": 90 - 24 - 30 = 36" (arithmetic).
    #[test]
    fn each_option_that_can_still_be_taken_is_judged_with_its_own_door() {
        let kitchen = |clear: &str, chosen: &str| {
            Trial::of("clear/work-aisle")
                .room(&format!(
                    "outline: 12' x 90\"\n{clear}runs:\n  cold: {{wall: A, depth: 24\", parts: [{{gap: 30\"}}, {{opening: refrigerator}}]}}\n  hot: {{wall: C, depth: 24\", parts: [{{gap: 20\"}}, {{cabinet: pots, width: 40\"}}, {{opening: range}}]}}"
                ))
                .opening("range", "{takes: range, width: 30\", depth: 24\", height: 36\"}")
                .opening("refrigerator", "{takes: refrigerator, width: 36\", depth: 24\", height: 72\"}")
                .file(
                    "rooms/kitchen/cold.yaml",
                    format!("- selection: Refrigerator\n  kind: refrigerator\n  place: refrigerator\n{chosen}  options:\n    - {{id: deep, name: Larderwen 68, size: {{width: 35\", height: 70\", depth: 28\", depth with door: 30\"}}}}\n    - {{id: slim, name: Larderwen 60, size: {{width: 35\", height: 70\", depth: 22\", depth with door: 24\"}}}}\n"),
                )
        };
        let written = "clearances: {work aisle: 42\"}\n";
        let deep = "the work aisle before `refrigerator` is 36\" (914 mm) wide by the plan, 6\" (152 mm) less than the 42\" (1067 mm) advised for one cook";
        for clear in ["", written] {
            let found = kitchen(clear, "").finds_one().says(deep).weighs("query");
            assert_eq!(found.findings()[0].subject.option(), Some("deep"));
            // Where a wider aisle is written, that would be a stop once it is taken.
            assert_eq!(found.findings()[0].bars, !clear.is_empty());
            kitchen(clear, "  chosen: slim\n").stays_silent();
        }
    }
}
