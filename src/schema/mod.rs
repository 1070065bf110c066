//! JSON Schemas (draft 2020-12) of the book's files, made from the vocabulary.
//!
//! They check what an editor can check: keys, shapes and notations. What hangs together across
//! files is the review's business.

mod shapes;

use serde_json::{Map, Value, json};

use crate::book::vocabulary::{BOOK, OPTION, ROOM, SELECTION};
use crate::vocabulary::{Field, Record};

/// A schema and the file name that it is written under.
pub struct Schema {
    /// Its file name.
    pub file: &'static str,
    /// What it describes, in a phrase.
    pub about: &'static str,
    /// The schema.
    pub json: Value,
}

/// Every schema.
pub fn schemas() -> Vec<Schema> {
    let selection = object(&SELECTION, SELECTION.fields.iter().chain(beside(&OPTION, &SELECTION)));
    let list = json!({"type": "array", "items": {"$ref": "#/$defs/selection"}, "minItems": 1});
    let either = json!({"$defs": {"selection": selection}, "anyOf": [{"$ref": "#/$defs/selection"}, list]});
    vec![
        Schema { file: "book.schema.json", about: "book.yaml", json: titled("book.yaml", record(&BOOK)) },
        Schema { file: "room.schema.json", about: "rooms/ROOM/room.yaml", json: titled("room.yaml", record(&ROOM)) },
        Schema {
            file: "selection.schema.json",
            about: "rooms/ROOM/*.yaml",
            json: titled("a selection, or a list of them", either),
        },
        Schema { file: "product.schema.json", about: "products/*.yaml", json: titled("a product", record(&OPTION)) },
    ]
}

fn titled(title: &str, schema: Value) -> Value {
    let mut whole = Map::new();
    whole.insert("$schema".into(), json!("https://json-schema.org/draft/2020-12/schema"));
    whole.insert("title".into(), json!(title));
    if let Value::Object(rest) = schema {
        whole.extend(rest);
    }
    Value::Object(whole)
}

/// The fields of one record that another does not name itself.
fn beside(record: &'static Record, other: &'static Record) -> impl Iterator<Item = &'static Field> {
    record.fields.iter().filter(|field| other.field(field.key).is_none())
}

/// The schema of a record.
fn record(record: &'static Record) -> Value {
    object(record, record.fields.iter())
}

fn object(record: &Record, fields: impl Iterator<Item = &'static Field>) -> Value {
    let properties: Map<String, Value> = fields.map(|field| (field.key.to_string(), described(field))).collect();
    let required: Vec<&str> = record.fields.iter().filter(|field| field.required).map(|field| field.key).collect();
    let mut schema = json!({
        "type": "object",
        "description": record.about,
        "properties": properties,
        "additionalProperties": false,
    });
    if let Some(fields) = schema.as_object_mut().filter(|_| !required.is_empty()) {
        fields.insert("required".into(), json!(required));
    }
    schema
}

/// A key that may also be left empty, as YAML allows.
fn described(field: &Field) -> Value {
    let shape = shapes::schema(&field.shape);
    let shape = if field.required { shape } else { json!({"anyOf": [shape, {"type": "null"}]}) };
    let mut schema = Map::new();
    schema.insert("description".into(), json!(format!("{}. Example: {}: {}", field.about, field.key, field.example)));
    if let Value::Object(rest) = shape {
        schema.extend(rest);
    }
    Value::Object(schema)
}
