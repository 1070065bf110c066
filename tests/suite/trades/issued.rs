//! What a trade builds from is issued for construction: what changed of it since is another sheet.

use crate::project::{Project, Ran};

const ROOM: &str = "name: Kitchen\noutline: 12' x 9'\nruns:\n  long wall:\n    wall: A\n    depth: 24\"\n    toe kick: 4\"\n    counter: {depth: 25 1/2\", height: 36\"}\n    parts: [{filler: 3\"}, {cabinet: drawers, width: 24\", drawers: 3}]\n";
const TILE: &str = "selection: Wall tile\nkind: tile\nmaker: Zelmor\nmodel: W 1\nfinish: glazed\nsupplier: Ardwin\nlead time: 2 weeks\n\
    face size: 4\" x 4\"\nthickness: 3/8\"\njoint: 1/8\"\ngrout: warm grey\nedge trim: glazed edge pieces\npattern: stacked\n\
    quantity: 40 sq ft\nprice: 6.00\nphotos: [rug.jpg]\n";
const CABINETS: &str = "selection: Cabinets\nkind: cabinet\nmaker: Zelmor\nmodel: C 1\nfinish: oiled\nsupplier: Ardwin\nlead time: 2 weeks\n\
    door style: shaker\nfronts: {doors: 1, drawers: 3, thickness: 3/4\"}\nquantity: 1\nprice: 900.00\nphotos: [rug.jpg]\n";

fn house() -> Project {
    let project = Project::with_a_rug_issued()
        .file("book.yaml", "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n")
        .file("rooms/kitchen/room.yaml", ROOM)
        .file("rooms/kitchen/cabinets.yaml", CABINETS)
        .file("rooms/kitchen/tile.yaml", TILE);
    issue(&project).exits(0).says("issue 2 for construction");
    project
}

fn issue(project: &Project) -> Ran {
    project.run(["issue", "--for", "construction", "--today", "2027-01-15"])
}

#[test]
fn a_joint_or_a_part_that_changes_is_another_sheet_of_its_trade_alone() {
    let project = house();
    issue(&project).exits(0).says("nothing changed since issue 2");
    let project = project.file("rooms/kitchen/room.yaml", &ROOM.replace("toe kick: 4\"", "toe kick: 3\""));
    project
        .run(["status", "--today", "2027-01-15"])
        .says("to be built from another sheet than was issued for construction\n  joiner, kitchen\n")
        .does_not_say("setter, kitchen");
    let project = project.file("rooms/kitchen/tile.yaml", &TILE.replace("joint: 1/8\"", "joint: 3/16\""));
    let told = project.run(["status", "--format", "json", "--today", "2027-01-15"]).stdout_is_json();
    let trades: Vec<&str> = told["sheets"].as_array().unwrap().iter().filter_map(|one| one["trade"].as_str()).collect();
    assert_eq!(trades, ["joiner", "setter"]);
    project
        .run(["compare", "2", "now", "--today", "2027-01-15"])
        .says("setter, kitchen")
        .says("Wall tile: facts joint from 1/8\"");
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    let sheet =
        |trade: &str| std::fs::read_to_string(out.join(format!("installer/trades/kitchen/{trade}.html"))).unwrap();
    let setter = sheet("setter");
    assert!(setter.contains("Stop: not as issued in 2; wall tile changed"), "{setter}");
    assert!(sheet("joiner").contains("Stop: not as issued in 2"));
}

/// What a thing costs is on no sheet of a trade.
#[test]
fn a_price_is_no_other_sheet() {
    let project = house().file("rooms/kitchen/tile.yaml", &TILE.replace("price: 6.00", "price: 7.00"));
    project.run(["status", "--today", "2027-01-15"]).does_not_say("another sheet");
}
