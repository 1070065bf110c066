//! In which languages the pages of each reader are worded.

use crate::language::{self, Language};
use crate::source::yaml::{Node, Value as Yaml};
use crate::vocabulary::{Faults, FieldType, NameOf, Slot, Value, record, values};

/// The languages of a book's pages.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Languages {
    /// The same for all readers; the office reads the first.
    Same(Spoken),
    /// Each reader's own.
    Each(ByReader),
}

record! {
    #[derive(Default)]
    pub struct ByReader = LANGUAGES("languages", "in which languages the pages of each reader are worded") {
        client: Slot<Spoken> = "client", "those of the client's pages; of two each page has a way to the other", "[es, en]";
        installer: Slot<Spoken> = "installer", "those of the sheets on site", "[es, en]";
        office: Slot<Language> = "office", "the one of the office's pages", "en";
    }
}

/// One language, or several in the order of preference, each once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spoken(pub Vec<Language>);

impl Languages {
    /// Those of the client's pages, the one that is shown first before the others.
    pub fn of_client(&self) -> Vec<Language> {
        match self {
            Self::Same(spoken) => spoken.0.clone(),
            Self::Each(each) => of_reader(&each.client),
        }
    }

    /// Those of the sheets on site.
    pub fn of_installer(&self) -> Vec<Language> {
        match self {
            Self::Same(spoken) => spoken.0.clone(),
            Self::Each(each) => of_reader(&each.installer),
        }
    }

    /// The one of the office's pages.
    pub fn of_office(&self) -> Language {
        match self {
            Self::Same(spoken) => spoken.0.first().copied().unwrap_or_default(),
            Self::Each(each) => each.office.get().copied().unwrap_or_default(),
        }
    }
}

fn of_reader(spoken: &Slot<Spoken>) -> Vec<Language> {
    spoken.get().map_or_else(|| vec![Language::default()], |spoken| spoken.0.clone())
}

impl Value for Languages {
    const TYPE: FieldType = FieldType::Either(&Spoken::TYPE, &FieldType::Record(&LANGUAGES));

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        match &node.value {
            Yaml::Map(_) => ByReader::read(node, faults).map(Self::Each),
            Yaml::Scalar { .. } | Yaml::List(_) => Spoken::read(node, faults).map(Self::Same),
        }
    }
}

impl Value for Spoken {
    const TYPE: FieldType = FieldType::Either(&Language::TYPE, &FieldType::List(&Language::TYPE));

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let nodes = match &node.value {
            Yaml::List(items) if !items.is_empty() => items.iter().collect(),
            _ => vec![node],
        };
        // Each is read before judging, so that every one that is unknown is told.
        let read: Vec<_> = nodes.into_iter().map(|node| Language::read(node, faults)).collect();
        let mut spoken = Vec::new();
        for language in read.into_iter().collect::<Option<Vec<_>>>()? {
            if !spoken.contains(&language) {
                spoken.push(language);
            }
        }
        Some(Self(spoken))
    }
}

impl Value for Language {
    const TYPE: FieldType = FieldType::Name(NameOf::Language);

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let tag = values::scalar(node, &Self::TYPE, faults)?;
        let found = Self::named(tag);
        if found.is_none() {
            values::unknown_name(node.span, tag, NameOf::Language, language::tags(), faults);
        }
        found
    }
}
