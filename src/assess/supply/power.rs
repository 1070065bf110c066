//! Power: volts, amperes, receptacle.

use super::number_before;

/// A supply of power, as far as its words can be read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Power {
    /// Each voltage named: `120/240 V` names two.
    pub volts: Vec<u32>,
    /// Amperes.
    pub amps: Option<u32>,
    /// Watts.
    pub watts: Option<u32>,
    /// The receptacle's pattern, as NEMA WD 6 names it: `14-50`, `L6-30`.
    pub pattern: Option<String>,
    /// Connected without a plug.
    pub hardwired: bool,
    /// In a recessed box.
    pub recessed: bool,
}

impl Power {
    /// Reads what can be read.
    pub fn read(text: &str) -> Self {
        let lower = text.to_lowercase();
        Self {
            volts: volts(&lower),
            amps: number_before(text, &["a", "amp", "amps", "ampere", "amperes"]),
            watts: watts(&lower),
            pattern: lower.split([' ', ',', ';', '(', ')']).find_map(pattern),
            hardwired: ["hardwired", "hard-wired", "hard wired"].iter().any(|word| lower.contains(word)),
            recessed: lower.contains("recessed"),
        }
    }

    /// Whether a plug of this pattern goes into a receptacle of the other: the same, or a 15 A plug into
    /// the 20 A receptacle of its family, whose neutral slot takes both (NEMA WD 6, from memory).
    pub fn plugs_into(&self, there: &Self) -> Option<bool> {
        let (asked, found) = (self.pattern.as_deref()?, there.pattern.as_deref()?);
        Some(asked == found || matches!((asked, found), ("5-15", "5-20") | ("6-15", "6-20")))
    }
}

/// Each number of a list such as `120/240 V`.
fn volts(lower: &str) -> Vec<u32> {
    let Some(at) = lower.match_indices('v').map(|(at, _)| at).find(|at| {
        lower[..*at].trim_end().ends_with(|c: char| c.is_ascii_digit())
            && !lower[at + 1..].starts_with(|c: char| c.is_alphanumeric() && c != 'a')
    }) else {
        return vec![];
    };
    let before = lower[..at].trim_end();
    let from = before.rfind(|c: char| !c.is_ascii_digit() && c != '/').map_or(0, |at| at + 1);
    before[from..].split('/').filter_map(|figures| figures.parse().ok()).collect()
}

/// `11.2 kW` or `1500 W`.
fn watts(lower: &str) -> Option<u32> {
    if let Some(at) = lower.find("kw") {
        let before = lower[..at].trim_end();
        let from = before.rfind(|c: char| !c.is_ascii_digit() && c != '.').map_or(0, |at| at + 1);
        let (whole, part) = before[from..].split_once('.').unwrap_or((&before[from..], ""));
        let part: String = part.chars().chain("000".chars()).take(3).collect();
        return whole.parse::<u32>().ok()?.checked_mul(1000)?.checked_add(part.parse().ok()?);
    }
    number_before(lower, &["w", "watts"])
}

/// `14-50R` as `14-50`.
fn pattern(word: &str) -> Option<String> {
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
        let power = Power::read("120 V 15 A 5-15");
        assert_eq!((power.volts, power.amps, power.pattern), (vec![120], Some(15), Some("5-15".into())));
        let range = Power::read("120/240 V, 50 A, NEMA 14-50R, 11.2 kW");
        assert_eq!((range.volts, range.amps, range.watts), (vec![120, 240], Some(50), Some(11_200)));
        assert_eq!(range.pattern, Some("14-50".into()));
        assert_eq!(Power::read("240V 30A L6-30").pattern, Some("L6-30".into()));
        assert!(Power::read("240 V 40 A, hard-wired").hardwired);
        assert!(Power::read("120 V 20 A 5-20, recessed at the rear").recessed);
        assert_eq!(Power::read("as the sheet says"), Power::default());
        assert_eq!(Power::read("1500 W at 120 V").watts, Some(1500));
    }

    #[test]
    fn a_plug_of_15_a_goes_into_the_receptacle_of_20() {
        let read = Power::read;
        assert_eq!(read("5-15").plugs_into(&read("5-20")), Some(true));
        assert_eq!(read("5-20").plugs_into(&read("5-15")), Some(false));
        assert_eq!(read("14-50").plugs_into(&read("10-50")), Some(false));
        assert_eq!(read("14-50").plugs_into(&read("240 V")), None);
    }
}
