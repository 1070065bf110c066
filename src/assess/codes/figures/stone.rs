//! Figures of counters: how far stone stands out and spans by itself, usual slabs, inside corners.

use super::length;
use crate::assess::codes::{Basis, Figure};

/// The stone manual, as fabricators repeat it.
const MANUAL: &str = "MIA/NSI Dimension Stone Design Manual, chapter 17, as fabricators quote it";

/// Overhang of 2 cm stone.
pub static STONE_OVERHANG_2: Figure = length("overhang of 2 cm stone", 384, Basis::Guideline, MANUAL);
/// Overhang of 3 cm stone.
pub static STONE_OVERHANG_3: Figure = length("overhang of 3 cm stone", 640, Basis::Guideline, MANUAL);
/// Free span of 2 cm stone.
pub static STONE_SPAN_2: Figure = length("free span of 2 cm stone", 1536, Basis::Guideline, MANUAL);
/// Free span of 3 cm stone.
pub static STONE_SPAN_3: Figure = length("free span of 3 cm stone", 2304, Basis::Guideline, MANUAL);
/// Overhang without steel.
pub static OVERHANG_WITHOUT_STEEL: Figure =
    length("overhang without steel", 896, Basis::Practice, "common practice (fabricators' terms)");
/// Overhang without posts.
pub static OVERHANG_WITHOUT_POSTS: Figure =
    length("overhang without posts", 1536, Basis::Practice, "common practice (fabricators' terms)");
/// Length of a usual slab.
pub static SLAB_LENGTH: Figure =
    length("length of a usual slab", 7680, Basis::Practice, "common practice (trade pages on slab sizes)");
/// Width of a usual slab.
pub static SLAB_WIDTH: Figure =
    length("width of a usual slab", 4608, Basis::Practice, "common practice (trade pages on slab sizes)");
/// Least inside corner of a stone cutout.
pub static INSIDE_CORNER: Figure =
    length("least inside corner of a stone cutout", 16, Basis::Practice, "shop practice: the usual core bits");

/// All of them.
pub(super) static ALL: &[&Figure] = &[
    &STONE_OVERHANG_2,
    &STONE_OVERHANG_3,
    &STONE_SPAN_2,
    &STONE_SPAN_3,
    &OVERHANG_WITHOUT_STEEL,
    &OVERHANG_WITHOUT_POSTS,
    &SLAB_LENGTH,
    &SLAB_WIDTH,
    &INSIDE_CORNER,
];
