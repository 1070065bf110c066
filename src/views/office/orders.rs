//! The orders by date.

use crate::assess::{Amounts, Depends, OrderBy, Prerequisite, RunsOut};
use crate::book::{ProductOption, Room, Selection};
use crate::units::series;
use crate::views::office::schedules::dashed;
use crate::views::office::tables::{Cell, Column, SchedulePage, Table};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::{count, day, money};
use crate::views::shared::html::Html;
use crate::views::shared::lines::fact;
use crate::views::shared::revisions::RevisionScope;
use crate::views::shared::sheet::Fact;
use crate::views::shared::state::{State, StateShape};

/// How many orders stand on the office's first page.
const NEXT: usize = 6;

/// An option, and when it is to be ordered.
struct OrderLine<'a> {
    room: &'a Room,
    selection: &'a Selection,
    option: &'a ProductOption,
    when: OrderBy,
}

impl<'a> PageBuilder<'a> {
    /// `orders.html`.
    pub fn orders(&self) -> SchedulePage {
        let (place, from, onward) = self.office_place("Q-07");
        let orders = self.all_orders();
        let dateless = self
            .subject
            .book
            .selections()
            .filter(|(_, selection)| self.subject.assessment.dates.needed(selection).is_none())
            .count();
        let receiving =
            self.subject.book.project.receiving.get().map_or_else(|| "none".to_string(), ToString::to_string);
        let mut lead = format!("{}, the next one first.", count(orders.len(), "order", "orders"));
        if dateless > 0 {
            lead += &format!(" {} no date yet.", count(dateless, "selection has", "selections have"));
        }
        SchedulePage {
            sheet: self.revised(self.chrome.sheet(place, None, from, onward), RevisionScope::All),
            lead: Html::text(&lead),
            facts: self.order_facts(receiving),
            drawings: vec![],
            tables: std::iter::once(self.table("Orders by date", &orders)).chain(self.came()).collect(),
            notices: vec![],
        }
    }

    /// The book's receiving, and the milestones that may not slip.
    fn order_facts(&self, receiving: String) -> Vec<Fact> {
        let dates = &self.subject.assessment.dates;
        let mut tight: Vec<_> =
            dates.milestones.iter().filter(|(name, _)| dates.slack.get(*name) == Some(&0)).collect();
        tight.sort_by_key(|(_, day)| **day);
        let tight: Vec<&str> = tight.into_iter().map(|(name, _)| name.as_str()).collect();
        let mut facts = vec![fact("In hand before the work", receiving)];
        // In a single chain none may slip, and saying so helps nobody.
        if tight.len() < dates.milestones.len() {
            facts.push(fact("Milestones that may not slip", tight.join(", ")));
        }
        facts
    }

    /// The orders that are next.
    pub fn next_orders(&self) -> Table {
        let mut orders = self.all_orders();
        orders.retain(|order| order.option.order.placed_on.is_absent());
        orders.truncate(NEXT);
        self.table("Orders that are next", &orders)
    }

    fn all_orders(&self) -> Vec<OrderLine<'a>> {
        let dates = &self.subject.assessment.dates;
        let book = self.subject.book;
        let mut orders: Vec<OrderLine<'a>> = book
            .selections()
            .flat_map(|(room, selection)| selection.standing().iter().map(move |option| (room, selection, option)))
            .filter_map(|(room, selection, option)| {
                Some(OrderLine { room, selection, option, when: dates.order_by(selection, option)? })
            })
            .collect();
        orders.sort_by_key(|order| {
            (order.when.order.unwrap_or(order.when.in_hand), order.selection.tag.clone(), order.option.id.value.clone())
        });
        orders
    }

    fn table(&self, name: &str, orders: &[OrderLine<'_>]) -> Table {
        let depends = Depends::of(self.subject.book);
        let names = [
            ("Item", false),
            ("Order by", false),
            ("Waits for", false),
            ("Supplier", false),
            ("Lead time", false),
            ("In hand", false),
            ("Needed", false),
            ("Price", true),
            ("Cost", true),
        ];
        Table {
            name: name.into(),
            scope: Some(
                "The last day to order is the day it is needed, less receiving, less the longest lead time".into(),
            ),
            columns: names.into_iter().map(|(name, figures)| Column { name: name.into(), figures }).collect(),
            rows: orders.iter().map(|order| self.order_row(order, &depends)).collect(),
            totals: vec![],
        }
    }

    /// What must be chosen, or have its sheet, before this is ordered; and the approval of it, where
    /// anybody is named who approves.
    fn waits(&self, order: &OrderLine<'_>, depends: &Depends<'_>) -> Cell {
        let waits = depends.waits_for(order.selection, &self.subject.assessment.approvals);
        let told = waits.iter().map(|(ground, lacks)| {
            let Prerequisite { room, selection, .. } = ground;
            let name = match room.folder == order.room.folder {
                true => selection.name.value.clone(),
                false => format!("{} ({})", selection.name.value, room.title()),
            };
            format!("{name} {}", lacks.words())
        });
        let approval = self.waits_for_approval(order.room, order.selection);
        dashed(&told.chain(approval).collect::<Vec<_>>().join("; "))
    }

    /// Whose approval is still wanted; nothing once all is approved, or it is ordered.
    fn waits_for_approval(&self, room: &Room, selection: &Selection) -> Option<String> {
        let waiting = self.subject.assessment.unapproved(self.subject.book, room, selection)?;
        Some(match waiting.of.is_empty() {
            true => format!("approval ({})", waiting.stands),
            false => format!("approval of {}", series(&waiting.of)),
        })
    }

    fn order_row(&self, order: &OrderLine<'_>, depends: &Depends<'_>) -> Vec<Cell> {
        let OrderLine { room, selection, option, when } = order;
        let open = selection.settled().is_none();
        let name = if open {
            format!("{}, option {}", selection.name.value, option.title())
        } else {
            selection.name.value.clone()
        };
        let placed = option.order.placed_on.get().map(|day| Html::text(&format!("Ordered {day}")));
        let state = match self.subject.assessment.dates.order_runs_out(selection) {
            _ if placed.is_some() => None,
            RunsOut::Past => Some(State::new(StateShape::Stop, "Past")),
            RunsOut::Soon => Some(State::new(StateShape::Query, "Within four weeks")),
            RunsOut::Later => None,
        };
        let holds = self.holds_up(selection).map(|holds| Html::text(&holds));
        vec![
            Cell {
                text: Html::text(&format!("{} {name}", selection.tag)),
                note: Some(Html::text(room.title())),
                ..Cell::default()
            },
            Cell { text: Html::text(&day(self.words, when.order)), state, note: placed, ..Cell::default() },
            self.waits(order, depends),
            dashed(option.supplier.text()),
            dashed(&option.lead_time.get().map(ToString::to_string).unwrap_or_default()),
            Cell {
                text: Html::text(&day(self.words, Some(when.in_hand))),
                state: self.received(room, selection),
                ..Cell::default()
            },
            Cell { text: Html::text(&day(self.words, Some(when.needed))), note: holds, ..Cell::default() },
            money(self.wording, Amounts::price(option)).into(),
            money(self.wording, Amounts::cost(option)).into(),
        ]
    }
}
