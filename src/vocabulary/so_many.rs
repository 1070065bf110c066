//! How many of several came, in the words of whoever received them: `1 of 2`, `one is missing`, `the second`, `the rest`.

use rust_decimal::Decimal;

use crate::units::in_words;

/// How many came of several.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SoMany {
    /// So many of them.
    Count(Decimal),
    /// All that had not come before.
    TheRest,
}

/// What a word does in such a sentence.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Part {
    Number(Decimal),
    /// One of several, by its place: `second`, `other`.
    Place,
    Of,
    Came,
    Missing,
    Rest,
    Plain,
}

const OF: [&str; 4] = ["of", "de", "von", "/"];
const CAME: [&str; 12] = [
    "came",
    "come",
    "arrived",
    "delivered",
    "received",
    "here",
    "there",
    "llegó",
    "llego",
    "llegaron",
    "recibido",
    "recibidos",
];
const MISSING: [&str; 22] = [
    "missing",
    "short",
    "lacking",
    "lacks",
    "outstanding",
    "owed",
    "owing",
    "pending",
    "follow",
    "follows",
    "following",
    "later",
    "backordered",
    "back-ordered",
    "backorder",
    "awaited",
    "falta",
    "faltan",
    "pendiente",
    "pendientes",
    "fehlt",
    "fehlen",
];
const REST: [&str; 8] = ["rest", "balance", "remainder", "remaining", "resto", "demás", "restante", "restantes"];
const PLACES: [&str; 17] = [
    "first", "second", "third", "fourth", "fifth", "last", "other", "1st", "2nd", "3rd", "4th", "5th", "primero",
    "primera", "segundo", "segunda", "otro",
];
/// Words that change nothing of the number.
const PLAIN: [&str; 32] = [
    "the", "is", "are", "was", "were", "has", "have", "been", "be", "to", "only", "just", "so", "far", "now", "today",
    "still", "and", "out", "with", "this", "time", "piece", "pieces", "el", "la", "los", "las", "solo", "sólo", "y",
    "pieza",
];

/// How many of so many came; nothing where any word of it is not understood. What is counted may be called as the
/// thing is: `names`.
pub fn so_many(words: &str, of: Decimal, names: &str) -> Option<SoMany> {
    let parts = parts(words, names)?;
    let has = |wanted: Part| parts.contains(&wanted);
    let whole = |count: Decimal| (count > Decimal::ZERO && count <= of).then_some(SoMany::Count(count));
    let numbers: Vec<(usize, Decimal)> = parts.iter().enumerate().filter_map(|(at, part)| number(at, *part)).collect();
    // The number of which it is must be the one that was approved.
    let is_said_of = |at: usize| at > 0 && parts.get(at - 1) == Some(&Part::Of);
    if numbers.iter().any(|(at, count)| is_said_of(*at) && *count != of) {
        return None;
    }
    let counts: Vec<(usize, Decimal)> = numbers.into_iter().filter(|(at, _)| !is_said_of(*at)).collect();
    match counts.as_slice() {
        [] if has(Part::Rest) && !has(Part::Missing) => Some(SoMany::TheRest),
        [] if has(Part::Place) && !has(Part::Missing) => whole(Decimal::ONE),
        [(_, count)] if has(Part::Place) && has(Part::Missing) => {
            (*count + Decimal::ONE == of).then(|| whole(*count))?
        }
        [(_, count)] if has(Part::Missing) && !has(Part::Rest) => whole(of - count),
        [(_, count)] => whole(*count),
        [(at, first), (_, second)] if has(Part::Missing) && first + second == of => {
            // What is missing is told right after its number, or else last.
            let after = parts.iter().skip(at + 1).find(|part| !matches!(part, Part::Plain | Part::Of));
            whole(if after == Some(&Part::Missing) { *second } else { *first })
        }
        _ => None,
    }
}

fn number(at: usize, part: Part) -> Option<(usize, Decimal)> {
    if let Part::Number(count) = part { Some((at, count)) } else { None }
}

