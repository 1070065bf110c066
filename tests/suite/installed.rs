//! What goes with the program where it is installed: completions, the manual page, licences, help.

mod debian;
mod licences;

use std::process::Command;

use crate::project::Ran;

/// The top of the repository.
fn root() -> &'static std::path::Path {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn bookmatch(arguments: &[&str]) -> Ran {
    Ran::of(Command::new(env!("CARGO_BIN_EXE_bookmatch")).args(arguments))
}

#[test]
fn a_shell_completes_commands_and_options() {
    let script = "source <(\"$0\" about completions bash) && \
        COMP_WORDS=(bookmatch comp) COMP_CWORD=1 && _bookmatch bookmatch comp bookmatch && echo \"${COMPREPLY[*]}\" && \
        COMP_WORDS=(bookmatch review --for) COMP_CWORD=2 && _bookmatch bookmatch --for review && echo \"${COMPREPLY[*]}\"";
    Ran::of(Command::new("bash").args(["-c", script, env!("CARGO_BIN_EXE_bookmatch")]))
        .exits(0)
        .says_exactly("compare\n--format\n");
    for shell in ["elvish", "fish", "powershell", "zsh"] {
        bookmatch(&["about", "completions", shell]).exits(0).says("bookmatch");
    }
}

#[test]
fn the_manual_page_tells_every_command_with_its_options() {
    let page = bookmatch(&["about", "manual"]).exits(0);
    for command in ["start", "review", "publish", "issue", "receive", "host", "about"] {
        let heading = format!("COMMAND {}", command.to_uppercase());
        assert!(page.stdout.contains(&heading), "{heading}: {}", page.stdout);
    }
    assert!(page.stdout.contains(".TH "), "{}", page.stdout);
    assert!(page.stdout.contains("today") && page.stdout.contains("draft"), "{}", page.stdout);
}

#[test]
fn help_lists_the_commands_by_who_uses_them() {
    bookmatch(&["--help"]).exits(0).says("Make the book:\n  start").says("Follow the job:\n  status").says("--version");
    bookmatch(&["review", "--help"]).exits(0).says("Usage: bookmatch review").says("--format");
}
