//! Every example of a record's table is read as it stands, alone and with all the others of its file.

use crate::book::vocabulary::{BOOK, OPTION, ROOM, SELECTION};
use crate::finding::{Code, Finding};
use crate::source::Folder;
use crate::vocabulary::{Field, FieldType, Record};

/// What an example must not be; names that are nobody's, and fields that are missing, it may have.
const WRONG: [Code; 4] = [Code::WRONG_TYPE, Code::UNKNOWN_KEY, Code::BARE_LENGTH, Code::CURRENCY];

/// The lines of a record with all its fields, as far as they are written whole.
fn lines(record: &Record, by: usize, inner: bool) -> String {
    let whole = record.fields.iter().filter(|field| inner || !field.example.contains('…'));
    whole.map(|field| format!("{}{}:{}\n", " ".repeat(by), field.key, value(field, by, inner))).collect()
}

/// A value: the field's own example, or all fields of the record that it holds.
fn value(field: &Field, by: usize, inner: bool) -> String {
    let held = if inner { field.shape.records() } else { vec![] };
    let Some(record) = held.first() else { return format!(" {}", field.example) };
    match field.shape {
        FieldType::Named(_) => format!("\n{}one:\n{}", " ".repeat(by + 2), lines(record, by + 4, inner)),
        FieldType::Record(_) => format!("\n{}", lines(record, by + 2, inner)),
        FieldType::Either(_, FieldType::Record(_)) => format!("\n{}", lines(record, by + 2, inner)),
        _ => format!("\n{}-\n{}", " ".repeat(by + 2), lines(record, by + 4, inner)),
    }
}

fn faults(inner: bool) -> Vec<Finding> {
    let file = |record: &Record| lines(record, 0, inner);
    let files = [
        ("book.yaml", file(&BOOK)),
        ("rooms/kitchen/room.yaml", file(&ROOM)),
        ("rooms/kitchen/range.yaml", file(&SELECTION)),
        // A product builds on no other.
        ("products/vessary-30.yaml", file(&OPTION).replace("product: vessary-30\n", "")),
    ];
    let reading = crate::read::read(&Folder::in_memory(files)).unwrap();
    let wrong = reading.findings.into_iter().filter(|finding| WRONG.contains(&finding.rule));
    // A part of a run is one of six things.
    wrong.filter(|finding| !finding.message.to_string().contains("things at once")).collect()
}

#[test]
fn each_example_is_read_as_it_stands() {
    let told: Vec<String> =
        faults(false).iter().map(|finding| format!("{} {}", finding.rule, finding.message)).collect();
    assert_eq!(told, [""; 0]);
}

#[test]
fn the_examples_of_all_that_a_field_holds_are_read() {
    let told: Vec<String> =
        faults(true).iter().map(|finding| format!("{} {}", finding.rule, finding.message)).collect();
    assert_eq!(told, [""; 0]);
}
