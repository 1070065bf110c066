//! The pages of those who choose and pay: no cost, no margin, no private note.

pub mod board;
pub mod cover;
pub mod decision_request;
mod due;
pub mod item;
mod item_signed;
mod price;
pub mod reminder;
pub mod room;
mod room_drawings;
pub mod sign;
