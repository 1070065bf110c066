//! A ledger that is deleted, emptied, cut or older than what lies beside it; keys that are renewed.

use super::*;
use crate::digest::Digest;
use crate::ledger::{Issue, Issued, Purpose, Total};

/// Why nothing can be recorded now.
fn refused(ground: &Ground) -> String {
    ground.store().open().unwrap_err().to_string()
}

fn issue(number: u32) -> Issue {
    Issue {
        book: "0123456789abcdef0123456789abcdef".into(),
        number,
        purpose: Purpose::Approval,
        on: "2027-01-16".parse().unwrap(),
        title: "Alder Court".into(),
        currency: "USD".into(),
        total: Total::default(),
        terms: None,
        built: None,
        asked: vec![],
        unapproved: None,
        money: None,
        title_block: None,
        after: None,
        items: vec![],
    }
}

/// Freezes an issue, as `issue` does.
fn freeze(store: &Store, number: u32) -> Result<(), RecordError> {
    let mut open = store.open()?;
    let sha256 = open.keep_issue(&issue(number))?;
    let (purpose, on) = (Purpose::Approval, "2027-01-16".parse().unwrap());
    open.append(moment(), Fact::Issued(Issued { number, purpose, on, sha256, items: 0 })).map(|_| ())
}

/// A record with an issue and a key.
fn full() -> Ground {
    let ground = Ground::with(0);
    freeze(&ground.store(), 1).unwrap();
    ground.store().open().unwrap().invite("ada", moment(), "2027-01-16".parse().unwrap()).unwrap();
    ground
}

#[test]
fn nothing_begins_anew_over_a_record_whose_ledger_is_gone_or_empty() {
    for emptied in [None, Some(&b""[..]), Some(b"{\"at\""), Some(&[0; 64])] {
        for with_head in [true, false] {
            let ground = full();
            let file = ground.book.path().join("record/issues/0001.json");
            let before = fs::read(&file).unwrap();
            match emptied {
                None => fs::remove_file(ground.ledger()).unwrap(),
                Some(bytes) => fs::write(ground.ledger(), bytes).unwrap(),
            }
            if !with_head {
                fs::remove_file(ground.head()).unwrap();
            }
            assert_eq!(refused(&ground), "the ledger is gone or empty, beside 1 issue and 1 key");
            assert_eq!(fs::read(&file).unwrap(), before);
        }
    }
    let ground = Ground::with(1);
    fs::remove_file(ground.ledger()).unwrap();
    assert_eq!(refused(&ground), "the ledger is gone or empty, beside the head of one that had lines");
}

#[test]
fn a_cut_inside_a_line_that_was_recorded_is_told_as_lost_by_its_number() {
    let ground = Ground::with(3);
    let whole = ground.bytes();
    for (cut, told) in [
        (2, "line 4 of the ledger is lost: it was recorded, and is cut off"),
        (
            whole.split_inclusive(|byte| *byte == b'\n').next_back().unwrap().len(),
            "line 4 of the ledger is lost: it was recorded, and is cut off",
        ),
        (whole.len() * 2 / 3, "lines 2 to 4 of the ledger are lost: they were recorded, and are cut off"),
    ] {
        fs::write(ground.ledger(), &whole[..whole.len() - cut]).unwrap();
        assert_eq!(refused(&ground), told, "{cut}");
        assert_eq!(ground.bytes().len(), whole.len() - cut, "nothing is cut off on top of it");
    }
    fs::write(ground.ledger(), &whole).unwrap();
    ground.store().open().unwrap();
}

#[test]
fn a_ledger_that_was_put_back_from_before_or_written_anew_is_told() {
    let ground = Ground::with(1);
    let older = ground.bytes();
    freeze(&ground.store(), 1).unwrap();
    fs::write(ground.ledger(), &older).unwrap();
    assert_eq!(refused(&ground), "line 3 of the ledger is lost: it was recorded, and is cut off, and 1 more faults");
    fs::remove_file(ground.head()).unwrap();
    assert_eq!(refused(&ground), "issue 1 is in the record, and no line of the ledger names it");
    assert!(matches!(freeze(&ground.store(), 1), Err(RecordError::Faulty(..))));

    let (ground, other) = (Ground::with(2), Ground::with(2));
    fs::write(ground.ledger(), other.bytes()).unwrap();
    assert_eq!(refused(&ground), "line 3 of the ledger is not the one that was recorded");
}

#[test]
fn responses_and_keys_that_no_line_names_are_told() {
    let ground = Ground::with(1);
    let beside = |path: &str| {
        let path = ground.book.path().join("record").join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(&path, "{}").unwrap();
        let told = refused(&ground);
        fs::remove_file(path).unwrap();
        told
    };
    let digest = Digest::of(b"a response").to_string();
    let expected = format!("the response `{}` is in the record, and no line of the ledger names it", &digest[..8]);
    assert_eq!(beside(&format!("responses/{digest}.json")), expected);
    assert_eq!(beside("keys/sven.key"), "a key of `sven` is in the record, and no line of the ledger names it");
    ground.store().open().unwrap();
}

#[test]
fn an_issue_is_never_written_over_and_stands_in_its_place_at_any_fault_once_its_line_does() {
    let ground = full();
    let file = ground.book.path().join("record/issues/0001.json");
    let before = fs::read(&file).unwrap();
    let again = ground.store().open().unwrap().keep_issue(&Issue { title: "Other".into(), ..issue(1) });
    assert!(matches!(again, Err(RecordError::Taken(_))));
    assert_eq!(fs::read(&file).unwrap(), before);
    for fails in [When::From, When::Full] {
        for operation in 1..20 {
            let ground = Ground::with(0);
            let place = ground.book.path().join("record/issues/0001.json");
            let done = freeze(&ground.store_on(fails(operation)), 1);
            let is_named = ground.chain().lines.len() == 2;
            assert!(done.is_err() || is_named, "operation {operation}");
            drop(ground.store().open().unwrap());
            assert_eq!(place.exists(), is_named, "operation {operation}");
            if !is_named {
                freeze(&ground.store(), 1).unwrap();
            }
            let Fact::Issued(issued) = ground.chain().lines[1].fact.clone() else { panic!() };
            assert_eq!(Digest::of(&fs::read(&place).unwrap()), issued.sha256, "operation {operation}");
        }
    }
}

#[test]
fn an_old_key_counts_until_the_new_one_is_whole_and_recorded_at_any_fault() {
    let day = "2027-01-17".parse().unwrap();
    for fails in [When::From, When::Full] {
        for operation in 1..20 {
            let ground = full();
            let old = ground.store().key("ada").unwrap();
            let failing = ground.store_on(fails(operation));
            let renewed = failing.open().and_then(|mut open| open.invite("ada", moment(), day));
            // Whoever is next finishes what was recorded.
            let store = ground.store();
            let counts = current(&store.open().unwrap().chain().lines).remove("ada").expect("ada has a key");
            let kept = store.key("ada").expect("the key is on the disk");
            assert_eq!(kept.id(), counts, "operation {operation}");
            match renewed {
                Ok(new) => assert_eq!(kept, new, "operation {operation}"),
                Err(_) => assert!(kept == old || ground.chain().lines.len() == 4, "operation {operation}"),
            }
            store.open().unwrap().invite("ada", moment(), day).unwrap();
        }
    }
}
