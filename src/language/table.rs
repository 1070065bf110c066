//! A language's file as a table: each key with its sentence in parts, and how the language counts and joins.

use std::collections::BTreeMap;
use std::fmt;

use crate::source::Span;
use crate::units::{Date, Money};

use super::list::Joins;
use super::plural::Rules;
use super::{Language, Say, say};

/// The hole for how many: by it a sentence takes its plural form.
pub const COUNT: &str = "n";

/// The group in which a language says how it counts, joins and writes days and amounts.
pub(super) const OF_ITSELF: &str = "language";

/// Before the letters of a country in which the language writes figures otherwise.
const ELSEWHERE: &str = "language.elsewhere.";

/// The group that findings are told by, each by the English pattern of its sentence.
pub(super) const FINDINGS: &str = "findings";

/// What is wrong with the file of a language.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LanguageError {
    /// The file: `words/es.yaml` inside the standard theme, or its path in the book.
    pub file: String,
    /// Where in it.
    pub at: At,
    /// What is wrong, and what is wanted.
    pub what: String,
}

/// A place in the file of a language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct At {
    /// The stretch of its text.
    pub span: Span,
    /// The line, from 1.
    pub line: u32,
    /// The column in characters, from 1.
    pub column: u32,
}

impl fmt::Display for LanguageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let At { line, column, .. } = self.at;
        write!(f, "`{}`, line {line}, column {column}: {}", self.file, self.what)
    }
}

impl std::error::Error for LanguageError {}

/// A part of a sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Part {
    /// Words.
    Words(String),
    /// A hole, by its name.
    Hole(String),
}

/// A sentence, or one for each plural form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Sentence {
    pub forms: Vec<(String, Vec<Part>)>,
    pub at: At,
}

/// What a file says.
#[derive(Clone, Debug)]
pub(super) struct Table {
    pub tag: String,
    pub file: String,
    pub sentences: BTreeMap<String, Sentence>,
    /// Where each group begins.
    pub groups: BTreeMap<String, At>,
    /// Where the file begins to say something.
    pub top: At,
    pub plural: Rules,
    pub joins: Option<Joins>,
    /// All that templates and scripts say.
    pub tree: serde_json::Value,
}

impl Table {
    /// A fault of the file.
    pub fn fault(&self, at: At, what: String) -> LanguageError {
        LanguageError { file: self.file.clone(), at, what }
    }

    /// Whether it writes figures in a country otherwise.
    pub fn differs_in(&self, country: &str) -> bool {
        self.tree.pointer(&format!("/language/elsewhere/{country}")).is_some()
    }

    /// The same, as it is in a country.
    pub fn in_country(&self, country: &str) -> Self {
        let mut there = self.clone();
        let own = format!("{ELSEWHERE}{country}.");
        let of_there = self.sentences.iter().filter_map(|(key, one)| Some((key.strip_prefix(&own)?, one)));
        let of_there: Vec<(String, Sentence)> =
            of_there.map(|(key, one)| (format!("{OF_ITSELF}.{key}"), one.clone())).collect();
        there.sentences.extend(of_there);
        let own = self.tree.pointer(&format!("/language/elsewhere/{country}")).cloned();
        if let (Some(own), Some(itself)) = (own, there.tree.get_mut(OF_ITSELF)) {
            lay_over(own, itself);
        }
        there
    }

    /// Takes from another table of the same language all that this one does not say.
    pub fn lay_over(&mut self, under: &Self) {
        let is_said = |key: &str, said: &BTreeMap<String, Sentence>| {
            let is_above = |above: &str| key.strip_prefix(above).is_some_and(|rest| rest.starts_with('.'));
            said.contains_key(key) || said.keys().any(|own| is_above(own))
        };
        let left: Vec<_> = under.sentences.iter().filter(|(key, _)| !is_said(key, &self.sentences)).collect();
        let at = |sentence: &Sentence| Sentence { forms: sentence.forms.clone(), at: self.top };
        let left: Vec<(String, Sentence)> = left.into_iter().map(|(key, one)| (key.clone(), at(one))).collect();
        self.sentences.extend(left);
        if self.plural == Rules::default() {
            self.plural = under.plural.clone();
        }
        if self.joins.is_none() {
            self.joins.clone_from(&under.joins);
        }
        let own = std::mem::replace(&mut self.tree, under.tree.clone());
        lay_over(own, &mut self.tree);
    }
}

/// Lays data over other data, group by group; what is no group on both sides takes the place of the other.
fn lay_over(own: serde_json::Value, under: &mut serde_json::Value) {
    match (own, under) {
        (serde_json::Value::Object(own), serde_json::Value::Object(under)) => {
            for (key, one) in own {
                lay_over(one, under.entry(key).or_insert(serde_json::Value::Null));
            }
        }
        (own, under) => *under = own,
    }
}

/// The words of a language. They are read once and kept as long as the program runs.
#[derive(Clone, Copy)]
pub struct Words(Option<&'static Table>);

impl Default for Words {
    fn default() -> Self {
        Language::default().words()
    }
}

impl PartialEq for Words {
    fn eq(&self, other: &Self) -> bool {
        self.tag() == other.tag()
    }
}

impl Eq for Words {}

impl fmt::Debug for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.tag())
    }
}

