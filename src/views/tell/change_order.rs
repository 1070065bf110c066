//! Tells the change order between two issues, as a sheet to sign.

use std::collections::BTreeMap;

use crate::assess::{ChangeOrder as Order, Changed, Fate, Moved, Sort, cautions};
use crate::book::{Book, Room as BookRoom, Selection};
use crate::digest::Digest;
use crate::ledger::{Issue, IssuedItem};
use crate::marks::{self, Said};
use crate::units::{Money, series};
use crate::views::change_order::{Change, ChangeOrder, Item, Room};
use crate::views::sign_off::{Line, Sheet};
use crate::vocabulary::Kind;

use super::figures::count;
use super::lines::capital;
use super::parts;
use super::sign::who_signs;
use super::sign_off::{approvers, paper_of, project_of};

/// The issues that are compared, the earlier one first; number 0 is the book as it stands.
type Issues<'a> = (&'a Issue, &'a Issue);

/// The change order between two issues of a book: one sheet, or its parts where it has very many items.
pub fn change_order(order: &Order, issues: Issues<'_>, book: &Book) -> Vec<ChangeOrder> {
    parts::of_change_order(whole(order, issues, book))
}

fn whole(order: &Order, (from, to): Issues<'_>, book: &Book) -> ChangeOrder {
    let draft = from.number == 0 || to.number == 0;
    let asks = order.asks() && !draft;
    let number = |issue: &Issue| if issue.number == 0 { "now".into() } else { issue.number.to_string() };
    ChangeOrder {
        language: book.project.languages.first().cloned().unwrap_or_else(|| "en".into()),
        paper: paper_of(book),
        draft,
        project: project_of(book),
        sheet: Sheet {
            code: format!("C-{:02}", to.number),
            title: "Change order".into(),
            scope: format!("From {} to {}", edition(from), edition(to)),
            mark: mark_of(to),
        },
        issue: format!("{} to {}", number(from), number(to)),
        delta: if to.number == 0 { String::new() } else { number(to) },
        date: to.on.to_string(),
        statement: statement(from, asks, draft),
        facts: facts(order, (from, to), book, asks),
        rooms: rooms(order, (from, to), book),
        totals: totals(order),
        approvers: if asks { approvers(book) } else { vec![] },
        rule: if asks { who_signs(book) } else { "nobody needs to sign".into() },
        part: None,
    }
}

fn edition(issue: &Issue) -> String {
    if issue.number == 0 { "the book as it stands".into() } else { format!("issue {}", issue.number) }
}

/// The mark of the whole book as an issue shows it, as its sign-off sheet bears it.
fn mark_of(issue: &Issue) -> String {
    let in_order: BTreeMap<(&str, &str), Digest> =
        issue.items.iter().map(|item| ((item.room.as_str(), item.item.as_str()), item.mark)).collect();
    marks::shown(&marks::of_all(in_order.values()))
}

fn statement(from: &Issue, asks: bool, draft: bool) -> String {
    let rest = format!("What is not named here stays as {} shows it.", edition(from));
    match (draft, asks) {
        (true, _) => format!("{rest} This was not issued: nobody is to sign it yet."),
        (false, true) => {
            format!("Each signature is for these changes, and for the money and days they bring. {rest}")
        }
        (false, false) => format!("{rest} Nothing is shown otherwise than before, so that nobody needs to sign."),
    }
}

fn facts(order: &Order, (from, to): Issues<'_>, book: &Book, asks: bool) -> Vec<Line> {
    let line = |label: &str, value: String| Line { label: label.into(), value };
    let named = |issue: &Issue| match issue.number {
        0 => format!("as of {}", issue.on),
        number => format!("{number}, for {}, {}", issue.purpose.word(), issue.on),
    };
    let mut facts = vec![line("From issue", named(from)), line("To issue", named(to)), line("Items", tally(order))];
    let money = order.settled.and_then(|sum| Some(difference(sum.by()?)));
    facts.extend(money.map(|words| line("Money", format!("{words}, before tax"))));
    facts.extend(days(order).map(|words| line("Days", words)));
    facts.push(line("Who signs", if asks { signers(book) } else { "nobody needs to".into() }));
    facts
}

/// Approvers by name, with how many of them must sign.
fn signers(book: &Book) -> String {
    let names: Vec<String> = book.project.approvers.iter().map(|approver| approver.name.clone()).collect();
    if names.len() < 2 { who_signs(book) } else { format!("{}; {}", series(&names), who_signs(book)) }
}

fn tally(order: &Order) -> String {
    let of = |fate: Fate| order.items.iter().filter(|item| item.fate == fate).count();
    let told = [(Fate::Changed, "changed"), (Fate::Added, "new"), (Fate::Gone, "gone"), (Fate::Dated, "of new dates")];
    let told: Vec<String> =
        told.into_iter().filter(|(fate, _)| of(*fate) > 0).map(|(fate, word)| format!("{} {word}", of(fate))).collect();
    if told.is_empty() { "none changed".into() } else { told.join(", ") }
}

