//! Milestones in an order in which no job goes, and walls of which nobody says when they are closed.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{Milestone, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::units::Date;
use crate::vocabulary::{HoldPoint, Stage};

declare! {
    /// The milestones come in an order in which no job goes, or none of them closes the walls
    ///
    /// ## What it checks
    /// The days of milestones whose names tell what is done: demolition comes before all others, the rough-in before tile,
    /// floors and cabinets, cabinets before the template of the counters, that before the counters are set, and those before the
    /// fit-off. Whether floors or cabinets come first is the job's own. And where something that is built in (a shower's valve,
    /// a tank in the wall, a tray, a drain) says that only a later milestone waits for it, whether the book says when the walls
    /// are closed: by a milestone of a usual name (`rough-in`, `first fix`), or by `hold points`.
    ///
    /// ## Why it matters
    /// Every last day to order is reckoned back from a milestone. One that stands in the wrong place makes them all wrong, and
    /// a valve that comes after the boards costs the boards.
    ///
    /// ## Remedy
    /// Correct `after` or the day of the milestone; name the one that closes the walls under `hold points`.
    ///
    /// ## Example
    /// ```yaml
    /// milestones: {rough-in: 2027-05-20, tile set: 2027-05-04}
    /// ```
    ///
    /// ## Source
    /// Trade practice.
    "order/sequence", Query,
    due: WithThing, tells: [],
    judges: goods,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let dated: Vec<(&Milestone, Date)> = context
        .book
        .project
        .milestones
        .iter()
        .filter_map(|one| Some((one, *context.dates.milestones.get(&one.name.value)?)))
        .collect();
    // What comes after a milestone of those moves with it: the earliest is told of each that it waits for.
    let mut by_day = dated.clone();
    by_day.sort_by_key(|(_, day)| *day);
    let mut told: Vec<&str> = Vec::new();
    for (milestone, day) in by_day {
        if let Some(first) =
            awaited(&dated, milestone, day).filter(|(first, _)| !told.contains(&first.name.value.as_str()))
        {
            told.push(&first.0.name.value);
            findings.push(comes_too_soon((milestone, day), first));
        }
    }
    findings.extend(never_closed(context, &dated));
}

/// The first milestone of the book that has to be through before another one, and comes later.
fn awaited<'a>(dated: &[(&'a Milestone, Date)], milestone: &Milestone, day: Date) -> Option<(&'a Milestone, Date)> {
    let stage = Stage::of(&milestone.name.value)?;
    let is_before = |other: &Milestone| Stage::of(&other.name.value).is_some_and(|one| one.comes_before(stage));
    dated.iter().find(|(other, its)| *its > day && is_before(other)).copied()
}

fn comes_too_soon((milestone, day): (&Milestone, Date), (first, later): (&Milestone, Date)) -> Remark {
    let message = phrase!(
        "the milestone `{}` is on {day}, and `{}`, which comes before it, only on {later}",
        milestone.name.value,
        day,
        first.name.value,
        later
    );
    let finding = Remark::query(milestone.name.span, message).also(first.name.span, "comes later");
    finding.remedy("correct the day of the one or the other, or what it comes `after`")
}

/// Something is built in, and nobody says when what it is built into is closed.
fn never_closed(context: &Context<'_>, dated: &[(&Milestone, Date)]) -> Option<Remark> {
    let is_named = context
        .book
        .project
        .hold_points
        .iter()
        .any(|point| HoldPoint::named(&point.name.value) == Some(HoldPoint::RoughInClosed));
    let is_dated = dated.iter().any(|(one, _)| HoldPoint::RoughInClosed.rank(&one.name.value).is_some());
    if is_named || is_dated {
        return None;
    }
    let built_in = context.book.selections().map(|(_, selection)| selection);
    let built_in = built_in.filter(|selection| context.dates.is_built_in(selection));
    let needed = |selection: &Selection| context.dates.day(selection.needed_for.get()?);
    let (waits, day) = built_in
        .filter_map(|selection| Some((selection, needed(selection)?)))
        .filter(|(_, day)| *day >= context.today)
        .max_by_key(|(_, day)| *day)?;
    // What is there before it, and is no demolition, may be what closes the walls.
    let may_close = |one: &Milestone| Stage::of(&one.name.value) != Some(Stage::Demolition);
    let (first, _) = dated.iter().filter(|(one, its)| *its < day && may_close(one)).min_by_key(|(_, its)| *its)?;
    let message = phrase!(
        "`{}` is built in and needed on {day} only, and the book does not say when the walls are closed over it",
        waits.name.value,
        day
    );
    let finding = Remark::query(waits.span, message).selection(&waits.name).also(first.name.span, "comes before it");
    Some(finding.remedy(remedy(&first.name.value)))
}