impl Words {
    /// No words at all: each key stands for itself.
    pub(super) const NONE: Self = Self(None);

    pub(super) fn keep(table: Table) -> Self {
        Self(Some(Box::leak(Box::new(table))))
    }

    /// The table that they stand in.
    pub(super) fn table(self) -> Option<&'static Table> {
        self.0
    }

    /// The language's tag.
    pub fn tag(self) -> &'static str {
        self.0.map_or("", |table| &table.tag)
    }

    /// Whether it is the language that the code is written in.
    pub fn is_first(self) -> bool {
        self.tag() == Language::default().tag()
    }

    /// All of them as data, for templates and scripts.
    pub fn tree(self) -> &'static serde_json::Value {
        self.0.map_or(&serde_json::Value::Null, |table| &table.tree)
    }

    /// Whether there is a sentence of this key.
    pub fn has(self, key: &str) -> bool {
        self.0.is_some_and(|table| table.sentences.contains_key(key))
    }

    /// Every key that there are words of.
    #[cfg(test)]
    pub fn keys(self) -> std::collections::BTreeSet<&'static str> {
        self.0.map(|table| table.sentences.keys().map(String::as_str).collect()).unwrap_or_default()
    }

    /// The parts of a key's sentence, in the plural form of a count; of a key that is not there, the key.
    pub fn parts(self, key: &str, count: Option<u64>) -> Vec<Part> {
        let of_key = || {
            let table = self.0?;
            let sentence = table.sentences.get(key)?;
            let form = count.map_or("other", |count| table.plural.form(count));
            let named = |name: &str| sentence.forms.iter().find(|(form, _)| form == name).map(|(_, parts)| parts);
            named(form).or_else(|| named("other")).cloned()
        };
        of_key().unwrap_or_else(|| vec![Part::Words(key.to_owned())])
    }

    /// A key's sentence with what stands in its holes; `say!` is the way to write it.
    pub fn fill(self, key: &str, values: &[(&str, &dyn Say)]) -> String {
        let count = values.iter().find(|(name, _)| *name == COUNT).and_then(|(_, value)| value.count());
        let part = |part: Part| match part {
            Part::Words(words) => words,
            Part::Hole(name) => {
                values.iter().find(|(known, _)| *known == name).map_or_else(String::new, |(_, value)| value.said(self))
            }
        };
        self.parts(key, count).into_iter().map(part).collect()
    }

    /// Several in a row: `a, b and c`.
    pub fn series<T: AsRef<str>>(self, parts: &[T]) -> String {
        let parts: Vec<String> = parts.iter().map(|part| part.as_ref().to_owned()).collect();
        let joints = self.joints(&parts);
        parts.iter().enumerate().fold(String::new(), |text, (at, part)| {
            let joint = at.checked_sub(1).and_then(|before| joints.get(before)).map_or("", String::as_str);
            text + joint + part
        })
    }

    /// The first of several in a row, and how many more there are: `a, b and 3 more`.
    pub fn series_of_most<T: AsRef<str>>(self, parts: &[T], most: usize) -> String {
        let named: Vec<&str> = parts.iter().take(most).map(AsRef::as_ref).collect();
        match parts.len().saturating_sub(most) {
            0 => self.series(&named),
            more => {
                let more = say!(self, "units.more", n = more);
                self.series(&named.into_iter().chain([more.as_str()]).collect::<Vec<_>>())
            }
        }
    }

    /// What stands before each of a row but the first.
    pub fn joints(self, parts: &[String]) -> Vec<String> {
        let joins = self.0.and_then(|table| table.joins.as_ref());
        joins.map_or_else(Vec::new, |joins| joins.joints(parts).into_iter().map(str::to_owned).collect())
    }

    /// A day: `16 Jan 2027`.
    pub fn day(self, day: Date) -> String {
        let month = say!(self, &format!("language.months.{}", day.month()));
        say!(self, "language.day", day = day.day().to_string(), month = month, year = day.year().to_string())
    }

    /// A day as a card shows it: its number in the month, and the month and year below it.
    pub fn day_apart(self, day: Date) -> (String, String) {
        let month = say!(self, &format!("language.months.{}", day.month()));
        (day.day().to_string(), say!(self, "language.month", month = month, year = day.year().to_string()))
    }

    /// A whole number of many digits as it is: `1200`.
    pub fn number(self, digits: &str) -> String {
        digits.to_owned()
    }

    /// A number with this language's decimal mark, from one with a point.
    pub fn decimal(self, number: &str) -> String {
        number.replace('.', &say!(self, "language.decimal"))
    }

    /// An amount in this language's form: `$3,180.00`, `3.180,00 €`.
    pub fn amount(self, amount: Money) -> String {
        let (decimal, group) = (say!(self, "language.decimal"), say!(self, "language.thousands"));
        let digits: String = amount
            .digits()
            .chars()
            .map(|letter| match letter {
                '.' => decimal.clone(),
                ',' => group.clone(),
                other => other.to_string(),
            })
            .collect();
        let told = say!(self, "language.amount", sign = amount.currency.mark(), amount = digits);
        format!("{}{}", if amount.is_negative() { "−" } else { "" }, told.trim_end())
    }
}
