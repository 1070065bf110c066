//! The installer's form gives the review's verdict from the same readings: one table, read by both.

use super::{drive, home};
use crate::project::Project;
use bookmatch::units::Length;
use serde::Deserialize;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

#[derive(Deserialize)]
struct Row {
    name: String,
    #[serde(default)]
    room: String,
    /// All of the opening but its sizes.
    opening: String,
    option: String,
    /// By line of the form: `width floor`.
    readings: BTreeMap<String, String>,
    /// From which floor and faces, where that is not as the book has it.
    #[serde(default)]
    from: BTreeMap<String, String>,
    verdicts: BTreeMap<String, String>,
    #[serde(default)]
    governs: BTreeMap<String, String>,
}

fn rows() -> Vec<Row> {
    serde_json::from_str(&fs::read_to_string(home().join("tape-verdicts.json")).unwrap()).unwrap()
}

/// The readings as a designer writes them into `room.yaml`.
fn written(row: &Row) -> String {
    let at = |what: &str, spots: &[&str]| -> Vec<&String> {
        spots.iter().filter_map(|spot| row.readings.get(format!("{what} {spot}").trim_end())).collect()
    };
    let list = |lengths: Vec<&String>| lengths.iter().map(|length| length.as_str()).collect::<Vec<_>>().join(", ");
    let heights = ["floor", "middle", "top"];
    let mut out = String::new();
    for (key, lengths) in [
        ("width", at("width", &heights)),
        ("height", at("height", &["left", "right"])),
        ("depth", at("depth", &[""])),
        ("diagonals", at("diagonal", &["left", "right"])),
    ] {
        if !lengths.is_empty() {
            out.push_str(&format!(", {key}: [{}]", list(lengths)));
        }
    }
    for (of, key) in [("floor", "measured from"), ("walls", "measured between")] {
        out.extend(row.from.get(of).map(|face| format!(", {key}: {face}")));
    }
    for (line, key) in [("in-front", "in front"), ("counter-height", "counter height")] {
        out.extend(row.readings.get(line).map(|length| format!(", {key}: {length}")));
    }
    let inside = [("inside-width", "inside width"), ("inside-depth", "inside depth")];
    out.push_str(&group(row, "cabinet", &inside));
    let power = [("power from-left", "from left"), ("power height", "height"), ("power proud", "proud")];
    out.push_str(&group(row, "power", &power).replace("power: {", "service points: {power: {").replace('}', "}}"));
    if row.readings.keys().any(|line| line.starts_with("plumb")) {
        let (left, right) = (list(at("plumb-left", &heights)), list(at("plumb-right", &heights)));
        out.push_str(&format!(", plumb: {{left: [{left}], right: [{right}]}}"));
    }
    out
}

/// The faces as a page hands them over.
fn handed(from: &BTreeMap<String, String>) -> BTreeMap<&String, String> {
    from.iter().map(|(of, face)| (of, face.replace(' ', "-"))).collect()
}

/// Readings that stand in a group of the opening's, each by its key there.
fn group(row: &Row, name: &str, keys: &[(&str, &str)]) -> String {
    let read = keys.iter().filter_map(|(line, key)| Some(format!("{key}: {}", row.readings.get(*line)?)));
    let read: Vec<String> = read.collect();
    if read.is_empty() { String::new() } else { format!(", {name}: {{{}}}", read.join(", ")) }
}

fn book(rows: &[Row], sizes: fn(&Row) -> String) -> Project {
    let book = Project::new().file("book.yaml", "title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n");
    rows.iter().enumerate().fold(book, |book, (number, row)| {
        let (kind, _) =
            row.opening.strip_prefix("takes: ").unwrap().split_once(", ").unwrap_or((&row.opening[7..], ""));
        let room = format!(
            "name: Room {number}\n{}\nopenings:\n  it: {{{}{}, measured: {{on: 2027-01-11, by: Teo Varrick}}}}\n",
            row.room,
            row.opening,
            sizes(row)
        );
        let thing = format!("selection: It\nkind: {kind}\nplace: it\n{}\n", row.option);
        book.file(&format!("rooms/r{number:02}/room.yaml"), &room).file(&format!("rooms/r{number:02}/it.yaml"), &thing)
    })
}

/// What the opening's own page asks of the tape.
fn asked(site: &Path, number: usize) -> Value {
    let page = fs::read_to_string(site.join(format!("installer/openings/r{number:02}/it.html"))).unwrap();
    let (_, rest) = page.split_once("<script type=\"application/json\" id=\"tape-asks\">").unwrap();
    serde_json::from_str(rest.split_once("</script>").unwrap().0).unwrap()
}

fn nanometres(length: &str) -> String {
    length.parse::<Length>().unwrap().nanometres().to_string()
}

/// Source of the rows: trade reports F-01, F-04, F-17, F-27 and section 3 (square), section 6 (fronts).
#[test]
fn the_form_gives_the_verdict_that_the_table_has() {
    let rows = rows();
    let project = book(&rows, |_| String::new());
    let site = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", site.to_str().unwrap()]).exits(0);
    let each = rows.iter().enumerate().map(|(number, row)| {
        let lengths = |of: &BTreeMap<String, String>| -> BTreeMap<String, String> {
            of.iter().map(|(line, length)| (line.clone(), nanometres(length))).collect()
        };
        json!({"name": row.name, "asks": asked(&site, number), "from": handed(&row.from), "lines": lengths(&row.readings),
            "verdicts": row.verdicts, "governs": lengths(&row.governs)})
    });
    let table = project.beside("table.json");
    fs::write(&table, Value::from(each.collect::<Vec<_>>()).to_string()).unwrap();
    let scripts = Path::new(env!("CARGO_MANIFEST_DIR")).join("themes/standard/scripts");
    let said = drive("measure.mjs", &[scripts.to_str().unwrap(), table.to_str().unwrap()]);
    assert_eq!(said.trim(), format!("{} openings", rows.len()));
}

#[test]
fn the_review_gives_the_verdict_that_the_table_has() {
    let rows = rows();
    let said = book(&rows, written).run(["review", "--format", "json", "--today", "2027-01-15"]).stdout_is_json();
    let findings = said["findings"].as_array().unwrap();
    for (number, row) in rows.iter().enumerate() {
        let here = |finding: &&Value| finding["room"] == format!("r{number:02}");
        let found: Vec<&str> = findings.iter().filter(here).map(|finding| finding["rule"].as_str().unwrap()).collect();
        let verdict = |what: &str| row.verdicts.get(what).map_or("", String::as_str);
        for what in ["width", "height", "depth"] {
            let rule = format!("fit/{what}");
            let wrong = matches!(verdict(what), "small" | "large");
            assert_eq!(found.contains(&rule.as_str()), wrong, "{}: {rule} in {found:?}", row.name);
        }
        for (rule, lines) in [("service/zone", "power "), ("fit/cabinet", "inside-")] {
            let of = row.verdicts.iter().filter(|(line, _)| line.starts_with(lines));
            let wrong = of.clone().any(|(_, verdict)| matches!(verdict.as_str(), "small" | "large"));
            assert_eq!(found.contains(&rule), wrong, "{}: {rule} in {found:?}", row.name);
        }
        assert_eq!(found.contains(&"fit/play"), verdict("width") == "tight", "{}: {found:?}", row.name);
        assert_eq!(found.contains(&"fit/square"), verdict("square") == "skew", "{}: {found:?}", row.name);
    }
}
