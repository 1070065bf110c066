//! A publishing process is killed, for real.

use std::os::unix::process::ExitStatusExt;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use super::super::disk::{Fault, When};
use super::*;

const FOLDER: &str = "BOOKMATCH_TEST_FOLDER";
const OPERATION: &str = "BOOKMATCH_TEST_OPERATION";
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
    let place = Place { dir: folder.join("site"), book: folder.join("book") };
    let operation = std::env::var(OPERATION).unwrap().parse().unwrap();
    let disk = Disk { fault: Fault { when: When::Die(operation), ..Fault::default() } };
    for edition in 1.. {
        write_on(&disk, &many(edition % 2), &place, &AtomicBool::new(false)).unwrap();
    }
}

fn start(ground: &Ground, operation: usize) -> Child {
    let name = module_path!().split_once("::").unwrap().1;
    Command::new(std::env::current_exe().unwrap())
        .args(["--exact", &format!("{name}::the_process_that_is_killed"), "--ignored"])
        .env(FOLDER, ground.root.path())
        .env(OPERATION, operation.to_string())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap()
}

fn is_in_order(ground: &Ground, why: &str) {
    ground.lay("mine.txt", "mine");
    for edition in [1, 0] {
        ground.publish(&many(edition)).unwrap();
        let fresh = Ground::new();
        fresh.publish(&many(edition)).unwrap();
        let mut expected = fresh.stands();
        expected.extend(exactly(&[("mine.txt", "mine")]));
        assert_eq!(ground.stands(), expected, "{why}");
    }
}

#[test]
fn a_process_that_aborts_before_an_operation_leaves_a_folder_that_can_be_put_in_order() {
    let ground = Ground::new();
    ground.publish(&many(0)).unwrap();
    // The numbers run through the staging and the moves of the first edition and into the second.
    for operation in (1..420).step_by(21) {
        let ended = start(&ground, operation).wait().unwrap();
        assert_eq!(ended.signal(), Some(SIGABRT), "operation {operation}");
        is_in_order(&ground, &format!("operation {operation}"));
    }
}

#[test]
fn a_process_that_is_killed_at_any_time_leaves_a_folder_that_can_be_put_in_order() {
    let ground = Ground::new();
    ground.publish(&many(0)).unwrap();
    for round in 0..20 {
        let mut child = start(&ground, usize::MAX);
        std::thread::sleep(Duration::from_millis(20 + 7 * round));
        child.kill().unwrap();
        assert_eq!(child.wait().unwrap().signal(), Some(SIGKILL));
        is_in_order(&ground, &format!("round {round}"));
    }
}
