//! Trials of the rule on gas.

use crate::assess::rules::trial::Trial;

fn range(there: &str, needs: &str) -> Trial {
    Trial::of("service/gas")
        .opening("hole", &format!("{{takes: range, service: {{gas: '{there}'}}}}"))
        .selection("selection: Range\nkind: range\nplace: hole", &format!("fit: {{needs: {{gas: '{needs}'}}}}"))
}

/// Source: check values IR-25/26, IR-33: 120 cubic feet an hour at 40 ft: 1/2" carries 81, 3/4" carries 170.
#[test]
fn a_branch_that_carries_too_little_stops_and_the_size_that_would_do_is_named() {
    range("natural gas, 1/2\" pipe, 40 ft", "natural gas, 120000 Btu/h")
        .finds("`Range` takes 120000 Btu/h, and the branch carries 81000 Btu/h")
        .weighs("stop")
        .cautions()
        .remedies("have a licensed trade run 3/4\" (19 mm) pipe at least, by their own reckoning of the whole system");
    range("natural gas, 3/4\" pipe, 40 ft", "natural gas, 120000 Btu/h").stays_silent();
    range("natural gas, 1/2\" pipe, 45 ft", "natural gas, 73000 Btu/h").finds_one();
    range("natural gas, 1/2\" pipe, 45 ft", "natural gas, 72000 Btu/h").stays_silent();
}

/// Source: the maker's sheet; what a branch carries is reckoned by a licensed trade.
#[test]
fn a_branch_that_is_smaller_than_the_sheet_names_is_asked_about() {
    range("natural gas, 3/8\" branch, carries 70000 Btu/h", "natural gas, 1/2\", 60000 Btu/h")
        .finds("the sheet of `Range` asks for a gas pipe of 1/2\" (12.7 mm), and the branch is one of 3/8\" (9.5 mm)")
        .weighs("query")
        .cautions();
    range("natural gas, 3/4\" branch, carries 70000 Btu/h", "natural gas, 1\", 60000 Btu/h").finds_one();
    range("natural gas, 1/2\" branch, carries 70000 Btu/h", "natural gas, 1/2\", 60000 Btu/h").stays_silent();
    range("natural gas, 1/2\" branch, carries 70000 Btu/h", "natural gas, DN 15, 60000 Btu/h").stays_silent();
    range("natural gas, carries 70000 Btu/h", "natural gas, 1/2\", 60000 Btu/h").stays_silent();
}

/// Source: trade reports F-47 (a range for the wrong gas); facts.md, law 4.
#[test]
fn which_gas_it_is_is_asked_where_one_side_alone_says_it() {
    range("LPG, carries 70000 Btu/h", "mains gas, 51000 Btu/h").finds_one().weighs("stop").cautions();
    range("mains gas, carries 70000 Btu/h", "LPG, 51000 Btu/h").finds_one().weighs("stop");
    range("propane, carries 70000 Btu/h", "51000 Btu/h")
        .finds("there is propane or butane at the opening `hole`, and nobody says for which gas `Range` is made")
        .weighs("query")
        .cautions();
    range("town gas, carries 70000 Btu/h", "natural gas, 51000 Btu/h")
        .finds("`Range` is made for natural gas, and nobody says which gas there is at the opening `hole`")
        .weighs("query");
    range("natural gas, carries 70000 Btu/h", "51000 Btu/h").stays_silent();
}

#[test]
fn what_burns_gas_wants_gas_though_its_sheet_s_words_are_not_written() {
    let burns = |name: &str, lines: &str, service: &str| {
        Trial::of("service/gas")
            .opening("hole", &format!("{{takes: range, service: {{{service}}}}}"))
            .selection(&format!("selection: {name}\nkind: range\nplace: hole"), lines)
    };
    burns("Range", "fuel: gas", "power: 120 V 15 A")
        .finds("`Range` burns gas, and nothing is told of it at the opening `hole`")
        .weighs("query")
        .cautions();
    burns("Gas range", "", "power: 120 V 15 A").finds_one();
    burns("Range", "fuel: gas", "gas: none").finds_one().weighs("stop");
    burns("Range", "fuel: gas", "gas: 'natural gas, carries 70000 Btu/h'").stays_silent();
    burns("Gas range", "fuel: induction", "power: 240 V 50 A").stays_silent();
    burns("Range", "", "power: 240 V 50 A").stays_silent();
}

/// A point tells where gas comes out, and neither what the branch carries nor what shuts it.
#[test]
fn a_point_alone_is_no_answer_to_what_comes_out_there() {
    let at = |lines: &str| {
        Trial::of("service/gas")
            .opening("hole", &format!("{{takes: range, {lines}}}"))
            .selection("selection: Range\nkind: range\nplace: hole", "fit: {needs: {gas: natural gas 51000 Btu/h}}")
    };
    let point = "service points: {gas: {from left: 12\", height: 3\"}}";
    at(point)
        .finds("`Range` needs gas (natural gas 51000 Btu/h), and at the opening `hole` only the place where it comes out is told")
        .weighs("query")
        .cautions();
    at(&format!("{point}, service: {{gas: 'natural gas, carries 70000 Btu/h, shut-off valve'}}")).stays_silent();
}

