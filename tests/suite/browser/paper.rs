//! What paper says of scale holds on paper, and an opening takes few sheets.

use std::path::Path;

use super::drive;
use crate::project::Project;
use crate::project::example::{TODAY, published};

/// An inch is 72 points (ISO 32000-1, 8.3.2.3) and 25.4 mm; the bars are measured by Poppler's `pdftotext`.
#[test]
fn the_scale_that_is_printed_is_the_scale_that_is_measured_on_a4_and_letter() {
    let installer = published().join("installer");
    let pages = ["refrigerator", "range", "microwave", "sink"].map(|name| format!("openings/kitchen/{name}.html"));
    let mut arguments = vec![installer.to_str().expect("UTF-8"), "index.html"];
    arguments.extend(pages.iter().map(String::as_str));
    let said = drive("scale.mjs", &arguments);
    assert!(said.trim().split(' ').next().unwrap().parse::<usize>().unwrap() > 20, "{said}");
}

#[test]
fn a_metric_book_s_scales_hold_too() {
    let project = Project::new()
        .file("book.yaml", "title: Trial\nclient: Nobody\nunits: metric\ncurrency: EUR\n")
        .file(
            "rooms/pantry/room.yaml",
            "name: Pantry\nopenings:\n  it: {takes: refrigerator, width: 600 mm, height: 1790 mm, depth: 560 mm, in front: 1100 mm, measured: {on: 2027-01-11, by: Teo Varrick}}\n",
        )
        .file(
            "rooms/pantry/it.yaml",
            "selection: It\nkind: refrigerator\nplace: it\nsize: {width: 590 mm, height: 1770 mm, depth: 545 mm}\n",
        );
    let site = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", site.to_str().unwrap()]).exits(0);
    let installer = site.join("installer");
    let said = drive("scale.mjs", &[installer.to_str().unwrap(), "openings/pantry/it.html"]);
    assert_eq!(said.trim(), "6 bars");
}

/// A sheet at the opening is two leaves: on the first all that it is set by, on the second the way in and what is
/// written on site.
#[test]
fn an_opening_takes_two_sheets_of_paper_and_the_first_is_complete() {
    let installer = published().join("installer");
    let of_kitchen = ["hood", "refrigerator", "range", "microwave", "sink", "dishwasher"].map(|name| ("kitchen", name));
    let of_bath = ["vanity", "toilet", "tub", "mirror"].map(|name| ("bath", name));
    let of_laundry = ["washer", "dryer", "trough", "cupboards"].map(|name| ("laundry", name));
    let all = of_kitchen.iter().chain(&of_bath).chain(&of_laundry);
    let pages: Vec<String> = all.map(|(room, name)| format!("openings/{room}/{name}.html")).collect();
    let said = looked_at(&installer, &pages);
    assert_eq!(said.lines().count(), 2 * pages.len(), "{said}");
    for line in said.lines() {
        let (sheets, first) = told(line);
        assert_eq!(sheets, 2, "{line}");
        assert!(first.contains("NEEDS, MEASURED, LEFT OVER"), "no sizes on the first sheet: {line}");
        assert!(first.contains("DRAWINGS") || line.starts_with("openings/bath/tub"), "no drawing: {line}");
        assert!(!first.contains("YOUR TAPE"), "{line}");
    }
    // Seen from above it stands on the first as well where that has room, whole.
    let plans = said.lines().filter(|line| told(line).1.contains("THE PLAN")).count();
    assert!(plans * 4 >= said.lines().count(), "the plan of {plans} sheets stands on the first:\n{said}");
    let points = said.lines().filter(|line| told(line).1.contains("BRING IT TO")).count();
    assert!(points > pages.len(), "services of {points} sheets stand on the first:\n{said}");
}

