//! The words for whether something burns, in every record of what may stand near heat.

use super::shape::{Field, Shape};
use crate::book::Burning;

/// Whether something burns.
pub const MATERIAL: Field = Field::optional(
    "material",
    Shape::OneOf(Burning::WORDS),
    "whether it burns, for what stands near a cooking surface; left out, it counts as burning",
    "does not burn",
);
