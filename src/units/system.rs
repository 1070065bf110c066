//! The systems of units.

/// The system of units shown first, and whether the other stands beside it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum System {
    /// Feet, inches and fractions; metric units beside them.
    #[default]
    Imperial,
    /// Millimetres; inches beside them.
    Metric,
    /// Feet, inches and fractions alone.
    ImperialOnly,
    /// Millimetres alone.
    MetricOnly,
}

impl System {
    /// Whether metric units stand first, or alone.
    pub const fn is_metric(self) -> bool {
        matches!(self, Self::Metric | Self::MetricOnly)
    }

    /// Whether the other system is left out.
    pub const fn is_alone(self) -> bool {
        matches!(self, Self::ImperialOnly | Self::MetricOnly)
    }

    /// A usual figure, in the round one of the system that stands first: 1", or 25 mm.
    pub const fn usual<T: Copy>(self, imperial: T, metric: T) -> T {
        if self.is_metric() { metric } else { imperial }
    }

    /// What stands first of two, and what beside it, if anything does.
    pub fn in_order<T>(self, imperial: T, metric: T) -> (T, Option<T>) {
        match self {
            Self::Imperial => (imperial, Some(metric)),
            Self::Metric => (metric, Some(imperial)),
            Self::ImperialOnly => (imperial, None),
            Self::MetricOnly => (metric, None),
        }
    }

    /// One text of two: the first, and the second in brackets if it stands beside it.
    pub fn in_a_row(self, imperial: &str, metric: &str) -> String {
        match self.in_order(imperial, metric) {
            (first, Some(second)) => format!("{first} ({second})"),
            (first, None) => first.to_string(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_books_system_stands_first_and_the_other_beside_it_or_not_at_all() {
        let told = |system: System| system.in_a_row("1\"", "25.4 mm");
        assert_eq!(told(System::Imperial), "1\" (25.4 mm)");
        assert_eq!(told(System::Metric), "25.4 mm (1\")");
        assert_eq!(told(System::ImperialOnly), "1\"");
        assert_eq!(told(System::MetricOnly), "25.4 mm");
    }
}
