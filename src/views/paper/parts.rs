//! A sheet to sign of very many items is set in parts, a file each: what a part holds, and its name.

use std::ops::Range;

use crate::language::{Words, say};
use crate::views::paper::change_order::{ChangeOrder, ChangedRoom};
use crate::views::paper::sign_off::{SheetPart, SignOff, SignOffRoom};
use crate::views::shared::sheet::Link;

/// The most items of one file: some sixty pages, and what the engine that sets them needs stays small.
pub const MOST_ITEMS: usize = 120;

/// A stretch of the items of one room: the room's number, and which of its items.
type Stretch = (usize, Range<usize>);

/// How rooms of so many items are shared out: a part ends where a room does, unless the room alone is too much.
fn shared_out(rooms: &[usize]) -> Vec<Vec<Stretch>> {
    let (mut parts, mut part, mut held) = (vec![], vec![], 0);
    for (room, &items) in rooms.iter().enumerate() {
        let mut from = 0;
        if held > 0 && held + items > MOST_ITEMS {
            parts.push(std::mem::take(&mut part));
            held = 0;
        }
        while items - from > MOST_ITEMS {
            part.push((room, from..from + MOST_ITEMS));
            parts.push(std::mem::take(&mut part));
            from += MOST_ITEMS;
        }
        part.push((room, from..items));
        held += items - from;
    }
    parts.push(part);
    parts
}

/// How many files the sheet of rooms of so many items has.
fn count(rooms: &[usize]) -> usize {
    shared_out(rooms).len()
}

/// The path of a part, counted from 1: that of the whole where there is but one.
fn path(whole: &str, part: usize, of: usize) -> String {
    match whole.strip_suffix(".pdf") {
        Some(stem) if of > 1 => format!("{stem}-{part}.pdf"),
        _ => whole.to_owned(),
    }
}

/// A link to each file of a sheet: to one alone in a usual book.
pub fn links(words: Words, (whole, number): (&str, &str), name: &str, rooms: &[usize]) -> Vec<Link> {
    let of = count(rooms);
    let link = |part| Link {
        href: path(whole, part, of),
        name: if of == 1 { name.to_owned() } else { say!(words, "pages.part", name = name, part = part, of = of) },
        number: Some(number.to_owned()),
    };
    (1..=of).map(link).collect()
}

/// The parts of a sheet, each with its path. Sums and signatures stand on the last.
pub fn of(whole: String, mut sheet: SignOff) -> Vec<(String, SignOff)> {
    let counts: Vec<usize> = sheet.rooms.iter().map(|room| room.items.len()).collect();
    let parts = shared_out(&counts);
    let all = parts.len();
    if all == 1 {
        return vec![(whole, sheet)];
    }
    let cut = |(number, stretches): (usize, Vec<Stretch>)| {
        let rooms = stretches.into_iter().filter_map(|stretch| room(&mut sheet.rooms, stretch)).collect();
        let part = SignOff { rooms, part: Some(SheetPart { number, of: all }), ..sheet.without_rooms() };
        (path(&whole, number, all), part)
    };
    (1..).zip(parts).map(cut).collect()
}

/// So many of a room's items, the next ones, taken out of it; its sum stands below the last.
fn room(rooms: &mut [SignOffRoom], (room, items): Stretch) -> Option<SignOffRoom> {
    let room = rooms.get_mut(room)?;
    let rest = room.items.split_off(items.len().min(room.items.len()));
    let items = std::mem::replace(&mut room.items, rest);
    let subtotal = room.subtotal.clone().filter(|_| room.items.is_empty());
    Some(SignOffRoom { name: room.name.clone(), note: room.note.clone(), items, subtotal })
}

/// The parts of a change order. Sums and signatures stand on the last.
pub fn of_change_order(mut order: ChangeOrder) -> Vec<ChangeOrder> {
    let counts: Vec<usize> = order.rooms.iter().map(|room| room.items.len()).collect();
    let parts = shared_out(&counts);
    let of = parts.len();
    if of == 1 {
        return vec![order];
    }
    let mut rooms = std::mem::take(&mut order.rooms);
    let cut = |(number, stretches): (usize, Vec<Stretch>)| {
        let rooms = stretches.into_iter().filter_map(|stretch| changed_room(&mut rooms, stretch)).collect();
        ChangeOrder { rooms, part: Some(SheetPart { number, of }), ..order.clone() }
    };
    (1..).zip(parts).map(cut).collect()
}

/// The next so many of a room's changed items, taken out of it.
fn changed_room(rooms: &mut [ChangedRoom], (room, items): Stretch) -> Option<ChangedRoom> {
    let room = rooms.get_mut(room)?;
    let rest = room.items.split_off(items.len().min(room.items.len()));
    Some(ChangedRoom { name: room.name.clone(), items: std::mem::replace(&mut room.items, rest) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_usual_book_is_one_file() {
        for rooms in [vec![], vec![0], vec![12, 30, 8], vec![MOST_ITEMS], vec![0, MOST_ITEMS, 0]] {
            assert_eq!(count(&rooms), 1, "{rooms:?}");
        }
        assert_eq!(path("sheets/whole-book.pdf", 1, 1), "sheets/whole-book.pdf");
        assert_eq!(path("sheets/whole-book.pdf", 2, 3), "sheets/whole-book-2.pdf");
    }

    #[test]
    fn a_part_ends_where_a_room_does_unless_the_room_alone_is_too_much() {
        assert_eq!(shared_out(&[100, 40, 80]), [vec![(0, 0..100)], vec![(1, 0..40), (2, 0..80)]]);
        let [all, cut] = [290, 120];
        let first = [vec![(0, 0..10)], vec![(1, 0..cut)], vec![(1, cut..240)], vec![(1, 240..all)]];
        assert_eq!(shared_out(&[10, all]), first);
        assert_eq!(shared_out(&[all, 10]), [vec![(0, 0..cut)], vec![(0, cut..240)], vec![(0, 240..all), (1, 0..10)]]);
    }

    #[test]
    fn every_item_stands_on_exactly_one_part_and_no_part_is_past_the_most() {
        for rooms in [vec![1; 2_000], vec![20; 100], vec![2_000], vec![119, 2, 120, 121, 0, 239, 240, 1]] {
            let mut next = vec![0; rooms.len()];
            for part in shared_out(&rooms) {
                assert!(part.iter().map(|(_, items)| items.len()).sum::<usize>() <= MOST_ITEMS);
                for (room, items) in part {
                    assert_eq!(next[room], items.start);
                    next[room] = items.end;
                }
            }
            assert_eq!(next, rooms);
        }
    }
}
