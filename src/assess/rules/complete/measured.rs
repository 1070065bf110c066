//! An opening that nobody has measured.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, Prerequisite, Reason, RunsOut};
use crate::book::{MeasuredFigures, MeasuredHow, Measurement, Opening, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::ledger::Side;
use crate::site::joinery::cabinets_around;
use crate::source::Span;
use crate::vocabulary::{Kind, Trait};

declare! {
    /// An opening is still as planned, or nobody answers for its measurement
    ///
    /// ## What it checks
    /// Every opening that something goes into says who measured it and when. It is a query, and a
    /// stop once the last day to order what goes in is past or within four weeks. The same of glass of a shower whose
    /// opening was measured before the tile of its room is there, and not told from which faces.
    /// Where cabinets or stone are still to be ordered: whether somebody else measured the openings of
    /// their room again (`again`).
    ///
    /// ## Why it matters
    /// Walls are not where the drawing has them. What was ordered by the drawing fits the drawing.
    ///
    /// ## Remedy
    /// Measure at the floor, in the middle and at the top, and add `measured: {on: …, by: …}`; glass once the tile is
    /// set, or with `measured between`.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   range: {takes: range, width: 30"}     # by whom, and when?
    /// ```
    ///
    /// ## Source
    /// Common practice: order only after a field measure that a named person signs.
    "complete/measured", Query,
    due: WithThing, tells: [Installer],
    judges: placed,
    sources: ["trade practice: field measure by a named person"],
    caution: None,
    Check::Book(check)
}

const MEASURE: &str =
    "measure it at the floor, in the middle and at the top, and add `measured: {on: …, by: …}` at the opening";

/// What goes into no hole, a bar or a fan, has no floor or top to measure at.
const MEASURE_THERE: &str = "measure where the thing is set, and add `measured: {on: …, by: …}` at the opening";

const MEASURE_AT_TILE: &str = "measure it again once the tile is set, or write from which faces it was measured: \
    `measured between: studs` with its `wall build-up`, or `finished walls`";

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.book.rooms.iter().filter_map(once_only));
    for (room, selection) in context.book.selections() {
        let Some(opening) = selection.place.get().and_then(|place| room.opening(place)) else { continue };
        let measure = if goes_in(opening) { MEASURE } else { MEASURE_THERE };
        let lacks = lacking(opening).map(|what| (what.into(), opening.span, measure));
        let Some((what, at, remedy)) = lacks.or_else(|| before_its_tile(context, selection, opening)) else { continue };
        let near = context.dates.runs_out(selection) != RunsOut::Later;
        let severity = if near { Severity::Stop } else { Severity::Query };
        let mut message = phrase!("the opening `{}` {what}", opening.name.value, what);
        if let (true, Some(last)) = (near, context.dates.decide_by(selection)) {
            message = message.then(phrase!(", and `{}` must be ordered by {last}", selection.name.value, last));
        }
        let finding = Remark::new(severity, at, message).room(&room.folder).opening(&opening.name);
        findings.push(finding.remedy(remedy));
    }
}

/// Glass is made to the face of its tile: it was measured before that is there, and nobody says from which faces.
fn before_its_tile(
    context: &Context<'_>,
    selection: &Selection,
    opening: &Opening,
) -> Option<(Phrase, Span, &'static str)> {
    let measured = opening.measured.spanned()?;
    let again = measured.again.get().and_then(|again| again.on.get());
    let taken = opening.taken.iter().filter(|taken| taken.what == Side::Width).map(|taken| taken.on).max();
    let on = taken.into_iter().chain(again.copied()).chain(measured.on.get().copied()).max()?;
    if !opening.measured_between.is_absent() || opening.wall_build_up.get().is_some() {
        return None;
    }
    let is_later = |ground: &&Prerequisite<'_>| {
        ground.because == Reason::MeasuredOn && context.dates.needed(ground.selection).is_some_and(|needed| needed > on)
    };
    let tile = context.depends.grounds(selection).iter().find(is_later)?;
    let what = phrase!("was measured on {}, and `{}` is set on its walls after that", on, tile.selection.name.value);
    Some((what, measured.span, MEASURE_AT_TILE))
}

