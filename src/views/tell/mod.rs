//! Tells a book: turns what was read and assessed into what each page says.
//!
//! The pages' structs stand beside this folder; here they are filled, and every value is worded.

mod album;
mod asked;
mod carried;
mod chrome;
mod concerns;
mod examples;
mod figures;
mod fit;
mod found;
mod history;
mod item;
mod lines;
mod parts;
mod prose;
mod states;

mod cover;
mod room;
mod room_drawings;
mod sign;
mod sign_off;
mod signatures;

mod change_order;

mod installer;
mod opening;
mod opening_drawings;
mod opening_tape;

mod given;
mod heat;
mod money;
mod office;
mod orders;
mod review;
mod rules;
mod schedule;
mod waiting;

pub use album::PageFile;
pub use asked::stated;
pub use change_order::change_order;
pub use given::scan_path;

use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

use super::asked::{Asked, Issued};
use super::sheet::IssuedAs;
use super::sign_off::SignOff;
use super::site::{ClientPages, InstallerPages, OfficePages, Portion, Site};
use super::wording::Wording;
use crate::assess::Assessment;
use crate::book::Book;
use crate::digest::Digest;
use crate::ledger::IssuedItem;
use crate::marks;
use crate::pictures::Renditions;
use crate::site::plan::Plans;
use crate::source::Files;
use crate::units::Date;

use album::Album;
use chrome::Chrome;
use found::Found;
use history::History;
use opening::At;

/// What pages are made from.
#[derive(Clone, Copy)]
pub struct Subject<'a> {
    /// The book.
    pub book: &'a Book,
    /// What was found and counted.
    pub assessment: &'a Assessment,
    /// The texts, for the places of findings.
    pub files: &'a Files,
    /// The pictures that could be made, by their path in the book.
    pub pictures: &'a BTreeMap<String, Renditions>,
    /// The day.
    pub today: Date,
    /// Whether every page is marked as a draft.
    pub draft: bool,
}

/// The items of an issue by room and selection.
type ByItem<'a> = HashMap<(&'a str, &'a str), &'a IssuedItem>;

/// What every teller of a page needs.
struct PageBuilder<'a> {
    subject: Subject<'a>,
    wording: Wording,
    chrome: Chrome<'a>,
    /// Each item's mark, by room and selection.
    marks: Arc<BTreeMap<(&'a str, &'a str), Digest>>,
    /// What each issue made new or changed.
    history: Arc<History>,
    /// Every item of each issue.
    issued: Arc<BTreeMap<u32, ByItem<'a>>>,
    /// The findings, by what they are about.
    found: Arc<Found<'a>>,
    /// The pictures that this folder shows.
    album: Album<'a>,
}

/// Tells a book: each page when it is asked for.
pub struct Telling<'a> {
    language: String,
    client: PageBuilder<'a>,
    installer: PageBuilder<'a>,
    office: PageBuilder<'a>,
    plans: Plans<'a>,
    openings: Vec<At<'a>>,
    /// What every page asks that asks at all.
    asking: Option<(Issued, Asked)>,
}

impl<'a> Telling<'a> {
    /// What all pages have in common.
    pub fn of(subject: Subject<'a>) -> Self {
        let (marks, history) = (Arc::new(marks_of(subject)), Arc::new(History::of(subject.book)));
        let issues = subject.book.record.issues.iter();
        let issued = Arc::new(issues.map(|(number, issue)| (*number, issue.by_item())).collect());
        let found = Arc::new(Found::of(&subject.assessment.findings));
        let teller = || PageBuilder {
            subject,
            wording: figures::wording(subject.book),
            chrome: Chrome::of(subject),
            marks: Arc::clone(&marks),
            history: Arc::clone(&history),
            issued: Arc::clone(&issued),
            found: Arc::clone(&found),
            album: Album::of(subject.pictures),
        };
        let (client, installer, office) = (teller(), teller(), teller());
        Self {
            language: subject.book.project.languages.first().cloned().unwrap_or_else(|| "en".into()),
            plans: Plans::of(subject.book),
            openings: installer.at_openings(),
            asking: client.asking(),
            client,
            installer,
            office,
        }
    }

