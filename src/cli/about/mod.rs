//! `about`: what goes with the program when it is installed, made from its own definitions.

use clap::{Args, CommandFactory, Subcommand};
use clap_complete::Shell;

use super::report::print;
use super::{Arguments, CLEAN, Failure};

/// The licences of everything that the program is made from; `tests/suite/licences.rs` makes it.
const LICENCES: &str = include_str!("licences.txt");

/// Prints completions, the manual page, licences
#[derive(Args)]
pub struct About {
    #[command(subcommand)]
    what: What,
}

#[derive(Subcommand)]
enum What {
    /// Prints what a shell needs to complete commands and options
    Completions {
        /// The shell
        shell: Shell,
    },
    /// Prints the manual page, for `man`
    Manual,
    /// Prints the licences of all that the program is made from
    Licences,
}

impl About {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        match &self.what {
            What::Completions { shell } => print(&completions(*shell)?)?,
            What::Manual => print(&manual()?)?,
            What::Licences => print(LICENCES)?,
        }
        Ok(CLEAN)
    }
}

/// The completions of a shell.
fn completions(shell: Shell) -> Result<String, Failure> {
    let mut written = Vec::new();
    clap_complete::generate(shell, &mut Arguments::command(), "bookmatch", &mut written);
    Ok(String::from_utf8(written)?)
}

/// The manual page: the program, then each command with its options.
fn manual() -> Result<String, Failure> {
    let mut whole = Arguments::command();
    whole.build();
    let mut written = Vec::new();
    let page = clap_mangen::Man::new(whole.clone()).manual("User commands");
    page.render_title(&mut written)?;
    page.render_name_section(&mut written)?;
    page.render_synopsis_section(&mut written)?;
    page.render_description_section(&mut written)?;
    for command in whole.get_subcommands().filter(|command| command.get_name() != "help") {
        let name = command.get_name().to_uppercase();
        written.extend(format!(".SH \"COMMAND {name}\"\n").bytes());
        let page = clap_mangen::Man::new(command.clone());
        let mut sections = Vec::new();
        page.render_synopsis_section(&mut sections)?;
        page.render_description_section(&mut sections)?;
        page.render_options_section(&mut sections)?;
        // Sections of a command are parts of its own section.
        let sections = String::from_utf8(sections)?;
        let parts = sections
            .lines()
            .map(|line| line.strip_prefix(".SH ").map_or_else(|| line.to_string(), |heading| format!(".SS {heading}")));
        written.extend((parts.collect::<Vec<_>>().join("\n") + "\n").bytes());
    }
    Ok(String::from_utf8(written)?)
}
