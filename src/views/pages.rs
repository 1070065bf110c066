//! The pages of a book, folder by folder, each made when it is asked for.

use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

use crate::assess::Assessment;
use crate::book::Book;
use crate::digest::Digest;
use crate::language::{Language, Words};
use crate::ledger::IssuedItem;
use crate::pictures::Renditions;
use crate::shown;
use crate::shown::trades::Builders;
use crate::site::plan::Plans;
use crate::source::Files;
use crate::units::Date;
use crate::views::client::cover::Cover;
use crate::views::client::decision_request::{DecisionRequest, LatestIssue};
use crate::views::client::item::ItemPage;
use crate::views::client::room::RoomPage;
use crate::views::client::sign::SignPage;
use crate::views::office::index::OfficeIndex;
use crate::views::office::review::ReviewPage;
use crate::views::office::rules::RulesPage;
use crate::views::office::tables::SchedulePage;
use crate::views::paper::sign_off::SignOff;
use crate::views::shared::figures;
use crate::views::shared::found::Found;
use crate::views::shared::photo::{Album, PageFile};
use crate::views::shared::revisions::History;
use crate::views::shared::sheet::{IssuedAs, SheetFrame};
use crate::views::shared::sheet_revisions::Sheets;
use crate::views::shared::wording::Wording;
use crate::views::trades::delivery::{DeliveryPage, Load};
use crate::views::trades::index::InstallerIndex;
use crate::views::trades::opening::{OpeningPage, SheetOpening};
use crate::views::trades::sheets::TradePage;

/// Makes some pages of a site, when they are asked for: built one after another, a large book is never held whole.
pub type Portion<'a> = Box<dyn Fn() -> Pages + Send + Sync + 'a>;

/// What pages of a site say: the whole, or a portion of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pages {
    /// How they are worded, and how else.
    pub edition: EditionOf,
    pub client: ClientPages,
    pub installer: InstallerPages,
    pub office: OfficePages,
}

/// In which language pages are worded, where they stand in their reader's folder, and what other wordings there are.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct EditionOf {
    /// The language.
    pub language: Language,
    /// Before the path of each page in its folder: nothing in the first language, `es/` in another.
    pub prefix: String,
    /// The other languages of the same pages, each with its prefix.
    pub others: Vec<(Language, String)>,
}

impl EditionOf {
    /// Those of a reader's languages, the first of which stands at the folder's root.
    fn all(languages: &[Language]) -> Vec<Self> {
        let prefixed = |at: usize, language: Language| if at == 0 { String::new() } else { format!("{language}/") };
        let all: Vec<(Language, String)> =
            languages.iter().enumerate().map(|(at, language)| (*language, prefixed(at, *language))).collect();
        let edition = |(language, prefix): &(Language, String)| Self {
            language: *language,
            prefix: prefix.clone(),
            others: all.iter().filter(|(other, _)| other != language).cloned().collect(),
        };
        all.iter().map(edition).collect()
    }
}

/// For the people who choose and pay: no cost, no margin, no private note.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ClientPages {
    pub cover: Option<Cover>,
    pub rooms: Vec<RoomPage>,
    pub items: Vec<ItemPage>,
    pub sign: Option<SignPage>,
}

/// For those who build it in: sizes, services and cautions, no price.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct InstallerPages {
    pub index: Option<InstallerIndex>,
    pub openings: Vec<OpeningPage>,
    /// One a trade and room.
    pub trades: Vec<TradePage>,
    /// One a load of a supplier.
    pub deliveries: Vec<DeliveryPage>,
}

/// For the firm alone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OfficePages {
    pub index: Option<OfficeIndex>,
    /// Finish, appliance, plumbing, lighting, hardware and tile.
    pub schedules: Vec<SchedulePage>,
    pub orders: Option<SchedulePage>,
    pub money: Option<SchedulePage>,
    pub review: Option<ReviewPage>,
    pub rules: Option<RulesPage>,
}

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
pub(super) type ByItem<'a> = HashMap<(&'a str, &'a str), &'a IssuedItem>;

