//! The list of files that bookmatch wrote to a folder, by which it knows its own.

use std::collections::BTreeMap;
use std::fs;

use serde::{Deserialize, Serialize};

use super::error::WriteError;
use super::ground::{MANIFEST, OutputTarget, see};
use super::path;
use crate::pictures::Digest;

/// Each path that was written, and the digest of what was written to it.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct Manifest {
    pub(super) files: BTreeMap<String, Digest>,
}

#[derive(Serialize, Deserialize)]
struct Written {
    format: u32,
    files: BTreeMap<String, String>,
}

const FORMAT: u32 = 1;

impl Manifest {
    /// The folder's manifest; an empty one when it has none yet.
    ///
    /// # Errors
    /// [`WriteError::Damaged`] when it names a path that we would never write, or is no manifest:
    /// nothing is removed on its word then.
    pub(super) fn read(ground: &OutputTarget<'_>) -> Result<Self, WriteError> {
        let path = ground.at(MANIFEST);
        match see(&path)? {
            None => return Ok(Self::default()),
            Some(meta) if !meta.is_file() => return Err(WriteError::Link(path)),
            Some(_) => {}
        }
        let bytes = fs::read(&path).map_err(|error| WriteError::disk("read", &path, error))?;
        Self::parse(&bytes).ok_or(WriteError::Damaged(path))
    }

    pub(super) fn parse(bytes: &[u8]) -> Option<Self> {
        let written: Written = serde_json::from_slice(bytes).ok()?;
        if written.format != FORMAT {
            return None;
        }
        let mut files = BTreeMap::new();
        for (path, digest) in written.files {
            path::check(&path).ok()?;
            files.insert(path, digest.parse().ok()?);
        }
        Some(Self { files })
    }

    /// The manifest as it is stored: the same files give the same bytes.
    pub(super) fn to_bytes(&self) -> Vec<u8> {
        let files = self.files.iter().map(|(path, digest)| (path.clone(), digest.to_string()));
        let written = Written { format: FORMAT, files: files.collect() };
        let mut text = serde_json::to_vec_pretty(&written).unwrap_or_default();
        text.push(b'\n');
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_manifest_reads_back_as_it_was_stored() {
        let files = [("a/b.html".to_owned(), Digest::of(b"b")), ("c".to_owned(), Digest::of(b""))];
        let manifest = Manifest { files: files.into() };
        assert_eq!(Manifest::parse(&manifest.to_bytes()), Some(manifest));
    }

    #[test]
    fn a_manifest_that_names_a_file_elsewhere_is_not_believed() {
        let good = Manifest { files: [("a".to_owned(), Digest::of(b""))].into() }.to_bytes();
        let good = String::from_utf8(good).unwrap();
        for (from, to) in [("\"a\"", "\"../a\""), ("\"a\"", "\"/a\""), ("1", "2"), ("e3b0", "e3")] {
            let bad = good.replace(from, to);
            assert_ne!(good, bad);
            assert_eq!(Manifest::parse(bad.as_bytes()), None, "{bad}");
        }
        assert_eq!(Manifest::parse(b""), None);
    }
}
