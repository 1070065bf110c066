//! Holds a language to the first: the same keys, the same holes, and every plural form that it has itself.

use std::collections::BTreeSet;

use super::table::{At, COUNT, LanguageError, Part, Sentence, Table};

/// What a language says of itself is its own.
const OF_ITSELF: &str = "language.";

/// Findings are worded as far as they are: an English one stands marked as English.
const AS_FAR_AS: &str = "findings.";

/// Words that a theme adds for templates of its own: they are held to nothing.
const OWN: &str = "own.";

/// What is signed, what can hurt, and that a draft is one: no theme says it otherwise.
const FIXED: [&str; 10] = [
    "cautions.",
    "hazards.",
    "signs.statement",
    "sign_says.statement",
    "changes.statement.",
    "draft",
    "draft_paper",
    "on_paper.draft",
    "on_paper.draft_line",
    "issued.draft",
];

/// Looks whether the words of a theme leave as it is what no theme may change in a language of the program.
///
/// # Errors
/// The first such key that is worded otherwise, with its place.
pub fn changes(own: &Table, same: &Table) -> Result<(), LanguageError> {
    let is_fixed =
        |key: &str| FIXED.iter().any(|fixed| key == *fixed || fixed.ends_with('.') && key.starts_with(fixed));
    let other =
        |key: &str, sentence: &Sentence| same.sentences.get(key).is_some_and(|same| same.forms != sentence.forms);
    let found = own.sentences.iter().find(|(key, sentence)| is_fixed(key) && other(key, sentence));
    found.map_or(Ok(()), |(key, sentence)| {
        let what = format!("`{key}` is signed, or says what can hurt: a theme leaves it as it is; take the line out");
        Err(own.fault(sentence.at, what))
    })
}

/// Looks whether a language says all that the first says, and nothing else.
///
/// # Errors
/// The first key that is missing or unknown, or whose holes differ, with file and line.
pub fn against(words: &Table, first: &Table) -> Result<(), LanguageError> {
    let fault = |at: At, what: String| Err(words.fault(at, what));
    for (key, sentence) in &words.sentences {
        if let Some(pattern) = key.strip_prefix(AS_FAR_AS) {
            found(key, pattern, sentence).or_else(|what| fault(sentence.at, what))?;
        }
        if [OF_ITSELF, AS_FAR_AS, OWN].iter().any(|group| key.starts_with(group)) {
            continue;
        }
        let Some(same) = first.sentences.get(key) else {
            return fault(sentence.at, format!("`{key}` is a key of no page; `{}` has no such key", first.file));
        };
        if says(same) && !says(sentence) {
            return fault(sentence.at, format!("`{key}` says nothing"));
        }
        for (form, parts) in &sentence.forms {
            let (has, wants) = (holes(parts), all_holes(same));
            if let Some(hole) = has.difference(&wants).next() {
                return fault(sentence.at, format!("`{key}` has `{{{hole}}}`, which nothing fills"));
            }
            // A form for few may say the number in words, or not at all.
            let lacking = wants.difference(&has).find(|hole| **hole != COUNT);
            if let Some(hole) = lacking {
                return fault(sentence.at, format!("`{key}` lacks `{{{hole}}}` in the form `{form}`"));
            }
        }
        if sentence.forms.len() > 1 || same.forms.len() > 1 {
            let has = |wanted: &str| sentence.forms.iter().any(|(form, _)| form == wanted);
            if let Some(form) = words.plural.forms().find(|form| !has(form)) {
                return fault(sentence.at, format!("`{key}` lacks the plural form `{form}`"));
            }
        }
    }
    let wanted = first
        .sentences
        .keys()
        .filter(|key| !key.starts_with("language.plural.") && !key.starts_with("language.list.before"));
    let Some(key) = wanted.into_iter().find(|key| !words.sentences.contains_key(*key) && !key.starts_with(AS_FAR_AS))
    else {
        return Ok(());
    };
    let mut above = key.as_str();
    while let Some((group, _)) = above.rsplit_once('.') {
        if let Some(line) = words.groups.get(group) {
            return fault(*line, format!("`{key}` is missing"));
        }
        above = group;
    }
    fault(words.top, format!("`{key}` is missing"))
}

/// Whether each form of a sentence has words, or something that is filled in.
fn says(sentence: &Sentence) -> bool {
    let has = |part: &Part| match part {
        Part::Words(words) => words.chars().any(char::is_alphanumeric),
        Part::Hole(_) => true,
    };
    sentence.forms.iter().all(|(_, parts)| parts.iter().any(has))
}

/// Looks whether a finding's words say each value of its pattern, which is known by its name or its number from 1.
fn found(key: &str, pattern: &str, sentence: &Sentence) -> Result<(), String> {
    let names: Vec<&str> = pattern_holes(pattern).collect();
    for (form, parts) in &sentence.forms {
        let has = holes(parts);
        let is_of = |hole: &str, at: usize, name: &str| hole == name || hole.parse() == Ok(at + 1);
        let fills = |hole: &str| names.iter().enumerate().any(|(at, name)| is_of(hole, at, name));
        if let Some(hole) = has.iter().find(|hole| !fills(hole)) {
            return Err(format!("`{key}` has `{{{hole}}}`, which nothing fills"));
        }
        let said = |at: usize, name: &str| has.iter().any(|hole| is_of(hole, at, name));
        // A form for few may say the number in words, or not at all.
        let may_be_left = |form: &str| form != "other";
        let lacking = names.iter().enumerate().find(|(at, name)| !said(*at, name) && !may_be_left(form));
        if let Some((at, name)) = lacking {
            let hole = if name.is_empty() { (at + 1).to_string() } else { (*name).to_string() };
            return Err(format!("`{key}` lacks `{{{hole}}}`"));
        }
    }
    Ok(())
}

/// The names of the holes of a finding's pattern; of one that bears none it is empty.
pub(super) fn pattern_holes(pattern: &str) -> impl Iterator<Item = &str> {
    pattern.split('{').skip(1).filter_map(|rest| rest.split_once('}')).map(|(name, _)| name)
}

fn holes(parts: &[Part]) -> BTreeSet<&str> {
    parts.iter().filter_map(|part| if let Part::Hole(name) = part { Some(name.as_str()) } else { None }).collect()
}

fn all_holes(sentence: &Sentence) -> BTreeSet<&str> {
    sentence.forms.iter().flat_map(|(_, parts)| holes(parts)).collect()
}
