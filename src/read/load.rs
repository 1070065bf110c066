//! Loads the folder's texts: which files a book is made of, and their trees.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use crate::book::room_of;
use crate::finding::{Code, Finding, Phrase, Remark, phrase};
use crate::source::yaml::{self, Node, Tree, Value, YamlErrorKind};
use crate::source::{Entry, FileId, Files, Folder, FolderError, Place, Span, Spanned, StrayKind};
use crate::units::{Fault, Wrote};

use super::case;

/// Largest text file, in bytes.
pub const MAX_TEXT: u64 = 4 * 1024 * 1024;
/// Names under which the project may be written.
pub const PROJECT_FILES: [&str; 2] = ["book.yaml", "book.yml"];

/// The file of a room whose words stand on its page; no other prose does.
const NOTES: &str = "notes.md";

/// The trees of a folder's files, and what was wrong with the files.
#[derive(Default)]
pub struct Loaded {
    /// The texts.
    pub files: Files,
    /// The trees, by path; a file that could not be read has none.
    pub trees: BTreeMap<String, Node>,
    /// Markdown, by path.
    pub prose: BTreeMap<String, String>,
    /// Products, by name.
    pub products: BTreeMap<String, Node>,
    /// Rooms, by folder, with the paths of their YAML files.
    pub rooms: BTreeMap<String, Vec<String>>,
    /// Rooms of which a file could not be read.
    pub unread: BTreeSet<String>,
    /// Files of the book that could not be read, by path.
    pub unread_files: BTreeSet<String>,
    /// What is still to be said, `…`: its key, and where it stands.
    pub open: Vec<Spanned<String>>,
    /// What was wrong with files.
    pub findings: Vec<Finding>,
}

/// What part of a book a path is.
enum BookPart {
    Project,
    Product(String),
    Room(String),
    Prose,
    OtherProse,
    /// A link in the place of prose, to another file of the book: where it ends.
    LinkedProse(String),
    Stray,
    /// What would be read, were its name not written with capitals: the part of the path that has them.
    Capitals(case::Capitals),
    Other,
}

impl BookPart {
    /// Whether anything is taken from such a file.
    fn is_read(&self) -> bool {
        matches!(self, BookPart::Project | BookPart::Product(_) | BookPart::Room(_) | BookPart::Prose)
    }
}

fn part(path: &str) -> BookPart {
    let segments: Vec<&str> = path.split('/').collect();
    let stem = |name: &str| name.strip_suffix(".yaml").or_else(|| name.strip_suffix(".yml")).map(str::to_string);
    match segments.as_slice() {
        [name] if PROJECT_FILES.contains(name) => BookPart::Project,
        ["products", name] => stem(name).map_or(BookPart::Other, BookPart::Product),
        ["rooms", _, NOTES] => BookPart::Prose,
        ["rooms", _, name] if is_markdown(name) => BookPart::OtherProse,
        ["rooms", room, name] => stem(name).map_or(BookPart::Other, |_| BookPart::Room((*room).to_string())),
        [.., name] if stem(name).is_some() => BookPart::Stray,
        _ => BookPart::Other,
    }
}

/// What part an entry is. Prose is shown as it stands, so that a link to anything but such prose is none.
fn part_of(entry: &Entry) -> BookPart {
    if let Some(capitals) = case::capitals(&entry.path) {
        return BookPart::Capitals(capitals);
    }
    match (part(&entry.path), &entry.linked) {
        (BookPart::Prose, Some(end)) if !matches!(part(end), BookPart::Prose) => BookPart::LinkedProse(end.clone()),
        (part, _) => part,
    }
}

/// Whether a file is prose by its name, however that is written.
fn is_markdown(name: &str) -> bool {
    let ending = name.rsplit_once('.').map_or(String::new(), |(_, ending)| ending.to_lowercase());
    matches!(ending.as_str(), "md" | "markdown")
}

impl BookPart {
    /// Whether a file of this part can hold such a value: of any other, nothing is understood.
    fn may_be(&self, path: &str, root: &Node) -> bool {
        match root.value {
            Value::Map(_) => true,
            Value::List(_) => matches!(self, BookPart::Room(_)) && !path.ends_with("/room.yaml"),
            _ => false,
        }
    }
}

/// A tree with all that is found in it alone.
struct ReadTree {
    root: Option<Node>,
    /// As [`Tree::repeated`].
    repeated: Vec<(Spanned<String>, Span)>,
    /// Whether a file of its part can hold such a value.
    may_be: bool,
    /// What is still to be said; it is taken out of the tree.
    open: Vec<Spanned<String>>,
    /// What stands in curly quotes.
    curly: Vec<Finding>,
}

