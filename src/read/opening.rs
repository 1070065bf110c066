//! Reads an opening of `room.yaml`.

use crate::book::vocabulary::{OPENING, PLUMB, WALL_BUILD_UP};
use crate::book::{
    Below, CutOut, Each, Hollow, HousingCabinet, Landing, Measured, Neighbour, Opening, Plumb, Services, Setting, Slot,
    WallBuildUp,
};
use crate::finding::Code;
use crate::source::Spanned;
use crate::source::yaml::Node;
use crate::vocabulary::values::{kind_name, lengths, positive_length, readings, text, two_lengths};
use crate::vocabulary::{Faults, Fields, Held, Value, values};

use super::project;

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
        measured: fields.read("measured", faults, Measured::read),
        as_written: None,
        left: fields.read("left", faults, Neighbour::read),
        right: fields.read("right", faults, Neighbour::read),
        above: fields.read("above", faults, Neighbour::read),
        in_front: fields.read("in front", faults, positive_length),
        counter_depth: fields.read("counter depth", faults, positive_length),
        counter_height: fields.read("counter height", faults, positive_length),
        landing: fields.read("landing", faults, Landing::read),
        cabinet: fields.read("cabinet", faults, HousingCabinet::read),
        setting: fields.read("set", faults, Setting::read),
        made_for: fields.read("made for", faults, CutOut::read),
        service: Services::take(&mut fields, "service", faults).unwrap_or_default(),
        below: fields.read("below", faults, Below::read),
        apron_opening: fields.read("apron opening", faults, positive_length),
        hollow: fields.read("hollow", faults, Hollow::read),
        pair: fields.read("pair", faults, text),
        points: fields.read("service points", faults, Each::read),
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
        faults.stop(Code::WRONG_TYPE, node.span, message, "measure both sides at the same heights");
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
