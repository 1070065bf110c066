//! A book that is carried on after it was signed: what can't be read, who decides no longer, and options that were
//! signed and are not written.

use std::fs;

use crate::project::{Project, Ran};
use crate::sheets::readers::Pdf;

const BOTH: &str = "approvers: [{id: ada, name: Ada Marrowby}, {id: ben, name: Ben Ostrevy}]\n";
const ADA: &str = "approvers: [{id: ada, name: Ada Marrowby}]\n";
const BED: &str = "selection: Bed\nkind: item\nplace: niche\nmaker: Zelmor\nsupplier: Ardwin\nlead time: 2 weeks\nprice: 90.00\n\
    quantity: 1\nphotos: [rug.jpg]\nsize: {width: 46\", height: 70\", depth: 12\"}\n";
const OPTIONS: &str = "options: [{id: oak, name: Pale oak, finish: oak, model: B-1}, {id: ash, name: Dark ash, finish: ash, model: B-2}]\n";

fn book(approvers: &str) -> String {
    format!("title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n{approvers}")
}

/// A rug and a bed, issued to two people for approval.
fn issued() -> Project {
    let project = Project::with_a_rug()
        .file("book.yaml", &book(BOTH))
        .file("rooms/kitchen/room.yaml", "name: Cookery\nopenings: {niche: {takes: item, width: 48\", height: 72\"}}\n")
        .file("rooms/kitchen/bed.yaml", &format!("{BED}{OPTIONS}"));
    run(&project, &["issue", "--for", "approval"]).exits(0);
    project
}

/// The same book with its record, to be carried on in another way.
fn copy(project: &Project) -> Project {
    let files = walkdir::WalkDir::new(project.root()).into_iter().filter_map(Result::ok);
    let files = files.filter(|entry| entry.file_type().is_file());
    files.fold(Project::new(), |copy, entry| {
        let inside = entry.path().strip_prefix(project.root()).unwrap();
        copy.bytes(inside.to_str().unwrap(), &fs::read(entry.path()).unwrap())
    })
}

fn run(project: &Project, arguments: &[&str]) -> Ran {
    project.run([arguments, &["--today", "2027-01-15"]].concat())
}

fn approves(project: &Project, who: &str) {
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let how = ["--decision", "approved", "--how", "said on the telephone", "--given", &given];
    for item in [&["--item", "kitchen/rug"][..], &["--item", "kitchen/bed", "--option", "ash"]] {
        project.run([&["receive", "--by-hand", who], item, &how].concat()).exits(0);
    }
}

