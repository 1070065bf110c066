//! A day that is told as past, and lies ahead.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about};
use crate::book::{Opening, ProductOption, Room, Selection, Slot};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::source::Spanned;
use crate::units::Date;

declare! {
    /// A day on which something was done lies ahead
    ///
    /// ## What it checks
    /// Every day that the book tells as past, against the day of the review: when an opening was measured and measured
    /// again, a sample was seen, an option was chosen, a thing could be had, was ordered, or was claimed, and when a
    /// maker's sheet was made. What lies ahead is not done. And no supplier promises a day before the order.
    ///
    /// ## Why it matters
    /// A measurement that is planned for March counts as made, a sample that nobody saw as seen, and what is to be
    /// ordered as ordered: nobody looks again.
    ///
    /// ## Remedy
    /// Take it out until it is done, or correct the day.
    ///
    /// ## Example
    /// ```yaml
    /// measured: {on: 2027-11-01, by: site lead}     # in January
    /// ```
    ///
    /// ## Source
    /// The book's own days.
    "complete/ahead", Query,
    due: WithThing, tells: [],
    judges: each,
    sources: ["the book's own days"],
    caution: None,
    remedy: "take it out until it is done, or correct the day",
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(room.openings.iter().flat_map(|opening| of_an_opening(context, room, opening)));
        findings.extend(room.selections.iter().filter_map(|selection| chosen(context, room, selection)));
    }
    for (room, selection, option) in context.site.options() {
        findings.extend(of_an_option(context, room, selection, option));
        findings.extend(promised_before(room, selection, option));
    }
}

/// A day that lies ahead.
fn ahead<'d>(context: &Context<'_>, day: &'d Slot<Date>) -> Option<&'d Spanned<Date>> {
    day.spanned().filter(|day| day.value > context.today)
}

fn told(what: &Phrase, day: &Spanned<Date>) -> Phrase {
    phrase!("{what} on {}, which lies ahead", what, day.value)
}

fn of_an_opening(context: &Context<'_>, room: &Room, opening: &Opening) -> Vec<Remark> {
    let Some(measured) = opening.measured.get() else { return vec![] };
    let name = &opening.name.value;
    let days = [
        (Some(&measured.on), phrase!("the opening `{name}` was measured", name)),
        (measured.again.get().map(|again| &again.on), phrase!("the opening `{name}` was measured again", name)),
    ];
    let ahead = days.into_iter().filter_map(|(day, what)| Some((ahead(context, day?)?, what)));
    ahead
        .map(|(day, what)| Remark::query(day.span, told(&what, day)).room(&room.folder).opening(&opening.name))
        .collect()
}

fn chosen(context: &Context<'_>, room: &Room, selection: &Selection) -> Option<Remark> {
    let day = ahead(context, &selection.chosen_on)?;
    let what = phrase!("`{}` was chosen", selection.name.value);
    Some(Remark::query(day.span, told(&what, day)).room(&room.folder).selection(&selection.name))
}

fn of_an_option(context: &Context<'_>, room: &Room, selection: &Selection, option: &ProductOption) -> Vec<Remark> {
    let name = &selection.name.value;
    let order = &option.order;
    let of_figures = option.fit.get().and_then(|fit| fit.sheet.get()).map(|sheet| &sheet.date);
    let attached = option.cut_sheet.get().map(|sheet| &sheet.date);
    let days = [
        (Some(&order.placed_on), phrase!("`{name}` was ordered", name)),
        (Some(&order.available_on), phrase!("`{name}` could be had", name)),
        (Some(&order.claimed_on), phrase!("`{name}` was claimed", name)),
        (Some(&option.sample_seen), phrase!("the sample of `{name}` was seen", name)),
        (of_figures, phrase!("the maker's sheet of `{name}` was made", name)),
        (attached, phrase!("the cut sheet of `{name}` was made", name)),
    ];
    let ahead = days.into_iter().filter_map(|(day, what)| Some((ahead(context, day?)?, what)));
    ahead.map(|(day, what)| about(room, selection, option, Severity::Query, day.span, told(&what, day))).collect()
}

/// A promise for a day before the order.
fn promised_before(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let (placed, promised) = (option.order.placed_on.spanned()?, option.order.promised_for.spanned()?);
    let message = phrase!(
        "`{}` is promised for {}, and was ordered only on {}",
        selection.name.value,
        promised.value,
        placed.value
    );
    (promised.value < placed.value).then(|| {
        let finding = about(room, selection, option, Severity::Query, promised.span, message);
        finding.also(placed.span, "the order").remedy("correct whichever day is wrong")
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// The review is of 2027-01-15.
    #[test]
    fn what_lies_ahead_is_not_done() {
        let option = |option: &str| Trial::of("complete/ahead").selection("selection: It\nkind: tap", option);
        for (told, what) in [
            ("order: {placed on: DAY}", "`It` was ordered"),
            ("order: {available on: DAY}", "`It` could be had"),
            ("sample seen: DAY", "the sample of `It` was seen"),
            ("chosen on: DAY", "`It` was chosen"),
            ("fit: {sheet: {name: S, date: DAY}}", "the maker's sheet of `It` was made"),
        ] {
            option(&told.replace("DAY", "2027-01-16"))
                .finds(&format!("{what} on 16 Jan 2027, which lies ahead"))
                .weighs("query")
                .remedies("take it out until it is done, or correct the day");
            option(&told.replace("DAY", "2027-01-15")).stays_silent();
        }
        let opening = |measured: &str| {
            Trial::of("complete/ahead").opening("hole", &format!("{{takes: range, measured: {{by: Ada, {measured}}}}}"))
        };
        opening("on: 2027-11-01")
            .finds("the opening `hole` was measured on 1 Nov 2027, which lies ahead")
            .points_at(&["rooms/kitchen/room.yaml:3:48"]);
        opening("on: 2027-01-11, again: {by: Jo, on: 2027-03-01}")
            .finds("the opening `hole` was measured again on 1 Mar 2027, which lies ahead");
        opening("on: 2027-01-11").stays_silent();
        // What is promised lies ahead by its nature.
        option("order: {placed on: 2027-01-10, promised for: 2027-03-30}").stays_silent();
    }

    #[test]
    fn nothing_is_promised_for_a_day_before_its_order() {
        Trial::of("complete/ahead")
            .selection("selection: It\nkind: tap", "order: {placed on: 2027-01-10, promised for: 2026-12-20}")
            .finds("`It` is promised for 20 Dec 2026, and was ordered only on 10 Jan 2027")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:46"]);
    }
}
