//! What a fault says, and how it is mended, from the values that it holds.

use super::Phrase;

/// A fault that knows its own sentences.
pub trait Fault {
    /// What is wrong.
    fn message(&self) -> Phrase;

    /// How to mend it.
    fn remedy(&self) -> Phrase;
}

/// Makes a fault an error whose text is its message.
macro_rules! shown {
    ($fault:ty) => {
        impl std::fmt::Display for $fault {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                std::fmt::Display::fmt(&$crate::units::Fault::message(self), f)
            }
        }

        impl std::error::Error for $fault {}
    };
}
pub(crate) use shown;
