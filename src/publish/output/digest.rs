//! The SHA-256 of a file's bytes, by which files are compared and named.

use std::fmt;
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use sha2::{Digest as _, Sha256};

/// A SHA-256 digest (FIPS 180-4).
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digest([u8; 32]);

impl Digest {
    /// The digest of these bytes.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }

    /// The digest of a file, read in pieces.
    ///
    /// # Errors
    /// Whatever the file system says when the file cannot be read.
    pub fn of_file(path: &Path) -> io::Result<Self> {
        let mut hasher = Hasher::default();
        let mut file = File::open(path)?;
        let mut piece = vec![0; PIECE];
        loop {
            match file.read(&mut piece)? {
                0 => return Ok(hasher.finish()),
                read => hasher.add(&piece[..read]),
            }
        }
    }

    /// Reads 64 lower-case hex digits, as [`fmt::Display`] prints them.
    #[must_use]
    pub fn from_hex(text: &str) -> Option<Self> {
        let text = text.as_bytes();
        if text.len() != 64 {
            return None;
        }
        let mut digest = [0; 32];
        for (byte, pair) in digest.iter_mut().zip(text.chunks_exact(2)) {
            *byte = nibble(pair[0])? << 4 | nibble(pair[1])?;
        }
        Some(Self(digest))
    }
}

/// How much of a file is held in memory at once.
pub(super) const PIECE: usize = 64 * 1024;

/// A digest in the making.
#[derive(Default)]
pub(super) struct Hasher(Sha256);

impl Hasher {
    pub(super) fn add(&mut self, bytes: &[u8]) {
        self.0.update(bytes);
    }

    pub(super) fn finish(self) -> Digest {
        Digest(self.0.finalize().into())
    }
}

fn nibble(digit: u8) -> Option<u8> {
    match digit {
        b'0'..=b'9' => Some(digit - b'0'),
        b'a'..=b'f' => Some(digit - b'a' + 10),
        _ => None,
    }
}

impl From<[u8; 32]> for Digest {
    fn from(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The one-block example of FIPS 180-2, appendix B.1.
    const ABC: &str = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    #[test]
    fn a_digest_is_that_of_the_published_example() {
        assert_eq!(Digest::of(b"abc").to_string(), ABC);
    }

    #[test]
    fn a_digest_reads_back_from_its_own_digits_and_nothing_else() {
        assert_eq!(Digest::from_hex(ABC), Some(Digest::of(b"abc")));
        assert_eq!(Digest::from_hex(&ABC.to_uppercase()), None);
        assert_eq!(Digest::from_hex(&ABC[1..]), None);
        assert_eq!(Digest::from_hex(&ABC.replace('b', "é")), None);
    }
}
