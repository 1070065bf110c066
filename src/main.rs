//! Hands the arguments to the command line and turns its answer into an exit code.

use std::process::ExitCode;

fn main() -> ExitCode {
    ExitCode::from(bookmatch::cli::run(std::env::args_os()))
}
