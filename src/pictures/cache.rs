//! A folder of derived files, each known by a digest and checked whenever it is read.
//!
//! It may be deleted at any moment, even half-way, and two programs may use it at once: a file is
//! written beside its place and then renamed into it, and an entry that is cut short, altered or
//! foreign counts as absent.

use std::fmt;
use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

use super::entry::Rendition;
use crate::digest::Digest;
use crate::units::{Fault, Phrase, Wrote, phrase};

/// First words of an entry; the number changes with its form.
const HEAD: &str = "bookmatch 1";
/// `HEAD`, a digest, and the length in 20 digits, with a space between and a line end.
const HEAD_BYTES: usize = HEAD.len() + 1 + 64 + 1 + 20 + 1;
/// No entry is larger: nothing that we keep comes near.
const MOST_BYTES: u64 = 256 * 1024 * 1024;
/// How often a write starts over when the folder vanishes under it.
const TRIES: usize = 200;

/// A folder of derived files; a clone is the same folder.
#[derive(Debug, Clone)]
pub struct Cache {
    root: PathBuf,
    /// The folder above it that is ours too.
    above: Option<PathBuf>,
    /// What can't be written to the folder is kept in a passing one.
    spares: bool,
    shared: Arc<Shared>,
}

/// What all clones of a cache share.
#[derive(Debug, Default)]
struct Shared {
    /// Removes a temporary folder at the end.
    _temporary: Option<tempfile::TempDir>,
    /// In place of the folder, once that can't be written to; removed at the end.
    spare: OnceLock<tempfile::TempDir>,
    /// Why the folder can't be written to.
    trouble: OnceLock<CacheError>,
}

/// The cache's folder can't be made or written.
#[derive(Debug)]
pub struct CacheError {
    /// The folder.
    pub folder: PathBuf,
    /// What the system said.
    pub source: io::Error,
}

impl Fault for CacheError {
    fn message(&self) -> Phrase {
        let folder = self.folder.display().to_string();
        phrase!("the cache folder `{folder}` can't be written ({})", folder, Wrote(&self.source.to_string()))
    }

    /// It names what is there.
    fn remedy(&self) -> Phrase {
        let is_there = |path: &&Path| fs::symlink_metadata(path).is_ok();
        let at = self.folder.ancestors().find(is_there).unwrap_or(&self.folder);
        let is_folder = fs::symlink_metadata(at).is_ok_and(|meta| meta.is_dir());
        let at = at.display().to_string();
        match self.source.kind() {
            _ if !is_folder => phrase!("move `{at}` away: a folder of bookmatch's own is made in its place", at),
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
                phrase!("free some space on the disk of `{at}`", at)
            }
            _ => phrase!("let `{at}` be written to", at),
        }
    }
}

impl fmt::Display for CacheError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.message().fmt(f)
    }
}

impl std::error::Error for CacheError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        Some(&self.source)
    }
}

impl Cache {
    /// Opens the cache in `folder`, making it, and the file that keeps it out of version
    /// control, where they are missing. Fails when the folder can't be written; the caller may
    /// then take [`Cache::temporary`].
    pub fn open(folder: &Path) -> Result<Cache, CacheError> {
        Cache::at(folder.to_path_buf(), None, false).probed()
    }

    fn at(root: PathBuf, above: Option<PathBuf>, spares: bool) -> Cache {
        Cache { root, above, spares, shared: Arc::default() }
    }

    fn probed(self) -> Result<Cache, CacheError> {
        let probe = self.make(&self.root, &self.root).and_then(|()| tempfile::tempfile_in(&self.root));
        match probe {
            Ok(_) => Ok(self),
            Err(source) => Err(CacheError { folder: self.root, source }),
        }
    }

    /// The cache of a book, whether it can be written to or not: what is there is read, and what can't be kept
    /// there is kept in a passing folder until the last clone is dropped. [`Cache::trouble`] tells why.
    pub fn of_book(book: &Path) -> Cache {
        let above = book.join(".bookmatch");
        let cache = Cache::at(above.join("cache"), Some(above), true);
        if let Err(trouble) = cache.clone().probed() {
            let _ = cache.shared.trouble.set(trouble);
        }
        cache
    }

