//! Sentences in pieces: words of ours, what somebody wrote, and values. The text is made last.

mod cut;
mod fault;
mod template;
mod value;

pub use fault::Fault;
pub(crate) use fault::shown;
use template::lay;
pub use template::{MayStand, Say, Told, Wrote, hole, holes, is_marked};
pub(crate) use template::{hole_values, phrase};
pub use value::Value;

use std::fmt;
use std::sync::OnceLock;

use super::System;
use cut::{MOST, MOST_QUOTED, short};

/// A piece of a sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Piece {
    /// Words of ours.
    Words(&'static str),
    /// A word of ours that was handed over as text.
    Word(String),
    /// What somebody wrote, or a name of theirs, that stands without marks.
    Wrote(String),
    /// A name, a key, or what somebody wrote: it stands between marks.
    Quoted(String),
    /// A value.
    Value(Value),
    /// Words for a book in feet and inches, and the same for a metric one.
    ByUnits(Box<[Phrase; 2]>),
    /// Words of ours with no holes, as they are written: what stands between backticks is quoted.
    Fixed(&'static str),
    /// A sentence of ours: its template, and one piece for each of its holes.
    Said(&'static str, Vec<Piece>),
    /// Several in a row, and how many more there are.
    Series(Vec<Piece>, usize),
    /// What is said in one go where one thing is asked for.
    Row(Vec<Piece>),
}

impl Piece {
    /// It as a book in these units says it.
    fn in_units(self, system: System) -> Self {
        let all = |pieces: Vec<Self>| pieces.into_iter().map(|piece| piece.in_units(system)).collect();
        match self {
            Self::Value(value) => Self::Value(value.in_units(system)),
            Self::ByUnits(both) => {
                let [imperial, metric] = *both;
                let (first, second) = system.in_order(imperial, metric);
                let mut pieces = first.pieces;
                pieces.extend(second.map_or_else(Vec::new, |second| Phrase::from(" or ").then(second).pieces));
                Self::Row(pieces)
            }
            Self::Said(template, filled) => Self::Said(template, all(filled)),
            Self::Series(parts, more) => Self::Series(all(parts), more),
            Self::Row(pieces) => Self::Row(all(pieces)),
            words => words,
        }
    }
}

/// A sentence, or a part of one.
#[derive(Clone, Debug, Default)]
pub struct Phrase {
    /// The option that it is said of alone, where another can still be chosen: by its id.
    of_option: Option<String>,
    pieces: Vec<Piece>,
    /// Its text, once it was asked for.
    text: OnceLock<String>,
}

/// Two sentences are one when they are made of the same words and values.
impl PartialEq for Phrase {
    fn eq(&self, other: &Self) -> bool {
        (&self.of_option, &self.pieces) == (&other.of_option, &other.pieces)
    }
}

impl Eq for Phrase {}

impl Phrase {
    /// These pieces, one after the other.
    pub fn of(pieces: Vec<Piece>) -> Self {
        Self { pieces, ..Self::default() }
    }

    /// A name between marks.
    pub fn name(name: &str) -> Self {
        Self::of(vec![quoted(name)])
    }

    /// What somebody wrote, whole, and with no marks around it.
    pub fn plain(text: &str) -> Self {
        Self::said(&Wrote(text))
    }

    /// Said of one option alone, of which another can be chosen.
    #[must_use]
    pub fn of_option(mut self, id: &str) -> Self {
        self.of_option = Some(short(id, MOST_QUOTED));
        self.text = OnceLock::new();
        self
    }

    /// The same, said of every option.
    #[must_use]
    pub fn of_each_option(self) -> Self {
        Self::of(self.pieces)
    }

    /// What is said of feet and inches, and of metric units: what is of the book's own comes first, and what is not
    /// shown in it not at all.
    pub fn by_units(imperial: impl Into<Self>, metric: impl Into<Self>) -> Self {
        Self::of(vec![Piece::ByUnits(Box::new([imperial.into(), metric.into()]))])
    }

    /// It as a book in these units says it: every measure in them, and of two ways to say it the book's first.
    #[must_use]
    pub fn in_units(self, system: System) -> Self {
        let pieces = self.pieces.into_iter().map(|piece| piece.in_units(system)).collect();
        Self { of_option: self.of_option, ..Self::of(pieces) }
    }

    /// Its pieces as they were put together, without the option that it is said of.
    pub fn parts(&self) -> &[Piece] {
        &self.pieces
    }

    /// Its words, names and values in the order in which they are read, without the option that it is said of.
    pub fn pieces(&self) -> Vec<Piece> {
        let mut flat = Vec::with_capacity(2 * self.pieces.len() + 1);
        lay(&self.pieces, &mut flat);
        flat
    }

    /// The values in it, in the order in which they stand.
    pub fn values(&self) -> impl Iterator<Item = Value> {
        self.pieces().into_iter().filter_map(|piece| if let Piece::Value(value) = piece { Some(value) } else { None })
    }

    /// Whether nothing is said.
    pub fn is_empty(&self) -> bool {
        self.pieces.is_empty()
    }

    /// Its text, with what is quoted between backticks.
    pub fn text(&self) -> &str {
        self.text.get_or_init(|| short(&self.marked(["`", "`"]), MOST))
    }

    /// Its text with other marks around what is quoted.
    pub fn marked(&self, [open, close]: [&str; 2]) -> String {
        let option = self.of_option.as_ref().map(|id| format!("option {open}{id}{close}: "));
        option.unwrap_or_default() + &self.bare([open, close])
    }

    /// Its text without the option that it is said of.
    pub fn bare(&self, marks: [&str; 2]) -> String {
        self.told(marks, Value::to_string)
    }

    /// Its text as pages print it, with other marks around what is quoted and primes at its lengths.
    pub fn printed(&self, marks: [&str; 2]) -> String {
        let [open, close] = marks;
        let option = self.of_option.as_ref().map(|id| format!("option {open}{id}{close}: "));
        option.unwrap_or_default() + &self.told(marks, Value::printed)
    }

    /// As [`Phrase::printed`], without the option that it is said of.
    pub fn printed_bare(&self, marks: [&str; 2]) -> String {
        self.told(marks, Value::printed)
    }

    fn told(&self, [open, close]: [&str; 2], value: fn(&Value) -> String) -> String {
        let piece = |piece: Piece| match piece {
            Piece::Quoted(name) => format!("{open}{name}{close}"),
            Piece::Value(of) => value(&of),
            Piece::ByUnits(both) => both.each_ref().map(|one| one.told([open, close], value)).join(" or "),
            words => run(words).1,
        };
        self.pieces().into_iter().map(piece).collect()
    }

    /// Its text in runs, each with whether it is quoted, as pages show it.
    pub fn runs(&self) -> Vec<(bool, String)> {
        let option = self
            .of_option
            .as_ref()
            .map(|id| [(false, "option ".to_string()), (true, id.clone()), (false, ": ".to_string())]);
        option.into_iter().flatten().chain(self.pieces().into_iter().map(run)).collect()
    }

    /// This with another after it.
    #[must_use]
    pub fn then(mut self, other: impl Into<Self>) -> Self {
        self.pieces.extend(other.into().pieces);
        self.text = OnceLock::new();
        self
    }

    /// What can be said, alone.
    pub fn said(part: &impl Told) -> Self {
        let mut pieces = Vec::new();
        part.add_to(&mut pieces);
        Self::of(pieces)
    }

    /// Several, with the same words between each two.
    pub fn joined<T: Told>(parts: impl IntoIterator<Item = T>, between: &'static str) -> Self {
        let mut pieces = Vec::new();
        for (at, part) in parts.into_iter().enumerate() {
            if at > 0 {
                pieces.push(Piece::Words(between));
            }
            part.add_to(&mut pieces);
        }
        Self::of(pieces)
    }

    /// The first of several in a row, and how many more: `a, b and 3 more`.
    pub fn series_of_most<T: Told>(parts: impl IntoIterator<Item = T>, most: usize) -> Self {
        let mut parts = parts.into_iter();
        let mut first = Vec::new();
        parts.by_ref().take(most).for_each(|part| one(&part, &mut first));
        match (first.as_slice(), parts.count()) {
            ([], 0) => Self::default(),
            (_, more) => Self::of(vec![Piece::Series(first, more)]),
        }
    }

    /// Several in a row: `a`, `a and b`, `a, b and c`.
    pub fn series<T: Told>(parts: impl IntoIterator<Item = T>) -> Self {
        Self::series_of_most(parts, usize::MAX)
    }
}

/// A flat piece as a run of text, with whether it is quoted.
fn run(piece: Piece) -> (bool, String) {
    match piece {
        Piece::Quoted(name) => (true, name),
        Piece::Value(value) => (false, value.to_string()),
        Piece::ByUnits(both) => (false, both.each_ref().map(|one| one.bare(["", ""])).join(" or ")),
        Piece::Words(words) => (false, words.to_owned()),
        Piece::Word(text) | Piece::Wrote(text) => (false, text),
        // Laid out already.
        Piece::Fixed(_) | Piece::Said(..) | Piece::Series(..) | Piece::Row(_) => (false, String::new()),
    }
}

/// Adds what stands in one hole as one piece.
fn one(part: &(impl Say + ?Sized), pieces: &mut Vec<Piece>) {
    let before = pieces.len();
    part.add_to(pieces);
    if pieces.len() != before + 1 {
        let row = pieces.split_off(before);
        pieces.push(Piece::Row(row));
    }
}

/// What somebody wrote, cut where it is long.
fn quoted(text: &str) -> Piece {
    Piece::Quoted(short(text, MOST_QUOTED))
}

impl fmt::Display for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.text())
    }
}

