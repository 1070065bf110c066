//! Tells the page of a room.

use crate::assess::rules::Reader;
use crate::book::{Ceiling, Outline, Room};
use crate::marks;
use crate::site::plan::Plans;
use crate::views::board::{Board, Finish};
use crate::views::html::Html;
use crate::views::room::{ItemLine, RoomPage, Why};
use crate::views::sheet::{Fact, Link, Notice};

use super::chrome::Place;
use super::figures::{self, count};
use super::history::Of;
use super::item::sign_link;
use super::lines::fact;
use super::{PageBuilder, prose};

/// The widest that a room's picture stands, for a dense screen.
const PICTURE: u32 = 1600;
/// The widest that a list's picture stands, for a dense screen.
const THUMBNAIL: u32 = 240;

impl PageBuilder<'_> {
    /// A room's page, after that of the room before it.
    pub fn room(&self, plans: &Plans<'_>, room: &Room, before: Option<&Room>) -> RoomPage {
        let cover = Link { href: "index.html".into(), name: "Cover".into(), number: Some("G-00".into()) };
        let from = before.map_or(cover, |before| self.chrome.room_link(before));
        let onward = room.selections.first().map_or_else(sign_link, |first| self.chrome.item_link(room, first));
        let link = self.chrome.room_link(room);
        let place = Place {
            path: link.href,
            number: link.number.unwrap_or_default(),
            name: link.name,
            above: vec![self.chrome.first()],
        };
        let named = room.photo.iter().chain(&room.photos);
        let sheet = self.chrome.sheet(place, Some(self.room_mark(room)), Some(from), Some(onward));
        RoomPage {
            sheet: self.revised(sheet, Of::Room(&room.folder)),
            place: room.whereabouts.get().cloned(),
            lead: room.intro.get().map(|intro| prose::line(intro)),
            facts: self.room_facts(room),
            board: self.board(room),
            drawings: self.room_drawings(plans, room),
            why: self.why(room),
            photos: named
                .filter_map(|photo| self.album.photo(photo, &format!("{}, as designed", room.title()), PICTURE))
                .collect(),
            items: self.item_lines(room),
            notices: self.room_notices(room),
            paper: self.room_papers(room).into_iter().next(),
        }
    }

    fn room_notices(&self, room: &Room) -> Vec<Notice> {
        let lines = self.told_of_room(room, Reader::Client);
        if lines.is_empty() { vec![] } else { vec![Notice { title: "Of the room as a whole".into(), lines }] }
    }

    /// The mark of all that is chosen in a room.
    pub fn room_mark(&self, room: &Room) -> String {
        let marks = room
            .selections
            .iter()
            .filter_map(|selection| self.marks.get(&(room.folder.as_str(), selection.id.as_str())));
        marks::shown(&marks::of_all(marks))
    }

    fn room_facts(&self, room: &Room) -> Vec<Fact> {
        let mut facts = Vec::new();
        if let Some((length, width)) = room.outline.get().map(Outline::extent) {
            facts.push(fact("Room", self.wording.sides(&[length, width])));
        }
        if let Some(ceiling) = room.ceiling.get() {
            facts.push(fact("Ceiling", self.ceiling(ceiling)));
        }
        if let Some(build_up) = room.floor_build_up.get() {
            facts.push(fact("Still to be laid", figures::length(self.wording, *build_up)));
        }
        facts.extend(self.measured(room).map(|measured| fact("Measured", measured)));
        facts
    }

    /// A ceiling in words.
    pub fn ceiling(&self, ceiling: &Ceiling) -> Html {
        match ceiling {
            Ceiling::Level(height) => figures::length(self.wording, *height),
            Ceiling::Sloped { low, high, .. } => {
                figures::length(self.wording, *low).then(" rising to ").then(figures::length(self.wording, *high))
            }
        }
    }

    /// When and by whom a room's openings were measured last.
    pub fn measured(&self, room: &Room) -> Option<String> {
        let measured = room.openings.iter().filter_map(|opening| opening.measured.get());
        let last = measured
            .filter(|measured| measured.on.get().is_some())
            .max_by_key(|measured| measured.on.get().copied())?;
        let by = last.by.get().map_or(String::new(), |by| format!(", {by}"));
        Some(format!("{}{by}", last.on.get()?))
    }

    fn why(&self, room: &Room) -> Option<Why> {
        let markdown: Vec<&str> = room.notes.iter().map(|note| note.markdown.as_str()).collect();
        if markdown.is_empty() {
            return None;
        }
        Some(Why {
            notes: prose::blocks(&markdown.join("\n\n")),
            by: self.subject.book.project.designer.get().cloned(),
        })
    }

    /// Each finish that covers some of the room, in proportion to how much it covers.
    fn board(&self, room: &Room) -> Option<Board> {
        let covering = || {
            room.selections.iter().filter_map(|selection| {
                Some((selection, *selection.covers.get()?, selection.standing().iter().next()?))
            })
        };
        let total = covering().map(|(_, area, _)| area).sum();
        let finishes: Vec<Finish> = covering()
            .map(|(selection, area, option)| Finish {
                name: selection.name.value.clone(),
                place: Some(Html::text(&self.in_a_line(option))),
                permille: area.share_of(total),
                photo: option.photos.first().and_then(|photo| self.album.photo(photo, &option.title(), 960)),
                href: Some(self.chrome.item_path(room, selection)),
            })
            .collect();
        if finishes.is_empty() { None } else { Some(Board::new(finishes)) }
    }

    fn item_lines(&self, room: &Room) -> Vec<ItemLine> {
        let line = |selection: &crate::book::Selection| {
            let option = selection.standing().iter().next();
            ItemLine {
                link: self.chrome.item_link(room, selection),
                // The words beside it say what it shows.
                photo: option
                    .and_then(|option| self.album.photo(option.photos.first()?, "", THUMBNAIL))
                    .map(|photo| crate::views::photo::Photo { alt: String::new(), caption: None, ..photo }),
                line: Html::text(&self.selection_line(selection)),
                state: self.decision(room, selection),
            }
        };
        room.selections.iter().map(line).collect()
    }

    /// How many selections a room has, and where it is.
    pub fn room_line(&self, room: &Room) -> String {
        let many = count(room.selections.len(), "selection", "selections");
        room.whereabouts.get().map_or(format!("{many}."), |place| format!("{}. {many}.", super::lines::capital(place)))
    }
}
