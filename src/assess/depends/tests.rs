//! Tests of what rests on what.

use super::*;
use crate::assess::rules::trial::Trial;
use crate::shown::ChangedField;

/// A kitchen of these selections, each by name and kind; those with an opening have one of their name.
fn kitchen(selections: &[(&str, &str, &str)]) -> Book {
    let mut trial = Trial::of("order/before");
    for (name, kind, more) in selections {
        let has_opening = crate::vocabulary::Kind::named(kind).unwrap().takes_opening();
        let place = if has_opening { format!("place: {}", name.to_lowercase()) } else { String::new() };
        if has_opening {
            trial = trial.opening(&name.to_lowercase(), &format!("{{takes: {kind}}}"));
        }
        trial = trial.selection(&format!("selection: {name}\nkind: {kind}\n{place}\n{more}"), "");
    }
    trial.read()
}

fn rests_on(book: &Book, name: &str) -> Vec<String> {
    let depends = Depends::of(book);
    let (_, selection) = book.selections().find(|(_, selection)| selection.name.value == name).unwrap();
    let told = |ground: &Prerequisite<'_>| format!("{} {}", ground.because.words(), ground.selection.name.value);
    depends.grounds(selection).iter().map(told).collect()
}

/// Source: trade reports section 5, dependency chain 1, 2, 3 and 6.
#[test]
fn kinds_and_places_say_what_rests_on_what() {
    let book = kitchen(&[
        ("Range", "range", ""),
        ("Sink", "sink", ""),
        ("Tap", "tap", ""),
        ("Cabinets", "cabinet", ""),
        ("Counter", "counter", "covers: 40 sq ft"),
        ("Sill", "counter", "covers: 2 sq ft"),
        ("Floor", "floor", ""),
        ("Dishwasher", "panel dishwasher", ""),
    ]);
    assert_eq!(
        rests_on(&book, "Cabinets"),
        ["is built around Range", "is built around Sink", "takes its heights from Floor", "is built around Dishwasher"]
    );
    assert_eq!(rests_on(&book, "Counter"), ["is cut for Sink", "is cut for Tap"]);
    assert_eq!(rests_on(&book, "Sill"), [""; 0]);
    assert_eq!(rests_on(&book, "Dishwasher"), ["takes its heights from Floor"]);
    assert_eq!(rests_on(&book, "Range"), [""; 0]);
}

/// Source: trade reports F-79 (valve and trim of one series), F-89 (glass measured after tile).
#[test]
fn trim_rests_on_its_valve_and_glass_on_the_tile() {
    let book = kitchen(&[
        ("Valve", "tap", "model: VB-2"),
        ("Shower set", "shower set", "valve: VB-2 thermostatic body"),
        ("Wall tile", "tile", ""),
        ("Floor tile", "tile", ""),
        ("Screen", "shower glass", ""),
    ]);
    assert_eq!(rests_on(&book, "Shower set"), ["is the trim of Valve"]);
    assert_eq!(rests_on(&book, "Screen"), ["is measured on Wall tile"]);
}

#[test]
fn an_opening_is_made_for_what_goes_into_it() {
    let book = kitchen(&[("Range", "range", ""), ("Rug", "rug", "")]);
    let room = &book.rooms[0];
    let made_for = made_for(room, &room.openings[0]).map(|selection| selection.name.as_str());
    assert_eq!(made_for, Some("Range"));
}

#[test]
fn a_name_in_the_book_counts_once_and_before_kinds() {
    let book =
        kitchen(&[("Range", "range", ""), ("Cabinets", "cabinet", "depends on: [Range, Rug]"), ("Rug", "rug", "")]);
    assert_eq!(rests_on(&book, "Cabinets"), ["is built around Range", "depends on Rug"]);
}

/// Rugs that rest on each other by these links, in one file as it would be written.
fn rugs(all: usize, on: impl Fn(usize) -> Vec<usize>) -> Book {
    let rug = |number: usize| {
        let on: Vec<String> = on(number).into_iter().map(|other| format!("Rug {other}")).collect();
        format!("- selection: Rug {number}\n  kind: rug\n  depends on: [{}]\n", on.join(", "))
    };
    let list: String = (0..all).map(rug).collect();
    Trial::of("depends/circle").file("rooms/kitchen/rugs.yaml", list).read()
}