impl From<&'static str> for Phrase {
    fn from(words: &'static str) -> Self {
        Self::of(vec![Piece::Fixed(words)])
    }
}

impl From<Value> for Phrase {
    fn from(value: Value) -> Self {
        Self::of(vec![Piece::Value(value)])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Length, System};

    #[test]
    fn a_sentence_is_made_of_words_names_and_values_and_its_text_is_made_last() {
        let is = Value::Length(Length::from_inches(30), System::Imperial);
        let said = phrase!("the hole for `{name}` is {is} across", "Sink", is);
        assert_eq!(said.text(), "the hole for `Sink` is 30\" (762 mm) across");
        assert_eq!(said.marked(["“", "”"]), "the hole for “Sink” is 30\" (762 mm) across");
        assert_eq!(said.values().collect::<Vec<_>>(), [is]);
        let metric = Value::Length(Length::from_inches(30), System::Metric);
        assert_ne!(said, phrase!("the hole for `{}` is {} across", "Sink", metric));
        assert_eq!(said.of_option("wide").text(), "option `wide`: the hole for `Sink` is 30\" (762 mm) across");
    }

    #[test]
    fn what_somebody_wrote_is_cut_and_keeps_its_own_marks() {
        let long = "é".repeat(1_000_000);
        let told = phrase!("`{}` is not one of `a`, `{}`", long, "b`c");
        assert!(told.text().starts_with("`éé") && told.text().len() < 700, "{told}");
        assert!(told.text().ends_with("…` is not one of `a`, `b`c`"));
        assert_eq!(told.pieces().last(), Some(&Piece::Quoted("b`c".into())));
        assert_eq!(Phrase::plain(&"a".repeat(5_000)).text().chars().count(), MOST);
    }

