//! Scripts of pages run on browsers of five years ago: one that does not know a syntax runs nothing of a file.

use super::none;
use std::fs;

/// Syntax and members that one of the engines learned after November 2021, and what stands for them. From memory of
/// the engines' release notes: look-behind came to WebKit with Safari 16.4, the others between 15.4 and 17.
const LATER: &[(&str, &str)] = &[
    ("(?<=", "a group that is kept"),
    ("(?<!", "a group that is kept"),
    ("AbortSignal.timeout", "AbortController and setTimeout"),
    ("AbortSignal.any", "AbortController"),
    ("structuredClone(", "a copy by hand"),
    (".at(", "an index"),
    ("Object.hasOwn", "hasOwnProperty"),
    ("Object.groupBy", "reduce"),
    (".findLast", "reverse and find"),
    (".toSorted", "slice and sort"),
    (".toReversed", "slice and reverse"),
    (".toSpliced", "slice and splice"),
    ("toWellFormed", "letter by letter"),
    ("crypto.randomUUID", "crypto.getRandomValues"),
    ("Promise.withResolvers", "new Promise"),
    ("Promise.try", "an async function"),
    ("Array.fromAsync", "for await"),
    ("static {", "a function"),
    ("checkVisibility", "offsetParent"),
    (".setHTMLUnsafe", "elements"),
    ("requestClose", "close"),
];

#[test]
fn scripts_of_pages_know_nothing_that_a_browser_of_five_years_ago_does_not() {
    let folder = format!("{}/themes/standard/scripts", env!("CARGO_MANIFEST_DIR"));
    let mut found = vec![];
    let mut read = 0;
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let text = fs::read_to_string(&path).unwrap();
        read += 1;
        for (number, line) in text.lines().enumerate() {
            for (later, instead) in LATER.iter().filter(|(later, _)| line.contains(later)) {
                found.push(format!("{}:{}: `{later}` is too new: use {instead}", path.display(), number + 1));
            }
        }
    }
    assert!(read > 10, "{read} scripts");
    none(found);
}
