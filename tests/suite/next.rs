//! What to do next: the end of a review, a part of one, and who is still to answer.

use crate::project::Project;

const TODAY: [&str; 2] = ["--today", "2027-01-15"];

/// A refrigerator that is too wide and a rug without a price, in two rooms, with a hold point each.
fn book() -> Project {
    Project::new()
        .file(
            "book.yaml",
            "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n\
             hold points: {cabinets ordered: 2027-02-08, goods ordered: 2027-03-01}\n",
        )
        .file(
            "rooms/kitchen/room.yaml",
            "name: Kitchen\nopenings:\n  hole: {takes: refrigerator, width: 33 1/8\", measured: {on: 2027-01-11, by: Teo Varrick}}\n",
        )
        .file(
            "rooms/kitchen/fridge.yaml",
            "selection: Refrigerator\nkind: refrigerator\nplace: hole\nmaker: Quorvex\nsize: {width: 34\"}\nfit: {play: 1/4\"}\n",
        )
        .file("rooms/hall/room.yaml", "name: Front hall\n")
        .file("rooms/hall/rug.yaml", "selection: Rug\ntag: H-07\nkind: rug\nmaker: Zelmor\n")
}

fn told(arguments: &[&str]) -> crate::project::Ran {
    book().run(["review"].iter().chain(&TODAY).chain(arguments))
}

#[test]
fn a_review_ends_with_the_three_things_to_do_next() {
    let all = told(&[]).exits(1);
    let (_, end) = all.stdout.split_once("\nnext\n").expect("what to do next");
    let lines: Vec<&str> = end.lines().take_while(|line| line.starts_with("  ")).collect();
    assert_eq!(lines.len(), 3, "{end}");
    assert!(
        lines[0].starts_with("  1. Kitchen, Refrigerator: ") && lines[0].contains("cabinets ordered, 8 Feb 2027"),
        "{end}"
    );
    assert!(end.trim_end().ends_with(" notes"), "the counts stand last: {end}");
    // A fault of the folder comes first: what stands behind it is not known.
    let faulty = book().file("rooms/hall/vase.yaml", "selection: Vase\nkind: item\ncolour of it: blue\n");
    let faulty = faulty.run(["review"].iter().chain(&TODAY));
    assert!(faulty.stdout.contains("next\n  1. Front hall, Vase: "), "{}", faulty.stdout);
    let clean = Project::with_a_rug_issued();
    clean.run(["review"].iter().chain(&TODAY)).does_not_say("next\n");
}

#[test]
fn a_part_of_a_review_is_of_a_room_an_item_or_a_rule() {
    for (only, says, not) in [
        ("front HALL", "the rug lacks", "refrigerator"),
        ("h-07", "the rug lacks", "refrigerator"),
        ("Refrigerator", "the refrigerator lacks", "the rug"),
        ("complete/field", "the rug lacks", "[fit/"),
        ("fit", "[fit/", "[complete/"),
    ] {
        told(&["--only", only]).exits(1).says(says).does_not_say(not).says("not told here");
    }
    let two = told(&["--only", "fit", "--only", "hall", "--format", "json"]).exits(1).stdout_is_json();
    let findings = two["findings"].as_array().unwrap();
    assert!(findings.iter().any(|one| one["room"] == "hall") && findings.iter().any(|one| one["room"] == "kitchen"));
    assert_eq!(two["counts"]["stop"], findings.iter().filter(|one| one["severity"] == "stop").count());
    told(&["--only", "refrigeratr"]).exits(2).says("did you mean `Refrigerator`?");
}

#[test]
fn a_part_of_a_review_goes_up_to_a_hold_point() {
    told(&["--until", "cabinets ordered"]).exits(1).says("the refrigerator lacks").does_not_say("the rug lacks");
    told(&["--until", "Goods Ordered"]).exits(1).says("the refrigerator lacks").says("the rug lacks");
    told(&["--until", "someday"]).exits(2).says("its hold points are").says("cabinets ordered");
}

#[test]
fn status_tells_approved_from_chosen_who_waits_and_what_they_wrote() {
    let answered = |decision: &str, note: &str| {
        let project = Project::with_a_rug_issued();
        let said = ["--decision", decision, "--note", note, "--how", "by telephone, 2027-01-16"];
        project.run(["receive", "--by-hand", "ada", "--item", "K-01"].iter().chain(&said)).exits(0);
        project.run(["status"].iter().chain(&TODAY))
    };
    let asked = Project::with_a_rug_issued().run(["status"].iter().chain(&TODAY));
    asked.says("1 of 1 selections are settled, 0 approved").says("Ada Marrowby is still to answer on K-01");
    answered("revise and resubmit", "Too dark,\nplease lighter.")
        .says("K-01 Rug (Kitchen): to be revised")
        .says("Ada Marrowby, revise and resubmit: “Too dark, please lighter.”")
        .says("1 of 1 selections are settled, 0 approved");
    answered("approved", "Lovely.")
        .says("1 of 1 selections are settled, 1 approved")
        .says("Ada Marrowby, approved: “Lovely.”")
        .does_not_say("still to answer");
}
