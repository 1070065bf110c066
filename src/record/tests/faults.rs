//! The disk refuses: at any operation, for lack of room, for lack of rights.

use super::*;
use crate::digest::Digest;

#[test]
fn a_fault_at_any_operation_loses_nothing_and_the_next_try_records_once() {
    for begun in [0, 2] {
        for operation in 1..12 {
            let ground = if begun == 0 { Ground::new() } else { Ground::with(begun) };
            let failing = ground.store_on(When::From(operation));
            let done = record(&failing, "b", 1);
            // The same store goes on after a fault, as a server does.
            assert_eq!(record(&failing, "b", 1).is_ok(), done.is_ok(), "operation {operation}");
            let before = ground.chain();
            assert!(before.is_sound(), "operation {operation}: {:?}", before.faults);
            record(&ground.store(), "b", 1).unwrap();
            let mut expected: Vec<(String, u32)> = (1..=begun).map(|number| ("a".into(), number)).collect();
            expected.push(("b".into(), 1));
            assert_eq!(ground.facts(), expected, "operation {operation}");
        }
    }
}

#[test]
fn what_is_kept_whole_is_old_or_new_at_any_fault() {
    let response = serde_json::json!({"note": "Größe", "nonce": "00"});
    let digest = Digest::of_json(&response).unwrap();
    for operation in 1..8 {
        let ground = Ground::with(1);
        let failing = ground.store_on(When::From(operation));
        // Opening flushes what is there, and may be what fails.
        let kept = failing.open().and_then(|open| open.keep_response(&response, &digest));
        let place = ground.book.path().join(format!("record/responses/{digest}.json"));
        if kept.is_ok() || place.exists() {
            assert_eq!(Digest::of(&fs::read(&place).unwrap()), digest, "operation {operation}");
        }
        ground.store().open().unwrap().keep_response(&response, &digest).unwrap();
        assert_eq!(Digest::of(&fs::read(&place).unwrap()), digest);
        assert_eq!(fs::read_dir(place.parent().unwrap()).unwrap().count(), 1, "nothing else is left");
    }
}
