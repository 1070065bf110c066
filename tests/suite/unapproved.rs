//! Nothing is issued for construction that is not approved, unless somebody says why; the reason is printed.

use bookmatch::ledger::{Fact, Issue, Issued, Moment};
use bookmatch::record::Store;

use crate::project::{Project, Ran};

const ROOM: &str = "name: Kitchen\nopenings: {niche: {takes: item, width: 48\", height: 72\"}}\n";
const TRUNK: &str = "selection: Trunk\nkind: item\nplace: niche\nmaker: Zelmor\nmodel: T 1\nfinish: oak\nsupplier: Ardwin\n\
    lead time: 2 weeks\nprice: 90.00\nquantity: 1\nphotos: [rug.jpg]\nsize: {width: 46\", height: 70\", depth: 12\"}\n";

/// A rug of two options; the second stands in the place of `#`.
const RUG_OF_TWO: &str = "selection: Rug\nkind: rug\nneeded for: 2027-06-01\noptions:\n  - {id: oak, name: Oak, maker: Zelmor, model: ZS-1, \
    finish: oak, price: 100.00, face size: 48\" x 72\", quantity: 1, photos: [rug.jpg], supplier: Ardwin, lead time: 2 weeks}\n#";
const ASH: &str = "  - {id: ash, name: Ash, maker: Zelmor, model: ZS-2, finish: ash, price: 90.00, face size: 48\" x 72\", \
    quantity: 1, photos: [rug.jpg], supplier: Ardwin, lead time: 2 weeks}\n";

fn house() -> Project {
    Project::with_a_rug_issued().file("rooms/kitchen/room.yaml", ROOM).file("rooms/kitchen/trunk.yaml", TRUNK)
}

fn construction(project: &Project, more: &[&str]) -> Ran {
    let arguments = ["issue", "--for", "construction", "--today", "2027-01-15"];
    project.run(arguments.iter().chain(more))
}

#[test]
fn what_is_not_approved_is_refused_with_those_who_have_still_to_sign() {
    let project = house();
    construction(&project, &[])
        .exits(1)
        .says("not issued for construction: these are not approved")
        .says("  waiting; still to sign: Ada Marrowby: K-01 Rug\n")
        .says("  not asked; still to sign: Ada Marrowby: K-02 Trunk\n")
        .says("`--unapproved \"…\"`");
    assert!(!project.root().join("record/issues/0002.json").exists());
    construction(&project, &["--unapproved", " "]).exits(2).says("say why after `--unapproved`");
    project
        .run(["issue", "--for", "approval", "--unapproved", "said so", "--today", "2027-01-15"])
        .exits(2)
        .says("`--unapproved` goes with `--for construction`");
}

#[test]
fn what_is_taken_all_the_same_is_printed_with_the_reason_on_its_sheet() {
    let project = house();
    let out = project.beside("site");
    let sheet = || {
        project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
        std::fs::read_to_string(out.join("installer/openings/kitchen/niche.html")).unwrap()
    };
    assert!(sheet().contains("not given yet: ask the office before anything is built from this"));
    construction(&project, &["--unapproved", "Ada is at sea; agreed by radio"])
        .exits(0)
        .says("issue 2 for construction")
        .says("not approved, and built all the same (Ada is at sea; agreed by radio): K-01 Rug and K-02 Trunk");
    let told = "not given; taken into issue 2 for construction all the same: Ada is at sea; agreed by radio";
    assert!(sheet().contains(told), "{}", sheet());
    let issue = std::fs::read_to_string(project.root().join("record/issues/0002.json")).unwrap();
    let issue: serde_json::Value = serde_json::from_str(&issue).unwrap();
    assert_eq!(issue["unapproved"]["because"], "Ada is at sea; agreed by radio");
    assert_eq!(issue["unapproved"]["items"][0], serde_json::json!({"room": "kitchen", "item": "rug"}));
    project
        .run(["status", "--today", "2027-01-15"])
        .says("approval Kitchen, K-01 Rug: waiting; still to sign: Ada Marrowby")
        .says(
            "not approved, and built all the same by issue 2 (Ada is at sea; agreed by radio): K-01 Rug and K-02 Trunk",
        );
    let same = ["--unapproved", "Ada is at sea; agreed by radio"];
    construction(&project, &same).exits(0).says("nothing changed since issue 2; it stands");
    project
        .run(["compare", "1", "2", "--today", "2027-01-15"])
        .says("not approved, and built all the same (Ada is at sea; agreed by radio): K-01 Rug and K-02 Trunk");
}

