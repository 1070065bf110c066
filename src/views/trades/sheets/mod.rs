//! The sheets of those who build by rooms and not by openings: one a trade and room, where the room has something
//! for it.

mod layout;
mod page;
mod ready;
mod worded;

pub use page::{TradePage, of_trade};
#[cfg(test)]
pub use worded::{ItemBlock, ReadyLine, RowBlock, TableBlock};
