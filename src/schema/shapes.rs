//! Each shape of the vocabulary as a schema. Patterns accept what the reader accepts; the reader
//! has the last word on what a notation means.

use serde_json::{Value, json};

use crate::vocabulary::{FieldType, JOINS, Kind, NameOf};

use super::record;

/// A number as people write it: `34`, `40.5`, `1/2`, `34 1/2`, `34-1/2`, `34½`.
const NUMBER: &str = "[0-9½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⁄/.,\\u00a0\\u2009\\u202f \\-–]+";
/// Units of length, with primes and quotes of every kind.
const LENGTH_UNIT: &str = "(\"|''|′′|″|”|“|'|′|’|‘|in|inch|inches|ft|foot|feet|mm|cm|m|millimetres?|millimeters?|centimetres?|centimeters?|metres?|meters?)";

/// The schema of a shape.
pub fn schema(shape: &FieldType) -> Value {
    let length = || format!("-?{NUMBER} ?{LENGTH_UNIT}(\\.?[ \\-]*{NUMBER} ?{LENGTH_UNIT}\\.?)?");
    match shape {
        FieldType::Text | FieldType::Markdown => json!({"type": ["string", "number", "boolean"]}),
        FieldType::Length => text(&length()),
        FieldType::LengthRange => json!({"type": "string", "pattern": LENGTH_UNIT}),
        FieldType::Readings => {
            json!({"anyOf": [text(&length()), {"type": "array", "items": text(&length()), "minItems": 1}]})
        }
        FieldType::Sides | FieldType::TwoSides | FieldType::ThreeSides => {
            json!({"type": "string", "pattern": format!("{LENGTH_UNIT}.*[x×].*{LENGTH_UNIT}")})
        }
        FieldType::Clearance => json!({"anyOf": [schema(&FieldType::LengthAbove), schema(&FieldType::Area)]}),
        FieldType::LengthAbove => json!({"type": "string", "pattern": format!("^ *{NUMBER} ?{LENGTH_UNIT}")}),
        FieldType::Area => json!({"type": "string", "pattern": "(sq|ft2|m2|in2|cm2|ft²|m²|in²|cm²|square)"}),
        FieldType::Money => {
            json!({"anyOf": [{"type": "number"}, {"type": "string", "pattern": "^[^0-9]{0,4}[0-9][0-9,.]*$"}]})
        }
        FieldType::Currency => json!({"type": "string", "pattern": "^[A-Z]{3}$"}),
        FieldType::Percent => json!({"type": "string", "pattern": "^[0-9.]+ ?(%|percent|per cent)$"}),
        FieldType::Date => text("[0-9]{4}-[0-9]{2}-[0-9]{2}"),
        FieldType::LeadTime => json!({"type": "string", "pattern": "^([A-Za-z -]+|[0-9]+.*[A-Za-z.]+)$"}),
        FieldType::Weight => json!({"type": "string", "pattern": "[0-9].*[a-z]"}),
        FieldType::Quantity => {
            json!({"anyOf": [{"type": "number", "minimum": 0}, {"type": "string", "pattern": "^[0-9½¼¾⅛⅜⅝⅞]"}]})
        }
        FieldType::Whole => json!({"type": "integer", "minimum": 0}),
        FieldType::YesNo => json!({"anyOf": [{"type": "boolean"}, {"enum": ["yes", "no"]}]}),
        FieldType::OneOf(words, also) => {
            one_of(&words.iter().chain(also.iter().map(|(other, _)| other)).copied().collect::<Vec<_>>())
        }
        FieldType::Name(NameOf::Kind) => kind(),
        // A theme may have languages of its own.
        FieldType::Name(NameOf::Language) => text("[a-z]{2,3}(-[A-Za-z0-9]{1,8})*"),
        FieldType::Name(_) => json!({"type": ["string", "number"]}),
        FieldType::Record(inner) => record(inner),
        FieldType::List(inner) => json!({"type": "array", "items": schema(inner)}),
        FieldType::Named(inner) => json!({"type": "object", "additionalProperties": schema(inner)}),
        FieldType::Either(one, other) => json!({"anyOf": [schema(one), schema(other)]}),
    }
}

/// One of some words, however its parts are joined.
fn one_of(words: &[&str]) -> Value {
    let patterns: Vec<String> = words.iter().map(|word| joined(word, String::from)).collect();
    json!({"anyOf": [{"enum": words}, text(&format!("({})", patterns.join("|")))]})
}

/// A kind: one of its words, in any case, one or several, with words before it that say more.
fn kind() -> Value {
    let words: Vec<&str> = Kind::ALL.iter().flat_map(|kind| kind.words()).collect();
    let in_any_case = |letter: char| match letter {
        'a'..='z' => format!("[{letter}{}]", letter.to_ascii_uppercase()),
        _ => letter.to_string(),
    };
    let patterns: Vec<String> = words.iter().map(|word| joined(word, in_any_case)).collect();
    let said = text(&format!("(.+[{}])?({})(e?s)?", String::from_iter(JOINS), patterns.join("|")));
    json!({"anyOf": [{"enum": words}, said]})
}

/// A word, however its parts are joined.
fn joined(word: &str, of: impl Fn(char) -> String) -> String {
    let letters: Vec<String> = word.chars().filter(|letter| !JOINS.contains(letter)).map(of).collect();
    letters.join(&format!("[{}]*", String::from_iter(JOINS)))
}

fn text(pattern: &str) -> Value {
    json!({"type": "string", "pattern": format!("^{pattern}$")})
}
