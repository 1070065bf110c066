//! What must stand before a counter is templated.

use super::{Counter, counters};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, HoldPoints, Prerequisite, Reason, RunsOut};
use crate::book::{DetailName, ProductOption, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::taps;
use crate::source::Span;
use crate::units::Date;
use crate::vocabulary::supply::Worded;
use crate::vocabulary::{Hazard, HoldPoint, Kind, Mention, Mount};

declare! {
    /// A counter is templated before what it is cut for, or stands on, is there
    ///
    /// ## What it checks
    /// For each counter that sink, basin, tap or cooktop are let into, on the day of the hold point
    /// `counter templated`: cabinets are set; each of those things is on site (by its promise, its order
    /// and lead time, or its `needed for`), or its cutout is known: a tap's holes are on the list
    /// (`drilled`), a cooktop or a sink without an apron has its maker's sheet. An apron sink must be
    /// fixed before, and what is made by hand (`varies by`) must be there. Within four weeks of that day, each must be chosen too, unless `order/before`
    /// asks for it already.
    ///
    /// ## Why it matters
    /// The one who templates measures what is there, once. What is not there is guessed, or costs a
    /// second visit and two weeks.
    ///
    /// ## Remedy
    /// Bring the thing forward, sign a list of its holes, or move the template. On the day: cabinets
    /// fixed and level, an apron sink set, the old counter off, sink, taps and cooktop on site.
    ///
    /// ## Example
    /// ```yaml
    /// selection: Kitchen tap
    /// needed for: fit-off     # weeks after the counter was templated
    /// ```
    ///
    /// ## Source
    /// Fabricators' terms: common practice.
    "top/template-ready", Query,
    due: CounterTemplated, tells: [Installer],
    judges: [Counter, Sink, Tap, Cooktop, Range, Cabinet],
    sources: ["common practice"],
    caution: Some(Hazard::Stone),
    Check::Book(check)
}

/// From how many days before the template what is not chosen is told: four weeks (common practice).
const NEAR: i64 = 28;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let points = HoldPoints::of(context.book, context.dates);
    let Some(day) = points.day(HoldPoint::CounterTemplated) else { return };
    for counter in counters(context) {
        // What a counter is cut for is one thing for all of its options.
        let is_first = counter.selection.standing().first().is_some_and(|first| std::ptr::eq(first, counter.option));
        if is_first {
            findings.extend(judge(context, &counter, day));
        }
    }
}

fn judge(context: &Context<'_>, counter: &Counter<'_>, day: Date) -> Option<Remark> {
    let grounds = context.depends.grounds(counter.selection).iter();
    let cut_for: Vec<_> = grounds.filter(|ground| ground.because == Reason::CutFor).collect();
    if cut_for.is_empty() {
        return None;
    }
    let things = cut_for.iter().filter_map(|ground| lack(context, counter, ground, day));
    let cabinets = cabinets(counter).filter_map(|cabinet| {
        let set = context.dates.needed(cabinet).filter(|set| *set > day)?;
        Some((cabinet.span, phrase!("`{}` is set only on {set}", cabinet.name.value, set)))
    });
    let lacks: Vec<(Span, Phrase)> = things.chain(cabinets).collect();
    let (first, _) = lacks.first()?;
    let told = lacks.iter().map(|(_, told)| told);
    let message = phrase!("`{}` is templated on {day}, and {}", counter.name(), day, Phrase::joined(told, "; "));
    let finding = Remark::query(counter.selection.span, message);
    let finding = finding.room(&counter.room.folder).selection(&counter.selection.name).source("common practice");
    let finding = finding.also(*first, "is not ready by then");
    Some(finding.remedy("bring it forward, sign a list of its holes and cutouts, or move the template"))
}

/// Runs of cabinets in the counter's room.
fn cabinets<'a>(counter: &Counter<'a>) -> impl Iterator<Item = &'a Selection> {
    counter.room.selections.iter().filter(|selection| selection.place.is_absent() && selection.is(Kind::Cabinet))
}

/// What a thing that the counter is cut for lacks on the day.
fn lack(context: &Context<'_>, counter: &Counter<'_>, ground: &Prerequisite<'_>, day: Date) -> Option<(Span, Phrase)> {
    let thing = ground.selection;
    let name = &thing.name.value;
    let Some(option) = thing.settled() else {
        let near = context.today.days_until(day) <= NEAR && !is_asked_by_the_order(context, counter);
        return near.then(|| (thing.span, phrase!("`{name}` is not chosen", name)));
    };
    if is_cutout_known(counter, ground, option) {
        return None;
    }
    let promised = option.order.promised_for.get().copied();
    if let Some(comes) = promised.or_else(|| context.dates.comes(option)) {
        return (comes > day).then(|| (thing.span, phrase!("`{name}` comes only on {comes}", name, comes)));
    }
    let needed = context.dates.needed(thing).filter(|needed| *needed > day)?;
    Some((thing.span, phrase!("`{name}` is planned to be there only on {needed}", name, needed)))
}

