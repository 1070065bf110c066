//! What is not known yet: `…` in the place of a value, or of a figure in it.

use super::{Node, Value};
use crate::source::span::Spanned;

/// What may stand beside `…` in a value that is still open: units, and the words that go with figures. Anything
/// else makes it a text in which somebody left words out.
const BESIDE: [&str; 43] = [
    "mm", "cm", "m", "in", "ft", "sq", "m2", "ft2", "sqft", "lb", "kg", "day", "days", "week", "weeks", "month",
    "months", "working", "to", "at", "least", "most", "x", "v", "a", "w", "kw", "hz", "btu", "h", "cfm", "l", "s",
    "gal", "above", "below", "from", "counter", "floor", "by", "each", "kva", "m3",
];

/// What the trade writes for a value that is still to come.
const STILL_TO_COME: [&str; 27] = [
    "?",
    "??",
    "???",
    "tbc",
    "tbd",
    "tba",
    "t.b.c",
    "t.b.d",
    "poa",
    "unknown",
    "not known",
    "not known yet",
    "not yet known",
    "pending",
    "to follow",
    "to be confirmed",
    "to be decided",
    "to be determined",
    "to be chosen",
    "to be advised",
    "por definir",
    "por confirmar",
    "por decidir",
    "pendiente",
    "noch offen",
    "unbekannt",
    "à confirmer",
];
/// The longest of them, with a point after it.
const LONGEST_WORD: usize = 17;

/// The keys below which the designer gives names.
const NAMED: [&str; 20] = [
    "clear floor",
    "knee spaces",
    "controls",
    "doorways",
    "allowances",
    "milestones",
    "hold points",
    "walls",
    "doors",
    "windows",
    "runs",
    "islands",
    "fixtures",
    "lights",
    "switches",
    "outlets",
    "seating",
    "openings",
    "counters",
    "pieces",
];

/// Whether a value is still to be said: `…` or three points alone, or with units and figures beside it, or in the
/// trade's words for it.
pub fn is_open(text: &str) -> bool {
    let word = text.trim().trim_end_matches('.');
    if word.len() <= LONGEST_WORD && STILL_TO_COME.iter().any(|still| still.eq_ignore_ascii_case(word)) {
        return true;
    }
    // Most texts hold neither a point nor what is beyond plain letters.
    if !text.bytes().any(|byte| byte == b'.' || !byte.is_ascii()) {
        return false;
    }
    let text = text.trim();
    if !text.contains('…') && !text.contains("...") {
        return false;
    }
    let rest = text.replace("...", " ").replace('…', " ");
    rest.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).all(|word| {
        word.chars().all(|letter| letter.is_ascii_digit()) || BESIDE.contains(&word.to_ascii_lowercase().as_str())
    })
}

/// Takes out of a tree what is still to be said, so that it reads as if it were not written, and gives the key
/// of each with its place. An item of a list goes; a list that held nothing else is open as a whole.
pub fn take_open(root: &mut Node) -> Vec<Spanned<String>> {
    let mut open = Vec::new();
    match &mut root.value {
        Value::Map(pairs) => pairs.iter_mut().for_each(|(name, node)| within(node, &name.value, "", &mut open)),
        // Each record of a list stays one, whatever of it is open.
        Value::List(records) => {
            for record in records {
                if let Value::Map(pairs) = &mut record.value {
                    pairs.iter_mut().for_each(|(name, node)| within(node, &name.value, "", &mut open));
                }
            }
        }
        Value::Scalar { .. } => {}
    }
    open
}

fn within(node: &mut Node, key: &str, above: &str, open: &mut Vec<Spanned<String>>) {
    match &mut node.value {
        Value::Map(pairs) => {
            let before = open.len();
            for (name, node) in &mut *pairs {
                within(node, &name.value, key, open);
            }
            // A group of which nothing is said yet is not said. What bears a name of the designer's own is there.
            let all_open = open.len() > before && pairs.iter().all(|(_, node)| node.is_nothing());
            if all_open && !NAMED.contains(&above) && !NAMED.contains(&key) {
                node.value = nothing();
            }
        }
        Value::List(items) => {
            let before = items.len();
            // What never was written there is a fault of the list, and stays one.
            let was_written: Vec<bool> = items.iter().map(|item| !item.is_nothing()).collect();
            for item in &mut *items {
                within(item, key, above, open);
            }
            let mut was_written = was_written.into_iter();
            items.retain(|item| {
                let taken = was_written.next().unwrap_or_default() && item.is_nothing();
                !taken
            });
            if items.is_empty() && before > 0 {
                node.value = nothing();
            }
        }
        Value::Scalar { text, .. } if is_open(text) => {
            open.push(Spanned::new(key.to_string(), node.span));
            node.value = nothing();
        }
        Value::Scalar { .. } => {}
    }
}

fn nothing() -> Value {
    Value::Scalar { text: String::new(), plain: true }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_points_stand_for_what_is_not_known_and_for_nothing_else() {
        for open in ["…", "...", " … ", "… mm", "at least …\"", "….00", "…-… weeks", "… x … x … mm", "120 V … A"]
        {
            assert!(is_open(open), "{open}");
        }
        for open in ["TBD", "tbc.", "To be confirmed", "?", "pendiente", "noch offen"] {
            assert!(is_open(open), "{open}");
        }
        assert!(STILL_TO_COME.iter().all(|word| word.len() < LONGEST_WORD));
        for text in [
            "",
            "TBD by the fitter",
            "unknown maker",
            "words",
            "and so on …",
            "to be sealed ... on site",
            "36\"",
            "12 Alder Court",
        ] {
            assert!(!is_open(text), "{text}");
        }
    }
}
