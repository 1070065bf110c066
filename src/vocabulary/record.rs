//! A record, written down once: its struct, its reader and its row in the tables.

use std::ops::Deref;

use crate::source::Spanned;
use crate::source::yaml::Node;
use crate::units::{Area, Date, LeadTime, Length, LengthRange, Percent, Quantity, Sides, Weight};

use super::{Clearance, Faults, Fields, Kind, NameOf, Readings, Shape, Slot, values};

/// A value that can stand in a field.
pub trait Value: Sized {
    /// What a designer writes.
    const SHAPE: Shape;

    /// Reads it; none when it is faulty, having said so.
    fn read(node: &Node, faults: &mut Faults) -> Option<Self>;
}

/// What a record keeps of a field: a value that may be left out, one that must be there, a list.
pub trait Held: Sized {
    /// What a designer writes.
    const SHAPE: Shape;
    /// Whether the record makes no sense without it.
    const REQUIRED: bool = false;

    /// Takes it out of the record's fields; none when the record makes no sense without it.
    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self>;
}

impl<T: Value> Held for Slot<T> {
    const SHAPE: Shape = T::SHAPE;

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        Some(fields.read(key, faults, T::read))
    }
}

impl<T: Value> Held for Spanned<T> {
    const SHAPE: Shape = T::SHAPE;
    const REQUIRED: bool = true;

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        match fields.read(key, faults, T::read) {
            Slot::Given(value) => Some(value),
            Slot::Absent | Slot::Invalid => None,
        }
    }
}

impl<T: Value> Held for Vec<T> {
    const SHAPE: Shape = Shape::List(&T::SHAPE);

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        Some(fields.list(key, faults, T::read))
    }
}

impl<T: Value> Value for Spanned<T> {
    const SHAPE: Shape = T::SHAPE;

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        T::read(node, faults).map(|value| Self::new(value, node.span))
    }
}

/// Which reader reads a type of value, and its shape.
macro_rules! values {
    ($($type:ty = $shape:expr, $read:ident;)*) => {
        $(impl Value for $type {
            const SHAPE: Shape = $shape;

            fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
                values::$read(node, faults)
            }
        }

        impl Held for $type {
            const SHAPE: Shape = $shape;
            const REQUIRED: bool = true;

            fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
                Spanned::<Self>::take(fields, key, faults).map(|value| value.value)
            }
        })*
    };
}

values! {
    String = Shape::Text, text;
    Length = Shape::Length, positive_length;
    LengthRange = Shape::LengthRange, length_range;
    Readings = Shape::Readings, readings;
    Sides = Shape::Sides, sides;
    (Length, Length) = Shape::Sides, two_sides;
    Clearance = Shape::Clearance, clearance;
    Area = Shape::Area, area;
    Percent = Shape::Percent, percent;
    Date = Shape::Date, date;
    LeadTime = Shape::LeadTime, lead_time;
    Weight = Shape::Weight, weight;
    Quantity = Shape::Quantity, quantity;
    u32 = Shape::Whole, whole;
    bool = Shape::YesNo, yes_no;
    Kind = Shape::Name(NameOf::Kind), kind_name;
}

/// A value under a name of the designer's own.
pub trait NamedValue: Sized {
    /// What a designer writes after the name.
    const SHAPE: Shape;

    /// Reads it; none when it is faulty, having said so.
    fn read_named(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<Self>;
}

/// Values under names of the designer's own, in the order in which they are written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named<T>(pub Vec<T>);

impl<T> Default for Named<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T> Deref for Named<T> {
    type Target = [T];

