//! The office's first page: what stands in the way, and the sheets.

use std::collections::BTreeMap;

use crate::assess::approval::Given;
use crate::assess::{InTheWay, Unapproved};
use crate::book::{Approver, Room, Selection};
use crate::finding::Finding;
use crate::shown::trades::{notes_of_plan, notes_of_thing};
use crate::units::series;
use crate::views::office::responses::scan_path;
use crate::views::office::schedules;
use crate::views::office::tables::{Cell, Column, Table};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::day_of;
use crate::views::shared::figures::quoted;
use crate::views::shared::html::Html;
use crate::views::shared::lines::{capital, fact};
use crate::views::shared::revisions::RevisionScope;
use crate::views::shared::sheet::{Fact, Link, Sheet, SheetPlace, on_sheet};
use crate::views::shared::state;
use crate::views::shared::state::{State, StateShape};
use serde::Serialize;

/// `index.html` of the office's folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OfficeIndex {
    pub sheet: Sheet,
    pub lead: Html,
    pub facts: Vec<Fact>,
    /// Findings counted: `2 stops`, `5 queries`, `9 notes`.
    pub counts: Vec<State>,
    pub hold_points: Vec<HoldPointCard>,
    pub sheets: Vec<Link>,
    pub papers: Vec<Link>,
    /// Orders that are next, and the like.
    pub tables: Vec<Table>,
}

/// A moment after which a mistake is dear, and what still stands in its way.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct HoldPointCard {
    pub name: String,
    /// Day of the month, in figures.
    pub day: String,
    /// `Mar 2027`.
    pub month: String,
    pub in_the_way: Vec<Obstacle>,
}

/// Something that must be settled before a hold point.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Obstacle {
    pub state: State,
    pub what: Html,
    /// Relative to the folder's root.
    pub href: Option<String>,
}

on_sheet!(OfficeIndex);

