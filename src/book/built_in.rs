//! What is built in: a sheet's front panel, what stands below, the wall's hollow, drilled holes.

use crate::source::Spanned;
use crate::units::{Length, LengthRange, Weight};
use crate::vocabulary::{Mention, Slot, record, words};

use super::Plainly;

words! {
    /// What a wall was probed from.
    pub enum HollowFrom {
        FinishedWall = "finished wall",
        Studs = "studs",
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct RequiredPanel = ASKED_PANEL("asked panel", "the front panel that the maker's sheet asks for") {
        width: Slot<LengthRange> = "width", "width", "23 3/4\"";
        height: Slot<LengthRange> = "height", "height", "29 13/16\" to 30 1/4\"";
        thickness: Slot<LengthRange> = "thickness", "thickness", "5/8\" to 3/4\"";
        weight: Slot<Weight> = "weight", "the most that it may weigh", "20 lb";
    }
}

record! {
    shown
    short "what" as String;
    pub struct Below = BELOW("below", "what stands below a cooktop or a sink, or below what hangs") {
        what: Spanned<String> = "what", "what it is", "drawer";
        clear: Slot<Length> = "clear", "from the top of the counter to it; below what hangs, from its foot", "5\"";
    }
}

impl Below {
    /// Whether it is said that nothing is there, or nothing that takes up room: an open shelf.
    pub fn is_said_to_be_free(&self) -> bool {
        Plainly::said(&self.what) == Some(Plainly::Nothing) || Mention::Open.is_in(&self.what)
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct Hollow = HOLLOW("wall", "the wall that something goes into, probed") {
        cavity: Slot<Length> = "cavity", "from the studs' face to whatever is behind", "3 1/2\"";
        build_up: Slot<Length> = "build-up", "board, mortar and tile still to come on the studs", "7/8\"";
        holds: Slot<String> = "holds", "what runs in it where the thing goes", "vent pipe";
        rough_in: Slot<Length> = "rough-in", "to the centre of the toilet's outlet, from where `from` says", "12\"";
        valve: Slot<Length> = "valve", "to the valve's mark, from where `from` says", "3\"";
        from: Slot<HollowFrom> = "from", "what these are measured from", "studs";
    }
}

impl Hollow {
    /// What runs in it; nothing where somebody looked and says that there is nothing.
    pub fn holds(&self) -> Option<&Spanned<String>> {
        let nothing = |word: &str| {
            ["nothing", "none", "empty", "clear", "nil", "free", "nada"]
                .iter()
                .any(|none| word.trim().eq_ignore_ascii_case(none))
        };
        self.holds.spanned().filter(|holds| !nothing(&holds.value))
    }
}

record! {
    shown
    pub struct Hole = HOLE("hole", "a hole to be drilled in a counter or a sink") {
        purpose: Spanned<String> = "for", "what goes through it", "kitchen tap";
        diameter: Slot<Length> = "diameter", "its diameter", "1 3/8\"";
        behind: Slot<Length> = "behind", "from its centre to the splash, sill or wall behind", "2 1/2\"";
        spread: Slot<Length> = "spread", "to the next hole for the same thing, centre to centre", "8\"";
        to_bowl: Slot<Length> = "to bowl", "from its centre forward to the inner edge of the bowl", "2 1/4\"";
    }
}
