//! A sheet's mark covers what is built from it, and no more.

use crate::assess::built;
use crate::assess::change_order::built_otherwise;
use crate::assess::rules::trial::Trial;
use crate::ledger::IssuedSheet;
use crate::shown::{SheetOf, built_changes, is_built_as};
use crate::site::plan::Plans;

const OPENING: &str = "{takes: dishwasher, width: 600 mm, height: 820 mm, measured: {on: 2027-01-11, by: Teo}, service: {power: 230 V 10 A}, service points: {power: {from left: 80 mm, height: 120 mm}}, landing: {left: 600 mm}, note: probe first}";
const MACHINE: &str = "selection: Dishwasher\nkind: dishwasher\nplace: machine\nmodel: D 4\nprice: 900.00\nfit: {sheet: {name: D 4 built in, revision: C}, opening: {width: 600 mm}, air: {back: 20 mm}, needs: {power: 230 V 10 A}}";

fn issued(opening: &str, machine: &str, room: &str) -> IssuedSheet {
    let book = Trial::of("approve/ledger")
        .book("currency: EUR\nunits: metric")
        .room(room)
        .opening("machine", opening)
        .selection(machine, "")
        .read();
    built(&book, &Plans::of(&book)).into_iter().next().unwrap()
}

#[test]
fn whatever_is_built_from_changes_the_mark_of_its_sheet_and_is_told() {
    let before = issued(OPENING, MACHINE, "");
    let changes = [
        ("width: 600 mm, height", "width: 597 mm, height", "width from 600 mm to 597 mm"),
        ("measured: {on: 2027-01-11, by: Teo}, ", "", "measured gone, which was yes"),
        ("{power: 230 V 10 A}", "{power: 230 V 16 A}", "service power from 230 V 10 A to 230 V 16 A"),
        ("from left: 80 mm", "from left: 60 mm", "service points power from left from 80 mm to 60 mm"),
        ("probe first", "cut last", "note from probe first to cut last"),
    ];
    for (old, new, told) in changes {
        let after = issued(&OPENING.replace(old, new), MACHINE, "");
        assert_ne!(before.mark, after.mark, "{old}");
        assert_eq!(told_of(&before, &after), [told], "{old}");
    }
    let of_sheet = [
        ("revision: C", "revision: D", "Dishwasher (D 4): fit sheet revision from C to D"),
        (
            "opening: {width: 600 mm}",
            "opening: {width: 602 mm}",
            "Dishwasher (D 4): fit opening width from 600 mm to 602 mm",
        ),
        ("air: {back: 20 mm}", "air: {back: 40 mm}", "Dishwasher (D 4): fit air back clear from 20 mm to 40 mm"),
    ];
    for (old, new, told) in of_sheet {
        let after = issued(OPENING, &MACHINE.replace(old, new), "");
        assert_eq!(told_of(&before, &after), [told], "{old}");
    }
    let laid = issued(OPENING, MACHINE, "floor build-up: 15 mm");
    assert_eq!(told_of(&before, &laid), ["around height from 820 mm to 805 mm", "floor build-up new: 15 mm"]);
    let model = issued(OPENING, &MACHINE.replace("D 4\nprice", "D 5\nprice"), "");
    let name = "Dishwasher (D 5): name from Dishwasher (D 4) to Dishwasher (D 5)";
    assert_eq!(told_of(&before, &model), ["Dishwasher (D 5): model from D 4 to D 5", name]);
    let gone = issued(OPENING, &MACHINE.replace("place: machine\n", ""), "");
    assert_eq!(told_of(&before, &gone), ["option gone, which was Dishwasher (D 4)"]);
}

/// What a thing costs, and what is for the checks alone, is on no sheet of those who build.
#[test]
fn a_price_and_a_plan_change_no_sheet() {
    let before = issued(OPENING, MACHINE, "");
    for (old, new) in [("900.00", "990.00"), ("kind: dishwasher", "kind: dishwasher\nsupplier: Ardwin")] {
        assert_eq!(before, issued(OPENING, &MACHINE.replace(old, new), ""), "{old}");
    }
    assert_eq!(before, issued(&OPENING.replace("left: 600 mm", "left: 450 mm"), MACHINE, ""));
}

fn told_of(before: &IssuedSheet, after: &IssuedSheet) -> Vec<String> {
    let changes = built_changes(&before.content, &after.content).into_iter();
    changes.map(|change| change.in_units(crate::units::System::MetricOnly).words().to_string()).collect()
}

