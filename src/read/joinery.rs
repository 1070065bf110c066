//! Reads cabinets' fronts, and what they hold.

use crate::book::vocabulary::{FRONTS, STORES};
use crate::book::{Fronts, Stores};
use crate::source::Spanned;
use crate::source::yaml::Node;

use super::faults::Faults;
use super::fields::Fields;
use super::values::{one_of, positive_length, whole, word_slot};

/// Doors and drawer fronts.
pub fn fronts(node: &Node, faults: &mut Faults) -> Option<Fronts> {
    let mut fields = Fields::of(node, &FRONTS, faults)?;
    let fronts = Fronts {
        doors: fields.read("doors", faults, whole),
        drawers: fields.read("drawers", faults, whole),
        thickness: fields.read("thickness", faults, positive_length),
    };
    fields.finish(faults);
    Some(fronts)
}

/// Shelves and bins.
pub fn stores(node: &Node, faults: &mut Faults) -> Option<Stores> {
    let mut fields = Fields::of(node, &STORES, faults)?;
    let stores = Stores {
        depth: fields.read("depth", faults, positive_length),
        shelves: word_slot(&mut fields, &STORES, "shelves", faults),
        highest: fields.read("highest", faults, positive_length),
        bins_near: fields.list("bins near", faults, |node, faults| {
            let places: &[&str] = &["sink", "cooktop", "preparation", "refrigerator"];
            one_of(node, places, faults).map(|place| Spanned::new(place, node.span))
        }),
    };
    fields.finish(faults);
    Some(stores)
}