/// What every page is made from: a builder makes those of one folder.
pub(super) struct PageBuilder<'a> {
    pub(super) subject: Subject<'a>,
    /// The language of its readers.
    pub(super) words: Words,
    /// Before the path of each page in its folder.
    pub(super) prefix: String,
    pub(super) wording: Wording,
    pub(super) chrome: SheetFrame<'a>,
    /// Each item's mark, by room and selection.
    pub(super) marks: Arc<BTreeMap<(&'a str, &'a str), Digest>>,
    /// What each opening is built from, now and as it was issued.
    pub(super) sheets: Arc<Sheets<'a>>,
    /// What each issue made new or changed.
    pub(super) history: Arc<History>,
    /// Every item of each issue.
    pub(super) issued: Arc<BTreeMap<u32, ByItem<'a>>>,
    /// The findings, by what they are about.
    pub(super) found: Arc<Found<'a>>,
    /// The rooms' plans.
    pub(super) plans: Arc<Plans<'a>>,
    /// The pictures that this folder shows.
    pub(super) album: Album<'a>,
}

/// A reader's pages in one language.
struct Edition<'a> {
    of: EditionOf,
    builder: PageBuilder<'a>,
}

/// The pages of a book, each built when it is asked for.
pub struct BookPages<'a> {
    client: Vec<Edition<'a>>,
    installer: Vec<Edition<'a>>,
    office: Vec<Edition<'a>>,
    plans: Arc<Plans<'a>>,
    openings: Vec<SheetOpening<'a>>,
    /// What each supplier brings.
    loads: Vec<Load<'a>>,
    /// What every page asks that asks at all.
    asking: Option<(LatestIssue, DecisionRequest)>,
}

