//! Which gas the trade's words name: one, or both and how.

use super::gas::Both;

/// A kind of gas.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GasKind {
    /// Natural gas, from the main.
    Natural,
    /// Propane or butane, from a tank or a bottle.
    Propane,
}

impl GasKind {
    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Self::Natural => "natural gas",
            Self::Propane => "propane or butane",
        }
    }

    fn other(self) -> Self {
        match self {
            Self::Natural => Self::Propane,
            Self::Propane => Self::Natural,
        }
    }

    /// The kind that a word names.
    fn of_word(word: &str) -> Option<Self> {
        let begins = |known: &[&str]| known.iter().any(|known| word.starts_with(known));
        let propane = begins(&["propan", "butan", "lpg", "bottle", "bombona", "flüssiggas", "fluessiggas", "licuado"])
            || ["glp", "gpl", "g30", "g31", "lp", "tank", "tanks"].contains(&word);
        let natural = begins(&["natural", "naturel", "erdgas", "mains"]) || ["nat", "ng", "g20", "g25"].contains(&word);
        match (natural, propane) {
            (true, _) => Some(Self::Natural),
            (_, true) => Some(Self::Propane),
            _ => None,
        }
    }
}

/// What the words of a supply or of a sheet name.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Kinds {
    /// The one gas, or the one that a thing is made for.
    pub(super) kind: Option<GasKind>,
    /// How it goes with the other one.
    pub(super) both: Option<Both>,
}

/// Words that say of a gas that it is not meant.
const DENIED: [&str; 8] = ["no", "not", "never", "without", "nor", "non", "sin", "formerly"];
/// Words of what turns a thing to another gas, by their beginnings.
const TURNS: [&str; 5] = ["conver", "kit", "ready", "adaptable", "transform"];
/// Words of what comes with a thing, by their beginnings.
const COMES: [&str; 4] = ["includ", "supplied", "comes", "incluid"];

impl Kinds {
    pub(super) fn of(lower: &str) -> Self {
        let lower = lower.replace("l.p.", "lp");
        let words: Vec<&str> =
            lower.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
        let begins = |known: &[&str]| words.iter().any(|word| known.iter().any(|known| word.starts_with(known)));
        let denied = |at: usize| {
            let near = words.get(at.saturating_sub(2)..at).unwrap_or_default();
            near.iter().any(|word| DENIED.contains(word))
        };
        let named = words.iter().enumerate().filter(|(at, _)| !denied(*at));
        let named: Vec<(usize, GasKind)> =
            named.filter_map(|(at, word)| GasKind::of_word(word).map(|kind| (at, kind))).collect();
        let Some((first_at, first)) = named.first().copied() else { return Self::default() };
        if named.iter().all(|(_, kind)| *kind == first) {
            return Self { kind: Some(first), both: None };
        }
        if !begins(&TURNS) {
            return Self { kind: None, both: Some(Both::Either) };
        }
        // `LP convertible, natural gas`: the word before says what it turns into.
        let turns_into = words.get(first_at + 1).is_some_and(|next| TURNS.iter().any(|turns| next.starts_with(turns)));
        let both = if begins(&COMES) { Both::KitComes } else { Both::Convertible };
        Self { kind: Some(if turns_into { first.other() } else { first }), both: Some(both) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_gas_is_named_in_many_words() {
        let kind = |words: &str| Kinds::of(&words.to_lowercase()).kind;
        for words in ["NG 65 MBH", "mains gas, 9 kW", "nat. gas", "Erdgas E", "gas natural", "natural gas, not for LP"]
        {
            assert_eq!(kind(words), Some(GasKind::Natural), "{words}");
        }
        for words in
            ["LPG", "L.P. gas", "Flüssiggas 50 mbar", "bottled gas", "gas licuado", "propane tank, no mains gas"]
        {
            assert_eq!(kind(words), Some(GasKind::Propane), "{words}");
        }
        // Gas that a town makes is neither.
        assert_eq!(kind("town gas"), None);
        assert_eq!(kind("existing tubing, 65 MBH"), None);
    }

    #[test]
    fn of_two_it_is_either_or_what_turns_the_one_into_the_other() {
        let read = |words: &str| Kinds::of(&words.to_lowercase());
        for words in ["natural gas or propane", "NG/LP", "LP or natural gas"] {
            assert_eq!(read(words), Kinds { kind: None, both: Some(Both::Either) }, "{words}");
        }
        for words in
            ["natural gas (LP convertible)", "LP-convertible natural gas", "natural gas, convertible to propane"]
        {
            let wanted = Kinds { kind: Some(GasKind::Natural), both: Some(Both::Convertible) };
            assert_eq!(read(words), wanted, "{words}");
        }
        let kit = Kinds { kind: Some(GasKind::Natural), both: Some(Both::KitComes) };
        assert_eq!(read("natural gas; LP kit included"), kit);
    }
}
