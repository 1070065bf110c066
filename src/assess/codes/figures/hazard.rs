//! Figures of what can hurt: fire, air, power, glass, light over water, traps.

use super::{STONE_OVERHANG_2, STONE_OVERHANG_3, STONE_SPAN_2, STONE_SPAN_3, length, millimetres, number};
use crate::assess::codes::{Basis, Family, Figure};

/// Cooking surface to what burns above.
pub static ABOVE_COOKTOP_BARE: Figure =
    length("cooking surface to what burns above", 1920, Basis::Code(Family::Irc, 0, 9999), "IRC M1901.1");
/// Cooking surface to a shielded surface above.
pub static ABOVE_COOKTOP_SHIELDED: Figure = length(
    "cooking surface to a shielded surface above",
    1536,
    Basis::Code(Family::Ifgc, 0, 9999),
    "IFGC 623.7, IRC G2447.5 (from memory); UMC 906.1 (1998)",
);
/// Cooking surface to what burns beside it.
pub static BESIDE_COOKTOP: Figure = length(
    "cooking surface to what burns beside",
    384,
    Basis::Practice,
    "common practice; the maker's instructions govern",
);
/// How far up from the cooking surface what burns beside it counts.
pub static BESIDE_COOKTOP_UP_TO: Figure = length(
    "cooking surface up to a wall cabinet beside",
    1152,
    Basis::Practice,
    "common practice (trade reports section 6: 18 in to cabinets at the sides); the maker's instructions govern",
);
/// Hood wider than the cooking surface on each side.
pub static HOOD_WIDER: Figure = length(
    "hood wider than the cooking surface on each side",
    192,
    Basis::Practice,
    "common practice (trade magazines on capture area)",
);
/// Hood over gas at least.
pub static HOOD_OVER_GAS_LEAST: Figure =
    length("hood over gas at least", 1536, Basis::Practice, "common practice; the hood's instructions govern");
/// Hood over electric at least.
pub static HOOD_OVER_ELECTRIC_LEAST: Figure =
    length("hood over electric at least", 1280, Basis::Practice, "common practice; the hood's instructions govern");
/// Hood over a cooking surface at most.
pub static HOOD_MOST: Figure = length(
    "hood over a cooking surface at most",
    2304,
    Basis::Practice,
    "common practice; the hood's instructions govern",
);
/// Kitchen exhaust, switched.
pub static KITCHEN_EXHAUST: Figure =
    number("kitchen exhaust, switched", 100, "cfm", Basis::Code(Family::Irc, 0, 9999), "IRC Table M1505.4.4");
/// Kitchen hood exhaust.
pub static KITCHEN_EXHAUST_ASHRAE: Figure = number(
    "kitchen hood exhaust",
    100,
    "cfm",
    Basis::Code(Family::Ashrae622, 0, 9999),
    "ASHRAE 62.2-2016, kitchen exhaust",
);
/// Kitchen exhaust other than a hood.
pub static DOWNDRAFT_EXHAUST: Figure = number(
    "kitchen exhaust other than a hood",
    300,
    "cfm",
    Basis::Code(Family::Ashrae622, 0, 9999),
    "ASHRAE 62.2-2016, kitchen exhaust",
);
/// Kitchen exhaust advised.
pub static EXHAUST_ADVISED: Figure = number(
    "kitchen exhaust advised",
    150,
    "cfm",
    Basis::Guideline,
    "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 19",
);
/// Wall hood, for a foot of width.
pub static WALL_HOOD_A_FOOT: Figure =
    number("wall hood, for a foot of width", 100, "cfm", Basis::Practice, "HVI guidance, as trade pages quote it");
/// Wall hood, for a foot of width, at least.
pub static WALL_HOOD_A_FOOT_LEAST: Figure = number(
    "wall hood, for a foot of width, at least",
    40,
    "cfm",
    Basis::Practice,
    "HVI guidance, as trade magazines quote it: a band of 40 to 100 cfm",
);
/// Island hood, for a foot of width.
pub static ISLAND_HOOD_A_FOOT: Figure =
    number("island hood, for a foot of width", 150, "cfm", Basis::Practice, "HVI guidance, as trade pages quote it");
/// Bath exhaust, switched.
pub static BATH_EXHAUST: Figure =
    number("bath exhaust, switched", 50, "cfm", Basis::Code(Family::Irc, 0, 9999), "IRC R303.3, M1505");
