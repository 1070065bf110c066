//! Photographs are handed over with what is said of a delivery: taken in whole and plain, or not at all.

use std::path::PathBuf;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use bookmatch::digest::Digest;
use bookmatch::ledger::Fact;
use bookmatch::ledger::photograph::{MOST_EACH, MOST_PHOTOGRAPHS, MOST_TOGETHER};
use bookmatch::record::{Full, MAX_HANDED, MOST_PHOTOGRAPHED, Outcome, Refusal};
use serde_json::{Value, json};

use super::{delivery, received, take_in};
use crate::issued::{IssuedBook, now};
use crate::project::Project;
use crate::project::picture::jpeg;

/// What is said of a delivery, with photographs of it.
fn with(book: &IssuedBook, n: u32, photographs: &[Vec<u8>]) -> Value {
    let mut says = delivery(book, n);
    says["delivery"]["note"] = json!(n.to_string());
    carry(&mut says, photographs);
    says
}

/// Puts photographs into what is said of a delivery, of its first item.
fn carry(says: &mut Value, photographs: &[Vec<u8>]) {
    let named = photographs.iter().enumerate().map(|(at, bytes)| {
        json!({"name": format!("IMG {at}.jpg"), "sha256": Digest::of(bytes).to_string(), "bytes": bytes.len()})
    });
    says["items"][0]["photos"] = named.collect();
    let carried = photographs.iter().map(|bytes| (Digest::of(bytes).to_string(), json!(STANDARD.encode(bytes))));
    says["photographs"] = Value::Object(carried.collect());
}

/// As much as goes with one delivery.
pub fn most() -> Vec<Vec<u8>> {
    (0..8).map(|at| of_size(&at.to_string(), MOST_TOGETHER / 8)).collect()
}

/// The names of the files in a folder of the record.
fn files(book: &IssuedBook, folder: &str) -> Vec<String> {
    let listed = std::fs::read_dir(book.path().join("record").join(folder)).into_iter().flatten();
    listed.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
}

/// A whole JPEG of so many bytes: its last tables stand in it over and over.
fn of_size(name: &str, bytes: usize) -> Vec<u8> {
    let whole = jpeg(name, 64, 48);
    // Which no other picture has: each is known by its digest.
    let table = [&[0xff, 0xdb, 0x00, 0x43, 0x00], Digest::of(name.as_bytes()).to_string().as_bytes()].concat();
    let more = (bytes - whole.len()) / table.len();
    let mut large = [&whole[..20], &table.repeat(more)[..], &whole[20..]].concat();
    // What is left is filled by a table of quantities that is as short as it may be, and by restarts.
    while large.len() + 6 <= bytes {
        large.splice(20..20, [0xff, 0xdd, 0, 4, 0, 0]);
    }
    large
}

#[test]
fn a_photograph_is_kept_under_its_digest_and_no_part_of_the_response() {
    let book = IssuedBook::new();
    let photograph = jpeg("box", 640, 480);
    let says = with(&book, 1, std::slice::from_ref(&photograph));
    assert_eq!(take_in(&book, &says).unwrap(), Outcome::Waiting);
    let digest = Digest::of(&photograph).to_string();
    let kept = book.path().join(format!("record/photographs/{digest}.jpg"));
    assert_eq!(std::fs::read(kept).unwrap(), photograph);
    assert_eq!(files(&book, "photographs").len(), 1, "and nothing else is there");
    let [Fact::Received(fact)] = &received(&book)[..] else { panic!() };
    let response = std::fs::read_to_string(book.path().join(format!("record/responses/{}.json", fact.response)));
    let response: Value = serde_json::from_str(&response.unwrap()).unwrap();
    assert!(response.get("photographs").is_none() && response["items"][0]["photos"][0]["sha256"] == digest.as_str());
    assert_eq!(Digest::of_json(&response).unwrap(), fact.response, "what is said names it by its digest");
    assert_eq!(take_in(&book, &says).unwrap(), Outcome::Already);
    // The same picture with another delivery is there once.
    assert_eq!(take_in(&book, &with(&book, 2, &[photograph])).unwrap(), Outcome::Waiting);
    assert_eq!((files(&book, "photographs").len(), files(&book, "responses").len()), (1, 2));
}

