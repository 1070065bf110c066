//! What the supplier has said of an order, and when.

use super::Slot;
use crate::units::Date;

/// How an order stands.
#[derive(Clone, Debug, Default)]
pub struct Order {
    /// The number of the supplier's quotation.
    pub quote: Slot<String>,
    /// The last day on which the quotation holds.
    pub good_until: Slot<Date>,
    /// The day on which the supplier last said that it can be had.
    pub available_on: Slot<Date>,
    /// The day on which it was ordered.
    pub placed_on: Slot<Date>,
    /// The day on which the supplier says it comes.
    pub promised_for: Slot<Date>,
}
