//! What the client is shown of an item: one typed value, of which pages, sheets, marks and differences are made.
//!
//! A mark is a digest of it, written in a version of its own; which field is in it each record's table says, and
//! `page` tells them all.

mod as_written;
mod built;
mod changes;
mod content;
mod field;
mod known;
mod looks;
mod page;
pub mod plan;
mod settled;
mod sheet_of;
pub mod trades;
mod written;

use std::collections::BTreeMap;

use serde_json::Value;

use crate::book::Book;
use crate::digest::Digest;
use crate::ledger::{Issue, IssuedItem, ItemContent, OptionContent, Purpose};
use crate::vocabulary::{ShownValue, Version, Words as _};

pub use built::{built, built_changes, built_fields, is_before_plans, is_before_trades, is_built_as};
pub use changes::{Change, ChangedValue, changes, changes_to_rest_on};
pub use content::{ShownItem, option_alone, shown_of};
pub use field::{ChangedField, MarkedField};
pub use looks::{looks, part_of};
pub use page::page;
pub use settled::as_shown;
pub use sheet_of::SheetOf;

/// Finds the digest of a picture by its path in the book.
pub type Pictures<'p> = &'p dyn Fn(&str) -> Option<Digest>;

/// What an item's mark is of, and the mark.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Marked {
    /// What is shown of it.
    pub shown: ShownItem,
    /// The digest of the content.
    pub mark: Digest,
    /// All that the client is shown of the item, as the version has it that is asked about.
    pub content: Value,
    /// The marks of the same under other versions of the content.
    pub also: Vec<Digest>,
    /// By which versions it is looked at.
    pub versions: Versions,
}

impl Marked {
    /// What is shown of an item under a version, and under others that say no less.
    pub fn of(shown: ShownItem, versions: Versions) -> Self {
        let content = shown.content(versions.asked);
        let mark = of(&content);
        let also = versions.others(&shown).map(|version| of(&shown.content(version))).collect();
        Self { shown, mark, content, also, versions }
    }

    /// Whether a mark is of what it is now, by whichever version it was taken.
    pub fn is(&self, mark: &Digest) -> bool {
        self.mark == *mark || self.also.contains(mark)
    }
}

/// In which version of the content a book is asked about, and whether its record has others.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Versions {
    /// That of the newest issue for approval; the newest while there is none.
    pub asked: Version,
    /// The oldest of which some issue on record is.
    pub oldest: Version,
}

impl Versions {
    /// Those of a book's record.
    pub fn of(book: &Book) -> Self {
        let asked = book.record.latest_for(Purpose::Approval).map_or(Version::default(), version);
        let oldest = book.record.issues.values().map(version).min().unwrap_or_default();
        Self { asked, oldest }
    }

    /// The other versions by which an item counts as the same. An older one says nothing of what came later: it is
    /// as good as a newer one for what has nothing of that.
    fn others(self, shown: &ShownItem) -> impl Iterator<Item = Version> {
        let counts = move |version: &Version| {
            *version > self.asked || self.oldest <= *version && *version < self.asked && !shown.says_more_than(*version)
        };
        Version::ALL.into_iter().filter(counts)
    }
}

/// The version of the content that an issue was made under.
pub fn version(issue: &Issue) -> Version {
    issue.items.first().map_or(Version::default(), version_of)
}

/// The version of the content of an item.
pub fn version_of(item: &IssuedItem) -> Version {
    as_written::version(&item.content)
}

/// Every item's mark and content, by room and selection.
pub fn items<'a>(book: &'a Book, pictures: Pictures<'_>) -> BTreeMap<(&'a str, &'a str), Marked> {
    under(book, Versions::of(book), pictures)
}

/// The same under a version of choice.
pub fn under<'a>(book: &'a Book, versions: Versions, pictures: Pictures<'_>) -> BTreeMap<(&'a str, &'a str), Marked> {
    let marked = book.selections().map(|(room, selection)| {
        let shown = shown_of(book, room, selection, pictures);
        ((room.folder.as_str(), selection.id.as_str()), Marked::of(shown, versions))
    });
    marked.collect()
}