/// Who measured and when is printed and not built from: a second measurement that finds the same turns no sheet.
#[test]
fn the_same_figures_of_another_day_make_no_other_sheet() {
    let all = |measured: &str| {
        let book = Trial::of("approve/ledger")
            .book("currency: EUR\nunits: metric")
            .room("runs: {row: {wall: A, depth: 600 mm, parts: [{opening: machine}, {cabinet: pots, width: 600 mm}]}}")
            .opening("machine", &OPENING.replace("{on: 2027-01-11, by: Teo}", measured))
            .selection(MACHINE, "")
            .selection("selection: Cabinets\nkind: cabinet\nfinish: oak", "")
            .read();
        built(&book, &Plans::of(&book))
    };
    let before = all("{on: 2027-01-11, by: Teo}");
    assert!(before.iter().any(|sheet| sheet.trade.as_deref() == Some("joiner")), "it has a joiner's sheet");
    for measured in ["{on: 2027-02-01, by: Teo}", "{on: 2027-01-11, by: Teo, again: {on: 2027-01-18, by: Noor}}"] {
        assert_eq!(before, all(measured), "{measured}");
    }
}

/// A sheet that was issued while its mark was of who measured is judged by its figures alone.
#[test]
fn who_measured_as_an_older_sheet_holds_it_makes_no_other_sheet() {
    let now = issued(OPENING, MACHINE, "");
    let older = |measured: serde_json::Value| {
        let mut content = now.content.clone();
        content["measured"] = measured;
        IssuedSheet { mark: crate::shown::of(&content), content, ..now.clone() }
    };
    let one = older(serde_json::json!({"on": "2027-01-11", "by": "Teo"}));
    let other = older(serde_json::json!({"on": "2027-02-01", "by": "Noor", "with": "laser"}));
    for (was, is) in [(&one, &now), (&now, &one), (&one, &other)] {
        assert!(is_built_as(was, is));
        assert_eq!(told_of(was, is), [""; 0]);
    }
    let list = older(serde_json::json!([{"on": "2027-01-11", "by": "Teo"}]));
    let mut without = now.content.clone();
    without.as_object_mut().unwrap().remove("measured");
    let of_trade = IssuedSheet { mark: crate::shown::of(&without), content: without, ..now.clone() };
    assert!(is_built_as(&list, &of_trade), "a trade's sheet held a list of all openings of its room");
}

/// What the sheet shows from elsewhere in the room is of its mark as well.
#[test]
fn what_stands_around_an_opening_changes_the_mark_of_its_sheet() {
    let row = "runs: {sink wall: {wall: A, depth: 600 mm, counter: {depth: 640 mm, height: 910 mm}, parts: [{cabinet: sink base, width: 800 mm}, {opening: machine}]}}\nway in: [{name: hall, width: 900 mm, height: 2000 mm}]";
    let machine = MACHINE.replace("air: {back: 20 mm}", "carton: 700 mm x 900 mm x 700 mm");
    let before = issued(OPENING, &machine, row);
    let changes = [
        ("height: 910 mm", "height: 900 mm", "around counter height from 910 mm to 900 mm"),
        ("depth: 640 mm", "depth: 620 mm", "around counter depth from 640 mm to 620 mm"),
        ("cabinet: sink base", "cabinet: bins", "around left name from sink base to bins"),
        ("name: hall, width: 900 mm", "name: hall, width: 860 mm", ""),
    ];
    for (old, new, told) in changes {
        let after = issued(OPENING, &machine, &row.replace(old, new));
        assert_ne!(before.mark, after.mark, "{old}");
        let is = told_of(&before, &after);
        assert!(is.len() == 1 && (told.is_empty() || is[0] == told), "{is:?}");
    }
}

/// A sheet that was issued before its mark was of the room around it is judged by what it says.
#[test]
fn a_sheet_of_before_is_judged_by_what_it_says() {
    let now = issued(OPENING, MACHINE, "");
    let mut content = now.content.clone();
    content.as_object_mut().unwrap().remove("around").expect("said now");
    let before = IssuedSheet { mark: crate::shown::of(&content), content, ..now.clone() };
    assert!(is_built_as(&before, &now) && is_built_as(&now, &before));
    assert_eq!(told_of(&before, &now), [""; 0]);
    let measured = issued(&OPENING.replace("600 mm, height", "597 mm, height"), MACHINE, "");
    assert!(!is_built_as(&before, &measured));
    assert_eq!(told_of(&before, &measured), ["width from 600 mm to 597 mm"]);
}

