//! Findings as text, JSON or SARIF, and the one way to the terminal for all that is said.

mod approvals;
pub mod change_order;
mod json;
mod sarif;
mod shown;
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

/// Prints where a book stands, in that format.
pub fn print_status(review: &Review, format: StatusFormat) -> Result<(), Failure> {
    match format {
        StatusFormat::Text => print(&status::text(review)),
        StatusFormat::Json => print_json(&status::json(review)),
    }
}

/// Prints a review in that format.
pub fn print_review(review: &Review, format: Format) -> Result<(), Failure> {
    match format {
        Format::Text if can_colour(&std::io::stdout()) => put(&shown::styled(&text::report(review, true))),
        Format::Text => print(&text::report(review, false)),
        Format::Json => print_json(&json::report(review)),
        Format::Sarif => print_json(&sarif::report(review)),
    }
}

/// Says what a review found, beside the result.
pub fn say_review(review: &Review) {
    if to_a_terminal() {
        // Nothing is left to be done if even the message can't be printed.
        let _ = writeln!(std::io::stderr().lock(), "{}", shown::styled(text::report(review, true).trim_end()));
    } else {
        say(text::report(review, false).trim_end());
    }
}

/// Whether colours can be seen on standard error.
pub fn to_a_terminal() -> bool {
    can_colour(&std::io::stderr())
}

fn can_colour(stream: &impl IsTerminal) -> bool {
    stream.is_terminal() && std::env::var_os("NO_COLOR").is_none()
}

/// Prints a result.
pub fn print(result: &str) -> Result<(), Failure> {
    put(&shown::plain(result))
}

/// Prints a result for programs.
pub fn print_json(result: &str) -> Result<(), Failure> {
    put(&shown::json(result))
}

/// A reader that stopped reading is no failure.
fn put(result: &str) -> Result<(), Failure> {
    match std::io::stdout().lock().write_all(result.as_bytes()) {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => Err(error.into()),
        _ => Ok(()),
    }
}

/// Says something to whoever runs the command.
pub fn say(message: &str) {
    // Nothing is left to be done if even the message can't be printed.
    let _ = writeln!(std::io::stderr().lock(), "{}", shown::plain(message));
}