    fn deref(&self) -> &[T] {
        &self.0
    }
}

impl<'a, T> IntoIterator for &'a Named<T> {
    type Item = &'a T;
    type IntoIter = std::slice::Iter<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

impl<T: NamedValue> Held for Named<T> {
    const SHAPE: Shape = Shape::Named(&T::SHAPE);

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        let pairs = fields.named(key, faults);
        Some(Self(pairs.iter().filter_map(|(name, node)| T::read_named(name, node, faults)).collect()))
    }
}

/// A record, written once: its struct, its reader, and its table for `explain` and the schemas.
///
/// `record! { pub struct Name = TABLE("its name", "what it is") { field: Type = "key", "what it holds",
/// "example"; } }`. The type says how a field is read; `, SHAPE, reader` after the example says it otherwise.
/// Before it stands `group` for what is always there, empty where nothing is written; `short "key" as Type;` where
/// the value of one key may stand for the group; `named` for what stands under a name of the designer's own.
macro_rules! record {
    (group $($record:tt)*) => { $crate::vocabulary::record! { @table group [] $($record)* } };
    (named $($record:tt)*) => { $crate::vocabulary::record! { @table named [pub name: $crate::source::Spanned<String>,] $($record)* } };
    (short $short:literal as $of:ty; $($record:tt)*) => { $crate::vocabulary::record! { @table (short $short, $of) [] $($record)* } };
    (@table $way:tt [$($name_field:tt)*] $(#[$meta:meta])* pub struct $name:ident = $table:ident($title:literal, $about:literal) {
        $($field:ident: $type:ty = $key:literal, $what:literal, $example:literal $(, $shape:expr, $read:expr)?;)*
    }) => {
        #[doc = $about]
        $(#[$meta])*
        #[derive(Clone, Debug, PartialEq, Eq)]
        pub struct $name {
            $($name_field)*
            $(#[doc = $what] pub $field: $type,)*
        }

        #[doc = concat!("The table of `", $title, "`.")]
        pub const $table: $crate::vocabulary::Record = $crate::vocabulary::Record {
            name: $title,
            about: $about,
            fields: &[$($crate::vocabulary::Field {
                key: $key,
                shape: $crate::vocabulary::record!(@shape $type $(, $shape)?),
                required: <$type as $crate::vocabulary::Held>::REQUIRED,
                about: $what,
                example: $example,
            }),*],
        };

        $crate::vocabulary::record! { @read $way $name $table { $($field: $type = $key $(, $read)?;)* } }
    };
    (@read named $name:ident $table:ident { $($field:ident: $type:ty = $key:literal $(, $read:expr)?;)* }) => {
        impl $crate::vocabulary::NamedValue for $name {
            const SHAPE: $crate::vocabulary::Shape = $crate::vocabulary::Shape::Record(&$table);

            fn read_named(
                name: &$crate::source::Spanned<String>,
                node: &$crate::source::yaml::Node,
                faults: &mut $crate::vocabulary::Faults,
            ) -> Option<Self> {
                let mut fields = $crate::vocabulary::Fields::of(node, &$table, faults)?;
                $(let $field = $crate::vocabulary::record!(@take fields, faults, $key, $type $(, $read)?);)*
                fields.finish(faults);
                Some(Self { name: name.clone(), $($field: $field?,)* })
            }
        }
    };
    (@read $way:tt $name:ident $table:ident { $($field:ident: $type:ty = $key:literal $(, $read:expr)?;)* }) => {
        impl $crate::vocabulary::Value for $name {
            const SHAPE: $crate::vocabulary::Shape = $crate::vocabulary::record!(@whole $way $table);

            fn read(
                node: &$crate::source::yaml::Node,
                faults: &mut $crate::vocabulary::Faults,
            ) -> Option<Self> {
                let mut fields = $crate::vocabulary::record!(@fields $way node, $table, faults);
                $(let $field = $crate::vocabulary::record!(@take fields, faults, $key, $type $(, $read)?);)*
                fields.finish(faults);
                Some(Self { $($field: $field?,)* })
            }
        }

        $crate::vocabulary::record! { @held $way $name }
    };
    (@whole (short $short:literal, $of:ty) $table:ident) => {
        $crate::vocabulary::Shape::Either(
            &<$of as $crate::vocabulary::Value>::SHAPE,
            &$crate::vocabulary::Shape::Record(&$table),
        )
    };
    (@whole $way:tt $table:ident) => { $crate::vocabulary::Shape::Record(&$table) };
    (@fields (short $short:literal, $of:ty) $node:ident, $table:ident, $faults:ident) => {
        $crate::vocabulary::Fields::of_short($node, &$table, $short, $faults)?
    };
    (@fields $way:tt $node:ident, $table:ident, $faults:ident) => {
        $crate::vocabulary::Fields::of($node, &$table, $faults)?
    };
    (@held group $name:ident) => {
        impl $crate::vocabulary::Held for $name {
            const SHAPE: $crate::vocabulary::Shape = <Self as $crate::vocabulary::Value>::SHAPE;

            fn take(
                fields: &mut $crate::vocabulary::Fields<'_>,
                key: &'static str,
                faults: &mut $crate::vocabulary::Faults,
            ) -> Option<Self> {
                let read = |node| <Self as $crate::vocabulary::Value>::read(node, faults);
                Some(fields.node(key).and_then(read).unwrap_or_default())
            }
        }
    };
    (@held $way:tt $name:ident) => {};
    (@shape $type:ty) => { <$type as $crate::vocabulary::Held>::SHAPE };
    (@shape $type:ty, $shape:expr) => { $shape };
    (@take $fields:ident, $faults:ident, $key:literal, $type:ty) => {
        <$type as $crate::vocabulary::Held>::take(&mut $fields, $key, $faults)
    };
    (@take $fields:ident, $faults:ident, $key:literal, $type:ty, $read:expr) => {
        Some($fields.read($key, $faults, $read))
    };
    ($($record:tt)*) => { $crate::vocabulary::record! { @table plain [] $($record)* } };
}
pub(crate) use record;
