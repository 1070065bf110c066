//! Who approved what, worked out by another program from what the handbook says, over random histories.

mod books;
mod dice;
mod history;
mod kept;
mod said;
mod told;

use std::io::{BufWriter, Write};
use std::path::Path;
use std::process::{Child, Command, Stdio};

use books::Books;
use dice::Dice;
use history::History;

/// So many histories are told in the usual run; `BOOKMATCH_HISTORIES` asks for another number.
const HISTORIES: u64 = 20_000;
/// Where they begin; `BOOKMATCH_HISTORIES_FROM` asks for another beginning.
const FROM: u64 = 1;

fn asked_for(name: &str, usual: u64) -> u64 {
    let number = |text: String| text.parse().unwrap_or_else(|_| panic!("`{name}` is no number: {text}"));
    std::env::var(name).map_or(usual, number)
}

/// The model: a program of Python's standard library alone.
fn model() -> Child {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/model/approvals.py");
    let mut command = Command::new("python3");
    command.arg(script).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command.spawn().expect("python3 can be run")
}

/// Tells so many histories to a model, and gives what it says and whether it agrees.
fn tell(histories: impl Iterator<Item = u64>, books: &mut Books, bent: bool) -> (bool, String) {
    let mut model = model();
    let mut to = BufWriter::new(model.stdin.take().expect("it reads"));
    // A model that has found a difference reads no further.
    let mut told = writeln!(to, "{}", books.contents());
    for number in histories {
        if told.is_err() {
            break;
        }
        let history = History::of(books, Dice::of(number));
        let mut came_to = told::came_to(books.as_it_stands(&history));
        if bent {
            came_to["items"][0]["orderable"] = (!came_to["items"][0]["orderable"].as_bool().unwrap_or(false)).into();
        }
        told = writeln!(to, "{}", told::line(number, &history, books, came_to));
    }
    drop(to);
    let ran = model.wait_with_output().expect("the model ends");
    let said = [ran.stdout, ran.stderr].concat();
    (ran.status.success(), String::from_utf8_lossy(&said).into_owned())
}

/// Source: the page `explain ledger`, which the model follows; Python's `json` and `hashlib`.
#[test]
fn whatever_happens_comes_to_the_same_in_another_program() {
    let (count, from) = (asked_for("BOOKMATCH_HISTORIES", HISTORIES), asked_for("BOOKMATCH_HISTORIES_FROM", FROM));
    let (agrees, said) = tell(from..from + count, &mut Books::read(), false);
    assert!(agrees, "{said}");
    println!("{said}");
    assert!(said.starts_with(&format!("{count} histories come to the same")), "{said}");
    // Each state is met, so that none agrees because it never came up.
    for state in told::STATES {
        assert!(count < 1_000 || said.contains(&format!("  {state}: ")), "`{state}` never came up: {said}");
    }
}

#[test]
fn a_history_that_comes_to_something_else_is_told() {
    let (agrees, said) = tell(1..50, &mut Books::read(), true);
    assert!(!agrees && said.contains("the program says") && said.contains("orderable"), "{said}");
}