#[test]
fn one_that_is_not_as_it_may_be_is_refused_and_leaves_nothing_behind() {
    let book = IssuedBook::new();
    let good = jpeg("box", 96, 64);
    let refused = |says: &Value, words: &str| {
        let why = take_in(&book, says).unwrap_err().to_string();
        assert!(why.contains(words), "{words}: {why}");
    };
    let of = |bytes: &[u8]| with(&book, 1, &[bytes.to_vec()]);
    let exif = [&good[..2], b"\xff\xe1\x00\x0aExif\0\0MM", &good[2..]].concat();
    refused(&of(&exif), "more than its picture");
    refused(&of(&[&good[..], b"PK"].concat()), "behind its end");
    refused(&of(&good[..good.len() / 2]), "cut short");
    refused(&of(b"\x89PNG\r\n\x1a\n and so on"), "no JPEG");
    refused(&of(b"<svg onload='alert(1)'/>"), "no JPEG");
    refused(&of(&jpeg("wide", 1601, 8)), "more than 1600 pixels");
    refused(&of(&of_size("large", MOST_EACH + 64)), "larger than 256 KiB");
    let many: Vec<Vec<u8>> = (0..=MOST_PHOTOGRAPHS).map(|at| jpeg(&at.to_string(), 32, 32)).collect();
    refused(&with(&book, 1, &many), "more than 12 are with one delivery");
    let heavy: Vec<Vec<u8>> = (0..9).map(|at| of_size(&at.to_string(), 240 * 1024)).collect();
    refused(&with(&book, 1, &heavy), "all together are larger than 2 MiB");
    let change = |change: &dyn Fn(&mut Value)| {
        let mut says = of(&good);
        change(&mut says);
        says
    };
    let photo = |says: &mut Value, key: &str, value: Value| says["items"][0]["photos"][0][key] = value;
    refused(&change(&|says| photo(says, "bytes", json!(7))), "not the one that the delivery names");
    refused(&change(&|says| photo(says, "sha256", json!("ab".repeat(32)))), "named and not there");
    refused(&change(&|says| photo(says, "sha256", Value::Null)), "not the one that the delivery names");
    refused(&change(&|says| says["photographs"] = json!({})), "named and not there");
    refused(&change(&|says| says["items"][0]["photos"] = json!([])), "not the one that the delivery names");
    refused(&change(&|says| says["photographs"] = json!([1])), "not written in base64");
    refused(&change(&|says| says["photographs"] = json!({"ab": "x"})), "not written in base64");
    let another = json!({Digest::of(&good).to_string(): STANDARD.encode(jpeg("other", 96, 64))});
    refused(&change(&|says| says["photographs"] = another.clone()), "not the one that the delivery names");
    assert!(received(&book).is_empty() && files(&book, "photographs").is_empty());
    assert_eq!(take_in(&book, &of(&good)).unwrap(), Outcome::Waiting);
}

#[test]
fn what_is_no_delivery_carries_nothing_and_is_no_larger_than_before() {
    let book = IssuedBook::new();
    let mut response = book.response(1);
    response["photographs"] = json!({});
    let why = book.receiver().take_in(response.to_string().as_bytes(), now()).unwrap_err().to_string();
    assert!(why.contains("unknown field `photographs`"), "{why}");
    let too_large = |says: &Value| {
        let why = take_in(&book, says).unwrap_err().to_string();
        assert!(why.contains("larger than 256 KiB"), "{why}");
    };
    let mut long = delivery(&book, 1);
    long["items"][0]["note"] = json!("x".repeat(256 * 1024));
    too_large(&long);
    let mut long = with(&book, 1, &[jpeg("box", 96, 64)]);
    long["items"][0]["note"] = json!("x".repeat(256 * 1024));
    too_large(&long);
    let deep = vec![b'1'; MAX_HANDED + 1];
    assert!(book.receiver().take_in(&deep, now()).unwrap_err().to_string().contains("larger"));
    let numbers = format!("[{}1]", "1,".repeat(200_000));
    let why = book.receiver().take_in(numbers.as_bytes(), now()).unwrap_err().to_string();
    assert!(why.contains("larger than 256 KiB"), "what takes memory is looked at before it is read: {why}");
}

#[test]
fn as_much_as_may_be_is_taken_in_one_delivery() {
    let book = IssuedBook::new();
    let all = most();
    let says = with(&book, 1, &all);
    assert!(all.iter().map(Vec::len).sum::<usize>() > MOST_TOGETHER - 64 && says.to_string().len() <= MAX_HANDED);
    assert_eq!(take_in(&book, &says).unwrap(), Outcome::Waiting);
    assert_eq!(files(&book, "photographs").len(), 8);
}

/// Strangers can hand them in: so many bytes of them wait, and no more are taken.
#[test]
fn a_flood_of_photographs_is_no_more_than_waits() {
    let book = IssuedBook::new();
    let of = |n: u32| {
        let each = (0..8).map(|at| of_size(&format!("{n} {at}"), MOST_TOGETHER / 8));
        let mut says = with(&book, n, &each.collect::<Vec<_>>());
        says["by"] = json!(format!("Stranger {n}"));
        says
    };
    let fit = u32::try_from(MOST_PHOTOGRAPHED / MOST_TOGETHER as u64).unwrap();
    for n in 0..fit {
        assert_eq!(take_in(&book, &of(n)).unwrap(), Outcome::Waiting);
    }
    let full = take_in(&book, &of(fit)).unwrap_err();
    assert!(matches!(full, Refusal::Full(Full::Photographed)), "{full}");
    assert!(full.to_string().starts_with("24 MiB of photographs of deliveries wait to be confirmed"), "{full}");
    let mut named = delivery(&book, 99);
    named["by"] = json!("Teo Varrick");
    assert_eq!(take_in(&book, &named).unwrap(), Outcome::Waiting, "one without any is taken");
    let [Fact::Received(first), ..] = &received(&book)[..] else { panic!() };
    book.receiver().take_back(&first.response.to_string(), "Dara Vell", None, now()).unwrap();
    assert_eq!(take_in(&book, &of(fit)).unwrap(), Outcome::Waiting, "one that was taken back waits no longer");
}

