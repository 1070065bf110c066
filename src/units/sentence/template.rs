//! `phrase!`: a template and what stands in its holes, checked while the program is built.

use std::borrow::Cow;

use rust_decimal::Decimal;

use crate::units::{Area, Date, Figure, LeadTime, Length, LengthRange, Money, Percent, Quantity, Weight};

use super::{Phrase, Piece, Value, quoted};

/// A sentence from a template, as `format!` has it, and what stands in its holes in their order. A hole may
/// bear a name for its reader, `{there}`; between backticks it is quoted.
macro_rules! phrase {
    ($template:literal $(, $value:expr)* $(,)?) => {{
        const HOLES: usize = $crate::units::holes($template);
        let values: [&dyn $crate::units::Say; HOLES] = [$(&$value),*];
        $crate::units::Phrase::fill($template, &values)
    }};
}
pub(crate) use phrase;

/// How many holes a template has.
pub const fn holes(template: &str) -> usize {
    let (mut rest, mut count) = (template.as_bytes(), 0);
    loop {
        rest = match rest {
            [b'{', b'{', rest @ ..] => rest,
            [b'{', rest @ ..] => {
                count += 1;
                rest
            }
            [_, rest @ ..] => rest,
            [] => return count,
        };
    }
}

impl Phrase {
    /// The sentence of a template with these in its holes; `phrase!` is the way to write it.
    pub fn fill(template: &'static str, values: &[&dyn Say]) -> Self {
        let mut holes = values.iter();
        let mut pieces = Vec::with_capacity(2 * values.len() + 1);
        let mut inside = Vec::new();
        for (at, part) in template.split('`').enumerate() {
            if at % 2 == 0 {
                fill(part, &mut holes, &mut pieces);
                continue;
            }
            inside.clear();
            fill(part, &mut holes, &mut inside);
            pieces.push(match inside.as_slice() {
                [Piece::Words(name)] => quoted(name),
                _ => quoted(&Self::of(inside.clone()).bare(["", ""])),
            });
        }
        Self::of(pieces)
    }
}

/// Adds a stretch of a template with its holes filled.
fn fill(part: &'static str, values: &mut std::slice::Iter<'_, &dyn Say>, pieces: &mut Vec<Piece>) {
    let words = |pieces: &mut Vec<Piece>, text: &'static str| {
        let text = if text.contains("}}") { Cow::Owned(text.replace("}}", "}")) } else { Cow::Borrowed(text) };
        if !text.is_empty() {
            pieces.push(Piece::Words(text));
        }
    };
    let mut rest = part;
    while let Some((before, after)) = rest.split_once('{') {
        words(pieces, before);
        if let Some(after) = after.strip_prefix('{') {
            pieces.push(Piece::Words("{".into()));
            rest = after;
            continue;
        }
        if let Some(value) = values.next() {
            value.add_to(pieces);
        }
        rest = after.split_once('}').map_or("", |(_, rest)| rest);
    }
    words(pieces, rest);
}

/// What can stand in the hole of a sentence.
pub trait Say {
    /// Adds its pieces.
    fn add_to(&self, pieces: &mut Vec<Piece>);

    /// Its pieces.
    fn pieces(&self) -> Vec<Piece> {
        let mut pieces = Vec::new();
        self.add_to(&mut pieces);
        pieces
    }
}

macro_rules! values {
    ($($of:ty => $value:expr;)+) => {
        $(impl Say for $of {
            fn add_to(&self, pieces: &mut Vec<Piece>) {
                pieces.push(Piece::Value($value(self.clone())));
            }
        })+
    };
}

values! {
    Length => Value::Written;
    LengthRange => Value::WrittenRange;
    Date => Value::Date;
    Money => Value::Money;
    Percent => Value::Percent;
    Weight => Value::Weight;
    Area => Value::Area;
    i128 => Value::Count;
    Decimal => Value::Number;
    Figure => Value::Figure;
    Quantity => Value::Quantity;
    u8 => |count: u8| Value::Count(count.into());
    u16 => |count: u16| Value::Count(count.into());
    u32 => |count: u32| Value::Count(count.into());
    u64 => |count: u64| Value::Count(count.into());
    i64 => |count: i64| Value::Count(count.into());
    usize => |count: usize| Value::Count(i128::try_from(count).unwrap_or(i128::MAX));
}

impl Say for Value {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        pieces.push(Piece::Value(self.clone()));
    }
}

impl Say for Phrase {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        pieces.extend_from_slice(self.pieces());
    }
}

impl Say for str {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        if !self.is_empty() {
            pieces.push(Piece::Words(self.to_string().into()));
        }
    }
}

impl Say for String {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        self.as_str().add_to(pieces);
    }
}

impl<T: Say + ToOwned + ?Sized> Say for Cow<'_, T> {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        (**self).add_to(pieces);
    }
}

impl Say for LeadTime {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        self.to_string().add_to(pieces);
    }
}

impl<T: Say + ?Sized> Say for &T {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        (**self).add_to(pieces);
    }
}
