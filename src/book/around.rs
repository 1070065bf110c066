//! What stands around an opening: neighbours, the cabinet that it is cut into, services.

use super::{BackPanel, Burning};
use crate::units::Length;
use crate::vocabulary::supply::{Blocking, Drain, Duct, Gas, Power, Water, Worded};
use crate::vocabulary::{Slot, Words, record, word_meant, words};

record! {
    shown
    short "what" as String;
    pub struct Neighbour = NEIGHBOUR("neighbour", "what stands beside or above an opening") {
        what: String = "what", "what it is", "wall";
        gap: Slot<Length> = "gap", "from the opening's edge to it, trim and baseboard counted as part of it", "2 1/2\"";
        height: Slot<Length> = "height", "its lower edge from the finished floor, for what is above", "66\"";
        top: Slot<Length> = "top", "its top from the finished floor, for what stands beside", "84\"";
        depth: Slot<Length> = "depth", "how far it stands out from the wall", "12\"";
        burning: Slot<Burning> = "material",
            "whether it burns, for what stands near a cooking surface; left out, it counts as burning",
            "does not burn";
    }
}

words! {
    /// What one word says of what is beside or above.
    pub enum Plainly {
        /// There is nothing at all.
        Nothing = "nothing" also "none" "open sky" "open to the sky" "the sky" "sky" "open air" "nothing above" "nada" "nichts" "rien",
        Wall = "wall",
        Ceiling = "ceiling",
        /// The counter that it stands under.
        Counter = "counter" also "worktop" "countertop" "the counter" "the worktop" "work top" "arbeitsplatte" "encimera" "plan de travail" "werkblad",
    }
}

impl Plainly {
    /// What a text says, where one word says it, in whatever case.
    pub fn said(text: &str) -> Option<Self> {
        let lower = text.to_ascii_lowercase();
        let whole = |part: &str| word_meant(part.trim(), Self::WORDS, Self::ALSO).and_then(Self::of);
        // `nothing, open sky` says it twice.
        let mut parts = lower.split([',', ';']).map(whole);
        let first = parts.next()??;
        parts.all(|other| other == Some(first)).then_some(first)
    }
}

words! {
    /// What the trade calls what is beside or above, and every language has a word for: whatever else is said is a name.
    pub enum BesideWord {
        Wall = "wall",
        Corner = "corner",
        Ceiling = "ceiling",
        Counter = "counter" also "worktop" "countertop",
        WallCabinet = "wall cabinet" also "wall unit" "upper cabinet",
        BaseCabinet = "base cabinet" also "base unit" "mueble bajo" "armario bajo" "módulo bajo" "unterschrank" "meuble bas" "onderkast",
        TallCabinet = "tall cabinet" also "tall unit",
        Cabinet = "cabinet",
        Panel = "panel" also "end panel",
        Filler = "filler",
        Shelf = "shelf",
        Window = "window",
        Door = "door",
        Hood = "hood",
    }
}

impl Neighbour {
    /// What it is called by the trade, where it has no other name, in whatever case.
    pub fn word(&self) -> Option<BesideWord> {
        let word = word_meant(&self.what.to_ascii_lowercase(), BesideWord::WORDS, BesideWord::ALSO)?;
        BesideWord::of(word)
    }

    /// What it is, where one word says it, in whatever case.
    pub fn plainly(&self) -> Option<Plainly> {
        Plainly::said(&self.what)
    }

    /// Whether it is said that nothing stands there.
    pub fn is_nothing(&self) -> bool {
        self.plainly() == Some(Plainly::Nothing)
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct HousingCabinet = INSIDE("housing cabinet", "the cabinet that an oven, cooktop or sink is cut into, inside") {
        inside_width: Slot<Length> = "inside width", "clear between its sides", "34 1/2\"";
        inside_depth: Slot<Length> = "inside depth",
            "from its front edge to the back panel, or to an outlet that stands proud",
            "23 1/2\"";
        inside_height: Slot<Length> = "inside height", "clear height", "28\"";
        outside_width: Slot<Length> = "outside width", "over its sides or stiles", "36\"";
        sides: Slot<Length> = "sides", "thickness of each of its sides; the usual one if left out", "3/4\"";
        stiles: Slot<Length> = "stiles", "width of each stile of its face frame", "1 1/2\"";
        back_panel: Slot<BackPanel> = "back panel", "whether the back panel is cut away behind it", "whole";
    }
}

record! {
    shown
    group
    #[derive(Default)]
    pub struct Services = SERVICE("services", "power, gas, water and air as they are at the opening") {
        power: Slot<Worded<Power>> = "power", "volts, amperes and receptacle", "120 V 15 A 5-15";
        gas: Slot<Worded<Gas>> = "gas", "what the branch carries", "65000 Btu/h";
        water: Slot<Worded<Water>> = "water", "line and valve", "1/4\" with shut-off, 8\" AFF";
        drain: Slot<Worded<Drain>> = "drain", "size and height", "1 1/2\", 16\" AFF";
        duct: Slot<Worded<Duct>> = "duct", "size and way out", "8\" round, through the roof";
        blocking: Slot<Worded<Blocking>> = "blocking", "what holds brackets and bars", "solid blocking 66\" to 70\" AFF";
    }
}