/// Exhaust without make-up air.
pub static EXHAUST_WITHOUT_MAKE_UP_AIR: Figure = number(
    "exhaust without make-up air",
    400,
    "cfm",
    Basis::Code(Family::Irc, 2009, 9999),
    "IRC M1503.4 (2009 to 2015), M1503.6 (2018 on)",
);
/// Exhaust that make-up air need not replace.
pub static EXHAUST_NOT_REPLACED: Figure = number(
    "exhaust that make-up air need not replace",
    0,
    "cfm",
    Basis::Code(Family::Irc, 2009, 9999),
    "IRC M1503.4 (2009 to 2015), M1503.6 (2018 on): make-up air about as much as the exhaust",
);
/// Counter that needs a receptacle.
pub static COUNTER_THAT_NEEDS_ONE: Figure = length(
    "counter that needs a receptacle",
    768,
    Basis::Code(Family::Nec, 0, 9999),
    "NEC 210.52(C)(1); IRC E3901.4.1",
);
/// Counter served by one receptacle.
pub static RECEPTACLE_SPACING: Figure = length(
    "counter served by one receptacle",
    3072,
    Basis::Code(Family::Nec, 0, 9999),
    "NEC 210.52(C)(1): no point farther than 24 in",
);
/// Circuit of a range of 8 3/4 kW or more.
pub static RANGE_CIRCUIT: Figure =
    number("circuit of a range of 8 3/4 kW or more", 40, "A", Basis::Code(Family::Nec, 0, 9999), "NEC 210.19");
/// Dryer duct.
pub static DRYER_DUCT: Figure = length("dryer duct", 26880, Basis::Code(Family::Irc, 2009, 9999), "IRC M1502.4.6");
/// Receptacle to basin.
pub static LAVATORY_RECEPTACLE: Figure = length(
    "receptacle to basin",
    2304,
    Basis::Code(Family::Nec, 0, 9999),
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 24, after IRC E3901.6",
);
/// Glass above where one stands in a tub or shower.
pub static GLASS_ABOVE_STANDING: Figure =
    length("glass above where one stands in a tub or shower", 3840, Basis::Code(Family::Irc, 0, 9999), "IRC R308.4.5");
/// Glass from a tub or shower.
pub static GLASS_FROM_WATER: Figure =
    length("glass from a tub or shower", 3840, Basis::Code(Family::Irc, 0, 9999), "IRC R308.4.5");
/// Hanging light beside a tub.
pub static LIGHT_FROM_TUB: Figure = length(
    "hanging light beside a tub",
    2304,
    Basis::Code(Family::Nec, 0, 9999),
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 25, after IRC E3903.10 and NEC 410.10(D) (from memory)",
);
/// Hanging light above a tub's rim.
pub static LIGHT_ABOVE_TUB: Figure = length(
    "hanging light above a tub's rim",
    6144,
    Basis::Code(Family::Nec, 0, 9999),
    "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 25, after IRC E3903.10 and NEC 410.10(D) (from memory)",
);
/// Trap of a basin.
pub static BASIN_TRAP: Figure = length("trap of a basin", 80, Basis::Code(Family::Irc, 0, 9999), "IRC Table P3201.7");
/// Trap of a sink or tub.
pub static SINK_TRAP: Figure =
    length("trap of a sink or tub", 96, Basis::Code(Family::Irc, 0, 9999), "IRC Table P3201.7");
/// Trap of a washer's standpipe.
pub static WASHER_TRAP: Figure =
    length("trap of a washer's standpipe", 128, Basis::Code(Family::Irc, 0, 9999), "IRC Table P3201.7");
/// Trap of a shower, in editions that give one size.
pub static SHOWER_TRAP: Figure = length(
    "trap of a shower",
    128,
    Basis::Code(Family::Irc, 0, 2020),
    "IRC Table P3201.7, editions before 2021; 2024 again",
);
/// Trap of a shower by its flow: up to 5.7 gpm.
pub static SHOWER_TRAP_BY_FLOW: Figure =
    length("trap of a shower by its flow", 96, Basis::Code(Family::Irc, 2021, 2023), "IRC 2021 Table P3201.7");
/// Trap of a shower, where the table has one size again.
pub static SHOWER_TRAP_LATER: Figure =
    length("trap of a shower from 2024", 128, Basis::Code(Family::Irc, 2024, 9999), "IRC 2024 Table P3201.7");
