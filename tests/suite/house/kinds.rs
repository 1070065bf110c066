//! A kind is a value: outside its table and the places where words become kinds, none is known by its name.

use super::code::code_only;
use super::{none, rust_files};

/// Where a word that somebody wrote becomes a kind.
const READERS: &[&str] = &[
    "src/vocabulary/",
    "src/explain/mod.rs",
    "src/start/more.rs",
    "src/start/photographs.rs",
    "src/views/paper/changed_item.rs",
];

/// How a kind would be told by its name.
const BY_NAME: &[&str] = &[
    "Kind::named(",
    "kind.name()==",
    "kind.name()!=",
    "takes.name()==",
    "takes.name()!=",
    "matchkind.name()",
    "match(kind.name()",
    "matches!(kind.name()",
    "contains(&kind.name())",
];

#[test]
fn no_kind_is_told_by_its_name() {
    let files = rust_files("src").into_iter();
    let files = files.filter(|file| !READERS.iter().any(|reader| file.path.starts_with(reader)));
    // Tests lay out books by their words.
    let files = files.filter(|file| !file.path.contains("tests"));
    none(files.flat_map(|file| faults(&file.path, &file.text)).collect());
}

fn faults(path: &str, text: &str) -> Vec<String> {
    let text = text.split("#[cfg(test)]").next().unwrap_or("");
    let code = code_only(text);
    let told = |line: &str| {
        let tight: String = line.split_whitespace().collect();
        BY_NAME.iter().any(|way| tight.contains(way))
    };
    let lines = code.lines().enumerate().filter(|(_, line)| told(line));
    lines.map(|(at, line)| format!("{path}:{}: a kind is told by its name: {}", at + 1, line.trim())).collect()
}

#[test]
fn a_kind_that_is_told_by_its_name_is_caught() {
    for line in ["if kind.name() == \"hood\" {", "let hood = Kind::named(\"hood\");", "match (kind.name(), 1) {"] {
        assert_eq!(faults("src/assess/made.rs", line).len(), 1, "{line}");
    }
    assert!(faults("src/assess/made.rs", "if *kind == Kind::Hood { say(kind.name()) }").is_empty());
}
