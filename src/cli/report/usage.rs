//! What is said of the arguments: how a command is used, and what of it can't be understood.

use std::ffi::OsString;

use clap::builder::Styles;
use clap::error::ErrorKind;
use clap::{Error, Parser};

use super::{shown, terminal};
use crate::cli::help::grouped;

/// The arguments as they are understood. What is to be said instead bears colours only where none of the
/// arguments could bring its own.
///
/// # Errors
/// When they can't be understood, or help is asked for.
pub fn parsed<P: Parser>(arguments: &[OsString]) -> Result<P, Error> {
    let command = grouped(P::command());
    let command = if are_plain(arguments) { command } else { command.styles(Styles::plain()) };
    let matches = command.try_get_matches_from(arguments)?;
    P::from_arg_matches(&matches)
}

/// Says it, or prints it where it was asked for.
pub fn print_usage(error: &Error, arguments: &[OsString]) {
    let is_asked = matches!(error.kind(), ErrorKind::DisplayHelp | ErrorKind::DisplayVersion);
    let colours = if is_asked { terminal::prints_colours() } else { terminal::says_colours() };
    let text = error.render();
    // Without its colours a text loses those of the arguments too: where there can be any, all is written out.
    let text = if colours || !are_plain(arguments) { text.ansi().to_string() } else { text.to_string() };
    let styled = colours && are_plain(arguments);
    // Nothing is left to be done if even this can't be printed.
    match (is_asked, styled) {
        (true, true) => _ = terminal::put(&shown::styled(&text)),
        (true, false) => _ = terminal::put(&shown::plain(&text)),
        (false, true) => terminal::say_styled(text.trim_end()),
        (false, false) => terminal::say_text(text.trim_end()),
    }
}

/// Whether nothing in the arguments would steer a terminal.
fn are_plain(arguments: &[OsString]) -> bool {
    arguments.iter().map(|one| one.to_string_lossy()).all(|one| shown::plain(&one) == one)
}
