//! The fabricator's sheet.

use bookmatch::pipeline;
use bookmatch::shown;
use bookmatch::source::Folder;
use bookmatch::units::Date;

use super::workshop::{Site, cocina, kitchen};
use crate::project::Project;

/// A wall of 12 ft: 66" of cabinets with a sink in the last, the range, 46" more.
const ROOM: &str = "outline: 12' x 9'\nwalls: {A: {name: party wall}}\nruns:\n  range wall:\n    wall: A\n    depth: 24\"\n    counter: {depth: 25 1/2\", height: 36\"}\n    parts: [{cabinet: pots, width: 30\", drawers: 3}, {cabinet: sink base, width: 36\", doors: 2, holds: [sink]}, {opening: range}, {cabinet: last, width: 46\", doors: 2}]\nopenings:\n  range: {takes: range, width: 30\", height: 37\", depth: 25 1/2\"}\n  sink: {takes: sink, width: 33 1/2\", depth: 20\"}\n";

const SINK: &str = "- {selection: Sink, kind: sink, tag: K-15, place: sink, name: Fluted apron, mount: apron front, price: 981.37, fit: {sheet: {name: AF-33 template, revision: \"2\"}}}\n";
const TAP: &str = "- {selection: Tap, kind: tap, tag: K-16, name: Bridge, holes: 2, spread: 8\", hole diameter: 1 3/8\", rear travel: 1 1/2\"}\n";

fn counter(more: &str) -> String {
    format!(
        "- selection: Counter\n  kind: counter\n  tag: K-03\n  name: Green schist\n  finish: honed\n  thickness: 1 1/4\"\n  \
         edge: eased 1/8\"\n  price: 118.53\n  quantity: 40 sq ft\n{more}"
    )
}

const TOP: &str = "  top:\n    material: stone\n    lies on: [range wall]\n    depth: 25 1/2\"\n    overhang: 1 1/2\"\n    supports: {by: brackets}\n    \
                   splash: {height: 4\"}\n    inside corners: 3/8\"\n    layout: signed drawing\n    slab: {number: lot 77, size: 118\" x 63\", usable: 114\" x 58\", count: 2}\n    \
                   pieces: {left: 30\" x 25 1/2\", at the sink: 36\" x 25 1/2\", right: 46\" x 25 1/2\"}\n    \
                   seams: [{at: left of the sink, over: cabinet, on: range wall, from left: 30\"}]\n";

fn sheet(selections: &str) -> Site {
    kitchen(ROOM, selections)
}

#[test]
fn a_counter_stands_there_with_all_that_it_is_cut_by() {
    let site = sheet(&format!("{}{SINK}{TAP}", counter(TOP)));
    let sheet = site.sheet("fabricator");
    let facts = [
        ("Material", "stone"),
        ("Thickness", "1 1/4″ 31.8 mm"),
        ("Edge", "eased 1/8\""),
        ("Overhang", "1 1/2″ 38.1 mm"),
        ("Inside corners", "3/8″ 9.5 mm"),
        ("Last word on seams", "the signed drawing"),
    ];
    for (name, value) in facts {
        assert_eq!(sheet.fact(name), value, "{name}");
    }
    for name in ["Slab", "Supports", "Upstand"] {
        assert!(!sheet.fact(name).is_empty() && sheet.fact(name) != "not known yet", "{name}: {}", sheet.fact(name));
    }
    assert!(sheet.fact("Slab").contains("lot 77"), "{}", sheet.fact("Slab"));
    assert_eq!(sheet.row("at the sink"), ["at the sink", "36″ 914 mm", "25 1/2″ 648 mm"]);
    assert_eq!(sheet.row("left of the sink")[..4], ["left of the sink", "cabinet", "range wall", "30″ 762 mm"]);
    sheet.says(&["K-15 Sink Fluted apron: when it comes is not known yet", "K-15 Sink Fluted apron apron front"]);
    sheet.says(&["Green schist", "AF-33 template, 2", "dust harms lungs", "Initials", "K-16 Tap", "party wall, 48″"]);
    sheet.is_silent_of(&["118.53", "981.37", "USD"]);
}

