//! A closed set of words is a type: outside the places where words are read, no text is compared with a literal.

use super::{none, rust_files};

/// The parts that must ask types.
const PARTS: &[&str] = &["src/book/", "src/read/", "src/site/", "src/assess/", "src/drawings/", "src/views/"];

/// Where words are compared all the same, and why.
const READERS: &[(&str, &str)] = &[
    ("src/read/load.rs", "endings of files"),
    ("src/read/choice.rs", "keys that are an option's own"),
    ("src/read/disk_names.rs", "folders of the book"),
    ("src/assess/rules/complete/field.rs", "paths of keys, as the table of kinds has them"),
    ("src/views/shared/signature.rs", "what a designer wrote in the record of a paper that was signed"),
];

/// How text is compared with a literal that begins with a letter.
const WAYS: &[&str] = &[
    "==",
    "!=",
    "==&",
    "!=&",
    "==Some(",
    "!=Some(",
    "==Some(&",
    "!=Some(&",
    ".contains(",
    ".contains(&",
    ".starts_with(",
    ".ends_with(",
    ".eq_ignore_ascii_case(",
];

#[test]
fn no_text_is_compared_with_a_word() {
    let files = rust_files("src").into_iter();
    let files = files.filter(|file| PARTS.iter().any(|part| file.path.starts_with(part)));
    // Tests and samples lay out books by their words.
    let files = files.filter(|file| {
        !["tests", "samples", "trial.rs", "remedies.rs", "examples.rs"].iter().any(|not| file.path.contains(not))
    });
    let mut found: Vec<String> = files.flat_map(|file| faults(&file.path, &file.text)).collect();
    for (path, why) in READERS {
        let before = found.len();
        found.retain(|fault| !fault.starts_with(path));
        if found.len() == before {
            found.push(format!("{path}: compares no text; its exception ({why}) can go"));
        }
    }
    none(found);
}

fn faults(path: &str, text: &str) -> Vec<String> {
    let text = text.split("#[cfg(test)]").next().unwrap_or("");
    let lines = text.lines().enumerate().filter(|(_, line)| !line.trim_start().starts_with("//"));
    let lines = lines.filter(|(_, line)| compares(line));
    lines.map(|(at, line)| format!("{path}:{}: text is compared with a word: {}", at + 1, line.trim())).collect()
}

fn compares(line: &str) -> bool {
    let tight: String = line.split_whitespace().collect();
    let parts: Vec<&str> = tight.split('"').collect();
    // Every second part stands between quotation marks.
    let literals = (1..parts.len()).step_by(2).filter(|at| parts[*at].starts_with(char::is_alphabetic));
    literals.into_iter().any(|at| {
        let (before, after) = (parts[at - 1], parts.get(at + 1).copied().unwrap_or(""));
        // In a record's table, what follows the arrow says whether a field is signed.
        let arm = [")=>", "=>", "|"].iter().any(|arrow| after.starts_with(arrow))
            && !["=>marked", "=>unmarked", "=>told"].iter().any(|signed| after.starts_with(signed));
        WAYS.iter().any(|way| before.ends_with(way)) || arm || after.starts_with("==") || after.starts_with("!=")
    })
}

#[test]
fn a_comparison_of_text_is_caught() {
    for line in [
        "if word == \"left\" {",
        "Some(\"positive\") => radius >= own,",
        "\"box\" | \"boxes\" => area,",
        "name.to_lowercase().contains(\"floor\")",
        "door.swings.get() == Some(&\"in\")",
    ] {
        assert_eq!(faults("src/assess/made.rs", line).len(), 1, "{line}");
    }
    for line in [
        "if side == End::Left { say(\"left\") }",
        "// \"left\" == \"right\"",
        "trait: Text = \"edge\", \"its edge\", \"eased\" => marked;",
        "phrase!(\"`{name}` is {}\", name, \"left\")",
        "path.split(\"/\")",
    ] {
        assert!(faults("src/assess/made.rs", line).is_empty(), "{line}");
    }
}
