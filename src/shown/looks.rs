//! As what each field of an approved thing is looked at when it comes.

use crate::ledger::Looked;
use crate::vocabulary::{ShownField, ShownValue, Since};

/// The fields of an option that are looked at.
const OF_OPTION: [(&str, Looked); 15] = [
    ("maker", Looked::Model),
    ("model", Looked::Model),
    ("finish", Looked::Finish),
    ("colour", Looked::Finish),
    ("material", Looked::Finish),
    ("size", Looked::Size),
    ("hinge", Looked::Hand),
    ("laid", Looked::Hand),
    ("quantity", Looked::Number),
    ("fuel", Looked::Rest),
    ("stores", Looked::Rest),
    ("top", Looked::Rest),
    ("drilled", Looked::Rest),
    ("panel", Looked::Rest),
    ("accessories", Looked::Rest),
];
/// The facts of a kind's own that are looked at with others; all else of them is the rest.
const OF_DETAILS: [(&str, Looked); 9] = [
    ("sheen", Looked::Finish),
    ("face size", Looked::Size),
    ("thickness", Looked::Size),
    ("grain", Looked::Hand),
    ("pattern", Looked::Hand),
    ("drain", Looked::Hand),
    ("finished ends", Looked::Ends),
    ("edge", Looked::Ends),
    ("edge trim", Looked::Ends),
];

/// Where a field stands.
#[derive(Clone, Copy)]
enum Within {
    /// In the option itself.
    Option,
    /// Among the facts of its kind's own.
    Details,
}

/// What there is to look at.
pub fn looks(shown: &ShownValue) -> Vec<Looked> {
    Looked::ALL.into_iter().filter(|looked| !part_of(shown, *looked).is_empty()).collect()
}

/// What is shown of an option, as far as it is looked at together.
pub fn part_of(shown: &ShownValue, looked: Looked) -> ShownValue {
    let of = |fields: &[ShownField], within: Within| -> Vec<ShownField> {
        let is_it = |field: &&ShownField| looked_at(&field.key, within) == Some(looked);
        fields.iter().filter(is_it).cloned().collect()
    };
    let mut fields = of(shown.fields(), Within::Option);
    if let Some(details) = shown.get("details") {
        let own = of(details.fields(), Within::Details);
        if !own.is_empty() {
            fields.push(ShownField::new("details", Since::First, ShownValue::Group(own)));
        }
    }
    ShownValue::Group(fields)
}

/// As what a field is looked at; nothing of what is no part of the thing: prices, pictures, words about it.
fn looked_at(key: &str, within: Within) -> Option<Looked> {
    let of = |table: &[(&str, Looked)]| table.iter().find(|(name, _)| *name == key).map(|(_, looked)| *looked);
    match within {
        Within::Option => of(&OF_OPTION),
        Within::Details => of(&OF_DETAILS).or(Some(Looked::Rest)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(key: &'static str) -> ShownField {
        ShownField::new(key, Since::First, ShownValue::Text("x".into()))
    }

    fn keys(shown: &ShownValue, looked: Looked) -> Vec<String> {
        part_of(shown, looked).fields().iter().map(|field| field.key.to_string()).collect()
    }

    /// No price reaches those who receive: it stands in the content that was signed.
    #[test]
    fn each_field_is_looked_at_once_and_no_price_at_all() {
        let details = vec![text("finished ends"), text("kelvin")];
        let mut fields: Vec<ShownField> =
            ["maker", "finish", "hinge", "quantity", "price", "total", "price per", "pictures"].map(text).into();
        fields.push(ShownField::new("details", Since::First, ShownValue::Group(details)));
        let shown = ShownValue::Group(fields);
        assert_eq!(keys(&shown, Looked::Model), ["maker"]);
        assert_eq!(keys(&shown, Looked::Finish), ["finish"]);
        assert_eq!(keys(&shown, Looked::Hand), ["hinge"]);
        assert_eq!(keys(&shown, Looked::Ends), ["details"]);
        assert_eq!(keys(&shown, Looked::Number), ["quantity"]);
        assert_eq!(keys(&shown, Looked::Rest), ["details"]);
        let words: Vec<&str> = looks(&shown).into_iter().map(Looked::word).collect();
        assert_eq!(words, ["model", "finish", "hand", "ends", "number", "rest"]);
        assert!(!Looked::ALL.iter().any(|looked| keys(&shown, *looked).iter().any(|key| key.contains("price"))));
    }
}
