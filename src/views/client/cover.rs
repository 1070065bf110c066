//! The client's cover: what is due next, what is decided, the rooms, the sheets.

use std::collections::BTreeMap;

use crate::assess::{DecideBy, RunsOut};
use crate::book::{ProductOption, Room, Selection};
use crate::language::say;
use crate::shown;
use crate::views::pages::PageBuilder;
use crate::views::paper::parts;
use crate::views::paper::sign_off::WHOLE_BOOK;
use crate::views::shared::html::{Html, show};
use crate::views::shared::photo::Photo;
use crate::views::shared::prose;
use crate::views::shared::revisions::RevisionScope;
use crate::views::shared::sheet::{Link, Sheet, SheetPlace, on_sheet, purpose_key};
use crate::views::shared::state::{State, StateShape};
use serde::Serialize;

/// The most rooms that get a column of their own; with more, a phone could not show them all.
const COLUMNS: usize = 4;

/// How many due things stand on the cover.
const DUE: usize = 6;

/// The widest that the cover's picture stands, for a dense screen.
const PICTURE: u32 = 1600;

/// `index.html` of the client's folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Cover {
    pub sheet: Sheet,
    pub picture: Option<Photo>,
    /// One or two sentences: how much there is, how much is settled, what is wanted.
    pub lead: Html,
    pub stamp: Option<ReviewStamp>,
    pub due: Vec<DueCard>,
    /// How many more are due after those, and the first by when.
    pub due_more: Option<String>,
    pub tally: Tally,
    pub rooms: Vec<RoomCard>,
    pub sheets: Vec<Link>,
    /// Sign-off sheets and the like, relative to the folder's root.
    pub papers: Vec<Link>,
}

/// A rubber stamp: a word, and the lines under it.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ReviewStamp {
    pub word: String,
    pub lines: Vec<String>,
    /// Broken and struck through: it no longer holds.
    pub void: bool,
}

