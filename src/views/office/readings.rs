//! Readings that do not count yet, for the office.

use crate::book::{Uncounted, WaitingReadings};
use crate::ledger::ReadingSpot;
use crate::views::office::tables::{Cell, Column, Table};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures;
use crate::views::shared::state::{State, StateShape};

/// The most readings of one response that the page shows: anybody can hand in thousands.
const MOST: usize = 60;

impl PageBuilder<'_> {
    /// Readings that do not count: those that wait to be confirmed first; nothing while there are none.
    pub fn readings(&self) -> Option<Table> {
        let waiting = &self.subject.book.record.waiting;
        if waiting.is_empty() {
            return None;
        }
        let columns =
            [("Room and opening", false), ("What", false), ("Reading", true), ("By", false), ("Stands", false)];
        Some(Table {
            name: "Readings that do not count".into(),
            scope: Some("handed over, and not confirmed, or not newer than the book’s own".into()),
            columns: columns.into_iter().map(|(name, figures)| Column { name: name.into(), figures }).collect(),
            rows: waiting.iter().flat_map(|waiting| self.reading_rows(waiting)).collect(),
            totals: vec![],
        })
    }

    fn reading_rows(&self, waiting: &WaitingReadings) -> Vec<Vec<Cell>> {
        let measured = &waiting.measured;
        let digits: String = measured.response.to_string().chars().take(8).collect();
        let state = match waiting.because {
            Uncounted::Unconfirmed => format!("To be confirmed: {digits}"),
            Uncounted::Ahead(came) => format!("Says {}, came in on {came}: never counts ({digits})", measured.on),
            Uncounted::Older(day) => format!("Older than the book’s own of {day}: does not count ({digits})"),
        };
        let rows = measured.readings.iter().take(MOST).map(|read| {
            let at = read.at.map_or(String::new(), |at| match at {
                ReadingSpot::FromLeft | ReadingSpot::Height | ReadingSpot::Proud => format!(", {}", at.word()),
                _ => format!(" at the {}", at.word()),
            });
            let from = read.from.map_or(String::new(), |from| format!(", from the {}", from.word()));
            let place = format!("{}, {}", self.room_name(&read.room), read.opening);
            let length = Cell { text: figures::length(self.wording, read.length), ..Cell::default() };
            let stands = Cell { state: Some(State::new(StateShape::Waiting, state.clone())), ..Cell::default() };
            let by = format!("{}, {}", measured.by, measured.on);
            vec![
                place.as_str().into(),
                format!("{}{at}{from}", read.what.word()).as_str().into(),
                length,
                by.as_str().into(),
                stands,
            ]
        });
        let mut rows: Vec<Vec<Cell>> = rows.collect();
        let more = measured.readings.len().saturating_sub(MOST);
        if more > 0 {
            let told = format!("{more} more of {digits} in the ledger");
            rows.push(vec![told.as_str().into(), Cell::default(), Cell::default(), Cell::default(), Cell::default()]);
        }
        rows
    }

    fn room_name<'n>(&'n self, folder: &'n str) -> &'n str {
        self.subject.book.room(folder).map_or(folder, |room| room.title())
    }
}
