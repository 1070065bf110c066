//! Reads what is clear in a room.

use crate::book::vocabulary::{CLEARANCES, LANDING, NameOf, SEATING, SHARED, STRETCH, Shape, TRIANGLE};
use crate::book::{Beside, Clearances, Frontage, Landing, Seating, Slot, Stretch, Triangle};
use crate::source::Spanned;
use crate::source::yaml::{Node, Value};

use super::faults::Faults;
use super::fields::Fields;
use super::values::{positive_length, readings, scalar, two_sides, whole, word, yes_no};

/// Distances in a room.
pub fn clearances(node: Option<&Node>, faults: &mut Faults) -> Clearances {
    let mut read = Clearances::default();
    let Some(mut fields) = node.and_then(|node| Fields::of(node, &CLEARANCES, faults)) else { return read };
    for (name, node) in fields.named("doorways", faults) {
        if let Some(width) = positive_length(node, faults) {
            read.doorways.push((name.clone(), Spanned::new(width, node.span)));
        }
    }
    read.triangle = fields.read("triangle", faults, triangle);
    read.frontage = fields.read("counter frontage", faults, frontage);
    for field in CLEARANCES.fields {
        match field.shape {
            Shape::Readings => {
                if let Slot::Given(measured) = fields.read(field.key, faults, readings) {
                    read.lengths.insert(field.key, measured.value);
                }
            }
            Shape::Sides => {
                if let Slot::Given(measured) = fields.read(field.key, faults, two_sides) {
                    read.sides.insert(field.key, measured);
                }
            }
            _ => {}
        }
    }
    fields.finish(faults);
    read
}

fn triangle(node: &Node, faults: &mut Faults) -> Option<Triangle> {
    let mut fields = Fields::of(node, &TRIANGLE, faults)?;
    let triangle = Triangle {
        sink_to_cooking: fields.read("sink to cooking", faults, positive_length),
        cooking_to_refrigerator: fields.read("cooking to refrigerator", faults, positive_length),
        refrigerator_to_sink: fields.read("refrigerator to sink", faults, positive_length),
        cuts_into_island: fields.read("cuts into island", faults, positive_length),
    };
    fields.finish(faults);
    Some(triangle)
}

fn frontage(node: &Node, faults: &mut Faults) -> Option<Frontage> {
    let Value::List(items) = &node.value else {
        return positive_length(node, faults).map(Frontage::InAll);
    };
    // Every stretch is read before judging, so that each faulty one is told.
    let stretches: Vec<Option<Stretch>> = items.iter().map(|item| stretch(item, faults)).collect();
    stretches.into_iter().collect::<Option<Vec<_>>>().map(Frontage::Stretches)
}

fn stretch(node: &Node, faults: &mut Faults) -> Option<Stretch> {
    let mut fields = Fields::of(node, &STRETCH, faults)?;
    let length = fields.read("length", faults, positive_length);
    let depth = fields.read("depth", faults, positive_length);
    let clear_above = fields.read("clear above", faults, positive_length);
    fields.finish(faults);
    Some(Stretch { length: *length.get()?, depth, clear_above })
}

/// Counter around an opening.
pub fn landing(node: &Node, faults: &mut Faults) -> Option<Landing> {
    let mut fields = Fields::of(node, &LANDING, faults)?;
    let landing = Landing {
        left: fields.read("left", faults, beside),
        right: fields.read("right", faults, beside),
        behind: fields.read("behind", faults, positive_length),
        above: fields.read("above", faults, positive_length),
        across: fields.read("across", faults, positive_length),
        across_at: fields.read("across at", faults, positive_length),
        across_a_walkway: fields.read("across a walkway", faults, yes_no),
        to_corner: fields.read("to corner", faults, positive_length),
        around_corner: fields.read("return", faults, positive_length),
        second_sink: fields.read("second sink", faults, yes_no),
    };
    fields.finish(faults);
    Some(landing)
}

fn beside(node: &Node, faults: &mut Faults) -> Option<Beside> {
    if let Value::Scalar { .. } = node.value {
        return positive_length(node, faults).map(|counter| Beside { counter, to: None, preparation: false });
    }
    let mut fields = Fields::of(node, &SHARED, faults)?;
    let counter = fields.read("counter", faults, positive_length);
    let to = fields
        .read("to", faults, |node, faults| scalar(node, &Shape::Name(NameOf::Opening), faults).map(str::to_string));
    let preparation = fields.read("preparation", faults, yes_no);
    fields.finish(faults);
    Some(Beside {
        counter: *counter.get()?,
        to: to.spanned().cloned(),
        preparation: preparation.get().copied().unwrap_or(false),
    })
}

/// Where people sit, by name.
pub fn seating(pairs: &[(Spanned<String>, Node)], faults: &mut Faults) -> Vec<Seating> {
    pairs.iter().filter_map(|(name, node)| place(name, node, faults)).collect()
}

fn place(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<Seating> {
    let mut fields = Fields::of(node, &SEATING, faults)?;
    let seating = Seating {
        span: name.span,
        name: name.clone(),
        edge: fields.read("edge", faults, positive_length),
        seats: fields.read("seats", faults, whole),
        height: fields.read("height", faults, positive_length),
        knee_depth: fields.read("knee depth", faults, positive_length),
        behind: fields.read("behind", faults, positive_length),
        traffic: word(&mut fields, &SEATING, "traffic", faults).map_or(Slot::Absent, Slot::Given),
        wheelchair: fields.read("wheelchair", faults, yes_no),
    };
    fields.finish(faults);
    Some(seating)
}
