//! Where each service comes out: what a thing asks, what is there, and how far from which face.

use crate::book::{Opening, ProductOption, Room, Selection, Service, ServicePoint};
use crate::site::fitting::{Foot, build_up, foot};
use crate::site::outlets::height_of_the_drain;
use crate::site::plan::{Stands, Thing};
use crate::units::Length;
use crate::vocabulary::{Hazard, Kind, Shown, ShownValue};

use super::InRoom;
use super::built::BuiltTable;
use super::cells::{agreed, dash, from, length, named, or_dash, text};

/// The words of `trades.tables` for a service.
fn key(service: Service) -> &'static str {
    match service {
        Service::Power => "power",
        Service::Gas => "gas",
        Service::Water => "water",
        Service::Drain => "drain",
        Service::Duct => "duct",
    }
}

/// Every point of a service in a room, one for each thing that asks for it and each place where it is.
pub fn points(at: InRoom<'_, '_>, service: Service) -> BuiltTable {
    let mut rows: Vec<Vec<ShownValue>> = Vec::new();
    for selection in &at.room.selections {
        let opening = selection.place.get().and_then(|place| at.room.opening(place));
        let asks = agreed(selection, |option| needs(option, service));
        let there = opening.map_or(ShownValue::Nothing, |opening| at_opening(opening, service));
        if asks.is_empty() && there.is_empty() && !is_due(selection, service) {
            continue;
        }
        let zone = agreed(selection, |option| zone(option, service));
        rows.push(row(at, named(selection), opening, [asks, there, zone], service));
    }
    let empty = at.room.openings.iter().filter(|opening| at.room.goes_into(&opening.name).next().is_none());
    for opening in empty {
        let there = at_opening(opening, service);
        if !there.is_empty() {
            let name = text(opening.name.value.clone());
            rows.push(row(at, name, Some(opening), [dash(), there, dash()], service));
        }
    }
    let columns = vec!["for", "asks", "there", "from wall end", "from opening", "aff", "proud", "zone"];
    BuiltTable { key: key(service), of: String::new(), columns, rows }
}

fn row(
    at: InRoom<'_, '_>,
    name: ShownValue,
    opening: Option<&Opening>,
    [asks, there, zone]: [ShownValue; 3],
    service: Service,
) -> Vec<ShownValue> {
    let point = opening.and_then(|opening| point(opening, service));
    let beside = point.and_then(|point| point.beside.get()) == Some(&true);
    let from_left = point.and_then(|point| point.from_left.get().copied());
    let along = opening.and_then(|opening| along(at, opening, from_left));
    let off = if beside { ShownValue::Word("in the cabinet beside") } else { length(from_left) };
    let high = opening.and_then(|opening| height(opening, service));
    let proud = point.map_or(ShownValue::Nothing, |point| point.proud.shown());
    vec![name, asks, there, along.unwrap_or(ShownValue::Nothing), off, length(high), or_dash(proud), or_dash(zone)]
}

/// The middle of a point from the left end of the wall, or of the island's side, that its thing stands at.
fn along(at: InRoom<'_, '_>, opening: &Opening, from_left: Option<Length>) -> Option<ShownValue> {
    let plan = at.plan?;
    let thing = plan.opening(opening)?;
    Some(from(face(at, thing), thing.along.0 + from_left?))
}

/// What a thing stands at, by its name.
pub fn face<'p>(at: InRoom<'p, 'p>, thing: &Thing<'p>) -> &'p str {
    let Some(plan) = at.plan else { return "" };
    match thing.stands {
        Stands::Wall(wall) => plan.walls.get(wall).map_or("", |wall| wall.name()),
        Stands::Island(number, _) => at.room.islands.get(number).map_or("", |island| island.name.as_str()),
    }
}

fn point(opening: &Opening, service: Service) -> Option<&ServicePoint> {
    let points = opening.points.get()?;
    points.named().into_iter().find(|(named, _)| *named == service).and_then(|(_, point)| point.get())
}

/// How high it is, as a point or in the words of what is there.
fn height(opening: &Opening, service: Service) -> Option<Length> {
    if service == Service::Drain {
        return height_of_the_drain(opening).map(|(height, _)| height);
    }
    let there = &opening.service;
    let in_words = match service {
        Service::Power => there.power.get().and_then(|power| power.is.height),
        Service::Gas => there.gas.get().and_then(|gas| gas.is.height),
        Service::Water => there.water.get().and_then(|water| water.is.height),
        Service::Duct => there.duct.get().and_then(|duct| duct.is.pipe.height),
        Service::Drain => None,
    };
    point(opening, service).and_then(|point| point.height.get().copied()).or(in_words)
}

