//! A folder of derived files, each known by a digest and checked whenever it is read.
//!
//! It may be deleted at any moment, even half-way, and two programs may use it at once: a file is
//! written beside its place and then renamed into it, and an entry that is cut short, altered or
//! foreign counts as absent.

use std::fmt;
use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use super::entry::Rendition;
use crate::digest::Digest;

/// First words of an entry; the number changes with its form.
const HEAD: &str = "bookmatch 1";
/// `HEAD`, a digest, and the length in 20 digits, with a space between and a line end.
const HEAD_BYTES: usize = HEAD.len() + 1 + 64 + 1 + 20 + 1;
/// No entry is larger: nothing that we keep comes near.
const MOST_BYTES: u64 = 256 * 1024 * 1024;
/// How often a write starts over when the folder vanishes under it.
const TRIES: usize = 200;

/// A folder of derived files.
#[derive(Debug)]
pub struct Cache {
    root: PathBuf,
    /// The folder above it that is ours too.
    above: Option<PathBuf>,
    /// Removes a temporary folder at the end.
    _temporary: Option<tempfile::TempDir>,
}

/// The cache's folder can't be made or written.
#[derive(Debug)]
pub struct CacheError {
    /// The folder.
    pub folder: PathBuf,
    /// What the system said.
    pub source: io::Error,
}

impl CacheError {
    /// What the designer can do about it.
    pub fn remedy(&self) -> String {
        "make the folder writable, free some space, or delete it: it is made anew".into()
    }
}

