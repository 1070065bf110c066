//! Figures of kitchens: to pass, to work, to sit, to set things down.

use super::length;
use crate::assess::codes::{Basis, Family, Figure};

/// Clear opening of a doorway.
pub static DOORWAY: Figure = length(
    "clear opening of a doorway",
    2048,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 1, bath guideline 1",
);
/// Work aisle for one cook.
pub static WORK_AISLE_ONE: Figure = length(
    "work aisle for one cook",
    2688,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 6",
);
/// Work aisle for two cooks or more.
pub static WORK_AISLE_MORE: Figure = length(
    "work aisle for two cooks or more",
    3072,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 6",
);
/// Walkway.
pub static WALKWAY: Figure =
    length("walkway", 2304, Basis::Guideline, "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 7");
/// Clear passage in a kitchen.
pub static PASSAGE: Figure =
    length("clear passage in a kitchen", 2304, Basis::Code(Family::Ibc, 2018, 9999), "IBC 2018, section 1207.1");
/// Sum of the work triangle's legs.
pub static TRIANGLE: Figure = length(
    "sum of the work triangle's legs",
    19968,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 3",
);
/// Least leg of the work triangle.
pub static LEG_LEAST: Figure = length(
    "least leg of the work triangle",
    3072,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 3",
);
/// Greatest leg of the work triangle.
pub static LEG_MOST: Figure = length(
    "greatest leg of the work triangle",
    6912,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 3",
);
/// Cut of a leg across an island.
pub static LEG_ACROSS: Figure = length(
    "cut of a leg across an island",
    768,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 3",
);
/// Behind seats where nobody passes.
pub static SEATED_NO_TRAFFIC: Figure = length(
    "behind seats where nobody passes",
    2048,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 8",
);
/// Behind seats where one edges past.
pub static SEATED_EDGE: Figure = length(
    "behind seats where one edges past",
    2304,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 8",
);
/// Behind seats where one walks past.
pub static SEATED_WALK: Figure = length(
    "behind seats where one walks past",
    2816,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 8",
);
/// Width of a seat.
pub static SEAT_WIDTH: Figure = length(
    "width of a seat",
    1536,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 9",
);
/// Knee depth at a 30 inch surface.
pub static KNEES_AT_30: Figure = length(
    "knee depth at a 30 inch surface",
    1152,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 9",
);
/// Knee depth at a 36 inch counter.
pub static KNEES_AT_36: Figure = length(
    "knee depth at a 36 inch counter",
    960,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 9",
);
/// Knee depth at a 42 inch counter.
pub static KNEES_AT_42: Figure = length(
    "knee depth at a 42 inch counter",
    768,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 9",
);
/// Landing on one side of a sink.
pub static SINK_LANDING_ONE: Figure = length(
    "landing on one side of a sink",
    1536,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 11",
);
/// Landing on the other side of a sink.
pub static SINK_LANDING_OTHER: Figure = length(
    "landing on the other side of a sink",
    1152,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 11",
);
/// Sink to an inside corner.
pub static SINK_TO_CORNER: Figure = length(
    "sink to an inside corner",
    192,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 11",
);
/// Counter past the corner beside a sink.
pub static SINK_RETURN: Figure = length(
    "counter past the corner beside a sink",
    1344,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 11",
);
/// Width of the preparation counter.
pub static PREP_WIDTH: Figure = length(
    "width of the preparation counter",
    2304,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 12",
);
/// Depth of the preparation counter.
pub static PREP_DEPTH: Figure = length(
    "depth of the preparation counter",
    1536,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 12",
);
/// Dishwasher to sink.
pub static DISHWASHER_TO_SINK: Figure = length(
    "dishwasher to sink",
    2304,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 13",
);
/// Standing room beside a dishwasher.
pub static DISHWASHER_STANDING: Figure = length(
    "standing room beside a dishwasher",
    1344,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 13",
);
/// Landing at a refrigerator.
pub static FRIDGE_LANDING: Figure = length(
    "landing at a refrigerator",
    960,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 16",
);
/// Landing across from a refrigerator or oven.
pub static LANDING_ACROSS: Figure = length(
    "landing across from a refrigerator or oven",
    3072,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 16",
);
/// Landing on one side of a cooking surface.
pub static COOKTOP_LANDING_ONE: Figure = length(
    "landing on one side of a cooking surface",
    768,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 17",
);
/// Landing on the other side of a cooking surface.
pub static COOKTOP_LANDING_OTHER: Figure = length(
    "landing on the other side of a cooking surface",
    960,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 17",
);
/// Counter behind a cooking surface on an island.
pub static COOKTOP_BEHIND: Figure = length(
    "counter behind a cooking surface on an island",
    576,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 17",
);
/// Landing at a microwave.
pub static MICROWAVE_LANDING: Figure = length(
    "landing at a microwave",
    960,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 22",
);
/// Landing at an oven.
pub static OVEN_LANDING: Figure = length(
    "landing at an oven",
    960,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 23",
);
/// More where two landings share a counter.
pub static LANDINGS_SHARED: Figure = length(
    "more where two landings share a counter",
    768,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 24",
);
/// Counter frontage in all.
pub static FRONTAGE: Figure = length(
    "counter frontage in all",
    10112,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 25",
);
/// Depth of a counter that counts as frontage.
pub static FRONTAGE_DEPTH: Figure = length(
    "depth of a counter that counts as frontage",
    1536,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 25",
);
/// Bottom of a microwave at most.
pub static MICROWAVE_TOP: Figure = length(
    "bottom of a microwave at most",
    3456,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 21",
);
/// Bottom of a microwave below a counter.
pub static MICROWAVE_LEAST: Figure = length(
    "bottom of a microwave below a counter",
    960,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 21",
);

/// All of them.
pub(super) static ALL: &[&Figure] = &[
    &DOORWAY,
    &WORK_AISLE_ONE,
    &WORK_AISLE_MORE,
    &WALKWAY,
    &PASSAGE,
    &TRIANGLE,
    &LEG_LEAST,
    &LEG_MOST,
    &LEG_ACROSS,
    &SEATED_NO_TRAFFIC,
    &SEATED_EDGE,
    &SEATED_WALK,
    &SEAT_WIDTH,
    &KNEES_AT_30,
    &KNEES_AT_36,
    &KNEES_AT_42,
    &SINK_LANDING_ONE,
    &SINK_LANDING_OTHER,
    &SINK_TO_CORNER,
    &SINK_RETURN,
    &PREP_WIDTH,
    &PREP_DEPTH,
    &DISHWASHER_TO_SINK,
    &DISHWASHER_STANDING,
    &FRIDGE_LANDING,
    &LANDING_ACROSS,
    &COOKTOP_LANDING_ONE,
    &COOKTOP_LANDING_OTHER,
    &COOKTOP_BEHIND,
    &MICROWAVE_LANDING,
    &OVEN_LANDING,
    &LANDINGS_SHARED,
    &FRONTAGE,
    &FRONTAGE_DEPTH,
    &MICROWAVE_TOP,
    &MICROWAVE_LEAST,
];
