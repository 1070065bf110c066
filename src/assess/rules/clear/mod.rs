//! The `clear/` rules: room to pass, to work, to sit and to wash, and what must stay away from fire and water.

pub mod above_cooktop;
pub mod glazing;
pub mod hood;
