//! More ordered than has a place.

use crate::assess::about;
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::units::Counted;

/// More of what goes into an opening than there are openings for it.
pub fn judge((room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let kind = selection.kind.get().filter(|kind| kind.takes_opening())?;
    let own = room.opening(selection.place.get()?)?;
    let ordered = option.quantity.spanned()?;
    let in_pieces = matches!(ordered.value.counted(), Counted::Unsaid | Counted::Pieces);
    let there = ordered.value.whole().filter(|there| in_pieces && *there > 1)?;
    // One that nothing else is chosen for may be for the same.
    let is_free =
        |name: &str| !room.selections.iter().any(|other| other.place.get().is_some_and(|place| place == name));
    let others =
        room.openings.iter().filter(|opening| opening.takes.get() == Some(kind) && is_free(&opening.name.value));
    let places = u64::try_from(others.count()).ok()?.saturating_add(1);
    let name = &selection.name.value;
    let message = phrase!("{there} of `{name}` are ordered, and there is a place for {places}", there, name, places);
    (there > places).then(|| {
        let finding = about(room, selection, option, Severity::Query, ordered.span, message);
        finding.also(own.span, "its place").remedy("correct the `quantity`, or add an opening for each of the others")
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn no_more_is_ordered_than_has_a_place() {
        let washers = |quantity: &str| {
            Trial::of("order/quantity")
                .opening("dw", "{takes: dishwasher, width: 24\"}")
                .selection("selection: Dishwasher\nkind: dishwasher\nplace: dw", &format!("quantity: {quantity}"))
        };
        washers("2")
            .finds("2 of `Dishwasher` are ordered, and there is a place for 1")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:4:11"]);
        washers("1").stays_silent();
        washers("2").opening("second", "{takes: dishwasher, width: 24\"}").stays_silent();
        let taps = |quantity: &str| {
            Trial::of("order/quantity")
                .selection("selection: Sink\nkind: sink", "quantity: 1")
                .selection("selection: Mixer\nkind: tap", &format!("quantity: {quantity}"))
        };
        taps("3").finds("3 of `Mixer` are ordered, and 1 of `Sink`");
        taps("1").stays_silent();
    }
}
