//! All that the client is shown of an item, as JSON: the fields that are in the mark by their tables, and what is
//! worked out of them.

use serde_json::{Map, Value};

use crate::book::{Photo, ProductOption, Room, Selection};
use crate::vocabulary::{Marked, Shown};

use super::Pictures;

/// What stands in an item besides the fields of its selection.
pub const OF_ITEM: [(&str, &str); 2] = [("room", "the room's folder"), ("room name", "what the room is called")];

/// What stands in an option besides its fields.
pub const OF_OPTION: [(&str, &str); 1] = [("total", "price times quantity with the accessories, or null")];

/// All that the client is shown of an item.
pub fn content(room: &Room, selection: &Selection, pictures: Pictures<'_>) -> Value {
    let options = selection.options.iter().map(|option| option_content(option, pictures)).collect();
    let mut content = selection.marked();
    content.insert("room".into(), room.folder.shown());
    content.insert("room name".into(), room.title().into());
    content.insert("options".into(), options);
    Value::Object(content)
}

fn option_content(option: &ProductOption, pictures: Pictures<'_>) -> Value {
    let caution = option.fit.get().map_or(Value::Null, |fit| fit.caution.shown());
    let shown = option.photos.iter().map(|photo| picture(photo, pictures)).collect();
    let mut content = option.marked();
    content.insert("name".into(), option.title().into());
    content.insert("caution".into(), caution);
    content.insert("total".into(), option.price_in_all().shown());
    content.insert("pictures".into(), shown);
    Value::Object(content)
}

fn picture(photo: &Photo, pictures: Pictures<'_>) -> Map<String, Value> {
    let digest = pictures(&photo.path).map(|digest| digest.to_string());
    let mut content = photo.marked();
    content.insert("sha256".into(), digest.shown());
    content
}
