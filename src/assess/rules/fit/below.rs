//! What is under a cooktop or a sink.

mod hung;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about, say};
use crate::book::{DetailName, Opening, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::counters::thickness_at;
use crate::site::fitting::{Housing, held_below};
use crate::site::outlets::height_of_the_drain;
use crate::site::rims::top_over;
use crate::site::vanity::vanity_of;
use crate::site::{Placement, counter_height};
use crate::source::Span;
use crate::units::{Length, Wrote, with_article};
use crate::vocabulary::{Hazard, Kind, Mount, Trait};

declare! {
    /// What stands below a cooktop or a sink leaves too little room, or may not stand there
    ///
    /// ## What it checks
    /// How far the thing reaches below the counter by its sheet (`fit: {below: …}`), or, where the sheet is
    /// silent, a cooktop's own height, against what is clear there: as the opening says, else by the sill and height of what the same cabinet holds below it, from the top of the counter; what the sheet forbids to stand below it (`not over`): as the opening says, and what else the
    /// cabinet of a run or island that holds it has: drawers, an oven; and for a sink whether water still
    /// falls: top of the counter, less its thickness where the bowl hangs under it, less the bowl, must not come out
    /// lower than the drain in the wall; with a disposer it is the outlet at the disposer's side that counts, and where
    /// nobody says how far below the bowl that is (`outlet below bowl`), it is asked for; a sink without one wants {2"} above
    /// the drain for strainer and trap, as is usual. A basin that hangs or stands free
    /// is held to its rim, less its bowl or its own height; where neither is known, less {4"}.
    ///
    /// ## Why it matters
    /// A drawer that hits a cooktop is a drawer front glued shut. A deep bowl over a high drain means an
    /// open wall.
    ///
    /// ## Remedy
    /// Choose what is shallower, move what stands below, or have the drain lowered before the wall closes.
    ///
    /// ## Example
    /// ```yaml
    /// below: {what: drawer, clear: 5"}       # the cooktop reaches 6 1/4" down
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement; a cooktop's own height is common practice.
    "fit/below", Stop,
    due: CounterTemplated, tells: [Installer],
    judges: [Sink, Basin, Cooktop, Disposer, Counter, Range],
    sources: ["the maker's sheet", "the field measurement", "common practice"],
    caution: Some(Hazard::Heat),
    remedy: "choose what is shallower, or move what stands below",
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let below = forbidden(context, &fitted).or_else(|| too_deep(context, &fitted));
        findings.extend(below.or_else(|| only_air(context, &fitted)));
        findings.extend(no_fall(context, &fitted).or_else(|| hung::no_fall(context, &fitted)));
    }
    findings.extend(context.site.options().filter_map(|one| behind_a_vanity(context, one)));
    findings.extend(context.site.options().filter_map(|one| hung::on_a_vanity(context, one)));
}

fn forbidden(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let fit = fitted.option.fit.get()?;
    let below = what_is_below(context, fitted);
    // `drawers` are a `drawer` each.
    let one = |not: &str| not.to_lowercase().trim_end_matches('s').to_string();
    let names = |(what, _): &(String, Span), not: &str| what.to_lowercase().contains(&one(not));
    let met = |below: &(String, Span)| fit.not_over.iter().find(|not| names(below, &not.value)).map(|not| not.span);
    let ((what, at), named) = below.iter().find_map(|below| Some((below, met(below)?)))?;
    let over = with_article(Wrote(&what.to_lowercase()));
    let message = phrase!("`{}` may not stand over {over}, by its sheet", fitted.selection.name.value, over);
    let finding = fitted.finding(Severity::Stop, *at, message).also(named, "the sheet's word");
    Some(finding)
}

