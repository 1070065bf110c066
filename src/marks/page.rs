//! The page that `explain mark` shows: what a mark is of, field by field, from the tables of the records.

use std::collections::BTreeMap;

use crate::book::vocabulary::{ACCESSORY, OPTION, PHOTO, SELECTION, SIZE};
use crate::vocabulary::{Field, FieldType, Mark, Record};

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
    ];
    tables.iter().fold(FRAME.to_string(), |page, (place, table)| page.replace(place, table.trim_end()))
}

/// A row for each key that stands in the mark.
fn table(record: &Record, besides: &[(&str, &str)]) -> String {
    let mut rows: BTreeMap<&str, String> = besides.iter().map(|(key, what)| (*key, (*what).to_string())).collect();
    for field in record.fields {
        match field.mark {
            Mark::In(key) => _ = rows.insert(key, in_it(field)),
            Mark::Told(key, what) => _ = rows.insert(key, what.into()),
            Mark::Within(key) => {
                let row = rows.entry(key).or_insert_with(|| FACTS.into());
                row.push_str(&format!(" `{}`", field.key));
            }
            Mark::OfNoItem | Mark::Out => {}
        }
    }
    let rows = rows.into_iter().map(|(key, what)| format!("| `{key}` | {what} |\n"));
    std::iter::once("| field | what it holds |\n| --- | --- |\n".to_string()).chain(rows).collect()
}

fn in_it(field: &Field) -> String {
    match field.shape {
        FieldType::Record(_) => format!("{}: an object, as below", field.about),
        FieldType::List(_) => format!("{}: a list, each as below", field.about),
        _ if field.required => field.about.to_string(),
        _ => format!("{}; or null", field.about),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::vocabulary::RECORDS;

    #[test]
    fn every_record_that_has_fields_in_the_mark_is_on_the_page() {
        let page = page();
        let in_it = |field: &&Field| matches!(field.mark, Mark::In(_) | Mark::Told(..) | Mark::Within(_));
        for field in RECORDS.iter().flat_map(|record| record.fields.iter().filter(in_it)) {
            let (Mark::In(key) | Mark::Told(key, _) | Mark::Within(key)) = field.mark else { continue };
            assert!(page.contains(&format!("| `{key}` | ")), "`{key}` is not on the page:\n{page}");
        }
        for place in ["{item}", "{option}", "{size}", "{accessory}", "{picture}"] {
            assert!(!page.contains(place), "{page}");
        }
    }
}
