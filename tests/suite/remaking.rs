//! What a preview makes anew after each change is, to the byte, what a whole making gives.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::PathBuf;
use std::sync::atomic::AtomicBool;

use bookmatch::finding::Finding;
use bookmatch::pictures::{Cache, Digest};
use bookmatch::pipeline::{self, BuildCaches, BuildOptions};
use bookmatch::source::Folder;
use bookmatch::units::Date;

use crate::project::Project;

/// Every file's digest, and all that is to be said.
#[derive(Default, PartialEq)]
struct Draft {
    files: BTreeMap<String, Digest>,
    findings: Vec<Finding>,
    waiting: bool,
}

impl Draft {
    /// The paths of files that are not the same in another draft.
    fn differs<'a>(&'a self, other: &'a Draft) -> BTreeSet<&'a String> {
        let same = |path: &String| self.files.get(path) == other.files.get(path);
        self.files.keys().chain(other.files.keys()).filter(|path| !same(path)).collect()
    }
}

/// A book under change, made in two ways that share nothing.
struct Bench {
    project: Project,
    workshop: BuildCaches,
    own: Cache,
    other: Cache,
    last: Draft,
    /// Sheets waited after the last change.
    waited: bool,
}

impl Bench {
    /// A copy of the example.
    fn of_the_example() -> Self {
        Self::of(Project::copy_of("example-project"))
    }

    /// The small book that `start` lays out.
    fn of_a_small_book() -> Self {
        let maker = Project::new();
        let laid = maker.beside("laid");
        maker.run(["start".as_ref(), laid.as_os_str()]).exits(0);
        Self::of(Project::copy_of(laid.to_str().expect("a path that is text")))
    }

    fn of(project: Project) -> Self {
        let cache = || Cache::temporary().expect("a temporary cache");
        let workshop = BuildCaches::new().expect("a theme");
        let mut bench = Self { project, workshop, own: cache(), other: cache(), last: Draft::default(), waited: false };
        bench.meets(&[], "at first");
        bench
    }

    fn at(&self, path: &str) -> PathBuf {
        self.project.root().join(path)
    }

    /// The workshop, told of the paths that changed, makes what a new workshop makes; and that is new. Only
    /// sheets may wait, and they wait no longer than for the next making.
    #[track_caller]
    fn meets(&mut self, changed: &[&str], what: &str) {
        let folder = Folder::open(&self.project.root()).expect("the book");
        let soon = draft(&mut self.workshop, &folder, changed, &self.own, true);
        let again = draft(&mut self.workshop, &folder, &[], &self.own, false);
        let whole = draft(&mut BuildCaches::new().expect("a theme"), &folder, &[], &self.other, false);
        assert_eq!(again.differs(&whole), BTreeSet::new(), "{what}");
        assert!(again == whole, "{what}: other findings");
        assert!(again != self.last, "{what}: nothing changed, so nothing was tried");
        let waits = soon.differs(&whole);
        assert!(waits.iter().all(|path| path.ends_with(".pdf")), "{what}: {waits:?}");
        assert_eq!(waits.is_empty(), !soon.waiting, "{what}: {waits:?}");
        (self.last, self.waited) = (again, soon.waiting);
    }

    #[track_caller]
    fn after_writing(&mut self, path: &str, bytes: &[u8]) {
        fs::write(self.at(path), bytes).expect("a file of the book");
        self.meets(&[path], path);
    }

    #[track_caller]
    fn after_replacing(&mut self, path: &str, words: &str, by: &str) {
        let text = fs::read_to_string(self.at(path)).expect("a file of the book");
        assert!(text.contains(words), "{path} does not say {words}");
        self.after_writing(path, text.replacen(words, by, 1).as_bytes());
    }
}

fn draft(workshop: &mut BuildCaches, folder: &Folder, changed: &[&str], cache: &Cache, later: bool) -> Draft {
    let today = Date::parse("2027-01-15").expect("a day");
    let review = workshop.review(folder, changed.iter().copied(), today).expect("a book");
    let making = BuildOptions { draft: true, later, progress: &|_, _| {}, interrupt: &AtomicBool::new(false) };
    let made = pipeline::make(folder, &review, cache, &making, workshop).expect("a draft");
    let files = made.output.files().map(|(path, content)| (path.to_owned(), content.digest())).collect();
    Draft { files, findings: [review.assessment.findings, made.findings].concat(), waiting: made.waiting.is_some() }
}

