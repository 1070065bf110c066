//! What was made and waits to be written: in memory, or aside in a passing file, so that a large book takes
//! no more memory than what is made at one time.

use std::fs::File;
use std::io::{self, Read, Seek, SeekFrom, Write};
use std::sync::{Arc, Mutex, PoisonError};

use super::Content;
use crate::pictures::{Digest, PIECE};

/// Where what is made waits; a clone is the same place. In memory, unless it is [`aside`](Spool::aside).
#[derive(Debug, Clone, Default)]
pub struct Spool(Option<Arc<Mutex<Roll>>>);

/// One passing file, written at its end; the system takes it away with its last holder.
#[derive(Debug)]
struct Roll {
    file: File,
    end: u64,
}

/// Bytes that lie aside.
#[derive(Debug, Clone)]
pub struct Laid {
    roll: Arc<Mutex<Roll>>,
    at: u64,
    bytes: u64,
    digest: Digest,
}

/// The same bytes, wherever they lie.
impl PartialEq for Laid {
    fn eq(&self, other: &Self) -> bool {
        (self.bytes, self.digest) == (other.bytes, other.digest)
    }
}

impl Eq for Laid {}

impl Spool {
    /// A place in a passing file; in memory where no such file can be made.
    #[must_use]
    pub fn aside() -> Self {
        Self(tempfile::tempfile().ok().map(|file| Arc::new(Mutex::new(Roll { file, end: 0 }))))
    }

    /// Takes what was made. What the disk has no room for stays in memory.
    #[must_use]
    pub fn lay(&self, made: Vec<u8>) -> Content {
        let Some(roll) = &self.0 else { return Content::Bytes(made.into()) };
        match roll.lock().unwrap_or_else(PoisonError::into_inner).add(&made) {
            Ok(at) => {
                Content::Laid(Laid { roll: Arc::clone(roll), at, bytes: made.len() as u64, digest: Digest::of(&made) })
            }
            Err(_) => Content::Bytes(made.into()),
        }
    }
}

impl Roll {
    /// Where the bytes begin.
    fn add(&mut self, bytes: &[u8]) -> io::Result<u64> {
        let at = self.end;
        self.file.seek(SeekFrom::Start(at))?;
        self.file.write_all(bytes)?;
        self.end = at + bytes.len() as u64;
        Ok(at)
    }
}

impl Laid {
    /// The digest of the bytes.
    pub(super) fn digest(&self) -> Digest {
        self.digest
    }

    /// How many bytes there are.
    pub(super) fn size(&self) -> u64 {
        self.bytes
    }

    /// Gives the bytes piece by piece.
    ///
    /// # Errors
    /// When they can't be read, or `take` fails.
    pub(super) fn pieces(&self, mut take: impl FnMut(&[u8]) -> io::Result<()>) -> io::Result<()> {
        let mut roll = self.roll.lock().unwrap_or_else(PoisonError::into_inner);
        roll.file.seek(SeekFrom::Start(self.at))?;
        let mut rest = (&mut roll.file).take(self.bytes);
        let mut piece = vec![0; PIECE];
        loop {
            match rest.read(&mut piece)? {
                0 => return Ok(()),
                read => take(piece.get(..read).unwrap_or(&piece))?,
            }
        }
    }

    /// All the bytes.
    ///
    /// # Errors
    /// When they can't be read.
    pub fn whole(&self) -> io::Result<Vec<u8>> {
        let mut whole = Vec::new();
        self.pieces(|piece| {
            whole.extend_from_slice(piece);
            Ok(())
        })?;
        Ok(whole)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_lies_aside_is_what_was_made_and_takes_no_memory() {
        let spool = Spool::aside();
        let made: Vec<Vec<u8>> = vec![b"a page".to_vec(), Vec::new(), vec![7; 3 * PIECE + 1]];
        let laid: Vec<Content> = made.iter().map(|made| spool.lay(made.clone())).collect();
        for (made, content) in made.iter().zip(&laid).rev() {
            let Content::Laid(laid) = content else { panic!("{content:?} stays in memory") };
            assert_eq!(laid.whole().unwrap(), *made);
            assert_eq!((content.digest(), content.size()), (Digest::of(made), made.len() as u64));
        }
        assert_eq!(spool.lay(b"a page".to_vec()), laid[0]);
    }

    #[test]
    fn in_memory_what_was_made_is_held_as_it_is() {
        assert_eq!(Spool::default().lay(b"a page".to_vec()), Content::Bytes(b"a page".as_slice().into()));
    }
}
