//! In which issues what a sheet shows was new or changed, for its title block.

use std::collections::{BTreeMap, BTreeSet};

use crate::assess::{Changed, Fate, changed_items};
use crate::book::Book;
use crate::language::{Words, say};
use crate::ledger::{Issue, Purpose};
use crate::shown::ChangedField;
use crate::units::Date;
use crate::views::pages::PageBuilder;
use crate::views::shared::lines::field;
use crate::views::shared::sheet::{Sheet, purpose_key};
use serde::Serialize;

/// The most revisions that a title block lists; the newest count.
pub(super) const MOST: usize = 3;

/// The most things that a line names before it counts the rest.
pub(super) const NAMED: usize = 2;

/// A line of the title block's list of revisions.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Revision {
    /// The issue in which it was changed.
    pub number: String,
    pub date: String,
    pub what: String,
}

/// What each issue made new or changed, by room and item, in the order of the issues.
#[derive(Clone, Debug, Default)]
pub struct History {
    issues: Vec<IssueStep>,
}

/// One issue after the one before it.
#[derive(Clone, Debug)]
struct IssueStep {
    number: u32,
    purpose: Purpose,
    on: Date,
    items: BTreeMap<(String, String), Changed>,
}

/// The items that are asked about, by room and selection.
#[derive(Clone, Copy)]
pub enum RevisionScope<'a> {
    /// All of them.
    All,
    /// Those of a room.
    Room(&'a str),
    /// Those of some rooms.
    Rooms(&'a BTreeSet<&'a str>),
    /// One.
    Item(&'a str, &'a str),
    /// Some.
    Items(&'a BTreeSet<(&'a str, &'a str)>),
}

impl IssueStep {
    /// What became of the items that are asked about. Of a room or an item only those are looked at.
    fn changed<'a>(
        &'a self,
        of: RevisionScope<'a>,
    ) -> Box<dyn Iterator<Item = (&'a (String, String), &'a Changed)> + 'a> {
        let first = |room: &str| (room.to_owned(), String::new());
        match of {
            RevisionScope::All => Box::new(self.items.iter()),
            RevisionScope::Room(room) => {
                Box::new(self.items.range(first(room)..).take_while(move |((folder, _), _)| folder == room))
            }
            RevisionScope::Item(room, item) => {
                Box::new(self.items.get_key_value(&(room.to_owned(), item.to_owned())).into_iter())
            }
            RevisionScope::Rooms(rooms) => {
                Box::new(self.items.iter().filter(|((room, _), _)| rooms.contains(room.as_str())))
            }
            RevisionScope::Items(items) => {
                Box::new(self.items.iter().filter(|((room, item), _)| items.contains(&(room.as_str(), item.as_str()))))
            }
        }
    }
}

impl History {
    /// What the issues on record changed.
    pub fn of(book: &Book) -> History {
        let mut before: Option<&Issue> = None;
        let steps = book.record.issues.values().map(|issue| {
            let items = changed(before, issue);
            before = Some(issue);
            let (number, purpose, on) = (issue.number, issue.purpose, issue.on);
            IssueStep { number, purpose, on, items }
        });
        History { issues: steps.collect() }
    }

    /// At most a few lines: the issues in which one of some items was new, changed or gone, the newest first.
    fn revisions(&self, words: Words, of: RevisionScope<'_>, name: &dyn Fn(&str, &str) -> String) -> Vec<Revision> {
        let told = self.issues.iter().rev().filter_map(|step| {
            let changed: Vec<_> = step.changed(of).collect();
            // Many are counted, not named.
            let is_few = changed.len() <= NAMED;
            let named = |room: &str, item: &str| if is_few { name(room, item) } else { String::new() };
            let here: Vec<(String, &Changed)> =
                changed.into_iter().map(|((room, item), what)| (named(room, item), what)).collect();
            let what = told(words, &here)?;
            let purpose = say!(words, purpose_key(step.purpose));
            Some(Revision {
                number: step.number.to_string(),
                date: words.day(step.on),
                what: say!(words, "revised.line", purpose = purpose, what = what),
            })
        });
        told.take(MOST).collect()
    }
}

impl PageBuilder<'_> {
    /// A sheet with its revisions: of the items that it shows, by room and selection.
    pub fn revised(&self, sheet: Sheet, of: RevisionScope<'_>) -> Sheet {
        Sheet { revisions: self.revisions(of), ..sheet }
    }

    /// The revisions of some items, by room and selection.
    pub fn revisions(&self, of: RevisionScope<'_>) -> Vec<Revision> {
        self.history.revisions(self.words, of, &|folder, id| self.named(folder, id))
    }

    fn named(&self, folder: &str, id: &str) -> String {
        let mut issued = self.issued.values().rev().filter_map(|items| items.get(&(folder, id)));
        issued.next().map_or_else(|| id.to_string(), |item| item.name.clone())
    }
}

/// The items that an issue shows otherwise than the one before it, by room and selection.
fn changed(before: Option<&Issue>, issue: &Issue) -> BTreeMap<(String, String), Changed> {
    let items = changed_items(before, issue).into_iter().filter(Changed::asks);
    items.map(|item| ((item.room.clone(), item.item.clone()), item)).collect()
}

/// The fields of an item that changed, each once. A name often says maker and model again.
fn fields(words: Words, item: &Changed) -> Vec<String> {
    let mut fields: Vec<&ChangedField> = Vec::new();
    for change in &item.changes {
        if !fields.contains(&&change.what) {
            fields.push(&change.what);
        }
    }
    if fields.iter().any(|field| field.is_product()) {
        fields.retain(|field| !field.is_name());
    }
    fields.into_iter().map(|changed| field(words, &changed.to_string()).to_lowercase()).collect()
}

