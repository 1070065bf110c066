//! The sheets of those who build by rooms and not by openings: one a trade and room, where the room has something
//! for it.

mod built;
mod page;
mod setter;
mod worded;

pub use page::{Builders, TradePage};
#[cfg(test)]
pub use worded::{ItemBlock, ReadyLine, RowBlock, TableBlock};
