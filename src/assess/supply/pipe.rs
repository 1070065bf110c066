//! Water, drain and duct: a size, a height, a length, bends.

use crate::units::Length;

use super::phrase::{self, Meaning};

/// A pipe or duct, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Pipe {
    /// Its nominal size: the first length of which nothing else is said.
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
        // A distance to a wall or to a neighbour, in the same phrase or in another, is no size.
        let sizes = parts.iter().filter(|part| run(part).is_none()).flat_map(|part| phrase::lengths(part));
        let size = sizes.into_iter().find(|told| told.is == Meaning::Size).map(|told| told.length);
        let high = parts.iter().find(|part| part.contains("aff"));
        Self {
            size,
            height: high.and_then(|part| length(part.trim_start_matches("at most "))),
            at_most: high.is_some_and(|part| part.contains("at most")),
            run: run(&lower),
            bends: count(&parts, &["bend", "elbow", "90"], &["45"]),
            half_bends: count(&parts, &["45"], &[]),
        }
    }
}

/// The length with which a phrase begins: `1 1/2" under the tub`, `38 mm`.
fn length(part: &str) -> Option<Length> {
    let ends = ["\"", "″", "mm", "cm"].into_iter().filter_map(|unit| part.find(unit).map(|at| at + unit.len()));
    Length::parse(part.get(..ends.min()?)?).ok()
}

/// The length in feet or metres anywhere in a text: `40 ft`, `at most 25 ft`, `12 m`.
pub(super) fn run(lower: &str) -> Option<Length> {
    lower.split([',', ';']).find_map(|part| {
        let words: Vec<&str> = part.split_whitespace().collect();
        let apart = words.windows(2).filter(|pair| matches!(pair, [_, "ft" | "m"])).map(<[&str]>::concat);
        let together = words.iter().filter(|word| word.ends_with("ft") || word.ends_with('m')).map(ToString::to_string);
        let runs = apart.chain(together).filter(|run| !run.ends_with("mm") && !run.ends_with("cm"));
        runs.into_iter().find_map(|run| Length::parse(&run).ok())
    })
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
        let soft = Pipe::read("1/4\" soft copper, 8 ft");
        assert_eq!((soft.size, soft.run), (length("1/4\""), length("8'")));
        let metric = Pipe::read("38 mm, at most 457 mm AFF, 12 m, two bends");
        assert_eq!((metric.size, metric.height, metric.run), (length("38 mm"), length("457 mm"), length("12 m")));
        assert_eq!(Pipe::read("3\" flange, 12\" from the finished wall").size, length("3\""));
        assert_eq!(Pipe::read("12\" rough-in").size, None);
        assert_eq!(Pipe::read("to the disposer, air gap at the sink"), Pipe::default());
    }
}