/// Source: arithmetic: a tap of three holes, each listed, is drilled three times; two options that list one hole ask for it once.
#[test]
fn holes_that_are_alike_are_each_drilled() {
    let hole = "{for: Lav faucet, diameter: 1 1/4\", behind: 2 1/2\"}";
    let drilled = |more: &str| sheet(&format!("{}{SINK}{TAP}", counter(&format!("{TOP}{more}")))).sheet("fabricator");
    let rows = |more: &str| drilled(more).text().matches("Lav faucet").count();
    assert_eq!(rows(&format!("  drilled: [{hole}, {hole}, {hole}]\n")), 3);
    let options =
        format!("  options: [{{id: honed, drilled: [{hole}, {hole}]}}, {{id: polished, drilled: [{hole}, {hole}]}}]\n");
    assert_eq!(rows(&options), 2);
}

/// What must be there before a counter is measured: each known, or said not to be.
#[test]
fn readiness_is_asked_line_by_line() {
    let without = kitchen(ROOM, &format!("{}{SINK}", counter(TOP))).sheet("fabricator");
    without.says(&["Ready or not", "Cabinets fixed not known yet", "Cabinets level and firm to be seen on site"]);
    without.says(&["Counter: who decides seams and veins the signed drawing", "Counter: supports in place brackets"]);
    let dated = "- {selection: Cabinets, kind: cabinet, needed for: 2027-04-27}\n";
    let open = "- {selection: Tap, kind: tap, tag: K-16, options: [{id: a, name: One}, {id: b, name: Two}]}\n";
    let with = kitchen(ROOM, &format!("{}{SINK}{dated}{open}", counter(TOP))).sheet("fabricator");
    with.says(&["Cabinets fixed planned by 27 Apr 2027", "K-16 Tap not chosen yet"]);
}

#[test]
fn what_nobody_knows_of_a_counter_is_said() {
    let bare = sheet(&counter("  top: {material: stone, lies on: [range wall]}\n")).sheet("fabricator");
    for name in ["Overhang", "Supports", "Upstand", "Slab", "Inside corners", "Last word on seams", "Pieces"] {
        assert_eq!(bare.fact(name), "not known yet", "{name}");
    }
}

/// Pieces are drawn where they lie: 30" and 36" left of the range, 46" right of it; else each alone.
#[test]
fn the_layout_is_drawn_to_scale_with_the_sink_and_the_seam() {
    let drawn = sheet(&format!("{}{SINK}", counter(TOP))).sheet("fabricator").html;
    let heard = |text: &str| assert!(drawn.contains(text), "`{text}` is not told of the drawing");
    heard("Piece left: 30 inches long, 25 1/2 inches deep.");
    heard("Piece at the sink: 36 inches long, 25 1/2 inches deep.");
    heard("The middle of Sink: 48 inches from the left end; the front edge is cut through before it.");
    heard("A seam 30 inches from the left end.");
    // The counter lies in two lengths, drawn for a desk and a telephone alike.
    assert_eq!(drawn.matches("data-is=\"piece\"").count(), 2 * 3);
    assert_eq!(drawn.matches("data-is=\"seam\"").count(), 2);
    assert!(!drawn.contains("whose place is not known yet"));
    let moved = sheet(&counter(&TOP.replace("36\" x", "35\" x"))).sheet("fabricator");
    moved.says(&["Counter: pieces whose place is not known yet"]);
    assert!(moved.html.contains("Piece at the sink: 35 inches long"));
}

#[test]
fn of_two_counters_that_may_be_chosen_what_differs_stays_open() {
    let two = "  options:\n    - {id: a, name: Schist, top: {material: stone}}\n    - {id: b, name: Board, top: {material: wood}}\n";
    let text = counter(&format!("{two}  top: {{lies on: [range wall], depth: 25 1/2\"}}\n"))
        .replace("  name: Green schist\n", "");
    let sheet = sheet(&text).sheet("fabricator");
    sheet.says(&["Not chosen yet, between Schist and Board.", "That leaves open: material."]);
    assert_eq!((sheet.fact("Material"), sheet.fact("Depth")), (String::new(), "25 1/2″ 648 mm".into()));
}

