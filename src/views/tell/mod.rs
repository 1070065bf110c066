//! Tells a book: turns what was read and assessed into what each page says.
//!
//! The pages' structs stand beside this folder; here they are filled, and every value is worded.

mod album;
mod carried;
mod chrome;
mod concerns;
mod figures;
mod fit;
mod item;
mod lines;
mod mark;
mod prose;
mod states;

mod cover;
mod room;
mod sign;
mod sign_off;

mod installer;
mod opening;
mod opening_drawings;

mod money;
mod office;
mod orders;
mod review;
mod rules;
mod schedule;

pub use album::PageFile;

use std::collections::BTreeMap;

use super::sign_off::SignOff;
use super::site::{ClientPages, InstallerPages, OfficePages, Site};
use super::wording::Wording;
use crate::assess::Assessment;
use crate::book::Book;
use crate::pictures::Renditions;
use crate::source::Files;
use crate::units::Date;

use album::Album;
use chrome::Chrome;

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
    marks: BTreeMap<(&'a str, &'a str), String>,
    /// The pictures that this folder shows.
    album: Album<'a>,
}

/// Tells the whole book.
pub fn tell(subject: Subject<'_>) -> Told {
    let teller = || Teller {
        subject,
        wording: figures::wording(subject.book),
        chrome: Chrome::of(subject),
        marks: mark::items(subject),
        album: Album::of(subject.pictures),
    };
    let (client, installer, office) = (teller(), teller(), teller());
    let site = Site {
        language: subject.book.project.languages.first().cloned().unwrap_or_else(|| "en".into()),
        client: ClientPages {
            cover: client.cover(),
            rooms: client.rooms(),
            items: client.items(),
            sign: client.sign(),
        },
        installer: InstallerPages { index: installer.installer_index(), openings: installer.openings() },
        office: OfficePages {
            index: office.office_index(),
            schedules: office.schedules(),
            orders: office.orders(),
            money: office.money(),
            review: office.review(),
            rules: Some(office.rules()),
        },
    };
    let papers = client.papers();
    let pictures = [("client", client.album), ("installer", installer.album), ("office", office.album)];
    let pictures = pictures.into_iter().map(|(folder, album)| (folder, album.shown())).collect();
    Told { site, pictures, papers }
}
