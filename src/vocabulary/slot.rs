//! A field that may be left out, or be written wrongly.

use crate::source::{Span, Spanned};

/// What stands in a field. A faulty field is not an absent one: one fault gives one finding.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub enum Slot<T> {
    /// Nothing is written.
    #[default]
    Absent,
    /// Something is written that could not be read; reading has said so.
    Invalid,
    /// The value, and where it is written.
    Given(Spanned<T>),
}

impl<T> Slot<T> {
    /// The value, if it could be read.
    pub fn get(&self) -> Option<&T> {
        match self {
            Self::Given(value) => Some(&value.value),
            _ => None,
        }
    }

    /// The same to be changed.
    pub fn get_mut(&mut self) -> Option<&mut T> {
        match self {
            Self::Given(value) => Some(&mut value.value),
            _ => None,
        }
    }

    /// The value itself, if it could be read.
    pub fn get_owned(self) -> Option<T> {
        match self {
            Self::Given(value) => Some(value.value),
            _ => None,
        }
    }

    /// The value with its place.
    pub fn spanned(&self) -> Option<&Spanned<T>> {
        match self {
            Self::Given(value) => Some(value),
            _ => None,
        }
    }

    /// Where the value is written.
    pub fn span(&self) -> Option<Span> {
        self.spanned().map(|value| value.span)
    }

    /// Whether nothing is written.
    pub fn is_absent(&self) -> bool {
        matches!(self, Self::Absent)
    }

    /// Whether something is written that could not be read.
    pub fn is_faulty(&self) -> bool {
        matches!(self, Self::Invalid)
    }

    /// The same place, another value; `None` makes it faulty.
    pub fn and_then<U>(self, change: impl FnOnce(Spanned<T>) -> Option<U>) -> Slot<U> {
        match self {
            Self::Absent => Slot::Absent,
            Self::Invalid => Slot::Invalid,
            Self::Given(value) => {
                let span = value.span;
                change(value).map_or(Slot::Invalid, |value| Slot::Given(Spanned::new(value, span)))
            }
        }
    }
}

impl Slot<String> {
    /// The words, or an empty text.
    pub fn text(&self) -> &str {
        self.get().map_or("", String::as_str)
    }
}
