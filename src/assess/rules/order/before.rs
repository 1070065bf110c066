//! An order that waits for another.

mod on_site;

use std::collections::BTreeMap;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, HoldPoints, Prerequisite, Reason, RunsOut, Unsettled};
use crate::book::{Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::source::{Span, Spanned};
use crate::units::{Date, Wrote};

declare! {
    /// A thing is, or must soon be, ordered before what it depends on is settled
    ///
    /// ## What it checks
    /// For each thing that is ordered, or must be within four weeks (past its day, `order/late` says it
    /// all): whether all that it rests on is
    /// chosen, has a maker's sheet with a revision or a date where the kind asks for one, and is approved
    /// once anything was issued for approval. A choice that is told here is not told again by
    /// `complete/undecided`. What
    /// rests on what follows from kinds and places (cabinets on the appliances and the sink that they
    /// house, the counter on sink, taps and cooktop, heights and panels on the floor, trim on its valve,
    /// glass on the tile) and from `depends on`. And what is measured on site, glass on its tile and stone at the template:
    /// whether it is needed, ordered or promised before that.
    ///
    /// ## Why it matters
    /// A cabinet order with an appliance still to be decided is an order for the wrong cabinet. The
    /// commonest dear mistake is an appliance that was changed or left open after the cabinets were
    /// ordered.
    ///
    /// ## Remedy
    /// Have the other thing chosen and approved and its sheet fetched first; or move the order.
    ///
    /// ## Example
    /// ```yaml
    /// selection: Cabinets
    /// order: {placed on: 2027-01-14}     # the range is not chosen yet
    /// ```
    ///
    /// ## Source
    /// Trade practice: appliances and their sheets before cabinets, sink and taps before the counter.
    "order/before", Query,
    due: GoodsOrdered, tells: [],
    judges: each,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let points = HoldPoints::of(context.book, context.dates);
    for (room, selection) in context.book.selections() {
        findings.extend(rests_on_what_comes_later(context, room, selection));
        findings.extend(on_site::judge(context, &points, room, selection));
        let Some(order) = order(context, selection) else { continue };
        let waits = context.depends.waits_for(selection, context.approvals);
        if waits.is_empty() {
            continue;
        }
        let (severity, begins, at) = match order {
            Order::Placed(placed) => (Severity::Stop, phrase!("was ordered on {}", placed.value), placed.span),
            Order::Near(last) => (Severity::Query, phrase!("must be ordered by {last}", last), selection.span),
        };
        let message = phrase!("`{}` {begins}, and {}", selection.name.value, begins, told(room, &waits));
        findings.push(finding(room, selection, severity, at, message, &waits));
    }
}

/// A thing that is needed before what the book says that it depends on.
fn rests_on_what_comes_later(context: &Context<'_>, room: &Room, selection: &Selection) -> Option<Remark> {
    let needed = context.dates.needed(selection).filter(|_| !selection.is_ordered())?;
    let grounds = context.depends.grounds(selection).iter().filter(|ground| ground.because == Reason::Named);
    let later = grounds.filter_map(|ground| Some((ground, context.dates.needed(ground.selection)?)));
    let (ground, day) = later.filter(|(_, day)| *day > needed).max_by_key(|(_, day)| *day)?;
    let message = phrase!(
        "`{}` is needed on {needed}, and `{}`, which it depends on, only on {day}",
        selection.name.value,
        needed,
        ground.selection.name.value,
        day
    );
    let finding = Remark::query(selection.span, message).room(&room.folder).selection(&selection.name);
    let finding = finding.also(ground.selection.span, "comes later");
    Some(finding.remedy("bring forward what it depends on, or move what waits for it: `needed for`"))
}

/// An order that is placed, or near.
enum Order<'a> {
    Placed(&'a Spanned<Date>),
    Near(Date),
}

/// The order of a chosen thing, where it is placed or near.
fn order<'a>(context: &Context<'_>, selection: &'a Selection) -> Option<Order<'a>> {
    let placed = selection.settled()?.order.placed_on.spanned().map(Order::Placed);
    let near = || context.dates.order_runs_out(selection) == RunsOut::Soon;
    placed.or_else(|| context.dates.last_order(selection).filter(|_| near()).map(Order::Near))
}

/// The things whose order is told here with all that it still waits for, by where they are written; and the day
/// of that order.
pub fn told_of(context: &Context<'_>) -> BTreeMap<Span, Date> {
    let day = |selection| match order(context, selection)? {
        Order::Placed(placed) => Some(placed.value),
        Order::Near(last) => Some(last),
    };
    context.book.selections().filter_map(|(_, selection)| Some((selection.span, day(selection)?))).collect()
}

fn finding(
    room: &Room,
    selection: &Selection,
    severity: Severity,
    at: crate::source::Span,
    message: Phrase,
    waits: &[(Prerequisite<'_>, Unsettled)],
) -> Remark {
    let mut finding = Remark::new(severity, at, message).room(&room.folder).selection(&selection.name);
    for (ground, lacks) in waits {
        finding = finding.also(ground.selection.span, lacks.words());
    }
    finding.remedy("have what it depends on chosen and approved and its sheet fetched first, or move the order")
}

/// `Range` and `Sink`, which it is built around, are not chosen; `Hood`, …, has no maker's sheet.
fn told(room: &Room, waits: &[(Prerequisite<'_>, Unsettled)]) -> Phrase {
    let name = |ground: &Prerequisite<'_>| match ground.room.folder == room.folder {
        true => phrase!("`{}`", ground.selection.name.value),
        false => phrase!("`{}` ({})", ground.selection.name.value, Wrote(ground.room.title())),
    };
    let mut alike: Vec<(Reason, Unsettled, Vec<Phrase>)> = Vec::new();
    for (ground, lacks) in waits {
        match alike.iter_mut().find(|(because, what, _)| (*because, *what) == (ground.because, *lacks)) {
            Some((_, _, names)) => names.push(name(ground)),
            None => alike.push((ground.because, *lacks, vec![name(ground)])),
        }
    }
    let told = alike.iter().map(|(because, lacks, names)| {
        let words = if names.len() == 1 { lacks.words() } else { lacks.words_of_many() };
        phrase!("{}, which it {}, {words}", Phrase::series(names), because.words(), words)
    });
    Phrase::joined(told, "; ")
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn what_it_depends_on_is_there_before_it() {
        let bar = |bar: &str, sconce: &str| {
            Trial::of("order/before")
                .book("milestones: {rough-in: 2027-06-11, fit-off: 2027-08-06}")
                .selection(
                    &format!("selection: Bar\nkind: bar\nneeded for: {bar}\ndepends on: [Sconce]"),
                    "lead time: 2 weeks",
                )
                .selection(&format!("selection: Sconce\nkind: wall light\nneeded for: {sconce}"), "lead time: 2 weeks")
        };
        bar("rough-in", "fit-off")
            .finds("`Bar` is needed on 11 Jun 2027, and `Sconce`, which it depends on, only on 6 Aug 2027")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:1:12"]);
        bar("fit-off", "rough-in").stays_silent();
        bar("fit-off", "fit-off").stays_silent();
    }

    const SHEET: &str = "fit: {sheet: {name: MW, revision: B}}";

    fn kitchen(microwave: &str, order: &str) -> Trial {
        Trial::of("order/before")
            .opening("microwave", "{takes: microwave, width: 24\"}")
            .selection(&format!("selection: Microwave\nkind: microwave\nplace: microwave\n{microwave}"), "")
            .selection(
                "selection: Cabinets\nkind: cabinet\nneeded for: 2027-04-05",
                &format!("lead time: 10-12 weeks\n{order}"),
            )
    }

    /// Source: trade reports F-39: no appliance to be decided at the cabinet order.
    #[test]
    fn cabinets_ordered_around_an_open_appliance_are_told() {
        let open = "options: [{id: a}, {id: b}]";
        kitchen(open, "order: {placed on: 2027-01-14}")
            .finds("`Cabinets` was ordered on 14 Jan 2027, and `Microwave`, which it is built around, is not chosen")
            .weighs("stop");
        kitchen(&format!("{open}\nchosen: a\n{SHEET}"), "order: {placed on: 2027-01-14}").stays_silent();
    }

    #[test]
    fn an_order_that_is_near_asks_for_the_sheet_of_what_it_houses() {
        let trial = |microwave: &str, today: &'static str| kitchen(microwave, "").today(today);
        trial("", "2027-01-08")
            .finds("`Cabinets` must be ordered by 11 Jan 2027, and `Microwave`, which it is built around, has no maker's sheet");
        trial(SHEET, "2027-01-08").stays_silent();
        trial("", "2026-11-02").stays_silent();
    }

    #[test]
    fn a_name_in_another_room_is_followed() {
        let trial = |chosen: &str| {
            let bath = format!("selection: Floor\nkind: tile\noptions: [{{id: a}}, {{id: b}}]\n{chosen}");
            Trial::of("order/before")
                .file("rooms/bath/room.yaml", "name: Bath\n")
                .file("rooms/bath/floor.yaml", bath)
                .selection(
                    "selection: Threshold\nkind: stair part\ndepends on: [bath/Floor]",
                    "order: {placed on: 2027-01-14}",
                )
        };
        trial("")
            .finds("`Threshold` was ordered on 14 Jan 2027, and `Floor` (Bath), which it depends on, is not chosen");
        trial("chosen: a").stays_silent();
    }

    #[test]
    fn heights_are_known_once_the_build_up_is_whichever_floor_is_chosen() {
        let trial = |room: &str| {
            Trial::of("order/before")
                .room(room)
                .selection("selection: Floor tile\nkind: tile\noptions: [{id: a}, {id: b}]", "")
                .selection("selection: Cabinets\nkind: cabinet", "order: {placed on: 2027-01-14}")
        };
        trial("").finds_one();
        trial("floor build-up: 3/4\"").stays_silent();
    }
}
