//! The page that `explain mark` shows: what a mark is of, field by field, from the tables of the records.

use std::collections::BTreeMap;

use crate::book::vocabulary::{ACCESSORY, LAID, OPTION, PHOTO, RECORDS, SELECTION, SIZE};
use crate::vocabulary::{Field, FieldType, Mark, Record, Since};

use super::content::{OF_ITEM, OF_OPTION};

/// The page, with a place for each table.
const FRAME: &str = include_str!("fields.md");

/// What the object of the kind's own facts is.
const FACTS: &str = "an object of the kind's own facts by their key, each a text, `{\"length\": L}`, `{\"least\": L, \
                     \"most\": L}` or `{\"sides\": [L, …]}`:";

/// The page.
pub fn page() -> String {
    let tables = [
        ("{item}", table(&SELECTION, &OF_ITEM)),
        ("{option}", table(&OPTION, &OF_OPTION)),
        ("{size}", table(&SIZE, &[])),
        ("{accessory}", table(&ACCESSORY, &[])),
        ("{picture}", table(&PHOTO, &[])),
        ("{laying}", table(&LAID, &[])),
        ("{parts}", RECORDS.iter().copied().filter(|record| is_whole(record)).map(part).collect()),
        ("{left out}", RECORDS.iter().copied().map(left_out).collect()),
    ];
    tables.iter().fold(FRAME.to_string(), |page, (place, table)| page.replace(place, table.trim_end()))
}

/// A row for each key that stands in the mark.
fn table(record: &Record, besides: &[(&str, &str)]) -> String {
    let mut rows: BTreeMap<&str, String> = besides.iter().map(|(key, what)| (*key, (*what).to_string())).collect();
    for field in record.fields {
        match field.mark {
            Mark::In(key, since) => _ = rows.insert(key, in_it(field, since)),
            Mark::Told(key, what) => _ = rows.insert(key, what.into()),
            Mark::Within(key) => {
                let row = rows.entry(key).or_insert_with(|| FACTS.into());
                row.push_str(&format!(" `{}`", field.key));
            }
            Mark::OfNoItem | Mark::Out(_) => {}
        }
    }
    let rows = rows.into_iter().map(|(key, what)| format!("| `{key}` | {what} |\n"));
    std::iter::once("| field | what it holds |\n| --- | --- |\n".to_string()).chain(rows).collect()
}

fn in_it(field: &Field, since: Since) -> String {
    let what = match field.shape {
        FieldType::Record(_) => format!("{}: an object, as below", field.about),
        FieldType::List(FieldType::Record(_)) => format!("{}: a list, each as below", field.about),
        FieldType::List(_) => format!("{}: a list", field.about),
        _ if field.required || since != Since::First => field.about.to_string(),
        _ => format!("{}; or null", field.about),
    };
    since.version().states().map_or_else(|| what.clone(), |version| format!("{what}; since {version}"))
}

/// Whether a record is a part that is shown whole, of an item or of an opening's sheet.
fn is_whole(record: &Record) -> bool {
    let has_table = [SELECTION, OPTION, SIZE, ACCESSORY, PHOTO, LAID].iter().any(|other| other.name == record.name);
    !has_table && record.fields.iter().any(|field| matches!(field.mark, Mark::In(..)))
}

/// A part that is shown whole: the names of its fields.
fn part(record: &Record) -> String {
    let there = record.fields.iter().filter(|field| matches!(field.mark, Mark::In(..)));
    let keys: Vec<String> = there.map(|field| format!("`{}`", field.key)).collect();
    format!("- {}: {}\n", record.name, keys.join(", "))
}

/// What of a record is in no mark, and why.
fn left_out(record: &Record) -> String {
    let rows = record.fields.iter().filter_map(|field| match field.mark {
        Mark::Out(why) => Some(format!("- `{}` of {} {}: {why}\n", field.key, article(record.name), record.name)),
        _ => None,
    });
    rows.collect()
}

fn article(name: &str) -> &'static str {
    if name.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_record_that_has_fields_in_the_mark_is_on_the_page() {
        let page = page();
        let in_it = |field: &&Field| matches!(field.mark, Mark::In(..) | Mark::Told(..) | Mark::Within(_));
        for field in RECORDS.iter().flat_map(|record| record.fields.iter().filter(in_it)) {
            let (Mark::In(key, _) | Mark::Told(key, _) | Mark::Within(key)) = field.mark else { continue };
            assert!(page.contains(&format!("`{key}`")), "`{key}` is not on the page:\n{page}");
        }
        for place in ["{item}", "{option}", "{size}", "{accessory}", "{picture}", "{laying}", "{parts}", "{left out}"] {
            assert!(!page.contains(place), "{page}");
        }
    }
}
