//! The book's folder: the only door to its files, so that nothing outside it is ever read.

mod record;

use std::collections::{BTreeMap, HashSet};
use std::io::Read;
use std::path::{Path, PathBuf};

use walkdir::WalkDir;

use super::aside::{is_aside, is_aside_on_disk, is_hidden, is_site};
use super::regular::open_regular;
use crate::units::{Fault, Phrase, Wrote, phrase};

pub use record::{Recorded, STATED, StatedIn};

/// Where bookmatch keeps what it can make again.
const CACHE: &str = ".bookmatch";
/// Folders deeper than this are not walked.
const MAX_DEPTH: usize = 16;

/// One file of the book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Path inside the book, with `/` between its parts.
    pub path: String,
    /// Size in bytes.
    pub bytes: u64,
    /// Where it ends, where it is a link to a file of the book: that may lie where nobody looks.
    pub linked: Option<String>,
}

/// The texts of a book as they were when it was listed, by path, size and time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FolderState(Vec<(String, u64, Option<std::time::SystemTime>)>);

/// Something in the folder that can't be part of a book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stray {
    /// Path inside the book.
    pub path: String,
    /// What is wrong with it.
    pub kind: StrayKind,
}

/// What is wrong with a thing in the folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StrayKind {
    /// A link to something outside the book.
    LeadsOutside,
    /// A link to what is in the folder and no part of a book: where it ends, inside the folder.
    LeadsAside(String),
    /// A link to a folder (which could run in a circle), or to nothing.
    LinkNotFollowed,
    /// A pipe, a device or a socket: reading it might never end.
    NoFile,
    /// A link in the cache, which is written to.
    LinkInCache,
    /// Its name is not text.
    BadName,
    /// The system will not let it be read: its own words.
    Unreadable(String),
}

/// Why a folder can't be read at all.
#[derive(Debug)]
pub enum FolderError {
    /// There is no such folder, or it is a file.
    NotAFolder(PathBuf),
    /// The system refuses: its own words.
    Unreadable(PathBuf, std::io::Error),
    /// A path that is not part of the book.
    NotInBook(String),
    /// A file larger than the caller allows: bytes allowed.
    TooLarge(String, u64),
}

impl Fault for FolderError {
    fn message(&self) -> Phrase {
        match self {
            Self::NotAFolder(path) => phrase!("`{}` is not a folder", path.display().to_string()),
            Self::Unreadable(path, error) => {
                phrase!("`{}` can't be read: {error}", path.display().to_string(), Wrote(&error.to_string()))
            }
            Self::NotInBook(path) => phrase!("`{path}` is not a file of this book", path),
            Self::TooLarge(path, limit) => phrase!("`{path}` is larger than {limit} bytes", path, limit),
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            Self::NotAFolder(_) => phrase!("name the folder that holds `book.yaml`"),
            Self::Unreadable(..) => phrase!("give yourself the right to read it"),
            Self::NotInBook(_) => phrase!("name a file of the book"),
            Self::TooLarge(..) => phrase!("split it: one selection a file is the usual way"),
        }
    }
}

/// As a command says it, which has no other place for the remedy.
impl std::fmt::Display for FolderError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NotAFolder(_) => write!(f, "{}; {}", self.message(), self.remedy()),
            _ => write!(f, "{}", self.message()),
        }
    }
}

impl std::error::Error for FolderError {}