/// By how much the last days to order move, the earliest and the latest.
fn days(order: &Order) -> Option<String> {
    let moved: Vec<i64> = order.items.iter().filter_map(Changed::days).collect();
    let sooner = moved.iter().filter(|days| **days < 0).min();
    let later = moved.iter().filter(|days| **days > 0).max();
    let told: Vec<String> = [sooner, later].into_iter().flatten().map(|days| shift(*days)).collect();
    (!told.is_empty()).then(|| format!("orders up to {}", told.join(", and up to ")))
}

/// `7 days sooner`.
fn shift(days: i64) -> String {
    let number = usize::try_from(days.unsigned_abs()).unwrap_or(usize::MAX);
    format!("{} {}", count(number, "day", "days"), if days < 0 { "sooner" } else { "later" })
}

/// `$20.00 more`.
fn difference(by: Money) -> String {
    match by {
        by if by.minor == 0 => "as before".into(),
        by if by.is_negative() => format!("{} less", Money::new(-by.minor, by.currency)),
        by => format!("{by} more"),
    }
}

/// What the items came to before, what each sort of change brings, then the sums before and after, which are
/// theirs: base and changes add up to the new sum.
fn totals(order: &Order) -> Vec<Change> {
    let base = order.settled.filter(|_| !order.sums.is_empty());
    let base = base.map(|sum| change("Base, before tax", sum.from.to_string(), String::new()));
    let sorts = order
        .sums
        .iter()
        .map(|(sort, sum)| Change { by: difference(*sum), ..change(sort_name(*sort), String::new(), String::new()) });
    let sums = [("Items before tax", order.settled), ("Total with tax", order.with_tax)];
    base.into_iter().chain(sorts).chain(sums.into_iter().filter_map(|(name, sum)| Some(moved(name, sum?)))).collect()
}

/// What a change of money comes from, in words.
fn sort_name(sort: Sort) -> &'static str {
    match sort {
        Sort::Choice => "Choices made",
        Sort::Change => "Changes",
        Sort::New => "New items",
        Sort::Withdrawn => "Withdrawn",
    }
}

fn moved(what: &str, sum: Moved<Money>) -> Change {
    let by = sum.by().map_or_else(String::new, difference);
    Change { what: what.into(), from: sum.from.to_string(), to: sum.to.to_string(), by }
}

/// The rooms in the order in which their items stand in the change order.
fn rooms(order: &Order, issues: Issues<'_>, book: &Book) -> Vec<Room> {
    let (mut rooms, mut at): (Vec<Room>, BTreeMap<&str, usize>) = (Vec::new(), BTreeMap::new());
    let issued = (by_item(issues.0), by_item(issues.1));
    let here: BTreeMap<(&str, &str), (&BookRoom, &Selection)> =
        book.selections().map(|(room, one)| ((room.folder.as_str(), one.id.as_str()), (room, one))).collect();
    for changed in &order.items {
        let key = (changed.room.as_str(), changed.item.as_str());
        let number = *at.entry(&changed.room).or_insert_with(|| {
            let name = book.room(&changed.room).map_or(changed.room.as_str(), |room| room.title());
            rooms.push(Room { name: name.into(), items: vec![] });
            rooms.len() - 1
        });
        let (was, is) = (issued.0.get(&key).copied(), issued.1.get(&key).copied());
        let item = item(changed, (was, is), here.get(&key).copied());
        rooms.get_mut(number).into_iter().for_each(|room| room.items.push(item.clone()));
    }
    rooms
}

/// The items of an issue by room and selection; of two the first.
fn by_item(issue: &Issue) -> BTreeMap<(&str, &str), &IssuedItem> {
    issue.items.iter().rev().map(|item| ((item.room.as_str(), item.item.as_str()), item)).collect()
}

/// An item as it was and is on record, and where it is in the book now.
fn item(
    changed: &Changed,
    (was, is): (Option<&IssuedItem>, Option<&IssuedItem>),
    here: Option<(&BookRoom, &Selection)>,
) -> Item {
    let fate = match changed.fate {
        Fate::Added => "New",
        Fate::Gone => "Gone",
        Fate::Changed => "Changed",
        Fate::Dated => "New dates alone",
    };
    let mut changes = vec![];
    if matches!(changed.fate, Fate::Added | Fate::Gone) {
        changes.push(change("Shown as", shown(was), shown(is)));
    }
    changes.extend(changed.changes.iter().filter_map(|one| content(one, changed)));
    changes.extend(ordering(changed));
    if changed.asks() {
        let mark = |item: Option<&IssuedItem>| item.map_or_else(String::new, |item| marks::shown(&item.mark));
        changes.push(change("Mark", mark(was), mark(is)));
    }
    let cautions = is.map_or_else(Vec::new, |is| cautions(is, here));
    Item { tag: changed.tag.clone(), name: changed.name.clone(), fate: fate.into(), changes, cautions }
}

