//! Taps and the bowls that they serve: which belongs to which, and what holes and reach they have.

use crate::book::{DetailName, Hole, ProductOption, Room, Selection};
use crate::source::Span;
use crate::units::{Length, LengthRange};
use crate::vocabulary::supply::Worded;
use crate::vocabulary::{Kind, Mention, Mount, words_of};

/// Whether a tap comes with an option, as it says of itself or of what is ordered with it.
pub fn comes_with(option: &ProductOption) -> bool {
    let own = [option.name.text(), option.description.text()];
    let with = option.accessories.iter().map(|with| with.name.as_str());
    let required = option.requires.iter().map(|required| required.value.as_str());
    own.into_iter().chain(with).chain(required).any(|phrase| Mention::Tap.is_in(phrase))
}

/// Whether something of an option covers a hole, or goes through it.
pub fn fills_a_hole(option: &ProductOption) -> bool {
    let with = option.accessories.iter().map(|with| with.name.as_str());
    let required = option.requires.iter().map(|required| required.value.as_str());
    with.chain(required).any(|phrase| Mention::FillsAHole.is_in(phrase))
}

/// Whether a tap comes out of the wall.
pub fn is_on_the_wall(tap: &Selection, option: &ProductOption) -> bool {
    let mount = option.fact::<Worded<Option<Mount>>>().map_or("", |(mount, _)| mount.words.as_str());
    Mention::Wall.is_in_any([tap.name.value.as_str(), mount, option.name.text()])
}

/// The bowl that a tap serves: the only one of its room, or the one that its name shares a word with.
/// None where that can't be told.
pub fn bowl_of<'a>(room: &'a Room, tap: &Selection) -> Option<&'a Selection> {
    if Mention::NoBowl.is_in(&tap.name) && !Mention::Bowl.is_in(&tap.name) {
        return None;
    }
    let bowls: Vec<&Selection> =
        room.selections.iter().filter(|selection| selection.is_any(&[Kind::Sink, Kind::Basin])).collect();
    if let [only] = bowls.as_slice() {
        return Some(only);
    }
    let shared = |bowl: &&&Selection| {
        let kind = bowl.kind.get().map_or("", |kind| kind.name());
        let own: Vec<String> =
            words_of(&bowl.name).into_iter().chain(words_of(kind)).chain(words_of(bowl.place.text())).collect();
        let named = |word: String| !Mention::Tap.is_in(&word) && own.contains(&word);
        words_of(&tap.name).into_iter().any(named)
            || tap.place.get().is_some_and(|place| bowl.place.get() == Some(place))
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
        purpose.contains(&name) || name.contains(&purpose) || Mention::Tap.is_in(&purpose)
    };
    listed.iter().filter(is_its).copied().collect()
}

/// How many holes a tap takes, or a bowl has.
pub fn holes(option: &ProductOption) -> Option<(usize, Span)> {
    let (holes, at) = option.count(DetailName::Holes)?;
    Some((usize::try_from(holes).ok()?, at))
}

/// The distance between outer holes, as far as its words can be understood in one way.
pub fn spread(option: &ProductOption) -> Option<(LengthRange, Span)> {
    let (spread, at) = option.understood::<Option<LengthRange>>()?;
    Some(((*spread)?, at))
}

/// Whether two spreads have a length in common, but for that much.
pub fn meet(one: LengthRange, other: LengthRange, play: Length) -> bool {
    let below =
        |least: Option<Length>, most: Option<Length>| least.zip(most).is_some_and(|(least, most)| least > most + play);
    !below(one.least, other.most) && !below(other.least, one.most)
}
