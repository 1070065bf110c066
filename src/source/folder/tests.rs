//! What is listed of a folder, what is read through links, and what is not.

use super::*;
use std::os::unix::fs::symlink;

fn write(root: &Path, path: &str, text: &str) {
    let path = root.join(path);
    std::fs::create_dir_all(path.parent().unwrap()).unwrap();
    std::fs::write(path, text).unwrap();
}

#[test]
fn links_that_leave_the_folder_are_refused_and_never_read() {
    let outside = tempfile::tempdir().unwrap();
    write(outside.path(), "secret.yaml", "secret: 1");
    let root = tempfile::tempdir().unwrap();
    write(root.path(), "book.yaml", "title: A");
    symlink(outside.path().join("secret.yaml"), root.path().join("a.yaml")).unwrap();
    symlink(outside.path(), root.path().join("rooms")).unwrap();
    symlink("book.yaml", root.path().join("same.yaml")).unwrap();
    let folder = Folder::open(root.path()).unwrap();
    let paths: Vec<_> = folder.entries().iter().map(|entry| entry.path.as_str()).collect();
    assert_eq!(paths, ["book.yaml", "same.yaml"]);
    assert_eq!(
        folder.entries().iter().map(|entry| entry.linked.as_deref()).collect::<Vec<_>>(),
        [None, Some("book.yaml")]
    );
    assert!(folder.strays().iter().all(|stray| stray.kind == StrayKind::LeadsOutside));
    assert_eq!(folder.strays().len(), 2);
    for path in ["a.yaml", "../secret.yaml", "/etc/hostname", "rooms/secret.yaml"] {
        assert!(folder.read(path, 100).is_err(), "{path}");
    }
}

#[test]
fn a_loop_of_links_ends() {
    let root = tempfile::tempdir().unwrap();
    write(root.path(), "rooms/bath/room.yaml", "name: Bath");
    symlink("../..", root.path().join("rooms/bath/again")).unwrap();
    symlink("b", root.path().join("a")).unwrap();
    symlink("a", root.path().join("b")).unwrap();
    let folder = Folder::open(root.path()).unwrap();
    assert_eq!(folder.entries().len(), 1);
    assert!(folder.strays().iter().all(|stray| stray.kind == StrayKind::LinkNotFollowed));
    assert_eq!(folder.strays().len(), 3);
}

#[test]
fn what_bookmatch_made_is_not_part_of_the_book() {
    let root = tempfile::tempdir().unwrap();
    for path in ["book.yaml", "record/ledger.jsonl", ".bookmatch/x", "site/.bookmatch-manifest.json", "site/a.html"] {
        write(root.path(), path, "");
    }
    assert_eq!(Folder::open(root.path()).unwrap().entries().len(), 1);
}

#[test]
fn a_file_past_the_limit_is_not_read() {
    let folder = Folder::in_memory([("a.yaml", "12345")]);
    assert!(matches!(folder.read("a.yaml", 4), Err(FolderError::TooLarge(..))));
    assert_eq!(folder.read("a.yaml", 5).unwrap(), b"12345");
}

/// A book with everything in it that is nobody's business.
fn with_secrets() -> tempfile::TempDir {
    let root = tempfile::tempdir().unwrap();
    for path in SECRETS.into_iter().chain(["book.yaml", "rooms/kitchen/room.yaml", "site/.bookmatch-manifest.json"]) {
        write(root.path(), path, "secret");
    }
    root
}

const SECRETS: [&str; 6] = [
    "record/keys/ada.key",
    "record/ledger.jsonl",
    ".env",
    ".git/config",
    ".bookmatch/cache/sheets/0a",
    "site/office/review.html",
];

