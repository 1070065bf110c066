//! Reads what a room offers in access.

use crate::book::vocabulary::ACCESS;
use crate::book::{Access, ClearFloor, Slot};
use crate::source::Spanned;
use crate::source::yaml::Node;
use crate::vocabulary::values::{percent, readings, two_sides, word, yes_no};
use crate::vocabulary::{Faults, Fields, Held, Named, Shape};

/// Access in a room.
pub fn access(node: Option<&Node>, faults: &mut Faults) -> Access {
    let mut read = Access::default();
    let Some(mut fields) = node.and_then(|node| Fields::of(node, &ACCESS, faults)) else { return read };
    for (name, node) in fields.named("clear floor", faults) {
        if let Some(sides) = two_sides(node, faults) {
            read.clear_floor.push(ClearFloor { name: name.clone(), sides: Spanned::new(sides, node.span) });
        }
    }
    read.knee_spaces = Named::take(&mut fields, "knee spaces", faults).unwrap_or_default();
    read.controls = Named::take(&mut fields, "controls", faults).unwrap_or_default();
    read.kitchen = word(&mut fields, &ACCESS, "kitchen", faults).map_or(Slot::Absent, Slot::Given);
    read.shower_type = word(&mut fields, &ACCESS, "shower type", faults).map_or(Slot::Absent, Slot::Given);
    read.work_surface_adjusts = fields.read("work surface adjusts", faults, yes_no);
    read.shelves_in_reach = fields.read("shelves in reach", faults, percent);
    for field in ACCESS.fields.iter().filter(|field| matches!(field.shape, Shape::Readings)) {
        if let Slot::Given(measured) = fields.read(field.key, faults, readings) {
            read.lengths.insert(field.key, measured.value);
        }
    }
    fields.finish(faults);
    read
}