/// The digests of pictures as reading took them: of a book with a record, or when they were asked for.
pub fn as_read(book: &Book) -> impl Fn(&str) -> Option<Digest> {
    |path| book.photos.get(path)?.digest
}

/// The mark of some content.
pub fn of(content: &Value) -> Digest {
    // Texts and lists alone, which canonical JSON can always hold.
    Digest::of_json(content).unwrap_or_else(|_| Digest::of(content.to_string().as_bytes()))
}

/// The mark of what is shown, as the newest version writes it.
pub fn mark_of(value: &ShownValue) -> Digest {
    of(&written::content(value, Version::default()))
}

/// The mark of several items together: of a room's sheet, or of the whole book's.
pub fn of_all<'m>(marks: impl Iterator<Item = &'m Digest>) -> Digest {
    of(&marks.map(|mark| Value::String(mark.to_string())).collect())
}

/// A mark as sheets print it: the first eight hex digits, in two fours.
pub fn in_short(mark: &Digest) -> String {
    let [one, two, three, four, ..] = mark.as_bytes();
    format!("{one:02x}{two:02x} {three:02x}{four:02x}")
}

/// An option of what an issue holds of an item, as it was shown then.
pub fn option_as_issued(content: &Value, id: &str) -> Option<ShownValue> {
    ShownItem::as_issued(content).option(id).cloned()
}

/// What such an option was called to who signed: by its name then, or by the item's where it had none of its own.
pub fn option_called(content: &Value, id: &str) -> Option<String> {
    let ShownItem(item) = ShownItem::as_issued(content);
    changes::called(&item, id)
}

/// Whether several options of an item stand open.
pub fn is_open(now: &Marked) -> bool {
    ItemContent(&now.content).is_open()
}

/// Whether a decision of a mark still stands for what an item is now.
///
/// The mark must be the item's own. Where the decision chose an option, the book may have written that
/// option down as `chosen` since, and that alone.
pub fn holds(decided: Digest, option: Option<&str>, now: &Marked) -> bool {
    let content = ItemContent(&now.content);
    let written = content.chosen();
    if now.is(&decided) {
        return option.is_none_or(|option| written.is_none_or(|chosen| chosen == option));
    }
    let Some(option) = option.filter(|option| written == Some(option)) else {
        return false;
    };
    let ids = content.options().filter_map(OptionContent::id).filter(|id| *id != option);
    let mut before = ids.map(Some).chain([None]);
    before.any(|chosen| Marked::of(now.shown.with_chosen(chosen), now.versions).is(&decided))
}

/// Whether a decision of what an issue shows stands for what an item is now, since nothing but options that are not
/// chosen is another: what it chose, or what was chosen then, is chosen now, and shown as it was.
pub fn holds_for_the_chosen(issued: &IssuedItem, option: Option<&str>, now: &Marked) -> bool {
    let Some(chosen) = ItemContent(&now.content).chosen() else { return false };
    if option.or_else(|| ItemContent(&issued.content).chosen()) != Some(chosen) {
        return false;
    }
    let version = version_of(issued);
    let counts = version == now.versions.asked || now.versions.others(&now.shown).any(|other| other == version);
    counts && alone(&issued.content, chosen) == alone(&now.shown.content(version), chosen)
}

/// A content with one of its options alone.
fn alone(content: &Value, chosen: &str) -> Value {
    let mut content = content.clone();
    if let Some(fields) = content.as_object_mut() {
        fields.remove(MarkedField::Chosen.word());
        if let Some(options) = fields.get_mut(MarkedField::Options.word()).and_then(Value::as_array_mut) {
            options.retain(|option| OptionContent(option).id() == Some(chosen));
        }
    }
    content
}

#[cfg(test)]
mod tests;
