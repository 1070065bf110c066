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
    // Texts and lists alone, which canonical JSON can always hold.
    let canonical = serde_json_canonicalizer::to_vec(content).unwrap_or_default();
    Digest::of(&canonical).to_string()
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
