//! The words of each language: sentences by key, with plural forms, lists, days and amounts of that language.
//!
//! A language is a file of the theme and nothing else; what stands here knows none by name but the one that
//! all others are held to.

mod check;
mod fractions;
mod list;
mod phrase;
mod plural;
mod say;
mod table;

use std::collections::BTreeMap;
use std::fmt;
use std::sync::LazyLock;

use include_dir::{Dir, include_dir};

pub use fractions::next_fraction;
pub use say::Say;
pub(crate) use say::say;
pub use table::{COUNT, LanguageError, Part, Words};

static FILES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/themes/standard/words");

/// The language whose keys all others have too.
const FIRST: &str = "en";

/// A language that there are words in, by its tag: `en`.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Language {
    tag: &'static str,
}

/// Every language, read once; those that are faulty with what is wrong.
static READ: LazyLock<BTreeMap<&'static str, Result<Words, LanguageError>>> = LazyLock::new(|| {
    let first = table::read(FIRST, text(FIRST));
    let read = tags().map(|tag| {
        let words = table::read(tag, text(tag));
        let whole = match (words, &first) {
            (Ok(words), Ok(first)) => check::against(&words, first).map(|()| Words::keep(words)),
            (Err(error), _) => Err(error),
            (Ok(_), Err(error)) => Err(error.clone()),
        };
        (tag, whole)
    });
    read.collect()
});

/// The tags of all languages: the names of their files.
pub fn tags() -> impl Iterator<Item = &'static str> + Clone {
    let tags: Vec<&'static str> =
        FILES.files().filter_map(|file| file.path().to_str()?.strip_suffix(".yaml")).collect();
    tags.into_iter()
}

fn text(tag: &str) -> &'static str {
    FILES.get_file(format!("{tag}.yaml")).and_then(|file| file.contents_utf8()).unwrap_or_default()
}

impl Language {
    /// The language with this tag, if there are words in it.
    pub fn named(tag: &str) -> Option<Self> {
        #[cfg(test)]
        if let Some(learnt) = learnt::named(tag) {
            return Some(learnt);
        }
        tags().find(|known| *known == tag).map(|tag| Self { tag })
    }

    /// Its tag.
    pub fn tag(self) -> &'static str {
        self.tag
    }

    /// Its words; of a language whose file is faulty, those of the first, so that nothing but the page is wrong:
    /// [`check`](Self::check) says so before anything is published.
    pub fn words(self) -> Words {
        #[cfg(test)]
        if let Some(words) = learnt::words(self.tag) {
            return words;
        }
        let of = |tag: &str| READ.get(tag).and_then(|words| words.as_ref().ok()).copied();
        of(self.tag).or_else(|| of(FIRST)).unwrap_or(Words::NONE)
    }

    /// Looks at the files of all languages.
    ///
    /// # Errors
    /// What is wrong with the first that is faulty, with file and line.
    pub fn check() -> Result<(), LanguageError> {
        READ.values().find_map(|words| words.as_ref().err().cloned()).map_or(Ok(()), Err)
    }
}

impl Default for Language {
    fn default() -> Self {
        Self { tag: FIRST }
    }
}

impl fmt::Display for Language {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.tag)
    }
}

impl fmt::Debug for Language {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.tag)
    }
}

/// Languages that a test made up: read as a file of the theme is, and known while the tests run.
#[cfg(test)]
pub(crate) mod learnt {
    use std::collections::BTreeMap;
    use std::sync::RwLock;

    use super::{FIRST, Language, LanguageError, Words, check, table, text};

    static LEARNT: RwLock<BTreeMap<&'static str, Words>> = RwLock::new(BTreeMap::new());

    pub fn named(tag: &str) -> Option<Language> {
        LEARNT.read().unwrap().keys().find(|known| **known == tag).map(|tag| Language { tag })
    }

    pub fn words(tag: &str) -> Option<Words> {
        LEARNT.read().unwrap().get(tag).copied()
    }

    /// Makes a language known by the text of its file.
    pub fn learn(tag: &'static str, yaml: &str) -> Result<Language, LanguageError> {
        let words = table::read(tag, yaml)?;
        check::against(&words, &table::read(FIRST, text(FIRST))?)?;
        LEARNT.write().unwrap().insert(tag, Words::keep(words));
        Ok(Language { tag })
    }

    /// The text of the first language's file.
    pub fn first() -> &'static str {
        text(FIRST)
    }
}

#[cfg(test)]
mod tests;
