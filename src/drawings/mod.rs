//! Drawings of rooms and openings to scale, as SVG: plain structs in, text out.
//!
//! Places are whole thousandths of a user unit worked out from whole nanometres, so a drawing is
//! exact and its bytes never differ. A label stands where it lies on no other; one that finds no
//! room stands under the drawing.

pub mod sizes;

pub mod room;

mod corner_layout;
pub mod counter;

pub mod scale;

pub mod scan;

mod lettering;

mod place;

mod pen;

mod figures;

mod dimension;

mod bar;

mod told;

mod around_front;

mod face;

mod misfit;

mod ground;

mod front;

mod side;

mod plan;

mod option;

mod room_plan;

mod layout;

#[cfg(test)]
mod tests;

pub use scale::Paper;

use crate::drawings::sizes::{OpeningFront, OpeningPlan, OpeningSide, OptionPlan};

/// An opening from the front, with the thing in it.
pub fn opening_front(what: &OpeningFront, paper: Paper) -> String {
    front::draw(what, paper)
}

/// An opening from its right, cut from front to back.
pub fn opening_side(what: &OpeningSide, paper: Paper) -> String {
    side::draw(what, paper)
}

/// An opening from above, with the door open.
pub fn opening_plan(what: &OpeningPlan, paper: Paper) -> String {
    plan::draw(what, paper)
}

/// A room from above, with everything that stands in it.
pub fn room_plan(what: &room::RoomPlan, paper: Paper) -> String {
    room_plan::draw(what, paper)
}

/// A counter from above, cut into its pieces.
pub fn counter_layout(what: &counter::CounterDrawing, paper: Paper) -> String {
    layout::draw(what, paper)
}

/// The same in sentences, for those who hear it.
pub fn counter_layout_in_words(what: &counter::CounterDrawing) -> String {
    layout::told_in_words(&what.laid, (what.units, what.words))
}

/// Counters that meet, from above.
pub fn corner_layout(what: &counter::CornerDrawing, paper: Paper) -> String {
    corner_layout::draw(what, paper)
}

/// The same in sentences.
pub fn corner_layout_in_words(what: &counter::CornerDrawing) -> String {
    corner_layout::told_in_words(what)
}

/// Where counters that are drawn as one meet, a sentence each.
pub fn joints_in_words(what: &counter::CornerDrawing) -> Vec<String> {
    what.joined.joints.iter().map(|joint| corner_layout::joint_in_words(what, joint)).collect()
}

/// An option in its opening, small enough for a telephone and a desk alike.
pub fn option_plan(what: &OptionPlan) -> String {
    option::draw(what)
}
