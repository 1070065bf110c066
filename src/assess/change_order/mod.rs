//! The change order between two issues: what, from, to, money, days, and who must sign.

use std::collections::{BTreeMap, BTreeSet};

use crate::assess::approval::{ApprovalState, Approvals, TermsChange, Withdrawn, terms_between};
use crate::book::Book;
use crate::ledger::{Issue, IssuedItem, IssuedSheet};
use crate::shown::{
    Change, ChangedField, MarkedField, SheetOf, built_changes, built_fields, changes, changes_to_rest_on,
    is_before_plans, is_before_trades, is_built_as, version_of,
};
use crate::units::{Currency, Date, Money, System};

mod asked;
mod reopened;
mod signing;
mod taken;
mod terms;
#[cfg(test)]
mod tests;

pub use asked::{Asked, asked};
pub use reopened::{Look, Reopened, looked_at};
pub use signing::Signing;
pub use taken::Taken;
pub use terms::{Term, TermMoved, TitleField, of_money};

/// What changed between two issues.
#[derive(Clone, Debug)]
pub struct ChangeOrder {
    /// The items that are not the same, in the order of the later issue; those that are gone come last.
    pub items: Vec<Changed>,
    /// What the priced items come to, before tax; nothing between currencies, or past what can be held.
    pub settled: Option<Moved<Money>>,
    /// How that sum moved: what each kind of change brings. They add up to the difference.
    pub sums: Vec<(Sort, Money)>,
    /// The sum with tax, where both issues have it.
    pub with_tax: Option<Moved<Money>>,
    /// The terms of money, and of the title block, that are others, as far as both issues say them.
    pub terms: Vec<TermMoved>,
    /// The openings that are built from other figures: the sheets that no longer stand. None where the earlier issue
    /// says nothing of what is built from, and the later does.
    pub built: Option<Vec<BuiltOtherwise>>,
    /// What changed of who must approve, where both issues say it.
    pub who: Vec<TermsChange>,
    /// What the later one takes although it is not approved; and what the earlier took, and is approved since.
    pub taken: Taken,
}

/// A sheet of an opening, of a trade in a room, or of its plan, that is another one.
#[derive(Clone, Debug)]
pub struct BuiltOtherwise {
    /// The room, by its folder.
    pub room: String,
    /// Of what it is there.
    pub of: SheetOf,
    /// What became of it: added, gone or changed.
    pub fate: Fate,
    /// What changed of what it is built from.
    pub changes: Vec<Change>,
    /// The fields that changed, by their keys.
    pub fields: Vec<String>,
}

/// What a change of money comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sort {
    /// An open choice was made: no extra, since nothing was priced before.
    Choice,
    /// Something that had a price has another one, or none.
    Change,
    /// It is new.
    New,
    /// It is withdrawn.
    Withdrawn,
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
    /// It is shown as before, and comes from another supplier.
    Supplied,
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
    /// It is a choice that all who must have signed already.
    pub signed: bool,
    /// Nothing changed but options that are not chosen.
    pub of_others_alone: bool,
    /// Nothing changed: a newer release shows more of the same.
    pub shows_more: bool,
    /// What it comes to, before tax: none while it is open, or not there.
    pub price: Moved<Option<Money>>,
    /// Its lead time, as the book says it.
    pub lead_time: Moved<Option<String>>,
    /// The last day to order it.
    pub order_by: Moved<Option<Date>>,
    /// It comes from another supplier than before.
    pub other_supplier: bool,
}

impl BuiltOtherwise {
    /// The same in the units of its book.
    #[must_use]
    pub fn in_units(mut self, units: System) -> Self {
        self.changes = self.changes.into_iter().map(|one| one.in_units(units)).collect();
        self
    }
}

impl Moved<Money> {
    /// How much more it is; below zero when it is less.
    pub fn by(&self) -> Option<Money> {
        self.to.checked_sub(self.from).ok()
    }
}

impl Changed {
    /// How much more it comes to; what is open, or not there, comes to nothing.
    pub fn money(&self) -> Option<Money> {
        let Moved { from, to } = self.price;
        let zero = Money::zero(from.or(to)?.currency);
        to.unwrap_or(zero).checked_sub(from.unwrap_or(zero)).ok()
    }

    /// What its change of money comes from.
    pub fn sort(&self) -> Sort {
        match (self.fate, self.price.from) {
            (Fate::Added, _) => Sort::New,
            (Fate::Gone, _) => Sort::Withdrawn,
            (_, None) => Sort::Choice,
            _ => Sort::Change,
        }
    }

    /// By how many days its last day to order is later; below zero when it is sooner.
    pub fn days(&self) -> Option<i64> {
        let days = self.order_by.from?.days_until(self.order_by.to?);
        (days != 0).then_some(days)
    }

    /// Whether it is to be signed: it is shown otherwise than before.
    pub fn asks(&self) -> bool {
        !matches!(self.fate, Fate::Dated | Fate::Supplied) && !self.signed
    }
}

