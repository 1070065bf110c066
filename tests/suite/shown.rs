//! What a client's page shows of an item is what its mark is of: each field of the records is written in turn, and
//! page and mark change together, but for what is named here with its reason.

use std::collections::BTreeSet;
use std::sync::atomic::AtomicBool;

use bookmatch::book::vocabulary::{ACCESSORY, LAID, OPTION, PANEL, SELECTION, SIZE, STORES, TOP};
use bookmatch::pictures::Cache;
use bookmatch::pipeline::{self, BuildCaches, BuildOptions};
use bookmatch::publish::output::Content;
use bookmatch::shown;
use bookmatch::source::Folder;
use bookmatch::units::Date;
use bookmatch::vocabulary::{Mark, Record};

use crate::project::Project;

const FILE: &str = "rooms/kitchen/thing.yaml";
const BASE: &str = "selection: Thing\nkind: item\nmaker: Zelmor\nmodel: Z 1\nprice: 10.00\n";

/// What the page shows and nobody signs: it moves with the work and the supplier, or is a number on drawings.
const SHOWN_ALONE: &[&str] = &["lead time", "needed for", "tag"];
struct Bench {
    project: Project,
    workshop: BuildCaches,
    cache: Cache,
}

/// An item as its page has it, its mark left out, and what the mark is of.
#[derive(PartialEq)]
struct Item {
    page: String,
    content: String,
}

impl Bench {
    fn new() -> Self {
        let project = Project::new()
            .file(
                "book.yaml",
                "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\nallowances: {appliances: {amount: 9000, includes: delivery}}\n\
                 milestones: {cabinets set: 2027-06-01}\napprovers: [{id: ada, name: Ada Marrowby}]\n",
            )
            .file("rooms/kitchen/room.yaml", "name: Kitchen\nopenings: {range: {takes: item, width: 30\"}}\n")
            .photo("rooms/kitchen/photos/range-front.jpg");
        let (workshop, cache) = (BuildCaches::new().expect("a theme"), Cache::temporary().expect("a cache"));
        Self { project, workshop, cache }
    }

    fn item(&mut self, text: &str) -> Item {
        std::fs::write(self.project.root().join(FILE), text).expect("a file of the book");
        let folder = Folder::open(&self.project.root()).expect("the book");
        let today = Date::parse("2027-01-15").expect("a day");
        let review = pipeline::review_to_issue(&folder, today).expect("a book");
        let making =
            BuildOptions { draft: true, later: true, progress: &|_, _| {}, interrupt: &AtomicBool::new(false) };
        let made = pipeline::make(&folder, &review, &self.cache, &making, &mut self.workshop).expect("a draft");
        let page = made.output.files().find(|(path, _)| path.starts_with("client/items/kitchen/"));
        let page = match page.expect("the item's page").1 {
            Content::Bytes(bytes) => bytes.to_vec(),
            Content::Laid(laid) => laid.whole().expect("its text"),
            Content::File { path, .. } => panic!("a page is no picture: {}", path.display()),
        };
        let marked = shown::items(&review.book, &shown::as_read(&review.book));
        let marked = &marked.values().next().expect("an item");
        let page = String::from_utf8_lossy(&page).replace(&shown::in_short(&marked.mark), "");
        Item { page, content: marked.content.to_string() }
    }
}

/// A line for each field of a record, as its example has it, behind what opens the record in YAML.
fn lines(record: &Record, opening: &str) -> Vec<(String, String)> {
    let closing: String = opening
        .chars()
        .rev()
        .filter_map(|one| match one {
            '{' => Some('}'),
            '[' => Some(']'),
            _ => None,
        })
        .collect();
    let line = |key: &str, example: &str| format!("{opening}{key}: {example}{closing}\n");
    record.fields.iter().map(|field| (field.key.to_string(), line(field.key, field.example))).collect()
}

#[test]
fn a_page_shows_what_is_signed_and_what_is_signed_is_shown() {
    let mut bench = Bench::new();
    let base = bench.item(BASE);
    let written = ["selection", "kind", "options", "maker", "model", "price"];
    let parts = [(&SIZE, "size"), (&TOP, "top"), (&LAID, "laid"), (&PANEL, "panel"), (&STORES, "stores")];
    let parts = parts.map(|(record, group)| lines(record, &format!("{group}: {{")));
    let kit = lines(&ACCESSORY, "accessories: [{name: kit, ");
    let all = [lines(&SELECTION, ""), lines(&OPTION, ""), kit, parts.concat()];
    let stands = [&SELECTION, &OPTION].into_iter().flat_map(|record| record.fields);
    let stands: BTreeSet<&str> =
        stands.filter(|field| matches!(field.mark, Mark::In(..))).map(|field| field.key).collect();
    let mut never_written = BTreeSet::new();
    let (mut shown_alone, mut signed_alone, mut both) = (BTreeSet::new(), BTreeSet::new(), 0);
    for (key, line) in all.concat().into_iter().filter(|(key, _)| !written.contains(&key.as_str())) {
        let item = bench.item(&format!("{BASE}{line}"));
        if stands.contains(key.as_str()) && line.starts_with(&format!("{key}: ")) && item.content == base.content {
            never_written.insert(key.clone());
        }
        match (item.page != base.page, item.content != base.content) {
            (true, false) => _ = shown_alone.insert(key),
            (false, true) => _ = signed_alone.insert(key),
            (true, true) => both += 1,
            (false, false) => {}
        }
    }
    let expected: BTreeSet<String> = SHOWN_ALONE.iter().map(ToString::to_string).collect();
    assert_eq!(shown_alone, expected, "shown, and in no mark");
    assert_eq!(signed_alone, BTreeSet::new(), "in the mark, and not shown");
    assert_eq!(never_written, BTreeSet::new(), "in the mark by `explain mark`, and never in a content");
    println!("{both} fields are shown and signed");
    assert!(both > 60, "{both}");
}
