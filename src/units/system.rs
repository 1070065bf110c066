//! The systems of units.

/// The system of units shown first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum System {
    /// Feet, inches and fractions.
    #[default]
    Imperial,
    /// Millimetres.
    Metric,
}
