//! A water line: its size, hot or cold, and the valve that shuts it.

use crate::units::Length;

use super::InWords;
use super::lines::in_full;
use super::phrase::{self, Meaning};
use super::pipe::{Pipe, with_nominal_sizes};
use super::valve::{NOT_THERE, Valve, in_one, is_of_a_side, is_valve, valve};
use super::walls::by_its_outside;

/// A water line, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Water {
    /// Its nominal size.
    pub size: Option<Length>,
    /// The thread of a hose or valve, where its words say that a size is that.
    pub thread: Option<Length>,
    /// Whether hot water is named.
    pub hot: bool,
    /// Whether cold water is named.
    pub cold: bool,
    /// Whether one of both will do, where both are named.
    pub either: bool,
    /// Whether something is named that makes it hot there.
    pub heated_there: bool,
    /// What is said of a valve that shuts it.
    pub valve: Option<Valve>,
    /// How far a valve stands out from the wall, where its words say it.
    pub proud: Option<Length>,
    /// Whether there are words that are not understood.
    pub unread: bool,
    /// Its centre from the finished floor.
    pub height: Option<Length>,
}

/// Hot water, by the beginnings of words.
pub(super) const HOT: [&str; 12] =
    ["hot", "caliente", "varm", "warm", "chaud", "acs", "cald", "heet", "quente", "tww", "hws", "dhw"];
/// What makes it hot where it comes out, by the beginnings of words.
const HEATS: [&str; 11] = [
    "heater",
    "boiler",
    "durchlauf",
    "calentador",
    "calienta",
    "untertisch",
    "kleinspeicher",
    "warmwasserg",
    "termo",
    "geyser",
    "chauffe",
];
/// Cold water.
pub(super) const COLD: [&str; 11] =
    ["cold", "fría", "fria", "frío", "kald", "kalt", "froid", "kold", "koud", "kall", "fredd"];
/// Between hot and cold, that one of them will do.
const OR: [&str; 8] = ["or", "either", "oder", "o", "ou", "eller", "may", "can"];
/// What need not be there.
const OPTIONAL: [&str; 5] = ["optional", "opcional", "facultatif", "wahlweise", "valgfritt"];
/// Words of a line that say nothing that is compared: its pipe, its way and its place.
const PLAIN: [&str; 71] = [
    "both",
    "agua",
    "toma",
    "tomas",
    "de",
    "con",
    "del",
    "wasser",
    "mit",
    "and",
    "with",
    "water",
    "line",
    "lines",
    "supply",
    "supplies",
    "pipe",
    "pex",
    "copper",
    "braided",
    "hose",
    "hoses",
    "in",
    "at",
    "a",
    "an",
    "the",
    "of",
    "to",
    "from",
    "off",
    "box",
    "recessed",
    "through",
    "floor",
    "wall",
    "sink",
    "base",
    "cabinet",
    "behind",
    "under",
    "below",
    "above",
    "aff",
    "high",
    "apart",
    "rear",
    "left",
    "right",
    "angle",
    "mm",
    "inch",
    "inches",
    "ft",
    "m",
    "cm",
    "only",
    "feed",
    "bsp",
    "og",
    "y",
    "on",
    "is",
    "dishwasher",
    "washer",
    "corner",
    "side",
    "each",
    "bar",
    "psi",
    "main",
];
/// Words of a thread rather than of a pipe.
const THREADS: [&str; 8] = ["bsp", "hose", "thread", "threaded", "ght", "g3", "rosca", "fht"];

impl InWords for Water {
    fn of_words(words: &str) -> Self {
        let words = &in_full(&with_nominal_sizes(&in_one(&by_its_outside(&words.to_lowercase())), in_inches));
        let lower = phrase::with_points(words);
        let parts: Vec<Vec<&str>> = lower.split([',', ';', '(', ')']).map(words_of).collect();
        let is_optional = |part: &&Vec<&str>| part.iter().any(|word| OPTIONAL.contains(word));
        let needed = || parts.iter().filter(|part| !is_optional(part)).flatten();
        let names = |named: &[&str]| needed().any(|word| begins(word, named));
        let both_alone = !names(&HOT) && !names(&COLD) && parts.iter().any(names_both);
        let is_thread = |part: &&str| words_of(part).iter().any(|word| THREADS.contains(word));
        let threads = lower.split([',', ';']).filter(is_thread);
        let thread = threads.flat_map(phrase::lengths).find(|told| told.is == Meaning::Size).map(|told| told.length);
        let read = Self {
            size: if thread.is_some() { None } else { Pipe::of_words(&without_ballcock(&lower)).size },
            thread,
            hot: names(&HOT) || is_a_pair(&parts) && names(&COLD) || both_alone,
            cold: names(&COLD) || is_a_pair(&parts) && names(&HOT) || both_alone,
            either: names(&HOT) && names(&COLD) && needed().any(|word| OR.contains(word)),
            heated_there: names(&HEATS),
            valve: valve(&parts),
            proud: phrase::proud(words),
            unread: false,
            height: phrase::height(words),
        };
        // Where nothing at all is understood, it is as if nothing were written.
        let unread = read != Self::default() && parts.iter().flatten().any(|word| !is_read(word));
        Self { unread, ..read }
    }
}

