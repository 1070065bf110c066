//! The pages of the firm alone.

mod deliveries;
pub mod index;
mod money;
mod orders;
mod readings;
pub mod responses;
pub mod review;
pub mod rules;
pub mod schedules;
pub mod tables;
