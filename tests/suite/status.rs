//! What `status` says: what waits for a choice, and what stands in the way of each hold point.

use crate::project::Project;

fn narrow(book: &str) -> Project {
    Project::new()
        .file("book.yaml", &format!("title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n{book}\n"))
        .file(
            "rooms/kitchen/room.yaml",
            "name: Kitchen\nopenings:\n  hole: {takes: refrigerator, width: 33 1/8\", measured: {on: 2027-01-11, by: Teo Varrick}}\n",
        )
        .file(
            "rooms/kitchen/fridge.yaml",
            "selection: Refrigerator\nkind: refrigerator\nplace: hole\nmaker: Quorvex\nsize: {width: 33\"}\nfit: {play: 1/4\"}\n",
        )
}

#[test]
fn a_hold_point_names_its_day_and_what_stands_in_its_way() {
    let ran = narrow("hold points: {cabinets ordered: 2027-02-08}").run(["status", "--today", "2027-01-15"]);
    ran.says("1 of 1 selections are settled").says("  2027-02-08   cabinets ordered: ").says("[fit/play]");
}

#[test]
fn what_is_not_approved_stands_in_the_way_of_its_hold_point() {
    let cabinets = |approvers: &str| {
        narrow(&format!("hold points: {{cabinets ordered: 2027-02-08}}\n{approvers}"))
            .file("rooms/kitchen/cabinets.yaml", "selection: Cabinets\nkind: cabinet\nmaker: Tressock\n")
            .run(["status", "--today", "2027-01-15"])
    };
    let approval = "approval Kitchen, K-01 Cabinets: not issued for approval";
    cabinets("approvers: [{id: ada, name: Ada Marrowby}]").says(approval).does_not_say("nothing stands in the way");
    cabinets("").does_not_say("not issued for approval");
}

#[test]
fn past_its_hold_point_a_query_stops_the_work() {
    let severity = |today: &str| {
        let project = narrow("hold points: {cabinets ordered: 2027-02-08}");
        let told = project.run(["status", "--format", "json", "--today", today]).stdout_is_json();
        let points = told["hold_points"].as_array().unwrap().clone();
        let held = points.iter().find(|point| point["name"] == "cabinets ordered").unwrap().clone();
        let found = held["in_the_way"].as_array().unwrap().clone();
        found.iter().find(|found| found["rule"] == "fit/play").unwrap()["severity"].clone()
    };
    assert_eq!(severity("2027-02-08"), "query");
    assert_eq!(severity("2027-02-09"), "stop");
}

#[test]
fn the_review_says_by_when_each_finding_must_be_settled() {
    let project = narrow("hold points: {cabinets ordered: 2027-02-08}");
    project.run(["review", "--today", "2027-01-15"]).says("= settle by: cabinets ordered, 8 Feb 2027");
    let report = project.run(["review", "--format", "json", "--today", "2027-01-15"]).stdout_is_json();
    let findings = report["findings"].as_array().unwrap();
    let play = findings.iter().find(|finding| finding["rule"] == "fit/play").unwrap();
    assert_eq!(play["by"], serde_json::json!({"hold_point": "cabinets ordered", "date": "2027-02-08"}));
}

#[test]
fn the_example_has_choices_that_wait_and_hold_points_with_a_day() {
    let ran = Project::copy_of("example-project").run(["status", "--today", "2027-01-15"]).exits(0);
    ran.says("14 Tallow Lane, 15 Jan 2027")
        .says("waiting for a choice")
        .says("rough-in closed")
        .says("Wall tile (Bath)");
}

/// What stops the work and waits for no hold point stands before all of them, here and on the office's first page.
#[test]
fn a_stop_of_no_hold_point_stands_before_them_all() {
    let room = |more: &str| {
        let text = format!("name: Hall\nopenings:\n  nook: {{takes: bench, width: 40\"}}\n{more}");
        Project::with_a_rug().file("rooms/hall/room.yaml", &text)
    };
    let status = |more: &str| room(more).run(["status", "--today", "2027-01-15"]);
    status("floor: oak\n").says("now          before anything else: 1 in the way").says("[source/unknown-key]");
    status("").does_not_say("before anything else");
}
