//! The joiner's sheet.

use super::workshop::{cocina, kitchen};

const ROOM: &str = "outline: 12' x 9'\nwalls: {A: {name: party wall}}\nruns:\n  long wall:\n    wall: A\n    depth: 24\"\n    height: 34 1/2\"\n    toe kick: 4\"\n    left end: wall\n    right end: open\n    counter: {depth: 25 1/2\", height: 36\"}\n    parts: [{filler: 3\"}, {cabinet: drawers, width: 24\", drawers: 3}, {opening: dishwasher}, {cabinet: corner, width: 18\", doors: 1, hinge: left, finished: right}]\nopenings:\n  dishwasher: {takes: panel dishwasher, width: 24\", height: 35\", depth: 24\"}\n";

const CABINETS: &str = "- {selection: Cabinets, kind: cabinet, tag: K-01, name: Ink, maker: Tressock, door style: shaker, finish: hand-painted, price: 18643.19, fronts: {doors: 1, drawers: 3, thickness: 3/4\"}}\n";
const DISHWASHER: &str = "- {selection: Dishwasher, kind: panel dishwasher, tag: K-06, place: dishwasher, maker: Hobbrath, model: D24, panel: {width: 23 3/4\", height: 30\", thickness: 3/4\", weight: 16 lb, drawn by: designer}}\n";
const PULL: &str = "- {selection: Pulls, kind: pull, tag: K-18, maker: Ferrowthorn, model: BP-5, centre to centre: 5 1/16\", projection: 1 1/4\", quantity: 4, price: 21.07}\n";

#[test]
fn cabinets_stand_there_part_by_part_with_panels_and_pulls() {
    let sheet = kitchen(ROOM, &format!("{CABINETS}{DISHWASHER}{PULL}")).sheet("joiner");
    assert_eq!(sheet.row("filler")[..2], ["filler", "3″ 76 mm"]);
    let drawers = sheet.row("drawers");
    assert_eq!((drawers[1].as_str(), drawers[5].as_str()), ("24″ 610 mm", "3"));
    let corner = sheet.row("corner");
    assert_eq!((corner[4].as_str(), corner[6].as_str(), corner[7].as_str()), ("1", "left", "right"));
    let row = sheet.row("long wall");
    assert_eq!(row[1..7], ["A, party wall", "left", "0″ 0 mm", "24″ 610 mm", "34 1/2″ 876 mm", "4″ 102 mm"]);
    let panel = sheet.row("K-06 Dishwasher");
    assert_eq!(panel[2..5], ["23 3/4″ 603 mm", "30″ 762 mm", "3/4″ 19 mm"]);
    assert_eq!(panel[6..], ["designer", "not known yet"], "who makes it is asked");
    assert_eq!((sheet.fact("Door style"), sheet.fact("Centre to centre")), ("shaker".into(), "5 1/16″ 129 mm".into()));
    sheet.says(&["K-18 Pulls", "Chosen: Ink.", "It can tip over", "Initials"]);
    sheet.is_silent_of(&["18643", "18,643", "21.07", "USD"]);
}

/// The toe kick, the hinge of a single door, the height of the bodies: asked where nobody says.
#[test]
fn what_nobody_knows_of_a_cabinet_is_said() {
    let room =
        ROOM.replace("    toe kick: 4\"\n", "").replace("    height: 34 1/2\"\n", "").replace(", hinge: left", "");
    let sheet = kitchen(&room, CABINETS).sheet("joiner");
    assert_eq!(sheet.row("long wall")[5..7], ["not known yet", "not known yet"]);
    assert_eq!(sheet.row("corner")[6], "not known yet");
}

