//! How far a counter stands out past what carries it.

use super::{Counter, counters};
use crate::assess::codes::{OVERHANG_WITHOUT_POSTS, OVERHANG_WITHOUT_STEEL, STONE_OVERHANG_2, STONE_OVERHANG_3};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{Island, IslandSide, Support, Supports};
use crate::finding::{Hazard, Phrase, Remark, Severity, phrase};
use crate::site::distances::seats;
use crate::source::Span;
use crate::units::Length;

declare! {
    /// A counter stands out farther than it bears, and nothing carries it
    ///
    /// ## What it checks
    /// Each counter's `overhang`, else those of the islands and the places to sit that it covers (for
    /// seats with no depth written, what they need: {15"} at a counter of {36"}), against:
    ///
    /// | what | figure | from |
    /// | --- | --- | --- |
    /// | stone, quartz, porcelain or concrete of 2 cm, from {3/4"} | {6"} | the stone manual |
    /// | of 3 cm, from {1 1/8"} | {10"} | the stone manual |
    /// | both | one third of the top's depth | the stone manual |
    /// | what stands out past the supports | the same | |
    /// | bars and brackets | reach back at least as far as out | common practice |
    /// | any counter without steel, legs or panels | {14"} | common practice |
    /// | any counter without legs or panels | {24"} | common practice |
    ///
    /// A seating overhang of {12"} is usual, and its bars then reach about {24"} inside. Fabricators differ
    /// for quartz; the manual's figure is told first. Where a counter stands out farther than {6"} and
    /// nobody says what it is made of or what carries it, it asks.
    ///
    /// ## Why it matters
    /// Stone gives no warning. Somebody leans, or sits on it, and two hundred pounds come down on knees
    /// and feet.
    ///
    /// ## Remedy
    /// Have the fabricator name the supports, order them, and let them into the cabinets before the
    /// template.
    ///
    /// ## Example
    /// ```yaml
    /// thickness: 30 mm
    /// top: {material: stone, depth: 42", overhang: 15"}     # 5" too much, and no supports
    /// ```
    ///
    /// ## Source
    /// MIA/NSI Dimension Stone Design Manual, chapter 17, as fabricators quote it; the rest is common
    /// practice.
    "top/overhang", Query,
    due: CabinetsOrdered, tells: [Client, Installer],
    living: "living.top.overhang",
    judges: [Counter],
    sources: ["MIA/NSI Dimension Stone Design Manual, chapter 17", "common practice"],
    caution: Some(Hazard::Overhang),
    Check::Book(check)
}

const NAME_THEM: &str = "have the fabricator name its supports (steel bars that reach at least as far inside as out, about 24\" for 12\"), and let them in before the template";
const SAY_IT: &str = "write what it is made of and what carries it under `top`, by the fabricator's word";
/// A front edge over doors stands out so far; what is thinner than 2 cm bears no more of itself
/// (common practice).
const FRONT_EDGE: Length = Length::from_sixty_fourths(96);

/// Where a counter stands out.
struct Overhang<'a> {
    /// The island or place to sit; none for what the counter says itself.
    place: Option<&'a str>,
    out: Length,
    /// Its depth there, from this edge to the one across.
    across: Option<Length>,
    at: Span,
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for counter in counters(context) {
        let overhangs = overhangs(context, &counter);
        // The farthest is told: what carries that one carries the others.
        let faults = overhangs.iter().filter_map(|overhang| Some((overhang.out, judge(context, &counter, overhang)?)));
        findings.extend(faults.max_by_key(|(out, _)| *out).map(|(_, finding)| finding));
    }
}

fn overhangs<'a>(context: &Context<'a>, counter: &Counter<'a>) -> Vec<Overhang<'a>> {
    let depth = counter.top().and_then(|top| top.depth.get().copied());
    if let Some(out) = counter.top().and_then(|top| top.overhang.spanned()) {
        return vec![Overhang { place: None, out: out.value, across: depth, at: out.span }];
    }
    let islands = counter.room.islands.iter().filter(|island| counter.covers(&island.name));
    let sides = islands.flat_map(|island| {
        IslandSide::ALL.into_iter().filter_map(move |side| {
            let out = island.side(side).overhang.spanned()?;
            let across = across(island, side).or(depth);
            Some(Overhang { place: Some(&island.name.value), out: out.value, across, at: out.span })
        })
    });
    let sides: Vec<_> = sides.collect();
    let seated = seats(context.site, counter.room).into_iter().filter(|seats| counter.covers(seats.name));
    let seated = seated.filter(|seats| sides.iter().all(|side| side.place != Some(seats.name)));
    let seated = seated.filter_map(|seats| {
        let height = seats.height?;
        // At a table one sits with legs of its own.
        let is_counter = height.value >= Length::from_inches(33);
        let needed = || Some((super::knee_depth(context, height.value)?.value, height.at));
        let (out, at) = seats.knees.map(|knees| (knees.value, knees.at)).or_else(needed).filter(|_| is_counter)?;
        Some(Overhang { place: Some(seats.name), out, across: depth, at })
    });
    let seated: Vec<_> = seated.collect();
    sides.into_iter().chain(seated).collect()
}

