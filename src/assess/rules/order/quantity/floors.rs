//! Floors larger or smaller than the rooms that they are laid in.

use crate::assess::{Context, about, say_area};
use crate::book::{ProductOption, Room, Selection, System};
use crate::finding::{Remark, Severity, phrase};
use crate::site::is_floor;
use crate::site::plan::Plan;
use crate::units::{Area, Length};
use crate::vocabulary::{Kind, Mention};

/// How much more than its rooms a floor may be, of a hundred: doorways and niches (common practice).
const DOORWAYS: i128 = 5;

/// Tells of a floor that is too large, where every room of the book is planned: it may lie in several of them.
pub fn ask(context: &Context<'_>, (room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let covers = || selection.covers.spanned().filter(|_| option.laid.area.is_absent());
    let is_heating = selection.is(Kind::FloorHeating);
    let laid = option.laid.area.spanned().or_else(covers).filter(|_| is_floor(selection) || is_heating)?;
    // `Wall and floor tiles` go up the walls as well.
    if selection.is(Kind::Tile) && Mention::Wall.is_in(&selection.name) {
        return None;
    }
    let areas = context.book.rooms.iter().map(|room| context.site.sound_plan(room)?.area);
    let all: Vec<Area> = areas.collect::<Option<_>>()?;
    let rooms: i128 = all.iter().map(|area| area.square_nanometres()).sum();
    let larger = laid.value.square_nanometres().saturating_mul(100) > rooms.saturating_mul(100 + DOORWAYS);
    let rooms = Area::from_square_nanometres(rooms);
    let message = phrase!(
        "`{}` is laid on {}, and the plan has no more than {}",
        selection.name.value,
        say_area(laid.value, context.book.project.units),
        say_area(rooms, context.book.project.units)
    );
    larger.then(|| {
        let finding = about(room, selection, option, Severity::Query, laid.span, message);
        finding.remedy("correct the area or the outline before it is ordered")
    })
}

/// How far two areas of one thing may be apart, of a hundred: one with its waste, or with what stands on it (common practice).
const APART: i128 = 25;

/// Tells of an area to be covered, and one for the material board, that can't be the same.
pub fn apart((room, selection, option): (&Room, &Selection, &ProductOption), system: System) -> Option<Remark> {
    let (covers, laid) = (selection.covers.spanned()?, option.laid.area.spanned()?);
    let (one, other) = (covers.value.square_nanometres(), laid.value.square_nanometres());
    let is_apart = one.max(other).saturating_mul(100) > one.min(other).saturating_mul(100 + APART);
    let message = phrase!(
        "`{}` covers {}, and is laid on {}",
        selection.name.value,
        say_area(covers.value, system),
        say_area(laid.value, system)
    );
    is_apart.then(|| {
        let finding = about(room, selection, option, Severity::Query, covers.span, message).also(laid.span, "laid on");
        finding.remedy("correct the one that is wrong: `covers` is for the material board, and what is ordered goes by `laid: area`")
    })
}

/// What stands on the floor no higher above it than that has none under it (common practice).
const FOOT: Length = Length::from_inches(6);

/// How much less than what is seen a floor may be, of a hundred: cupboards and steps that nobody drew (common practice).
const NOT_DRAWN: i128 = 30;

/// Tells of a room's only floor that is less than the floor that is seen: as it says itself how much it covers, else as
/// much as is ordered.
pub fn less(
    context: &Context<'_>,
    (room, selection, option): (&Room, &Selection, &ProductOption),
    ordered: Option<Area>,
) -> Option<Remark> {
    let is_only = room.selections.iter().filter(|other| is_floor(other)).count() == 1;
    let plan = context.site.sound_plan(room).filter(|_| is_floor(selection) && is_only)?;
    let seen = seen(plan)?;
    let says = option.laid.area.spanned().or_else(|| selection.covers.spanned());
    let (there, at) = match says {
        Some(says) => (says.value, says.span),
        None => (ordered?, option.quantity.span()?),
    };
    let say = |area| say_area(area, context.book.project.units);
    let is_less =
        there.square_nanometres().saturating_mul(100) < seen.square_nanometres().saturating_mul(100 - NOT_DRAWN);
    let message = phrase!(
        "`{}` is {}, and the plan has {} of floor that nothing stands on",
        selection.name.value,
        say(there),
        say(seen)
    );
    is_less.then(|| {
        let finding = about(room, selection, option, Severity::Query, at, message).source("arithmetic");
        finding.remedy("order the whole floor, or say what the rest of it gets: a selection of its own")
    })
}

