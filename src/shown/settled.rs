//! The layout of a counter as it was shown for approval: what measuring moves by little is drawn and signed as before,
//! and cut as it was measured.

use crate::book::{Book, Room, Selection};
use crate::ledger::Purpose;
use crate::site::layout::CounterLayout;
use crate::units::Length;
use crate::vocabulary::{ShownValue, Words};

use super::ShownItem;
use super::field::MarkedField;

/// By how much ends and seams may move before a layout is another to decide on (1/2"). Common practice: stone is cut
/// from a template that is taken when the cabinets stand, so that what is signed is where pieces lie, not their cut.
const BY_MEASURING: Length = Length::from_sixty_fourths(32);

/// A layout with its ends and seams as the newest issue for approval has them, and by how much the book has them
/// elsewhere by now; as it is, where they moved further or something else is another.
pub fn as_shown(book: &Book, room: &Room, selection: &Selection, laid: CounterLayout) -> (CounterLayout, Length) {
    let as_now = (laid.clone(), Length::ZERO);
    let issue = book.record.latest_for(Purpose::Approval);
    let Some(issued) = issue.and_then(|issue| issue.item(&room.folder, &selection.id)) else { return as_now };
    let ShownItem(issued) = ShownItem::as_issued(&issued.content);
    let name = laid.on.clone();
    let all = issued.get(MarkedField::CounterLayout.word()).map_or(&[][..], ShownValue::values);
    let Some(before) = all.iter().find(|one| text(one, "name") == name.as_deref()) else { return as_now };
    settled(laid, before).unwrap_or(as_now)
}

fn settled(mut laid: CounterLayout, before: &ShownValue) -> Option<(CounterLayout, Length)> {
    let listed = |key: &str| before.get(key).map_or(&[][..], ShownValue::values);
    let (pieces, let_in, seams) = (listed("pieces"), listed("let in"), listed("seams"));
    if (pieces.len(), let_in.len(), seams.len()) != (laid.pieces.len(), laid.let_in.len(), laid.seams.len()) {
        return None;
    }
    let mut most = Length::ZERO;
    let mut keep = |now: &mut Length, then: Option<Length>| {
        let then = then?;
        let by = (*now - then).abs();
        most = most.max(by);
        *now = then;
        (by <= BY_MEASURING).then_some(())
    };
    for (piece, then) in laid.pieces.iter_mut().zip(pieces) {
        keep(&mut piece.from, length(then, "left end"))?;
        keep(&mut piece.to, length(then, "right end"))?;
    }
    for (one, then) in laid.let_in.iter_mut().zip(let_in).filter(|(one, then)| text(then, "name") == Some(&one.name)) {
        keep(&mut one.from, length(then, "left end"))?;
        keep(&mut one.to, length(then, "right end"))?;
    }
    for (seam, then) in laid.seams.iter_mut().zip(seams) {
        keep(seam, as_length(then))?;
    }
    Some((laid, most))
}

fn text<'v>(group: &'v ShownValue, key: &str) -> Option<&'v str> {
    group.get(key).and_then(ShownValue::text)
}

fn length(group: &ShownValue, key: &str) -> Option<Length> {
    group.get(key).and_then(as_length)
}

fn as_length(value: &ShownValue) -> Option<Length> {
    if let ShownValue::Length(length) = value { Some(*length) } else { None }
}