/// What a designer writes beside a figure reaches whoever builds by it.
#[test]
fn what_is_noted_of_a_row_a_part_a_door_and_a_thing_stands_there() {
    let room = ROOM
        .replace("    depth: 24\"\n", "    depth: 24\"\n    note: Scribed on site\n")
        .replace("{filler: 3\"}", "{filler: 3\", note: Kept loose}")
        .replace(
            "runs:\n",
            "doors: {hall door: {wall: C, at: 1', width: 30\", slides: true, note: Into the wall}}\nruns:\n",
        );
    let things = format!("{CABINETS}{DISHWASHER}")
        .replace("finish: hand-painted", "finish: hand-painted, note: Doors shut softly")
        .replace("model: D24", "model: D24, fit: {note: Feet set low}");
    let sheet = kitchen(&room, &things).sheet("joiner");
    sheet.says(&["Scribed on site", "Kept loose", "Into the wall", "Doors shut softly", "Feet set low"]);
    assert_eq!(sheet.row("long wall, filler")[1], "Kept loose");
    assert_ne!(sheet.mark(), kitchen(ROOM, &format!("{CABINETS}{DISHWASHER}")).sheet("joiner").mark());
}

#[test]
fn a_room_without_joinery_has_no_such_sheet() {
    assert!(!kitchen(ROOM, PULL).has("joiner"));
    assert!(kitchen(ROOM, DISHWASHER).has("joiner"), "a panel is joinery");
}

#[test]
fn the_mark_follows_a_part_and_a_panel() {
    let mark = |room: &str, chosen: &str| kitchen(room, chosen).sheet("joiner").mark();
    let was = mark(ROOM, DISHWASHER);
    assert_ne!(mark(&ROOM.replace("toe kick: 4\"", "toe kick: 3\""), DISHWASHER), was);
    assert_ne!(mark(ROOM, &DISHWASHER.replace("23 3/4\"", "23 5/8\"")), was);
    assert_eq!(mark(ROOM, &DISHWASHER.replace("model: D24", "model: D24, price: 1340.00")), was);
}

#[test]
fn a_metric_household_reads_it_in_spanish() {
    let room = "outline: 4 m x 3 m\nruns:\n  pared:\n    wall: A\n    depth: 600 mm\n    parts: [{filler: 50 mm}, {cabinet: bajo, width: 600 mm, doors: 1}]\n";
    let sheet = cocina(room, "- {selection: Muebles, kind: cabinet, name: Roble, door style: lisa, finish: aceite}\n")
        .sheet("joiner");
    assert_eq!(sheet.row("relleno")[1], "50 mm");
    assert_eq!(sheet.row("bajo")[6], "aún no se sabe");
    sheet.says(&["Muebles y paneles: Kitchen", "Zócalo", "Iniciales"]);
    sheet.is_silent_of(&["″", "not known"]);
}

/// A tower that is told at the oven's opening, and stands in no row: the joiner makes it, and cuts its hole.
#[test]
fn a_cabinet_that_is_told_at_an_opening_stands_there_with_its_hole() {
    let room = ROOM.to_string()
        + "  oven: {takes: wall oven, sill: 30\", width: 28 1/2\", height: 28\", cabinet: {outside width: 33\", inside width: 31 1/2\", inside depth: 23\"}}\n";
    let oven = "- {selection: Oven, kind: wall oven, tag: K-07, place: oven, maker: Hobbrath, model: O3, fit: {cabinet: {inside width: at least 30\"}}}\n";
    for chosen in [CABINETS.to_string() + oven, oven.to_string()] {
        let sheet = kitchen(&room, &chosen).sheet("joiner");
        let row = sheet.row("K-07 Oven");
        assert_eq!(row[2..4], ["33″ 838 mm", "31 1/2″ 800 mm"]);
        assert_eq!(row[7..], ["28 1/2″ 724 mm", "28″ 711 mm", "30″ 762 mm"]);
    }
    // One that a row holds stands among what that is built around.
    let held = room.replace("{cabinet: drawers, width: 24\", drawers: 3}", "{tall: tower, width: 33\", holds: [oven]}");
    let sheet = kitchen(&held, &(CABINETS.to_string() + oven)).sheet("joiner");
    assert_eq!(sheet.row("K-07 Oven")[2], "tower");
}
