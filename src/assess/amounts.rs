//! What things cost, and what is left of the allowances.

use std::collections::BTreeMap;

use crate::book::{Book, Choice, Selection};
use crate::units::Money;

/// Sums of a book. A sum leaves out what has no price yet; `open` counts those.
#[derive(Debug, Default)]
pub struct Amounts {
    /// Each room's sum, by folder.
    pub rooms: BTreeMap<String, Due>,
    /// The whole book's sum.
    pub book: Due,
    /// Each allowance against what draws on it.
    pub allowances: BTreeMap<String, Allowance>,
}

/// What the settled options come to, and what is still open.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Due {
    /// What the settled options come to, before tax; none while nothing is settled.
    pub settled: Option<Money>,
    /// How many selections are still open, or have no price.
    pub open: usize,
    /// The least that the open ones can add.
    pub open_least: Option<Money>,
    /// The most that the open ones can add.
    pub open_most: Option<Money>,
}

/// An allowance and what draws on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Allowance {
    /// What the contract allows.
    pub allowed: Money,
    /// What draws on it.
    pub due: Due,
    /// What is left when the settled options are taken off; negative when they are over.
    pub left: Money,
}

impl Amounts {
    /// The sums of a book.
    pub fn of(book: &Book) -> Self {
        let mut amounts = Self::default();
        let mut drawn: BTreeMap<&str, Due> = BTreeMap::new();
        for (room, selection) in book.selections() {
            amounts.book.add(selection);
            amounts.rooms.entry(room.folder.clone()).or_default().add(selection);
            if let Some(allowance) = selection.allowance.get() {
                drawn.entry(allowance).or_default().add(selection);
            }
        }
        for (name, allowed) in &book.project.allowances {
            let due = drawn.remove(name.as_str()).unwrap_or_default();
            let left = due.settled.map_or(Ok(allowed.amount), |settled| allowed.amount.checked_sub(settled));
            let allowance = Allowance { allowed: allowed.amount, due, left: left.unwrap_or(allowed.amount) };
            amounts.allowances.insert(name.clone(), allowance);
        }
        amounts
    }

    /// What the client pays for an option: price times quantity, and what is ordered with it.
    pub fn price(option: &Choice) -> Option<Money> {
        option.price_in_all()
    }

    /// What the firm pays for an option; for the office alone.
    pub fn cost(option: &Choice) -> Option<Money> {
        option.cost_in_all()
    }
}

impl Due {
    fn add(&mut self, selection: &Selection) {
        match selection.settled().map(Amounts::price) {
            Some(Some(price)) => self.settled = plus(self.settled, price),
            settled => {
                self.open += 1;
                let prices = || selection.options.iter().filter_map(Amounts::price);
                let least =
                    prices().reduce(
                        |one, other| if one.compare(other).is_ok_and(std::cmp::Ordering::is_le) { one } else { other },
                    );
                let most =
                    prices().reduce(
                        |one, other| if one.compare(other).is_ok_and(std::cmp::Ordering::is_ge) { one } else { other },
                    );
                if settled.is_none() {
                    self.open_least = least.map_or(self.open_least, |least| plus(self.open_least, least));
                    self.open_most = most.map_or(self.open_most, |most| plus(self.open_most, most));
                }
            }
        }
    }
}

/// A sum that may not have begun. All amounts of a book are in one currency.
fn plus(sum: Option<Money>, more: Money) -> Option<Money> {
    match sum {
        None => Some(more),
        Some(sum) => sum.checked_add(more).ok(),
    }
}
