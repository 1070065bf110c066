//! Recording when nothing goes wrong, and after somebody edited what is not theirs to edit.

use super::*;

#[test]
fn what_was_recorded_is_read_again_and_the_book_keeps_its_id() {
    let ground = Ground::with(3);
    let store = ground.store();
    let id = store.open().unwrap().book("Another title", moment()).unwrap();
    assert!(id.len() == 32 && id.bytes().all(|digit| digit.is_ascii_hexdigit()));
    assert_eq!(ground.chain().opening().unwrap().book, id);
    assert_eq!(ground.facts(), [1, 2, 3].map(|number| ("a".into(), number)));
    assert_ne!(Ground::with(0).chain().opening().unwrap().book, id);
}

#[test]
fn a_fact_is_acknowledged_only_after_its_line_and_its_names_are_flushed() {
    let ground = Ground::new();
    let store = ground.store();
    let mut open = store.open().unwrap();
    open.book("Alder Court", moment()).unwrap();
    open.append(moment(), fact("a", 1)).unwrap();
    let first = ["make the folder", "flush the folder", "open", "write", "flush", "flush the folder"];
    let head = ["write anew", "rename"];
    assert_eq!(store.disk.fault.log(), [&first[..], &head, &["open", "write", "flush"], &head].concat());
}

#[test]
fn what_somebody_else_wrote_is_flushed_before_it_counts_as_recorded() {
    let ground = Ground::with(1);
    let store = ground.store();
    drop(store.open().unwrap());
    assert_eq!(store.disk.fault.log(), ["flush", "flush the folder"]);
    record(&ground.store(), "b", 1).unwrap();
    record(&store, "b", 1).unwrap();
    assert_eq!(store.disk.fault.log(), ["flush", "flush the folder", "flush"]);
}

#[test]
fn nothing_is_added_to_a_ledger_that_is_not_as_it_was_written() {
    let ground = Ground::with(3);
    let edited = String::from_utf8(ground.bytes()).unwrap().replace("00000002", "00000009");
    fs::write(ground.ledger(), &edited).unwrap();
    let error = ground.store().open().unwrap_err();
    assert_eq!(error.to_string(), "line 3 of the ledger is not as it was written");
    assert!(error.remedy().contains("from a backup"), "{}", error.remedy());
    assert_eq!(ground.bytes(), edited.as_bytes());
}

#[test]
fn an_edit_behind_an_open_stores_back_is_found_when_its_last_line_is_met() {
    let ground = Ground::with(2);
    let store = ground.store();
    drop(store.open().unwrap());
    let edited = String::from_utf8(ground.bytes()).unwrap().replace("00000002", "00000009");
    fs::write(ground.ledger(), edited).unwrap();
    assert!(matches!(store.open(), Err(RecordError::Faulty(..))));
}

#[test]
fn an_opening_comes_first_and_once() {
    let ground = Ground::new();
    let store = ground.store();
    let mut open = store.open().unwrap();
    assert!(matches!(open.append(moment(), fact("a", 1)), Err(RecordError::NotOpening)));
    open.book("Alder Court", moment()).unwrap();
    let again = open.chain().lines[0].fact.clone();
    assert!(matches!(open.append(moment(), again), Err(RecordError::NotOpening)));
}

#[test]
fn a_clock_that_was_set_back_changes_nothing_but_what_the_clock_said() {
    let ground = Ground::with(1);
    let store = ground.store();
    let back: Moment = "2001-01-01T00:00:00Z".parse().unwrap();
    store.open().unwrap().append(back, fact("a", 2)).unwrap();
    record(&store, "a", 3).unwrap();
    assert_eq!(ground.facts(), [1, 2, 3].map(|number| ("a".into(), number)));
    assert_eq!(ground.chain().lines[2].at, back);
}

#[test]
fn a_torn_last_line_is_cut_off_and_one_without_its_line_break_is_kept() {
    for cut in [1, 2, 40, 200] {
        let ground = Ground::with_one_that_nobody_was_told_of();
        let whole = ground.bytes();
        fs::write(ground.ledger(), &whole[..whole.len() - cut]).unwrap();
        record(&ground.store(), "a", 3).unwrap();
        let expected: &[u32] = if cut == 1 { &[1, 2, 3] } else { &[1, 3] };
        assert_eq!(ground.facts().iter().map(|(_, number)| *number).collect::<Vec<_>>(), expected, "{cut}");
        assert_eq!(ground.chain().tail, LedgerEnd::Whole);
    }
}

#[test]
fn what_a_crash_left_of_the_file_behind_its_end_is_cut_off() {
    for lost in [0, 1, 30] {
        let ground = Ground::with_one_that_nobody_was_told_of();
        let mut bytes = ground.bytes();
        bytes.truncate(bytes.len() - lost);
        bytes.extend([0; 64]);
        fs::write(ground.ledger(), bytes).unwrap();
        record(&ground.store(), "a", 2).unwrap();
        assert_eq!(ground.facts(), [1, 2].map(|number| ("a".into(), number)), "{lost}");
    }
}

#[test]
fn a_link_in_place_of_the_record_is_not_followed() {
    let (ground, elsewhere) = (Ground::new(), Ground::with(1));
    std::os::unix::fs::symlink(elsewhere.book.path().join("record"), ground.book.path().join("record")).unwrap();
    assert!(matches!(ground.store().open(), Err(RecordError::NotOurs(_))));
    let ground = Ground::new();
    fs::create_dir(ground.book.path().join("record")).unwrap();
    std::os::unix::fs::symlink(elsewhere.ledger(), ground.ledger()).unwrap();
    assert!(matches!(ground.store().open(), Err(RecordError::NotOurs(_))));
}
