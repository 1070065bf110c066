//! bookmatch: a remodel's selections book, reviewed and published.
//!
//! One way through, each stage with one input and one output:
//! [`source`] (the folder) → [`read`] → [`book`] (worded by [`vocabulary`]) →
//! [`site`] → [`assess`] and [`pictures`] → [`views`] →
//! [`publish`]. Nothing flows back; `tests/suite/house.rs` holds the table of allowed imports.

// Tests lay out and break folders themselves.
#![cfg_attr(test, allow(clippy::disallowed_methods))]
// No text of a user may end the program: nothing that panics on what it is given.
#![cfg_attr(
    not(test),
    deny(
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic,
        clippy::print_stderr,
        clippy::print_stdout,
        clippy::string_slice,
        clippy::todo,
        clippy::unimplemented,
        clippy::unreachable,
        clippy::unwrap_used
    )
)]

pub mod units;

pub mod digest;

pub mod ledger;

pub mod source;

pub mod finding;

pub mod theme;

pub mod language;

pub mod vocabulary;

pub mod book;

pub mod read;

pub mod pictures;

pub mod shown;

pub mod site;

pub mod assess;

pub mod drawings;

pub mod views;

pub mod publish;

pub mod record;

pub mod pipeline;

pub mod serving;

pub mod preview;

pub mod host;

pub mod start;

pub mod explain;

pub mod schema;

pub mod cli;
