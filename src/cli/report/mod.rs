//! Findings as text, JSON or SARIF.

mod approvals;
pub mod change_order;
mod json;
mod sarif;
mod status;
mod text;

use std::io::{IsTerminal, Write};

use crate::pipeline::Review;

use super::Failure;

/// How findings are printed.
#[derive(clap::ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
pub enum Format {
    /// For people: each finding with the line it stands in
    Text,
    /// For programs: findings and their counts
    Json,
    /// For editors and code hosts: SARIF 2.1.0
    Sarif,
}

/// How the standing of a book is printed.
#[derive(clap::ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
pub enum StatusFormat {
    /// For people
    Text,
    /// For programs
    Json,
}

/// Where a book stands, in that format.
pub fn status(review: &Review, format: StatusFormat) -> String {
    match format {
        StatusFormat::Text => status::text(review),
        StatusFormat::Json => status::json(review),
    }
}

/// A review in that format.
pub fn worded(review: &Review, format: Format, colour: bool) -> String {
    match format {
        Format::Text => text::report(review, colour),
        Format::Json => json::report(review),
        Format::Sarif => sarif::report(review),
    }
}

/// Whether colours can be seen on standard error.
pub fn to_a_terminal() -> bool {
    std::io::stderr().is_terminal() && std::env::var_os("NO_COLOR").is_none()
}

/// Prints a result. A reader that stopped reading is no failure.
pub fn print(result: &str) -> Result<(), Failure> {
    match std::io::stdout().lock().write_all(result.as_bytes()) {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => Err(error.into()),
        _ => Ok(()),
    }
}

/// Says something to whoever runs the command.
pub fn say(message: &str) {
    // Nothing is left to be done if even the message can't be printed.
    let _ = writeln!(std::io::stderr().lock(), "{message}");
}
