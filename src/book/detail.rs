//! Facts that only some kinds have, by the keys that they stand under.

use serde_json::{Value, json};

use crate::source::{Span, Spanned};
use crate::units::{Length, LengthRange, Sides};
use crate::vocabulary::{Gathers, Shown, Words};

/// A fact of the kind's own, as the book words it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Detail {
    /// Its key in the vocabulary.
    pub key: &'static str,
    /// What is written.
    pub value: DetailValue,
    /// Where.
    pub span: Span,
}

/// What a fact holds: words, or lengths that pages word in the book's own units.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DetailValue {
    /// Words or a number.
    Words(String),
    /// A length.
    Length(Length),
    /// A range of lengths.
    Range(LengthRange),
    /// Two or three lengths.
    Sides(Sides),
}

/// A value that can be a fact of the kind's own.
trait AsDetail {
    fn value(self) -> DetailValue;
}

impl AsDetail for String {
    fn value(self) -> DetailValue {
        DetailValue::Words(self)
    }
}

impl AsDetail for u32 {
    fn value(self) -> DetailValue {
        DetailValue::Words(self.to_string())
    }
}

impl<T: Words> AsDetail for T {
    fn value(self) -> DetailValue {
        DetailValue::Words(self.word().to_string())
    }
}

impl AsDetail for Length {
    fn value(self) -> DetailValue {
        DetailValue::Length(self)
    }
}

impl AsDetail for LengthRange {
    fn value(self) -> DetailValue {
        DetailValue::Range(self)
    }
}

impl AsDetail for Sides {
    fn value(self) -> DetailValue {
        DetailValue::Sides(self)
    }
}

impl<T: AsDetail> Gathers<T> for Vec<Detail> {
    fn gather(&mut self, key: &'static str, value: Spanned<T>) {
        self.push(Detail { key, value: value.value.value(), span: value.span });
    }
}

/// An object of them, each value telling what it is.
impl Shown for Vec<Detail> {
    fn shown(&self) -> Value {
        Value::Object(self.iter().map(|detail| (detail.key.to_string(), detail.value.shown())).collect())
    }
}

impl Shown for DetailValue {
    fn shown(&self) -> Value {
        match self {
            Self::Words(words) => words.shown(),
            Self::Length(length) => json!({"length": length.shown()}),
            Self::Range(range) => range.shown(),
            Self::Sides(sides) => json!({"sides": sides.sides().iter().map(Shown::shown).collect::<Vec<_>>()}),
        }
    }
}
