//! What `publish` writes, on the example project.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::project::{Project, tree};

const TODAY: [&str; 2] = ["--today", "2027-01-15"];

fn publish(project: &Project, out: &Path, more: &[&str]) -> crate::project::Ran {
    let out = out.to_str().unwrap();
    project.run(["publish", "--out", out].into_iter().chain(TODAY).chain(more.iter().copied()))
}

fn published() -> (Project, PathBuf) {
    let project = Project::of_the_example();
    let out = project.beside("site");
    publish(&project, &out, &[]).exits(0).says("client/index.html");
    (project, out)
}

fn every_file(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if entry.is_dir() { files.extend(every_file(&entry)) } else { files.push(entry) }
    }
    files
}

#[test]
fn a_second_run_with_nothing_changed_writes_the_same_bytes_and_touches_nothing() {
    let (project, out) = published();
    let before = tree(&out);
    publish(&project, &out, &[]).exits(0).says("0 new, 0 changed").says("0 removed");
    before.same_as(&tree(&out));
    let other = project.beside("elsewhere");
    publish(&project, &other, &[]).exits(0);
    before.same_as(&tree(&other));
}

#[test]
fn costs_margins_and_private_notes_stand_in_the_office_alone() {
    let (_project, out) = published();
    // A cost, a margin, and words of two private notes of the example.
    let private: [&[u8]; 4] = [b"2,540.00", b"2540.00", b"alley key", b"Deposit 50"];
    let holds = |path: &Path| {
        let bytes = std::fs::read(path).unwrap();
        private.iter().any(|words| bytes.windows(words.len()).any(|window| window == *words))
    };
    for folder in ["client", "installer"] {
        let leaks: Vec<PathBuf> = every_file(&out.join(folder)).into_iter().filter(|path| holds(path)).collect();
        assert!(leaks.is_empty(), "{leaks:?}");
        for pdf in every_file(&out.join(folder)).iter().filter(|path| path.extension().is_some_and(|end| end == "pdf"))
        {
            let text = Command::new("pdftotext").arg(pdf).arg("-").output().expect("pdftotext (poppler-utils)").stdout;
            assert!(!String::from_utf8_lossy(&text).contains("2,540.00"), "{}", pdf.display());
        }
    }
    assert!(every_file(&out.join("office")).iter().any(|path| holds(path)), "the office has its costs");
    let client = std::fs::read_to_string(out.join("client/items/kitchen/range.html")).unwrap();
    assert!(client.contains("$3,180.00") && !client.contains("Cost") && !client.contains("Margin"));
}

/// Independent reader: exiftool.
#[test]
fn no_published_picture_carries_metadata() {
    let (_project, out) = published();
    let told =
        Command::new("exiftool").args(["-r", "-ext", "jpg", "-G1", "-j", "-q"]).arg(&out).output().expect("exiftool");
    let pictures: serde_json::Value = serde_json::from_slice(&told.stdout).unwrap();
    let pictures = pictures.as_array().unwrap();
    assert!(pictures.len() > 100, "{}", pictures.len());
    for picture in pictures {
        for key in picture.as_object().unwrap().keys().filter(|key| key.contains(':')) {
            let plain =
                ["ExifTool:", "System:", "File:", "JFIF:", "Composite:"].iter().any(|group| key.starts_with(group));
            assert!(plain, "{}: {key}", picture["SourceFile"]);
        }
    }
}

#[test]
fn what_no_longer_belongs_is_removed_and_what_is_not_ours_stays() {
    let (project, out) = published();
    std::fs::write(out.join("client/mine.txt"), "mine").unwrap();
    assert!(out.join("client/items/hall/street-door.html").exists());
    let choices = std::fs::read_to_string(project.root().join("rooms/hall/choices.yaml")).unwrap();
    let without: String =
        choices.lines().filter(|line| !line.contains("Street door")).map(|line| format!("{line}\n")).collect();
    std::fs::write(project.root().join("rooms/hall/choices.yaml"), without).unwrap();
    std::fs::remove_file(project.root().join("rooms/hall/photos/paint-door.jpg")).unwrap();
    publish(&project, &out, &[]).exits(0);
    assert!(!out.join("client/items/hall/street-door.html").exists());
    assert_eq!(std::fs::read_to_string(out.join("client/mine.txt")).unwrap(), "mine");
}

#[test]
fn a_draft_is_published_though_findings_stop_the_work_and_says_so_on_every_page() {
    let project = Project::of_the_example().without("rooms/hall/photos/lantern.jpg");
    let out = project.beside("site");
    publish(&project, &out, &[]).exits(1).says("complete/photo").says("--draft");
    assert!(!out.exists(), "nothing was written");
    publish(&project, &out, &["--draft"]).exits(0);
    for page in every_file(&out).iter().filter(|path| path.extension().is_some_and(|end| end == "html")) {
        assert!(std::fs::read_to_string(page).unwrap().contains("Draft"), "{}", page.display());
    }
    let pdf =
        Command::new("pdftotext").arg(out.join("client/sheets/whole-book.pdf")).arg("-").output().expect("pdftotext");
    assert!(String::from_utf8_lossy(&pdf.stdout).to_lowercase().contains("draft"));
}

