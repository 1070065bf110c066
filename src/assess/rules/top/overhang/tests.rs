//! Overhangs against the stone manual's figures, and the trade's for supports.

use crate::assess::rules::trial::Trial;

/// A counter of that thickness, what else is said of it under `top`.
fn counter(thickness: &str, top: &str) -> Trial {
    Trial::of("top/overhang")
        .selection("selection: Island top\nkind: counter", &format!("thickness: {thickness}\ntop: {{{top}}}"))
}

fn stone(thickness: &str, top: &str) -> Trial {
    counter(thickness, &format!("material: stone, {top}"))
}

/// Source: check values ST-01, ST-12: 3 cm bears 10 and not 10.5, 2 cm not 7; 30 mm and 1 1/4 are both 3 cm.
#[test]
fn stone_bears_so_much_by_its_thickness() {
    for three in ["30 mm", "1 1/4\"", "1 3/16\""] {
        stone(three, "depth: 42\", overhang: 10\"").stays_silent();
        stone(three, "depth: 42\", overhang: 10 1/2\"").finds_one().weighs("query").cautions();
    }
    for two in ["20 mm", "3/4\""] {
        stone(two, "depth: 42\", overhang: 6\"").stays_silent();
        stone(two, "depth: 42\", overhang: 7\"").finds_one();
    }
    stone("1 1/4\"", "depth: 42\", overhang: 10 1/2\"").finds(
        "`Island top` stands out 10 1/2\" (267 mm) past what carries it, 1/2\" (12.7 mm) more than stone of 1 1/4\" (31.8 mm) bears by itself",
    );
    stone("12 mm", "depth: 42\", overhang: 3\"").finds_one();
    stone("12 mm", "depth: 42\", overhang: 1 1/2\"").stays_silent();
}

/// Source: check values ST-02: of 25" a third is 8.33, of 36" 10 count; of 15" in 2 cm 5, of 24" 6.
#[test]
fn and_never_more_than_a_third_of_its_depth() {
    stone("30 mm", "depth: 25\", overhang: 8 5/16\"").stays_silent();
    stone("30 mm", "depth: 25\", overhang: 8 3/8\"").finds(
        "`Island top` stands out 8 3/8\" (213 mm) past what carries it, ≈ 1/16\" (1.1 mm) more than a third of its depth of 25\" (635 mm)",
    );
    stone("30 mm", "depth: 36\", overhang: 10\"").stays_silent();
    stone("30 mm", "depth: 36\", overhang: 10 1/16\"").finds_one();
    stone("20 mm", "depth: 15\", overhang: 5\"").stays_silent();
    stone("20 mm", "depth: 15\", overhang: 5 1/16\"").finds_one();
    stone("20 mm", "depth: 24\", overhang: 6\"").stays_silent();
    stone("20 mm", "depth: 24\", overhang: 6 1/16\"").finds_one();
}

/// Source: check values ST-05, KP-16, KP-17: seats at 36 need 15, at 42 they need 12; 3 cm gives 10: supports.
#[test]
fn seats_ask_for_more_than_stone_bears() {
    let seated = |seating: &str, top: &str| {
        Trial::of("top/overhang").room(&format!("seating: {{island: {{{seating}}}}}")).selection(
            "selection: Island top\nkind: counter",
            &format!("thickness: 30 mm\ntop: {{material: stone, lies on: [island], {top}}}"),
        )
    };
    seated("seats: 3, height: 36\"", "depth: 48\"").finds(
        "`Island top` stands out 15\" (381 mm) past what carries it at `island`, 5\" (127 mm) more than stone of ≈ 1 3/16\" (30 mm) bears by itself",
    );
    seated("seats: 3, height: 42\"", "depth: 48\"").finds_one();
    seated("seats: 3, height: 42\", knee depth: 10\"", "depth: 48\"").stays_silent();
    let bars = "depth: 48\", supports: {by: steel bars, out: 12\", in: 24\", apart: 24\"}";
    seated("seats: 3, height: 36\"", bars).stays_silent();
    seated("seats: 3, height: 30\"", "depth: 48\"").stays_silent();
}

/// Source: check values ST-01, ST-02, as the room's plan has the island.
#[test]
fn an_island_of_the_plan_is_read_there() {
    let island = |overhang: &str, size: &str| {
        Trial::of("top/overhang")
            .room(&format!("outline: 20' x 16'\nislands: {{island: {{wall: A, at: 40\", away: 60\", size: {size}, height: 36\", room side: {{overhang: {overhang}, seats: 3}}}}}}"))
            .selection("selection: Counter\nkind: counter", "thickness: 30 mm\ntop: {material: stone}")
    };
    island("10\"", "96\" x 42\"").stays_silent();
    island("15\"", "96\" x 42\"").finds_one();
    island("10\"", "96\" x 27\"").finds_one();
}

/// Source: common practice: bars reach at least as far inside as out; 14" the most before steel, 24" before posts.
#[test]
fn supports_must_reach_and_be_strong_enough() {
    let by =
        |what: &str, overhang: &str| stone("30 mm", &format!("depth: 60\", overhang: {overhang}, supports: {what}"));
    by("{by: steel bars, out: 12\", in: 24\"}", "15\"").stays_silent();
    by("{by: steel bars, out: 12\", in: 12\"}", "15\"").stays_silent();
    by("{by: steel bars, out: 12\", in: 8\"}", "15\"")
        .finds("the steel bars of `Island top` reach 12\" (305 mm) out and only 8\" (203 mm) back over the cabinets");
    by("{by: brackets, out: 10\", in: 10\"}", "14\"").stays_silent();
    by("{by: brackets, out: 10\", in: 10\"}", "15\"").finds_one();
    by("{by: steel bars, out: 20\", in: 24\"}", "24\"").stays_silent();
    by("{by: steel bars, out: 20\", in: 24\"}", "25\"").finds_one();
    by("{by: legs}", "40\"").stays_silent();
    by("{by: steel bars, out: 3\", in: 12\"}", "15\"").finds(
        "`Island top` stands out 12\" (305 mm) past its supports, 2\" (51 mm) more than stone of ≈ 1 3/16\" (30 mm) bears by itself",
    );
}

/// Source: common practice: 14" the most before steel, of whatever the counter is.
#[test]
fn wood_is_asked_for_steel_past_fourteen_inches() {
    counter("1 1/2\"", "material: wood, overhang: 14\"").stays_silent();
    counter("1 1/2\"", "material: wood, overhang: 15\"").finds_one().cautions();
    counter("1 1/2\"", "material: wood, overhang: 15\", supports: {by: steel bars, out: 10\", in: 20\"}")
        .stays_silent();
}

#[test]
fn what_nobody_says_is_asked() {
    counter("30 mm", "overhang: 12\"")
        .finds("`Island top` stands out 12\" (305 mm), and nobody says what it is made of and what carries it");
    counter("30 mm", "overhang: 6\"").stays_silent();
    counter("30 mm", "overhang: 12\", supports: {by: brackets}").stays_silent();
}

#[test]
fn a_figure_that_the_book_sets_stops() {
    let own = "codes: {figures: [{figure: overhang of 3 cm stone, is: 8\", because: our fabricator, by: the firm}]}";
    stone("30 mm", "depth: 42\", overhang: 9\"").book(own).finds_one().weighs("stop");
    stone("30 mm", "depth: 42\", overhang: 8\"").book(own).stays_silent();
}
