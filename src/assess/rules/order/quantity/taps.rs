//! As many taps as basins.

use crate::assess::Context;
use crate::assess::about;
use crate::book::{Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::taps::{bowl_of, comes_with, serves_no_bowl};
use crate::units::Quantity;
use crate::vocabulary::Kind;

/// Basins of one selection of which more are ordered than of the taps that serve them.
pub fn check(context: &Context<'_>) -> Vec<Remark> {
    let basins = context.book.selections().filter(|(_, selection)| selection.is(Kind::Basin));
    let mut all: Vec<Remark> = basins.filter_map(|(room, basin)| too_few(room, basin)).collect();
    for room in &context.book.rooms {
        all.extend(fewer_than_bowls(room));
        all.extend(room.selections.iter().filter(|one| one.is(Kind::Tap)).filter_map(|tap| too_many(room, tap)));
    }
    all
}

fn ordered(selection: &Selection) -> u64 {
    let option = selection.settled().or_else(|| selection.standing().first());
    option.and_then(|option| option.quantity.get()?.whole()).unwrap_or(1)
}

/// Several bowls of a room, each chosen by itself, and fewer taps for them.
fn fewer_than_bowls(room: &Room) -> Option<Remark> {
    let is_bowl = |one: &&Selection| one.is_any(&[Kind::Sink, Kind::Basin]);
    let bare = |one: &&Selection| is_bowl(one) && !one.standing().iter().any(comes_with);
    let bowls: Vec<&Selection> = room.selections.iter().filter(bare).collect();
    let taps: Vec<&Selection> =
        room.selections.iter().filter(|one| one.is(Kind::Tap) && !serves_no_bowl(one)).collect();
    let (first, last) = (taps.first()?, bowls.last()?);
    let counted: u64 = taps.iter().map(|tap| ordered(tap)).sum();
    let wanted = u64::try_from(bowls.len()).ok()?;
    if counted >= wanted || room.holds_an_unknown_kind() {
        return None;
    }
    let message = phrase!("there are {wanted} sinks and basins, and {counted} taps for them", wanted, counted);
    let finding = Remark::query(last.name.span, message).room(&room.folder).thing(&last.name);
    Some(
        finding
            .also(first.name.span, "a tap")
            .remedy("add a tap for each; or, where one comes with a bowl, name it among that bowl's `accessories`"),
    )
}

/// More of one tap than of the bowl that it serves.
fn too_many(room: &Room, tap: &Selection) -> Option<Remark> {
    let option = tap.settled()?;
    let bowl = bowl_of(room, tap)?;
    let (taps, bowls) = (option.quantity.get()?.whole()?, ordered(bowl));
    let (name, of) = (&tap.name.value, &bowl.name.value);
    let message = phrase!("{taps} of `{name}` are ordered, and {bowls} of `{of}`", taps, name, bowls, of);
    (taps > bowls).then(|| {
        let finding =
            about(room, tap, option, Severity::Query, option.quantity.span().unwrap_or(tap.name.span), message);
        finding
            .also(bowl.name.span, "the bowl")
            .remedy("correct the `quantity`, or say which other bowl the rest serve")
    })
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

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn two_sinks_have_two_taps() {
        let two = |more: &str| {
            Trial::of("order/quantity")
                .selection("selection: Sink\nkind: sink", "quantity: 1")
                .selection("selection: Prep sink\nkind: sink", more)
                .selection("selection: Mixer\nkind: tap", "quantity: 1")
        };
        two("quantity: 1").finds("there are 2 sinks and basins, and 1 taps for them").weighs("query");
        two("accessories: [{name: prep tap}]").stays_silent();
        two("quantity: 1").selection("selection: Prep tap\nkind: tap", "quantity: 1").stays_silent();
    }
}
