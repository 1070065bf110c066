//! `phrase!`: a template and what stands in its holes, checked while the program is built.

use std::borrow::Cow;

use rust_decimal::Decimal;

use crate::units::{Area, Date, Figure, LeadTime, Length, LengthRange, Money, Percent, Quantity, System, Weight};

use super::{Phrase, Piece, Value, one, quoted};

/// A sentence from a template, as `format!` has it, and what stands in its holes in their order. A hole may
/// bear a name for its reader, `{there}`; between backticks it is quoted.
macro_rules! phrase {
    ($template:literal $(, $value:expr)* $(,)?) => {
        $crate::units::Phrase::fill::<{ $crate::units::holes($template) }>(
            $template,
            &$crate::units::hole_values!($template, 0, [] $(, $value)*),
        )
    };
}
pub(crate) use phrase;

/// The values of a template, each held to the hole that it stands in.
macro_rules! hole_values {
    ($template:literal, $at:expr, [$($done:expr),*]) => {
        [$($done),*]
    };
    ($template:literal, $at:expr, [$($done:expr),*], $value:expr $(, $rest:expr)*) => {
        $crate::units::hole_values!(
            $template,
            $at + 1,
            [$($done,)* $crate::units::hole::<{ $crate::units::is_marked($template, $at) }, _>(&$value)]
            $(, $rest)*
        )
    };
}
pub(crate) use hole_values;

/// A value for a hole: between marks anything that can be said, outside of them nothing that somebody wrote.
pub fn hole<const MARKED: bool, T: MayStand<MARKED>>(value: &T) -> &dyn Say {
    value.said()
}

/// What may stand in a hole that is or is not between marks.
pub trait MayStand<const MARKED: bool> {
    /// The same, to be said.
    fn said(&self) -> &dyn Say;
}

impl<T: Say> MayStand<true> for T {
    fn said(&self) -> &dyn Say {
        self
    }
}

impl<T: Told> MayStand<false> for T {
    fn said(&self) -> &dyn Say {
        self
    }
}

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

/// Whether the hole of that number stands between marks.
pub const fn is_marked(template: &str, hole: usize) -> bool {
    let (mut rest, mut at, mut inside) = (template.as_bytes(), 0, false);
    loop {
        rest = match rest {
            [b'{', b'{', rest @ ..] => rest,
            [b'{', ..] if at == hole => return inside,
            [b'{', rest @ ..] => {
                at += 1;
                rest
            }
            [b'`', rest @ ..] => {
                inside = !inside;
                rest
            }
            [_, rest @ ..] => rest,
            [] => return inside,
        };
    }
}

impl Phrase {
    /// The sentence of a template with these in its holes; `phrase!` is the way to write it.
    pub fn fill<const HOLES: usize>(template: &'static str, values: &[&dyn Say; HOLES]) -> Self {
        let mut filled = Vec::with_capacity(values.len());
        let stretches = template.split('`').enumerate();
        let is_quoted = stretches.flat_map(|(at, part)| std::iter::repeat_n(at % 2 == 1, holes(part)));
        for (value, is_quoted) in values.iter().zip(is_quoted) {
            one(*value, &mut filled);
            if is_quoted && let Some(last) = filled.pop() {
                filled.push(match last {
                    Piece::Word(name) | Piece::Wrote(name) => quoted(&name),
                    other => quoted(&Self::of(vec![other]).bare(["", ""])),
                });
            }
        }
        Self::of(vec![Piece::Said(template, filled)])
    }
}

