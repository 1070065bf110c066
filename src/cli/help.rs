//! The list of commands, by who uses them.

use clap::Command;

/// Each heading with its commands, in the order of the work.
const GROUPS: [(&str, &[&str]); 4] = [
    ("Make the book", &["start", "review", "preview", "explain", "schema"]),
    ("Send it and hear from the client", &["publish", "issue", "invite", "host", "receive"]),
    ("Follow the job", &["status", "compare"]),
    ("Install the program", &["about"]),
];

/// What is printed instead of clap's own list, which knows no groups.
const TEMPLATE: &str = "{about}\n{usage-heading} {usage}{after-help}\n";

/// The command line with its commands listed by who uses them.
pub fn grouped(whole: Command) -> Command {
    let list = list(&whole);
    whole.help_template(TEMPLATE).after_help(list)
}

fn list(whole: &Command) -> String {
    let line = |name: &&str| {
        let about = whole.find_subcommand(name).and_then(Command::get_about).map(ToString::to_string);
        format!("  {name:<8} {}\n", about.unwrap_or_default())
    };
    let groups =
        GROUPS.iter().map(|(heading, names)| format!("{heading}:\n{}", names.iter().map(line).collect::<String>()));
    groups.collect::<String>() + "\n`bookmatch COMMAND --help` tells the rest; `-V` or `--version` the version."
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;
    use crate::cli::Arguments;

    #[test]
    fn every_command_stands_in_one_group() {
        let mut listed: Vec<&str> = GROUPS.iter().flat_map(|(_, names)| names.iter().copied()).collect();
        let whole = Arguments::command();
        let mut all: Vec<&str> = whole.get_subcommands().map(Command::get_name).collect();
        listed.sort_unstable();
        all.sort_unstable();
        assert_eq!(listed, all);
    }

    #[test]
    fn the_list_fits_a_screen_of_24_lines_and_80_columns() {
        let help = grouped(Arguments::command()).render_help().to_string();
        let lines: Vec<&str> = help.lines().collect();
        assert!(lines.len() <= 24, "{} lines:\n{help}", lines.len());
        let long: Vec<_> = lines.iter().filter(|line| line.chars().count() > 80).collect();
        assert!(long.is_empty(), "{long:#?}");
    }
}