/// A branch is sized by what it carries (IFGC 402.3, from memory): where the sheet gives the input and nobody says
/// what the branch carries, that is asked, and a kind alone is no answer.
#[test]
fn what_the_branch_carries_is_asked_for_where_the_sheet_gives_the_input() {
    for (there, needs) in [
        ("natural gas", "natural gas, 51,000 Btu/h"),
        ("yes", "51 kBtu/h"),
        ("natural gas, 1/2\" pipe", "natural gas, 51000 Btu/h"),
        ("gas natural", "gas natural, 11 kW"),
        ("natural gas, 22 mm pipe, 12 m", "natural gas, 11 kW"),
    ] {
        range(there, needs).finds_one().weighs("query").cautions();
    }
    range("natural gas", "natural gas, 51,000 Btu/h").finds(
        "`Range` takes gas (natural gas, 51,000 Btu/h), and nobody says what the branch at the opening `hole` carries",
    );
    for (there, needs) in [
        ("natural gas, branch carries 65 kBtu/h", "natural gas, 51,000 Btu/h"),
        ("natural gas, 1/2\" pipe, 40 ft", "natural gas, 51,000 Btu/h"),
        ("gas natural, 15 kW", "gas natural, 11 kW"),
        ("natural gas", "natural gas"),
    ] {
        range(there, needs).stays_silent();
    }
}

/// Source: 1 Btu (IT) an hour is 0.293 071 W (ISO 31-4, from memory).
#[test]
fn in_a_metric_book_heat_is_told_in_kilowatts() {
    range("natural gas, 10 kW", "natural gas, 11.5 kW")
        .metric()
        .finds("`Range` takes 11.5 kW, and the branch carries 10 kW");
}

/// Source: facts.md, law 4; IFGC 402.4 has tables of their own for copper and corrugated tubing (from memory).
#[test]
fn what_cannot_be_reckoned_is_asked() {
    let branch = "natural gas, carries 65000 Btu/h";
    for needs in [
        "natural gas, see rating plate",
        "natural gas, 15000 + 18000 + 12000 + 9000 burners, oven 30000 Btu/h",
        "natural gas, 2 x 3.5 kW + 2 x 2 kW + 5 kW",
    ] {
        range(branch, needs)
            .finds(&format!("how much gas `Range` takes can't be understood from its sheet's words: `{needs}`"))
            .weighs("query")
            .cautions();
    }
    for needs in ["70K BTUs", "70k Btu/h", "largest burner 18000 Btu/h, total 84000 Btu/h"] {
        range(branch, &format!("natural gas, {needs}")).finds_one().weighs("stop");
    }
    for there in ["1/2\" CSST, 60 ft", "1/2\" copper, 60 ft"] {
        range(&format!("natural gas, {there}"), "natural gas, 62000 Btu/h").finds_one().weighs("query");
    }
    for there in [
        "1/2\" pipe, 40 ft, tees to the dryer and the water heater",
        "carries 120000 Btu/h, 75000 Btu/h of it for the furnace",
        "carries 120000 Btu/h, shared with the furnace",
    ] {
        range(&format!("natural gas, {there}"), "natural gas, 51000 Btu/h")
            .finds("the branch at the opening `hole` serves more than `Range`, and nobody says what it carries for it alone")
            .weighs("query");
    }
    range("natural gas, carries 65000 Btu/h for it alone", "natural gas, 51000 Btu/h").stays_silent();
}

#[test]
fn what_burns_either_gas_or_can_be_converted_is_made_for_both() {
    let there = "natural gas, carries 65000 Btu/h";
    for needs in ["natural gas (LP convertible)", "natural gas or propane", "natural gas; LP kit included", "NG/LP"] {
        range(there, &format!("{needs}, 60000 Btu/h")).stays_silent();
    }
    let tank = "propane tank, carries 65000 Btu/h";
    range(tank, "natural gas or propane, 60000 Btu/h").stays_silent();
    range(tank, "natural gas; LP kit included, 60000 Btu/h").stays_silent();
    range(tank, "natural gas (LP convertible), 60000 Btu/h")
        .finds("`Range` can be converted to propane or butane, and nothing orders the kit")
        .weighs("query")
        .cautions();
    range(tank, "natural gas, not for LP, 60000 Btu/h").finds_one().weighs("stop");
}

/// What comes in bottles is no gas of the main, whatever it is called.
#[test]
fn butane_is_no_natural_gas() {
    for bottled in ["butano", "butane bottle", "GLP", "G30", "bombona"] {
        range(bottled, "gas natural, 9 kW").finds("`Range` is made for natural gas, and there is propane or butane");
        range(bottled, "GLP").stays_silent();
    }
    range("G20, 15 kW", "natural gas, 9 kW").stays_silent();
    range("G20, 15 kW", "butane, 9 kW").finds_one();
}

/// Source: check values IR-35: 60 000 Btu/h are 60 cubic feet at 1000 Btu, 54.5 at 1100.
#[test]
fn the_utility_s_heating_value_counts_where_the_book_gives_it() {
    range("natural gas, 1/2\" pipe, 80 ft", "natural gas, 60000 Btu/h").finds_one();
    range("natural gas, 1/2\" pipe, 80 ft", "natural gas, 60000 Btu/h")
        .book("house: {heating value: 1100}")
        .stays_silent();
}

/// Source: trade reports F-47: wrong gas type; a kit is needed for LP.
#[test]
fn a_range_for_natural_gas_on_propane_wants_its_kit_ordered() {
    let propane = |more: &str| {
        Trial::of("service/gas")
            .opening("hole", "{takes: range, service: {gas: 'propane tank, branch carries 65000 Btu/h'}}")
            .selection(
                "selection: Range\nkind: range\nplace: hole",
                &format!("fit: {{needs: {{gas: 'natural gas, 50000 Btu/h'}}}}\n{more}"),
            )
    };
    propane("").finds("`Range` is made for natural gas, and there is propane or butane").weighs("stop");
    propane("accessories: [{name: LP conversion kit}]").stays_silent();
}