#[test]
fn a_link_to_the_record_a_hidden_file_the_cache_or_a_published_page_is_told_and_never_read() {
    for secret in SECRETS {
        let root = with_secrets();
        let kitchen = root.path().join("rooms/kitchen");
        let up = PathBuf::from("../..").join(secret);
        let ways = [
            ("straight.md", up.clone()),
            ("whole.md", root.path().join(secret)),
            ("chain.md", "straight.md".into()),
            ("roundabout.md", PathBuf::from("../kitchen/../../rooms/..").join(secret)),
            ("photo.jpg", up),
        ];
        for (name, target) in &ways {
            symlink(target, kitchen.join(name)).unwrap();
        }
        let folder = Folder::open(root.path()).unwrap();
        let listed: Vec<_> = folder.entries().iter().map(|entry| entry.path.as_str()).collect();
        assert_eq!(listed, ["book.yaml", "rooms/kitchen/room.yaml"], "{secret}");
        assert_eq!(folder.strays().len(), ways.len());
        for stray in folder.strays() {
            assert_eq!(stray.kind, StrayKind::LeadsAside(secret.to_string()), "{}", stray.path);
            assert!(folder.read(&stray.path, 100).is_err(), "{}", stray.path);
        }
        assert!(folder.read(&format!("rooms/../{secret}"), 100).is_err(), "{secret}");
        assert!(secret.starts_with("site/") || folder.read(secret, 100).is_err(), "{secret}");
    }
}

#[test]
fn a_folder_that_is_a_link_to_the_record_is_not_walked_nor_read_through() {
    let root = with_secrets();
    symlink("../record", root.path().join("rooms/bath")).unwrap();
    symlink("../../record/keys", root.path().join("rooms/kitchen/photos")).unwrap();
    let folder = Folder::open(root.path()).unwrap();
    assert_eq!(folder.entries().len(), 2);
    assert!(folder.strays().iter().all(|stray| stray.kind == StrayKind::LinkNotFollowed));
    assert_eq!(folder.strays().len(), 2);
    assert!(folder.read("rooms/kitchen/photos/ada.key", 100).is_err());
    assert!(folder.read("rooms/bath/keys/ada.key", 100).is_err());
}

#[test]
fn a_link_that_is_turned_to_a_secret_after_the_folder_was_listed_is_not_read() {
    let root = with_secrets();
    let notes = root.path().join("rooms/kitchen/notes.md");
    symlink("room.yaml", &notes).unwrap();
    let folder = Folder::open(root.path()).unwrap();
    assert!(folder.read("rooms/kitchen/notes.md", 100).is_ok());
    std::fs::remove_file(&notes).unwrap();
    symlink("../../record/keys/ada.key", &notes).unwrap();
    assert!(folder.read("rooms/kitchen/notes.md", 100).is_err());
}

#[test]
fn a_link_in_the_cache_is_told() {
    for link in [".bookmatch", ".bookmatch/cache", ".bookmatch/cache/renditions"] {
        let root = tempfile::tempdir().unwrap();
        write(root.path(), "book.yaml", "title: A");
        let link = root.path().join(link);
        std::fs::create_dir_all(link.parent().unwrap()).unwrap();
        symlink("/tmp", &link).unwrap();
        let folder = Folder::open(root.path()).unwrap();
        let inside = link.strip_prefix(root.path()).unwrap().to_str().unwrap().to_string();
        assert_eq!(folder.strays(), [Stray { path: inside, kind: StrayKind::LinkInCache }]);
    }
}

#[test]
fn a_file_of_the_record_is_read_where_it_stands_and_through_no_link() {
    let root = with_secrets();
    let read = |file| Folder::open(root.path()).unwrap().record(file, 100);
    assert_eq!(read(RecordFile::Ledger).unwrap().unwrap(), b"secret");
    assert_eq!(read(RecordFile::Issue(1)).unwrap(), None);
    std::fs::create_dir(root.path().join("record/scans")).unwrap();
    symlink("../keys/ada.key", root.path().join("record/scans/ab.pdf")).unwrap();
    symlink("keys", root.path().join("record/issues")).unwrap();
    for file in [RecordFile::Scan("ab.pdf"), RecordFile::Issue(1)] {
        assert!(matches!(read(file), Err(FolderError::NotInBook(_))), "{file:?}");
    }
    std::fs::remove_file(root.path().join("record/ledger.jsonl")).unwrap();
    symlink("keys/ada.key", root.path().join("record/ledger.jsonl")).unwrap();
    assert!(read(RecordFile::Ledger).is_err());
}
