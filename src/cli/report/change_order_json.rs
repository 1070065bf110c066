//! A change order for programs.

use serde::Serialize;

use crate::assess::{Asked, ChangeOrder, Changed, Look, Moved, Reopened, Signing};
use crate::book::{Approval, Book};
use crate::ledger::Issue;
use crate::units::Money;

use super::change_order::sort_word;
use super::holders::{self, HolderReport};
use super::sheets::{self, ChangeReport, SheetReport, fate_word};

#[derive(Serialize)]
struct ChangeOrderReport<'a> {
    title: &'a str,
    from: Edition,
    to: Edition,
    items: Vec<ChangedItemReport<'a>>,
    /// Openings whose sheets no longer stand.
    openings: Vec<SheetReport<'a>>,
    /// What rests on one of those, and did not change itself.
    opens_again: Vec<Opened>,
    /// The same, of which nothing is to be looked at again.
    unchanged: Vec<Opened>,
    currency: &'a str,
    settled: Option<SumReport>,
    /// What each sort of change brings to that sum.
    sums: Vec<Bringing>,
    with_tax: Option<SumReport>,
    /// What changed of tax, of what prices include, and of allowances, a sentence each.
    terms: Vec<String>,
    /// What changed of who must approve, a sentence each.
    who_decides: Vec<String>,
    /// What the later issue takes although it is not approved, and what is approved since.
    #[serde(skip_serializing_if = "Option::is_none")]
    unapproved: Option<TakenReport<'a>>,
    sign: Sign<'a>,
    /// Those who were sent an older issue than the later one, and are not known to hold that.
    holding_older: Vec<HolderReport>,
}

#[derive(Serialize)]
struct TakenReport<'a> {
    because: Option<&'a str>,
    things: &'a [String],
    approved_since: &'a [String],
}

#[derive(Serialize)]
struct Edition {
    /// None for the book as it stands.
    issue: Option<u32>,
    #[serde(rename = "for")]
    purpose: Option<&'static str>,
    on: String,
}

#[derive(Serialize)]
struct ChangedItemReport<'a> {
    room: &'a str,
    item: &'a str,
    tag: &'a str,
    name: &'a str,
    is: &'static str,
    changes: Vec<ChangeReport>,
    price: Moving,
    difference: Option<String>,
    lead_time: Moving,
    order_by: Moving,
    /// It comes from another supplier than before.
    other_supplier: bool,
    days: Option<i64>,
    /// Who asked for it, and why, each time.
    asked: Vec<AskedReport<'a>>,
    sign: bool,
}

#[derive(Serialize)]
struct AskedReport<'a> {
    by: Option<&'a str>,
    because: Option<&'a str>,
}

#[derive(Serialize)]
struct Opened {
    room: String,
    item: String,
    tag: String,
    name: String,
    rests_on: String,
    order_by: Option<String>,
}

#[derive(Serialize)]
struct Moving {
    from: Option<String>,
    to: Option<String>,
}

#[derive(Serialize)]
struct SumReport {
    from: String,
    to: String,
    difference: String,
}

#[derive(Serialize)]
struct Bringing {
    of: &'static str,
    difference: String,
}

#[derive(Serialize)]
struct Sign<'a> {
    needed: bool,
    /// Whether it can be signed: both sides were issued.
    now: bool,
    all: bool,
    approvers: Vec<&'a str>,
}

/// A change order for programs. Amounts are plain numbers as text; days below zero are sooner.
pub fn json(order: &ChangeOrder, (from, to): (&Issue, &Issue), book: &Book) -> String {
    let sum = |sum: Option<Moved<Money>>| {
        let sum = sum?;
        Some(SumReport { from: sum.from.plain(), to: sum.to.plain(), difference: sum.by()?.plain() })
    };
    let asked = Asked::between(&book.record, (from, to));
    let (again, unchanged): (Vec<_>, Vec<_>) =
        order.reopened((from, to), book).into_iter().partition(|one| one.look == Look::OpensAgain);
    let told = ChangeOrderReport {
        title: &to.title,
        from: told_edition(from),
        to: told_edition(to),
        items: order.items.iter().map(|item| told_item(item, &asked)).collect(),
        openings: order.built.as_deref().map(sheets::told).unwrap_or_default(),
        opens_again: again.into_iter().map(told_opened).collect(),
        unchanged: unchanged.into_iter().map(told_opened).collect(),
        currency: &to.currency,
        settled: sum(order.settled),
        sums: order.sums.iter().map(|(sort, sum)| Bringing { of: sort_word(*sort), difference: sum.plain() }).collect(),
        with_tax: sum(order.with_tax),
        terms: order.terms.iter().map(|term| term.words().to_string()).collect(),
        who_decides: order.who.iter().map(|change| change.words().to_string()).collect(),
        unapproved: (!order.taken.is_nothing()).then(|| TakenReport {
            because: order.taken.because.as_deref(),
            things: &order.taken.things,
            approved_since: &order.taken.approved_since,
        }),
        sign: Sign {
            needed: order.asks(),
            now: matches!(order.signing((from, to), book), Signing::By(..)),
            all: book.project.approval == Approval::All,
            approvers: book.project.approvers.iter().map(|approver| approver.name.as_str()).collect(),
        },
        holding_older: holders::older_than(&book.record, to.number, to.purpose),
    };
    serde_json::to_string_pretty(&told).unwrap_or_default() + "\n"
}

fn told_opened(one: Reopened) -> Opened {
    let Reopened { room, item, tag, name, on, order_by, .. } = one;
    Opened { room, item, tag, name, rests_on: on, order_by: order_by.map(|day| day.iso()) }
}

fn told_edition(issue: &Issue) -> Edition {
    let issued = issue.number > 0;
    Edition { issue: issued.then_some(issue.number), purpose: issued.then(|| issue.purpose.word()), on: issue.on.iso() }
}

fn told_item<'a>(item: &'a Changed, asked: &Asked<'a>) -> ChangedItemReport<'a> {
    ChangedItemReport {
        room: &item.room,
        item: &item.item,
        tag: &item.tag,
        name: &item.name,
        is: fate_word(item.fate),
        changes: item.changes.iter().map(ChangeReport::of).collect(),
        price: Moving { from: item.price.from.map(Money::plain), to: item.price.to.map(Money::plain) },
        difference: item.money().map(Money::plain),
        lead_time: Moving { from: item.lead_time.from.clone(), to: item.lead_time.to.clone() },
        order_by: Moving { from: item.order_by.from.map(|day| day.iso()), to: item.order_by.to.map(|day| day.iso()) },
        other_supplier: item.other_supplier,
        days: item.days(),
        asked: asked
            .of(item)
            .map(|said| AskedReport { by: said.by.as_deref(), because: said.because.as_deref() })
            .collect(),
        sign: item.asks(),
    }
}
