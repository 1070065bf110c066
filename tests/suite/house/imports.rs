//! Data flows one way: a stage imports only what its row of the table allows.

use std::collections::BTreeSet;

use super::code::{Token, code_only, is_name, tokens};
use super::{none, repository, rust_files};

/// Each part of the crate, and the parts that it may import. A part may always use itself.
const MAY_IMPORT: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("source", &["units"]),
    ("finding", &["units", "source"]),
    ("theme", &["digest"]),
    ("language", &["units", "source", "digest", "theme"]),
    ("digest", &[]),
    ("ledger", &["units", "digest"]),
    ("vocabulary", &["units", "source", "finding"]),
    ("book", &["units", "source", "digest", "ledger", "theme", "language", "vocabulary"]),
    ("pictures", &["units", "digest"]),
    (
        "read",
        &["units", "source", "finding", "theme", "language", "digest", "ledger", "vocabulary", "book", "pictures"],
    ),
    ("site", &["units", "source", "vocabulary", "book"]),
    ("shown", &["units", "digest", "ledger", "vocabulary", "book", "site"]),
    ("assess", &["units", "source", "finding", "digest", "ledger", "vocabulary", "book", "site", "shown"]),
    ("drawings", &["units", "language", "site"]),
    (
        "views",
        &[
            "units",
            "source",
            "finding",
            "language",
            "digest",
            "ledger",
            "vocabulary",
            "book",
            "shown",
            "site",
            "pictures",
            "assess",
            "drawings",
        ],
    ),
    ("publish", &["source", "theme", "language", "pictures", "views"]),
    ("record", &["units", "digest", "ledger"]),
    ("pipeline", &["units", "source", "finding", "book", "pictures", "read", "assess", "views", "publish"]),
    ("serving", &[]),
    ("preview", &["publish", "serving"]),
    ("host", &["publish", "serving"]),
    ("explain", &["units", "ledger", "vocabulary", "book", "assess", "shown"]),
    ("schema", &["vocabulary", "book"]),
    ("start", &["units", "source", "theme", "vocabulary", "book"]),
    ("cli", BEFORE_CLI),
    ("main", &["cli"]),
    ("lib", &[]),
];

#[rustfmt::skip]
const BEFORE_CLI: &[&str] = &[
    "units", "source", "finding", "ledger", "book", "pictures", "read", "assess", "drawings", "views", "publish", "record", "pipeline",
    "vocabulary", "shown", "serving", "preview", "host", "explain", "schema", "start",
];

/// What a file of tests may import besides, and why.
const FOR_TESTS: &[(&str, &str, &str)] = &[
    ("src/assess/rules/trial.rs", "read", "tests of rules are books as people write them"),
    ("src/assess/rules/trial.rs", "language", "what readers are told of is worded in every language"),
    ("src/site/plan/tests/mod.rs", "read", "tests of plans are rooms as people write them"),
    ("src/site/fitting/tests.rs", "assess", "what must hold of a fit is held by what the rules find"),
    ("src/site/fitting/tests.rs", "finding", "a stop is told from a query"),
    ("src/site/twice/tests.rs", "assess", "what is told twice is told by its rule"),
    ("src/site/distances/tests.rs", "assess", "a distance counts as what the rules find of it"),
];

#[test]
fn a_stage_imports_only_earlier_ones() {
    let files = rust_files("src");
    let mut found: Vec<String> = files.iter().flat_map(|file| faults(&file.path, &file.text)).collect();
    for (path, part, _) in FOR_TESTS {
        let fault = |line: &String| line.starts_with(&format!("{path}:")) && line.ends_with(&format!("import {part}"));
        let before = found.len();
        found.retain(|line| !fault(line));
        if found.len() == before {
            found.push(format!("{path}: does not import {part}; its exception can go"));
        }
    }
    none(found);
}

#[test]
fn the_table_of_imports_has_a_row_for_each_part_and_no_other() {
    let lib = std::fs::read_to_string(repository().join("src/lib.rs")).expect("src/lib.rs");
    let code = code_only(&lib);
    let words = tokens(&code);
    let mut declared: Vec<&str> =
        words.windows(2).filter(|pair| pair[0].text == "mod").map(|pair| pair[1].text).chain(["main", "lib"]).collect();
    let mut rows: Vec<&str> = MAY_IMPORT.iter().map(|(part, _)| *part).collect();
    declared.sort_unstable();
    rows.sort_unstable();
    assert_eq!(declared, rows, "modules of src/lib.rs against rows of MAY_IMPORT");
}

#[test]
fn no_row_allows_an_import_that_nobody_uses() {
    let mut used: BTreeSet<(String, String)> = BTreeSet::new();
    for file in rust_files("src") {
        let module = module_of(&file.path);
        let part = if file.path == "src/main.rs" { "main" } else { module.first().copied().unwrap_or("lib") };
        let code = code_only(&file.text);
        for (_, import) in imports(module.len(), &tokens(&code)) {
            if let Import::Part(other) = import {
                used.insert((part.to_string(), other.to_string()));
            }
        }
    }
    let idle = MAY_IMPORT.iter().flat_map(|(part, allowed)| {
        let unused = allowed.iter().filter(|other| !used.contains(&(part.to_string(), other.to_string())));
        unused.map(move |other| format!("{part} may import {other}, and does not")).collect::<Vec<_>>()
    });
    none(idle.collect());
}

