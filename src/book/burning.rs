//! Whether something burns: a fact of its own, never read out of a name.

use crate::vocabulary::words;

words! {
    /// What a thing does near heat. Where nobody says, it counts as [`Burning::Burns`].
    pub enum Burning {
        /// It burns.
        Burns = "burns",
        /// It burns, and is shielded from the heat as the local code says.
        Shielded = "shielded",
        /// Nothing of it can burn.
        DoesNotBurn = "does not burn",
    }
}

impl Burning {
    /// The worse of two answers about one thing, as far as there are any.
    pub fn worse(one: Option<Self>, other: Option<Self>) -> Option<Self> {
        // The worst stands first.
        one.into_iter().chain(other).min()
    }
}

#[cfg(test)]
mod tests {
    use super::Burning;
    use crate::vocabulary::Words;

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
