//! What is above a cooking surface, in every place and wording where a designer writes it.

use crate::assess::rules::trial::Trial;

fn range(above: &str, more: &str) -> Trial {
    Trial::of("clear/above-cooktop")
        .opening("hole", &format!("{{takes: range, counter height: 36\", above: {above}}}"))
        .selection(
            "selection: Range\nkind: range\nplace: hole",
            &format!("size: {{width: 36\", height: 36\"}}\n{more}"),
        )
}

/// Source: check values IR-01, KP-31: 30 to unprotected wood passes, 29 fails.
#[test]
fn wood_nearer_than_30_inches_is_asked_about_and_stops_where_the_code_is_adopted() {
    range("{what: wall cabinet, height: 65\", material: burns}", "")
        .finds("the wall cabinet is 29\" (737 mm) above the cooking surface of `Range`, 1\" (25.4 mm) less than the 30\" (762 mm)")
        .weighs("query")
        .cautions();
    let adopted = "codes: {adopts: [IRC 2021]}";
    range("{what: wall cabinet, height: 65\"}", "").book(adopted).finds_one().weighs("stop");
    range("{what: wall cabinet, height: 66\"}", "").stays_silent();
}

/// Source: check values IR-02, KP-30: 24 is for what is shielded. A name shields nothing.
#[test]
fn no_word_of_a_name_makes_a_thing_shielded() {
    for what in ["oak hood", "hood cabinet", "'no shield, pine shelf'", "metal-look cabinet", "hood", "metal hood"] {
        let found = range(&format!("{{what: {what}, height: 62\"}}"), "").finds_one();
        let finding = &found.findings()[0];
        assert!(
            finding.message.text().ends_with("nobody says whether it burns, and so it counts as burning"),
            "{what}"
        );
        assert!(finding.remedy.text().contains("`material`"), "{what}: {}", finding.remedy);
        range(&format!("{{what: {what}, height: 62\", material: shielded}}"), "").stays_silent();
        range(&format!("{{what: {what}, height: 62\", material: does not burn}}"), "").stays_silent();
        range(&format!("{{what: {what}, height: 59\", material: does not burn}}"), "").finds_one();
    }
}

/// Below 24" no answer would help, and none is asked for.
#[test]
fn what_is_too_near_whatever_it_is_made_of_is_not_asked_about() {
    let found = range("{what: hood, height: 58\"}", "").finds_one();
    assert!(!found.findings()[0].message.text().contains("burns"), "{:?}", found.findings());
}

/// Source: check values IR-04: a hood of 30 over a top of 36 reduces nothing.
#[test]
fn a_hood_that_does_not_burn_counts_when_it_is_wide_enough() {
    let above = "{what: hood, height: 60\", material: does not burn}";
    range(above, "").stays_silent();
    range(above, "").selection("selection: Hood\nkind: hood", "size: {width: 30\"}").finds_one();
    range(above, "").selection("selection: Hood\nkind: hood", "size: {width: 36\"}").stays_silent();
}

/// Source: check values IR-06: what is listed for use over a range goes by its own instructions.
#[test]
fn the_maker_s_own_figure_decides() {
    range("{what: microwave, height: 54\"}", "fit: {air: {top: 18\"}}").stays_silent();
    range("{what: microwave, height: 54\"}", "fit: {heat: {above: 18\"}}").stays_silent();
    range("{what: wall cabinet, height: 66\"}", "fit: {air: {top: 36\"}}").finds_one().weighs("stop");
    range("{what: wall cabinet, height: 66\"}", "fit: {heat: {above: 36\"}}").finds_one().weighs("stop");
    let shielded = "{what: soffit, height: 62\", material: shielded}";
    range(shielded, "fit: {heat: {above: 36\", above shielded: 26\"}}").stays_silent();
    range(shielded, "fit: {heat: {above: 36\", above shielded: 27\"}}").finds_one().weighs("stop");
}

/// An inch of air above a range's case is no distance to what hangs over its burners.
#[test]
fn air_around_the_case_clears_nothing_above_the_burners() {
    range("{what: wall cabinet, height: 50\"}", "fit: {air: {top: 0\"}}").finds_one();
    range("{what: wall cabinet, height: 50\"}", "fit: {air: {top: 1\"}}").finds_one();
}

