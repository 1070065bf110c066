//! What a user sees, and the house rules, tested from outside the crate.

// Tests lay out and break folders themselves.
#![allow(clippy::disallowed_methods)]

mod project;

mod asked;
mod bad_input;
mod books;
mod browser;
mod carried;
mod concerns;
mod contrast;
mod cut_sheets;
mod delivered;
mod drawn;
mod findings;
mod floods;
mod hosted;
mod house;
mod installed;
mod invited;
mod issued;
mod issuing;
#[cfg(all(target_os = "linux", feature = "sheets"))]
mod large_books;
mod load;
mod lost;
mod marks;
mod measured;
mod mistakes;
mod model;
mod next;
mod not_known;
mod own_units;
mod pictures;
mod plain_words;
mod publishing;
mod recipes;
mod reckoned;
mod remaking;
mod review;
mod schema;
#[cfg(feature = "sheets")]
mod sent;
mod sheet_marks;
mod sheets;
mod shown;
mod signing;
mod starting;
mod status;
mod stories;
mod strangers;
mod taken;
mod tax;
mod themes;
mod third_language;
mod trades;
mod unapproved;
mod units;
mod upgrade;
mod validator;
mod verified;
mod written_down;