/// Whoever has the sheet in hand signs for its issue on it: neither that line nor the code to scan takes a leaf of its own.
#[test]
fn an_opening_that_was_issued_has_the_line_that_it_came_to_hand_on_its_second_sheet() {
    let project = Project::of_the_example();
    let book = std::fs::read_to_string(project.root().join("book.yaml")).unwrap();
    let project = project.file("book.yaml", &format!("{book}\npublished at: https://firm.example/books/alder-court\n"));
    project.run(["issue", "--for", "approval", "--today", TODAY]).exits(0);
    let out = project.beside("site");
    project.run(["publish", "--today", TODAY, "--out", out.to_str().unwrap()]).exits(0);
    let installer = out.join("installer");
    let names = |room: &str| {
        let listed = std::fs::read_dir(installer.join("openings").join(room)).unwrap();
        let room = room.to_owned();
        listed.map(move |entry| format!("openings/{room}/{}", entry.unwrap().file_name().into_string().unwrap()))
    };
    let pages: Vec<String> = names("kitchen").chain(names("bath")).collect();
    assert!(pages.len() > 4, "{pages:?}");
    let said = looked_at(&installer, &pages);
    for line in said.lines() {
        let (sheets, first) = told(line);
        assert_eq!(sheets, 2, "{line}");
        assert!(!first.contains("THIS ISSUE CAME TO HAND"), "{line}");
    }
    for page in pages {
        let html = std::fs::read_to_string(installer.join(&page)).unwrap();
        assert_eq!(html.matches("class=\"lines signed-for\"").count(), 1, "{page}");
        assert!(html.contains("<div class=\"code\">"), "{page}");
    }
}

/// The same of books in millimetres, whose drawings are taller, of a Spanish household's too.
#[test]
fn openings_of_metric_books_take_two_sheets_as_well() {
    let books = [
        ("tests/books/island", "kitchen", ["hob", "refrigerator"], "DRAWINGS"),
        ("tests/books/evenings/bano", "cocina", ["placa", "frigorifico"], "DIBUJOS"),
    ];
    for (book, room, openings, drawings) in books {
        let project = Project::copy_of(book);
        let site = project.beside("site");
        project.run(["publish", "--draft", "--today", "2027-01-15", "--out", site.to_str().expect("UTF-8")]).exits(0);
        let pages = openings.map(|opening| format!("openings/{room}/{opening}.html"));
        let said = looked_at(&site.join("installer"), &pages);
        assert_eq!(said.lines().count(), 2 * pages.len(), "{said}");
        for line in said.lines() {
            let (sheets, first) = told(line);
            assert!(sheets == 2 && first.contains(drawings), "{book}: {line}");
        }
    }
}

/// Nothing of a trade's sheet is cut or too small to read, however long it is.
#[test]
fn sheets_of_trades_and_of_deliveries_are_whole_on_paper() {
    let installer = published().join("installer");
    let kitchen = ["fabricator", "joiner", "setter", "electrician", "plumber"];
    let trades = kitchen.map(|trade| format!("trades/kitchen/{trade}.html"));
    let more = ["trades/bath/plumber.html", "deliveries/from-sluicemoor-fittings.html"].map(str::to_owned);
    let pages: Vec<String> = trades.into_iter().chain(more).collect();
    let said = looked_at(&installer, &pages);
    assert_eq!(said.lines().count(), 2 * pages.len(), "{said}");
}

/// What the script says of pages that it printed.
#[track_caller]
fn looked_at(site: &Path, pages: &[String]) -> String {
    let mut arguments = vec![site.to_str().expect("UTF-8")];
    arguments.extend(pages.iter().map(String::as_str));
    drive("opening_sheets.mjs", &arguments)
}

/// How many sheets a page takes, and what stands on the first.
fn told(line: &str) -> (usize, &str) {
    let mut parts = line.splitn(4, ' ').skip(2);
    let sheets = parts.next().and_then(|count| count.parse().ok()).expect("a count");
    (sheets, parts.next().unwrap_or_default())
}
