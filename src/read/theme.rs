//! Reads the book's own theme: its files, and the languages among them.

use crate::finding::{Code, Finding, Phrase, Remark, phrase};
use crate::language::{Tongues, tags};
use crate::source::yaml::Value;
use crate::source::{Files, Folder, Place, Span};
use crate::theme::{Group, Misplaced, ThemeFiles};
use crate::units::{Fault as _, Wrote};

use super::load::Loaded;

/// Largest file of a theme, in bytes.
const MAX_FILE: u64 = 8 * 1024 * 1024;

/// Folders that hold other parts of a book.
const TAKEN: [&str; 3] = ["rooms", "products", "record"];

/// A theme as far as it could be read.
#[derive(Default)]
pub struct ReadTheme {
    /// Its files.
    pub files: ThemeFiles,
    /// The languages that it has.
    pub tongues: Tongues,
    /// Whether something of it could not be read.
    pub faulty: bool,
}

/// Reads the theme that the project's file names; the standard one where it names none.
pub fn read(folder: &Folder, loaded: &mut Loaded, project: &str, findings: &mut Vec<Finding>) -> ReadTheme {
    let Some(node) = loaded.trees.get(project).and_then(|root| root.at("theme")) else { return ReadTheme::default() };
    let Value::Scalar { text, .. } = &node.value else { return ReadTheme::default() };
    let (name, span) = (text.trim_end_matches('/').to_owned(), node.span);
    if let Err(finding) = named(folder, &name, span) {
        findings.push(finding);
        return ReadTheme { faulty: true, ..ReadTheme::default() };
    }
    let below = format!("{name}/");
    // What is read here is no stray file of the book.
    let is_of_the_theme = |place: &Place| matches!(place, Place::Path(path) if path.starts_with(&below));
    findings.retain(|finding| !(finding.rule == Code::STRAY && is_of_the_theme(&finding.place)));
    loaded.unread_files.retain(|path| !path.starts_with(&below));
    let mut reading = Reading { folder, name, files: &mut loaded.files, theme: ReadTheme::default(), findings };
    reading.theme.files = ThemeFiles::over_standard(&reading.name);
    reading.all(&below);
    reading.theme
}

/// Whether a folder of the book, as `book.yaml` names it, can hold a theme.
pub fn can_hold_a_theme(name: &str) -> bool {
    let first = name.split('/').next().unwrap_or_default();
    let leads_out = name.starts_with('/') || name.split(['/', '\\']).any(|step| matches!(step, "" | "." | ".."));
    !leads_out && !TAKEN.contains(&first) && !name.starts_with('.')
}

/// Looks whether a folder of that name can hold a theme.
fn named(folder: &Folder, name: &str, at: Span) -> Result<(), Finding> {
    let fault = |message: Phrase, remedy: Phrase, code| Err(Remark::stop(at, message).remedy(remedy).of(code));
    if !can_hold_a_theme(name) {
        let message = phrase!("the folder `{name}` can't hold a theme", name);
        let remedy = phrase!("name a folder of its own inside the book's folder, such as `our-theme`");
        return fault(message, remedy, Code::OUTSIDE_BOOK);
    }
    let below = format!("{name}/");
    if folder.entries().iter().all(|entry| !entry.path.starts_with(&below)) {
        let message = phrase!("the book has no folder `{name}` with files of a theme", name);
        let remedy = phrase!("lay the standard theme out there with `{}`", format!("bookmatch start --theme {name}"));
        return fault(message, remedy, Code::UNKNOWN_NAME);
    }
    Ok(())
}

struct Reading<'a> {
    folder: &'a Folder,
    name: String,
    files: &'a mut Files,
    theme: ReadTheme,
    findings: &'a mut Vec<Finding>,
}

impl Reading<'_> {
    fn all(&mut self, below: &str) {
        for entry in self.folder.entries() {
            let Some(inside) = entry.path.strip_prefix(below) else { continue };
            match ThemeFiles::belongs(inside) {
                Ok(None) => {}
                Ok(Some(group)) => self.file(&entry.path, inside, group),
                Err(why) => self.misplaced(&entry.path, why),
            }
        }
    }

    fn file(&mut self, path: &str, inside: &str, group: Group) {
        let bytes = match self.folder.read(path, MAX_FILE) {
            Ok(bytes) => bytes,
            Err(error) => {
                return self.fault(Place::Path(path.into()), error.message(), error.remedy(), Code::TOO_LARGE);
            }
        };
        if group == Group::Words {
            self.words(path, inside, &bytes);
        }
        self.theme.files.lay(inside, bytes);
    }

    fn words(&mut self, path: &str, inside: &str, bytes: &[u8]) {
        let place = || Place::Path(path.to_owned());
        let Ok(text) = std::str::from_utf8(bytes) else {
            let message = phrase!("`{path}` is not text in UTF-8", path);
            return self.fault(place(), message, "save it anew as UTF-8".into(), Code::SYNTAX);
        };
        let tag = inside.trim_start_matches("words/").trim_end_matches(".yaml");
        if !is_tag(tag) {
            let message = phrase!("`{path}` is not named by the tag of a language", path);
            let remedy = phrase!("name it as BCP 47 has it, such as `{}` or `{}`", "fr.yaml", "pt-BR.yaml");
            return self.fault(place(), message, remedy, Code::SYNTAX);
        }
        let id = self.files.add(path.to_owned(), text.to_owned());
        if let Err(error) = self.theme.tongues.add(tag, self.files, id) {
            let message = phrase!("the words of the theme are faulty: {error}", Wrote(&error.what));
            let remedy = match tags().any(|known| known == tag) {
                true => {
                    "mend the line, or delete it: what the file leaves out is worded as the standard theme words it"
                }
                false => {
                    "a language of your own says all that `en.yaml` of the standard theme says, with the same holes"
                }
            };
            self.fault(error.at.span.into(), message, remedy.into(), Code::SYNTAX);
        }
    }

    fn misplaced(&mut self, path: &str, why: Misplaced) {
        let folders: Vec<Phrase> = Group::OWN.iter().map(|group| Phrase::name(group.folder())).collect();
        let (message, remedy) = match why {
            Misplaced::Nowhere => (
                phrase!("`{path}` stands in no folder of a theme", path),
                phrase!("a theme has the folders {}, and no folders in them", Phrase::series(folders)),
            ),
            Misplaced::Ending(group) => {
                let endings = Phrase::series(group.endings().iter().map(|ending| Phrase::name(ending)));
                (
                    phrase!("`{path}` is no file that stands there in a theme", path),
                    phrase!("files there end in {}", endings),
                )
            }
            Misplaced::NotToChange => (
                phrase!("`{path}` can't be changed by a theme", path),
                phrase!("delete it: what is signed, and how cautions look, hangs on no theme"),
            ),
        };
        self.fault(Place::Path(path.to_owned()), message, remedy, Code::STRAY);
    }

    fn fault(&mut self, place: Place, message: Phrase, remedy: Phrase, code: Code) {
        self.theme.faulty = true;
        self.findings.push(Remark::stop(place, message).remedy(remedy).of(code));
    }
}

/// Whether a name is the tag of a language (BCP 47, RFC 5646): a language of two or three letters, and what follows.
fn is_tag(name: &str) -> bool {
    let mut parts = name.split('-');
    let language = parts.next().unwrap_or_default();
    (2..=3).contains(&language.len())
        && language.bytes().all(|letter| letter.is_ascii_lowercase())
        && parts.all(|part| (1..=8).contains(&part.len()) && part.bytes().all(|letter| letter.is_ascii_alphanumeric()))
}
