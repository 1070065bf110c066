//! The languages of a book: those of the program, as its own theme words them, and those that the theme adds.

use std::collections::BTreeMap;
use std::sync::{LazyLock, Mutex, PoisonError};

use crate::digest::Digest;
use crate::source::{FileId, Files};

use super::table::{Table, Words};
use super::{FIRST, Language, LanguageError, check, reading, standard, tags};

/// The languages that the pages of a book can be worded in.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tongues {
    own: Vec<Language>,
    /// Where the book's work is, by the letters of ISO 3166: a language may write figures there in another form.
    country: Option<String>,
}

/// The words of languages as they are in some country: each is kept once.
static THERE: LazyLock<Mutex<BTreeMap<(String, String), Language>>> = LazyLock::new(Mutex::default);

/// Languages of themes, by the digest of what they say: each is kept once, however often it is read.
static KEPT: LazyLock<Mutex<BTreeMap<Digest, Language>>> = LazyLock::new(Mutex::default);

impl Tongues {
    /// The same, of a book whose work is in that country.
    #[must_use]
    pub fn in_country(self, country: Option<String>) -> Self {
        Self { country, ..self }
    }

    /// The language with this tag, if there are words in it, with its figures as they are written in the book's
    /// country.
    pub fn named(&self, tag: &str) -> Option<Language> {
        let language = self.own.iter().copied().find(|own| own.tag() == tag).or_else(|| Language::named(tag))?;
        Some(self.country.as_deref().map_or(language, |country| there(language, country)))
    }

    /// The language that is read where nothing is said.
    pub fn usual(&self) -> Language {
        self.named(FIRST).unwrap_or_default()
    }

    /// The tags of all of them.
    pub fn tags(&self) -> impl Iterator<Item = &'static str> + Clone {
        let own = self.own.iter().map(|own| own.tag()).filter(|own| tags().all(|known| known != *own));
        tags().chain(own.collect::<Vec<_>>())
    }

    /// Adds a language by the file that words it. Of one that the program has, the file may hold what it says
    /// otherwise alone; a language of its own says everything.
    ///
    /// # Errors
    /// The first fault of the file, with its place.
    pub fn add(&mut self, tag: &str, files: &Files, id: FileId) -> Result<(), LanguageError> {
        let text = files.get(id).map_or("", |file| &file.text);
        let from = Digest::of_parts(&[tag.as_bytes(), text.as_bytes()]);
        let known = KEPT.lock().unwrap_or_else(PoisonError::into_inner).get(&from).copied();
        let language = match known {
            Some(language) => language,
            None => {
                let words = Words::keep(Self::read(tag, files, id)?);
                let language = Language::of(words);
                KEPT.lock().unwrap_or_else(PoisonError::into_inner).insert(from, language);
                language
            }
        };
        self.own.retain(|own| own.tag() != tag);
        self.own.push(language);
        Ok(())
    }

    fn read(tag: &str, files: &Files, id: FileId) -> Result<Table, LanguageError> {
        let standard_of = |tag: &str| standard(tag).and_then(|words| words.table());
        let mut own = reading::read(tag, files, id, standard_of(tag).is_some())?;
        let first = standard_of(FIRST).ok_or_else(|| own.fault(own.top, "the program has no words".into()))?;
        if let Some(same) = standard_of(tag) {
            check::changes(&own, same)?;
            own.lay_over(same);
        }
        check::against(&own, first)?;
        Ok(own)
    }
}

/// A language as it writes figures in a country.
fn there(language: Language, country: &str) -> Language {
    let Some(table) = language.words().table().filter(|table| table.differs_in(country)) else { return language };
    // Of two that say the same one is enough; a theme's may say something else under the same tag.
    let key = (format!("{} {:p}", table.tag, table), country.to_owned());
    let mut kept = THERE.lock().unwrap_or_else(PoisonError::into_inner);
    *kept.entry(key).or_insert_with(|| Language::of(Words::keep(table.in_country(country))))
}
