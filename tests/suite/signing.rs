//! What those who sign are told before they do: whether each option fits, on every page that is signed.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::project::Project;
use crate::project::example::published as published_example;

/// A refrigerator of two options, the second of which is too large for the door of the house by so much.
fn fridge(door: &str) -> Project {
    Project::new()
        .file(
            "book.yaml",
            &format!(
                "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n\
                 approvers: [{{id: ada, name: Ada Marrowby}}]\nway in: [{{name: porch door, {door}}}]\n"
            ),
        )
        .file(
            "rooms/kitchen/room.yaml",
            "name: Kitchen\nopenings:\n  hole: {takes: refrigerator, width: 36\", height: 72\", depth: 30\", \
             measured: {on: 2027-01-11, by: Teo Varrick}}\n",
        )
        .file(
            "rooms/kitchen/fridge.yaml",
            "selection: Refrigerator\nkind: refrigerator\nplace: hole\nwhy: One quiet front.\noptions:\n\
             \x20 - {id: slim, name: Slim, maker: Quorvex, model: QS-1, price: 900.00, photos: [slim.jpg],\n\
             \x20    description: The one with the drawer, size: {width: 30\", height: 70\", depth: 24\"}}\n\
             \x20 - {id: wide, name: Wide, maker: Quorvex, model: QW-1, price: 950.00, photos: [wide.jpg],\n\
             \x20    description: The one with two doors, size: {width: 34\", height: 71\", depth: 25\"},\n\
             \x20    fit: {doors off: 34\" x 34\" x 71\"}}\n",
        )
        .photo("rooms/kitchen/photos/slim.jpg")
        .photo("rooms/kitchen/photos/wide.jpg")
}

/// The published folder, which lives as long as the project.
fn published(project: Project, more: &[&str]) -> (Project, PathBuf) {
    let out = project.beside("site");
    let arguments = ["publish", "--today", "2027-01-15", "--out", out.to_str().unwrap()];
    project.run(arguments.into_iter().chain(more.iter().copied())).says("client/index.html");
    (project, out)
}

