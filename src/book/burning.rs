//! Whether something burns: a fact of its own, never read out of a name.

use crate::vocabulary::words;

words! {
    /// What a thing does near heat. Where nobody says, it counts as [`Burning::Burns`].
    pub enum Burning, otherwise SAYS_WHAT_IT_IS {
        /// It burns.
        Burns = "burns",
        /// It burns, and is shielded from the heat as the local code says.
        Shielded = "shielded",
        /// Nothing of it can burn.
        DoesNotBurn = "does not burn" also "noncombustible" "incombustible",
    }
}

/// `material: oak` says what a thing is made of, where the field says whether it burns.
const SAYS_WHAT_IT_IS: (&str, &str) = (
    "does not say whether it burns, which is what `material` tells here",
    "write `burns`, `shielded` or `does not burn`, as its maker says; what it is made of goes in its words, such as `what`, `finish` or `note`",
);

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
