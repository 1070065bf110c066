//! Photographs of a delivery, at any fault of the disk: whole in their places once their line is there, and not before.

use super::*;
use crate::ledger::{ItemReceived, PhotoTaken};
use crate::record::photographs::Photographs;

/// Records a delivery with these photographs, as whoever takes one in does.
fn receive(store: &Store, photographs: &Photographs) -> Result<(), RecordError> {
    let mut open = store.open()?;
    let response = serde_json::json!({"note": "4711", "nonce": "00"});
    let digest = Digest::of_json(&response).unwrap();
    let is_it = |line: &crate::ledger::Line| matches!(&line.fact, Fact::Received(one) if one.response == digest);
    if open.chain().lines.iter().any(is_it) {
        return Ok(());
    }
    let photo = |(digest, bytes): (&Digest, &Vec<u8>)| PhotoTaken {
        name: "IMG 4.jpg".into(),
        sha256: Some(*digest),
        bytes: u32::try_from(bytes.len()).ok(),
    };
    let item = ItemReceived {
        room: "kitchen".into(),
        item: "rug".into(),
        option: None,
        mark: Digest::of(b"a rug"),
        lines: vec![],
        kept: None,
        note: None,
        photos: photographs.iter().map(photo).collect(),
    };
    let delivery = Delivery { from: "Oren".into(), load: None, note: "4711".into() };
    let (on, by) = ("2027-01-16".parse().unwrap(), "Teo Varrick".into());
    let received = Received { response: digest, delivery, by, on, made: moment(), device: None, items: vec![item] };
    open.record_received(moment(), received, &response, photographs)
}

fn names(ground: &Ground, folder: &str) -> Vec<String> {
    let listed = fs::read_dir(ground.book.path().join("record").join(folder)).into_iter().flatten();
    listed.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
}

#[test]
fn each_stands_in_its_place_whole_once_the_line_does_at_any_fault() {
    let photographs: Photographs =
        [b"a cracked box".to_vec(), b"the same from above".to_vec()].map(|bytes| (Digest::of(&bytes), bytes)).into();
    let mut tried = 0;
    for fails in [When::From, When::Full, |_| When::Never] {
        for operation in 1..28 {
            let ground = Ground::with(1);
            let tells = receive(&ground.store_on(fails(operation)), &photographs);
            let chain = ground.chain();
            let is_named = chain.lines.len() == 3;
            assert!(chain.is_sound() && (tells.is_err() || is_named), "operation {operation}");
            let placed = names(&ground, "photographs").into_iter().filter(|name| !name.starts_with('.')).count();
            assert!(is_named || placed == 0, "operation {operation}: {placed} stand there before their line");
            tried += usize::from(tells.is_err());
            receive(&ground.store(), &photographs).unwrap();
            let store = ground.store();
            drop(store.open().unwrap());
            for (digest, bytes) in &photographs {
                let place = ground.book.path().join(format!("record/photographs/{digest}.jpg"));
                assert_eq!(&fs::read(place).unwrap(), bytes, "operation {operation}");
            }
            assert_eq!(ground.chain().lines.len(), 3, "operation {operation}");
            assert_eq!((names(&ground, "photographs").len(), names(&ground, "responses").len()), (2, 1));
        }
    }
    assert!(tried > 20, "only {tried} faults");
}

/// Source: the page `explain ledger`: a file that no line names shows that lines were lost.
#[test]
fn one_that_no_line_names_shows_that_lines_were_lost() {
    let ground = Ground::with(1);
    let photographs: Photographs = [(Digest::of(b"a box"), b"a box".to_vec())].into();
    let before = ground.bytes();
    let head = fs::read(ground.head()).unwrap();
    receive(&ground.store(), &photographs).unwrap();
    assert!(ground.store().open().is_ok());
    // The ledger and its head are put back, and the response goes with its line.
    fs::write(ground.ledger(), before).unwrap();
    fs::write(ground.head(), head).unwrap();
    fs::remove_dir_all(ground.book.path().join("record/responses")).unwrap();
    let error = ground.store().open().unwrap_err().to_string();
    let digits = Digest::of(b"a box").short(8);
    assert!(error.contains(&format!("the photograph `{digits}` is in the record, and no line")), "{error}");
}
