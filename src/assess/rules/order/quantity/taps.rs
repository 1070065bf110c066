//! As many taps as basins.

use crate::assess::Context;
use crate::assess::about;
use crate::book::{Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::taps::{bowl_of, comes_with};
use crate::units::Quantity;
use crate::vocabulary::Kind;

/// Basins of one selection of which more are ordered than of the taps that serve them.
pub fn check(context: &Context<'_>) -> Vec<Remark> {
    let basins = context.book.selections().filter(|(_, selection)| selection.is(Kind::Basin));
    basins.filter_map(|(room, basin)| too_few(room, basin)).collect()
}

fn too_few(room: &Room, basin: &Selection) -> Option<Remark> {
    let option = basin.settled().filter(|option| !comes_with(option))?;
    let basins = option.quantity.get().and_then(Quantity::whole)?;
    let of_it = |tap: &&Selection| bowl_of(room, tap).is_some_and(|own| std::ptr::eq(own, basin));
    let taps: Vec<&Selection> = room.selections.iter().filter(|one| one.is(Kind::Tap)).filter(of_it).collect();
    let first = taps.first()?;
    let each = taps.iter().map(|tap| tap.settled()?.quantity.get().and_then(Quantity::whole));
    let ordered: u64 = each.collect::<Option<Vec<u64>>>()?.into_iter().sum();
    if ordered >= basins {
        return None;
    }
    let (name, tap) = (&basin.name.value, &first.name.value);
    let message = phrase!("{basins} of `{name}` are ordered, and {ordered} of `{tap}`", basins, name, ordered, tap);
    let at = first.settled()?.quantity.span()?;
    let finding = about(room, first, first.settled()?, Severity::Query, at, message);
    let finding = finding.also(option.quantity.span()?, "the basins");
    Some(finding.remedy(phrase!("order {basins}, or say which other tap serves the rest", basins)))
}