/// The openings of a room that one person alone measured, where cabinets or stone are still to be ordered.
fn once_only(room: &Room) -> Option<Remark> {
    let alone: Vec<(&Opening, &Selection)> = room
        .openings
        .iter()
        .filter(|opening| is_made_to(room, opening) && is_alone(opening))
        .filter_map(|opening| Some((opening, waits_for(room, opening)?)))
        .collect();
    let (first, made) = alone.first()?;
    let others = match alone.len() - 1 {
        0 => " was".into(),
        1 => " and another opening were".into(),
        more => phrase!(" and {more} other openings were", more),
    };
    let message = phrase!(
        "`{}`{others} measured by one person alone, and `{}` is made to it",
        first.name.value,
        others,
        made.name.value
    );
    let at = first.measured.span().unwrap_or(first.span);
    let finding = Remark::query(at, message).room(&room.folder).opening(&first.name);
    Some(
        finding
            .source("common practice")
            .remedy("have somebody else measure again, and add `measured: {again: …}` at each opening"),
    )
}

/// What is still to be ordered, and is made to an opening: the cabinets around it, or what stands first of the others.
fn waits_for<'a>(room: &'a Room, opening: &Opening) -> Option<&'a Selection> {
    let around = cabinets_around(room, Some(opening), room.goes_into(&opening.name).next());
    let is_made = |one: &&Selection| {
        let is_around = || one.place.get().is_some() || around.iter().any(|around| around.span == one.span);
        one.is(Kind::Counter) || one.is(Kind::Cabinet) && is_around()
    };
    room.selections.iter().filter(|one| !one.is_ordered()).find(is_made)
}

/// Whether joinery or stone may be made to an opening: not what hangs on a wall or is let into a ceiling, unless a row of
/// cabinets holds it.
fn is_made_to(room: &Room, opening: &Opening) -> bool {
    !opening.takes_one(Trait::Hangs) || room.part_of(&opening.name).is_some() || room.holder(&opening.name).is_some()
}

/// Whether somebody measured an opening, and nobody else did.
fn is_alone(opening: &Opening) -> bool {
    let Some(measured) = opening.measured.get() else { return false };
    let names = opening.measurers();
    let Some(by) = names.first() else { return false };
    // Who measured again is said, in words that could not be read.
    if measured.again.is_faulty() || measured.again.get().is_some_and(|again| again.by.is_faulty()) {
        return false;
    }
    let is_one = |other: &str| other.trim().eq_ignore_ascii_case(by.trim());
    // What was not read again is known as the book has it.
    let by_one = |one: &Measurement<'_>| match (&one.of, one.how) {
        (MeasuredFigures::Rest, MeasuredHow::By { who: Some(who), again, .. }) => {
            let again = again.and_then(|again| again.by.get());
            again.is_none_or(|again| again.trim().eq_ignore_ascii_case(who.trim()))
        }
        _ => false,
    };
    names.iter().all(|other| is_one(other)) || opening.measurements().iter().any(by_one)
}

fn lacking(opening: &Opening) -> Option<&'static str> {
    if is_a_connection(opening) {
        return None;
    }
    if opening.measured.is_absent() {
        return Some("is still as planned");
    }
    if opening.is_as_planned() {
        return Some("is still as planned in part");
    }
    let measured = opening.measured.get()?;
    match (measured.by.is_absent(), measured.on.is_absent()) {
        (true, _) => Some("has no name for who measured it"),
        (false, true) => Some("has no day on which it was measured"),
        (false, false) => None,
    }
}

/// Whether what an opening is for goes into a hole.
fn goes_in(opening: &Opening) -> bool {
    opening.takes.get().is_none_or(|kind| kind.takes_opening())
}

