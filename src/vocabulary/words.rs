//! Closed sets of words: a type each, made with its reader and its words in one table.

/// One of the words that a field may hold.
pub trait Words: Copy + Sized + 'static {
    /// Every word, in the order in which messages list them.
    const WORDS: &'static [&'static str];

    /// What that word says.
    fn of(word: &str) -> Option<Self>;

    /// The word, as a book writes it.
    fn word(self) -> &'static str;
}

/// A closed set of words: `words! { /// What it is. pub enum Name { Variant = "word", } }`;
/// of a type that is declared elsewhere, `words! { for Name { Variant = "word", } }`.
macro_rules! words {
    ($(#[$meta:meta])* pub enum $name:ident { $($(#[$about:meta])* $variant:ident = $word:literal,)+ }) => {
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

        words! { for $name { $($variant = $word,)+ } }
    };
    (for $name:ident { $($variant:ident = $word:literal,)+ }) => {
        impl $crate::vocabulary::Words for $name {
            const WORDS: &'static [&'static str] = &[$($word),+];

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

        impl $crate::finding::Say for $name {
            fn pieces(&self) -> Vec<$crate::finding::Piece> {
                vec![$crate::finding::Piece::Words($crate::vocabulary::Words::word(*self).into())]
            }
        }

        impl $crate::vocabulary::Value for $name {
            const SHAPE: $crate::vocabulary::Shape =
                $crate::vocabulary::Shape::OneOf(<Self as $crate::vocabulary::Words>::WORDS);

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
