//! The words for whether something burns, in every record of what may stand near heat.

use crate::book::Burning;
use crate::vocabulary::{Field, Value};

/// Whether something burns.
pub const MATERIAL: Field = Field::optional(
    "material",
    Burning::SHAPE,
    "whether it burns, for what stands near a cooking surface; left out, it counts as burning",
    "does not burn",
);
