//! The words of `fit`: what the maker's own sheet asks of the opening.

use super::shape::{Field, Record, Shape};

/// What the maker's sheet asks.
pub const FIT: Record = Record {
    name: "fit",
    about: "figures from the maker's own sheet, never from a shop's page",
    fields: &[
        Field::optional(
            "sheet",
            Shape::Record(&SHEET),
            "which sheet, so that a newer one is noticed",
            "{name: 30 C installation, revision: D, date: 2026-09-04}",
        ),
        Field::optional(
            "opening",
            Shape::Record(&FIT_OPENING),
            "the opening that it asks for",
            "{width: 30\" to 30 1/4\", height: 36\", depth: at least 24\"}",
        ),
        Field::optional(
            "air",
            Shape::Record(&AIR),
            "clear space that it asks for around it",
            "{left: 0\", right: 2\" above counter, back: 0\"}",
        ),
        Field::optional(
            "heat",
            Shape::Record(&HEAT),
            "how far what burns must stay from a cooking surface",
            "{above: 30\", left: 6\", right: 6\", up to: 18\"}",
        ),
        Field::optional("play", Shape::Length, "the least play in all that it asks for, over its own width", "1/8\""),
        Field::optional("square", Shape::Length, "how far the diagonals may differ", "1/8\""),
        Field::optional(
            "face",
            Shape::Record(&FACE),
            "the flange or front that covers the edge of the cutout",
            "{width: 29 7/8\", overlap: 3/4\"}",
        ),
        Field::optional(
            "cabinet",
            Shape::Record(&CABINET),
            "what it asks of the cabinet that it is cut into",
            "{inside width: at least 28 1/2\"}",
        ),
        Field::optional(
            "panel",
            Shape::Record(&super::ASKED_PANEL),
            "the front panel that it takes",
            "{width: 23 3/4\", height: 29 13/16\" to 30 1/4\", weight: 20 lb}",
        ),
        Field::optional("below", Shape::Length, "how far it reaches below the top of the counter", "6 1/4\""),
        Field::optional(
            "not over",
            Shape::List(&Shape::Text),
            "what it may not stand over",
            "[oven, dishwasher, drawer]",
        ),
        Field::optional("clips", Shape::Length, "room for its clips on each side, inside the cabinet", "3/4\""),
        Field::optional(
            "pairs with",
            Shape::List(&Shape::Text),
            "models that it may stand beside or on, by the sheet",
            "[FZ-18, FZ-24]",
        ),
        Field::optional("joining kit", Shape::Length, "width that the joining kit adds between two", "1/4\""),
        Field::optional(
            "valve depth",
            Shape::LengthRange,
            "from the finished wall to the valve's mark",
            "2 3/8\" to 3 1/2\"",
        ),
        Field::optional("door", Shape::Record(&DOOR), "how its door moves", "{drops: 20 1/2\"}"),
        Field::optional(
            "needs",
            Shape::Record(&NEEDS),
            "what it must be connected to",
            "{power: 120 V 15 A 5-15, gas: 51000 Btu/h}",
        ),
        Field::optional(
            "zones",
            Shape::Record(&super::ZONES),
            "where the sheet wants each service to come out",
            "{power: {from left: 2\" to 28\", height: at most 6\"}}",
        ),
        Field::optional("carton", Shape::Sides, "the carton that it comes in", "32\" x 41\" x 30\""),
        Field::optional("doors off", Shape::Sides, "the body out of its carton, doors taken off", "30\" x 36\" x 25\""),
        Field::optional("weight", Shape::Weight, "weight as delivered", "205 lb"),
        Field::optional(
            "caution",
            Shape::Text,
            "a caution of the maker's, as printed on the sheet",
            "Fix the anti-tip bracket before use",
        ),
    ],
};

/// Which sheet.
pub const SHEET: Record = Record {
    name: "maker's sheet",
    about: "the maker's sheet that the figures come from",
    fields: &[
        Field::optional("name", Shape::Text, "its title or number", "30 C installation guide"),
        Field::optional("revision", Shape::Text, "its revision", "D"),
        Field::optional("date", Shape::Date, "its date", "2026-09-04"),
    ],
};

/// The opening that the sheet asks for.
pub const FIT_OPENING: Record = Record {
    name: "asked opening",
    about: "the opening or cutout that the maker's sheet asks for",
    fields: &[
        Field::optional("width", Shape::LengthRange, "clear width", "30\" to 30 1/4\""),
        Field::optional(
            "height",
            Shape::LengthRange,
            "clear height, from the finished floor for what stands on it",
            "36\"",
        ),
        Field::optional("depth", Shape::LengthRange, "clear depth", "at least 24\""),
    ],
};

