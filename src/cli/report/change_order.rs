//! A change order, for people and for programs.

use std::fmt::Write;

use crate::assess::approval::Withdrawn;
use crate::assess::{Asked, ChangeOrder, Changed, Fate, Look, Moved, Reopened, Signing, Sort, Taken};
use crate::book::{Approval, Book};
use crate::ledger::{AskedChange, Issue};
use crate::pipeline::Review;
use crate::units::{Currency, Money, series};
use crate::vocabulary::Words;

use super::holders;
use super::sheets::{self, fate};

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
    } else {
        text += &unapproved(&Taken::of(issue));
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
        return format!("nothing changed\n{}", unapproved(&order.taken));
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
    text += &unapproved(&order.taken);
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

/// What is built although it is not approved, with the reason, and what is approved since.
fn unapproved(taken: &Taken) -> String {
    let mut text = String::new();
    if let Some(because) = &taken.because {
        let _ = writeln!(text, "\nnot approved, and built all the same ({because}): {}", series(&taken.things));
    }
    if !taken.approved_since.is_empty() {
        let _ = writeln!(text, "\napproved since: {}", series(&taken.approved_since));
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
pub(super) fn sort_word(sort: Sort) -> &'static str {
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
    lines.extend(item.other_supplier.then(|| "it comes from another supplier".to_string()));
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
    let words = [
        (Fate::Changed, "changed"),
        (Fate::Added, "new"),
        (Fate::Gone, "gone"),
        (Fate::Dated, "of new dates"),
        (Fate::Supplied, "of another supplier"),
    ];
    let told: Vec<String> = words
        .into_iter()
        .map(|(fate, word)| (count(fate), word))
        .filter(|(count, _)| *count > 0)
        .map(|(count, word)| format!("{count} {word}"))
        .collect();
    let sums_alone = order.built.as_ref().is_some_and(Vec::is_empty) && order.terms.is_empty() && order.who.is_empty();
    let sums_alone = sums_alone && order.taken.is_nothing();
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