/// What Teo Varrick hands over of the first thing of an issue, which came damaged, with photographs.
pub fn of_the_first(project: &Project, photographs: &[Vec<u8>]) -> PathBuf {
    let issue: Value =
        serde_json::from_slice(&std::fs::read(project.root().join("record/issues/0001.json")).unwrap()).unwrap();
    let first = &issue["items"][0];
    let mut says = json!({
        "format": "bookmatch delivery 1", "book": issue["book"], "issue": 1, "by": "Teo Varrick",
        "delivery": {"from": "Ardwin", "note": "4711"}, "nonce": "0".repeat(32), "made": "2026-01-16T10:00:00Z",
        "items": [{
            "room": first["room"], "item": first["item"], "mark": first["mark"], "kept": "sent back",
            "lines": [{"of": "finish", "came": "damaged"}],
        }],
    });
    carry(&mut says, photographs);
    let file = project.beside("delivery.json");
    std::fs::write(&file, says.to_string()).unwrap();
    file
}

#[test]
fn one_that_is_gone_or_another_than_it_was_is_told_and_nothing_else_is_held_up() {
    let project = Project::with_a_rug_issued();
    let photograph = jpeg("box", 640, 480);
    let file = of_the_first(&project, std::slice::from_ref(&photograph));
    let receive = || project.run(["receive", project.root().to_str().unwrap(), file.to_str().unwrap()]);
    receive().exits(0).says("recorded to be confirmed");
    let review = || project.run(["review", "--today", "2027-01-15"]);
    review().exits(0).does_not_say("approve/ledger");
    let status = || project.run(["status", "--today", "2027-01-15"]);
    let kept = project.root().join(format!("record/photographs/{}.jpg", Digest::of(&photograph)));
    let site = project.beside("site");
    let orders = || {
        project.run(["publish", "--draft", "--today", "2027-01-15", "--out", site.to_str().unwrap()]).exits(0);
        std::fs::read_to_string(site.join("office/orders.html")).unwrap()
    };
    assert!(orders().contains("alt=\"IMG 0.jpg\"") && !orders().contains("it is not in the record"));

    std::fs::write(&kept, jpeg("another box", 640, 480)).unwrap();
    let told = "a photograph of the delivery `4711` of `Ardwin`";
    review().says(&format!("{told} is not as it was recorded")).says("approve/ledger");
    std::fs::remove_file(&kept).unwrap();
    review().exits(0).says(&format!("{told} is gone"));
    status().exits(0);
    let page = orders();
    assert!(page.contains("photograph IMG 0.jpg: it is not in the record as it came") && !page.contains("alt=\"IMG 0"));
    receive().exits(0).says("already recorded");
    std::fs::write(&kept, &photograph).unwrap();
    review().exits(0).does_not_say("approve/ledger");
}

/// A whole JPEG by its parts whose picture no decoder makes out: it keeps nothing from being published.
#[test]
fn one_that_can_t_be_decoded_is_a_note_and_stops_nothing() {
    let project = Project::with_a_rug_issued();
    let whole = jpeg("box", 64, 48);
    let scan = whole.windows(2).position(|pair| pair == [0xff, 0xda]).unwrap();
    // Its tables of codes are left out.
    let tables: Vec<usize> =
        whole[..scan].windows(2).enumerate().filter(|(_, pair)| *pair == [0xff, 0xc4]).map(|(at, _)| at).collect();
    let odd = [&whole[..tables[0]], &whole[scan..]].concat();
    let file = of_the_first(&project, &[odd]);
    project
        .run(["receive", project.root().to_str().unwrap(), file.to_str().unwrap()])
        .exits(0)
        .says("recorded to be confirmed");
    let site = project.beside("site");
    let publish = ["publish", "--today", "2027-01-15", "--out", site.to_str().unwrap()];
    project.run(publish).exits(0).says("can't be used");
    let orders = std::fs::read_to_string(site.join("office/orders.html")).unwrap();
    assert!(
        orders.contains("photograph IMG 0.jpg: it is no picture that can be shown")
            && !orders.contains("alt=\"IMG 0.jpg\"")
    );
}
