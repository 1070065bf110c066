//! A file that no list names is never run: modules against their parents, entries against their registries.

use super::code::{Token, code_only, tokens};
use super::{none, rust_files};
use std::collections::BTreeMap;

/// A folder whose `mod.rs` names every entry in it.
struct Registry {
    folder: &'static str,
    /// How many folders down the entries are: `fit/width.rs` is one down.
    down: usize,
    /// Files that are no entry, and what they are.
    besides: &'static [(&'static str, &'static str)],
}

const REGISTRIES: &[Registry] = &[
    Registry {
        folder: "src/cli",
        down: 0,
        besides: &[
            ("book_folder", "the folder that a command is given"),
            ("clock", "the day of a run, and the moment of what is recorded"),
            ("help", "the list of commands, by who uses them"),
            ("narrow", "the part of a review that is asked for"),
            ("laid", "how a file is put where the user says"),
            ("one_file", "what `publish` binds into one file"),
            ("progress", "what a terminal shows of long work"),
            ("report", "findings as text, JSON and SARIF"),
            ("scan", "a code to scan, for a terminal or as a drawing"),
            ("sent", "to whom `issue` is told that an issue goes"),
            ("served", "the books that `host` serves"),
            ("stated", "what a published folder states of the ledger"),
            ("written", "what `receive` is told to write down"),
        ],
    },
    Registry { folder: "src/assess/rules", down: 1, besides: &[] },
];

/// The package inside of the package.
const ENGINE: &str = "src/pictures/engine";

#[test]
fn every_file_is_declared_by_its_parent() {
    let packages = [("src", ["lib.rs", "main.rs"]), (ENGINE, ["lib.rs", ""]), ("tests/suite", ["main.rs", ""])];
    for (folder, roots) in packages {
        let of_engine = |path: &str| folder != ENGINE && path.starts_with(ENGINE);
        let files = rust_files(folder).into_iter().filter(|file| !of_engine(&file.path));
        let files: BTreeMap<String, String> =
            files.map(|file| (file.path[folder.len() + 1..].to_owned(), file.text)).collect();
        none(undeclared(&files, &roots));
    }
}

#[test]
fn every_command_and_every_rule_is_in_its_registry() {
    for registry in REGISTRIES {
        let inside = registry.folder.len() + 1;
        let files = rust_files(registry.folder).into_iter().map(|file| (file.path[inside..].to_owned(), file.text));
        none(unlisted(&files.collect(), registry));
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

/// A module whose name is a word of the language is written raw: `mod r#match`.
fn plain_names(text: &str) -> String {
    text.replace("mod r#", "mod ").replace("::r#", "::")
}

fn declares(text: &str, name: &str) -> bool {
    has(&plain_names(text), |words| words[0].text == "mod" && words[1].text == name && words[2].text == ";")
}

/// Whether a path of modules, followed by something of it, stands in the text.
fn names(text: &str, modules: &[&str]) -> bool {
    let code = code_only(&plain_names(text));
    let words: Vec<&str> = tokens(&code).iter().map(|token| token.text).collect();
    let wanted: Vec<&str> = modules.iter().flat_map(|module| [*module, "::"]).collect();
    let at = |start: usize| start == 0 || words[start - 1] != "::";
    words.windows(wanted.len()).enumerate().any(|(start, window)| at(start) && window == wanted)
}

fn has(text: &str, wanted: impl Fn(&[Token]) -> bool) -> bool {
    tokens(&code_only(text)).windows(3).any(wanted)
}

/// Entries that the registry does not name, and files besides that are named or gone.
fn unlisted(files: &BTreeMap<String, String>, registry: &Registry) -> Vec<String> {
    let Registry { folder, down, besides } = registry;
    let list = &files["mod.rs"];
    let entries: Vec<Vec<&str>> = files.keys().filter_map(|path| entry(path, *down)).collect();
    assert!(!entries.is_empty(), "{folder} has no entry");
    let mut found = Vec::new();
    for modules in &entries {
        let name = modules.join("/");
        match (names(list, modules), besides.iter().any(|(beside, _)| *beside == name)) {
            (false, false) => found.push(format!("{folder}/{name}: {folder}/mod.rs does not list it")),
            (true, true) if *down > 0 => found.push(format!("{folder}/{name}: is listed, so it is an entry")),
            _ => {}
        }
    }
    let gone = besides.iter().filter(|(name, _)| !entries.iter().any(|modules| modules.join("/") == **name));
    found.extend(gone.map(|(name, _)| format!("{folder}/{name}: is not there")));
    found
}

/// The modules of an entry: `fit/width.rs` → `["fit", "width"]`; none for a part of one, a list or tests.
fn entry(path: &str, down: usize) -> Option<Vec<&str>> {
    let module = path.trim_end_matches(".rs");
    let module = module.strip_suffix("/mod").unwrap_or(module);
    let modules: Vec<&str> = module.split('/').collect();
    let last = *modules.last()?;
    (modules.len() == down + 1 && !matches!(last, "mod" | "tests")).then_some(modules)
}

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
    let rules = Registry { folder: "rules", down: 1, besides: &[("fit/shared", "figures of several rules")] };
    let files = |list: &str| {
        tree(&[
            ("mod.rs", list),
            ("trial.rs", ""),
            ("fit/mod.rs", "mod door;\nmod width;\nmod shared;"),
            ("fit/door.rs", ""),
            ("fit/shared.rs", ""),
            ("fit/width.rs", ""),
            ("fit/width/table.rs", ""),
        ])
    };
    assert_eq!(unlisted(&files("[fit::door::RULE, fit::width::RULE]"), &rules), [""; 0]);
    for list in ["[fit::door::RULE]", "[fit::door::RULE, /* fit::width:: */ \"fit::width::\", other::fit::width::RULE]"]
    {
        assert_eq!(unlisted(&files(list), &rules), ["rules/fit/width: rules/mod.rs does not list it"]);
    }
    assert_eq!(unlisted(&files("[fit::r#door::RULE, fit::width::RULE]"), &rules), [""; 0]);
    let needless = "[fit::door::RULE, fit::shared::RULE, fit::width::RULE]";
    assert_eq!(unlisted(&files(needless), &rules), ["rules/fit/shared: is listed, so it is an entry"]);
}

#[test]
fn a_file_besides_that_is_gone_is_caught() {
    let commands = Registry { folder: "cli", down: 0, besides: &[("clock", "the date")] };
    let files = tree(&[("mod.rs", "Review(review::Review)"), ("review.rs", "")]);
    assert_eq!(unlisted(&files, &commands), ["cli/clock: is not there"]);
}
