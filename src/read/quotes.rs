//! Curly quotes around a value, which YAML takes for letters of it.

use crate::finding::{Code, Finding, Remark, phrase};
use crate::source::yaml::{Node, Value};

/// The opening quotes of an editor that sets them by itself, and their closing ones.
const PAIRS: [(char, char); 3] = [('“', '”'), ('‘', '’'), ('„', '“')];

/// What stands inside curly quotes, where they are around all of it.
pub fn inside(text: &str) -> Option<&str> {
    if text.bytes().next().is_none_or(|first| first.is_ascii()) {
        return None;
    }
    PAIRS.iter().find_map(|(open, close)| {
        let inner = text.strip_prefix(*open)?.strip_suffix(*close)?;
        (!inner.is_empty() && !inner.contains([*open, *close])).then_some(inner)
    })
}

/// The values of a file that stand in curly quotes whole: they would be shown with them.
pub fn curly(root: &Node, room: &Option<String>) -> Vec<Finding> {
    let mut found = Vec::new();
    within(root, room, &mut found);
    found
}

fn within(node: &Node, room: &Option<String>, found: &mut Vec<Finding>) {
    match &node.value {
        Value::Map(pairs) => pairs.iter().for_each(|(_, node)| within(node, room, found)),
        Value::List(items) => items.iter().for_each(|node| within(node, room, found)),
        Value::Scalar { text, plain: true } if inside(text).is_some() => {
            let message = phrase!("the curly quotes of `{text}` are part of what is said, and are shown", text);
            let inner = inside(text).unwrap_or_default();
            let remedy = phrase!(
                "write `\"{inner}\"` with straight quotes; with both, `\"{text}\"`, they are shown",
                inner,
                text
            );
            let remark = Remark::query(node.span, message).remedy(remedy);
            found.push(remark.in_room(room.clone()).of(Code::SYNTAX));
        }
        Value::Scalar { .. } => {}
    }
}
