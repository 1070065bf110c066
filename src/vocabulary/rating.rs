//! Where a light or a fan may hang, read from the words of its `damp rating`.

use super::said::words_of;
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
        of_an_ip_code(&lower).or_else(|| known().map(|(rating, _)| *rating)).or_else(|| of_a_zone(&lower))
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

/// What countries call the zones of a bath.
const ZONES: [&str; 6] = ["zone", "zones", "zona", "volumen", "schutzbereich", "bereich"];

/// By the zone that it is made for: over a tub or in a shower, zones 0 and 1, or beside it, zone 2 (IEC 60364-7-701, from
/// memory).
fn of_a_zone(lower: &str) -> Option<Rating> {
    let words = words_of(lower);
    let denies = ["not", "no", "outside", "out", "non", "nicht", "fuera", "außerhalb"];
    let is_one = |number: &str| {
        words.windows(2).any(|pair| matches!(pair, [zone, is] if ZONES.contains(&zone.as_str()) && is == number))
    };
    if words.iter().any(|word| denies.contains(&word.as_str())) {
        return None;
    }
    match (is_one("0") || is_one("1"), is_one("2")) {
        (true, _) => Some(Rating::Wet),
        (false, true) => Some(Rating::Damp),
        (false, false) => None,
    }
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
        for words in ["zone 1", "zones 1 and 2", "suitable for zone 1", "Schutzbereich 1", "volumen 1"] {
            assert_eq!(of(words), Some(Rating::Wet), "{words}");
        }
        assert_eq!(of("zone 2"), Some(Rating::Damp));
        for words in ["see the sheet", "not for zone 1", "outside zone 2", "zone 3", "outside the zones"] {
            assert_eq!(of(words), None, "{words}");
        }
    }
}
