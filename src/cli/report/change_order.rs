//! A change order, for people and for programs.

use std::fmt::Write;

use serde::Serialize;

use crate::assess::approval::Withdrawn;
use crate::assess::{Asked, ChangeOrder, Changed, Fate, Look, Moved, Reopened, Signing, Sort};
use crate::book::{Approval, Book};
use crate::ledger::{AskedChange, Issue};
use crate::pipeline::Review;
use crate::units::{Currency, Money, series};
use crate::vocabulary::Words;

use super::holders::{self, HolderReport};
use super::sheets::{self, ChangeReport, SheetReport, fate, fate_word};

/// What an issue froze, and what changed since the one before it.
pub fn issued(issue: &Issue, before: Option<&Issue>, review: &Review) -> String {
    let book = &review.book;
    let purpose = issue.purpose.word();
    let count = counted(issue.items.len(), "item", "items");
    let mut text = format!("issue {} for {purpose}, {}: {count}, {}\n", issue.number, issue.on, total(issue));
    if let Some(before) = before {
        let order = ChangeOrder::between(before, issue).in_units(book.project.units);
        let order = order.but_what_was_signed(issue, book, &review.assessment.approvals);
        let _ = write!(
            text,
            "\nsince issue {} of {}:\n\n{}",
            before.number,
            before.on,
            items(&order, (before, issue), book)
        );
    }
    text + &holders::still_held(&book.record, issue.number, issue.purpose)
}

fn total(issue: &Issue) -> String {
    let worded = |sum: &str| {
        let money = Currency::parse(&issue.currency).ok().and_then(|currency| Money::parse(sum, currency).ok());
        money.map_or_else(|| sum.to_string(), |money| money.to_string())
    };
    let with_tax = issue.total.with_tax.as_ref().map_or(String::new(), |sum| format!(", {} with tax", worded(sum)));
    format!("{} settled{with_tax}", worded(&issue.total.settled))
}

/// A change order for people.
pub fn text(order: &ChangeOrder, (from, to): (&Issue, &Issue), book: &Book) -> String {
    format!(
        "{}\nchange order from {} to {}\n\n{}{}",
        to.title,
        edition(from),
        edition(to),
        items(order, (from, to), book),
        holders::still_held(&book.record, to.number, to.purpose)
    )
}

fn edition(issue: &Issue) -> String {
    match issue.number {
        0 => format!("the book as of {}", issue.on),
        number => format!("issue {number} for {}, {}", issue.purpose.word(), issue.on),
    }
}

fn items(order: &ChangeOrder, issues: (&Issue, &Issue), book: &Book) -> String {
    if order.is_nothing() {
        return "nothing changed\n".into();
    }
    let (mut text, asked) = (String::new(), Asked::between(&book.record, issues));
    let withdrawn = order.withdrawn(book);
    for item in &order.items {
        let _ = writeln!(text, "{}  {}, {}{}", item.tag, item.name, item.room, fate(item.fate));
        let withdrawn = withdrawn.iter().filter(|gone| gone.is(item)).map(Withdrawn::had_approved);
        for line in lines(item).into_iter().chain(withdrawn).chain(who_asked(item, &asked)) {
            let _ = writeln!(text, "      {line}");
        }
    }
    let built = match &order.built {
        Some(built) => sheets::text("to be built from another sheet", built),
        None => format!("\n{} says nothing of what is built from\n", edition(issues.0)),
    };
    text += if text.is_empty() { built.trim_start() } else { &built };
    text += &opens_again(&order.reopened(issues, book));
    text.push('\n');
    let _ = writeln!(text, "{}", tally(order));
    for term in &order.terms {
        let _ = writeln!(text, "{}", term.words());
    }
    if let Some(sum) = order.settled.filter(|_| !order.sums.is_empty()) {
        let _ = writeln!(text, "base: {}", sum.from);
    }
    for (sort, sum) in &order.sums {
        let _ = writeln!(text, "{}: {}", sort_word(*sort), more(*sum));
    }
    for (name, sum) in [(Words::word(book.project.prices), order.settled), ("with tax", order.with_tax)] {
        if let Some(words) = sum.and_then(|sum| Some(money(&sum, sum.by()?))) {
            let _ = writeln!(text, "{name}: {words}");
        }
    }
    for change in &order.who {
        let _ = writeln!(text, "who decides: {}", change.words());
    }
    match order.signing(issues, book) {
        Signing::Nobody => {}
        Signing::NotIssued => text += "to sign: nobody, since this was not issued\n",
        Signing::By(must, names) => _ = writeln!(text, "to sign: {}", signers(must, &names)),
    }
    text
}

/// What rests on something that changed, a line each: what opens again, then what was looked at and stays.
fn opens_again(all: &[Reopened]) -> String {
    let mut text = String::new();
    let (again, unchanged): (Vec<_>, Vec<_>) = all.iter().partition(|one| one.look == Look::OpensAgain);
    for (heading, all) in [("to be looked at again (its approval stands)", again), ("looked at, unchanged", unchanged)]
    {
        if !all.is_empty() {
            let _ = writeln!(text, "\n{heading}");
        }
        for Reopened { room, tag, name, because, on, order_by, look, .. } in all {
            let rest = match look {
                Look::OpensAgain => order_by.map_or(String::new(), |day| format!("; order by {day}")),
                Look::NothingItRestsOn => ", and nothing changed that it rests on".into(),
                Look::ChosenAnew(on) => format!("; chosen anew on {on}"),
            };
            let _ = writeln!(text, "{tag}  {name}, {room}: it {} {on}{rest}", because.words());
        }
    }
    text
}

