//! The books that `host` serves: where each is, what of it may be served, and how its responses are taken in.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError, RwLock};

use crate::host::{Answer, HostError, HostedBook, ReadSite, ServedSite, TakeIn, TakenIn};
use crate::publish::output::MANIFEST;
use crate::read::read;
use crate::record::{Outcome, Receiver, Refusal, Store, said};
use crate::source::{Folder, FolderState};
use crate::units::Fault;

use super::invite::tell_open_keys;
use super::receive::receiver_of;
use super::report::say;
use super::stated::published_over_another;
use super::{Failure, clock};

/// Where pages of a book are when nobody says where.
const SITE: &str = "site";

/// A book and where it is served.
#[derive(Debug, PartialEq, Eq)]
pub struct Served {
    /// The path; empty where one book alone is served, and was given no name.
    pub path: String,
    /// The book's folder.
    book: PathBuf,
    /// The folder that it was published to.
    site: PathBuf,
}

impl Served {
    /// The books that were named, each `FOLDER` or `NAME=FOLDER`, with the folders that they were published to, in
    /// the same order; `site` in each book's folder where none are named.
    pub fn all(named: &[PathBuf], sites: &[PathBuf]) -> Result<Vec<Served>, Failure> {
        if !sites.is_empty() && sites.len() != named.len() {
            return Err(format!(
                "{} are named, and {}; give `--site` once for each, in the order of the books",
                counted(named.len(), "book"),
                counted(sites.len(), "published folder")
            )
            .into());
        }
        let mut all = Vec::new();
        for (at, named_book) in named.iter().enumerate() {
            let (name, book) = split(named_book);
            let alone = named.len() == 1;
            let path = match name {
                None if alone => String::new(),
                name => plain(name.map_or_else(|| folder_name(&book), Ok)?, &book)?,
            };
            let usual = if alone { PathBuf::from(SITE) } else { book.join(SITE) };
            all.push(Served { path, site: sites.get(at).cloned().unwrap_or(usual), book });
        }
        collide(&all)?;
        Ok(all)
    }

    /// The book as it is served. One that may not be served yet has no pages; it is told why.
    pub fn hosted(&self) -> (HostedBook, Result<(), HostError>) {
        let folder = Folder::open(&self.book);
        let post = folder.as_ref().ok().and_then(|folder| read(folder).ok());
        let post = post.and_then(|reading| reading.book.project.responses.post.get().cloned());
        if let Ok(folder) = &folder {
            tell_open_keys(folder);
        }
        if let Some(post) = &post {
            self.tell_elsewhere(post);
        }
        let read = self.read();
        let (site, told) = match read() {
            Ok(site) => (site, Ok(())),
            Err(error) => (ServedSite::default(), Err(error)),
        };
        let hosted = HostedBook {
            path: self.path.clone(),
            site: RwLock::new(Arc::new(site)),
            read: Some(read),
            watched: [self.site.join(MANIFEST), self.book.join("record/ledger.jsonl")],
            take_in: take_in(Following { book: self.book.clone(), known: Mutex::default() }),
            post,
        };
        (hosted, told)
    }

    /// Reads what may be served: pages of the book as it was issued, published from this ledger and no other.
    fn read(&self) -> ReadSite {
        let (book, site) = (self.book.clone(), self.site.clone());
        Arc::new(move || {
            let record = |why: String, remedy: String| HostError::Record(why, remedy);
            {
                let store = Store::of_book(&book);
                let open = store.open().map_err(|error| record(error.to_string(), error.remedy()))?;
                if open.chain().opening().is_none() {
                    return Err(record("nothing of this book was issued".into(), "issue it first".into()));
                }
                if let Some(fault) = published_over_another(&site, &open.chain().lines) {
                    return Err(record(fault.to_string(), fault.remedy().to_string()));
                }
            }
            ServedSite::read(&site)
        })
    }