/// The floor of a room less all that stands on it; none where its outline is open or nothing is said of it.
fn seen(plan: &Plan<'_>) -> Option<Area> {
    let all = plan.area?.square_nanometres();
    let stands = plan.things.iter().filter(|thing| thing.within.is_none() && thing.low < FOOT);
    let taken: i128 = stands
        .map(|thing| {
            let deep = (thing.out.1 - thing.out.0.max(Length::ZERO)).max(thing.out.1 - thing.out.0);
            i128::from(thing.width().nanometres()) * i128::from(deep.nanometres())
        })
        .sum();
    Some(Area::from_square_nanometres((all - taken).max(0)))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: arithmetic: a room of 8' by 8' less a tub of 5' by 2'-6" and a cabinet of 3' by 2' leaves 45 1/2 sq ft.
    #[test]
    fn a_floor_is_no_less_than_what_nothing_stands_on() {
        let bath = |more: &str, option: &str| {
            Trial::of("order/quantity")
                .room("outline: 8' x 8'\nruns: {vanity: {wall: A, depth: 24\", parts: [{cabinet: v, width: 36\"}]}}\nfixtures: {tub: {wall: C, centre: 48\", width: 60\", depth: 30\", height: 20\", takes: bathtub}}")
                .selection(&format!("selection: Floor\nkind: floor{more}"), option)
        };
        bath("", "quantity: 30 sq ft")
            .finds("`Floor` is 30 sq ft (≈ 2.8 m²), and the plan has 45.5 sq ft (≈ 4.2 m²) of floor that nothing stands on")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:11"]);
        bath("", "quantity: 46 sq ft").stays_silent();
        bath("\ncovers: 20 sq ft", "quantity: 30 sq ft").finds_one();
        bath("\ncovers: 200 sq ft", "quantity: 300 sq ft").finds_one().says("the plan has no more than");
        // What is laid on walls as well is more than the floor.
        let tile = |name: &str| {
            bath("", "quantity: 46 sq ft").selection(&format!("selection: {name}\nkind: tile\ncovers: 200 sq ft"), "")
        };
        tile("Wall and floor tiles").stays_silent();
        tile("Floor and walls").stays_silent();
        tile("Floor tiles").finds_one();
        // What heats a floor is no larger than that.
        let heating = |covers: &str| {
            bath("", "quantity: 46 sq ft")
                .selection("selection: Mat\nkind: floor heating", &format!("covers: {covers}"))
        };
        heating("130 sq ft")
            .finds("`Mat` is laid on 130 sq ft (≈ 12.1 m²), and the plan has no more than 64 sq ft (≈ 5.9 m²)");
        heating("30 sq ft").stays_silent();
        // Two floors in a room share it.
        bath("", "quantity: 30 sq ft").selection("selection: Floor tile\nkind: tile", "").stays_silent();
    }

    #[test]
    fn the_area_of_the_material_board_is_the_one_that_is_laid() {
        let tile = |covers: &str| {
            Trial::of("order/quantity").selection(
                &format!("selection: Tile\nkind: tile\ncovers: {covers}"),
                "laid: {area: 46 sq ft}\nquantity: 54 sq ft\npattern: straight",
            )
        };
        tile("460 sq ft")
            .finds("`Tile` covers 460 sq ft (≈ 42.7 m²), and is laid on 46 sq ft (≈ 4.3 m²)")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:9"]);
        tile("46 sq ft").stays_silent();
        tile("51 sq ft").stays_silent();
    }
}
