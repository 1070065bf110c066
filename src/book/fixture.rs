//! Things that are set out by their centreline, and lights set out in plan.

use super::{Burning, End};
use crate::units::Length;
use crate::vocabulary::{Kind, Readings, Slot, Usual, name, record};

record! {
    item
    pub struct Fixture = FIXTURE("fixture", "a toilet, basin, tub, shower or other thing, set out by its centre along a wall") {
        wall: Slot<String> = "wall", "the wall that it stands against", "A" as name::Wall;
        centre: Slot<Length> = "centre", "from an end of the wall to its centreline", "18\"";
        from: End = "from", "the end it is set out from; the left if left out", "right" as Usual;
        off_wall: Slot<Length> = "off wall", "from the wall to its back", "2\"";
        width: Slot<Length> = "width", "its width along the wall; that of what is chosen if left out", "15\"";
        depth: Slot<Length> = "depth", "from its back to its front; likewise", "28\"";
        height: Slot<Length> = "height", "its height; likewise", "30\"";
        sill: Slot<Length> = "sill", "how far its bottom is above the finished floor", "12\"";
        takes: Slot<Kind> = "takes", "the kind of thing that it is", "toilet";
        selection: Slot<String> = "selection", "what is chosen for it", "Toilet" as name::Selection;
        burning: Slot<Burning> = "material",
            "whether it burns, for what stands near a cooking surface; left out, it counts as burning",
            "does not burn";
        opening: Slot<String> = "opening", "the opening that stands there", "toilet" as name::Opening;
        door: Slot<Length> = "door", "width of a door that swings out of it, as of a shower", "28\"";
        hinge: Slot<End> = "hinge", "the side that its door hangs on, seen from the front", "left";
    }
}

record! {
    item
    pub struct HungLights = HUNG("hung lights", "lights set out over an island, a run of counter, a fixture or an opening, in plan") {
        selection: Slot<String> = "selection", "the lights, or a fan in the ceiling", "Pendants" as name::Selection;
        over: Slot<String> = "over", "the island, run, fixture or opening that they hang over, by its name", "island";
        count: Slot<u32> = "count", "how many", "3";
        at: Slot<Readings> = "at",
            "their centres from its left end; evenly spaced by their count if left out",
            "[20\", 60\", 100\"]";
    }
}
