//! The page of a delivery: what was approved beside what came, to be handed over as readings are. No price is on it.

use std::collections::{BTreeMap, HashSet};

use crate::assess::approval::ApprovalState;
use crate::assess::cautions;
use crate::assess::receiving::Said;
use crate::book::{ProductOption, Room, Selection, page_name_of};
use crate::digest::Digest;
use crate::finding::Hazard;
use crate::language::say;
use crate::ledger::{Came, Kept, Looked};
use crate::shown::{self, part_of};
use crate::units::{LeadTime, SpanUnit};
use crate::views::pages::PageBuilder;
use crate::views::shared::data::Data;
use crate::views::shared::found;
use crate::views::shared::html::{Html, show};
use crate::views::shared::sheet::{Fact, Link, Notice, Sheet, SheetPlace, on_sheet};
use crate::views::shared::state::{State, StateShape};
use crate::views::trades::index::DeliveryLine;
use crate::vocabulary::ShownValue;
use serde::Serialize;

/// The longest name of a page, in letters.
const LONGEST: usize = 60;
/// What can hurt whoever unloads.
const UNLOADED: [Hazard; 4] = [Hazard::Weight, Hazard::Tipping, Hazard::Glass, Hazard::Stone];

/// `deliveries/from-<supplier>.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct DeliveryPage {
    pub sheet: Sheet,
    pub label: String,
    pub facts: Vec<Fact>,
    pub cautions: Vec<Notice>,
    pub items: Vec<Expected>,
    /// What is asked of it, for the page's scripts.
    pub asks: Data,
}

on_sheet!(DeliveryPage);

/// An item that the delivery brings.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Expected {
    /// Which one it is of the items that are asked about; absent where it is not.
    pub at: Option<usize>,
    pub number: String,
    pub name: String,
    pub room: String,
    /// Whether it is approved, and of which mark.
    pub standing: Option<State>,
    /// The mark of what is approved; absent where nothing is.
    pub mark: Option<String>,
    /// What to hold beside what came; empty where nothing is approved.
    pub lines: Vec<ExpectedLine>,
    /// What was said of it before.
    pub said: Vec<Html>,
}

/// One thing to look at.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ExpectedLine {
    /// The word of it: `finish`.
    pub of: String,
    pub name: String,
    pub approved: Vec<Fact>,
}

/// Everything that one load of a supplier brings.
pub struct Load<'a> {
    path: String,
    pub(super) from: &'a str,
    pub(super) load: Option<&'a str>,
    pub(super) items: Vec<(&'a Room, &'a Selection, &'a ProductOption)>,
}

/// What was approved of an item.
pub(super) struct Approved {
    pub(super) mark: Digest,
    pub(super) option: Option<String>,
    pub(super) shown: ShownValue,
}

