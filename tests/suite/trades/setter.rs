//! The setter's sheet.

use super::workshop::{cocina, kitchen};

const TILE: &str = "selection: Wall tile\nkind: tile\ntag: K-11\nmaker: Kilnessy\nmodel: HC-04\nfinish: glazed\n\
                    face size: 4\" x 4\"\nthickness: 3/8\"\njoint: 1/16\"\ngrout: Ombrick 09 bone\n\
                    edge trim: glazed edge pieces, 22 ft\npattern: stacked\nquantity: 80 sq ft\nprice: 24.57\ncost: 18.23\n";

const LAID: &str = "laid: {area: 72 sq ft, waste: 10 %, runs: long side level, starts: centred on the window, bed: 3/16\", niche: over the range}\n";

#[test]
fn what_decides_how_tile_is_laid_stands_on_the_sheet() {
    let sheet = kitchen("ceiling: 8' 1\"\nfloor build-up: 3/4\"\n", &format!("{TILE}{LAID}")).sheet("setter");
    let facts = [
        ("Face size", "4″ × 4″ 102 mm × 102 mm"),
        ("Thickness", "3/8″ 9.5 mm"),
        ("Pattern", "stacked"),
        ("Direction", "long side level"),
        ("Starts at", "centred on the window"),
        ("Joint", "1/16″ 1.6 mm"),
        ("Grout", "Ombrick 09 bone"),
        ("Edge trim", "glazed edge pieces, 22 ft"),
        ("Niche", "over the range"),
        ("Bed below", "3/16″ 4.8 mm"),
        ("Waste counted", "10 %"),
        ("Quantity", "80 sq ft"),
        ("Heights", "from the finished floor: 3/4″ 19 mm still to be laid"),
        ("Office", "555 0188"),
    ];
    for (name, value) in facts {
        assert_eq!(sheet.fact(name), value, "{name}");
    }
    sheet.says(&["K-11 Wall tile", "Chosen: Kilnessy HC-04", "72 sq ft", "Initials", "Waiting"]);
    sheet.is_silent_of(&["not known yet", "24.57", "18.23", "1,965", "USD"]);
}

#[test]
fn what_nobody_knows_is_said_and_never_left_blank() {
    let sheet = kitchen("", TILE).sheet("setter");
    for name in ["Direction", "Starts at", "Bed below", "Area to cover"] {
        assert_eq!(sheet.fact(name), "not known yet", "{name}");
    }
    assert_eq!(sheet.fact("Niche"), "", "a niche is asked of nobody who has none");
}

/// Of two that may still be chosen only what both have in common is built from.
#[test]
fn what_is_not_chosen_says_what_that_leaves_open() {
    let two = "options:\n  - {id: cream, name: Cream, colour: cream}\n  - {id: sage, name: Sage, colour: sage, joint: 1/8\"}\n";
    let tile = TILE.replace("joint: 1/16\"\n", "");
    let open = kitchen("", &format!("{tile}{LAID}{two}")).sheet("setter");
    open.says(&["Not chosen yet, between Cream and Sage.", "That leaves open: colour and joint.", "4″ × 4″"]);
    assert_eq!((open.fact("Joint"), open.fact("Colour")), (String::new(), String::new()));
    let chosen = kitchen("", &format!("{tile}{LAID}{two}chosen: sage\n")).sheet("setter");
    chosen.says(&["Chosen: Sage."]);
    chosen.is_silent_of(&["Not chosen yet", "leaves open"]);
    assert_eq!((chosen.fact("Joint"), chosen.fact("Colour")), ("1/8″ 3.2 mm".into(), "sage".into()));
}

/// Dust of cut tile harms lungs: the caution stands whatever somebody let stand.
#[test]
fn a_caution_is_printed_whatever_was_waived() {
    let waived = "waive: [{rule: complete/field, because: it is on the sample, by: Ines, on: 2027-01-12}]\n";
    for waive in ["", waived] {
        kitchen("", &format!("{TILE}{LAID}{waive}")).sheet("setter").says(&["dust that harms lungs", "stop and call"]);
    }
}

#[test]
fn a_room_with_nothing_to_lay_has_no_sheet_and_one_with_it_is_linked() {
    let with = kitchen("", TILE);
    assert!(with.has("setter") && with.index().contains("trades/kitchen/setter.html"));
    let without = kitchen("", "selection: Walls\nkind: paint\nmaker: Pellowash\ncolour: chalk\n");
    assert!(!without.has("setter") && !without.index().contains("trades/"));
}

/// The mark is of what is built from: a price moves nothing, another joint does.
#[test]
fn the_mark_follows_what_is_laid_and_no_price() {
    let mark = |text: &str| kitchen("", text).sheet("setter").mark();
    let was = mark(TILE);
    assert_eq!(was.len(), 9);
    assert_eq!(mark(&TILE.replace("24.57", "30.00")), was);
    assert_ne!(mark(&TILE.replace("joint: 1/16\"", "joint: 1/8\"")), was);
    assert_ne!(mark(&format!("{TILE}{LAID}")), was);
}

#[test]
fn a_metric_household_reads_it_in_spanish() {
    let tile = TILE.replace("4\" x 4\"", "100 mm x 100 mm").replace("3/8\"", "10 mm").replace("1/16\"", "2 mm");
    let sheet = cocina("", &tile.replace("80 sq ft", "7.5 m2")).sheet("setter");
    assert_eq!((sheet.fact("Dirección"), sheet.fact("Junta")), ("aún no se sabe".into(), "2 mm".into()));
    sheet.says(&["Azulejo y piso: Kitchen", "Elegido: Kilnessy HC-04", "100 mm × 100 mm", "Iniciales"]);
    sheet.is_silent_of(&["″", "24.57", "not known"]);
}
