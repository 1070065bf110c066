//! Every test that checks a published value names its row of `tests/published-figures.tsv`; here the rows are
//! counted and looked up, and the product's own figures compared with them.

use std::collections::BTreeSet;

use bookmatch::assess::codes::{self, Value};

use super::rust_files;

/// Rows that tests must name, at least.
const AT_LEAST: usize = 120;

/// The families of rows: units, kitchens, baths, model codes, access, stone, tile, floors, wallpaper,
/// hoods, light, hardware, sizes, and the standards of data.
const FAMILIES: &[&str] = &["UN", "KP", "BP", "IR", "AD", "ST", "TL", "FL", "WP", "HD", "LT", "HW", "CS", "SD"];

/// The rows of the twenty-five check values that come first.
const FIRST: &[&str] = &[
    "UN-01", "UN-06", "UN-04", "KP-03", "KP-04", "KP-37", "KP-16", "ST-01", "ST-02", "KP-09", "KP-10", "KP-28",
    "KP-29", "BP-13", "IR-38", "BP-05", "BP-04", "BP-22", "BP-21", "IR-01", "IR-02", "IR-04", "IR-09", "IR-10",
    "IR-11", "HD-01", "HD-02", "HD-03", "HD-04", "HD-07", "IR-25", "IR-26", "IR-27", "IR-28", "IR-30", "IR-32",
    "IR-19", "IR-20", "IR-15", "IR-22", "IR-23", "AD-03", "AD-08", "AD-10", "TL-01", "TL-02", "TL-03", "TL-04",
    "TL-15", "FL-02", "WP-01", "WP-02", "SD-02", "SD-03", "SD-05", "SD-06", "SD-08", "SD-13", "SD-15", "SD-18",
    "SD-21", "SD-23",
];

/// Of those, the rows of what the book does not do yet, and what that is: none is asked for until it does.
const NOT_YET: &[(&str, &str)] =
    &[("SD-08", "no calendar is exported"), ("SD-18", "nothing is signed with a pair of keys")];

#[test]
fn enough_published_values_are_checked_and_the_first_of_them_all() {
    let mut rows = BTreeSet::new();
    for folder in ["src", "tests"] {
        for file in rust_files(folder) {
            rows.extend(rows_of(&file.text));
        }
    }
    let missing: Vec<&&str> = FIRST.iter().filter(|row| !rows.contains(**row)).filter(|row| is_due(row)).collect();
    println!("{} rows of check values are named by tests", rows.len());
    assert!(missing.is_empty(), "no test names {missing:?}");
    assert!(rows.len() >= AT_LEAST, "tests name only {} rows", rows.len());
}

