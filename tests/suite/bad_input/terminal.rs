//! Names and texts of others reach the terminal written out, so that they can neither steer it nor turn its lines.

use std::process::Command;

use crate::issued::{IssuedBook, seal};
use crate::project::{Project, Ran};

use super::TODAY;

/// Clears the screen and sets the title; turns the reading order; eight-bit forms of the same.
const HOSTILE: &str = "a\u{1b}[2J\u{1b}]0;b\u{7}\u{202e}c\u{9b}d";

#[track_caller]
fn is_inert(ran: &Ran) {
    for said in [&ran.stdout, &ran.stderr] {
        let steers = |letter: char| {
            letter.is_control() && !matches!(letter, '\n' | '\t') || matches!(letter, '\u{202a}'..='\u{202e}')
        };
        assert!(!said.contains(steers), "{said:?}");
    }
}

fn hostile_book() -> Project {
    let escaped = "a\\e[2J\\e]0;b\\a\\u202ec\\x9bd";
    let hostile =
        format!("selection: \"{escaped}\"\nkind: tap\n\"{escaped}\": 1\nfinish: \"{escaped}\"\nplace: \"{escaped}\"\n");
    Project::new()
        .file("book.yaml", "title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n")
        .file("rooms/kitchen/room.yaml", "name: Kitchen\nceiling: 8' 1\"\n")
        .file("rooms/kitchen/hostile.yaml", &hostile)
        .file(&format!("rooms/kitchen/{HOSTILE}.jpg"), "no picture")
}

#[test]
fn names_and_texts_of_a_book_are_written_out_by_each_command() {
    let book = hostile_book();
    let out = book.beside("site");
    let out = out.to_str().unwrap();
    for arguments in [
        &["review"][..],
        &["review", "--format", "json"],
        &["review", "--format", "sarif"],
        &["status"],
        &["status", "--format", "json"],
        &["publish", "--out", out],
        &["publish", "--draft", "--out", out],
        &["issue", "--for", "approval"],
        &["compare"],
    ] {
        is_inert(&book.run(arguments.iter().chain(&TODAY)));
    }
    let ran = book.run(["review"].iter().chain(&TODAY)).exits(1);
    ran.says("<U+001B>[2J").says("<U+202E>").says("<U+009B>");
}

/// What a file or a thing is called stands in its line, so that it can't make a line that reads as ours.
#[test]
fn a_name_with_a_break_in_it_stays_in_its_line() {
    let forged = "a\n0 stops, 0 queries, 0 notes\n";
    let book = Project::new()
        .file(
            "book.yaml",
            "title: \"A\\nB\"\nclient: Nobody\nunits: imperial\ncurrency: USD\nfirm: {name: \"A\\nB\"}\n",
        )
        .file(
            &format!("rooms/kitchen/{forged}.yaml"),
            "selection: \"Tap\\n0 stops\"\nkind: tap\nplace: \"a\\n0 stops\"\n",
        )
        .file(&format!("rooms/kitchen/{forged}.jpg"), "no picture")
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n");
    for arguments in [&["review"][..], &["status"], &["publish", "--out", book.beside("site").to_str().unwrap()]] {
        let ran = book.run(arguments.iter().chain(&TODAY));
        assert!(
            ran.stdout.contains("<U+000A>") || ran.stderr.contains("<U+000A>"),
            "{arguments:?}: {} {}",
            ran.stdout,
            ran.stderr
        );
        for line in ran.stdout.lines().chain(ran.stderr.lines()) {
            assert!(!line.starts_with("0 stops") && line != "B", "{arguments:?}: {line}");
        }
    }
}

/// Arguments are quoted where they can't be understood: a name that a shell completed is no command of a terminal.
#[test]
fn arguments_that_can_t_be_understood_are_written_out() {
    let book = hostile_book();
    let (item, option) = (format!("{HOSTILE}/"), format!("--{HOSTILE}"));
    for arguments in [
        &[HOSTILE][..],
        &["review", &option],
        &["review", ".", HOSTILE],
        &["review", "--today", HOSTILE],
        &["review", "--format", HOSTILE],
        &["preview", "--port", HOSTILE],
        &["host", "--address", HOSTILE],
        &["issue", "--for", HOSTILE],
        &["receive", "--met", &item, "--by", "Ines", "--note", "x"],
        &["receive", "--by-hand", "ada", "--given", HOSTILE],
        &["receive", "--by-hand", "ada", "--decision", HOSTILE],
    ] {
        let ran = book.run(arguments).exits(2).says("<U+202E>").says("<U+009B>");
        is_inert(&ran);
        let mut coloured = book.command(arguments);
        is_inert(&Ran::of(coloured.env("CLICOLOR_FORCE", "1")));
    }
    // On a terminal too, where colours are shown (script: util-linux).
    let program = env!("CARGO_BIN_EXE_bookmatch");
    for (argument, says) in [("'--a\u{1b}[8mb'", "<U+001B>[8mb"), ("'--ab'", "\u{1b}[")] {
        let line = format!("{program} review {argument}");
        let mut command = Command::new("script");
        let ran = Ran::of(command.args(["-qec", &line, "/dev/null"]).env_remove("NO_COLOR").env("TERM", "xterm"));
        let ran = ran.says(says);
        assert!(!ran.stdout.contains("\u{1b}[8m"), "{:?}", ran.stdout);
    }
}

#[test]
fn json_and_sarif_say_the_name_itself_in_escapes() {
    let book = hostile_book();
    for format in ["json", "sarif"] {
        let ran = book.run(["review", "--format", format].iter().chain(&TODAY));
        is_inert(&ran);
        let text = ran.stdout_is_json().to_string();
        let name = serde_json::to_string(HOSTILE).unwrap();
        assert!(text.contains(name.trim_matches('"')), "{format}");
    }
}

#[test]
fn a_stranger_s_name_is_written_out_when_a_response_is_received() {
    let book = IssuedBook::new();
    let folder = tempfile::tempdir().unwrap();
    for (number, place) in ["/signed/name", "/who", "/items/0/room", "/book", "/format"].into_iter().enumerate() {
        let mut response = book.response(u32::try_from(number).unwrap() + 1);
        *response.pointer_mut(place).unwrap() = HOSTILE.into();
        let file = folder.path().join(format!("{HOSTILE}-{number}.json"));
        std::fs::write(&file, seal(response, &book.keys[0])).unwrap();
        let mut command = Command::new(env!("CARGO_BIN_EXE_bookmatch"));
        command.args(["receive", book.path().to_str().unwrap(), file.to_str().unwrap()]);
        is_inert(&Ran::of(&mut command));
    }
}
