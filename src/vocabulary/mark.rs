//! Which fields are in the mark of an item, and how their values stand in it.

use serde_json::{Map, Value, json};

use crate::source::Spanned;
use crate::units::{Length, LengthRange, Money, Quantity};

use super::{Kind, Slot, Words};

/// Whether a field is in the mark of an item: the digest of all that the client is shown of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// It is no field of what a client is shown and signs.
    OfNoItem,
    /// It may change and leave an approval standing.
    Out,
    /// Its value is in the mark, under that key.
    In(&'static str),
    /// Its value is in the mark, in the object under that key.
    Within(&'static str),
    /// It, or what follows from it, is in the mark under that key; and what that is.
    Told(&'static str, &'static str),
}

/// A record of which fields are in the mark.
pub trait Marked {
    /// The fields that are in the mark with their own values.
    fn marked(&self) -> Map<String, Value>;
}

/// A value as it stands in a mark: objects, lists, texts, `true`, `false` and `null`.
pub trait Shown {
    /// The value.
    fn shown(&self) -> Value;
}

impl<T: Shown> Shown for Slot<T> {
    fn shown(&self) -> Value {
        self.get().map_or(Value::Null, T::shown)
    }
}

impl<T: Shown> Shown for Option<T> {
    fn shown(&self) -> Value {
        self.as_ref().map_or(Value::Null, T::shown)
    }
}

impl<T: Shown> Shown for Spanned<T> {
    fn shown(&self) -> Value {
        self.value.shown()
    }
}

impl<T: Shown> Shown for Vec<T> {
    fn shown(&self) -> Value {
        self.iter().map(T::shown).collect()
    }
}

impl<T: Words> Shown for T {
    fn shown(&self) -> Value {
        self.word().into()
    }
}

impl Shown for String {
    fn shown(&self) -> Value {
        self.as_str().into()
    }
}

impl Shown for Kind {
    fn shown(&self) -> Value {
        self.name().into()
    }
}

/// Whole nanometres as text.
impl Shown for Length {
    fn shown(&self) -> Value {
        self.nanometres().to_string().into()
    }
}

impl Shown for LengthRange {
    fn shown(&self) -> Value {
        json!({"least": self.least.shown(), "most": self.most.shown()})
    }
}

impl Shown for Money {
    fn shown(&self) -> Value {
        format!("{} {}", self.plain(), self.currency).into()
    }
}

impl Shown for Quantity {
    fn shown(&self) -> Value {
        self.to_string().into()
    }
}