impl<'a> PageBuilder<'a> {
    /// Every load that is expected, by supplier: what is settled and bought there.
    pub fn loads(&self) -> Vec<Load<'a>> {
        let mut all: BTreeMap<(&str, Option<&str>), Vec<_>> = BTreeMap::new();
        for (room, selection) in self.subject.book.selections() {
            let Some(option) = selection.settled() else { continue };
            let load = option.order.load.get().map(|load| load.trim());
            all.entry((option.supplier.text().trim(), load)).or_default().push((room, selection, option));
        }
        let mut taken = HashSet::new();
        let named = all.into_iter().map(|((from, load), items)| {
            let name = page_name_of(&format!("from {from} {}", load.unwrap_or_default()));
            let name: String = name.chars().take(LONGEST).collect();
            let free = (1..).map(|count| if count == 1 { name.clone() } else { format!("{name}-{count}") });
            let path = free.into_iter().find(|name| taken.insert(name.clone())).unwrap_or(name);
            Load { path: format!("deliveries/{path}.html"), from, load, items }
        });
        named.collect()
    }

    /// A link to a load's page.
    pub fn load_link(&self, all: &[Load<'_>], number: usize) -> Option<Link> {
        let load = all.get(number)?;
        Some(Link { href: load.path.clone(), name: self.load_name(load), number: Some(sheet_number(number)) })
    }

    /// Every delivery, for the list.
    pub fn delivery_lines(&self, all: &[Load<'_>]) -> Vec<DeliveryLine> {
        let line = |(at, load): (usize, &Load<'_>)| {
            let brings = say!(self.words, "delivery.expected", n = load.items.len());
            Some(DeliveryLine { link: self.load_link(all, at)?, brings })
        };
        all.iter().enumerate().filter_map(line).collect()
    }

    fn load_name(&self, load: &Load<'_>) -> String {
        let from = match load.from {
            "" => say!(self.words, "delivery.from_nobody"),
            from => from.to_string(),
        };
        let name = load.load.map_or(from.clone(), |load| format!("{from}, {load}"));
        say!(self.words, "delivery.named", name = name)
    }

    /// The page of one of all loads, by its number.
    pub fn delivery(&self, all: &[Load<'_>], number: usize) -> Option<DeliveryPage> {
        let load = all.get(number)?;
        let index =
            Link { href: "index.html".into(), name: say!(self.words, "pages.openings"), number: Some("F-00".into()) };
        let place = SheetPlace {
            path: load.path.clone(),
            number: sheet_number(number),
            name: self.load_name(load),
            above: vec![self.chrome.first()],
        };
        let before = number.checked_sub(1).and_then(|before| self.load_link(all, before));
        let sheet = self.chrome.sheet(place, None, before.or(Some(index)), self.load_link(all, number + 1));
        let approved: Vec<Option<Approved>> =
            load.items.iter().map(|(room, selection, _)| self.approved(room, selection)).collect();
        let mut asked = 0..;
        let items = load.items.iter().zip(&approved).map(|((room, selection, _), approved)| {
            let at = approved.as_ref().and_then(|_| asked.next());
            Expected { at, ..self.expected(room, selection, approved.as_ref()) }
        });
        let items = items.collect();
        Some(DeliveryPage {
            sheet,
            label: say!(self.words, "delivery.label"),
            facts: self.load_facts(load),
            cautions: self.unloading(load),
            items,
            asks: self.delivery_asks(load, &approved),
        })
    }

    /// What is known of when it comes and how long it can be claimed.
    fn load_facts(&self, load: &Load<'_>) -> Vec<Fact> {
        let days = load.items.iter().filter_map(|(_, _, option)| {
            option.order.promised_for.get().copied().or_else(|| self.subject.assessment.dates.comes(option))
        });
        let comes = days.min().map(|day| self.worded("delivery.comes", self.words.day(day)));
        let supplier = self.subject.book.project.suppliers.called(load.from);
        let within = supplier.and_then(|supplier| supplier.claim_within.get());
        let told = within.map_or_else(|| say!(self.words, "delivery.claim_unknown"), |within| self.within(*within));
        let claims = supplier.and_then(|supplier| supplier.claims.get());
        let claims = claims.map(|claims| self.worded("delivery.claims", claims.as_str()));
        comes.into_iter().chain([self.worded("delivery.claim_within", told)]).chain(claims).collect()
    }

    /// A term, by the shorter of its two times.
    pub fn within(&self, within: LeadTime) -> String {
        let key = match within.unit {
            SpanUnit::Day => "delivery.term.days",
            SpanUnit::WorkingDay => "delivery.term.working_days",
            SpanUnit::Week => "delivery.term.weeks",
            SpanUnit::Month => "delivery.term.months",
        };
        say!(self.words, key, n = within.least)
    }

    /// What can hurt whoever unloads it, each once.
    fn unloading(&self, load: &Load<'_>) -> Vec<Notice> {
        let of = |(room, selection, _): &(&Room, &Selection, &ProductOption)| cautions::of_selection(room, selection);
        let mut hazards: Vec<Hazard> = load.items.iter().flat_map(of).filter(|one| UNLOADED.contains(one)).collect();
        hazards.sort_unstable();
        hazards.dedup();
        if hazards.is_empty() {
            return vec![];
        }
        let lines = hazards.into_iter().map(|hazard| found::caution(self.words, hazard)).collect();
        vec![Notice { title: say!(self.words, "delivery.cautions"), lines }]
    }

    fn expected(&self, room: &Room, selection: &Selection, approved: Option<&Approved>) -> Expected {
        let deliveries = &self.subject.assessment.approvals.deliveries;
        let item = self.subject.assessment.approvals.item(room, selection);
        let (shape, key) = match (approved, item.map(|item| &item.standing)) {
            (None, _) => (StateShape::Waiting, "delivery.stands.not"),
            (_, Some(ApprovalState::Approved)) => (StateShape::Approved, "delivery.stands.approved"),
            (_, Some(ApprovalState::Held)) => (StateShape::ChangedSinceSigned, "delivery.stands.held"),
            (_, Some(ApprovalState::CameOtherwise)) => (StateShape::ChangedSinceSigned, "delivery.stands.came"),
            _ => (StateShape::ChangedSinceSigned, "delivery.stands.changed"),
        };
        let standing = State::new(shape, say!(self.words, key));
        Expected {
            at: None,
            number: selection.tag.clone(),
            name: selection.name.value.clone(),
            room: room.title().into(),
            standing: Some(standing),
            mark: approved.map(|approved| shown::in_short(&approved.mark)),
            lines: approved.map_or_else(Vec::new, |approved| self.to_look_at(&approved.shown)),
            said: deliveries.said(room, selection).iter().map(|said| self.came_before(said)).collect(),
        }
    }

    /// What was approved, as it was signed.
    fn approved(&self, room: &Room, selection: &Selection) -> Option<Approved> {
        let item = self.subject.assessment.approvals.item(room, selection)?;
        let settled = selection.settled().map(|option| option.id.value.clone());
        match item.standing {
            ApprovalState::Approved | ApprovalState::Held | ApprovalState::CameOtherwise => {
                let option = item.chosen().map(str::to_string).or(settled)?;
                let shown = item.now.shown.option(&option)?.clone();
                Some(Approved { mark: item.now.mark, option: Some(option), shown })
            }
            ApprovalState::Stale(_) => {
                let word = item.words.iter().find(|word| !word.holds && word.approves() && word.given.is_known())?;
                let all = self.issued.get(&word.issue)?;
                let issued = all.get(&(room.folder.as_str(), selection.id.as_str()))?;
                let option = word.option.clone().or_else(|| issued.shown().chosen().map(str::to_string)).or(settled)?;
                let shown = shown::option_as_issued(&issued.content, &option)?;
                Some(Approved { mark: issued.mark, option: Some(option), shown })
            }
            _ => None,
        }
    }

    /// What of an option is looked at, by what it is.
    fn to_look_at(&self, shown: &ShownValue) -> Vec<ExpectedLine> {
        let line = |looked: Looked| {
            let approved = self.shown_in_lines(&part_of(shown, looked));
            let name = say!(self.words, &format!("delivery.of.{}", looked.word()));
            (!approved.is_empty()).then(|| ExpectedLine { of: looked.word().into(), name, approved })
        };
        Looked::ALL.into_iter().filter_map(line).collect()
    }

    /// `12 Jan 2027, 4711, Teo Varrick: different (finish), set aside; to be confirmed`.
    fn came_before(&self, said: &Said) -> Html {
        let came = match said.item.otherwise().map(|line| line.came).max() {
            None => say!(self.words, "delivery.came.approved"),
            Some(Came::Damaged) => say!(self.words, "delivery.came.damaged"),
            Some(_) => say!(self.words, "delivery.came.different"),
        };
        let kept = said.item.kept.map_or(String::new(), |kept| format!(", {}", say!(self.words, kept_key(kept))));
        let key = if said.counts { "delivery.said" } else { "delivery.said_waiting" };
        let day = self.words.day(said.received.on);
        let (note, by) = (said.received.delivery.note.as_str(), said.received.by.as_str());
        show!(self.words, key, day = day, note = note, by = by, came = format!("{came}{kept}"))
    }
}

/// The number of a delivery's sheet: `R-01`.
fn sheet_number(number: usize) -> String {
    format!("R-{:02}", number + 1)
}

fn kept_key(kept: Kept) -> &'static str {
    match kept {
        Kept::Taken => "delivery.kept.taken",
        Kept::SentBack => "delivery.kept.sent_back",
        Kept::SetAside => "delivery.kept.set_aside",
    }
}
