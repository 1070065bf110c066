//! The `fit/` rules: the chosen thing against its opening.

pub mod air;
pub mod cabinet;
pub mod depth;
pub mod door;
pub mod face;
pub mod height;
pub mod play;
pub mod projection;
pub mod square;
pub mod way_in;
pub mod width;