#[test]
fn after_every_kind_of_change_the_draft_is_that_of_a_whole_making() {
    let mut bench = Bench::of_the_example();
    bench.after_replacing("rooms/kitchen/room.yaml", "A galley between", "A narrow galley between");
    bench.after_replacing("rooms/kitchen/appliances.yaml", "price: 1890.00", "price: 1910.00");
    #[cfg(feature = "sheets")]
    assert!(bench.waited, "a price stands on a sheet");
    bench.after_replacing("rooms/hall/notes.md", "past saving", "beyond saving");
    bench.after_replacing("book.yaml", "title: 14 Tallow Lane", "title: 15 Tallow Lane");
    bench.after_replacing("rooms/hall/choices.yaml", "file: lantern.jpg", "file: rail-hook.jpg");
    bench.after_replacing("rooms/hall/choices.yaml", "file: rail-hook.jpg", "file: lantern.jpg");
    // Words that no longer parse, and mended again.
    let choices = fs::read(bench.at("rooms/hall/choices.yaml")).unwrap();
    bench.after_writing("rooms/hall/choices.yaml", b"- {selection: Lantern");
    bench.after_writing("rooms/hall/choices.yaml", &choices);
    fs::remove_file(bench.at("rooms/bath/surfaces.yaml")).unwrap();
    bench.meets(&["rooms/bath/surfaces.yaml"], "a file gone");
    fs::rename(bench.at("rooms/hall"), bench.at("rooms/passage")).unwrap();
    let moved = ["choices.yaml", "notes.md", "room.yaml", "photos/lantern.jpg", "photos/room.jpg"];
    let moved = moved.map(|file| ["hall", "passage"].map(|room| format!("rooms/{room}/{file}"))).concat();
    bench.meets(&moved.iter().map(String::as_str).collect::<Vec<_>>(), "a room renamed");
}

#[test]
fn a_photo_that_changes_goes_or_hides_behind_a_link_is_made_again() {
    let mut bench = Bench::of_a_small_book();
    let photo = "rooms/kitchen/photos/moss.png";
    let [moss, steel] = [photo, "rooms/kitchen/photos/steel.png"].map(|path| fs::read(bench.at(path)).unwrap());
    bench.after_writing(photo, &steel);
    bench.after_writing(photo, b"no picture");
    bench.after_writing(photo, &moss);
    fs::remove_file(bench.at(photo)).unwrap();
    bench.meets(&[photo], "a photo gone");
    fs::create_dir(bench.at("store")).unwrap();
    fs::write(bench.at("store/range.png"), &steel).unwrap();
    std::os::unix::fs::symlink("../../../store/range.png", bench.at(photo)).unwrap();
    bench.meets(&[photo], "a link to a photo");
    // Nobody hears of what lies beside the rooms.
    fs::write(bench.at("store/range.png"), &moss).unwrap();
    bench.meets(&[], "a photo behind a link");
}

#[test]
fn what_the_cache_lost_is_made_again() {
    let mut bench = Bench::of_a_small_book();
    fs::remove_dir_all(bench.own.folder().join("renditions")).unwrap();
    bench.after_replacing("rooms/kitchen/room.yaml", "One wall, to begin with", "One wall first");
    let held = fs::read_dir(bench.own.folder().join("renditions")).unwrap().count();
    assert_eq!(held, fs::read_dir(bench.other.folder().join("renditions")).unwrap().count());
}

#[test]
fn a_theme_is_followed_file_by_file() {
    let mut bench = Bench::of_a_small_book();
    let standard = |path: &str| fs::read_to_string(format!("{}/themes/standard/{path}", env!("CARGO_MANIFEST_DIR")));
    fs::create_dir_all(bench.at("house/css")).unwrap();
    ["templates", "words", "sheets"]
        .iter()
        .for_each(|name| fs::create_dir(bench.at(&format!("house/{name}"))).unwrap());
    fs::write(bench.at("house/css/99-ours.css"), "p { margin: 0 }").unwrap();
    let book = fs::read_to_string(bench.at("book.yaml")).unwrap();
    bench.after_writing("book.yaml", format!("{book}theme: house\n").as_bytes());
    bench.after_replacing("house/css/99-ours.css", "0", "1px");
    assert!(!bench.waited, "no style stands on a sheet");
    bench.after_writing("house/words/en.yaml", b"cover: {rooms: Every room}");
    let cover = standard("templates/cover.html").unwrap().replacen("<h1", "<h1 class=\"ours\"", 1);
    bench.after_writing("house/templates/cover.html", cover.as_bytes());
    let sheet = standard("sheets/sign-off.typ").unwrap();
    bench.after_writing("house/sheets/sign-off.typ", (sheet + "#v(1mm)\nOurs\n").as_bytes());
    #[cfg(feature = "sheets")]
    assert!(bench.waited, "its templates make a sheet");
    fs::remove_dir_all(bench.at("house/sheets")).unwrap();
    bench.meets(&["house/sheets/sign-off.typ"], "the standard sheet again");
}
