//! One item of a change order: what became of it, from what to what, and what may hurt.

use crate::assess::{Asked, Changed, Fate, Moved, Sort, cautions};
use crate::book::{Room as BookRoom, Selection};
use crate::language::{Say as _, Words, say};
use crate::ledger::{AskedChange, IssuedItem, OptionContent};
use crate::shown;
use crate::shown::ChangedValue;
use crate::units::{LeadTime, Money};
use crate::views::client::item::changed_field;
use crate::views::shared::found;
use crate::vocabulary::Kind;
use serde::Serialize;

/// An item that is not the same.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ChangedItem {
    /// The item's number on every sheet: `K-07`.
    pub tag: String,
    /// What it is: `Refrigerator`.
    pub name: String,
    /// What became of it: `changed`, `new`, `gone`.
    pub fate: String,
    /// What, from what, to what, and by how much.
    pub changes: Vec<ChangeLine>,
    /// What may hurt, and to whom to turn; nothing of what is gone.
    pub cautions: Vec<String>,
}

/// One thing that is no longer as it was. An empty side was not there, or is not there any more.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ChangeLine {
    /// What it is.
    pub what: String,
    /// What it was.
    pub from: String,
    /// What it is now.
    pub to: String,
    /// The difference in words: `$20.00 more`, `7 days sooner`.
    pub by: String,
}

/// `7 days sooner`.
pub(super) fn shift(words: Words, days: i64) -> String {
    let number = usize::try_from(days.unsigned_abs()).unwrap_or(usize::MAX);
    say!(words, if days < 0 { "changes.sooner" } else { "changes.later" }, n = number)
}

/// `$20.00 more`.
pub(super) fn difference(words: Words, by: Money) -> String {
    match by {
        by if by.minor == 0 => say!(words, "changes.as_before"),
        by if by.is_negative() => say!(words, "changes.less", amount = Money::new(-by.minor, by.currency)),
        by => say!(words, "changes.more", amount = by),
    }
}

/// An item as it was and is on record, and where it is in the book now.
pub(super) fn item(
    (words, asked): (Words, &Asked<'_>),
    changed: &Changed,
    (was, is): (Option<&IssuedItem>, Option<&IssuedItem>),
    here: Option<(&BookRoom, &Selection)>,
) -> ChangedItem {
    let mut changes = vec![];
    if matches!(changed.fate, Fate::Added | Fate::Gone) {
        changes.push(change(say!(words, "changes.shown_as"), shown(words, was), shown(words, is)));
    }
    changes.extend(changed.changes.iter().filter_map(|one| content(words, one, changed)));
    changes.extend(ordering(words, changed));
    changes.extend(who_asked(words, changed, asked));
    if changed.asks() {
        let mark = |item: Option<&IssuedItem>| item.map_or_else(String::new, |item| shown::in_short(&item.mark));
        changes.push(change(say!(words, "changes.mark"), mark(was), mark(is)));
    }
    let cautions = is.map_or_else(Vec::new, |is| cautions(words, is, here));
    ChangedItem {
        tag: changed.tag.clone(),
        name: changed.name.clone(),
        fate: say!(words, fate_key(changed.fate)),
        changes,
        cautions,
    }
}

/// The key of what became of something.
pub(super) fn fate_key(fate: Fate) -> &'static str {
    match fate {
        Fate::Added => "changes.fate.new",
        Fate::Gone => "changes.fate.gone",
        Fate::Changed => "changes.fate.changed",
        Fate::Dated => "changes.fate.dated",
        Fate::Supplied => "changes.fate.supplied",
    }
}

/// Who asked for it, and why, each time; that nobody says it.
fn who_asked(words: Words, changed: &Changed, asked: &Asked<'_>) -> Vec<ChangeLine> {
    if !changed.is_asked_for() {
        return vec![];
    }
    let line = |by: String, because: String| change(say!(words, "changes.asked_for"), by, because);
    let nobody = || say!(words, "changes.nobody_says");
    let said =
        |one: &AskedChange| line(one.by.clone().unwrap_or_else(nobody), one.because.clone().unwrap_or_else(nobody));
    let mut lines: Vec<ChangeLine> = asked.of(changed).map(said).collect();
    if lines.is_empty() {
        lines.push(line(nobody(), nobody()));
    }
    lines
}

