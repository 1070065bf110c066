//! A cut-out that was measured anew, or a maker's sheet of a new revision, is another sheet: an issue for construction
//! says so, and so do `status`, `compare` and the sheet itself.

use crate::project::{Project, Ran};

const ROOM: &str = "rooms/kitchen/room.yaml";
const RUG: &str = "rooms/kitchen/rug.yaml";

/// The house with a trunk in a niche that is measured, issued for construction.
fn house() -> Project {
    let project = Project::copy_of("tests/suite/upgrade/reed-house")
        .file(
            ROOM,
            "name: Kitchen\nopenings:\n  hole: {takes: item, width: 600 mm, height: 820 mm, depth: 400 mm, measured: {on: 2026-11-20, by: Teo Varrick}}\n",
        )
        .file(
            "rooms/kitchen/trunk.yaml",
            "selection: Trunk\nkind: item\nplace: hole\nmaker: Zelmor\nmodel: T 1\nfinish: oak\nsupplier: Ardwin\n\
             lead time: 2 weeks\nprice: 90.00\nquantity: 1\nphotos: [grey.png]\nsize: {width: 590 mm, height: 800 mm, depth: 300 mm}\n",
        );
    // What was signed is written before it is built from.
    let rug = std::fs::read_to_string(project.root().join(RUG)).unwrap();
    let project = project.file(RUG, &format!("{}\nchosen: reed\n", rug.trim_end()));
    issue(&project, "construction")
        .exits(0)
        .says("issue 1 for approval, 29 Nov 2026 says nothing of what is built from");
    project
}

/// The sheet of the opening, as it is published now.
fn sheet(project: &Project) -> String {
    let out = project.beside("site");
    let arguments = ["publish", "--draft", "--today", "2026-12-01", "--out", out.to_str().unwrap()];
    project.run(arguments).exits(0);
    std::fs::read_to_string(out.join("installer/openings/kitchen/hole.html")).unwrap()
}

fn issue(project: &Project, purpose: &str) -> Ran {
    let taken: &[&str] = if purpose == "construction" { &["--unapproved", "agreed on site"] } else { &[] };
    project.run(["issue", "--for", purpose, "--today", "2026-12-01"].iter().chain(taken))
}

#[test]
fn an_opening_that_is_measured_anew_is_another_sheet_to_build_from() {
    let project = house();
    issue(&project, "construction").exits(0).says("nothing changed since issue 2");
    project.run(["status"]).exits(0).does_not_say("another sheet");
    let before = sheet(&project);
    assert!(before.contains("For construction: new") && !before.contains("not as issued"), "{before}");
    let room = std::fs::read_to_string(project.root().join(ROOM)).unwrap();
    let project = project.file(ROOM, &room.replace("width: 600 mm", "width: 597 mm"));
    project.run(["status"]).exits(0).says("another sheet than was issued for construction").says("hole, kitchen");
    let now = sheet(&project);
    assert!(now.contains("Stop: not as issued in 2; width changed"), "{now}");
    let sheets = project.run(["status", "--format", "json"]).stdout_is_json();
    assert_eq!(sheets["sheets"][0]["changes"][0]["to"], "597 mm (≈ 23 1/2\")");
    issue(&project, "approval").exits(0);
    issue(&project, "approval").exits(0).says("nothing changed since issue 3");
    issue(&project, "construction").exits(0).says("width from 600 mm").says("to 597 mm");
    project.run(["compare", "2", "4"]).exits(0).says("to be built from another sheet").says("width from 600 mm");
}