/// What stands below it: as the opening says, and what else the cabinet that holds it has.
fn what_is_below(context: &Context<'_>, fitted: &Placement<'_>) -> Vec<(String, Span)> {
    let said = fitted.opening.below.get().map(|below| (below.what.value.clone(), below.what.span));
    let housing = Housing::of(fitted.room, fitted.opening, context.book.project.units);
    let from_above = fitted.selection.has(Trait::CutIntoCounter);
    let Some(housing) = housing.filter(|_| from_above) else { return said.into_iter().collect() };
    let drawers = housing.drawers().map(|at| ("drawer".to_string(), at));
    let others = housing.others(fitted.opening).filter_map(|other| {
        let kind = fitted.room.opening(&other.value)?.takes.get().filter(|kind| !kind.is(Trait::CutIntoCounter))?;
        let chosen = fitted.room.selections.iter().filter(|one| one.place.get() == Some(&other.value));
        // By its kind, by the opening's own name, and by that of what is chosen for it.
        let names = [kind.name().to_string(), other.value.clone()].into_iter();
        Some(names.chain(chosen.map(|one| one.name.value.clone())).map(|name| (name, other.span)).collect::<Vec<_>>())
    });
    let others: Vec<_> = others.flatten().collect();
    said.into_iter().chain(drawers).chain(others).collect()
}

/// How much is clear below the counter, and what ends it: as the opening says, else as the cabinet has it.
struct ClearBelow<'a> {
    clear: Length,
    what: &'a str,
    at: Span,
}

fn clear_below<'a>(fitted: &Placement<'a>) -> Option<ClearBelow<'a>> {
    let below = &fitted.opening.below;
    if let Some((below, clear)) = below.get().and_then(|below| Some((below, below.clear.spanned()?))) {
        return Some(ClearBelow { clear: clear.value, what: &below.what.value, at: clear.span });
    }
    if below.is_faulty() || below.get().is_some_and(|below| below.clear.is_faulty()) {
        return None;
    }
    let held = held_below(fitted.room, fitted.opening)?;
    Some(ClearBelow { clear: held.clear, what: held.kind.name(), at: held.at })
}

fn too_deep(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let below = clear_below(fitted)?;
    let fit = fitted.option.fit.get();
    let under = fit.and_then(|fit| fit.air.bottom.get()).filter(|air| air.holds.is_empty()).map(|air| air.length);
    let by_sheet = fit.and_then(|fit| fit.below.get().copied());
    // The air is asked for below the body, which is no higher than itself, and reaches no lower than its sheet says.
    let body = own_height(fitted).into_iter().chain(by_sheet).min();
    let with_air = under.zip(body).map(|(air, body)| air + body);
    let too_deep = by_sheet.filter(|reaches| *reaches > below.clear);
    // Most of a cooktop's own height is below the counter (common practice).
    let bowl = || fitted.option.length(DetailName::BowlDepth).map(|(deep, _)| deep);
    let own = || own_height(fitted).or_else(bowl).filter(|_| by_sheet.is_none());
    let (reaches, severity) = match too_deep {
        Some(reaches) => (reaches, Severity::Stop),
        None => (with_air.or_else(own)?, Severity::Query),
    };
    if reaches <= below.clear {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` reaches {} below the counter, {} into the {}",
        fitted.selection.name.value,
        say(reaches),
        say(reaches - below.clear),
        Wrote(below.what)
    );
    let finding = fitted.finding(severity, below.at, message);
    Some(if too_deep.is_some() { finding } else { finding.source("common practice: its own height") })
}

/// Height of a thing that is cooked on.
fn own_height(fitted: &Placement<'_>) -> Option<Length> {
    let height = fitted.option.size.height.get().filter(|_| fitted.selection.has(Trait::Cooks))?;
    height.least.or(height.most)
}

/// What is let in reaches below the counter with most of its height: less than half of it is air, not the body.
fn only_air(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let reaches = fitted.option.fit.get()?.below.spanned().filter(|_| fitted.selection.has(Trait::CutIntoCounter))?;
    let high = own_height(fitted).filter(|high| reaches.value.times(2) < *high)?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` reaches {} below the counter by its sheet, and is {} high",
        fitted.selection.name.value,
        say(reaches.value),
        say(high)
    );
    let finding = fitted.finding(Severity::Query, reaches.span, message).source("common practice");
    Some(finding.remedy(
        "look at its sheet again: `below` is how far the whole of it reaches below the counter's top, with what air it \
         wants under itself",
    ))
}

