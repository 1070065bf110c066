//! Reads `fit`: what the maker's own sheet asks of the opening.

use crate::book::vocabulary::{AIR, CABINET, DOOR, FACE, FIT, FIT_OPENING, HEAT, NEEDS, SHEET};
use crate::book::{Air, AskedCabinet, AskedOpening, Door, Face, Fit, Heat, MakersSheet, Needs, Slot};
use crate::source::yaml::Node;

use super::faults::Faults;
use super::fields::Fields;
use super::opening::cut_away;
use super::values::{self, clearance, date, length_range, positive_length, spanned_text, text, three_sides, weight};
use super::{built_in, supply};

/// Reads the maker's figures.
pub fn fit(node: &Node, faults: &mut Faults) -> Option<Fit> {
    let mut fields = Fields::of(node, &FIT, faults)?;
    let fit = Fit {
        sheet: fields.read("sheet", faults, sheet),
        opening: fields.node("opening").and_then(|node| asked_opening(node, faults)).unwrap_or_default(),
        air: fields.node("air").and_then(|node| air(node, faults)).unwrap_or_default(),
        heat: fields.node("heat").and_then(|node| heat(node, faults)).unwrap_or_default(),
        play: fields.read("play", faults, positive_length),
        square: fields.read("square", faults, positive_length),
        face: fields.read("face", faults, face),
        cabinet: fields.read("cabinet", faults, asked_cabinet),
        panel: fields.read("panel", faults, built_in::panel),
        below: fields.read("below", faults, positive_length),
        not_over: fields.list("not over", faults, spanned_text),
        clips: fields.read("clips", faults, positive_length),
        pairs_with: fields.list("pairs with", faults, spanned_text),
        joining_kit: fields.read("joining kit", faults, positive_length),
        valve_depth: fields.read("valve depth", faults, length_range),
        door: fields.read("door", faults, door),
        needs: fields.node("needs").and_then(|node| needs(node, faults)).unwrap_or_default(),
        zones: fields.read("zones", faults, supply::zones),
        carton: fields.read("carton", faults, three_sides),
        doors_off: fields.read("doors off", faults, three_sides),
        weight: fields.read("weight", faults, weight),
        caution: fields.read("caution", faults, text),
    };
    fields.finish(faults);
    Some(fit)
}

fn sheet(node: &Node, faults: &mut Faults) -> Option<MakersSheet> {
    let mut fields = Fields::of(node, &SHEET, faults)?;
    let sheet = MakersSheet {
        name: fields.read("name", faults, text),
        revision: fields.read("revision", faults, text),
        date: fields.read("date", faults, date),
    };
    fields.finish(faults);
    Some(sheet)
}

fn asked_opening(node: &Node, faults: &mut Faults) -> Option<AskedOpening> {
    let mut fields = Fields::of(node, &FIT_OPENING, faults)?;
    let asked = AskedOpening {
        width: fields.read("width", faults, length_range),
        height: fields.read("height", faults, length_range),
        depth: fields.read("depth", faults, length_range),
    };
    fields.finish(faults);
    Some(asked)
}

fn air(node: &Node, faults: &mut Faults) -> Option<Air> {
    let mut fields = Fields::of(node, &AIR, faults)?;
    let vents = values::word(&mut fields, &AIR, "vents at", faults);
    let air = Air {
        left: fields.read("left", faults, clearance),
        right: fields.read("right", faults, clearance),
        top: fields.read("top", faults, clearance),
        back: fields.read("back", faults, clearance),
        vents_at: vents.map_or(Slot::Absent, |word| Slot::Given(word.map(str::to_string))),
    };
    fields.finish(faults);
    Some(air)
}

fn heat(node: &Node, faults: &mut Faults) -> Option<Heat> {
    let mut fields = Fields::of(node, &HEAT, faults)?;
    let mut length = |key| fields.read(key, faults, positive_length);
    let heat = Heat {
        above: length("above"),
        above_shielded: length("above shielded"),
        left: length("left"),
        right: length("right"),
        up_to: length("up to"),
        over_cooking: length("over cooking"),
    };
    fields.finish(faults);
    Some(heat)
}

fn face(node: &Node, faults: &mut Faults) -> Option<Face> {
    let mut fields = Fields::of(node, &FACE, faults)?;
    let face = Face {
        width: fields.read("width", faults, positive_length),
        height: fields.read("height", faults, positive_length),
        overlap: fields.read("overlap", faults, positive_length),
    };
    fields.finish(faults);
    Some(face)
}

fn asked_cabinet(node: &Node, faults: &mut Faults) -> Option<AskedCabinet> {
    let mut fields = Fields::of(node, &CABINET, faults)?;
    let asked = AskedCabinet {
        inside_width: fields.read("inside width", faults, length_range),
        inside_depth: fields.read("inside depth", faults, length_range),
        inside_height: fields.read("inside height", faults, length_range),
        outside_width: fields.read("outside width", faults, length_range),
        back_cut_away: cut_away(values::word(&mut fields, &CABINET, "back panel", faults)),
    };
    fields.finish(faults);
    Some(asked)
}

fn door(node: &Node, faults: &mut Faults) -> Option<Door> {
    let mut fields = Fields::of(node, &DOOR, faults)?;
    let door = Door {
        drops: fields.read("drops", faults, positive_length),
        swings: fields.read("swings", faults, positive_length),
        pulls: fields.read("pulls", faults, positive_length),
        wall_clearance: fields.read("wall clearance", faults, positive_length),
        angle: fields.read("angle", faults, text),
        in_front: fields.read("in front", faults, positive_length),
    };
    fields.finish(faults);
    Some(door)
}

fn needs(node: &Node, faults: &mut Faults) -> Option<Needs> {
    let mut fields = Fields::of(node, &NEEDS, faults)?;
    let needs = Needs {
        power: fields.read("power", faults, text),
        gas: fields.read("gas", faults, text),
        water: fields.read("water", faults, text),
        drain: fields.read("drain", faults, text),
        duct: fields.read("duct", faults, text),
        blocking: fields.read("blocking", faults, text),
    };
    fields.finish(faults);
    Some(needs)
}
