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

/// Standards with the words that name each, with plain spaces; a figure with its unit stands apart.
const STANDARDS: [(PlugStandard, &[&str]); 8] = [
    (
        PlugStandard::Bs1363,
        &[
            "bs 1363",
            "bs1363",
            "type g",
            "13 a socket",
            "13 a plug",
            "13 a switched socket",
            "13 a fused plug",
            "uk plug",
        ],
    ),
    (PlugStandard::Schuko, &["schuko", "cee 7/3", "cee 7/4", "cee 7/7", "type f", "type e/f"]),
    (PlugStandard::French, &["cee 7/5", "cee 7/6", "type e"]),
    (PlugStandard::As3112, &["as 3112", "as/nzs 3112", "as3112", "type i", "gpo"]),
    (PlugStandard::Iec60309, &["60309", "commando", "ceeform", "bs 4343"]),
    (PlugStandard::Sev1011, &["sev 1011", "sn 441011", "type j"]),
    (PlugStandard::Cei2350, &["cei 23-50", "type l"]),
    (PlugStandard::Perilex, &["perilex"]),
];

impl Plug {
    /// The pattern that a text names, in small letters with plain hyphens and spaces.
    pub(super) fn of(plain: &str) -> Option<Self> {
        let nema = plain.split(|letter: char| letter.is_whitespace() || ",;()".contains(letter)).find_map(nema);
        let apart = plain.replace("13a", "13 a");
        let is = |named: &&str| {
            let ends = |at: usize| apart.get(at..).and_then(|rest| rest.chars().next());
            apart.match_indices(*named).any(|(at, _)| !ends(at + named.len()).is_some_and(char::is_alphanumeric))
        };
        let other = STANDARDS.iter().find(|(_, named)| named.iter().any(&is));
        nema.map(Self::Nema).or_else(|| other.map(|(standard, _)| Self::Other(*standard)))
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
            ("nema 14-50r", "14-50"),
            ("120 v 15 a 5-15", "5-15"),
        ] {
            assert_eq!(read(words).as_deref(), Some(name), "{words}");
        }
        assert_eq!(read("230 v 13 a"), None);
        assert_eq!(read("type g1"), None);
    }
}