/// Trap of a shower where no code is at hand: nominal 40 mm.
pub static SHOWER_TRAP_USUAL: Figure = millimetres(
    "usual trap of a shower",
    40,
    Basis::Practice,
    "common practice, as Approved Document H, table 1 (from memory)",
);
/// The least that a trap's water is deep.
pub static TRAP_SEAL: Figure = length(
    "least seal of a trap",
    128,
    Basis::Code(Family::Irc, 0, 9999),
    "trade reports of trap seals; IRC P3201.2 (from memory)",
);
/// The most that a trap's water is deep.
pub static TRAP_SEAL_MOST: Figure = length(
    "greatest seal of a trap",
    256,
    Basis::Code(Family::Irc, 0, 9999),
    "trade reports of trap seals; IRC P3201.2 (from memory)",
);
/// The least that a trap's water is deep where no code is at hand: 50 mm.
pub static TRAP_SEAL_USUAL: Figure =
    millimetres("usual least seal of a trap", 50, Basis::Practice, "common practice, as EN 12056-2 (from memory)");
/// Trap of a basin where no code is at hand: nominal 32 mm.
pub static BASIN_TRAP_USUAL: Figure = millimetres(
    "usual trap of a basin",
    32,
    Basis::Practice,
    "common practice, as Approved Document H, table 1 (from memory)",
);
/// Trap of a sink or a tub where no code is at hand: nominal 40 mm.
pub static SINK_TRAP_USUAL: Figure = millimetres(
    "usual trap of a sink or tub",
    40,
    Basis::Practice,
    "common practice, as Approved Document H, table 1 (from memory)",
);
/// Waste of a washer where no code is at hand: nominal 40 mm.
pub static WASHER_TRAP_USUAL: Figure = millimetres(
    "usual waste of a washer",
    40,
    Basis::Practice,
    "common practice, as Approved Document H, table 1 (from memory)",
);
/// Outlet of a toilet: nominal 3 in, or 75 mm.
pub static TOILET_OUTLET: Figure = millimetres(
    "outlet of a toilet",
    75,
    Basis::Practice,
    "common practice, as Approved Document H, table 1 (from memory)",
);

/// Those that guard against fire, gas, glass, shock, or stone that breaks.
pub(in crate::assess::codes) static GUARDS: &[&Figure] = &[
    &ABOVE_COOKTOP_BARE,
    &ABOVE_COOKTOP_SHIELDED,
    &BESIDE_COOKTOP,
    &BESIDE_COOKTOP_UP_TO,
    &EXHAUST_WITHOUT_MAKE_UP_AIR,
    &EXHAUST_NOT_REPLACED,
    &DRYER_DUCT,
    &GLASS_ABOVE_STANDING,
    &GLASS_FROM_WATER,
    &LIGHT_FROM_TUB,
    &LIGHT_ABOVE_TUB,
    &STONE_OVERHANG_2,
    &STONE_OVERHANG_3,
    &STONE_SPAN_2,
    &STONE_SPAN_3,
];

/// All of them.
pub(super) static ALL: &[&Figure] = &[
    &ABOVE_COOKTOP_BARE,
    &ABOVE_COOKTOP_SHIELDED,
    &BESIDE_COOKTOP,
    &BESIDE_COOKTOP_UP_TO,
    &HOOD_WIDER,
    &HOOD_OVER_GAS_LEAST,
    &HOOD_OVER_ELECTRIC_LEAST,
    &HOOD_MOST,
    &KITCHEN_EXHAUST,
    &KITCHEN_EXHAUST_ASHRAE,
    &DOWNDRAFT_EXHAUST,
    &EXHAUST_ADVISED,
    &WALL_HOOD_A_FOOT,
    &WALL_HOOD_A_FOOT_LEAST,
    &ISLAND_HOOD_A_FOOT,
    &BATH_EXHAUST,
    &EXHAUST_WITHOUT_MAKE_UP_AIR,
    &EXHAUST_NOT_REPLACED,
    &COUNTER_THAT_NEEDS_ONE,
    &RECEPTACLE_SPACING,
    &RANGE_CIRCUIT,
    &DRYER_DUCT,
    &LAVATORY_RECEPTACLE,
    &GLASS_ABOVE_STANDING,
    &GLASS_FROM_WATER,
    &LIGHT_FROM_TUB,
    &LIGHT_ABOVE_TUB,
    &BASIN_TRAP,
    &SINK_TRAP,
    &WASHER_TRAP,
    &SHOWER_TRAP,
    &SHOWER_TRAP_BY_FLOW,
    &SHOWER_TRAP_LATER,
    &SHOWER_TRAP_USUAL,
    &TRAP_SEAL,
    &TRAP_SEAL_MOST,
    &TRAP_SEAL_USUAL,
    &BASIN_TRAP_USUAL,
    &SINK_TRAP_USUAL,
    &WASHER_TRAP_USUAL,
    &TOILET_OUTLET,
];
