//! Drawings and verdicts of openings: one figure, one word, in the example and in books made up here.

use crate::project::Project;
use crate::project::example::published;
use roxmltree::Document;
use std::fs;
use std::path::Path;

/// What one installer's sheet says of each direction: `Too small`, `Too large`, or nothing of the sort.
struct Sheet {
    name: String,
    verdict: String,
    rows: Vec<(&'static str, String)>,
    /// All the lettering of each drawing, by the view that it is.
    drawings: Vec<(String, Vec<String>)>,
}

/// The words of a misfit, by direction: of the thing, and of the opening.
const WORDS: [(&str, &str, &str); 3] = [
    ("Width", "too wide", "opening too wide"),
    ("Height", "too tall", "opening too high"),
    ("Depth", "too deep", "opening too deep"),
];

fn sheets(installer: &Path) -> Vec<Sheet> {
    let pages = walkdir::WalkDir::new(installer.join("openings")).sort_by_file_name().into_iter().map(Result::unwrap);
    let pages = pages.filter(|page| page.path().extension().is_some_and(|ending| ending == "html"));
    pages.map(|page| sheet(page.path())).collect()
}

fn sheet(path: &Path) -> Sheet {
    let html = fs::read_to_string(path).unwrap();
    let after = |text: &str, start: &str| text.split_once(start).map(|(_, rest)| rest.to_string()).unwrap_or_default();
    let word = |text: &str| after(&after(text, "</svg>"), "<span>").split("</span>").next().unwrap().to_string();
    let row = |name: &'static str| {
        let row = after(&html, &format!("<tr><th scope=\"row\">{name}<small>"));
        let row = row.split("</tr>").next().unwrap().to_string();
        (name, word(&after(&row, "class=\"state\"")))
    };
    let drawings = html.split("<svg xmlns").skip(1).map(|rest| {
        let svg = format!("<svg xmlns{}</svg>", rest.split("</svg>").next().unwrap());
        let document = Document::parse(&svg).unwrap_or_else(|fault| panic!("{}: {fault}", path.display()));
        let texts = document.descendants().filter(|node| node.has_tag_name("text"));
        let all = |node: roxmltree::Node<'_, '_>| {
            node.descendants().filter_map(|inner| inner.text().filter(|_| inner.is_text())).collect()
        };
        let title = document.descendants().find(|node| node.has_tag_name("title")).and_then(|node| node.text());
        (title.unwrap_or_default().to_string(), texts.map(all).collect())
    });
    Sheet {
        name: path.display().to_string(),
        verdict: word(&after(&html, "class=\"verdict ")),
        rows: ["Width", "Height", "Depth"].map(row).to_vec(),
        drawings: drawings.collect(),
    }
}

/// A drawing tells a misfit if and only if the verdict has it; returns how many misfits were met.
fn agree(sheet: &Sheet) -> usize {
    let mut met = 0;
    for ((name, verdict), (direction, thing, opening)) in sheet.rows.iter().zip(WORDS) {
        assert_eq!(*name, direction);
        assert!(!verdict.is_empty(), "{}: no verdict on {name}", sheet.name);
        let misfit = matches!(verdict.as_str(), "Too small" | "Too large");
        met += usize::from(misfit);
        if misfit {
            assert_eq!(sheet.verdict, "Does not fit", "{}: {name} is {verdict}", sheet.name);
        }
        for (view, letters) in &sheet.drawings {
            let view_of = (direction, view.split(' ').next().unwrap());
            let shows =
                matches!(view_of, ("Width", "Front" | "Plan") | ("Height", "Front") | ("Depth", "Side" | "Plan"));
            let says = |words: &str| letters.iter().any(|text| text.ends_with(&format!(" {words}")));
            let what = format!("{}: {view}: {name} is `{verdict}`", sheet.name);
            assert_eq!(says(thing) && !says(opening), shows && verdict == "Too small", "{what}: {thing}");
            assert_eq!(says(opening), shows && verdict == "Too large", "{what}: {opening}");
        }
    }
    met
}

#[test]
fn every_drawing_of_the_example_says_of_misfits_what_the_verdict_says() {
    let all = sheets(&published().join("installer"));
    assert!(all.len() > 10, "{} sheets", all.len());
    let drawn: usize = all.iter().map(|sheet| sheet.drawings.len()).sum();
    assert!(drawn > 60, "{drawn} drawings");
    for sheet in &all {
        agree(sheet);
    }
}

/// Kinds that stand in a niche, that lie over the edge of a cabinet's hole, and that are let into a counter.
const KINDS: [&str; 7] = ["refrigerator", "dishwasher", "range", "wall oven", "microwave", "cooktop", "sink"];

