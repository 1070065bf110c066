//! The sheets of those who build by rooms and not by openings: one a trade and room, where the room has something
//! for it.

mod built;
mod cells;
mod electrician;
mod fabricator;
mod joiner;
mod layout;
mod page;
mod plumber;
mod points;
mod ready;
mod setter;
mod worded;

pub use page::{Builders, TradePage};
#[cfg(test)]
pub use worded::{ItemBlock, ReadyLine, RowBlock, TableBlock};
