//! Where lights hang.

use crate::units::{Area, Length};
use crate::vocabulary::{Readings, Slot, record, words};

words! {
    /// What lights hang over.
    pub enum HangsOver {
        Island = "island",
        Counter = "counter",
        Table = "table",
        Path = "path",
    }
}

record! {
    #[derive(Default)]
    pub struct Hanging = HANGING("hanging", "where lights hang, each point in the same order") {
        over: Slot<HangsOver> = "over", "what they hang over", "island";
        length: Slot<Length> = "length", "length of what they hang over", "10'";
        top: Slot<Length> = "top", "its top, from the finished floor", "36\"";
        at: Slot<Readings> = "at", "their centres, from one end", "[20\", 60\", 100\"]";
        bottom: Slot<Readings> = "bottom", "lowest part of each, from the finished floor", "68\"";
        ceiling: Slot<Readings> = "ceiling",
            "height of the ceiling where each hangs, from the finished floor",
            "[96\", 111\", 126\"]";
        from_low_side: Slot<Readings> = "from low side",
            "under a ceiling that slopes, how far each hangs from its low side",
            "[30\", 60\"]";
        from_tub: Slot<Length> = "from tub", "level distance to the edge of the nearest tub or shower", "40\"";
        rim: Slot<Length> = "rim", "top of that tub's rim or threshold, from the finished floor", "20\"";
        lights: Slot<Area> = "lights", "the work surface that they light by themselves", "16 sq ft";
        note: Slot<String> = "note", "a line for the electrician", "Hung by the lighting maker.";
    }
}
