//! The pages of those who build it in: sizes, services and cautions, no price.

mod approval;
mod code;
pub mod cut_sheets;
pub mod delivery;
mod delivery_asks;
pub mod index;
pub mod opening;
mod opening_drawings;
mod opening_heat;
pub mod opening_sizes;
pub mod opening_tape;
mod opening_tape_more;
pub mod opening_way_in;
pub mod sheets;
