//! Figures of baths: to stand, to sit, to wash.

use super::{length, millimetres, number};
use crate::assess::codes::{Basis, Family, Figure};

/// Clear floor before a bath fixture, advised.
pub static FRONT_ADVISED: Figure = length(
    "clear floor before a bath fixture, advised",
    1920,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 4",
);
/// Clear floor before a basin, toilet or tub.
pub static FRONT_CODE: Figure =
    length("clear floor before a basin, toilet or tub", 1344, Basis::Code(Family::Irc, 0, 9999), "IRC R307.1, P2705.1");
/// Clear floor before a shower.
pub static FRONT_SHOWER_CODE: Figure =
    length("clear floor before a shower", 1536, Basis::Code(Family::Irc, 0, 9999), "IRC P2705.1");
/// Clear floor before a toilet.
pub static FRONT_TOILET_UPC: Figure =
    length("clear floor before a toilet", 1536, Basis::Code(Family::Upc, 0, 9999), "UPC 402.5");
/// Basin to the side, advised.
pub static LAVATORY_SIDE_ADVISED: Figure = length(
    "basin to the side, advised",
    1280,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 5",
);
/// Basin to the side.
pub static LAVATORY_SIDE_CODE: Figure =
    length("basin to the side", 960, Basis::Code(Family::Irc, 0, 9999), "IRC P2705.1, IPC 405.3.1");
/// Basin to basin, advised.
pub static LAVATORIES_ADVISED: Figure = length(
    "basin to basin, advised",
    2304,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 6",
);
/// Basin to basin.
pub static LAVATORIES_CODE: Figure = length("basin to basin", 1920, Basis::Code(Family::Ipc, 0, 9999), "IPC 405.3.1");
/// Basin's edge to a wall.
pub static LAVATORY_EDGE: Figure =
    length("basin's edge to a wall", 256, Basis::Code(Family::Irc, 0, 9999), "IRC R307.1");
/// Side of a shower, advised.
pub static SHOWER_SIDE_ADVISED: Figure = length(
    "side of a shower, advised",
    2304,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 9",
);
/// Side of a shower.
pub static SHOWER_SIDE_CODE: Figure =
    length("side of a shower", 1920, Basis::Code(Family::Irc, 0, 9999), "IRC P2708.1, IPC 417.4");
/// Floor of a shower.
pub static SHOWER_AREA_CODE: Figure =
    number("floor of a shower", 900, "sq in", Basis::Code(Family::Irc, 0, 9999), "IRC P2708.1, IPC 417.4");
/// Floor of a shower by the UPC.
pub static SHOWER_AREA_UPC: Figure = number(
    "floor of a shower by the UPC",
    1024,
    "sq in",
    Basis::Code(Family::Upc, 0, 9999),
    "UPC family; Chicago plumbing code",
);
/// Toilet to the side, advised.
pub static TOILET_SIDE_ADVISED: Figure = length(
    "toilet to the side, advised",
    1152,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 20",
);
/// Toilet to the side.
pub static TOILET_SIDE_CODE: Figure =
    length("toilet to the side", 960, Basis::Code(Family::Irc, 0, 9999), "IRC P2705.1, IPC 405.3.1");
/// Toilet to the next fixture.
pub static TOILET_NEXT_CODE: Figure =
    length("toilet to the next fixture", 1920, Basis::Code(Family::Ipc, 0, 9999), "IPC 405.3.1");
/// Width of a toilet compartment, advised.
pub static COMPARTMENT_WIDTH_ADVISED: Figure = length(
    "width of a toilet compartment, advised",
    2304,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 21",
);
/// Depth of a toilet compartment, advised.
pub static COMPARTMENT_DEPTH_ADVISED: Figure = length(
    "depth of a toilet compartment, advised",
    4224,
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 21",
);
/// Width of a toilet compartment.
pub static COMPARTMENT_WIDTH_CODE: Figure =
    length("width of a toilet compartment", 1920, Basis::Code(Family::Ipc, 0, 9999), "IPC 405.3.1");
/// Depth of a toilet compartment.
pub static COMPARTMENT_DEPTH_CODE: Figure =
    length("depth of a toilet compartment", 3840, Basis::Code(Family::Ipc, 0, 9999), "IPC 405.3.1");
/// Headroom in a bath.
pub static BATH_HEADROOM: Figure = length(
    "headroom in a bath",
    5120,
    Basis::Code(Family::Irc, 0, 9999),
    "IRC R305.1; Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 3",
);
/// Headroom where one stands in a bath, wherever no code is offered: a tall person stands upright.
pub static STANDING_HEADROOM: Figure = millimetres(
    "headroom to stand upright in a bath",
    1900,
    Basis::Practice,
    "common practice: a tall person stands upright",
);
/// Ceiling of a room to live in.
pub static ROOM_HEADROOM: Figure =
    length("ceiling of a room to live in", 5376, Basis::Code(Family::Irc, 0, 9999), "IRC R305.1");

/// All of them.
pub(super) static ALL: &[&Figure] = &[
    &FRONT_ADVISED,
    &FRONT_CODE,
    &FRONT_SHOWER_CODE,
    &FRONT_TOILET_UPC,
    &LAVATORY_SIDE_ADVISED,
    &LAVATORY_SIDE_CODE,
    &LAVATORIES_ADVISED,
    &LAVATORIES_CODE,
    &LAVATORY_EDGE,
    &SHOWER_SIDE_ADVISED,
    &SHOWER_SIDE_CODE,
    &SHOWER_AREA_CODE,
    &SHOWER_AREA_UPC,
    &TOILET_SIDE_ADVISED,
    &TOILET_SIDE_CODE,
    &TOILET_NEXT_CODE,
    &COMPARTMENT_WIDTH_ADVISED,
    &COMPARTMENT_DEPTH_ADVISED,
    &COMPARTMENT_WIDTH_CODE,
    &COMPARTMENT_DEPTH_CODE,
    &BATH_HEADROOM,
    &STANDING_HEADROOM,
    &ROOM_HEADROOM,
];
