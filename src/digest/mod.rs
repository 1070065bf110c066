//! SHA-256 of some bytes, by which photos, marks and lines of the ledger are known.

mod canonical;

pub use canonical::{NotCanonical, canonical};

use std::fmt;
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;
use std::str::FromStr;

use sha2::Digest as _;

/// A SHA-256 digest (FIPS 180-4), printed as 64 lower-case hex digits.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digest([u8; 32]);

impl Digest {
    /// The digest of `bytes`.
    pub fn of(bytes: &[u8]) -> Digest {
        Digest(sha2::Sha256::digest(bytes).into())
    }

    /// The digest of a value's canonical JSON.
    ///
    /// # Errors
    /// As [`canonical`].
    pub fn of_json(value: &serde_json::Value) -> Result<Digest, NotCanonical> {
        Ok(Digest::of(&canonical(value)?))
    }

    /// The digest of several parts, each preceded by its length, so that no two lists collide.
    pub fn of_parts(parts: &[&[u8]]) -> Digest {
        let mut hash = sha2::Sha256::new();
        for part in parts {
            hash.update((part.len() as u64).to_be_bytes());
            hash.update(part);
        }
        Digest(hash.finalize().into())
    }

    /// The digest of a file, read in pieces.
    ///
    /// # Errors
    /// Whatever the file system says when the file can't be read.
    pub fn of_file(path: &Path) -> io::Result<Digest> {
        let mut hasher = Hasher::default();
        let mut file = File::open(path)?;
        let mut piece = vec![0; PIECE];
        loop {
            match file.read(&mut piece)? {
                0 => return Ok(hasher.finish()),
                read => hasher.add(piece.get(..read).unwrap_or(&piece)),
            }
        }
    }

    /// Its first so many hex digits.
    pub fn short(&self, digits: usize) -> String {
        self.to_string().chars().take(digits).collect()
    }

    /// A digest of these 32 bytes, made elsewhere.
    pub const fn from_bytes(bytes: [u8; 32]) -> Digest {
        Digest(bytes)
    }

    /// The 32 bytes themselves.
    pub fn as_bytes(&self) -> &[u8; 32] {
        &self.0
    }
}

/// How much of a file is held in memory at once, in bytes.
pub const PIECE: usize = 64 * 1024;

/// A digest in the making, for bytes that come in pieces.
#[derive(Default)]
pub struct Hasher(sha2::Sha256);

impl Hasher {
    /// The next piece.
    pub fn add(&mut self, bytes: &[u8]) {
        self.0.update(bytes);
    }

    /// The digest of all pieces.
    pub fn finish(self) -> Digest {
        Digest(self.0.finalize().into())
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Digest({self})")
    }
}

/// Text that is not 64 lower-case hex digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NotADigest;

impl fmt::Display for NotADigest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not a digest of 64 lower-case hex digits")
    }
}

impl std::error::Error for NotADigest {}

impl FromStr for Digest {
    type Err = NotADigest;

    fn from_str(text: &str) -> Result<Digest, NotADigest> {
        let digits: &[u8; 64] = text.as_bytes().try_into().map_err(|_| NotADigest)?;
        let mut bytes = [0; 32];
        for (byte, [high, low]) in bytes.iter_mut().zip(digits.as_chunks::<2>().0) {
            *byte = nibble(*high)? << 4 | nibble(*low)?;
        }
        Ok(Digest(bytes))
    }
}

fn nibble(digit: u8) -> Result<u8, NotADigest> {
    match digit {
        b'0'..=b'9' => Ok(digit - b'0'),
        b'a'..=b'f' => Ok(digit - b'a' + 10),
        _ => Err(NotADigest),
    }
}

impl serde::Serialize for Digest {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for Digest {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Digest, D::Error> {
        let text = String::deserialize(deserializer)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn abc_has_the_digest_of_the_standard() {
        // FIPS 180-4 with NIST's example values: SHA-256 of the one-block message "abc".
        let expected = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(Digest::of(b"abc").to_string(), expected);
        assert_eq!(expected.parse(), Ok(Digest::of(b"abc")));
    }

    #[test]
    fn upper_case_short_and_foreign_text_is_no_digest() {
        let upper = Digest::of(b"abc").to_string().to_uppercase();
        for text in ["", "ba78", upper.as_str(), &"é".repeat(32)] {
            assert_eq!(text.parse::<Digest>(), Err(NotADigest), "{text}");
        }
    }

    #[test]
    fn lists_that_join_to_the_same_bytes_differ() {
        assert_ne!(Digest::of_parts(&[b"ab", b"c"]), Digest::of_parts(&[b"a", b"bc"]));
    }
}
