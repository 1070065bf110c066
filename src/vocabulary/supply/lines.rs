//! Lines of water by their abbreviations, said in full: `H&C`, `KW/WW`, `AF y AC`.

/// Hot water in short (those of EN 806 and of drawings, from memory).
const HOT: [&str; 9] = ["ww", "tww", "pwh", "hw", "dhw", "hws", "dhws", "ecs", "acs"];
/// Cold water in short.
const COLD: [&str; 10] = ["kw", "tkw", "twk", "pwc", "cw", "dcw", "cws", "mcws", "efs", "af"];
/// What is hot and cold only where both stand together.
const PAIRS: [(&str, &str); 3] = [("h", "c"), ("ac", "af"), ("ec", "ef")];
/// What stands between the two of a pair.
const SIGNS: [&str; 3] = ["&", "/", "+"];
/// The same in words.
const AND: [&str; 5] = ["and", "y", "e", "und", "et"];

/// A text in small letters in which hot and cold lines are named in full.
pub(super) fn in_full(lower: &str) -> String {
    let pieces = pieces(lower);
    let mut written = String::with_capacity(lower.len() + 16);
    let mut at = 0;
    while let Some(piece) = pieces.get(at) {
        let said = || pieces.iter().take(at).rev();
        let (in_full, taken) = match pieces.get(at..).and_then(pair) {
            Some(taken) => ("hot and cold", taken),
            None if HOT.contains(piece) => ("hot", 1),
            // `18 kW` is what a heater draws.
            None if COLD.contains(piece) && !(*piece == "kw" && is_counted(said())) => ("cold", 1),
            None => (*piece, 1),
        };
        written.push_str(in_full);
        at += taken;
    }
    written
}

/// Words and what stands between them, in turn.
fn pieces(text: &str) -> Vec<&str> {
    let mut pieces = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let is_word = first.is_alphanumeric();
        let end = rest.find(|letter: char| letter.is_alphanumeric() != is_word).unwrap_or(rest.len());
        let (piece, after) = rest.split_at_checked(end).unwrap_or((rest, ""));
        pieces.push(piece);
        rest = after;
    }
    pieces
}

/// How many pieces a pair takes that begins there: `h&c`, `af y ac`.
fn pair(pieces: &[&str]) -> Option<usize> {
    let is_pair = |one: &str, other: &str| {
        PAIRS.iter().any(|(hot, cold)| (one == *hot && other == *cold) || (one == *cold && other == *hot))
    };
    match pieces {
        // `C/H` is what heats the house.
        ["c", sign, "h", ..] if sign.trim() == "/" => None,
        [one, sign, other, ..] if SIGNS.contains(&sign.trim()) && is_pair(one, other) => Some(3),
        [one, _, and, _, other, ..] if AND.contains(and) && is_pair(one, other) => Some(5),
        _ => None,
    }
}

/// Whether a number stands right before.
fn is_counted<'t>(mut before: impl Iterator<Item = &'t &'t str>) -> bool {
    let (space, number) = (before.next(), before.next());
    let is_space = space.is_some_and(|space| space.trim().is_empty());
    is_space && number.is_some_and(|number| number.ends_with(|letter: char| letter.is_ascii_digit()))
}

#[cfg(test)]
mod tests {
    use super::super::{InWords, Valve, Water};

    #[test]
    fn hot_and_cold_are_read_in_short() {
        for both in [
            "H&C, 1/2\" copper",
            "1/2\" H/C",
            "H+C, 15 mm",
            "h & c, 15 mm",
            "KW/WW, DN 15",
            "WW und KW 1/2\"",
            "PWC und PWH, 16x2",
            "AF y AC, multicapa 20 mm",
            "HW & CW, 1/2\"",
            "DCW/DHW 15 mm",
            "both lines 1/2\", valved",
            "1/2\" supply stops, both",
        ] {
            let water = Water::of_words(both);
            assert!(water.hot && water.cold, "{both}: {water:?}");
        }
        for cold in ["KW 1/2\", Eckventil", "TWK 1/2\" mit Absperrung", "CW 1/2\"", "DN 15 KW", "cold, at both ends"] {
            let water = Water::of_words(cold);
            assert!(water.cold && !water.hot, "{cold}: {water:?}");
        }
        for hot in ["WW 1/2\"", "PWH DN 15", "hot 1/2\", 18 kW heater"] {
            let water = Water::of_words(hot);
            assert!(water.hot && !water.cold, "{hot}: {water:?}");
        }
        for neither in ["C/H flow and return, 15 mm", "1/2\", stubs at both sides", "C, 1/2\"", "1/2\" aircon"] {
            let water = Water::of_words(neither);
            assert!(!water.hot && !water.cold, "{neither}: {water:?}");
        }
    }

    #[test]
    fn a_valve_is_known_by_what_each_country_calls_it() {
        for there in [
            "KW 1/2\", Eckregulierventil",
            "Kombieckventil kalt 3/4\"",
            "Geräteventil 3/4\", kalt",
            "Kaltwasser, Auslaufventil 3/4\"",
            "kalt, Kugelhahn 1/2\"",
            "agua fría, escuadra 1/2\"",
            "agua fría + caliente, grifos de escuadra 1/2\"",
            "DN 15 cold, mini cistern tap",
            "agua fría 3/4\", grifo de lavavajillas",
            "cold 15 mm, cistern cock 150 mm",
            "H+C, 1/2\" copper, isolation cocks",
            "15 mm hot and cold, washing machine taps",
            "hot 3/8\" OD, quarter-turn",
            "H&C, 1/4-turn ball valves",
            "both lines 1/2\", valved",
        ] {
            assert_eq!(Water::of_words(there).valve, Some(Valve::There), "{there}");
        }
        for unsaid in [
            "7/8\" ball cock, cold",
            "cold, Rückschlagventil",
            "two tap tails 1/2\", cold",
            "kalt, Wasserhahn",
            "cold, Sicherheitsventil",
        ] {
            assert_eq!(Water::of_words(unsaid).valve, None, "{unsaid}");
        }
        for missing in ["kalt 1/2\", ohne Eckregulierventil", "cold 15 mm, no cistern cock", "agua fría, sin escuadra"]
        {
            assert_eq!(Water::of_words(missing).valve, Some(Valve::NotThere), "{missing}");
        }
    }
}