impl ChangeOrder {
    /// What changed from one issue to a later one.
    pub fn between(from: &Issue, to: &Issue) -> Self {
        let (was, is) = (Currency::parse(&from.currency).ok(), Currency::parse(&to.currency).ok());
        let items = changed_items(Some(from), to);
        // The total is the sum of its lines, whatever an issue says of itself.
        let settled = total(from, was).zip(total(to, is)).map(|(from, to)| Moved { from, to });
        let settled = settled.filter(|moved| moved.by().is_some());
        let agree = |issue: &Issue, sum: Option<Money>, currency| amount(Some(&issue.total.settled), currency) == sum;
        let with_tax = amount(from.total.with_tax.as_deref(), was).zip(amount(to.total.with_tax.as_deref(), is));
        let with_tax = with_tax.map(|(from, to)| Moved { from, to }).filter(|moved| {
            let sums = agree(from, settled.map(|sum| sum.from), was) && agree(to, settled.map(|sum| sum.to), is);
            sums && moved.by().is_some()
        });
        let sums = settled.map_or_else(Vec::new, |_| sums(&items));
        let mut who =
            from.terms.as_ref().zip(to.terms.as_ref()).map_or_else(Vec::new, |(was, is)| terms_between(was, is));
        who.retain(TermsChange::is_of_who);
        let (terms, built, taken) = (terms::between(from, to), built(from, to), Taken::between(from, to));
        Self { items, settled, sums, with_tax, terms, who, built, taken }
    }

    /// The same in the units of its book.
    #[must_use]
    pub fn in_units(mut self, units: System) -> Self {
        for item in &mut self.items {
            item.changes = std::mem::take(&mut item.changes).into_iter().map(|one| one.in_units(units)).collect();
        }
        self.built = self.built.map(|all| all.into_iter().map(|opening| opening.in_units(units)).collect());
        self
    }

    /// Whether nothing changed of what is shown, decided and paid.
    pub fn is_nothing_decided(&self) -> bool {
        let moved = |sum: &Option<Moved<Money>>| sum.is_some_and(|sum| sum.from != sum.to);
        self.items.is_empty() && self.terms.is_empty() && !moved(&self.settled) && !moved(&self.with_tax)
    }

    /// Whether nothing changed, neither of that nor of what is built from.
    pub fn is_nothing_built(&self) -> bool {
        self.is_nothing_decided() && self.built.as_ref().is_some_and(Vec::is_empty)
    }

    /// Whether nothing changed at all, not even who must approve.
    pub fn is_nothing(&self) -> bool {
        self.is_nothing_built() && self.who.is_empty()
    }

    /// What is withdrawn in it that somebody had approved, by the record.
    pub fn withdrawn(&self, book: &Book) -> Vec<Withdrawn> {
        if self.items.iter().all(|item| item.fate != Fate::Gone) {
            return vec![];
        }
        let mut all = Approvals::of(book).withdrawn;
        let is_told = |gone: &Withdrawn| self.items.iter().any(|item| item.fate == Fate::Gone && gone.is(item));
        all.retain(|gone| !gone.approved_by.is_empty() && is_told(gone));
        all
    }

    /// Leaves out of what is to be signed the choices that all who must have made themselves, and that stand.
    #[must_use]
    pub fn but_what_was_signed(mut self, to: &Issue, book: &Book, approvals: &Approvals) -> Self {
        // A first choice was theirs, and what is not chosen touches nothing that they signed.
        let is_choice =
            |change: &Change| change.what == ChangedField::Marked(MarkedField::Chosen) && change.from.is_none();
        for changed in self.items.iter_mut().filter(|one| one.fate == Fate::Changed && !one.changes.is_empty()) {
            let item = book.room(&changed.room).and_then(|room| {
                let selection = room.selections.iter().find(|selection| selection.id == changed.item)?;
                approvals.item(room, selection)
            });
            let stands = item
                .zip(to.item(&changed.room, &changed.item))
                .is_some_and(|(item, issued)| item.standing == ApprovalState::Approved && item.now.is(&issued.mark));
            changed.signed = stands && (changed.of_others_alone || changed.changes.iter().all(is_choice));
        }
        self
    }

    /// Whether anything must be signed.
    pub fn asks(&self) -> bool {
        self.items.iter().any(Changed::asks)
    }
}

fn built(from: &Issue, to: &Issue) -> Option<Vec<BuiltOtherwise>> {
    match (&from.built, &to.built) {
        (Some(from), Some(to)) => Some(built_otherwise(from, to)),
        (None, Some(_)) => None,
        (_, None) => Some(vec![]),
    }
}