    /// A cache that is removed when its last clone is dropped.
    pub fn temporary() -> Result<Cache, CacheError> {
        let made = passing_folder()?;
        let root = made.path().to_path_buf();
        let shared = Shared { _temporary: Some(made), ..Shared::default() };
        Ok(Cache { root, above: None, spares: false, shared: Arc::new(shared) })
    }

    /// Why the folder can't be written to, as far as that was met.
    pub fn trouble(&self) -> Option<&CacheError> {
        self.shared.trouble.get()
    }

    /// The folder.
    pub fn folder(&self) -> &Path {
        &self.root
    }

    /// The bytes kept under `kind` and `key`, if they are there and whole.
    ///
    /// `kind` is a word of lower-case letters, digits and hyphens; under any other nothing is kept.
    pub fn get(&self, kind: &str, key: &Digest) -> Option<Vec<u8>> {
        let name = name(kind, key)?;
        self.roots().find_map(|root| whole_entry(&root.join(&name)))
    }

    /// Keeps `bytes` under `kind` and `key`, in place of what was there.
    pub fn put(&self, kind: &str, key: &Digest, bytes: &[u8]) -> Result<(), CacheError> {
        let Some(name) = name(kind, key) else {
            let source = io::Error::new(io::ErrorKind::InvalidInput, format!("no kind `{kind}`"));
            return Err(CacheError { folder: self.root.clone(), source });
        };
        let head = format!("{HEAD} {} {:020}\n", Digest::of(bytes), bytes.len());
        self.keep(&name, &[head.as_bytes(), bytes]).map(|_| ())
    }

    /// A rendition's JPEG file, if it is there and whole. Prepare its photo again when it isn't.
    pub fn rendition(&self, rendition: &Rendition) -> Option<Vec<u8>> {
        let bytes = read_at_most(&rendition.path, rendition.bytes)?;
        let whole = bytes.len() as u64 == rendition.bytes && Digest::of(&bytes) == rendition.digest;
        whole.then_some(bytes)
    }

    /// Keeps a rendition's JPEG file under its own digest, and tells where.
    pub(super) fn put_rendition(&self, digest: &Digest, bytes: &[u8]) -> Result<PathBuf, CacheError> {
        self.keep(&rendition_name(digest), &[bytes])
    }

    /// Where a rendition's JPEG file is kept.
    pub(super) fn rendition_path(&self, digest: &Digest) -> PathBuf {
        let name = rendition_name(digest);
        let kept = self.roots().map(|root| root.join(&name)).find(|path| is_own(path));
        kept.unwrap_or_else(|| self.root.join(name))
    }

    /// The folders that are ours, the outer first.
    fn ours(&self) -> impl Iterator<Item = &Path> {
        self.above.iter().map(PathBuf::as_path).chain([self.root.as_path()])
    }

    /// The folders that may hold an entry; one behind a link is somebody else's.
    fn roots(&self) -> impl Iterator<Item = &Path> {
        let own = Some(self.root.as_path()).filter(|_| !self.ours().any(Path::is_symlink));
        own.into_iter().chain(self.shared.spare.get().map(tempfile::TempDir::path))
    }

    /// Writes an entry to the folder or, where it can't be written to, to the one in its place.
    fn keep(&self, name: &Path, parts: &[&[u8]]) -> Result<PathBuf, CacheError> {
        if self.trouble().is_none() {
            match self.write_whole(&self.root, name, parts) {
                Err(trouble) if self.spares => _ = self.shared.trouble.set(trouble),
                kept => return kept,
            }
        }
        self.write_whole(self.spare()?, name, parts)
    }

    fn spare(&self) -> Result<&Path, CacheError> {
        if let Some(spare) = self.shared.spare.get() {
            return Ok(spare.path());
        }
        // When two threads make one, one of the two goes at once.
        let made = passing_folder()?;
        Ok(self.shared.spare.get_or_init(|| made).path())
    }

