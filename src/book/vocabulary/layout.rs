//! The words for a room's plan: walls, doors, windows, fixtures on their centrelines, hung lights.

use super::MATERIAL;
use crate::vocabulary::{Field, NameOf, Record, Shape};

/// The ends of a wall, as seen from inside the room.
pub const ENDS: &[&str] = &["left", "right"];

/// A wall.
pub const WALL: Record = Record {
    name: "wall",
    about: "a wall by its letter: A from the first corner of the outline to the second, and so on around",
    fields: &[
        Field::optional("name", Shape::Text, "what it is called", "party wall"),
        Field::optional(
            "length",
            Shape::Readings,
            "its length as measured at the floor, at the counter and above; the least governs",
            "[73 1/2\", 73 5/8\"]",
        ),
        Field::optional("height", Shape::Length, "its height, where it ends below the ceiling", "42\""),
        Field::optional(
            "is",
            Shape::OneOf(&["wall", "half wall", "open"]),
            "whether it is a whole wall, a half wall, or no wall at all",
            "half wall",
        ),
        MATERIAL,
    ],
};

/// How far the trim around a door or window stands out.
const THICKNESS: Field =
    Field::optional("casing thickness", Shape::Length, "how far that trim stands out from the wall", "3/4\"");

/// A doorway.
pub const DOORWAY: Record = Record {
    name: "doorway",
    about: "a door or a cased opening in a wall",
    fields: &[
        Field::optional("wall", Shape::Name(NameOf::Wall), "the wall that it is in", "D"),
        Field::optional("at", Shape::Length, "from the wall's left end, seen from inside the room, to it", "20\""),
        Field::optional("width", Shape::Length, "clear width between the jambs", "34\""),
        Field::optional("height", Shape::Length, "clear height", "80\""),
        Field::optional("leaf", Shape::Length, "width of the leaf; of each, where there are two", "33 3/4\""),
        Field::optional(
            "hinge",
            Shape::OneOf(&["left", "right", "both"]),
            "the side that it hangs on, seen from inside the room",
            "left",
        ),
        Field::optional("swings", Shape::OneOf(&["in", "out"]), "whether it swings into the room or out of it", "in"),
        Field::optional("slides", Shape::YesNo, "whether it slides instead", "true"),
        Field::optional("casing", Shape::Length, "width of the trim around it", "3 1/2\""),
        THICKNESS,
        Field::optional(
            "free swing",
            Shape::Length,
            "how far from its hinge the floor is free where it swings, as measured",
            "30\"",
        ),
        Field {
            about: "whether its casing burns, beside a cooking surface; left out, it counts as burning",
            ..MATERIAL
        },
    ],
};

/// A window.
pub const WINDOW: Record = Record {
    name: "window",
    about: "a window in a wall, or in the slope of the roof above it",
    fields: &[
        Field::optional(
            "in",
            Shape::OneOf(&["wall", "roof"]),
            "what it is in; the wall if left out, unless it stands higher than the ceiling there",
            "roof",
        ),
        Field::optional("wall", Shape::Name(NameOf::Wall), "the wall that it is in", "C"),
        Field::optional("at", Shape::Length, "from the wall's left end, seen from inside the room, to it", "62\""),
        Field::optional("width", Shape::Length, "width of the opening", "34\""),
        Field::optional("sill", Shape::Length, "its sill from the finished floor", "42\""),
        Field::optional("height", Shape::Length, "height of the opening", "44\""),
        Field::optional("opens", Shape::OneOf(&["fixed", "in", "out", "up", "sideways"]), "how it opens", "up"),
        Field::optional("glass", Shape::Text, "its glass", "tempered"),
        Field::optional("casing", Shape::Length, "width of the trim around it", "2 1/2\""),
        THICKNESS,
        Field::optional("from water", Shape::Length, "level distance to the edge of the nearest tub or shower", "40\""),
        Field::optional("above", Shape::Text, "what stands under it", "cooktop"),
        Field {
            about: "whether its casing and what hangs at it burn, above or beside a cooking surface; left out, they count as burning",
            ..MATERIAL
        },
    ],
};

/// A fixture that is set out by its centreline.
pub const FIXTURE: Record = Record {
    name: "fixture",
    about: "a toilet, basin, tub, shower or other thing, set out by its centre along a wall",
    fields: &[
        Field::optional("wall", Shape::Name(NameOf::Wall), "the wall that it stands against", "A"),
        Field::optional("centre", Shape::Length, "from an end of the wall to its centreline", "18\""),
        Field::optional("from", Shape::OneOf(ENDS), "the end it is set out from; the left if left out", "right"),
        Field::optional("off wall", Shape::Length, "from the wall to its back", "2\""),
        Field::optional("width", Shape::Length, "its width along the wall; that of what is chosen if left out", "15\""),
        Field::optional("depth", Shape::Length, "from its back to its front; likewise", "28\""),
        Field::optional("height", Shape::Length, "its height; likewise", "30\""),
        Field::optional("sill", Shape::Length, "how far its bottom is above the finished floor", "12\""),
        Field::optional("takes", Shape::Name(NameOf::Kind), "the kind of thing that it is", "toilet"),
        Field::optional("selection", Shape::Name(NameOf::Selection), "what is chosen for it", "Toilet"),
        MATERIAL,
        Field::optional("opening", Shape::Name(NameOf::Opening), "the opening that stands there", "toilet"),
        Field::optional("door", Shape::Length, "width of a door that swings out of it, as of a shower", "28\""),
        Field::optional("hinge", Shape::OneOf(ENDS), "the side that its door hangs on, seen from the front", "left"),
    ],
};

/// Lights that hang over something.
pub const HUNG: Record = Record {
    name: "hung lights",
    about: "lights set out over an island or a run of counter, in plan",
    fields: &[
        Field::optional("selection", Shape::Name(NameOf::Selection), "the lights", "Pendants"),
        Field::optional("over", Shape::Text, "the island or run that they hang over, by its name", "island"),
        Field::optional("count", Shape::Whole, "how many", "3"),
        Field::optional(
            "at",
            Shape::Readings,
            "their centres from its left end; evenly spaced by their count if left out",
            "[20\", 60\", 100\"]",
        ),
    ],
};