impl ReadTree {
    fn of(tree: Tree, path: &str, part: &BookPart) -> Self {
        let Tree { mut root, repeated } = tree;
        let may_be = root.as_ref().is_none_or(|root| part.may_be(path, root));
        let open = root.as_mut().map(yaml::take_open).unwrap_or_default();
        let curly = root.as_ref().map(|root| super::quotes::curly(root, &room_of(path))).unwrap_or_default();
        Self { root, repeated, may_be, open, curly }
    }
}

/// Reads and parses every text file of the book.
pub fn load(folder: &Folder) -> Loaded {
    let mut loaded = Loaded::default();
    loaded.strays(folder);
    loaded.findings.extend(super::disk_names::faults(folder));
    let read = |entry: &Entry| {
        let part = part_of(entry);
        let text = if part.is_read() { text(folder, &entry.path) } else { Ok(String::new()) };
        (!matches!(part, BookPart::Other)).then(|| (entry.path.clone(), part, text))
    };
    let texts: Vec<(String, BookPart, Result<String, Finding>)> =
        folder.entries().par_iter().filter_map(read).collect();
    let mut parsed = Vec::new();
    for (path, part, text) in texts {
        if let BookPart::Room(room) = &part {
            loaded.rooms.entry(room.clone()).or_default().push(path.clone());
        }
        match (part, text) {
            (part, _) if !part.is_read() => loaded.left_out(path, part),
            (_, Err(finding)) => loaded.lost(&path, finding),
            (BookPart::Prose, Ok(text)) => {
                loaded.prose.insert(path, text);
            }
            (part, Ok(text)) => {
                let file = loaded.files.add(path.clone(), text);
                parsed.push((path, part, file));
            }
        }
    }
    let files = &loaded.files;
    let trees: Vec<Result<ReadTree, Finding>> =
        parsed.par_iter().map(|(path, part, file)| Ok(ReadTree::of(tree(files, *file)?, path, part))).collect();
    for ((path, part, _), tree) in parsed.into_iter().zip(trees) {
        match tree {
            Ok(tree) => loaded.keep(path, part, tree),
            Err(finding) => loaded.lost(&path, finding),
        }
    }
    loaded
}

impl Loaded {
    fn keep(&mut self, path: String, part: BookPart, read: ReadTree) {
        let room = room_of(&path);
        for (key, first) in read.repeated {
            let message = phrase!("the key `{}` appears twice in the same group", key.value);
            self.findings.push(
                Remark::stop(key.span, message)
                    .remedy("keep one of the two, or rename one")
                    .also(first, "the first one, which counts")
                    .in_room(room.clone())
                    .of(Code::DUPLICATE),
            );
        }
        let Some(root) = read.root else {
            let message = phrase!("`{path}` is empty", path);
            let finding = Remark::stop(Place::Path(path.clone()), message)
                .remedy("write its record, or delete the file")
                .of(Code::SYNTAX);
            return self.lost(&path, finding);
        };
        if !read.may_be {
            self.unread_files.insert(path.clone());
        }
        self.open.extend(read.open);
        self.findings.extend(read.curly);
        match part {
            BookPart::Product(name) => {
                self.products.insert(name, root);
            }
            _ => {
                self.trees.insert(path, root);
            }
        }
    }

    /// A file of the book that says nothing now, and perhaps did before.
    fn lost(&mut self, path: &str, finding: Finding) {
        self.unread_files.insert(path.to_string());
        self.unread(path, finding);
    }

    fn unread(&mut self, path: &str, mut finding: Finding) {
        finding.room = room_of(path);
        self.unread.extend(finding.room.clone());
        self.findings.push(finding);
    }

    fn nowhere(&mut self, path: String) {
        let message = phrase!("no part of a book is read from `{path}`", path);
        self.findings.push(Remark::query(Place::Path(path.clone()), message).remedy(
            "move it to `rooms/ROOM/` or `products/`; only `book.yaml`, `rooms/ROOM/*.yaml` and `products/*.yaml` are read",
        ).in_room(room_of(&path)).of(Code::STRAY));
    }

    /// A file that nothing is taken from.
    fn left_out(&mut self, path: String, part: BookPart) {
        match part {
            BookPart::Stray => self.nowhere(path),
            BookPart::Capitals(capitals) => self.capitals(&path, &capitals),
            BookPart::OtherProse => self.not_shown(path),
            BookPart::LinkedProse(end) => self.not_prose(path, &end),
            _ => {}
        }
    }

    /// A name with capitals: told once for all that lies below it.
    fn capitals(&mut self, path: &str, capitals: &case::Capitals) {
        let (written, meant) = (&capitals.written, &capitals.meant);
        self.unread_files.insert(path.to_string());
        self.unread.extend(room_of(meant).or_else(|| room_of(&path.to_lowercase())));
        let place = Place::Path(written.clone());
        if self.findings.iter().any(|finding| finding.place == place && finding.rule == Code::STRAY) {
            return;
        }
        let message = phrase!("nothing is read from `{written}`, whose name has capitals", written);
        let remedy = phrase!("rename it to `{meant}`: some disks tell capitals apart, and others don't", meant);
        self.findings.push(Remark::stop(place, message).remedy(remedy).in_room(room_of(written)).of(Code::STRAY));
    }

