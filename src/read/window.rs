//! Reads windows.

use crate::book::Window;
use crate::book::vocabulary::WINDOW;
use crate::source::Spanned;
use crate::source::yaml::Node;

use super::faults::Faults;
use super::fields::Fields;
use super::values::{positive_length, text, yes_no};

/// A window.
pub fn window(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<Window> {
    let mut fields = Fields::of(node, &WINDOW, faults)?;
    let window = Window {
        span: name.span,
        name: name.clone(),
        width: fields.read("width", faults, positive_length),
        height: fields.read("height", faults, positive_length),
        sill: fields.read("sill", faults, positive_length),
        opens: fields.read("opens", faults, yes_no),
        glass: fields.read("glass", faults, text),
        from_water: fields.read("from water", faults, positive_length),
        above: fields.read("above", faults, text),
    };
    fields.finish(faults);
    Some(window)
}
