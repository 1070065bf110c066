//! Closed sets of words: a type each, made with its reader and its words in one table.

/// One of the words that a field may hold.
pub trait Words: Copy + Sized + 'static {
    /// Every word, in the order in which messages list them.
    const WORDS: &'static [&'static str];

    /// The trade's other words, each with the one of [`Words::WORDS`] that it is read as.
    const ALSO: &'static [(&'static str, &'static str)];

    /// What that word says.
    fn of(word: &str) -> Option<Self>;

    /// What is said of another word, and what is to be written; none where there is no more to say than that it
    /// is not among these.
    const OTHERWISE: Option<(&'static str, &'static str)> = None;

    /// The word, as a book writes it.
    fn word(self) -> &'static str;
}

/// The word of a closed set that is meant: however its parts are joined, `slide in`, `slide-in`, `slidein`; or
/// one of the trade's other words for it.
pub fn word_meant(
    text: &str,
    words: &'static [&'static str],
    also: &'static [(&'static str, &'static str)],
) -> Option<&'static str> {
    let own = words.iter().copied().find(|word| is_joined_otherwise(word, text));
    own.or_else(|| also.iter().find(|(other, _)| is_joined_otherwise(other, text)).map(|(_, word)| *word))
}

/// What may join the parts of a word: a space, a hyphen of either sort, an underscore.
pub const JOINS: [char; 5] = [' ', '_', '\u{2010}', '\u{2011}', '-'];

/// Whether two words are the same but for what joins their parts: a space, a hyphen, an underscore or nothing.
pub fn is_joined_otherwise(word: &str, text: &str) -> bool {
    let is_letter = |letter: &char| !JOINS.contains(letter);
    word.chars().filter(is_letter).eq(text.chars().filter(is_letter))
}

/// A closed set of words: `words! { /// What it is. pub enum Name { Variant = "word", } }`;
/// of a type that is declared elsewhere, `words! { for Name { Variant = "word", } }`.
/// A word that the trade has besides follows its own: `Stone = "stone" also "granite" "marble"`. What is said of other
/// words, and what is to be written, stands before them: `pub enum Name, otherwise SAID { … }`.
macro_rules! words {
    ($(#[$meta:meta])* pub enum $name:ident $(, otherwise $otherwise:ident)? {
        $($(#[$about:meta])* $variant:ident = $word:literal $(also $($also:literal)+)?,)+
    }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name {
            $(#[doc = concat!("`", $word, "`")] $(#[$about])* $variant,)+
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str($crate::vocabulary::Words::word(*self))
            }
        }

        words! { for $name $(, otherwise $otherwise)? { $($variant = $word $(also $($also)+)?,)+ } }
    };
    (for $name:ident $(, otherwise $otherwise:ident)? { $($variant:ident = $word:literal $(also $($also:literal)+)?,)+ }) => {
        impl $crate::vocabulary::Words for $name {
            const WORDS: &'static [&'static str] = &[$($word),+];
            const ALSO: &'static [(&'static str, &'static str)] = &[$($($(($also, $word),)+)?)+];
            $(const OTHERWISE: Option<(&'static str, &'static str)> = Some($otherwise);)?

            fn of(word: &str) -> Option<Self> {
                match word {
                    $($word => Some(Self::$variant),)+
                    _ => None,
                }
            }

            fn word(self) -> &'static str {
                match self {
                    $(Self::$variant => $word,)+
                }
            }
        }

        impl $crate::units::Told for $name {}

        impl $crate::finding::Say for $name {
            fn add_to(&self, pieces: &mut Vec<$crate::finding::Piece>) {
                pieces.push($crate::finding::Piece::Words($crate::vocabulary::Words::word(*self)));
            }
        }

        impl $crate::vocabulary::Value for $name {
            const TYPE: $crate::vocabulary::FieldType =
                $crate::vocabulary::FieldType::OneOf(
                    <Self as $crate::vocabulary::Words>::WORDS,
                    <Self as $crate::vocabulary::Words>::ALSO,
                );

            fn read(
                node: &$crate::source::yaml::Node,
                faults: &mut $crate::vocabulary::Faults,
            ) -> Option<Self> {
                $crate::vocabulary::values::one_of_words(node, faults)
            }
        }
    };
}
pub(crate) use words;
