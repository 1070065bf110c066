//! Reads the codes that count for a book, and the house around its rooms.

use crate::book::vocabulary::{CODES, FIGURE, HOUSE};
use crate::book::{Codes, House, OwnFigure};
use crate::source::yaml::Node;

use super::faults::Faults;
use super::fields::Fields;
use super::values::{spanned_text, text, whole, yes_no};

/// The codes that count.
pub fn codes(node: &Node, faults: &mut Faults) -> Option<Codes> {
    let mut fields = Fields::of(node, &CODES, faults)?;
    let codes =
        Codes { adopts: fields.list("adopts", faults, spanned_text), figures: fields.list("figures", faults, figure) };
    fields.finish(faults);
    Some(codes)
}

fn figure(node: &Node, faults: &mut Faults) -> Option<OwnFigure> {
    let mut fields = Fields::of(node, &FIGURE, faults)?;
    let figure = fields.read("figure", faults, text);
    let is = fields.read("is", faults, text);
    let because = fields.read("because", faults, text);
    let by = fields.read("by", faults, text);
    fields.finish(faults);
    Some(OwnFigure {
        figure: figure.spanned()?.clone(),
        is: is.spanned()?.clone(),
        because: because.get()?.clone(),
        by: by.get()?.clone(),
    })
}

/// The house around the rooms.
pub fn house(node: &Node, faults: &mut Faults) -> Option<House> {
    let mut fields = Fields::of(node, &HOUSE, faults)?;
    let house = House {
        open_flue: fields.read("open flue", faults, yes_no),
        heating_value: fields.read("heating value", faults, whole),
    };
    fields.finish(faults);
    Some(house)
}
