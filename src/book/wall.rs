//! A room's walls, and the doors and windows in them.

use super::Burning;
use crate::units::Length;
use crate::vocabulary::{Readings, Slot, name, record, words};

words! {
    /// What stands where the outline of a room has a wall.
    pub enum WallIs {
        Wall = "wall",
        HalfWall = "half wall",
        Open = "open",
    }
}

record! {
    item
    pub struct WallNote = WALL("wall", "a wall by its letter: A from the first corner of the outline to the second, and so on around") {
        called: Slot<String> = "name", "what it is called", "party wall";
        length: Slot<Readings> = "length",
            "its length as measured at the floor, at the counter and above; the least governs",
            "[73 1/2\", 73 5/8\"]";
        height: Slot<Length> = "height", "its height, where it ends below the ceiling", "42\"";
        is: Slot<WallIs> = "is", "whether it is a whole wall, a half wall, or no wall at all", "half wall";
        burning: Slot<Burning> = "material",
            "whether it burns, for what stands near a cooking surface; left out, it counts as burning",
            "does not burn";
    }
}

/// What is said of a door's hand in place of its hinge.
const HAND: (&str, &str) = (
    "does not say on which side the door hangs",
    "write `left`, `right` or `both`, as its hinges are seen from inside the room; makers count the hand of a door \
     (LH, RH) from outside, or from the side that it opens to",
);

words! {
    /// The side that a door of a room hangs on, seen from inside the room.
    pub enum DoorHinge, otherwise HAND {
        Left = "left" also "on the left" "hinged left",
        Right = "right" also "on the right" "hinged right",
        Both = "both" also "both sides" "pair",
    }
}

words! {
    /// Where a door of a room swings.
    pub enum DoorSwing {
        In = "in",
        Out = "out",
    }
}

record! {
    item
    pub struct Doorway = DOORWAY("doorway", "a door or a cased opening in a wall") {
        wall: Slot<String> = "wall", "the wall that it is in", "D" as name::Wall;
        at: Slot<Length> = "at", "from the wall's left end, seen from inside the room, to it", "20\"";
        width: Slot<Length> = "width", "clear width between the jambs", "34\"";
        height: Slot<Length> = "height", "clear height", "80\"";
        leaf: Slot<Length> = "leaf", "width of the leaf; of each, where there are two", "33 3/4\"";
        hinge: Slot<DoorHinge> = "hinge", "the side that it hangs on, seen from inside the room", "left";
        swings: Slot<DoorSwing> = "swings", "whether it swings into the room or out of it", "in";
        slides: Slot<bool> = "slides", "whether it slides instead", "true";
        note: Slot<String> = "note", "a line for the joiner", "Into the wall, to the left.";
        casing: Slot<Length> = "casing", "width of the trim around it", "3 1/2\"";
        casing_thickness: Slot<Length> = "casing thickness", "how far that trim stands out from the wall", "3/4\"";
        free_swing: Slot<Length> = "free swing",
            "how far from its hinge the floor is free where it swings, as measured",
            "30\"";
        burning: Slot<Burning> = "material",
            "whether its casing burns, beside a cooking surface; left out, it counts as burning",
            "does not burn";
    }
}

impl Doorway {
    /// Whether it is a cased opening: nothing is said of a leaf.
    pub fn has_no_leaf(&self) -> bool {
        self.leaf.is_absent() && self.hinge.is_absent() && self.swings.is_absent() && self.slides.is_absent()
    }
}

words! {
    /// What a window is in.
    pub enum WindowIn {
        Wall = "wall",
        Roof = "roof",
    }
}

words! {
    /// How a window opens.
    pub enum WindowOpens {
        Fixed = "fixed" also "picture" "picture window" "does not open" "no" "none" "fija" "fijo" "fest" "feststehend" "festverglast",
        In = "in" also "inward" "inwards" "into the room" "inswing" "in-swing" "hopper" "tilt and turn" "tilt turn" "turn and tilt" "dreh-kipp" "drehkipp" "kipp" "oscilobatiente" "hacia dentro" "nach innen",
        Out = "out" also "outward" "outwards" "outswing" "out-swing" "awning" "top hung" "hacia fuera" "nach außen",
        Up = "up" also "double hung" "single hung" "sash" "sliding sash" "vertical sliding" "guillotina",
        Sideways = "sideways" also "sliding" "slider" "slides" "sliding sideways" "horizontal sliding" "gliding" "corredera" "corrediza" "schiebefenster",
    }
}

record! {
    item
    pub struct Window = WINDOW("window", "a window in a wall, or in the slope of the roof above it") {
        stands_in: Slot<WindowIn> = "in",
            "what it is in; the wall if left out, unless it stands higher than the ceiling there",
            "roof";
        wall: Slot<String> = "wall", "the wall that it is in", "C" as name::Wall;
        at: Slot<Length> = "at", "from the wall's left end, seen from inside the room, to it", "62\"";
        width: Slot<Length> = "width", "width of the opening", "34\"";
        sill: Slot<Length> = "sill", "its sill from the finished floor", "42\"";
        height: Slot<Length> = "height", "height of the opening", "44\"";
        opens: Slot<WindowOpens> = "opens", "how it opens", "up";
        glass: Slot<String> = "glass", "its glass", "tempered";
        note: Slot<String> = "note", "a line for those who build", "Stays.";
        casing: Slot<Length> = "casing", "width of the trim around it", "2 1/2\"";
        casing_thickness: Slot<Length> = "casing thickness", "how far that trim stands out from the wall", "3/4\"";
        from_water: Slot<Length> = "from water", "level distance to the edge of the nearest tub or shower", "40\"";
        above: Slot<String> = "above", "what stands under it", "cooktop";
        burning: Slot<Burning> = "material",
            "whether its casing and what hangs at it burn, above or beside a cooking surface; left out, they count as burning",
            "does not burn";
    }
}