/// What may hurt of an item as it was issued: the makers' cautions, then those of what it is and needs; of
/// what is in the book no longer, all that its kind may do.
fn cautions(item: &IssuedItem, here: Option<(&BookRoom, &Selection)>) -> Vec<String> {
    let options = item.content.get("options").and_then(|options| options.as_array()).into_iter().flatten();
    let makers = options.filter_map(|option| option.get("caution")?.as_str());
    let named = item.content.get("kind").and_then(|name| Kind::named(name.as_str()?));
    let of_kind = || named.map_or_else(Vec::new, cautions::of_kind);
    let hazards = here.map_or_else(of_kind, |(room, selection)| cautions::of_selection(room, selection));
    let mut told: Vec<String> = Vec::new();
    for caution in makers.chain(hazards.iter().map(|hazard| hazard.caution().words())) {
        if !told.iter().any(|before| before == caution) {
            told.push(caution.into());
        }
    }
    told
}

fn change(what: &str, from: String, to: String) -> Change {
    Change { what: what.into(), from, to, by: String::new() }
}

/// What an item that is new or gone is: its options by name, maker, model and finish.
fn shown(item: Option<&IssuedItem>) -> String {
    let options = item.and_then(|item| item.content.get("options")?.as_array()).map_or(&[][..], Vec::as_slice);
    let told = options.iter().map(|option| {
        let mut words: Vec<&str> = Vec::new();
        for word in ["name", "maker", "model", "finish"].iter().filter_map(|key| option.get(*key)?.as_str()) {
            if !words.iter().any(|before| before.contains(word)) {
                words.push(word);
            }
        }
        words.join(", ")
    });
    told.collect::<Vec<_>>().join("; or ")
}

/// A change of what is shown; none for a price that the sum says again.
fn content(change: &marks::Change, of: &Changed) -> Option<Change> {
    let amount = |said: &Option<Said>| said.as_ref().and_then(Said::amount);
    let (from, to) = (amount(&change.from), amount(&change.to));
    if (from.is_some() || to.is_some()) && (from, to) == (of.price.from, of.price.to) {
        return None;
    }
    let words = |said: &Option<Said>| match said {
        Some(Said::Amount(money)) => money.to_string(),
        Some(Said::Words(words)) => words.clone(),
        None => String::new(),
    };
    let by = from.zip(to).and_then(|(from, to)| Some(difference(Moved { from, to }.by()?)));
    Some(Change {
        what: capital(&change.named()),
        from: words(&change.from),
        to: words(&change.to),
        by: by.unwrap_or_default(),
    })
}

/// Money and days: what the item comes to, its lead time, the last day to order it.
fn ordering(changed: &Changed) -> Vec<Change> {
    let text = |money: Option<Money>| money.map_or_else(String::new, |money| money.to_string());
    let mut told = Vec::new();
    let (price, lead, order_by) = (&changed.price, &changed.lead_time, &changed.order_by);
    if price.from != price.to {
        let by = match changed.sort() {
            Sort::Choice => changed.money().map_or_else(String::new, |money| format!("{money}, a first choice")),
            _ => changed.money().map_or_else(String::new, difference),
        };
        told.push(Change { by, ..change("Price in all", text(price.from), text(price.to)) });
    }
    if lead.from != lead.to {
        let words = |text: &Option<String>| text.clone().unwrap_or_default();
        told.push(change("Lead time", words(&lead.from), words(&lead.to)));
    }
    if order_by.from != order_by.to {
        let day = |day: Option<crate::units::Date>| day.map_or_else(String::new, |day| day.to_string());
        let by = changed.days().map_or_else(String::new, shift);
        told.push(Change { by, ..change("Order by", day(order_by.from), day(order_by.to)) });
    }
    told
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Currency;

    #[test]
    fn what_is_shown_of_a_new_item_is_told_once() {
        let content = serde_json::json!({"options": [
            {"id": "a", "name": "Zelmor ZS-1", "maker": "Zelmor", "model": "ZS-1", "finish": "oak"},
            {"id": "b", "name": "In ash", "maker": "Zelmor", "model": null, "finish": "ash"},
        ]});
        let item = IssuedItem {
            room: "kitchen".into(),
            item: "rug".into(),
            tag: "K-01".into(),
            name: "Rug".into(),
            mark: marks::of(&content),
            content,
            price: None,
            lead_time: None,
            order_by: None,
        };
        assert_eq!(shown(Some(&item)), "Zelmor ZS-1, oak; or In ash, Zelmor");
        assert_eq!(shown(None), "");
    }

    #[test]
    fn money_and_days_say_which_way_they_moved() {
        let usd = |minor| Money::new(minor, Currency::USD);
        assert_eq!([2000, -50, 0].map(|by| difference(usd(by))), ["$20.00 more", "$0.50 less", "as before"]);
        assert_eq!([-7, 1].map(shift), ["7 days sooner", "1 day later"]);
    }
}
