//! Reads how an order stands.

use crate::book::Order;
use crate::book::vocabulary::ORDER;
use crate::source::yaml::Node;

use super::faults::Faults;
use super::fields::Fields;
use super::values::{date, text};

/// What the supplier has said, and whether it is ordered.
pub fn order(node: &Node, faults: &mut Faults) -> Option<Order> {
    let mut fields = Fields::of(node, &ORDER, faults)?;
    let order = Order {
        quote: fields.read("quote", faults, text),
        good_until: fields.read("good until", faults, date),
        available_on: fields.read("available on", faults, date),
        placed_on: fields.read("placed on", faults, date),
        promised_for: fields.read("promised for", faults, date),
    };
    fields.finish(faults);
    Some(order)
}
