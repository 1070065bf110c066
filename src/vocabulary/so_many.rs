//! How many of several came, in the words of whoever received them: `1 of 2`, `one is missing`, `the second`, `the rest`.

use rust_decimal::Decimal;

use crate::units::in_words;

/// How many came of several.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SoMany {
    /// So many of them.
    Count(Decimal),
    /// All but so many of the whole.
    AllBut(Decimal),
    /// All that had not come before.
    TheRest,
}

/// What a word does in such a sentence.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Part {
    /// A comma, or what else parts what is told of one number from what is told of another.
    Break,
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

/// Some of them, and what is told of these.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Told {
    /// How many these are; nothing of whatever is left.
    count: Option<Decimal>,
    /// Whether they are called by what was before: `the remaining 4`, `the other`.
    is_led: bool,
    /// Whether they are missing; nothing where neither is told.
    missing: Option<bool>,
}

/// How many of so many came; nothing where any word of it is not understood. What is counted may be called as the
/// thing is: `names`.
pub fn so_many(words: &str, of: Decimal, names: &str) -> Option<SoMany> {
    let parts = parts(words, names)?;
    // The number of which it is must be the one that was approved.
    let mut numbers = parts.iter().enumerate().filter_map(|(at, part)| number(at, *part));
    if numbers.any(|(at, count)| is_said_of(&parts, at) && count != of) {
        return None;
    }
    let is_some = |count: Decimal| count > Decimal::ZERO && count <= of;
    let whole = |count: Decimal| is_some(count).then_some(SoMany::Count(count));
    let all_but = |count: Decimal| (is_some(count) && count != of).then_some(SoMany::AllBut(count));
    match told(&parts)?.as_slice() {
        [Told { count: None, missing, .. }] => (*missing != Some(true)).then_some(SoMany::TheRest),
        // What is left of what came before is not so many of the whole.
        [Told { count: Some(_), is_led: true, missing: Some(true) }] => None,
        [Told { count: Some(count), missing: Some(true), .. }] => all_but(*count),
        [Told { count: Some(count), .. }] => whole(*count),
        [Told { count: Some(count), missing, .. }, Told { count: None, missing: Some(true), .. }] => {
            whole(*count).filter(|_| *missing != Some(true))
        }
        [Told { count: None, missing: Some(true), .. }, Told { count: Some(count), missing: Some(false), .. }] => {
            whole(*count)
        }
        [Told { count: Some(count), missing: Some(true), .. }, Told { count: None, missing: Some(false), .. }] => {
            all_but(*count)
        }
        [Told { count: Some(first), missing, .. }, Told { count: Some(second), missing: other, .. }]
            if first.checked_add(*second) == Some(of) =>
        {
            match (missing == &Some(true), other == &Some(true)) {
                (true, false) => whole(*second),
                (false, true) => whole(*first),
                (true, true) | (false, false) => None,
            }
        }
        _ => None,
    }
}

fn is_said_of(parts: &[Part], at: usize) -> bool {
    at.checked_sub(1).and_then(|before| parts.get(before)) == Some(&Part::Of)
}

/// What is told of each number, of whatever is left and of one by its place; nothing where it may be told of another.
fn told(parts: &[Part]) -> Option<Vec<Told>> {
    let mut all: Vec<Told> = Vec::new();
    // What is told before the first number.
    let mut waiting = None;
    for clause in clauses(parts) {
        let subjects = clause.iter().filter_map(|one| if let Saying::Of(told) = one { Some(*told) } else { None });
        let subjects: Vec<Told> = subjects.collect();
        let verbs: Vec<bool> =
            clause.iter().filter_map(|one| if let Saying::Missing(is) = one { Some(*is) } else { None }).collect();
        // Of two beside each other, with both verbs beside each other, neither has its own.
        let is_mixed = || {
            matches!(
                clause.as_slice(),
                [Saying::Of(_), Saying::Missing(_), ..] | [Saying::Missing(_), Saying::Of(_), ..]
            )
        };
        match (subjects.as_slice(), verbs.as_slice()) {
            ([], []) => {}
            ([], [missing]) => match all.last_mut() {
                Some(before) => before.missing = Some(agreed(before.missing, *missing)?),
                None => waiting = Some(agreed(waiting, *missing)?),
            },
            ([one], []) => all.push(Told { missing: waiting.take(), ..*one }),
            ([one], [missing]) => {
                let missing = waiting.take().map_or(Some(*missing), |before| agreed(Some(before), *missing))?;
                all.push(Told { missing: Some(missing), ..*one });
            }
            ([one, two], [first, second]) if is_mixed() && waiting.is_none() => {
                all.push(Told { missing: Some(*first), ..*one });
                all.push(Told { missing: Some(*second), ..*two });
            }
            _ => return None,
        }
    }
    Some(all)
}

