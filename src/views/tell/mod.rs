//! Tells a book: turns what was read and assessed into what each page says.
//!
//! The pages' structs stand beside this folder; here they are filled, and every value is worded.

mod album;
mod asked;
mod carried;
mod chrome;
mod concerns;
mod figures;
mod fit;
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

use std::collections::BTreeMap;

use super::sign_off::SignOff;
use super::site::{ClientPages, InstallerPages, OfficePages, Site};
use super::wording::Wording;
use crate::assess::Assessment;
use crate::book::Book;
use crate::digest::Digest;
use crate::marks;
use crate::pictures::Renditions;
use crate::source::Files;
use crate::units::Date;

use album::Album;
use chrome::Chrome;
use history::History;

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

/// Everything that is published: pages, the pictures that they show, and sheets to sign.
pub struct Told {
    /// The pages.
    pub site: Site,
    /// The pictures that each folder shows: folder, path in it, and the file to take.
    pub pictures: BTreeMap<&'static str, Vec<PageFile>>,
    /// The sheets to sign: their path in the client's and the office's folder.
    pub papers: Vec<(String, SignOff)>,
}

/// What every teller of a page needs.
struct Teller<'a> {
    subject: Subject<'a>,
    wording: Wording,
    chrome: Chrome<'a>,
    /// Each item's mark, by room and selection.
    marks: BTreeMap<(&'a str, &'a str), Digest>,
    /// What each issue made new or changed.
    history: &'a History,
    /// The pictures that this folder shows.
    album: Album<'a>,
}

/// Tells the whole book.
pub fn tell(subject: Subject<'_>) -> Told {
    let (marks, history) = (marks_of(subject), History::of(subject.book));
    let teller = || Teller {
        subject,
        wording: figures::wording(subject.book),
        chrome: Chrome::of(subject),
        marks: marks.clone(),
        history: &history,
        album: Album::of(subject.pictures),
    };
    let ((client, papers, for_client), ((installer, for_installer), (office, for_office))) = rayon::join(
        || for_the_client(teller()),
        || rayon::join(|| for_the_installer(teller()), || for_the_office(teller())),
    );
    let language = subject.book.project.languages.first().cloned().unwrap_or_else(|| "en".into());
    let pictures = [("client", for_client), ("installer", for_installer), ("office", for_office)].into();
    Told { site: Site { language, client, installer, office }, pictures, papers }
}

/// Each item's mark, with the pictures' digests as reading took them or, where it took none, as they were made.
fn marks_of(subject: Subject<'_>) -> BTreeMap<(&str, &str), Digest> {
    let read = marks::as_read(subject.book);
    let picture = |path: &str| read(path).or_else(|| Some(subject.pictures.get(path)?.digest));
    marks::items(subject.book, &picture).into_iter().map(|(item, marked)| (item, marked.mark)).collect()
}

fn for_the_client(teller: Teller<'_>) -> (ClientPages, Vec<(String, SignOff)>, Vec<PageFile>) {
    let pages =
        ClientPages { cover: teller.cover(), rooms: teller.rooms(), items: teller.items(), sign: teller.sign() };
    let papers = teller.papers();
    (pages, papers, teller.album.shown())
}

fn for_the_installer(teller: Teller<'_>) -> (InstallerPages, Vec<PageFile>) {
    let pages = InstallerPages { index: teller.installer_index(), openings: teller.openings() };
    (pages, teller.album.shown())
}

fn for_the_office(teller: Teller<'_>) -> (OfficePages, Vec<PageFile>) {
    let pages = OfficePages {
        index: teller.office_index(),
        schedules: teller.schedules(),
        orders: teller.orders(),
        money: teller.money(),
        review: teller.review(),
        rules: Some(teller.rules()),
    };
    (pages, teller.album.shown())
}
