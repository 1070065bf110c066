//! The words of a selection, its options and the products they share.

use super::{FIT, FRONTS, HANGING, HOLE, LAID, MATERIAL, ORDER, PANEL, PAPERED, SIZE, SOLD, STORES, TOP, WAIVER};
use crate::book::{CutOut, Fuel, Setting};
use crate::vocabulary::{Field, NameOf, Record, Shape, Value};

/// A selection: what was, or is to be, chosen for one place.
pub const SELECTION: Record = Record {
    name: "selection",
    about: "a choice to be made for one place; fields of an option that stand here count for all of its options",
    fields: &[
        Field::required("selection", Shape::Text, "what is chosen, in the household's words", "Range"),
        Field::optional("id", Shape::Text, "a short name for its page; made from the name if left out", "range"),
        Field::optional("tag", Shape::Text, "its number on drawings; given in order if left out", "K-07"),
        Field::required("kind", Shape::Name(NameOf::Kind), "decides which fields and checks apply", "range"),
        Field::optional("place", Shape::Name(NameOf::Opening), "the opening that it goes into", "range"),
        Field::optional(
            "needed for",
            Shape::Either(&Shape::Name(NameOf::Milestone), &Shape::Date),
            "the milestone, or the day, that waits for it",
            "cabinets set",
        ),
        Field::optional(
            "why",
            Shape::Markdown,
            "why it is so, for the client",
            "An oven wide enough for a full sheet pan.",
        ),
        Field::optional(
            "options",
            Shape::List(&Shape::Record(&OPTION)),
            "two or more to choose from; with one, its fields stand in the selection itself",
            "[{id: steel, …}, {id: enamel, …}]",
        ),
        Field::optional(
            "chosen",
            Shape::Name(NameOf::Option),
            "the option that was chosen; left out while it is open",
            "steel",
        ),
        Field::optional("chosen on", Shape::Date, "the day on which it was chosen", "2027-01-09"),
        Field::optional(
            "depends on",
            Shape::List(&Shape::Name(NameOf::Selection)),
            "selections that must stand before this one is ordered, besides those that follow from its kind",
            "[Wall tile, bath/Floor]",
        ),
        Field::optional(
            "meets",
            Shape::List(&Shape::Name(NameOf::Selection)),
            "surfaces that it lies edge to edge with",
            "[Accent tile]",
        ),
        Field::optional(
            "hangs",
            Shape::Record(&HANGING),
            "where lights hang, as measured or as planned",
            "{over: island, length: 10', top: 36\", bottom: 68\"}",
        ),
        Field::optional(
            "papered",
            Shape::Record(&PAPERED),
            "the walls that a wallpaper covers",
            "{along: 40', height: 8'}",
        ),
        Field::optional("allowance", Shape::Name(NameOf::Allowance), "the allowance that it draws on", "appliances"),
        Field::optional("furnished by", Shape::Text, "who buys it", "client"),
        Field::optional("installed by", Shape::Text, "who fits it", "plumber"),
        Field::optional("covers", Shape::Area, "how much of the room it covers, for the material board", "86 sq ft"),
        Field::optional("private", Shape::Markdown, "a note for the office alone", "Trade account, 12 % off list."),
        Field::optional(
            "waive",
            Shape::List(&Shape::Record(&WAIVER)),
            "findings set aside for this selection",
            "[{rule: fit/play, because: …, by: …, on: …}]",
        ),
    ],
};