/// Adds pieces one after the other, each that is made of others as those.
pub(super) fn lay(pieces: &[Piece], flat: &mut Vec<Piece>) {
    for piece in pieces {
        match piece {
            Piece::Words(_)
            | Piece::Word(_)
            | Piece::Wrote(_)
            | Piece::Quoted(_)
            | Piece::Value(_)
            | Piece::ByUnits(_) => flat.push(piece.clone()),
            Piece::Row(row) => lay(row, flat),
            Piece::Fixed(words) => {
                let parts = words.split('`').enumerate().filter(|(_, part)| !part.is_empty());
                flat.extend(parts.map(|(at, part)| if at % 2 == 1 { quoted(part) } else { Piece::Words(part) }));
            }
            Piece::Series(parts, more) => lay_series(parts, *more, flat),
            Piece::Said(template, filled) => {
                let mut filled = filled.iter();
                for (at, stretch) in template.split('`').enumerate() {
                    if at % 2 == 0 {
                        lay_stretch(stretch, &mut filled, flat);
                        continue;
                    }
                    let mut inside = Vec::new();
                    lay_stretch(stretch, &mut filled, &mut inside);
                    flat.push(match inside.as_slice() {
                        [only @ Piece::Quoted(_)] => only.clone(),
                        _ => quoted(&Phrase::of(inside).bare(["", ""])),
                    });
                }
            }
        }
    }
}

/// Adds several in a row: `a`, `a and b`, `a, b and 3 more`.
fn lay_series(parts: &[Piece], more: usize, flat: &mut Vec<Piece>) {
    for (at, part) in parts.iter().enumerate() {
        let last = more == 0 && at + 1 == parts.len();
        if at > 0 {
            flat.push(Piece::Words(if last { " and " } else { ", " }));
        }
        lay(std::slice::from_ref(part), flat);
    }
    if more > 0 {
        flat.push(Piece::Words(" and "));
        more.add_to(flat);
        flat.push(Piece::Words(" more"));
    }
}

/// Adds a stretch of a template with its holes filled.
fn lay_stretch(stretch: &'static str, filled: &mut std::slice::Iter<'_, Piece>, flat: &mut Vec<Piece>) {
    let words = |flat: &mut Vec<Piece>, text: &'static str| {
        for (at, text) in text.split("}}").enumerate() {
            if at > 0 {
                flat.push(Piece::Words("}"));
            }
            if !text.is_empty() {
                flat.push(Piece::Words(text));
            }
        }
    };
    let mut rest = stretch;
    while let Some((before, after)) = rest.split_once('{') {
        words(flat, before);
        if let Some(after) = after.strip_prefix('{') {
            flat.push(Piece::Words("{"));
            rest = after;
            continue;
        }
        if let Some(piece) = filled.next() {
            lay(std::slice::from_ref(piece), flat);
        }
        rest = after.split_once('}').map_or("", |(_, rest)| rest);
    }
    words(flat, rest);
}

/// What is known by its type: a value, a word of ours or a sentence. No text that somebody wrote is, so that a
/// sentence holds such a text between marks alone, or where [`Phrase::plain`] says that it is one.
pub trait Told: Say {}

/// What can stand in the hole of a sentence.
pub trait Say {
    /// Adds its pieces.
    fn add_to(&self, pieces: &mut Vec<Piece>);
}

macro_rules! values {
    ($($of:ty => $value:expr;)+) => {
        $(impl Say for $of {
            fn add_to(&self, pieces: &mut Vec<Piece>) {
                pieces.push(Piece::Value($value(self.clone())));
            }
        }
        impl Told for $of {})+
    };
}

values! {
    Length => |length| Value::Written(length, System::Imperial);
    LengthRange => |range| Value::WrittenRange(range, System::Imperial);
    Date => Value::Date;
    Money => Value::Money;
    Percent => Value::Percent;
    Weight => |weight| Value::Weight(weight, System::Imperial);
    Area => |area| Value::Area(area, System::Imperial);
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
        pieces.extend_from_slice(self.parts());
    }
}

/// What somebody wrote, or a name of theirs, that stands without marks: it is never taken for words of ours.
#[derive(Clone, Copy, Debug)]
pub struct Wrote<'a>(pub &'a str);

impl Say for Wrote<'_> {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        if !self.0.is_empty() {
            pieces.push(Piece::Wrote(self.0.to_owned()));
        }
    }
}

impl Told for Wrote<'_> {}
impl Told for Value {}
impl Told for Phrase {}
impl Told for &'static str {}
impl Told for LeadTime {}
impl<T: Told + ?Sized> Told for &T {}

impl Say for str {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        if !self.is_empty() {
            // Outside of marks no text stands but one of ours.
            pieces.push(Piece::Word(self.to_owned()));
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