/// What may hurt of an item as it was issued: the makers' cautions, then those of what it is and needs; of
/// what is in the book no longer, all that its kind may do.
fn cautions(words: Words, item: &IssuedItem, here: Option<(&BookRoom, &Selection)>) -> Vec<String> {
    let makers = item.shown().options().filter_map(OptionContent::caution);
    let named = item.shown().kind().and_then(Kind::named);
    let of_kind = || named.map_or_else(Vec::new, cautions::of_kind);
    let hazards = here.map_or_else(of_kind, |(room, selection)| cautions::of_selection(room, selection));
    let mut told: Vec<String> = Vec::new();
    let ours = hazards.iter().map(|hazard| found::caution(words, *hazard).plain());
    for caution in makers.map(str::to_owned).chain(ours) {
        if !told.contains(&caution) {
            told.push(caution);
        }
    }
    told
}

pub(super) fn change(what: String, from: String, to: String) -> ChangeLine {
    ChangeLine { what, from, to, by: String::new() }
}

/// What an item that is new or gone is: its options by name, maker, model and finish.
pub(super) fn shown(words: Words, item: Option<&IssuedItem>) -> String {
    let options = item.into_iter().flat_map(|item| item.shown().options());
    let told = options.map(|option| {
        let mut line: Vec<&str> = Vec::new();
        for word in option.product() {
            if !line.iter().any(|before| before.contains(word)) {
                line.push(word);
            }
        }
        line.join(", ")
    });
    told.collect::<Vec<_>>().join(&say!(words, "changes.or"))
}

/// A change of what is shown; none for a price that the sum says again.
fn content(words: Words, change: &shown::Change, of: &Changed) -> Option<ChangeLine> {
    let amount = |said: &Option<ChangedValue>| said.as_ref().and_then(ChangedValue::amount);
    let (from, to) = (amount(&change.from), amount(&change.to));
    if (from.is_some() || to.is_some()) && (from, to) == (of.price.from, of.price.to) {
        return None;
    }
    let told = |said: &Option<ChangedValue>| match said {
        Some(ChangedValue::Amount(money)) => words.amount(*money),
        Some(ChangedValue::Other(said)) => words.phrase(said).unwrap_or_else(|_| said.printed_bare(["", ""])),
        None => String::new(),
    };
    let by = from.zip(to).and_then(|(from, to)| Some(difference(words, Moved { from, to }.by()?)));
    Some(ChangeLine {
        what: changed_field(words, change),
        from: told(&change.from),
        to: told(&change.to),
        by: by.unwrap_or_default(),
    })
}

/// Money and days: what the item comes to, its lead time, the last day to order it.
fn ordering(words: Words, changed: &Changed) -> Vec<ChangeLine> {
    let text = |money: Option<Money>| money.map_or_else(String::new, |money| words.amount(money));
    let mut told = Vec::new();
    let (price, lead, order_by) = (&changed.price, &changed.lead_time, &changed.order_by);
    if price.from != price.to {
        let by = match changed.sort() {
            Sort::Choice => {
                changed.money().map_or_else(String::new, |money| say!(words, "changes.first_choice", amount = money))
            }
            _ => changed.money().map_or_else(String::new, |by| difference(words, by)),
        };
        told.push(ChangeLine { by, ..change(say!(words, "changes.price"), text(price.from), text(price.to)) });
    }
    if lead.from != lead.to {
        let time = |text: &Option<String>| match text.as_deref().map(LeadTime::parse) {
            Some(Ok(time)) => time.said(words),
            Some(Err(_)) | None => text.clone().unwrap_or_default(),
        };
        told.push(change(say!(words, "item_says.lead_time"), time(&lead.from), time(&lead.to)));
    }
    if order_by.from != order_by.to {
        let day = |day: Option<crate::units::Date>| day.map_or_else(String::new, |day| words.day(day));
        let by = changed.days().map_or_else(String::new, |days| shift(words, days));
        told.push(ChangeLine { by, ..change(say!(words, "item_says.order_by"), day(order_by.from), day(order_by.to)) });
    } else if changed.asks() {
        told.push(ChangeLine {
            by: say!(words, "changes.no_days"),
            ..change(say!(words, "changes.days"), String::new(), String::new())
        });
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
            mark: shown::of(&content),
            also: vec![],
            content,
            price: None,
            lead_time: None,
            order_by: None,
            supplier: None,
        };
        assert_eq!(shown(Words::default(), Some(&item)), "Zelmor ZS-1, oak; or In ash, Zelmor");
        assert_eq!(shown(Words::default(), None), "");
    }

    #[test]
    fn money_and_days_say_which_way_they_moved() {
        let usd = |minor| Money::new(minor, Currency::USD);
        assert_eq!(
            [2000, -50, 0].map(|by| difference(Words::default(), usd(by))),
            ["$20.00 more", "$0.50 less", "as before"]
        );
        assert_eq!([-7, 1].map(|days| shift(Words::default(), days)), ["7 days sooner", "1 day later"]);
    }
}
