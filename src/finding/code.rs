//! Codes of rules: a closed set, made where a rule is declared and nowhere else.

use std::fmt;

/// What a rule is about: the first half of its code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Family {
    /// The folder itself: files, keys and values.
    Source,
    /// Nothing needed is missing.
    Complete,
    /// The chosen thing against its opening.
    Fit,
    /// Power, gas, water and air.
    Service,
    /// The room: to pass, to work, to sit, to wash.
    Clear,
    /// Counters and islands.
    Top,
    /// Light.
    Light,
    /// Cabinets and fillers along a wall.
    Run,
    /// What is kept where.
    Store,
    /// Colours, hands, edges and joints.
    Finish,
    /// What is ordered when, and how much of it.
    Order,
    /// Prices against allowances.
    Money,
    /// What rests on what.
    Depends,
    /// What was set aside.
    Waive,
    /// What was signed, and what changed since.
    Approve,
}

impl Family {
    /// Every family, in the order in which they are told.
    pub const ALL: [Self; 15] = [
        Self::Source,
        Self::Complete,
        Self::Fit,
        Self::Service,
        Self::Clear,
        Self::Top,
        Self::Light,
        Self::Run,
        Self::Store,
        Self::Finish,
        Self::Order,
        Self::Money,
        Self::Depends,
        Self::Waive,
        Self::Approve,
    ];

    /// As it stands in codes: `fit`.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Source => "source",
            Self::Complete => "complete",
            Self::Fit => "fit",
            Self::Service => "service",
            Self::Clear => "clear",
            Self::Top => "top",
            Self::Light => "light",
            Self::Run => "run",
            Self::Store => "store",
            Self::Finish => "finish",
            Self::Order => "order",
            Self::Money => "money",
            Self::Depends => "depends",
            Self::Waive => "waive",
            Self::Approve => "approve",
        }
    }
}

/// The code of a rule: its family and its fault, such as `fit/width`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Code {
    text: &'static str,
    family: Family,
}

/// What is told of words that could not be read.
const NOT_READ: [Code; 4] = [Code::WRONG_TYPE, Code::BARE_LENGTH, Code::UNKNOWN_KEY, Code::SYNTAX];

impl Code {
    /// Whether it tells of words that could not be read: what they say is missing from the book.
    pub fn tells_of_unread_words(self) -> bool {
        NOT_READ.contains(&self)
    }
}

/// The codes of what is found while the files are read, before any check is run.
macro_rules! of_reading {
    ($($(#[doc = $what:literal])+ $name:ident = $text:literal;)+) => {
        impl Code {
            $($(#[doc = $what])+ pub const $name: Self = Self::declared($text);)+

            /// Those of reading, each of which a rule of that code tells of.
            #[cfg(test)]
            pub const OF_READING: &'static [Self] = &[$(Self::$name),+];
        }
    };
}

of_reading! {
    /// A file that can't be understood.
    SYNTAX = "source/syntax";
    /// A key that nobody knows.
    UNKNOWN_KEY = "source/unknown-key";
    /// A value that is none of its field's.
    WRONG_TYPE = "source/wrong-type";
    /// A length without its unit.
    BARE_LENGTH = "source/bare-length";
    /// Something that stands twice.
    DUPLICATE = "source/duplicate";
    /// A letter and number that can't be a tag.
    TAG = "source/tag";
    /// A name that nothing bears.
    UNKNOWN_NAME = "source/unknown-name";
    /// A file that lies outside the book's folder.
    OUTSIDE_BOOK = "source/outside-book";
    /// A file or a value that is too large.
    TOO_LARGE = "source/too-large";
    /// A file that is no part of the book.
    STRAY = "source/stray";
    /// A check that failed.
    UNCHECKED = "source/unchecked";
    /// A name that not every disk can bear.
    UNPORTABLE = "source/unportable";
    /// A field that is needed and absent.
    FIELD = "complete/field";
    /// A maker's sheet that is missing, or that can't be passed on.
    CUT_SHEET = "complete/cut-sheet";
    /// A picture that is wanting or can't be shown.
    PHOTO = "complete/photo";
    /// A language without words for pages.
    LANGUAGE = "complete/language";
    /// Two currencies in one book.
    CURRENCY = "money/currency";
    /// A record that is not as it was written.
    LEDGER = "approve/ledger";
    /// Keys that may be seen by others.
    KEYS = "approve/keys";
    /// A waiver whose day is past.
    WAIVER_EXPIRED = "waive/expired";
    /// A waiver that sets nothing aside.
    WAIVER_ORPHAN = "waive/orphan";
}

impl Code {
    /// The code that a rule declares; for declarations of rules alone. One of no family does not compile.
    pub const fn declared(text: &'static str) -> Self {
        let (family, known) = family_of(text.as_bytes());
        assert!(known, "the code of a rule begins with its family and `/`");
        Self { text, family }
    }

    /// As it is written in books and on pages.
    pub const fn text(self) -> &'static str {
        self.text
    }

    /// Its family.
    pub const fn family(self) -> Family {
        self.family
    }

    /// Its name where `/` can't stand: `fit-width`.
    pub fn anchor(self) -> String {
        self.text.replace('/', "-")
    }
}

/// The family that a code begins with, and whether there is one.
const fn family_of(code: &[u8]) -> (Family, bool) {
    let mut families: &[Family] = &Family::ALL;
    while let [family, rest @ ..] = families {
        if is_of(code, family.word().as_bytes()) {
            return (*family, true);
        }
        families = rest;
    }
    (Family::Source, false)
}

/// Whether a code begins with a family's word and `/`.
const fn is_of(code: &[u8], family: &[u8]) -> bool {
    let (mut code, mut family) = (code, family);
    while let ([first, rest @ ..], [of_family, more @ ..]) = (code, family) {
        if *first != *of_family {
            return false;
        }
        (code, family) = (rest, more);
    }
    family.is_empty() && matches!(code, [b'/', ..])
}

impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.text)
    }
}

impl crate::units::Told for Code {}

impl super::Say for Code {
    fn add_to(&self, pieces: &mut Vec<super::Piece>) {
        self.text().add_to(pieces);
    }
}
