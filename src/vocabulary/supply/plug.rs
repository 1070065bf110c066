//! Plugs and receptacles: their pattern, as standards name them.

use std::fmt;

/// A pattern of plug and receptacle.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Plug {
    /// As NEMA WD 6 names it: `14-50`, `L6-30`.
    Nema(String),
    /// Of another country's standard.
    Other(PlugStandard),
}

/// Standards of plugs besides those of NEMA (their names from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlugStandard {
    /// Three flat pins and a fuse.
    Bs1363,
    /// Two round pins and earth at the side.
    Schuko,
    /// Two round pins, and earth as a pin of the receptacle's.
    French,
    /// Two slanted flat pins.
    As3112,
    /// Round industrial connectors.
    Iec60309,
    /// Three round pins in a row, of Switzerland.
    Sev1011,
    /// Three round pins in a row, of Italy.
    Cei2350,
    /// Five pins for three phases, of a cooker.
    Perilex,
}

/// Standards with the words that name each, with plain spaces.
const STANDARDS: [(PlugStandard, &[&str]); 8] = [
    (PlugStandard::Bs1363, &["bs 1363", "bs1363", "type g", "uk plug"]),
    (
        PlugStandard::Schuko,
        &[
            "schuko",
            "schukosteckdose",
            "schukosteckdosen",
            "schukostecker",
            "schuko steckdose",
            "schutzkontakt",
            "schutzkontaktsteckdose",
            "schutzkontaktsteckdosen",
            "schutzkontaktstecker",
            "ssd",
            "cee 7/3",
            "cee 7/4",
            "cee 7/7",
            "type f",
            "typ f",
            "tipo f",
            "type e/f",
        ],
    ),
    (PlugStandard::French, &["cee 7/5", "cee 7/6", "type e", "typ e", "tipo e"]),
    (PlugStandard::As3112, &["as 3112", "as/nzs 3112", "as3112", "type i", "gpo", "gpos", "dgpo", "dgpos"]),
    (PlugStandard::Iec60309, &["60309", "commando", "ceeform", "bs 4343"]),
    (PlugStandard::Sev1011, &["sev 1011", "sn 441011", "type j"]),
    (PlugStandard::Cei2350, &["cei 23-50", "type l"]),
    (PlugStandard::Perilex, &["perilex"]),
];

impl Plug {
    /// The pattern that a text names, in small letters with plain hyphens and spaces.
    pub(super) fn of(plain: &str) -> Option<Self> {
        let nema = plain.split(|letter: char| letter.is_whitespace() || ",;()".contains(letter)).find_map(nema);
        let is = |named: &&str| {
            let ends = |at: usize| plain.get(at..).and_then(|rest| rest.chars().next());
            let begins = |at: usize| plain.get(..at).and_then(|before| before.chars().next_back());
            plain.match_indices(*named).any(|(at, _)| {
                let in_a_word = |letter: Option<char>| letter.is_some_and(char::is_alphanumeric);
                !in_a_word(begins(at)) && !in_a_word(ends(at + named.len()))
            })
        };
        let named = STANDARDS.iter().find(|(_, named)| named.iter().any(&is)).map(|(standard, _)| *standard);
        nema.map(Self::Nema).or_else(|| named.or_else(|| by_amperes(plain)).map(Self::Other))
    }

    /// Whether it is the plug of 125 V and 15 A, which goes into every receptacle of that family.
    pub(super) fn is_usual(&self) -> bool {
        matches!(self, Self::Nema(name) if name == "5-15")
    }

    /// Whether it goes into that receptacle: the same, a 15 A plug into the 20 A receptacle of its family, whose neutral
    /// slot takes both (NEMA WD 6, from memory), or a plug that is made for both earths (CEE 7/7, from memory).
    pub fn goes_into(&self, there: &Self) -> bool {
        match (self, there) {
            (Self::Nema(plug), Self::Nema(found)) => {
                plug == found || matches!((plug.as_str(), found.as_str()), ("5-15", "5-20") | ("6-15", "6-20"))
            }
            (Self::Other(PlugStandard::Schuko), Self::Other(PlugStandard::French)) => true,
            _ => self == there,
        }
    }
}

