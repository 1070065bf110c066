//! What an item's mark is of, field by field, and that it stays so.

use crate::assess::rules::trial::Trial;
use crate::shown::{self, ShownItem};
use crate::vocabulary::Version;

const RANGE: &str = r#"
selection: Range
kind: range
place: range
why: Wide enough for a *full* sheet.
allowance: appliances
furnished by: client
installed by: plumber
tag: K-04
private: Trade account
chosen: steel
options:
  - id: steel
    name: Brushed steel
    maker: Zelmor
    model: "30 C"
    finish: steel
    colour: sea lichen 14
    description: Six burners
    hinge: left
    material: does not burn
    size: {width: 757 mm, height: 905 to 930 mm, depth: 650 mm, depth with door: 690 mm, depth with handle: 720 mm}
    set: flush
    airflow: 390 cfm
    holes: 2
    drop: 300 mm to 700 mm
    face size: 100 mm x 200 mm
    supplier: Ardwin
    lead time: 6 weeks
    price: 3180.00
    cost: 2000.00
    quantity: 2
    photos: [{file: range.png, alt: Its front}]
    fit: {caution: Fix the bracket before use, weight: 90 kg}
    accessories: [{name: joining kit, model: JK-2, price: 140.00, cost: 90.00, quantity: 3}]
  - {maker: Zelmor, model: "36"}
"#;

const LATER: &str = r#"
fuel: electric
price per: piece
includes: [delivery, fitting]
leaves out: [gas line]
laid: {runs: long side level, starts: centred on the window, area: 4 m2}
stores: {depth: 600 mm, bins near: [sink]}
top: {material: stone, lies on: [sink wall], overhang: 380 mm, slab: {number: 77/3, usable: 3 m x 1.5 m}, pieces: {left: 1 m x 650 mm}, seams: [{at: the sink, over: cabinet, reinforced: yes}]}
drilled: [{for: tap, diameter: 35 mm}]
panel: {width: 600 mm, weight: 7 kg, made by: joiner}
"#;

/// The range without and with what the second version alone has a place for.
fn both() -> [ShownItem; 2] {
    let full = RANGE.replace("tag: K-04\n", LATER.trim_start());
    [shown(RANGE, "9000"), shown(&full, "{amount: 9000, includes: delivery}")]
}

fn shown(text: &str, allowance: &str) -> ShownItem {
    let book = Trial::of("approve/ledger")
        .book(&format!("allowances: {{appliances: {allowance}}}"))
        .opening("range", "{takes: range}")
        .selection(text, "")
        .file("rooms/kitchen/photos/range.png", crate::assess::rules::trial::png())
        .read();
    shown::items(&book, &|_| None)[&("kitchen", "range")].shown.clone()
}

/// Source: Python 3.11's `json` and `hashlib` on the content that the page of the mark tells, written out by hand.
#[test]
fn a_mark_is_of_what_its_page_tells_and_of_nothing_else() {
    let [plain, full] = both();
    let cases = [
        (&plain, Version::First, "ea3e10e4e716a4afbcf2c1b350ec4a93b5881f61be7401106c0d66ab46784a47"),
        // The first version has no place for what came later.
        (&full, Version::First, "ea3e10e4e716a4afbcf2c1b350ec4a93b5881f61be7401106c0d66ab46784a47"),
        (&plain, Version::Second, "0fa6d85685b38dd9d59d3e1a4d148e9388e9d449f01f37073152fa98cf606c94"),
        (&full, Version::Second, "f406fdab15a04ba8ef5fb7063128d68f7c104a710d6fbc90700a57f52c96c2b4"),
    ];
    for (item, version, mark) in cases {
        let content = item.content(version);
        assert_eq!(shown::of(&content).to_string(), mark, "{version:?} {content:#}");
    }
}

/// Every key that the tables say is in the mark stands there, and no other.
#[test]
fn the_tables_and_the_content_name_the_same_keys() {
    use crate::book::vocabulary::{ACCESSORY, LAID, OPTION, PHOTO, SELECTION, SIZE};
    use crate::vocabulary::{Mark, Record};
    use std::collections::BTreeSet;

    let [_, full] = both();
    let told = |record: &Record, version: Version, besides: &[&str]| -> BTreeSet<String> {
        let keys = record.fields.iter().filter_map(|field| match field.mark {
            Mark::In(key, since) => since.stands_in(version).then_some(key),
            Mark::Within(key) | Mark::Told(key, _) => Some(key),
            Mark::Out(_) | Mark::OfNoItem => None,
        });
        keys.chain(besides.iter().copied()).map(str::to_string).collect()
    };
    let there = |value: &serde_json::Value| value.as_object().unwrap().keys().cloned().collect::<BTreeSet<_>>();
    let first = full.content(Version::First);
    let option = &first["options"][0];
    let tables = [
        (&first, &SELECTION, &["room", "room name"][..]),
        (option, &OPTION, &["total"]),
        (&option["size"], &SIZE, &[]),
        (&option["accessories"][0], &ACCESSORY, &[]),
        (&option["pictures"][0], &PHOTO, &[]),
    ];
    for (content, record, besides) in tables {
        assert_eq!(there(content), told(record, Version::First, besides), "{}", record.name);
    }
    // What is empty is left out of the second.
    let second = full.content(Version::Second);
    let option = &second["options"][0];
    let tables = [
        (&second, &SELECTION, &["room", "room name", "allowance includes", "shown"][..], &["place"][..]),
        (option, &OPTION, &["total"], &[]),
        (&option["laid"], &LAID, &[], &["bed", "offset", "edges", "behind", "niche"]),
    ];
    for (content, record, besides, empty) in tables {
        let mut wanted = told(record, Version::Second, besides);
        wanted.retain(|key| !empty.contains(&key.as_str()));
        let place = there(content).into_iter().filter(|key| !empty.contains(&key.as_str())).collect::<BTreeSet<_>>();
        assert_eq!(place, wanted, "{}", record.name);
    }
}

/// Whichever version wrote it, an issue is read again as what it was written from.
#[test]
fn what_an_issue_holds_is_read_again_as_it_was_shown() {
    let [plain, full] = both();
    let told = |from: &ShownItem, was: Version, to: &ShownItem, is: Version| -> Vec<String> {
        let changes = shown::changes(&from.content(was), &to.content(is));
        changes.iter().map(|change| change.words().to_string()).collect()
    };
    for version in [Version::First, Version::Second] {
        assert_eq!(told(&plain, version, &plain, Version::Second), [""; 0], "{version:?}");
    }
    assert_eq!(told(&full, Version::Second, &full, Version::Second), [""; 0]);
    let later = told(&full, Version::First, &full, Version::Second);
    assert_eq!(later, told(&plain, Version::Second, &full, Version::Second), "what came later is told as new");
    assert!(later.contains(&"Brushed steel: top overhang new: ≈ 14 15/16\" (380 mm)".to_string()), "{later:?}");
}
