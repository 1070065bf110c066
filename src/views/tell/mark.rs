//! The mark of an item: a digest of all that the client is shown of it.
//!
//! SHA-256 (FIPS 180-4) over canonical JSON (RFC 8785). Supplier, cost, lead time and private notes
//! are left out: they may change and leave an approval standing. Of each picture its bytes count.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use super::Subject;
use crate::assess::Amounts;
use crate::book::{Choice, DetailValue, Photo, Room, Selection, Slot};
use crate::pictures::Digest;

/// Each item's mark, by room and selection.
pub fn items<'a>(subject: Subject<'a>) -> BTreeMap<(&'a str, &'a str), String> {
    let marks = subject.book.selections().map(|(room, selection)| {
        ((room.folder.as_str(), selection.id.as_str()), of(&content(subject, room, selection)))
    });
    marks.collect()
}

/// The mark of several items together: of a room's sheet, or of the whole book's.
pub fn of_all<'m>(marks: impl Iterator<Item = &'m String>) -> String {
    of(&Value::Array(marks.map(|mark| Value::String(mark.clone())).collect()))
}

/// A mark as sheets print it: the first eight hex digits, in two fours.
pub fn shown(mark: &str) -> String {
    let (first, second) = (mark.get(..4).unwrap_or(mark), mark.get(4..8).unwrap_or(""));
    format!("{first} {second}")
}

fn of(content: &Value) -> String {
    Digest::of(&canonical(content)).to_string()
}

/// Canonical JSON (RFC 8785). Marks hold texts and lists alone, which it can always hold.
fn canonical(content: &Value) -> Vec<u8> {
    serde_json_canonicalizer::to_vec(content).unwrap_or_default()
}

/// All that the client is shown of an item.
fn content(subject: Subject<'_>, room: &Room, selection: &Selection) -> Value {
    json!({
        "room": room.title(),
        "tag": selection.tag,
        "name": selection.name.value,
        "kind": selection.kind.get().map(|kind| kind.name),
        "place": selection.place.get(),
        "why": selection.why.get(),
        "allowance": selection.allowance.get(),
        "furnished by": selection.furnished_by.get(),
        "installed by": selection.installed_by.get(),
        "chosen": selection.chosen.get(),
        "options": selection.options.iter().map(|option| option_content(subject, option)).collect::<Vec<_>>(),
    })
}

fn option_content(subject: Subject<'_>, option: &Choice) -> Value {
    let text = |slot: &Slot<String>| slot.get().cloned();
    let size = &option.size;
    let length = |slot: &Slot<crate::units::Length>| slot.get().map(|length| length.nanometres().to_string());
    let details =
        option.details.iter().map(|detail| (detail.key.to_string(), Value::String(detail_text(&detail.value))));
    let accessories = option.accessories.iter().map(|with| {
        json!({
            "name": with.name.value, "model": text(&with.model),
            "price": with.price.get().map(|price| price.plain()),
            "quantity": with.quantity.get().map(ToString::to_string),
        })
    });
    json!({
        "id": option.id.value,
        "name": option.title(),
        "maker": text(&option.maker), "model": text(&option.model),
        "finish": text(&option.finish), "colour": text(&option.colour),
        "description": text(&option.description), "hinge": text(&option.hinge),
        "size": {
            "width": length(&size.width), "depth": length(&size.depth),
            "height": size.height.get().map(ToString::to_string),
            "depth with door": length(&size.depth_with_door), "depth with handle": length(&size.depth_with_handle),
            "height to hinge": length(&size.height_to_hinge), "length": length(&size.length),
            "diameter": length(&size.diameter), "thickness": length(&size.thickness),
        },
        "details": details.collect::<serde_json::Map<_, _>>(),
        "quantity": option.quantity.get().map(ToString::to_string),
        "price": option.price.get().map(|price| price.plain()),
        "total": Amounts::price(option).map(|price| price.plain()),
        "accessories": accessories.collect::<Vec<_>>(),
        "pictures": option.photos.iter().map(|photo| picture(subject, photo)).collect::<Vec<_>>(),
    })
}

fn detail_text(value: &DetailValue) -> String {
    match value {
        DetailValue::Words(words) => words.clone(),
        DetailValue::Length(length) => format!("{} nm", length.nanometres()),
        DetailValue::Range(range) => range.to_string(),
        DetailValue::Sides(sides) => sides.worded(|side| format!("{} nm", side.nanometres())),
    }
}

fn picture(subject: Subject<'_>, photo: &Photo) -> Value {
    let digest = subject.pictures.get(&photo.path).map(|made| made.digest.to_string());
    json!({"sha256": digest, "caption": photo.caption})
}

#[cfg(test)]
mod tests {
    use super::*;

    fn canonical_of(json: &str) -> String {
        String::from_utf8(canonical(&serde_json::from_str(json).unwrap())).unwrap()
    }

    /// Source: check values SD-13 (RFC 8785, section 3.2.2 and 3.2.3); top check value 25.
    #[test]
    fn what_is_marked_is_written_as_rfc_8785_asks() {
        let sample = r#"{
          "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
          "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
          "literals": [null, true, false]
        }"#;
        let canonical = r#"{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}"#;
        assert_eq!(canonical_of(sample), canonical);
        assert_eq!(canonical_of("[-0.0]"), "[0]");
        // By UTF-16 units, where a sign beyond the first plane comes before U+FB33.
        let keys = r#"{"\u20ac":1,"\r":2,"\ufb33":3,"1":4,"\ud83d\ude00":5,"\u0080":6,"\u00f6":7}"#;
        assert_eq!(canonical_of(keys), "{\"\\r\":2,\"1\":4,\"\u{80}\":6,\"ö\":7,\"€\":1,\"😀\":5,\"\u{fb33}\":3}");
    }

    /// The digest of the canonical bytes `{"a":1,"b":[]}` by coreutils' `sha256sum`.
    #[test]
    fn a_mark_is_the_digest_of_the_canonical_bytes_whatever_the_order() {
        let mark = |json: &str| of(&serde_json::from_str(json).unwrap());
        assert_eq!(mark(r#"{"b": [], "a": 1}"#), "f87e4099e9be5e75094e0a4f46d3dc18a9c37429314a5a2490fb78d31e7e170c");
        assert_eq!(mark(r#"{"a":1,"b":[]}"#), mark(r#"{"b": [], "a": 1.0}"#));
        assert_ne!(mark(r#"{"a":1,"b":[]}"#), mark(r#"{"a":1,"b":[0]}"#));
    }
}