/// Signed later, the paper that bears the reason is replaced by a clean one, though nothing else changed.
#[test]
fn what_was_taken_unapproved_and_is_signed_since_is_issued_clean() {
    let project = house();
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    construction(&project, &["--unapproved", "agreed by radio"]).exits(0).says("issue 3 for construction");
    approve(&project, "kitchen/rug");
    construction(&project, &["--unapproved", "agreed by radio"])
        .exits(0)
        .says("issue 4 for construction")
        .says("not approved, and built all the same (agreed by radio): K-02 Trunk\n");
    approve(&project, "kitchen/trunk");
    construction(&project, &[])
        .exits(0)
        .says("issue 5 for construction")
        .says("approved since: K-02 Trunk")
        .does_not_say("agreed by radio");
    construction(&project, &[]).exits(0).says("nothing changed since issue 5; it stands");
    project.run(["status", "--today", "2027-01-15"]).does_not_say("all the same");
}

/// Who builds by rooms reads it as well, of each thing of the sheet.
#[test]
fn a_trade_s_sheet_says_of_what_it_builds_that_nobody_approved_it() {
    let tile = |name: &str| {
        format!(
            "selection: {name}\nkind: tile\nmaker: Zelmor\nmodel: F-1\nsupplier: Ardwin\nlead time: 2 weeks\nface size: 4\" x 4\"\nfinish: matt\nprice: 3.00\nquantity: 90 sq ft\n"
        )
    };
    let project = house()
        .file("rooms/kitchen/floor.yaml", &tile("Floor tile"))
        .file("rooms/kitchen/wall.yaml", &tile("Wall tile"));
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]);
    let sheet = std::fs::read_to_string(out.join("installer/trades/kitchen/setter.html")).unwrap();
    let (told, rest) = sheet.split_once("not given yet for ").unwrap_or_else(|| panic!("{sheet}"));
    assert!(told.contains("Client’s approval"));
    assert!(
        rest.starts_with("K-0") && rest.contains("Floor tile and K-0") && rest.contains("Wall tile: ask the office")
    );
}

/// A book that names nobody who approves asks for no reason.
#[test]
fn where_nobody_approves_nothing_is_refused() {
    let project = house().file("book.yaml", "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n");
    construction(&project, &[]).exits(0).says("issue 2 for construction");
}

/// What is approved as it is goes without a reason.
#[test]
fn what_is_approved_is_issued_for_construction() {
    let project = Project::with_a_rug_issued();
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let approve = ["--decision", "approved", "--how", "said on the telephone", "--given", &given];
    let by_hand = ["receive", "--by-hand", "ada", "--item", "kitchen/rug"].into_iter().chain(approve);
    project.run(by_hand).exits(0);
    construction(&project, &[]).exits(0).says("issue 2 for construction");
}

/// Numbers that were issued stay on the list for good, after later issues too.
#[test]
fn a_withdrawn_number_is_listed_and_not_used_again() {
    let project = house();
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    std::fs::remove_file(project.root().join("rooms/kitchen/rug.yaml")).unwrap();
    project.run(["issue", "--for", "approval", "--today", "2027-01-16"]).exits(0);
    let project =
        project.file("rooms/kitchen/chest.yaml", &TRUNK.replace("Trunk", "Chest").replace("place: niche\n", ""));
    project
        .run(["status", "--today", "2027-01-16"])
        .says("K-01 Rug (Kitchen): withdrawn after issue 2, its number is not used again");
    let told = project.run(["status", "--format", "json", "--today", "2027-01-16"]).stdout_is_json();
    assert_eq!(told["approvals"]["withdrawn"][0]["issue"], 2);
    project.run(["issue", "--for", "approval", "--today", "2027-01-16"]).exits(0).says("K-03  Chest, kitchen (new)");
}