/// The words of a sentence, each as what it does; nothing where one is none of these.
fn parts(words: &str, names: &str) -> Option<Vec<Part>> {
    let words = words.to_lowercase().replace('/', " / ");
    let names = names.to_lowercase();
    let trimmed = words.split_whitespace().map(|word| word.trim_matches([',', ';', ':', '.', '!', '(', ')', '"']));
    let trimmed: Vec<&str> = trimmed.filter(|word| !word.is_empty()).collect();
    let mut told = Vec::new();
    for (at, word) in trimmed.iter().enumerate() {
        let after = trimmed.get(at + 1).and_then(|word| in_words::number(word));
        let (before, last) = (told.last().copied(), trimmed.len() == at + 1);
        told.push(match *word {
            // `a pair` is two; `the other one` and `the last two` are as many as they say.
            "a" | "an" if after.is_some() => continue,
            "one" if before == Some(Part::Place) => continue,
            word if OF.contains(&word) && !last => Part::Of,
            word if CAME.contains(&word) => {
                if is_to_come(&told, &trimmed, at) {
                    Part::Missing
                } else {
                    Part::Came
                }
            }
            word if MISSING.contains(&word) => Part::Missing,
            word if REST.contains(&word) => Part::Rest,
            word if PLACES.contains(&word) => Part::Place,
            word if PLAIN.contains(&word) => Part::Plain,
            word if is_named(word, &names) => Part::Plain,
            word => Part::Number(count(word)?),
        });
    }
    // `the second of two`: the number behind `of` is not how many came.
    (!told.is_empty()).then_some(told)
}

/// Whether `come` is of what is still to.
fn is_to_come(told: &[Part], words: &[&str], at: usize) -> bool {
    told.last() == Some(&Part::Plain) && at.checked_sub(1).and_then(|before| words.get(before)) == Some(&"to")
}

fn count(word: &str) -> Option<Decimal> {
    word.parse::<Decimal>()
        .ok()
        .filter(|count| !count.is_sign_negative())
        .or_else(|| Some(in_words::number(word)?.into()))
}

/// Whether a word is one of the name's, or the same of several.
fn is_named(word: &str, names: &str) -> bool {
    let single = word.trim_end_matches('s');
    let mut named = names.split(|letter: char| !letter.is_alphanumeric()).filter(|name| !name.is_empty());
    count(word).is_none() && named.any(|name| name.trim_end_matches('s') == single)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(words: &str, of: u32) -> Option<SoMany> {
        so_many(words, of.into(), "Pulls pull pieces")
    }

    #[test]
    fn how_many_came_is_understood() {
        let rows = [
            ("1 of 6", 1),
            ("one of six", 1),
            ("4/6", 4),
            ("4 out of 6", 4),
            ("only 4 came", 4),
            ("4 pulls", 4),
            ("2 missing", 4),
            ("two are missing", 4),
            ("missing: 2", 4),
            ("4 of 6, 2 to follow", 4),
            ("4, rest later", 4),
            ("4 came, 2 to come", 4),
            ("2 short", 4),
            ("faltan 2", 4),
            ("4 de 6", 4),
            ("vier von 6", 4),
            ("the second", 1),
            ("the last two", 2),
            ("a pair", 2),
            ("2 missing, 4 came", 4),
            ("6 of 6", 6),
            ("five, the other is pending", 5),
        ];
        for (words, count) in rows {
            assert_eq!(of(words, 6), Some(SoMany::Count(count.into())), "{words}");
        }
        for words in ["the rest", "the remaining pulls", "rest of 6", "el resto"] {
            assert_eq!(of(words, 6), Some(SoMany::TheRest), "{words}");
        }
    }

    #[test]
    fn what_is_not_surely_a_number_is_none() {
        for words in [
            "",
            "x",
            "7",
            "1 of 5",
            "four black ones",
            "not 4",
            "4 too many",
            "none",
            "0",
            "-1",
            "4 and 3",
            "4 scratched",
            "the rest to follow",
            "4 of another make",
            "4 instead of 6",
        ] {
            assert_eq!(of(words, 6), None, "{words}");
        }
    }
}
