//! The money: what is settled in each room, and what is left of each allowance.

use crate::assess::{Allowance, Amounts, Due};
use crate::units::Money;
use crate::units::money::MoneyError;
use crate::views::office::tables::{Bar, Cell, Column, SchedulePage, Table};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::money;
use crate::views::shared::html::Html;
use crate::views::shared::lines::{capital, fact};
use crate::views::shared::revisions::RevisionScope;
use crate::views::shared::wording::Wording;

/// The widest bar, in pixels.
const WIDEST: i128 = 200;

impl PageBuilder<'_> {
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
        let sums = self.sums(amounts.book.settled, &self.all_rooms());
        SchedulePage {
            sheet: self.revised(self.chrome.sheet(place, None, from, onward), RevisionScope::All),
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
                money(self.wording, Some(allowance.allowed)).into(),
                Cell { bar: Some(bar), ..money(self.wording, allowance.due.settled).into() },
                money(self.wording, Some(allowance.left)).into(),
                open(&allowance.due),
                with_open(self.wording, allowance),
            ]
        });
        Table {
            name: "Allowances".into(),
            scope: Some(capital(&format!(
                "{}; settled is what one option stands for, signed or not; what is over stands with a minus",
                self.subject.book.project.prices
            ))),
            columns: columns(&[
                ("Allowance", false),
                ("Allowed", true),
                ("Settled", true),
                ("Left", true),
                ("Still open", true),
                ("Left with what is open", true),
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
                money(self.wording, due.settled).into(),
                open(&due),
            ]
        });
        let all = self.subject.book.selections().count().to_string();
        Table {
            name: "Rooms".into(),
            scope: Some(capital(&self.subject.book.project.prices.to_string())),
            columns: columns(&[("Room", false), ("Selections", true), ("Settled", true), ("Still open", true)]),
            rows: rows.collect(),
            totals: vec![
                "Whole book".into(),
                all.as_str().into(),
                money(self.wording, amounts.book.settled).into(),
                open(&amounts.book),
            ],
        }
    }

    /// What the firm pays and keeps, of the settled items that have a cost.
    fn margin_table(&self) -> Table {
        let mut totals: [Option<Result<Money, MoneyError>>; 3] = [const { None }; 3];
        let mut rows = Vec::new();
        for (_, selection) in self.subject.book.selections() {
            let Some(option) = selection.settled() else { continue };
            let Some((price, cost)) = Amounts::price(option).zip(Amounts::cost(option)) else { continue };
            let margin = price.checked_sub(cost);
            for (total, amount) in totals.iter_mut().zip([Ok(price), Ok(cost), margin.clone()]) {
                // What can't be reckoned once is not begun anew.
                *total = Some(match total.take() {
                    Some(sum) => sum.and_then(|sum| sum.checked_add(amount?)),
                    None => amount,
                });
            }
            let name = format!("{} {}", selection.tag, selection.name.value);
            rows.push(vec![
                name.as_str().into(),
                money(self.wording, Some(price)).into(),
                money(self.wording, Some(cost)).into(),
                money(self.wording, margin.ok()).into(),
            ]);
        }
        let totals = if rows.is_empty() {
            vec![]
        } else {
            std::iter::once("Together".into())
                .chain(totals.map(|total| money(self.wording, total.and_then(Result::ok)).into()))
                .collect()
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

/// What is left of an allowance once what is open is chosen.
fn with_open(wording: Wording, allowance: &Allowance) -> Cell {
    match allowance.left_with_open {
        Some((dearest, cheapest)) if dearest != cheapest => format!("{dearest} to {cheapest}").as_str().into(),
        Some((left, _)) => money(wording, Some(left)).into(),
        None => "–".into(),
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