fn text(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

const MISFIT: &str = "Refrigerator, doors off, is 1″ (25.4 mm) too large for the porch door.";

#[test]
fn a_misfit_that_another_rule_finds_is_told_beside_the_option_and_in_the_row_that_is_signed() {
    let (_project, out) = published(fridge("width: 33\", height: 80\""), &["--draft"]);
    for page in ["client/items/kitchen/refrigerator.html", "client/sign.html"] {
        let page = text(&out.join(page));
        assert!(page.contains("Does not fit") && page.contains(MISFIT), "{page}");
    }
    let (_project, out) = published(fridge("width: 36\", height: 80\""), &["--draft"]);
    for page in ["client/items/kitchen/refrigerator.html", "client/sign.html"] {
        assert!(!text(&out.join(page)).contains("Does not fit"), "{page}");
    }
    assert!(text(&out.join("client/sign.html")).contains("B, Wide"), "each option has its line");
}

/// What stands in the place of another thing, or into the ceiling, does not simply fit: the pages of both tell it.
#[test]
fn what_stops_a_thing_where_it_is_to_stand_is_told_on_its_pages() {
    let book = |shelf: &str, ceiling: &str| {
        let thing = |name: &str, place: &str, high: &str| {
            format!(
                "selection: {name}\nkind: mirror cabinet\nplace: {place}\nwhy: Light.\nmaker: Quorvex\nmodel: Q-{place}\nprice: 90.00\nsize: {{width: 20\", height: {high}, depth: 5\"}}\n"
            )
        };
        let hole = |wall: &str| {
            format!(
                "{{takes: mirror cabinet, wall: A, {wall}, sill: 60\", width: 20 1/4\", height: 30 1/4\", depth: 6\", measured: {{on: 2027-01-11, by: Teo Varrick}}}}"
            )
        };
        fridge("width: 36\", height: 80\"")
            .file(
                "rooms/kitchen/room.yaml",
                &format!("name: Kitchen\noutline: 10' x 8'\nceiling: {ceiling}\nopenings:\n  hole: {{takes: refrigerator, width: 36\", height: 72\", depth: 30\"}}\n  east: {}\n  west: {}\n", hole("at: 10\""), hole(shelf)),
            )
            .file("rooms/kitchen/east.yaml", &thing("East", "east", "30\""))
            .file("rooms/kitchen/west.yaml", &thing("West", "west", "30\""))
    };
    for (west, ceiling, told) in
        [("at: 40\"", "8'", None), ("at: 24\"", "8'", Some("stands where")), ("at: 40\"", "7' 4\"", Some("too high"))]
    {
        let (_project, out) = published(book(west, ceiling), &["--draft"]);
        for page in
            ["client/items/kitchen/east.html", "client/items/kitchen/west.html", "installer/openings/kitchen/east.html"]
        {
            let page = text(&out.join(page));
            let verdict = page.split_once("verdict").map_or(page.as_str(), |(_, rest)| rest);
            assert_eq!(
                verdict.contains("Does not fit") || verdict.contains("first read"),
                told.is_some(),
                "{west} {ceiling}"
            );
            assert!(told.is_none_or(|told| page.contains(told)), "{west} {ceiling}: {page}");
        }
        let signed = text(&out.join("client/sign.html"));
        assert_eq!(told.is_some_and(|told| signed.contains(told)), told.is_some(), "{west} {ceiling}");
    }
}

#[test]
fn what_scripts_ask_says_of_each_option_whether_it_fits() {
    let project = Project::of_the_example();
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let (_project, out) = published(project, &[]);
    let page = text(&out.join("client/sign.html"));
    let asked = page.split_once("id=\"asked\">").unwrap().1.split_once("</script>").unwrap().0;
    let asked: serde_json::Value = serde_json::from_str(asked).unwrap();
    let items = asked["items"].as_array().unwrap();
    let fridge = items.iter().find(|item| item["name"] == "Refrigerator" && item["room"] == "kitchen").unwrap();
    let wide = fridge["options"].as_array().unwrap().iter().find(|option| option["id"] == "wide").unwrap();
    assert_eq!((&wide["fit"]["shape"], &wide["fit"]["word"]), (&"does-not-fit".into(), &"Does not fit".into()));
    assert!(wide["fit"]["sentence"].as_str().unwrap().contains("too wide for the opening"), "{wide}");
}

/// Independent readers: pdftotext and pdfimages.
#[cfg(feature = "sheets")]
#[test]
fn the_sheet_shows_each_option_with_its_picture_sizes_words_price_and_fit() {
    let (_project, out) = published(fridge("width: 33\", height: 80\""), &["--draft"]);
    let sheet = out.join("client/sheets/rooms/kitchen.pdf");
    let ask = |program: &str, before: &[&str], after: &[&str]| {
        let told = Command::new(program).args(before).arg(&sheet).args(after).output().expect("poppler-utils");
        String::from_utf8_lossy(&told.stdout).split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let told = ask("pdftotext", &["-raw"], &["-"]);
    for needed in [
        "Slim Quorvex QS-1",
        "The one with the drawer",
        "Width 30″ 762 mm",
        "$900.00",
        "The one with two doors",
        "Width 34″ 864 mm",
        "$950.00",
        "Fit: Does not fit.",
        "too large for the porch door",
        "One quiet front.",
    ] {
        assert!(told.contains(needed), "no `{needed}` in:\n{told}");
    }
    assert_eq!(ask("pdfimages", &["-list"], &[]).matches(" image ").count(), 2, "one picture an option");
}

/// The cabinets must be ordered seven weeks before the refrigerator itself would be.
#[test]
fn the_client_is_told_to_decide_before_what_is_built_around_a_thing_must_be_ordered() {
    let site = published_example();
    let reason = "26 Jan 2027, when Cabinets, built around it, must be ordered";
    for page in ["client/items/kitchen/refrigerator.html", "client/sign.html"] {
        assert!(text(&site.join(page)).contains(reason), "{page}");
    }
    let cover = text(&site.join("client/index.html"));
    let due = cover.split_once("<ol class=\"due\">").unwrap().1.split_once("</ol>").unwrap().0;
    let fridge = due.split("<li>").find(|line| line.contains("Refrigerator")).expect("it is among the first");
    assert!(fridge.contains("<b>26</b>") && fridge.contains("2027, when Cabinets, built around it"), "{fridge}");
}

/// The example's lantern was ordered before anybody could be asked.
#[test]
fn what_is_ordered_is_asked_of_nobody() {
    let cover = text(&published_example().join("client/index.html"));
    let due = cover.split_once("<ol class=\"due\">").unwrap().1.split_once("</ol>").unwrap().0;
    assert!(!due.contains("Lantern"), "{due}");
    assert!(!text(&published_example().join("client/items/hall/lantern.html")).contains("Decide by"));
}
