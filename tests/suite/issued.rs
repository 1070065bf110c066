//! A book that was issued, its approvers' keys, and responses as the pages make them.

use std::collections::BTreeSet;
use std::path::Path;

use bookmatch::digest::{Digest, canonical};
use bookmatch::ledger::{Fact, Issue, Issued, IssuedItem, Moment, Purpose, Total};
use bookmatch::record::{Key, Receiver, Store, hmac_sha256};
use bookmatch::units::Date;
use serde_json::{Value, json};
use tempfile::TempDir;

/// What the clock says here.
pub fn now() -> Moment {
    "2027-01-16T19:22:03Z".parse().unwrap()
}

fn day() -> Date {
    Date::new(2027, 1, 15).unwrap()
}

/// A book with two approvers, a kitchen with a range and a sink, and an issue of both.
pub struct IssuedBook {
    folder: TempDir,
    /// The book's id.
    pub id: String,
    /// The key of `odile`, and that of `samir`.
    pub keys: [Key; 2],
    options: &'static [&'static str],
}

impl IssuedBook {
    pub fn new() -> Self {
        Self::of_options(&["steel"])
    }

    /// The same, with these options of each item.
    pub fn of_options(options: &'static [&'static str]) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let store = Store::of_book(folder.path());
        let mut open = store.open().unwrap();
        let id = open.book("Elm Row", now()).unwrap();
        let keys = ["odile", "samir"].map(|who| open.invite(who, now(), day()).unwrap());
        drop(open);
        let book = Self { folder, id, keys, options };
        book.issue(1, &[("range", "black"), ("sink", "white")]);
        book
    }

    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    /// Freezes an issue: items of the kitchen, each with what is shown of it.
    pub fn issue(&self, number: u32, items: &[(&str, &str)]) {
        self.issue_at(now(), number, items);
    }

    /// The same at some moment.
    pub fn issue_at(&self, at: Moment, number: u32, items: &[(&str, &str)]) {
        let store = Store::of_book(self.path());
        let mut open = store.open().unwrap();
        let items: Vec<IssuedItem> = items.iter().map(|(item, shown)| self.issued_item(item, shown)).collect();
        let (title, currency, total) = ("Elm Row".into(), "USD".into(), Total::default());
        let (purpose, on) = (Purpose::Approval, day());
        let issue = Issue {
            book: self.id.clone(),
            number,
            purpose,
            on,
            title,
            currency,
            total,
            terms: None,
            built: None,
            asked: vec![],
            unapproved: None,
            money: None,
            title_block: None,
            after: None,
            items,
        };
        let sha256 = open.keep_issue(&issue).unwrap();
        let items = u32::try_from(issue.items.len()).unwrap();
        open.append(at, Fact::Issued(Issued { number, purpose, on, sha256, items })).unwrap();
    }

    pub fn receiver(&self) -> Receiver {
        let approvers: BTreeSet<String> = ["odile", "samir"].map(String::from).into();
        Receiver::new(self.path(), approvers, [("kitchen".to_owned(), "range".to_owned())].into())
    }

    /// What `odile` decides of the range and the sink, not yet sealed; `n` makes each another.
    pub fn response(&self, n: u32) -> Value {
        let mark = |item: &str, shown: &str| Digest::of_json(&content(item, shown, self.options)).unwrap().to_string();
        let asked = |item: &str, shown: &str| json!({"room": "kitchen", "item": item, "mark": mark(item, shown), "decision": "approved"});
        json!({
            "format": "bookmatch response 1", "book": self.id, "issue": 1, "who": "odile",
            "nonce": format!("{n:032x}"), "made": "2027-01-16T19:20:00Z",
            "items": [asked("range", "black"), asked("sink", "white")],
            "signed": {"name": "Odile Quillarn", "statement": "I have seen what is shown.", "drawing": "M1 2L3 4"},
        })
    }

    /// A response sealed with the key of `odile`, as bytes.
    pub fn sealed(&self, n: u32) -> Vec<u8> {
        seal(self.response(n), &self.keys[0])
    }

    /// The lines of the ledger that hold a decision or a measurement.
    pub fn facts(&self) -> Vec<Fact> {
        let facts = self.all_facts().into_iter();
        facts.filter(|fact| matches!(fact, Fact::Decided(_) | Fact::Measured(_))).collect()
    }

    /// Every line of the ledger.
    pub fn all_facts(&self) -> Vec<Fact> {
        let store = Store::of_book(self.path());
        let open = store.open().unwrap();
        open.chain().lines.iter().map(|line| line.fact.clone()).collect()
    }

    fn issued_item(&self, item: &str, shown: &str) -> IssuedItem {
        let content = content(item, shown, self.options);
        let mark = Digest::of_json(&content).unwrap();
        let (room, tag, name) = ("kitchen".into(), "K-01".into(), item.into());
        IssuedItem {
            room,
            item: item.into(),
            tag,
            name,
            mark,
            also: vec![],
            content,
            price: None,
            lead_time: None,
            order_by: None,
            supplier: None,
        }
    }
}

fn content(item: &str, shown: &str, options: &[&str]) -> Value {
    let options: Vec<Value> = options.iter().map(|id| json!({"id": id})).collect();
    json!({"item": item, "finish": shown, "options": options})
}

/// The mark of an item that is shown so.
pub fn mark(item: &str, shown: &str) -> String {
    Digest::of_json(&content(item, shown, &["steel"])).unwrap().to_string()
}

/// A response with the proof of a key, as bytes.
pub fn seal(mut response: Value, key: &Key) -> Vec<u8> {
    let mac = hmac_sha256(&bytes_of(key), &canonical(&response).unwrap());
    response["mac"] = mac.iter().map(|byte| format!("{byte:02x}")).collect::<String>().into();
    response.to_string().into_bytes()
}

/// The bytes of a key, from the link, as the page takes them (RFC 4648, section 5).
fn bytes_of(key: &Key) -> Vec<u8> {
    let letters = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let (mut bits, mut count, mut bytes) = (0u32, 0, Vec::new());
    for letter in key.in_link().bytes() {
        bits = bits << 6 | u32::try_from(letters.iter().position(|one| *one == letter).unwrap()).unwrap();
        count += 6;
        if count >= 8 {
            count -= 8;
            bytes.push(u8::try_from(bits >> count & 0xff).unwrap());
        }
    }
    bytes
}
