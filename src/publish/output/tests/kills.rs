//! A publishing process is killed, for real.

use std::io::{BufRead, BufReader};
use std::os::unix::process::ExitStatusExt;
use std::process::{Child, Command, Stdio};

use super::super::disk::{Fault, When};
use super::*;

const FOLDER: &str = "BOOKMATCH_TEST_FOLDER";
const OPERATION: &str = "BOOKMATCH_TEST_OPERATION";
const HALTS: &str = "BOOKMATCH_TEST_HALTS";
const SIGKILL: i32 = 9;
const SIGABRT: i32 = 6;

/// Enough files that a kill finds the process at work.
fn many(edition: usize) -> Output {
    let mut output = Output::default();
    for n in 0..60 {
        let text = format!("edition {edition}, page {n} ").repeat(200);
        let kind = if n % 2 == 0 { "html" } else { "css" };
        let path = format!("part-{}/{n}-{}.{kind}", n % 3, if n % 5 == 0 { edition } else { 0 });
        output.insert(path, Content::Bytes(text.into_bytes().into())).unwrap();
    }
    output
}

/// Not a test of its own: what the killed process does. It publishes two editions by turns.
#[test]
#[ignore = "run by the tests that kill it"]
fn the_process_that_is_killed() {
    let folder = PathBuf::from(std::env::var(FOLDER).unwrap());
    let place = OutputFolder { dir: folder.join("site"), book: folder.join("book") };
    let operation = std::env::var(OPERATION).unwrap().parse().unwrap();
    let when = if std::env::var_os(HALTS).is_some() { When::Halt(operation) } else { When::Die(operation) };
    let disk = Disk { fault: Fault { when, ..Fault::default() } };
    for edition in 1.. {
        write_on(&disk, &many(edition % 2), &place, &AtomicBool::new(false)).unwrap();
    }
}

fn start(ground: &Ground, operation: usize) -> Command {
    let name = module_path!().split_once("::").unwrap().1;
    let mut command = Command::new(std::env::current_exe().unwrap());
    command
        .args(["--exact", &format!("{name}::the_process_that_is_killed"), "--ignored", "--nocapture"])
        .env(FOLDER, ground.root.path())
        .env(OPERATION, operation.to_string())
        .stdout(Stdio::null())
        .stderr(Stdio::piped());
    command
}

/// Starts a process that waits just before an operation, and kills it there.
fn kill_at(ground: &Ground, operation: usize) {
    let mut child: Child = start(ground, operation).env(HALTS, "").spawn().unwrap();
    let said = BufReader::new(child.stderr.take().unwrap());
    let halted = said.lines().any(|line| line.unwrap() == "halted");
    assert!(halted, "it ended before operation {operation}");
    child.kill().unwrap();
    assert_eq!(child.wait().unwrap().signal(), Some(SIGKILL));
}

/// What the site of an edition shows, with the file of the user's own.
fn edition(edition: usize) -> BTreeMap<String, String> {
    let fresh = Ground::new();
    fresh.publish(&many(edition)).unwrap();
    let mut stands = fresh.stands();
    stands.extend(exactly(&[("mine.txt", "mine")]));
    stands
}

/// Right after the kill the one or the other edition stands, wholly; and publishing goes on from there.
fn is_whole_and_in_order(ground: &Ground, editions: &[BTreeMap<String, String>; 2], why: &str) {
    let shows = ground.shows();
    assert!(editions.contains(&shows), "a mixture stands, {why}");
    for n in [1, 0] {
        ground.publish(&many(n)).unwrap();
        assert_eq!(ground.stands(), editions[n], "{why}");
        let beside: Vec<_> =
            fs::read_dir(ground.root.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
        assert_eq!(beside.len(), 2, "{why}: {beside:?}");
    }
}

/// Edition 0 as published, and a file of the user's own.
fn published() -> (Ground, [BTreeMap<String, String>; 2]) {
    let ground = Ground::new();
    ground.publish(&many(0)).unwrap();
    ground.lay("mine.txt", "mine");
    (ground, [edition(0), edition(1)])
}

#[test]
fn a_process_that_aborts_before_an_operation_leaves_one_output_whole() {
    let (ground, editions) = published();
    let disk = Disk::default();
    ground.publish_on(&disk, &many(1)).unwrap();
    ground.publish(&many(0)).unwrap();
    let all = disk.fault.done.get();
    // The first run finds edition 0 published and writes edition 1; every seventh operation, and all of the last.
    for operation in (1..all).step_by(7).chain(all - 90..=all) {
        let ended = start(&ground, operation).status().unwrap();
        assert_eq!(ended.signal(), Some(SIGABRT), "operation {operation}");
        is_whole_and_in_order(&ground, &editions, &format!("operation {operation}"));
    }
}

#[test]
fn a_process_that_is_killed_at_any_time_leaves_one_output_whole() {
    let (ground, editions) = published();
    let disk = Disk::default();
    ground.publish_on(&disk, &many(1)).unwrap();
    ground.publish(&many(0)).unwrap();
    // Twenty moments of its first two editions.
    let all = disk.fault.done.get();
    for operation in (1..all * 2).step_by(all / 10) {
        kill_at(&ground, operation);
        is_whole_and_in_order(&ground, &editions, &format!("operation {operation}"));
    }
}
