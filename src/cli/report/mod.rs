//! Findings as text, JSON or SARIF, and the one way to the terminal for all that is said.

mod approvals;
pub mod change_order;
pub mod change_order_json;
mod deliveries;
mod holders;
mod json;
mod next;
mod open;
mod sarif;
mod sheets;
mod shown;
mod status;
mod taken;
mod terminal;
mod text;
mod usage;

use crate::pipeline::Review;

use super::Failure;

pub use open::{OpenShown, open_values};
pub use terminal::{for_a_bar, say, say_failures, say_text, says_colours as to_a_terminal};
pub use usage::{parsed, print_usage};

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
        Format::Text if terminal::prints_colours() => Ok(terminal::put(&shown::styled(&text::report(review, true)))?),
        Format::Text => print(&text::report(review, false)),
        Format::Json => print_json(&json::report(review)),
        Format::Sarif => print_json(&sarif::report(review)),
    }
}

/// Says what a review found, beside the result.
pub fn say_review(review: &Review) {
    if to_a_terminal() {
        terminal::say_styled(text::report(review, true).trim_end());
    } else {
        terminal::say_text(text::report(review, false).trim_end());
    }
}

/// Prints a result of one line.
///
/// # Errors
/// When it can't be printed.
pub fn print_line(result: &str) -> Result<(), Failure> {
    Ok(terminal::put(&(shown::line(result) + "\n"))?)
}

/// Prints a result.
pub fn print(result: &str) -> Result<(), Failure> {
    Ok(terminal::put(&shown::plain(result))?)
}

/// Prints a result for programs.
pub fn print_json(result: &str) -> Result<(), Failure> {
    Ok(terminal::put(&shown::json(result))?)
}
