//! A book in inches, the same in exact millimetres, and either with findings in the other system: the same findings.

use bookmatch::units::Length;
use proptest::prelude::*;
use serde::Deserialize;

use super::{Book, example, text, told};
use crate::stories::{Files, Ways};

/// The book with every length in inches or feet written in exact millimetres; words in quotes stay.
fn in_millimetres(book: &Book) -> Book {
    let yaml = |path: &str| path.ends_with(".yaml");
    book.iter()
        .map(|(path, bytes)| match yaml(path) {
            true => (path.clone(), exact(&text(bytes)).into_bytes()),
            false => (path.clone(), bytes.clone()),
        })
        .collect()
}

/// The book with its findings told in the other system.
fn told_in_metric(book: &Book) -> Book {
    let change = |(path, bytes): &(String, Vec<u8>)| match path.as_str() {
        "book.yaml" => {
            (path.clone(), text(bytes).replace("units: imperial", "units: metric\ncountry: US").into_bytes())
        }
        _ => (path.clone(), bytes.clone()),
    };
    book.iter().map(change).collect()
}

/// Every length in inches or feet outside quotes, in millimetres to the nanometre.
fn exact(yaml: &str) -> String {
    let (mut out, mut rest) = (String::new(), yaml);
    while let Some(next) = rest.chars().next() {
        let begins = out.chars().next_back().is_none_or(|before| !before.is_alphanumeric() && before != '.');
        if next == '"' || next == '#' {
            let end = if next == '"' { quoted(rest) } else { rest.find('\n').unwrap_or(rest.len()) };
            out += &rest[..end];
            rest = &rest[end..];
        } else if let Some(length) = begins.then(|| length_at(rest)).flatten() {
            let nanometres = Length::parse(length).expect("a length").nanometres();
            out += &format!("{}.{:06} mm", nanometres / 1_000_000, nanometres % 1_000_000);
            rest = &rest[length.len()..];
        } else {
            out.push(next);
            rest = &rest[next.len_utf8()..];
        }
    }
    out
}

/// How long a text in double quotes is, both marks counted.
fn quoted(text: &str) -> usize {
    let mut escaped = false;
    for (at, c) in text.char_indices().skip(1) {
        match c {
            '"' if !escaped => return at + 1,
            '\\' => escaped = !escaped,
            _ => escaped = false,
        }
    }
    text.len()
}

/// The longest length with which a text begins, its last mark counted: `5' 2"`, `30 1/8"`, `33'`.
fn length_at(text: &str) -> Option<&str> {
    let end = text.find(|c: char| !(c.is_ascii_digit() || " ./'-\"".contains(c))).unwrap_or(text.len());
    let marks = text[..end].match_indices(['\'', '"']).map(|(at, _)| at + 1).take(2);
    let lengths = marks.map(|end| &text[..end]).filter(|length| Length::parse(length).is_ok());
    lengths.filter(|length| length.starts_with(|c: char| c.is_ascii_digit())).last()
}

#[test]
fn lengths_are_rewritten_and_quoted_words_are_not() {
    let written = "a: [30 1/8\", 5' 2\"] # 3\"\nb: 32\" x 33', c: \"8\\\" round\", d: 21\" to 22 1/2\"\n";
    let exactly = "a: [765.175000 mm, 1574.800000 mm] # 3\"\nb: 812.800000 mm x 10058.400000 mm, c: \"8\\\" round\", d: 533.400000 mm to 571.500000 mm\n";
    assert_eq!(exact(written), exactly);
}

/// Holds the book to the same findings, whatever it is written in.
#[track_caller]
fn holds(name: &str, book: &Book) {
    let as_it_is = told(book);
    assert_eq!(told(&told_in_metric(book)), as_it_is, "{name}, told in metric");
    assert_eq!(told(&in_millimetres(book)), as_it_is, "{name}, written in millimetres");
    assert_eq!(told(&in_millimetres(&told_in_metric(book))), as_it_is, "{name}, all in millimetres");
}

#[test]
fn the_example_brings_the_same_findings_in_inches_and_in_millimetres() {
    let book = example();
    assert!(
        text(&in_millimetres(&book).iter().find(|(path, _)| path.ends_with("kitchen/room.yaml")).unwrap().1)
            .contains("765.175000 mm")
    );
    assert!(told(&book).len() > 3, "the example has a few findings");
    holds("the example", &book);
}

#[derive(Deserialize)]
struct Story {
    #[serde(default)]
    same: Files,
    #[serde(default)]
    wrong: Ways,
}

/// The failures that are told in `tests/stories`: each brings its finding in either system.
#[test]
fn every_story_brings_the_same_findings_in_inches_and_in_millimetres() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/stories");
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let story: Story = serde_yaml::from_str(&std::fs::read_to_string(&path).unwrap()).unwrap();
        for (nth, (way, _)) in story.wrong.each("missed").into_iter().enumerate() {
            let mut files = Files::from([
                ("book.yaml".to_owned(), "title: A\nclient: B\nunits: imperial\ncurrency: USD\n".to_owned()),
                ("rooms/kitchen/room.yaml".to_owned(), "name: Kitchen\n".to_owned()),
            ]);
            files.extend(story.same.clone());
            files.extend(way);
            let book: Book = files.into_iter().map(|(path, text)| (path, text.into_bytes())).collect();
            holds(&format!("{}, way {}", path.file_name().unwrap().to_string_lossy(), nth + 1), &book);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_opening_brings_the_same_findings_in_inches_and_in_millimetres(
        sizes in prop::collection::vec(100..2_500_i64, 12),
        kind in prop::sample::select(vec!["refrigerator", "range", "dishwasher", "wall oven", "microwave"]),
    ) {
        let size = |at: usize| format!("{} {}/64\"", sizes[at] / 64, sizes[at] % 64);
        let room = format!(
            "name: Kitchen\nopenings:\n  hole:\n    takes: {kind}\n    width: [{}, {}]\n    height: {}\n    depth: {}\n    in front: {}\n    landing: {{left: {}, right: {}}}\n",
            size(0), size(1), size(2), size(3), size(4), size(5), size(6),
        );
        let selection = format!(
            "selection: It\nkind: {kind}\nplace: hole\nsize: {{width: {}, height: {}, depth: {}}}\nfit: {{air: {{top: {}, back: {}}}}}\n",
            size(7), size(8), size(9), size(10), size(11),
        );
        let book: Book = vec![
            ("book.yaml".into(), b"title: A\nclient: B\nunits: imperial\ncurrency: USD\n".to_vec()),
            ("rooms/kitchen/room.yaml".into(), room.into_bytes()),
            ("rooms/kitchen/it.yaml".into(), selection.into_bytes()),
        ];
        holds(kind, &book);
    }
}