/// A file of the record that may be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RecordFile<'a> {
    /// The ledger.
    Ledger,
    /// The head that was kept after its last line.
    Head,
    /// An issue, by its number.
    Issue(u32),
    /// A response, by its digest in hex; anything else is no file of the record.
    Response(&'a str),
    /// A photograph of a delivery, by the digest of its bytes in hex.
    Photograph(&'a str),
    /// A scan, by the name that its response gives it: its digest in hex, and an ending.
    Scan(&'a str),
}

impl RecordFile<'_> {
    /// Its path inside the book.
    pub fn path(self) -> String {
        match self {
            Self::Ledger => "record/ledger.jsonl".into(),
            Self::Head => "record/head.json".into(),
            Self::Issue(number) => format!("record/issues/{number:04}.json"),
            Self::Response(digest) => {
                let name: String = digest.chars().filter(char::is_ascii_hexdigit).collect();
                format!("record/responses/{name}.json")
            }
            Self::Photograph(digest) => {
                let name: String = digest.chars().filter(char::is_ascii_hexdigit).collect();
                format!("record/photographs/{name}.jpg")
            }
            Self::Scan(name) => {
                let (digest, ending) = name.split_once('.').unwrap_or((name, ""));
                let digest: String = digest.chars().filter(char::is_ascii_hexdigit).collect();
                let ending: String = ending.chars().filter(char::is_ascii_lowercase).collect();
                format!("record/scans/{digest}.{ending}")
            }
        }
    }
}

enum Store {
    Disk(PathBuf),
    Memory(BTreeMap<String, Vec<u8>>),
}

/// A book's folder, on disk or, for tests, in memory.
pub struct Folder {
    store: Store,
    entries: Vec<Entry>,
    paths: HashSet<String>,
    strays: Vec<Stray>,
}

impl Folder {
    /// Lists the folder at `root`. Hidden files, `record/` and published sites are left out.
    ///
    /// # Errors
    /// When there is no such folder, or it can't be read.
    pub fn open(root: &Path) -> Result<Self, FolderError> {
        if !root.is_dir() {
            return Err(FolderError::NotAFolder(root.to_path_buf()));
        }
        let unreadable = |error| FolderError::Unreadable(root.to_path_buf(), error);
        std::fs::read_dir(root).map_err(unreadable)?;
        let root = root.canonicalize().map_err(unreadable)?;
        let mut folder =
            Self { store: Store::Memory(BTreeMap::new()), entries: vec![], paths: HashSet::new(), strays: vec![] };
        folder.walk(&root);
        folder.paths = folder.entries.iter().map(|entry| entry.path.clone()).collect();
        folder.look_at_cache(&root);
        folder.store = Store::Disk(root);
        Ok(folder)
    }

    /// A folder of the given files, for tests and previews.
    pub fn in_memory<P: Into<String>, B: Into<Vec<u8>>>(files: impl IntoIterator<Item = (P, B)>) -> Self {
        let files: BTreeMap<String, Vec<u8>> =
            files.into_iter().map(|(path, bytes)| (path.into(), bytes.into())).collect();
        let of_the_book = files.iter().filter(|(path, _)| !is_aside(path));
        let entries =
            of_the_book.map(|(path, bytes)| Entry { path: path.clone(), bytes: bytes.len() as u64, linked: None });
        let entries: Vec<Entry> = entries.collect();
        let paths = entries.iter().map(|entry| entry.path.clone()).collect();
        Self { store: Store::Memory(files), entries, paths, strays: vec![] }
    }

    fn walk(&mut self, root: &Path) {
        let walk = WalkDir::new(root).max_depth(MAX_DEPTH).sort_by_file_name().into_iter();
        for item in walk.filter_entry(|item| item.depth() == 0 || belongs(item)) {
            match item {
                Ok(item) if item.depth() == 0 || item.file_type().is_dir() => {}
                Ok(item) => self.take(root, item.path()),
                Err(error) => {
                    let path = error.path().unwrap_or(root).strip_prefix(root).unwrap_or(root);
                    self.stray(path.to_string_lossy().into_owned(), StrayKind::Unreadable(error.to_string()));
                }
            }
        }
    }

    /// Takes one file or link into the list, or among the strays.
    fn take(&mut self, root: &Path, path: &Path) {
        let inside = path.strip_prefix(root).unwrap_or(path);
        let Some(name) = inside.to_str().map(|name| name.replace('\\', "/")) else {
            return self.stray(inside.to_string_lossy().into_owned(), StrayKind::BadName);
        };
        // A link is judged by where it ends, after every other link on the way.
        match path.canonicalize().and_then(|end| Ok((std::fs::metadata(&end)?, end))) {
            Ok((_, end)) if !end.starts_with(root) => self.stray(name, StrayKind::LeadsOutside),
            Ok((facts, end)) if facts.is_file() && end != path && is_aside_on_disk(root, &end) => {
                let end = end.strip_prefix(root).unwrap_or(&end).to_string_lossy().replace('\\', "/");
                self.stray(name, StrayKind::LeadsAside(end));
            }
            Ok((facts, end)) if facts.is_file() => {
                let inside = || end.strip_prefix(root).unwrap_or(&end).to_string_lossy().replace('\\', "/");
                self.entries.push(Entry { path: name, bytes: facts.len(), linked: (end != path).then(inside) });
            }
            Ok((facts, _)) if !facts.is_dir() => self.stray(name, StrayKind::NoFile),
            Ok(_) => self.stray(name, StrayKind::LinkNotFollowed),
            Err(_) if path.is_symlink() => self.stray(name, StrayKind::LinkNotFollowed),
            Err(error) => self.stray(name, StrayKind::Unreadable(error.to_string())),
        }
    }

    /// Notes links in the cache: what is written through them would be written elsewhere.
    fn look_at_cache(&mut self, root: &Path) {
        let cache = root.join(CACHE);
        if cache.is_symlink() {
            return self.stray(CACHE.into(), StrayKind::LinkInCache);
        }
        // Below these folders there are files alone, and they are replaced, not written through.
        for item in WalkDir::new(&cache).max_depth(2).sort_by_file_name().into_iter().filter_map(Result::ok) {
            if item.path_is_symlink() {
                let path = item.path().strip_prefix(root).unwrap_or(item.path());
                self.stray(path.to_string_lossy().replace('\\', "/"), StrayKind::LinkInCache);
            }
        }
    }

    fn stray(&mut self, path: String, kind: StrayKind) {
        self.strays.push(Stray { path, kind });
    }

    /// The files, ordered by path.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// What is in the folder and can't be part of the book.
    pub fn strays(&self) -> &[Stray] {
        &self.strays
    }

    /// Where the folder is on disk; none for one in memory.
    pub fn root(&self) -> Option<&Path> {
        match &self.store {
            Store::Disk(root) => Some(root),
            Store::Memory(_) => None,
        }
    }

    /// Whether the book has this file.
    pub fn contains(&self, path: &str) -> bool {
        self.paths.contains(path)
    }

    /// What changes whenever a text of the book does: its files that are YAML, with size and time.
    pub fn stamp(&self) -> FolderState {
        let is_yaml = |entry: &&Entry| entry.path.ends_with(".yaml") || entry.path.ends_with(".yml");
        let time = |path: &str| std::fs::metadata(self.root()?.join(path)).ok()?.modified().ok();
        let texts = self.entries.iter().filter(is_yaml);
        FolderState(texts.map(|entry| (entry.path.clone(), entry.bytes, time(&entry.path))).collect())
    }

    /// The bytes of a file of the record, at most `limit` of them; none when there is no such file. No
    /// other file of the record can be read here: keys least of all.
    ///
    /// # Errors
    /// When it is larger than `limit`, leads out of the record, or can't be read.
    pub fn record(&self, file: RecordFile<'_>, limit: u64) -> Result<Option<Vec<u8>>, FolderError> {
        let path = file.path();
        let first = self.recorded_at(&path, limit)?;
        let is_named = matches!(file, RecordFile::Issue(_) | RecordFile::Response(_) | RecordFile::Photograph(_));
        if first.is_some() || !is_named {
            return Ok(first);
        }
        // Whoever records may not have moved it to its place yet, or may just have done so.
        match self.recorded_at(&in_the_making(&path), limit)? {
            None => self.recorded_at(&path, limit),
            found => Ok(found),
        }
    }

    fn recorded_at(&self, path: &str, limit: u64) -> Result<Option<Vec<u8>>, FolderError> {
        let bytes = match &self.store {
            Store::Memory(files) => files.get(path).cloned(),
            Store::Disk(root) => without_links(root, path, limit + 1)?,
        };
        match bytes {
            Some(bytes) if bytes.len() as u64 > limit => Err(FolderError::TooLarge(path.to_owned(), limit)),
            bytes => Ok(bytes),
        }
    }

    /// The bytes of a file of the book, at most `limit` of them.
    ///
    /// # Errors
    /// When the path leads by now to anything but a file of the book, is larger than `limit`, or can't be read.
    pub fn read(&self, path: &str, limit: u64) -> Result<Vec<u8>, FolderError> {
        let bytes = self.start(path, limit + 1)?;
        if bytes.len() as u64 > limit {
            return Err(FolderError::TooLarge(path.to_string(), limit));
        }
        Ok(bytes)
    }

    /// The first bytes of a file of the book, at most `count`.
    ///
    /// # Errors
    /// As [`Folder::read`], but never for size.
    pub fn start(&self, path: &str, count: u64) -> Result<Vec<u8>, FolderError> {
        let root = match &self.store {
            Store::Memory(files) => {
                let bytes = files.get(path).ok_or_else(|| FolderError::NotInBook(path.to_string()))?;
                return Ok(bytes.iter().take(usize::try_from(count).unwrap_or(usize::MAX)).copied().collect());
            }
            Store::Disk(root) => root,
        };
        let whole = root.join(path);
        let unreadable = |error| FolderError::Unreadable(PathBuf::from(path), error);
        let end = whole.canonicalize().map_err(unreadable)?;
        // The root is real: what ends elsewhere than it says came through a link or a step back.
        let aside = is_aside(path) || end != whole && is_aside_on_disk(root, &end);
        if aside || !end.starts_with(root) || !end.is_file() {
            return Err(FolderError::NotInBook(path.to_string()));
        }
        let mut bytes = Vec::new();
        open_regular(&end).and_then(|file| file.take(count).read_to_end(&mut bytes)).map_err(unreadable)?;
        Ok(bytes)
    }
}

/// Where a file of the record lies until the line that names it is recorded.
fn in_the_making(path: &str) -> String {
    path.rsplit_once('/').map_or_else(|| format!(".{path}.part"), |(folder, name)| format!("{folder}/.{name}.part"))
}

/// The first bytes of a file on the way to which there is no link; none when it is not there.
fn without_links(root: &Path, path: &str, count: u64) -> Result<Option<Vec<u8>>, FolderError> {
    let unreadable = |error| FolderError::Unreadable(PathBuf::from(path), error);
    let ends = path.match_indices('/').map(|(at, _)| at).chain([path.len()]);
    let mut is_file = false;
    for step in ends.filter_map(|end| path.get(..end)) {
        match std::fs::symlink_metadata(root.join(step)) {
            Ok(facts) if facts.is_symlink() => return Err(FolderError::NotInBook(path.to_string())),
            Ok(facts) => is_file = facts.is_file(),
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(None),
            Err(error) => return Err(unreadable(error)),
        }
    }
    // Whatever else stands there, such as a pipe, might never end.
    if !is_file {
        return Err(FolderError::NotInBook(path.to_string()));
    }
    let mut bytes = Vec::new();
    open_regular(&root.join(path)).and_then(|file| file.take(count).read_to_end(&mut bytes)).map_err(unreadable)?;
    Ok(Some(bytes))
}

fn belongs(item: &walkdir::DirEntry) -> bool {
    let name = item.file_name().to_string_lossy();
    let ours = item.depth() == 1 && is_aside(&name);
    let site = item.file_type().is_dir() && is_site(item.path());
    !ours && !is_hidden(&name) && !site
}

#[cfg(test)]
mod tests;
