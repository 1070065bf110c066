//! How far a counter spans with nothing below it.

use super::{Counter, counters};
use crate::assess::codes::{STONE_SPAN_2, STONE_SPAN_3};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::Opening;
use crate::finding::{Phrase, phrase};
use crate::site::counters::is_alone;
use crate::site::plan::{Plan, Row};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Hazard, Trait};

declare! {
    /// Stone spans farther than it bears with nothing below it
    ///
    /// ## What it checks
    /// For counters of stone, quartz, porcelain or concrete: the widest gap below that no cabinet fills
    /// (`free span`, else the widest dishwasher, washer or dryer, or two side by side, in the runs and
    /// islands which it covers), and the distance between two of its supports: at most {24"}
    /// for 2 cm, {36"} for 3 cm.
    ///
    /// ## Why it matters
    /// A hand that leans on the edge over a machine finds out what is not below.
    ///
    /// ## Remedy
    /// Have the fabricator set a bar, a rail or a panel there, or take thicker stone.
    ///
    /// ## Example
    /// ```yaml
    /// thickness: 20 mm
    /// top: {material: stone, free span: 26"}     # 24" at most
    /// ```
    ///
    /// ## Source
    /// MIA/NSI Dimension Stone Design Manual, chapter 17, as fabricators quote it.
    "top/span", Query,
    due: CabinetsOrdered, tells: [Installer],
    judges: [Counter],
    sources: ["MIA/NSI Dimension Stone Design Manual, chapter 17"],
    caution: Some(Hazard::Stone),
    Check::Book(check)
}

/// A gap below a counter.
struct Gap {
    /// What it is, before its width.
    what: Phrase,
    wide: Length,
    at: Span,
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for counter in counters(context).filter(|counter| counter.is_brittle() == Some(true)) {
        let Some(most) = counter.ruling(context, &STONE_SPAN_2, &STONE_SPAN_3) else { continue };
        let widest = gaps(context, &counter).into_iter().filter(|gap| gap.wide > most.value);
        let Some(gap) = widest.max_by_key(|gap| gap.wide) else { continue };
        let say = |length| say(length, context.book.project.units);
        let message = phrase!(
            "`{}` spans {} {}, {} more than the {} that stone of its thickness bears",
            counter.name(),
            say(gap.wide),
            gap.what,
            say(gap.wide - most.value),
            say(most.value)
        );
        let finding = counter.finding(most.severity, gap.at, message).source(most.source);
        findings.push(finding.remedy("have the fabricator set a bar, a rail or a panel there, or take thicker stone"));
    }
}

fn gaps(context: &Context<'_>, counter: &Counter<'_>) -> Vec<Gap> {
    let top = counter.top();
    let apart = top.and_then(|top| top.supports.get()).and_then(|supports| supports.apart.spanned());
    let apart = apart.map(|apart| Gap { what: "between its supports".into(), wide: apart.value, at: apart.span });
    let below = match top.and_then(|top| top.free_span.spanned()) {
        Some(span) => vec![Gap { what: "with nothing below".into(), wide: span.value, at: span.span }],
        None => planned(context, counter).unwrap_or_else(|| measured(counter)),
    };
    below.into_iter().chain(apart).collect()
}

/// What stands without a cabinet in the rows that a counter covers; neighbours make one gap.
fn planned(context: &Context<'_>, counter: &Counter<'_>) -> Option<Vec<Gap>> {
    let plan = context.site.plan(counter.room)?;
    let rows: Vec<_> = plan.rows.iter().filter(|row| row.counter.is_some() && counter.covers(row.of.name())).collect();
    (!rows.is_empty()).then(|| rows.into_iter().flat_map(|row| in_row(plan, row)).collect())
}

fn in_row(plan: &Plan<'_>, row: &Row<'_>) -> Vec<Gap> {
    let mut gaps: Vec<(Gap, Length)> = Vec::new();
    for thing in row.things.iter().filter_map(|number| plan.things.get(*number)) {
        let machine = thing.opening.is_some_and(stands_in_no_cabinet);
        if thing.within.is_some() || !machine || !row.carries(thing) {
            continue;
        }
        match gaps.last_mut().filter(|(_, end)| *end == thing.along.0) {
            Some((gap, end)) => {
                gap.wide = gap.wide + thing.width();
                gap.what = phrase!("{} and `{}`", gap.what, thing.name);
                *end = thing.along.1;
            }
            None => {
                let gap = Gap { what: phrase!("over `{}`", thing.name), wide: thing.width(), at: thing.span };
                gaps.push((gap, thing.along.1));
            }
        }
    }
    gaps.into_iter().map(|(gap, _)| gap).collect()
}

