//! What is printed and signed.

mod cautions;
pub mod change_order;
pub mod changed_item;
mod changed_term;
pub(super) mod parts;
pub mod sign_off;
pub mod sign_off_item;
