//! What the words of glass tell of how it breaks.

use super::Mention;
use super::said::words_of;
use super::supply::InWords;

/// How glass breaks, as its words have it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Breaks {
    /// It is called safety glass, tempered or laminated.
    Safely,
    /// It is called what splinters, or no safety glass.
    IntoSplinters,
    /// Nothing is said of it.
    #[default]
    Unsaid,
}

/// Words for glass that splinters.
const SPLINTERS: [&str; 8] =
    ["annealed", "float", "plain", "ordinary", "untempered", "recocido", "flotado", "floatglas"];

/// What safety glass is called besides, in short and elsewhere.
const SAFE: [&str; 9] = ["esg", "vsg", "herdet", "härdat", "hærdet", "gehärtet", "trempé", "feuilleté", "temperato"];

/// Words that take back what follows them.
const NOT: [&str; 7] = ["not", "non", "no", "un", "without", "sin", "nicht"];

impl InWords for Breaks {
    fn of_words(words: &str) -> Self {
        let told = words_of(words);
        let is_safe = |word: &String| Mention::SafetyGlass.is_in(word) || SAFE.contains(&word.as_str());
        let is_denied =
            |at: usize| at.checked_sub(1).and_then(|at| told.get(at)).is_some_and(|word| NOT.contains(&word.as_str()));
        let safe = told.iter().enumerate().filter(|(_, word)| is_safe(word) && !SPLINTERS.contains(&word.as_str()));
        let (denied, said): (Vec<_>, Vec<_>) = safe.partition(|(at, _)| is_denied(*at));
        // `tempered float glass` is tempered.
        match (said.is_empty(), denied.is_empty()) {
            (false, true) => Self::Safely,
            (_, false) => Self::IntoSplinters,
            (true, true) if told.iter().any(|word| SPLINTERS.contains(&word.as_str())) => Self::IntoSplinters,
            (true, true) => Self::Unsaid,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_of_glass_say_how_it_breaks() {
        let tells = |words: &str, breaks: Breaks| assert_eq!(Breaks::of_words(words), breaks, "{words}");
        for words in [
            "tempered",
            "3/8\" tempered",
            "8 mm toughened safety glass",
            "laminated",
            "templado",
            "6 mm herdet",
            "8 mm ESG",
            "tempered float glass",
        ] {
            tells(words, Breaks::Safely);
        }
        for words in [
            "annealed",
            "3/8\" annealed",
            "6 mm float",
            "clear, not tempered",
            "untempered",
            "non-tempered",
            "plain",
            "no safety glass",
        ] {
            tells(words, Breaks::IntoSplinters);
        }
        for words in ["8 mm clear", "frosted", "3/8\""] {
            tells(words, Breaks::Unsaid);
        }
    }
}
