//! Which pages go together into one file: a room, an opening or a trade's sheet of a room, all for those who build, or
//! those of one trade.

use crate::book::{Opening, Room};
use crate::vocabulary::Trade;

use super::sheet::SheetFrame;
use crate::shown::trades::Builders;
use crate::views::pages::Subject;
use crate::views::trades::sheets::of_trade;

/// Pages of one folder that are bound together, the first of which gives the title.
#[derive(Debug, PartialEq, Eq)]
pub struct BoundPages {
    /// The folder.
    pub folder: &'static str,
    /// Their paths in it.
    pub paths: Vec<String>,
}

/// The pages that somebody asked for: `ROOM`, `ROOM/OPENING`, `ROOM/TRADE`, `installer`, or the word of a trade; none where
/// the book has nothing of that name.
pub fn pages_of(subject: Subject<'_>, asked: &str) -> Option<BoundPages> {
    // Paths are the same in every language; the first stands at the root of its folder.
    let frame = SheetFrame::of(subject, subject.book.project.language_of_office().words());
    let is_called = |name: &str, asked: &str| name.eq_ignore_ascii_case(asked.trim());
    let room_of = |asked: &str| {
        let mut rooms = subject.book.rooms.iter();
        rooms.find(|room| is_called(&room.folder, asked) || is_called(room.title(), asked))
    };
    if let Some(room) = room_of(asked) {
        let items = room.selections.iter().map(|selection| frame.item_path(room, selection));
        let paths = std::iter::once(frame.room_path(room)).chain(items).collect();
        return Some(BoundPages { folder: "client", paths });
    }
    if let Some((room, opening)) = asked.split_once('/') {
        let room = room_of(room)?;
        let found = room.openings.iter().find(|one| is_called(&one.name, opening));
        let trade = || Builders::of_room(room).find(|trade| is_called(trade.word(), opening));
        let of_trade = || Some(frame.trade_path(room, trade()?.word()));
        let path = found.map(|opening| frame.opening_path(room, opening)).or_else(of_trade)?;
        return Some(BoundPages { folder: "installer", paths: vec![path] });
    }
    let trade = Trade::ALL.into_iter().find(|trade| is_called(trade.word(), asked));
    if trade.is_none() && !is_called("installer", asked) {
        return None;
    }
    let is_of = |room: &Room, opening: &Opening| {
        let mut kinds = opening
            .takes
            .get()
            .into_iter()
            .chain(room.goes_into(&opening.name).filter_map(|selection| selection.kind.get()));
        trade.is_none_or(|trade| kinds.any(|kind| kind.trade() == trade))
    };
    let is_theirs = |builders: &Builders| trade.is_none_or(|trade| of_trade(trade).contains(builders));
    let mut paths: Vec<String> = Vec::new();
    for room in &subject.book.rooms {
        let openings = room.openings.iter().filter(|opening| is_of(room, opening));
        paths.extend(openings.map(|opening| frame.opening_path(room, opening)));
        let theirs = Builders::of_room(room).filter(is_theirs);
        paths.extend(theirs.map(|builders| frame.trade_path(room, builders.word())));
    }
    (!paths.is_empty()).then_some(BoundPages { folder: "installer", paths })
}
