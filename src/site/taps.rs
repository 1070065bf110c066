//! Taps and the bowls that they serve: which belongs to which, and what holes and reach they have.

use crate::book::{Hole, ProductOption, Room, Selection};
use crate::source::Span;
use crate::units::{Length, LengthRange};
use crate::vocabulary::{Kind, supply};

/// Words for a tap.
const TAP: &[&str] = &["tap", "taps", "faucet", "faucets", "mixer", "mixers"];
/// Words of a tap's name that say it serves no bowl.
const NO_BOWL: &[&str] = &["tub", "bath", "bathtub", "pot", "shower", "hose", "garden"];
/// Words that cover a hole that nothing goes through, or name what else goes through one.
const FILLS_A_HOLE: &[&str] =
    &["plate", "escutcheon", "cover", "plug", "stopper", "soap", "dispenser", "spray", "sprayer", "gap", "button"];

/// The words of a phrase, in lower case.
fn words(phrase: &str) -> impl Iterator<Item = String> {
    let lower = phrase.to_lowercase();
    let words: Vec<String> = lower
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect();
    words.into_iter()
}

fn says(phrase: &str, known: &[&str]) -> bool {
    words(phrase).any(|word| known.contains(&word.as_str()))
}

/// Whether a tap comes with an option, as it says of itself or of what is ordered with it.
pub fn comes_with(option: &ProductOption) -> bool {
    let own = [option.name.text(), option.description.text()];
    let with = option.accessories.iter().map(|with| with.name.as_str());
    let required = option.requires.iter().map(|required| required.value.as_str());
    own.into_iter().chain(with).chain(required).any(|phrase| says(phrase, TAP))
}

/// Whether something of an option covers a hole, or goes through it.
pub fn fills_a_hole(option: &ProductOption) -> bool {
    let with = option.accessories.iter().map(|with| with.name.as_str());
    let required = option.requires.iter().map(|required| required.value.as_str());
    with.chain(required).any(|phrase| says(phrase, FILLS_A_HOLE))
}

/// Whether a tap comes out of the wall.
pub fn is_on_the_wall(tap: &Selection, option: &ProductOption) -> bool {
    let mount = option.words("mount").map_or("", |(words, _)| words);
    says(&tap.name, &["wall"]) || says(mount, &["wall"]) || says(option.name.text(), &["wall"])
}

/// The bowl that a tap serves: the only one of its room, or the one that its name shares a word with.
/// None where that can't be told.
pub fn bowl_of<'a>(room: &'a Room, tap: &Selection) -> Option<&'a Selection> {
    if says(&tap.name, NO_BOWL) && !says(&tap.name, &["basin", "sink", "lavatory", "vanity"]) {
        return None;
    }
    let bowls: Vec<&Selection> =
        room.selections.iter().filter(|selection| selection.is_any(&[Kind::Sink, Kind::Basin])).collect();
    if let [only] = bowls.as_slice() {
        return Some(only);
    }
    let shared = |bowl: &&&Selection| {
        let kind = bowl.kind.get().map_or("", |kind| kind.name());
        let own: Vec<String> = words(&bowl.name).chain(words(kind)).chain(words(bowl.place.text())).collect();
        let named = |word: String| !TAP.contains(&word.as_str()) && own.contains(&word);
        words(&tap.name).any(named) || tap.place.get().is_some_and(|place| bowl.place.get() == Some(place))
    };
    let mut fitting = bowls.iter().filter(shared);
    match (fitting.next(), fitting.next()) {
        (Some(bowl), None) => Some(bowl),
        _ => None,
    }
}

/// The holes that are to be drilled for a tap, wherever the room lists them.
pub fn drilled_for<'a>(listed: &[&'a Hole], tap: &Selection) -> Vec<&'a Hole> {
    let name = tap.name.value.to_lowercase();
    let is_its = |hole: &&&Hole| {
        let purpose = hole.purpose.value.to_lowercase();
        purpose.contains(&name) || name.contains(&purpose) || TAP.contains(&purpose.as_str())
    };
    listed.iter().filter(is_its).copied().collect()
}

/// How many holes a tap takes, or a bowl has.
pub fn holes(option: &ProductOption) -> Option<(usize, Span)> {
    let (words, at) = option.words("holes")?;
    Some((words.trim().parse().ok()?, at))
}

/// The distance between outer holes, as far as its words can be understood in one way.
pub fn spread(option: &ProductOption) -> Option<(LengthRange, Span)> {
    let (words, at) = option.words("spread")?;
    if let Ok(range) = LengthRange::parse(words) {
        return Some((range, at));
    }
    match supply::lengths(words).as_slice() {
        [one] => Some((LengthRange::exactly(one.length), at)),
        [one, other] if one.length < other.length => {
            LengthRange::between(one.length, other.length).ok().map(|range| (range, at))
        }
        _ => None,
    }
}

/// Whether two spreads have a length in common, but for that much.
pub fn meet(one: LengthRange, other: LengthRange, play: Length) -> bool {
    let below =
        |least: Option<Length>, most: Option<Length>| least.zip(most).is_some_and(|(least, most)| least > most + play);
    !below(one.least, other.most) && !below(other.least, one.most)
}
