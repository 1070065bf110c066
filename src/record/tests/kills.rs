//! A recording process is killed, for real.

use std::io::{BufRead, BufReader, Write};
use std::os::unix::process::ExitStatusExt;
use std::process::{Child, Command, Stdio};

use super::*;

const BOOK: &str = "BOOKMATCH_TEST_BOOK";
const WHO: &str = "BOOKMATCH_TEST_WHO";
const FROM: &str = "BOOKMATCH_TEST_FROM";
const TO: &str = "BOOKMATCH_TEST_TO";
const OPERATION: &str = "BOOKMATCH_TEST_OPERATION";
const HALTS: &str = "BOOKMATCH_TEST_HALTS";
const SIGKILL: i32 = 9;
const SIGABRT: i32 = 6;

/// Not a test of its own: what the killed process does. It records one fact after the other, and
/// acknowledges each by a line.
#[test]
#[ignore = "run by the tests that kill it"]
fn the_process_that_is_killed() {
    let told = |name| std::env::var(name).unwrap();
    let operation = told(OPERATION).parse().unwrap();
    let when = if std::env::var_os(HALTS).is_some() { When::Halt(operation) } else { When::Die(operation) };
    let store = Store::on(Disk { fault: Fault { when, ..Fault::default() } }, Path::new(&told(BOOK)));
    let mut out = std::io::stderr();
    for number in told(FROM).parse().unwrap()..told(TO).parse().unwrap() {
        record(&store, &told(WHO), number).unwrap();
        out.write_all(format!("{number}\n").as_bytes()).unwrap();
    }
}

pub(super) fn start(ground: &Ground, who: &str, numbers: std::ops::Range<u32>, operation: usize) -> Child {
    command(ground, who, numbers, operation).spawn().unwrap()
}

fn command(ground: &Ground, who: &str, numbers: std::ops::Range<u32>, operation: usize) -> Command {
    let name = module_path!().split_once("::").unwrap().1;
    let mut command = Command::new(std::env::current_exe().unwrap());
    command
        .args(["--exact", &format!("{name}::the_process_that_is_killed"), "--ignored", "--nocapture"])
        .env(BOOK, ground.book.path())
        .env(WHO, who)
        .env(FROM, numbers.start.to_string())
        .env(TO, numbers.end.to_string())
        .env(OPERATION, operation.to_string())
        .stdout(Stdio::null())
        .stderr(Stdio::piped());
    command
}

/// The last number that was acknowledged before the end, if any.
fn acknowledged(text: &str) -> Option<u32> {
    text.lines().filter_map(|line| line.parse().ok()).next_back()
}

/// Every fact that was acknowledged stands there, in order, each once; at most one more stands there.
fn holds(ground: &Ground, acknowledged: u32, why: &str) {
    let facts = ground.facts();
    let found: Vec<u32> = facts.iter().map(|(_, number)| *number).collect();
    assert!(found.iter().copied().eq(1..=found.len() as u32), "{why}: {found:?}");
    let count = found.len() as u32;
    assert!(count == acknowledged || count == acknowledged + 1, "{why}: {count} stand, {acknowledged} acknowledged");
}

#[test]
fn a_process_that_dies_at_any_operation_or_within_a_write_loses_nothing_acknowledged() {
    let ground = Ground::new();
    let mut known = 0;
    for operation in 1..40 {
        let child = start(&ground, "a", known + 1..u32::MAX, operation);
        let ended = child.wait_with_output().unwrap();
        assert_eq!(ended.status.signal(), Some(SIGABRT), "operation {operation}");
        known = acknowledged(&String::from_utf8_lossy(&ended.stderr)).unwrap_or(known);
        holds(&ground, known, &format!("operation {operation}"));
    }
    assert!(known > 100, "only {known} facts were acknowledged");
}

/// Ten ledgers, each of which outlives fifty kills: a longer one takes its time to be read, and shows nothing more.
#[test]
fn a_process_that_is_killed_five_hundred_times_loses_nothing_and_records_nothing_twice() {
    let began = std::time::Instant::now();
    // Any sequence would do; this one is the same each time.
    let mut chance: u64 = 20_270_116;
    let (mut all, mut kinds) = (0, [0; 3]);
    for ledger in 0..10 {
        let (ground, mut known) = (Ground::new(), 0);
        for round in 0..50 {
            chance = chance.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            let operation = usize::try_from((chance >> 33) % 40).unwrap() + 1;
            known = killed(&ground, known, operation);
            holds(&ground, known, &format!("ledger {ledger}, round {round}"));
        }
        all += known;
        for line in ground.chain().lines {
            match line.fact {
                Fact::Received(_) => kinds[0] += 1,
                Fact::Sent(_) => kinds[1] += 1,
                Fact::Acknowledged(_) => kinds[2] += 1,
                _ => {}
            }
        }
    }
    assert!(all > 500, "only {all} facts were acknowledged");
    let [deliveries, transmittals, acknowledgements] = kinds;
    assert!(kinds.iter().all(|count| *count > 100), "{kinds:?}");
    println!(
        "500 kills, {all} facts acknowledged ({deliveries} deliveries, {transmittals} transmittals, \
         {acknowledgements} acknowledgements), in {:.1?}",
        began.elapsed()
    );
}

/// The last number that a process acknowledged, that records on from one and is killed at an operation.
fn killed(ground: &Ground, known: u32, operation: usize) -> u32 {
    let mut child = command(ground, "a", known + 1..u32::MAX, operation).env(HALTS, "").spawn().unwrap();
    let mut text = String::new();
    let mut said = BufReader::new(child.stderr.take().unwrap());
    while !text.ends_with("halted\n") {
        assert!(said.read_line(&mut text).unwrap() > 0, "it ended before operation {operation}: {text}");
    }
    child.kill().unwrap();
    assert_eq!(child.wait().unwrap().signal(), Some(SIGKILL));
    acknowledged(&text).unwrap_or(known)
}
