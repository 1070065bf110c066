//! What is built in behind walls and floors, and so is needed before they are closed, whatever else waits for it.

use std::collections::BTreeSet;

use crate::book::{Book, DetailName, ProductOption, Room, Selection};
use crate::source::Span;
use crate::vocabulary::{Kind, Mention, Mount};

use super::depends::names_valve;

/// The selections of a book of which something is built in (trade practice: F-87), by where they are written.
pub fn all(book: &Book) -> BTreeSet<Span> {
    let is_one = |(room, selection): &(&Room, &Selection)| is_built_in(room, selection);
    book.selections().filter(is_one).map(|(_, selection)| selection.span).collect()
}

fn is_built_in(room: &Room, selection: &Selection) -> bool {
    let any = |of: &dyn Fn(&ProductOption) -> bool| selection.standing().iter().any(of);
    let has_valve = |option: &ProductOption| option.detail(DetailName::Valve).is_some();
    // The trim of a valve that is bought by itself is put on when the wall is finished.
    let is_trim = || room.selections.iter().any(|valve| names_valve(selection, valve));
    match selection.kind.get() {
        Some(Kind::ShowerSet) => !is_trim(),
        Some(Kind::Tap | Kind::TubFiller) => any(&has_valve) && !is_trim(),
        Some(Kind::ShowerTray | Kind::Drain) => true,
        // Its plate is pressed on last.
        Some(Kind::Cistern) => !any(&|option| Mention::Plate.is_in(&option.called)),
        // One that stands free is set on the finished floor.
        Some(Kind::Bathtub) => !any(&stands_free),
        _ => false,
    }
}

fn stands_free(tub: &ProductOption) -> bool {
    tub.mount() == Some(Mount::InNoCabinet) || Mention::StandsFree.is_in_any([tub.called.as_str(), tub.mount_words()])
}