/// Source: check values IR-05: Ontario asks 750 mm of what burns, which is not 30 in.
#[test]
fn another_country_s_figure_is_written_as_an_amendment() {
    let ontario = "codes: {figures: [{figure: cooking surface to what burns above, is: 750 mm, because: Ontario Building Code, by: Ontario}]}";
    range("{what: wood cabinet, height: 1664.4 mm}", "").book(ontario).stays_silent();
    range("{what: wood cabinet, height: 1654.4 mm}", "").book(ontario).finds_one().weighs("stop");
}

#[test]
fn a_height_that_nobody_says_is_asked_for_once() {
    range("wall cabinet", "")
        .finds("how high the wall cabinet is above the cooking surface of `Range` is not said")
        .weighs("query");
    Trial::of("clear/above-cooktop")
        .opening("hole", "{takes: cooktop, above: {what: wall cabinet, height: 60\"}}")
        .selection("selection: Cooktop\nkind: cooktop\nplace: hole", "size: {width: 30\"}")
        .finds("how high the cooking surface of `Cooktop` is under the wall cabinet is not said, which is 60\" (1524 mm) above the floor");
}

/// A room with a range in a run, and what else its plan has.
fn planned(plan: &str) -> Trial {
    Trial::of("clear/above-cooktop")
        .room(&format!(
            "outline: 144\" x 120\"\nceiling: 96\"\nruns:\n  base: {{wall: A, starts: 24\", depth: 24\", counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{{cabinet: pots, width: 30\"}}, {{opening: hole}}, {{cabinet: pans, width: 30\"}}]}}\n{plan}"
        ))
        .opening("hole", "{takes: range, width: 30 1/4\", height: 36\", depth: 25\"}")
        .selection("selection: Range\nkind: range\nplace: hole", "size: {width: 29 7/8\", height: 35 3/4\" to 36 1/2\"}")
}

#[test]
fn a_wall_cabinet_that_stands_only_in_the_plan_is_seen() {
    let uppers = |low: &str, more: &str| {
        format!(
            "  uppers: {{wall: A, starts: 54\", above floor: {low}, depth: 12\", height: 30\", parts: [{{cabinet: plates, width: 30\"{more}}}]}}\n"
        )
    };
    planned(&uppers("60\"", ""))
        .finds("`plates` of the run `uppers` is 24\" (610 mm) above the cooking surface of `Range`, 6\" (152 mm) less than the 30\" (762 mm); nobody says whether it burns, and so it counts as burning");
    planned(&uppers("60\"", ", material: burns")).finds_one();
    planned(&uppers("60\"", ", material: does not burn")).stays_silent();
    planned(&uppers("66\"", "")).stays_silent();
    // A fact of the whole run is one of each of its parts.
    planned(&uppers("60\", material: shielded", "")).stays_silent();
    // Beside the range it hangs over nothing.
    planned(&uppers("60\"", "").replace("54\"", "84 1/4\"")).stays_silent();
}

#[test]
fn a_microwave_held_by_a_wall_cabinet_and_a_shelf_fixed_alone_are_seen() {
    let fixed = "fixtures: {ledge: {wall: A, centre: 69\", width: 36\", depth: 8\", height: 2\", sill: 56\"}}\n";
    planned(fixed).finds_one();
    planned(&fixed.replace("56\"", "66\"")).stays_silent();
    planned(&fixed.replace("sill: 56\"", "sill: 60\", material: does not burn")).stays_silent();
}

#[test]
fn the_chosen_hood_is_above_the_one_cooking_surface_wherever_it_stands() {
    let hood = |sill: &str, option: &str| {
        range("", "")
            .opening("over", &format!("{{takes: hood, sill: {sill}, height: 30\"}}"))
            .selection("selection: Hood\nkind: hood\nplace: over", option)
    };
    hood("60\"", "")
        .finds("`Hood` in the opening `over` is 24\" (610 mm) above the cooking surface of `Range`, 6\" (152 mm) less than the 30\" (762 mm); nobody says whether it burns, and so it counts as burning");
    hood("60\"", "material: does not burn").stays_silent();
    hood("60\"", "material: does not burn\nfit: {heat: {above: 27\"}}").finds_one().weighs("stop");
    hood("60\"", "material: does not burn\nfit: {heat: {over cooking: 27\"}}").finds_one().weighs("stop");
    hood("66\"", "").stays_silent();
    // Higher than its opening: its skirt hangs below it.
    hood("66\"", "size: {width: 36\", height: 38\"}").finds_one();
}

