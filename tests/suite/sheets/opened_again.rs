//! What rests on something that changed is opened again in every command, by whatever the change was.

use std::fs;

use super::readers::Pdf;
use crate::project::Project;

const RANGE: &str = "selection: Range\nkind: range\nchosen: one\noptions: [{id: one, name: Wide, model: R-1, finish: steel}, \
    {id: two, name: Narrow, model: R-2, finish: steel}]\n";

/// Cabinets that were issued and approved around the first range, and the book as it is changed then.
fn changed(range: &str) -> Project {
    let project = Project::new()
        .file(
            "book.yaml",
            "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\napprovers: [{id: ada, name: Ada Marrowby}]\n\
             hold points: {cabinets ordered: 2027-05-01}\n",
        )
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
        .file("rooms/kitchen/range.yaml", RANGE)
        .file(
            "rooms/kitchen/cabinets.yaml",
            "selection: Cabinets\nkind: cabinet\ndepends on: [Range]\nfinish: ash\nneeded for: 2027-06-01\nlead time: 6 weeks\n",
        );
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let approve = ["--decision", "approved", "--how", "said on the telephone"];
    let by_hand = ["receive", "--by-hand", "ada", "--item", "kitchen/cabinets"].into_iter().chain(approve);
    project.run(by_hand).exits(0);
    project.file("rooms/kitchen/range.yaml", range)
}

#[test]
fn another_option_opens_again_what_another_model_opens_again_with_the_day_of_its_order() {
    for (range, how) in [
        (RANGE.replace("chosen: one", "chosen: two"), "the choice from `Wide` to `Narrow`"),
        (RANGE.replace("model: R-1", "model: R-9"), "Wide: model from R-1 to R-9"),
    ] {
        let project = changed(&range);
        let told = format!(
            "`Cabinets` was approved in issue 1, and `Range`, which it depends on, has changed since: {how}; \
             it is to be ordered by 20 Apr 2027"
        );
        project.run(["review", "--today", "2027-01-20"]).says(&told);
        project.run(["status", "--today", "2027-01-20"]).says(&told);
        project
            .run(["compare", "1", "now", "--today", "2027-01-20"])
            .says("opens again\n")
            .says("Cabinets, kitchen: it depends on Range; order by 20 Apr 2027");
        let out = project.beside("order.pdf");
        let path = out.to_str().expect("a path in plain letters");
        project.run(["compare", "1", "now", "--format", "pdf", "--out", path, "--today", "2027-01-20"]).exits(0);
        let text = Pdf::of(&fs::read(&out).expect("a sheet")).pages().concat();
        let row = text.lines().find(|line| line.contains("depends on Range"));
        let row = row.unwrap_or_else(|| panic!("nothing is opened again in:\n{text}"));
        assert!(row.contains("Cabinets") && row.contains("20 Apr 2027"), "{row}");
        assert!(text.contains("Opens again"), "{text}");
    }
}

/// All options were on show when it was approved.
#[test]
fn a_first_choice_opens_nothing_again() {
    let project = changed(&RANGE.replace("chosen: one\n", ""));
    project.run(["compare", "1", "now", "--today", "2027-01-20"]).says("opens again");
    project.run(["issue", "--for", "approval", "--today", "2027-01-21"]).exits(0);
    let project = project.file("rooms/kitchen/range.yaml", RANGE);
    project.run(["compare", "2", "now", "--today", "2027-01-22"]).does_not_say("opens again");
}
