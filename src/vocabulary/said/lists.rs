//! The longer lists of words that tell of a thing.

/// What is built and stands still.
pub(super) const BUILT: &[&str] = &[
    "wall",
    "walls",
    "casing",
    "trim",
    "architrave",
    "jamb",
    "chimney",
    "post",
    "pier",
    "pilaster",
    "nib",
    "return",
    "boxing",
];

/// What stands under a counter, or is as high as one.
pub(super) const LOW: &[&str] = &[
    "base",
    "counter",
    "countertop",
    "worktop",
    "drawer",
    "drawers",
    "vanity",
    "dishwasher",
    "sink",
    "undercounter",
    "island",
];

/// What fills a hole that is drilled and takes no tap.
pub(super) const FILLERS: &[&str] =
    &["plate", "escutcheon", "cover", "plug", "stopper", "soap", "dispenser", "spray", "sprayer", "gap", "button"];

/// How a toilet is called, or fixed, whose outlet goes through the wall.
pub(super) const OUTLET_IN_THE_WALL: &[&str] = &[
    "wall-hung",
    "wall hung",
    "wallhung",
    "wall-mounted",
    "wall mounted",
    "on the wall",
    "through the wall",
    "back-to-wall",
    "back to wall",
    "to the wall",
    "horizontal",
    "p-trap",
    "p trap",
    "rear outlet",
    "rear discharge",
    "suspend",
    "suspens",
    "sospes",
    "wandhängend",
    "wand-wc",
    "wandcloset",
    "vegghengt",
    "vägghäng",
];

/// Rooms that one goes through.
pub(super) const HALLS: &[&str] = &[
    "hall",
    "hallway",
    "corridor",
    "passage",
    "passageway",
    "entry",
    "entryway",
    "foyer",
    "lobby",
    "vestibule",
    "landing",
    "pasillo",
    "vestíbulo",
    "recibidor",
    "rellano",
    "flur",
    "diele",
    "korridor",
    "couloir",
    "palier",
    "corridoio",
    "corredor",
];

/// What carries things up, here and there.
pub(super) const LIFTS: &[&str] = &["lift", "elevator", "ascensor", "ascenseur", "aufzug", "fahrstuhl", "heis", "hiss"];

/// The same of one whose outlet goes into the floor.
pub(super) const OUTLET_IN_THE_FLOOR: &[&str] =
    &["s-trap", "s trap", "vertical", "floor outlet", "floor flange", "closet flange", "into the floor"];
