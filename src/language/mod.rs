//! The words of each language: sentences by key, with plural forms, lists, days and amounts of that language.
//!
//! A language is a file of the theme and nothing else; what stands here knows none by name but the one that
//! all others are held to.

mod check;
mod fractions;
mod list;
mod phrase;
mod plural;
mod reading;
mod say;
mod table;
mod tongues;

use std::collections::BTreeMap;
use std::fmt;
use std::sync::LazyLock;

use crate::source::Files;
use crate::theme::{Group, ThemeFiles};

pub use fractions::next_fraction;
pub use say::Say;
pub(crate) use say::say;
pub use table::{At, COUNT, LanguageError, Part, Words};
pub use tongues::Tongues;

/// The language whose keys all others have too.
const FIRST: &str = "en";

/// A language with its words, known by its tag: `en`.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Language(Words);

/// Every language of the program, read once; those that are faulty with what is wrong.
static READ: LazyLock<BTreeMap<String, Result<Words, LanguageError>>> = LazyLock::new(|| {
    let first = read_standard(FIRST);
    let read = tags().map(|tag| {
        let whole = match (read_standard(tag), &first) {
            (Ok(words), Ok(first)) => check::against(&words, first).map(|()| Words::keep(words)),
            (Err(error), _) => Err(error),
            (Ok(_), Err(error)) => Err(error.clone()),
        };
        (tag.to_owned(), whole)
    });
    read.collect()
});

fn read_standard(tag: &str) -> Result<table::Table, LanguageError> {
    let mut files = Files::default();
    let id = files.add(format!("words/{tag}.yaml"), text(tag).to_owned());
    reading::read(tag, &files, id, false)
}

/// The tags of the languages of the program: the names of their files.
pub fn tags() -> impl Iterator<Item = &'static str> + Clone {
    static TAGS: LazyLock<Vec<String>> = LazyLock::new(|| {
        let standard = ThemeFiles::default();
        let names = standard.names(Group::Words).into_iter();
        names.filter_map(|name| Some(name.strip_suffix(".yaml")?.to_owned())).collect()
    });
    TAGS.iter().map(String::as_str)
}

fn text(tag: &str) -> &'static str {
    let file = ThemeFiles::standard(Group::Words, &format!("{tag}.yaml"));
    file.and_then(|bytes| std::str::from_utf8(bytes).ok()).unwrap_or_default()
}

/// The words of a language of the program.
fn standard(tag: &str) -> Option<Words> {
    READ.get(tag)?.as_ref().ok().copied()
}

impl Language {
    /// The language of the program with this tag, if there are words in it. One whose file is faulty has those of
    /// the first: [`check`](Self::check) says so before anything is published.
    pub fn named(tag: &str) -> Option<Self> {
        READ.get(tag)?;
        standard(tag).or_else(|| standard(FIRST)).map(Self)
    }

    /// The language that these words are in.
    pub(crate) fn of(words: Words) -> Self {
        Self(words)
    }

    /// Its tag.
    pub fn tag(self) -> &'static str {
        self.0.tag()
    }

    /// Its words.
    pub fn words(self) -> Words {
        self.0
    }

    /// Looks at the files of all languages of the program.
    ///
    /// # Errors
    /// What is wrong with the first that is faulty, with its place.
    pub fn check() -> Result<(), LanguageError> {
        READ.values().find_map(|words| words.as_ref().err().cloned()).map_or(Ok(()), Err)
    }
}

impl Default for Language {
    fn default() -> Self {
        Self(standard(FIRST).unwrap_or(Words::NONE))
    }
}

impl fmt::Display for Language {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.tag())
    }
}

impl fmt::Debug for Language {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.tag())
    }
}

/// Languages that a test made up: read as a file of a theme is.
#[cfg(test)]
pub(crate) mod learnt {
    use super::{FIRST, Language, LanguageError, Tongues, text};
    use crate::source::Files;

    /// A language by the text of its file.
    pub fn learn(tag: &'static str, yaml: &str) -> Result<Language, LanguageError> {
        let (mut files, mut tongues) = (Files::default(), Tongues::default());
        let id = files.add(format!("words/{tag}.yaml"), yaml.to_owned());
        tongues.add(tag, &files, id)?;
        Ok(tongues.named(tag).unwrap())
    }

    /// The text of the first language's file.
    pub fn first() -> &'static str {
        text(FIRST)
    }
}

#[cfg(test)]
mod tests;
