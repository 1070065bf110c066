//! Every single file operation fails in turn, once or for good.

use super::super::disk::{Fault, When};
use super::*;

fn disk(when: When) -> Disk {
    Disk { fault: Fault { when, ..Fault::default() } }
}

/// How many operations it takes to go from the first output to the second.
fn operations() -> usize {
    let ground = ground();
    let disk = disk(When::Never);
    ground.publish_on(&disk, &second(&ground)).unwrap();
    disk.fault.done.get()
}

/// The first output, and a file of the user's own in it.
fn ground() -> Ground {
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    ground.lay("office/mine.txt", "mine");
    ground
}

fn second(ground: &Ground) -> Output {
    let mut output = pages(&SECOND);
    output.insert("client/p/range.jpg", ground.picture(b"steel")).unwrap();
    output
}

fn with_mine(files: &[(&str, &str)]) -> BTreeMap<String, String> {
    let mut expected = exactly(files);
    expected.extend(exactly(&[("office/mine.txt", "mine")]));
    expected
}

fn stands_second() -> BTreeMap<String, String> {
    let mut expected = with_mine(&SECOND);
    expected.extend(exactly(&[("client/p/range.jpg", "steel")]));
    expected
}

#[test]
fn every_new_and_every_kept_file_is_flushed_before_the_moves() {
    let ground = ground();
    let disk = disk(When::Never);
    let written = ground.publish_on(&disk, &second(&ground)).unwrap();
    let new = written.added + written.changed;
    let kept = written.changed + written.removed;
    // The manifest is new and kept too, and the journal is flushed by itself.
    assert_eq!(disk.fault.flushed.get(), new + kept + 2 + 1);
}

#[test]
fn when_any_one_operation_fails_the_old_output_is_whole() {
    let all = operations();
    assert!(all > 40, "the outputs differ in every way: {all}");
    let (mut failed, manifest) = (0, ground());
    let manifest = fs::read(manifest.site().join(".bookmatch-manifest.json")).unwrap();
    for n in 1..=all {
        let ground = ground();
        match ground.publish_on(&disk(When::At(n)), &second(&ground)) {
            Err(WriteError::Disk { .. }) => {
                failed += 1;
                assert_eq!(ground.stands(), with_mine(&FIRST), "operation {n}");
                let now = fs::read(ground.site().join(".bookmatch-manifest.json")).unwrap();
                assert_eq!(now, manifest, "operation {n}");
            }
            Err(other) => panic!("operation {n}: {other}"),
            // A second name that cannot be kept, or leavings that cannot be cleared yet.
            Ok(_) => {
                let mut stands = ground.stands();
                stands.retain(|path, _| !path.starts_with(".bookmatch-staging/"));
                assert_eq!(stands, stands_second(), "operation {n}");
            }
        }
        ground.publish(&second(&ground)).unwrap();
        assert_eq!(ground.stands(), stands_second(), "after operation {n}");
    }
    // What is cleared away after the new output stands, and the way back, which is tried twice.
    assert!(failed >= all - 8, "{failed} of {all}");
}

#[test]
fn when_the_disk_dies_at_any_operation_the_next_run_puts_all_in_order() {
    for n in 1..=operations() {
        for back in [false, true] {
            let ground = ground();
            let _ = ground.publish_on(&disk(When::From(n)), &second(&ground));
            if back {
                ground.publish(&pages(&FIRST)).unwrap();
                assert_eq!(ground.stands(), with_mine(&FIRST), "operation {n}");
            } else {
                ground.publish(&second(&ground)).unwrap();
                assert_eq!(ground.stands(), stands_second(), "operation {n}");
            }
        }
    }
}

#[test]
fn an_output_between_two_is_put_in_order_also_when_that_fails_at_first() {
    // Enough operations to be amid the moves, so that both ways back are tried.
    let all = operations();
    for n in all - 20..all {
        for m in 1..30 {
            let ground = ground();
            let _ = ground.publish_on(&disk(When::From(n)), &second(&ground));
            let _ = ground.publish_on(&disk(When::From(m)), &pages(&FIRST));
            ground.publish(&second(&ground)).unwrap();
            assert_eq!(ground.stands(), stands_second(), "operations {n}, {m}");
        }
    }
}

#[test]
fn a_disk_that_takes_nothing_back_says_how_it_stands() {
    let all = operations();
    let mut unfinished = 0;
    for n in 1..=all {
        let ground = ground();
        match ground.publish_on(&disk(When::From(n)), &second(&ground)) {
            Err(error @ WriteError::Unfinished { .. }) => {
                unfinished += 1;
                assert!(error.to_string().contains("is between two outputs"), "{error}");
                assert!(error.remedy().contains("publish again"));
            }
            Err(WriteError::Disk { .. }) => {
                let mut stands = ground.stands();
                stands.retain(|path, _| !path.starts_with(".bookmatch-staging/"));
                assert_eq!(stands, with_mine(&FIRST), "operation {n}");
            }
            _ => {}
        }
    }
    assert!(unfinished > 10, "{unfinished} of {all}");
}

#[test]
fn a_file_that_appears_after_a_kill_is_not_written_over() {
    let mut met = 0;
    for n in 1..=operations() {
        let ground = ground();
        let _ = ground.publish_on(&disk(When::From(n)), &second(&ground));
        if ground.site().join("installer/range.svg").exists() {
            continue;
        }
        ground.lay("installer/range.svg", "by hand");
        let error = ground.publish(&second(&ground)).unwrap_err();
        assert!(matches!(&error, WriteError::Foreign(path) if path.ends_with("range.svg")));
        assert_eq!(ground.stands()["installer/range.svg"], "by hand", "operation {n}");
        met += 1;
    }
    assert!(met > 20);
}
