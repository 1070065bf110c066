//! The keys of approvers: made, kept where the owner alone can read them, and taken away.
//!
//! They stand in `record/keys`, which version control is told to leave out, and in no other place: the
//! ledger names a key by its id alone, and what is published is made without them.

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use crate::digest::Digest;
use crate::ledger::{Fact, Invited, Line, Moment, Withdrawn};
use crate::units::Date;

use super::error::RecordError;
use super::store::{Open, Store};

/// The largest file that can hold a key, in bytes.
const MAX_KEY_FILE: u64 = 1024;

/// A key: 32 random bytes that an approver and the book share.
#[derive(Clone, PartialEq, Eq)]
pub struct Key([u8; 32]);

impl std::fmt::Debug for Key {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Key({})", self.id())
    }
}

impl Key {
    /// A new key.
    ///
    /// # Errors
    /// When the system gives no random bytes.
    pub fn random() -> Result<Key, RecordError> {
        let mut bytes = [0; 32];
        getrandom::fill(&mut bytes).map_err(|_| RecordError::NotRandom)?;
        Ok(Key(bytes))
    }

    /// A key of these bytes.
    pub const fn of(bytes: [u8; 32]) -> Key {
        Key(bytes)
    }

    /// The bytes.
    pub(super) fn bytes(&self) -> &[u8; 32] {
        &self.0
    }

    /// Its id: the first 8 hex digits of the SHA-256 of its bytes.
    pub fn id(&self) -> String {
        Digest::of(&self.0).short(8)
    }

    /// As it stands in a private link: base64url without padding (RFC 4648, section 5), 43 letters.
    pub fn in_link(&self) -> String {
        const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
        let mut text = String::new();
        for three in self.0.chunks(3) {
            let bits = three.iter().fold(0u32, |bits, byte| bits << 8 | u32::from(*byte)) << (8 * (3 - three.len()));
            for at in 0..=three.len() {
                let letter = LETTERS.get((bits >> (18 - 6 * at) & 63) as usize);
                text.extend(letter.map(|letter| char::from(*letter)));
            }
        }
        text
    }

    fn hex(&self) -> String {
        self.0.iter().map(|byte| format!("{byte:02x}")).collect()
    }

    /// The key that a file holds.
    pub(super) fn in_file(bytes: &[u8]) -> Option<Key> {
        Key::parse(std::str::from_utf8(bytes).ok()?)
    }

    fn parse(text: &str) -> Option<Key> {
        Some(Key(*text.trim().parse::<Digest>().ok()?.as_bytes()))
    }
}

/// Whether an approver's id can be the name of a file.
pub fn is_plain(who: &str) -> bool {
    let plain = |letter: char| letter.is_alphanumeric() || matches!(letter, '-' | '_' | ' ');
    !who.is_empty() && who.len() <= 100 && who.chars().all(plain) && who.trim() == who
}

/// The ids of the keys that count, by approver.
pub fn current(lines: &[Line]) -> BTreeMap<String, String> {
    let mut keys = BTreeMap::new();
    for line in lines {
        match &line.fact {
            Fact::Invited(Invited { who, key, .. }) => _ = keys.insert(who.clone(), key.clone()),
            Fact::Withdrawn(Withdrawn { who, key, .. }) if keys.get(who) == Some(key) => _ = keys.remove(who),
            _ => {}
        }
    }
    keys
}

impl Store {
    fn keys(&self) -> PathBuf {
        self.folder.join("keys")
    }

    /// Makes the folder for keys: for the owner alone, and left out of version control.
    fn make_keys(&self) -> Result<(), RecordError> {
        let folder = self.keys();
        self.disk.make_private_folder(&folder)?;
        let ignore = folder.join(".gitignore");
        if ignore.exists() { Ok(()) } else { self.disk.write_private(&ignore, b"*\n") }
    }

    /// The key of an approver that counts by these lines of the ledger; none when there is none, or the one on the
    /// disk is another.
    pub fn counting_key(&self, lines: &[Line], who: &str) -> Option<Key> {
        let id = current(lines).remove(who)?;
        self.key(who).filter(|key| key.id() == id)
    }

    /// The key on the disk of an approver; none when there is none, or it is no key.
    pub fn key(&self, who: &str) -> Option<Key> {
        let path = is_plain(who).then(|| self.keys().join(format!("{who}.key")))?;
        // A link could lead to anything, and a pipe has no end.
        let own = fs::symlink_metadata(&path).is_ok_and(|found| found.is_file() && found.len() <= MAX_KEY_FILE);
        Key::parse(&own.then(|| fs::read_to_string(path).ok())??)
    }
}