fn pdf(project: &Project, from: &str, to: &str) -> String {
    let out = project.beside("order.pdf");
    run(project, &["compare", from, to, "--format", "pdf", "--out", out.to_str().unwrap()]).exits(0);
    Pdf::of(&fs::read(&out).unwrap()).pages().concat().split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn what_a_file_tells_that_cannot_be_read_is_not_gone() {
    let project = issued();
    run(&project, &["issue", "--for", "construction", "--unapproved", "said so"]).exits(0);
    let project = project.file("rooms/kitchen/bed.yaml", &format!("{BED}   {OPTIONS}"));
    let out = project.beside("order.pdf");
    for format in [&["text"][..], &["json"], &["pdf", "--out", out.to_str().unwrap()]] {
        run(&project, &[&["compare", "2", "now", "--format"], format].concat())
            .exits(2)
            .says("not compared: `rooms/kitchen/bed.yaml` can't be read")
            .does_not_say("gone\n");
    }
    assert!(!out.exists());
    let status = run(&project, &["status"]).exits(1);
    let second = status.stdout.lines().nth(1).unwrap_or_default().to_string();
    assert!(second.starts_with("stop: `rooms/kitchen/bed.yaml` can't be read"), "{second}");
    status.says("1 of 1 selections that could be read are settled").does_not_say("(gone)").does_not_say("withdrawn");
    run(&project, &["issue", "--for", "construction"]).exits(1).says("not issued");
    let told = run(&project, &["status", "--format", "json"]).stdout_is_json();
    assert_eq!(told["not_read"][0], "rooms/kitchen/bed.yaml");
}

/// A word that can't be read is no word that was taken out: neither in a size nor in a key.
#[test]
fn what_a_word_tells_that_cannot_be_read_is_not_gone() {
    let path = "rooms/kitchen/rug.yaml";
    for wrong in ["face size: 48 by 72", "face sise: 48\" x 72\""] {
        let project = issued();
        let whole = fs::read_to_string(project.root().join(path)).unwrap();
        let at = 1 + whole.lines().position(|line| line.starts_with("face size")).unwrap();
        let changed = whole.lines().map(|line| if line.starts_with("face size") { wrong } else { line });
        let project = project.file(path, &(changed.collect::<Vec<_>>().join("\n") + "\n"));
        run(&project, &["compare", "1", "now"])
            .exits(2)
            .says(&format!("not compared: `{path}:{at}:"))
            .says("can't be read")
            .does_not_say("gone\n");
        // Two issues are compared all the same: nothing of the book as it stands is in them.
        run(&project, &["compare", "1", "1"]).exits(0);
    }
}

#[test]
fn what_was_signed_has_not_changed_where_the_file_of_its_room_cannot_be_read() {
    let project = issued();
    ["ada", "ben"].iter().for_each(|who| approves(&project, who));
    run(&project, &["status"]).says("2 approved");
    let project = project.file("rooms/kitchen/room.yaml", "name: Cookery\n openings: {\n");
    run(&project, &["status"]).says("not known: not all of it can be read").does_not_say("changed since signed");
    run(&project, &["review"]).does_not_say("changed since");
    let project = project.file("book.yaml", "title: Small\n client: Nobody\n");
    run(&project, &["status"]).does_not_say("no longer decides");
    run(&project, &["compare", "1", "now"]).exits(2).says("`book.yaml` (and 1 more) can't be read");
}

/// One of two signed; then the other is struck out, or one is made enough.
#[test]
fn nothing_is_approved_by_striking_out_who_did_not_sign() {
    for (now, told, on_paper) in [
        (ADA.to_string(), "Ben Ostrevy no longer decides", "Ben Ostrevy no longer decides"),
        (format!("{BOTH}approval: any\n"), "`approval` from `all` to `any`", "any one may sign, where all had to"),
    ] {
        let project = issued();
        approves(&project, "ada");
        let project = project.file("book.yaml", &book(&now));
        run(&project, &["compare", "1", "now"]).exits(0).says(told);
        run(&project, &["issue", "--for", "approval"]).exits(0).says(told);
        run(&project, &["status"])
            .says("0 approved")
            .says("Ada Marrowby, approved, before who must approve changed: to be asked again");
        run(&project, &["compare", "1", "2"]).exits(0).says(told);
        assert!(pdf(&project, "1", "2").contains(on_paper), "{}", pdf(&project, "1", "2"));
        let order = run(&project, &["compare", "1", "2", "--format", "json"]).stdout_is_json();
        assert!(order["who_decides"][0].as_str().is_some_and(|said| said.contains(told)), "{order}");
        run(&project, &["issue", "--for", "construction"]).exits(1).says("Ada Marrowby");
        approves(&project, "ada");
        run(&project, &["status"]).says("2 approved");
    }
}

#[test]
fn what_all_had_signed_stands_when_one_of_them_decides_no_longer() {
    let project = issued();
    ["ada", "ben"].iter().for_each(|who| approves(&project, who));
    let project = project.file("book.yaml", &book(ADA));
    run(&project, &["status"]).says("0 approved").says("approved, and held");
    // Nothing of the things themselves changed: who takes a delivery is not told that it did.
    let site = project.beside("site");
    run(&project, &["publish", "--draft", "--out", site.to_str().unwrap()]);
    let delivery = fs::read_to_string(site.join("installer/deliveries/from-ardwin.html")).unwrap();
    assert!(delivery.contains("Approved, on terms that are others now: call the office"));
    assert!(!delivery.contains("Changed since it was approved: call the office before you take it<"));
    run(&project, &["issue", "--for", "approval"]).exits(0).says("Ben Ostrevy no longer decides");
    run(&project, &["status"]).says("2 approved");
}

#[test]
fn an_option_that_all_signed_stands_everywhere_before_it_is_written() {
    let project = issued();
    approves(&project, "ada");
    run(&project, &["status"]).says("waiting for a choice");
    approves(&project, "ben");
    run(&project, &["status"])
        .says("2 of 2 selections are settled, 2 approved")
        .says("C-01 Bed (Cookery): write `chosen: ash`")
        .does_not_say("waiting for a choice");
    run(&project, &["review"]).says("option `ash` of `Bed` was chosen, and the book does not say so");
    run(&project, &["status", "--remind", "ada"]).exits(2).says("nothing waits for Ada Marrowby");
    let out = project.beside("site");
    run(&project, &["publish", "--draft", "--out", out.to_str().unwrap()]).exits(0);
    let page = |path: &str| fs::read_to_string(out.join(path)).unwrap();
    let sheet = page("installer/openings/kitchen/niche.html");
    assert!(!sheet.contains("Pale oak") && !sheet.contains("Still to be chosen"), "{sheet}");
    assert!(!page("client/sign.html").contains("1 item still open"));
    // What is asked about is what the book says: who sends it back is asked again of the same.
    run(&project, &["issue", "--for", "approval"]).exits(0).says("nothing changed since issue 1; it stands");
    run(&project, &["issue", "--for", "construction"])
        .exits(1)
        .says("not issued for construction: these choices were signed, and the book does not say them")
        .says("C-01 Bed (Cookery): all who must chose Dark ash; write `chosen: ash`");
    let project = project.file("rooms/kitchen/bed.yaml", &format!("{BED}chosen: ash\n{OPTIONS}"));
    run(&project, &["compare", "1", "now"]).exits(0).says("chosen new: Dark ash").does_not_say("to sign:");
    let order = run(&project, &["compare", "1", "now", "--format", "json"]).stdout_is_json();
    assert_eq!((&order["sign"]["needed"], &order["items"][0]["sign"]), (&false.into(), &false.into()));
    run(&project, &["issue", "--for", "construction"]).exits(0).does_not_say("to sign:");
    assert!(pdf(&project, "1", "2").contains("nobody needs to"), "{}", pdf(&project, "1", "2"));
    // Another than was signed is asked again.
    let project = project.file("rooms/kitchen/bed.yaml", &format!("{BED}chosen: oak\n{OPTIONS}"));
    run(&project, &["compare", "1", "now"]).exits(0).says("to sign: nobody, since this was not issued");
}

#[test]
fn a_decision_that_cannot_be_so_is_refused_in_a_line() {
    let project = issued();
    let given = ["--decision", "approved", "--option", "ash", "--how", "by letter", "--given", "2026-01-02"];
    let items = ["receive", "--by-hand", "ada", "--item", "kitchen/bed", "--item", "kitchen/rug"];
    project
        .run([&items[..], &given].concat())
        .exits(2)
        .says("nothing is recorded, since of one item it can't be: kitchen/rug: there is no such option")
        .does_not_say("U+000A");
}

/// A name is one however it is stored: with its accent apart, or with another apostrophe.
#[test]
fn another_way_to_write_a_name_is_no_other_person() {
    let named = |name: &str| book(&format!("approvers: [{{id: ada, name: \"{name}\"}}]\n"));
    let project = Project::with_a_rug().file("book.yaml", &named("Z\u{00e9}a O'Lint"));
    run(&project, &["issue", "--for", "approval"]).exits(0);
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let by_hand = ["receive", "--by-hand", "ada", "--item", "kitchen/rug", "--decision", "approved"];
    project.run([&by_hand[..], &["--how", "by letter", "--given", &given]].concat()).exits(0);
    let project = project.file("book.yaml", &named("Ze\u{0301}a  O\u{2019}Lint"));
    run(&project, &["status"]).says("1 approved").does_not_say("held");
    let project = project.file("book.yaml", &named("Zoa O'Lint"));
    run(&project, &["status"]).says("0 approved");
}

/// A sheet on site says whom to call: whoever holds one with another number can be sent the new one.
#[test]
fn another_number_to_call_is_told_asks_nobody_and_can_be_issued_anew() {
    let firm = |phone: &str| format!("{}firm: {{name: Varrick, phone: {phone}}}\naddress: 1 Tallow Lane\n", book(ADA));
    let project = issued().file("book.yaml", &firm("555 0188"));
    let build = ["issue", "--for", "construction", "--unapproved", "said so"];
    run(&project, &build).exits(0).says("issue 2");
    run(&project, &build).exits(0).says("nothing changed since issue 2; it stands");
    let project = project.file("book.yaml", &firm("555 0142"));
    run(&project, &["compare", "2", "now"])
        .says("where to call from 555 0188 to 555 0142")
        .says("no item changed")
        .does_not_say("to sign");
    let terms = run(&project, &["compare", "2", "now", "--format", "json"]).stdout_is_json()["terms"].clone();
    assert_eq!(terms, serde_json::json!(["where to call from 555 0188 to 555 0142"]));
    assert!(pdf(&project, "2", "now").contains("Where to call 555 0188 555 0142"), "{}", pdf(&project, "2", "now"));
    run(&project, &build).exits(0).says("issue 3");
    run(&project, &["status"]).does_not_say("approve again");
    let project =
        project.file("book.yaml", &firm("555 0142").replace("1 Tallow", "7 Tallow").replace("Small", "Smaller"));
    run(&project, &["compare", "3", "now"])
        .says("the address of the work from 1 Tallow Lane to 7 Tallow Lane")
        .says("the title from Small to Smaller");
}

/// Two who chose differently are both asked; what they agree on is not.
#[test]
fn who_answered_otherwise_than_another_is_reminded_to_agree() {
    let project = issued();
    approves(&project, "ada");
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let how = ["--decision", "approved", "--how", "said on the telephone", "--given", &given];
    let oak = ["--item", "kitchen/bed", "--option", "oak"];
    let rug = ["--item", "kitchen/rug"];
    for item in [&oak[..], &rug] {
        project.run([&["receive", "--by-hand", "ben"], item, &how].concat()).exits(0);
    }
    run(&project, &["status"]).says("not agreed");
    for (who, other) in [("ada", "Ben Ostrevy"), ("ben", "Ada Marrowby")] {
        run(&project, &["status", "--remind", who])
            .says(&format!("Bed, Cookery: {other} answered otherwise"))
            .does_not_say("Rug");
    }
}

/// What is ordered is not asked for; where it was changed after it was signed it is, and can be published to be signed.
#[test]
fn what_is_ordered_and_changed_is_asked_of_those_who_signed() {
    let project = issued();
    ["ada", "ben"].iter().for_each(|who| approves(&project, who));
    let path = "rooms/kitchen/rug.yaml";
    let rug = fs::read_to_string(project.root().join(path)).unwrap();
    let ordered = format!("{rug}order: {{placed on: 2027-01-14}}\n");
    let project = project.file(path, &ordered);
    run(&project, &["status", "--remind", "ada"]).exits(2).says("nothing waits for Ada Marrowby");
    let finish = rug.lines().find(|line| line.starts_with("finish")).expect("a finish");
    let project = project.file(path, &ordered.replace(finish, "finish: wholly another one"));
    run(&project, &["review"]).says("stop[approve/stale]").says("issue the book again");
    run(&project, &["issue", "--for", "approval"]).exits(0);
    run(&project, &["review"]).does_not_say("stop[approve/stale]").says("the newest issue asks them");
    run(&project, &["status", "--remind", "ada"]).exits(0).says("Rug, Cookery").does_not_say("Bed");
    let site = project.beside("site");
    run(&project, &["publish", "--draft", "--out", site.to_str().unwrap()]);
    let cover = fs::read_to_string(site.join("client/index.html")).unwrap();
    assert!(!cover.contains("Nothing is waiting for you"));
}

/// The sum of what was approved hangs on the rate of tax, and an allowance on its amount: neither changes unsaid.
#[test]
fn what_was_agreed_of_money_does_not_change_unsaid() {
    let taxed = |money: &str| book(BOTH) + money;
    let terms = |tax: &str, amount: &str| format!("tax: {tax} %\nallowances: {{finishes: {{amount: {amount}}}}}\n");
    let project = issued().file("book.yaml", &taxed(&terms("7.5", "500.00")));
    run(&project, &["issue", "--for", "approval"]).exits(0);
    ["ada", "ben"].iter().for_each(|who| approves(&project, who));
    let told = "what was agreed of money changed since issue 2";
    run(&project, &["review"]).does_not_say(told);
    let project = project.file("book.yaml", &taxed(&terms("8.5", "500.00")));
    run(&project, &["review"]).says(&format!("{told}: tax from 7.5 % to 8.5 %")).says("issue the book again");
    run(&project, &["status"]).says("2 approved");
    let project = project.file("book.yaml", &taxed(&terms("7.5", "900.00")));
    run(&project, &["review"]).says(told).says("allowance `finishes` from");
    run(&project, &["issue", "--for", "approval"]).exits(0);
    run(&project, &["review"]).does_not_say("what was agreed of money");
}

/// A word that can't be read is no change of what was signed: neither of the thing nor of all that hang on the book's own.
#[test]
fn what_was_signed_has_not_changed_where_a_word_cannot_be_read() {
    let path = "rooms/kitchen/rug.yaml";
    let project = issued();
    ["ada", "ben"].iter().for_each(|who| approves(&project, who));
    let rug = fs::read_to_string(project.root().join(path)).unwrap();
    let project = project.file(path, &rug.replace("face size: 48", "face size: forty eight"));
    run(&project, &["review"]).exits(1).does_not_say("approve/stale").does_not_say("new or changed");
    run(&project, &["status"]).says("not known: not all of it can be read").says("1 approved");
    let project =
        project.file(path, &rug).file("book.yaml", &(book(BOTH) + "allowances: {finishes: {amount: many}}\n"));
    run(&project, &["review"]).exits(1).does_not_say("approve/stale").does_not_say("what was agreed of money");
    // What is another is told once all can be read again.
    let project = project.file("book.yaml", &book(BOTH)).file(path, &rug.replace("finish: oak", "finish: ash"));
    run(&project, &["review"]).says("approve/stale");
}

/// An order is nobody's signature: what is ordered and was not approved is not built from without a word.
#[test]
fn what_is_ordered_and_not_approved_is_not_issued_for_construction() {
    let project = issued();
    let path = "rooms/kitchen/rug.yaml";
    let rug = fs::read_to_string(project.root().join(path)).unwrap();
    let project = project
        .file(path, &format!("{rug}order: {{placed on: 2027-01-14}}\n"))
        .file("rooms/kitchen/bed.yaml", &format!("{BED}{OPTIONS}chosen: ash\n"));
    run(&project, &["issue", "--for", "construction"])
        .exits(1)
        .says("not issued for construction: these are not approved")
        .says("Rug");
    run(&project, &["issue", "--for", "construction", "--unapproved", "they said so"]).exits(0);
}

/// Both chose one option, and the book writes the other: it is told by what they chose, and not by its name alone.
#[test]
fn another_option_than_was_chosen_is_told_as_that() {
    let project = issued();
    ["ada", "ben"].iter().for_each(|who| approves(&project, who));
    let chosen = |option: &str| format!("{BED}{OPTIONS}chosen: {option}\n");
    let project = project.file("rooms/kitchen/bed.yaml", &chosen("ash"));
    run(&project, &["review"]).does_not_say("was chosen, and the book says");
    let project = project.file("rooms/kitchen/bed.yaml", &chosen("oak"));
    run(&project, &["review"]).says("option `ash` was chosen, and the book says `oak`");
}

/// What nobody chose is neither built nor paid for: its price, its words, or that it is gone opens nothing again.
#[test]
fn what_was_not_chosen_opens_nothing_again() {
    let path = "rooms/kitchen/bed.yaml";
    let project = issued();
    ["ada", "ben"].iter().for_each(|who| approves(&project, who));
    let bed = format!("{BED}chosen: ash\n{OPTIONS}");
    let oak = "{id: oak, name: Pale oak, finish: oak, model: B-1}, ";
    for changed in [
        bed.replace("finish: oak, model: B-1", "finish: oak, model: B-1, price: 95.00"),
        bed.replace("finish: oak", "finish: smoked oak"),
        bed.replace(oak, ""),
    ] {
        assert_ne!(changed, bed);
        let project = copy(&project).file(path, &changed);
        run(&project, &["status"]).says("2 approved");
        run(&project, &["review"]).does_not_say("approve/stale");
        run(&project, &["issue", "--for", "approval"]).exits(0).does_not_say("to sign");
        run(&project, &["status", "--remind", "ada"]).exits(2).says("nothing waits for Ada Marrowby");
        run(&project, &["issue", "--for", "construction"]).exits(0);
    }
    for changed in [
        bed.replace("finish: ash", "finish: smoked ash"),
        bed.replace("chosen: ash", "chosen: oak"),
        bed.replace("depth: 12", "depth: 13"),
        format!("{BED}{OPTIONS}").replace("finish: oak", "finish: smoked oak"),
    ] {
        let project = copy(&project).file(path, &changed);
        run(&project, &["status"]).says("1 approved");
    }
}

/// A decision answers the issue that asked, though one for construction was made since.
#[test]
fn what_is_said_after_an_issue_for_construction_answers_the_one_that_asked() {
    let project = issued();
    ["ada", "ben"].iter().for_each(|who| approves(&project, who));
    let project = project.file("rooms/kitchen/bed.yaml", &format!("{BED}chosen: ash\n{OPTIONS}"));
    run(&project, &["issue", "--for", "construction"]).exits(0).says("issue 2");
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let how = ["--item", "kitchen/rug", "--decision", "rejected", "--how", "said on site", "--given", &given];
    project.run([&["receive", "--by-hand", "ben"][..], &how].concat()).exits(0);
    let ledger = fs::read_to_string(project.root().join("record/ledger.jsonl")).unwrap();
    let last: serde_json::Value = serde_json::from_str(ledger.lines().last().unwrap()).unwrap();
    assert_eq!(last["fact"]["issue"], 1, "{last}");
}
