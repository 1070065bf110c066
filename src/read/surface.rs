//! Reads how tile, floors and wallpaper are sold, laid and hung.

use crate::book::vocabulary::{LAID, PAPERED, SOLD};
use crate::book::{Laid, Papered, Sold};
use crate::source::yaml::Node;

use super::faults::Faults;
use super::fields::Fields;
use super::values::{area, percent, positive_length, quantity, text, two_sides, word_slot};

/// The boxes or rolls that a surface comes in.
pub fn sold(node: &Node, faults: &mut Faults) -> Option<Sold> {
    let mut fields = Fields::of(node, &SOLD, faults)?;
    let sold = Sold {
        box_holds: fields.read("box holds", faults, quantity),
        lot: fields.read("lot", faults, text),
        roll: fields.read("roll", faults, two_sides),
        repeat: fields.read("repeat", faults, positive_length),
    };
    fields.finish(faults);
    Some(sold)
}

/// How a surface is laid.
pub fn laid(node: &Node, faults: &mut Faults) -> Option<Laid> {
    let mut fields = Fields::of(node, &LAID, faults)?;
    let laid = Laid {
        area: fields.read("area", faults, area),
        waste: fields.read("waste", faults, percent),
        runs: fields.read("runs", faults, text),
        offset: fields.read("offset", faults, percent),
        edges: word_slot(&mut fields, &LAID, "edges", faults),
        varies_by: fields.read("varies by", faults, positive_length),
        warps_by: fields.read("warps by", faults, positive_length),
        least_joint: fields.read("least joint", faults, positive_length),
        open_edges: fields.read("open edges", faults, positive_length),
    };
    fields.finish(faults);
    Some(laid)
}

/// The walls that a wallpaper covers.
pub fn papered(node: &Node, faults: &mut Faults) -> Option<Papered> {
    let mut fields = Fields::of(node, &PAPERED, faults)?;
    let along = fields.read("along", faults, positive_length);
    let height = fields.read("height", faults, positive_length);
    let trim = fields.read("trim", faults, positive_length);
    fields.finish(faults);
    Some(Papered { along: *along.get()?, height: *height.get()?, trim })
}
