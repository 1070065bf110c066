//! Water, drain and duct: a size, a height, a length, bends.

use crate::units::Length;

/// A pipe or duct, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Pipe {
    /// Its nominal size: the first length.
    pub size: Option<Length>,
    /// Its centre from the finished floor: the length before `AFF`.
    pub height: Option<Length>,
    /// Whether that height is the most that may be.
    pub at_most: bool,
    /// Its length.
    pub run: Option<Length>,
    /// Tight bends of 90°.
    pub bends: u32,
    /// Bends of 45°.
    pub half_bends: u32,
}

impl Pipe {
    /// Reads what can be read.
    pub fn read(text: &str) -> Self {
        let lower = text.to_lowercase();
        let parts: Vec<&str> = lower.split([',', ';']).map(str::trim).collect();
        let size =
            parts.iter().filter(|part| !part.contains("aff") && !part.contains("ft")).find_map(|part| inches(part));
        let high = parts.iter().find(|part| part.contains("aff"));
        Self {
            size,
            height: high.and_then(|part| inches(part.trim_start_matches("at most "))),
            at_most: high.is_some_and(|part| part.contains("at most")),
            run: feet(&lower),
            bends: count(&parts, &["bend", "elbow", "90"], &["45"]),
            half_bends: count(&parts, &["45"], &[]),
        }
    }
}

/// The length in inches with which a phrase begins: `1 1/2" under the tub`.
fn inches(part: &str) -> Option<Length> {
    let end = part.find(['"', '″'])?;
    Length::parse(&format!("{}\"", part[..end].trim())).ok()
}

/// The length in feet anywhere in a text: `40 ft`, `at most 25 ft`.
pub(super) fn feet(lower: &str) -> Option<Length> {
    let at = lower.find("ft")?;
    let before = lower[..at].trim_end();
    let from = before.rfind(|c: char| !c.is_ascii_digit()).map_or(0, |at| at + 1);
    let feet: i64 = before[from..].parse().ok().filter(|feet| *feet <= 3_000)?;
    Some(Length::from_inches(feet * 12))
}

/// How many bends the phrases tell, in figures or words.
fn count(parts: &[&str], named: &[&str], but: &[&str]) -> u32 {
    const WORDS: [&str; 7] = ["no", "one", "two", "three", "four", "five", "six"];
    let told = parts
        .iter()
        .filter(|part| named.iter().any(|name| part.contains(name)) && !but.iter().any(|other| part.contains(other)));
    told.filter_map(|part| {
        let first = part.split_whitespace().next()?;
        let by_word = WORDS.iter().position(|word| *word == first).and_then(|at| u32::try_from(at).ok());
        first.parse().ok().or(by_word)
    })
    .sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(text: &str) -> Option<Length> {
        Some(text.parse().unwrap())
    }

    #[test]
    fn sizes_heights_runs_and_bends_are_read() {
        let duct = Pipe::read("4\" rigid, 9 ft to the yard, two bends");
        assert_eq!((duct.size, duct.run, duct.bends), (length("4\""), length("9'"), 2));
        let drain = Pipe::read("1 1/2\", at most 18\" AFF");
        assert_eq!((drain.size, drain.height, drain.at_most), (length("1 1/2\""), length("18\""), true));
        let dryer = Pipe::read("4\" rigid, 20 ft, 2 elbows, 1 bend of 45");
        assert_eq!((dryer.bends, dryer.half_bends), (2, 1));
        assert_eq!(Pipe::read("to the disposer, air gap at the sink"), Pipe::default());
    }
}
