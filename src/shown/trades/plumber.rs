//! The plumber's and gas fitter's rough-in list: water, drains and gas, with what of each thing decides its pipes.

use crate::book::{DetailName, Selection, Service};
use crate::vocabulary::{Kind, Shown, ShownValue};

use super::InRoom;
use super::built::{Asked, Built, BuiltItem, BuiltTable, may, must};
use super::cells::{agreed, detail, from, named, or_dash};
use super::notes::notes;
use super::points::{face, is_served, places, points, served};

/// What is asked of whatever has a pipe to it.
const PIPED: [Asked; 17] = [
    may("maker", |option| option.maker.shown()),
    must("model", |option| option.model.shown()),
    may("mount", |option| detail(option, DetailName::Mount)),
    may("rough-in", |option| detail(option, DetailName::RoughIn)),
    may("outlet height", |option| detail(option, DetailName::OutletHeight)),
    may("drain", |option| detail(option, DetailName::Drain)),
    may("bowl depth", |option| detail(option, DetailName::BowlDepth)),
    may("outlet below bowl", |option| detail(option, DetailName::OutletBelowBowl)),
    may("trap seal", |option| detail(option, DetailName::TrapSeal)),
    may("holes", |option| detail(option, DetailName::Holes)),
    may("spread", |option| detail(option, DetailName::Spread)),
    may("spout reach", |option| detail(option, DetailName::SpoutReach)),
    may("valve", |option| detail(option, DetailName::Valve)),
    may("valve depth", |option| option.fit.get().map_or(ShownValue::Nothing, |fit| fit.valve_depth.shown())),
    may("fuel", |option| option.fuel.shown()),
    may("weight", |option| option.fit.get().map_or(ShownValue::Nothing, |fit| fit.weight.shown())),
    must("quantity", |option| option.quantity.shown()),
];

/// What comes through pipes.
const SERVICES: [Service; 3] = [Service::Water, Service::Drain, Service::Gas];

/// All that a plumber roughs in.
pub fn builds<'a>(at: InRoom<'a, '_>) -> Built<'a> {
    let mut tables: Vec<BuiltTable> = SERVICES.into_iter().map(|service| points(at, service)).collect();
    tables.extend([outlets(at), blocking(at), places(at, &SERVICES)]);
    tables.push(notes(at.room, |opening| is_served(at.room, opening, &SERVICES), served(at.room, &SERVICES)));
    tables.retain(|table| !table.rows.is_empty());
    let items: Vec<BuiltItem<'a>> =
        served(at.room, &SERVICES).map(|selection| BuiltItem::of(selection, &PIPED)).collect();
    if items.is_empty() {
        return Built::default();
    }
    Built { tables, items, by_sheet: served(at.room, &SERVICES).collect(), ..Built::default() }
}

/// Toilets, tubs and showers by their centre lines, and where a toilet's outlet is.
fn outlets(at: InRoom<'_, '_>) -> BuiltTable {
    let is_set =
        |one: &&Selection| one.is_any(&[Kind::Toilet, Kind::Bathtub, Kind::ShowerSet, Kind::ShowerTray, Kind::Basin]);
    let row = |selection: &Selection| {
        let opening = selection.place.get().and_then(|place| at.room.opening(place));
        let is_it = |thing: &&crate::site::plan::Thing<'_>| {
            let by_opening = opening.is_some_and(|opening| thing.is_opening(opening));
            let fixture = match thing.what {
                crate::site::plan::What::Fixture(fixture) => fixture.selection.get() == Some(&selection.name.value),
                _ => false,
            };
            by_opening || fixture
        };
        let thing = at.plan.and_then(|plan| plan.things.iter().find(is_it));
        vec![
            named(selection),
            thing.map_or(ShownValue::Nothing, |thing| from(face(at, thing), thing.centre())),
            or_dash(agreed(selection, |option| detail(option, DetailName::RoughIn))),
            or_dash(agreed(selection, |option| detail(option, DetailName::OutletHeight))),
            or_dash(agreed(selection, |option| detail(option, DetailName::Valve))),
        ]
    };
    let rows = at.room.selections.iter().filter(is_set).map(row).collect();
    let columns = vec!["fixture", "centre line", "rough-in", "outlet height", "valve"];
    BuiltTable { key: "outlets", of: String::new(), columns, rows }
}

/// What must be in the wall to fix things to.
fn blocking(at: InRoom<'_, '_>) -> BuiltTable {
    let row = |opening: &crate::book::Opening| {
        let selection = at.room.goes_into(&opening.name).next();
        let asks = selection.map_or(ShownValue::Nothing, |selection| {
            agreed(selection, |option| option.fit.get().map_or(ShownValue::Nothing, |fit| fit.needs.blocking.shown()))
        });
        let there = opening.service.blocking.shown();
        let name = selection.map_or_else(|| super::cells::text(opening.name.value.clone()), named);
        (!asks.is_empty() || !there.is_empty()).then(|| vec![name, or_dash(asks), there])
    };
    let rows = at.room.openings.iter().filter_map(row).collect();
    BuiltTable { key: "blocking", of: String::new(), columns: vec!["for", "asks", "there"], rows }
}
