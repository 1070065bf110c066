//! From one output to the next in one step, for whoever opens the folder and whoever holds it open.

use std::os::unix::fs::MetadataExt;

use super::super::disk::{Fault, When};
use super::*;

fn disk(when: When) -> Disk {
    Disk { fault: Fault { when, ..Fault::default() } }
}

/// The first output, and files of the user's own: beside ours, in a folder of their own, and a link.
fn ground() -> Ground {
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    ground.lay("office/mine.txt", "mine");
    ground.lay("papers/plan.txt", "plan");
    std::os::unix::fs::symlink("/nowhere", ground.site().join("link")).unwrap();
    ground
}

fn with_theirs(files: &[(&str, &str)]) -> BTreeMap<String, String> {
    let mut expected = exactly(files);
    expected.extend(exactly(&[("office/mine.txt", "mine"), ("papers/plan.txt", "plan"), ("link", "-> /nowhere")]));
    expected
}

/// How many operations it takes to go from the first output to the second.
fn operations(when: When) -> usize {
    let (ground, disk) = (ground(), disk(when));
    ground.publish_on(&disk, &pages(&SECOND)).unwrap();
    disk.fault.done.get()
}

#[test]
fn what_shows_after_a_kill_at_any_operation_is_one_output_whole_with_what_is_theirs() {
    let mut seen = [0, 0];
    for n in 1..=operations(When::Never) {
        let ground = ground();
        // To the folder the same as a kill.
        let _ = ground.publish_on(&disk(When::From(n)), &pages(&SECOND));
        let shows = ground.shows();
        let which = [with_theirs(&FIRST), with_theirs(&SECOND)].iter().position(|whole| *whole == shows);
        seen[which.unwrap_or_else(|| panic!("a mixture at operation {n}: {shows:?}"))] += 1;
    }
    assert!(seen[0] > 40 && seen[1] > 20, "{seen:?}");
}

#[test]
fn what_the_user_lays_there_after_a_kill_is_kept_and_their_files_are_the_same_ones() {
    for n in 1..=operations(When::Never) {
        let ground = ground();
        let inode = |path: &str| fs::symlink_metadata(ground.site().join(path)).unwrap().ino();
        let before = [inode(""), inode("office/mine.txt")];
        let _ = ground.publish_on(&disk(When::From(n)), &pages(&SECOND));
        ground.lay("late.txt", "late");
        ground.lay("papers/late.txt", "late too");
        ground.lay("office/.saved", "mine, edited");
        fs::rename(ground.site().join("office/.saved"), ground.site().join("office/mine.txt")).unwrap();
        ground.publish(&pages(&SECOND)).unwrap();
        let mut expected = with_theirs(&SECOND);
        expected.extend(exactly(&[("late.txt", "late"), ("papers/late.txt", "late too")]));
        expected.insert("office/mine.txt".into(), "mine, edited".into());
        assert_eq!(ground.stands(), expected, "operation {n}");
        // A server, a container or a terminal that holds the folder open has not lost it.
        assert_eq!(inode(""), before[0], "operation {n}");
    }
}

#[test]
fn a_folder_and_the_files_in_it_that_are_theirs_are_the_same_ones_after_a_publish() {
    let ground = ground();
    let inode = |path: &str| fs::symlink_metadata(ground.site().join(path)).unwrap().ino();
    let kept = ["", "client", "office", "office/mine.txt", "papers", "papers/plan.txt", "link"];
    let before = kept.map(inode);
    ground.publish(&pages(&SECOND)).unwrap();
    assert_eq!(kept.map(inode), before);
    assert_eq!(ground.stands(), with_theirs(&SECOND));
}

#[test]
fn where_names_cannot_be_exchanged_the_moves_are_made_in_the_folder_itself() {
    let (ground_, plain) = (ground(), disk(When::Plain(usize::MAX)));
    ground_.publish_on(&plain, &pages(&SECOND)).unwrap();
    assert_eq!(ground_.stands(), with_theirs(&SECOND));
    for n in 1..=plain.fault.done.get() {
        let ground = ground();
        let _ = ground.publish_on(&disk(When::Plain(n)), &pages(&SECOND));
        ground.publish(&pages(&SECOND)).unwrap();
        assert_eq!(ground.stands(), with_theirs(&SECOND), "operation {n}");
        assert_eq!(fs::read_dir(ground.root.path()).unwrap().count(), 2, "operation {n}");
    }
}

#[test]
fn what_stands_at_the_place_of_the_stand_in_and_is_theirs_stays() {
    let ground = ground();
    let aside = ground.root.path().join(".site.bookmatch-stand-in");
    fs::write(&aside, "by hand").unwrap();
    ground.publish(&pages(&SECOND)).unwrap();
    assert_eq!(ground.stands(), with_theirs(&SECOND));
    assert_eq!(fs::read_to_string(&aside).unwrap(), "by hand");
}
