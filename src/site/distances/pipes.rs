//! The pipes over a knee space: whether anybody says that they are covered.

use crate::book::{KneeSpace, Pipes, Room, Selection};
use crate::source::Span;
use crate::vocabulary::Kind;

/// Words of an accessory, or of a drain, that cover pipes.
const COVERS: [&str; 6] = ["cover", "covered", "shroud", "insulat", "wrapped", "lagg"];
/// Words that an accessory of that sort names besides.
const PIPES: [&str; 5] = ["pipe", "trap", "supply", "supplies", "drain"];

/// Whether a knee space is one under a basin or a sink: by the name of what is chosen, of its place or kind.
pub fn knees_under_a_bowl(room: &Room, space: &KneeSpace) -> bool {
    bowls(room, space).next().is_some()
}

/// The basins and sinks over a knee space.
pub fn bowls<'a>(room: &'a Room, space: &'a KneeSpace) -> impl Iterator<Item = &'a Selection> + Clone {
    let name = &space.name.value;
    room.selections.iter().filter(move |selection| {
        let kind = selection.kind.get().map_or("", |kind| kind.name());
        let place = selection.place.get().map_or("", String::as_str);
        let named = [selection.name.value.as_str(), kind, place].iter().any(|own| own.eq_ignore_ascii_case(name));
        selection.is_any(&[Kind::Sink, Kind::Basin]) && named
    })
}

/// Whether its pipes are covered, as the space says itself, or by what is ordered with the bowl, or as the drain
/// at its opening is described; none where nobody says.
pub fn pipes_covered(room: &Room, space: &KneeSpace) -> Option<(bool, Span)> {
    if let Some(pipes) = space.pipes.spanned() {
        return Some((pipes.value == Pipes::Covered, pipes.span));
    }
    covered(room, bowls(room, space))
}

/// Whether the pipes of some bowls are covered, by what is ordered with them or as the drain at their opening is
/// described; none where nobody says.
pub fn covered<'a>(room: &'a Room, bowls: impl Iterator<Item = &'a Selection> + Clone) -> Option<(bool, Span)> {
    let says = |phrase: &str, words: &[&str]| words.iter().any(|word| phrase.to_lowercase().contains(word));
    let with = bowls.clone().flat_map(Selection::standing).flat_map(|option| &option.accessories);
    let cover = with.map(|with| &with.name).find(|name| says(name, &COVERS) && says(name, &PIPES));
    let openings = bowls.filter_map(|bowl| room.opening(bowl.place.get()?));
    let mut drains = openings.filter_map(|opening| opening.service.drain.spanned());
    let drain = drains.find(|drain| says(&drain.value.words, &COVERS));
    cover.map(|name| (true, name.span)).or_else(|| drain.map(|drain| (true, drain.span)))
}