/// The fields of an option, and of a product in `products/`.
pub const OPTION: Record = Record {
    name: "option",
    about: "one thing that can be chosen; a file in `products/` holds the same fields",
    fields: &[
        Field::optional("id", Shape::Text, "a short name, unique in the selection", "steel"),
        Field::optional("name", Shape::Text, "what the client reads; maker and model if left out", "Brushed steel"),
        Field::optional(
            "product",
            Shape::Name(NameOf::Product),
            "a product whose fields count where this option leaves them out",
            "vessary-30",
        ),
        Field::optional("maker", Shape::Text, "who makes it", "Vessary"),
        Field::optional("model", Shape::Text, "the maker's model, to the last letter", "30 C-SS"),
        Field::optional("finish", Shape::Text, "finish, in the maker's words", "brushed steel"),
        Field::optional("colour", Shape::Text, "colour, with the maker's code", "sea lichen 14"),
        Field::optional("description", Shape::Text, "one line for the client", "Six sealed burners, one oven"),
        Field::optional(
            "size",
            Shape::Record(&SIZE),
            "the thing itself, as it stands",
            "{width: 29 7/8\", height: 36\", depth: 26 1/4\"}",
        ),
        Field::optional(
            "hinge",
            Shape::OneOf(&["left", "right", "either", "both", "none"]),
            "the side that its door hangs on, seen from the front",
            "left",
        ),
        MATERIAL,
        Field::optional(
            "fuel",
            Fuel::SHAPE,
            "what a range, cooktop, oven or dryer heats with; left out, gas is reckoned with",
            "induction",
        ),
        Field::optional("supplier", Shape::Text, "where it is bought", "Oren & Daughters"),
        Field::optional("lead time", Shape::LeadTime, "from order to delivery", "6-8 weeks"),
        Field::optional("price", Shape::Money, "what the client pays for one, before tax", "3180.00"),
        Field::optional("cost", Shape::Money, "what the firm pays for one; for the office alone", "2540.00"),
        Field::optional("quantity", Shape::Quantity, "how many, or how much", "1"),
        Field::optional("price per", Shape::Text, "what the price is for, if not for one of the quantity", "sq ft"),
        Field::optional("total", Shape::Money, "what the supplier says it comes to, before tax", "640.00"),
        Field::optional(
            "order",
            Shape::Record(&ORDER),
            "quotation, availability and order",
            "{good until: 2027-02-28, available on: 2027-01-12}",
        ),
        Field::optional("sold", Shape::Record(&SOLD), "the boxes or rolls that it comes in", "{box holds: 9.7 sq ft}"),
        Field::optional(
            "laid",
            Shape::Record(&LAID),
            "how a tile, floor or board is laid",
            "{runs: long side level, offset: 33 %}",
        ),
        Field::optional(
            "fronts",
            Shape::Record(&FRONTS),
            "doors and drawer fronts of cabinets",
            "{doors: 6, drawers: 14, thickness: 3/4\"}",
        ),
        Field::optional(
            "stores",
            Shape::Record(&STORES),
            "what is inside cabinets",
            "{depth: 24\", shelves: roll-out}",
        ),
        Field::optional(
            "top",
            Shape::Record(&TOP),
            "a counter: its material, what carries it, how it is cut",
            "{material: stone, lies on: [island], overhang: 15\", supports: {by: steel bars, out: 12\", in: 24\"}}",
        ),
        Field::optional(
            "sample seen",
            Shape::Date,
            "the day on which its sample was laid beside the others",
            "2027-01-08",
        ),
        Field::optional(
            "photos",
            Shape::List(&Shape::Either(&Shape::Text, &Shape::Record(&PHOTO))),
            "pictures, the telling one first",
            "[range-front.jpg]",
        ),
        Field::optional(
            "requires",
            Shape::List(&Shape::Text),
            "kits, trims or fillers that the maker's sheet calls for",
            "[joining kit]",
        ),
        Field::optional(
            "accessories",
            Shape::List(&Shape::Record(&ACCESSORY)),
            "what is ordered with it",
            "[{name: joining kit, price: 140.00}]",
        ),
        Field::optional(
            "drilled",
            Shape::List(&Shape::Record(&HOLE)),
            "the holes to be drilled in a counter or a sink, each by its purpose",
            "[{for: kitchen tap, diameter: 1 3/8\", behind: 2 1/2\"}]",
        ),
        Field::optional(
            "fit",
            Shape::Record(&FIT),
            "what the maker's own sheet asks of the opening",
            "{opening: {width: 30\" to 30 1/4\"}}",
        ),
        Field::optional(
            "panel",
            Shape::Record(&PANEL),
            "the front panel that the joiner makes for it",
            "{width: 23 3/4\", height: 30\", thickness: 3/4\", weight: 16 lb}",
        ),
        Field::optional("capacity", Shape::Text, "what it holds", "16 cu ft"),
        Field::optional(
            "set",
            Setting::SHAPE,
            "where its front is meant to be: in one plane with the fronts beside it, or before them",
            "flush",
        ),
        Field::optional("made as", CutOut::SHAPE, "how the unit is made to be set in", "slide-in"),
        Field::optional("airflow", Shape::Text, "rated airflow, the most it moves", "390 cfm"),
        Field::optional("holes", Shape::Whole, "how many holes it takes", "2"),
        Field::optional("spread", Shape::Text, "distance between holes, centre to centre", "8\""),
        Field::optional(
            "rear travel",
            Shape::Length,
            "how far handle or lever moves behind its hole's centre",
            "1 3/4\"",
        ),
        Field::optional("spout reach", Shape::Length, "from the hole's centre to the stream", "8 1/4\""),
        Field::optional("valve", Shape::Text, "the valve body that is built in, by model", "VB-2"),
        Field::optional("mount", Shape::Text, "how it is fixed", "undermount"),
        Field::optional("bowl depth", Shape::Length, "inside depth of the bowl", "9\""),
        Field::optional(
            "reveal",
            Shape::OneOf(&["positive", "flush", "negative"]),
            "whether the rim of an undermount bowl shows, is flush, or is covered",
            "flush",
        ),
        Field::optional("corner radius", Shape::Length, "radius of a bowl's inside corners, seen from above", "3/8\""),
        Field::optional("drain", Shape::Text, "where the outlet is", "rear centre"),
        Field::optional("rough-in", Shape::Length, "from the finished wall to the centre of the outlet", "12\""),
        Field::optional("seat height", Shape::Length, "top of the seat from the finished floor", "16 1/2\""),
        Field::optional(
            "drop",
            Shape::LengthRange,
            "from ceiling to the lowest part, as it can be set",
            "18\" to 72\"",
        ),
        Field::optional("canopy", Shape::Length, "width of the plate at the ceiling or wall", "5\""),
        Field::optional(
            "slope rating",
            Shape::Text,
            "the slope of ceiling that the canopy is made for",
            "up to 30 degrees",
        ),
        Field::optional("lamp", Shape::Text, "lamp and base", "LED, E26, 9 W"),
        Field::optional("kelvin", Shape::Whole, "colour temperature in kelvin", "2700"),
        Field::optional("lumens", Shape::Whole, "light that one of it gives, in lumens", "800"),
        Field::optional("dimming", Shape::Text, "how it dims", "to 10 %, trailing edge"),
        Field::optional("damp rating", Shape::Text, "where it may hang", "damp"),
        Field::optional("face size", Shape::Sides, "a tile's face", "4\" x 4\""),
        Field::optional("thickness", Shape::Length, "thickness", "3/8\""),
        Field::optional("joint", Shape::Length, "width of the joint", "1/8\""),
        Field::optional("grout", Shape::Text, "grout, by maker and colour", "Hollin 09 warm grey"),
        Field::optional("edge trim", Shape::Text, "how its edges end", "glazed edge pieces, 14 ft"),
        Field::optional("pattern", Shape::Text, "how it is laid, and in which direction", "stacked, long side level"),
        Field::optional("centre to centre", Shape::Length, "between the screws of a pull", "5 1/16\""),
        Field::optional("projection", Shape::Length, "how far it stands out", "1 1/4\""),
        Field::optional(
            "fits",
            Shape::OneOf(&["doors", "drawers", "doors and drawers"]),
            "the fronts that a pull or knob goes on",
            "drawers",
        ),
        Field::optional("screws", Shape::Length, "length of the screws that come with it", "1\""),
        Field::optional(
            "grain",
            Shape::OneOf(&["upright", "level", "matched", "none"]),
            "the direction of a wood's grain on the fronts",
            "upright",
        ),
        Field::optional("edge", Shape::Text, "the profile of the front edge", "eased 1/8\""),
        Field::optional("door style", Shape::Text, "style and overlay of doors and drawers", "shaker, full overlay"),
        Field::optional("sheen", Shape::Text, "sheen of a paint", "eggshell"),
        Field::optional("apron height", Shape::Length, "height of a sink's front apron", "9 1/2\""),
        Field::optional("hole diameter", Shape::LengthRange, "the holes that a tap goes through", "1 3/8\" to 1 1/2\""),
        Field::optional("recess", Shape::Length, "how far it goes into a wall, from the finished face", "3 1/2\""),
        Field::optional("glass", Shape::Text, "glass and its thickness", "3/8\" tempered"),
    ],
};

