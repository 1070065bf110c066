//! The mark of an item: a digest of all that the client is shown of it.
//!
//! Which field is in it each record's table says; `page` tells them all.

mod changes;
mod content;
mod field;
mod page;

use std::collections::BTreeMap;

use serde_json::Value;

use crate::book::Book;
use crate::digest::Digest;
use crate::ledger::{ItemContent, OptionContent};
use crate::vocabulary::Words;

pub use changes::{Change, ChangedValue, changes};
pub use content::content;
pub use field::{ChangedField, MarkedField};
pub use page::page;

/// Finds the digest of a picture by its path in the book.
pub type Pictures<'p> = &'p dyn Fn(&str) -> Option<Digest>;

/// What an item's mark is of, and the mark.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Marked {
    /// The digest of the content.
    pub mark: Digest,
    /// All that the client is shown of the item.
    pub content: Value,
}

/// Every item's mark and content, by room and selection.
pub fn items<'a>(book: &'a Book, pictures: Pictures<'_>) -> BTreeMap<(&'a str, &'a str), Marked> {
    let marked = book.selections().map(|(room, selection)| {
        let content = content(room, selection, pictures);
        ((room.folder.as_str(), selection.id.as_str()), Marked { mark: of(&content), content })
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

/// The mark of several items together: of a room's sheet, or of the whole book's.
pub fn of_all<'m>(marks: impl Iterator<Item = &'m Digest>) -> Digest {
    of(&marks.map(|mark| Value::String(mark.to_string())).collect())
}

/// A mark as sheets print it: the first eight hex digits, in two fours.
pub fn shown(mark: &Digest) -> String {
    let [one, two, three, four, ..] = mark.as_bytes();
    format!("{one:02x}{two:02x} {three:02x}{four:02x}")
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
    let shown = ItemContent(&now.content);
    let written = shown.chosen();
    if decided == now.mark {
        return option.is_none_or(|option| written.is_none_or(|chosen| chosen == option));
    }
    let Some(option) = option.filter(|option| written == Some(option)) else {
        return false;
    };
    let ids = shown.options().filter_map(OptionContent::id).filter(|id| *id != option);
    ids.map(Value::from).chain([Value::Null]).any(|chosen| {
        let mut before = now.content.clone();
        let Some(fields) = before.as_object_mut() else { return false };
        fields.insert(MarkedField::Chosen.word().into(), chosen);
        of(&before) == decided
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn marked(chosen: Option<&str>) -> Marked {
        let content = json!({"name": "Range", "chosen": chosen, "options": [{"id": "steel"}, {"id": "brass"}]});
        Marked { mark: of(&content), content }
    }

    #[test]
    fn a_decision_holds_when_the_book_writes_down_what_was_chosen() {
        let open = marked(None).mark;
        assert!(holds(open, Some("steel"), &marked(None)));
        assert!(holds(open, Some("steel"), &marked(Some("steel"))));
        assert!(!holds(open, Some("steel"), &marked(Some("brass"))));
        assert!(!holds(open, None, &marked(Some("steel"))), "nobody chose steel");
        let proposed = marked(Some("brass")).mark;
        assert!(holds(proposed, Some("steel"), &marked(Some("steel"))), "another option than proposed was chosen");
        assert!(!holds(proposed, Some("steel"), &marked(Some("brass"))), "the book still says brass");
        assert!(holds(proposed, None, &marked(Some("brass"))));
    }

    #[test]
    fn a_decision_holds_no_longer_when_anything_else_changes() {
        let mut now = marked(Some("steel"));
        now.content["name"] = json!("Range, wide");
        now.mark = of(&now.content);
        assert!(!holds(marked(None).mark, Some("steel"), &now));
        assert!(!holds(marked(Some("steel")).mark, None, &now));
    }

    #[test]
    fn a_mark_is_shown_by_its_first_eight_digits() {
        assert_eq!(shown(&Digest::of(b"abc")), "ba78 16bf");
    }
}