/// A decision with its date and what it holds up.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DueCard {
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
    pub fn new(rooms: &[(String, Vec<StateShape>)], words: &BTreeMap<StateShape, String>, all: &str) -> Tally {
        let everything: Vec<StateShape> = rooms.iter().flat_map(|room| room.1.clone()).collect();
        let mut columns: Vec<(String, Vec<StateShape>)> = Vec::new();
        if rooms.len() <= COLUMNS {
            columns.extend(rooms.iter().cloned());
        }
        if rooms.len() != 1 {
            columns.push((all.to_owned(), everything));
        }
        let count = |shapes: &[StateShape], shape| shapes.iter().filter(|s| **s == shape).count();
        let cell = |number: usize| match number {
            0 => "–".to_owned(),
            some => some.to_string(),
        };
        let rows = StateShape::DECISIONS.into_iter().map(|shape| TallyRow {
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
    pub marks: Vec<StateShape>,
    /// The same marks in words: `7 approved, 2 waiting`.
    pub marks_in_words: String,
}

on_sheet!(Cover);

impl PageBuilder<'_> {
    /// The cover.
    pub fn cover(&self) -> Cover {
        let project = &self.subject.book.project;
        let title = self.chrome.project().title.clone();
        let place = SheetPlace { path: "index.html".into(), number: "G-00".into(), name: title.clone(), above: vec![] };
        let onward =
            self.subject.book.rooms.first().map_or_else(|| self.sign_link(), |room| self.chrome.room_link(room));
        let mark = shown::in_short(&shown::of_all(self.marks.values()));
        Cover {
            sheet: self.revised(self.chrome.sheet(place, Some(mark), None, Some(onward)), RevisionScope::All),
            picture: project.cover.as_ref().and_then(|photo| self.album.photo(photo, &title, PICTURE)),
            lead: project.intro.get().map_or_else(|| self.lead(), |intro| prose::line(intro)),
            stamp: self.stamp(),
            due: self.due(),
            due_more: self.due_more(),
            tally: self.tally(),
            rooms: self.subject.book.rooms.iter().map(|room| self.card(room)).collect(),
            sheets: self.sheets(),
            papers: self.paper_links(),
        }
    }

    fn lead(&self) -> Html {
        let rooms = self.subject.book.rooms.len();
        let selections = self.subject.book.selections().count();
        let open = self.subject.book.selections().filter(|(_, selection)| selection.settled().is_none()).count();
        let words = self.words;
        let wanted = say!(words, if open == 0 { "cover_says.all_proposed" } else { "cover_says.you_choose" }, n = open);
        let (rooms, selections) =
            (say!(words, "units.rooms", n = rooms), say!(words, "units.selections", n = selections));
        show!(words, "cover_says.lead", rooms = rooms, selections = selections, wanted = wanted)
    }

    fn stamp(&self) -> Option<ReviewStamp> {
        let project = self.chrome.project();
        let issue = self.subject.book.record.latest();
        let word = match issue {
            _ if project.draft => say!(self.words, "draft"),
            Some(issue) => {
                say!(self.words, "issued.stamp", purpose = say!(self.words, purpose_key(issue.purpose)))
            }
            None => say!(self.words, "issued.for_decision"),
        };
        let day = issue.map_or_else(
            || project.date.clone(),
            |issue| say!(self.words, "issued.on", issue = issue.number, day = issue.on),
        );
        let lines = [Some(day), project.firm.clone()].into_iter().flatten().collect();
        Some(ReviewStamp { word, lines, void: false })
    }

    /// All that is still to be decided, what is open or waits for a signature, by its last day. What is ordered is asked
    /// of nobody.
    fn all_due(&self) -> Vec<(&DecideBy, &Room, &Selection)> {
        let selections = self.subject.book.selections();
        let mut all: Vec<(&DecideBy, &Room, &Selection)> =
            selections.filter_map(|(room, selection)| Some((self.due_of(room, selection)?, room, selection))).collect();
        all.sort_by_key(|(due, _, selection)| (due.on, selection.settled().is_some(), selection.tag.clone()));
        all
    }

    /// What must be decided next.
    fn due(&self) -> Vec<DueCard> {
        let first = self.all_due().into_iter().take(DUE);
        first.map(|(due, room, selection)| self.due_line(due, room, selection)).collect()
    }

    fn due_more(&self) -> Option<String> {
        let all = self.all_due();
        let rest = all.get(DUE..)?;
        let (next, ..) = rest.first()?;
        Some(say!(self.words, "cover_says.more", n = rest.len(), day = next.on))
    }

    fn due_line(&self, due: &DecideBy, room: &Room, selection: &Selection) -> DueCard {
        let dates = &self.subject.assessment.dates;
        // The slowest option is the one that must be ordered first, whatever its lead time is counted in.
        let by_order = |option: &&ProductOption| dates.order_by(selection, option).and_then(|order| order.order);
        let slowest = selection.standing().iter().filter(|option| by_order(option).is_some()).min_by_key(by_order);
        let lead = slowest.and_then(|option| option.lead_time.get());
        let mut told = Vec::new();
        if self.subject.assessment.dates.runs_out(selection) == RunsOut::Past {
            told.push(say!(self.words, "cover_says.past"));
        }
        if let Some(lead) = lead {
            told.push(say!(self.words, "cover_says.takes", time = *lead));
        }
        told.extend(match self.reason(due) {
            Some(reason) => Some(say!(self.words, "cover_says.is", day = due.on, reason = reason)),
            None => self.holds_up(selection).map(|holds| say!(self.words, "cover_says.holds_up", what = holds)),
        });
        let (day, month) = self.words.day_apart(due.on);
        DueCard {
            day,
            month,
            link: self.chrome.item_link(room, selection),
            state: self.decision(room, selection),
            holds_up: Html::text(&told.join(" ")),
        }
    }

    fn tally(&self) -> Tally {
        let words: BTreeMap<StateShape, String> = [
            (StateShape::Approved, "state.approved"),
            (StateShape::ApprovedAsNoted, "state.approved_as_noted"),
            (StateShape::Waiting, "state.waiting"),
            (StateShape::ChangedSinceSigned, "state.changed_since_signed"),
            (StateShape::ReviseAndResubmit, "state.revise_and_resubmit"),
            (StateShape::Rejected, "state.rejected"),
        ]
        .into_iter()
        .map(|(shape, key)| (shape, say!(self.words, key)))
        .collect();
        let mut words = words;
        let mut all = self.subject.book.selections();
        if all.any(|(room, selection)| self.came_otherwise(room, selection)) {
            words.insert(StateShape::ChangedSinceSigned, say!(self.words, "cover_says.changed_or_came"));
        }
        let rooms: Vec<(String, Vec<StateShape>)> =
            self.subject.book.rooms.iter().map(|room| (room.title().to_string(), self.shapes(room))).collect();
        Tally::new(&rooms, &words, &say!(self.words, "cover.all"))
    }

    fn shapes(&self, room: &Room) -> Vec<StateShape> {
        room.selections.iter().map(|selection| self.decision(room, selection).shape).collect()
    }

    fn card(&self, room: &Room) -> RoomCard {
        let shapes = self.shapes(room);
        let waits = |selection: &&Selection| self.decision(room, selection).shape == StateShape::Waiting;
        let waiting: Vec<&Selection> = room.selections.iter().filter(waits).collect();
        let open = waiting.iter().filter(|selection| selection.settled().is_none()).count();
        let so_many = |shape: StateShape| shapes.iter().filter(|other| **other == shape).count();
        let came = room.selections.iter().filter(|selection| self.came_otherwise(room, selection)).count();
        let parts = [
            (so_many(StateShape::Approved), "cover_says.marks.approved"),
            (so_many(StateShape::ApprovedAsNoted), "cover_says.marks.noted"),
            (so_many(StateShape::ChangedSinceSigned) - came, "cover_says.marks.changed"),
            (came, "cover_says.marks.came"),
            (so_many(StateShape::ReviseAndResubmit) + so_many(StateShape::Rejected), "cover_says.marks.back"),
            (waiting.len() - open, "cover_says.marks.signatures"),
            (open, "cover_says.marks.choice"),
        ];
        let words: Vec<String> = parts
            .into_iter()
            .filter(|(number, _)| *number > 0)
            .map(|(number, key)| say!(self.words, key, n = number))
            .collect();
        RoomCard {
            link: self.chrome.room_link(room),
            photo: room.photo.as_ref().and_then(|photo| {
                self.album.photo(photo, &say!(self.words, "pages.as_designed", name = room.title()), 960)
            }),
            line: self.room_line(room),
            marks: shapes,
            marks_in_words: self.words.series(&words),
        }
    }

    fn sheets(&self) -> Vec<Link> {
        let cover = self.cover_link();
        // A room's own page lists its selections.
        let rooms = self.subject.book.rooms.iter().map(|room| self.chrome.room_link(room));
        std::iter::once(cover).chain(rooms).chain([self.sign_link()]).collect()
    }

    /// The sheets to print and sign: the whole book first, then a room each.
    pub fn paper_links(&self) -> Vec<Link> {
        let rooms = &self.subject.book.rooms;
        let counts: Vec<usize> = rooms.iter().map(|room| room.selections.len()).collect();
        let whole = parts::links(self.words, (WHOLE_BOOK, "S-00"), &say!(self.words, "pages.whole_book"), &counts);
        whole.into_iter().chain(rooms.iter().flat_map(|room| self.room_papers(room))).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tally(rooms: usize) -> Tally {
        let words = StateShape::DECISIONS.map(|shape| (shape, format!("{shape:?}")));
        let room = |n| (format!("Room {n}"), vec![StateShape::Approved, StateShape::Waiting]);
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
