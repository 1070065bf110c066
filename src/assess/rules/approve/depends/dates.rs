//! What was chosen after something that rests on it: by the book's own dates, where nothing was approved.

use crate::assess::{Context, Prerequisite};
use crate::book::{Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::source::Spanned;
use crate::units::Date;

/// Every item that was ordered, or chosen, before what it rests on.
pub fn reopened(context: &Context<'_>) -> Vec<Remark> {
    let all = context.book.selections().flat_map(|(room, selection)| {
        let grounds = context.depends.grounds(selection).iter();
        grounds.filter_map(move |ground| told(context, (room, selection), ground))
    });
    all.collect()
}

fn told(context: &Context<'_>, (room, selection): (&Room, &Selection), ground: &Prerequisite<'_>) -> Option<Remark> {
    let chosen: &Spanned<Date> = ground.selection.chosen_on.spanned()?;
    ground.selection.settled()?;
    let placed = selection.settled().and_then(|option| option.order.placed_on.spanned());
    let (what, before) = match (placed, selection.chosen_on.spanned()) {
        (Some(placed), _) => ("ordered", placed),
        (None, Some(before)) => ("chosen", before),
        (None, None) => return None,
    };
    if chosen.value <= before.value {
        return None;
    }
    let (name, other) = (&selection.name.value, &ground.selection.name.value);
    let message = phrase!(
        "`{name}` was {what} on {}, and `{other}`, which it {}, was chosen on {}, after it{by}",
        name,
        what,
        before.value,
        other,
        ground.because.words(),
        chosen.value,
        super::to_be_ordered_by(context, selection)
    );
    let severity = if placed.is_some() { Severity::Stop } else { Severity::Query };
    let finding = Remark::new(severity, before.span, message).room(&room.folder).selection(&selection.name);
    let remedy =
        phrase!("look whether `{name}` still suits it, and change it or write the day of that look: `chosen on`", name);
    Some(finding.also(chosen.span, "chosen after it").remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn kitchen(range: &str, cabinets: &str) -> Trial {
        Trial::of("approve/depends")
            .opening("range", "{takes: range, width: 30\", above: nothing}")
            .selection(
                &format!("selection: Range\nkind: range\nplace: range\nchosen: two\nchosen on: {range}"),
                "options: [{id: one, model: R-1}, {id: two, model: R-2}]",
            )
            .selection(&format!("selection: Cabinets\nkind: cabinet\n{cabinets}"), "")
    }

    /// Source: trade practice: appliances before cabinets.
    #[test]
    fn what_was_chosen_after_its_cabinets_were_ordered_opens_them_again() {
        kitchen("2027-01-12", "order: {placed on: 2027-01-05}")
            .finds("`Cabinets` was ordered on 5 Jan 2027, and `Range`, which it is built around, was chosen on 12 Jan 2027, after it")
            .weighs("stop")
            .points_at(&["rooms/kitchen/selection-1.yaml:3:20"]);
        kitchen("2027-01-04", "order: {placed on: 2027-01-05}").stays_silent();
        kitchen("2027-01-12", "").stays_silent();
    }

    #[test]
    fn before_it_is_ordered_it_is_asked_with_the_day_of_its_order() {
        let needed = "needed for: 2027-06-01\nlead time: 6 weeks\n";
        kitchen("2027-01-12", &format!("{needed}chosen on: 2027-01-05"))
            .finds("`Cabinets` was chosen on 5 Jan 2027, and `Range`, which it is built around, was chosen on 12 Jan 2027, after it; it is to be ordered by 20 Apr 2027")
            .weighs("query");
        kitchen("2027-01-12", &format!("{needed}chosen on: 2027-01-13")).stays_silent();
    }
}
