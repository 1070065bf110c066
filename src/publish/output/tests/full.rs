//! Disks that are full or read-only: a real one where the system lets us mount it.

use std::process::Command;

use super::super::disk::{Fault, When};
use super::*;

/// A small disk of its own for the published folder; unmounted at the end.
struct SmallDisk(PathBuf);

impl SmallDisk {
    /// Nothing when this user may not mount disks.
    fn mount(at: PathBuf) -> Option<Self> {
        fs::create_dir_all(&at).unwrap();
        let tried = Command::new("mount").args(["-t", "tmpfs", "-o", "size=256k", "bookmatch-test"]).arg(&at).output();
        tried.is_ok_and(|tried| tried.status.success()).then_some(Self(at))
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

/// The disk on which the n-th operation finds no room, in place of a mounted one.
fn no_room_at(n: usize) -> Disk {
    Disk { fault: Fault { when: When::Full(n), ..Fault::default() } }
}

fn big() -> Output {
    let mut output = pages(&SECOND);
    for n in 0..8 {
        let bytes = vec![b'x'; 50_000 + n];
        output.insert(format!("client/p/{n}.jpg"), Content::Bytes(bytes.into())).unwrap();
    }
    output
}

fn says_full(error: &WriteError) {
    assert!(error.to_string().ends_with(": no room is left on the disk"), "{error}");
    assert_eq!(error.remedy(), "make room on the disk, or publish to another one");
}

#[test]
fn a_full_disk_keeps_the_old_output_and_says_so() {
    let ground = Ground::new();
    let mounted = SmallDisk::mount(ground.site());
    ground.publish(&pages(&FIRST)).unwrap();
    if mounted.is_some() {
        says_full(&ground.publish(&big()).unwrap_err());
        assert_eq!(ground.stands(), exactly(&FIRST));
    }
    for n in 1..30 {
        says_full(&ground.publish_on(&no_room_at(n), &big()).unwrap_err());
        assert_eq!(ground.stands(), exactly(&FIRST));
    }
    ground.publish(&pages(&SECOND)).unwrap();
    assert_eq!(ground.stands(), exactly(&SECOND));
}

#[test]
fn a_folder_that_may_not_be_written_to_stays_and_is_named() {
    let ground = Ground::new();
    let mounted = SmallDisk::mount(ground.site());
    ground.publish(&pages(&FIRST)).unwrap();
    // Whoever may mount may also write where the permissions say no.
    match &mounted {
        Some(disk) => disk.read_only(),
        None => lock_down(&ground.site(), true),
    }
    let error = ground.publish(&pages(&SECOND)).unwrap_err();
    assert_eq!(error.remedy(), "publish to a folder that you may write to", "{error}");
    assert!(error.to_string().contains("site/.bookmatch-"), "{error}");
    assert_eq!(ground.stands(), exactly(&FIRST));
    lock_down(&ground.site(), false);
}

fn lock_down(folder: &Path, locked: bool) {
    use std::os::unix::fs::PermissionsExt;
    let _ = fs::set_permissions(folder, fs::Permissions::from_mode(if locked { 0o555 } else { 0o755 }));
}
