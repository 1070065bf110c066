//! The `order/` rules: in time, in the right order, enough, at the price that was quoted.

pub mod before;
pub mod claim;
pub mod expired;
pub mod late;
pub mod quantity;
pub mod received;
pub mod sequence;
pub mod soon;
pub mod supplier;
pub mod unchecked;

use crate::assess::Context;
use crate::book::{ProductOption, Room, Selection};

/// Every settled option that is not ordered yet.
fn to_order<'a>(context: &Context<'a>) -> impl Iterator<Item = (&'a Room, &'a Selection, &'a ProductOption)> {
    context
        .site
        .options()
        .filter(|(_, selection, option)| selection.settled().is_some() && option.order.placed_on.is_absent())
}