/// The room's openings for such machines, where no plan says which counter lies over them.
fn measured(counter: &Counter<'_>) -> Vec<Gap> {
    let openings =
        counter.room.openings.iter().filter(|opening| is_alone(counter.room) && stands_in_no_cabinet(opening));
    let gaps = openings.filter_map(|opening| {
        let what = phrase!("over `{}`", opening.name.value);
        Some(Gap { what, wide: opening.governing_width()?, at: opening.span })
    });
    gaps.collect()
}

fn stands_in_no_cabinet(opening: &Opening) -> bool {
    opening.takes_one(Trait::InNoCabinet)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn counter(thickness: &str, top: &str) -> Trial {
        Trial::of("top/span").selection(
            "selection: Counter\nkind: counter",
            &format!("thickness: {thickness}\ntop: {{material: stone, {top}}}"),
        )
    }

    /// Source: check values ST-03: 2 cm over a dishwasher's 24" passes, 26" does not; 3 cm spans 36".
    #[test]
    fn a_span_is_held_against_the_thickness() {
        counter("20 mm", "free span: 24\"").stays_silent();
        counter("20 mm", "free span: 26\"")
            .finds("`Counter` spans 26\" (660 mm) with nothing below, 2\" (51 mm) more than the 24\" (610 mm) that stone of its thickness bears")
            .weighs("query")
            .cautions();
        counter("30 mm", "free span: 36\"").stays_silent();
        counter("30 mm", "free span: 36 1/16\"").finds_one();
    }

    /// Source: check values ST-03, as openings and as the plan of a run has them.
    #[test]
    fn what_stands_below_is_a_span() {
        let over = |width: &str, thickness: &str| {
            counter(thickness, "").opening("dishwasher", &format!("{{takes: dishwasher, width: {width}}}"))
        };
        over("24\"", "20 mm").stays_silent();
        over("26\"", "20 mm").finds_one();
        over("26\"", "30 mm").stays_silent();
        let run = |parts: &str, lies_on: &str| {
            counter("20 mm", lies_on)
                .room(&format!("outline: 12' x 10'\nruns: {{window side: {{wall: A, counter: {{depth: 25\", height: 36\"}}, parts: [{parts}]}}}}"))
                .opening("dishwasher", "{takes: dishwasher, width: 24\", height: 34 1/2\"}")
                .opening("washer", "{takes: washer, width: 24\", height: 34 1/2\"}")
        };
        run("{cabinet: sink base, width: 36\"}, {opening: dishwasher}, {cabinet: glasses, width: 24\"}", "")
            .stays_silent();
        run("{cabinet: sink base, width: 36\"}, {opening: dishwasher}, {opening: washer}, {cabinet: glasses, width: 24\"}", "")
            .finds("`Counter` spans 48\" (1219 mm) over `dishwasher` and `washer`, 24\" (610 mm) more than the 24\" (610 mm) that stone of its thickness bears");
        run("{opening: dishwasher}, {opening: washer}", "lies on: [window side]").finds_one();
    }

    /// Source: check values ST-03; trade practice says the same of brackets: 24" apart for 2 cm, 36" for 3 cm.
    #[test]
    fn supports_stand_no_farther_apart() {
        let apart = |apart: &str, thickness| counter(thickness, &format!("supports: {{by: brackets, apart: {apart}}}"));
        apart("36\"", "30 mm").stays_silent();
        apart("40\"", "30 mm").finds_one();
        apart("30\"", "20 mm").finds_one();
    }

    #[test]
    fn wood_spans_as_it_likes() {
        Trial::of("top/span")
            .selection("selection: Counter\nkind: counter", "thickness: 3/4\"\ntop: {material: wood, free span: 40\"}")
            .stays_silent();
    }
}
