//! Taps and the bowls that they serve: which belongs to which, and what holes and reach they have.

use crate::book::{DetailName, Hole, ProductOption, Room, Selection};
use crate::source::Span;
use crate::units::{Length, LengthRange};
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
    let told = [tap.name.value.as_str(), option.called.as_str(), option.mount_words(), option.name.text()];
    Mention::ComesOutOfTheWall.is_in_any(told)
}

/// Whether a tap goes through no counter and no rim: it comes out of the wall, or stands on the floor.
pub fn stands_free(tap: &Selection, option: &ProductOption) -> bool {
    option.mount() == Some(Mount::InNoCabinet) || is_on_the_wall(tap, option)
}

/// Whether a tap fills a tub, or serves something else that is no bowl, by its kind or its name.
pub fn serves_no_bowl(tap: &Selection) -> bool {
    tap.is(Kind::TubFiller) || Mention::NoBowl.is_in(&tap.name) && !Mention::Bowl.is_in(&tap.name)
}

/// What a tap serves: the only tub of its room, for one that fills a tub; else its bowl.
pub fn served_by<'a>(room: &'a Room, tap: &Selection) -> Option<&'a Selection> {
    if !tap.is(Kind::TubFiller) {
        return bowl_of(room, tap);
    }
    let mut tubs = room.selections.iter().filter(|selection| selection.is(Kind::Bathtub));
    tubs.next().filter(|_| tubs.next().is_none())
}

/// The bowl that a tap serves: the only one of its room, or the one that its name shares a word with.
/// None where that can't be told.
pub fn bowl_of<'a>(room: &'a Room, tap: &Selection) -> Option<&'a Selection> {
    if serves_no_bowl(tap) {
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

/// The holes that the room lists where a tap may stand: at counters and at what it serves. One that fills a tub or
/// stands free of them has none there but those that name it.
pub fn listed_for<'a>(room: &'a Room, tap: &Selection) -> Vec<&'a Hole> {
    let served = served_by(room, tap);
    let is_another = |selection: &Selection| {
        selection.is_any(&[Kind::Sink, Kind::Basin, Kind::Bathtub])
            && served.is_some_and(|served| served.span != selection.span)
    };
    let free = tap.standing().iter().any(|option| stands_free(tap, option));
    let alone = free || serves_no_bowl(tap);
    let lists = room.selections.iter().filter(|selection| !is_another(selection)).flat_map(Selection::standing);
    lists.flat_map(|option| &option.drilled).filter(|hole| !alone || is_named(tap, hole)).collect()
}

/// The holes of a list that are to be drilled for a tap: those that name it, and those for a tap that name no other.
pub fn drilled_for<'a>(room: &Room, listed: &[&'a Hole], tap: &Selection) -> Vec<&'a Hole> {
    let others = |hole: &Hole| {
        let taps = room.selections.iter().filter(|one| one.is_any(&[Kind::Tap, Kind::TubFiller]));
        taps.filter(|one| one.span != tap.span).any(|other| is_named(other, hole))
    };
    let of_a_tap = |hole: &Hole| [Mention::Tap, Mention::TapHole].iter().any(|is| is.is_in(&hole.purpose));
    let of_any = |hole: &Hole| !serves_no_bowl(tap) && of_a_tap(hole) && !others(hole);
    listed.iter().filter(|hole| is_named(tap, hole) || of_any(hole)).copied().collect()
}

/// Whether a hole is for a tap by its name.
fn is_named(tap: &Selection, hole: &Hole) -> bool {
    let (name, purpose) = (tap.name.value.to_lowercase(), hole.purpose.value.to_lowercase());
    purpose.contains(&name) || name.contains(&purpose)
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
