//! The `complete/` rules: nothing needed is missing.

pub mod accessory;
pub mod ahead;
pub mod alike;
pub mod cut_sheet;
pub mod datum;
pub mod field;
pub mod language;
pub mod measured;
pub mod opening;
pub mod photo;
pub mod site;
pub mod undecided;

use crate::book::{ProductOption, Selection};
use crate::vocabulary::supply::Worded;
use crate::vocabulary::{Kind, Mention, Mount};

/// Whether an option of a selection hangs before the wall, as its `mount` says, where others of its kind are let in:
/// it goes into no opening, and needs no cut sheet.
fn hangs_before_the_wall(selection: &Selection, option: &ProductOption) -> bool {
    let mount = option.fact::<Worded<Option<Mount>>>();
    let is_so =
        mount.is_some_and(|(mount, _)| mount.is == Some(Mount::InNoCabinet) && !Mention::Recessed.is_in(&mount.words));
    is_so && selection.is(Kind::MirrorCabinet)
}
