//! Where a light or a fan may hang, read from the words of its `damp rating`.

use super::supply::InWords;

/// How wet the place may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rating {
    /// A dry place alone.
    Dry,
    /// A place where moisture settles.
    Damp,
    /// A place that is splashed or sprayed.
    Wet,
}

/// Words by which each is known, the telling ones first.
const WORDS: &[(Rating, &[&str])] = &[
    (Rating::Dry, &["not damp", "not wet", "no damp", "dry", "indoor only", "none", "not rated", "seco", "trocken"]),
    (Rating::Wet, &["wet", "shower", "splash", "spray", "outdoor", "mojad", "nass", "ducha"]),
    (Rating::Damp, &["damp", "moist", "húmed", "feucht"]),
];

impl InWords for Option<Rating> {
    fn of_words(words: &str) -> Self {
        let lower = words.to_lowercase();
        let known = || WORDS.iter().find(|(_, known)| known.iter().any(|word| lower.contains(word)));
        of_an_ip_code(&lower).or_else(|| known().map(|(rating, _)| *rating))
    }
}

/// By the second figure of an IP code (IEC 60529, from memory): from 4 on it withstands splashes, from 1 on drops.
fn of_an_ip_code(lower: &str) -> Option<Rating> {
    let (_, after) = lower.split_once("ip")?;
    let mut figures = after.trim_start().chars().take(2);
    let first = figures.next().filter(|first| first.is_ascii_digit() || *first == 'x')?;
    let second = figures.next()?.to_digit(10).filter(|_| first != ' ')?;
    Some(match second {
        0 => Rating::Dry,
        1..=3 => Rating::Damp,
        _ => Rating::Wet,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rating_is_known_by_its_word_or_by_its_ip_code() {
        let of = |words: &str| Option::<Rating>::of_words(words);
        for words in ["wet", "UL wet location", "shower rated", "IP65", "ip 44", "IPX4"] {
            assert_eq!(of(words), Some(Rating::Wet), "{words}");
        }
        for words in ["damp", "damp location", "IP21"] {
            assert_eq!(of(words), Some(Rating::Damp), "{words}");
        }
        for words in ["dry", "not damp rated", "IP20", "dry locations only"] {
            assert_eq!(of(words), Some(Rating::Dry), "{words}");
        }
        assert_eq!(of("see the sheet"), None);
    }
}
