//! What a sheet's content of each version knows: of two contents only what both know of is compared.

use serde_json::Value;

use crate::vocabulary::SheetVersion;

/// What came into a content after its first version: from when on, and the keys that lead to it, through lists too.
const CAME_LATER: [(SheetVersion, &[&str]); 6] = [
    (SheetVersion::Second, &["things", "open"]),
    (SheetVersion::Second, &["things", "set"]),
    (SheetVersion::Second, &["things", "panel"]),
    (SheetVersion::Second, &["things", "apron height"]),
    (SheetVersion::Second, &["items", "choice"]),
    (SheetVersion::Second, &["items", "models"]),
];

/// That of a content; one that states another is read as the newest: reading the record has told it.
pub fn version_of_sheet(content: &Value) -> SheetVersion {
    SheetVersion::stated(content.get(SheetVersion::STATED_AS).and_then(Value::as_str)).unwrap_or(SheetVersion::NEWEST)
}

/// A content without what one of that version does not know of, and without its own version.
pub fn as_known_by(version: SheetVersion, content: &Value) -> Value {
    let mut content = content.clone();
    if let Some(fields) = content.as_object_mut() {
        fields.remove(SheetVersion::STATED_AS);
    }
    for (_, path) in CAME_LATER.iter().filter(|(since, _)| *since > version) {
        take_out(&mut content, path);
    }
    content
}

fn take_out(value: &mut Value, path: &[&str]) {
    match (value, path) {
        (Value::Array(values), path) => values.iter_mut().for_each(|value| take_out(value, path)),
        (Value::Object(fields), [key]) => _ = fields.remove(*key),
        (Value::Object(fields), [key, rest @ ..]) => {
            fields.get_mut(*key).into_iter().for_each(|value| take_out(value, rest))
        }
        _ => {}
    }
}