#[test]
fn a_metric_household_reads_it_in_spanish() {
    let room = "outline: 4 m x 3 m\nruns:\n  pared:\n    wall: A\n    depth: 600 mm\n    counter: {depth: 640 mm, height: 900 mm}\n    parts: [{cabinet: bajo, width: 900 mm, doors: 2}]\n";
    let top = "- {selection: Encimera, kind: counter, name: Pizarra, finish: mate, thickness: 20 mm, edge: recto, top: {material: stone, lies on: [pared], pieces: {una: 900 mm x 640 mm}}}\n";
    let sheet = cocina(room, top).sheet("fabricator");
    assert_eq!(
        (sheet.fact("Grosor"), sheet.row("una")),
        ("20 mm".into(), vec!["una".into(), "900 mm".into(), "640 mm".into()])
    );
    sheet.says(&["Encimeras: Kitchen", "Muebles fijados aún no se sabe", "Pieza una: 900 milímetros"]);
    sheet.is_silent_of(&["″", "not known", "Pieces"]);
}

#[test]
fn a_room_without_a_counter_has_no_such_sheet() {
    assert!(!kitchen(ROOM, SINK).has("fabricator"));
}

/// Two runs that meet in the corner of walls A and B, 10' by 8'.
const CORNER: &str = "outline: 10' x 8'\nruns:\n  sink wall:\n    wall: A\n    depth: 24\"\n    counter: {depth: 25 1/2\", height: 36\"}\n    parts: [{cabinet: pots, width: 60\", drawers: 3}, {cabinet: sink base, width: 36\", doors: 2, holds: [sink]}, {cabinet: blind, width: 24\"}]\n  side:\n    wall: B\n    starts: 24\"\n    depth: 24\"\n    counter: {depth: 25 1/2\", height: 36\"}\n    parts: [{cabinet: cups, width: 36\", doors: 2}]\nopenings:\n  sink: {takes: sink, width: 33 1/2\", depth: 20\"}\n";

fn l_shaped(room: &str, seams: &str) -> Site {
    let top = format!("  top: {{material: stone, lies on: [sink wall, side]{seams}}}\n");
    kitchen(room, &format!("{}{SINK}", counter(&top)))
}

/// Tops that meet are one drawing; where the joint between them lies is told as the book says it, and as not known
/// where it does not.
#[test]
fn counters_that_meet_in_a_corner_are_one_drawing_with_their_joint() {
    let drawings = |html: &str| html.matches("id=\"layout-").count() + html.matches("-corner-").count();
    let open = l_shaped(CORNER, "").sheet("fabricator");
    open.says(&["Counter, on sink wall and side", "Where the joint between sink wall and side lies is not known yet."]);
    assert!(open.html.contains("On sink wall: A piece 120 inches long"), "the runs are told one by one");
    assert!(open.html.contains("On side: A piece 36 inches long"), "{}", drawings(&open.html));
    let said = ", seams: [{at: in the corner, on: side, from left: 25 1/2\"}]";
    let known = l_shaped(CORNER, said).sheet("fabricator");
    known.says(&["sink wall and side meet in a joint 25 1/2"]);
    known.is_silent_of(&["is not known yet."]);
    // Counters of two walls that do not meet stay two.
    let apart = l_shaped(&CORNER.replace("starts: 24\"", "starts: 40\""), "").sheet("fabricator");
    apart.says(&["Counter, on sink wall", "Counter, on side"]);
    apart.is_silent_of(&["Counter, on sink wall and side"]);
}

/// A cabinet that fills a corner belongs to one run alone: what lies over it between the two is drawn, and open.
#[test]
fn over_a_corner_cabinet_the_counters_are_one_drawing() {
    let square = CORNER
        .replace("width: 60\", drawers: 3", "width: 48\", drawers: 3")
        .replace("{cabinet: blind, width: 24\"}", "{cabinet: corner, width: 36\"}")
        .replace("starts: 24\"", "starts: 36\"");
    l_shaped(&square, "").sheet("fabricator").says(&["Counter, on sink wall and side"]);
}

