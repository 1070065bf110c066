//! A finding's sentence in the language of its reader, by the pattern that it was made from.

use crate::units::{Length, LengthRange, Phrase, Piece, Value};

use super::check::pattern_holes;
use super::table::FINDINGS;
use super::{Part, Say as _, Words, say};

impl Words {
    /// A finding's phrase in this language, without marks around what is quoted.
    ///
    /// # Errors
    /// The first pattern that the language has no words for.
    pub fn phrase(self, phrase: &Phrase) -> Result<String, String> {
        if self.is_first() { Ok(phrase.printed_bare(["", ""])) } else { row(self, phrase.parts()) }
    }
}

impl Words {
    /// An English text without values in this language, where that has words for it.
    pub fn bare(self, english: &str) -> Option<String> {
        pattern(self, english, &[]).ok()
    }
}

fn row(words: Words, pieces: &[Piece]) -> Result<String, String> {
    pieces.iter().map(|piece| one(words, piece)).collect()
}

fn one(words: Words, piece: &Piece) -> Result<String, String> {
    match piece {
        Piece::Quoted(text) | Piece::Wrote(text) => Ok(text.clone()),
        Piece::Value(value) => Ok(said(words, value)),
        Piece::Words(text) | Piece::Fixed(text) => pattern(words, text, &[]),
        Piece::Word(text) => pattern(words, text, &[]),
        Piece::Said(template, filled) => pattern(words, template, filled),
        Piece::Row(pieces) => row(words, pieces),
        Piece::ByUnits(both) => {
            let [one, other] = both.each_ref().map(|one| row(words, one.parts()));
            Ok(one? + &pattern(words, " or ", &[])? + &other?)
        }
        Piece::Series(parts, more) => {
            let mut told = parts.iter().map(|part| one(words, part)).collect::<Result<Vec<_>, _>>()?;
            let shown = told.len();
            // What is left out is counted, not named.
            told.extend(std::iter::repeat_n(String::new(), *more));
            Ok(words.series_of_most(&told, shown))
        }
    }
}

/// A pattern's sentence with what stands in its holes, each known by its name or by its number from 1.
fn pattern(words: Words, template: &str, filled: &[Piece]) -> Result<String, String> {
    if !template.chars().any(char::is_alphabetic) && filled.is_empty() {
        return Ok(template.to_owned());
    }
    let key = format!("{FINDINGS}.{template}");
    if !words.has(&key) {
        return Err(template.to_owned());
    }
    let count = filled.iter().find_map(|piece| match piece {
        Piece::Value(Value::Count(count)) => u64::try_from(*count).ok(),
        _ => None,
    });
    let names: Vec<&str> = pattern_holes(template).collect();
    let part = |part: Part| match part {
        Part::Words(text) => Ok(text),
        Part::Hole(hole) => {
            let number = hole.parse::<usize>().ok().and_then(|number| number.checked_sub(1));
            let at = number.or_else(|| names.iter().position(|name| *name == hole));
            at.and_then(|at| filled.get(at)).map_or(Ok(String::new()), |piece| one(words, piece))
        }
    };
    words.parts(&key, count).into_iter().map(part).collect()
}

/// A value in a language.
fn said(words: Words, value: &Value) -> String {
    match value {
        Value::Date(day) => words.day(*day),
        Value::Money(amount) => words.amount(*amount),
        Value::Percent(percent) => percent.said(words),
        Value::Number(_) | Value::Figure(_) => words.decimal(&value.printed()),
        Value::Range(range, system) => ends(words, *range, |end| Value::Length(end, *system)),
        Value::WrittenRange(range, system) => ends(words, *range, |end| Value::Written(end, *system)),
        Value::Length(..)
        | Value::OfRoom(..)
        | Value::Written(..)
        | Value::Quantity(_)
        | Value::Weight(..)
        | Value::Area(..) => words.decimal(&value.printed()),
        Value::Count(_) => value.printed(),
    }
}

fn ends(words: Words, range: LengthRange, end: impl Fn(Length) -> Value) -> String {
    let end = |length| said(words, &end(length));
    match (range.least, range.most) {
        (Some(least), Some(most)) if least == most => end(least),
        (Some(least), Some(most)) => say!(words, "units.range", least = end(least), most = end(most)),
        (Some(least), None) => say!(words, "units.at_least", length = end(least)),
        (None, Some(most)) => say!(words, "units.at_most", length = end(most)),
        (None, None) => say!(words, "units.any"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::language::Language;
    use crate::language::learnt::{first, learn};
    use crate::units::{System, phrase};

    /// The first language's file with words for some findings.
    fn with(tag: &'static str, findings: &str) -> Result<Words, String> {
        let text = format!("{}\nfindings:\n{findings}", first());
        learn(tag, &text).map(|language| language.words()).map_err(|error| error.what)
    }

    #[test]
    fn a_finding_is_told_by_its_pattern_with_its_values_where_the_language_wants_them() {
        let words = with(
            "qf",
            "  \"`{}` is {} {word} than `{other}`\": \"{other} gegen {1}: {word} um {2}\"\n  wider: breiter\n",
        )
        .unwrap();
        let by = Value::Length(Length::from_inches(1), System::Imperial);
        let said = phrase!("`{}` is {} {word} than `{other}`", "Hob", by, Phrase::from("wider"), "Top");
        assert_eq!(words.phrase(&said).unwrap(), "Top gegen Hob: breiter um 1″ (25.4 mm)");
        assert_eq!(Words::default().phrase(&said).unwrap(), "Hob is 1″ (25.4 mm) wider than Top");
        let unknown = phrase!("`{}` is {} {word} than `{other}`", "Hob", by, Phrase::from("taller"), "Top");
        assert_eq!(words.phrase(&unknown).unwrap_err(), "taller");
    }

    #[test]
    fn a_pattern_takes_the_form_of_its_count_and_its_rows_are_joined_as_the_language_does() {
        let words = with("qg", "  \"{} holes stay\": {one: \"{1} Loch bleibt\", other: \"{1} bleiben\"}\n").unwrap();
        let stay = |count: usize| words.phrase(&phrase!("{} holes stay", count)).unwrap();
        assert_eq!((stay(1), stay(2)), ("1 Loch bleibt".into(), "2 bleiben".into()));
        let spanish = Language::named("es").unwrap().words();
        let row = |names: &[&str], most| {
            spanish.phrase(&Phrase::series_of_most(names.iter().map(|name| Phrase::name(name)), most)).unwrap()
        };
        assert_eq!(row(&["agua", "hielo"], 9), "agua y hielo");
        assert_eq!(row(&["a", "b", "c", "d"], 2), "a, b y 2 más");
    }

    #[test]
    fn words_that_lose_a_value_are_refused() {
        let wrong = |findings: &str| with("qh", findings).unwrap_err();
        assert_eq!(wrong("  \"{} is {by} off\": \"um {by}\"\n"), "`findings.{} is {by} off` lacks `{1}`");
        assert_eq!(wrong("  \"{} is off\": \"{1} um {by}\"\n"), "`findings.{} is off` has `{by}`, which nothing fills");
        assert_eq!(wrong("  \"{} is off\": \"{2}{1}\"\n"), "`findings.{} is off` has `{2}`, which nothing fills");
    }
}
