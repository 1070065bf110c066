//! Disks that are full or read-only: a real one where the system lets us mount it.

use std::process::Command;

use super::*;

/// A small disk of its own for the book; unmounted at the end.
struct SmallDisk(PathBuf);

impl SmallDisk {
    /// Nothing when this user may not mount disks.
    fn mount(at: &Path) -> Option<Self> {
        let tried = Command::new("mount").args(["-t", "tmpfs", "-o", "size=64k", "bookmatch-test"]).arg(at).output();
        tried.is_ok_and(|tried| tried.status.success()).then(|| Self(at.to_path_buf()))
    }

    fn read_only(&self) {
        let done = Command::new("mount").args(["-o", "remount,ro"]).arg(&self.0).status();
        assert!(done.unwrap().success());
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(&self.0).status();
    }
}

fn says_full(error: &RecordError) {
    assert!(error.to_string().ends_with(": no room is left on the disk"), "{error}");
    assert_eq!(error.remedy(), "make room on the disk and record it again");
}

#[test]
fn a_full_disk_records_nothing_says_so_and_goes_on_once_there_is_room() {
    let ground = Ground::new();
    let mounted = SmallDisk::mount(ground.book.path());
    let ballast = ground.book.path().join("ballast");
    fs::write(&ballast, vec![0; 16 * 1024]).unwrap();
    let store = if mounted.is_some() { ground.store() } else { ground.store_on(When::Full(40)) };
    let mut number = 0;
    let error = loop {
        number += 1;
        match record(&store, "a", number) {
            Ok(()) => assert!(number < 10_000),
            Err(error) => break error,
        }
    };
    says_full(&error);
    assert_eq!(ground.chain().tail, LedgerEnd::Whole, "what was begun is taken back");
    assert_eq!(ground.facts().len() as u32, number - 1);
    fs::remove_file(ballast).unwrap();
    let store = if mounted.is_some() { store } else { ground.store() };
    record(&store, "a", number).unwrap();
    assert_eq!(ground.facts(), (1..=number).map(|number| ("a".into(), number)).collect::<Vec<_>>());
}

#[test]
fn a_disk_that_is_full_at_any_operation_leaves_what_was_there() {
    for operation in 1..8 {
        let ground = Ground::with(2);
        let before = ground.bytes();
        if let Err(error) = record(&ground.store_on(When::Full(operation)), "b", 1) {
            says_full(&error);
            assert_eq!(ground.bytes(), before, "operation {operation}");
        }
    }
}

#[test]
fn a_record_that_may_not_be_written_to_stays_and_is_named() {
    let ground = Ground::new();
    let mounted = SmallDisk::mount(ground.book.path());
    record(&ground.store(), "a", 1).unwrap();
    let before = ground.bytes();
    // Whoever may mount may also write where the permissions say no.
    match &mounted {
        Some(disk) => disk.read_only(),
        None => lock_down(&ground, true),
    }
    let error = record(&ground.store(), "a", 2).unwrap_err();
    assert_eq!(error.remedy(), "give yourself the right to write to `record` and record it again", "{error}");
    assert!(error.to_string().contains("/record/"), "{error}");
    assert_eq!(ground.bytes(), before);
    lock_down(&ground, false);
}

fn lock_down(ground: &Ground, locked: bool) {
    use std::os::unix::fs::PermissionsExt;
    for (name, open) in [("record/ledger.jsonl", 0o644), ("record/.lock", 0o644), ("record", 0o755)] {
        let mode = if locked { open & 0o555 } else { open };
        let _ = fs::set_permissions(ground.book.path().join(name), fs::Permissions::from_mode(mode));
    }
}