/// How many cases there are of each.
const CASES: usize = 10;

/// A room with one opening a kind and case: the thing 1/2" too large, an exact fit, much room; what the
/// sheet asks above, below and beside the thing's own size; air; a new floor; sides that lean.
fn room(units: &str) -> (String, String) {
    let cases: [_; CASES] = [
        ("even", "", "width: 30\", height: 34\", depth: 24\"", "at least 30\"", ""),
        ("small", "", "width: 30 1/2\", height: 34 3/4\", depth: 25\"", "", ""),
        ("large", "", "width: 29\", height: 33\", depth: 20\"", "28\" to 29 1/2\"", ""),
        ("asks", "", "width: 29\", height: 33\", depth: 20\"", "at least 30 1/4\"", ""),
        ("laps", "", "width: 31\", height: 35\", depth: 20\"", "28 1/2\" to 30 1/8\"", ""),
        ("air", "", "width: 29 3/4\", height: 33\", depth: 23 7/8\"", "", "air: {left: 1/2\", back: 1/4\", top: 1\"}"),
        ("leans", ", plumb: {left: [1\", 1 1/4\"], right: [31\", 31\"]}", "width: 30\", height: 34\"", "", ""),
        ("bare", "", "width: 30 1/2\"", "", ""),
        ("only deep", "", "depth: 25\"", "", "air: {back: 1\"}"),
        ("wide", ", diagonals: [45\", 45 1/2\"]", "width: 29\", height: 30\", depth: 20\"", "29\" to 29 1/2\"", ""),
    ];
    let mut openings = format!("name: Scullery {units}\nfloor build-up: 1/2\"\nopenings:\n");
    let mut selections = String::new();
    for kind in KINDS {
        for (case, more, size, asks, fit) in cases {
            let sill = if matches!(kind, "wall oven" | "microwave") { ", sill: 30\"" } else { "" };
            let name = format!("{kind} {case}");
            openings.push_str(&format!(
                "  {name}: {{takes: {kind}, width: [30\", 30 1/16\", 30\"], height: 34 1/2\", depth: 24\"{sill}{more}, measured: {{on: 2027-01-11, by: Teo Varrick}}}}\n"
            ));
            let opening = match asks {
                "" => String::new(),
                asks => format!("opening: {{width: {asks}}}"),
            };
            let fit =
                [opening, fit.to_string()].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
            selections.push_str(&format!("- selection: {name}\n  kind: {kind}\n  place: {name}\n  size: {{{size}}}\n"));
            if !fit.is_empty() {
                selections.push_str(&format!("  fit: {{{fit}}}\n"));
            }
        }
    }
    (openings, selections)
}

/// Source: trade reports section 6 (fronts over cutouts), F-04 and F-27 (sides that lean), F-17 (a new floor).
#[test]
fn drawings_and_verdicts_agree_on_every_opening_of_made_up_books_in_either_system() {
    for units in ["imperial", "metric"] {
        let book = format!("title: Trial\nclient: Nobody\nunits: {units}\ncurrency: USD\n");
        let (openings, selections) = room(units);
        let project = Project::new()
            .file("book.yaml", &book)
            .file("rooms/scullery/room.yaml", &openings)
            .file("rooms/scullery/all.yaml", &selections);
        let out = project.beside("site");
        project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
        let all = sheets(&out.join("installer"));
        assert_eq!(all.len(), KINDS.len() * CASES);
        let misfits: usize = all.iter().map(agree).sum();
        assert!((20..all.len() * 2).contains(&misfits), "{misfits} misfits: both sides of the line must be met");
    }
}

/// A range, and what is above it: at its opening, in the plan, by the hood that is chosen, under a low ceiling.
fn kitchen_with(name: &str, room: &str, above: &str) -> Vec<(String, String)> {
    let hood = if name == "hood" {
        "- selection: Canopy\n  kind: hood\n  place: over\n  size: {width: 30\", height: 18\"}\n"
    } else {
        ""
    };
    let range =
        "- selection: Range\n  kind: range\n  place: hole\n  size: {width: 29 3/4\", height: 36\", depth: 24\"}\n";
    let opening = "{takes: range, wall: A, at: 40\", width: 30\", height: 36\", depth: 24\"";
    vec![
        (
            format!("rooms/{name}/room.yaml"),
            format!(
                "name: {name}\noutline: 144\" x 120\"\n{room}\nopenings:\n  hole: {opening}{above}}}\n  over: {{takes: hood, sill: 65\", height: 18\"}}\n"
            ),
        ),
        (format!("rooms/{name}/all.yaml"), format!("{range}{hood}")),
    ]
}

