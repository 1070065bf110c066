//! The electrician's rough-in list: power, receptacles, lights, and what blows air out.

use crate::book::{DetailName, Selection, Service};
use crate::site::lights::set_out;
use crate::vocabulary::{Kind, Shown, ShownValue, Trade};

use super::InRoom;
use super::boxes::{is_set_out, is_told, sockets, switches, worked};
use super::built::{Asked, Built, BuiltItem, BuiltTable, may, must};
use super::cells::{agreed, detail, length, named, or_dash, text};
use super::notes::{notes, of_lights};
use super::points::{is_served, places, points, served};

/// What is asked of a light.
const LIGHT: [Asked; 15] = [
    may("maker", |option| option.maker.shown()),
    must("model", |option| option.model.shown()),
    must("lamp", |option| detail(option, DetailName::Lamp)),
    may("kelvin", |option| detail(option, DetailName::Kelvin)),
    must("dimming", |option| detail(option, DetailName::Dimming)),
    may("damp rating", |option| detail(option, DetailName::DampRating)),
    may("drop", |option| detail(option, DetailName::Drop)),
    may("canopy", |option| detail(option, DetailName::Canopy)),
    may("slope rating", |option| detail(option, DetailName::SlopeRating)),
    may("projection", |option| detail(option, DetailName::Projection)),
    may("recess", |option| detail(option, DetailName::Recess)),
    may("diameter", |option| option.size.diameter.shown()),
    may("height", |option| option.size.height.shown()),
    may("mount", |option| detail(option, DetailName::Mount)),
    must("quantity", |option| option.quantity.shown()),
];

/// What is asked of anything else with a wire to it.
const POWERED: [Asked; 7] = [
    may("maker", |option| option.maker.shown()),
    must("model", |option| option.model.shown()),
    may("airflow", |option| detail(option, DetailName::Airflow)),
    may("damp rating", |option| detail(option, DetailName::DampRating)),
    may("lamp", |option| detail(option, DetailName::Lamp)),
    may("recess", |option| detail(option, DetailName::Recess)),
    must("quantity", |option| option.quantity.shown()),
];

/// What goes into the walls and ceilings of a room.
const SERVICES: [Service; 2] = [Service::Power, Service::Duct];

fn is_light(selection: &Selection) -> bool {
    let is_fixed = !selection.is(Kind::StandingLamp) && !selection.is(Kind::Outlet);
    is_fixed && selection.kind.get().is_some_and(|kind| kind.trade() == Trade::Lighting)
}

/// What is worked from a switch, wherever that is.
fn is_switched(selection: &Selection) -> bool {
    is_light(selection) || selection.is_any(&[Kind::Fan, Kind::Disposer])
}

/// All that an electrician roughs in.
pub fn builds<'a>(at: InRoom<'a, '_>) -> Built<'a> {
    let mut power = points(at, Service::Power);
    // Lights have a table of their own, and so has what is set out box by box.
    let elsewhere = |one: &&Selection| is_light(one) || is_set_out(at.room, one);
    let lights: Vec<(ShownValue, bool)> =
        at.room.selections.iter().filter(elsewhere).map(|one| (named(one), is_light(one))).collect();
    power.rows.retain(|row| {
        let says_more = row.iter().skip(1).take(2).any(|cell| !cell.is_empty());
        !lights.iter().any(|(name, is_light)| row.first() == Some(name) && (*is_light || !says_more))
    });
    let worked = worked(at.room, at.room.selections.iter().filter(|one| is_switched(one)));
    let mut tables = vec![power, hung(at), switches(at), sockets(at)];
    let (told, not_told) = if is_told(at.room) { (Some(worked), None) } else { (None, Some(worked)) };
    tables.extend(told);
    tables.extend([receptacles(at), points(at, Service::Duct), places(at, &SERVICES)]);
    let mut noted = notes(at.room, |opening| is_served(at.room, opening, &SERVICES), served(at.room, &SERVICES));
    noted.rows.extend(of_lights(at.room));
    tables.push(noted);
    tables.retain(|table| !table.rows.is_empty());
    let item = |selection: &'a Selection| {
        let asked: &[Asked] = if is_light(selection) { &LIGHT } else { &POWERED };
        BuiltItem::of(selection, asked)
    };
    let items = served(at.room, &SERVICES).map(item).collect();
    let not_told = not_told.into_iter().filter(|table| !table.rows.is_empty()).collect();
    Built { tables, not_told, items, by_sheet: served(at.room, &SERVICES).collect() }
}

/// Where lights hang: each by its own height, and from the ends of the first wall where the plan sets them out.
fn hung(at: InRoom<'_, '_>) -> BuiltTable {
    let mut rows = Vec::new();
    for selection in at.room.selections.iter().filter(|one| is_light(one)) {
        let bottoms: Vec<_> = selection
            .hangs
            .get()
            .and_then(|hangs| hangs.bottom.get())
            .map_or_else(Vec::new, |all| all.0.iter().map(|reading| reading.value).collect());
        let places = set_in_plan(at, selection);
        let drop = or_dash(agreed(selection, |option| detail(option, DetailName::Drop)));
        let so_many = agreed(selection, |option| option.quantity.shown());
        let all = places.len().max(bottoms.len()).max(1);
        for number in 0..all {
            let bottom = bottoms.get(number).or(bottoms.first()).copied();
            let place = places.get(number);
            rows.push(vec![
                named(selection),
                if all > 1 { text(format!("{} / {all}", number + 1)) } else { so_many.clone() },
                place.map_or(ShownValue::Nothing, |(along, _)| along.clone()),
                place.map_or(ShownValue::Nothing, |(_, out)| out.clone()),
                length(bottom),
                drop.clone(),
            ]);
        }
    }
    let columns = vec!["light", "how many", "from wall end", "out from wall", "lowest part", "drop"];
    BuiltTable { key: "lights", of: String::new(), columns, rows }
}

/// The places of a selection's lights in plan: along the first wall from its left end, and out from it.
fn set_in_plan(at: InRoom<'_, '_>, selection: &Selection) -> Vec<(ShownValue, ShownValue)> {
    let Some((plan, wall)) = at.plan.and_then(|plan| Some((plan, plan.walls.first()?))) else { return vec![] };
    let own = set_out(at.room, selection);
    let mut hung = plan.hung.iter().filter(|hung| own.iter().any(|lights| std::ptr::eq(*lights, hung.lights)));
    let place = |point: &crate::site::plan::Point| {
        let (along, out) = wall.frame.local(*point);
        let whole = |part: i128| crate::units::Length::from_nanometres(i64::try_from(part).unwrap_or_default());
        (super::cells::from(wall.name(), whole(along)), super::cells::from(wall.name(), whole(out)))
    };
    hung.next().map_or_else(Vec::new, |hung| hung.places.iter().map(place).collect())
}

/// Receptacles along counters, as the book counts them.
fn receptacles(at: InRoom<'_, '_>) -> BuiltTable {
    let row = |counter: &crate::book::CounterRun| {
        vec![
            text(counter.name.value.clone()),
            ShownValue::Length(counter.length.value),
            counter.receptacles.shown(),
            or_dash(counter.provision.shown()),
        ]
    };
    let columns = vec!["counter", "length", "receptacles", "box for later"];
    BuiltTable { key: "receptacles", of: String::new(), columns, rows: at.room.counters.iter().map(row).collect() }
}
