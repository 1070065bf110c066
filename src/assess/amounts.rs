//! What things cost, and what is left of the allowances.

use std::collections::BTreeMap;

use crate::book::{Book, Prices, ProductOption, Selection};
use crate::source::Span;
use crate::units::{Money, Percent};

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
    /// Where the sum went past what can be held; it says nothing from there on.
    pub past: Option<Span>,
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
    /// What is left when the open ones are taken off too: with the dearest and with the cheapest of their
    /// options. None where nothing with a price is open.
    pub left_with_open: Option<(Money, Money)>,
}

/// A sum of prices with its tax: added to it, or in it, as the book says of its prices.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WithTax {
    /// The rate, and what it comes to; none where the book names none, or past what can be held.
    pub tax: Option<(Percent, Money)>,
    /// What it comes to with its tax; none past what can be held.
    pub total: Option<Money>,
}

impl WithTax {
    /// A sum of prices, with the tax of the book.
    pub fn of(book: &Book, sum: Money) -> Self {
        let Some(rate) = book.project.tax.get() else { return Self { tax: None, total: Some(sum) } };
        if book.project.prices == Prices::WithTax {
            return Self { tax: rate.within(sum).ok().map(|tax| (*rate, tax)), total: Some(sum) };
        }
        let tax = rate.of(sum).ok().map(|tax| (*rate, tax));
        Self { tax, total: tax.and_then(|(_, tax)| sum.checked_add(tax).ok()) }
    }
}

impl Amounts {
    /// The sums of a book.
    pub fn of(book: &Book) -> Self {
        let mut amounts = Self::default();
        let mut drawn: BTreeMap<&str, Due> = BTreeMap::new();
        for room in book.rooms.iter().filter(|room| !room.selections.is_empty()) {
            let mut of_room = Due::default();
            for selection in &room.selections {
                amounts.book.add(selection);
                of_room.add(selection);
                if let Some(allowance) = selection.allowance.get() {
                    drawn.entry(allowance).or_default().add(selection);
                }
            }
            amounts.rooms.insert(room.folder.clone(), of_room);
        }
        for allowed in &book.project.allowances {
            let name = &allowed.name.value;
            let due = drawn.remove(name.as_str()).unwrap_or_default();
            let settled = due.settled.unwrap_or(Money::zero(allowed.amount.currency));
            let left = allowed.amount.checked_sub(settled).unwrap_or(allowed.amount);
            let less = |open: Option<Money>| left.checked_sub(open?).ok();
            let left_with_open = less(due.open_most).zip(less(due.open_least));
            let allowance = Allowance { allowed: allowed.amount, due, left, left_with_open };
            amounts.allowances.insert(name.clone(), allowance);
        }
        amounts
    }

    /// What the client pays for an option: price times quantity, and what is ordered with it.
    pub fn price(option: &ProductOption) -> Option<Money> {
        option.price_in_all()
    }

    /// What the firm pays for an option; for the office alone.
    pub fn cost(option: &ProductOption) -> Option<Money> {
        option.cost_in_all()
    }
}

impl Due {
    fn add(&mut self, selection: &Selection) {
        if self.past.is_some() {
            return;
        }
        match selection.settled().map(Amounts::price) {
            Some(Some(price)) => self.settled = self.plus(self.settled, price, selection),
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
                    self.open_least =
                        least.map_or(self.open_least, |least| self.plus(self.open_least, least, selection));
                    self.open_most = most.map_or(self.open_most, |most| self.plus(self.open_most, most, selection));
                }
            }
        }
        // A sum past what can be held is no sum: nothing of it is told, and nothing begins anew.
        if let past @ Some(_) = self.past {
            *self = Self { open: self.open, past, ..Self::default() };
        }
    }

    /// A sum that may not have begun. All amounts of a book are in one currency.
    fn plus(&mut self, sum: Option<Money>, more: Money, selection: &Selection) -> Option<Money> {
        let Some(sum) = sum else { return Some(more) };
        let sum = sum.checked_add(more).ok();
        if sum.is_none() {
            self.past = Some(selection.span);
        }
        sum
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::trial::Trial;

    fn amounts(prices: &[&str]) -> Amounts {
        let book = prices
            .iter()
            .enumerate()
            .fold(Trial::of("money/arithmetic").book("allowances: {tile: 100}"), |trial, (at, price)| {
                trial.selection(&format!("selection: T{at}\nkind: tile\nallowance: tile"), price)
            });
        Amounts::of(&book.read())
    }

    #[test]
    fn a_sum_past_what_can_be_held_says_nothing_and_never_begins_anew() {
        let most = "price: 90000000000000000.00";
        let book = amounts(&[most, "price: 5.00", most, "price: 7.00"]).book;
        assert_eq!((book.settled, book.past.is_some()), (None, true));
        let book = amounts(&[most, "price: 5.00"]).book;
        assert_eq!((book.settled.unwrap().plain().as_str(), book.past), ("90000000000000005.00", None));
    }

    #[test]
    fn an_allowance_knows_what_is_left_with_what_is_open() {
        let left = |prices: &[&str]| {
            let allowance = amounts(prices).allowances["tile"];
            (allowance.left.plain(), allowance.left_with_open.map(|(most, least)| (most.plain(), least.plain())))
        };
        let open = "options: [{id: a, price: 30}, {id: b, price: 80}]";
        assert_eq!(left(&["price: 60", open]), ("40.00".into(), Some(("-40.00".into(), "10.00".into()))));
        assert_eq!(left(&["price: 60"]), ("40.00".into(), None));
    }
}
