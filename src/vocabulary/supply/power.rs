//! Power: volts, amperes, receptacle.

use crate::units::Length;

use super::InWords;
use super::figure::{Amount, Figure, Figures, Unit};
use super::phrase;

/// A supply of power, as far as its words can be read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Power {
    /// Each voltage named: `120/240 V` names two.
    pub volts: Vec<u32>,
    /// Amperes.
    pub amps: Option<Amount>,
    /// Watts.
    pub watts: Option<Amount>,
    /// The receptacle's pattern, as NEMA WD 6 names it: `14-50`, `L6-30`.
    pub pattern: Option<String>,
    /// Connected without a plug.
    pub hardwired: bool,
    /// In a recessed box.
    pub recessed: bool,
    /// Its centre from the finished floor.
    pub height: Option<Length>,
}

impl InWords for Power {
    fn of_words(words: &str) -> Self {
        let lower = words.to_lowercase();
        let figures = Figures::of(words);
        Self {
            volts: figures.all(Unit::Volt).flat_map(Figure::each).collect(),
            amps: figures.whole(Unit::Ampere),
            watts: figures.in_thousandths(Unit::Kilowatt).or_else(|| figures.whole(Unit::Watt)),
            pattern: lower.split(|letter: char| letter.is_whitespace() || ",;()".contains(letter)).find_map(pattern),
            hardwired: ["hardwired", "hard-wired", "hard wired"].iter().any(|word| plain(&lower).contains(word)),
            recessed: lower.contains("recessed"),
            height: phrase::height(words),
        }
    }
}

impl Power {
    /// Whether a plug of this pattern goes into a receptacle of the other: the same, or a 15 A plug into
    /// the 20 A receptacle of its family, whose neutral slot takes both (NEMA WD 6, from memory).
    pub fn plugs_into(&self, there: &Self) -> Option<bool> {
        let (asked, found) = (self.pattern.as_deref()?, there.pattern.as_deref()?);
        Some(asked == found || matches!((asked, found), ("5-15", "5-20") | ("6-15", "6-20")))
    }
}

/// With plain hyphens and plain spaces.
fn plain(text: &str) -> String {
    text.chars()
        .map(|letter| match letter {
            '‐' | '‑' | '‒' | '–' => '-',
            space if space.is_whitespace() => ' ',
            other => other,
        })
        .collect()
}

/// `14-50R` as `14-50`.
fn pattern(word: &str) -> Option<String> {
    let word = plain(word);
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
    fn the_trade_s_words_are_read() {
        let whole = |amount: Option<Amount>| amount.map(Amount::taken);
        let power = Power::of_words("120 V 15 A 5-15");
        assert_eq!((power.volts, whole(power.amps), power.pattern), (vec![120], Some(15), Some("5-15".into())));
        let range = Power::of_words("120/240 V, 50 A, NEMA 14-50R, 11.2 kW");
        assert_eq!((range.volts, whole(range.amps), whole(range.watts)), (vec![120, 240], Some(50), Some(11_200)));
        assert_eq!(range.pattern, Some("14-50".into()));
        assert_eq!(Power::of_words("240V 30A L6-30").pattern, Some("L6-30".into()));
        assert!(Power::of_words("240 V 40 A, hard-wired").hardwired);
        assert!(Power::of_words("120 V 20 A 5-20, recessed at the rear").recessed);
        assert_eq!(Power::of_words("as the sheet says"), Power::default());
        assert_eq!(whole(Power::of_words("1500 W at 120 V").watts), Some(1500));
    }

    #[test]
    fn a_plug_of_15_a_goes_into_the_receptacle_of_20() {
        let read = Power::of_words;
        assert_eq!(read("5-15").plugs_into(&read("5-20")), Some(true));
        assert_eq!(read("5-20").plugs_into(&read("5-15")), Some(false));
        assert_eq!(read("14-50").plugs_into(&read("10-50")), Some(false));
        assert_eq!(read("14-50").plugs_into(&read("240 V")), None);
    }
}
