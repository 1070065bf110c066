//! One output after another.

use std::os::unix::fs::MetadataExt;

use super::super::PathError;
use super::*;

#[test]
fn the_first_publish_makes_the_folder_and_writes_every_file() {
    let ground = Ground::new();
    let written = ground.publish(&pages(&FIRST)).unwrap();
    assert_eq!(written, Written { added: 4, ..Written::default() });
    assert_eq!(ground.stands(), exactly(&FIRST));
}

#[test]
fn the_next_publish_adds_changes_and_removes_what_it_has_to() {
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    let written = ground.publish(&pages(&SECOND)).unwrap();
    assert_eq!(written, Written { added: 4, changed: 1, same: 0, removed: 3 });
    assert_eq!(ground.stands(), exactly(&SECOND));
    let written = ground.publish(&pages(&FIRST)).unwrap();
    assert_eq!(written, Written { added: 3, changed: 1, same: 0, removed: 4 });
    assert_eq!(ground.stands(), exactly(&FIRST));
}

#[test]
fn publishing_the_same_again_touches_nothing() {
    let ground = Ground::new();
    let mut output = pages(&FIRST);
    output.insert("client/p/attic.jpg", ground.picture(b"\xff\xd8 light")).unwrap();
    ground.publish(&output).unwrap();
    let stamps = || {
        let files = walkdir::WalkDir::new(ground.site()).sort_by_file_name().into_iter();
        let entry = |file: walkdir::DirEntry| {
            let meta = file.metadata().unwrap();
            (file.path().to_owned(), meta.ino(), meta.mtime(), meta.mtime_nsec(), meta.ctime_nsec())
        };
        files.map(|file| entry(file.unwrap())).collect::<Vec<_>>()
    };
    let before = stamps();
    let written = ground.publish(&output).unwrap();
    assert_eq!(written, Written { same: 5, ..Written::default() });
    assert_eq!(before, stamps());
}

#[test]
fn the_same_output_leaves_the_same_bytes_whatever_stood_before() {
    let (fresh, used) = (Ground::new(), Ground::new());
    fresh.publish(&pages(&SECOND)).unwrap();
    used.publish(&pages(&FIRST)).unwrap();
    used.publish(&pages(&SECOND)).unwrap();
    let manifest = |ground: &Ground| fs::read(ground.site().join(".bookmatch-manifest.json"));
    assert_eq!(manifest(&fresh).unwrap(), manifest(&used).unwrap());
    assert_eq!(fresh.stands(), used.stands());
}

#[test]
fn a_picture_that_is_not_what_it_was_is_named_and_the_folder_stays() {
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    for spoil in ["other bytes", ""] {
        let mut output = pages(&SECOND);
        let picture = ground.picture(b"as made");
        let Content::File { path, .. } = picture.clone() else { unreachable!() };
        if spoil.is_empty() {
            fs::remove_file(&path).unwrap();
        } else {
            fs::write(&path, spoil).unwrap();
        }
        output.insert("client/p/sink.jpg", picture).unwrap();
        let error = ground.publish(&output).unwrap_err();
        assert!(matches!(&error, WriteError::Picture(named) if *named == path), "{error}");
        assert_eq!(ground.stands(), exactly(&FIRST));
    }
}

#[test]
fn a_path_can_be_taken_once_whatever_its_case() {
    let mut output = pages(&[("client/Index.html", "")]);
    let mut insert = |path: &str| output.insert(path, Content::Bytes([].into())).unwrap_err();
    let taken = |path: &str| PathError::Taken { path: path.into(), by: "client/Index.html".into() };
    for path in ["client/Index.html", "client/index.HTML", "Client/other", "client", "client/index.html/a"] {
        assert_eq!(insert(path), taken(path));
    }
    assert_eq!(output.files().len(), 1);
}

#[test]
fn a_name_may_change_its_case() {
    let ground = Ground::new();
    ground.publish(&pages(&[("a/Tap.html", "one"), ("B/c", "")])).unwrap();
    ground.publish(&pages(&[("a/tap.html", "two"), ("b/c", "")])).unwrap();
    let stands = ground.stands();
    assert_eq!(stands.get("a/tap.html").map(String::as_str), Some("two"));
    assert!(!stands.contains_key("a/Tap.html") && !stands.contains_key("B/c"));
}

#[test]
fn the_user_may_stop_it_and_finds_everything_as_it_was() {
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    let stopped = AtomicBool::new(true);
    let error = super::super::write(&pages(&SECOND), &ground.place(), &stopped).unwrap_err();
    assert!(matches!(error, WriteError::Interrupted));
    assert_eq!(ground.stands(), exactly(&FIRST));
}

#[test]
fn a_stop_at_the_first_publish_leaves_no_folder_behind() {
    let ground = Ground::new();
    let place = OutputFolder { dir: ground.site().join("deep/er"), ..ground.place() };
    let stopped = AtomicBool::new(true);
    assert!(super::super::write(&pages(&FIRST), &place, &stopped).is_err());
    assert!(!ground.site().exists());
}

#[test]
fn two_runs_at_once_are_kept_apart() {
    let ground = Ground::new();
    ground.publish(&pages(&FIRST)).unwrap();
    let lock = fs::File::open(ground.site().join(".bookmatch-lock")).unwrap();
    lock.lock().unwrap();
    let error = ground.publish(&pages(&SECOND)).unwrap_err();
    assert!(matches!(error, WriteError::Busy(_)));
    assert_eq!(
        error.to_string(),
        format!("another run is publishing to `{}` now", ground.site().canonicalize().unwrap().display())
    );
    assert_eq!(ground.stands(), exactly(&FIRST));
    lock.unlock().unwrap();
    ground.publish(&pages(&SECOND)).unwrap();
}