/// Whether `order/before` already says what is not chosen.
fn is_asked_by_the_order(context: &Context<'_>, counter: &Counter<'_>) -> bool {
    let Some(option) = counter.selection.settled() else { return false };
    option.order.placed_on.get().is_some() || context.dates.order_runs_out(counter.selection) == RunsOut::Soon
}

fn is_cutout_known(counter: &Counter<'_>, ground: &Prerequisite<'_>, option: &ProductOption) -> bool {
    if ground.selection.is(Kind::Tap) {
        return are_holes_listed(counter, ground.selection, option);
    }
    let apron = option.fact::<Worded<Option<Mount>>>().is_some_and(|(mount, _)| Mention::Apron.is_in(&mount.words));
    let sheet = option.fit.get().is_some_and(|fit| fit.sheet.get().is_some());
    // What is made by hand is cut for when it is there.
    sheet && !apron && option.lacks(DetailName::VariesBy)
}

/// Whether as many holes as a tap takes are on the list of the counter or of a sink.
fn are_holes_listed(counter: &Counter<'_>, tap: &Selection, option: &ProductOption) -> bool {
    let chosen = counter.room.selections.iter().filter_map(Selection::settled);
    let listed: Vec<_> = chosen.flat_map(|option| &option.drilled).collect();
    let takes = taps::holes(option).map_or(1, |(holes, _)| holes);
    taps::stands_free(tap, option) || taps::drilled_for(counter.room, &listed, tap).len() >= takes
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    const MILESTONES: &str =
        "milestones: {cabinets set: 2027-03-01, counter template: 2027-03-02, fit-off: 2027-04-20}";

    fn kitchen(tap: &str, counter: &str) -> Trial {
        Trial::of("top/template-ready")
            .book(MILESTONES)
            .selection("selection: Counter\nkind: counter", counter)
            .selection("selection: Kitchen tap\nkind: tap", &format!("holes: 1\n{tap}"))
    }

    /// Source: trade reports F-64: what is not on site at the template, and has no list of holes, is guessed.
    #[test]
    fn what_comes_after_the_template_is_told() {
        kitchen("needed for: fit-off", "")
            .finds("`Counter` is templated on 2 Mar 2027, and `Kitchen tap` is planned to be there only on 20 Apr 2027")
            .weighs("query")
            .cautions();
        kitchen("needed for: counter template", "").stays_silent();
        kitchen("needed for: fit-off", "drilled: [{for: kitchen tap, diameter: 1 3/8\"}]").stays_silent();
        kitchen("needed for: fit-off", "drilled: [{for: mixer, diameter: 1 3/8\"}]").stays_silent();
        kitchen("needed for: fit-off", "drilled: [{for: faucet, diameter: 1 3/8\"}]").stays_silent();
        kitchen("needed for: fit-off", "drilled: [{for: soap, diameter: 1 1/4\"}]").finds_one();
        kitchen("needed for: counter template\norder: {placed on: 2027-01-10, promised for: 2027-03-09}", "")
            .finds("`Counter` is templated on 2 Mar 2027, and `Kitchen tap` comes only on 9 Mar 2027");
    }

    /// Source: trade reports F-64: cabinets set, an apron sink fixed; another sink's sheet serves.
    #[test]
    fn cabinets_are_set_and_an_apron_sink_is_fixed() {
        let with = |kind: &str, lines: &str| kitchen("", "").selection(&format!("selection: It\nkind: {kind}"), lines);
        with("cabinet", "needed for: 2027-03-03").finds_one();
        with("cabinet", "needed for: cabinets set").stays_silent();
        let sink =
            |mount: &str| format!("needed for: fit-off\nmount: {mount}\nfit: {{sheet: {{name: S, revision: B}}}}");
        with("sink", &sink("apron front")).finds_one();
        with("sink", &sink("undermount")).stays_silent();
        with("sink", &format!("{}\nvaries by: 1/4\"", sink("undermount"))).finds_one();
    }

    #[test]
    fn near_the_day_what_is_not_chosen_is_told_once_and_past_it_the_work_stops() {
        let open = |counter: &str| kitchen("options: [{id: a}, {id: b}]", counter);
        open("").stays_silent();
        open("")
            .today("2027-02-10")
            .finds("`Counter` is templated on 2 Mar 2027, and `Kitchen tap` is not chosen")
            .weighs("query");
        open("").today("2027-03-03").finds_one().weighs("stop");
        open("order: {placed on: 2027-02-01}").today("2027-02-10").stays_silent();
    }
}