/// What a file imports against its row, as `file:line: part must not import part`.
fn faults(path: &str, text: &str) -> Vec<String> {
    let module = module_of(path);
    let part = match path {
        "src/main.rs" => "main",
        "src/lib.rs" => "lib",
        _ => module[0],
    };
    let Some((_, allowed)) = MAY_IMPORT.iter().find(|(name, _)| *name == part) else {
        return vec![format!("{path}:1: `{part}` has no row in MAY_IMPORT")];
    };
    let code = code_only(text);
    let judge = |(line, import): (usize, Import)| match import {
        Import::Hidden(how) => Some(format!("{path}:{line}: {how} hides which part is imported; name it")),
        Import::Part(other) if other == part || allowed.contains(&other) => None,
        Import::Part(other) => Some(format!("{path}:{line}: {part} must not import {other}")),
    };
    imports(module.len(), &tokens(&code)).into_iter().filter_map(judge).collect()
}

/// `src/read/room.rs` → `["read", "room"]`; `src/read/mod.rs` → `["read"]`; `src/lib.rs` → `[]`.
fn module_of(path: &str) -> Vec<&str> {
    let inside = path.trim_start_matches("src/").trim_end_matches(".rs");
    let mut module: Vec<&str> = inside.split('/').collect();
    if matches!(module.last(), Some(&"mod" | &"lib" | &"main")) {
        module.pop();
    }
    module
}

#[derive(Debug, PartialEq, Eq)]
enum Import<'a> {
    Part(&'a str),
    Hidden(&'static str),
}

/// Every path that starts at the top of the crate, by name or by climbing out of `depth` modules.
fn imports<'a>(depth: usize, words: &[Token<'a>]) -> Vec<(usize, Import<'a>)> {
    let mut found = Vec::new();
    let mut inline = Inline::default();
    let mut in_use = false;
    for at in 0..words.len() {
        let before = at.checked_sub(1).map_or("", |before| words[before].text);
        let after = words.get(at + 1).map_or("", |word| word.text);
        inline.step(words, at);
        match words[at].text {
            "use" => in_use = true,
            ";" => in_use = false,
            "crate" if after == "::" => found.push((words[at].line, target(words, at + 2))),
            "crate" if matches!(before, "(" | "in") => {}
            "crate" => found.push((words[at].line, Import::Hidden("`crate` by another name"))),
            "bookmatch" if after == "::" => found.push((words[at].line, target(words, at + 2))),
            "super" if in_use && matches!(before, "{" | ",") => {
                found.push((words[at].line, Import::Hidden("`super` in braces")));
            }
            "super" if before != "::" => {
                let climbed = (0..).take_while(|step| word(words, at + 2 * step) == "super").count();
                if climbed >= depth + inline.depth() && after == "::" {
                    found.push((words[at].line, target(words, at + 2 * climbed)));
                }
            }
            _ => {}
        }
    }
    found
}

fn word<'a>(words: &[Token<'a>], at: usize) -> &'a str {
    words.get(at).map_or("", |word| word.text)
}

fn target<'a>(words: &[Token<'a>], at: usize) -> Import<'a> {
    match word(words, at) {
        name if is_name(name) => Import::Part(name),
        _ => Import::Hidden("a brace or a star after the top of the crate"),
    }
}

/// The modules written out in a file, such as `mod tests { … }`.
#[derive(Default)]
struct Inline {
    braces: usize,
    opened_at: Vec<usize>,
}

impl Inline {
    fn step(&mut self, words: &[Token], at: usize) {
        match words[at].text {
            "{" => {
                self.braces += 1;
                if at >= 2 && words[at - 2].text == "mod" {
                    self.opened_at.push(self.braces);
                }
            }
            "}" => {
                if self.opened_at.last() == Some(&self.braces) {
                    self.opened_at.pop();
                }
                self.braces = self.braces.saturating_sub(1);
            }
            _ => {}
        }
    }

    fn depth(&self) -> usize {
        self.opened_at.len()
    }
}

#[test]
fn a_planted_import_is_caught_however_it_is_written() {
    for planted in [
        "use crate::read::Reading;",
        "pub use crate::read;",
        "fn f() { crate::read::read(); }",
        "fn f() -> Option<bookmatch::read::Reading> { None }",
        "use super::super::read::Reading;",
        "mod tests {\n    use super::super::super::read;\n}",
        "macro_rules! m { () => { $crate::read::f() } }",
    ] {
        let found = faults("src/book/room.rs", planted);
        assert_eq!(found.len(), 1, "{planted}: {found:?}");
        assert!(found[0].ends_with("book must not import read"), "{planted}: {found:?}");
    }
    let found = faults("src/book/mod.rs", "//! x\n\nuse super::read::Reading;");
    assert_eq!(found, ["src/book/mod.rs:3: book must not import read"]);
    let found = faults("src/main.rs", "fn main() { bookmatch::read::read() }");
    assert_eq!(found, ["src/main.rs:1: main must not import read"]);
}

#[test]
fn an_import_that_hides_its_part_is_refused() {
    for planted in [
        "use crate::{units::Length, read::Reading};",
        "use crate::*;",
        "use crate as all;",
        "use super::{super::super::read, other};",
        "use super::super::{read};",
        "use bookmatch::{read};",
    ] {
        let found = faults("src/book/room.rs", planted);
        assert_eq!(found.len(), 1, "{planted}: {found:?}");
        assert!(found[0].contains("hides which part"), "{planted}: {found:?}");
    }
}

#[test]
fn an_allowed_import_a_neighbour_and_a_word_in_a_comment_pass() {
    for sound in [
        "use crate::units::Length;\nuse crate::source::Span;",
        "use crate::book::Book;\npub(crate) fn f() {}\npub(in crate::book) fn g() {}",
        "use super::opening::Opening;\nuse super::super::book::Book;",
        "//! See [`crate::read`].\nconst A: &str = \"crate::read\";",
        "mod tests {\n    use super::super::opening::Opening;\n    use super::*;\n}",
    ] {
        assert_eq!(faults("src/book/room.rs", sound), [""; 0], "{sound}");
    }
}
