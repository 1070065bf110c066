//! Other ways to write a value than the usual one of its type.

use std::sync::Arc;

use crate::source::Spanned;
use crate::source::yaml::Node;
use crate::units::{Length, Sides};

use super::{Faults, FieldType, Fields, Held, NameOf, Slot, Value, values};

/// A way to write a value: a name rather than any words, prose rather than a line.
pub trait Way {
    /// What is read.
    type Of;
    /// What a designer writes.
    const TYPE: FieldType;

    /// Reads it; none when it is faulty, having said so.
    fn read(node: &Node, faults: &mut Faults) -> Option<Self::Of>;
}

/// What a record keeps of a field that is written in that way.
pub trait HeldAs<W>: Sized {
    /// What a designer writes.
    const TYPE: FieldType;
    /// Whether the record makes no sense without it.
    const REQUIRED: bool = false;

    /// Takes it out of the record's fields; none when the record makes no sense without it.
    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self>;
}

impl<W: Way> HeldAs<W> for Slot<W::Of> {
    const TYPE: FieldType = W::TYPE;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        Some(fields.read(key, faults, W::read))
    }
}

impl<W: Way> HeldAs<W> for Spanned<W::Of> {
    const TYPE: FieldType = W::TYPE;
    const REQUIRED: bool = true;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        match fields.read(key, faults, W::read) {
            Slot::Given(value) => Some(value),
            Slot::Absent | Slot::Invalid => None,
        }
    }
}

impl<W: Way> HeldAs<W> for Vec<Spanned<W::Of>> {
    const TYPE: FieldType = FieldType::List(&W::TYPE);

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        Some(fields.list(key, faults, |node, faults| W::read(node, faults).map(|value| Spanned::new(value, node.span))))
    }
}

/// The usual value counts where none can be read.
pub enum Usual {}

impl<T: Value + Default> HeldAs<Usual> for T {
    const TYPE: FieldType = <T as Value>::TYPE;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        Some(Slot::<T>::take(fields, key, faults)?.get_owned().unwrap_or_default())
    }
}

/// A group that several records have of one place: it is read with the first of them, and shared.
pub enum ReadOnce {}

impl<T: Value + 'static> HeldAs<ReadOnce> for Slot<Arc<T>> {
    const TYPE: FieldType = T::TYPE;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        let read = |node: &Node, faults: &mut Faults| T::read(node, faults).map(Arc::new);
        Some(fields.read_before(key).unwrap_or_else(|| fields.read(key, faults, read)))
    }
}

/// Lengths, of which there must be some.
pub enum Lengths {}

impl HeldAs<Lengths> for Vec<Length> {
    const TYPE: FieldType = FieldType::List(&FieldType::Length);
    const REQUIRED: bool = true;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        fields.read(key, faults, values::lengths).get_owned()
    }
}

/// Names of something else in the book; whether it is there is looked at when all is read.
pub mod name {
    use super::{Faults, FieldType, NameOf, Node, Way, values};

    /// A name for each kind of thing that has one.
    macro_rules! names {
        ($($of:ident)*) => {
            $(#[doc = concat!("See [`NameOf::", stringify!($of), "`].")]
            pub enum $of {}

            impl Way for $of {
                type Of = String;
                const TYPE: FieldType = FieldType::Name(NameOf::$of);

                fn read(node: &Node, faults: &mut Faults) -> std::option::Option<String> {
                    values::scalar(node, &Self::TYPE, faults).map(str::to_string)
                }
            })*
        };
    }
    names! { Opening Milestone Product Option Allowance Room Selection Wall }
}

/// How each way reads.
macro_rules! ways {
    ($($(#[$meta:meta])* $name:ident: $of:ty = $shape:expr, $read:path;)*) => {
        $($(#[$meta])*
        pub enum $name {}

        impl Way for $name {
            type Of = $of;
            const TYPE: FieldType = $shape;

            fn read(node: &Node, faults: &mut Faults) -> Option<$of> {
                $read(node, faults)
            }
        })*
    };
}

ways! {
    /// Prose in Markdown.
    Markdown: String = FieldType::Markdown, values::text;
    /// Two lengths in a list.
    TwoLengths: (Length, Length) = FieldType::List(&FieldType::Length), values::two_lengths;
    /// Three lengths: a box.
    ThreeSides: Sides = FieldType::ThreeSides, values::three_sides;
    /// A length that holds above a cooking surface, said so or not.
    AboveTheSurface: Length = FieldType::LengthAbove, values::length_above;
    /// The most of a length, said so or not.
    AtMost: Length = FieldType::Length, values::most;
}
