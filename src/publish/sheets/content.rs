//! What the template is told: the view as JSON, in text that can be set.

use std::collections::BTreeSet;

use serde::Serialize;
use serde_json::{Map, Value};

use crate::language::{Language, Words};
use crate::publish::press::ON_SHEETS;
use crate::views::paper::sign_off::SignOff;

use super::engine::engine;
use super::error::SheetError;

/// The view with the keys of the pictures that were found, in the order of their files, and what the sheet
/// says of its own.
#[derive(Serialize)]
struct Content<'a, V> {
    view: &'a V,
    shown: &'a [String],
    words: Map<String, Value>,
}

/// The content as JSON, in the words of a language. Line breaks and control characters become spaces.
pub fn json(view: &impl Serialize, words: Words, shown: &[String]) -> Result<Vec<u8>, SheetError> {
    let refused = |fault: serde_json::Error| SheetError::View(fault.to_string());
    let tree = words.tree();
    // What sheets alone say, and what the boxes of a decision do.
    let [sheets, states] = ON_SHEETS;
    let mut words = tree.get(sheets).and_then(Value::as_object).cloned().unwrap_or_default();
    words.extend(tree.get(states).map(|said| (states.to_owned(), said.clone())));
    let mut content = serde_json::to_value(Content { view, shown, words }).map_err(refused)?;
    content.get_mut("view").map(tidy);
    serde_json::to_vec(&content).map_err(refused)
}

/// The letters of the sheet that its fonts lack; they are printed as boxes.
pub fn missing_letters(view: &SignOff) -> BTreeSet<char> {
    let words = Language::named(&view.language).unwrap_or_default().words();
    let json = json(view, words, &[]).unwrap_or_default();
    let fonts = &engine().fonts;
    let set = |c: char| fonts.iter().any(|font| font.info().coverage.contains(u32::from(c)));
    String::from_utf8_lossy(&json).chars().filter(|c| !set(*c)).collect()
}

fn tidy(value: &mut Value) {
    match value {
        Value::String(text) => *text = one_line(text),
        Value::Array(list) => list.iter_mut().for_each(tidy),
        Value::Object(fields) => fields.values_mut().for_each(tidy),
        _ => {}
    }
}

/// `text` with every run of line breaks, tabs and other controls as one space.
fn one_line(text: &str) -> String {
    let mut line = String::with_capacity(text.len());
    for piece in text.split(char::is_control).filter(|piece| !piece.is_empty()) {
        if !line.is_empty() && !line.ends_with(' ') {
            line.push(' ');
        }
        line.push_str(piece);
    }
    line
}

#[cfg(test)]
mod tests {
    use super::one_line;

    #[test]
    fn a_text_of_several_lines_becomes_one() {
        assert_eq!(one_line("two\r\nlines\tand \u{0}more"), "two lines and more");
        assert_eq!(one_line("\n"), "");
    }
}