/// A peninsula that begins at a run's counter is one drawing with it; an island stands alone.
#[test]
fn a_peninsula_is_drawn_with_its_run() {
    let room = |away: &str| {
        let (before, after) = CORNER.split_once("  side:\n").unwrap();
        let after = after.split_once("openings:").unwrap().1;
        format!(
            "{before}islands: {{side: {{wall: A, at: 0\", away: {away}, size: 30\" x 60\", height: 36\"}}}}\nopenings:{after}"
        )
    };
    l_shaped(&room("25 1/2\""), "").sheet("fabricator").says(&["Counter, on sink wall and side"]);
    l_shaped(&room("34\""), "").sheet("fabricator").is_silent_of(&["Counter, on sink wall and side"]);
}

/// What is signed of it stays the pieces of each run: joining them in a drawing changes no mark.
#[test]
fn counters_that_meet_are_signed_run_by_run() {
    let top = "  top: {material: stone, lies on: [sink wall, side]}\n";
    let project = Project::new()
        .file("book.yaml", "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n")
        .file("rooms/kitchen/room.yaml", &format!("name: Kitchen\n{CORNER}"))
        .file("rooms/kitchen/chosen.yaml", &format!("{}{SINK}", counter(top)));
    let folder = Folder::open(&project.root()).expect("the book");
    let review = pipeline::review(&folder, Date::parse("2027-01-15").expect("a day")).expect("a book");
    let marked = shown::items(&review.book, &shown::as_read(&review.book));
    let laid = &marked[&("kitchen", "counter")].content["counter layout"];
    let of = |number: usize| (laid[number]["name"].as_str(), laid[number]["pieces"].as_array().map(Vec::len));
    assert_eq!((of(0), of(1)), ((Some("sink wall"), Some(1)), (Some("side"), Some(1))), "{laid}");
    let fields: Vec<&String> = laid[0].as_object().expect("a layout").keys().collect();
    assert!(
        fields.iter().all(|key| ["id", "known by", "let in", "name", "pieces", "seams"].contains(&key.as_str())),
        "{fields:?}"
    );
}

/// A bowl with a front of its own stands at the face of its cabinet, and the stone before it is cut through.
#[test]
fn the_stone_is_cut_through_to_its_edge_before_an_apron() {
    let of = |mount: &str| sheet(&format!("{}{}{TAP}", counter(TOP), SINK.replace("apron front", mount)));
    let is_cut_through =
        |mount: &str| of(mount).sheet("fabricator").html.contains("the front edge is cut through before it");
    for mount in ["apron front", "farmhouse", "Belfast"] {
        assert!(is_cut_through(mount), "{mount}");
    }
    for mount in ["undermount", "drop-in"] {
        assert!(!is_cut_through(mount), "{mount}");
    }
}

/// A row of 30", 36", the range, 46"; then a refrigerator with its panel, and a filler to the wall: no counter lies there.
#[test]
fn no_piece_lies_on_a_filler_behind_the_panel_of_something_tall() {
    let tall = "{cabinet: last, width: 20\", doors: 2}, {panel: 1\"}, {opening: fridge}, {panel: 1\"}, {filler: 2\"}]";
    let room = ROOM.replace("{cabinet: last, width: 46\", doors: 2}]", tall)
        + "  fridge: {takes: refrigerator, width: 24\", height: 72\", depth: 25\"}\n";
    let on = |room: &str| kitchen(room, &format!("{}{SINK}{TAP}", counter(TOP))).sheet("fabricator").row("range wall");
    // 30 + 36 + 20 = 86": neither panels nor filler carry any of it.
    let row = on(&room);
    assert!(row.iter().any(|cell| cell.starts_with("86″")), "{row:?}");
    // Beside something low a filler is covered.
    let low = ROOM
        .replace("{cabinet: last, width: 46\", doors: 2}]", "{cabinet: last, width: 44\", doors: 2}, {filler: 2\"}]");
    let row = on(&low);
    assert!(row.iter().any(|cell| cell.starts_with("112″")), "{row:?}");
}
