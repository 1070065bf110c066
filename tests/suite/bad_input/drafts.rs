//! A draft takes nothing away that nobody took out of the book; and a cache that can't be written stops nothing.

use std::fs;

use super::{Published, RANGE};

/// Over what was published before, a draft is refused with this word; mended, it is published.
#[track_caller]
fn draft_is_refused(path: &str, bytes: &[u8]) {
    let published = Published::new();
    let file = published.project.root().join(path);
    let good = fs::read(&file).ok();
    fs::write(&file, bytes).unwrap();
    let before = published.now();
    let named = format!("not published: `{path}` can't be read");
    published.publish(&["--draft"]).exits(2).says(&named).does_not_say("published to");
    before.stands(&published);
    match good {
        Some(good) => fs::write(&file, good).unwrap(),
        None => fs::remove_file(&file).unwrap(),
    }
    published.publish(&["--draft"]).exits(0).says("published to");
}

#[test]
fn a_draft_over_a_book_file_that_cannot_be_understood_is_refused() {
    for bytes in [
        &b"title: [Tansy Row"[..],
        b"",
        b"# nothing but a remark\n",
        b"Tansy Row 9",
        b"- title: Tansy Row 9",
        b"title: \xff",
    ] {
        draft_is_refused("book.yaml", bytes);
    }
}

#[test]
fn a_draft_over_a_room_a_product_or_a_selection_that_cannot_be_understood_is_refused() {
    draft_is_refused("rooms/kitchen/room.yaml", b"name: {Kitchen");
    draft_is_refused("rooms/kitchen/room.yaml", b"- Kitchen");
    draft_is_refused("rooms/kitchen/room.yaml", b"");
    draft_is_refused(RANGE, b"selection: 'Range");
    draft_is_refused(RANGE, b"\xff\xfes\0e\0l\0");
    draft_is_refused("rooms/kitchen/notes.md", b"why \xff");
}

#[test]
fn a_draft_of_a_book_without_rooms_does_not_take_the_rooms_away() {
    let published = Published::new();
    let rooms = published.project.root().join("rooms");
    fs::rename(&rooms, published.project.beside("rooms")).unwrap();
    let before = published.now();
    for more in [&["--draft"][..], &[]] {
        let ran = published.publish(more).does_not_say("published to");
        ran.says("not published: the book has no room").exits(2);
        before.stands(&published);
    }
    fs::rename(published.project.beside("rooms"), &rooms).unwrap();
    published.publish(&[]).exits(0);
}

#[test]
fn what_is_wrong_in_a_file_that_can_be_read_does_not_keep_a_draft_back() {
    let published = Published::new().replacing(RANGE, "price:", "prize:");
    published.publish(&["--draft"]).exits(0).says("published to");
}

/// Ways in which a cache can't be written to that bind every user, root too.
#[test]
fn a_cache_that_cannot_be_written_is_told_once_and_stops_nothing() {
    for blocked in [".bookmatch", ".bookmatch/cache", ".bookmatch/cache/renditions", ".bookmatch/cache/sheet"] {
        let published = Published::new();
        let whole = crate::project::tree(&published.out);
        let file = published.project.root().join(blocked);
        if let Err(error) = fs::remove_dir_all(&file) {
            assert_eq!(error.kind(), std::io::ErrorKind::NotFound, "{blocked}");
        }
        fs::write(&file, "a file").unwrap();
        let out = published.project.beside("anew");
        let ran = published.publish_to(&out, &[]).exits(0).says("published to");
        let told = format!("move `{}` away", fs::canonicalize(&file).unwrap().display());
        assert_eq!(ran.stderr.matches(&told).count(), 1, "{blocked}: {}", ran.stderr);
        whole.same_as(&crate::project::tree(&out));
        assert_eq!(fs::read(&file).unwrap(), b"a file");
    }
}

#[test]
fn a_book_on_a_read_only_disk_is_published() {
    let published = Published::new();
    let whole = crate::project::tree(&published.out);
    let root = published.project.root();
    fs::remove_dir_all(root.join(".bookmatch")).unwrap();
    let Some(_mounted) = ReadOnly::mount(&root) else {
        eprintln!("this user may not mount disks: not tried");
        return;
    };
    let out = published.project.beside("anew");
    let ran = published.publish_to(&out, &[]).exits(0).says("published to").says("let `");
    assert_eq!(ran.stderr.matches("can't be written").count(), 1, "{}", ran.stderr);
    whole.same_as(&crate::project::tree(&out));
}

/// A folder that nobody may write to, root neither, until this goes.
struct ReadOnly(std::path::PathBuf);

impl ReadOnly {
    fn mount(at: &std::path::Path) -> Option<Self> {
        let mount = |options: &[&str]| {
            let ran = std::process::Command::new("mount").args(options).arg(at).output();
            ran.is_ok_and(|ran| ran.status.success())
        };
        let source = at.to_str()?;
        let mounted = mount(&["--bind", source]).then(|| Self(at.into()))?;
        mount(&["-o", "remount,bind,ro"]).then_some(mounted)
    }
}

impl Drop for ReadOnly {
    fn drop(&mut self) {
        let _ = std::process::Command::new("umount").arg(&self.0).status();
    }
}
