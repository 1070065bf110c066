//! Files of the record that are written whole: issues, responses, photographs, scans.
//!
//! A file that a line names is laid beside its place first, under a name that begins with a dot; the line is
//! recorded; then the file takes its place. So a file in its place has its line, or had it: a ledger that
//! does not name it was cut or exchanged. Nothing in its place is ever written over.

use std::path::{Path, PathBuf};

use serde_json::Value;

use crate::digest::{Digest, canonical};
use crate::ledger::{Fact, Issue};

use super::error::RecordError;
use super::keys::Key;
use super::store::{Open, Store};

/// Where a file that a line names belongs.
struct NamedFile {
    folder: &'static str,
    name: String,
    /// A newer one takes the place of an older one.
    renewed: bool,
    /// The digest of its bytes, where its name is that.
    digest: Option<Digest>,
}

impl NamedFile {
    /// The files that a fact names.
    fn by(fact: &Fact) -> Vec<NamedFile> {
        let named = |folder, name| NamedFile { folder, name, renewed: false, digest: None };
        let response = |digest: &Digest| {
            vec![named("responses", format!("{digest}.json")), named("responses", format!("{digest}-sealed.json"))]
        };
        match fact {
            Fact::Issued(issued) => vec![named("issues", format!("{:04}.json", issued.number))],
            Fact::Decided(decided) => response(&decided.response),
            Fact::Measured(measured) => response(&measured.response),
            Fact::Received(received) => {
                let photographs = received.photographs().into_keys().map(|digest| {
                    let name = format!("{digest}.jpg");
                    NamedFile { folder: "photographs", name, renewed: false, digest: Some(digest) }
                });
                photographs.chain(response(&received.response)).collect()
            }
            Fact::Acknowledged(one) => response(&one.response),
            Fact::Invited(invited) => {
                let name = format!("{}.key", invited.who);
                vec![NamedFile { folder: "keys", name, renewed: true, digest: None }]
            }
            _ => vec![],
        }
    }
}

impl Store {
    pub(super) fn place(&self, folder: &str, name: &str) -> PathBuf {
        self.folder.join(folder).join(name)
    }

    /// Where a file lies until the line that names it is recorded.
    pub(super) fn beside(&self, folder: &str, name: &str) -> PathBuf {
        self.folder.join(folder).join(format!(".{name}.part"))
    }

    /// Moves the files that a recorded fact names to their places, where they still lie beside them.
    ///
    /// # Errors
    /// When the disk refuses, or something else stands in the place.
    pub(super) fn settle(&self, fact: &Fact) -> Result<(), RecordError> {
        for NamedFile { folder, name, renewed, digest } in NamedFile::by(fact) {
            let (place, part) = (self.place(folder, &name), self.beside(folder, &name));
            if !part.is_file() || is_link(&part) || !is_of(fact, digest, &part) {
                continue;
            }
            if !renewed && is_there(&place) {
                return Err(RecordError::Taken(place));
            }
            self.disk.rename(&part, &place)?;
            self.disk.flush_folder(&self.folder.join(folder))?;
        }
        Ok(())
    }

    /// Removes what was laid out for a fact that could not be recorded.
    pub(super) fn take_away(&self, fact: &Fact) {
        for NamedFile { folder, name, .. } in NamedFile::by(fact) {
            // What can't be removed now is removed by whoever lays the next one out.
            let _ = self.disk.remove(&self.beside(folder, &name));
        }
    }
}

impl Open<'_> {
    /// Lays out the file of an issue, and gives its digest. It takes its place once a line names it.
    ///
    /// # Errors
    /// When the disk refuses, or an issue of that number is there.
    pub fn keep_issue(&self, issue: &Issue) -> Result<Digest, RecordError> {
        let value = serde_json::to_value(issue).map_err(|_| RecordError::NotExact)?;
        let bytes = canonical(&value).map_err(|_| RecordError::NotExact)?;
        let name = format!("{:04}.json", issue.number);
        if is_there(&self.store.place("issues", &name)) {
            return Err(RecordError::Taken(self.store.place("issues", &name)));
        }
        self.lay_out("issues", &name, &bytes)?;
        Ok(Digest::of(&bytes))
    }

    /// Lays out a response as it came, under its digest: that of its canonical JSON without `mac`. It takes
    /// its place once a line names it. One that came before without its proof stays as it came.
    ///
    /// # Errors
    /// When the disk refuses.
    pub fn keep_response(&self, response: &Value, digest: &Digest) -> Result<(), RecordError> {
        let bytes = canonical(response).map_err(|_| RecordError::NotExact)?;
        let name = format!("{digest}.json");
        if !is_there(&self.store.place("responses", &name)) {
            return self.lay_out("responses", &name, &bytes);
        }
        let sealed = format!("{digest}-sealed.json");
        let has_proof = response.get("mac").is_some() && !is_there(&self.store.place("responses", &sealed));
        if has_proof { self.lay_out("responses", &sealed, &bytes) } else { Ok(()) }
    }

    /// Lays out a file that is named by its own digest, unless it stands in its place.
    pub(super) fn lay_beside(&self, folder: &str, name: &str, bytes: &[u8]) -> Result<(), RecordError> {
        if is_there(&self.store.place(folder, name)) { Ok(()) } else { self.lay_out(folder, name, bytes) }
    }

    /// Keeps a file that is named by its own digest; one that is there already says the same.
    pub(super) fn keep(&self, folder: &str, name: &str, bytes: &[u8]) -> Result<(), RecordError> {
        let (place, part) = (self.store.place(folder, name), self.store.beside(folder, name));
        if is_there(&place) {
            return Ok(());
        }
        self.lay_out(folder, name, bytes)?;
        self.store.disk.rename(&part, &place)?;
        self.store.disk.flush_folder(&self.store.folder.join(folder))
    }

    /// Writes a file whole beside its place, and flushes it.
    fn lay_out(&self, folder: &str, name: &str, bytes: &[u8]) -> Result<(), RecordError> {
        let disk = &self.store.disk;
        disk.make_folder(&self.store.folder.join(folder))?;
        let part = self.store.beside(folder, name);
        // What a killed run left was named by no line, or it would stand in its place; a link there would
        // have us write elsewhere.
        if is_there(&part) {
            disk.remove(&part)?;
        }
        let written = disk.write(&part, bytes);
        if written.is_err() {
            let _ = disk.remove(&part);
        }
        written
    }
}

/// Whether what lies beside a place is what the fact names, and not what another run left.
fn is_of(fact: &Fact, digest: Option<Digest>, part: &Path) -> bool {
    let bytes = std::fs::read(part).unwrap_or_default();
    match fact {
        _ if digest.is_some() => digest == Some(Digest::of(&bytes)),
        Fact::Issued(issued) => Digest::of(&bytes) == issued.sha256,
        Fact::Invited(invited) => Key::in_file(&bytes).is_some_and(|key| key.id() == invited.key),
        _ => serde_json::from_slice::<Value>(&bytes).is_ok(),
    }
}

/// Whether anything stands there, if only a link that leads nowhere.
fn is_there(path: &Path) -> bool {
    path.symlink_metadata().is_ok()
}

fn is_link(path: &Path) -> bool {
    path.symlink_metadata().is_ok_and(|found| found.is_symlink())
}
