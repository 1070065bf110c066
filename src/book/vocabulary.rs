//! The tables of the book's records, and every record that follows from those that files hold.
//!
//! Reading, `explain`, `schema` and the marks all go by these tables; there is no second list.

use std::sync::LazyLock;

use crate::vocabulary::Record;

pub use super::built_in::HOLE;
pub use super::ceiling::CEILING;
pub use super::clearances::SEATING;
pub use super::fixture::FIXTURE;
pub use super::island::{ISLAND, SIDE};
pub use super::joinery::STORES;
pub use super::opening::OPENING;
pub use super::photo::PHOTO;
pub use super::product_option::{ACCESSORY, OPTION, PANEL, SIZE};
pub use super::project::BOOK;
pub use super::room::ROOM;
pub use super::run::{PART, RUN};
pub use super::selection::SELECTION;
pub use super::supply::COUNTER_RUN;
pub use super::surface::LAID;
pub use super::top::{SEAM, SLAB, SPLASH, SUPPORTS, TOP};
pub use super::wall::{DOORWAY, WINDOW};
pub use super::wall_box::WALL_BOX;

/// The records of whole files.
pub const FILES: [&Record; 4] = [&BOOK, &ROOM, &SELECTION, &OPTION];

/// Every record, in the order in which a designer meets them.
pub static RECORDS: LazyLock<Vec<&'static Record>> = LazyLock::new(|| {
    let mut found = Vec::new();
    FILES.into_iter().for_each(|record| meet(record, &mut found));
    found
});

/// A record, and those that its fields hold.
fn meet(record: &'static Record, found: &mut Vec<&'static Record>) {
    if !found.iter().any(|known| (known.name, known.about) == (record.name, record.about)) {
        found.push(record);
        record.fields.iter().flat_map(|field| field.shape.records()).for_each(|inner| meet(inner, found));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::vocabulary::{FieldType, Kind};
    use std::collections::BTreeSet;

    #[test]
    fn no_record_names_a_field_twice() {
        for record in RECORDS.iter() {
            let keys: BTreeSet<_> = record.fields.iter().map(|field| field.key).collect();
            assert_eq!(keys.len(), record.fields.len(), "{}", record.name);
        }
    }

    #[test]
    fn every_record_is_found_that_a_field_holds() {
        let names: BTreeSet<_> = RECORDS.iter().map(|record| record.name).collect();
        for name in ["book", "seam", "second measurement", "depth for knees", "service zone", "accessory"] {
            assert!(names.contains(name), "{name}");
        }
    }

    #[test]
    fn keys_are_plain_lower_case_words() {
        for field in RECORDS.iter().flat_map(|record| record.fields) {
            let plain = |c: char| c.is_ascii_lowercase() || c == ' ' || c == '-';
            assert!(field.key.chars().all(plain), "{}", field.key);
            assert!(!field.about.is_empty() && !field.about.ends_with('.'), "{}", field.key);
        }
    }

    #[test]
    fn every_field_that_a_kind_needs_is_in_the_vocabulary() {
        for kind in Kind::ALL {
            for path in kind.needs() {
                let mut fields = OPTION.fields.iter().chain(SELECTION.fields).collect::<Vec<_>>();
                for key in path.split('.') {
                    let field = fields.iter().find(|field| field.key == key);
                    let field = field.unwrap_or_else(|| panic!("{}: `{path}`", kind.name()));
                    fields = match field.shape {
                        FieldType::Record(record) => record.fields.iter().collect(),
                        _ => vec![],
                    };
                }
            }
        }
    }
}
