//! Whether something burns: a fact of its own, never read out of a name.

/// What a thing does near heat. Where nobody says, it counts as [`Burning::Burns`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Burning {
    /// Nothing of it can burn.
    DoesNotBurn,
    /// It burns, and is shielded from the heat as the local code says.
    Shielded,
    /// It burns.
    Burns,
}

impl Burning {
    /// Its words in the book, in the order of a designer's question.
    pub const WORDS: &'static [&'static str] = &["burns", "shielded", "does not burn"];

    /// What that word says.
    pub fn of(word: &str) -> Option<Self> {
        [Self::Burns, Self::Shielded, Self::DoesNotBurn].into_iter().find(|burning| burning.word() == word)
    }

    /// Its word in the book.
    pub fn word(self) -> &'static str {
        match self {
            Self::Burns => "burns",
            Self::Shielded => "shielded",
            Self::DoesNotBurn => "does not burn",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Burning;

    #[test]
    fn each_word_is_one_answer_and_there_is_no_other() {
        for word in Burning::WORDS {
            assert_eq!(Burning::of(word).map(Burning::word), Some(*word));
        }
        for word in ["metal", "metal hood", "no shield", "steel", ""] {
            assert_eq!(Burning::of(word), None, "{word}");
        }
    }
}
