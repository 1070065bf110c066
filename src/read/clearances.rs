//! Reads what is clear in a room.

use crate::book::vocabulary::CLEARANCES;
use crate::book::{Clearances, Frontage, Slot, Triangle};
use crate::source::Spanned;
use crate::source::yaml::Node;
use crate::vocabulary::values::{positive_length, readings, two_sides};
use crate::vocabulary::{Faults, Fields, Shape, Value};

/// Distances in a room.
pub fn clearances(node: Option<&Node>, faults: &mut Faults) -> Clearances {
    let mut read = Clearances::default();
    let Some(mut fields) = node.and_then(|node| Fields::of(node, &CLEARANCES, faults)) else { return read };
    for (name, node) in fields.named("doorways", faults) {
        if let Some(width) = positive_length(node, faults) {
            read.doorways.push((name.clone(), Spanned::new(width, node.span)));
        }
    }
    read.triangle = fields.read("triangle", faults, Triangle::read);
    read.frontage = fields.read("counter frontage", faults, Frontage::read);
    for field in CLEARANCES.fields {
        match field.shape {
            Shape::Readings => {
                if let Slot::Given(measured) = fields.read(field.key, faults, readings) {
                    read.lengths.insert(field.key, measured.value);
                }
            }
            Shape::Sides => {
                if let Slot::Given(measured) = fields.read(field.key, faults, two_sides) {
                    read.sides.insert(field.key, measured);
                }
            }
            _ => {}
        }
    }
    fields.finish(faults);
    read
}
