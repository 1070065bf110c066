//! All that the client is shown of an item, as JSON; `fields.md` tells each field.

use serde_json::{Map, Value, json};

use crate::book::{DetailValue, Photo, ProductOption, Room, Selection, Size, Slot};
use crate::units::{Length, LengthRange, Money};

use super::Pictures;

/// All that the client is shown of an item.
pub fn content(room: &Room, selection: &Selection, pictures: Pictures<'_>) -> Value {
    let options: Vec<Value> = selection.options.iter().map(|option| option_content(option, pictures)).collect();
    json!({
        "room": room.folder,
        "room name": room.title(),
        "item": selection.id,
        "name": selection.name.value,
        "kind": selection.kind.get().map(|kind| kind.name()),
        "place": selection.place.get(),
        "why": selection.why.get(),
        "allowance": selection.allowance.get(),
        "furnished by": selection.furnished_by.get(),
        "installed by": selection.installed_by.get(),
        "chosen": selection.chosen.get(),
        "options": options,
    })
}

fn option_content(option: &ProductOption, pictures: Pictures<'_>) -> Value {
    let details = option.details.iter().map(|detail| (detail.key.to_string(), detail_content(&detail.value)));
    let accessories = option.accessories.iter().map(|with| {
        json!({
            "name": with.name.value,
            "model": with.model.get(),
            "price": money(with.price.get()),
            "quantity": with.quantity.get().map(ToString::to_string),
        })
    });
    json!({
        "id": option.id.value,
        "name": option.title(),
        "maker": option.maker.get(),
        "model": option.model.get(),
        "finish": option.finish.get(),
        "colour": option.colour.get(),
        "description": option.description.get(),
        "hinge": option.hinge.get(),
        "caution": option.fit.get().and_then(|fit| fit.caution.get()),
        "size": size(&option.size),
        "details": details.collect::<Map<_, _>>(),
        "quantity": option.quantity.get().map(ToString::to_string),
        "price": money(option.price.get()),
        "total": money(option.price_in_all().as_ref()),
        "accessories": accessories.collect::<Vec<_>>(),
        "pictures": option.photos.iter().map(|photo| picture(photo, pictures)).collect::<Vec<_>>(),
    })
}

fn size(size: &Size) -> Value {
    let of = |slot: &Slot<Length>| slot.get().map(|side| length(*side));
    json!({
        "width": of(&size.width),
        "height": size.height.get().map(|height| range(*height)),
        "height to hinge": of(&size.height_to_hinge),
        "depth": of(&size.depth),
        "depth with door": of(&size.depth_with_door),
        "depth with handle": of(&size.depth_with_handle),
        "length": of(&size.length),
        "diameter": of(&size.diameter),
        "thickness": of(&size.thickness),
    })
}

/// Whole nanometres as text.
fn length(length: Length) -> Value {
    Value::String(length.nanometres().to_string())
}

fn range(range: LengthRange) -> Value {
    json!({"least": range.least.map(length), "most": range.most.map(length)})
}

fn money(money: Option<&Money>) -> Value {
    money.map_or(Value::Null, |money| Value::String(format!("{} {}", money.plain(), money.currency)))
}

fn detail_content(value: &DetailValue) -> Value {
    match value {
        DetailValue::Words(words) => Value::String(words.clone()),
        DetailValue::Length(side) => json!({"length": length(*side)}),
        DetailValue::Range(between) => range(*between),
        DetailValue::Sides(sides) => json!({"sides": sides.sides().iter().copied().map(length).collect::<Vec<_>>()}),
    }
}

fn picture(photo: &Photo, pictures: Pictures<'_>) -> Value {
    json!({
        "sha256": pictures(&photo.path).map(|digest| digest.to_string()),
        "caption": photo.caption,
        "alt": photo.alt,
    })
}
