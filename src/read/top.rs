//! Reads counters: what they are made of, what carries them, and the slabs that they are cut from.

use crate::book::vocabulary::{Record, SEAM, SLAB, SUPPORTS, TOP};
use crate::book::{Piece, Seam, Slab, Slot, Supports, Top};
use crate::source::Spanned;
use crate::source::yaml::Node;

use super::faults::Faults;
use super::fields::Fields;
use super::values::{positive_length, spanned_text, text, two_sides, whole, word, yes_no};

/// A counter or an island's top.
pub fn top(node: &Node, faults: &mut Faults) -> Option<Top> {
    let mut fields = Fields::of(node, &TOP, faults)?;
    let pieces = fields.named("pieces", faults).iter().filter_map(|(name, node)| piece(name, node, faults));
    let pieces = pieces.collect();
    let top = Top {
        material: chosen(&mut fields, &TOP, "material", faults),
        lies_on: fields.list("lies on", faults, spanned_text),
        depth: fields.read("depth", faults, positive_length),
        overhang: fields.read("overhang", faults, positive_length),
        free_span: fields.read("free span", faults, positive_length),
        supports: fields.read("supports", faults, supports),
        slab: fields.read("slab", faults, slab),
        pieces,
        seams: fields.list("seams", faults, seam),
        layout: chosen(&mut fields, &TOP, "layout", faults),
        inside_corners: fields.read("inside corners", faults, positive_length),
    };
    fields.finish(faults);
    Some(top)
}

/// One of a field's words; faulty when it is none of them.
fn chosen(
    fields: &mut Fields<'_>,
    record: &'static Record,
    key: &'static str,
    faults: &mut Faults,
) -> Slot<&'static str> {
    if fields.node(key).is_none() {
        return Slot::Absent;
    }
    word(fields, record, key, faults).map_or(Slot::Faulty, Slot::Given)
}

fn piece(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<Piece> {
    let (length, depth) = two_sides(node, faults)?;
    Some(Piece { name: name.clone(), length, depth })
}

fn supports(node: &Node, faults: &mut Faults) -> Option<Supports> {
    let mut fields = Fields::of(node, &SUPPORTS, faults)?;
    let by = word(&mut fields, &SUPPORTS, "by", faults);
    let out = fields.read("out", faults, positive_length);
    let inward = fields.read("in", faults, positive_length);
    let apart = fields.read("apart", faults, positive_length);
    fields.finish(faults);
    Some(Supports { by: by?, out, inward, apart })
}

fn slab(node: &Node, faults: &mut Faults) -> Option<Slab> {
    let mut fields = Fields::of(node, &SLAB, faults)?;
    let slab = Slab {
        size: fields.read("size", faults, two_sides),
        usable: fields.read("usable", faults, two_sides),
        kerf: fields.read("kerf", faults, positive_length),
        direction: chosen(&mut fields, &SLAB, "direction", faults),
        count: fields.read("count", faults, whole),
    };
    fields.finish(faults);
    Some(slab)
}

fn seam(node: &Node, faults: &mut Faults) -> Option<Seam> {
    let mut fields = Fields::of(node, &SEAM, faults)?;
    let at = fields.read("at", faults, text);
    let seam = Seam {
        at: Spanned::new(String::new(), node.span),
        over: chosen(&mut fields, &SEAM, "over", faults),
        on: fields.read("on", faults, text),
        from_left: fields.read("from left", faults, positive_length),
        reinforced: fields.read("reinforced", faults, yes_no),
    };
    fields.finish(faults);
    Some(Seam { at: at.spanned()?.clone(), ..seam })
}