/// How deep an island's counter is, seen from one of its sides.
fn across(island: &Island, side: IslandSide) -> Option<Length> {
    let (along, away) = *island.size.get()?;
    let turned = island.turned.get() == Some(&true);
    let (along, away) = if turned { (away, along) } else { (along, away) };
    Some(if matches!(side, IslandSide::Wall | IslandSide::Room) { away } else { along })
}

fn judge(context: &Context<'_>, counter: &Counter<'_>, overhang: &Overhang<'_>) -> Option<Remark> {
    // What carries it is said in words that can't be read: that is told as what it is.
    if counter.top().is_some_and(|top| top.supports.is_faulty()) {
        return None;
    }
    let supports = counter.top().and_then(|top| top.supports.get());
    if supports.is_some_and(|supports| matches!(supports.by.value, Support::Legs | Support::Panels)) {
        return None;
    }
    match counter.is_brittle() {
        Some(true) => stone(context, counter, overhang, supports),
        Some(false) => None,
        None => unsaid(context, counter, overhang, supports),
    }
    .or_else(|| any_counter(context, counter, overhang, supports))
    .or_else(|| reach(context, counter, supports))
}

/// Stone: what stands out past its supports, or past the cabinets where it has none.
fn stone(
    context: &Context<'_>,
    counter: &Counter<'_>,
    overhang: &Overhang<'_>,
    supports: Option<&Supports>,
) -> Option<Remark> {
    // Supports of which nobody says how far they reach carry it all, until somebody does.
    let carried = supports.map(|supports| supports.out.get().copied().unwrap_or(overhang.out));
    let out = overhang.out - carried.unwrap_or(Length::ZERO);
    let thickness = counter.thickness()?;
    let ruling = counter.ruling(context, &STONE_OVERHANG_2, &STONE_OVERHANG_3);
    let (bears, source, severity) = ruling.map_or_else(
        || (FRONT_EDGE, "common practice; the manual has no figure for stone so thin".to_string(), Severity::Query),
        |ruling| (ruling.value, ruling.source, ruling.severity),
    );
    // A third of the depth, compared whole.
    let third = overhang.across.filter(|across| out.times(3) > *across && across.nanometres() / 3 < bears.nanometres());
    let least = third.map_or(bears, |across| Length::from_nanometres(across.nanometres() / 3));
    if out <= least {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let why = match third {
        Some(across) => phrase!("a third of its depth of {}", say(across)),
        None => phrase!("stone of {} bears by itself", say(thickness)),
    };
    let past = if carried.is_some() { "its supports" } else { "what carries it" };
    let message = phrase!(
        "`{}` stands out {} past {past}{}, {} more than {why}",
        counter.name(),
        say(out),
        past,
        at_place(overhang),
        say(out - least),
        why
    );
    Some(counter.finding(severity, overhang.at, message).source(source).remedy(NAME_THEM))
}

/// A counter of which nobody says what it is made of.
fn unsaid(
    context: &Context<'_>,
    counter: &Counter<'_>,
    overhang: &Overhang<'_>,
    supports: Option<&Supports>,
) -> Option<Remark> {
    let least = context.rulings().length(&STONE_OVERHANG_2)?;
    if supports.is_some() || overhang.out <= least.value {
        return None;
    }
    let out = say(overhang.out, context.book.project.units);
    let message = phrase!(
        "`{}` stands out {out}{}, and nobody says what it is made of and what carries it",
        counter.name(),
        out,
        at_place(overhang)
    );
    Some(counter.finding(Severity::Query, overhang.at, message).source(least.source).remedy(SAY_IT))
}

/// Of whatever it is made: not past 14" without steel, nor past 24" without legs or panels.
fn any_counter(
    context: &Context<'_>,
    counter: &Counter<'_>,
    overhang: &Overhang<'_>,
    supports: Option<&Supports>,
) -> Option<Remark> {
    let steel = supports.is_some_and(|supports| supports.by.value == Support::SteelBars);
    let (figure, wants) = match steel {
        true => (&OVERHANG_WITHOUT_POSTS, "legs or panels below it"),
        false => (&OVERHANG_WITHOUT_STEEL, "steel, legs or panels below it"),
    };
    let most = context.rulings().length(figure)?;
    if overhang.out <= most.value {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` stands out {}{}, {} more than is usual without {wants}",
        counter.name(),
        say(overhang.out),
        at_place(overhang),
        say(overhang.out - most.value),
        wants
    );
    Some(counter.finding(most.severity, overhang.at, message).source(most.source).remedy(NAME_THEM))
}

/// Bars and brackets that reach out farther than back.
fn reach(context: &Context<'_>, counter: &Counter<'_>, supports: Option<&Supports>) -> Option<Remark> {
    let supports = supports?;
    let (out, inward) = (*supports.out.get()?, supports.inward.spanned()?);
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the {} of `{}` reach {} out and only {} back over the cabinets",
        supports.by.value,
        counter.name(),
        say(out),
        say(inward.value)
    );
    (inward.value < out).then(|| {
        let finding = counter.finding(Severity::Query, inward.span, message);
        finding.source("common practice").remedy(NAME_THEM)
    })
}

fn at_place(overhang: &Overhang<'_>) -> Phrase {
    overhang.place.map_or_else(Phrase::default, |place| phrase!(" at `{place}`", place))
}

#[cfg(test)]
mod tests;
