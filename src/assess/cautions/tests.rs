//! Kind × what feeds it or what it is made of → exactly these cautions.

use super::*;
use crate::assess::rules::trial::Trial;
use Hazard::{Air, Cords, Dust, Fall, Gas, Glass, Heat, Power as Electricity, Stone, Tipping, Water, Weight as Heavy};

fn due(kind: &str, option: &str, service: &str) -> Vec<Hazard> {
    let book = Trial::of("fit/width")
        .opening("hole", &format!("{{takes: {kind}{service}}}"))
        .selection(&format!("selection: It\nkind: {kind}\nplace: hole"), option)
        .read();
    let room = &book.rooms[0];
    of_selection(room, &room.selections[0])
}

const ELECTRIC: &str = "fit: {needs: {power: 240 V 40 A 6-50}}";

#[test]
fn the_word_for_a_kind_is_a_closed_one_and_tells_its_fuel() {
    assert_eq!(due("gas cooktop", ELECTRIC, ""), [Gas, Electricity, Heat]);
    assert_eq!(due("dual fuel range", ELECTRIC, ""), [Gas, Electricity, Heat, Heavy, Tipping]);
    assert_eq!(due("induction hob", "", ""), [Electricity, Heat]);
    assert_eq!(due("cooktop", "fuel: dual fuel", ""), [Gas, Electricity, Heat]);
}

#[test]
fn cautions_follow_from_what_a_thing_is_and_what_feeds_it() {
    let table: &[(&str, &str, &[Hazard])] = &[
        // Fuel: said, asked for by the sheet, or not known.
        ("cooktop", "", &[Gas, Electricity, Heat]),
        ("cooktop", "name: Induction hob", &[Gas, Electricity, Heat]),
        ("cooktop", "fuel: induction", &[Electricity, Heat]),
        ("cooktop", "fuel: electric", &[Electricity, Heat]),
        ("cooktop", "fuel: gas", &[Gas, Electricity, Heat]),
        ("cooktop", ELECTRIC, &[Electricity, Heat]),
        ("cooktop", "fit: {needs: {power: 230 V 7.4 kW}}", &[Electricity, Heat]),
        ("cooktop", "fit: {needs: {power: 120 V 15 A 5-15}}", &[Gas, Electricity, Heat]),
        ("cooktop", "fit: {needs: {power: 240 V 40 A, gas: natural gas}}", &[Gas, Electricity, Heat]),
        ("cooktop", "fuel: induction\nfit: {needs: {gas: natural gas}}", &[Gas, Electricity, Heat]),
        ("range", ELECTRIC, &[Electricity, Heat, Heavy, Tipping]),
        ("range", "", &[Gas, Electricity, Heat, Heavy, Tipping]),
        ("dryer", "fit: {needs: {power: 240 V 30 A 14-30}}", &[Electricity, Heat, Air, Heavy, Tipping]),
        ("dryer", "fit: {needs: {gas: natural gas}}", &[Gas, Electricity, Heat, Air, Heavy, Tipping]),
        ("wall oven", "", &[Electricity, Heat, Heavy]),
        ("wall oven", "fit: {needs: {gas: natural gas}}", &[Gas, Electricity, Heat, Heavy]),
        // Services.
        ("refrigerator", "", &[Electricity, Heavy, Tipping]),
        ("refrigerator", "fit: {needs: {water: 1/4\" with shut-off}}", &[Electricity, Heavy, Tipping, Water]),
        ("mirror cabinet", "", &[Glass]),
        ("mirror cabinet", "fit: {needs: {power: 120 V}}", &[Electricity, Glass]),
        ("hood", "", &[Electricity, Heat, Air]),
        ("hood", "fit: {weight: 62 lb}", &[Electricity, Heat, Air, Heavy]),
        ("tap", "", &[Water]),
        // Material and glass.
        ("counter", "", &[Heavy, Stone]),
        ("counter", "top: {material: stone}", &[Heavy, Stone]),
        ("counter", "top: {material: quartz}", &[Heavy, Stone]),
        ("counter", "name: Oak board\ntop: {material: wood}", &[Heavy]),
        ("counter", "top: {material: laminate}\nfit: {weight: 20 lb}", &[]),
        ("cabinet", "glass: tempered", &[Heavy, Tipping, Glass]),
        // Weight and height.
        ("cabinet", "", &[Heavy, Tipping]),
        ("cabinet", "size: {height: 90\"}", &[Heavy, Tipping]),
        ("cabinet", "size: {height: 20\"}", &[Heavy]),
        ("cabinet", "name: Cutlery tray\nsize: {height: 2 1/2\"}", &[]),
        ("cabinet", "size: {height: 2 1/2\"}\nfit: {weight: 60 lb}", &[Heavy]),
        ("microwave", "fit: {weight: 30 lb}", &[Electricity]),
        ("microwave", "fit: {weight: 36 lb}", &[Electricity, Heavy]),
        ("knob", "", &[]),
        ("pendant", "", &[Electricity]),
    ];
    for (kind, option, wanted) in table {
        assert_eq!(due(kind, option, ""), *wanted, "{kind}: {option}");
    }
}

