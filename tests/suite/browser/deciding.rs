//! Clients who decide, sign and hand over, from a disk and by the keys alone.

use super::drive;
use crate::project::Project;
use crate::project::example::TODAY;
use bookmatch::digest::{Digest, canonical};
use bookmatch::ledger::{
    Attestation, Chain, Decided, Decision, Fact, Issue, Issued, IssuedItem, ItemDecision, Line, Moment, Opened,
    Purpose, Total,
};
use bookmatch::read::read;
use bookmatch::shown::{self, Marked};
use bookmatch::source::Folder;
use bookmatch::units::Date;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

const BOOK: &str = "5f0c37a9d2e14b86a0f3c7d915be6284";
/// Nothing answers there: names that end so lead nowhere (RFC 2606).
const RESPONSES: &str = "responses: {post: \"https://book.example/responses\", email: office@marrowby.example}\n";

#[test]
fn clients_decide_sign_and_hand_over_on_a_telephone_and_on_a_desk_and_on_one_that_they_share() {
    let text = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("example-project/book.yaml")).unwrap();
    let text = text.replace("languages: [en]", "languages: {client: [en, es], installer: en}");
    let project = Project::of_the_example().file("book.yaml", &(text + RESPONSES));
    issue(&project.root());
    let out = project.beside("site");
    project.run(["publish".as_ref(), "--today".as_ref(), TODAY.as_ref(), "--out".as_ref(), out.as_os_str()]).exits(0);
    let part = |name: &str| out.join(name).to_str().unwrap().to_owned();
    drive("deciding.mjs", &[&part("client")]);
    drive("shared.mjs", &[&part("client")]);
    drive("tongues.mjs", &[&part("client")]);
    drive("readings.mjs", &[&part("installer"), "openings/kitchen/refrigerator.html", "issued"]);
}

/// Freezes issue 1 of a book, and puts on record that one of two approved its sink, and both its lantern.
fn issue(root: &Path) {
    let at: Moment = serde_json::from_str("\"2027-01-15T09:00:00Z\"").unwrap();
    let on = Date::parse(TODAY).unwrap();
    fs::create_dir_all(root.join("record/issues")).unwrap();
    let opened = Fact::Opened(Opened { book: BOOK.into(), title: "14 Tallow Lane".into() });
    add(root, at, opened);
    // With a record there, reading takes the pictures' digests too.
    let book = read(&Folder::open(root).unwrap()).unwrap().book;
    let marked = shown::items(&book, &shown::as_read(&book));
    let issue = frozen(on, &marked);
    let bytes = canonical(&serde_json::to_value(&issue).unwrap()).unwrap();
    fs::write(root.join("record/issues/0001.json"), &bytes).unwrap();
    let items = u32::try_from(issue.items.len()).unwrap();
    let sha256 = Digest::of(&bytes);
    add(root, at, Fact::Issued(Issued { number: 1, purpose: Purpose::Approval, on, sha256, items }));
    let item = |room: &str, item: &str| issue.item(room, item).expect("the example has it");
    add(root, at, Fact::Decided(approved(item("kitchen", "sink"), "samir", Attestation::Unsigned, at)));
    // The lantern was ordered already: nothing may be that nobody approved.
    for who in ["odile", "samir"] {
        add(root, at, Fact::Decided(approved(item("hall", "lantern"), who, Attestation::Hand, at)));
    }
}

fn frozen(on: Date, marked: &BTreeMap<(&str, &str), Marked>) -> Issue {
    let items = marked.iter().map(|((room, item), marked)| IssuedItem {
        room: (*room).into(),
        item: (*item).into(),
        tag: String::new(),
        name: String::new(),
        mark: marked.mark,
        also: vec![],
        content: marked.content.clone(),
        price: None,
        lead_time: None,
        order_by: None,
        supplier: None,
    });
    Issue {
        book: BOOK.into(),
        number: 1,
        purpose: Purpose::Approval,
        on,
        title: "14 Tallow Lane".into(),
        currency: "USD".into(),
        total: Total::default(),
        terms: None,
        after: None,
        items: items.collect(),
        built: None,
        asked: vec![],
        unapproved: None,
        money: None,
        title_block: None,
    }
}

fn approved(item: &IssuedItem, who: &str, by: Attestation, at: Moment) -> Decided {
    let asked = ItemDecision {
        room: item.room.clone(),
        item: item.item.clone(),
        mark: item.mark,
        decision: Decision::Approved,
        option: None,
        note: Some("</script><b>ours</b>".into()),
    };
    Decided {
        response: Digest::of(format!("{} by {who}", item.item).as_bytes()),
        issue: 1,
        who: who.into(),
        by,
        key: None,
        how: (by == Attestation::Hand).then(|| "on the telephone, 11 January".into()),
        given: None,
        made: at,
        device: None,
        signed: None,
        items: vec![asked],
        refused: vec![],
    }
}

fn add(root: &Path, at: Moment, fact: Fact) {
    let path = root.join("record/ledger.jsonl");
    let mut ledger = fs::read(&path).unwrap_or_default();
    let line = Line::next(&Chain::read(&ledger), at, fact).unwrap();
    ledger.extend(line.bytes().unwrap());
    fs::write(path, ledger).unwrap();
}
