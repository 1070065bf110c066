//! Reads where services come out, where sheets want them, and what is plugged in along counters.

use crate::book::vocabulary::{COUNTER_RUN, POINT, POINTS, ZONE, ZONES};
use crate::book::{CounterRun, Each, ServicePoint, ServiceZone};
use crate::source::Spanned;
use crate::source::yaml::Node;

use super::faults::Faults;
use super::fields::{Fields, Parse};
use super::values::{length_range, positive_length, whole, yes_no};

/// Where services come out at an opening.
pub fn points(node: &Node, faults: &mut Faults) -> Option<Each<ServicePoint>> {
    each(Fields::of(node, &POINTS, faults)?, point, faults)
}

/// Where a maker's sheet wants services.
pub fn zones(node: &Node, faults: &mut Faults) -> Option<Each<ServiceZone>> {
    each(Fields::of(node, &ZONES, faults)?, zone, faults)
}

fn each<T>(mut fields: Fields<'_>, parse: Parse<T>, faults: &mut Faults) -> Option<Each<T>> {
    let each = Each {
        power: fields.read("power", faults, parse),
        gas: fields.read("gas", faults, parse),
        water: fields.read("water", faults, parse),
        drain: fields.read("drain", faults, parse),
        duct: fields.read("duct", faults, parse),
    };
    fields.finish(faults);
    Some(each)
}

fn point(node: &Node, faults: &mut Faults) -> Option<ServicePoint> {
    let mut fields = Fields::of(node, &POINT, faults)?;
    let point = ServicePoint {
        from_left: fields.read("from left", faults, positive_length),
        height: fields.read("height", faults, positive_length),
        proud: fields.read("proud", faults, positive_length),
        beside: fields.read("beside", faults, yes_no),
    };
    fields.finish(faults);
    Some(point)
}

fn zone(node: &Node, faults: &mut Faults) -> Option<ServiceZone> {
    let mut fields = Fields::of(node, &ZONE, faults)?;
    let zone = ServiceZone {
        from_left: fields.read("from left", faults, length_range),
        height: fields.read("height", faults, length_range),
        proud: fields.read("proud", faults, positive_length),
        beside: fields.read("beside", faults, yes_no),
    };
    fields.finish(faults);
    Some(zone)
}

/// A stretch of counter.
pub fn counter(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<CounterRun> {
    let mut fields = Fields::of(node, &COUNTER_RUN, faults)?;
    let counter = CounterRun {
        span: name.span,
        name: name.clone(),
        length: fields.read("length", faults, positive_length),
        depth: fields.read("depth", faults, positive_length),
        island: fields.read("island", faults, yes_no),
        receptacles: fields.read("receptacles", faults, whole),
        provision: fields.read("provision", faults, yes_no),
    };
    fields.finish(faults);
    Some(counter)
}
