//! What every page has in common: its title block, its number, where it stands and where it leads.

use crate::book::{Book, Opening, Room, Selection};
use crate::language::{Words, say};
use crate::ledger::{Head, Purpose};
use crate::views::pages::Subject;
use crate::views::shared::data::Data;
use crate::views::shared::html::Html;
use crate::views::shared::page_names::PageNames;
use crate::views::shared::revisions::Revision;
use serde::Serialize;

/// One sheet of the book: the frame that every page is set in.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Sheet {
    /// Where the page stands in its folder, with forward slashes: `rooms/kitchen.html`.
    pub path: String,
    /// The sheet number, such as `K-07`.
    pub number: String,
    pub name: String,
    /// From the cover down to this page; the last crumb is the page itself and has no link.
    pub trail: Vec<Crumb>,
    pub project: Project,
    /// How the scale of the drawings on it is told; absent when there are none.
    pub scale: Option<String>,
    /// Eight hex digits in two fours; absent where nothing is signed.
    pub mark: Option<String>,
    /// The marks of paper that was issued before and says the same.
    pub marks_before: Vec<String>,
    pub revisions: Vec<Revision>,
    /// The sheet before this one, with a folder-relative link.
    pub from: Option<Link>,
    /// The sheet after this one.
    pub onward: Option<Link>,
    /// A code to scan on paper, which leads to the page itself where the book says where it is published.
    pub code: Option<CodeToScan>,
}

/// A code on paper.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct CodeToScan {
    /// The address, with the mark of the paper and its issue.
    pub address: String,
    /// The drawing.
    pub svg: Html,
}

/// Whom to call.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Call {
    /// The number as the book writes it.
    pub number: String,
    /// `tel:` and the number that is dialled.
    pub href: String,
}

impl Call {
    /// A telephone number that can be tapped; none where nothing in it can be dialled.
    pub fn of(number: &str) -> Option<Self> {
        let plus = if number.trim_start().starts_with('+') { "+" } else { "" };
        let digits: String = number.chars().filter(char::is_ascii_digit).collect();
        (!digits.is_empty()).then(|| Self { number: number.into(), href: format!("tel:{plus}{digits}") })
    }
}

/// The part of the title block that is the same on every sheet.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Project {
    pub title: String,
    pub number: Option<String>,
    pub client: Option<String>,
    pub firm: Option<String>,
    /// What the firm does, in a line.
    pub firm_line: Option<String>,
    /// `3, for approval`, or `draft, not issued`.
    pub issue: String,
    pub date: String,
    /// Marks every page, on the screen and on paper, as a draft.
    pub draft: bool,
    /// The newest issue when the page was made; absent while none was.
    pub issued: Option<IssuedAs>,
    /// What a trade's page asks: that the issue came to hand; absent while none was made.
    pub holds: Option<Data>,
    /// The office's telephone.
    pub call: Option<Call>,
}

/// A book and one of its issues, by which a page can know that a newer one stands.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct IssuedAs {
    /// The book's id: 32 hex digits.
    pub book: String,
    /// The issue's number.
    pub issue: u32,
    /// Its day: `2027-01-15`.
    pub on: String,
}

/// One step of the way to a page.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Crumb {
    pub name: String,
    /// Relative to the folder's root; absent for the page itself.
    pub href: Option<String>,
}

/// A link to another sheet of the same folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Link {
    /// Relative to the folder's root.
    pub href: String,
    pub name: String,
    /// The sheet number, where it has one.
    pub number: Option<String>,
}

/// A named value, as in the ruled list beside a title.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Fact {
    pub name: String,
    pub value: Html,
}

/// A caution, or another thing to know, in a hatched bar.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Notice {
    pub title: String,
    pub lines: Vec<Html>,
}

/// Has a sheet: every page's view.
pub trait OnSheet: Serialize {
    /// The sheet that the page is set on.
    fn sheet(&self) -> &Sheet;
}

/// Gives each view struct named its sheet.
macro_rules! on_sheet {
    ($($view:ty),+) => {
        $(impl $crate::views::shared::sheet::OnSheet for $view {
            fn sheet(&self) -> &$crate::views::shared::sheet::Sheet {
                &self.sheet
            }
        })+
    };
}
pub(crate) use on_sheet;

/// What every sheet of a book shares, and the paths of its pages.
pub struct SheetFrame<'a> {
    words: Words,
    project: Project,
    names: PageNames<'a>,
}

/// A sheet in the making: its path, number, name, and the crumbs above it.
pub struct SheetPlace {
    /// Path in its folder.
    pub path: String,
    /// Sheet number.
    pub number: String,
    /// Its name.
    pub name: String,
    /// Links above it, the cover first.
    pub above: Vec<Crumb>,
}

