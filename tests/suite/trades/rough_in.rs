//! The rough-in lists of the electrician and of the plumber and gas fitter.

use bookmatch::assess::built;
use bookmatch::pipeline;
use bookmatch::site::plan::Plans;
use bookmatch::source::Folder;
use bookmatch::units::Date;

use super::workshop::{cocina, kitchen};
use crate::project::Project;

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

/// A height read from today's floor is told from the finished one, as on the opening's own sheet; what is let into a
/// counter begins where nobody says.
#[test]
fn heights_are_from_the_finished_floor_and_a_bottom_that_nobody_gives_is_not_known() {
    let places = |more: &str, tag: &str| {
        let sheet = kitchen(&format!("{more}{}", room()), &format!("{RANGE}{SINK}")).sheet("plumber");
        let text = sheet.text();
        let (_, table) = text.split_once("Where things stand").expect("the table");
        let (_, row) = table.split_once(tag).expect("the row");
        row.split("K-").next().expect("a row").to_string()
    };
    assert!(places("", "K-04 Range").contains("37″ 940 mm"), "{}", places("", "K-04 Range"));
    let laid = places("floor build-up: 3/4\"\n", "K-04 Range");
    assert!(laid.contains("36 1/4″ 921 mm") && !laid.contains("37″"), "{laid}");
    let sink = places("", "K-15 Sink");
    assert_eq!(sink.matches("not known yet").count(), 2, "{sink}");
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

const DIMMERS: &str =
    "- {selection: Dimmers, kind: switch, tag: K-21, maker: Ogle, model: OD, quantity: 3, price: 48.19}\n";
const SWITCHES: &str = "doors: {hall door: {wall: D, at: 20\", width: 34\"}}\n\
    windows: {yard: {wall: C, at: 20\", width: 34\", sill: 42\", height: 44\"}}\n\
    islands: {island: {wall: A, at: 40\", away: 60\", size: 60\" x 30\"}}\n\
    switches:\n  at the hall door: {beside: hall door, from: right, centre: 6\", height: 42\", selection: Dimmers, count: 2, works: [Pendants]}\n\
    outlets:\n  end of the island: {island: island, side: right side, centre: 12\", height: 28\", power: 120 V 20 A 5-20}\n  under the window: {wall: C, from: right, centre: 10\"}\n";

/// 20" to the door, 34" of it and 6" more along the wall; two of three dimmers have a place.
#[test]
fn switches_and_outlets_stand_there_with_height_and_distance_from_named_faces() {
    let sheet = kitchen(&format!("{}{SWITCHES}", room()), &format!("{LIGHT}{DIMMERS}")).sheet("electrician");
    let switch = sheet.row("at the hall door");
    let expected = ["K-21 Dimmers", "2", "D, 60″ 1524 mm", "hall door, 6″ 152 mm", "42″ 1067 mm", "Pendants"];
    assert_eq!(switch[1..], expected);
    assert_eq!(sheet.row("K-21 Dimmers")[1..4], ["–", "1", "not known yet"]);
    let outlet = sheet.row("end of the island");
    let expected = ["not known yet", "1", "island, right side, 12″ 305 mm", "–", "28″ 711 mm", "120 V 20 A 5-20"];
    assert_eq!(outlet[1..], expected);
    // 144" of wall less 10"; the window ends at 54".
    let outlet = sheet.row("under the window");
    assert_eq!(outlet[3..6], ["C, 134″ 3404 mm", "yard, 80″ 2032 mm", "not known yet"]);
    sheet.says(&["From where it is worked", "K-19 Pendants at the hall door"]);
    sheet.is_silent_of(&["48.19"]);
}

/// A switch that is set out as a fixture is one too, its middle between its bottom and its top.
#[test]
fn an_outlet_among_the_fixtures_counts_as_one() {
    let fixture =
        "fixtures: {by the range: {wall: A, centre: 30\", from: right, sill: 40\", height: 4\", selection: Dimmers}}\n";
    let sheet = kitchen(&format!("{}{fixture}", room()), DIMMERS).sheet("electrician");
    let expected = ["K-21 Dimmers", "1", "party wall, 114″ 2896 mm", "–", "42″ 1067 mm", "not known yet"];
    assert_eq!(sheet.row("by the range")[1..], expected);
}

/// Nobody says from where the pendants are worked: that is told, and is in no mark.
#[test]
fn what_nobody_knows_of_switches_is_said_and_changes_no_mark() {
    let site = kitchen(&room(), LIGHT);
    let sheet = site.sheet("electrician");
    sheet.says(&["From where it is worked", "K-19 Pendants not known yet"]);
    let content = content_of(&room(), LIGHT);
    assert!(content.contains("K-19 Pendants") && !content.contains("worked"), "{content}");
    let told = content_of(&format!("{}{SWITCHES}", room()), &format!("{LIGHT}{DIMMERS}"));
    assert!(told.contains("worked") && told.contains("under the window"), "{told}");
}

/// What the electrician's mark is of.
fn content_of(room: &str, selections: &str) -> String {
    let project = Project::new()
        .file("book.yaml", "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n")
        .file("rooms/kitchen/room.yaml", &format!("name: Kitchen\n{room}"))
        .file("rooms/kitchen/chosen.yaml", selections);
    let folder = Folder::open(&project.root()).expect("the book");
    let review = pipeline::review(&folder, Date::parse("2027-01-15").expect("a day")).expect("a book");
    let sheets = built(&review.book, &Plans::of(&review.book));
    let sheet = sheets.iter().find(|sheet| sheet.trade.as_deref() == Some("electrician"));
    sheet.expect("the electrician's").content.to_string()
}

/// A table is what a trade works from: it stands first, with one line on what can hurt, whose full words stand at the end;
/// what the review found of another trade's services is not told here.
#[test]
fn the_table_stands_first_and_what_the_review_found_is_each_trade_s_own() {
    let machine = "- {selection: Dishwasher, kind: dishwasher, tag: K-05, place: bay, maker: Hobbrath, model: D3, fit: {needs: {power: 120 V 20 A, water: \"3/8\\\" hot\", drain: 7/8\"}}}\n";
    let room = format!(
        "{}  bay: {{takes: dishwasher, width: 24\", service: {{power: 120 V 15 A, water: \"3/8\\\" cold\"}}}}\n",
        room()
    );
    let (power, water) = ("15 A", "cold");
    let told = |trade: &str| {
        let sheet = kitchen(&room, machine).sheet(trade);
        let text = sheet.text().to_string();
        let at = |words: &str| text.find(words).unwrap_or_else(|| panic!("{trade} says nothing of `{words}`: {text}"));
        let (heed, table, found, full) = (
            at("can hurt. The full words"),
            at("Its sheet asks"),
            at("What the review found of your trade"),
            at("In full words"),
        );
        assert!(heed < table && table < found && found < full, "{trade}: {text}");
        assert!(at("Electricity can kill") > full, "{trade}: {text}");
        text[found..full].to_string()
    };
    let (electrician, plumber) = (told("electrician"), told("plumber"));
    assert!(electrician.contains(power) && !electrician.contains(water), "{electrician}");
    assert!(plumber.contains(water) && !plumber.contains(power), "{plumber}");
}
