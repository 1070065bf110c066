//! Words of the designer's, with what is understood of them.

use std::fmt;

use crate::source::yaml::Node;
use crate::vocabulary::{Faults, FieldType, Value, values};

/// What can be read out of free words.
pub trait InWords {
    /// As much as is understood; the words themselves need not be.
    fn of_words(words: &str) -> Self;
}

/// What a designer wrote in words of the trade: pages show the words, rules compare what they mean.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Worded<T> {
    /// As written.
    pub words: String,
    /// What is understood.
    pub is: T,
}

impl<T: InWords> Value for Worded<T> {
    const TYPE: FieldType = FieldType::Text;

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        values::text(node, faults).map(|words| Self { is: T::of_words(&words), words })
    }
}

impl<T: InWords + Default + PartialEq> Worded<T> {
    /// Whether anything at all is understood.
    pub fn is_understood(&self) -> bool {
        self.is != T::default()
    }
}

impl<T> fmt::Display for Worded<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words)
    }
}
