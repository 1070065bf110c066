//! The rough-in lists of the electrician and of the plumber and gas fitter.

use super::workshop::{cocina, kitchen};

const ROOM: &str = "outline: 12' x 9'\nwalls: {A: {name: party wall}}\nruns:\n  long wall:\n    wall: A\n    starts: 20\"\n    depth: 24\"\n    counter: {depth: 25 1/2\", height: 36\"}\n    parts: [{opening: range}, {cabinet: sink base, width: 36\", doors: 2, holds: [sink]}]\ncounters: {left of range: {length: 4', receptacles: 1}}\n";
const OPENINGS: &str = "openings:\n  range: {takes: range, width: 30\", height: 37\", depth: 25 1/2\", service: {power: 120 V 15 A 5-15, gas: \"natural gas, 65000 Btu/h\", blocking: 2x10 flat}, note: Shut-off at the left, service points: {power: {from left: 6\", height: 12\", proud: 1\"}}}\n  sink: {takes: sink, width: 33 1/2\", depth: 20\", service: {water: \"3/8\\\" hot and cold, 20\\\" AFF\", drain: \"1 1/2\\\", 16\\\" AFF\"}}\n";
const RANGE: &str = "- {selection: Range, kind: range, tag: K-04, place: range, maker: Hobbrath, model: V30, price: 3183.57, fit: {needs: {power: 120 V 15 A 5-15, gas: \"natural gas, 51000 Btu/h\"}, zones: {power: {from left: 2\" to 28\"}}, caution: Fix the bracket first.}}\n";
const SINK: &str = "- {selection: Sink, kind: sink, tag: K-15, place: sink, maker: Pottlemoor, model: AF, drain: rear centre, bowl depth: 9\"}\n";
const LIGHT: &str = "- {selection: Pendants, kind: pendant, tag: K-19, maker: Ogle, model: OG, lamp: E26 9 W, dimming: to 10 %, drop: 12\" to 60\", quantity: 2, price: 211.43}\n";
const DISPOSER: &str = "- {selection: Disposer, kind: disposer, tag: K-09, maker: Gnashby, model: G}\n";

fn room() -> String {
    format!("{ROOM}{OPENINGS}")
}

#[test]
fn power_stands_there_with_pattern_height_and_distance_from_a_named_wall() {
    let sheet = kitchen(&room(), &format!("{RANGE}{LIGHT}{DISPOSER}")).sheet("electrician");
    let range = sheet.row("K-04 Range");
    // 20" to the opening and 6" in it.
    let expected =
        ["120 V 15 A 5-15", "120 V 15 A 5-15", "party wall, 26″ 660 mm", "6″ 152 mm", "12″ 305 mm", "1″ 25.4 mm"];
    assert_eq!(range[1..7], expected);
    assert_eq!(range[7], "from the left 2″ to 28″ 51 mm to 711 mm");
    assert_eq!(sheet.row("left of range"), ["left of range", "48″ 1219 mm", "1", "–"]);
    let light = sheet.row("K-19 Pendants");
    assert_eq!(light[1..5], ["2", "not known yet", "not known yet", "not known yet"]);
    sheet.says(&["Fix the bracket first.", "licensed electrician", "Lamp E26 9 W", "Initials"]);
    sheet.is_silent_of(&["3183", "3,183", "211.43", "USD"]);
}

/// What has no point and no words yet says so, place by place.
#[test]
fn what_nobody_knows_of_power_is_said() {
    let sheet = kitchen(&room(), DISPOSER).sheet("electrician");
    assert_eq!(sheet.row("K-09 Disposer")[1..6], ["not known yet"; 5]);
}

/// A height in the words of a pipe is its height: 20" and 16" AFF.
#[test]
fn water_drains_and_gas_stand_there_with_their_heights() {
    let sheet = kitchen(&room(), &format!("{RANGE}{SINK}")).sheet("plumber");
    let sink = sheet.row("K-15 Sink");
    assert_eq!(
        (sink[1].as_str(), sink[2].as_str(), sink[5].as_str()),
        ("not known yet", "3/8\" hot and cold, 20\" AFF", "20″ 508 mm")
    );
    sheet.says(&["K-15 Sink not known yet 1 1/2\", 16\" AFF not known yet not known yet 16″ 406 mm"]);
    let (_, gas) = sheet.text().split_once("Gas").map(|(one, two)| (one.to_string(), two.to_string())).expect("gas");
    assert!(gas.contains("natural gas, 51000 Btu/h natural gas, 65000 Btu/h"), "{gas}");
    sheet.says(&["Notes at openings", "Shut-off at the left"]);
    sheet.says(&["Blocking in the walls", "2x10 flat", "Drain rear centre", "licensed plumber"]);
    sheet.is_silent_of(&["3183", "3,183", "USD"]);
}

/// The same height as a point, or in words: one figure.
#[test]
fn a_height_counts_wherever_it_is_written() {
    let point = OPENINGS.replace(", 20\\\" AFF", "").replace(
        "drain: \"1 1/2\\\", 16\\\" AFF\"}",
        "drain: \"1 1/2\\\"\"}, service points: {water: {height: 20\"}, drain: {height: 16\"}}",
    );
    let heights =
        |openings: &str| kitchen(&format!("{ROOM}{openings}"), SINK).sheet("plumber").row("K-15 Sink")[5].clone();
    assert_eq!((heights(OPENINGS), heights(&point)), ("20″ 508 mm".into(), "20″ 508 mm".into()));
    assert_eq!(heights(&OPENINGS.replace(", 20\\\" AFF", "")), "not known yet");
}

#[test]
fn a_room_with_no_wire_and_no_pipe_has_no_lists() {
    let site = kitchen("", "- {selection: Walls, kind: paint, maker: Pellowash}\n");
    assert!(!site.has("electrician") && !site.has("plumber"));
}

#[test]
fn of_two_ranges_what_their_sheets_ask_alike_counts_and_the_rest_is_open() {
    let two = "- {selection: Range, kind: range, tag: K-04, place: range, options: [{id: a, name: One, fit: {needs: {power: 120 V 15 A 5-15}}}, {id: b, name: Two, fit: {needs: {power: 240 V 50 A 14-50}}}]}\n";
    let sheet = kitchen(&room(), two).sheet("electrician");
    assert_eq!(sheet.row("K-04 Range")[1], "open until it is chosen");
    sheet.says(&["Not chosen yet, between One and Two."]);
}

#[test]
fn a_metric_household_reads_them_in_spanish() {
    let room = "outline: 4 m x 3 m\nopenings:\n  placa: {takes: cooktop, wall: A, at: 500 mm, width: 560 mm, depth: 490 mm, service: {power: 230 V 32 A}, service points: {power: {from left: 100 mm, height: 300 mm}}}\n";
    let sheet = cocina(
        room,
        "- {selection: Placa, kind: cooktop, tag: K-04, place: placa, maker: Zel, model: Z, fuel: induction}\n",
    )
    .sheet("electrician");
    assert_eq!(sheet.row("K-04 Placa")[1..6], ["aún no se sabe", "230 V 32 A", "A, 600 mm", "100 mm", "300 mm"]);
    sheet.says(&["Corriente y luz: Kitchen", "Altura sobre el piso terminado"]);
    sheet.is_silent_of(&["″", "not known"]);
}