/// A row of the published figures.
struct Published {
    row: &'static str,
    /// What it is of, and its value, in inches or as it is published.
    states: [&'static str; 2],
    place: &'static str,
    /// The figures of the product that stand for it.
    figures: Vec<&'static str>,
}

fn published() -> Vec<Published> {
    let lines = include_str!("../../published-figures.tsv").lines().filter(|line| !line.starts_with('#')).skip(1);
    let cells = |line: &'static str| line.split('\t').collect::<Vec<_>>();
    let rows = lines.map(cells).map(|cells| {
        let [row, what, value, _, place, _, _, figures] = cells[..] else {
            panic!("{cells:?}: eight cells are wanted")
        };
        let figures = figures.split("; ").filter(|name| !name.is_empty()).collect();
        Published { row, states: [what, value], place, figures }
    });
    rows.collect()
}

#[test]
fn whoever_reads_a_row_s_name_can_look_it_up() {
    let published = published();
    let known: BTreeSet<&str> = published.iter().map(|row| row.row).collect();
    assert_eq!(known.len(), published.len(), "a row stands twice");
    assert!(published.iter().all(|row| !row.place.is_empty()));
    let mut unknown = BTreeSet::new();
    for file in ["src", "tests"].into_iter().flat_map(rust_files) {
        unknown.extend(rows_of(&file.text).into_iter().filter(|row| !known.contains(row.as_str())));
    }
    assert!(unknown.is_empty(), "tests/published-figures.tsv has no {unknown:?}");
}

#[test]
fn the_product_s_figures_are_the_published_ones() {
    let mut checked = 0;
    for row in published() {
        for name in &row.figures {
            let figure = codes::all().find(|figure| figure.name == *name);
            let figure = figure.unwrap_or_else(|| panic!("{}: there is no figure `{name}`", row.row));
            // In 64ths of an inch, or a whole number of its unit.
            let is = match figure.value {
                Value::Length(length) => length.nanometres() / (25_400_000 / 64),
                Value::Number(number, _) => i64::from(number) * 64,
            };
            let stated = numbers(&row.states.join(" "));
            assert!(stated.contains(&is), "{} states {:?} for `{name}`, which is {is}/64", row.row, row.states);
            checked += 1;
        }
    }
    println!("{checked} figures are compared with their rows");
    assert!(checked >= 75, "{checked}");
}

/// Every number of a text, in 64ths: `1¼ / 1½` has two.
fn numbers(text: &str) -> Vec<i64> {
    const PARTS: [(char, i64); 7] = [('¼', 16), ('½', 32), ('¾', 48), ('⅛', 8), ('⅜', 24), ('⅝', 40), ('⅞', 56)];
    // Feet are told as inches.
    if let Some((feet, rest)) = text.split_once(" ft ") {
        let (before, feet) = feet.rsplit_once(' ').unwrap_or(("", feet));
        let told: Vec<i64> = numbers(feet).into_iter().map(|feet| feet * 12).collect();
        return [numbers(before), told, numbers(rest)].concat();
    }
    let mut all = Vec::new();
    let mut open: Option<i64> = None;
    for letter in text.chars().chain([' ']) {
        let part = PARTS.iter().find(|(part, _)| *part == letter).map(|(_, part)| *part);
        match (letter.to_digit(10), part) {
            (Some(digit), _) => open = Some(open.unwrap_or(0) * 10 + i64::from(digit) * 64),
            (None, Some(part)) => open = Some(open.unwrap_or(0) + part),
            (None, None) => all.extend(open.take()),
        }
    }
    all
}

#[test]
fn numbers_are_read_as_they_are_published() {
    assert_eq!(numbers("1¼ / 1½ / 2"), [80, 96, 128]);
    assert_eq!(numbers("≥32 (door leaf ≥34)"), [32 * 64, 34 * 64]);
    assert_eq!(numbers("3 ft horiz., 8 ft above"), [36 * 64, 96 * 64]);
    assert_eq!(numbers("n/a"), [0_i64; 0]);
}

fn is_due(row: &str) -> bool {
    NOT_YET.iter().all(|(not_yet, _)| *not_yet != row)
}

/// The rows named in the comments above tests.
fn rows_of(text: &str) -> BTreeSet<String> {
    let mut rows = BTreeSet::new();
    let mut comment = BTreeSet::new();
    for line in text.lines().map(str::trim) {
        match line.strip_prefix("//") {
            Some(words) => comment.extend(rows_in(words)),
            None if line == "#[test]" => rows.append(&mut comment),
            None if line.starts_with("#[") => {}
            None => comment.clear(),
        }
    }
    rows
}

/// `KP-09` and the like; `KP-03/04` names two, `IR-25…28` four.
fn rows_in(words: &str) -> BTreeSet<String> {
    let mut rows = BTreeSet::new();
    for (at, _) in words.match_indices('-') {
        let Some(family) = at.checked_sub(2).and_then(|from| words.get(from..at)) else { continue };
        let Some(first) = number(&words[at + 1..]) else { continue };
        if !FAMILIES.contains(&family) {
            continue;
        }
        rows.insert(format!("{family}-{first:02}"));
        let rest = &words[at + 3..];
        let follower = |mark: &str| rest.strip_prefix(mark).and_then(number);
        if let Some(last) = ["…", ".."].into_iter().find_map(follower) {
            rows.extend((first..=last).map(|row| format!("{family}-{row:02}")));
        }
        let mut rest = rest;
        while let Some(next) = rest.strip_prefix('/').and_then(number) {
            rows.insert(format!("{family}-{next:02}"));
            rest = &rest[3..];
        }
    }
    rows
}

/// Two figures.
fn number(text: &str) -> Option<u32> {
    text.get(..2).filter(|figures| figures.bytes().all(|byte| byte.is_ascii_digit()))?.parse().ok()
}

#[test]
fn rows_are_read_as_people_write_them() {
    let rows = |words: &str| Vec::from_iter(rows_in(words));
    assert_eq!(rows("Source: check values KP-03/04, BP-13 (30 × 30)."), ["BP-13", "KP-03", "KP-04"]);
    assert_eq!(rows("IR-25…28"), ["IR-25", "IR-26", "IR-27", "IR-28"]);
    assert_eq!(rows("trade reports F-05; ISO 4217-1; A-12"), [""; 0]);
    let text = "/// Source: check values KP-09.\n#[test]\nfn one() {}\n\n/// KP-10 is no test's.\nfn other() {}\n";
    assert_eq!(Vec::from_iter(rows_of(text)), ["KP-09"]);
}