/// Whether a sink's outlet, or its disposer's, comes out lower than the drain.
fn no_fall(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let (bowl, at) = fitted.option.length(DetailName::BowlDepth)?;
    let counter = top_over(fitted.room, fitted.opening, fitted.selection, fitted.option)?;
    let (drain, _) = height_of_the_drain(fitted.opening)?;
    let slab = under_the_slab(fitted.room, fitted.opening, fitted.option);
    let bottom = counter - slab.unwrap_or_default() - bowl;
    let disposer = disposer(fitted);
    let (outlet, with) = match &disposer {
        // Its outlet is at its side, above its bottom: how far, its sheet says.
        Some(disposer) => match disposer.outlet {
            Some(below) => (bottom - below, " with its disposer"),
            None if bottom < drain => (bottom, ""),
            None => return outlet_unsaid(context, fitted, disposer, bottom - drain),
        },
        None => (bottom, ""),
    };
    if outlet >= drain
        && slab.is_some()
        && let Some(little) = no_room_for_a_trap(context, fitted, &disposer, outlet - drain)
    {
        return Some(little);
    }
    if outlet >= drain {
        let message = slab_unsaid(context, &fitted.selection.name.value, slab, outlet - drain)?;
        let finding = fitted.finding(Severity::Query, at, message).remedy(SAY_HOW_THICK);
        return Some(Remark { caution: Some(Hazard::Water), ..finding });
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}`{with} comes out {} above the floor, {} below the drain",
        fitted.selection.name.value,
        with,
        say(outlet),
        say(drain - outlet)
    );
    let mut finding = fitted.finding(Severity::Stop, at, message);
    finding.caution = Some(Hazard::Water);
    Some(finding.remedy("choose a shallower bowl, or have the drain lowered before the wall is closed"))
}

/// Strainer and trap go between a sink's bowl and its drain: 2 in at least (common practice).
const STRAINER_AND_TRAP: Length = Length::from_inches(2);

/// A sink comes out above its drain, and with no room for what is between.
fn no_room_for_a_trap(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    disposer: &Option<Disposer<'_>>,
    left: Length,
) -> Option<Remark> {
    let is_asked = fitted.selection.is(Kind::Sink) && disposer.is_none() && left < STRAINER_AND_TRAP;
    let (_, at) = height_of_the_drain(fitted.opening).filter(|_| is_asked)?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` comes out {} above its drain, and strainer and trap want {} there as usual",
        fitted.selection.name.value,
        say(left),
        say(STRAINER_AND_TRAP)
    );
    let finding = fitted.finding(Severity::Query, at, message).source("common practice");
    let finding = finding.remedy("choose a shallower bowl, or have the drain lowered before the wall is closed");
    Some(Remark { caution: Some(Hazard::Water), ..finding })
}

/// A bowl that hangs under its counter hangs lower by the counter's thickness; none where nobody says that.
fn under_the_slab(room: &Room, opening: &Opening, option: &ProductOption) -> Option<Length> {
    match option.mount() {
        Some(Mount::Under) => thickness_at(room, opening),
        _ => Some(Length::ZERO),
    }
}

/// A slab is no thicker, with what it is laid on: 60 mm (common practice).
const THICKEST: Length = Length::from_millimetres(60);

const SAY_HOW_THICK: &str = "write the counter's thickness at the counter, and which run or island it lies on";

/// Nobody says how thick the counter is, and what is left above the drain may go with it.
fn slab_unsaid(context: &Context<'_>, name: &str, slab: Option<Length>, there_is: Length) -> Option<Phrase> {
    let say = |length| say(length, context.book.project.units);
    (slab.is_none() && there_is < THICKEST).then(|| {
        phrase!(
            "nobody says how thick the counter over `{}` is; without it, {} are left above the drain",
            name,
            say(there_is)
        )
    })
}

