//! A rule's code is said where the rule is declared: no check names one, its own or another's.

use super::code::code_only;
use super::{none, rust_files};

/// Where codes are made: the list of those of reading, and the declaration of a rule.
const MAKERS: &[&str] = &["src/finding/code.rs", "src/assess/rules/mod.rs"];

#[test]
fn codes_are_made_where_rules_are_declared() {
    let files = rust_files("src").into_iter().filter(|file| !MAKERS.contains(&file.path.as_str()));
    none(files.flat_map(|file| made(&file.path, &file.text)).collect());
}

#[test]
fn no_check_names_a_rule() {
    let is_check = |path: &str| path.starts_with("src/assess/rules/") && path.matches('/').count() > 3;
    let files = rust_files("src").into_iter().filter(|file| is_check(&file.path));
    none(files.flat_map(|file| named(&file.path, &file.text)).collect());
}

/// Where the templates of sentences become pieces, and where the figures and the examples of a page are filled in.
const CUTTERS: &[&str] = &["src/units/sentence/", "src/assess/rules/prose.rs", "src/assess/rules/examples.rs"];

#[test]
fn no_sentence_is_cut_at_its_marks() {
    let files = rust_files("src").into_iter().filter(|file| !CUTTERS.iter().any(|path| file.path.starts_with(path)));
    none(files.flat_map(|file| cut(&file.path, &file.text)).collect());
}

fn cut(path: &str, text: &str) -> Vec<String> {
    let text = text.split("#[cfg(test)]").next().unwrap_or("");
    let ways = ["split('`')", "split_once(\"`", "split_once('`')", "replace('`'"];
    let lines = text.lines().enumerate().filter(|(_, line)| ways.iter().any(|way| line.contains(way)));
    lines.map(|(at, line)| format!("{path}:{}: a sentence is cut: {}", at + 1, line.trim())).collect()
}

fn made(path: &str, text: &str) -> Vec<String> {
    told(path, text, &["Code::declared("], "a code is made outside a rule's declaration")
}

fn named(path: &str, text: &str) -> Vec<String> {
    told(path, text, &["RULE.code", "Code::", ".of(rules::"], "a check names a rule")
}

fn told(path: &str, text: &str, ways: &[&str], fault: &str) -> Vec<String> {
    let text = text.split("#[cfg(test)]").next().unwrap_or("");
    let code = code_only(text);
    let lines = code.lines().enumerate();
    let lines = lines.filter(|(_, line)| ways.iter().any(|way| line.contains(way)));
    lines.map(|(at, line)| format!("{path}:{}: {fault}: {}", at + 1, line.trim())).collect()
}

#[test]
fn a_check_that_names_a_rule_is_caught() {
    assert_eq!(named("a.rs", "findings.push(remark.of(RULE.code));").len(), 1);
    assert_eq!(named("a.rs", "findings.push(remark.of(Code::SYNTAX));").len(), 1);
    assert_eq!(made("a.rs", "const WIDTH: Code = Code::declared(\"fit/width\");").len(), 1);
    assert!(named("a.rs", "findings.push(remark); // RULE.code").is_empty());
    assert_eq!(cut("a.rs", "let name = finding.message.text().split('`').nth(1);").len(), 1);
}