    /// Tells where pages send their responses to another path than this book's own.
    fn tell_elsewhere(&self, post: &str) {
        let own = if self.path.is_empty() { "/responses".into() } else { format!("/{}/responses", self.path) };
        if post.ends_with("/responses") && !post.ends_with(&own) {
            say(&format!(
                "the pages of `{}` send responses to `{post}`, and they are taken in at `…{own}`",
                self.book.display()
            ));
        }
    }
}

fn counted(count: usize, what: &str) -> String {
    if count == 1 { format!("1 {what}") } else { format!("{count} {what}s") }
}

/// The name before `=`, if there is one; a folder of the whole name counts first.
fn split(named: &Path) -> (Option<String>, PathBuf) {
    let parts = named.to_str().filter(|_| !named.exists()).and_then(|text| text.split_once('='));
    match parts {
        Some((name, folder)) => (Some(name.into()), folder.into()),
        None => (None, named.into()),
    }
}

/// The name of a folder as it was given, and of the one that `.` or `..` is.
fn folder_name(book: &Path) -> Result<String, Failure> {
    let whole = match book.file_name() {
        Some(_) => book.to_path_buf(),
        None => std::fs::canonicalize(book)?,
    };
    let name = whole.file_name().and_then(|name| name.to_str());
    name.map(str::to_owned)
        .ok_or_else(|| format!("`{}` has no name of its own; name it `NAME=FOLDER`", book.display()).into())
}

/// A name that can be a path: it needs no escape in an address, and is no step upwards.
fn plain(name: String, book: &Path) -> Result<String, Failure> {
    let plain = |letter: char| letter.is_ascii_alphanumeric() || "-_.".contains(letter);
    if !name.is_empty() && name.chars().all(plain) && !name.chars().all(|letter| letter == '.') {
        return Ok(name);
    }
    let (name, book) = (name.escape_debug(), book.display());
    Err(format!("`{name}` can't be the path of a book: letters, digits, `-`, `_` and `.` can; name it `NAME={book}`")
        .into())
}

/// Two books at one path, or one folder twice.
fn collide(all: &[Served]) -> Result<(), Failure> {
    let mut paths: BTreeMap<String, &Served> = BTreeMap::new();
    let mut folders: BTreeMap<PathBuf, &Served> = BTreeMap::new();
    for one in all {
        // Addresses that differ in the case of letters alone are typed wrongly.
        if let Some(other) = paths.insert(one.path.to_lowercase(), one) {
            return Err(format!(
                "`{}` and `{}` would both be served at `/{}/`; give one another name: `NAME=FOLDER`",
                other.book.display(),
                one.book.display(),
                one.path
            )
            .into());
        }
        for folder in [&one.book, &one.site] {
            let whole = std::fs::canonicalize(folder).unwrap_or_else(|_| folder.clone());
            if folders.insert(whole, one).is_some() {
                return Err(format!("`{}` is named twice", folder.display()).into());
            }
        }
    }
    Ok(())
}

/// Who may decide, and what may be measured, as the book says it now: whoever was named after the server
/// was started may answer too.
struct Following {
    book: PathBuf,
    known: Mutex<Option<(FolderState, Arc<Receiver>)>>,
}

impl Following {
    /// What takes a response in. A book that can't be read just now is taken as it was last; none where it never
    /// could.
    fn receiver(&self) -> Option<Arc<Receiver>> {
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        if let Ok(folder) = Folder::open(&self.book) {
            let stamp = folder.stamp();
            if known.as_ref().is_none_or(|(seen, _)| *seen != stamp) {
                let receiver = receiver_of(&folder).map(Arc::new);
                let receiver = receiver.or_else(|| known.as_ref().map(|(_, last)| Arc::clone(last)));
                *known = receiver.map(|receiver| (stamp, receiver));
            }
        }
        known.as_ref().map(|(_, receiver)| Arc::clone(receiver))
    }
}

