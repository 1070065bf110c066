//! Tells the money: what is settled in each room, and what is left of each allowance.

use crate::assess::{Amounts, Due};
use crate::units::Money;
use crate::views::html::Html;
use crate::views::schedule::{Bar, Cell, Column, SchedulePage, Table};

use super::Teller;
use super::figures::money;
use super::lines::{capital, fact};

/// The widest bar, in pixels.
const WIDEST: i128 = 200;

impl Teller<'_> {
    /// `money.html`.
    pub fn money(&self) -> SchedulePage {
        let (place, from, onward) = self.office_place("Q-08");
        let amounts = &self.subject.assessment.amounts;
        let over = amounts.allowances.values().filter(|allowance| allowance.left.is_negative()).count();
        let lead = match over {
            0 => "No allowance is exceeded by what is settled.".to_string(),
            1 => "One allowance is exceeded by what is settled.".into(),
            many => format!("{many} allowances are exceeded by what is settled."),
        };
        let sums = self.sums(amounts.book.settled);
        SchedulePage {
            sheet: self.revised(self.chrome.sheet(place, None, from, onward), &|_, _| true),
            lead: Html::text(&lead),
            facts: sums.into_iter().map(|sum| fact(&sum.name, sum.amount.to_string())).collect(),
            drawings: vec![],
            tables: vec![self.allowance_table(), self.room_table(), self.margin_table()],
            notices: vec![],
        }
    }

    fn allowance_table(&self) -> Table {
        let amounts = &self.subject.assessment.amounts;
        let largest = amounts
            .allowances
            .values()
            .map(|allowance| minor(allowance.allowed).max(allowance.due.settled.map_or(0, minor)))
            .max()
            .unwrap_or(1);
        let rows = amounts.allowances.iter().map(|(name, allowance)| {
            let bar = bar(allowance.allowed, allowance.due.settled, largest);
            vec![
                capital(name).as_str().into(),
                money(Some(allowance.allowed)).into(),
                Cell { bar: Some(bar), ..money(allowance.due.settled).into() },
                money(Some(allowance.left)).into(),
                open(&allowance.due),
            ]
        });
        Table {
            name: "Allowances".into(),
            scope: Some("Before tax; what is over stands with a minus".into()),
            columns: columns(&[
                ("Allowance", false),
                ("Allowed", true),
                ("Settled", true),
                ("Left", true),
                ("Still open", true),
            ]),
            rows: rows.collect(),
            totals: vec![],
        }
    }

    fn room_table(&self) -> Table {
        let amounts = &self.subject.assessment.amounts;
        let rows = self.subject.book.rooms.iter().map(|room| {
            let due = amounts.rooms.get(&room.folder).copied().unwrap_or_default();
            vec![
                room.title().into(),
                room.selections.len().to_string().as_str().into(),
                money(due.settled).into(),
                open(&due),
            ]
        });
        let all = self.subject.book.selections().count().to_string();
        Table {
            name: "Rooms".into(),
            scope: Some("Before tax".into()),
            columns: columns(&[("Room", false), ("Selections", true), ("Settled", true), ("Still open", true)]),
            rows: rows.collect(),
            totals: vec![
                "Whole book".into(),
                all.as_str().into(),
                money(amounts.book.settled).into(),
                open(&amounts.book),
            ],
        }
    }

    /// What the firm pays and keeps, of the settled items that have a cost.
    fn margin_table(&self) -> Table {
        let mut totals: [Option<Money>; 3] = [None; 3];
        let mut rows = Vec::new();
        for (_, selection) in self.subject.book.selections() {
            let Some(option) = selection.settled() else { continue };
            let Some((price, cost)) = Amounts::price(option).zip(Amounts::cost(option)) else { continue };
            let margin = price.checked_sub(cost).ok();
            for (total, amount) in totals.iter_mut().zip([Some(price), Some(cost), margin]) {
                *total = match (*total, amount) {
                    (Some(total), Some(amount)) => total.checked_add(amount).ok(),
                    (None, amount) => amount,
                    (total, None) => total,
                };
            }
            let name = format!("{} {}", selection.tag, selection.name.value);
            rows.push(vec![
                name.as_str().into(),
                money(Some(price)).into(),
                money(Some(cost)).into(),
                money(margin).into(),
            ]);
        }
        let totals = if rows.is_empty() {
            vec![]
        } else {
            std::iter::once("Together".into()).chain(totals.map(|total| money(total).into())).collect()
        };
        Table {
            name: "Price, cost and margin".into(),
            scope: Some("For the office alone; settled items with a cost".into()),
            columns: columns(&[("Item", false), ("Price", true), ("Cost", true), ("Margin", true)]),
            rows,
            totals,
        }
    }
}

fn columns(names: &[(&str, bool)]) -> Vec<Column> {
    names.iter().map(|(name, figures)| Column { name: (*name).into(), figures: *figures }).collect()
}

fn open(due: &Due) -> Cell {
    match (due.open, due.open_least, due.open_most) {
        (0, ..) => "–".into(),
        (_, Some(least), Some(most)) => Cell {
            note: Some(Html::text(&format!("{} open", due.open))),
            ..Cell::from(Html::text(&format!("{least} to {most}")))
        },
        (open, ..) => format!("{open} without a price").as_str().into(),
    }
}

fn minor(money: Money) -> i128 {
    i128::from(money.minor)
}

/// What is settled, drawn against the allowance.
fn bar(allowed: Money, settled: Option<Money>, largest: i128) -> Bar {
    let pixels = |amount: i128| u32::try_from(amount.max(0) * WIDEST / largest.max(1)).unwrap_or(0);
    let (allowed, settled) = (minor(allowed), settled.map_or(0, minor));
    Bar { within: pixels(settled.min(allowed)), over: pixels(settled - allowed), allowance: pixels(allowed) }
}