/// Whether it is no hole: the point where something is connected that goes into none, a mat or a rail, without any size.
fn is_a_connection(opening: &Opening) -> bool {
    let has_a_size = [&opening.width, &opening.height, &opening.depth].into_iter().any(|size| !size.is_absent());
    !goes_in(opening) && !has_a_size && opening.plumb.is_absent() && opening.measured.is_absent()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(opening: &str, needed: &str) -> Trial {
        let trial = Trial::of("complete/measured").opening("hole", &format!("{{takes: range, {opening}}}"));
        trial.selection(&format!("selection: It\nkind: range\nplace: hole\nlead time: 6-8 weeks\n{needed}"), "")
    }

    /// Source: trade reports F-67, F-109.
    #[test]
    fn an_opening_as_planned_is_a_query_and_near_its_order_a_stop() {
        trial("width: 30\"", "").finds("the opening `hole` is still as planned").weighs("query");
        trial("width: 30\"", "needed for: 2027-04-05").finds_one().weighs("stop");
        trial("width: 30\"", "needed for: 2027-09-06").finds_one().weighs("query");
        trial("width: 30\", measured: {on: 2027-01-11, by: site lead}", "needed for: 2027-04-05").stays_silent();
    }

    /// Source: trade reports F-89.
    #[test]
    fn glass_is_measured_once_its_tile_is_set() {
        let glass = |opening: &str, tile: &str| {
            Trial::of("complete/measured")
                .book("milestones: {tile set: 2027-07-01}")
                .opening(
                    "front",
                    &format!("{{takes: shower glass, width: 30\", measured: {{on: 2027-01-11, by: Ada}}{opening}}}"),
                )
                .selection("selection: Glass\nkind: shower glass\nplace: front", "")
                .selection(&format!("selection: {tile}"), "")
        };
        let message = "the opening `front` was measured on 11 Jan 2027, and `Wall tile` is set on its walls after that";
        for needed in ["tile set", "2027-06-20"] {
            let tile = format!("Wall tile\nkind: tile\nneeded for: {needed}");
            glass("", &tile).finds(message).weighs("query").points_at(&["rooms/kitchen/room.yaml:3:54"]);
        }
        let tile = "Wall tile\nkind: tile\nneeded for: tile set";
        glass("", "Wall tile\nkind: tile\nneeded for: 2027-01-04").stays_silent();
        glass("", "Floor tile\nkind: tile\nneeded for: tile set").stays_silent();
        glass(", measured between: finished walls", tile).stays_silent();
        glass(", measured between: studs, wall build-up: {left: 7/8\", right: 7/8\"}", tile).stays_silent();
    }

    /// What hangs on a wall or is let into a ceiling is no measure of a cabinet.
    #[test]
    fn joinery_is_made_to_what_stands_around_it() {
        let once = |takes: &str| {
            Trial::of("complete/measured")
                .opening("hole", &format!("{{takes: {takes}, width: 30\", measured: {{on: 2027-01-11, by: Ada}}}}"))
                .selection("selection: Vanity\nkind: cabinet", "")
        };
        once("range").finds("`hole` was measured by one person alone, and `Vanity` is made to it").weighs("query");
        for takes in ["mirror", "fan", "wall light", "mirror cabinet"] {
            once(takes).stays_silent();
        }
    }

    /// Of several cabinets the one is named that is built around it, by its name or by its row.
    #[test]
    fn the_cabinet_that_is_made_to_an_opening_is_named() {
        let once = |room: &str, first: &str, second: &str| {
            Trial::of("complete/measured")
                .room(room)
                .opening("sink", "{takes: sink, width: 30\", measured: {on: 2027-01-11, by: Ada}}")
                .selection(&format!("selection: {first}\nkind: cabinet"), "")
                .selection(&format!("selection: {second}\nkind: cabinet"), "")
                .finds_one()
        };
        once("", "Lockers and bench", "Sink cabinets").says("`Sink cabinets` is made to it");
        once("", "Sink cabinets", "Lockers and bench").says("`Sink cabinets` is made to it");
        let island = "islands: {island: {size: 9' x 3', wall side: {parts: [{opening: sink}]}}}";
        once(island, "Kitchen cabinets", "Island cabinets").says("`Island cabinets` is made to it");
        let run = "runs: {back wall: {parts: [{opening: sink}]}}\nislands: {island: {size: 9' x 3'}}";
        once(run, "Island cabinets", "Kitchen cabinets").says("`Kitchen cabinets` is made to it");
    }

    /// A word that is only a part of a kind's name, as of `wall oven` or `kitchen sink`, names no cabinet.
    #[test]
    fn a_cabinet_is_called_after_the_whole_of_a_thing_s_name() {
        let once = |takes: &str, room: &str, names: &[&str]| {
            let trial = Trial::of("complete/measured")
                .room(room)
                .opening("hole", &format!("{{takes: {takes}, width: 30\", measured: {{on: 2027-01-11, by: Ada}}}}"));
            let each = |trial: Trial, name: &&str| trial.selection(&format!("selection: {name}\nkind: cabinet"), "");
            names.iter().fold(trial, each).finds_one()
        };
        let usual = ["Base cabinets", "Tall cabinets", "Wall cabinets"];
        once("wall oven", "", &usual).says("`Base cabinets` is made to it");
        once("wall oven", "", &["Wall cabinets", "Tall cabinets", "Oven housing"]).says("`Oven housing` is made to it");
        let tall = "runs: {back wall: {parts: [{tall: oven, width: 33\", holds: [hole]}]}}";
        once("wall oven", tall, &usual).says("`Tall cabinets` is made to it");
        once("wall oven", tall, &["Base cabinets", "Wall cabinets"]).says("`Base cabinets` is made to it");
        once("sink", "", &["Bench", "Laundry cabinets"]).says("`Bench` is made to it");
        once("microwave", "", &["Bench", "Drawer cabinets"]).says("`Bench` is made to it");
        once("panel refrigerator", "", &["Bench", "Side panel"]).says("`Bench` is made to it");
        once("panel refrigerator", "", &["Bench", "Fridge housing"]).says("`Fridge housing` is made to it");
    }

    #[test]
    fn a_measurement_has_a_name_and_a_day() {
        trial("measured: {on: 2027-01-11}", "").finds("the opening `hole` has no name for who measured it");
        trial("measured: {by: site lead}", "").finds("the opening `hole` has no day on which it was measured");
    }

    /// Source: common practice: what stone and cabinets are cut to is read by two people.
    #[test]
    fn what_cabinets_are_made_to_is_measured_by_two_people() {
        let measured = |again: &str| {
            Trial::of("complete/measured")
                .opening("hole", &format!("{{takes: range, measured: {{on: 2027-01-11, by: Bo{again}}}}}"))
                .selection("selection: Cabinets\nkind: cabinet", "")
        };
        measured("")
            .finds("`hole` was measured by one person alone, and `Cabinets` is made to it")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:3:34"]);
        // Who read it again is said, in a list that is no name: that is told as what it is.
        measured(", again: {on: 2027-01-12, by: [Hod, Venner]}").of_any_yaml().stays_silent();
        measured(", again: {on: 2027-01-18, by: bo}").finds_one();
        measured(", again: {on: 2027-01-18, by: Ada}").stays_silent();
    }

    #[test]
    fn a_point_where_something_is_connected_has_nothing_to_measure() {
        let mat = |opening: &str| {
            Trial::of("complete/measured")
                .opening("mat", &format!("{{takes: floor heating, service: {{power: 230 V}}{opening}}}"))
                .selection("selection: Mat\nkind: floor heating\nplace: mat", "")
        };
        mat("").stays_silent();
        mat(", width: 900 mm").finds_one();
        for takes in ["grab bar", "fan", "towel warmer"] {
            let at = |opening: &str| {
                Trial::of("complete/measured")
                    .opening("there", &format!("{{takes: {takes}{opening}}}"))
                    .selection(&format!("selection: It\nkind: {takes}\nplace: there"), "")
            };
            at(", service: {blocking: 2x10 all round}").stays_silent();
            at(", width: 12\"")
                .run()
                .remedies("measure where the thing is set, and add `measured: {on: …, by: …}` at the opening");
        }
    }
}
