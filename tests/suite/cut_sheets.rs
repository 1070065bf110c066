//! The maker's own sheet of a thing: passed on to those who build, as it stands, and in the marks of what they build
//! by; to nobody else.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use bookmatch::assess::built;
use bookmatch::ledger::IssuedSheet;
use bookmatch::pipeline;
use bookmatch::shown::{self, built_changes};
use bookmatch::site::plan::Plans;
use bookmatch::source::Folder;
use bookmatch::units::Date;

use crate::project::Project;

const PDF: &str = "%PDF-1.4\n1 0 obj\n<</Type /Catalog>>\nendobj\ntrailer\n<</Root 1 0 R>>\nstartxref\n9\n%%EOF\n";
const BOOK: &str = "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n";
const ROOM: &str = "name: Kitchen\noutline: 12' x 9'\nruns:\n  long wall:\n    wall: A\n    depth: 24\"\n    counter: {depth: 25 1/2\", height: 36\"}\n    parts: [{cabinet: sink base, width: 36\", doors: 2, holds: [sink]}]\n\
    openings:\n  sink: {takes: sink, width: 33\", depth: 20\", service: {water: 1/2\"}}\n  range: {takes: range, width: 30 1/16\"}\n";
const SINK: &str = "selection: Sink\nkind: sink\nplace: sink\nmaker: Zelmor\nmodel: S 1\nprice: 400.00\nfit: {sheet: {name: S 1 template, revision: B}, opening: {width: 32\"}}\n";
const COUNTER: &str = "selection: Counter\nkind: counter\nname: Green schist\nprice: 4000.00\ntop: {material: stone, lies on: [long wall]}\n";
const ATTACHED: &str =
    "cut sheet: {file: s1.pdf, link: \"https://zelmor.example/s1\", name: S 1 template, revision: B}\n";

fn kitchen() -> Project {
    Project::new()
        .file("book.yaml", BOOK)
        .file("rooms/kitchen/room.yaml", ROOM)
        .file("rooms/kitchen/sink.yaml", SINK)
        .file("rooms/kitchen/counter.yaml", COUNTER)
}

fn with_a_sheet() -> Project {
    with_the_sheet(PDF.as_bytes())
}

/// A kitchen whose sink has its maker's sheet.
pub fn with_the_sheet(pdf: &[u8]) -> Project {
    kitchen().file("rooms/kitchen/sink.yaml", &format!("{SINK}{ATTACHED}")).bytes("rooms/kitchen/sheets/s1.pdf", pdf)
}

/// What each sheet is built from, by its opening or its trade, and the marks of the client's items.
struct Marks {
    sheets: BTreeMap<String, IssuedSheet>,
    items: Vec<String>,
}

fn marks(sink: &str, files: &[(&str, &str)]) -> Marks {
    let own = [("book.yaml", BOOK), ("rooms/kitchen/room.yaml", ROOM), ("rooms/kitchen/sink.yaml", sink)];
    let all = own.iter().chain(files).chain(&[("rooms/kitchen/counter.yaml", COUNTER)]);
    let folder = Folder::in_memory(all.map(|(path, text)| (*path, *text)));
    let review = pipeline::review_to_issue(&folder, Date::parse("2027-01-15").unwrap()).expect("a book");
    let sheets = built(&review.book, &Plans::of(&review.book)).into_iter();
    let named = |sheet: IssuedSheet| (format!("{}{}", sheet.opening, sheet.trade.clone().unwrap_or_default()), sheet);
    let items = shown::items(&review.book, &shown::as_read(&review.book));
    Marks { sheets: sheets.map(named).collect(), items: items.values().map(|item| item.mark.to_string()).collect() }
}

/// The sheets that are another than before, with what is told of each.
fn others(before: &Marks, after: &Marks) -> BTreeMap<String, Vec<String>> {
    assert_eq!(before.items, after.items, "no mark of the client's is another");
    let changed = after.sheets.iter().filter(|(name, sheet)| before.sheets[*name].mark != sheet.mark);
    let told = |(name, sheet): (&String, &IssuedSheet)| {
        let changes = built_changes(&before.sheets[name].content, &sheet.content);
        (name.clone(), changes.iter().map(|change| change.words().text().to_string()).collect())
    };
    changed.map(told).collect()
}

/// What is published of those who build: each page and file by its path.
fn published(project: &Project) -> std::path::PathBuf {
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    out
}

fn sheets_in(folder: &Path) -> Vec<String> {
    let Ok(entries) = fs::read_dir(folder.join("cut-sheets")) else { return vec![] };
    entries.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
}

#[test]
fn it_is_passed_on_to_those_who_build_by_it_and_to_nobody_else() {
    let project = with_a_sheet();
    let out = published(&project);
    let names = sheets_in(&out.join("installer"));
    let [name] = names.as_slice() else { panic!("{names:?}") };
    assert_eq!(fs::read_to_string(out.join("installer/cut-sheets").join(name)).unwrap(), PDF);
    for (page, up) in [
        ("openings/kitchen/sink.html", "../../"),
        ("trades/kitchen/fabricator.html", "../../"),
        ("trades/kitchen/plumber.html", "../../"),
        ("index.html", ""),
    ] {
        let text = fs::read_to_string(out.join("installer").join(page)).unwrap();
        assert!(text.contains(&format!("href=\"{up}cut-sheets/{name}\"")), "{page} leads to it");
        assert!(text.contains("S 1 template, rev. B</a> <small>PDF, 0.1 MB</small>"), "{page} names it");
        assert!(text.contains(">https://zelmor.example/s1</a>"), "{page} has its address in full");
    }
    let other = fs::read_to_string(out.join("installer/openings/kitchen/range.html")).unwrap();
    assert!(!other.contains("cut-sheets/"), "nothing on the sheet of another opening");
    for folder in ["client", "office"] {
        assert_eq!(sheets_in(&out.join(folder)), Vec::<String>::new(), "{folder}");
    }
    let client = fs::read_to_string(out.join("client/items/kitchen/sink.html")).unwrap();
    assert!(!client.contains("zelmor.example"), "the client is not shown it");
}

