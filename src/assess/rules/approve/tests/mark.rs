//! What an item's mark is of, field by field, and that it stays so.

use crate::assess::rules::trial::Trial;
use crate::marks;

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

/// Source: Python 3.11's `json` and `hashlib` on the content that the page of the mark tells, written out by hand.
#[test]
fn a_mark_is_of_what_its_page_tells_and_of_nothing_else() {
    let book = Trial::of("approve/ledger")
        .book("allowances: {appliances: 9000}")
        .opening("range", "{takes: range}")
        .selection(RANGE, "")
        .file("rooms/kitchen/photos/range.png", crate::assess::rules::trial::png())
        .read();
    let marked = &marks::items(&book, &|_| None)[&("kitchen", "range")];
    assert_eq!(
        marked.mark.to_string(),
        "ea3e10e4e716a4afbcf2c1b350ec4a93b5881f61be7401106c0d66ab46784a47",
        "{:#}",
        marked.content
    );
}

/// Every key that the tables say is in the mark stands there, and no other.
#[test]
fn the_tables_and_the_content_name_the_same_keys() {
    use crate::book::vocabulary::{ACCESSORY, OPTION, PHOTO, SELECTION, SIZE};
    use crate::vocabulary::{Mark, Record};
    use std::collections::BTreeSet;

    let book = Trial::of("approve/ledger").selection(RANGE, "").read();
    let content = marks::items(&book, &|_| None)[&("kitchen", "range")].content.clone();
    let option = &content["options"][0];
    let told = |record: &Record, besides: &[&str]| -> BTreeSet<String> {
        let keys = record.fields.iter().filter_map(|field| match field.mark {
            Mark::In(key) | Mark::Within(key) | Mark::Told(key, _) => Some(key),
            Mark::Out | Mark::OfNoItem => None,
        });
        keys.chain(besides.iter().copied()).map(str::to_string).collect()
    };
    let there = |value: &serde_json::Value| value.as_object().unwrap().keys().cloned().collect::<BTreeSet<_>>();
    assert_eq!(there(&content), told(&SELECTION, &["room", "room name"]));
    assert_eq!(there(option), told(&OPTION, &["total"]));
    assert_eq!(there(&option["size"]), told(&SIZE, &[]));
    assert_eq!(there(&option["accessories"][0]), told(&ACCESSORY, &[]));
    assert_eq!(there(&option["pictures"][0]), told(&PHOTO, &[]));
}
