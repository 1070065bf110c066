//! Lengths as findings say them: the book's own units, the other system beside them.

use crate::book::System;
use crate::units::Length;
use crate::units::length::Grain;

/// A length in both systems, the book's own first: `30 1/16" (763.6 mm)`.
pub fn say(length: Length, system: System) -> String {
    let sixteenth = length.imperial(Grain::Sixteenth);
    let inches = if sixteenth.exact { sixteenth } else { length.imperial(Grain::ThirtySecond) };
    match system {
        System::Imperial => format!("{inches} ({})", length.metric()),
        System::Metric => format!("{} ({inches})", length.metric()),
    }
}
