//! New things from a command: a book in the units of a country, a book from photographs, a room, an item.

use std::fs;

use bookmatch::vocabulary::Kind;
use serde_json::Value;

use crate::project::{Project, Ran, tree};

fn started(arguments: &[&str]) -> Project {
    let project = Project::new();
    let root = project.root();
    let all = ["start", root.to_str().expect("UTF-8"), "--today", "2027-01-15"];
    project.run(all.iter().chain(arguments)).exits(0);
    project
}

fn review(project: &Project) -> Ran {
    project.run(["review", "--today", "2027-01-15"])
}

#[test]
fn a_book_begins_in_the_units_and_the_money_of_its_country() {
    for (arguments, says, sizes) in [
        (&[][..], "units: imperial", "34 1/2\""),
        (&["--units", "metric"][..], "currency: EUR", "880 mm"),
        (&["--country", "gb"][..], "country: GB\nunits: metric", "880 mm"),
        (&["--country", "CA", "--units", "Imperial"][..], "currency: CAD", "34 1/2\""),
        (&["--country", "JP"][..], "currency: JPY", "880 mm"),
    ] {
        let project = started(arguments);
        let book = fs::read_to_string(project.root().join("book.yaml")).expect("a book");
        assert!(book.contains(says) && book.contains(sizes), "{arguments:?}: {book}");
        review(&project).exits(0).says("0 stops, 0 queries, 0 notes");
    }
}

/// Nothing of a metric book is in inches, but for the one line that shows both ways to write a length.
#[test]
fn a_metric_book_has_no_inches() {
    let project = started(&["--country", "DE"]);
    for path in tree(&project.root()).files().filter(|path| path.ends_with(".yaml")) {
        let text = fs::read_to_string(project.root().join(path)).expect("a text");
        for line in text.lines().filter(|line| !line.starts_with("# A room as measured")) {
            assert!(!line.contains('"') && !line.contains("sq ft") && !line.contains(" lb"), "{path}: {line}");
        }
    }
}

/// A room for each folder and a selection for each picture; all else is asked for, and an issue waits for it.
#[test]
fn a_book_is_made_of_photographs() {
    let photographs = Project::new()
        .photo("Kitchen/range-front.jpg")
        .photo("Kitchen/close ups/Wall tile (2).jpg")
        .photo("guest_bath/aux.jpg")
        .photo("guest_bath/towel rail.jpg")
        .photo("guest_bath/toilet-1.jpg")
        .photo("loose.jpg")
        .file("Kitchen/list.txt", "not a picture");
    let before = photographs.tree();
    let folder = photographs.root();
    let project = started(&["--photographs", folder.to_str().expect("UTF-8"), "--country", "GB"]);
    assert_eq!(photographs.tree(), before, "the photographs stay as they are");
    let text = |path: &str| fs::read_to_string(project.root().join(path)).expect(path);
    assert!(text("rooms/kitchen/range-front.yaml").starts_with("selection: Range front\nkind: …"));
    // What a name says for certain is taken over, with the fields of its kind.
    for (path, lines) in [
        ("rooms/kitchen/wall-tile-2.yaml", ["kind: tile\n", "joint: …"]),
        ("rooms/guest-bath/towel-rail.yaml", ["selection: Towel rail\nkind: bar\n", "length: …"]),
        ("rooms/guest-bath/toilet-1.yaml", ["kind: toilet\n", "photos: ['toilet-1.jpg']"]),
    ] {
        lines.iter().for_each(|line| assert!(text(path).contains(line), "{}", text(path)));
    }
    assert!(text("rooms/kitchen/wall-tile-2.yaml").contains("photos: ['Wall tile (2).jpg']"));
    assert!(text("rooms/guest-bath/room.yaml").starts_with("name: Guest bath\n"));
    assert!(text("rooms/room/loose.yaml").contains("photos: ['loose.jpg']"));
    assert!(project.root().join("rooms/guest-bath/photos/aux-item.jpg").is_file());
    let told = review(&project).exits(1).says("a book lacks its `title`").says("a selection lacks its `kind`");
    told.does_not_say("source/").does_not_say("is not in the book").says("still open (`…`, `TBD` and the like)");
    project.run(["issue", "--for", "approval"]).exits(1);
    let empty = Project::new().file("notes.txt", "nothing");
    let (none, at) = (empty.beside("new"), empty.root());
    let all = ["start", none.to_str().unwrap(), "--photographs", at.to_str().unwrap()];
    empty.run(all).exits(2).says("holds no pictures");
}

#[test]
fn no_book_is_laid_out_in_another_and_a_room_is_found_by_its_own_name() {
    let project = started(&["--country", "UK"]);
    let before = project.tree();
    for inside in ["rooms/attic", "new/book"] {
        let at = project.root().join(inside);
        let told = project.run(["start", at.to_str().unwrap()]).exits(2);
        told.says("lies in the book").says("bookmatch start room NAME --book").says("nothing was changed");
    }
    assert_eq!(project.tree(), before);
    // A path that leads out of the book is not in it.
    let outside = project.root().join("../beside-it");
    project.run(["start", outside.to_str().unwrap()]).exits(0);
    project.run(["start", "room", "Salón comedor"]).exits(0).says("rooms/salon-comedor/room.yaml");
    project.run(["start", "item", "Salón comedor", "mirror"]).exits(0).says("rooms/salon-comedor/mirror.yaml");
    let renamed = project.root().join("rooms/salon-comedor/room.yaml");
    fs::write(&renamed, "name: 'Baño de invitados'\n").expect("written");
    project.run(["start", "item", "Baño de invitados", "mirror"]).exits(0).says("rooms/salon-comedor/mirror-2.yaml");
}

#[test]
fn a_room_and_an_item_are_laid_out_with_what_is_still_to_be_said_and_never_over_another() {
    let project = started(&[]);
    let before = project.tree();
    project.run(["start", "room", "Kitchen"]).exits(2).says("`rooms/kitchen` is there already; nothing was changed");
    project.run(["start", "item", "attic", "tap"]).exits(2).says("no room `attic`; it has bath, kitchen");
    project.run(["start", "item", "bath", "tapp"]).exits(2).says("did you mean `tap`?");
    assert_eq!(project.tree(), before);
    project.run(["start", "room", "Guest bath"]).exits(0).says("rooms/guest-bath/room.yaml");
    review(&project).exits(0).says("0 stops, 0 queries");
    for file in ["fridge.yaml", "fridge-2.yaml"] {
        project.run(["start", "item", "kitchen", "fridge"]).exits(0).says(&format!("rooms/kitchen/{file}"));
    }
    project
        .run(["start", "item", "Guest bath", "sconce", "--name", "Reader's lamp"])
        .exits(0)
        .says("reader-s-lamp.yaml");
    let told = project.run(["review", "--today", "2027-01-15", "--format", "json"]);
    let report: Value = serde_json::from_str(&told.stdout).expect("JSON");
    let rules: Vec<&str> =
        report["findings"].as_array().unwrap().iter().map(|one| one["rule"].as_str().unwrap()).collect();
    assert!(!rules.is_empty() && rules.iter().all(|rule| rule.starts_with("complete/")), "{rules:?}");
}

/// Each kind's new item is read whole: it lacks what it needs, and no field of it is unknown or wrong.
#[test]
fn the_new_item_of_every_kind_is_understood() {
    let project = started(&[]);
    for kind in Kind::ALL {
        project.run(["start", "item", "bath", kind.name(), "--name", &format!("New {kind}")]).exits(0);
    }
    review(&project).does_not_say("source/");
}
