//! Cabinets: their fronts, and what they hold.

use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Slot, record, words};

words! {
    /// How shelves are made.
    pub enum ShelfKind {
        Fixed = "fixed",
        Adjustable = "adjustable",
        RollOut = "roll-out",
        PullOut = "pull-out",
    }
}

words! {
    /// What bins for waste stand near.
    pub enum BinPlace {
        Sink = "sink",
        Cooktop = "cooktop",
        Preparation = "preparation",
        Refrigerator = "refrigerator",
    }
}

record! {
    group
    #[derive(Default)]
    pub struct Fronts = FRONTS("fronts", "doors and drawer fronts, as pulls and knobs are counted by") {
        doors: Slot<u32> = "doors", "pulls or knobs that the doors take", "6";
        drawers: Slot<u32> = "drawers", "pulls or knobs that the drawers take; a wide one takes two", "14";
        thickness: Slot<Length> = "thickness", "thickness that the screws go through", "3/4\"";
        height: Slot<Length> = "height",
            "height of base cabinets' fronts in all, the line that panels of appliances keep",
            "30 1/4\"";
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct Stores = STORES("storage", "shelves and bins inside cabinets") {
        depth: Slot<Length> = "depth", "depth of the shelves", "24\"";
        shelves: Slot<ShelfKind> = "shelves", "how the shelves are made", "roll-out";
        highest: Slot<Length> = "highest", "the highest shelf, from the finished floor", "60\"";
        bins_near: Vec<Spanned<BinPlace>> = "bins near",
            "what bins for waste stand within a step of",
            "[sink, preparation]";
    }
}
