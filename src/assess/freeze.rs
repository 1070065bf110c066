//! Freezes a book into an issue: every item with its mark, and what it comes to.

use crate::book::{Book, Prices, Project, Room, Selection};
use crate::ledger::{AllowedTerms, Head, Issue, IssuedItem, IssuedSheet, MoneyTerms, Purpose, TitleBlock, Total};
use crate::shown::{self, Marked, Versions};
use crate::site::plan::Plans;
use crate::units::{Currency, Date, Money};
use crate::vocabulary::Version;

use super::approval::terms_of;
use super::change_order::{BuiltOtherwise, built_otherwise};
use super::codes::Rulings;
use super::{Assessment, WithTax};

/// Under which name a book is frozen.
#[derive(Clone, Debug)]
pub struct Heading {
    /// The book's id.
    pub book: String,
    /// The issue's number; 0 for the book as it stands.
    pub number: u32,
    /// What it is for.
    pub purpose: Purpose,
    /// The day.
    pub on: Date,
    /// The ledger's last line; none of the book as it stands.
    pub after: Option<Head>,
}

/// The book as an issue. The digests of its pictures must have been read.
pub fn freeze(book: &Book, assessment: &Assessment, heading: Heading) -> Issue {
    let versions = Versions { asked: Version::default(), ..Versions::of(book) };
    let marked = shown::under(book, versions, &shown::as_read(book));
    let items = book.selections().filter_map(|(room, selection)| {
        let marked = marked.get(&(room.folder.as_str(), selection.id.as_str()))?;
        Some(frozen(assessment, room, selection, marked))
    });
    let settled = assessment.amounts.book.settled;
    let currency = settled.map(|settled| settled.currency).or(book.project.currency).unwrap_or(Currency::USD);
    let settled = settled.unwrap_or(Money::zero(currency));
    let taxed = WithTax::of(book, settled);
    // A sum that holds its tax is told once.
    let added = book.project.prices == Prices::BeforeTax;
    let with_tax = taxed.tax.and(taxed.total).filter(|_| added);
    Issue {
        book: heading.book,
        number: heading.number,
        purpose: heading.purpose,
        on: heading.on,
        title: book.project.title.text().to_string(),
        currency: currency.code().to_string(),
        total: Total { settled: settled.plain(), with_tax: with_tax.map(Money::plain) },
        terms: Some(terms_of(book)),
        after: heading.after,
        items: items.collect(),
        built: Some(built(book, &Plans::of(book))),
        asked: vec![],
        unapproved: None,
        money: Some(money_terms(book)),
        title_block: Some(title_block(&book.project)),
    }
}

/// What stands at the head of every sheet, by the book as it is now.
fn title_block(project: &Project) -> TitleBlock {
    let firm = &project.firm;
    TitleBlock {
        client: project.client.get().cloned(),
        address: project.address.get().cloned(),
        firm: firm.name.get().cloned(),
        phone: firm.phone.get().cloned(),
        email: firm.email.get().cloned(),
        number: Some(project.number.text().to_owned()),
    }
}

/// What of money is agreed besides prices, by the book as it is now.
pub fn money_terms(book: &Book) -> MoneyTerms {
    let allowances = book.project.allowances.iter().map(|allowed| AllowedTerms {
        name: allowed.name.value.clone(),
        amount: allowed.amount.plain(),
        includes: allowed.includes.get().cloned(),
    });
    MoneyTerms { tax: book.project.tax.get().map(ToString::to_string), allowances: allowances.collect() }
}

/// Every opening with all that it is built from, in the book's order.
pub fn built(book: &Book, plans: &Plans<'_>) -> Vec<IssuedSheet> {
    shown::built(book, plans, &Rulings::of(&book.project).heat())
}

/// The openings of a book that are built from other figures than were issued.
pub fn built_since(issued: &[IssuedSheet], book: &Book) -> Vec<BuiltOtherwise> {
    built_otherwise(issued, &built(book, &Plans::of(book)))
}

fn frozen(assessment: &Assessment, room: &Room, selection: &Selection, marked: &Marked) -> IssuedItem {
    let settled = selection.settled();
    IssuedItem {
        room: room.folder.clone(),
        item: selection.id.clone(),
        tag: selection.tag.clone(),
        name: selection.name.value.clone(),
        mark: marked.mark,
        also: marked.also.clone(),
        content: marked.content.clone(),
        price: settled.and_then(|option| Some(option.price_in_all()?.plain())),
        lead_time: settled.and_then(|option| Some(option.lead_time.get()?.to_string())),
        order_by: settled.and_then(|option| assessment.dates.order_by(selection, option)?.order),
        supplier: settled.and_then(|option| IssuedItem::supplied_by(option.supplier.text())),
    }
}
