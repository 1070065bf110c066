//! Rust text without its comments and literals, and as words with their lines.

/// A word or sign of code, and the line it stands on (from 1).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Token<'a> {
    pub text: &'a str,
    pub line: usize,
}

/// The same text with comments, strings and characters blanked; lines stay where they were.
pub fn code_only(text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let mut out = String::with_capacity(text.len());
    let mut at = 0;
    while at < chars.len() {
        let end = end_of_blank(&chars[at..]).map_or(at, |length| at + length);
        if end == at {
            out.push(chars[at]);
            at += 1;
            continue;
        }
        out.extend(chars[at..end].iter().map(|c| if *c == '\n' { '\n' } else { ' ' }));
        at = end;
    }
    out
}

/// How long the comment or literal is that starts here, if one does.
fn end_of_blank(rest: &[char]) -> Option<usize> {
    match rest {
        ['/', '/', ..] => Some(find(rest, 2, '\n')),
        ['/', '*', ..] => Some(end_of_block(rest)),
        ['"', ..] => Some(end_of_quoted(rest, '"')),
        ['r', '"' | '#', ..] => end_of_raw(rest),
        ['\'', '\\', ..] => Some(end_of_quoted(rest, '\'')),
        ['\'', _, '\'', ..] => Some(3),
        _ => None,
    }
}

fn find(rest: &[char], from: usize, wanted: char) -> usize {
    (from..rest.len()).find(|&at| rest[at] == wanted).unwrap_or(rest.len())
}

fn end_of_block(rest: &[char]) -> usize {
    let (mut at, mut depth) = (0, 0);
    while at < rest.len() {
        match rest[at..] {
            ['/', '*', ..] => (at, depth) = (at + 2, depth + 1),
            ['*', '/', ..] if depth == 1 => return at + 2,
            ['*', '/', ..] => (at, depth) = (at + 2, depth - 1),
            _ => at += 1,
        }
    }
    at
}

fn end_of_quoted(rest: &[char], quote: char) -> usize {
    let mut at = 1;
    while at < rest.len() {
        match rest[at] {
            '\\' => at += 2,
            c if c == quote => return at + 1,
            _ => at += 1,
        }
    }
    rest.len()
}

fn end_of_raw(rest: &[char]) -> Option<usize> {
    let hashes = rest[1..].iter().take_while(|c| **c == '#').count();
    let open = 1 + hashes;
    if rest.get(open) != Some(&'"') {
        return None; // a name such as r#type
    }
    let closes = |at: usize| rest[at] == '"' && rest[at + 1..].iter().take_while(|c| **c == '#').count() >= hashes;
    let close = (open + 1..rest.len()).find(|&at| closes(at));
    Some(close.map_or(rest.len(), |at| at + 1 + hashes))
}

/// The words and signs of code from [`code_only`]; `::` is one sign.
pub fn tokens(code: &str) -> Vec<Token<'_>> {
    let mut found = Vec::new();
    for (index, line) in code.lines().enumerate() {
        let mut rest = line.trim_start();
        while let Some(first) = rest.chars().next() {
            let length = match first {
                c if is_word(c) => rest.find(|c| !is_word(c)).unwrap_or(rest.len()),
                ':' if rest.starts_with("::") => 2,
                c => c.len_utf8(),
            };
            found.push(Token { text: &rest[..length], line: index + 1 });
            rest = rest[length..].trim_start();
        }
    }
    found
}

fn is_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}

/// True for a name, not a sign.
pub fn is_name(text: &str) -> bool {
    text.starts_with(is_word)
}

#[test]
fn comments_and_literals_are_blanked_and_lines_stay() {
    let text = "a // b \"\n/* c /* d */ e\n*/ f(\"g\\\" h\", r#\"i \" j\"#, 'k', '\\'', b\"l\") // m\nn<'o>";
    let code = code_only(text);
    assert_eq!(code.lines().count(), 4);
    let words: Vec<&str> = tokens(&code).iter().map(|token| token.text).collect();
    assert_eq!(words, ["a", "f", "(", ",", ",", ",", ",", "b", ")", "n", "<", "'", "o", ">"]);
}

#[test]
fn words_know_their_line() {
    let found = tokens("use a::b;\n  fn c() {}");
    assert_eq!(found[2], Token { text: "::", line: 1 });
    assert_eq!(found[6], Token { text: "c", line: 2 });
}