fn approve(project: &Project, item: &str) {
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let how = ["--decision", "approved", "--how", "said on the telephone", "--given", &given];
    project.run(["receive", "--by-hand", "ada", "--item", item].into_iter().chain(how)).exits(0);
}

/// What was approved is not left out without a word of those who approved it: they agree by what they sign next.
#[test]
fn what_was_approved_is_not_withdrawn_without_a_word() {
    let project = house();
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    approve(&project, "kitchen/rug");
    approve(&project, "kitchen/trunk");
    construction(&project, &[]).exits(0).says("issue 3 for construction");
    let project = project.without("rooms/kitchen/trunk.yaml").file("rooms/kitchen/room.yaml", "name: Kitchen\n");
    construction(&project, &[])
        .exits(1)
        .says("not issued for construction: these are not approved")
        .says("  approved, and withdrawn since; still to agree: Ada Marrowby: K-02 Trunk, $90.00\n");
    project
        .run(["status", "--today", "2027-01-15"])
        .says("K-02 Trunk (Kitchen): withdrawn after issue 3")
        .says("; it came to $90.00; Ada Marrowby had approved it; still to agree: Ada Marrowby");
    project
        .run(["compare", "3", "now", "--today", "2027-01-15"])
        .says("in all $90.00 before")
        .says("Ada Marrowby had approved it; still to agree: Ada Marrowby");
    let taken = ["--unapproved", "agreed by radio"];
    construction(&project, &taken).exits(0).says("issue 4 for construction");
    construction(&project, &[]).exits(1).says("still to agree");
    // Whoever approves anything of an issue that no longer has it was told there that it is withdrawn.
    project
        .run(["issue", "--for", "approval", "--today", "2027-01-16"])
        .exits(0)
        .says("Trunk, kitchen (gone)")
        .says("Ada Marrowby had approved it");
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-16", "--out", out.to_str().unwrap()]).exits(0);
    let page = std::fs::read_to_string(out.join("client/sign.html")).unwrap();
    assert!(page.contains("K-02 Trunk, $90.00; approved before by Ada Marrowby"), "{page}");
    approve(&project, "kitchen/rug");
    project.run(["status", "--today", "2027-01-16"]).does_not_say("still to agree").says("had approved it");
    construction(&project, &[]).exits(0);
}

/// An option that is taken out, and a thing that moves to another room, are asked again under their names.
#[test]
fn an_option_that_is_taken_out_and_a_thing_that_moves_are_asked_again() {
    let project = house().file("rooms/kitchen/rug.yaml", &RUG_OF_TWO.replace('#', ASH));
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    approve(&project, "kitchen/trunk");
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let how = ["--option", "oak", "--decision", "approved", "--how", "said so", "--given", &given];
    project.run(["receive", "--by-hand", "ada", "--item", "kitchen/rug"].into_iter().chain(how)).exits(0);
    let project = project.file("rooms/kitchen/rug.yaml", &RUG_OF_TWO.replace('#', ""));
    construction(&project, &[]).exits(1).says("changed since signed; still to sign: Ada Marrowby: K-01 Rug");
    project.run(["compare", "2", "now", "--today", "2027-01-15"]).says("option gone, which was");
    let project = project
        .without("rooms/kitchen/trunk.yaml")
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
        .file("rooms/hall/room.yaml", &ROOM.replace("Kitchen", "Hall"))
        .file("rooms/hall/trunk.yaml", TRUNK)
        .photo("rooms/hall/photos/rug.jpg");
    let told = construction(&project, &[]).exits(1);
    told.says("still to agree: Ada Marrowby: K-02 Trunk, $90.00").says("not asked");
}