/// What is told once more, if it is the same.
fn agreed(before: Option<bool>, now: bool) -> Option<bool> {
    before.is_none_or(|before| before == now).then_some(now)
}

/// What counts in a clause: some of them, or whether these are missing.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Saying {
    Of(Told),
    Missing(bool),
}

/// The clauses of a sentence, without what changes nothing.
fn clauses(parts: &[Part]) -> Vec<Vec<Saying>> {
    let mut clauses = vec![Vec::new()];
    // Where `the remaining` or `the other` stands, whose number may come right after it.
    let mut led: Option<(usize, usize)> = None;
    for (at, part) in parts.iter().enumerate() {
        let last = clauses.len() - 1;
        let leader = led.and_then(|(clause, place)| clauses.get_mut(clause)?.get_mut(place));
        let new = match (*part, leader) {
            (Part::Plain | Part::Of, _) => continue,
            (Part::Number(_), _) if is_said_of(parts, at) => continue,
            (Part::Break, _) => {
                clauses.push(Vec::new());
                continue;
            }
            (Part::Number(count), Some(Saying::Of(told))) => {
                told.count = Some(count);
                led = None;
                continue;
            }
            (Part::Rest, Some(Saying::Of(told))) => {
                told.count = None;
                continue;
            }
            (Part::Place, Some(_)) => continue,
            (Part::Number(count), _) => Saying::Of(Told { count: Some(count), is_led: false, missing: None }),
            (Part::Place, None) => Saying::Of(Told { count: Some(Decimal::ONE), is_led: true, missing: None }),
            (Part::Rest, _) => Saying::Of(Told { count: None, is_led: true, missing: None }),
            (Part::Came, _) => Saying::Missing(false),
            (Part::Missing, _) => Saying::Missing(true),
        };
        let Some(clause) = clauses.last_mut() else { continue };
        led = matches!(part, Part::Place | Part::Rest).then_some((last, clause.len()));
        // `still missing, to follow`: told once.
        if clause.last() != Some(&new) || matches!(new, Saying::Of(_)) {
            clause.push(new);
        }
    }
    clauses
}

fn number(at: usize, part: Part) -> Option<(usize, Decimal)> {
    if let Part::Number(count) = part { Some((at, count)) } else { None }
}

/// The words of a sentence, each as what it does; nothing where one is none of these.
fn parts(words: &str, names: &str) -> Option<Vec<Part>> {
    let words = words.to_lowercase().replace('/', " / ");
    let names = names.to_lowercase();
    let trimmed = spoken(&words);
    let mut told = Vec::new();
    for (at, word) in trimmed.iter().enumerate() {
        let after = trimmed.get(at + 1).and_then(|word| in_words::number(word));
        let (before, last) = (told.last().copied(), trimmed.len() == at + 1);
        told.push(match *word {
            BREAK => Part::Break,
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

const BREAK: &str = ",";

/// The words of a sentence without their signs, and a break wherever a sign parts them; none at its end.
fn spoken(words: &str) -> Vec<&str> {
    let mut spoken = Vec::new();
    for token in words.split_whitespace() {
        let word = token.trim_matches([',', ';', ':', '.', '!', '(', ')', '"']);
        let opens = token.starts_with('(').then_some(BREAK);
        let closes = token.ends_with([',', ';', '.', '!', ')']).then_some(BREAK);
        spoken.extend(opens.into_iter().chain(Some(word).filter(|word| !word.is_empty())).chain(closes));
    }
    while spoken.last() == Some(&BREAK) {
        spoken.pop();
    }
    spoken
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
mod tests;
