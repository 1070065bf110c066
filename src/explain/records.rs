//! The page of a record, and of a field.

use crate::book::vocabulary::RECORDS;
use crate::vocabulary::{Field, Kind, Record};

use super::page::{cut, entry, heading, paragraph};

/// A record's page: its fields and what they mean.
pub fn page(record: &Record) -> String {
    let mut text = heading(&format!("{} (record)", record.name));
    text += &paragraph(&format!("{}.", capital(record.about)));
    for field in record.fields {
        let needed = if field.required { "needed; " } else { "" };
        text += &entry(field.key, &format!("{needed}{}", field.about));
    }
    text + "\n"
}

/// The pages of a field, by its key or by its path: one for each record that has it.
pub fn field(asked: &str) -> Vec<String> {
    let (group, key) = asked.rsplit_once('.').map_or((None, asked), |(group, key)| (Some(group), key));
    let inside = |record: &&&Record| group.is_none_or(|group| holds(group, record));
    let found = RECORDS.iter().filter(inside).filter_map(|record| Some((*record, record.field(key)?)));
    found.map(|(record, field)| field_page(record, field)).collect()
}

/// Whether the last part of a path is the record: by its own name, or by the field that holds it.
fn holds(group: &str, record: &Record) -> bool {
    let last = group.rsplit('.').next().unwrap_or(group);
    let by_field = RECORDS
        .iter()
        .filter_map(|outer| outer.field(last))
        .any(|field| field.shape.records().iter().any(|inner| inner.name == record.name));
    record.name == last || by_field
}

fn field_page(record: &Record, field: &Field) -> String {
    let mut text = heading(&format!("{} (field of {})", field.key, record.name));
    text += &paragraph(&format!("{}.", capital(field.about)));
    text += &paragraph(&format!("Write {}.", field.shape.wanted()));
    text += &cut(&format!("    {}: {}", field.key, field.example));
    let needing: Vec<&str> = Kind::ALL
        .iter()
        .filter(|kind| kind.needs().any(|path| path.rsplit('.').next() == Some(field.key)))
        .map(|kind| kind.name())
        .collect();
    if !needing.is_empty() && needing.len() < Kind::ALL.len() {
        text += "\n";
        text += &paragraph(&format!("Needed by: {}.", needing.join(", ")));
    }
    text + "\n"
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