impl PageBuilder<'_> {
    /// `index.html` of the office's folder.
    pub fn office_index(&self) -> OfficeIndex {
        let counts = self.subject.assessment.counts;
        let place =
            SheetPlace { path: "index.html".into(), number: "Q-00".into(), name: "Office".into(), above: vec![] };
        let project = &self.subject.book.project;
        let lead = match counts.stops {
            0 => "Nothing stops this book.".to_string(),
            1 => "One finding stops this book; it must be mended or waived before it is issued.".into(),
            many => format!("{many} findings stop this book; they must be mended or waived before it is issued."),
        };
        let mut facts = vec![fact("Selections", self.subject.book.selections().count().to_string())];
        facts.extend(project.private.get().map(|note| fact("For the office", note.as_str())));
        let sheets = self.office_sheets();
        OfficeIndex {
            sheet: self.revised(self.chrome.sheet(place, None, None, sheets.first().cloned()), RevisionScope::All),
            lead: Html::text(&lead),
            facts,
            counts: state::counts(self.words, counts),
            hold_points: self.hold_points(),
            sheets,
            papers: self.paper_links(),
            tables: self.tables(),
        }
    }

    fn tables(&self) -> Vec<Table> {
        let of_record = self.approvals().into_iter().chain(self.responses()).chain(self.readings());
        of_record.chain([self.next_orders()]).chain(self.noted()).collect()
    }

    /// What the book notes for those who build, whichever of their sheets it stands on.
    fn noted(&self) -> Option<Table> {
        let row = |room: &Room, of: &str, note: &str| vec![Cell::from(of), room.title().into(), Cell::from(note)];
        let in_room = |room: &Room| -> Vec<Vec<Cell>> {
            let of_selection = |selection: &Selection| {
                let hung = selection.hangs.get().and_then(|hangs| hangs.note.get().cloned());
                let name = format!("{} {}", selection.tag, selection.name.value);
                let notes = notes_of_thing(selection).into_iter().chain(hung);
                notes.map(|note| row(room, &name, &note)).collect::<Vec<_>>()
            };
            let of_plan = notes_of_plan(room).into_iter().map(|(name, note)| row(room, &name, &note));
            room.selections.iter().flat_map(of_selection).chain(of_plan).collect()
        };
        let rows: Vec<Vec<Cell>> = self.subject.book.rooms.iter().flat_map(in_room).collect();
        let columns = ["Of", "Room", "Note"].map(|name| Column { name: name.into(), figures: false });
        let scope = Some("for those who build; what the client reads is none of it".into());
        let name = "Notes".into();
        (!rows.is_empty()).then(|| Table { name, scope, columns: columns.to_vec(), rows, totals: vec![] })
    }

    /// What stands of every item's approval, by approver; nothing while nothing was issued.
    fn approvals(&self) -> Option<Table> {
        let (issue, on) = self.subject.assessment.approvals.issue?;
        let approvers = &self.subject.book.project.approvers;
        let heads = ["Item", "Stands"].into_iter().map(str::to_string);
        let heads = heads.chain(approvers.iter().map(|approver| approver.name.clone()));
        let row = |(room, selection): (&Room, &Selection)| {
            let stated = |state| Cell { state: Some(state), ..Cell::default() };
            let name = Cell::from(format!("{} {}", selection.tag, selection.name.value).as_str());
            let said = approvers.iter().map(|approver| self.said_how(approver, room, selection));
            [name, stated(self.decision_for_office(room, selection))].into_iter().chain(said).collect()
        };
        Some(Table {
            name: "Approvals".into(),
            scope: Some(format!("of issue {issue}, {on}; only what every needed approver approved may be ordered")),
            columns: heads.map(|name| Column { name, figures: false }).collect(),
            rows: self.subject.book.selections().map(row).chain(self.withdrawn()).collect(),
            totals: vec![],
        })
    }

    /// What was issued and is in the book no longer, with who had approved it.
    fn withdrawn(&self) -> impl Iterator<Item = Vec<Cell>> {
        let approvers = &self.subject.book.project.approvers;
        self.subject.assessment.approvals.withdrawn.iter().map(|gone| {
            let said = approvers.iter().map(|approver| match gone.approved_by.contains(&approver.name) {
                true => Cell::from("had approved it"),
                false => Cell::default(),
            });
            let name = Cell::from(format!("{} {}", gone.tag, gone.name).as_str());
            let stands = format!("Withdrawn after issue {}; its number is not used again", gone.issue);
            [name, Cell::from(stands.as_str())].into_iter().chain(said).collect()
        })
    }

    /// What an approver said, how and when it was given, and the scan of what was signed on paper.
    fn said_how(&self, approver: &Approver, room: &Room, selection: &Selection) -> Cell {
        let state = Some(self.said_for_office(approver, room, selection));
        let item = self.subject.assessment.approvals.item(room, selection);
        let word = item.and_then(|item| item.words.iter().find(|word| word.who == approver.id.value));
        let Some(word) = word else { return Cell { state, ..Cell::default() } };
        let on = if matches!(word.given, Given::ByHand(_)) {
            String::new()
        } else {
            format!("{}, ", day_of(self.words, word.made))
        };
        let scan = self.subject.book.record.kept.get(&word.response).and_then(|kept| kept.scan.as_ref());
        Cell {
            state,
            text: scan.map_or_else(Html::default, |_| "scan".into()),
            href: scan.map(|scan| scan_path(&scan.name)),
            note: Some(Html::text(&format!("{on}{}", self.how(word)))),
            ..Cell::default()
        }
    }

    fn hold_points(&self) -> Vec<HoldPointCard> {
        self.subject.assessment.in_the_way(self.subject.book).into_iter().map(|point| self.hold_point(&point)).collect()
    }

    fn hold_point(&self, held: &InTheWay<'_>) -> HoldPointCard {
        let whole = held.point.on.map(|on| on.to_string()).unwrap_or_default();
        let (day, month) = whole.split_once(' ').unwrap_or(("", if held.at_once { "Now" } else { "No date" }));
        HoldPointCard {
            name: capital(&held.point.name),
            day: day.into(),
            month: month.into(),
            in_the_way: held
                .findings
                .iter()
                .map(|finding| self.obstacle(finding))
                .chain(unapproved(&held.unapproved))
                .collect(),
        }
    }

    fn obstacle(&self, finding: &Finding) -> Obstacle {
        let book = self.subject.book;
        let room = finding.room.as_ref().and_then(|room| book.room(room)).map(|room| room.title());
        let of = [room, finding.subject.name()].into_iter().flatten().collect::<Vec<_>>().join(", ");
        let said = quoted(&finding.message);
        let what = if of.is_empty() { said } else { Html::text(&of).then(": ").then(said) };
        Obstacle { state: state::severity(self.words, finding), what, href: None }
    }

    /// Every sheet of the office, in order.
    pub fn office_sheets(&self) -> Vec<Link> {
        let schedules = schedules::TITLES.iter().map(|title| Link {
            href: format!("schedules/{}.html", title.trade.word()),
            name: title.name.into(),
            number: Some(title.number.into()),
        });
        let rest = [
            ("orders.html", "Orders by date", "Q-07"),
            ("money.html", "Money against allowances", "Q-08"),
            ("review.html", "Review", "Q-09"),
            ("rules.html", "What the review checks", "Q-10"),
        ];
        let rest = rest.into_iter().map(|(href, name, number)| Link {
            href: href.into(),
            name: name.into(),
            number: Some(number.into()),
        });
        schedules.chain(rest).collect()
    }

    /// The place of one of the office's sheets, and its neighbours.
    pub fn office_place(&self, number: &str) -> (SheetPlace, Option<Link>, Option<Link>) {
        let sheets = self.office_sheets();
        let at = sheets.iter().position(|sheet| sheet.number.as_deref() == Some(number)).unwrap_or(0);
        let index = Link { href: "index.html".into(), name: "Office".into(), number: Some("Q-00".into()) };
        let from = at.checked_sub(1).and_then(|at| sheets.get(at).cloned()).unwrap_or(index);
        let own = sheets.get(at).cloned().unwrap_or_default();
        let place =
            SheetPlace { path: own.href, number: number.into(), name: own.name, above: vec![self.chrome.first()] };
        (place, Some(from), sheets.get(at + 1).cloned())
    }
}

/// What may not be ordered before it is approved, in one line for each way that it stands.
fn unapproved(things: &[Unapproved<'_>]) -> impl Iterator<Item = Obstacle> {
    let mut by_standing: BTreeMap<&str, Vec<String>> = BTreeMap::new();
    for thing in things {
        let name = format!("{} {}", thing.selection.tag, thing.selection.name.value);
        by_standing.entry(thing.stands).or_default().push(name);
    }
    by_standing.into_iter().map(|(stands, names)| Obstacle {
        state: State::new(StateShape::Waiting, "approval"),
        what: Html::text(&format!("{}: {stands}", series(&names))),
        href: None,
    })
}
