//! What no theme may leave out: cautions, marks, that a draft is one, and what is signed or asked.

use serde_json::Value;

/// Where a view holds cautions, and other things that everybody is to know.
const CAUTIONS: [&str; 5] = ["cautions", "waiver_cautions", "caution", "notices", "to_settle"];

/// A text that must stand, and what it is.
#[derive(Debug, PartialEq, Eq)]
pub struct MustSay {
    /// In a word.
    pub what: &'static str,
    /// The text, as the view has it.
    pub text: String,
}

/// What must stand on the page or sheet of a view.
pub fn must_say(view: &Value) -> Vec<MustSay> {
    let mut all = Vec::new();
    walk(view, &mut all);
    all
}

fn walk(view: &Value, all: &mut Vec<MustSay>) {
    match view {
        Value::Array(items) => items.iter().for_each(|item| walk(item, all)),
        Value::Object(pairs) => pairs.iter().for_each(|(key, value)| named(key, value, all)),
        _ => {}
    }
}

fn named(key: &str, value: &Value, all: &mut Vec<MustSay>) {
    let mut must = |what: &'static str, text: &str| {
        if text.chars().any(char::is_alphanumeric) {
            all.push(MustSay { what, text: text.to_owned() });
        }
    };
    match (key, value) {
        // Of a finding it is where its caution stands, not what it says.
        ("caution", Value::String(_)) => {}
        (key, value) if CAUTIONS.contains(&key) => texts(value, &mut |text| must("a caution", text)),
        ("mark", Value::String(text)) => must("a mark", text),
        ("statement", value) => texts(value, &mut |text| must("what a signature means", text)),
        ("asked" | "asks", Value::Object(data)) => {
            if let Some(Value::String(json)) = data.get("json") {
                must("what its script asks", json);
            }
        }
        (_, value) => walk(value, all),
    }
}

/// Every text of markup below a value, or every plain one of a list.
fn texts(value: &Value, take: &mut dyn FnMut(&str)) {
    match value {
        Value::Array(items) => items.iter().for_each(|item| texts(item, take)),
        Value::String(text) => take(text),
        Value::Object(pairs) => match pairs.get("html") {
            Some(Value::String(html)) => take(html),
            _ => pairs
                .values()
                .filter(|inner| inner.is_array() || inner.is_object())
                .for_each(|inner| texts(inner, take)),
        },
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn cautions_and_marks_are_found_wherever_a_view_holds_them() {
        let view = json!({
            "sheet": {"mark": "ab12 cd34", "name": "Range"},
            "cautions": [{"title": "Heed", "lines": [{"html": "Gas can kill."}]}],
            "groups": [{"cautions": [{"html": "Glass cuts."}], "findings": [{"caution": "caution-1-1"}]}],
            "rule": {"caution": {"html": "It tips."}},
            "asked": {"json": "{\"book\":1}"},
            "rooms": [{"items": [{"cautions": ["Hot."]}]}],
        });
        let mut said: Vec<String> = must_say(&view).into_iter().map(|must| must.text).collect();
        said.sort();
        assert_eq!(said, ["Gas can kill.", "Glass cuts.", "Hot.", "It tips.", "ab12 cd34", "{\"book\":1}"]);
    }
}
