//! Hands the arguments to the command line and turns its answer into an exit code.

#![deny(clippy::expect_used, clippy::indexing_slicing, clippy::panic, clippy::string_slice, clippy::unwrap_used)]

use std::process::ExitCode;

fn main() -> ExitCode {
    ExitCode::from(bookmatch::cli::run(std::env::args_os()))
}
