//! The plan of a room is a sheet that is built from: its mark is printed, counted by issues, and told when it is another.

use crate::project::Project;

const ROOM: &str = "name: Bath\noutline: 9' x 6'\ndoors: {hall: {wall: A, at: 12\", width: 30\", hinge: left, swings: in}}\n\
    windows: {yard: {wall: C, at: 24\", width: 30\", sill: 42\", height: 36\"}}\n\
    openings: {niche: {takes: item, width: 48\", height: 72\"}}\n";
const FILE: &str = "rooms/bath/room.yaml";

fn house() -> Project {
    Project::new()
        .file("book.yaml", "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n")
        .file(FILE, ROOM)
        .file("rooms/bath/mat.yaml", "selection: Mat\nkind: item\nplace: niche\nprice: 20.00\nmaker: Zelmor\nmodel: M 1\n\
            supplier: Ardwin\nlead time: 2 weeks\nquantity: 1\nfinish: oak\nphotos: [rug.jpg]\nsize: {width: 46\", height: 70\", depth: 12\"}\n")
        .photo("rooms/bath/photos/rug.jpg")
}

/// The installer's first page and the room's, as they are published now.
fn pages(project: &Project) -> [String; 2] {
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    ["installer/index.html", "client/rooms/bath.html"].map(|page| std::fs::read_to_string(out.join(page)).unwrap())
}

fn issue(project: &Project) -> crate::project::Ran {
    project.run(["issue", "--for", "construction", "--today", "2027-01-15"])
}

/// The mark in the title block.
fn mark(page: &str) -> &str {
    page.split("<dd class=\"mark\">").nth(1).and_then(|rest| rest.split('<').next()).unwrap()
}

#[test]
fn a_door_that_swings_otherwise_and_a_window_that_moves_are_another_plan() {
    for (old, new, told) in [
        ("hinge: left", "hinge: right", "hall: swings in on from left to right"),
        ("at: 24\"", "at: 26\"", "yard: left side from"),
    ] {
        let project = house();
        issue(&project).exits(0);
        let before = pages(&project);
        assert!(before[0].contains(&format!("Mark of this plan: {}", mark(&before[0]))), "{}", before[0]);
        assert!(before[1].contains("Mark of this plan: "), "{}", before[1]);
        issue(&project).says("nothing changed since issue 1");
        let project = project.file(FILE, &ROOM.replace(old, new));
        let now = pages(&project);
        assert_ne!(mark(&before[0]), mark(&now[0]));
        assert!(now[0].contains("Stop: not as issued in 1; doors and windows changed"), "{}", now[0]);
        project.run(["status", "--today", "2027-01-15"]).says("plan, bath").says(told);
        issue(&project).exits(0).says("issue 2 for construction").says(told);
        project.run(["compare", "1", "2", "--today", "2027-01-15"]).says("plan, bath").says(told);
    }
}

/// Paper of an issue of before, under another mark, stands as long as it says the same.
#[test]
fn paper_under_an_older_mark_of_the_same_stands() {
    let project = Project::copy_of("tests/suite/upgrade/slate-house");
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2026-12-01", "--out", out.to_str().unwrap()]).exits(0);
    let record = std::fs::read_to_string(project.root().join("record/issues/0002.json")).unwrap();
    let record: serde_json::Value = serde_json::from_str(&record).unwrap();
    let sheet = &record["built"][0];
    let (room, opening) = (sheet["room"].as_str().unwrap(), sheet["opening"].as_str().unwrap());
    let page = std::fs::read_to_string(out.join(format!("installer/openings/{room}/{opening}.html"))).unwrap();
    let stands = page.split("id=\"paper-stands\"").nth(1).and_then(|rest| rest.split('>').next()).unwrap();
    let short: String = sheet["mark"].as_str().unwrap().chars().take(8).collect();
    assert!(stands.contains(&short), "{short}: {stands}");
    assert!(!page.contains("not as issued"), "{page}");
}
