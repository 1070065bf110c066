//! A selection for the client: its options side by side, what was found, and who has to sign.

use crate::language::{Say as _, Words, say};
use std::collections::BTreeMap;

use crate::assess::{Amounts, cautions};
use crate::book::{NeededFor, ProductOption, Room, Selection};
use crate::finding::Id;
use crate::shown;
use crate::shown::ChangedValue;
use crate::units::letter;
use crate::views::client::cover::ReviewStamp;
use crate::views::client::decision_request::{DecisionRequest, LatestIssue};
use crate::views::pages::PageBuilder;
use crate::views::paper::parts;
use crate::views::shared::called::called;
use crate::views::shared::data::Data;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::figures::{hold_point, quoted};
use crate::views::shared::fit::Fit;
use crate::views::shared::found::Hurts;
use crate::views::shared::html::{Html, show};
use crate::views::shared::lines::{capital, field};
use crate::views::shared::photo::Photo;
use crate::views::shared::prose;
use crate::views::shared::revisions::RevisionScope;
use crate::views::shared::sheet::{Crumb, Fact, Link, Notice, Sheet, SheetPlace, on_sheet};
use crate::views::shared::state::State;
use crate::vocabulary::HoldPoint;
use serde::Serialize;

/// The widest that a picture stands on a selection's page, for a dense screen.
const PICTURE: u32 = 1600;

/// `items/<room>-<item>.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ItemPage {
    pub sheet: Sheet,
    /// Room and number, above the title.
    pub label: String,
    pub lead: Option<Html>,
    pub state: Option<State>,
    pub facts: Vec<Fact>,
    /// What changed since the last issue, from what to what.
    pub changes: Vec<Change>,
    /// One option: it is shown; two or more: the client chooses.
    pub options: Vec<OptionCard>,
    /// Of a counter: how its pieces lie, with what is let in and where they meet.
    pub layouts: Vec<Drawing>,
    pub why: Option<Html>,
    pub cautions: Vec<Notice>,
    pub signers: Vec<Signer>,
    /// Where to sign: the room's sign-off sheet.
    pub paper: Option<Link>,
    /// What is asked of it, for the page's scripts; absent while no issue was made.
    pub asked: Option<Data>,
}

/// Something that is not as it was in an earlier issue.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Change {
    /// The issue that changed it.
    pub issue: String,
    pub what: String,
    /// Nothing is said of what it was and is.
    pub bare: bool,
    pub was: Html,
    pub now: Html,
    pub because: Option<Html>,
}

/// One thing that could be chosen.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OptionCard {
    /// By which the page's scripts know it.
    pub id: String,
    /// A, B, C; absent when there is only one.
    pub letter: Option<String>,
    pub name: String,
    /// What kind of thing it is, in a line.
    pub line: Option<String>,
    /// It is the one chosen.
    pub chosen: bool,
    pub photo: Option<Photo>,
    pub price: Option<Html>,
    /// Against the allowance: `$2,240.00 over the allowance of $3,400.00`.
    pub against: Option<Html>,
    /// Finish, sizes, lead time, order by. Every option of a page has the same names in the same
    /// order, so that they stand row for row; an absent value is a dash.
    pub rows: Vec<Fact>,
    pub fit: Option<Fit>,
}

/// Someone who has to agree.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Signer {
    pub name: String,
    pub state: State,
    pub stamp: Option<ReviewStamp>,
    /// What they wrote, or by when they are asked.
    pub says: Option<Html>,
}

on_sheet!(ItemPage);

