//! Title blocks that say in which issues what is shown was new or changed.

use std::fs;
use std::path::Path;

use super::readers::Pdf;
use crate::project::Project;

const RUG: &str = "selection: Rug\nkind: rug\nmaker: Zelmor\nmodel: ZS-1\nsupplier: Ardwin\nlead time: 2 weeks\n\
    needed for: 2027-06-01\nface size: 48\" x 72\"\nquantity: 1\nphotos: [rug.jpg]\nfinish: oak\nprice: 100.00\n";

/// A rug in a kitchen and a mat in a bath, issued once; then the rug changes, and it is issued again.
fn issued_twice() -> Project {
    let project = Project::new()
        .file("book.yaml", "title: Small\nclient: Nobody\nunits: metric\ncurrency: USD\n")
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
        .file("rooms/kitchen/rug.yaml", RUG)
        .file("rooms/bath/room.yaml", "name: Bath\n")
        .file("rooms/bath/mat.yaml", &RUG.replace("Rug", "Mat"))
        .photo("rooms/kitchen/photos/rug.jpg")
        .photo("rooms/bath/photos/rug.jpg");
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let project = project.file("rooms/kitchen/rug.yaml", &RUG.replace("ZS-1", "ZS-2").replace("100.00", "120.00"));
    project.run(["issue", "--for", "approval", "--today", "2027-02-01"]).exits(0);
    project
}

/// The list of revisions of a page, without its tags.
fn revisions(page: &Path) -> String {
    let page = fs::read_to_string(page).unwrap();
    let list = page.split_once("<ul class=\"revs\">").map_or("", |(_, rest)| rest.split_once("</ul>").unwrap().0);
    let mut text = String::new();
    let mut in_tag = false;
    for letter in list.chars() {
        match letter {
            '<' => in_tag = true,
            '>' => in_tag = false,
            other if !in_tag => text.push(other),
            _ => {}
        }
    }
    text
}

#[test]
fn each_page_and_sheet_lists_the_issues_in_which_its_own_items_changed() {
    let project = issued_twice();
    let out = project.beside("site");
    project.run(["publish", "--today", "2027-02-02", "--out", out.to_str().unwrap()]).exits(0);
    let second = "1 Feb 2027. For approval: model and price changed";
    let (rug, mat) =
        (revisions(&out.join("client/items/kitchen/rug.html")), revisions(&out.join("client/items/bath/mat.html")));
    assert!(rug.contains(second) && rug.contains("15 Jan 2027. For approval: new"), "{rug}");
    assert!(rug.find(second) < rug.find("15 Jan 2027"), "the newest stands first: {rug}");
    assert!(!mat.contains("1 Feb 2027") && mat.contains("15 Jan 2027. For approval: new"), "{mat}");
    let room = revisions(&out.join("client/rooms/bath.html"));
    assert!(!room.contains("1 Feb 2027"), "{room}");
    for page in ["client/index.html", "client/sign.html", "office/index.html", "office/money.html"] {
        let all = revisions(&out.join(page));
        assert!(all.contains(second) && all.contains("For approval: Mat and Rug new"), "{page}: {all}");
    }
    let sheet = |path: &str| Pdf::of(&fs::read(out.join("client/sheets").join(path)).unwrap()).pages();
    for page in sheet("rooms/kitchen.pdf") {
        assert!(page.contains(second), "{page}");
    }
    for page in sheet("rooms/bath.pdf") {
        assert!(!page.contains("1 Feb 2027. For") && page.contains("15 Jan 2027. For approval: new"), "{page}");
    }
}

#[test]
fn a_book_that_was_never_issued_lists_no_revision() {
    let project = issued_twice();
    fs::remove_dir_all(project.root().join("record")).unwrap();
    let out = project.beside("site");
    project.run(["publish", "--today", "2027-02-02", "--out", out.to_str().unwrap()]).exits(0);
    assert_eq!(revisions(&out.join("client/items/kitchen/rug.html")), "");
}
