//! What bookmatch did not write stays, and is named when it stands in the way.

use std::os::unix::fs::symlink;

use super::*;

/// Publishes the second output over the first with something in the way; all must stay as it was.
fn refused(meddle: impl Fn(&Ground)) -> WriteError {
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    meddle(&ground);
    let before = ground.stands();
    let error = ground.publish(&pages(&SECOND)).unwrap_err();
    assert_eq!(ground.stands(), before);
    assert!(!error.remedy().is_empty());
    error
}

#[test]
fn files_of_the_users_own_stay_through_every_publish() {
    let ground = Ground::new();
    ground.lay("CNAME", "books.invalid");
    ground.lay("office/mine.txt", "mine");
    ground.publish(&pages(&FIRST)).unwrap();
    ground.publish(&pages(&SECOND)).unwrap();
    let mut expected = exactly(&SECOND);
    expected.extend(exactly(&[("CNAME", "books.invalid"), ("office/mine.txt", "mine")]));
    assert_eq!(ground.stands(), expected);
}

#[test]
fn a_file_in_the_way_is_named_and_nothing_changes() {
    let error = refused(|ground| ground.lay("installer/range.svg", "by hand"));
    assert!(matches!(&error, WriteError::Foreign(path) if path.ends_with("installer/range.svg")));
    let error = refused(|ground| ground.lay("installer", "by hand"));
    assert!(matches!(&error, WriteError::Foreign(path) if path.ends_with("installer")));
}

#[test]
fn a_folder_in_the_way_is_named_and_nothing_changes() {
    let error = refused(|ground| ground.lay("installer/range.svg/mine.txt", "mine"));
    assert!(matches!(&error, WriteError::FolderInTheWay(path) if path.ends_with("installer/range.svg")));
    let error = refused(|ground| ground.lay("client/rooms/mine.txt", "mine"));
    assert!(matches!(&error, WriteError::FolderInTheWay(path) if path.ends_with("client/rooms")));
}

#[test]
fn the_same_bytes_by_another_hand_are_taken_in() {
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    fs::remove_file(ground.site().join(".bookmatch-manifest.json")).unwrap();
    let written = ground.publish(&pages(&FIRST)).unwrap();
    assert_eq!(written, Written { same: 4, ..Written::default() });
    ground.publish(&pages(&SECOND)).unwrap();
    assert_eq!(ground.stands(), exactly(&SECOND));
}

#[test]
fn our_page_that_was_edited_or_deleted_is_set_right() {
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    ground.lay("client/index.html", "scribbled on");
    fs::remove_file(ground.site().join("office/index.html")).unwrap();
    let written = ground.publish(&pages(&FIRST)).unwrap();
    assert_eq!(written, Written { added: 1, changed: 1, same: 2, removed: 0 });
    assert_eq!(ground.stands(), exactly(&FIRST));
}

#[test]
fn a_link_is_never_followed_out_of_the_folder() {
    let elsewhere = tempfile::tempdir().unwrap();
    fs::write(elsewhere.path().join("index.html"), "precious").unwrap();
    let links = [
        ("installer", ""),
        ("installer/range.svg", "index.html"),
        (".bookmatch-staging", ""),
        (".bookmatch-lock", "index.html"),
        (".bookmatch-manifest.json", "index.html"),
    ];
    for (link, to) in links {
        let error = refused(|ground| {
            let link = ground.site().join(link);
            fs::create_dir_all(link.parent().unwrap()).unwrap();
            let _ = fs::remove_file(&link);
            symlink(elsewhere.path().join(to), &link).unwrap();
        });
        assert!(matches!(&error, WriteError::Link(path) if path.ends_with(link)), "{error}");
        assert_eq!(list_of(elsewhere.path()), exactly(&[("index.html", "precious")]));
    }
}

#[test]
fn a_folder_of_ours_that_became_a_link_is_left_alone() {
    let elsewhere = tempfile::tempdir().unwrap();
    fs::write(elsewhere.path().join("index.html"), "precious").unwrap();
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    fs::remove_dir_all(ground.site().join("office")).unwrap();
    symlink(elsewhere.path(), ground.site().join("office")).unwrap();
    ground.publish(&pages(&SECOND)).unwrap();
    assert_eq!(list_of(elsewhere.path()), exactly(&[("index.html", "precious")]));
    assert!(ground.stands()["office"].starts_with("-> "));
}

#[test]
fn a_manifest_or_journal_by_another_hand_is_not_believed() {
    for (path, text) in [
        (".bookmatch-manifest.json", r#"{"format": 1, "files": {"../book/book.yaml": "00"}}"#),
        (".bookmatch-staging/forward.json", r#"{"steps": [{"do": "remove", "path": "../x", "n": 1, "was": ""}]}"#),
        (".bookmatch-staging/back.json", "{"),
    ] {
        let error = refused(|ground| ground.lay(path, text));
        assert!(matches!(&error, WriteError::Damaged(named) if named.ends_with(path)), "{error}");
    }
}

#[test]
fn a_file_is_no_folder_to_publish_to() {
    let ground = Ground::new();
    fs::write(ground.site(), "a file").unwrap();
    let error = ground.publish(&pages(&FIRST)).unwrap_err();
    assert!(matches!(error, WriteError::NotAFolder(_)));
    let inside = OutputFolder { dir: ground.site().join("deeper"), ..ground.place() };
    let error = super::super::write(&pages(&FIRST), &inside, &AtomicBool::new(false)).unwrap_err();
    assert!(matches!(error, WriteError::Disk { .. }), "{error}");
    assert_eq!(fs::read_to_string(ground.site()).unwrap(), "a file");
}

fn list_of(folder: &Path) -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    list(folder, "", &mut found);
    found
}
