//! A record is written once, by `record!`: no table, struct or reader of one stands beside it.

use super::code::code_only;
use super::{none, rust_files};

/// Where tables are made.
const MADE_IN: &str = "src/vocabulary/";

/// How a table, or a reader of one, would be written by hand.
const BY_HAND: &[&str] = &[":Record=Record{", "Field{key", "Fields::of("];

/// Steps that take a record's keys apart before the macro reads them, and why.
const STEPS: &[(&str, &str)] = &[("src/read/selection.rs", "the keys of an option may stand beside a selection's own")];

#[test]
fn no_record_is_written_by_hand() {
    let files = rust_files("src").into_iter().filter(|file| !file.path.starts_with(MADE_IN));
    let files = files.filter(|file| !STEPS.iter().any(|(path, _)| *path == file.path));
    none(files.flat_map(|file| by_hand(&file.path, &file.text)).collect());
}

fn by_hand(path: &str, text: &str) -> Vec<String> {
    let code = code_only(text);
    let told = |line: &str| {
        let tight: String = line.split_whitespace().collect();
        BY_HAND.iter().any(|way| tight.contains(way))
    };
    let lines = code.lines().enumerate().filter(|(_, line)| told(line));
    lines.map(|(at, _)| format!("{path}:{}: a record by hand; `record!` writes it", at + 1)).collect()
}

#[test]
fn what_is_written_by_hand_is_caught() {
    for line in
        ["pub const SEAM: Record = Record {", "let fields = Fields::of(node, &SEAM, faults)?;", "Field { key: \"at\","]
    {
        assert_eq!(by_hand("src/read/made.rs", line).len(), 1, "{line}");
    }
    assert!(by_hand("src/book/made.rs", "record! { pub struct Seam = SEAM(\"seam\", \"…\") {} }").is_empty());
}