/// Who asked for a change, and why: a line for each time; that nobody says it.
fn who_asked(item: &Changed, asked: &Asked<'_>) -> Vec<String> {
    if !item.is_asked_for() {
        return vec![];
    }
    let line = |said: &AskedChange| match (&said.by, &said.because) {
        (Some(by), Some(because)) => format!("asked for by {by}: {because}"),
        (Some(by), None) => format!("asked for by {by}; nobody says why"),
        (None, because) => format!("nobody says who asked for it: {}", because.as_deref().unwrap_or_default()),
    };
    let mut lines: Vec<String> = asked.of(item).map(line).collect();
    if lines.is_empty() {
        lines.push("nobody says who asked for it, and why".into());
    }
    lines
}

/// What a change of money comes from.
fn sort_word(sort: Sort) -> &'static str {
    match sort {
        Sort::Choice => "choices made",
        Sort::Change => "changes",
        Sort::New => "new",
        Sort::Withdrawn => "withdrawn",
    }
}

/// `$20.00 more`.
fn more(by: Money) -> String {
    match by.is_negative() {
        true => Money::zero(by.currency).checked_sub(by).map_or_else(|_| by.to_string(), |less| format!("{less} less")),
        false => format!("{by} more"),
    }
}

/// What changed of an item, a line each.
fn lines(item: &Changed) -> Vec<String> {
    let mut lines: Vec<String> = item.changes.iter().map(|change| change.words().to_string()).collect();
    let price = match (item.price.from, item.price.to) {
        (Some(from), Some(to)) if from != to => {
            let moved = Moved { from, to };
            Some(format!("in all {}", moved.by().map_or_else(|| format!("{from} to {to}"), |by| money(&moved, by))))
        }
        (None, Some(to)) => Some(format!("in all {to}")),
        (Some(from), None) => Some(format!("in all {from} before")),
        _ => None,
    };
    lines.extend(price);
    let lead = &item.lead_time;
    match (&lead.from, &lead.to) {
        (Some(from), Some(to)) if from != to => lines.push(format!("lead time from {from} to {to}")),
        (None, Some(to)) => lines.push(format!("lead time {to}")),
        _ => {}
    }
    match (item.order_by.from, item.order_by.to, item.days()) {
        (Some(from), Some(to), Some(days)) => {
            let count = counted(usize::try_from(days.unsigned_abs()).unwrap_or(usize::MAX), "day", "days");
            let way = if days < 0 { "sooner" } else { "later" };
            lines.push(format!("order by {to}, {count} {way} than {from}"));
        }
        (None, Some(to), _) => lines.push(format!("order by {to}")),
        _ if item.asks() => lines.push("days: none".into()),
        _ => {}
    }
    lines
}

/// `$3,180.00 to $3,280.00, $100.00 more`.
fn money(moved: &Moved<Money>, by: Money) -> String {
    let Moved { from, to } = moved;
    match by {
        by if by.minor == 0 => format!("{to}, as before"),
        by if by.is_negative() => format!("{from} to {to}, {} less", Money::new(-by.minor, by.currency)),
        by => format!("{from} to {to}, {by} more"),
    }
}

fn tally(order: &ChangeOrder) -> String {
    let count = |fate: Fate| order.items.iter().filter(|item| item.fate == fate).count();
    let words = [(Fate::Changed, "changed"), (Fate::Added, "new"), (Fate::Gone, "gone"), (Fate::Dated, "of new dates")];
    let told: Vec<String> = words
        .into_iter()
        .map(|(fate, word)| (count(fate), word))
        .filter(|(count, _)| *count > 0)
        .map(|(count, word)| format!("{count} {word}"))
        .collect();
    let sums_alone = order.built.as_ref().is_some_and(Vec::is_empty) && order.terms.is_empty() && order.who.is_empty();
    match (told.is_empty(), sums_alone) {
        (false, _) => told.join(", "),
        (true, false) => "no item changed".into(),
        (true, true) => "totals alone changed".into(),
    }
}

fn counted(count: usize, one: &str, several: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { several })
}

/// Who must sign what is shown otherwise.
fn signers(must: Approval, names: &[&str]) -> String {
    match (names, must) {
        ([], _) => "the book names no approver".into(),
        (names, Approval::All) => series(names),
        (names, Approval::Any) => names.join(" or "),
    }
}

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
    sign: Sign<'a>,
    /// Those who were sent an older issue than the later one, and are not known to hold that.
    holding_older: Vec<HolderReport>,
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
        days: item.days(),
        asked: asked
            .of(item)
            .map(|said| AskedReport { by: said.by.as_deref(), because: said.because.as_deref() })
            .collect(),
        sign: item.asks(),
    }
}
