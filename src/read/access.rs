//! Reads what a room offers in access.

use crate::book::vocabulary::{ACCESS, CONTROL, KNEE_SPACE, KNEES_AT, Shape};
use crate::book::{Access, ClearFloor, Control, KneeSpace, Slot};
use crate::source::Spanned;
use crate::source::yaml::Node;
use crate::units::Length;

use super::faults::Faults;
use super::fields::Fields;
use super::values::{percent, positive_length, readings, two_sides, word, yes_no};

/// Access in a room.
pub fn access(node: Option<&Node>, faults: &mut Faults) -> Access {
    let mut read = Access::default();
    let Some(mut fields) = node.and_then(|node| Fields::of(node, &ACCESS, faults)) else { return read };
    for (name, node) in fields.named("clear floor", faults) {
        if let Some(sides) = two_sides(node, faults) {
            read.clear_floor.push(ClearFloor { name: name.clone(), sides: Spanned::new(sides, node.span) });
        }
    }
    for (name, node) in fields.named("knee spaces", faults) {
        read.knee_spaces.extend(knee_space(name, node, faults));
    }
    for (name, node) in fields.named("controls", faults) {
        read.controls.extend(control(name, node, faults));
    }
    read.kitchen = word(&mut fields, &ACCESS, "kitchen", faults).map_or(Slot::Absent, Slot::Given);
    read.shower_type = word(&mut fields, &ACCESS, "shower type", faults).map_or(Slot::Absent, Slot::Given);
    read.work_surface_adjusts = fields.read("work surface adjusts", faults, yes_no);
    read.shelves_in_reach = fields.read("shelves in reach", faults, percent);
    for field in ACCESS.fields.iter().filter(|field| matches!(field.shape, Shape::Readings)) {
        if let Slot::Given(measured) = fields.read(field.key, faults, readings) {
            read.lengths.insert(field.key, measured.value);
        }
    }
    fields.finish(faults);
    read
}

fn knee_space(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<KneeSpace> {
    let mut fields = Fields::of(node, &KNEE_SPACE, faults)?;
    let space = KneeSpace {
        name: name.clone(),
        width: fields.read("width", faults, positive_length),
        height: fields.read("height", faults, positive_length),
        depth: fields.read("depth", faults, positive_length),
        toe_depth: fields.read("toe depth", faults, positive_length),
        knees: fields.list("knees", faults, knees_at),
    };
    fields.finish(faults);
    Some(space)
}

fn knees_at(node: &Node, faults: &mut Faults) -> Option<(Length, Spanned<Length>)> {
    let mut fields = Fields::of(node, &KNEES_AT, faults)?;
    let at = fields.read("at", faults, positive_length);
    let deep = fields.read("deep", faults, positive_length);
    fields.finish(faults);
    Some((*at.get()?, deep.spanned()?.clone()))
}

fn control(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<Control> {
    let mut fields = Fields::of(node, &CONTROL, faults)?;
    let height = fields.read("height", faults, positive_length);
    let reach = word(&mut fields, &CONTROL, "reach", faults);
    let over_depth = fields.read("over depth", faults, positive_length);
    let over_height = fields.read("over height", faults, positive_length);
    let twists = fields.read("twists", faults, yes_no);
    fields.finish(faults);
    Some(Control {
        span: name.span,
        name: name.clone(),
        height: height.spanned()?.clone(),
        from_the_side: reach.is_some_and(|reach| reach.value == "side"),
        over_depth,
        over_height,
        twists,
    })
}