impl<'a> SheetFrame<'a> {
    /// The chrome of a book.
    pub fn of(subject: Subject<'a>, words: Words) -> Self {
        let book = subject.book;
        let project = &book.project;
        let given = |slot: &crate::book::Slot<String>| slot.get().cloned();
        let shared = Project {
            title: project.title.text().to_string(),
            number: given(&project.number),
            client: given(&project.client),
            firm: given(&project.firm.name),
            firm_line: given(&project.firm.trade),
            issue: issue_line(subject, words),
            date: words.day(subject.today),
            draft: subject.draft,
            holds: holds(book),
            issued: book.record.latest().map(|issue| IssuedAs {
                book: issue.book.clone(),
                issue: issue.number,
                on: issue.on.iso(),
            }),
            call: project.firm.phone.get().and_then(|phone| Call::of(phone)),
        };
        Self { words, project: shared, names: PageNames::of(book) }
    }

    /// The name that a room has in paths.
    pub fn room_name(&self, room: &Room) -> &str {
        self.names.room(room)
    }

    /// A room's page.
    pub fn room_path(&self, room: &Room) -> String {
        format!("rooms/{}.html", self.room_name(room))
    }

    /// A selection's page.
    pub fn item_path(&self, room: &Room, selection: &Selection) -> String {
        format!("items/{}/{}.html", self.room_name(room), self.names.item(room, selection))
    }

    /// An opening's sheet.
    pub fn opening_path(&self, room: &Room, opening: &Opening) -> String {
        format!("openings/{}/{}.html", self.room_name(room), self.names.opening(opening))
    }

    /// The sheet of a room for those who build, by the word of their trade.
    pub fn trade_path(&self, room: &Room, trade: &str) -> String {
        format!("trades/{}/{trade}.html", self.room_name(room))
    }

    /// A room's sheet to sign.
    pub fn paper_path(&self, room: &Room) -> String {
        format!("sheets/rooms/{}.pdf", self.room_name(room))
    }

    /// A link to a room's page.
    pub fn room_link(&self, room: &Room) -> Link {
        Link { href: self.room_path(room), name: room.title().into(), number: Some(format!("{}-00", room.letter)) }
    }

    /// A link to a selection's page.
    pub fn item_link(&self, room: &Room, selection: &Selection) -> Link {
        Link {
            href: self.item_path(room, selection),
            name: selection.name.value.clone(),
            number: Some(selection.tag.clone()),
        }
    }

    /// The crumb of the folder's first page.
    pub fn first(&self) -> Crumb {
        let title = &self.project.title;
        let name = if title.is_empty() { say!(self.words, "pages.book") } else { title.clone() };
        Crumb { name, href: Some("index.html".into()) }
    }

    /// A sheet at a place, between two others.
    pub fn sheet(&self, place: SheetPlace, mark: Option<String>, from: Option<Link>, onward: Option<Link>) -> Sheet {
        let mut trail = place.above;
        trail.push(Crumb { name: place.name.clone(), href: None });
        Sheet {
            path: place.path,
            number: place.number,
            name: place.name,
            trail,
            project: self.project.clone(),
            scale: None,
            mark,
            marks_before: vec![],
            revisions: vec![],
            from,
            onward,
            code: None,
        }
    }

    /// The part of the title block that every sheet shares.
    pub fn project(&self) -> &Project {
        &self.project
    }
}

/// An issue that came to hand, as a trade's page says it.
#[derive(Clone, Debug, PartialEq, Serialize)]
struct Holding<'a> {
    book: &'a str,
    issue: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    ledger: Option<Head>,
    title: &'a str,
    post: Option<&'a String>,
    email: Option<&'a String>,
}

/// What is asked of whoever builds from the newest issue for construction, or else from the newest.
fn holds(book: &Book) -> Option<Data> {
    let issue = book.record.latest_for(Purpose::Construction).or(book.record.latest())?;
    let project = &book.project;
    Some(Data::of(&Holding {
        book: &issue.book,
        issue: issue.number,
        ledger: book.record.heads.get(&issue.number).copied(),
        title: project.title.text(),
        post: project.responses.post.get(),
        email: project.responses.email.get().or_else(|| project.firm.email.get()),
    }))
}

/// What the title block says of the issue: `1, for approval, 10 Jan 2027`.
fn issue_line(subject: Subject<'_>, words: Words) -> String {
    let Some(issue) = subject.book.record.latest() else {
        return say!(words, if subject.draft { "issued.draft" } else { "issued.none" });
    };
    let approvals = &subject.assessment.approvals;
    let issued = issue.by_item();
    let is_as_issued = |room: &Room, selection: &Selection| {
        let now = approvals.marked(room, selection);
        let issued = issued.get(&(room.folder.as_str(), selection.id.as_str()));
        now.zip(issued).is_none_or(|(now, issued)| now.is(&issued.mark))
    };
    let changed = subject.book.selections().any(|(room, selection)| !is_as_issued(room, selection));
    let purpose = say!(words, purpose_key(issue.purpose));
    let key = if changed { "issued.changed_since" } else { "issued.as" };
    say!(words, key, issue = issue.number, purpose = purpose, day = issue.on)
}

/// The key of what an issue is for.
pub fn purpose_key(purpose: Purpose) -> &'static str {
    match purpose {
        Purpose::Approval => "issued.for_approval",
        Purpose::Construction => "issued.for_construction",
    }
}
