//! Reads an opening of `room.yaml`.

use crate::book::vocabulary::{INSIDE, MEASURED, NEIGHBOUR, OPENING, PLUMB, SERVICE, WALL_BUILD_UP};
use crate::book::{HousingCabinet, Measured, Neighbour, Opening, Plumb, Services, Slot, WallBuildUp};
use crate::source::Spanned;
use crate::source::yaml::{Node, Value};

use super::faults::Faults;
use super::fields::Fields;
use super::values::{date, kind_name, lengths, positive_length, readings, text, two_lengths};
use super::{built_in, clearances, project, supply, values};

/// Reads one opening.
pub fn read(name: Spanned<String>, mut fields: Fields<'_>, faults: &mut Faults) -> Opening {
    let from = values::word(&mut fields, &OPENING, "measured from", faults);
    let between = values::word(&mut fields, &OPENING, "measured between", faults);
    let opening = Opening {
        span: name.span,
        name,
        takes: fields.read("takes", faults, kind_name),
        wall: fields.read("wall", faults, text),
        at: fields.read("at", faults, positive_length),
        width: fields.read("width", faults, readings),
        height: fields.read("height", faults, readings),
        depth: fields.read("depth", faults, readings),
        diagonals: fields.read("diagonals", faults, two_lengths),
        plumb: fields.read("plumb", faults, plumb),
        sill: fields.read("sill", faults, positive_length),
        from_finished_floor: from.map_or(Slot::Absent, |from| Slot::Given(from.map(|word| word == "finished floor"))),
        between_studs: between.map_or(Slot::Absent, |faces| Slot::Given(faces.map(|word| word == "studs"))),
        wall_build_up: fields.read("wall build-up", faults, wall_build_up),
        measured: fields.read("measured", faults, measured),
        as_written: None,
        left: fields.read("left", faults, neighbour),
        right: fields.read("right", faults, neighbour),
        above: fields.read("above", faults, neighbour),
        in_front: fields.read("in front", faults, positive_length),
        counter_depth: fields.read("counter depth", faults, positive_length),
        counter_height: fields.read("counter height", faults, positive_length),
        landing: fields.read("landing", faults, clearances::landing),
        cabinet: fields.read("cabinet", faults, cabinet),
        service: services(fields.node("service"), faults),
        below: fields.read("below", faults, built_in::below),
        apron_opening: fields.read("apron opening", faults, positive_length),
        hollow: fields.read("hollow", faults, built_in::hollow),
        pair: fields.read("pair", faults, text),
        points: fields.read("service points", faults, supply::points),
        note: fields.read("note", faults, text),
        waivers: fields.list("waive", faults, project::waiver),
    };
    fields.finish(faults);
    opening
}

fn plumb(node: &Node, faults: &mut Faults) -> Option<Plumb> {
    let mut fields = Fields::of(node, &PLUMB, faults)?;
    let left = fields.read("left", faults, lengths);
    let right = fields.read("right", faults, lengths);
    fields.finish(faults);
    let (left, right) = (left.get()?.clone(), right.get()?.clone());
    if left.len() != right.len() {
        let message = format!("{} readings stand for the left side and {} for the right", left.len(), right.len());
        faults.stop("source/wrong-type", node.span, message, "measure both sides at the same heights");
        return None;
    }
    Some(Plumb { left, right })
}

fn wall_build_up(node: &Node, faults: &mut Faults) -> Option<WallBuildUp> {
    let mut fields = Fields::of(node, &WALL_BUILD_UP, faults)?;
    let mut side = |key| fields.read(key, faults, positive_length).get().copied().unwrap_or_default();
    let walls = WallBuildUp { left: side("left"), right: side("right"), back: side("back") };
    fields.finish(faults);
    Some(walls)
}

fn measured(node: &Node, faults: &mut Faults) -> Option<Measured> {
    let mut fields = Fields::of(node, &MEASURED, faults)?;
    let measured = Measured {
        on: fields.read("on", faults, date),
        by: fields.read("by", faults, text),
        with: fields.read("with", faults, text),
    };
    fields.finish(faults);
    Some(measured)
}

fn neighbour(node: &Node, faults: &mut Faults) -> Option<Neighbour> {
    if let Value::Scalar { .. } = node.value {
        let what = text(node, faults)?;
        return Some(Neighbour {
            what,
            gap: Slot::Absent,
            height: Slot::Absent,
            top: Slot::Absent,
            depth: Slot::Absent,
            burning: Slot::Absent,
        });
    }
    let mut fields = Fields::of(node, &NEIGHBOUR, faults)?;
    let what = fields.read("what", faults, text);
    let gap = fields.read("gap", faults, positive_length);
    let height = fields.read("height", faults, positive_length);
    let top = fields.read("top", faults, positive_length);
    let depth = fields.read("depth", faults, positive_length);
    let burning = values::burning(&mut fields, &NEIGHBOUR, faults);
    fields.finish(faults);
    Some(Neighbour { what: what.get()?.clone(), gap, height, top, depth, burning })
}

fn cabinet(node: &Node, faults: &mut Faults) -> Option<HousingCabinet> {
    let mut fields = Fields::of(node, &INSIDE, faults)?;
    let cabinet = HousingCabinet {
        inside_width: fields.read("inside width", faults, positive_length),
        inside_depth: fields.read("inside depth", faults, positive_length),
        inside_height: fields.read("inside height", faults, positive_length),
        outside_width: fields.read("outside width", faults, positive_length),
        back_cut_away: cut_away(values::word(&mut fields, &INSIDE, "back panel", faults)),
    };
    fields.finish(faults);
    Some(cabinet)
}

/// Whether a back panel is cut away, from the word for it.
pub fn cut_away(word: Option<Spanned<&'static str>>) -> Slot<bool> {
    word.map_or(Slot::Absent, |word| Slot::Given(word.map(|word| word == "cut away")))
}

fn services(node: Option<&Node>, faults: &mut Faults) -> Services {
    let Some(mut fields) = node.and_then(|node| Fields::of(node, &SERVICE, faults)) else {
        return Services::default();
    };
    let services = Services {
        power: fields.read("power", faults, text),
        gas: fields.read("gas", faults, text),
        water: fields.read("water", faults, text),
        drain: fields.read("drain", faults, text),
        duct: fields.read("duct", faults, text),
        blocking: fields.read("blocking", faults, text),
    };
    fields.finish(faults);
    services
}
