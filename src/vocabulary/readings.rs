//! What was measured at one or several points.

use crate::source::Spanned;
use crate::units::Length;

/// The lengths that were read at several points; the least governs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Readings(pub Vec<Spanned<Length>>);

impl Readings {
    /// The least of them.
    pub fn least(&self) -> Option<&Spanned<Length>> {
        self.0.iter().min_by_key(|reading| reading.value)
    }

    /// The greatest of them.
    pub fn greatest(&self) -> Option<&Spanned<Length>> {
        self.0.iter().max_by_key(|reading| reading.value)
    }
}
