//! What the sheet of an opening or a trade shows is what its mark is of: each length of a room, of the way in and of the makers'
//! sheets is written otherwise in turn, and no sheet changes whose mark stays.

mod fields;

use std::collections::BTreeMap;
use std::sync::atomic::AtomicBool;

use bookmatch::assess::built;
use bookmatch::pictures::Cache;
use bookmatch::pipeline::{self, BuildCaches, BuildOptions};
use bookmatch::publish::output::Content;
use bookmatch::shown::{self, SheetOf};
use bookmatch::site::plan::Plans;
use bookmatch::source::Folder;
use bookmatch::units::Date;

use crate::project::Project;

/// A kitchen with heat, a row on each wall, what hangs over them, a slope and a way in.
const BOOK: &str = "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n\
    milestones: {cabinets set: 2027-06-01}\n\
    way in:\n  - {name: porch door, width: 35 1/2\", height: 79\"}\n  - {name: hall turn, width: 38\", height: 96\", turns: true}\n";
const ROOM: &str = r#"name: Kitchen
outline: 15' 2" x 14' 9"
ceiling: 8' 1"
floor build-up: 3/4"
doors:
  hall: {wall: D, at: 28 1/2", width: 36", height: 84", casing: 3 1/2"}
windows:
  yard: {wall: C, at: 20", width: 34", sill: 42", height: 44", casing: 3"}
runs:
  range wall:
    wall: A
    depth: 24"
    counter: {depth: 25 1/2", height: 36"}
    handles: 1 3/8"
    parts:
      - {opening: refrigerator}
      - {panel: 3/4", height: 84"}
      - {cabinet: pots, width: 36", drawers: 3}
      - {opening: range}
      - {cabinet: cloths, width: 31", drawers: 4}
  shelves:
    wall: A
    starts: 40"
    above floor: 54"
    depth: 9"
    height: 12"
    parts: [{cabinet: left shelf, width: 27 1/2"}, {opening: hood}, {cabinet: right shelf, width: 30"}]
  window side:
    wall: C
    starts: 31 1/4"
    depth: 24"
    counter: {depth: 25 1/2", height: 36"}
    parts:
      - {cabinet: dry goods, width: 36 3/4", drawers: 3}
      - {opening: dishwasher}
      - {filler: 3"}
islands:
  island: {wall: C, at: 60", away: 60", size: 40" x 24", height: 36", room side: {seats: 2}}
fixtures:
  bench: {wall: B, centre: 110", width: 20", depth: 14", height: 18"}
lights:
  over the island: {selection: Pendants, over: island, count: 2}
counters:
  left of range: {length: 4', receptacles: 1}
switches:
  by the door: {beside: hall, centre: 6", height: 42", works: [Pendants]}
openings:
  range: {takes: range, width: 30 1/16", height: 37", depth: 25 1/2", diagonals: [46 7/8", 46 15/16"], in front: 42"}
  hood: {takes: hood, width: 36 1/4", sill: 66", height: 30 3/4", depth: 24"}
  refrigerator: {takes: refrigerator, width: 36 1/4", height: 71 1/2", depth: 26", in front: 42"}
  dishwasher: {takes: dishwasher, width: 24", depth: 24 1/2"}
  sink: {takes: sink, wall: B, at: 40", width: 30", depth: 20"}
"#;
const THINGS: &str = r#"- selection: Range
  kind: range
  place: range
  model: R 1
  price: 3000.00
  size: {width: 29 7/8", height: 35 3/4" to 36 3/4", depth: 26 1/4", depth with handle: 28 1/2"}
  fit:
    opening: {width: 30" to 30 1/4", height: 36", depth: at least 24"}
    air: {left: 0", right: 2" above counter, back: 0"}
    door: {drops: 20 1/2"}
    carton: 32" x 41" x 30"
- selection: Hood
  kind: hood
  place: hood
  model: H 1
  price: 900.00
  size: {width: 36", height: 12", depth: 22"}
  fit: {opening: {width: 36" to 36 1/2"}}
- selection: Refrigerator
  kind: refrigerator
  place: refrigerator
  model: F 1
  price: 2000.00
  hinge: left
  size: {width: 35 3/4", height: 70", depth: 28", depth with handle: 30"}
  fit: {opening: {width: 36" to 36 1/2", height: 71"}, door: {swings: 32", wall clearance: 2 1/2"}, carton: 38" x 75" x 32", doors off: 35" x 70" x 26"}
- selection: Dishwasher
  kind: dishwasher
  place: dishwasher
  model: D 1
  price: 700.00
  size: {width: 23 7/8", height: 33 7/8" to 34 5/8", depth: 23 3/4"}
  fit: {opening: {width: 24", height: 34" to 35", depth: 24"}, door: {drops: 25"}}
- selection: Sink
  kind: sink
  place: sink
  model: S 1
  price: 400.00
  size: {width: 29", depth: 18"}
- selection: Pendants
  kind: pendant
  model: P 1
  price: 90.00
  quantity: 2
- selection: Cabinets
  kind: cabinet
  name: Ink
  price: 9000.00
  door style: shaker
  fronts: {doors: 2, drawers: 7, thickness: 3/4"}
  stores: {depth: 22", highest: 26"}
- selection: Wall tile
  kind: tile
  name: Zelmor W
  price: 6.00
  face size: 4" x 4"
  thickness: 3/8"
  joint: 1/8"
  laid: {starts: at the range, niche: none}
- selection: Counter
  kind: counter
  name: Green schist
  price: 4000.00
  top: {thickness: 1 1/4"}
"#;

/// Each file that is spoiled, as it is written.
const FILES: [(&str, &str); 3] =
    [("book.yaml", BOOK), ("rooms/kitchen/room.yaml", ROOM), ("rooms/kitchen/things.yaml", THINGS)];

/// A sheet as it is read at the opening, its mark and what the review found left out; and what the mark is of.
#[derive(PartialEq)]
struct Paper {
    page: String,
    content: String,
}

struct Bench {
    project: Project,
    workshop: BuildCaches,
    cache: Cache,
}

impl Bench {
    /// Of the book as it is written.
    fn of_files() -> Self {
        let project = FILES.iter().fold(Project::new(), |project, (file, text)| project.file(file, text));
        let (workshop, cache) = (BuildCaches::new().expect("a theme"), Cache::temporary().expect("a cache"));
        Self { project, workshop, cache }
    }

    /// The sheets with one file as given.
    fn sheets(&mut self, file: &str, text: &str) -> BTreeMap<String, Paper> {
        std::fs::write(self.project.root().join(file), text).expect("a file of the book");
        let folder = Folder::open(&self.project.root()).expect("the book");
        let review = pipeline::review(&folder, Date::parse("2027-01-15").expect("a day")).expect("a book");
        let making =
            BuildOptions { draft: true, later: true, progress: &|_, _| {}, interrupt: &AtomicBool::new(false) };
        let made = pipeline::make(&folder, &review, &self.cache, &making, &mut self.workshop).expect("a draft");
        let openings = built(&review.book, &Plans::of(&review.book));
        let paper = |opening: &bookmatch::ledger::IssuedSheet| {
            let path = match SheetOf::of(opening) {
                SheetOf::Opening(name) => format!("installer/openings/kitchen/{name}.html"),
                SheetOf::Trade(trade) => format!("installer/trades/kitchen/{}.html", trade.word()),
                SheetOf::Plan => "client/rooms/kitchen.html".to_string(),
            };
            let page = made.output.files().find(|(at, _)| **at == *path)?.1;
            let page = match page {
                Content::Bytes(bytes) => bytes.to_vec(),
                Content::Laid(laid) => laid.whole().expect("its text"),
                Content::File { .. } => return None,
            };
            let page = String::from_utf8_lossy(&page).replace(&shown::in_short(&opening.mark), "");
            let page = match SheetOf::of(opening) {
                SheetOf::Plan => drawings(&page),
                SheetOf::Opening(_) | SheetOf::Trade(_) => without_the_form_s_limit(&without_findings(page)),
            };
            Some((
                format!("{}{}", opening.opening, opening.trade.clone().unwrap_or_default()),
                Paper { page, content: opening.content.to_string() },
            ))
        };
        openings.iter().filter_map(paper).collect()
    }
}

/// The fields of a sheet, and of the room around it, that a language has no word for: a revision names them.
fn untold(content: &str, language: &str) -> Vec<String> {
    let words = std::fs::read_to_string(format!("themes/standard/words/{language}.yaml")).expect("the words");
    let words: serde_yaml::Value = serde_yaml::from_str(&words).expect("YAML");
    let content: serde_json::Value = serde_json::from_str(content).expect("JSON");
    let keys = |value: &serde_json::Value| value.as_object().expect("fields").keys().cloned().collect::<Vec<_>>();
    let all = keys(&content).into_iter().chain(content.get("around").map_or_else(Vec::new, keys));
    let never_changes = ["around", "shown", "room", "opening", "sheet", "items", "sheet version"];
    let has = |key: &str| words["fields"].get(key.replace([' ', '-'], "_").as_str()).is_some();
    all.filter(|key| !never_changes.contains(&key.as_str()) && !has(key)).collect()
}

/// What is drawn on a page.
fn drawings(page: &str) -> String {
    let parts = page.split("<svg").skip(1).map(|part| part.split("</svg>").next().unwrap_or_default());
    parts.filter(|part| part.contains("room")).collect()
}

/// Findings are judged anew each day, and are of no mark; nor is the line of what can hurt, which sums them up.
fn without_findings(page: String) -> String {
    let page = without(&page, "<section class=\"heed", "</section>");
    without(&page, "<div class=\"heed line", "</div></div>")
}

/// A page without its parts that begin and end so.
fn without(page: &str, begin: &str, end: &str) -> String {
    let mut parts = page.split(begin);
    let first = parts.next().unwrap_or_default().to_string();
    first + &parts.map(|part| part.split_once(end).map_or("", |(_, after)| after)).collect::<String>()
}

/// How high a reading may be under the ceiling is for the form alone: where it governs, the sheet shows it.
fn without_the_form_s_limit(page: &str) -> String {
    let mut parts = page.split("\"above\":\"");
    let mut text = parts.next().unwrap_or_default().to_string();
    for part in parts {
        text += part.trim_start_matches(|one: char| one.is_ascii_digit());
    }
    text
}

/// The text with each of its inches in turn half an inch more, and the line that it stands in.
fn spoiled(text: &str) -> Vec<(String, String)> {
    let inches: Vec<usize> = text.match_indices('"').map(|(at, _)| at).collect();
    let each = inches.into_iter().filter_map(|at| {
        let (before, after) = text.split_at(at);
        let starts = before.rfind(|one: char| !(one.is_ascii_digit() || one == '/' || one == ' '))? + 1;
        let figure = before.get(starts..)?;
        let figure = figure.trim_start();
        let starts = at - figure.len();
        let whole: u32 = figure.split([' ', '/']).next()?.parse().ok()?;
        let other = match figure.split_once(' ') {
            Some((_, part)) => format!("{} {part}", whole + 1),
            None if figure.contains('/') => format!("1 {figure}"),
            None => format!("{}", whole + 1),
        };
        let line = before.rsplit('\n').next().unwrap_or_default().trim();
        Some((format!("{line} -> {other}"), format!("{}{other}{after}", text.get(..starts)?)))
    });
    each.collect()
}

#[test]
fn no_sheet_changes_whose_mark_stays() {
    let mut bench = Bench::of_files();
    let base = bench.sheets("book.yaml", BOOK);
    assert_eq!(base.len(), 11, "{:?}", base.keys());
    let (mut unmarked, mut both, mut tried) = (Vec::new(), 0, 0);
    for (file, text) in FILES {
        for (what, text) in spoiled(text) {
            tried += 1;
            for (opening, now) in bench.sheets(file, &text) {
                let was = &base[&opening];
                match (now.page != was.page, now.content != was.content) {
                    (true, false) => unmarked.push(format!("{opening}: {what}")),
                    (true, true) => both += 1,
                    (false, _) => {}
                }
            }
        }
        bench.sheets(file, text);
    }
    for paper in base.values() {
        assert_eq!(untold(&paper.content, "es"), Vec::<String>::new(), "fields without a word");
    }
    println!("{tried} lengths written otherwise, {both} sheets changed");
    assert!(unmarked.is_empty(), "changed under the same mark:\n{}", unmarked.join("\n"));
    assert!(both > 60, "{both}");
}
