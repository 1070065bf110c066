//! The commands, one file each.
//!
//! Results go to standard output, everything else to standard error. Exit codes: 0 clean, 1 findings
//! that stop the work, 2 the folder can't be read or the tool can't do its work.

mod about;
mod book_folder;
mod clock;
mod help;
mod laid;
mod narrow;
mod progress;
mod report;
mod scan;
mod stated;
mod written;

mod compare;
mod explain;
mod host;
mod invite;
mod issue;
mod one_file;
mod preview;
mod publish;
mod receive;
mod review;
mod schema;
mod sent;
mod served;
mod start;
mod status;

use std::ffi::OsString;

use clap::{Parser, Subcommand};

/// Reviews and publishes the selections book of a remodel
#[derive(Parser)]
#[command(name = "bookmatch", version, max_term_width = 100)]
pub struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    Start(start::Start),
    Review(review::Review),
    Status(status::Status),
    Issue(issue::Issue),
    Compare(compare::Compare),
    Publish(publish::Publish),
    Preview(preview::Preview),
    Invite(invite::Invite),
    Receive(Box<receive::Receive>),
    Host(host::Host),
    Explain(explain::Explain),
    Schema(schema::Schema),
    About(about::About),
}

/// Nothing stops the work.
pub const CLEAN: u8 = 0;
/// Findings stop the work.
pub const STOPPED: u8 = 1;
/// The folder can't be read, or the tool can't do its work.
pub const FAILED: u8 = 2;

/// Runs a command line, and gives its exit code.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> u8 {
    report::say_failures();
    let given: Vec<OsString> = arguments.into_iter().collect();
    let arguments: Arguments = match report::parsed(&given) {
        Ok(arguments) => arguments,
        Err(error) => {
            report::print_usage(&error, &given);
            return if error.use_stderr() { FAILED } else { CLEAN };
        }
    };
    let outcome = match arguments.command {
        Command::Start(command) => command.run(),
        Command::Review(command) => command.run(),
        Command::Status(command) => command.run(),
        Command::Issue(command) => command.run(),
        Command::Compare(command) => command.run(),
        Command::Publish(command) => command.run(),
        Command::Preview(command) => command.run(),
        Command::Invite(command) => command.run(),
        Command::Receive(command) => command.run(),
        Command::Host(command) => command.run(),
        Command::Explain(command) => command.run(),
        Command::Schema(command) => command.run(),
        Command::About(command) => command.run(),
    };
    outcome.unwrap_or_else(|error| {
        report::say(&format!("bookmatch: {error}"));
        FAILED
    })
}

/// Why a command can't do its work, in words that say what to do.
pub type Failure = Box<dyn std::error::Error>;