#[test]
fn a_file_that_bound_pages_says_that_it_is_not_in_it() {
    let project = with_a_sheet();
    for of in ["kitchen/sink", "kitchen/fabricator", "installer"] {
        let file = project.beside("bound.html");
        project
            .run(["publish", "--draft", "--today", "2027-01-15", "--one-file", file.to_str().unwrap(), "--of", of])
            .exits(0);
        let text = fs::read_to_string(&file).unwrap();
        assert!(text.contains("S 1 template, rev. B <small>(not in this file)</small></a>"), "{of}");
        assert!(text.contains("href=\"https://zelmor.example/s1\""), "{of}");
    }
}

#[test]
fn another_file_or_revision_is_another_sheet_of_those_who_build_by_it_and_none_of_the_client_s() {
    let attached = format!("{SINK}{ATTACHED}");
    let at = "rooms/kitchen/sheets/s1.pdf";
    let before = marks(&attached, &[(at, PDF)]);
    let by_it = ["fabricator", "plumber", "sink"];
    let other = others(&before, &marks(&attached, &[(at, &PDF.replace("%PDF-1.4", "%PDF-1.7"))]));
    assert_eq!(other.keys().collect::<Vec<_>>(), by_it, "{other:?}");
    assert!(other.values().all(|told| told == &["Sink (Zelmor S 1): cut sheet file is another"]), "{other:?}");
    let revised = format!("{SINK}{}", ATTACHED.replace("revision: B", "revision: C"));
    let other = others(&before, &marks(&revised, &[(at, PDF)]));
    assert_eq!(other.keys().collect::<Vec<_>>(), by_it);
    assert!(other.values().all(|told| told == &["Sink (Zelmor S 1): cut sheet revision from B to C"]), "{other:?}");
    // Wherever the file stands and whatever it is called, its bytes are what is built by.
    let renamed = format!("{SINK}{}", ATTACHED.replace("s1.pdf", "t.pdf"));
    assert!(others(&before, &marks(&renamed, &[("rooms/kitchen/t.pdf", PDF)])).is_empty());
}

/// A book that attaches nothing is what it was.
#[test]
fn a_sheet_without_one_says_nothing_of_it() {
    let says = |marks: &Marks| marks.sheets.values().any(|sheet| sheet.content.to_string().contains("cut sheet"));
    let without = marks(SINK, &[]);
    assert!(!says(&without), "no mark of a book without one is another");
    let with = marks(&format!("{SINK}{ATTACHED}"), &[("rooms/kitchen/sheets/s1.pdf", PDF)]);
    assert!(says(&with) && !others(&without, &with).is_empty());
}

#[test]
fn a_sheet_of_another_revision_than_the_figures_warns_on_site() {
    let revised = format!("{SINK}{}", ATTACHED.replace("revision: B", "revision: C"));
    let project = with_a_sheet().file("rooms/kitchen/sink.yaml", &revised);
    let page = fs::read_to_string(published(&project).join("installer/openings/kitchen/sink.html")).unwrap();
    assert!(page.contains("another one than the figures on this sheet are of (S 1 template, rev. B)"), "{page}");
}

#[cfg(unix)]
#[test]
fn a_link_out_of_the_folder_is_never_followed() {
    let project = kitchen();
    let outside = project.beside("outside.pdf");
    fs::write(&outside, PDF).unwrap();
    fs::create_dir_all(project.root().join("rooms/kitchen/sheets")).unwrap();
    let project = project
        .file("rooms/kitchen/sink.yaml", &format!("{SINK}{ATTACHED}"))
        .link("rooms/kitchen/sheets/s1.pdf", &outside);
    project
        .run(["review", "--today", "2027-01-15"])
        .says("source/outside-book")
        .says("the cut sheet `s1.pdf` is not in the book");
    assert_eq!(sheets_in(&published(&project).join("installer")), Vec::<String>::new());
}

/// What is found to be no PDF is published nowhere, and its name leads nowhere.
#[test]
fn what_can_t_be_passed_on_is_not() {
    let project = with_a_sheet().file("rooms/kitchen/sheets/s1.pdf", "<!doctype html><script>alert(1)</script>");
    project.run(["review", "--today", "2027-01-15"]).says("it is no PDF, whatever its name says");
    let out = published(&project);
    assert_eq!(sheets_in(&out.join("installer")), Vec::<String>::new());
    let page = fs::read_to_string(out.join("installer/openings/kitchen/sink.html")).unwrap();
    assert!(!page.contains("cut-sheets/"), "no link to what is not there");
    assert!(page.contains("S 1 template, rev. B"), "what it is called stands all the same");
}