#[test]
fn a_book_that_start_lays_out_reviews_clean_and_publishes() {
    let project = Project::new();
    let folder = project.beside("new");
    let folder = folder.to_str().unwrap();
    project.run(["start", folder]).exits(0).says("rooms/kitchen/range.yaml");
    project.run(["review", folder]).exits(0).says("0 stops, 0 queries, 0 notes");
    project.run(["publish", folder, "--out", &format!("{folder}/site")]).exits(0);
    let before = tree(Path::new(folder));
    project.run(["start", folder]).exits(2).says("is not empty");
    before.same_as(&tree(Path::new(folder)));
}

/// A room's sheet speaks of its own open items, not of the whole book's.
#[test]
fn a_rooms_sheet_counts_its_own_open_items() {
    let (_project, out) = published();
    let text = |path: &str| {
        let told =
            Command::new("pdftotext").args(["-l", "1"]).arg(out.join(path)).arg("-").output().expect("pdftotext");
        String::from_utf8_lossy(&told.stdout).split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let open = |text: &str| {
        let (before, _) = text.split_once(" still to be chosen").expect("items are open");
        let words: Vec<&str> = before.rsplit(' ').take(3).collect();
        words[2].parse::<u32>().expect("a count")
    };
    let whole = open(&text("client/sheets/whole-book.pdf"));
    let kitchen = text("client/sheets/rooms/kitchen.pdf");
    assert!(open(&kitchen) < whole, "{kitchen}");
    assert!(kitchen.contains(&format!("{} items", open(&kitchen))), "{kitchen}");
}

/// The refrigerator's sheet draws its first option while three are open.
#[test]
fn an_openings_sheet_tells_what_was_found_of_the_option_that_it_draws() {
    let (_project, out) = published();
    let sheet = std::fs::read_to_string(out.join("installer/openings/kitchen/refrigerator.html")).unwrap();
    assert!(sheet.contains("goes through the front door with"), "what was found of the option that is drawn");
    let told = "stands 5\u{a0}<i class=\"fr w\">1/8</i>";
    assert!(!sheet.contains(&format!("Refrigerator {told}")), "what was found of another option: {sheet}");
    let review = std::fs::read_to_string(out.join("office/review.html")).unwrap();
    assert!(review.contains(told), "the office is told of every option");
}

#[test]
fn a_waiver_and_its_reason_are_the_trade_s_and_the_office_s_and_its_caution_is_everybody_s() {
    let waivers = "{rule: fit/width, because: cut back on site, by: Ines, on: 2027-01-12, until: cabinets set}";
    let carton = "{rule: fit/way-in, because: through the window, by: Ines, on: 2027-01-12}";
    let project = Project::new()
        .file(
            "book.yaml",
            "title: A\nclient: B\nunits: imperial\ncurrency: USD\nmilestones: {cabinets set: 2027-06-01}\nway in: [{name: door, width: 30\", height: 80\"}]\n",
        )
        .file(
            "rooms/kitchen/room.yaml",
            &format!("name: Kitchen\nopenings:\n  hole: {{takes: refrigerator, width: 30\", waive: [{waivers}, {carton}]}}\n"),
        )
        .file(
            "rooms/kitchen/fridge.yaml",
            "selection: Fridge\nkind: refrigerator\nplace: hole\nsize: {width: 31\"}\nfit: {sheet: {name: S, revision: A}, carton: 40\" x 40\" x 70\"}\n",
        );
    let out = project.beside("site");
    publish(&project, &out, &["--draft"]).exits(0);
    for folder in ["client", "installer", "office"] {
        let pages: String = every_file(&out.join(folder))
            .into_iter()
            .filter(|path| path.extension().is_some_and(|ending| ending == "html"))
            .map(|path| std::fs::read_to_string(path).unwrap())
            .collect();
        for words in ["cut back on site", "through the window", "until cabinets set"] {
            assert_eq!(pages.contains(words), folder != "client", "{folder}: {words}");
        }
        assert!(pages.contains("Heavy enough to injure"), "{folder}");
        // What does not fit is part of the answer whether it fits, for whoever reads that.
        assert!(pages.contains("too wide"), "{folder}");
    }
}

#[test]
fn a_page_is_named_by_what_its_item_is_called_without_accents_and_no_two_are_one() {
    let book = "title: Casa\nclient: Nadie\nunits: metric\ncurrency: EUR\n\
        milestones: {cabinets set: 2027-09-01}\n";
    let things = "- selection: Grifería\n  kind: tap\n- selection: Griferia\n  kind: tap\n\
        - selection: Spüle\n  kind: sink\n- selection: Spüle\n  kind: sink\n\
        - {selection: Baño, id: b-1, kind: bathtub}\n- selection: Tap\n  kind: tap\n";
    let project = Project::new()
        .file("book.yaml", book)
        .file("rooms/baño/room.yaml", "name: Baño\n")
        .file("rooms/baño/cosas.yaml", things);
    let out = project.beside("site");
    publish(&project, &out, &["--draft"]).exits(0);
    let mut pages: Vec<String> = every_file(&out.join("client/items/bano"))
        .iter()
        .filter_map(|path| Some(path.file_name()?.to_str()?.to_owned()))
        .collect();
    pages.sort();
    // The plain spelling has its own id; the accented one keeps the letters that its id has.
    assert_eq!(pages, ["b-1.html", "grifer-a.html", "griferia.html", "spule-2.html", "spule.html", "tap.html"]);
    let cover = std::fs::read_to_string(out.join("client/rooms/bano.html")).unwrap();
    for page in pages {
        assert!(cover.contains(&format!("items/bano/{page}")), "{page}");
    }
}
