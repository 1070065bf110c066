//! What is made to a measure that is taken on site, and is needed, ordered or promised before it can be taken.

use crate::assess::{Context, HoldPoints, Reason};
use crate::book::{NeededFor, Opening, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::source::Span;
use crate::units::Date;
use crate::vocabulary::{HoldPoint, Kind, sets};

/// When it is measured, and what that waits for.
struct Measured {
    on: Date,
    when: Phrase,
}

/// What comes before the measure that it is made to: told once, by what is surest.
pub(super) fn judge(context: &Context<'_>, points: &HoldPoints, room: &Room, selection: &Selection) -> Option<Remark> {
    let Measured { on, when } = measured(context, points, selection)?;
    let TooSoon { begins, at, remedy } = too_soon(context, room, selection, on)?;
    let message =
        phrase!("`{}` {begins}, and is measured only {when}, on {on}", selection.name.value, begins, when, on);
    let finding = Remark::query(at, message).room(&room.folder).selection(&selection.name).source("common practice");
    Some(finding.remedy(remedy))
}

const MOVE: &str = "move what waits for it, or what it is measured on";

const MOVE_OR_READY: &str = "move what waits for it, or the template; of a top that comes ready made, write the widths \
    that it goes into: `fit: {opening: {width: …}}`";

const OTHERWISE: &str = "move what it is measured on; or have it made from the studs, with the opening's `measured \
    between` and `wall build-up`, or in widths that can be set: `fit: {opening: {width: …}}`";

/// What is done before it is measured, where that is written, and what mends it.
struct TooSoon {
    begins: Phrase,
    at: Span,
    remedy: &'static str,
}

fn measured(context: &Context<'_>, points: &HoldPoints, selection: &Selection) -> Option<Measured> {
    let grounds = || context.depends.grounds(selection).iter();
    if selection.is(Kind::ShowerGlass) {
        let tiles = grounds().filter(|ground| ground.because == Reason::MeasuredOn);
        let set = tiles.filter_map(|ground| Some((context.dates.needed(ground.selection)?, ground.selection)));
        let (on, tile) = set.max_by_key(|(on, _)| *on)?;
        return Some(Measured { on, when: phrase!("when `{}` is set", tile.name.value) });
    }
    if !is_templated(context, selection) {
        return None;
    }
    let on = points.written_day(HoldPoint::CounterTemplated)?;
    Some(Measured { on, when: Phrase::from("at the template") })
}

/// Whether a counter is made to the template that the book dates: it is set with the counters, or is the only one, is of
/// stone, and is cut for what is let into it or lies on what is there. What else is needed by a day of its own, lies on a
/// vanity or comes ready made may have another template, or none.
fn is_templated(context: &Context<'_>, selection: &Selection) -> bool {
    let with_the_counters =
        |needed: &NeededFor| matches!(needed, NeededFor::Milestone(milestone) if sets(milestone, Kind::Counter));
    let is_set_with_them = || selection.needed_for.get().is_some_and(with_the_counters);
    let is_the_only_one = || context.book.selections().filter(|(_, other)| other.is(Kind::Counter)).count() == 1;
    if !selection.is(Kind::Counter) || !is_set_with_them() && !is_the_only_one() {
        return false;
    }
    let cut_for = context.depends.grounds(selection).iter().filter(|ground| ground.because == Reason::CutFor);
    let cut_for: Vec<&Selection> = cut_for.map(|ground| ground.selection).collect();
    let is_let_in = |thing: &&Selection| thing.is_any(&[Kind::Sink, Kind::Cooktop, Kind::Grill]);
    let is_of_a_vanity = cut_for.iter().any(|thing| thing.is(Kind::Basin)) && !cut_for.iter().any(is_let_in);
    let lies = |option: &ProductOption| option.top.get().is_some_and(|top| !top.lies_on.is_empty());
    let is_cut = !cut_for.is_empty() || selection.standing().iter().any(lies);
    let of_stone = |option: &ProductOption| {
        let material = option.top.get().and_then(|top| top.material.get());
        material.is_none_or(|material| material.is_stony()) && !is_ready_made(option)
    };
    is_cut && !is_of_a_vanity && selection.standing().iter().any(of_stone)
}

/// Whether its sheet says what widths it goes into: it is not made to one.
fn is_ready_made(option: &ProductOption) -> bool {
    option.fit.get().is_some_and(|fit| fit.opening.width.get().is_some())
}

/// What is done before that day.
fn too_soon(context: &Context<'_>, room: &Room, selection: &Selection, day: Date) -> Option<TooSoon> {
    let is_glass = selection.is(Kind::ShowerGlass);
    let needed = context.dates.needed(selection);
    if let Some(needed) = needed.filter(|needed| *needed < day) {
        let remedy = if is_glass { MOVE } else { MOVE_OR_READY };
        let begins = phrase!("is needed on {needed}", needed);
        return Some(TooSoon { begins, at: selection.needed_for.span()?, remedy });
    }
    // Made from the studs and what comes on them, or in widths that can be set, it need not wait. Of stone the slabs are
    // ordered, promised and delivered before they are cut.
    let opening = selection.place.get().and_then(|place| room.opening(place));
    let otherwise = |opening: &Opening| !opening.measured_between.is_absent() || opening.wall_build_up.get().is_some();
    let option = selection.settled()?;
    if !is_glass || is_ready_made(option) || opening.is_some_and(otherwise) {
        return None;
    }
    let order = &option.order;
    if let Some(placed) = order.placed_on.spanned().filter(|placed| placed.value < day) {
        let begins = phrase!("was ordered on {}", placed.value);
        return Some(TooSoon { begins, at: placed.span, remedy: OTHERWISE });
    }
    let promised = order.promised_for.spanned().filter(|promised| promised.value < day)?;
    let begins = phrase!("is promised for {}", promised.value);
    Some(TooSoon { begins, at: promised.span, remedy: OTHERWISE })
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
        top("2027-05-24", "lead time: 2 weeks\norder: {promised for: 2027-03-01}").stays_silent();
        top("2027-05-24", "lead time: 2 weeks\norder: {placed on: 2027-01-11}").stays_silent();
        top("2027-04-20", "lead time: 1 week")
            .finds("`Top` is needed on 20 Apr 2027, and is measured only at the template, on 3 May 2027")
            .weighs("query");
        top("2027-04-20", "lead time: 1 week\ntop: {material: laminate}").stays_silent();
        top("2027-04-20", "lead time: 1 week\nfit: {opening: {width: 61\"}}").stays_silent();
    }

    /// One template of the book is not that of every top: not of one with a day of its own, nor of a vanity's.
    #[test]
    fn a_top_that_is_not_set_with_the_counters_has_no_part_in_their_template() {
        let alone = |beside: &str, needed: &str| {
            Trial::of("order/before")
                .book("milestones: {counter template: 2027-05-03, counters set: 2027-04-20, vanity set: 2027-04-15}")
                .selection(&format!("selection: It\nkind: {beside}"), "fit: {sheet: {revision: A}}")
                .selection(&format!("selection: Top\nkind: counter\nneeded for: {needed}"), "")
        };
        let top = |beside: &str, needed: &str| {
            alone(beside, needed).selection("selection: Bar top\nkind: counter\nneeded for: 2027-06-21", "")
        };
        for needed in ["counters set", "2027-04-15", "vanity set"] {
            alone("sink", needed).finds_one();
            alone("basin", needed).stays_silent();
            top("basin", needed).stays_silent();
        }
        top("sink", "counters set").finds_one();
        top("sink", "2027-04-15").stays_silent();
        top("sink", "vanity set").stays_silent();
    }
}