fn at_opening(opening: &Opening, service: Service) -> ShownValue {
    let there = &opening.service;
    match service {
        Service::Power => there.power.shown(),
        Service::Gas => there.gas.shown(),
        Service::Water => there.water.shown(),
        Service::Drain => there.drain.shown(),
        Service::Duct => there.duct.shown(),
    }
}

fn needs(option: &ProductOption, service: Service) -> ShownValue {
    let Some(fit) = option.fit.get() else { return ShownValue::Nothing };
    match service {
        Service::Power => fit.needs.power.shown(),
        Service::Gas => fit.needs.gas.shown(),
        Service::Water => fit.needs.water.shown(),
        Service::Drain => fit.needs.drain.shown(),
        Service::Duct => fit.needs.duct.shown(),
    }
}

fn zone(option: &ProductOption, service: Service) -> ShownValue {
    let zones = option.fit.get().and_then(|fit| fit.zones.get());
    let zone = zones.and_then(|zones| zones.named().into_iter().find(|(named, _)| *named == service));
    zone.map_or(ShownValue::Nothing, |(_, zone)| zone.shown())
}

/// Whether a thing wants a service whatever its sheet says: by what of its kind can hurt.
fn is_due(selection: &Selection, service: Service) -> bool {
    let Some(kind) = selection.kind.get() else { return false };
    match service {
        Service::Power => kind.hazards().contains(&Hazard::Power),
        Service::Water => matches!(
            kind,
            Kind::Sink
                | Kind::Basin
                | Kind::Tap
                | Kind::TubFiller
                | Kind::ShowerSet
                | Kind::Toilet
                | Kind::Washer
                | Kind::Dishwasher
                | Kind::PanelDishwasher
                | Kind::Cistern
        ),
        Service::Drain => matches!(
            kind,
            Kind::Sink
                | Kind::Basin
                | Kind::Toilet
                | Kind::Bathtub
                | Kind::ShowerTray
                | Kind::Drain
                | Kind::Washer
                | Kind::Dishwasher
                | Kind::PanelDishwasher
        ),
        Service::Duct => matches!(kind, Kind::Hood | Kind::Fan),
        Service::Gas => false,
    }
}

/// Where the things that services go to stand: along their wall, and how high.
pub fn places(at: InRoom<'_, '_>, services: &[Service]) -> BuiltTable {
    let Some(plan) = at.plan else {
        return BuiltTable { key: "places", of: String::new(), columns: vec![], rows: vec![] };
    };
    let row = |selection: &Selection| {
        let opening = at.room.opening(selection.place.get()?)?;
        let thing = plan.opening(opening)?;
        let (bottom, top) = bottom_and_top(at.room, opening, thing.high);
        Some(vec![
            named(selection),
            from(face(at, thing), thing.along.0),
            ShownValue::Length(thing.along.1),
            length(bottom),
            length(top),
        ])
    };
    let rows = served(at.room, services).filter_map(row).collect();
    let columns = vec!["thing", "left side", "right side", "bottom", "top"];
    BuiltTable { key: "places", of: String::new(), columns, rows }
}

/// Bottom and top of an opening from the finished floor, as its own sheet has them: what is still to be laid is taken off
/// what was read from the present one. None where nobody says how high it begins.
fn bottom_and_top(room: &Room, opening: &Opening, planned: Option<Length>) -> (Option<Length>, Option<Length>) {
    let read = opening.height.get().and_then(|readings| readings.least()).map(|least| least.value);
    match foot(room, opening) {
        Foot::Floor => (Some(Length::ZERO), read.map(|read| read - build_up(room, opening)).or(planned)),
        Foot::Above(bottom) => (Some(bottom), read.map(|read| bottom + read).or(planned)),
        Foot::Unknown => (None, None),
    }
}

/// Whether any of some services is at an opening, or what goes in there asks for it.
pub fn is_served(room: &Room, opening: &Opening, services: &[Service]) -> bool {
    let things: Vec<&Selection> = room.goes_into(&opening.name).collect();
    services.iter().any(|service| {
        let asked = |thing: &&Selection| {
            is_due(thing, *service) || thing.standing().iter().any(|option| !needs(option, *service).is_empty())
        };
        !at_opening(opening, *service).is_empty() || things.iter().any(asked)
    })
}

/// The room's things that a service goes to, for their own facts.
pub fn served<'a>(room: &'a Room, services: &[Service]) -> impl Iterator<Item = &'a Selection> + use<'a> {
    let services = services.to_vec();
    room.selections.iter().filter(move |selection| {
        let opening = selection.place.get().and_then(|place| room.opening(place));
        services.iter().any(|service| {
            is_due(selection, *service)
                || selection.standing().iter().any(|option| !needs(option, *service).is_empty())
                || opening.is_some_and(|opening| !at_opening(opening, *service).is_empty())
        })
    })
}
