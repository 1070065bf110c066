//! Files and functions stay short enough to read at one sitting.

use super::code::{Token, code_only, is_name, tokens};
use super::{Source, none, rust_files};

/// No file is longer.
const FILE_LINES: usize = 400;
/// A function should not be longer; one that is stands in `LONG_FUNCTIONS`.
const FUNCTION_LINES: usize = 50;
/// No function is longer, whatever its reason.
const FUNCTION_LINES_AT_MOST: usize = 60;

/// Functions of more than `FUNCTION_LINES`, as `path::name`, and why each is better whole.
const LONG_FUNCTIONS: &[(&str, &str)] = &[
    ("src/vocabulary/said.rs::words", "one table of what words tell, complete by its type"),
    ("src/views/samples/client.rs::kitchen", "one page's sample, read beside the page"),
    ("src/views/samples/office.rs::review", "one page's sample, read beside the page"),
];

#[test]
fn no_file_and_no_function_is_too_long() {
    let mut files = rust_files("src");
    files.extend(rust_files("tests"));
    none(faults(&files, LONG_FUNCTIONS));
}

fn faults(files: &[Source], exceptions: &[(&str, &str)]) -> Vec<String> {
    let mut found = Vec::new();
    let mut used = Vec::new();
    for file in files {
        let lines = file.text.lines().count();
        if lines > FILE_LINES {
            found.push(format!("{}: {lines} lines; {FILE_LINES} at most", file.path));
        }
        for function in functions(&file.text) {
            let Function { name, line, lines } = &function;
            let place = format!("{}::{name}", file.path);
            let excepted = exceptions.iter().any(|(excepted, _)| *excepted == place);
            let most = if excepted { FUNCTION_LINES_AT_MOST } else { FUNCTION_LINES };
            if *lines > FUNCTION_LINES {
                used.push(place);
            }
            if *lines > most {
                found.push(format!("{}:{line}: `{name}` has {lines} lines; {most} at most", file.path));
            }
        }
    }
    for (place, because) in exceptions {
        if !used.iter().any(|used| used == place) {
            found.push(format!("{place} is no longer than others; its exception can go"));
        }
        if because.split_whitespace().count() < 3 {
            found.push(format!("{place}: the exception wants a reason"));
        }
    }
    found
}

struct Function {
    name: String,
    line: usize,
    lines: usize,
}

/// Every function with a body, from the line of its `fn` to the line of its last brace.
fn functions(text: &str) -> Vec<Function> {
    let code = code_only(text);
    let words = tokens(&code);
    let starts = words.windows(2).enumerate();
    starts
        .filter(|(_, pair)| pair[0].text == "fn" && is_name(pair[1].text))
        .filter_map(|(at, pair)| {
            let last = last_line(&words[at..])?;
            Some(Function { name: pair[1].text.to_owned(), line: pair[0].line, lines: last - pair[0].line + 1 })
        })
        .collect()
}

/// The line of the brace that ends the body; none where there is no body.
fn last_line(words: &[Token]) -> Option<usize> {
    let (mut braces, mut brackets) = (0, 0);
    for word in words {
        match word.text {
            "(" | "[" => brackets += 1,
            ")" | "]" => brackets -= 1,
            ";" if braces == 0 && brackets == 0 => return None,
            "{" => braces += 1,
            "}" if braces == 1 => return Some(word.line),
            "}" => braces -= 1,
            _ => {}
        }
    }
    None
}

fn file_with_a_function_of(lines: usize) -> Source {
    let body = "    let s = \"}\"; // }\n".repeat(lines - 2);
    Source {
        path: "src/a.rs".to_owned(),
        text: format!("trait T {{\n    fn none(&self);\n}}\nfn long(x: [u8; 2]) {{\n{body}}}\n"),
    }
}

#[test]
fn a_long_function_is_caught_by_name_and_line() {
    assert_eq!(faults(&[file_with_a_function_of(50)], &[]), [""; 0]);
    assert_eq!(faults(&[file_with_a_function_of(51)], &[]), ["src/a.rs:4: `long` has 51 lines; 50 at most"]);
}

#[test]
fn an_exception_reaches_to_sixty_lines_and_must_be_used_and_explained() {
    let exception = [("src/a.rs::long", "one table row a line")];
    assert_eq!(faults(&[file_with_a_function_of(60)], &exception), [""; 0]);
    assert_eq!(faults(&[file_with_a_function_of(61)], &exception), ["src/a.rs:4: `long` has 61 lines; 60 at most"]);
    let unused = faults(&[file_with_a_function_of(50)], &exception);
    assert_eq!(unused, ["src/a.rs::long is no longer than others; its exception can go"]);
    let unexplained = faults(&[file_with_a_function_of(60)], &[("src/a.rs::long", "")]);
    assert_eq!(unexplained, ["src/a.rs::long: the exception wants a reason"]);
}

#[test]
fn a_long_file_is_caught() {
    let file = |lines: usize| Source { path: "src/a.rs".to_owned(), text: "//! x\n".repeat(lines) };
    assert_eq!(faults(&[file(400)], &[]), [""; 0]);
    assert_eq!(faults(&[file(401)], &[]), ["src/a.rs: 401 lines; 400 at most"]);
}