/// The sheets that are built from other figures in the later of two issues. An issue that was made before trades'
/// sheets, or the plans of rooms, were a part of it says nothing of them.
pub fn built_otherwise(from: &[IssuedSheet], to: &[IssuedSheet]) -> Vec<BuiltOtherwise> {
    let (openings_alone, no_plans) = (is_before_trades(from), is_before_plans(from));
    let is_known = |sheet: &&IssuedSheet| match SheetOf::of(sheet) {
        SheetOf::Opening(_) => true,
        SheetOf::Trade(_) => !openings_alone,
        SheetOf::Plan => !no_plans,
    };
    let to: Vec<&IssuedSheet> = to.iter().filter(is_known).collect();
    let before: BTreeMap<(&str, &str, &str), &IssuedSheet> = from.iter().map(|one| (one.of(), one)).collect();
    let after: BTreeSet<(&str, &str, &str)> = to.iter().map(|one| one.of()).collect();
    let otherwise = |sheet: &IssuedSheet, fate: Fate, was: Option<&IssuedSheet>| BuiltOtherwise {
        room: sheet.room.clone(),
        of: SheetOf::of(sheet),
        fate,
        changes: was.map_or_else(Vec::new, |was| built_changes(&was.content, &sheet.content)),
        fields: was.map_or_else(Vec::new, |was| built_fields(&was.content, &sheet.content)),
    };
    let stays = to.iter().filter_map(|now| match before.get(&now.of()) {
        None => Some(otherwise(now, Fate::Added, None)),
        Some(was) if is_built_as(was, now) => None,
        Some(was) => Some(otherwise(now, Fate::Changed, Some(was))),
    });
    let gone = from.iter().filter(|one| !after.contains(&one.of()));
    stays.chain(gone.map(|was| otherwise(was, Fate::Gone, None))).collect()
}

/// The items that are not the same in two issues, in the order of the later one; those that are gone come
/// last. Before the first issue there was none.
pub fn changed_items(from: Option<&Issue>, to: &Issue) -> Vec<Changed> {
    let currency = |issue: &Issue| Currency::parse(&issue.currency).ok();
    let currencies = (from.and_then(currency), currency(to));
    let old = || from.into_iter().flat_map(|from| &from.items);
    let before: BTreeMap<_, _> = old().map(|item| (key(item), item)).collect();
    let there: BTreeSet<_> = to.items.iter().map(key).collect();
    let stays = to.items.iter().filter_map(|item| changed(before.get(&key(item)).copied(), Some(item), currencies));
    let gone = old().filter(|item| !there.contains(&key(item)));
    stays.chain(gone.filter_map(|item| changed(Some(item), None, currencies))).collect()
}

/// What the priced items of an issue come to; nothing where that is past what can be held.
fn total(issue: &Issue, currency: Option<Currency>) -> Option<Money> {
    let prices = issue.items.iter().filter_map(|item| amount(item.price.as_deref(), currency));
    Money::sum(currency?, prices).ok()
}

/// What each sort of change brings, of those that there are.
fn sums(items: &[Changed]) -> Vec<(Sort, Money)> {
    let mut sums: BTreeMap<Sort, Option<Money>> = BTreeMap::new();
    for (sort, money) in items.iter().filter_map(|item| Some((item.sort(), item.money()?))) {
        let sum = sums.entry(sort).or_insert(Some(Money::zero(money.currency)));
        *sum = sum.and_then(|sum| sum.checked_add(money).ok());
    }
    sums.into_iter().filter_map(|(sort, sum)| Some((sort, sum?))).filter(|(_, sum)| sum.minor != 0).collect()
}

fn key(item: &IssuedItem) -> (&str, &str) {
    (&item.room, &item.item)
}

fn amount(text: Option<&str>, currency: Option<Currency>) -> Option<Money> {
    Money::parse(text?, currency?).ok()
}

/// Whether an item comes from another supplier, where both issues tell of one.
fn is_other_supplier(from: &IssuedItem, to: &IssuedItem) -> bool {
    from.supplier.zip(to.supplier).is_some_and(|(from, to)| from != to)
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
        (Some(from), Some(to)) if !from.is_shown_as(to) => Fate::Changed,
        (Some(from), Some(to)) if from.price != to.price => Fate::Changed,
        (Some(from), Some(to)) if (&from.lead_time, from.order_by) != (&to.lead_time, to.order_by) => Fate::Dated,
        (Some(from), Some(to)) if is_other_supplier(from, to) => Fate::Supplied,
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
        signed: false,
        of_others_alone: from.zip(to).is_some_and(|(from, to)| {
            let was = from.shown().chosen();
            let chosen = to.shown().chosen().filter(|chosen| was.is_none_or(|was| was == *chosen));
            chosen.is_some() && changes_to_rest_on(&from.content, &to.content, chosen).is_empty()
        }),
        shows_more: from.zip(to).is_some_and(|(from, to)| version_of(from) != version_of(to))
            && told.iter().all(|change| change.from.is_none()),
        changes: told,
        price: Moved { from: price(from, was), to: price(to, is) },
        lead_time: Moved { from: lead(from), to: lead(to) },
        order_by: Moved { from: order(from), to: order(to) },
        other_supplier: from.zip(to).is_some_and(|(from, to)| is_other_supplier(from, to)),
    })
}
