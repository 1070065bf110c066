//! What rests on something that changed is opened again in every command, by whatever the change was.

use std::fs;

use super::readers::Pdf;
use crate::project::Project;

const FACTS: &str = "kind: rug\nmaker: Zelmor\nsupplier: Ardwin\nlead time: 2 weeks\nneeded for: 2027-06-01\n\
    face size: 48\" x 72\"\nquantity: 1\nphotos: [rug.jpg]\nfinish: oak\nprice: 100.00\n";
const MAT: &str =
    "selection: Mat\nchosen: one\noptions: [{id: one, name: Wide, model: M-1}, {id: two, name: Narrow, model: M-2}]\n";

/// A rug that was issued and approved on the first mat, and the book as the mat is changed then.
fn changed(issued: &str, now: &str) -> Project {
    let project = Project::new()
        .file(
            "book.yaml",
            "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\napprovers: [{id: ada, name: Ada Marrowby}]\n",
        )
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
        .file("rooms/kitchen/mat.yaml", &format!("{issued}{FACTS}"))
        .file("rooms/kitchen/rug.yaml", &format!("selection: Rug\nmodel: ZS-1\ndepends on: [Mat]\n{FACTS}"))
        .photo("rooms/kitchen/photos/rug.jpg");
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    // What is given by hand is given before it is recorded, by the clock.
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let approve = ["--decision", "approved", "--how", "said on the telephone", "--given", &given];
    let by_hand = ["receive", "--by-hand", "ada", "--item", "kitchen/rug"].into_iter().chain(approve);
    project.run(by_hand).exits(0);
    project.file("rooms/kitchen/mat.yaml", &format!("{now}{FACTS}"))
}

/// Arithmetic: two weeks before 1 June is 18 May.
#[test]
fn another_option_opens_again_what_another_model_opens_again_with_the_day_of_its_order() {
    for (mat, how) in [
        (MAT.replace("chosen: one", "chosen: two"), "the choice from `Wide` to `Narrow`"),
        (MAT.replace("model: M-1", "model: M-9"), "Wide: model from M-1 to M-9"),
    ] {
        let project = changed(MAT, &mat);
        let told = format!(
            "`Rug` was approved in issue 1, and `Mat`, which it depends on, has changed since: {how}; \
             it is to be ordered by 18 May 2027"
        );
        project.run(["review", "--today", "2027-01-20"]).says(&told);
        project.run(["status", "--today", "2027-01-20"]).says(&told);
        project
            .run(["compare", "1", "now", "--today", "2027-01-20"])
            .says("to be looked at again (its approval stands)\n")
            .says("Rug, kitchen: it depends on Mat; order by 18 May 2027");
        let out = project.beside("order.pdf");
        let path = out.to_str().expect("a path in plain letters");
        project.run(["compare", "1", "now", "--format", "pdf", "--out", path, "--today", "2027-01-20"]).exits(0);
        let text = Pdf::of(&fs::read(&out).expect("a sheet")).pages().concat();
        let row = text.lines().find(|line| line.contains("depends on Mat"));
        let row = row.unwrap_or_else(|| panic!("nothing is opened again in:\n{text}"));
        assert!(row.contains("Rug") && row.contains("18 May 2027"), "{row}");
        assert!(text.contains("TO BE LOOKED AT AGAIN"), "{text}");
    }
}

/// What nobody chose is nothing that anything rests on, nor is the order in which options stand.
#[test]
fn an_option_that_is_not_chosen_opens_nothing_again() {
    let swapped = MAT.replace(
        "{id: one, name: Wide, model: M-1}, {id: two, name: Narrow, model: M-2}",
        "{id: two, name: Narrow, model: M-2}, {id: one, name: Wide, model: M-1}",
    );
    for (mat, how) in [
        (MAT.replace("M-2", "M-8"), "Narrow: model from M-2 to M-8"),
        (MAT.replace("M-2}", "M-2}, {id: three, name: Round, model: M-3}"), "option new: Round"),
        (swapped, "order of the options from Wide, Narrow to Narrow, Wide"),
    ] {
        let project = changed(MAT, &mat);
        for command in ["review", "status"] {
            project.run([command, "--today", "2027-01-20"]).does_not_say("which it depends on, has changed since");
        }
        project
            .run(["compare", "1", "now", "--today", "2027-01-20"])
            .says(how)
            .does_not_say("to be looked at again")
            .says("looked at, unchanged\n");
    }
}

/// All options were on show when it was approved.
#[test]
fn a_first_choice_opens_nothing_again() {
    let project = changed(&MAT.replace("chosen: one\n", ""), MAT);
    project.run(["compare", "1", "now", "--today", "2027-01-20"]).exits(0).does_not_say("to be looked at again");
    project.run(["review", "--today", "2027-01-20"]).does_not_say("which it depends on, has changed since");
}

/// Nothing rests on what a thing costs, nor on its picture.
#[test]
fn another_price_opens_nothing_again_and_what_rests_on_it_is_named_as_unchanged() {
    let project = changed(MAT, MAT);
    let project = project.file("rooms/kitchen/mat.yaml", &format!("{MAT}{}", FACTS.replace("100.00", "120.00")));
    project.run(["review", "--today", "2027-01-20"]).does_not_say("which it depends on, has changed since");
    project
        .run(["compare", "1", "now", "--today", "2027-01-20"])
        .exits(0)
        .does_not_say("to be looked at again")
        .says("looked at, unchanged\n")
        .says("Rug, kitchen: it depends on Mat, and nothing changed that it rests on");
    let told = project.run(["compare", "1", "now", "--format", "json", "--today", "2027-01-20"]).stdout_is_json();
    assert_eq!((&told["opens_again"], &told["unchanged"][0]["item"]), (&serde_json::json!([]), &"rug".into()));
}

/// Whoever looked writes the day of that look: after the issue, and no earlier than what it rests on was chosen.
#[test]
fn what_was_chosen_anew_since_stays() {
    let other = MAT.replace("chosen: one", "chosen: two\nchosen on: 2027-01-18");
    for (day, stays) in [("2027-01-19", true), ("2027-01-17", false), ("2027-01-14", false)] {
        let project = changed(MAT, &other);
        let rug = format!("selection: Rug\nmodel: ZS-1\nchosen on: {day}\ndepends on: [Mat]\n{FACTS}");
        let project = project.file("rooms/kitchen/rug.yaml", &rug);
        let review = project.run(["review", "--today", "2027-01-20"]);
        let compared = project.run(["compare", "1", "now", "--today", "2027-01-20"]);
        if stays {
            review.does_not_say("which it depends on, has changed since");
            compared
                .says("Rug, kitchen: it depends on Mat; chosen anew on 19 Jan 2027")
                .does_not_say("to be looked at again");
        } else {
            review.says("which it depends on, has changed since");
            compared.says("to be looked at again (its approval stands)\n").does_not_say("looked at, unchanged");
        }
    }
}