/// An issue whose content is of a later release is not judged by this one.
#[test]
fn an_issue_of_a_later_release_is_a_stop_that_says_so() {
    let project = Project::with_a_rug_issued();
    let issue = std::fs::read_to_string(project.root().join("record/issues/0001.json")).unwrap();
    let mut issue: serde_json::Value = serde_json::from_str(&issue).unwrap();
    issue["number"] = 2.into();
    issue["items"][0]["content"]["shown"] = "9".into();
    let issue: Issue = serde_json::from_value(issue).unwrap();
    // As a later release would have recorded it.
    let store = Store::of_book(&project.root());
    let mut open = store.open().unwrap();
    let sha256 = open.keep_issue(&issue).unwrap();
    let issued = Issued { number: 2, purpose: issue.purpose, on: issue.on, sha256, items: 1 };
    open.append(Moment::midnight("2027-01-15".parse().unwrap()).unwrap(), Fact::Issued(issued)).unwrap();
    drop(open);
    project
        .run(["review", "--today", "2027-01-15"])
        .exits(1)
        .says("issue 2 was made by a later release of this program, and can't be judged by this one")
        .says("install that release or a newer one");
}

/// A reminder names what waits for that person, by when and why by then; what is ordered is not asked for.
#[test]
fn a_reminder_says_what_waits_by_when_and_why() {
    let screen = TRUNK
        .replace("Trunk", "Screen")
        .replace("kind: item\nplace: niche", "kind: rug\nface size: 48\" x 72\"\nneeded for: 2027-08-02");
    let rug = std::fs::read_to_string(house().root().join("rooms/kitchen/rug.yaml")).unwrap();
    let ordered = rug.replace("selection: Rug", "selection: Mat") + "order: {placed on: 2027-01-10}\n";
    let project = house()
        .file("rooms/kitchen/screen.yaml", &format!("{screen}depends on: [Trunk]\n"))
        .file("rooms/kitchen/mat.yaml", &ordered);
    project.run(["status", "--remind", "ben", "--today", "2027-01-15"]).exits(2).says("names no approver `ben`");
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let letter = project.run(["status", "--remind", "ada", "--today", "2027-01-15"]).exits(0);
    letter
        .says("Ada Marrowby,\n")
        .says("3 choices of Small wait for you (issue 2, 15 Jan 2027), the earliest first:")
        .says("- 18 May 2027: approve K-01 Rug, Kitchen\n- ")
        .says("when Screen, which depends on it, must be ordered: approve K-0")
        .does_not_say("Mat");
    let project = project.file(
        "book.yaml",
        "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\nlanguages: es\napprovers: [{id: ada, name: Ada Marrowby}]\n",
    );
    project
        .run(["status", "--remind", "ada", "--today", "2027-01-15"])
        .says("aprobar K-01 Rug")
        .does_not_say("approve");
}

/// A letter leads to the page to decide on, by the private link of the person that it is to where there is one.
#[test]
fn a_reminder_says_where_to_decide_and_holds_the_link_of_that_person_alone() {
    let text = "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n\
        approvers: [{id: ada, name: Ada Marrowby}, {id: ben, name: Ben Ostrevy}]\n";
    let project = Project::with_a_rug().file("book.yaml", text);
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let letter = |project: &Project| project.run(["status", "--remind", "ada", "--today", "2027-01-15"]).exits(0);
    letter(&project).says("Please decide on the pages that you were sent").does_not_say("https://");
    let project = project.file("book.yaml", &format!("{text}published at: https://book.example/small/\n"));
    letter(&project).says("The page to decide on:\nhttps://book.example/small/client/sign.html\n");
    let invited = project.run(["invite"]).exits(0);
    let link = |name: &str| {
        let line = invited.stdout.lines().find(|line| line.starts_with(name)).expect("a line each");
        line.split_once(": ").expect("a link").1.to_owned()
    };
    let told = letter(&project);
    assert!(told.stdout.contains(&format!("Your own page to decide on. What is said there is said in your name, so keep its address to yourself:\n{}\n", link("Ada"))), "{}", told.stdout);
    let others = link("Ben").rsplit_once("&key=").expect("a key").1.to_owned();
    told.does_not_say(&others).says("send it to that person alone");
    project.run(["invite", "--withdraw", "ada"]).exits(0);
    letter(&project).says("The page to decide on:").does_not_say("&key=");
}