    #[test]
    fn names_are_joined_as_phrases() {
        let names = || ["a", "b", "c"].map(Phrase::name);
        assert_eq!(Phrase::series(names()).text(), "`a`, `b` and `c`");
        assert_eq!(Phrase::series_of_most(names(), 2).text(), "`a`, `b` and 1 more");
        assert_eq!(Phrase::joined(names(), "; ").text(), "`a`; `b`; `c`");
        assert_eq!(phrase!("{}: {{x}}", Phrase::series(names())).text(), "`a`, `b` and `c`: {x}");
    }

    /// NIST SP 811, appendix B.8: a pound is 0.453 592 37 kg.
    #[test]
    fn a_sentence_takes_the_units_of_the_book_that_it_is_said_of() {
        let (inch, pounds) = (Length::from_inches(10), crate::units::Weight::from_pounds(10));
        let said = phrase!("`a` is {} and {}; write {}", inch, pounds, Phrase::by_units("`…\"`", "`… mm`"));
        assert_eq!(said.text(), "`a` is 10\" and 10 lb (≈ 4.5 kg); write `…\"` or `… mm`");
        let told = |system| said.clone().in_units(system).text().to_string();
        assert_eq!(told(System::Imperial), "`a` is 10\" and 10 lb (≈ 4.5 kg); write `…\"` or `… mm`");
        assert_eq!(told(System::Metric), "`a` is 254 mm and ≈ 4.5 kg (10 lb); write `… mm` or `…\"`");
        assert_eq!(told(System::MetricOnly), "`a` is 254 mm and ≈ 4.5 kg; write `… mm`");
        assert_eq!(told(System::ImperialOnly), "`a` is 10\" and 10 lb; write `…\"`");
    }
}
