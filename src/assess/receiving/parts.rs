//! What came in parts, and what was looked at in part: neither is another thing, and neither is the whole.

use rust_decimal::Decimal;

use crate::book::{Book, ProductOption, Selection};
use crate::ledger::{Came, IssuedItem, ItemContent, Kept, LineReceived, Looked, OptionContent};
use crate::shown::{self, Marked};
use crate::units::{Phrase, Quantity};
use crate::vocabulary::{SoMany, so_many};

use super::{Said, newest};

/// How many came of so many, in all deliveries together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Counted {
    /// How many came.
    pub came: Decimal,
    /// How many are wanted.
    pub of: Decimal,
}

impl Counted {
    /// Whether all came.
    pub fn is_whole(self) -> bool {
        self.came == self.of
    }

    /// `1 of 2`.
    pub fn told(self) -> String {
        format!("{} of {}", self.came.normalize(), self.of.normalize())
    }
}

/// How many came of a thing in parts, where the newest that counts says that only the number is another; nothing where
/// that is not surely so.
pub(super) fn counted(said: &[Said], book: &Book, selection: &Selection, now: &Marked) -> Option<Counted> {
    let (last, _) = newest(said)?;
    let option = option_of(last, selection)?;
    let of = option.quantity.get().cloned().unwrap_or_else(|| Quantity::count(1));
    let names = format!("{} {} {}", selection.name.value, option.title(), of.unit.as_deref().unwrap_or("pieces"));
    part(last, of.amount, &names)?;
    let (mut came, mut is_rest) = (Decimal::ZERO, false);
    for one in said.iter().filter(|one| one.counts && one.is_what_is_now(book, now)) {
        let of_this = || said.iter().filter(|other| other.counts && other.received.delivery == one.received.delivery);
        // Of one delivery the last word is counted, and none where two differ.
        let is_last = of_this().next_back().is_some_and(|last| std::ptr::eq(last, one));
        if !is_last || of_this().any(|other| !other.item.says_as(&one.item)) {
            continue;
        }
        match part(one, of.amount, &names) {
            Some(SoMany::Count(count)) => came = came.checked_add(count)?,
            // Of what comes later it can't be known whether that is missing of it, or of all.
            Some(SoMany::AllBut(count)) if came.is_zero() => came = of.amount.checked_sub(count)?,
            Some(SoMany::AllBut(_)) => return None,
            Some(SoMany::TheRest) => is_rest = true,
            None if one.item.is_as_approved() => came = came.checked_add(of.amount)?,
            None => {}
        }
    }
    if is_rest {
        // What is left is all of it only beside a part that came before.
        let is_beside_a_part = came > Decimal::ZERO && came < of.amount;
        came = if is_beside_a_part { of.amount } else { return None };
    }
    (came > Decimal::ZERO && came <= of.amount).then_some(Counted { came, of: of.amount })
}

/// How many of so many one statement says that came, if that alone is another and it was taken.
fn part(said: &Said, of: Decimal, names: &str) -> Option<SoMany> {
    let told = said.item.otherwise().next().filter(|_| said.is_short())?.words.as_deref()?;
    so_many(told, of, names).filter(|count| *count != SoMany::Count(of))
}

/// The option that came.
fn option_of<'s>(said: &Said, selection: &'s Selection) -> Option<&'s ProductOption> {
    let named = said.item.option.as_deref();
    named.and_then(|id| selection.options.iter().find(|one| one.id.value == id)).or_else(|| selection.settled())
}

impl Said {
    /// Whether the number alone is another, and it was taken.
    pub fn is_short(&self) -> bool {
        let mut otherwise = self.item.otherwise();
        let is_number = |line: &LineReceived| line.of == Looked::Number && line.came == Came::Different;
        otherwise.next().is_some_and(is_number) && otherwise.next().is_none() && self.item.kept == Some(Kept::Taken)
    }

    /// The item as it was issued that this was held beside.
    pub(super) fn beside<'b>(&self, book: &'b Book) -> Option<&'b IssuedItem> {
        let issues = book.record.issues.values().rev();
        let is_it = |issued: &&IssuedItem| issued.mark == self.item.mark;
        issues.filter_map(|issue| issue.item(&self.item.room, &self.item.item)).find(is_it)
    }

    /// What was approved of it, and nobody looked at: nothing of what is said to be as approved beyond that.
    pub fn unlooked(&self, book: &Book) -> Vec<Looked> {
        let Some(issued) = self.beside(book) else { return vec![] };
        let content = ItemContent(&issued.content);
        let only = || content.options().next().filter(|_| !content.is_open()).and_then(OptionContent::id);
        let option = self.item.option.as_deref().or_else(|| content.chosen()).or_else(only);
        let shown = option.and_then(|id| shown::option_as_issued(&issued.content, id));
        let all = shown.map_or_else(Vec::new, |shown| shown::looks(&shown));
        all.into_iter().filter(|looked| self.item.lines.iter().all(|line| line.of != *looked)).collect()
    }
}

/// `finish and size`.
pub fn named(looked: &[Looked]) -> Phrase {
    let words: Vec<Phrase> = looked.iter().map(|one| one.told().into()).collect();
    Phrase::series(words)
}