/// Source: check values IR-02: a metal hood shields what is above it.
#[test]
fn a_cabinet_above_a_hood_that_does_not_burn_is_shielded_by_it() {
    let both = |material: &str| {
        planned("  uppers: {wall: A, starts: 53\", above floor: 62\", depth: 12\", height: 30\", material: burns, parts: [{cabinet: plates, width: 32\"}]}\n")
            .opening("over", "{takes: hood, width: 30\", sill: 60\"}")
            .selection("selection: Hood\nkind: hood\nplace: over", &format!("size: {{width: 30\"}}\n{material}"))
    };
    both("material: does not burn").stays_silent();
    both("material: burns").finds_one();
    both("").finds_one();
}

/// What is built around a hood is not the hood: nobody said that it does not burn.
#[test]
fn what_is_built_around_a_hood_is_not_as_safe_as_the_hood() {
    let told = |what: &str| {
        range(&format!("{{what: {what}, height: 60\"}}"), "")
            .opening("over", "{takes: hood, sill: 60\"}")
            .selection("selection: Hood\nkind: hood\nplace: over", "size: {width: 36\"}\nmaterial: does not burn")
    };
    for what in
        ["walnut hood surround", "timber-clad hood", "oak-clad extractor", "window", "campana de madera", "pot rail"]
    {
        told(what)
            .finds(&format!("the {what} is 24\" (610 mm) above the cooking surface of `Range`, 6\" (152 mm) less than the 30\" (762 mm); nobody says whether it burns, and so it counts as burning"))
            .cautions();
        told(&format!("{what}, material: does not burn")).stays_silent();
    }
    for what in ["hood", "chimney hood", "the extractor", "Dunstabzugshaube", "campana", "Hood"] {
        told(what).stays_silent();
    }
}

#[test]
fn one_thing_told_in_two_places_is_one_thing_and_the_worse_answer_counts() {
    let told = |above: &str, hood: &str| {
        range(above, "")
            .opening("over", "{takes: hood, sill: 60\"}")
            .selection("selection: Hood\nkind: hood\nplace: over", &format!("size: {{width: 36\"}}\n{hood}"))
    };
    told("{what: hood, height: 60\"}", "material: does not burn").stays_silent();
    told("hood", "material: does not burn").stays_silent();
    told("{what: hood, height: 60\", material: does not burn}", "").stays_silent();
    told("{what: hood, height: 60\", material: does not burn}", "material: burns").finds_one();
}

/// Source: check values KP-33: no cooktop under a window that opens; nothing that burns hangs at one.
#[test]
fn a_window_above_a_cooktop_is_told() {
    let window = |opens: &str| {
        Trial::of("clear/above-cooktop").room(&format!("windows: {{yard: {{opens: {opens}, above: cooktop}}}}"))
    };
    window("up").finds("the window `yard` opens above the cooktop").weighs("query");
    window("fixed").stays_silent();
    window("up, in: wall").finds_one();
    window("up, in: roof").stays_silent();
    let of_plan = |fields: &str| {
        planned(&format!("windows: {{yard: {{wall: A, at: 60\", width: 20\", height: 30\", {fields}}}}}\n"))
    };
    of_plan("sill: 66\", opens: up").finds("the window `yard` opens above the cooking surface of `Range`");
    of_plan("sill: 44\", opens: fixed").finds_one();
    of_plan("sill: 44\", opens: fixed, material: burns").finds_one();
    of_plan("sill: 66\", opens: fixed").stays_silent();
    of_plan("sill: 62\", opens: fixed, material: does not burn").stays_silent();
}