#[test]
fn what_is_held_on_to_and_what_hangs_within_a_childs_reach() {
    let table = [
        ("shower seat", vec![Fall]),
        ("wardrobe", vec![Heavy, Tipping]),
        ("heated towel rail", vec![Electricity, Heat, Water]),
        ("underfloor heating", vec![Electricity, Heat, Water]),
        ("LED strip", vec![Electricity]),
        ("grab bar", vec![Fall]),
        ("towel bar", vec![]),
        ("roller shade", vec![Cords]),
    ];
    for (kind, wanted) in table {
        assert_eq!(due(kind, "", ""), wanted, "{kind}");
    }
}

/// Power on a sheet may turn the pump of a floor or warm a rail that the heating warms as well.
#[test]
fn water_in_what_warms_is_ruled_out_only_where_that_is_said() {
    let wet = vec![Electricity, Heat, Water];
    for kind in ["heated towel rail", "underfloor heating"] {
        assert_eq!(due(kind, "fit: {needs: {power: 230 V}}", ""), wet, "{kind}");
        assert_eq!(due(kind, "fit: {needs: {power: 230 V, water: flow and return of the heating}}", ""), wet, "{kind}");
        assert_eq!(due(kind, "fit: {needs: {power: 230 V, water: none}}", ""), [Electricity, Heat], "{kind}");
        assert_eq!(due(kind, "fuel: electric\nfit: {needs: {power: 230 V}}", ""), [Electricity, Heat], "{kind}");
    }
    let fed = "fuel: electric\nfit: {needs: {water: 1/2\" tails}}";
    assert_eq!(due("heated towel rail", fed, ""), wet);
}

/// Source: OSHA 29 CFR 1926.1153 (silica in what is cut), from memory.
#[test]
fn wherever_tile_is_laid_its_dust_is_told() {
    for option in ["", "face size: 3\" x 6\"\nthickness: 3/8\"", "name: Zellon glaze\nlaid: {edges: rectified}"] {
        assert_eq!(due("tile", option, ""), [Dust], "{option}");
    }
    assert_eq!(due("floor", "", ""), []);
}

/// A gas branch at the place may feed whatever goes there.
#[test]
fn gas_that_is_laid_to_a_place_is_due_unless_the_thing_is_said_to_take_none() {
    let laid = ", service: {gas: natural gas}";
    assert!(due("range", ELECTRIC, laid).contains(&Gas));
    assert!(!due("range", "fuel: electric", laid).contains(&Gas));
}

#[test]
fn what_any_option_may_do_is_due_while_the_choice_is_open() {
    let options = "options:\n  - {id: a, fuel: induction}\n  - {id: b, fuel: gas}";
    assert!(due("cooktop", options, "").contains(&Gas));
    assert!(!due("cooktop", &format!("chosen: a\n{options}"), "").contains(&Gas));
}

/// Every kind keeps all that is due of it where nothing is said.
#[test]
fn of_a_thing_of_which_nothing_is_said_everything_of_its_kind_is_due() {
    for kind in crate::vocabulary::Kind::ALL {
        let mut wanted = kind.hazards().to_vec();
        wanted.sort_unstable();
        assert_eq!(due(kind.name(), "", ""), wanted, "{kind}");
    }
}

/// Cautions of findings are those of the things that they are about.
#[test]
fn a_finding_cautions_of_what_its_thing_can_do() {
    let carton = |weight: &str| {
        let found = Trial::of("fit/way-in")
            .book("way in: [{name: porch door, width: 30\", height: 79\"}]")
            .opening("hole", "{takes: microwave}")
            .selection(
                "selection: It\nkind: microwave\nplace: hole",
                &format!("fit: {{carton: 40\" x 40\" x 40\"{weight}}}"),
            )
            .finds_one();
        found.findings()[0].caution
    };
    assert!(carton("").is_some());
    assert!(carton(", weight: 80 lb").is_some());
    assert_eq!(carton(", weight: 12 lb"), None);
}

#[test]
fn each_caution_is_said_once_and_says_one_thing() {
    let all = [Gas, Electricity, Heat, Air, Heavy, Tipping, Fall, Cords, Glass, Stone, Dust, Water];
    let mut words: Vec<&str> = all.iter().map(|hazard| hazard.caution()).collect();
    words.sort_unstable();
    words.dedup();
    assert_eq!(words.len(), all.len());
    assert!(!Heavy.caution().contains("tip") && Tipping.caution().contains("anti-tip"));
}
