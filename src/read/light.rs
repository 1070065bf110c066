//! Reads where lights hang.

use crate::book::vocabulary::HANGING;
use crate::book::{Hanging, Slot};
use crate::source::yaml::Node;

use super::faults::Faults;
use super::fields::Fields;
use super::values::{area, positive_length, readings, word};

/// Where lights hang.
pub fn hanging(node: &Node, faults: &mut Faults) -> Option<Hanging> {
    let mut fields = Fields::of(node, &HANGING, faults)?;
    let hanging = Hanging {
        over: word(&mut fields, &HANGING, "over", faults).map_or(Slot::Absent, Slot::Given),
        length: fields.read("length", faults, positive_length),
        top: fields.read("top", faults, positive_length),
        at: fields.read("at", faults, readings),
        bottom: fields.read("bottom", faults, readings),
        ceiling: fields.read("ceiling", faults, readings),
        from_low_side: fields.read("from low side", faults, readings),
        from_tub: fields.read("from tub", faults, positive_length),
        rim: fields.read("rim", faults, positive_length),
        lights: fields.read("lights", faults, area),
    };
    fields.finish(faults);
    Some(hanging)
}
