//! A choice that is still open when it must be made.

use crate::assess::rules::order::before;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, RunsOut, Step};
use crate::book::{NeededFor, Selection};
use crate::finding::{Phrase, Remark, Severity, Value, phrase};
use crate::units::Wrote;

declare! {
    /// A choice is still open, and the last day to decide comes near or is past
    ///
    /// ## What it checks
    /// Selections with several options and none chosen, against the earliest of: the last day to order
    /// the slowest of them, the hold point of their kind, the closing of the walls where they differ in what goes into those
    /// (or are hoods or fans, for their duct), and the order or hold point of what rests on
    /// them (cabinets built around an appliance, a counter cut for a sink). A query within four weeks of
    /// that day, a stop once it is past. Where it is the order of what rests on them, and `order/before`
    /// tells that order, it is said there, once.
    ///
    /// ## Why it matters
    /// What is not decided is not ordered. A cabinet order with an appliance still to be decided is
    /// an order for the wrong cabinet.
    ///
    /// ## Remedy
    /// Ask those who decide, and write the option after `chosen`.
    ///
    /// ## Example
    /// ```yaml
    /// selection: Refrigerator
    /// needed for: cabinets set
    /// options: [{id: steel, …}, {id: enamel, …}]     # chosen: …
    /// ```
    ///
    /// ## Source
    /// Common practice, the four weeks ahead too.
    "complete/undecided", Query,
    due: WithThing, tells: [],
    judges: each,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let told = before::told_of(context);
    for (room, selection) in context.book.selections() {
        let open = selection.options.len() > 1 && selection.chosen.is_absent();
        let (true, Some(due)) = (open, context.dates.decision(selection)) else { continue };
        let rests = due.rests.as_ref().filter(|_| due.is != Step::Closing);
        if rests.is_some_and(|rests| told.get(&rests.span) == Some(&due.on)) {
            continue;
        }
        let last =
            due.reason().map_or_else(|| Value::Date(due.on).into(), |reason| phrase!("{}, {reason}", due.on, reason));
        let (severity, when) = match context.dates.runs_out(selection) {
            RunsOut::Past => (Severity::Stop, phrase!("was to be chosen by {last}", last)),
            RunsOut::Soon => (Severity::Query, phrase!("must be chosen by {last}", last)),
            RunsOut::Later => continue,
        };
        let message = phrase!("`{}` {when}{}", selection.name.value, when, holds_up(context, selection));
        let finding = Remark::new(severity, selection.span, message).room(&room.folder);
        let remedy = "ask those who decide, and write the option after `chosen`; or move what waits for it";
        findings.push(finding.selection(&selection.name).remedy(remedy));
    }
}

fn holds_up(context: &Context<'_>, selection: &Selection) -> Phrase {
    if let Some(day) = context.dates.closed_over(selection) {
        return phrase!("; it is built in, and the walls are closed on {day}", day);
    }
    let day = context.dates.needed(selection).map_or(Phrase::default(), |day| phrase!(", {day}", day));
    match selection.needed_for.get() {
        Some(NeededFor::Milestone(name)) => phrase!("; it holds up {name}{day}", Wrote(name), day),
        Some(NeededFor::Day(day)) => phrase!("; it is needed on {day}", day),
        None => Phrase::default(),
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(chosen: &str) -> Trial {
        let options = "options: [{id: steel, lead time: 8 weeks}, {id: enamel, lead time: 2 weeks}]";
        let trial = Trial::of("complete/undecided").book("milestones: {cabinets set: 2027-04-05}");
        trial.selection(&format!("selection: Range\nkind: range\nneeded for: cabinets set\n{options}\n{chosen}"), "")
    }

    /// Eight weeks before 5 April 2027 is 8 February.
    #[test]
    fn an_open_choice_is_a_query_near_its_last_day_and_a_stop_after_it() {
        let message = "`Range` must be chosen by 8 Feb 2027; it holds up cabinets set, 5 Apr 2027";
        trial("").finds(message).weighs("query");
        trial("").today("2027-02-09").finds_one().weighs("stop");
        trial("").today("2026-12-01").stays_silent();
        trial("chosen: enamel").today("2027-02-09").stays_silent();
    }

    #[test]
    fn an_open_choice_counts_against_its_hold_point_too() {
        let at = |day: &str| trial("").book(&format!("hold points: {{cabinets ordered: {day}}}"));
        at("2027-01-14")
            .finds(
                "`Range` was to be chosen by 14 Jan 2027, the hold point cabinets ordered; it holds up cabinets set, 5 Apr 2027",
            )
            .weighs("stop");
        at("2027-01-15").finds_one().weighs("query");
        at("2027-06-01").finds("`Range` must be chosen by 8 Feb 2027; it holds up cabinets set, 5 Apr 2027");
        trial("chosen: enamel").book("hold points: {cabinets ordered: 2027-01-14}").stays_silent();
    }

    #[test]
    fn an_open_choice_counts_against_what_is_built_around_it() {
        let cabinets = |lead: &str| {
            trial("").opening("range", "{takes: range}").selection(
                "selection: Cabinets\nkind: cabinet\nneeded for: cabinets set",
                &format!("lead time: {lead}"),
            )
        };
        let range = |lead: &str| cabinets(lead).today("2027-01-12");
        range("12 weeks")
            .finds("`Range` was to be chosen by 11 Jan 2027, when Cabinets, built around it, must be ordered; it holds up cabinets set, 5 Apr 2027")
            .weighs("stop");
        // Before that day the order that rests on it tells of it, once.
        range("11 weeks").stays_silent();
        range("11 weeks\norder: {placed on: 2027-01-11}").stays_silent();
    }

    /// Source: common practice: the duct of a hood is in the wall before that is closed, and so is a line for gas.
    #[test]
    fn what_decides_the_services_is_chosen_before_the_walls_close() {
        let open = |kind: &str, one: &str, other: &str| {
            Trial::of("complete/undecided").book("milestones: {rough-in closed: 2027-01-20, fit-off: 2027-09-17}").selection(
                &format!("selection: It\nkind: {kind}\nneeded for: fit-off\noptions: [{{id: a, {one}}}, {{id: b, {other}}}]"),
                "lead time: in stock",
            )
        };
        open("hood", "model: A", "model: B")
            .finds(
                "`It` must be chosen by 20 Jan 2027, the hold point rough-in closed; it holds up fit-off, 17 Sep 2027",
            )
            .weighs("query");
        let gas = "fit: {needs: {gas: '40000 Btu/h'}}";
        let power = "fit: {needs: {power: 240 V 40 A}}";
        open("cooktop", gas, power).finds_one();
        open("cooktop", power, "fit: {needs: {power: '240 V, 40 A'}}").stays_silent();
        open("rug", "model: A", "model: B").stays_silent();
    }
}
