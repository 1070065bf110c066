//! Who was sent which issue, who says that it came, and who still holds an older one.

use crate::project::Project;
use serde_json::{Value, json};

const RUG: &str = "rooms/kitchen/rug.yaml";

fn says_it_came(project: &Project, issue: u32, by: &str) -> String {
    let issued: Value =
        serde_json::from_slice(&std::fs::read(project.root().join("record/issues/0001.json")).unwrap()).unwrap();
    let said = json!({
        "format": "bookmatch acknowledgement 1", "book": issued["book"], "issue": issue, "by": by,
        "nonce": format!("{issue:032x}"), "made": "2026-01-16T10:00:00Z",
    });
    let file = project.beside("came.json");
    std::fs::write(&file, said.to_string()).unwrap();
    file.to_str().unwrap().into()
}

fn changed(project: Project) -> Project {
    let text = std::fs::read_to_string(project.root().join(RUG)).unwrap();
    project.file(RUG, &text.replace("finish: oak", "finish: ash"))
}

#[test]
fn an_issue_that_changed_lists_who_still_holds_an_older_one() {
    let project = Project::with_a_rug_issued();
    let send = |issue: &str, to: &str| project.run(["issue", "--sent", issue, "--to", to]);
    project.run(["status"]).does_not_say("who holds which issue");
    send("1", "Teo Varrick, site lead").exits(0).says("issue 1: sent to Teo Varrick, site lead");
    send("1", "Teo Varrick, site lead").exits(0).says("issue 1 was sent to Teo Varrick, site lead before");
    send("7", "Teo Varrick").exits(1);
    send("1", " ").exits(2);
    send("1", "Lorn Tazewick").exits(0);
    let told = |words: &str| _ = project.run(["status"]).says(words);
    told("Lorn Tazewick: sent issue 1 for approval, ");
    told("nothing acknowledged");
    project.run(["status"]).does_not_say("older one");

    let file = says_it_came(&project, 1, "teo  varrick");
    project.run(["receive", project.root().to_str().unwrap(), &file]).exits(0).says("recorded to be confirmed");
    project.run(["receive", project.root().to_str().unwrap(), &file]).exits(0).says("already recorded");
    told("says that issue 1 came, to be confirmed: ");
    let holders = project.run(["status", "--format", "json"]).stdout_is_json()["holders"].clone();
    let digits = holders[1]["to_confirm"].as_str().unwrap().to_owned();
    project.run(["receive", project.root().to_str().unwrap(), "--confirm", &digits, "--by", "Ines Tarrow"]).exits(0);
    told("acknowledged issue 1, 2026-01-16");

    let project = changed(project);
    let issue = project.run(["issue", "--for", "approval", "--to", "Lorn Tazewick, joiner", "--today", "2027-01-16"]);
    issue
        .exits(0)
        .says("issue 2 is still to reach")
        .says("Teo Varrick, site lead: holds issue 1")
        .says("issue 2: sent to Lorn Tazewick, joiner");
    project
        .run(["status"])
        .says("Teo Varrick, site lead: sent issue 1 for approval")
        .says("still holds an older one: issue 2 was not sent")
        .says("may still hold an older one than issue 2");
    project.run(["compare", "1", "2"]).says("issue 2 is still to reach").says("Teo Varrick, site lead: holds issue 1");
    let order = project.run(["compare", "1", "2", "--format", "json"]).stdout_is_json();
    assert_eq!(order["holding_older"][1]["name"], "Teo Varrick");
    // To the book as it stands nothing was sent.
    project.run(["compare", "1", "now"]).does_not_say("still to reach");
}
