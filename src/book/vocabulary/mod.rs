//! The words of the book's files: every record, field and kind, said once.
//!
//! Reading, `explain` and `schema` all go by these tables; there is no second list.

use crate::vocabulary::Record;

mod burning;
mod selection;

pub use burning::MATERIAL;
pub use selection::{ACCESSORY, OPTION, SELECTION, choice_fields};

pub use super::access::{ACCESS, CONTROL, KNEE_SPACE, KNEES_AT};
pub use super::around::{INSIDE, NEIGHBOUR, SERVICE};
pub use super::built_in::{ASKED_PANEL, BELOW, HOLE, HOLLOW};
pub use super::ceiling::CEILING;
pub use super::clearances::{CLEARANCES, LANDING, SEATING, SHARED, STRETCH, TRIANGLE};
pub use super::codes::{CODES, FIGURE, HOUSE};
pub use super::fit::{AIR, CABINET, DOOR, FACE, FIT, FIT_OPENING, HEAT, NEEDS, SHEET};
pub use super::fixture::{FIXTURE, HUNG};
pub use super::island::{ISLAND, SIDE};
pub use super::joinery::{FRONTS, STORES};
pub use super::light::HANGING;
pub use super::opening::{MEASURED, OPENING, PLUMB, WALL_BUILD_UP};
pub use super::order::ORDER;
pub use super::photo::PHOTO;
pub use super::project::{AFTER, ALLOWANCE, APPROVER, BOOK, CALENDAR, FIRM, HOLD_POINT, NARROW, WAIVER};
pub use super::responses::RESPONSES;
pub use super::room::ROOM;
pub use super::run::{COUNTER, PART, RUN};
pub use super::selection::{PANEL, SIZE};
pub use super::supply::{COUNTER_RUN, POINT, POINTS, ZONE, ZONES};
pub use super::surface::{LAID, PAPERED, SOLD};
pub use super::top::{SEAM, SLAB, SUPPORTS, TOP};
pub use super::wall::{DOORWAY, WALL, WINDOW};

/// Every record, in the order in which a designer meets them.
pub const RECORDS: &[&Record] = &[
    &BOOK,
    &FIRM,
    &APPROVER,
    &RESPONSES,
    &AFTER,
    &ALLOWANCE,
    &HOLD_POINT,
    &CALENDAR,
    &NARROW,
    &WAIVER,
    &CODES,
    &FIGURE,
    &HOUSE,
    &ROOM,
    &CEILING,
    &WALL,
    &DOORWAY,
    &WINDOW,
    &RUN,
    &COUNTER,
    &PART,
    &ISLAND,
    &SIDE,
    &FIXTURE,
    &HUNG,
    &OPENING,
    &WALL_BUILD_UP,
    &MEASURED,
    &PLUMB,
    &NEIGHBOUR,
    &SERVICE,
    &POINTS,
    &POINT,
    &COUNTER_RUN,
    &INSIDE,
    &BELOW,
    &HOLLOW,
    &LANDING,
    &SHARED,
    &CLEARANCES,
    &TRIANGLE,
    &STRETCH,
    &SEATING,
    &ACCESS,
    &KNEE_SPACE,
    &KNEES_AT,
    &CONTROL,
    &SELECTION,
    &OPTION,
    &SIZE,
    &PANEL,
    &PHOTO,
    &ACCESSORY,
    &HOLE,
    &ORDER,
    &SOLD,
    &LAID,
    &PAPERED,
    &FRONTS,
    &STORES,
    &TOP,
    &SUPPORTS,
    &SLAB,
    &SEAM,
    &HANGING,
    &FIT,
    &SHEET,
    &FIT_OPENING,
    &AIR,
    &HEAT,
    &FACE,
    &CABINET,
    &DOOR,
    &NEEDS,
    &ASKED_PANEL,
    &ZONES,
    &ZONE,
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::vocabulary::{Kind, Shape};
    use std::collections::BTreeSet;

    #[test]
    fn no_record_names_a_field_twice() {
        for record in RECORDS {
            let keys: BTreeSet<_> = record.fields.iter().map(|field| field.key).collect();
            assert_eq!(keys.len(), record.fields.len(), "{}", record.name);
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
                let mut fields = choice_fields().chain(SELECTION.fields).collect::<Vec<_>>();
                for key in path.split('.') {
                    let field = fields.iter().find(|field| field.key == key);
                    let field = field.unwrap_or_else(|| panic!("{}: `{path}`", kind.name()));
                    fields = match field.shape {
                        Shape::Record(record) => record.fields.iter().collect(),
                        _ => vec![],
                    };
                }
            }
        }
    }
}
