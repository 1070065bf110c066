//! The change order between two issues: what, from, to, money, days, and who must sign.

use std::collections::{BTreeMap, BTreeSet};

use crate::ledger::{Issue, IssuedItem};
use crate::marks::{Change, changes};
use crate::units::{Currency, Date, Money};

#[cfg(test)]
mod tests;

/// What changed between two issues.
#[derive(Clone, Debug)]
pub struct ChangeOrder {
    /// The items that are not the same, in the order of the later issue; those that are gone come last.
    pub items: Vec<Changed>,
    /// What the settled items come to, before tax; nothing between currencies.
    pub settled: Option<Moved<Money>>,
    /// The same with tax, where both issues have it.
    pub with_tax: Option<Moved<Money>>,
}

/// A value that was and is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moved<T> {
    /// What it was.
    pub from: T,
    /// What it is.
    pub to: T,
}

/// What became of an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It is new.
    Added,
    /// It is gone.
    Gone,
    /// It is shown otherwise.
    Changed,
    /// It is shown as before; only its dates moved.
    Dated,
}

/// An item that is not the same in both.
#[derive(Clone, Debug)]
pub struct Changed {
    /// The room, by its folder.
    pub room: String,
    /// The selection, by its id.
    pub item: String,
    /// Its number on drawings.
    pub tag: String,
    /// What it is called.
    pub name: String,
    /// What became of it.
    pub fate: Fate,
    /// What changed of what is shown.
    pub changes: Vec<Change>,
    /// What it comes to, before tax: none while it is open, or not there.
    pub price: Moved<Option<Money>>,
    /// Its lead time, as the book says it.
    pub lead_time: Moved<Option<String>>,
    /// The last day to order it.
    pub order_by: Moved<Option<Date>>,
}

impl Moved<Money> {
    /// How much more it is; below zero when it is less.
    pub fn by(&self) -> Option<Money> {
        self.to.checked_sub(self.from).ok()
    }
}

impl Changed {
    /// How much more it comes to; nothing while one side is open.
    pub fn money(&self) -> Option<Money> {
        match (self.fate, self.price.from, self.price.to) {
            (_, Some(from), Some(to)) => to.checked_sub(from).ok(),
            (Fate::Added, None, Some(to)) => Some(to),
            (Fate::Gone, Some(from), None) => Money::zero(from.currency).checked_sub(from).ok(),
            _ => None,
        }
    }

    /// By how many days its last day to order is later; below zero when it is sooner.
    pub fn days(&self) -> Option<i64> {
        let days = self.order_by.from?.days_until(self.order_by.to?);
        (days != 0).then_some(days)
    }

    /// Whether it is to be signed: it is shown otherwise than before.
    pub fn asks(&self) -> bool {
        self.fate != Fate::Dated
    }
}

impl ChangeOrder {
    /// What changed from one issue to a later one.
    pub fn between(from: &Issue, to: &Issue) -> Self {
        let (was, is) = (Currency::parse(&from.currency).ok(), Currency::parse(&to.currency).ok());
        let before: BTreeMap<_, _> = from.items.iter().map(|item| (key(item), item)).collect();
        let there: BTreeSet<_> = to.items.iter().map(key).collect();
        let stays = to.items.iter().filter_map(|item| changed(before.get(&key(item)).copied(), Some(item), (was, is)));
        let gone = from.items.iter().filter(|item| !there.contains(&key(item)));
        let gone = gone.filter_map(|item| changed(Some(item), None, (was, is)));
        let sum = |from: Option<&str>, to: Option<&str>| {
            let moved = Moved { from: amount(from, was)?, to: amount(to, is)? };
            moved.by().map(|_| moved)
        };
        Self {
            items: stays.chain(gone).collect(),
            settled: sum(Some(&from.total.settled), Some(&to.total.settled)),
            with_tax: sum(from.total.with_tax.as_deref(), to.total.with_tax.as_deref()),
        }
    }

    /// Whether nothing changed.
    pub fn is_nothing(&self) -> bool {
        let moved = |sum: &Option<Moved<Money>>| sum.is_some_and(|sum| sum.from != sum.to);
        self.items.is_empty() && !moved(&self.settled) && !moved(&self.with_tax)
    }

    /// Whether anything must be signed.
    pub fn asks(&self) -> bool {
        self.items.iter().any(Changed::asks)
    }
}

fn key(item: &IssuedItem) -> (&str, &str) {
    (&item.room, &item.item)
}

fn amount(text: Option<&str>, currency: Option<Currency>) -> Option<Money> {
    Money::parse(text?, currency?).ok()
}

/// An item that was, or is, or both; nothing where it is the same.
fn changed(
    from: Option<&IssuedItem>,
    to: Option<&IssuedItem>,
    (was, is): (Option<Currency>, Option<Currency>),
) -> Option<Changed> {
    let here = to.or(from)?;
    let fate = match (from, to) {
        (None, _) => Fate::Added,
        (_, None) => Fate::Gone,
        (Some(from), Some(to)) if from.mark != to.mark => Fate::Changed,
        (Some(from), Some(to)) if (&from.lead_time, from.order_by) != (&to.lead_time, to.order_by) => Fate::Dated,
        _ => return None,
    };
    let told = match (from, to) {
        (Some(from), Some(to)) => changes(&from.content, &to.content),
        _ => vec![],
    };
    let price = |item: Option<&IssuedItem>, currency| amount(item?.price.as_deref(), currency);
    let lead = |item: Option<&IssuedItem>| item?.lead_time.clone();
    let order = |item: Option<&IssuedItem>| item?.order_by;
    Some(Changed {
        room: here.room.clone(),
        item: here.item.clone(),
        tag: here.tag.clone(),
        name: here.name.clone(),
        fate,
        changes: told,
        price: Moved { from: price(from, was), to: price(to, is) },
        lead_time: Moved { from: lead(from), to: lead(to) },
        order_by: Moved { from: order(from), to: order(to) },
    })
}
