//! How a value stands in a field, and what a record keeps of it.

use std::ops::{Deref, DerefMut};

use crate::source::Spanned;
use crate::source::yaml::{Node, Value as Yaml};
use crate::units::{Area, Currency, Date, LeadTime, Length, LengthRange, Money, Percent, Quantity, Sides, Weight};

use super::{Clearance, Faults, FieldType, Fields, Kind, NameOf, Readings, Slot, Words, values};

/// A value that can stand in a field.
pub trait Value: Sized {
    /// What a designer writes.
    const TYPE: FieldType;

    /// Reads it; none when it is faulty, having said so.
    fn read(node: &Node, faults: &mut Faults) -> Option<Self>;
}

/// What a record keeps of a field: a value that may be left out, one that must be there, a list.
pub trait Held: Sized {
    /// What a designer writes.
    const TYPE: FieldType;
    /// Whether the record makes no sense without it.
    const REQUIRED: bool = false;

    /// Takes it out of the record's fields; none when the record makes no sense without it.
    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self>;
}

impl<T: Value> Held for Slot<T> {
    const TYPE: FieldType = T::TYPE;

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        Some(fields.read(key, faults, T::read))
    }
}

impl<T: Value> Held for Spanned<T> {
    const TYPE: FieldType = T::TYPE;
    const REQUIRED: bool = true;

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        match fields.read(key, faults, T::read) {
            Slot::Given(value) => Some(value),
            Slot::Absent | Slot::Invalid => None,
        }
    }
}

impl<T: Value> Held for Vec<T> {
    const TYPE: FieldType = FieldType::List(&T::TYPE);

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        Some(fields.list(key, faults, T::read))
    }
}

impl<T: Value> Held for Option<T> {
    const TYPE: FieldType = T::TYPE;

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        Some(Slot::take(fields, key, faults)?.get_owned())
    }
}

impl<T: Value> Value for Vec<T> {
    const TYPE: FieldType = FieldType::List(&T::TYPE);

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let Yaml::List(items) = &node.value else {
            faults.wrong_type(node, &<Self as Value>::TYPE);
            return None;
        };
        Some(items.iter().filter_map(|item| T::read(item, faults)).collect())
    }
}

impl<T: Value> Value for Spanned<T> {
    const TYPE: FieldType = T::TYPE;

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        T::read(node, faults).map(|value| Self::new(value, node.span))
    }
}

/// What is large and seldom written is kept aside.
impl<T: Value> Value for Box<T> {
    const TYPE: FieldType = T::TYPE;

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        T::read(node, faults).map(Box::new)
    }
}

/// Which reader reads a type of value, and its shape.
macro_rules! values {
    ($($type:ty = $shape:expr, $read:ident;)*) => {
        $(impl Value for $type {
            const TYPE: FieldType = $shape;

            fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
                values::$read(node, faults)
            }
        }

        impl Held for $type {
            const TYPE: FieldType = $shape;
            const REQUIRED: bool = true;

            fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
                Spanned::<Self>::take(fields, key, faults).map(|value| value.value)
            }
        })*
    };
}

values! {
    String = FieldType::Text, text;
    Length = FieldType::Length, positive_length;
    LengthRange = FieldType::LengthRange, length_range;
    Readings = FieldType::Readings, readings;
    Sides = FieldType::Sides, sides;
    (Length, Length) = FieldType::TwoSides, two_sides;
    Clearance = FieldType::Clearance, clearance;
    Area = FieldType::Area, area;
    Percent = FieldType::Percent, percent;
    Date = FieldType::Date, date;
    LeadTime = FieldType::LeadTime, lead_time;
    Weight = FieldType::Weight, weight;
    Quantity = FieldType::Quantity, quantity;
    u32 = FieldType::Whole, whole;
    bool = FieldType::YesNo, yes_no;
    Kind = FieldType::Name(NameOf::Kind), kind_name;
    Money = FieldType::Money, money;
    Currency = FieldType::Currency, currency;
}

/// A value under a name of the designer's own.
pub trait NamedValue: Sized {
    /// What a designer writes after the name.
    const TYPE: FieldType;

    /// Its name.
    fn name(&self) -> &str;

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

impl<T: NamedValue> Named<T> {
    /// The value of that name.
    pub fn called(&self, name: &str) -> Option<&T> {
        self.0.iter().find(|value| value.name() == name)
    }
}

impl<T> Deref for Named<T> {
    type Target = [T];

    fn deref(&self) -> &[T] {
        &self.0
    }
}

impl<T> DerefMut for Named<T> {
    fn deref_mut(&mut self) -> &mut [T] {
        &mut self.0
    }
}

impl<'a, T> IntoIterator for &'a mut Named<T> {
    type Item = &'a mut T;
    type IntoIter = std::slice::IterMut<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter_mut()
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
    const TYPE: FieldType = FieldType::Named(&T::TYPE);

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        let pairs = fields.named(key, faults);
        Some(Self(pairs.iter().filter_map(|(name, node)| T::read_named(name, node, faults)).collect()))
    }
}

/// A value of a usual type under a name of the designer's own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Called<T> {
    /// Its name in the book.
    pub name: Spanned<String>,
    /// The value.
    pub value: Spanned<T>,
}

impl<T: Value> NamedValue for Called<T> {
    const TYPE: FieldType = T::TYPE;

    fn name(&self) -> &str {
        &self.name
    }

    fn read_named(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<Self> {
        Spanned::read(node, faults).map(|value| Self { name: name.clone(), value })
    }
}

/// What gathers values by their names: facts that only some kinds have, distances.
pub trait Gathers<T>: Sized {
    /// What they are named by.
    type Name: Words;

    /// Takes one in.
    fn gather(&mut self, name: Self::Name, value: Spanned<T>);

    /// Reads the value of a name and takes it in; one that is faulty is left out.
    fn take(&mut self, fields: &mut Fields<'_>, name: Self::Name, faults: &mut Faults)
    where
        T: Value,
    {
        if let Slot::Given(value) = fields.read(name.word(), faults, T::read) {
            self.gather(name, value);
        }
    }
}
