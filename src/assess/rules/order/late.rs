//! An order whose last day is past, or that does not come in time.

mod milestone;

use super::to_order;
use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{NeededFor, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::units::Wrote;

declare! {
    /// The last day to order is past, or what is ordered comes too late
    ///
    /// ## What it checks
    /// For each thing that is chosen and not ordered: the day it is needed, less the book's
    /// `receiving`, less the longest lead time, against today. What is built in behind walls or floors (a shower's
    /// valve, a tank in the wall, a tray, a drain) is needed no later than the rough-in is closed. For what is ordered: the day the
    /// supplier promises (or order day plus the longest lead time) against the day it must be in
    /// hand. A floor, a counter or cabinets that say that a later milestone waits for them than the one at which the book sets
    /// such things (`floors laid`, `counters set`, `cabinets set`) are asked about.
    ///
    /// ## Why it matters
    /// A back-order slips from June to September one letter at a time. Each slip moves what waits.
    ///
    /// ## Remedy
    /// Order it today and move what waits for it, ask the maker for a faster way, or take the
    /// alternate.
    ///
    /// ## Example
    /// ```yaml
    /// needed for: cabinets set     # 5 April 2027
    /// lead time: 10-12 weeks       # so by 11 January
    /// ```
    ///
    /// ## Source
    /// Order day = day needed − receiving − lead time: from memory (trade practice).
    "order/late", Stop,
    due: GoodsOrdered, tells: [],
    judges: goods,
    sources: ["from memory: order day = day needed − receiving − lead time"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let all = context.book.selections();
    findings.extend(all.filter_map(|(room, selection)| milestone::judge(context, room, selection)));
    let mut told = Vec::new();
    for (room, selection, option) in to_order(context) {
        let Some(last) = context.dates.order_by(selection, option).and_then(|when| when.order) else { continue };
        if last < context.today {
            let held = held_up(context, selection);
            let message = phrase!(
                "`{}` was to be ordered by {last}{held}{}",
                selection.name.value,
                last,
                held,
                waits(context, selection)
            );
            let remedy = match held.is_empty() {
                true => "order it today and move what waits for it, or choose what comes sooner",
                false => "settle what it waits for, order it, and move what waits for it",
            };
            findings.push(finding(room, selection, option, message).remedy(remedy));
            told.push(option.span);
        }
    }
    // What is promised comes no sooner, whether it is ordered yet or not.
    let is_promised = |option: &ProductOption| !option.order.promised_for.is_absent() && !told.contains(&option.span);
    let ordered = context.site.options().filter(|(_, selection, option)| {
        option.order.placed_on.get().is_some() || selection.settled().is_some() && is_promised(option)
    });
    findings.extend(ordered.filter_map(|(room, selection, option)| comes_late(context, room, selection, option)));
}

fn comes_late(context: &Context<'_>, room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let when = context.dates.order_by(selection, option)?;
    let promised = option.order.promised_for.get().copied();
    let comes = promised.or_else(|| context.dates.comes(option))?;
    if comes <= when.in_hand {
        return None;
    }
    let says = if promised.is_some() { "is promised for" } else { "by its lead time comes on" };
    let message = phrase!(
        "`{}` {says} {comes}, and is to be in hand on {}{}",
        selection.name.value,
        says,
        comes,
        when.in_hand,
        waits(context, selection)
    );
    let remedy = "ask the supplier, take the alternate, or move what waits for it";
    Some(finding(room, selection, option, message).remedy(remedy))
}

fn finding(room: &Room, selection: &Selection, option: &ProductOption, message: Phrase) -> Remark {
    let at = option.lead_time.span().unwrap_or(selection.span);
    Remark::stop(at, message).room(&room.folder).selection(&selection.name)
}

/// What an order itself still waits for.
fn held_up(context: &Context<'_>, selection: &Selection) -> Phrase {
    let waits = context.depends.waits_for(selection, context.approvals);
    let told: Vec<Phrase> =
        waits.iter().map(|(ground, lacks)| phrase!("`{}` {}", ground.selection.name.value, lacks.words())).collect();
    if told.is_empty() { Phrase::default() } else { phrase!(", and still waits: {}", Phrase::joined(told, ", ")) }
}

/// What waits for a selection, and when.
fn waits(context: &Context<'_>, selection: &Selection) -> Phrase {
    if let Some(day) = context.dates.closed_over(selection) {
        return phrase!("; it is built in, and the walls are closed on {day}", day);
    }
    let day = context.dates.needed(selection).map_or(Phrase::default(), |day| phrase!(", {day}", day));
    match selection.needed_for.get() {
        Some(NeededFor::Milestone(name)) => phrase!("; {name} waits for it{day}", Wrote(name), day),
        _ => Phrase::default(),
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn cabinets(order: &str) -> Trial {
        Trial::of("order/late").book("milestones: {cabinets set: 2026-09-14}").selection(
            "selection: Cabinets\nkind: cabinet\nneeded for: cabinets set",
            &format!("lead time: 10-12 weeks\n{order}"),
        )
    }

    /// Source: check values SD-04: needed Monday 14 September 2026, 12 weeks, so by Monday 22 June 2026.
    #[test]
    fn the_last_day_to_order_is_in_time_and_the_next_one_late() {
        cabinets("").today("2026-06-22").stays_silent();
        cabinets("")
            .today("2026-06-23")
            .finds("`Cabinets` was to be ordered by 22 Jun 2026; cabinets set waits for it, 14 Sep 2026")
            .weighs("stop");
    }

    /// Source: trade reports F-87; the moment by whatever name the trade has for it.
    #[test]
    fn the_walls_are_closed_at_the_first_fix_as_well() {
        for milestone in ["rough-in", "Roughing-in", "first fix", "First fix", "instalaciones", "Rohinstallation"] {
            let tray = |day: &str| {
                Trial::of("order/late")
                    .book(&format!("milestones: {{{milestone}: {day}, fit-off: 2027-08-06}}"))
                    .selection("selection: It\nkind: shower tray\nneeded for: fit-off", "lead time: 6 weeks")
                    .today("2027-06-20")
            };
            tray("2027-06-11").finds_one();
            tray("2027-09-10").stays_silent();
        }
    }

    /// Source: trade reports F-87: bought for fit-off, and the valve that comes with it is missing when the wall is closed.
    #[test]
    fn what_is_built_in_is_needed_before_the_walls_are_closed() {
        let bought = |kind: &str, option: &str, closing: &str| {
            Trial::of("order/late")
                .book(&format!("milestones: {{fit-off: 2027-08-06}}\nhold points: {{rough-in closed: {closing}}}"))
                .selection(
                    &format!("selection: It\nkind: {kind}\nneeded for: fit-off"),
                    &format!("lead time: 6 weeks\n{option}"),
                )
        };
        for (kind, option) in [
            ("shower set", "valve: VB-2"),
            ("tap", "valve: VB-2"),
            ("bath filler", "valve: VB-2"),
            ("in-wall tank", ""),
            ("shower tray", ""),
            ("linear drain", ""),
            ("bathtub", ""),
        ] {
            bought(kind, option, "2027-06-11")
                .today("2027-06-20")
                .finds("`It` was to be ordered by 30 Apr 2027; it is built in, and the walls are closed on 11 Jun 2027")
                .weighs("stop");
            bought(kind, option, "2027-09-10").today("2027-06-20").stays_silent();
        }
        for (kind, option) in [
            ("tap", ""),
            ("toilet", ""),
            ("flush plate", ""),
            // It is laid with the floor.
            ("floor heating", ""),
            ("freestanding bathtub", ""),
            ("bathtub", "mount: on feet, free"),
        ] {
            bought(kind, option, "2027-06-11").today("2027-06-20").stays_silent();
        }
        // The trim of a valve that is bought by itself comes later than that.
        bought("shower set", "valve: VB-2", "2027-06-11")
            .selection("selection: Valve\nkind: item", "model: VB-2")
            .today("2027-06-20")
            .stays_silent();
    }

    /// Source: trade reports F-99: from mid-June to September, slip by slip.
    #[test]
    fn a_promise_past_the_day_is_told_again_with_each_slip() {
        let ordered =
            |promise: &str| cabinets(&format!("order: {{placed on: 2026-06-01{promise}}}")).today("2026-08-01");
        ordered(", promised for: 2026-09-14").stays_silent();
        ordered(", promised for: 2026-09-28")
            .finds("`Cabinets` is promised for 28 Sep 2026, and is to be in hand on 14 Sep 2026; cabinets set waits for it, 14 Sep 2026")
            .weighs("stop");
        ordered("").stays_silent();
    }

    /// A supplier promises a day before anything is ordered.
    #[test]
    fn a_promise_counts_though_nobody_wrote_when_it_was_ordered() {
        let promised = |day: &str| cabinets(&format!("order: {{promised for: {day}}}")).today("2026-06-01");
        promised("2026-09-28")
            .finds("`Cabinets` is promised for 28 Sep 2026, and is to be in hand on 14 Sep 2026; cabinets set waits for it, 14 Sep 2026");
        promised("2026-09-14").stays_silent();
    }

    #[test]
    fn what_was_ordered_too_late_is_told_though_nobody_promised() {
        cabinets("order: {placed on: 2026-06-29}").today("2026-08-01").finds_one().weighs("stop");
        let receiving = cabinets("order: {placed on: 2026-06-22}").book("receiving: 5 working days");
        receiving.today("2026-08-01").finds_one().weighs("stop");
    }

    #[test]
    fn a_late_order_says_what_it_still_waits_for() {
        cabinets("")
            .opening("range", "{takes: range}")
            .selection("selection: Range\nkind: range\nplace: range\noptions: [{id: a}, {id: b}]", "")
            .today("2026-06-23")
            .finds("`Cabinets` was to be ordered by 22 Jun 2026, and still waits: `Range` is not chosen; cabinets set waits for it, 14 Sep 2026");
    }

    /// The open choice is told by `complete/undecided`.
    #[test]
    fn an_open_choice_is_not_told_here() {
        let trial = Trial::of("order/late").selection(
            "selection: It\nkind: rug\nneeded for: 2027-01-18\noptions: [{id: a, lead time: 6 weeks}, {id: b, lead time: 8 weeks}]",
            "",
        );
        trial.stays_silent();
    }
}
