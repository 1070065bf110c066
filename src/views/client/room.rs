//! A room for the client: its board, its drawings, why it is so, and its selections.

use std::collections::BTreeSet;

use crate::assess::rules::Reader;
use crate::book::{Ceiling, MeasuredHow, Opening, Outline, ProductOption, Room, Selection};
use crate::language::say;
use crate::shown;
use crate::site::plan::Plans;
use crate::units::{Date, Length};
use crate::views::client::board::{Board, Finish};
use crate::views::pages::PageBuilder;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::html::{Html, show};
use crate::views::shared::photo::Photo;
use crate::views::shared::revisions::RevisionScope;
use crate::views::shared::sheet::{Fact, Link, Notice, Sheet, SheetPlace, on_sheet};
use crate::views::shared::state::State;
use crate::views::shared::{figures, prose};
use serde::Serialize;

/// The widest that a room's picture stands, for a dense screen.
const PICTURE: u32 = 1600;

/// The widest that a list's picture stands, for a dense screen.
const THUMBNAIL: u32 = 240;

/// `rooms/<room>.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct RoomPage {
    pub sheet: Sheet,
    /// Where in the house it is.
    pub place: Option<String>,
    pub lead: Option<Html>,
    pub facts: Vec<Fact>,
    pub board: Option<Board>,
    pub drawings: Vec<Drawing>,
    pub why: Option<Why>,
    pub photos: Vec<Photo>,
    pub items: Vec<ItemLine>,
    pub notices: Vec<Notice>,
    /// This room's sign-off sheet.
    pub paper: Option<Link>,
}

/// The designer's notes, as HTML made from Markdown.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Why {
    pub notes: Html,
    /// Who wrote it, and when.
    pub by: Option<String>,
}

/// A selection in a list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ItemLine {
    pub link: Link,
    pub photo: Option<Photo>,
    /// What it is, in a line.
    pub line: Html,
    pub state: State,
}

on_sheet!(RoomPage);

impl PageBuilder<'_> {
    /// A room's page, after that of the room before it.
    pub fn room(&self, plans: &Plans<'_>, room: &Room, before: Option<&Room>) -> RoomPage {
        let cover = self.cover_link();
        let from = before.map_or(cover, |before| self.chrome.room_link(before));
        let onward =
            room.selections.first().map_or_else(|| self.sign_link(), |first| self.chrome.item_link(room, first));
        let link = self.chrome.room_link(room);
        let place = SheetPlace {
            path: link.href,
            number: link.number.unwrap_or_default(),
            name: link.name,
            above: vec![self.chrome.first()],
        };
        let named = room.photo.iter().chain(&room.photos);
        let sheet = self.chrome.sheet(place, Some(self.room_mark(room)), Some(from), Some(onward));
        RoomPage {
            sheet: self.revised(sheet, RevisionScope::Room(&room.folder)),
            place: room.whereabouts.get().cloned(),
            lead: room.intro.get().map(|intro| prose::line(intro)),
            facts: self.room_facts(room),
            board: self.board(room),
            drawings: self.room_drawings(plans, room),
            why: self.why(room),
            photos: named
                .filter_map(|photo| {
                    self.album.photo(photo, &say!(self.words, "pages.as_designed", name = room.title()), PICTURE)
                })
                .collect(),
            items: self.item_lines(room),
            notices: self.room_notices(room),
            paper: self.room_papers(room).into_iter().next(),
        }
    }

    fn room_notices(&self, room: &Room) -> Vec<Notice> {
        let told = self.told_of_room(room, Reader::Client);
        let notices = [("item_says.safety", told.cautions), ("room_says.as_a_whole", told.lines)];
        let notices = notices.into_iter().filter(|(_, lines)| !lines.is_empty());
        notices.map(|(title, lines)| Notice { title: say!(self.words, title), lines }).collect()
    }

    /// The mark of all that is chosen in a room.
    pub fn room_mark(&self, room: &Room) -> String {
        let marks = room
            .selections
            .iter()
            .filter_map(|selection| self.marks.get(&(room.folder.as_str(), selection.id.as_str())));
        shown::in_short(&shown::of_all(marks))
    }

    fn room_facts(&self, room: &Room) -> Vec<Fact> {
        let mut facts = Vec::new();
        if let Some((length, width)) = room.outline.get().map(Outline::extent) {
            facts.push(self.worded("room_says.room", self.wording.of_rooms().sides(&[length, width])));
        }
        if let Some(ceiling) = room.ceiling.get() {
            facts.push(self.worded("room_says.ceiling", self.ceiling(ceiling)));
        }
        if let Some(build_up) = room.floor_build_up.get() {
            facts.push(self.worded("room_says.to_lay", figures::length(self.wording, *build_up)));
        }
        facts.extend(self.measured(room).map(|measured| self.worded("room_says.measured", measured)));
        facts
    }

    /// A ceiling in words.
    pub fn ceiling(&self, ceiling: &Ceiling) -> Html {
        let told = |height: &Length| self.wording.of_rooms().length(*height);
        match ceiling {
            Ceiling::Level(height) => told(height),
            Ceiling::Sloped { low, high, .. } => {
                let (low, high) = (told(low), told(high));
                show!(self.words, "room_says.rising", low = low, high = high)
            }
        }
    }

    /// When and by whom a room's openings were measured: each day with its name, the first day first.
    pub fn measured(&self, room: &Room) -> Option<String> {
        let measured = room.openings.iter().flat_map(Opening::measurements).filter_map(|one| match one.how {
            MeasuredHow::By { who, on, .. } => Some((on?, who)),
            MeasuredHow::Planned => None,
        });
        let each: BTreeSet<(Date, Option<&str>)> = measured.collect();
        let told = each.into_iter().map(|(on, who)| {
            let by = who.map_or(String::new(), |by| format!(", {by}"));
            format!("{}{by}", self.words.day(on))
        });
        let told: Vec<String> = told.collect();
        (!told.is_empty()).then(|| told.join("; "))
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
                place: Some(Html::text(&self.on_the_board(selection, option))),
                permille: area.share_of(total),
                photo: option.photos.first().and_then(|photo| self.album.photo(photo, &option.title(), 960)),
                href: Some(self.chrome.item_path(room, selection)),
            })
            .collect();
        if finishes.is_empty() { None } else { Some(Board::new(self.words, finishes)) }
    }

    /// What stands beside a finish: of one that is still to be chosen, that it is the first of several.
    fn on_the_board(&self, selection: &Selection, option: &ProductOption) -> String {
        let line = self.in_a_line(option);
        match selection.standing().len() {
            0 | 1 => line,
            several => say!(self.words, "room_says.first_of", what = line, n = several),
        }
    }

    fn item_lines(&self, room: &Room) -> Vec<ItemLine> {
        let line = |selection: &Selection| {
            let option = selection.standing().iter().next();
            ItemLine {
                link: self.chrome.item_link(room, selection),
                // The words beside it say what it shows.
                photo: option
                    .and_then(|option| self.album.photo(option.photos.first()?, "", THUMBNAIL))
                    .map(|photo| crate::views::shared::photo::Photo { alt: String::new(), caption: None, ..photo }),
                line: Html::text(&self.selection_line(selection)),
                state: self.decision(room, selection),
            }
        };
        room.selections.iter().map(line).collect()
    }

    /// How many selections a room has, and where it is.
    pub fn room_line(&self, room: &Room) -> String {
        let many = say!(self.words, "units.selections", n = room.selections.len());
        room.whereabouts
            .get()
            .map_or(format!("{many}."), |place| format!("{}. {many}.", crate::views::shared::lines::capital(place)))
    }
}