/// What became of some items in a line, few by name and many by count: `Range changed, Tap new`, `12
/// changed, 1 gone`; none where nothing did.
fn told(words: Words, items: &[(String, &Changed)]) -> Option<String> {
    if let [(_, item)] = items {
        let fields = fields(words, item);
        return Some(match item.fate {
            Fate::Added => say!(words, "revised.new"),
            Fate::Gone => say!(words, "revised.gone", what = item.name),
            _ if fields.is_empty() => say!(words, "revised.changed_alone"),
            _ => say!(words, "revised.changed", what = words.series_of_most(&fields, NAMED + 1)),
        });
    }
    let all = |fate: Fate| -> Vec<String> {
        items.iter().filter(|(_, item)| item.fate == fate).map(|(name, _)| name.clone()).collect()
    };
    let fates = [
        (all(Fate::Changed), "revised.changed", "revised.so_many.changed"),
        (all(Fate::Added), "revised.added", "revised.so_many.new"),
        (all(Fate::Gone), "revised.gone", "revised.so_many.gone"),
    ];
    let few = items.len() <= NAMED;
    let told = |(names, named, counted): (Vec<String>, &str, &str)| match few {
        true => say!(words, named, what = words.series(&names)),
        false => say!(words, counted, n = names.len()),
    };
    let told: Vec<String> = fates.into_iter().filter(|(names, ..)| !names.is_empty()).map(told).collect();
    (!told.is_empty()).then(|| told.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::{IssuedItem, Purpose, Total};
    use crate::shown;
    use serde_json::json;

    fn issue(number: u32, items: &[(&str, &str, &str)]) -> Issue {
        let items = items.iter().map(|(id, model, price)| {
            let content = json!({"options": [{"id": "a", "model": model, "price": price}]});
            let (room, item, name) = ("kitchen".to_string(), (*id).to_string(), (*id).to_string());
            let mark = shown::of(&content);
            IssuedItem {
                room,
                item,
                tag: "K-01".into(),
                name,
                mark,
                also: vec![],
                content,
                price: None,
                lead_time: None,
                order_by: None,
                supplier: None,
            }
        });
        let (on, total) = ("2027-02-01".parse().unwrap(), Total::default());
        let purpose = if number > 1 { Purpose::Construction } else { Purpose::Approval };
        let (book, title, currency) = (String::new(), String::new(), "USD".into());
        Issue {
            book,
            number,
            purpose,
            on,
            title,
            currency,
            total,
            terms: None,
            after: None,
            items: items.collect(),
            built: None,
            asked: vec![],
            unapproved: None,
            money: None,
            title_block: None,
        }
    }

    fn history(issues: Vec<Issue>) -> History {
        let mut book = Book::default();
        book.record.issues = issues.into_iter().map(|issue| (issue.number, issue)).collect();
        History::of(&book)
    }

    fn told(history: &History, of: RevisionScope<'_>) -> Vec<(String, String)> {
        let revisions = history.revisions(Words::default(), of, &|_, id| id.into());
        revisions.into_iter().map(|revision| (revision.number, revision.what)).collect()
    }

    fn pair(number: &str, what: &str) -> (String, String) {
        (number.into(), what.into())
    }

    #[test]
    fn one_item_is_told_by_what_of_it_changed() {
        let range = |model, price| issue(1, &[("range", model, price), ("tap", "T", "5")]).items;
        let first = issue(1, &[("range", "A", "1"), ("tap", "T", "5")]);
        let second = Issue { items: range("B", "2"), ..issue(2, &[]) };
        let third = Issue { items: range("B", "2"), ..issue(3, &[]) };
        let history = history(vec![first, second, third]);
        assert_eq!(
            told(&history, RevisionScope::Item("kitchen", "range")),
            [pair("2", "For construction: model and price changed"), pair("1", "For approval: new")]
        );
        assert_eq!(told(&history, RevisionScope::Item("kitchen", "tap")), [pair("1", "For approval: new")]);
        assert_eq!(told(&history, RevisionScope::Item("kitchen", "lamp")), []);
    }

    #[test]
    fn several_items_are_named_or_counted_and_the_newest_issues_are_listed() {
        let first = issue(1, &[("a", "1", "1"), ("b", "1", "1"), ("c", "1", "1")]);
        let second = issue(2, &[("a", "2", "1"), ("c", "1", "1"), ("d", "1", "1")]);
        assert_eq!(
            told(&history(vec![first.clone(), second.clone()]), RevisionScope::All),
            [pair("2", "For construction: 1 changed, 1 new, 1 gone"), pair("1", "For approval: 3 new")]
        );
        let both = history(vec![first, second]);
        let some = BTreeSet::from([("kitchen", "a"), ("kitchen", "c")]);
        let (rooms, none) = (BTreeSet::from(["kitchen"]), BTreeSet::new());
        let told_of = |of: RevisionScope<'_>| told(&both, of).into_iter().map(|(_, what)| what).collect::<Vec<_>>();
        assert_eq!(
            told_of(RevisionScope::Items(&some)),
            ["For construction: model changed", "For approval: a and c new"]
        );
        assert_eq!(told_of(RevisionScope::Room("kitchen")), told_of(RevisionScope::All));
        assert_eq!(told_of(RevisionScope::Rooms(&rooms)), told_of(RevisionScope::All));
        assert_eq!((told_of(RevisionScope::Room("kitch")), told_of(RevisionScope::Rooms(&none))), (vec![], vec![]));
        let many = (1..=6).map(|number| issue(number, &[("a", &number.to_string(), "1")])).collect();
        let numbers: Vec<String> =
            told(&history(many), RevisionScope::All).into_iter().map(|(number, _)| number).collect();
        assert_eq!(numbers, ["6", "5", "4"]);
    }
}
