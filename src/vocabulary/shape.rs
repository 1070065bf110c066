//! What a field may hold, and how a field is described.

use super::Mark;
use crate::finding::{Phrase, phrase};

/// A group of keys that belong together.
#[derive(Debug)]
pub struct Record {
    /// What a designer calls it.
    pub name: &'static str,
    /// What it is for, in a phrase.
    pub about: &'static str,
    /// Its keys.
    pub fields: &'static [Field],
}

impl Record {
    /// The field with that key.
    pub fn field(&self, key: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.key == key)
    }
}

/// One key of a record.
#[derive(Debug)]
pub struct Field {
    /// The key as written.
    pub key: &'static str,
    /// What it holds.
    pub shape: FieldType,
    /// Whether the record makes no sense without it. What a kind needs is in [`super::KINDS`].
    pub required: bool,
    /// What it means, in a phrase.
    pub about: &'static str,
    /// A value as a designer writes it.
    pub example: &'static str,
    /// Whether it is in the mark of an item.
    pub mark: Mark,
}

/// What a name must be the name of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NameOf {
    /// A kind of selection.
    Kind,
    /// An opening of the room.
    Opening,
    /// A milestone of the book.
    Milestone,
    /// A file in `products/`, without its ending.
    Product,
    /// An option of the selection.
    Option,
    /// An allowance of the book.
    Allowance,
    /// A room's folder.
    Room,
    /// Another selection.
    Selection,
    /// A wall of the room's outline.
    Wall,
    /// A language that pages are worded in.
    Language,
}

