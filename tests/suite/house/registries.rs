//! A file that no list names is never run: modules against their parents, entries against their registries.

use super::code::{Token, code_only, tokens};
use super::{none, repository, rust_files};
use std::collections::BTreeMap;

/// Folders whose `mod.rs` lists every file in them, and the files that are no entry, with the reason.
const REGISTRIES: &[(&str, &[(&str, &str)])] = &[("src/cli", &[]), ("src/assess/rules", &[])];

#[test]
fn every_file_is_declared_by_its_parent() {
    for (folder, roots) in [("src", ["lib.rs", "main.rs"]), ("tests/suite", ["main.rs", ""])] {
        let files: BTreeMap<String, String> =
            rust_files(folder).into_iter().map(|file| (file.path[folder.len() + 1..].to_owned(), file.text)).collect();
        none(undeclared(&files, &roots));
    }
}

#[test]
fn every_command_and_every_rule_is_in_its_registry() {
    for (folder, exceptions) in REGISTRIES {
        if !repository().join(folder).is_dir() {
            continue; // nothing to list yet
        }
        let files: BTreeMap<String, String> =
            rust_files(folder).into_iter().map(|file| (file.path, file.text)).collect();
        none(unlisted(&files, exceptions));
    }
}

/// Files that no `mod` line leads to. `files` are by path from the crate's root folder.
fn undeclared(files: &BTreeMap<String, String>, roots: &[&str]) -> Vec<String> {
    let missing = files.keys().filter(|path| !roots.contains(&path.as_str())).filter(|path| {
        let (folder, stem) = parent_and_name(path);
        let parents = match folder {
            "" => roots.iter().map(|root| (*root).to_owned()).collect(),
            _ => vec![format!("{folder}/mod.rs"), format!("{folder}.rs")],
        };
        let mut texts = parents.iter().filter_map(|parent| files.get(parent));
        !texts.any(|text| declares(text, stem))
    });
    missing.map(|path| format!("{path}: no `mod` line leads to it")).collect()
}

/// `read/room.rs` → `("read", "room")`; `read/mod.rs` → `("", "read")`.
fn parent_and_name(path: &str) -> (&str, &str) {
    let module = path.trim_end_matches(".rs");
    let module = module.strip_suffix("/mod").unwrap_or(module);
    module.rsplit_once('/').unwrap_or(("", module))
}

fn declares(text: &str, name: &str) -> bool {
    has(text, |words| words[0].text == "mod" && words[1].text == name && words[2].text == ";")
}

fn names(text: &str, name: &str) -> bool {
    has(text, |words| words[0].text != "::" && words[1].text == name && words[2].text == "::")
}

fn has(text: &str, wanted: impl Fn(&[Token]) -> bool) -> bool {
    let code = format!("; {} ;", code_only(text));
    tokens(&code).windows(3).any(wanted)
}

/// Entries beside or below a `mod.rs` that it does not name, and exceptions that are not needed.
fn unlisted(files: &BTreeMap<String, String>, exceptions: &[(&str, &str)]) -> Vec<String> {
    let mut found = Vec::new();
    for (path, text) in files.iter().filter(|(path, _)| path.ends_with("/mod.rs")) {
        let folder = path.trim_end_matches("/mod.rs");
        for entry in files.keys().filter(|entry| is_entry_of(entry, folder)) {
            let (_, name) = parent_and_name(entry);
            let excepted = exceptions.iter().any(|(excepted, _)| excepted == entry);
            match names(text, name) {
                false if !excepted => found.push(format!("{entry}: {path} does not list it")),
                true if excepted => found.push(format!("{entry}: listed, so its exception can go")),
                _ => {}
            }
        }
    }
    let gone = exceptions.iter().filter(|(path, _)| !files.contains_key(*path));
    found.extend(gone.map(|(path, _)| format!("{path}: is not there, so its exception can go")));
    found
}

fn is_entry_of(path: &str, folder: &str) -> bool {
    let Some(inside) = path.strip_prefix(folder).and_then(|rest| rest.strip_prefix('/')) else {
        return false;
    };
    match inside.split_once('/') {
        None => !matches!(inside, "mod.rs" | "tests.rs"),
        Some((_, rest)) => rest == "mod.rs",
    }
}

#[cfg(test)]
fn tree(files: &[(&str, &str)]) -> BTreeMap<String, String> {
    files.iter().map(|(path, text)| (path.to_string(), text.to_string())).collect()
}

#[test]
fn a_file_without_a_mod_line_is_caught() {
    let files = tree(&[
        ("lib.rs", "pub mod read;\n// mod lost;"),
        ("lost.rs", ""),
        ("main.rs", ""),
        ("read/mod.rs", "mod room;"),
        ("read/room.rs", ""),
        ("read/room/wall.rs", ""),
    ]);
    assert_eq!(
        undeclared(&files, &["lib.rs", "main.rs"]),
        ["lost.rs: no `mod` line leads to it", "read/room/wall.rs: no `mod` line leads to it"]
    );
}

#[test]
fn an_entry_that_its_registry_does_not_list_is_caught() {
    let files = tree(&[
        ("rules/mod.rs", "mod fit;\nmod tests;\nconst ALL: &[&[Rule]] = &[fit::RULES];"),
        ("rules/tests.rs", ""),
        ("rules/fit/mod.rs", "mod door;\nmod width;\nconst RULES: &[Rule] = &[width::RULE];"),
        ("rules/fit/door.rs", ""),
        ("rules/fit/width.rs", ""),
        ("rules/fit/width/table.rs", ""),
    ]);
    assert_eq!(unlisted(&files, &[]), ["rules/fit/door.rs: rules/fit/mod.rs does not list it"]);
    assert_eq!(unlisted(&files, &[("rules/fit/door.rs", "shared")]), [""; 0]);
    let needless = [("rules/fit/door.rs", ""), ("rules/fit/width.rs", ""), ("rules/gone.rs", "")];
    assert_eq!(unlisted(&files, &needless).len(), 2);
}
