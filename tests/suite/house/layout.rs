//! What stands at the top of the repository, and that every path that is named is there.

use super::{none, repository};
use std::fs;

/// All that the top of the repository may hold, besides names that begin with a dot.
const TOP: &[&str] = &[
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE-APACHE",
    "LICENSE-MIT",
    "README.md",
    "example-project",
    "src",
    "tests",
    "themes",
];

#[test]
fn the_top_of_the_repository_holds_only_what_was_agreed() {
    let ignored = read(".gitignore");
    let mut names: Vec<String> = fs::read_dir(repository())
        .expect("the repository can be read")
        .map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    none(strangers(&names, &ignored));
}

#[test]
fn paths_named_in_the_developers_guide_are_there() {
    none(lost_paths("DEVELOPERS.md", &read("DEVELOPERS.md"), is_there));
}

#[test]
fn every_test_and_benchmark_that_cargo_is_told_of_is_there() {
    let paths = cargo_paths(&read("Cargo.toml"));
    assert!(paths.contains(&"tests/suite/main.rs".to_owned()), "{paths:?}");
    let lost = paths.into_iter().filter(|path| !is_there(path));
    none(lost.map(|path| format!("Cargo.toml names `{path}`, which is not there")).collect());
}

#[test]
fn the_lock_of_the_browser_tests_pins_contents_and_names_no_host() {
    let lock = read("tests/browser/package-lock.json");
    assert_eq!(lock_faults(&lock), [""; 0]);
}

fn read(path: &str) -> String {
    fs::read_to_string(repository().join(path)).unwrap_or_else(|error| panic!("{path}: {error}"))
}

fn is_there(path: &str) -> bool {
    repository().join(path).exists()
}

fn strangers(names: &[String], ignored: &str) -> Vec<String> {
    let ignored: Vec<&str> = ignored.lines().map(|line| line.trim_matches('/')).collect();
    let known = |name: &str| name.starts_with('.') || TOP.contains(&name) || ignored.contains(&name);
    let strange = names.iter().filter(|name| !known(name));
    strange.map(|name| format!("`{name}` has no place at the top of the repository")).collect()
}

/// Paths in backticks that lead nowhere. A part with a placeholder (`<rule>`, `*`) ends the path.
fn lost_paths(file: &str, text: &str, is_there: impl Fn(&str) -> bool) -> Vec<String> {
    let mut lost = Vec::new();
    for (index, line) in text.lines().enumerate() {
        for named in line.split('`').skip(1).step_by(2).filter(|named| is_path(named)) {
            let certain = certain_part(named);
            let places = ["", "src/", "tests/", "themes/"];
            if !places.iter().any(|place| is_there(&format!("{place}{certain}"))) {
                lost.push(format!("{file}:{}: `{named}` is not there", index + 1));
            }
        }
    }
    lost
}

/// A path starts at the top of the repository, or ends as a file of ours does.
fn is_path(named: &str) -> bool {
    let first = named.split('/').next().unwrap_or_default();
    let extension = named.rsplit_once('.').map_or("", |(_, extension)| extension);
    let from_the_top = TOP.contains(&first) || matches!(first, ".ci" | ".cargo");
    let of_ours = named.contains('/') && matches!(extension, "rs" | "mjs" | "toml" | "html" | "css");
    !named.contains(char::is_whitespace) && (from_the_top || of_ours)
}

fn certain_part(named: &str) -> &str {
    let uncertain = named.find(['<', '*', '{', '…']);
    match uncertain {
        Some(at) => named[..at].rsplit_once('/').map_or("", |(folder, _)| folder),
        None => named,
    }
}

fn cargo_paths(text: &str) -> Vec<String> {
    let paths = text.lines().filter_map(|line| line.strip_prefix("path = "));
    paths.map(|path| path.trim_matches('"').to_owned()).collect()
}

fn lock_faults(lock: &str) -> Vec<String> {
    let lock: serde_json::Value = serde_json::from_str(lock).expect("a lock in JSON");
    let packages = lock["packages"].as_object().expect("`packages` in the lock");
    let installed = packages.iter().filter(|(path, _)| !path.is_empty());
    let faulty = installed.filter_map(|(path, package)| {
        if package.get("resolved").is_some() {
            return Some(format!("{path} names where it was fetched from"));
        }
        package["integrity"].is_null().then(|| format!("{path} has no digest"))
    });
    faulty.collect()
}

#[test]
fn a_stranger_at_the_top_is_caught() {
    let names = ["Cargo.toml", ".ci", "target", "notes.txt"].map(str::to_owned);
    assert_eq!(
        strangers(&names, "/target\nnode_modules/\n"),
        ["`notes.txt` has no place at the top of the repository"]
    );
}

#[test]
fn a_path_that_leads_nowhere_is_caught() {
    let here = ["src/units/length.rs", "src/assess/rules", "tests/run", "README.md"];
    let is_there = |path: &str| here.contains(&path);
    let sound = "`tests/run`, `units/length.rs`, `src/assess/rules/<family>/<rule>.rs`, `fit/width`, `cargo test src/x`, `README.md`";
    assert_eq!(lost_paths("D", sound, is_there), [""; 0]);
    for lost in ["`src/gone.rs`", "a\n`units/gone.rs`", "`themes/house/`", "`src/gone/*.rs`", "`DEVELOPERS.md`"] {
        assert_eq!(lost_paths("D", lost, is_there).len(), 1, "{lost}");
    }
    assert_eq!(lost_paths("D", "a\n`src/gone.rs`", is_there), ["D:2: `src/gone.rs` is not there"]);
}

#[test]
fn a_lock_that_names_a_host_or_pins_nothing_is_caught() {
    let lock = r#"{"packages": {"": {}, "a": {"resolved": "x", "integrity": "y"}, "b": {}, "c": {"integrity": "z"}}}"#;
    assert_eq!(lock_faults(lock), ["a names where it was fetched from", "b has no digest"]);
}
