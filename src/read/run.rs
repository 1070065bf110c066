//! Reads runs of cabinets, their parts, and islands.

use crate::book::vocabulary::{COUNTER, PART, RUN, SIDE};
use crate::book::{Burning, Island, IslandEdge, Part, PartIs, Run, Slot};
use crate::finding::Code;
use crate::source::Spanned;
use crate::source::yaml::Node;
use crate::units::Length;
use crate::vocabulary::values::{positive_length, readings, text, two_sides, whole, yes_no};
use crate::vocabulary::{Faults, Fields, Value};

use super::layout::{end, name, word};

/// A run of cabinets.
pub fn run(own: Spanned<String>, fields: &mut Fields<'_>, faults: &mut Faults) -> Run {
    let (counter_depth, counter_height) = counter(fields.node("counter"), faults);
    Run {
        name: own,
        wall: fields.read("wall", faults, name),
        from: end(fields, &RUN, faults),
        starts: fields.read("starts", faults, positive_length),
        above_floor: fields.read("above floor", faults, positive_length),
        depth: fields.read("depth", faults, positive_length),
        height: fields.read("height", faults, positive_length),
        counter_depth,
        counter_height,
        handles: fields.read("handles", faults, positive_length),
        crown: fields.read("crown", faults, positive_length),
        space: fields.read("space", faults, readings),
        left_end: word(fields, &RUN, "left end", faults),
        right_end: word(fields, &RUN, "right end", faults),
        burning: fields.read("material", faults, Burning::read),
        parts: fields.list("parts", faults, part),
    }
}

fn counter(node: Option<&Node>, faults: &mut Faults) -> (Slot<Length>, Slot<Length>) {
    let Some(mut fields) = node.and_then(|node| Fields::of(node, &COUNTER, faults)) else {
        return (Slot::Absent, Slot::Absent);
    };
    let sizes = (fields.read("depth", faults, positive_length), fields.read("height", faults, positive_length));
    fields.finish(faults);
    sizes
}

/// One thing in a run.
fn part(node: &Node, faults: &mut Faults) -> Option<Part> {
    let mut fields = Fields::of(node, &PART, faults)?;
    let span = fields.span;
    let cabinet = fields.read("cabinet", faults, text);
    let tall = fields.read("tall", faults, text);
    let filler = fields.read("filler", faults, positive_length);
    let panel = fields.read("panel", faults, positive_length);
    let gap = fields.read("gap", faults, positive_length);
    let opening = fields.read("opening", faults, name);
    let absent = [
        cabinet.is_absent(),
        tall.is_absent(),
        filler.is_absent(),
        panel.is_absent(),
        gap.is_absent(),
        opening.is_absent(),
    ];
    let written = absent.iter().filter(|absent| !**absent).count();
    let is = [
        cabinet.get().cloned().map(PartIs::Cabinet),
        tall.get().cloned().map(PartIs::Tall),
        filler.get().copied().map(PartIs::Filler),
        panel.get().copied().map(PartIs::Panel),
        gap.get().copied().map(PartIs::Gap),
        opening.spanned().cloned().map(PartIs::Opening),
    ];
    let is = is.into_iter().flatten().next();
    let width = fields.read("width", faults, positive_length);
    let depth = fields.read("depth", faults, positive_length);
    let height = fields.read("height", faults, positive_length);
    let doors = fields.read("doors", faults, whole);
    let drawers = fields.read("drawers", faults, whole);
    let hinge = word(&mut fields, &PART, "hinge", faults);
    let stiles = fields.read("stiles", faults, positive_length);
    let burning = fields.read("material", faults, Burning::read);
    let holds =
        fields.list("holds", faults, |node, faults| name(node, faults).map(|name| Spanned::new(name, node.span)));
    fields.finish(faults);
    if written != 1 {
        let message = match written {
            0 => "this part of a run says not what it is".to_string(),
            several => format!("this part of a run is {several} things at once"),
        };
        let remedy = "write one of `cabinet`, `tall`, `filler`, `panel`, `gap` and `opening`";
        faults.stop(Code::WRONG_TYPE, span, message, remedy);
        return None;
    }
    Some(Part { is: is?, width, depth, height, doors, drawers, hinge, stiles, holds, burning, span })
}

/// An island.
pub fn island(own: Spanned<String>, fields: &mut Fields<'_>, faults: &mut Faults) -> Island {
    Island {
        name: own,
        wall: fields.read("wall", faults, name),
        at: fields.read("at", faults, positive_length),
        away: fields.read("away", faults, positive_length),
        size: fields.read("size", faults, two_sides),
        turned: fields.read("turned", faults, yes_no),
        height: fields.read("height", faults, positive_length),
        depth: fields.read("depth", faults, positive_length),
        handles: fields.read("handles", faults, positive_length),
        sides: ["wall side", "room side", "left side", "right side"].map(|key| side(fields.node(key), faults)),
    }
}

fn side(node: Option<&Node>, faults: &mut Faults) -> IslandEdge {
    let Some(mut fields) = node.and_then(|node| Fields::of(node, &SIDE, faults)) else {
        return IslandEdge::default();
    };
    let side = IslandEdge {
        overhang: fields.read("overhang", faults, positive_length),
        seats: fields.read("seats", faults, whole),
        parts: fields.list("parts", faults, part),
    };
    fields.finish(faults);
    side
}