/// The phrases that tell of the line: the thread of a toilet's ballcock is no pipe's size.
fn without_ballcock(lower: &str) -> String {
    let is_ballcock = |part: &&str| ["ballcock", "ball cock", "fill valve"].iter().any(|word| part.contains(word));
    lower.split([',', ';']).filter(|part| !is_ballcock(part)).collect::<Vec<_>>().join(",")
}

/// Whether there are two lines, of which one is named by its side: `two tails, hot left`.
fn is_a_pair(parts: &[Vec<&str>]) -> bool {
    let two = |part: &Vec<&str>| matches!(part.as_slice(), ["two" | "dos" | "zwei", ..]);
    let at_a_side = |part: &Vec<&str>| {
        let other = |word: &&&str| !["on", "at", "the", "to"].contains(*word);
        match part.iter().filter(other).collect::<Vec<_>>().as_slice() {
            [one, other] => is_of_a_side(one) && ["left", "right"].contains(*other),
            _ => false,
        }
    };
    parts.iter().any(two) && parts.iter().any(at_a_side)
}

/// `both lines 1/2"`, and not `stubs at both sides`.
fn names_both(part: &Vec<&str>) -> bool {
    let places = ["sides", "side", "ends", "end", "walls", "corners", "machines", "appliances"];
    let at = part.iter().position(|word| ["both", "ambas", "beide"].contains(word));
    at.is_some_and(|at| !part.get(at + 1).is_some_and(|next| places.contains(next)))
}

/// Words and figures of a phrase.
pub(super) fn words_of(part: &str) -> Vec<&str> {
    part.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).collect()
}

pub(super) fn begins(word: &str, named: &[&str]) -> bool {
    named.iter().any(|named| word.starts_with(named))
}

fn is_read(word: &str) -> bool {
    let is_a_figure = word.starts_with(|letter: char| letter.is_numeric());
    let is_named = begins(word, &HOT) || begins(word, &COLD) || is_valve(word);
    let is_named = is_named || OR.contains(&word) || OPTIONAL.contains(&word);
    is_a_figure || is_named || PLAIN.contains(&word) || THREADS.contains(&word) || NOT_THERE.contains(&word)
}

/// Pipes that go by their outside in millimetres, and the eighths of an inch of the nominal size that each is: 15 mm is
/// 1/2" (EN 1057, ISO 228, from memory).
const NOMINAL: [(i64, i64); 10] =
    [(8, 2), (10, 3), (12, 3), (15, 4), (16, 4), (18, 4), (20, 4), (22, 6), (25, 6), (28, 8)];

/// A water line that is called by its inside in millimetres, in inches (ISO 6708 and EN 10255, from memory).
fn in_inches(size: u32) -> Option<String> {
    let inches = match size {
        8 => "1/4",
        10 => "3/8",
        15 => "1/2",
        20 => "3/4",
        25 => "1",
        32 => "1 1/4",
        _ => return None,
    };
    Some(format!("{inches}\""))
}

/// The nominal size of a pipe in eighths of an inch, where it is named by one, or by its outside in millimetres.
fn nominal(size: Length) -> Option<i64> {
    let metric = NOMINAL.iter().find(|(millimetres, _)| Length::from_millimetres(*millimetres) == size);
    let eighths = (1..=16).find(|eighths| Length::from_sixty_fourths(eighths * 8) == size);
    metric.map(|(_, eighths)| *eighths).or(eighths)
}