impl fmt::Display for CacheError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let folder = self.folder.display();
        write!(f, "the cache folder `{folder}` can't be written ({})", self.source)
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
        Cache { root: folder.to_path_buf(), above: None, _temporary: None }.probed()
    }

    /// Opens the cache of a book, as [`Cache::open`] does.
    pub fn of_book(book: &Path) -> Result<Cache, CacheError> {
        let above = book.join(".bookmatch");
        Cache { root: above.join("cache"), above: Some(above), _temporary: None }.probed()
    }

    fn probed(self) -> Result<Cache, CacheError> {
        let probe = self.make(&self.root).and_then(|()| tempfile::tempfile_in(&self.root));
        match probe {
            Ok(_) => Ok(self),
            Err(source) => Err(CacheError { folder: self.root, source }),
        }
    }

    /// A cache that is removed when it is dropped.
    pub fn temporary() -> Result<Cache, CacheError> {
        let made = tempfile::Builder::new().prefix("bookmatch-").tempdir();
        let made = made.map_err(|source| CacheError { folder: std::env::temp_dir(), source })?;
        Ok(Cache { root: made.path().to_path_buf(), above: None, _temporary: Some(made) })
    }

    /// The folder.
    pub fn folder(&self) -> &Path {
        &self.root
    }

    /// The bytes kept under `kind` and `key`, if they are there and whole.
    ///
    /// `kind` is a word of lower-case letters, digits and hyphens; under any other nothing is kept.
    pub fn get(&self, kind: &str, key: &Digest) -> Option<Vec<u8>> {
        let mut bytes = read_at_most(&self.place(kind, key)?, MOST_BYTES)?;
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

    /// Keeps `bytes` under `kind` and `key`, in place of what was there.
    pub fn put(&self, kind: &str, key: &Digest, bytes: &[u8]) -> Result<(), CacheError> {
        let Some(place) = self.place(kind, key) else {
            let source = io::Error::new(io::ErrorKind::InvalidInput, format!("no kind `{kind}`"));
            return Err(CacheError { folder: self.root.clone(), source });
        };
        let head = format!("{HEAD} {} {:020}\n", Digest::of(bytes), bytes.len());
        self.write_whole(&place, &[head.as_bytes(), bytes])
    }

    /// A rendition's JPEG file, if it is there and whole. Prepare its photo again when it isn't.
    pub fn rendition(&self, rendition: &Rendition) -> Option<Vec<u8>> {
        let bytes = read_at_most(&rendition.path, rendition.bytes)?;
        let whole = bytes.len() as u64 == rendition.bytes && Digest::of(&bytes) == rendition.digest;
        whole.then_some(bytes)
    }

    /// Keeps a rendition's JPEG file under its own digest.
    pub(super) fn put_rendition(&self, digest: &Digest, bytes: &[u8]) -> Result<(), CacheError> {
        self.write_whole(&self.rendition_path(digest), &[bytes])
    }

    /// Where a rendition's JPEG file is kept.
    pub(super) fn rendition_path(&self, digest: &Digest) -> PathBuf {
        self.root.join("renditions").join(format!("{digest}.jpg"))
    }

    fn place(&self, kind: &str, key: &Digest) -> Option<PathBuf> {
        let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        let good = !kind.is_empty() && kind.chars().all(plain) && kind != "renditions";
        good.then(|| self.root.join(kind).join(key.to_string()))
    }

    /// Writes beside `place` and renames into it, starting over when the cache is deleted meanwhile.
    fn write_whole(&self, place: &Path, parts: &[&[u8]]) -> Result<(), CacheError> {
        let mut tries = 1;
        loop {
            match self.write_once(place, parts) {
                Ok(()) => return Ok(()),
                Err(fault) if was_deleted(&fault) && tries < TRIES => tries += 1,
                Err(source) => {
                    return Err(CacheError { folder: self.root.clone(), source });
                }
            }
        }
    }

    fn write_once(&self, place: &Path, parts: &[&[u8]]) -> io::Result<()> {
        let folder = place.parent().unwrap_or(&self.root);
        self.make(folder)?;
        let mut beside = readable_by_all().tempfile_in(folder)?;
        for part in parts {
            beside.write_all(part)?;
        }
        beside.persist(place)?;
        Ok(())
    }

    /// Makes the cache and `folder` within it, and the file that hides it from version control.
    #[expect(clippy::disallowed_methods, reason = "the cache is ours, and may be deleted at any moment")]
    fn make(&self, folder: &Path) -> io::Result<()> {
        // Following a link would write outside the cache.
        let ours = self.above.iter().map(PathBuf::as_path).chain([self.root.as_path(), folder]);
        if let Some(link) = ours.into_iter().find(|folder| folder.is_symlink()) {
            return Err(io::Error::other(format!("`{}` is a link", link.display())));
        }
        fs::create_dir_all(folder)?;
        let ignore = self.root.join(".gitignore");
        if !ignore.exists() {
            let mut beside = readable_by_all().tempfile_in(&self.root)?;
            beside.write_all(b"*\n")?;
            beside.persist(ignore)?;
        }
        Ok(())
    }
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

/// The whole file, unless it is missing, unreadable, not a file, or larger than `most`.
fn read_at_most(path: &Path, most: u64) -> Option<Vec<u8>> {
    if !fs::symlink_metadata(path).ok()?.is_file() {
        return None;
    }
    let mut bytes = Vec::new();
    File::open(path).ok()?.take(most + 1).read_to_end(&mut bytes).ok()?;
    (bytes.len() as u64 <= most).then_some(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cache() -> Cache {
        Cache::temporary().unwrap()
    }

    #[test]
    fn what_is_put_comes_back_and_may_be_replaced() {
        let (cache, key) = (cache(), Digest::of(b"key"));
        assert_eq!(cache.get("sheets", &key), None);
        for bytes in [&b"first"[..], b"", b"third, longer"] {
            cache.put("sheets", &key, bytes).unwrap();
            assert_eq!(cache.get("sheets", &key).as_deref(), Some(bytes));
        }
        assert_eq!(cache.get("other", &key), None);
    }

    #[test]
    fn an_entry_altered_anywhere_or_cut_anywhere_counts_as_absent() {
        let (cache, key) = (cache(), Digest::of(b"key"));
        cache.put("sheets", &key, b"body").unwrap();
        let place = cache.place("sheets", &key).unwrap();
        let whole = fs::read(&place).unwrap();
        for at in 0..whole.len() {
            fs::write(&place, &whole[..at]).unwrap();
            assert_eq!(cache.get("sheets", &key), None, "cut at {at}");
            let mut altered = whole.clone();
            altered[at] ^= 1;
            fs::write(&place, &altered).unwrap();
            assert_ne!(cache.get("sheets", &key).as_deref(), Some(&b"Body"[..]));
            if let Some(read) = cache.get("sheets", &key) {
                assert_eq!(read, b"body", "altered at {at}: only a blank may change");
            }
        }
        fs::write(&place, [&whole[..], b"more"].concat()).unwrap();
        assert_eq!(cache.get("sheets", &key), None);
    }

    #[test]
    fn a_kind_that_would_leave_the_folder_keeps_nothing() {
        let (cache, key) = (cache(), Digest::of(b"key"));
        for kind in ["..", "a/b", "", "A", "renditions", "/tmp"] {
            assert!(cache.put(kind, &key, b"x").is_err(), "{kind}");
            assert_eq!(cache.get(kind, &key), None, "{kind}");
        }
    }

    #[test]
    fn the_folder_is_hidden_from_version_control_and_comes_back_when_deleted() {
        let outer = tempfile::tempdir().unwrap();
        let folder = outer.path().join("book/.cache");
        let cache = Cache::open(&folder).unwrap();
        fs::remove_dir_all(&folder).unwrap();
        cache.put("sheets", &Digest::of(b"key"), b"body").unwrap();
        assert_eq!(fs::read_to_string(folder.join(".gitignore")).unwrap(), "*\n");
        assert!(cache.get("sheets", &Digest::of(b"key")).is_some());
    }

    #[test]
    fn a_folder_that_cannot_be_made_is_named() {
        let outer = tempfile::tempdir().unwrap();
        let file = outer.path().join("taken");
        fs::write(&file, "a file").unwrap();
        let fault = Cache::open(&file.join("cache")).unwrap_err();
        assert!(fault.to_string().contains("taken/cache` can't be written"), "{fault}");
    }

    #[cfg(unix)]
    #[test]
    fn a_link_within_the_cache_or_on_the_way_to_it_is_not_followed() {
        for link in [".bookmatch", ".bookmatch/cache", ".bookmatch/cache/sheets"] {
            let (book, elsewhere) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
            let link = book.path().join(link);
            fs::create_dir_all(link.parent().unwrap()).unwrap();
            std::os::unix::fs::symlink(elsewhere.path(), &link).unwrap();
            let put = Cache::of_book(book.path()).and_then(|cache| cache.put("sheets", &Digest::of(b"key"), b"body"));
            assert!(put.unwrap_err().to_string().contains("is a link"), "{link:?}");
            assert_eq!(fs::read_dir(elsewhere.path()).unwrap().count(), 0, "{link:?}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_link_that_is_laid_after_the_cache_was_opened_is_not_followed() {
        let (book, elsewhere) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let cache = Cache::of_book(book.path()).unwrap();
        fs::remove_dir_all(book.path().join(".bookmatch")).unwrap();
        std::os::unix::fs::symlink(elsewhere.path(), book.path().join(".bookmatch")).unwrap();
        assert!(cache.put("sheets", &Digest::of(b"key"), b"body").is_err());
        assert_eq!(fs::read_dir(elsewhere.path()).unwrap().count(), 0);
    }
}
