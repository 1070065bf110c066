//! What a finding is about, known by where it is written: names may stand twice in a book.

use crate::source::{Span, Spanned};

/// Which thing of the book: the place where its name is written, which nothing else shares.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(Span);

impl Id {
    /// The thing of that name.
    pub fn of(name: &Spanned<String>) -> Self {
        Self(name.span)
    }
}

/// What a finding is about.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Subject {
    /// The room as a whole, or the book where no room is said.
    #[default]
    Whole,
    /// A selection, whichever of its options is taken.
    Selection(Spanned<String>),
    /// One option of a selection alone, by its id.
    Option(Spanned<String>, String),
    /// An opening.
    Opening(Spanned<String>),
    /// Something else that the book names: a run, a counter, a window, and whatever is read where a fault was met.
    Thing(Spanned<String>),
    /// A part of a run or of the plan, in words: no waiver can stand at it.
    Part(String),
}

impl Subject {
    /// Its name in the book, for people: two things may have one name.
    pub fn name(&self) -> Option<&str> {
        match self {
            Self::Whole => None,
            Self::Selection(name) | Self::Option(name, _) | Self::Opening(name) | Self::Thing(name) => {
                Some(&name.value)
            }
            Self::Part(words) => Some(words),
        }
    }

    /// Which thing it is; none for what has no name of its own.
    pub fn id(&self) -> Option<Id> {
        match self {
            Self::Selection(name) | Self::Option(name, _) | Self::Opening(name) | Self::Thing(name) => {
                Some(Id::of(name))
            }
            Self::Whole | Self::Part(_) => None,
        }
    }

    /// The id of the option that it is about alone.
    pub fn option(&self) -> Option<&str> {
        match self {
            Self::Option(_, id) => Some(id),
            _ => None,
        }
    }

    /// The same selection, whichever of its options is taken.
    #[must_use]
    pub fn of_each_option(self) -> Self {
        match self {
            Self::Option(name, _) => Self::Selection(name),
            other => other,
        }
    }
}