fn remedy(milestone: &str) -> Phrase {
    phrase!(
        "under `hold points` in `book.yaml` say when `rough-in closed` is: the milestone that closes the walls, which may be `{}`, or a day",
        milestone
    )
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn dated(milestones: &str) -> Trial {
        Trial::of("order/sequence").book(&format!("milestones: {{{milestones}}}"))
    }

    #[test]
    fn no_job_comes_to_a_milestone_before_what_has_to_be_through() {
        dated("demolition: 2027-05-03, rough-in: 2027-05-20, tile set: 2027-05-04")
            .finds(
                "the milestone `tile set` is on 4 May 2027, and `rough-in`, which comes before it, only on 20 May 2027",
            )
            .weighs("query")
            .points_at(&["book.yaml:5:60"]);
        for reversed in [
            "first fix: 2027-06-20, cabinets set: 2027-06-04",
            "cabinets fitted: 2027-06-20, template: 2027-06-04",
            "plantilla: 2027-06-20, encimeras: 2027-06-04",
            "counters set: 2027-06-20, second fix: 2027-06-04",
            "floors laid: 2027-05-03, demolition: 2027-05-20",
            "rough-in: 2027-05-20, demolition: {after: rough-in, lasts: 2 days}",
            "rough-in: 2027-05-20, tile set: 2027-05-04, cabinets set: 2027-05-07, template: 2027-05-10",
        ] {
            dated(reversed).finds_one();
        }
        for sound in [
            "demolition: 2027-05-03, rough-in: 2027-05-20, tile set: 2027-06-04, fit-off: 2027-07-01",
            "rough-in: 2027-05-20, cabinets set: 2027-06-04, floors laid: 2027-06-10, counters set: 2027-06-20",
            "rough-in: 2027-05-20, floors laid: 2027-06-04, cabinets set: 2027-06-10, template: 2027-06-10",
            "fit-off: 2027-07-01, tile set: 2027-07-10",
            "kitchen rough-in: 2027-05-20, bath tile: 2027-05-04",
            "rough-in: 2027-05-20, tile set: 2027-05-20",
        ] {
            dated(sound).stays_silent();
        }
    }

    #[test]
    fn the_book_says_when_walls_are_closed_over_what_is_built_in() {
        let tray = |book: &str, needed: &str| {
            Trial::of("order/sequence")
                .book(book)
                .selection(&format!("selection: It\nkind: shower tray\nneeded for: {needed}"), "lead time: 6 weeks")
        };
        let own = "milestones: {demolition: 2027-05-03, pipes laid: 2027-05-20, fit-off: 2027-07-01}";
        tray(own, "fit-off")
            .finds("`It` is built in and needed on 1 Jul 2027 only, and the book does not say when the walls are closed over it")
            .weighs("query")
            .remedies("under `hold points` in `book.yaml` say when `rough-in closed` is: the milestone that closes the walls, which may be `pipes laid`, or a day");
        tray(own, "pipes laid").stays_silent();
        tray(&format!("{own}\nhold points: {{rough-in closed: {{on: pipes laid}}}}"), "fit-off").stays_silent();
        tray("milestones: {first fix: 2027-05-20, fit-off: 2027-07-01}", "fit-off").stays_silent();
        tray("milestones: {demolition: 2027-05-03, fitting: 2027-07-01}", "fitting").stays_silent();
        let sink =
            Trial::of("order/sequence").book(own).selection("selection: It\nkind: sink\nneeded for: fit-off", "");
        sink.stays_silent();
    }
}