/// What a field may hold.
#[derive(Clone, Copy, Debug)]
pub enum FieldType {
    /// Words.
    Text,
    /// Prose in Markdown.
    Markdown,
    /// A length with its unit.
    Length,
    /// A length, or a range of lengths.
    LengthRange,
    /// One length, or one a point measured.
    Readings,
    /// Two or three lengths with `x` between them.
    Sides,
    /// Two lengths likewise.
    TwoSides,
    /// Three lengths likewise.
    ThreeSides,
    /// A length and, if need be, where it holds: `2" above counter`; or a free cross-section: `200 cm2`.
    Clearance,
    /// A length above a cooking surface, whether its words say so or not: `6" above counter`.
    LengthAbove,
    /// An area with its unit.
    Area,
    /// An amount in the book's currency, without its sign.
    Money,
    /// A currency by its three letters.
    Currency,
    /// A percentage with its sign.
    Percent,
    /// A day, `2027-03-01`.
    Date,
    /// A span of time: `6-8 weeks`, `10 working days`, `in stock`.
    LeadTime,
    /// A weight with its unit.
    Weight,
    /// A count, or an amount with its unit.
    Quantity,
    /// A whole number.
    Whole,
    /// `true` or `false`.
    YesNo,
    /// One of these words; or one that the trade has besides, with the word that it is read as.
    OneOf(&'static [&'static str], &'static [(&'static str, &'static str)]),
    /// A name that must exist elsewhere in the book.
    Name(NameOf),
    /// A group of keys.
    Record(&'static Record),
    /// A list.
    List(&'static FieldType),
    /// Names of the designer's own, each with a value of one shape.
    Named(&'static FieldType),
    /// One shape or another.
    Either(&'static FieldType, &'static FieldType),
}

impl FieldType {
    /// The records that a value of it may hold.
    pub fn records(&self) -> Vec<&'static Record> {
        match self {
            Self::Record(record) => vec![record],
            Self::List(inner) | Self::Named(inner) => inner.records(),
            Self::Either(one, other) => [one.records(), other.records()].concat(),
            _ => vec![],
        }
    }

    /// After a key that is left open, the words that may stand there: ` (left, right)`; nothing else has any.
    pub fn choice(&self) -> Phrase {
        match self {
            Self::OneOf(words, _) => phrase!(" ({})", quoted(words)),
            Self::YesNo => phrase!(" (`true`, `false`)"),
            _ => Phrase::default(),
        }
    }

    /// What a designer is to write, for messages: its shape, with `…` for what is not known, so that nothing
    /// can be taken over as a fact.
    pub fn wanted(&self) -> Phrase {
        match self.example() {
            Some(example) => phrase!("{}, such as {}", self.name(), example),
            None => self.name(),
        }
    }

    /// What it is, without an example.
    pub fn name(&self) -> Phrase {
        match self {
            Self::Text => "words".into(),
            Self::Markdown => "text".into(),
            Self::Length => "a length with its unit".into(),
            Self::LengthRange => "a length or a range".into(),
            Self::Readings => "a length, or a list of the lengths measured".into(),
            Self::Sides => "two or three lengths".into(),
            Self::TwoSides => "two lengths".into(),
            Self::ThreeSides => "three lengths".into(),
            Self::Clearance => "a length and where it holds, or a free cross-section".into(),
            Self::LengthAbove => "a length, with `above counter` behind it or nothing".into(),
            Self::Area => "an area".into(),
            Self::Money => "an amount in the book's currency".into(),
            Self::Currency => "a currency's three letters".into(),
            Self::Percent => "a percentage with its sign".into(),
            Self::Date => "a day as year, month and day".into(),
            Self::LeadTime => "a span of time".into(),
            Self::Weight => "a weight with its unit".into(),
            Self::Quantity => "a count or an amount".into(),
            Self::Whole => "a whole number".into(),
            Self::YesNo => "`true` or `false`".into(),
            Self::OneOf(words, _) => phrase!("one of {}", quoted(words)),
            Self::Name(of) => of.wanted(),
            Self::Record(record) => {
                let keys: Vec<_> = record.fields.iter().map(|field| field.key).collect();
                phrase!("a group of keys: {}", quoted(&keys))
            }
            Self::List(shape) => phrase!("a list, each item {}", shape.wanted()),
            Self::Named(shape) => phrase!("names, each with {}", shape.wanted()),
            Self::Either(one, other) => phrase!("{}, or {}", one.wanted(), other.wanted()),
        }
    }

    /// How it is written, with `…` for what is not known.
    fn example(&self) -> Option<Phrase> {
        let by_units = |imperial: &'static str, metric: &'static str| Some(Phrase::by_units(imperial, metric));
        let example = match self {
            Self::Length => return by_units("`…\"`", "`… mm`"),
            Self::LengthRange => return by_units("`…\" to …\"`", "`… mm to … mm`"),
            Self::Readings => return by_units("`[…\", …\", …\"]`", "`[… mm, … mm, … mm]`"),
            Self::TwoSides => return by_units("`…\" x …\"`", "`… mm x … mm`"),
            Self::Sides | Self::ThreeSides => return by_units("`…\" x …\" x …\"`", "`… mm x … mm x … mm`"),
            Self::Clearance => return by_units("`…\" above counter` or `… sq in`", "`… mm above counter` or `… cm2`"),
            Self::LengthAbove => return by_units("`…\"`", "`… mm`"),
            Self::Area => return by_units("`… sq ft`", "`… m2`"),
            Self::Money => "`….00`",
            Self::Currency => "`USD`",
            Self::Percent => "`… %`",
            Self::Date => "`YYYY-MM-DD`",
            Self::LeadTime => "`…-… weeks`, `… working days` or `in stock`",
            Self::Weight => return by_units("`… lb`", "`… kg`"),
            Self::Quantity => return by_units("`…` or `… sq ft`", "`…` or `… m2`"),
            _ => return None,
        };
        Some(example.into())
    }
}

/// Words that may be written, one after the other.
fn quoted(words: &[&str]) -> Phrase {
    Phrase::joined(words.iter().map(|word| Phrase::name(word)), ", ")
}

impl NameOf {
    /// What a designer is to write, for messages.
    pub fn wanted(self) -> Phrase {
        let wanted = match self {
            Self::Kind => "the name of a kind (`bookmatch explain kinds` lists them)",
            Self::Opening => "the name of an opening in `room.yaml`",
            Self::Milestone => "the name of a milestone in `book.yaml`",
            Self::Product => "the name of a file in `products/`",
            Self::Option => "the `id` of an option",
            Self::Allowance => "the name of an allowance in `book.yaml`",
            Self::Room => "the name of a folder in `rooms/`",
            Self::Selection => "the name of a selection in this room, or `room/name` for one in another",
            Self::Language => "the tag of a language that the theme has words in",
            Self::Wall => {
                "the letter of a wall: A from the first corner of the outline to the second, and so on around"
            }
        };
        wanted.into()
    }
}
