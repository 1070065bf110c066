//! How a thing is meant to stand in its place, and what an opening is made for.

use crate::vocabulary::words;

words! {
    /// Where the front of a thing is meant to be.
    pub enum Setting {
        /// In one plane with the fronts beside it.
        Flush = "flush" also "flush-mounted" "flush mount" "flush fit" "inset",
        /// Before them, as everybody knows.
        Proud = "proud" also "standing proud",
    }
}

words! {
    /// How a unit is made to be set in, and so what the opening or cutout for it is like.
    pub enum CutOut {
        /// Hung in a cutout, a cabinet's front under it.
        DropIn = "drop-in",
        /// Slid between counters that it laps over, no counter behind it.
        SlideIn = "slide-in",
        /// Stands by itself, its sides and top finished.
        Freestanding = "freestanding",
        /// Closed in by cabinets, and breathing through its front.
        BuiltIn = "built-in" also "integrated" "fully integrated",
        /// Under a counter with a polished edge.
        Undermount = "undermount" also "undermounted",
        /// With a rim that lies on the counter.
        TopMount = "top-mount" also "top-mounted" "overmount" "self-rimming",
        /// With an apron before the cabinet.
        Apron = "apron" also "apron front" "farmhouse",
    }
}