/// Nobody says how far below the bowl a disposer's outlet is, and it may be lower than the drain.
fn outlet_unsaid(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    disposer: &Disposer<'_>,
    there_is: Length,
) -> Option<Remark> {
    // Its outlet is not lower than its bottom.
    if disposer.option.size.height.get().is_some_and(|high| high.most.or(high.least) <= Some(there_is)) {
        return None;
    }
    let message = phrase!(
        "nobody says how far below `{}` the outlet of `{}` is; above the drain there are {}",
        fitted.selection.name.value,
        disposer.selection.name.value,
        say(there_is, context.book.project.units)
    );
    let (selection, option) = (disposer.selection, disposer.option);
    let mut finding = about(fitted.room, selection, option, Severity::Query, selection.name.span, message);
    finding.caution = Some(Hazard::Water);
    Some(finding.remedy("look at its sheet, and add `outlet below bowl: …` to it"))
}

/// Whether a basin in a vanity comes out lower than the drain behind that.
fn behind_a_vanity(
    context: &Context<'_>,
    (room, selection, option): (&Room, &Selection, &ProductOption),
) -> Option<Remark> {
    let vanity = vanity_of(room, selection)?;
    if !matches!(option.mount(), Some(Mount::Under | Mount::DropIn)) {
        return None;
    }
    let opening = vanity.opening;
    let stands = || {
        let high = vanity.selection.settled()?.size.height.get()?;
        let bottom = opening.sill.get().copied().unwrap_or_default();
        let tops = room.selections.iter().filter(|selection| selection.is(Kind::Counter)).flat_map(Selection::standing);
        let thick = tops.filter_map(|top| Some(top.length(DetailName::Thickness)?.0)).max().unwrap_or_default();
        Some(bottom + high.most.or(high.least)? + thick)
    };
    let top = counter_height(room, opening).value().or_else(stands)?;
    let bowl = option.length(DetailName::BowlDepth).map(|(deep, _)| deep);
    let deep = bowl.or_else(|| option.size.height.get().and_then(|high| high.least.or(high.most)))?;
    let (drain, there_at) = height_of_the_drain(opening)?;
    let slab = under_the_slab(room, opening, option);
    let outlet = top - slab.unwrap_or_default() - deep;
    if outlet >= drain {
        let message = slab_unsaid(context, &selection.name.value, slab, outlet - drain)?;
        let finding = about(room, selection, option, Severity::Query, there_at, message).remedy(SAY_HOW_THICK);
        return Some(Remark { caution: Some(Hazard::Water), ..finding });
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` in `{}` comes out {} above the floor, {} below the drain",
        selection.name.value,
        vanity.selection.name.value,
        say(outlet),
        say(drain - outlet)
    );
    let finding = about(room, selection, option, Severity::Stop, there_at, message);
    let finding = finding.remedy("choose a shallower basin, or have the drain lowered before the wall is closed");
    Some(Remark { caution: Some(Hazard::Water), ..finding })
}

/// A disposer that hangs from a sink.
struct Disposer<'a> {
    selection: &'a Selection,
    option: &'a ProductOption,
    /// How far below the bowl its outlet is.
    outlet: Option<Length>,
}

/// The disposer of a sink: one of the same room that is given no other place; of several the lowest, and first of
/// all one that does not say how low it comes out.
fn disposer<'a>(fitted: &Placement<'a>) -> Option<Disposer<'a>> {
    let is = |selection: &&Selection| {
        let place = selection.place.get();
        selection.is(Kind::Disposer) && place.is_none_or(|place| *place == fitted.opening.name.value)
    };
    let disposers = fitted.room.selections.iter().filter(is);
    let options = disposers.flat_map(|selection| selection.standing().iter().map(move |option| (selection, option)));
    let all = options.map(|(selection, option)| Disposer {
        selection,
        option,
        outlet: option.length(DetailName::OutletBelowBowl).map(|(below, _)| below),
    });
    all.max_by_key(|disposer| (disposer.outlet.is_none(), disposer.outlet))
}

#[cfg(test)]
mod tests;