/// Every field that an option may hold.
pub fn choice_fields() -> impl Iterator<Item = &'static Field> {
    OPTION.fields.iter()
}

/// A picture.
pub const PHOTO: Record = Record {
    name: "photo",
    about: "a picture, and what it shows to those who can't see it",
    fields: &[
        Field::required(
            "file",
            Shape::Text,
            "its file, beside the record or in a `photos` folder there",
            "range-front.jpg",
        ),
        Field::optional(
            "alt",
            Shape::Text,
            "what it shows, in a sentence",
            "The range from the front, its oven door half open",
        ),
        Field::optional("caption", Shape::Text, "a line under it", "Seen from the ledge"),
    ],
};

/// What is ordered with a thing.
pub const ACCESSORY: Record = Record {
    name: "accessory",
    about: "something ordered with a thing: a kit, a trim, a filler",
    fields: &[
        Field::required("name", Shape::Text, "what it is, in the words of the maker's sheet", "joining kit"),
        Field::optional("model", Shape::Text, "the maker's model", "JK-2"),
        Field::optional("price", Shape::Money, "what the client pays for one, before tax", "140.00"),
        Field::optional("cost", Shape::Money, "what the firm pays for one; for the office alone", "96.00"),
        Field::optional("quantity", Shape::Quantity, "how many", "1"),
    ],
};