#[test]
fn the_front_of_a_cooking_surface_shows_above_it_what_the_verdict_finds_there() {
    let uppers = "runs:\n  uppers: {wall: A, starts: 40\", above floor: 60\", height: 30\", parts: [{cabinet: plates, width: 30\"}]}";
    let rooms = [
        (
            "said",
            "ceiling: 96\"",
            ", above: {what: wall cabinet, height: 62\"}",
            Some(("wall cabinet", "62\u{2033} AFF")),
        ),
        ("plan", uppers, "", Some(("plates", "60\u{2033} AFF"))),
        ("worse", uppers, ", above: {what: hood, height: 66\"}", Some(("plates", "60\u{2033} AFF"))),
        ("hood", "ceiling: 96\"", "", Some(("Canopy", "65\u{2033} AFF"))),
        ("low", "ceiling: 64\"", ", above: nothing", Some(("ceiling", "64\u{2033} AFF"))),
        ("free", "ceiling: 96\"", ", above: nothing", None),
    ];
    let mut project =
        Project::new().file("book.yaml", "title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n");
    for (path, text) in rooms.iter().flat_map(|(name, room, above, _)| kitchen_with(name, room, above)) {
        project = project.file(&path, &text);
    }
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    let all = sheets(&out.join("installer"));
    for (name, _, _, shown) in rooms {
        let here = all
            .iter()
            .filter(|sheet| sheet.name.contains(&format!("/{name}")) || sheet.name.contains(&format!("{name}-")));
        let sheet = here
            .into_iter()
            .find(|sheet| sheet.name.contains("hole"))
            .unwrap_or_else(|| panic!("{name}: {:?}", all.iter().map(|sheet| &sheet.name).collect::<Vec<_>>()));
        let front = sheet.drawings.iter().find(|(view, _)| view.starts_with("Front")).expect("a front");
        let letters = front.1.join(" | ");
        match shown {
            Some((words, height)) => {
                assert!(letters.contains(words) && letters.contains(height), "{name}: {letters}");
            }
            None => assert!(!letters.contains("nothing") && !letters.contains("ceiling"), "{name}: {letters}"),
        }
    }
}

/// Where the sheet wants more air at one side, no page says that both are alike.
#[test]
fn unequal_air_is_told_for_each_side_on_its_own() {
    let project = Project::new()
        .file("book.yaml", "title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n")
        .file("rooms/scullery/room.yaml", "name: Scullery\nopenings: {hole: {takes: refrigerator, width: 34\", height: 72\", depth: 26\"}}\n")
        .file("rooms/scullery/all.yaml", "selection: Cold\nkind: refrigerator\nplace: hole\nsize: {width: 30\", height: 70\", depth: 24\"}\nfit: {air: {left: 0\", right: 2\"}}\n");
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    let page = walkdir::WalkDir::new(out.join("installer/openings")).into_iter().map(Result::unwrap);
    let page = page.filter(|page| page.file_type().is_file()).find(|page| page.path().ends_with("hole.html"));
    let html = fs::read_to_string(page.expect("a sheet").path()).unwrap();
    // 4" of play, 2" of it the sheet's at the right.
    let verdict = html.split("class=\"verdict ").nth(1).unwrap().split("</div>").next().unwrap();
    assert!(verdict.contains(" at the left and ") && verdict.contains(" at the right"), "{verdict}");
    assert!(!verdict.contains("on each side"), "{verdict}");
    let row = html.split("<th scope=\"row\">Width<small>").nth(1).unwrap().split("</tr>").next().unwrap();
    assert!(row.contains(" left, ") && row.contains(" right"), "{row}");
    assert!(html.contains("\"off\":\"-50800000\""), "what the tape's form is given");
}

#[test]
fn drawings_of_a_metric_book_are_in_millimetres_first() {
    let (openings, selections) = room("metric");
    let project = Project::new()
        .file("book.yaml", "title: Trial\nclient: Nobody\nunits: metric\ncurrency: EUR\n")
        .file("rooms/scullery/room.yaml", &openings)
        .file("rooms/scullery/all.yaml", &selections);
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    for page in walkdir::WalkDir::new(out.join("installer/openings")).into_iter().map(Result::unwrap) {
        if !page.file_type().is_file() {
            continue;
        }
        let html = fs::read_to_string(page.path()).unwrap();
        for drawing in html.split("<svg xmlns").skip(1) {
            let svg = format!("<svg xmlns{}</svg>", drawing.split("</svg>").next().unwrap());
            let document = Document::parse(&svg).unwrap();
            let told = document.descendants().find(|node| node.has_tag_name("desc")).unwrap().text().unwrap();
            assert!(told.contains("millimetres") && !told.contains("inch"), "{told}");
            for text in document.descendants().filter(|node| node.has_tag_name("text")) {
                let letters: String =
                    text.descendants().filter_map(|inner| inner.text().filter(|_| inner.is_text())).collect();
                let size: f64 = text.attribute("font-size").unwrap().parse().unwrap();
                // Inches stand beside, in the smaller lettering.
                assert!(
                    !letters.starts_with(|first: char| first.is_ascii_digit())
                        || !letters.contains('\u{2033}')
                        || size < 13.0,
                    "{letters} at {size}"
                );
                if text.attribute("class").unwrap().contains("ratio") {
                    assert!(["1:10", "1:20", "1:50", "1:100"].contains(&letters.as_str()), "{letters}");
                }
            }
        }
    }
}