impl<'a> BookPages<'a> {
    /// What all pages have in common.
    pub fn of(subject: Subject<'a>) -> Self {
        let (marks, history) = (Arc::new(marks_of(subject)), Arc::new(History::of(subject.book)));
        let issues = subject.book.record.issues.iter();
        let issued = Arc::new(issues.map(|(number, issue)| (*number, issue.by_item())).collect());
        let found = Arc::new(Found::of(&subject.assessment.findings));
        let plans = Arc::new(Plans::of(subject.book));
        let sheets = Arc::new(Sheets::of(subject.book, &plans));
        let builder = |words: Words, prefix: String| PageBuilder {
            subject,
            words,
            prefix,
            wording: figures::wording(subject.book, words),
            chrome: SheetFrame::of(subject, words),
            marks: Arc::clone(&marks),
            sheets: Arc::clone(&sheets),
            history: Arc::clone(&history),
            issued: Arc::clone(&issued),
            found: Arc::clone(&found),
            plans: Arc::clone(&plans),
            album: Album::of(subject.pictures),
        };
        let editions = |languages: &[Language]| -> Vec<Edition<'a>> {
            let edition = |of: EditionOf| Edition { builder: builder(of.language.words(), of.prefix.clone()), of };
            EditionOf::all(languages).into_iter().map(edition).collect()
        };
        let project = &subject.book.project;
        let client = editions(&project.languages_of_client());
        let installer = editions(&project.languages_of_installer());
        let office = editions(&[project.language_of_office()]);
        Self {
            plans,
            openings: installer.first().map(|edition| edition.builder.at_openings()).unwrap_or_default(),
            loads: installer.first().map(|edition| edition.builder.loads()).unwrap_or_default(),
            asking: client.first().and_then(|edition| edition.builder.asking()),
            client,
            installer,
            office,
        }
    }

    /// The newest issue.
    pub fn issued(&self) -> Option<&IssuedAs> {
        self.client.first()?.builder.chrome.project().issued.as_ref()
    }

    /// The sheets to sign: their path in the client's and the office's folder.
    pub fn papers(&self) -> Vec<(String, SignOff)> {
        let of = |edition: &Edition<'a>| {
            let prefix = edition.of.prefix.clone();
            edition.builder.papers().into_iter().map(move |(path, paper)| (format!("{prefix}{path}"), paper))
        };
        self.client.iter().flat_map(of).collect()
    }

    /// The pages, each a portion of its own.
    pub fn pages(&self) -> Vec<Portion<'_>> {
        let client = self.client.iter().flat_map(|edition| self.of_client(edition));
        let installer = self.installer.iter().flat_map(|edition| self.of_installer(edition));
        client.chain(installer).chain(self.office.iter().flat_map(Self::of_office)).collect()
    }

    /// The pictures that the built pages of each folder show: folder, path in it, and the file to take.
    pub fn pictures(self) -> BTreeMap<&'static str, Vec<PageFile>> {
        let shown = [("client", self.client), ("installer", self.installer), ("office", self.office)];
        // Editions side by side show the same picture, which stands in their folder once.
        let of = |editions: Vec<Edition<'a>>| -> BTreeMap<String, PageFile> {
            let files = editions.into_iter().flat_map(|edition| edition.builder.album.shown());
            files.map(|file| (file.path.clone(), file)).collect()
        };
        shown.into_iter().map(|(folder, editions)| (folder, of(editions).into_values().collect())).collect()
    }

    fn of_client<'s>(&'s self, edition: &'s Edition<'a>) -> impl Iterator<Item = Portion<'s>> {
        let builder = &edition.builder;
        let portion = move |client: ClientPages| Pages { edition: edition.of.clone(), client, ..Pages::default() };
        let rooms = &builder.subject.book.rooms;
        let before = |at: usize| at.checked_sub(1).and_then(|at| rooms.get(at));
        let room = move |(at, room)| -> Portion<'s> {
            Box::new(move || {
                portion(ClientPages {
                    rooms: vec![builder.room(&self.plans, room, before(at))],
                    ..ClientPages::default()
                })
            })
        };
        let item = move |room, at| -> Portion<'s> {
            Box::new(move || {
                let items = builder.item(room, at, self.asking.as_ref()).into_iter().collect();
                portion(ClientPages { items, ..ClientPages::default() })
            })
        };
        let items = rooms.iter().flat_map(move |room| (0..room.selections.len()).map(move |at| item(room, at)));
        let first: [Portion<'s>; 2] = [
            Box::new(move || portion(ClientPages { cover: Some(builder.cover()), ..ClientPages::default() })),
            Box::new(move || portion(ClientPages { sign: Some(builder.sign()), ..ClientPages::default() })),
        ];
        first.into_iter().chain(rooms.iter().enumerate().map(room)).chain(items)
    }

    fn of_installer<'s>(&'s self, edition: &'s Edition<'a>) -> impl Iterator<Item = Portion<'s>> {
        let builder = &edition.builder;
        let portion =
            move |installer: InstallerPages| Pages { edition: edition.of.clone(), installer, ..Pages::default() };
        let opening = move |at| -> Portion<'s> {
            Box::new(move || {
                let openings = builder.opening_page(&self.plans, &self.openings, at).into_iter().collect();
                portion(InstallerPages { openings, ..InstallerPages::default() })
            })
        };
        let index: Portion<'s> = Box::new(move || {
            let index = Some(builder.installer_index(&self.plans, &self.openings, &self.loads));
            portion(InstallerPages { index, ..InstallerPages::default() })
        });
        let trades = move |room| -> Portion<'s> {
            Box::new(move || {
                let trades = Builders::ALL.into_iter().filter_map(|trade| builder.trade_page(room, trade)).collect();
                portion(InstallerPages { trades, ..InstallerPages::default() })
            })
        };
        let delivery = move |at| -> Portion<'s> {
            Box::new(move || {
                let deliveries = builder.delivery(&self.loads, at).into_iter().collect();
                portion(InstallerPages { deliveries, ..InstallerPages::default() })
            })
        };
        let rooms = builder.subject.book.rooms.iter();
        let openings = (0..self.openings.len()).map(opening);
        std::iter::once(index).chain(openings).chain(rooms.map(trades)).chain((0..self.loads.len()).map(delivery))
    }

    fn of_office<'s>(edition: &'s Edition<'a>) -> impl Iterator<Item = Portion<'s>> {
        let builder = &edition.builder;
        let portion = move |office: OfficePages| Pages { edition: edition.of.clone(), office, ..Pages::default() };
        let page = move |build: fn(&PageBuilder<'a>, &mut OfficePages)| -> Portion<'s> {
            Box::new(move || {
                let mut office = OfficePages::default();
                build(builder, &mut office);
                portion(office)
            })
        };
        let pages: [fn(&PageBuilder<'a>, &mut OfficePages); 6] = [
            |builder, office| office.index = Some(builder.office_index()),
            |builder, office| office.schedules = builder.schedules(),
            |builder, office| office.orders = Some(builder.orders()),
            |builder, office| office.money = Some(builder.money()),
            |builder, office| office.review = Some(builder.review()),
            |builder, office| office.rules = Some(builder.rules()),
        ];
        pages.into_iter().map(page)
    }
}

/// Each item's mark, with the pictures' digests as reading took them or, where it took none, as they were made.
fn marks_of(subject: Subject<'_>) -> BTreeMap<(&str, &str), Digest> {
    let read = shown::as_read(subject.book);
    let picture = |path: &str| read(path).or_else(|| Some(subject.pictures.get(path)?.digest));
    shown::items(subject.book, &picture).into_iter().map(|(item, marked)| (item, marked.mark)).collect()
}
