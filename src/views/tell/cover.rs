//! Tells the cover: what is due next, what is decided, the rooms, the sheets.

use std::collections::BTreeMap;

use crate::assess::{DecideBy, RunsOut};
use crate::book::{ProductOption, Room, Selection};
use crate::marks;
use crate::units::series;
use crate::views::cover::{Cover, Due, RoomCard, Stamp, Tally};
use crate::views::html::Html;
use crate::views::sheet::Link;
use crate::views::state::Shape;

use super::chrome::Place;
use super::figures::count;
use super::history::Of;
use super::item::sign_link;
use super::sign_off::WHOLE_BOOK;
use super::{PageBuilder, parts, prose};

/// How many due things stand on the cover.
const DUE: usize = 6;
/// The widest that the cover's picture stands, for a dense screen.
const PICTURE: u32 = 1600;

impl PageBuilder<'_> {
    /// The cover.
    pub fn cover(&self) -> Cover {
        let project = &self.subject.book.project;
        let title = self.chrome.project().title.clone();
        let place = Place { path: "index.html".into(), number: "G-00".into(), name: title.clone(), above: vec![] };
        let onward = self.subject.book.rooms.first().map_or_else(sign_link, |room| self.chrome.room_link(room));
        let mark = marks::shown(&marks::of_all(self.marks.values()));
        Cover {
            sheet: self.revised(self.chrome.sheet(place, Some(mark), None, Some(onward)), Of::All),
            picture: project.cover.as_ref().and_then(|photo| self.album.photo(photo, &title, PICTURE)),
            lead: project.intro.get().map_or_else(|| self.lead(), |intro| prose::line(intro)),
            stamp: self.stamp(),
            due: self.due(),
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
        let wanted = if open == 0 {
            "Every one has its proposal.".into()
        } else {
            format!("In {open} of them you choose between options.")
        };
        Html::text(&format!(
            "{}, {}. {wanted}",
            count(rooms, "room", "rooms"),
            count(selections, "selection", "selections")
        ))
    }

    fn stamp(&self) -> Option<Stamp> {
        let project = self.chrome.project();
        let issue = self.subject.book.record.latest();
        let word = match issue {
            _ if project.draft => "Draft".to_string(),
            Some(issue) => format!("Issued for {}", issue.purpose.word()),
            None => "For your decision".into(),
        };
        let day = issue.map_or_else(|| project.date.clone(), |issue| format!("Issue {} · {}", issue.number, issue.on));
        let lines = [Some(day), project.firm.clone()].into_iter().flatten().collect();
        Some(Stamp { word, lines, void: false })
    }

    /// What must be decided next: what is open, or waits for a signature, by its last day. What is
    /// ordered is asked of nobody.
    fn due(&self) -> Vec<Due> {
        let selections = self.subject.book.selections();
        let mut all: Vec<(&DecideBy, &Room, &Selection)> =
            selections.filter_map(|(room, selection)| Some((self.due_of(room, selection)?, room, selection))).collect();
        all.sort_by_key(|(due, _, selection)| (due.on, selection.settled().is_some(), selection.tag.clone()));
        all.into_iter().take(DUE).map(|(due, room, selection)| self.due_line(due, room, selection)).collect()
    }

    fn due_line(&self, due: &DecideBy, room: &Room, selection: &Selection) -> Due {
        let dates = &self.subject.assessment.dates;
        // The slowest option is the one that must be ordered first, whatever its lead time is counted in.
        let by_order = |option: &&ProductOption| dates.order_by(selection, option).and_then(|order| order.order);
        let slowest = selection.standing().iter().filter(|option| by_order(option).is_some()).min_by_key(by_order);
        let lead = slowest.and_then(|option| option.lead_time.get());
        let mut words = String::new();
        if self.subject.assessment.dates.runs_out(selection) == RunsOut::Past {
            words += "This day has passed. ";
        }
        if let Some(lead) = lead {
            words += &format!("It takes {lead}. ");
        }
        match due.reason() {
            Some(reason) => words += &format!("That is {reason}."),
            None => {
                let holds = self.holds_up(selection);
                words += &holds.map_or_else(String::new, |holds| format!("Later than this it holds up {holds}."));
            }
        }
        let whole = due.on.to_string();
        let (day, month) = whole.split_once(' ').unwrap_or((&whole, ""));
        Due {
            day: day.into(),
            month: month.into(),
            link: self.chrome.item_link(room, selection),
            state: self.decision(room, selection),
            holds_up: Html::text(words.trim()),
        }
    }

    fn tally(&self) -> Tally {
        let words: BTreeMap<Shape, String> = [
            (Shape::Approved, "Approved"),
            (Shape::ApprovedAsNoted, "Approved as noted"),
            (Shape::Waiting, "Waiting"),
            (Shape::ChangedSinceSigned, "Changed since signed"),
            (Shape::ReviseAndResubmit, "Revise and resubmit"),
            (Shape::Rejected, "Rejected"),
        ]
        .into_iter()
        .map(|(shape, word)| (shape, word.to_string()))
        .collect();
        let rooms: Vec<(String, Vec<Shape>)> =
            self.subject.book.rooms.iter().map(|room| (room.title().to_string(), self.shapes(room))).collect();
        Tally::new(&rooms, &words, "All")
    }

    fn shapes(&self, room: &Room) -> Vec<Shape> {
        room.selections.iter().map(|selection| self.decision(room, selection).shape).collect()
    }

    fn card(&self, room: &Room) -> RoomCard {
        let shapes = self.shapes(room);
        let waits = |selection: &&Selection| self.decision(room, selection).shape == Shape::Waiting;
        let waiting: Vec<&Selection> = room.selections.iter().filter(waits).collect();
        let open = waiting.iter().filter(|selection| selection.settled().is_none()).count();
        let so_many = |shape: Shape| shapes.iter().filter(|other| **other == shape).count();
        let parts = [
            (so_many(Shape::Approved), "approved"),
            (so_many(Shape::ApprovedAsNoted), "approved as noted"),
            (so_many(Shape::ChangedSinceSigned), "changed since signed"),
            (so_many(Shape::ReviseAndResubmit) + so_many(Shape::Rejected), "sent back"),
            (waiting.len() - open, "waiting for signatures"),
            (open, "waiting for a choice"),
        ];
        let words: Vec<String> = parts
            .into_iter()
            .filter(|(number, _)| *number > 0)
            .map(|(number, what)| format!("{number} {what}"))
            .collect();
        RoomCard {
            link: self.chrome.room_link(room),
            photo: room
                .photo
                .as_ref()
                .and_then(|photo| self.album.photo(photo, &format!("{}, as designed", room.title()), 960)),
            line: self.room_line(room),
            marks: shapes,
            marks_in_words: series(&words),
        }
    }

    fn sheets(&self) -> Vec<Link> {
        let cover = Link { href: "index.html".into(), name: "Cover".into(), number: Some("G-00".into()) };
        // A room's own page lists its selections.
        let rooms = self.subject.book.rooms.iter().map(|room| self.chrome.room_link(room));
        std::iter::once(cover).chain(rooms).chain([sign_link()]).collect()
    }

    /// The sheets to print and sign: the whole book first, then a room each.
    pub fn paper_links(&self) -> Vec<Link> {
        let rooms = &self.subject.book.rooms;
        let counts: Vec<usize> = rooms.iter().map(|room| room.selections.len()).collect();
        let whole = parts::links(WHOLE_BOOK, "Whole book, sign-off sheet", "S-00", &counts);
        whole.into_iter().chain(rooms.iter().flat_map(|room| self.room_papers(room))).collect()
    }
}
