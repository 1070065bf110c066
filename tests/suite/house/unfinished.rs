//! Nothing is left open, unexplained or unrun, and only the outer parts know what day it is.

use super::code::{code_only, tokens};
use super::{Source, none, rust_files};

/// Parts that may ask what day it is; all others are given the date.
const KNOW_TODAY: &[&str] = &["src/cli/", "src/preview/"];

#[test]
fn each_file_says_in_its_first_line_what_it_holds() {
    none(all_files().iter().filter_map(unexplained).collect());
}

#[test]
fn no_work_is_left_open_and_no_test_is_set_aside() {
    none(all_files().iter().flat_map(left_open).collect());
}

#[test]
fn only_the_command_line_and_the_preview_know_what_day_it_is() {
    none(rust_files("src").iter().flat_map(asks_the_clock).collect());
}

fn all_files() -> Vec<Source> {
    let mut files = rust_files("src");
    files.extend(rust_files("tests"));
    files
}

fn unexplained(file: &Source) -> Option<String> {
    let first = file.text.lines().next().unwrap_or_default();
    let sentence = first.strip_prefix("//! ").unwrap_or_default();
    let explained = sentence.split_whitespace().count() >= 2;
    (!explained).then(|| format!("{}:1: opens without a `//!` sentence", file.path))
}

/// Tests that only another test runs, in a process of their own that it kills.
const RUN_BY_ANOTHER: &[&str] = &["src/publish/output/tests/kills.rs", "src/record/tests/kills.rs"];

fn left_open(file: &Source) -> Vec<String> {
    let run_by_another = RUN_BY_ANOTHER.contains(&file.path.as_str());
    let code = code_only(&file.text);
    let words = tokens(&code);
    let faulty = words.windows(2).filter_map(|pair| match (pair[0].text, pair[1].text) {
        (name @ ("todo" | "unimplemented" | "dbg"), "!") => Some((pair[0].line, name)),
        ("[" | ",", name @ "ignore") if !run_by_another => Some((pair[1].line, name)),
        _ => None,
    });
    faulty.map(|(line, name)| format!("{}:{line}: `{name}` is left in", file.path)).collect()
}

fn asks_the_clock(file: &Source) -> Vec<String> {
    if KNOW_TODAY.iter().any(|part| file.path.starts_with(part)) {
        return Vec::new();
    }
    let code = code_only(&file.text);
    let words = tokens(&code);
    let asks =
        words.windows(3).filter(|three| three[1].text == "::" && three[2].text == "now" && three[0].text != "Instant");
    asks.map(|three| format!("{}:{}: asks the clock; take the date as a parameter", file.path, three[0].line)).collect()
}

fn file(path: &str, text: &str) -> Source {
    Source { path: path.to_owned(), text: text.to_owned() }
}

#[test]
fn a_file_without_its_sentence_is_caught() {
    assert_eq!(unexplained(&file("src/a.rs", "//! What it holds.\n")), None);
    for text in ["use std::fs;\n", "\n//! Late.\n", "//!\n", "// Not a module comment.\n", ""] {
        assert!(unexplained(&file("src/a.rs", text)).is_some(), "{text:?}");
    }
}

#[test]
fn work_left_open_is_caught() {
    for text in [
        "fn f() { todo!() }",
        "unimplemented!(\"x\")",
        "#[test]\n#[ignore]\nfn f() {}",
        "#[ignore = \"slow\"]",
        "#[cfg_attr(x, ignore)]",
        "dbg!(1)",
    ] {
        assert_eq!(left_open(&file("src/a.rs", text)).len(), 1, "{text}");
    }
    let sound = "// todo!()\nfn ignore() { f(\"todo!()\"); x.ignore(); todo(); }";
    assert_eq!(left_open(&file("src/a.rs", sound)), [""; 0]);
}

#[test]
fn a_stage_that_asks_the_clock_is_caught() {
    let asks = "fn f() { jiff::Zoned::now(); std::time::SystemTime::now(); }";
    assert_eq!(asks_the_clock(&file("src/assess/mod.rs", asks)).len(), 2);
    assert_eq!(asks_the_clock(&file("src/cli/clock.rs", asks)), [""; 0]);
    let stopwatch = "fn f() { std::time::Instant::now(); }";
    assert_eq!(asks_the_clock(&file("src/pictures/mod.rs", stopwatch)), [""; 0]);
}
