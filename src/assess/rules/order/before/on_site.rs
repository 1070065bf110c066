//! What is made to a measure that is taken on site, and is needed, ordered or promised before it can be taken.

use crate::assess::{Context, HoldPoints, Reason};
use crate::book::{Opening, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::source::Span;
use crate::units::Date;
use crate::vocabulary::{HoldPoint, Kind};

/// When it is measured, and what that waits for.
struct Measured {
    on: Date,
    when: Phrase,
}

/// What comes before the measure that it is made to: told once, by what is surest.
pub(super) fn judge(context: &Context<'_>, points: &HoldPoints, room: &Room, selection: &Selection) -> Option<Remark> {
    let Measured { on, when } = measured(context, points, selection)?;
    let (begins, at) = too_soon(context, room, selection, on)?;
    let message =
        phrase!("`{}` {begins}, and is measured only {when}, on {on}", selection.name.value, begins, when, on);
    let finding = Remark::query(at, message).room(&room.folder).selection(&selection.name).source("common practice");
    Some(finding.remedy(REMEDY))
}

const REMEDY: &str = "move what waits for it, or what it is measured on; or have it made to a measure that is sure \
    before, and say how it is taken";

fn measured(context: &Context<'_>, points: &HoldPoints, selection: &Selection) -> Option<Measured> {
    let grounds = || context.depends.grounds(selection).iter();
    if selection.is(Kind::ShowerGlass) {
        let tiles = grounds().filter(|ground| ground.because == Reason::MeasuredOn);
        let set = tiles.filter_map(|ground| Some((context.dates.needed(ground.selection)?, ground.selection)));
        let (on, tile) = set.max_by_key(|(on, _)| *on)?;
        return Some(Measured { on, when: phrase!("when `{}` is set", tile.name.value) });
    }
    // A top that is cut for what is let into it, or lies on what is there.
    let lies = |option: &ProductOption| option.top.get().is_some_and(|top| !top.lies_on.is_empty());
    let is_cut = grounds().any(|ground| ground.because == Reason::CutFor) || selection.standing().iter().any(lies);
    let of_stone = |option: &ProductOption| {
        option.top.get().and_then(|top| top.material.get()).is_none_or(|material| material.is_stony())
    };
    if !selection.is(Kind::Counter) || !is_cut || !selection.standing().iter().any(of_stone) {
        return None;
    }
    let on = points.written_day(HoldPoint::CounterTemplated)?;
    Some(Measured { on, when: Phrase::from("at the template") })
}

/// What is done before that day, and where that is written.
fn too_soon(context: &Context<'_>, room: &Room, selection: &Selection, day: Date) -> Option<(Phrase, Span)> {
    let is_glass = selection.is(Kind::ShowerGlass);
    let needed = context.dates.needed(selection);
    if let Some(needed) = needed.filter(|needed| *needed < day) {
        return Some((phrase!("is needed on {needed}", needed), selection.needed_for.span()?));
    }
    // Made from the studs and what comes on them, or in widths that can be set, it need not wait.
    let opening = selection.place.get().and_then(|place| room.opening(place));
    let otherwise = |opening: &Opening| !opening.measured_between.is_absent() || opening.wall_build_up.get().is_some();
    let option = selection.settled()?;
    let is_ready_made = option.fit.get().is_some_and(|fit| fit.opening.width.get().is_some());
    if is_glass && (is_ready_made || opening.is_some_and(otherwise)) {
        return None;
    }
    let order = &option.order;
    // Slabs are ordered before they are cut.
    if let Some(placed) = order.placed_on.spanned().filter(|placed| is_glass && placed.value < day) {
        return Some((phrase!("was ordered on {}", placed.value), placed.span));
    }
    if let Some(promised) = order.promised_for.spanned().filter(|promised| promised.value < day) {
        return Some((phrase!("is promised for {}", promised.value), promised.span));
    }
    None
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn glass(lines: &str, opening: &str) -> Trial {
        Trial::of("order/before")
            .book("milestones: {tile set: 2027-05-20, fit-off: 2027-06-25}")
            .opening("front", &format!("{{takes: shower glass, width: 30\"{opening}}}"))
            .selection("selection: Wall tile\nkind: tile\nneeded for: tile set", "fit: {sheet: {revision: A}}")
            .selection(&format!("selection: Glass\nkind: shower glass\nplace: front\n{lines}"), "")
    }

    /// Source: trade reports F-89: glass is made to the tile that it stands on.
    #[test]
    fn glass_comes_after_the_tile_that_it_is_measured_on() {
        glass("needed for: 2027-05-03\nlead time: 1 week", "")
            .finds("`Glass` is needed on 3 May 2027, and is measured only when `Wall tile` is set, on 20 May 2027")
            .weighs("query");
        glass("needed for: fit-off\nlead time: 2 weeks", "").stays_silent();
        let placed = "needed for: fit-off\nlead time: 2 weeks\norder: {placed on: 2027-01-12}";
        glass(placed, "").finds_one().says("was ordered on 12 Jan 2027");
        glass(placed, ", measured between: finished walls").stays_silent();
        glass(&format!("{placed}\nfit: {{opening: {{width: 29 1/2\" to 30 1/2\"}}}}"), "").stays_silent();
        let promised = "needed for: fit-off\nlead time: 2 weeks\norder: {promised for: 2027-04-20}";
        glass(promised, "").finds_one().says("is promised for 20 Apr 2027");
    }

    /// Source: common practice: stone is cut from a template of what is set.
    #[test]
    fn stone_comes_after_its_template() {
        let top = |set: &str, lines: &str| {
            Trial::of("order/before")
                .book(&format!("milestones: {{counter template: 2027-05-03, counters set: {set}}}"))
                .selection("selection: Sink\nkind: sink", "fit: {sheet: {revision: A}}")
                .selection(&format!("selection: Top\nkind: counter\nneeded for: counters set\n{lines}"), "")
        };
        top("2027-05-24", "lead time: 2-3 weeks").stays_silent();
        top("2027-05-24", "lead time: 2 weeks\norder: {promised for: 2027-03-01}").finds_one();
        top("2027-05-24", "lead time: 2 weeks\norder: {placed on: 2027-01-11}").stays_silent();
        top("2027-04-20", "lead time: 1 week")
            .finds("`Top` is needed on 20 Apr 2027, and is measured only at the template, on 3 May 2027")
            .weighs("query");
        top("2027-04-20", "lead time: 1 week\ntop: {material: laminate}").stays_silent();
    }
}
