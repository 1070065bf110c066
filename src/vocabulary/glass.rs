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
const SAFE: [&str; 10] =
    ["temp", "esg", "vsg", "herdet", "härdat", "hærdet", "gehärtet", "trempé", "feuilleté", "temperato"];

/// Standards of safety glass by their numbers (EN 12150, 14449 and 12600, BS 6206, AS/NZS 2208, 16 CFR 1201, from memory),
/// which count beside whose they are.
const STANDARDS: [&str; 6] = ["12150", "14449", "12600", "6206", "2208", "1201"];
/// Whose they are.
const BODIES: [&str; 12] = ["en", "bs", "as", "nzs", "din", "une", "iso", "cfr", "cpsc", "ansi", "certified", "sgcc"];

/// Words that take back what follows them.
const NOT: [&str; 17] = [
    "not", "non", "no", "un", "without", "sin", "nicht", "neither", "nor", "ni", "kein", "keine", "ohne", "weder",
    "noch", "never", "isn",
];
/// Words that end what is denied: `not laminated but tempered`.
const BUT: [&str; 5] = ["but", "sino", "sondern", "pero", "aber"];
/// Words between a denial and what it denies.
const GOES_ON: [&str; 14] =
    ["glass", "vidrio", "cristal", "glas", "a", "any", "de", "yet", "be", "been", "to", "is", "either", "t"];
/// Words that join what is denied: `not tempered or laminated`.
const OR: [&str; 6] = ["or", "nor", "o", "ni", "oder", "noch"];

impl InWords for Breaks {
    fn of_words(words: &str) -> Self {
        let told = words_of(words);
        let named = standards(&told);
        let is_safe = |word: &String| {
            Mention::SafetyGlass.is_in(word) || SAFE.contains(&word.as_str()) || named.contains(&word.as_str())
        };
        let lower = words.to_lowercase();
        let parts: Vec<Vec<String>> = lower.split([',', ';', '(', ')', '.', ':']).map(words_of).collect();
        let (mut said, mut denied) = (false, false);
        for part in &parts {
            let joins = denied && part.iter().any(|word| OR.contains(&word.as_str()));
            let mut is_denied = joins;
            for (at, word) in part.iter().enumerate() {
                if NOT.contains(&word.as_str()) {
                    // `un vidrio templado` is Spanish.
                    is_denied = word != "un" || part.get(at + 1).is_some_and(is_safe);
                } else if BUT.contains(&word.as_str()) {
                    is_denied = false;
                } else if is_safe(word) && !SPLINTERS.contains(&word.as_str()) {
                    (said, denied) = (said || !is_denied, denied || is_denied);
                } else if !goes_on(word) {
                    is_denied = false;
                }
            }
        }
        // `tempered, not laminated` is tempered, and so is `tempered float glass`; `tempered, no safety glass` is nothing sure.
        match (said, denied) {
            (true, _) if !denies_all(&parts) => Self::Safely,
            (_, true) => Self::IntoSplinters,
            _ if told.iter().any(|word| SPLINTERS.contains(&word.as_str())) => Self::IntoSplinters,
            _ => Self::Unsaid,
        }
    }
}

/// The numbers of standards that words name: beside whose they are, and no size (`en 1201 mm` is Spanish).
fn standards(words: &[String]) -> Vec<&str> {
    let is_size = |next: Option<&String>| next.is_some_and(|next| ["mm", "cm", "x"].contains(&next.as_str()));
    let pairs = words.windows(2).enumerate().filter_map(|(at, pair)| match pair {
        [body, number] if BODIES.contains(&body.as_str()) && !is_size(words.get(at + 2)) => Some(number.as_str()),
        _ => None,
    });
    pairs.filter(|number| STANDARDS.contains(number)).collect()
}

/// Whether a word leaves what was denied before it denied: `not to EN 12150`.
fn goes_on(word: &str) -> bool {
    GOES_ON.contains(&word) || OR.contains(&word) || BODIES.contains(&word) || word == "16"
}

/// Whether all safety glass is denied, of whatever sort.
fn denies_all(parts: &[Vec<String>]) -> bool {
    parts.iter().any(|part| {
        part.windows(2).any(|pair| {
            matches!(pair, [before, word] if NOT.contains(&before.as_str())
                && ["safety", "sicherheitsglas"].contains(&word.as_str()))
        })
    })
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
            "3/8\" tempered, not laminated",
            "tempered (not laminated)",
            "tempered not laminated",
            "not laminated but tempered",
            "laminated, not tempered",
            "vidrio templado 8 mm, no laminado",
            "8 mm ESG, kein VSG",
            "un vidrio de 8 mm, templado",
            "un vidrio templado de 8 mm",
            "no frame tempered",
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
            "not tempered safety glass",
            "not tempered or laminated",
            "neither tempered nor laminated",
            "ni templado ni laminado",
            "not tempered, nor laminated",
            "tempered, no safety glass",
        ] {
            tells(words, Breaks::IntoSplinters);
        }
        for words in ["8 mm clear", "frosted", "3/8\"", "room temperature"] {
            tells(words, Breaks::Unsaid);
        }
    }

    #[test]
    fn standards_and_other_names_of_safety_glass_are_read() {
        for words in [
            "ANSI Z97.1 and CPSC 16 CFR 1201 Cat. II, 3/8\"",
            "3/8\" SGCC-certified",
            "3/8\" temp. glass, etched logo",
            "6 mm, EN 12150",
            "10 mm clear, AS/NZS 2208",
            "vidrio securizado 6 mm",
            "cristal de seguridad 8 mm",
        ] {
            assert_eq!(Breaks::of_words(words), Breaks::Safely, "{words}");
        }
        for words in ["not SGCC-certified", "not to ANSI Z97.1", "sin cristal de seguridad"] {
            assert_eq!(Breaks::of_words(words), Breaks::IntoSplinters, "{words}");
        }
        for words in ["1201 mm high, clear", "cristal de 1201 x 2208 mm en marco", "en 1201 mm"] {
            assert_eq!(Breaks::of_words(words), Breaks::Unsaid, "{words}");
        }
    }
}