/// Whether one line is smaller than another, each by what its size is called.
pub fn is_smaller(one: Length, other: Length) -> bool {
    match (nominal(one), nominal(other)) {
        (Some(one), Some(other)) => one < other,
        _ => one < other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_valve_is_there_missing_or_not_told() {
        let valve = |words: &str| Water::of_words(words).valve;
        for words in [
            "3/8\" hot, shutoff valve",
            "Shut-off",
            "stopcock",
            "isolating valve",
            "angle stop",
            "toma de agua fría 3/4\" con llave de corte",
            "15 mm cold with valve",
        ] {
            assert_eq!(valve(words), Some(Valve::There), "{words}");
        }
        for words in [
            "3/8\" hot, no shut-off",
            "shut-off missing",
            "cold, shut-off still to come",
            "stopcock seized",
            "no isolator yet",
            "agua caliente, sin llave",
        ] {
            assert_eq!(valve(words), Some(Valve::NotThere), "{words}");
        }
        assert_eq!(valve("3/8\" hot"), None);
    }

    #[test]
    fn two_tails_are_hot_and_cold_and_a_ballcock_is_no_line() {
        let read = |words: &str| (Water::of_words(words).hot, Water::of_words(words).cold);
        assert_eq!(read("two 15 mm tails, ball-o-fix valves, hot left"), (true, true));
        assert_eq!(read("two 15 mm tails, hot at the left"), (true, true));
        assert_eq!(read("15 mm tail, hot left"), (true, false));
        assert_eq!(read("two tails, hot"), (true, false));
        let size = |words: &str| Water::of_words(words).size;
        assert_eq!(size("7/8\" ballcock, 3/8\" supply"), Some("3/8\"".parse().unwrap()));
        assert_eq!(size("3/4\" cold"), Some("3/4\"".parse().unwrap()));
    }

    #[test]
    fn hot_and_cold_are_read_in_other_languages_and_other_words_stay_unread() {
        let read =
            |words: &str| (Water::of_words(words).hot, Water::of_words(words).cold, Water::of_words(words).unread);
        assert_eq!(read("15 mm kaldt og varmt"), (true, true, false));
        assert_eq!(read("agua caliente 3/4\""), (true, false, false));
        assert_eq!(read("colector caliente 3/4\""), (true, false, true));
        assert_eq!(read("3/8\" hot and cold, 20\" AFF"), (true, true, false));
        assert_eq!(Water::of_words("existing"), Water::default());
        for either in ["hot or cold", "cold or hot (max 60 C)", "kalt oder warm", "fría o caliente", "hot and/or cold"]
        {
            assert!(Water::of_words(either).either, "{either}");
        }
        for both in ["hot and cold", "1/2\" hot & cold", "caliente y fría", "hot"] {
            assert!(!Water::of_words(both).either, "{both}");
        }
        assert!(Water::of_words("cold; may be connected to hot up to 60 °C").either);
        let optional = Water::of_words("cold (hot optional)");
        assert_eq!((optional.hot, optional.cold, optional.either), (false, true, false));
    }

    /// Source: EN 1057 and ISO 228 (15 mm outside is 1/2" nominal), from memory.
    #[test]
    fn a_pipe_goes_by_its_inside_in_inches_and_by_its_outside_in_millimetres() {
        let smaller = |one: &str, other: &str| is_smaller(one.parse().unwrap(), other.parse().unwrap());
        assert!(!smaller("1/2\"", "15 mm") && !smaller("15 mm", "1/2\"") && !smaller("22 mm", "3/4\""));
        assert!(smaller("10 mm", "15 mm") && smaller("1/4\"", "3/8\"") && smaller("15 mm", "3/4\""));
    }

    #[test]
    fn a_line_that_is_called_by_a_number_alone_has_its_size() {
        assert_eq!(Water::of_words("kalt, DN 15").size, Some("1/2\"".parse().unwrap()));
        for words in ["KW/WW 16 x 2 mm", "hot and cold, 16 x 2.0 mm PEX", "kalt 16/2 mm", "cold, 16x2"] {
            assert_eq!(Water::of_words(words).size, Some("16 mm".parse().unwrap()), "{words}");
        }
        assert_eq!(Water::of_words("DN20 kalt").size, Some("3/4\"".parse().unwrap()));
    }

    #[test]
    fn a_thread_is_no_pipe_and_how_far_a_valve_stands_out_is_read() {
        let hose = Water::of_words("3/4\" BSP hose, cold");
        assert_eq!((hose.size, hose.thread), (None, Some("3/4\"".parse().unwrap())));
        assert_eq!(Water::of_words("1/4\", surface valve 3\" proud").proud, Some("3\"".parse().unwrap()));
        assert_eq!(Water::of_words("1/4\" with shut-off").proud, None);
    }
}