    /// Writes beside the place and renames into it, starting over when the cache is deleted meanwhile.
    fn write_whole(&self, root: &Path, name: &Path, parts: &[&[u8]]) -> Result<PathBuf, CacheError> {
        let place = root.join(name);
        let folder = place.parent().unwrap_or(root);
        let mut tries = 1;
        loop {
            match self.write_once(root, folder, &place, parts) {
                Ok(()) => return Ok(place),
                Err(fault) if was_deleted(&fault) && tries < TRIES => tries += 1,
                Err(source) => return Err(CacheError { folder: folder.to_path_buf(), source }),
            }
        }
    }

    fn write_once(&self, root: &Path, folder: &Path, place: &Path, parts: &[&[u8]]) -> io::Result<()> {
        self.make(root, folder)?;
        let mut beside = readable_by_all().tempfile_in(folder)?;
        for part in parts {
            beside.write_all(part)?;
        }
        beside.persist(place)?;
        Ok(())
    }

    /// Makes the cache and `folder` within it, and the file that hides it from version control.
    #[expect(clippy::disallowed_methods, reason = "the cache is ours, and may be deleted at any moment")]
    fn make(&self, root: &Path, folder: &Path) -> io::Result<()> {
        // Following a link would write outside the cache.
        let ours = self.ours().filter(|_| root == self.root).chain([folder]);
        if let Some(link) = ours.into_iter().find(|folder| folder.is_symlink()) {
            return Err(io::Error::other(format!("`{}` is a link", link.display())));
        }
        fs::create_dir_all(folder)?;
        let ignore = root.join(".gitignore");
        if !ignore.exists() {
            let mut beside = readable_by_all().tempfile_in(root)?;
            beside.write_all(b"*\n")?;
            beside.persist(ignore)?;
        }
        Ok(())
    }
}

/// A folder that is removed when it is dropped.
fn passing_folder() -> Result<tempfile::TempDir, CacheError> {
    let made = tempfile::Builder::new().prefix("bookmatch-").tempdir();
    made.map_err(|source| CacheError { folder: std::env::temp_dir(), source })
}

/// Where an entry stands in a cache; nowhere under a kind that would leave it.
fn name(kind: &str, key: &Digest) -> Option<PathBuf> {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    let good = !kind.is_empty() && kind.chars().all(plain) && kind != "renditions";
    good.then(|| Path::new(kind).join(key.to_string()))
}

fn rendition_name(digest: &Digest) -> PathBuf {
    Path::new("renditions").join(format!("{digest}.jpg"))
}

/// The bytes of an entry, if it is there and whole.
fn whole_entry(path: &Path) -> Option<Vec<u8>> {
    let mut bytes = read_at_most(path, MOST_BYTES)?;
    let (head, body) = bytes.split_at_checked(HEAD_BYTES)?;
    let head = std::str::from_utf8(head).ok()?;
    let mut words = head.strip_prefix(HEAD)?.split_whitespace();
    let digest: Digest = words.next()?.parse().ok()?;
    let length: usize = words.next()?.parse().ok()?;
    if body.len() != length || Digest::of(body) != digest {
        return None;
    }
    bytes.drain(..HEAD_BYTES);
    Some(bytes)
}

/// Whether a write failed because the folder vanished under it: making a folder that is deleted just
/// then may also be told as one that is there already.
fn was_deleted(fault: &io::Error) -> bool {
    matches!(fault.kind(), io::ErrorKind::NotFound | io::ErrorKind::AlreadyExists)
}

/// Temporary files that keep the usual rights once renamed, so that a copy on a server can be read.
fn readable_by_all() -> tempfile::Builder<'static, 'static> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(".unfinished-");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    builder
}

/// Whether a file stands there itself, and not behind a link: what is behind one is somebody else's.
fn is_own(path: &Path) -> bool {
    let is_file = fs::symlink_metadata(path).is_ok_and(|found| found.is_file());
    is_file && !path.parent().is_some_and(Path::is_symlink)
}

/// The whole file, unless it is missing, unreadable, not a file of our own, or larger than `most`.
fn read_at_most(path: &Path, most: u64) -> Option<Vec<u8>> {
    if !is_own(path) {
        return None;
    }
    let mut bytes = Vec::new();
    File::open(path).ok()?.take(most + 1).read_to_end(&mut bytes).ok()?;
    (bytes.len() as u64 <= most).then_some(bytes)
}

#[cfg(test)]
mod tests;
