//! A room's ceiling, level or sloping.

use super::{Burning, MeasuredFrom};
use crate::source::Span;
use crate::units::{Length, phrase};
use crate::vocabulary::{Code, Faults, Readings, Slot, name, record, words};

words! {
    /// The direction in which a ceiling rises.
    pub enum Rises {
        Length = "length",
        Width = "width",
    }
}

record! {
    short "height" as Length;
    pub struct MeasuredCeiling = CEILING("ceiling", "a ceiling as measured, or one that rises from one side to the other") {
        height: Slot<Readings> = "height",
            "height of a level ceiling at several points; the least governs",
            "[96\", 95 7/8\"]";
        measured_from: Slot<MeasuredFrom> = "measured from",
            "the floor that its heights were measured from; the finished one if left out",
            "present floor";
        low: Slot<Length> = "low", "the least height of one that slopes", "7' 10\"";
        high: Slot<Length> = "high", "its greatest height", "10' 2\"";
        rises: Slot<Rises> = "rises along", "the direction in which it rises", "width";
        low_at: Slot<String> = "low at", "the wall from which it rises", "C" as name::Wall;
        burning: Slot<Burning> = "material",
            "whether it burns, for what stands near a cooking surface; left out, it counts as burning",
            "does not burn";
    }
    then MeasuredCeiling::when_read
}

impl MeasuredCeiling {
    fn when_read(self, at: Span, faults: &mut Faults) -> Option<Self> {
        if self.height.get().is_some() {
            return Some(self);
        }
        if self.height.is_absent() && (self.low.is_absent() || self.high.is_absent()) {
            let remedy = "write `height` for a level ceiling, or `low` and `high` for one that slopes";
            faults.stop(Code::FIELD, at, "a ceiling lacks its height", remedy);
        }
        let (low, high) = (self.low.get()?, self.high.get()?);
        if low > high {
            let message = phrase!("the low side ({low}) is higher than the high side ({high})", low, high);
            faults.stop(Code::WRONG_TYPE, at, message, "write the least height after `low`");
            return None;
        }
        Some(self)
    }

    /// The ceiling from the finished floor: what is still to be laid is taken off where it was measured from the
    /// present one.
    pub fn from_finished_floor(&self, to_lay: Length) -> Option<Ceiling> {
        let from_present = self.measured_from.get() == Some(&MeasuredFrom::PresentFloor);
        let off = if from_present { to_lay } else { Length::ZERO };
        if let Some(least) = self.height.get().and_then(Readings::least) {
            return Some(Ceiling::Level(least.value - off));
        }
        Some(Ceiling::Sloped {
            low: *self.low.get()? - off,
            high: *self.high.get()? - off,
            along_length: self.rises.get() == Some(&Rises::Length),
            low_at: self.low_at.clone(),
        })
    }
}

/// A ceiling, from the finished floor.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ceiling {
    /// Level, at that height.
    Level(Length),
    /// Rising.
    Sloped {
        /// The least height.
        low: Length,
        /// The greatest height.
        high: Length,
        /// Whether it rises along the room's length rather than its width.
        along_length: bool,
        /// The wall from which it rises, by its letter or name.
        low_at: Slot<String>,
    },
}