/// What is called by its amperes and a word of its country's: `13 A socket`, `10 amp double power point`.
fn by_amperes(plain: &str) -> Option<PlugStandard> {
    let split = plain.split(|letter: char| !letter.is_alphanumeric());
    let words: Vec<&str> = split.filter(|word| !word.is_empty()).collect();
    let is_unit = |word: &str| ["a", "amp", "amps"].contains(&word);
    words.iter().enumerate().find_map(|(at, word)| {
        let digits = word.trim_end_matches(char::is_alphabetic);
        let unit = word.get(digits.len()..).filter(|unit| !unit.is_empty());
        let after = words.get(at + 1..)?;
        let (unit, after) = match unit {
            Some(unit) => (unit, after),
            None => (*after.first()?, after.get(1..)?),
        };
        let near = || after.iter().take(3);
        let is_power_point = || {
            near().any(|word| word.starts_with("powerpoint"))
                || after.windows(2).take(3).any(|pair| matches!(pair, ["power", "point" | "points"]))
        };
        match digits {
            _ if !is_unit(unit) => None,
            "13" if near().any(|word| ["socket", "sockets", "plug"].contains(word)) => Some(PlugStandard::Bs1363),
            "10" | "15" if is_power_point() => Some(PlugStandard::As3112),
            _ => None,
        }
    })
}

impl fmt::Display for Plug {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Nema(name) => name,
            Self::Other(standard) => standard.name(),
        })
    }
}

impl PlugStandard {
    /// As the standard is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::Bs1363 => "BS 1363",
            Self::Schuko => "Schuko",
            Self::French => "CEE 7/5",
            Self::As3112 => "AS/NZS 3112",
            Self::Iec60309 => "IEC 60309",
            Self::Sev1011 => "SEV 1011",
            Self::Cei2350 => "CEI 23-50",
            Self::Perilex => "Perilex",
        }
    }
}

/// `14-50R` as `14-50`.
fn nema(word: &str) -> Option<String> {
    let word = word.trim_end_matches(['r', 'p']).trim_start_matches("nema");
    let (family, rating) = word.split_once('-')?;
    let digits = |text: &str| !text.is_empty() && text.len() <= 2 && text.bytes().all(|byte| byte.is_ascii_digit());
    let known = matches!(rating, "15" | "20" | "30" | "50" | "60");
    (digits(family.strip_prefix('l').unwrap_or(family)) && known).then(|| word.to_uppercase())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn patterns_of_several_countries_are_read() {
        let read = |words: &str| Plug::of(words).map(|plug| plug.to_string());
        for (words, name) in [
            ("230 v 13 a bs 1363", "BS 1363"),
            ("13a switched socket", "BS 1363"),
            ("230 v 16 a schuko", "Schuko"),
            ("cee 7/4, 16 a", "Schuko"),
            ("16 a blue commando socket, iec 60309", "IEC 60309"),
            ("230 v 10 a gpo", "AS/NZS 3112"),
            ("10 amp power point", "AS/NZS 3112"),
            ("10a dgpo inside tub cupboard, 230 v", "AS/NZS 3112"),
            ("10a double power point", "AS/NZS 3112"),
            ("13 amp switched socket", "BS 1363"),
            ("230 v, 13 a twin socket", "BS 1363"),
            ("13 a fused plug", "BS 1363"),
            ("schutzkontaktsteckdose 16 a, 230 v", "Schuko"),
            ("schukosteckdose 230 v/16 a", "Schuko"),
            ("ssd 230 v 16 a", "Schuko"),
            ("steckdose typ f, 16 a", "Schuko"),
            ("enchufe tipo f, 16 a", "Schuko"),
            ("nema 14-50r", "14-50"),
            ("120 v 15 a 5-15", "5-15"),
        ] {
            assert_eq!(read(words).as_deref(), Some(name), "{words}");
        }
        assert_eq!(read("230 v 13 a"), None);
        assert_eq!(read("type g1"), None);
        for unnamed in [
            "power point",
            "230 v 32 a power point",
            "16 a socket",
            "10 a at the socket",
            "prototype f",
            "a cassd box",
            "mssd",
        ] {
            assert_eq!(read(unnamed), None, "{unnamed}");
        }
    }
}