impl Open<'_> {
    /// Makes a key for an approver, keeps it and records the invitation, in one step: the key before counts
    /// until the new one is whole on the disk and its line is recorded, and no longer.
    ///
    /// # Errors
    /// When the id can't be the name of a file, or the disk refuses.
    pub fn invite(&mut self, who: &str, at: Moment, on: Date) -> Result<Key, RecordError> {
        if !is_plain(who) {
            return Err(RecordError::NotAName(who.into()));
        }
        let key = Key::random()?;
        self.store.make_keys()?;
        let part = self.store.beside("keys", &format!("{who}.key"));
        self.store.disk.remove(&part)?;
        let written = self.store.disk.write_private(&part, format!("{}\n", key.hex()).as_bytes());
        written.inspect_err(|_| _ = self.store.disk.remove(&part))?;
        self.append(at, Fact::Invited(Invited { who: who.into(), key: key.id(), on }))?;
        Ok(key)
    }

    /// Takes an approver's key away, and records that; false when there was none.
    ///
    /// # Errors
    /// When the disk refuses.
    pub fn withdraw(&mut self, who: &str, at: Moment, on: Date) -> Result<bool, RecordError> {
        let Some(key) = current(&self.chain().lines).remove(who) else {
            return Ok(false);
        };
        self.append(at, Fact::Withdrawn(Withdrawn { who: who.into(), key, on }))?;
        if is_plain(who) {
            self.store.disk.remove(&self.store.keys().join(format!("{who}.key")))?;
        }
        Ok(true)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at() -> (Moment, Date) {
        ("2027-01-16T19:22:03Z".parse().unwrap(), Date::new(2027, 1, 16).unwrap())
    }

    /// Published source: RFC 4648, sections 5 (the alphabet) and 10 (`fooba` is `Zm9vYmE=`).
    #[test]
    fn a_key_in_a_link_is_base64url_without_padding() {
        let mut bytes = [0; 32];
        bytes[..5].copy_from_slice(b"fooba");
        assert!(Key::of(bytes).in_link().starts_with("Zm9vYm"));
        assert_eq!(Key::of([0xff; 32]).in_link(), format!("{}8", "_".repeat(42)));
        assert_eq!(Key::of([0; 32]).in_link().len(), 43);
    }

    #[test]
    fn a_key_is_kept_for_the_owner_alone_renewed_and_withdrawn() {
        let book = tempfile::tempdir().unwrap();
        let store = Store::of_book(book.path());
        let (moment, day) = at();
        let mut open = store.open().unwrap();
        open.book("Elm Row", moment).unwrap();
        let first = open.invite("odile", moment, day).unwrap();
        assert_eq!(store.key("odile"), Some(first.clone()));
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let mode = |path: &str| fs::metadata(book.path().join(path)).unwrap().permissions().mode() & 0o777;
            assert_eq!((mode("record/keys"), mode("record/keys/odile.key")), (0o700, 0o600));
        }
        assert_eq!(fs::read_to_string(book.path().join("record/keys/.gitignore")).unwrap(), "*\n");
        let second = open.invite("odile", moment, day).unwrap();
        assert!(first != second && current(&open.chain().lines)["odile"] == second.id());
        assert!(open.withdraw("odile", moment, day).unwrap() && !open.withdraw("odile", moment, day).unwrap());
        assert!(store.key("odile").is_none() && current(&open.chain().lines).is_empty());
        let ledger = fs::read_to_string(book.path().join("record/ledger.jsonl")).unwrap();
        assert!(!ledger.contains(&first.hex()) && ledger.contains(&first.id()));
    }

    #[cfg(unix)]
    #[test]
    #[expect(clippy::disallowed_methods, reason = "the test lays links into the record")]
    fn keys_are_neither_written_nor_read_through_links() {
        use std::os::unix::fs::symlink;
        let (book, elsewhere) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let (store, (moment, day)) = (Store::of_book(book.path()), at());
        let keys = book.path().join("record/keys");
        let key = {
            let mut open = store.open().unwrap();
            open.book("Elm Row", moment).unwrap();
            symlink(elsewhere.path(), &keys).unwrap();
            assert!(matches!(open.invite("odile", moment, day), Err(RecordError::NotOurs(_))));
            fs::remove_file(&keys).unwrap();
            open.invite("odile", moment, day).unwrap()
        };
        fs::rename(keys.join("odile.key"), elsewhere.path().join("odile.key")).unwrap();
        symlink(elsewhere.path().join("odile.key"), keys.join("odile.key")).unwrap();
        assert!(store.key("odile").is_none(), "{key:?}");
        fs::remove_file(book.path().join("record/.lock")).unwrap();
        symlink(elsewhere.path().join("made"), book.path().join("record/.lock")).unwrap();
        assert!(matches!(store.open(), Err(RecordError::NotOurs(_))));
        assert_eq!(fs::read_dir(elsewhere.path()).unwrap().count(), 1, "nothing was made elsewhere");
    }

    #[test]
    fn a_path_is_no_name_of_an_approver() {
        for who in ["", "../odile", "a/b", "a\\b", ".", "a.key", "c:x", " odile", "a\0"] {
            assert!(!is_plain(who), "{who:?}");
        }
        assert!(is_plain("odile") && is_plain("the Quillarns") && is_plain("josé"));
    }
}