/// Under a slope the ceiling itself comes near.
#[test]
fn a_ceiling_that_comes_down_over_it_is_seen() {
    let sloped = |low: &str| {
        Trial::of("clear/above-cooktop")
            .room(&format!(
                "outline: 144\" x 120\"\nceiling: {{low: {low}, high: 120\", rises along: width, low at: A}}"
            ))
            .opening("hole", "{takes: range, wall: A, at: 40\", width: 30\", depth: 25\", counter height: 36\"}")
            .selection("selection: Range\nkind: range\nplace: hole", "size: {width: 30\", height: 36\"}")
    };
    sloped("60\"").finds_one();
    sloped("70\"").stays_silent();
}

/// A low ceiling burns unless its field says otherwise, level or sloping.
#[test]
fn a_low_ceiling_counts_as_burning_until_its_material_says_otherwise() {
    let under = |ceiling: &str| range("nothing", "").room(&format!("ceiling: {{{ceiling}}}"));
    under("height: 64\"")
        .finds("the ceiling is 28\" (711 mm) above the cooking surface of `Range`, 2\" (51 mm) less than the 30\" (762 mm); nobody says whether it burns, and so it counts as burning")
        .remedies("say whether it burns: `material` (`burns`, `shielded`, `does not burn`) of the room's `ceiling`, beside its height; where it does, raise what is above, shield it as the code says, or fit a hood that is wide enough");
    under("height: 64\", material: burns").finds_one();
    under("height: 64\", material: does not burn").stays_silent();
    under("height: 59\", material: does not burn").finds_one();
    under("height: 66\"").stays_silent();
    range("nothing", "").room("ceiling: 64\"").finds_one();
}

/// The trim under a window's sill is what is nearest.
#[test]
fn a_window_s_casing_hangs_below_its_sill() {
    let window = |fields: &str| {
        planned(&format!(
            "windows: {{yard: {{wall: A, at: 60\", width: 20\", height: 30\", opens: fixed, {fields}}}}}\n"
        ))
    };
    window("sill: 67\"").stays_silent();
    window("sill: 67\", casing: 3 1/2\"").finds_one();
    window("sill: 67\", casing: 3 1/2\", material: does not burn").stays_silent();
}

/// What can burn is asked about everywhere; whose code the figure is of is said where that code counts.
#[test]
fn the_code_of_another_country_is_not_cited() {
    let source = |country: &str| {
        let book = format!("title: Trial\nclient: Nobody\ncurrency: EUR\nunits: metric\ncountry: {country}\n");
        let found = Trial::of("clear/above-cooktop")
            .file("book.yaml", book)
            .opening(
                "hob",
                "{takes: cooktop, counter height: 900 mm, above: {what: shelf, height: 1300 mm, material: burns}}",
            )
            .selection("selection: Hob\nkind: cooktop\nplace: hob", "")
            .finds_one();
        found.findings()[0].source.clone()
    };
    assert!(source("US").contains("IRC"));
    assert_eq!(source("ES"), "common practice; no code of this country is at hand");
}

/// A cooker in a chimney breast: its opening ends over it, whatever else is written to be above.
#[test]
fn the_top_of_its_own_opening_is_above_it() {
    let breast = |opening: &str| {
        Trial::of("clear/above-cooktop")
            .opening("breast", &format!("{{takes: range, counter height: 36\", {opening}}}"))
            .selection("selection: Range\nkind: range\nplace: breast", "size: {width: 36\", height: 36\"}")
    };
    breast("height: [66\", 52\", 66\"]")
        .finds("the top of the opening `breast` is 16\" (406 mm) above the cooking surface of `Range`, 14\" (356 mm) less than the 30\" (762 mm)")
        .weighs("query")
        .cautions();
    let hood = "above: {what: hood, height: 66\", material: does not burn}";
    breast(&format!("height: 52\", {hood}")).finds_one();
    breast(&format!("height: 68\", {hood}")).stays_silent();
    breast(&format!("height: 36\", {hood}")).stays_silent();
    breast(&format!("height: 37\", {hood}")).stays_silent();
    breast("height: 62\", above: {what: brick lintel, height: 62\", material: does not burn}").stays_silent();
}
