//! The client's cover: what is due next, what is decided, the rooms, the sheets.

use super::html::Html;
use super::photo::Photo;
use super::sheet::{Link, Sheet, on_sheet};
use super::state::{Shape, State};
use serde::Serialize;
use std::collections::BTreeMap;

/// The most rooms that get a column of their own; with more, a phone could not show them all.
const COLUMNS: usize = 4;

/// `index.html` of the client's folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Cover {
    pub sheet: Sheet,
    pub picture: Option<Photo>,
    /// One or two sentences: how much there is, how much is settled, what is wanted.
    pub lead: Html,
    pub stamp: Option<Stamp>,
    pub due: Vec<Due>,
    pub tally: Tally,
    pub rooms: Vec<RoomCard>,
    pub sheets: Vec<Link>,
    /// Sign-off sheets and the like, relative to the folder's root.
    pub papers: Vec<Link>,
}

/// A rubber stamp: a word, and the lines under it.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Stamp {
    pub word: String,
    pub lines: Vec<String>,
    /// Broken and struck through: it no longer holds.
    pub void: bool,
}

/// A decision with its date and what it holds up.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Due {
    /// Day of the month, in figures.
    pub day: String,
    /// `Jan 2027`.
    pub month: String,
    pub link: Link,
    pub state: State,
    /// What waits on it, in a sentence.
    pub holds_up: Html,
}

/// Selections counted by state and room.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Tally {
    pub columns: Vec<String>,
    pub rows: Vec<TallyRow>,
    pub totals: Vec<String>,
}

/// One state's counts, a cell a column; a dash for none.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TallyRow {
    pub state: State,
    pub counts: Vec<String>,
}

impl Tally {
    /// Counts each room's states; `words` gives each decision its word, `all` heads the last column.
    pub fn new(rooms: &[(String, Vec<Shape>)], words: &BTreeMap<Shape, String>, all: &str) -> Tally {
        let everything: Vec<Shape> = rooms.iter().flat_map(|room| room.1.clone()).collect();
        let mut columns: Vec<(String, Vec<Shape>)> = Vec::new();
        if rooms.len() <= COLUMNS {
            columns.extend(rooms.iter().cloned());
        }
        if rooms.len() != 1 {
            columns.push((all.to_owned(), everything));
        }
        let count = |shapes: &[Shape], shape| shapes.iter().filter(|s| **s == shape).count();
        let cell = |number: usize| match number {
            0 => "–".to_owned(),
            some => some.to_string(),
        };
        let rows = Shape::DECISIONS.into_iter().map(|shape| TallyRow {
            state: State::new(shape, words.get(&shape).cloned().unwrap_or_default()),
            counts: columns.iter().map(|c| cell(count(&c.1, shape))).collect(),
        });
        Tally {
            rows: rows.collect(),
            totals: columns.iter().map(|c| c.1.len().to_string()).collect(),
            columns: columns.into_iter().map(|c| c.0).collect(),
        }
    }
}

/// A room as a picture.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct RoomCard {
    pub link: Link,
    pub photo: Option<Photo>,
    /// Where it is, and how many selections it has.
    pub line: String,
    /// One mark a selection.
    pub marks: Vec<Shape>,
    /// The same marks in words: `7 approved, 2 waiting`.
    pub marks_in_words: String,
}

on_sheet!(Cover);

#[cfg(test)]
mod tests {
    use super::*;

    fn tally(rooms: usize) -> Tally {
        let words = Shape::DECISIONS.map(|shape| (shape, format!("{shape:?}")));
        let room = |n| (format!("Room {n}"), vec![Shape::Approved, Shape::Waiting]);
        let rooms: Vec<_> = (0..rooms).map(room).collect();
        Tally::new(&rooms, &words.into_iter().collect(), "All")
    }

    #[test]
    fn a_few_rooms_are_counted_side_by_side_and_together() {
        let tally = tally(2);
        assert_eq!(tally.columns, ["Room 0", "Room 1", "All"]);
        assert_eq!(tally.rows[0].counts, ["1", "1", "2"]);
        assert_eq!(tally.rows[5].counts, ["–", "–", "–"]);
        assert_eq!(tally.totals, ["2", "2", "4"]);
    }

    #[test]
    fn many_rooms_are_counted_together_so_that_a_phone_can_show_them() {
        assert_eq!(tally(9).columns, ["All"]);
        assert_eq!(tally(9).totals, ["18"]);
    }

    #[test]
    fn a_single_room_is_not_counted_twice() {
        assert_eq!(tally(1).columns, ["Room 0"]);
    }
}