    /// The newest issue.
    pub fn issued(&self) -> Option<&IssuedAs> {
        self.client.chrome.project().issued.as_ref()
    }

    /// The sheets to sign: their path in the client's and the office's folder.
    pub fn papers(&self) -> Vec<(String, SignOff)> {
        self.client.papers()
    }

    /// The pages, each a portion of its own.
    pub fn pages(&self) -> Vec<Portion<'_>> {
        self.of_client().chain(self.of_installer()).chain(self.of_office()).collect()
    }

    /// The pictures that the told pages of each folder show: folder, path in it, and the file to take.
    pub fn pictures(self) -> BTreeMap<&'static str, Vec<PageFile>> {
        let shown = [("client", self.client), ("installer", self.installer), ("office", self.office)];
        shown.into_iter().map(|(folder, teller)| (folder, teller.album.shown())).collect()
    }

    fn of_client(&self) -> impl Iterator<Item = Portion<'_>> {
        let teller = &self.client;
        let portion = move |client: ClientPages| Site { language: self.language.clone(), client, ..Site::default() };
        let rooms = &teller.subject.book.rooms;
        let before = |at: usize| at.checked_sub(1).and_then(|at| rooms.get(at));
        let room = move |(at, room)| -> Portion<'_> {
            Box::new(move || {
                portion(ClientPages {
                    rooms: vec![teller.room(&self.plans, room, before(at))],
                    ..ClientPages::default()
                })
            })
        };
        let item = move |room, at| -> Portion<'_> {
            Box::new(move || {
                let items = teller.item(room, at, self.asking.as_ref()).into_iter().collect();
                portion(ClientPages { items, ..ClientPages::default() })
            })
        };
        let items = rooms.iter().flat_map(move |room| (0..room.selections.len()).map(move |at| item(room, at)));
        let first: [Portion<'_>; 2] = [
            Box::new(move || portion(ClientPages { cover: Some(teller.cover()), ..ClientPages::default() })),
            Box::new(move || portion(ClientPages { sign: Some(teller.sign()), ..ClientPages::default() })),
        ];
        first.into_iter().chain(rooms.iter().enumerate().map(room)).chain(items)
    }

    fn of_installer(&self) -> impl Iterator<Item = Portion<'_>> {
        let teller = &self.installer;
        let portion =
            move |installer: InstallerPages| Site { language: self.language.clone(), installer, ..Site::default() };
        let opening = move |at| -> Portion<'_> {
            Box::new(move || {
                let openings = teller.opening_page(&self.plans, &self.openings, at).into_iter().collect();
                portion(InstallerPages { openings, ..InstallerPages::default() })
            })
        };
        let index: Portion<'_> = Box::new(move || {
            let index = Some(teller.installer_index(&self.plans, &self.openings));
            portion(InstallerPages { index, ..InstallerPages::default() })
        });
        std::iter::once(index).chain((0..self.openings.len()).map(opening))
    }

    fn of_office(&self) -> impl Iterator<Item = Portion<'_>> {
        let teller = &self.office;
        let portion = move |office: OfficePages| Site { language: self.language.clone(), office, ..Site::default() };
        let page = move |tell: fn(&PageBuilder<'a>, &mut OfficePages)| -> Portion<'_> {
            Box::new(move || {
                let mut office = OfficePages::default();
                tell(teller, &mut office);
                portion(office)
            })
        };
        let pages: [fn(&PageBuilder<'a>, &mut OfficePages); 6] = [
            |teller, office| office.index = Some(teller.office_index()),
            |teller, office| office.schedules = teller.schedules(),
            |teller, office| office.orders = Some(teller.orders()),
            |teller, office| office.money = Some(teller.money()),
            |teller, office| office.review = Some(teller.review()),
            |teller, office| office.rules = Some(teller.rules()),
        ];
        pages.into_iter().map(page)
    }
}

/// Each item's mark, with the pictures' digests as reading took them or, where it took none, as they were made.
fn marks_of(subject: Subject<'_>) -> BTreeMap<(&str, &str), Digest> {
    let read = marks::as_read(subject.book);
    let picture = |path: &str| read(path).or_else(|| Some(subject.pictures.get(path)?.digest));
    marks::items(subject.book, &picture).into_iter().map(|(item, marked)| (item, marked.mark)).collect()
}