/// A sink's hole hangs under its counter, and says so in every view; a cooktop in an island has no wall behind it.
#[test]
fn what_is_cut_into_a_counter_is_drawn_at_its_counter() {
    let project = Project::new()
        .file("book.yaml", "title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n")
        .file("rooms/scullery/room.yaml", "name: Scullery\noutline: 14' x 12'\nruns: {north: {wall: A, starts: 12\", counter: {height: 36\", depth: 25 1/2\"}, parts: [{cabinet: sink base, width: 36\", doors: 2, holds: [bowl]}]}}\nislands: {block: {size: 60\" x 30\", height: 36\", wall side: {parts: [{cabinet: drawers, width: 36\", drawers: 2, holds: [hob]}]}}}\nopenings:\n  bowl: {takes: sink, width: 29 1/2\", height: 9 1/2\", depth: 17 1/2\"}\n  hob: {takes: cooktop, width: 28\", height: 4\", depth: 19\"}\n")
        .file("rooms/scullery/all.yaml", "- selection: Bowl\n  kind: sink\n  place: bowl\n  size: {width: 30\", height: 9\", depth: 18\"}\n- selection: Hob\n  kind: cooktop\n  place: hob\n  size: {width: 30\", height: 3 1/2\", depth: 20\"}\n");
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    let page = |name: &str| {
        let path = out.join("installer/openings/scullery").join(name);
        fs::read_to_string(&path).unwrap_or_else(|fault| panic!("{}: {fault}", path.display()))
    };
    let (bowl, hob) = (page("bowl.html"), page("hob.html"));
    assert!(bowl.contains("from its lower edge, 26 1/2 inches above the finished floor"), "{bowl}");
    let views = sheet(&out.join("installer/openings/scullery/bowl.html")).drawings;
    assert!(format!("{views:?}").contains("26 1/2\u{2033} AFF"), "{views:?}");
    assert!(bowl.contains("-cut)") && !hob.contains("-cut)"), "a wall is hatched behind the sink alone");
}

/// A basin that hangs on its wall 34" over the floor is drawn there, and a hob in its counter.
#[test]
fn what_hangs_is_drawn_where_it_hangs() {
    let project = Project::copy_of("tests/books/evenings/access-bath");
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    let sheet = fs::read_to_string(out.join("installer/openings/bath/lavatory.html")).unwrap();
    assert!(sheet.contains("Gap below: "), "{sheet}");
    // Its rim is at 33" (basin height), an inch under the top of its opening.
    assert!(sheet.contains("Gap above: 1 inch."), "{sheet}");
}

/// A trough of 12" on brackets, its opening from 22" up and 30" high: 18" are left above it, and none below.
#[test]
fn a_sink_that_no_counter_holds_stands_on_the_datum_of_its_sheet() {
    let room = "outline: 12' x 9'\nopenings:\n  trough: {takes: sink, wall: A, at: 20\", width: 26\", sill: 22\", height: 30\", depth: 24\"}\n";
    let sink = |mount: &str| {
        format!(
            "- {{selection: Trough, kind: sink, tag: L-03, place: trough, maker: Pottlemoor, model: ET-24, mount: {mount}, size: {{width: 24\", depth: 20\", height: 12\"}}}}\n"
        )
    };
    let drawn = |mount: &str| {
        let sheet = Project::new()
            .file("book.yaml", "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n")
            .file("rooms/laundry/room.yaml", &format!("name: Laundry\n{room}"))
            .file("rooms/laundry/chosen.yaml", &sink(mount));
        let out = sheet.beside("site");
        sheet.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
        fs::read_to_string(out.join("installer/openings/laundry/trough.html")).unwrap()
    };
    for mount in ["\"on the wall, with brackets\"", "wall-hung", "on legs"] {
        let sheet = drawn(mount);
        assert!(sheet.contains("its bottom stands") && sheet.contains("Gap above: 18 inches."), "{mount}: {sheet}");
    }
    assert!(drawn("undermount").contains("Gap above: 0 inches."));
}
