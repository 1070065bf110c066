//! How the book's files are worded: what a field may hold, how a record is written down once, and the kinds.
//!
//! A record's table gives its struct, its reader, its page in `explain`, its schema and its part of the mark (`record!`); a closed
//! set of words gives its type the same way (`words!`).

mod shape;
pub use shape::{Field, FieldType, NameOf, Record};

mod glass;
mod hold_point;
pub use glass::Breaks;

pub use hold_point::{HoldPoint, sets};

mod kinds;
pub use kinds::{Kind, Trade, Trait, near_kinds};

mod slot;
pub use slot::Slot;

mod readings;
pub use readings::Readings;

mod clearance;
pub use clearance::Clearance;

mod faults;
pub use crate::finding::{Code, Hazard};
pub use faults::Faults;

mod key_filter;

mod layers;
pub use layers::{Layers, Pair};

mod fields;
pub use fields::{Fields, Parse};

mod near;
pub use near::{is_plain, nearest, of_the_same_words, only_near, same_but_for_case};

mod natural_keys;

mod mount;
pub use mount::{Mount, says_how_it_is_held};

mod pattern;
pub use pattern::{Bond, EdgeTrim, Pattern};

mod pitch;
pub use pitch::Pitch;

mod rating;
pub use rating::Rating;

mod said;
pub use said::{Mention, words_of};

mod so_many;
pub use so_many::{SoMany, so_many};

mod stage;
pub use stage::Stage;

pub mod supply;

pub mod values;

mod words;
pub(crate) use words::words;
pub use words::{JOINS, Words};
pub(crate) use words::{is_joined_otherwise, word_meant};

mod held;
pub use held::{Called, Gathers, Held, Named, NamedValue, Value};

mod ways;
pub use ways::{
    AboveTheSurface, AtMost, HeldAs, Lengths, Markdown, ReadOnce, ThreeSides, TwoLengths, Usual, Way, name,
};

mod shown;
pub use shown::{Mark, Marked, SheetVersion, Shown, ShownField, ShownGroup, ShownValue, Since, Version};

mod record;
pub(crate) use record::record;
