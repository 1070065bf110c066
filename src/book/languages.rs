//! In which languages the pages of each reader are worded.

use crate::language::{Language, Tongues};
use crate::source::Spanned;
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
        office: Slot<Tag> = "office", "the one of the office's pages", "en";
    }
}

/// One language, or several in the order of preference, each once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spoken(pub Vec<Tag>);

/// The tag of a language, as the book names it: which there are is known once its theme is read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tag(pub Spanned<String>);

impl Languages {
    /// Those of the client's pages, the one that is shown first before the others.
    pub fn of_client(&self, tongues: &Tongues) -> Vec<Language> {
        match self {
            Self::Same(spoken) => spoken.languages(tongues),
            Self::Each(each) => of_reader(&each.client, tongues),
        }
    }

    /// Those of the sheets on site.
    pub fn of_installer(&self, tongues: &Tongues) -> Vec<Language> {
        match self {
            Self::Same(spoken) => spoken.languages(tongues),
            Self::Each(each) => of_reader(&each.installer, tongues),
        }
    }

    /// The one of the office's pages.
    pub fn of_office(&self, tongues: &Tongues) -> Language {
        let tag = match self {
            Self::Same(spoken) => spoken.0.first(),
            Self::Each(each) => each.office.get(),
        };
        tag.and_then(|tag| tongues.named(&tag.0)).unwrap_or_else(|| tongues.usual())
    }

    /// Every tag that is written.
    pub fn tags(&self) -> Vec<&Tag> {
        match self {
            Self::Same(spoken) => spoken.0.iter().collect(),
            Self::Each(each) => {
                let spoken = [&each.client, &each.installer].into_iter().filter_map(|spoken| spoken.get());
                spoken.flat_map(|spoken| &spoken.0).chain(each.office.get()).collect()
            }
        }
    }
}

impl Spoken {
    /// The languages; the usual one where none of them is known.
    fn languages(&self, tongues: &Tongues) -> Vec<Language> {
        let known: Vec<Language> = self.0.iter().filter_map(|tag| tongues.named(&tag.0)).collect();
        if known.is_empty() { vec![tongues.usual()] } else { known }
    }
}

fn of_reader(spoken: &Slot<Spoken>, tongues: &Tongues) -> Vec<Language> {
    spoken.get().map_or_else(|| vec![tongues.usual()], |spoken| spoken.languages(tongues))
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
    const TYPE: FieldType = FieldType::Either(&Tag::TYPE, &FieldType::List(&Tag::TYPE));

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let nodes = match &node.value {
            Yaml::List(items) if !items.is_empty() => items.iter().collect(),
            _ => vec![node],
        };
        // Each is read before judging, so that every one that is no tag is told.
        let read: Vec<_> = nodes.into_iter().map(|node| Tag::read(node, faults)).collect();
        let mut spoken: Vec<Tag> = Vec::new();
        for tag in read.into_iter().collect::<Option<Vec<_>>>()? {
            if spoken.iter().all(|known| known.0.value != tag.0.value) {
                spoken.push(tag);
            }
        }
        Some(Self(spoken))
    }
}

impl Value for Tag {
    const TYPE: FieldType = FieldType::Name(NameOf::Language);

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let tag = values::scalar(node, &Self::TYPE, faults)?;
        Some(Self(Spanned::new(tag.to_owned(), node.span)))
    }
}
