//! Reads what is built in: a sheet's front panel, what stands below, the wall's hollow, drilled holes.

use crate::book::vocabulary::{ASKED_PANEL, BELOW, HOLE, HOLLOW};
use crate::book::{AskedPanel, Below, Hole, Hollow, Slot};
use crate::source::yaml::{Node, Value};

use super::faults::Faults;
use super::fields::Fields;
use super::values::{length_range, positive_length, spanned_text, text, weight, word};

/// The panel that a maker's sheet asks for.
pub fn panel(node: &Node, faults: &mut Faults) -> Option<AskedPanel> {
    let mut fields = Fields::of(node, &ASKED_PANEL, faults)?;
    let panel = AskedPanel {
        width: fields.read("width", faults, length_range),
        height: fields.read("height", faults, length_range),
        thickness: fields.read("thickness", faults, length_range),
        weight: fields.read("weight", faults, weight),
    };
    fields.finish(faults);
    Some(panel)
}

/// What stands below: its name, or more of it.
pub fn below(node: &Node, faults: &mut Faults) -> Option<Below> {
    if let Value::Scalar { .. } = node.value {
        return Some(Below { what: spanned_text(node, faults)?, clear: Slot::Absent });
    }
    let mut fields = Fields::of(node, &BELOW, faults)?;
    let what = fields.read("what", faults, text);
    let clear = fields.read("clear", faults, positive_length);
    fields.finish(faults);
    Some(Below { what: what.spanned()?.clone(), clear })
}

/// The wall that something goes into.
pub fn hollow(node: &Node, faults: &mut Faults) -> Option<Hollow> {
    let mut fields = Fields::of(node, &HOLLOW, faults)?;
    let hollow = Hollow {
        cavity: fields.read("cavity", faults, positive_length),
        build_up: fields.read("build-up", faults, positive_length),
        holds: fields.read("holds", faults, text),
        rough_in: fields.read("rough-in", faults, positive_length),
        valve: fields.read("valve", faults, positive_length),
        from: word(&mut fields, &HOLLOW, "from", faults).map_or(Slot::Absent, Slot::Given),
    };
    fields.finish(faults);
    Some(hollow)
}

/// A hole that is drilled.
pub fn hole(node: &Node, faults: &mut Faults) -> Option<Hole> {
    let mut fields = Fields::of(node, &HOLE, faults)?;
    let purpose = fields.read("for", faults, text);
    let diameter = fields.read("diameter", faults, positive_length);
    let behind = fields.read("behind", faults, positive_length);
    fields.finish(faults);
    Some(Hole { purpose: purpose.spanned()?.clone(), diameter, behind })
}