/// What was followed is counted: each link once, however long the chain or the circle, and of hundreds that all rest
/// on each other the pairs there are.
#[test]
fn thousands_in_a_chain_and_hundreds_that_rest_on_each_other_are_followed_once() {
    let counted = |book: &Book| {
        let depends = Depends::of(book);
        let links: usize = depends.grounds.values().map(Vec::len).sum();
        let told: Vec<(usize, usize)> =
            depends.circles(book).iter().map(|circle| (circle.way.len(), circle.others)).collect();
        (links, depends.pairs.len(), told)
    };
    const LONG: usize = 4_000;
    let chain = rugs(LONG, |number| (number + 1 < LONG).then_some(number + 1).into_iter().collect());
    assert_eq!(counted(&chain), (LONG - 1, LONG - 1, vec![]));
    let circle = rugs(LONG, |number| vec![(number + 1) % LONG]);
    assert_eq!(counted(&circle), (LONG, LONG, vec![(LONG, 0)]));
    let mutual = rugs(150, |number| (0..150).filter(|other| *other != number).collect());
    assert_eq!(counted(&mutual), (150 * 149, 150 * 149, vec![(2, 148)]));
}

/// What takes its heights from a floor rests on how thick that is and on what it lies, not on its joint.
#[test]
fn a_height_moves_with_what_is_laid_and_with_nothing_else() {
    let touches = |name: &str| Reason::StandsOn.is_touched_by(None, &ChangedField::Fact(name.into()));
    assert!(touches("thickness") && !touches("joint") && !touches("grout"));
    assert!(Reason::StandsOn.is_touched_by(None, &ChangedField::Within("laying".into(), "bed".into())));
    assert!(Reason::StandsOn.is_touched_by(None, &ChangedField::of("model")));
    assert!(Reason::CutFor.is_touched_by(None, &ChangedField::Fact("joint".into())));
}

/// What is built around a thing, cut for it or measured on it goes by its figures; what the book names itself may go by its
/// looks.
#[test]
fn how_a_thing_looks_opens_nothing_that_goes_by_its_figures() {
    let of = |key: &str, value: &str| serde_json::json!({"chosen": "a", "options": [{"id": "a", key: value}]});
    for key in ["finish", "colour"] {
        let (was, is) = (of(key, "white"), of(key, "ivory"));
        for reason in [Reason::Houses, Reason::CutFor, Reason::MeasuredOn] {
            assert_eq!(reason.touched_by(Some(Kind::WallOven), (&was, &is), Some("a")), None, "{key} {reason:?}");
        }
        assert!(Reason::Named.touched_by(None, (&was, &is), Some("a")).is_some(), "{key}");
    }
    for key in ["model", "drilled", "material"] {
        assert!(Reason::CutFor.touched_by(None, (&of(key, "x"), &of(key, "y")), Some("a")).is_some(), "{key}");
    }
}

/// A dishwasher of steel that becomes one for a panel wants a front from the joiner, whatever its finish is called.
#[test]
fn a_finish_of_what_may_have_a_panel_opens_what_is_built_around_it() {
    let of = |key: &str, value: &str| serde_json::json!({"chosen": "a", "options": [{"id": "a", key: value}]});
    let (was, is) = (of("finish", "stainless"), of("finish", "panel ready"));
    let touches = |reason: Reason, kind| reason.touched_by(Some(kind), (&was, &is), Some("a")).is_some();
    for kind in [Kind::Dishwasher, Kind::PanelDishwasher, Kind::Refrigerator, Kind::PanelRefrigerator] {
        assert!(touches(Reason::Houses, kind), "{kind:?}");
        assert!(!touches(Reason::CutFor, kind), "{kind:?}");
        let (was, is) = (of("colour", "white"), of("colour", "ivory"));
        assert_eq!(Reason::Houses.touched_by(Some(kind), (&was, &is), Some("a")), None, "{kind:?}");
    }
    assert!(!touches(Reason::Houses, Kind::WallOven) && !touches(Reason::Houses, Kind::Sink));
}