/// Takes responses in as `receive` does; strangers hear less than the log does, and the log nothing that they wrote.
fn take_in(following: Following) -> TakeIn {
    // Read once before anybody asks.
    following.receiver();
    Arc::new(move |bytes| {
        let failed = |why: &str| TakenIn { answer: Answer::Failed, why: Some(why.into()) };
        let Ok(now) = clock::now() else { return failed("the clock can't be read") };
        let Some(receiver) = following.receiver() else { return failed("the book can't be read") };
        let refusal = match receiver.take_in(bytes, now) {
            Ok(outcome) => return taken(&outcome, &receiver),
            Err(refusal) => refusal,
        };
        let why = Some(refusal.for_a_log());
        let answer = match refusal {
            // It names this book and one of its issues, both of which stand on the pages: no stranger learns more.
            Refusal::NothingHolds(_) => Answer::Outdated { newest: receiver.newest_issue() },
            // Told once all else was in order: whoever is told has what is on the pages.
            Refusal::Full(_) => Answer::Full,
            refusal if refusal.may_be_repeated() => Answer::Failed,
            _ => Answer::Refused,
        };
        TakenIn { answer, why }
    })
}

fn taken(outcome: &Outcome, receiver: &Receiver) -> TakenIn {
    let refused = outcome.refused();
    let told: Vec<String> = refused.iter().map(said).collect();
    let not_taken = refused.iter().map(|one| format!("{}/{}", one.room, one.item)).collect();
    let newest = receiver.newest_issue();
    let answer = Answer::Recorded { outcome: outcome.words(), why: told.join("; "), not_taken, newest };
    let why =
        (!refused.is_empty()).then(|| format!("{} of its decisions are not of what is issued now", refused.len()));
    TakenIn { answer, why }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(named: &[&str], sites: &[&str]) -> Result<Vec<(String, String, String)>, String> {
        let paths = |texts: &[&str]| -> Vec<PathBuf> { texts.iter().map(PathBuf::from).collect() };
        let shown = |path: &Path| path.display().to_string();
        let served = Served::all(&paths(named), &paths(sites)).map_err(|error| error.to_string())?;
        Ok(served.into_iter().map(|one| (one.path, shown(&one.book), shown(&one.site))).collect())
    }

    fn own(path: &str, book: &str, site: &str) -> (String, String, String) {
        (path.into(), book.into(), site.into())
    }

    #[test]
    fn one_book_has_no_path_and_each_of_several_that_of_its_folder_or_its_name() {
        assert_eq!(all(&["elm"], &[]).unwrap(), [own("", "elm", "site")]);
        assert_eq!(all(&["row=elm"], &["/srv/elm"]).unwrap(), [own("row", "elm", "/srv/elm")]);
        assert_eq!(
            all(&["no/elm-row", "no/x=y/alder"], &[]).unwrap_err(),
            "`no/x` can't be the path of a book: letters, digits, `-`, `_` and `.` can; name it `NAME=y/alder`"
        );
        let several = all(&["no/elm-row", "court=no/alder"], &[]).unwrap();
        assert_eq!(
            several,
            [own("elm-row", "no/elm-row", "no/elm-row/site"), own("court", "no/alder", "no/alder/site")]
        );
        let sited = all(&["no/elm-row", "court=no/alder"], &["one", "other"]).unwrap();
        assert_eq!(sited[1], own("court", "no/alder", "other"));
    }

    #[test]
    fn books_that_would_stand_in_each_others_place_are_told() {
        let told = all(&["no/elm", "gone/Elm"], &[]).unwrap_err();
        assert!(told.contains("`no/elm` and `gone/Elm` would both be served at `/Elm/`"), "{told}");
        assert!(all(&["no/elm", "court=no/elm"], &[]).unwrap_err().contains("`no/elm` is named twice"));
        assert!(all(&["no/elm", "no/alder"], &["site", "site"]).unwrap_err().contains("`site` is named twice"));
        let told = all(&["no/elm", "no/alder"], &["site"]).unwrap_err();
        assert!(told.contains("2 books are named, and 1 published folder"), "{told}");
        for odd in ["..=elm", "a b=elm", "=elm", "é=elm"] {
            assert!(all(&[odd], &[]).unwrap_err().contains("can't be the path of a book"), "{odd}");
        }
    }
}
