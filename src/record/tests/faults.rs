//! The disk refuses: at any operation, for lack of room, for lack of rights.

use super::*;
use crate::ledger::Measured;

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
fn what_a_line_names_stands_in_its_place_whole_once_the_line_does_at_any_fault() {
    let response = serde_json::json!({"note": "Größe", "nonce": "00"});
    let digest = Digest::of_json(&response).unwrap();
    for fails in [When::From, When::Full, |_| When::Never] {
        for operation in 1..16 {
            let ground = Ground::with(1);
            let place = ground.book.path().join(format!("record/responses/{digest}.json"));
            let kept = keep(&ground.store_on(fails(operation)), &response, digest);
            let is_named = ground.chain().lines.len() == 3;
            assert!(ground.chain().is_sound() && (is_named || !place.exists()), "operation {operation}");
            assert!(kept.is_err() || is_named, "operation {operation}");
            keep(&ground.store(), &response, digest).unwrap();
            assert_eq!(Digest::of(&fs::read(&place).unwrap()), digest, "operation {operation}");
            assert_eq!(ground.chain().lines.len(), 3, "operation {operation}");
            assert_eq!(fs::read_dir(place.parent().unwrap()).unwrap().count(), 1, "nothing else is left");
        }
    }
}

/// Records readings with the response that they came in, as whoever takes them in does.
fn keep(store: &Store, response: &serde_json::Value, digest: Digest) -> Result<(), RecordError> {
    let mut open = store.open()?;
    let is_it = |line: &crate::ledger::Line| matches!(&line.fact, Fact::Measured(one) if one.response == digest);
    if open.chain().lines.iter().any(is_it) {
        return Ok(());
    }
    open.keep_response(response, &digest)?;
    let on = "2027-01-16".parse().unwrap();
    let measured = Measured { response: digest, by: "Bo".into(), on, made: Some(moment()), readings: vec![] };
    open.append(moment(), Fact::Measured(measured)).map(|_| ())
}
