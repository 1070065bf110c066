//! Files of the book that were written wrongly.

use super::{Published, RANGE};

#[test]
fn a_file_in_utf_16() {
    for to_bytes in [u16::to_le_bytes, u16::to_be_bytes] {
        let bytes: Vec<u8> = "\u{feff}selection: Range\n".encode_utf16().flat_map(to_bytes).collect();
        let words = ["`rooms/kitchen/range.yaml` is written as UTF-16", "save it again as UTF-8"];
        Published::new().with(RANGE, &bytes).is_refused(1, &words);
    }
}

#[test]
fn a_file_in_latin_1() {
    let words = ["`rooms/kitchen/range.yaml` is not written as UTF-8", "save it again as UTF-8"];
    Published::new().with(RANGE, b"selection: Caf\xE9\nkind: range\n").is_refused(1, &words);
}

#[test]
fn book_yaml_in_another_encoding() {
    let words = ["`book.yaml` is not written as UTF-8", "save it again as UTF-8"];
    Published::new().with("book.yaml", b"title: Ma\xEEtre\n").is_refused(1, &words);
}

#[test]
fn tabs_in_yaml() {
    let words = ["a tab stands where YAML needs spaces", "range.yaml:3:1", "use spaces, two for each step in"];
    Published::new().with(RANGE, b"selection: Range\nsize:\n\twidth: 3\"\n").is_refused(1, &words);
}

#[test]
fn duplicate_keys() {
    let words =
        ["the key `kind` appears twice", "range.yaml:4:1", "the first one, which counts", "keep one of the two"];
    Published::new().replacing(RANGE, "kind: range ", "kind: hood\nkind: range ").is_refused(1, &words);
}

#[test]
fn a_length_with_no_unit() {
    let words = ["source/bare-length", "`96` has no unit", "room.yaml:5:10", "write `96\"` for inches or `96 mm`"];
    Published::new().replacing("rooms/bath/room.yaml", "8' 0\"\n", "96\n").is_refused(1, &words);
}

#[test]
fn a_price_with_a_stray_comma() {
    let words = ["source/wrong-type", "3180,00", "write it without commas", "`3180.00`"];
    Published::new().replacing(RANGE, "price: 2380.00", "price: 3180,00").is_refused(1, &words);
}

#[test]
fn an_unknown_room() {
    let words = ["there is no room called `kichen`", "did you mean `kitchen`?", "book.yaml:2:9"];
    Published::new().replacing("book.yaml", "\n", "\nrooms: [kichen, bath]\n").is_refused(1, &words);
}

/// Eleven levels of ten aliases: a hundred thousand million nodes, were they ever laid out.
#[test]
fn an_alias_bomb() {
    let mut bomb = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
    for level in 1..12 {
        bomb += &format!("a{level}: &a{level} [{}]\n", format!("*a{}, ", level - 1).repeat(10));
    }
    Published::new().with(RANGE, bomb.as_bytes()).is_refused(1, &["source/too-large", "aliases counted as used"]);
}

#[test]
fn all_faults_of_all_files_are_told_in_one_run() {
    let published = Published::new()
        .with(RANGE, b"selection: Caf\xE9\n")
        .replacing("rooms/bath/room.yaml", "8' 0\"\n", "96\n")
        .replacing("rooms/bath/choices.yaml", "72.00", "7,2");
    published.is_refused(1, &["is not written as UTF-8", "`96` has no unit", "7,2", "3 stops"]);
}
