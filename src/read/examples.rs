//! Every example of a record's table is read as it stands, alone and with all the others of its file; and so is every
//! shape that is shown of a field.

use crate::book::vocabulary::{BOOK, OPTION, ROOM, SELECTION};
use crate::finding::{Code, Finding};
use crate::source::Folder;
use crate::vocabulary::{Field, FieldType, Record};

/// What an example must not be; names that are nobody's, and fields that are missing, it may have.
const WRONG: [Code; 4] = [Code::WRONG_TYPE, Code::UNKNOWN_KEY, Code::BARE_LENGTH, Code::CURRENCY];

/// What is written of each field.
#[derive(Clone, Copy)]
enum Writes {
    /// Its example, where it is whole.
    Examples,
    /// Its example, and within a record that it holds, that of each field there.
    AllExamples,
    /// That one of the shapes that are shown of it, within records too; the last, where it has fewer.
    Shape(usize),
}

/// The lines of a record with all its fields, as far as they are written whole.
fn lines(record: &Record, by: usize, writes: Writes) -> String {
    let is_whole = |field: &&Field| !matches!(writes, Writes::Examples) || !field.example.contains('…');
    let whole = record.fields.iter().filter(is_whole);
    whole.map(|field| format!("{}{}:{}\n", " ".repeat(by), field.key, value(field, by, writes))).collect()
}

/// A value: the field's own example, one of its shapes, or all fields of the record that it holds.
fn value(field: &Field, by: usize, writes: Writes) -> String {
    let held = if matches!(writes, Writes::Examples) { vec![] } else { field.shape.records() };
    let Some(record) = held.first() else {
        let Writes::Shape(number) = writes else { return format!(" {}", field.example) };
        let shapes = shapes(&field.shape);
        let one = shapes.get(number).or(shapes.last()).map_or(field.example, String::as_str);
        return format!(" {one}");
    };
    match field.shape {
        FieldType::Named(_) => format!("\n{}one:\n{}", " ".repeat(by + 2), lines(record, by + 4, writes)),
        FieldType::Record(_) => format!("\n{}", lines(record, by + 2, writes)),
        FieldType::Either(_, FieldType::Record(_)) => format!("\n{}", lines(record, by + 2, writes)),
        _ => format!("\n{}-\n{}", " ".repeat(by + 2), lines(record, by + 4, writes)),
    }
}

/// Each shape that `explain` and messages show of a type, with figures; none of words and names, which have an example.
fn shapes(shape: &FieldType) -> Vec<String> {
    match shape {
        FieldType::List(inner) => shapes(inner).into_iter().map(|one| format!("[{one}]")).collect(),
        FieldType::Named(inner) => shapes(inner).into_iter().map(|one| format!("{{one: {one}}}")).collect(),
        FieldType::Either(one, other) => [shapes(one), shapes(other)].concat(),
        FieldType::OneOf(words, also) => {
            words.iter().chain(also.iter().map(|(other, _)| other)).map(|word| format!("\"{word}\"")).collect()
        }
        FieldType::YesNo => vec!["true".into(), "false".into()],
        FieldType::Whole => vec!["2".into()],
        FieldType::Date => vec!["2027-03-01".into()],
        other => {
            let open = open_shapes(other);
            let wanted = other.wanted();
            let (shown, name) = (wanted.text(), other.name());
            let times = |one: &&str| shown.matches(&format!("`{one}`")).count();
            assert!(open.iter().all(|one| times(one) > 0), "not shown: {shown}");
            let known: usize = open.iter().map(times).sum();
            let marks = shown.matches('`').count() - name.text().matches('`').count();
            assert!(marks == 2 * known || open.is_empty(), "the test knows all of: {shown}");
            open.iter().map(|one| one.replace('…', "2")).collect()
        }
    }
}

/// As a type is shown, with `…` for what is not known.
fn open_shapes(shape: &FieldType) -> &'static [&'static str] {
    match shape {
        FieldType::Length | FieldType::LengthAbove => &["…\"", "… mm"],
        FieldType::LengthRange => &["…\" to …\"", "… mm to … mm"],
        FieldType::Readings => &["[…\", …\", …\"]", "[… mm, … mm, … mm]"],
        FieldType::TwoSides => &["…\" x …\"", "… mm x … mm"],
        FieldType::Sides | FieldType::ThreeSides => &["…\" x …\" x …\"", "… mm x … mm x … mm"],
        FieldType::Clearance => &["…\" above counter", "… sq in", "… mm above counter", "… cm2"],
        FieldType::Area => &["… sq ft", "… m2"],
        FieldType::Money => &["….00"],
        FieldType::Currency => &["USD"],
        FieldType::Percent => &["… %"],
        FieldType::LeadTime => &["…-… weeks", "… working days", "in stock"],
        FieldType::Weight => &["… lb", "… kg"],
        FieldType::Quantity => &["…", "… sq ft", "… m2"],
        _ => &[],
    }
}

fn faults(writes: Writes) -> Vec<Finding> {
    let file = |record: &Record| lines(record, 0, writes);
    let files = [
        ("book.yaml", file(&BOOK)),
        ("rooms/kitchen/room.yaml", file(&ROOM)),
        ("rooms/kitchen/range.yaml", file(&SELECTION)),
        // A product builds on no other.
        ("products/vessary-30.yaml", file(&OPTION).replace("product: vessary-30\n", "")),
    ];
    let reading = crate::read::read(&Folder::in_memory(files)).unwrap();
    let wrong = reading.findings.into_iter().filter(|finding| WRONG.contains(&finding.rule));
    // A part of a run is one of six things; what a stone is called is the material of a counter alone.
    let of_others = ["things at once", "does not say whether it burns"];
    let is_of_others = |message: &str| of_others.iter().any(|words| message.contains(words));
    wrong.filter(|finding| !is_of_others(finding.message.text())).collect()
}

fn told(writes: Writes) -> Vec<String> {
    faults(writes).iter().map(|finding| format!("{} {}", finding.rule, finding.message)).collect()
}

#[test]
fn each_example_is_read_as_it_stands() {
    assert_eq!(told(Writes::Examples), [""; 0]);
}

#[test]
fn the_examples_of_all_that_a_field_holds_are_read() {
    assert_eq!(told(Writes::AllExamples), [""; 0]);
}

/// `explain FIELD` and the remedy of what can't be read show shapes: whoever writes one is understood.
#[test]
fn every_shape_that_is_shown_of_a_field_is_read() {
    for number in 0..40 {
        assert_eq!(told(Writes::Shape(number)), [""; 0], "shape {number}");
    }
}
