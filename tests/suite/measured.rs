//! Readings of every kind that the form takes, each from the face that it was read from: handed over as a file, taken in,
//! confirmed, and judged by.

mod counter;

use serde_json::{Value, json};

use crate::project::{Project, Ran};

const DAY: [&str; 2] = ["--today", "2026-01-20"];

const ROOM: &str = "\
name: Kitchen
floor build-up: 3/4\"
openings:
  bay: {takes: dishwasher, width: 24 1/8\", height: 36\", depth: 24 1/2\", service: {power: 120 V 15 A, water: 3/8\", drain: 7/8\"}, measured: {on: 2026-01-10, by: Ivo Tarn}}
  sink: {takes: sink, width: 33\", depth: 20\", below: drawer, wall build-up: {back: 1/2\"}, service: {drain: 1 1/2\"}, waive: [{rule: complete/opening, because: it comes later, by: Ines, on: 2026-01-12}]}
";

const DISHWASHER: &str = "\
selection: Dishwasher
kind: dishwasher
place: bay
maker: Zelmor
model: D 9
finish: white
supplier: Ardwin
lead time: 2 weeks
quantity: 1
price: 900.00
photos: [white.jpg]
size: {width: 23 7/8\", height: 34 1/2\" to 35\", depth: 24\"}
fit:
  sheet: {name: D 9, revision: A, date: 2025-03-01}
  opening: {width: at least 24\", height: at least 34 1/2\", depth: at least 24\"}
  needs: {power: 120 V 15 A, water: 3/8\", drain: 7/8\"}
";

fn kitchen() -> Project {
    let project = Project::new()
        .file(
            "book.yaml",
            "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\napprovers: [{id: ada, name: Ada Marrowby}]\n",
        )
        .file("rooms/kitchen/room.yaml", ROOM)
        .file("rooms/kitchen/dishwasher.yaml", DISHWASHER)
        .photo("rooms/kitchen/photos/white.jpg");
    project.run(["issue", "--for", "approval"].iter().chain(&DAY)).exits(0);
    project
}

/// Readings, each of an opening: what, where of it, its length in nanometres, and the face that it was read from.
type Reading = (&'static str, &'static str, Option<&'static str>, i64, Option<&'static str>);

/// Hands readings over as the form does, and takes them in from the file.
fn received(project: &Project, readings: &[Reading]) -> Ran {
    let ledger = std::fs::read_to_string(project.root().join("record/ledger.jsonl")).expect("a ledger");
    let opened: Value = serde_json::from_str(ledger.lines().next().unwrap()).unwrap();
    let read = readings.iter().map(|(opening, what, at, length, from)| {
        let mut read =
            json!({"room": "kitchen", "opening": opening, "what": what, "at": at, "length": length.to_string()});
        if let Some(from) = from {
            read["from"] = json!(from);
        }
        read
    });
    let says = json!({
        "format": "bookmatch readings 1", "book": opened["fact"]["book"], "issue": 1, "by": "Noor Tembley",
        "nonce": "0".repeat(32), "made": "2026-01-19T09:00:00Z", "readings": read.collect::<Vec<_>>(),
    });
    let file = project.beside("readings.json");
    std::fs::write(&file, says.to_string()).unwrap();
    project.run(["receive", project.root().to_str().unwrap(), file.to_str().unwrap()])
}

fn confirm(project: &Project) {
    let told = project.run(["status", "--format", "json"].iter().chain(&DAY)).stdout_is_json();
    let digits = told["readings"][0]["digits"].as_str().expect("readings that wait");
    project.run(["receive", project.root().to_str().unwrap(), "--confirm", digits, "--by", "Ines Rowe"]).exits(0);
}

fn review(project: &Project) -> Ran {
    project.run(["review"].iter().chain(&DAY))
}

/// Where a figure of these words stands on a page of the published folder, in the text that is read.
fn page(project: &Project, name: &str) -> String {
    let out = project.beside("site");
    let arguments = ["publish", "--draft", "--out", out.to_str().unwrap()];
    project.run(arguments.iter().chain(&DAY)).exits(0);
    std::fs::read_to_string(out.join(name)).unwrap()
}

/// 35 inches from today's floor are 34 1/4 once that is laid, and too low; from the finished floor they are enough.
#[test]
fn a_height_is_judged_by_the_floor_that_it_was_read_from() {
    let low = "the opening `bay` is 34 1/4\" (870 mm) high once 3/4\" (19 mm) of floor is laid";
    for (from, told) in [("present-floor", true), ("finished-floor", false)] {
        let project = kitchen();
        review(&project).does_not_say("fit/height");
        received(&project, &[("bay", "height", Some("left"), 889_000_000, Some(from))])
            .exits(0)
            .says("to be confirmed");
        let office = page(&project, "office/index.html");
        let face = from.replace('-', " ");
        assert!(office.contains(&format!("height at the left, from the {face}")), "{office}");
        review(&project).does_not_say("fit/height");
        confirm(&project);
        let reviewed = review(&project);
        if told {
            reviewed.says(low).says("fit/height");
        } else {
            reviewed.does_not_say("fit/height");
        }
        let sheet = page(&project, "installer/openings/kitchen/bay.html");
        assert!(sheet.contains("Noor Tembley"), "who measured stands on the sheet");
    }
}

/// A reading of every kind that the form asks for.
fn of_every_kind() -> Vec<Reading> {
    let inch = |count: i64| count * 25_400_000;
    let from_floor = Some("present-floor");
    let plain =
        ["in-front", "counter-depth", "inside-width", "inside-depth", "inside-height", "below", "apron", "cavity"];
    let in_wall = [("rough-in", "studs"), ("valve", "finished-walls")];
    let mut readings: Vec<Reading> = vec![
        ("bay", "width", Some("floor"), inch(24), Some("finished-walls")),
        ("bay", "depth", None, inch(25), Some("finished-walls")),
        ("bay", "diagonal", Some("left"), inch(43), None),
        ("bay", "diagonal", Some("right"), inch(43), None),
        ("bay", "plumb-left", Some("floor"), inch(1), None),
        ("bay", "plumb-right", Some("floor"), inch(25), None),
        ("sink", "sill", None, inch(31), from_floor),
        ("sink", "counter-height", None, inch(37), from_floor),
    ];
    readings.extend(plain.map(|what| ("sink", what, None, inch(9), None)));
    readings.extend(in_wall.map(|(what, from)| ("sink", what, None, inch(4), Some(from))));
    for service in ["power", "gas", "water", "drain", "duct"] {
        let spots = [("from-left", None), ("height", from_floor), ("proud", None)];
        readings.extend(spots.map(|(at, from)| ("sink", service, Some(at), inch(2), from)));
    }
    readings
}

#[test]
fn every_kind_of_reading_is_taken_in_from_a_file_and_none_that_is_of_no_kind() {
    let project = kitchen();
    let readings = of_every_kind();
    let inch = 25_400_000;
    received(&project, &[("sink", "scent", None, inch, None)]).exits(1).says("not recorded");
    received(&project, &[("sink", "sill", None, inch, Some("roof"))]).exits(1).says("not recorded");
    received(&project, &readings).exits(0).says("recorded to be confirmed");
    received(&project, &readings).says("already recorded");
    let office = page(&project, "office/index.html");
    for told in [
        "bottom above the floor, from the present floor",
        "top of the counter, from the present floor",
        "rough-in, from the studs",
        "depth of the valve, from the finished walls",
        "width at the floor, from the finished walls",
        "drain, height, from the present floor",
        "power, distance from the wall",
        "inside height of the cabinet",
        "from the plumb line to the right side at the floor",
    ] {
        assert!(office.contains(told), "{told}");
    }
    confirm(&project);
    let told = project.run(["status", "--format", "json"].iter().chain(&DAY)).stdout_is_json();
    assert_eq!(told["readings"].as_array().map_or(0, Vec::len), 0, "nothing waits");
    // What a sheet is built from holds what was read, the heights turned to the finished floor.
    project.run(["issue", "--for", "construction", "--unapproved", "agreed on site"].iter().chain(&DAY)).exits(0);
    let issue = std::fs::read_to_string(project.root().join("record/issues/0002.json")).unwrap();
    let issue: Value = serde_json::from_str(&issue).unwrap();
    let of = |opening: &str| {
        let built = issue["built"].as_array().unwrap().iter();
        built.into_iter().find(|built| built["opening"] == opening).map(|built| built["content"].to_string()).unwrap()
    };
    let sink = of("sink");
    let quarters = |count: i64| format!("\"{}\"", count * 6_350_000);
    // 30 1/4, 36 1/4 and 1 1/4 inches.
    assert!([121, 145, 5].into_iter().all(|count| sink.contains(&quarters(count))), "{sink}");
    assert!(of("bay").contains(&quarters(4 * 43)), "{}", of("bay"));
}

/// Two people read different figures of one opening: each is named with what is theirs, wherever it is told.
#[test]
fn each_figure_is_told_with_who_read_it_and_what_nobody_read_again_with_whom_the_book_names() {
    let project = kitchen();
    received(&project, &[("bay", "height", Some("left"), 889_000_000, Some("finished-floor"))]).exits(0);
    confirm(&project);
    let sheet = page(&project, "installer/openings/kitchen/bay.html");
    assert!(sheet.contains("Height measured by Noor Tembley, 19 Jan 2026."), "{sheet}");
    assert!(sheet.contains("The rest measured by Ivo Tarn, 10 Jan 2026."), "{sheet}");
    let both = "10 Jan 2026, Ivo Tarn; 19 Jan 2026, Noor Tembley";
    for name in ["client/rooms/kitchen.html", "installer/index.html"] {
        let told = page(&project, name);
        assert!(told.contains(both), "{name}: {told}");
    }
}

/// The book was measured again by hand after a reading came in: what was read before does not count, and is told.
#[test]
fn a_confirmed_reading_that_is_older_than_the_book_s_own_is_told_wherever_readings_are() {
    let project = kitchen();
    received(&project, &[("bay", "height", Some("left"), 889_000_000, Some("finished-floor"))]).exits(0);
    confirm(&project);
    let told = "do not count: the book has it measured on 20 Jan 2026, which is later";
    review(&project).does_not_say(told);
    let later = project.file("rooms/kitchen/room.yaml", &ROOM.replace("2026-01-10", "2026-01-20"));
    review(&later).says(told).says("approve/reading");
    later.run(["status"].iter().chain(&DAY)).says("readings that do not count").says("Noor Tembley");
    let office = page(&later, "office/index.html");
    assert!(office.contains("Older than the book’s own of 20 Jan 2026"), "{office}");
}

/// A width alone that was read makes no measured height of a planned one.
#[test]
fn what_nobody_read_stays_as_planned() {
    let planned = ROOM.replace(", measured: {on: 2026-01-10, by: Ivo Tarn}", "");
    let project = kitchen().file("rooms/kitchen/room.yaml", &planned);
    received(&project, &[("bay", "width", Some("floor"), 612_775_000, None)]).exits(0);
    confirm(&project);
    review(&project).says("the opening `bay` is still as planned in part");
    let sheet = page(&project, "installer/openings/kitchen/bay.html");
    assert!(sheet.contains("Width measured by Noor Tembley, 19 Jan 2026. The rest as planned: VIF."), "{sheet}");
}
