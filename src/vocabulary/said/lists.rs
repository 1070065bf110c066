//! The words by which each [`super::Mention`] is known.

/// What closes a row at its side.
pub(super) const CLOSURES: &[&str] =
    &["filler", "fillers", "panel", "panels", "scribe", "infill", "gap", "passleiste", "regleta"];

/// A tap that comes out of the wall.
pub(super) const OUT_OF_THE_WALL: &[&str] =
    &["wall", "pared", "mural", "wand", "wandmontage", "wandarmatur", "wandbatterie"];

/// Woods whose grain shows.
pub(super) const WOODS: &[&str] = &[
    "oak",
    "ash",
    "walnut",
    "maple",
    "cherry",
    "birch",
    "elm",
    "teak",
    "beech",
    "larch",
    "pine",
    "spruce",
    "fir",
    "cedar",
    "alder",
    "chestnut",
    "hickory",
    "mahogany",
    "sapele",
    "iroko",
    "wenge",
    "acacia",
    "eucalyptus",
    "poplar",
    "sycamore",
    "pear",
    "rosewood",
    "bamboo",
    "roble",
    "nogal",
    "haya",
    "fresno",
    "pino",
    "madera",
    "eiche",
    "nussbaum",
    "buche",
    "esche",
    "holz",
    "timber",
    "wood",
    "veneer",
];

/// What is warmed, and by what.
pub(super) const HEATED: &[&str] = &[
    "heated",
    "heating",
    "electric",
    "warmed",
    "demister",
    "eléctrico",
    "eléctrica",
    "calefactado",
    "calefactable",
    "elektrisch",
    "beheizt",
];

/// A pane of glass that is hung.
pub(super) const HUNG: &[&str] = &[
    "door",
    "hinged",
    "hinge",
    "pivot",
    "swing",
    "swinging",
    "puerta",
    "abatible",
    "batiente",
    "pivotante",
    "drehtür",
];

/// Words of [`super::Mention::MakeUpAir`].
pub(super) const MAKE_UP_AIR_WORDS: &[&str] =
    &["make-up", "makeup", "make up", "aire de reposición", "aporte de aire", "zuluft"];

/// Words of [`super::Mention::SlidingPane`].
pub(super) const SLIDING_PANE_WORDS: &[&str] =
    &["sliding", "slides", "pocket", "bypass", "corredera", "correderas", "schiebetür"];

/// Words of [`super::Mention::Tall`].
pub(super) const TALL_WORDS: &[&str] =
    &["tall", "pantry", "tower", "column", "full", "refrigerator", "fridge", "larder", "housing", "freezer"];

/// Words of [`super::Mention::Bowl`].
pub(super) const BOWL_WORDS: &[&str] =
    &["basin", "sink", "lavatory", "vanity", "lavabo", "fregadero", "waschbecken", "spüle"];

/// Words of [`super::Mention::Skirting`].
pub(super) const SKIRTING_WORDS: &[&str] =
    &["skirting", "baseboard", "base board", "rodapié", "sockelleiste", "plinthe"];

/// Words of [`super::Mention::Light`].
pub(super) const LIGHT_WORDS: &[&str] =
    &["light", "lights", "sconce", "lamp", "luz", "luces", "lámpara", "aplique", "leuchte"];

/// Words of [`super::Mention::Tap`].
pub(super) const TAP_WORDS: &[&str] =
    &["tap", "taps", "faucet", "faucets", "mixer", "mixers", "grifo", "grifería", "monomando", "armatur"];

/// Words for a hole that is for a tap, besides those of the tap itself: how it is made.
pub(super) const TAP_HOLE_WORDS: &[&str] = &["monobloc", "monoblock", "monobloque"];

/// Words of [`super::Mention::NoBowl`].
pub(super) const NO_BOWL_WORDS: &[&str] =
    &["tub", "bath", "bathtub", "pot", "shower", "hose", "garden", "bañera", "ducha", "badewanne", "dusche"];

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
    "partition",
    "pillar",
    "chase",
    "newel",
    "tabique",
    "pared",
    "muro",
    "pilar",
    "columna",
    "wand",
    "pfeiler",
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
    "wall outlet",
    "salida a pared",
    "salida a la pared",
    "waagerecht",
    "waagrecht",
    "suspend",
    "suspens",
    "sospes",
    "wandhängend",
    "wand-wc",
    "wandcloset",
    "vegghengt",
    "vägghäng",
];