    fn not_shown(&mut self, path: String) {
        let message =
            phrase!("`{path}` is shown to nobody: of a room's prose `{NOTES}` alone stands on its page", path, NOTES);
        self.findings.push(
            Remark::note(Place::Path(path.clone()), message)
                .remedy(phrase!(
                    "move what the client is to read into `{NOTES}`; what is for you alone may stay",
                    NOTES
                ))
                .in_room(room_of(&path))
                .of(Code::STRAY),
        );
    }

    fn not_prose(&mut self, path: String, end: &str) {
        let message = phrase!(
            "`{path}` is a link to `{end}`, which is no room's `{NOTES}`: it is shown to nobody",
            path,
            end,
            NOTES
        );
        self.findings.push(Remark::query(Place::Path(path.clone()), message)
            .remedy(phrase!("write what the client is to read into `{path}` itself; a link may lead to another room's `{NOTES}` alone", path, NOTES)).in_room(room_of(&path)).of(Code::STRAY));
    }

    fn strays(&mut self, folder: &Folder) {
        for stray in folder.strays() {
            let path = &stray.path;
            let (rule, message, remedy) = match &stray.kind {
                StrayKind::LeadsOutside => (
                    Code::OUTSIDE_BOOK,
                    phrase!("`{path}` is a link that leads out of the book", path),
                    "copy the file into the book; nothing outside its folder is read",
                ),
                StrayKind::LeadsAside(end) => (
                    Code::OUTSIDE_BOOK,
                    phrase!("`{path}` is a link to `{end}`, which is no part of a book", path, end),
                    "delete the link, and write what is meant into a file of the book; the record, the cache, hidden files and published pages are never read",
                ),
                StrayKind::LinkInCache => (
                    Code::OUTSIDE_BOOK,
                    phrase!("`{path}` is a link, and the cache is not written through links", path),
                    "delete the link; the cache is made anew in the book's own folder",
                ),
                StrayKind::LinkNotFollowed => (
                    Code::OUTSIDE_BOOK,
                    phrase!("`{path}` is a link to a folder, or to nothing", path),
                    "copy the files into the book; links to folders are not followed",
                ),
                StrayKind::NoFile => (
                    Code::SYNTAX,
                    phrase!("`{path}` is a pipe or a device, which is never read", path),
                    "delete it, or put the file that is meant in its place",
                ),
                StrayKind::BadName => (
                    Code::SYNTAX,
                    phrase!("the name of `{path}` is not Unicode text", path),
                    "rename it with plain letters, figures and hyphens",
                ),
                StrayKind::Unreadable(why) => (
                    Code::SYNTAX,
                    phrase!("`{path}` can't be read: {why}", path, Wrote(why)),
                    "give yourself the right to read it, or take it out of the book",
                ),
            };
            let finding = Remark::stop(Place::Path(path.clone()), message).remedy(remedy).of(rule);
            match stray.kind {
                StrayKind::Unreadable(_) => self.lost(path, finding),
                _ => self.unread(path, finding),
            }
        }
    }
}

fn text(folder: &Folder, path: &str) -> Result<String, Finding> {
    let fault = |rule, message: Phrase, remedy: &'static str| {
        Remark::stop(Place::Path(path.to_string()), message).remedy(remedy).of(rule)
    };
    let bytes = folder.read(path, MAX_TEXT).map_err(|error| match error {
        FolderError::TooLarge(..) => fault(
            Code::TOO_LARGE,
            phrase!("`{path}` is larger than {} MB", path, MAX_TEXT / 1024 / 1024),
            "split it: one selection a file is the usual way",
        ),
        error => fault(Code::SYNTAX, error.message(), "give yourself the right to read it"),
    })?;
    let other = bytes.starts_with(&[0xFF, 0xFE]) || bytes.starts_with(&[0xFE, 0xFF]) || bytes.contains(&0);
    String::from_utf8(bytes).ok().filter(|_| !other).ok_or_else(|| {
        let what = if other { "is written as UTF-16" } else { "is not written as UTF-8" };
        fault(Code::SYNTAX, phrase!("`{path}` {what}", path, what), "save it again as UTF-8 in the editor")
    })
}

fn tree(files: &Files, file: FileId) -> Result<Tree, Finding> {
    let text = files.get(file).map_or("", |file| file.text.as_str());
    yaml::parse(file, text).map_err(|error| {
        let rule = match error.kind {
            YamlErrorKind::Tab
            | YamlErrorKind::SecondDocument
            | YamlErrorKind::KeyNotText
            | YamlErrorKind::Syntax(_) => Code::SYNTAX,
            _ => Code::TOO_LARGE,
        };
        Remark::stop(error.span, error.kind.message()).remedy(error.kind.remedy()).of(rule)
    })
}
