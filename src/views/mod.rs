//! What each page says, worded and formatted, as plain structs.
//!
//! Nothing here knows a template; a template knows nothing but these structs. Every field is in the
//! reader's words: templates loop over lists and leave out what is absent, and do nothing else.

pub mod html;

pub mod wording;

pub mod sheet;

pub mod photo;

pub mod state;

pub mod board;

pub mod drawing;

pub mod cover;

pub mod room;

pub mod item;

pub mod data;

pub mod asked;

pub mod signature;

pub mod sign;

pub mod sign_off;

pub mod change_order;

pub mod installer;

pub mod opening;

pub mod office;

pub mod schedule;

pub mod review;

pub mod rules;

pub mod site;

pub mod tell;

#[cfg(test)]
pub(crate) mod samples;