/// Clear space around it.
pub const AIR: Record = Record {
    name: "air",
    about: "clear space that the maker's sheet asks for around the thing",
    fields: &[
        Field::optional("left", Shape::Clearance, "to the left", "0\""),
        Field::optional("right", Shape::Clearance, "to the right", "2\" above counter"),
        Field::optional("top", Shape::Clearance, "above", "1\""),
        Field::optional("back", Shape::Clearance, "behind", "1\""),
        Field::optional("vents at", Shape::OneOf(&["front", "rear", "top", "sides"]), "where it breathes", "front"),
    ],
};

/// How far what burns must stay away.
pub const HEAT: Record = Record {
    name: "heat",
    about: "how far what burns must stay from a cooking surface, by the maker's sheet",
    fields: &[
        Field::optional("above", Shape::Length, "from the cooking surface up to what burns", "30\""),
        Field::optional(
            "above shielded",
            Shape::Length,
            "from the cooking surface up to what is shielded, or does not burn",
            "24\"",
        ),
        Field::optional(
            "left",
            Shape::Length,
            "from its left side to what burns and stands higher than the cooking surface",
            "6\"",
        ),
        Field::optional("right", Shape::Length, "from its right side likewise", "6\""),
        Field::optional(
            "up to",
            Shape::Length,
            "how far up from the cooking surface the distances to the sides hold; left out, all the way",
            "18\"",
        ),
        Field::optional(
            "over cooking",
            Shape::Length,
            "from a cooking surface up to this thing, for a hood or what else is made to hang over one",
            "27\"",
        ),
    ],
};

/// The flange or front.
pub const FACE: Record = Record {
    name: "face",
    about: "the flange, trim or front that covers the edge of a cutout",
    fields: &[
        Field::optional("width", Shape::Length, "its width", "29 7/8\""),
        Field::optional("height", Shape::Length, "its height", "28 1/2\""),
        Field::optional("overlap", Shape::Length, "how far it must cover the edge on each side", "3/4\""),
    ],
};

/// What it asks of its cabinet.
pub const CABINET: Record = Record {
    name: "asked cabinet",
    about: "what the maker's sheet asks of the cabinet that it is cut into",
    fields: &[
        Field::optional("inside width", Shape::LengthRange, "clear between the cabinet's sides", "at least 28 1/2\""),
        Field::optional(
            "inside depth",
            Shape::LengthRange,
            "from the front edge to back panel or outlet",
            "at least 23 1/2\"",
        ),
        Field::optional("inside height", Shape::LengthRange, "clear height", "at least 27 5/8\""),
        Field::optional("outside width", Shape::LengthRange, "over the cabinet's sides", "at least 30\""),
        Field::optional("back panel", Shape::OneOf(&["whole", "cut away"]), "how the back panel must be", "cut away"),
    ],
};

/// How its door moves.
pub const DOOR: Record = Record {
    name: "door",
    about: "how a door moves, and what it needs to move",
    fields: &[
        Field::optional(
            "drops",
            Shape::Length,
            "how far a drop-down door reaches in front of the case when open",
            "20 1/2\"",
        ),
        Field::optional(
            "swings",
            Shape::Length,
            "how far a hung door reaches in front of the case when open",
            "29 3/4\"",
        ),
        Field::optional("pulls", Shape::Length, "how far a drawer comes out of the case", "18\""),
        Field::optional(
            "wall clearance",
            Shape::Length,
            "to a wall on the hinge side, so that the drawers inside come out",
            "2 1/2\"",
        ),
        Field::optional("angle", Shape::Text, "the angle at which drawers and shelves come out", "115 degrees"),
        Field::optional("in front", Shape::Length, "clear floor that the sheet asks for in front", "36\""),
    ],
};

/// What it must be connected to.
pub const NEEDS: Record = Record {
    name: "needs",
    about: "what the thing must be connected to",
    fields: &[
        Field::optional("power", Shape::Text, "volts, amperes and receptacle", "120 V 15 A 5-15"),
        Field::optional("gas", Shape::Text, "kind and input", "natural gas, 51000 Btu/h"),
        Field::optional("water", Shape::Text, "line and valve", "1/4\" with shut-off"),
        Field::optional("drain", Shape::Text, "size and height", "1 1/2\", at most 20\" AFF"),
        Field::optional("duct", Shape::Text, "size, length and way out", "8\" round, at most 30 ft"),
        Field::optional(
            "blocking",
            Shape::Text,
            "what brackets and bars are fixed to",
            "solid blocking 66\" to 70\" AFF",
        ),
    ],
};
