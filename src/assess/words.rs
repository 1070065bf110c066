//! Lengths as findings say them: the book's own units, the other system beside them.

use crate::book::System;
use crate::units::length::Grain;
use crate::units::{Length, LengthRange};

/// A length in both systems, the book's own first: `30 1/16" (763.6 mm)`.
pub fn say(length: Length, system: System) -> String {
    let sixteenth = length.imperial(Grain::Sixteenth);
    let inches = if sixteenth.exact { sixteenth } else { length.imperial(Grain::ThirtySecond) };
    match system {
        System::Imperial => format!("{inches} ({})", length.metric()),
        System::Metric => format!("{} ({inches})", length.metric()),
    }
}

/// A range of lengths, the book's own units first: `2" to 28"`, `51 mm to 711 mm (2" to 28")`.
pub fn say_range(range: LengthRange, system: System) -> String {
    if system == System::Imperial {
        return range.to_string();
    }
    let metric = match (range.least, range.most) {
        (Some(least), Some(most)) if least == most => least.metric().to_string(),
        (Some(least), Some(most)) => format!("{} to {}", least.metric(), most.metric()),
        (Some(least), None) => format!("at least {}", least.metric()),
        (None, Some(most)) => format!("at most {}", most.metric()),
        (None, None) => return range.to_string(),
    };
    format!("{metric} ({range})")
}
