//! How a sink, a basin or a tap is fixed, read from the words of its `mount`.

use super::supply::InWords;
use super::words_of;

/// How a sink or basin is fixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mount {
    /// Under the counter.
    Under,
    /// Into the counter from above, its rim on it.
    DropIn,
    /// With a front of its own, in a base cabinet.
    Apron,
    /// Standing on the counter.
    OnCounter,
    /// On the wall, on the floor, or on a foot or legs of its own: in no cabinet and through no counter.
    InNoCabinet,
}

/// Words by which each is known, the telling ones first.
const WORDS: &[(Mount, &[&str])] = &[
    (Mount::Under, &["under", "beneath", "below the", "unterbau", "unter der", "von unten", "bajo"]),
    (Mount::Apron, &["apron", "farmhouse", "belfast", "butler"]),
    (
        Mount::OnCounter,
        &[
            "vessel",
            "on the counter",
            "on counter",
            "countertop",
            "sit-on",
            "aufsatz",
            "sobre encimera",
            "sobre la encimera",
        ],
    ),
    (
        Mount::InNoCabinet,
        &[
            "wall",
            "floor",
            "pedestal",
            "free",
            "legs",
            "console",
            "brackets",
            "surface",
            "wand",
            "hängend",
            "pared",
            "mural",
            "suspendid",
            "suelo",
        ],
    ),
    (
        Mount::DropIn,
        &[
            "drop",
            "top",
            "inset",
            "self-rim",
            "flush",
            "lay-on",
            "einbau",
            "auflage",
            "flächenbündig",
            "encastr",
            "enrasad",
        ],
    ),
];

/// What else says how a bowl is held, with nothing to be checked of it: by the furniture that it belongs to.
const OF_ITS_FURNITURE: &[&str] =
    &["vanity", "cabinet", "furniture", "mueble", "schrank", "möbel", "integral", "moulded", "molded", "one piece"];

/// Whether words say how a sink or basin is held.
pub fn says_how_it_is_held(words: &str) -> bool {
    let lower = words.to_lowercase();
    Option::<Mount>::of_words(words).is_some() || OF_ITS_FURNITURE.iter().any(|word| lower.contains(word))
}

/// What a base cabinet is called where a bowl stands on it.
const BASE_CABINETS: &[&str] =
    &["cabinet", "cabinets", "unit", "units", "carcass", "carcasses", "carcase", "carcases", "base"];

/// Words that may stand between `on` and the cabinet.
const BETWEEN: &[&str] = &["the", "a", "an", "its", "top", "of", "base", "sink", "sides", "side", "panels"];

/// Whether words say that it stands on its base cabinet: `sits on the carcass`, `on a 600 base unit`.
fn stands_on_its_cabinet(words: &str) -> bool {
    let words = words_of(words);
    let is_between = |word: &&String| BETWEEN.contains(&word.as_str()) || word.chars().any(|one| one.is_ascii_digit());
    let after = |at: usize| {
        let rest = words.get(at + 1..).unwrap_or_default();
        let is_cabinet = |word: &String| BASE_CABINETS.contains(&word.as_str());
        rest.iter().take_while(is_between).any(is_cabinet)
            || rest.iter().find(|word| !is_between(word)).is_some_and(is_cabinet)
    };
    words.iter().enumerate().any(|(at, word)| word == "on" && after(at))
}

impl InWords for Option<Mount> {
    fn of_words(words: &str) -> Self {
        let words = words.to_lowercase();
        let says = |mount: Mount, leave_out: &[&str]| {
            let known = WORDS.iter().filter(|(is, _)| *is == mount).flat_map(|(_, known)| known.iter());
            known.filter(|word| !leave_out.contains(word)).any(|word| words.contains(word))
        };
        // `On top of the cabinet` is no rim that lies on a counter.
        let is_told = says(Mount::OnCounter, &[]) || says(Mount::DropIn, &["top"]) || words.contains("mount");
        if !is_told && stands_on_its_cabinet(&words) {
            return Some(Mount::Apron);
        }
        let known = WORDS.iter().find(|(_, known)| known.iter().any(|word| words.contains(word)));
        known.map(|(mount, _)| *mount)
    }
}

impl Mount {
    /// Whether it hangs in, or is carried by, a base cabinet.
    pub fn is_in_a_cabinet(self) -> bool {
        matches!(self, Self::Under | Self::DropIn | Self::Apron)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_way_is_read_as_its_trade_calls_it() {
        let ways = [
            (
                Mount::Under,
                &["undermount", "beneath the top", "Unterbaubecken", "unter der Arbeitsplatte", "bajo la encimera"][..],
            ),
            (
                Mount::Apron,
                &[
                    "apron front",
                    "Belfast",
                    "on the cabinet",
                    "on top of the carcass",
                    "stands on the base unit",
                    "on the cabinet sides",
                    "sits on carcass, under worktop",
                    "on a 600 base",
                ],
            ),
            (
                Mount::OnCounter,
                &["vessel", "vessel, on the cabinet", "on the counter", "Aufsatzbecken", "sobre encimera"],
            ),
            (Mount::InNoCabinet, &["on the wall", "an der Wand", "suspendido", "pedestal"]),
            (
                Mount::DropIn,
                &[
                    "drop-in",
                    "drop-in, on a 36\" base cabinet",
                    "inset, on a 600 base unit",
                    "top mount on a 36\" base cabinet",
                    "inset",
                    "Einbaubecken",
                    "flächenbündig",
                ],
            ),
        ];
        for (mount, said) in ways {
            for words in said {
                assert_eq!(Option::<Mount>::of_words(words), Some(mount), "{words}");
            }
        }
        assert!(says_how_it_is_held("on the vanity") && says_how_it_is_held("sobre mueble"));
        assert!(!says_how_it_is_held("zzz") && !says_how_it_is_held("as shown"));
    }
}
