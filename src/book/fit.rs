//! What the maker's own sheet asks of the opening.

use super::{AskedPanel, Each, ServiceZone, Slot};
use crate::source::Spanned;
use crate::units::{Date, Length, LengthRange, Sides, Weight};

/// The maker's figures.
#[derive(Clone, Debug, Default)]
pub struct Fit {
    /// Which sheet.
    pub sheet: Slot<MakersSheet>,
    /// The opening that it asks for.
    pub opening: AskedOpening,
    /// Clear space around the thing.
    pub air: Air,
    /// How far what burns must stay from its heat.
    pub heat: Heat,
    /// The least play in all.
    pub play: Slot<Length>,
    /// How far the diagonals may differ.
    pub square: Slot<Length>,
    /// The flange or front that covers the cutout's edge.
    pub face: Slot<Face>,
    /// What it asks of its cabinet.
    pub cabinet: Slot<AskedCabinet>,
    /// The front panel that it takes.
    pub panel: Slot<AskedPanel>,
    /// How far it reaches below the top of the counter.
    pub below: Slot<Length>,
    /// What it may not stand over.
    pub not_over: Vec<Spanned<String>>,
    /// Room for its clips on each side.
    pub clips: Slot<Length>,
    /// Models that it may stand beside or on.
    pub pairs_with: Vec<Spanned<String>>,
    /// Width that the joining kit adds.
    pub joining_kit: Slot<Length>,
    /// From the finished wall to the valve's mark.
    pub valve_depth: Slot<LengthRange>,
    /// How its door moves.
    pub door: Slot<Door>,
    /// What it must be connected to.
    pub needs: Needs,
    /// Where it wants each service to come out.
    pub zones: Slot<Each<ServiceZone>>,
    /// The carton.
    pub carton: Slot<Sides>,
    /// The body out of its carton, doors off.
    pub doors_off: Slot<Sides>,
    /// Weight as delivered.
    pub weight: Slot<Weight>,
    /// The maker's own caution.
    pub caution: Slot<String>,
}

/// Which sheet the figures come from.
#[derive(Clone, Debug, Default)]
pub struct MakersSheet {
    /// Title or number.
    pub name: Slot<String>,
    /// Revision.
    pub revision: Slot<String>,
    /// Date.
    pub date: Slot<Date>,
}

/// The opening that the sheet asks for.
#[derive(Clone, Debug, Default)]
pub struct AskedOpening {
    /// Clear width.
    pub width: Slot<LengthRange>,
    /// Clear height.
    pub height: Slot<LengthRange>,
    /// Clear depth.
    pub depth: Slot<LengthRange>,
}

/// A clear space, and where it holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clearance {
    /// How much.
    pub length: Length,
    /// Where, in the sheet's words: `above counter`; empty: everywhere.
    pub holds: String,
}

/// Clear space around the thing.
#[derive(Clone, Debug, Default)]
pub struct Air {
    /// To the left.
    pub left: Slot<Clearance>,
    /// To the right.
    pub right: Slot<Clearance>,
    /// Above.
    pub top: Slot<Clearance>,
    /// Behind.
    pub back: Slot<Clearance>,
    /// Where it breathes.
    pub vents_at: Slot<String>,
}

/// How far what burns must stay from a cooking surface, by the maker's sheet.
#[derive(Clone, Debug, Default)]
pub struct Heat {
    /// From the cooking surface up to what burns.
    pub above: Slot<Length>,
    /// From the cooking surface up to what is shielded, or does not burn.
    pub above_shielded: Slot<Length>,
    /// From its left side to what burns and stands higher than the cooking surface.
    pub left: Slot<Length>,
    /// From its right side likewise.
    pub right: Slot<Length>,
    /// How far up from the cooking surface the distances to the sides hold; absent: all the way.
    pub up_to: Slot<Length>,
    /// From a cooking surface up to this thing, for what is made to hang over one.
    pub over_cooking: Slot<Length>,
}

/// The flange or front that covers the cutout's edge.
#[derive(Clone, Debug, Default)]
pub struct Face {
    /// Its width.
    pub width: Slot<Length>,
    /// Its height.
    pub height: Slot<Length>,
    /// How far it must cover the edge on each side.
    pub overlap: Slot<Length>,
}

/// What it asks of the cabinet that it is cut into.
#[derive(Clone, Debug, Default)]
pub struct AskedCabinet {
    /// Clear between the sides.
    pub inside_width: Slot<LengthRange>,
    /// From front edge to back panel or outlet.
    pub inside_depth: Slot<LengthRange>,
    /// Clear height.
    pub inside_height: Slot<LengthRange>,
    /// Over the sides.
    pub outside_width: Slot<LengthRange>,
    /// Whether the back panel must be cut away.
    pub back_cut_away: Slot<bool>,
}

/// How its door moves.
#[derive(Clone, Debug, Default)]
pub struct Door {
    /// How far a drop-down door reaches in front of the case.
    pub drops: Slot<Length>,
    /// How far a hung door reaches in front of the case.
    pub swings: Slot<Length>,
    /// How far a drawer comes out.
    pub pulls: Slot<Length>,
    /// To a wall on the hinge side.
    pub wall_clearance: Slot<Length>,
    /// The angle at which drawers come out, in words.
    pub angle: Slot<String>,
    /// Clear floor that the sheet asks for in front.
    pub in_front: Slot<Length>,
}

/// What it must be connected to, in the trade's words.
#[derive(Clone, Debug, Default)]
pub struct Needs {
    /// Volts, amperes, receptacle.
    pub power: Slot<String>,
    /// Kind and input.
    pub gas: Slot<String>,
    /// Line and valve.
    pub water: Slot<String>,
    /// Size and height.
    pub drain: Slot<String>,
    /// Size, length and way out.
    pub duct: Slot<String>,
    /// What brackets are fixed to.
    pub blocking: Slot<String>,
}