impl PageBuilder<'_> {
    /// The page of one of a room's selections, by its number in the room.
    pub fn item(&self, room: &Room, at: usize, asking: Option<&(LatestIssue, DecisionRequest)>) -> Option<ItemPage> {
        let selection = room.selections.get(at)?;
        let neighbours = (at.checked_sub(1).and_then(|at| room.selections.get(at)), room.selections.get(at + 1));
        let from = neighbours.0.map_or_else(|| self.chrome.room_link(room), |other| self.chrome.item_link(room, other));
        let onward = neighbours.1.map_or_else(|| self.sign_link(), |other| self.chrome.item_link(room, other));
        let room_link = self.chrome.room_link(room);
        let place = SheetPlace {
            path: self.chrome.item_path(room, selection),
            number: selection.tag.clone(),
            name: selection.name.value.clone(),
            above: vec![self.chrome.first(), Crumb { name: room_link.name, href: Some(room_link.href) }],
        };
        let mark = self.marks.get(&(room.folder.as_str(), selection.id.as_str())).map(shown::in_short);
        let sheet = self.chrome.sheet(place, mark, Some(from), Some(onward));
        Some(ItemPage {
            sheet: self.revised(sheet, RevisionScope::Item(&room.folder, &selection.id)),
            label: format!("{} · {}", room.title(), selection.tag),
            lead: Some(self.item_lead(selection)),
            state: Some(self.decision(room, selection)),
            facts: self.item_facts(room, selection),
            changes: self.changes(room, selection),
            options: self.options(room, selection),
            layouts: self.signed_layouts(room, selection),
            why: selection.why.get().map(|why| prose::blocks(why)),
            cautions: self.before_deciding(room, selection),
            signers: self.signers(room, selection),
            // The file of the room's sheet that the item stands on.
            paper: self.room_papers(room).into_iter().nth(at / parts::MOST_ITEMS),
            asked: asking.map(|asking| self.asked_of(asking, room, selection)),
        })
    }

    /// A room's sheet to sign: a file alone, but for rooms of very many items.
    pub fn room_papers(&self, room: &Room) -> Vec<Link> {
        let name = say!(self.words, "pages.sign_off", name = room.title());
        let number = format!("S-{}", room.letter);
        parts::links(self.words, (&self.chrome.paper_path(room), &number), &name, &[room.selections.len()])
    }

    fn item_lead(&self, selection: &Selection) -> Html {
        match selection.settled() {
            Some(option) if selection.options.len() > 1 => {
                show!(self.words, "item_says.chosen", option = called(selection, option), n = selection.options.len())
            }
            Some(option) => {
                let told =
                    option.description.get().cloned().unwrap_or_else(|| format!("{}.", called(selection, option)));
                Html::text(&told)
            }
            None => show!(self.words, "item_says.to_choose", n = selection.options.len()),
        }
    }

    fn item_facts(&self, room: &Room, selection: &Selection) -> Vec<Fact> {
        let mut facts = Vec::new();
        let dates = &self.subject.assessment.dates;
        if let Some(due) = dates.decision(selection).filter(|_| !selection.is_ordered()) {
            facts.push(self.worded("item_says.decide_by", self.day_and_reason(due)));
        }
        if let Some(holds) = self.holds_up(selection) {
            facts.push(self.worded("item_says.holds_up", holds));
        }
        if let Some(allowance) =
            selection.allowance.get().and_then(|name| self.subject.book.project.allowances.called(name))
        {
            let name = selection.allowance.text();
            let told = match allowance.includes.get() {
                Some(what) => {
                    say!(self.words, "item_says.set_aside_with", amount = allowance.amount, name = name, what = what)
                }
                None => say!(self.words, "item_says.set_aside", amount = allowance.amount, name = name),
            };
            facts.push(self.worded("item_says.allowance", told));
        }
        if let Some(opening) = selection.place.get().and_then(|place| room.opening(place)) {
            let size = [opening.governing_width(), self.height_of(room, opening)];
            let sides: Vec<_> = size.into_iter().flatten().collect();
            if !sides.is_empty() {
                facts.push(self.worded("item_says.opening", self.wording.sides(&sides)));
            }
        }
        let people =
            [("item_says.bought_by", &selection.furnished_by), ("item_says.fitted_by", &selection.installed_by)];
        facts.extend(self.in_price(selection));
        facts.extend(people.into_iter().filter_map(|(key, slot)| Some(self.worded(key, slot.get()?.as_str()))));
        facts
    }

    /// What waits for a selection, with its date.
    pub fn holds_up(&self, selection: &Selection) -> Option<String> {
        let dates = &self.subject.assessment.dates;
        let needed = dates.needed(selection);
        // What is built in waits for the walls, whatever else is said to wait for it: a day goes with its own name.
        if let Some(day) = dates.closed_over(selection) {
            let closing = hold_point(self.words, HoldPoint::RoughInClosed.name());
            return Some(format!("{closing}, {}", self.words.day(day)));
        }
        match selection.needed_for.get()? {
            NeededFor::Day(day) => Some(say!(self.words, "item_says.work_on", day = *day)),
            NeededFor::Milestone(name) => {
                Some(needed.map_or_else(|| name.clone(), |day| format!("{name}, {}", self.words.day(day))))
            }
        }
    }

    /// The page that says what is signed.
    pub fn sign_link(&self) -> Link {
        Link { href: "sign.html".into(), name: say!(self.words, "pages.sign"), number: Some("S-01".into()) }
    }

    /// The cover.
    pub fn cover_link(&self) -> Link {
        Link { href: "index.html".into(), name: say!(self.words, "pages.cover"), number: Some("G-00".into()) }
    }

    fn options(&self, room: &Room, selection: &Selection) -> Vec<OptionCard> {
        let several = selection.options.len() > 1;
        let mut cards: Vec<OptionCard> = selection
            .options
            .iter()
            .enumerate()
            .map(|(number, option)| self.option(room, selection, option, several.then_some(number)))
            .collect();
        align(&mut cards);
        cards
    }

    fn option(&self, room: &Room, selection: &Selection, option: &ProductOption, number: Option<usize>) -> OptionCard {
        let price = Amounts::price(option);
        let mut rows = self.description(option);
        rows.extend(self.quantity(option).map(|quantity| self.worded("item_says.quantity", quantity)));
        rows.extend(option.lead_time.get().map(|lead| self.worded("item_says.lead_time", lead.said(self.words))));
        let order = self.subject.assessment.dates.order_by(selection, option).and_then(|order| order.order);
        rows.extend(order.map(|order| self.worded("item_says.order_by", self.words.day(order))));
        let alt = format!("{}, {}", selection.name.value, self.in_a_line(option));
        OptionCard {
            id: option.id.value.clone(),
            letter: number.map(letter),
            name: called(selection, option),
            line: option
                .description
                .get()
                .cloned()
                .or_else(|| Some(self.in_a_line(option)))
                .filter(|line| !line.is_empty() && *line != option.title()),
            chosen: selection.chosen.get() == Some(&option.id.value),
            photo: option.photos.first().and_then(|photo| self.album.photo(photo, &alt, PICTURE)),
            price: price.map(|price| self.wording.money(price)),
            against: self.beside_its_price(selection, option),
            rows,
            fit: self.fit(room, selection, option, number.unwrap_or(0)),
        }
    }

    /// What of a selection can hurt, in full words, each once.
    pub fn cautions(&self, room: &Room, selection: &Selection) -> Vec<Html> {
        self.hurts(room, selection).into_iter().map(|hurts| hurts.in_full(self.words)).collect()
    }

    /// What of a selection can hurt: its makers' own cautions, and those of what it is and needs and of what was
    /// found of it, each once.
    pub fn hurts<'s>(&self, room: &Room, selection: &'s Selection) -> Vec<Hurts<'s>> {
        let mut all: Vec<Hurts> = Vec::new();
        let makers = selection.standing().iter().filter_map(|option| option.fit.get()?.caution.get());
        // Options often share a sheet: its caution is told once.
        for caution in makers.map(|caution| Hurts::AsItsMakerSays(caution)) {
            if !all.contains(&caution) {
                all.push(caution);
            }
        }
        let mut hazards = cautions::of_selection(room, selection);
        // What was found of it may hurt besides, whomever it tells and whoever let it stand.
        let found = self.found.about(&room.folder, &[Id::of(&selection.name)]);
        hazards.extend(found.into_iter().filter_map(|finding| finding.caution));
        hazards.sort_unstable();
        hazards.dedup();
        all.extend(hazards.into_iter().map(Hurts::By));
        all
    }

    /// What to know before deciding, in one box: what can hurt first, then what living with it means.
    fn before_deciding(&self, room: &Room, selection: &Selection) -> Vec<Notice> {
        let told = self.told_of_selection(room, selection).lines;
        let title = say!(self.words, if told.is_empty() { "item_says.safety" } else { "item_says.before" });
        let lines: Vec<Html> = self.cautions(room, selection).into_iter().chain(told).collect();
        if lines.is_empty() { vec![] } else { vec![Notice { title, lines }] }
    }

    /// What is not as somebody decided on it or, where nobody is to look again, as the newest issue shows it.
    fn changes(&self, room: &Room, selection: &Selection) -> Vec<Change> {
        let record = &self.subject.book.record;
        let item = self.subject.assessment.approvals.item(room, selection);
        let Some((issue, item)) = record.latest().zip(item) else { return vec![] };
        let issued =
            self.issued.get(&issue.number).and_then(|all| all.get(&(room.folder.as_str(), selection.id.as_str())));
        let Some(issued) = issued else { return vec![] };
        let told = |value: Option<ChangedValue>| value.map_or_else(|| Html::text("–"), |value| quoted(&value.phrase()));
        let (since, number) = match item.now.is(&issued.mark) {
            true => {
                let mut known = self.known_words(room, selection);
                (known.find(|word| !word.changes.is_empty()).map(|word| word.changes.clone()), issue.number)
            }
            false => (Some(shown::changes(&issued.content, &item.now.content)), issue.number + 1),
        };
        let units = self.subject.book.project.units;
        let since = since.unwrap_or_default().into_iter().map(|change| change.in_units(units));
        let changes = since.map(|change| Change {
            issue: number.to_string(),
            what: changed_field(self.words, &change),
            bare: change.from.is_none() && change.to.is_none(),
            was: told(change.from),
            now: told(change.to),
            because: None,
        });
        changes.collect()
    }
}

/// What of an item changed, as a page calls it: with the option that it is of.
pub fn changed_field(words: Words, change: &shown::Change) -> String {
    let field = field(words, &change.what.to_string());
    change.of.as_ref().map_or_else(|| field.clone(), |of| format!("{}: {}", capital(of), field.to_lowercase()))
}

/// Gives every option the same rows in the same order; what one lacks is a dash.
fn align(cards: &mut [OptionCard]) {
    let mut names: Vec<String> = Vec::new();
    for card in cards.iter() {
        let mut at = 0;
        for row in &card.rows {
            match names.iter().position(|name| *name == row.name) {
                Some(found) => at = found + 1,
                None => {
                    names.insert(at.min(names.len()), row.name.clone());
                    at += 1;
                }
            }
        }
    }
    for card in cards {
        let mut rows: BTreeMap<String, Html> = card.rows.drain(..).map(|row| (row.name, row.value)).collect();
        let dash = || Html::text("–");
        card.rows = names
            .iter()
            .map(|name| Fact { name: name.clone(), value: rows.remove(name).unwrap_or_else(dash) })
            .collect();
    }
}
