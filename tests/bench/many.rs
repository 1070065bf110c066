//! A made-up book of as many selections as are wanted, each with two options, in rooms of twenty; and what
//! publishing it takes.

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// What a run took.
#[derive(Debug)]
#[allow(dead_code)]
pub struct Took {
    /// Whether it ended well.
    pub success: bool,
    /// How long, in seconds.
    pub seconds: f64,
    /// The most memory that it held at a time, in KiB; 0 where the system does not tell.
    pub peak: u64,
}

/// Publishes a book with every sheet to set.
#[allow(dead_code)]
pub fn publish(book: &Path, out: &Path) -> Took {
    let mut publish = Command::new(env!("CARGO_BIN_EXE_bookmatch"));
    publish.args(["publish", "--draft", "--today", "2027-01-15", "--out"]).args([out, book]);
    measured(&mut publish)
}

/// Runs a command to its end, in silence.
#[allow(clippy::disallowed_methods, dead_code)]
pub fn measured(command: &mut Command) -> Took {
    let began = Instant::now();
    let mut child = command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().expect("bookmatch");
    let mut peak = 0;
    let status = loop {
        // The system's own mark of the most that was held, while there is a process to ask.
        let told = std::fs::read_to_string(format!("/proc/{}/status", child.id())).unwrap_or_default();
        let line = told.lines().find_map(|line| line.strip_prefix("VmHWM:"));
        peak = line.and_then(|line| line.trim().trim_end_matches(" kB").parse().ok()).unwrap_or(peak);
        if let Some(status) = child.try_wait().expect("a child") {
            break status;
        }
        std::thread::sleep(Duration::from_millis(5));
    };
    Took { success: status.success(), seconds: began.elapsed().as_secs_f64(), peak }
}

/// The selections of one room.
const IN_A_ROOM: usize = 20;

/// Lays a book of `count` selections out in a folder.
#[allow(clippy::disallowed_methods)]
pub fn lay_out(root: &Path, count: usize) {
    let write = |path: String, text: String| {
        let path = root.join(path);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        std::fs::write(path, text).expect("a file");
    };
    let approvers = "approvers:\n  - {id: ada, name: Ada Oko}\n  - {id: ilse, name: Ilse Oko}\n";
    write(
        "book.yaml".into(),
        format!(
            "title: A\nclient: B\nunits: imperial\ncurrency: USD\nmilestones: {{cabinets set: 2027-09-01}}\n{approvers}"
        ),
    );
    for number in 0..count {
        let (room, at) = (number / IN_A_ROOM, number % IN_A_ROOM);
        if at == 0 {
            let openings: String = (0..IN_A_ROOM.min(count - number)).map(opening).collect();
            write(format!("rooms/r{room}/room.yaml"), format!("name: Room {room}\nopenings:\n{openings}"));
        }
        write(format!("rooms/r{room}/s{at}.yaml"), selection(number, at));
    }
}

fn opening(at: usize) -> String {
    format!(
        "  o{at}: {{takes: range, width: [30 1/16\", 30 1/4\", 30 1/8\"], height: 37\", depth: 25 1/2\", measured: {{on: 2027-01-11, by: Teo}}}}\n"
    )
}

fn selection(number: usize, at: usize) -> String {
    let option = |id: &str, price: &str| {
        format!(
            "  - {{id: {id}, maker: Velmora, model: {id}-{number}, finish: {id}, size: {{width: 29 7/8\", height: 35 3/4\" to 36 3/4\", depth: 25\", depth with handle: 26 1/2\"}}, price: {price}}}\n"
        )
    };
    let [steel, enamel] = [option("steel", "3180.00"), option("enamel", "3590.00")];
    format!(
        "selection: Range {at}\nkind: range\nplace: o{at}\nneeded for: cabinets set\nwhy: Sealed burners, and an oven wide enough for a full sheet pan.\nsupplier: Oren\nlead time: 6-8 weeks\nquantity: 1\nfit:\n  sheet: {{name: C-30, revision: D, date: 2026-09-04}}\n  opening: {{width: 30\" to 30 1/4\", height: 36\", depth: at least 24\"}}\n  needs: {{power: 120 V 15 A 5-15, gas: natural gas}}\n  weight: 205 lb\noptions:\n{steel}{enamel}chosen: steel\n"
    )
}