/// The same of one that hangs there.
pub(super) const HANGS_ON_THE_WALL: &[&str] = &[
    "wall-hung",
    "wall hung",
    "wallhung",
    "wall-mounted",
    "wall mounted",
    "on the wall",
    "suspend",
    "suspens",
    "sospes",
    "wandhängend",
    "wand-wc",
    "wandcloset",
    "vegghengt",
    "veggtoalett",
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
pub(super) const OUTLET_IN_THE_FLOOR: &[&str] = &[
    "s-trap",
    "s trap",
    "vertical",
    "floor outlet",
    "floor flange",
    "closet flange",
    "into the floor",
    "through the floor",
    "salida a suelo",
    "salida al suelo",
    "senkrecht",
];

/// What is gripped and turned.
pub(super) const KNOBS: &[&str] =
    &["knob", "cross handle", "cross-handle", "crosshead", "pomo", "kreuzgriff", "drehgriff", "drehknauf"];

/// A tap that gives cold water alone, or what was filtered.
pub(super) const COLD_ALONE: &[&str] = &[
    "cold only",
    "cold-only",
    "cold tap",
    "cold water",
    "cold pillar",
    "pillar tap",
    "kaltwasser",
    "standventil",
    "solo agua fría",
    "grifo de agua fría",
    "filter",
    "drinking",
    "pot filler",
];

/// What stands on a counter beside a tap, and goes through it: how each is called.
pub(super) const SOAP: &[&str] = &["soap", "lotion", "jabón", "dosificador", "seifenspender"];

/// Words of [`super::Mention::AirGap`].
pub(super) const AIR_GAP: &[&str] = &["air gap", "airgap", "air-gap"];

/// Words of [`super::Mention::AirSwitch`].
pub(super) const AIR_SWITCH: &[&str] = &["air switch", "air-switch", "air button", "airswitch"];

/// Words of [`super::Mention::SideSpray`].
pub(super) const SIDE_SPRAY: &[&str] = &["side spray", "sidespray", "side-spray", "hand spray", "sprayer"];

/// Words of [`super::Mention::FilterTap`].
pub(super) const FILTER_TAP: &[&str] =
    &["filter tap", "filter faucet", "filtered water", "drinking water", "instant hot", "hot water dispenser"];

/// What says that a top of laminate takes a bowl from below.
pub(super) const FROM_BELOW: &[&str] =
    &["undermount", "under-mount", "under mount", "compact", "solid core", "phenolic", "bajo encimera", "unterbau"];

/// Words of sharing, and what else burns gas in a house.
pub(super) const SHARES_A_BRANCH: &[&str] = &[
    "shared",
    "shares",
    "sharing",
    "tee",
    "tees",
    "teed",
    "serves",
    "serving",
    "feeds",
    "feeding",
    "branches",
    "furnace",
    "boiler",
    "heater",
    "fireplace",
    "barbecue",
    "grill",
    "compartida",
    "compartido",
    "caldera",
    "calentador",
    "geteilt",
];

/// Words of a circuit that serves more than one thing.
pub(super) const SHARES_A_CIRCUIT: &[&str] = &[
    "shared",
    "shares",
    "sharing",
    "same circuit",
    "same socket",
    "same outlet",
    "also feeds",
    "also serves",
    "also supplies",
    "spur from",
    "spur off",
    "spurred",
    "looped from",
    "looped off",
    "loop from",
    "tapped off",
    "tapped from",
    "daisy",
    "together with",
    "common with",
    "in common with",
    "compartid",
    "mismo circuito",
    "junto con",
    "derivado de",
    "derivada de",
    "gemeinsam mit",
    "zusammen mit",
    "abgezweigt",
    "geteilt",
];

/// Words of a circuit that serves one thing alone.
pub(super) const OWN_CIRCUIT: &[&str] = &[
    "dedicated",
    "of its own",
    "its own circuit",
    "own circuit",
    "separate circuit",
    "individual circuit",
    "individual branch",
    "exclusiv",
    "dedicado",
];

/// What a sheet calls for that is found on site, and is no accessory.
pub(super) const ON_SITE: &[&str] =
    &["circuit", "breaker", "clearance", "filler", "blocking", "shut", "valve", "vented"];

/// What stands free.
pub(super) const STANDS_FREE: &[&str] = &["freestanding", "free-standing", "free standing", "exenta", "freistehend"];

/// How a paint shines.
pub(super) const SHEENS: &[&str] =
    &["matt", "flat", "eggshell", "satin", "silk", "gloss", "sheen", "pearl", "mate", "brill", "glanz", "glänz"];
