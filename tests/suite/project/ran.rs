//! What a program said and how it ended, with questions to ask of it.

use std::process::{Command, Output};

/// One finished run. Each question that fails shows all that the program said.
pub struct Ran {
    what: String,
    code: Option<i32>,
    pub stdout: String,
    pub stderr: String,
}

impl Ran {
    /// Runs a command to its end.
    pub fn of(command: &mut Command) -> Self {
        let what = format!("{command:?}");
        let output = command.output().unwrap_or_else(|error| panic!("{what}: {error}"));
        Self::from_output(what, output)
    }

    /// What a process that was started elsewhere left.
    pub fn from_output(what: String, output: Output) -> Self {
        let text = |bytes, name| String::from_utf8(bytes).unwrap_or_else(|_| panic!("{what}: {name} is not UTF-8"));
        Self {
            code: output.status.code(),
            stdout: text(output.stdout, "standard output"),
            stderr: text(output.stderr, "standard error"),
            what,
        }
    }

    /// It ended with this code (and not by a signal).
    #[track_caller]
    pub fn exits(self, code: i32) -> Self {
        self.assert(self.code == Some(code), &format!("ends with {code}"));
        self
    }

    /// It printed this somewhere.
    #[track_caller]
    pub fn says(self, words: &str) -> Self {
        let said = self.stdout.contains(words) || self.stderr.contains(words);
        self.assert(said, &format!("says {words:?}"));
        self
    }

    /// It printed this nowhere.
    #[track_caller]
    pub fn does_not_say(self, words: &str) -> Self {
        let said = self.stdout.contains(words) || self.stderr.contains(words);
        self.assert(!said, &format!("does not say {words:?}"));
        self
    }

    /// Standard output is this and nothing else.
    #[track_caller]
    pub fn says_exactly(self, text: &str) -> Self {
        self.assert(self.stdout == text, &format!("says exactly\n{text}"));
        self
    }

    /// Standard error is this and nothing else.
    #[track_caller]
    pub fn complains_exactly(self, text: &str) -> Self {
        self.assert(self.stderr == text, &format!("complains exactly\n{text}"));
        self
    }

    /// Standard output as JSON, of which it must be one whole value.
    #[track_caller]
    pub fn stdout_is_json(&self) -> serde_json::Value {
        let value = serde_json::from_str(&self.stdout);
        self.assert(value.is_ok(), "prints JSON");
        value.expect("just asserted")
    }

    #[track_caller]
    fn assert(&self, holds: bool, wanted: &str) {
        let Self { what, code, stdout, stderr } = self;
        assert!(
            holds,
            "\nexpected that {what}\n{wanted}\n-- it ended with {code:?}\n-- standard output\n{stdout}\n-- standard error\n{stderr}"
        );
    }
}

fn shell(script: &str) -> Ran {
    Ran::of(Command::new("sh").args(["-c", script]))
}

#[test]
fn a_run_that_did_as_expected_passes() {
    let ran = shell("echo one; echo two >&2; exit 3").exits(3).says("one").says("two");
    ran.does_not_say("three").says_exactly("one\n").complains_exactly("two\n");
    assert_eq!(shell("echo '{\"a\": 1}'").stdout_is_json()["a"], 1);
}

#[test]
fn a_run_that_did_otherwise_fails_and_shows_what_was_said() {
    let questions: [fn(Ran); 7] = [
        |ran| drop(ran.exits(0)),
        |ran| drop(ran.says("three")),
        |ran| drop(ran.does_not_say("two")),
        |ran| drop(ran.says_exactly("one")),
        |ran| drop(ran.complains_exactly("one\n")),
        |ran| drop(ran.stdout_is_json()),
        |_| drop(shell("kill -9 $$").exits(0)),
    ];
    for (index, question) in questions.into_iter().enumerate() {
        let ran = shell("echo one; echo two >&2; exit 3");
        let failed = std::panic::catch_unwind(move || question(ran));
        let message = failed.expect_err(&format!("question {index} must fail"));
        let message = message.downcast_ref::<String>().expect("a message");
        assert!(index == 6 || message.contains("-- standard output\none\n"), "{message}");
    }
}
