//! What of the terms changed between two issues: tax, what prices include, allowances, and what heads every sheet.

use crate::book::Prices;
use crate::ledger::{AllowedTerms, Issue, MoneyTerms};
use crate::shown::ChangedValue;
use crate::units::{Currency, Money, Phrase, Wrote, phrase};

/// A term of money, or of the title block.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Term {
    /// What heads every sheet.
    TitleBlock(TitleField),
    /// The rate of tax.
    Tax,
    /// Whether tax is in every price: what was said, and what is.
    Prices(Prices, Prices),
    /// The amount of an allowance, by its name.
    Allowance(String),
    /// What that is to pay for besides the things.
    AllowanceIncludes(String),
}

/// What heads every sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TitleField {
    /// What the book is called.
    Title,
    /// The household.
    Client,
    /// Where the work is.
    Address,
    /// The firm.
    Firm,
    /// Where to call.
    Phone,
    /// Where to write.
    Email,
    /// The firm's number for the project.
    Number,
}

impl TitleField {
    /// What it is called in a sentence.
    fn words(self) -> &'static str {
        match self {
            Self::Title => "the title",
            Self::Client => "the client",
            Self::Address => "the address of the work",
            Self::Firm => "the firm",
            Self::Phone => "where to call",
            Self::Email => "where to write",
            Self::Number => "the project's number",
        }
    }
}

/// A term that is another one. An empty side was not agreed, or is not any more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TermMoved {
    /// Which.
    pub what: Term,
    /// What it was.
    pub from: Option<ChangedValue>,
    /// What it is.
    pub to: Option<ChangedValue>,
}

impl TermMoved {
    /// In a phrase: `tax from 8.25 % to 9 %`.
    pub fn words(&self) -> Phrase {
        let what = match &self.what {
            Term::TitleBlock(field) => Phrase::from(field.words()),
            Term::Tax => Phrase::from("tax"),
            Term::Prices(was, is) => return phrase!("prices from {was} to {is}", was, is),
            Term::Allowance(name) => phrase!("allowance `{name}`", name),
            Term::AllowanceIncludes(name) => phrase!("what the allowance `{name}` includes", name),
        };
        match (self.from.as_ref().map(ChangedValue::phrase), self.to.as_ref().map(ChangedValue::phrase)) {
            (Some(from), Some(to)) => phrase!("{what} from {from} to {to}", what, from, to),
            (Some(from), None) => phrase!("{what} gone, which was {from}", what, from),
            (None, Some(to)) => phrase!("{what} new: {to}", what, to),
            (None, None) => what,
        }
    }
}

/// What heads the sheets of both otherwise.
fn title_block(from: &Issue, to: &Issue) -> Vec<TermMoved> {
    let (Some(was), Some(is)) = (&from.title_block, &to.title_block) else { return vec![] };
    // An older issue says nothing of it, and an empty one that there was none.
    let told = |number: &'_ Option<String>| number.clone().filter(|number| !number.is_empty());
    let (number_was, number_is) = match (&was.number, &is.number) {
        (Some(_), Some(_)) => (told(&was.number), told(&is.number)),
        _ => (None, None),
    };
    let number = (TitleField::Number, number_was.as_deref(), number_is.as_deref());
    let both = [
        (TitleField::Title, Some(from.title.as_str()), Some(to.title.as_str())),
        (TitleField::Client, was.client.as_deref(), is.client.as_deref()),
        (TitleField::Address, was.address.as_deref(), is.address.as_deref()),
        (TitleField::Firm, was.firm.as_deref(), is.firm.as_deref()),
        (TitleField::Phone, was.phone.as_deref(), is.phone.as_deref()),
        (TitleField::Email, was.email.as_deref(), is.email.as_deref()),
        number,
    ];
    let moved = both.into_iter().filter(|(_, was, is)| was != is);
    moved
        .map(|(field, was, is)| TermMoved { what: Term::TitleBlock(field), from: was.map(plain), to: is.map(plain) })
        .collect()
}

fn plain(text: &str) -> ChangedValue {
    ChangedValue::Other(phrase!("{text}", Wrote(text)))
}

fn moved(what: Term, from: Option<ChangedValue>, to: Option<ChangedValue>) -> Option<TermMoved> {
    (from != to).then_some(TermMoved { what, from, to })
}

/// The terms that are not the same. Of what an older issue does not say nothing is told.
pub(super) fn between(from: &Issue, to: &Issue) -> Vec<TermMoved> {
    let prices = |tax_in: bool| if tax_in { Prices::WithTax } else { Prices::BeforeTax };
    let mut found = title_block(from, to);
    if let (Some(was), Some(is)) = (&from.terms, &to.terms) {
        let (was, is) = (prices(was.tax_in_prices), prices(is.tax_in_prices));
        found.extend((was != is).then_some(TermMoved { what: Term::Prices(was, is), from: None, to: None }));
    }
    if let (Some(was), Some(is)) = (&from.money, &to.money) {
        found.extend(of_money((was, &from.currency), (is, &to.currency)));
    }
    found
}

/// What was agreed of money besides prices and is another thing, each side with its currency.
pub fn of_money(
    (was, was_in): (&MoneyTerms, &str),
    (is, is_in): (&MoneyTerms, &str),
) -> impl Iterator<Item = TermMoved> {
    let mut found: Vec<TermMoved> =
        moved(Term::Tax, was.tax.as_deref().map(plain), is.tax.as_deref().map(plain)).into_iter().collect();
    let called = |all: &[AllowedTerms], name: &str| all.iter().find(|one| one.name == name).cloned();
    let gone = was.allowances.iter().filter(|one| called(&is.allowances, &one.name).is_none());
    for name in is.allowances.iter().chain(gone).map(|one| &one.name) {
        let (before, after) = (called(&was.allowances, name), called(&is.allowances, name));
        let amount = |of: &Option<AllowedTerms>, currency: &str| {
            let sum = &of.as_ref()?.amount;
            let money = Currency::parse(currency).ok().and_then(|currency| Money::parse(sum, currency).ok());
            Some(money.map_or_else(|| plain(sum), ChangedValue::Amount))
        };
        let includes = |of: &Option<AllowedTerms>| of.as_ref()?.includes.as_deref().map(plain);
        found.extend(moved(Term::Allowance(name.clone()), amount(&before, was_in), amount(&after, is_in)));
        found.extend(moved(Term::AllowanceIncludes(name.clone()), includes(&before), includes(&after)));
    }
    found.into_iter()
}
