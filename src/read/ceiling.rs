//! Reads a ceiling: level or sloping, from the finished floor.

use crate::book::vocabulary::CEILING;
use crate::book::{Burning, Ceiling, Slot};
use crate::finding::Code;
use crate::source::yaml::{Node, Value};
use crate::units::Length;
use crate::vocabulary::values::{positive_length, readings, text, word};
use crate::vocabulary::{Faults, Fields, Value as _};

/// A ceiling as written, and whether it was measured from the floor that is there now.
pub struct Measured {
    ceiling: Ceiling,
    from_present_floor: bool,
    /// Whether it burns.
    pub burning: Slot<Burning>,
}

/// A ceiling: one height, or what is known of one.
pub fn ceiling(node: &Node, faults: &mut Faults) -> Option<Measured> {
    if let Value::Scalar { .. } = node.value {
        let level = positive_length(node, faults).map(Ceiling::Level)?;
        return Some(Measured { ceiling: level, from_present_floor: false, burning: Slot::Absent });
    }
    let mut fields = Fields::of(node, &CEILING, faults)?;
    let height = fields.read("height", faults, readings);
    let from = word(&mut fields, &CEILING, "measured from", faults);
    let low = fields.read("low", faults, positive_length);
    let high = fields.read("high", faults, positive_length);
    let along = word(&mut fields, &CEILING, "rises along", faults);
    let low_at = fields.read("low at", faults, text);
    let burning = fields.read("material", faults, Burning::read);
    fields.finish(faults);
    let from_present_floor = from.is_some_and(|from| from.value == "present floor");
    if let Some(least) = height.get().and_then(|readings| readings.least()) {
        return Some(Measured { ceiling: Ceiling::Level(least.value), from_present_floor, burning });
    }
    if height.is_absent() && (low.is_absent() || high.is_absent()) {
        let remedy = "write `height` for a level ceiling, or `low` and `high` for one that slopes";
        faults.stop(Code::FIELD, node.span, "a ceiling lacks its height", remedy);
    }
    let (low, high) = (*low.get()?, *high.get()?);
    if low > high {
        let message = format!("the low side ({low}) is higher than the high side ({high})");
        faults.stop(Code::WRONG_TYPE, node.span, message, "write the least height after `low`");
        return None;
    }
    let along_length = along.is_some_and(|along| along.value == "length");
    Some(Measured { ceiling: Ceiling::Sloped { low, high, along_length, low_at }, from_present_floor, burning })
}

/// The ceiling from the finished floor: what is still to be laid is taken off where it was measured
/// from the present one.
pub fn from_finished_floor(measured: Slot<Measured>, build_up: Option<Length>) -> Slot<Ceiling> {
    let to_lay = build_up.unwrap_or_default();
    measured.and_then(|measured| {
        let Measured { ceiling, from_present_floor, .. } = measured.value;
        let off = if from_present_floor { to_lay } else { Length::ZERO };
        Some(match ceiling {
            Ceiling::Level(height) => Ceiling::Level(height - off),
            Ceiling::Sloped { low, high, along_length, low_at } => {
                Ceiling::Sloped { low: low - off, high: high - off, along_length, low_at }
            }
        })
    })
}