/// A content without what a newer release holds besides is judged by what it knows of; one of this release is not.
#[test]
fn what_a_newer_release_shows_more_makes_no_other_sheet() {
    let flush = MACHINE.replace("model: D 4", "model: D 4\nset: flush\npanel: {thickness: 19 mm}");
    let now = issued(OPENING, &flush, "");
    let known_of = |content: &serde_json::Value| content["things"][0].get("set").is_some();
    assert!(known_of(&now.content) && now.content["sheet version"] == "2", "{}", now.content);
    let older = |with_version: bool| {
        let mut content = issued(OPENING, MACHINE, "").content;
        if !with_version {
            content.as_object_mut().unwrap().remove("sheet version");
        }
        IssuedSheet { mark: crate::shown::of(&content), content, ..now.clone() }
    };
    let before = older(false);
    assert!(is_built_as(&before, &now) && is_built_as(&now, &before));
    assert_eq!(told_of(&before, &now), [""; 0]);
    assert!(!is_built_as(&older(true), &now));
    let told = ["Dishwasher (D 4): panel thickness new: 19 mm", "Dishwasher (D 4): set new: flush"];
    assert_eq!(told_of(&older(true), &now), told);
    let measured = issued(&OPENING.replace("600 mm, height", "597 mm, height"), &flush, "");
    assert_eq!(told_of(&before, &measured), ["width from 600 mm to 597 mm"]);
}

/// The plan of a room is a sheet of its own; an issue of before says nothing of it.
#[test]
fn what_a_plan_draws_is_of_its_mark() {
    const ROOM: &str = "outline: 3 m x 2 m\ndoors: {hall: {wall: A, at: 300 mm, width: 800 mm, hinge: left, swings: in}}\n\
        windows: {yard: {wall: B, at: 200 mm, width: 600 mm, sill: 900 mm, height: 800 mm}}\n\
        fixtures: {bench: {wall: C, centre: 350 mm, width: 500 mm, depth: 400 mm, height: 450 mm}}";
    let sheets = |room: &str| {
        let book = Trial::of("approve/ledger").book("units: metric").room(room).read();
        built(&book, &Plans::of(&book))
    };
    let before = sheets(ROOM);
    assert_eq!(SheetOf::of(&before[0]), SheetOf::Plan);
    let changes = [
        ("hinge: left", "hinge: right", "hall: swings in on from left to right"),
        ("swings: in", "slides: true", "hall: leaf gone, which was 800 mm"),
        ("at: 200 mm", "at: 250 mm", "yard: left side from 200 mm to 250 mm"),
        ("depth: 400 mm", "depth: 420 mm", "bench: front from 400 mm to 420 mm"),
        ("3 m x 2 m", "3 m x 2.1 m", "B: length from 2000 mm to 2100 mm"),
        ("bench: {", "stool: {", "in plan gone, which was bench"),
    ];
    for (old, new, told) in changes {
        let after = sheets(&ROOM.replace(old, new));
        let changes = told_of(&before[0], &after[0]);
        assert!(changes.contains(&told.to_string()), "{old}: {changes:?}");
        let otherwise = built_otherwise(&before, &after);
        assert_eq!(otherwise.len(), 1, "{old}");
        assert_eq!(otherwise[0].of, SheetOf::Plan, "{old}");
    }
    let opening = format!("{ROOM}\nopenings: {{niche: {{takes: item, width: 600 mm}}}}");
    let now = sheets(&opening);
    let mut of_before = now.clone();
    of_before.retain(|sheet| SheetOf::of(sheet) != SheetOf::Plan);
    for sheet in &mut of_before {
        sheet.content.as_object_mut().unwrap().remove("sheet version");
    }
    assert!(built_otherwise(&of_before, &now).is_empty(), "it says nothing of plans");
}

/// An opening of which next to nothing is known says so of the room around it too: otherwise its issue would pass for
/// one of an earlier release, which says nothing of trades either.
#[test]
fn an_opening_of_which_nothing_is_known_is_no_sheet_of_before() {
    let machine = "selection: Dishwasher\nkind: dishwasher\nplace: machine";
    let bare = issued("{takes: dishwasher}", machine, "");
    assert!(bare.content.get("around").is_some(), "{}", bare.content);
    assert!(!crate::shown::is_before_trades(std::slice::from_ref(&bare)));
    let row = "runs: {sink wall: {wall: A, counter: {height: 910 mm}, parts: [{opening: machine}]}}";
    let beside = issued("{takes: dishwasher}", machine, row);
    assert!(!is_built_as(&bare, &beside), "a counter came beside it");
}
