//! What is clear in a room, as measured or planned.

use std::collections::BTreeMap;

use crate::source::Spanned;
use crate::source::yaml::{Node, Value as Yaml};
use crate::units::Length;
use crate::vocabulary::{Faults, NameOf, Readings, Shape, Slot, Value, record, words};

/// Distances in a room, by the words of the vocabulary.
#[derive(Clone, Debug, Default)]
pub struct Clearances {
    /// Clear width of each doorway, by its name.
    pub doorways: Vec<(Spanned<String>, Spanned<Length>)>,
    /// The ways between sink, cooking and refrigerator.
    pub triangle: Slot<Triangle>,
    /// All counter that can be worked at.
    pub frontage: Slot<Frontage>,
    /// Single distances.
    pub lengths: BTreeMap<&'static str, Readings>,
    /// Rectangles: width and depth.
    pub sides: BTreeMap<&'static str, Spanned<(Length, Length)>>,
}

impl Clearances {
    /// The least of the distances of that name.
    pub fn least(&self, key: &str) -> Option<&Spanned<Length>> {
        self.lengths.get(key)?.least()
    }
}

record! {
    #[derive(Default)]
    pub struct Triangle = TRIANGLE("triangle", "the ways between sink, cooking and refrigerator, from the middle of each front") {
        sink_to_cooking: Slot<Length> = "sink to cooking", "from the sink to cooktop or range", "60\"";
        cooking_to_refrigerator: Slot<Length> = "cooking to refrigerator",
            "from cooktop or range to the refrigerator",
            "72\"";
        refrigerator_to_sink: Slot<Length> = "refrigerator to sink", "from the refrigerator to the sink", "84\"";
        cuts_into_island: Slot<Length> = "cuts into island",
            "how far one of them cuts across an island's corner",
            "6\"";
    }
}

/// Counter that can be worked at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Frontage {
    /// In all.
    InAll(Length),
    /// Each stretch of it.
    Stretches(Vec<Stretch>),
}

record! {
    pub struct Stretch = STRETCH("stretch of counter", "a straight piece of counter that can be worked at") {
        length: Length = "length", "along its front", "96\"";
        depth: Slot<Length> = "depth", "from front to wall", "25 1/2\"";
        clear_above: Slot<Length> = "clear above", "to whatever hangs over it", "18\"";
    }
}

record! {
    #[derive(Default)]
    pub struct Landing = LANDING("landing", "counter beside, behind or across from a sink or an appliance, to set things down on") {
        left: Slot<Beside> = "left", "counter to the left, seen from the front", "24\"";
        right: Slot<Beside> = "right", "counter to the right", "{counter: 36\", to: fridge}";
        behind: Slot<Length> = "behind", "counter behind it, on an island", "9\"";
        above: Slot<Length> = "above", "counter on top of it, or above or below it", "24\"";
        across: Slot<Length> = "across", "counter across from it", "18\"";
        across_at: Slot<Length> = "across at", "how far away the counter across from it is", "42\"";
        across_a_walkway: Slot<bool> = "across a walkway",
            "whether others walk between it and the counter across from it",
            "true";
        to_corner: Slot<Length> = "to corner", "from a sink's edge to an inside corner of the counter", "3\"";
        around_corner: Slot<Length> = "return", "clear counter around that corner", "21\"";
        second_sink: Slot<bool> = "second sink", "whether it is a sink besides the one for cleaning up", "true";
    }
}

record! {
    short "counter" as Length;
    pub struct Beside = SHARED("shared counter", "counter that ends at another sink or appliance, and serves both") {
        counter: Length = "counter", "its length along the front", "36\"";
        to: Slot<String> = "to", "the opening at its other end", "fridge", Shape::Name(NameOf::Opening), String::read;
        preparation: Slot<bool> = "preparation", "whether food is prepared there as well", "true";
    }
}

words! {
    /// Whether others go by behind seats.
    pub enum Traffic {
        None = "none",
        EdgePast = "edge past",
        WalkPast = "walk past",
    }
}

record! {
    named
    pub struct Seating = SEATING("seating", "a place at an island, a counter or a table where people sit") {
        edge: Slot<Length> = "edge", "length of the edge at which they sit", "72\"";
        seats: Slot<u32> = "seats", "how many sit there", "3";
        height: Slot<Length> = "height", "top of the surface from the finished floor", "36\"";
        knee_depth: Slot<Length> = "knee depth", "clear for knees, from the edge inward", "15\"";
        behind: Slot<Length> = "behind", "clear floor from the edge to whatever is behind the seats", "44\"";
        traffic: Slot<Traffic> = "traffic", "whether others go by behind the seats", "walk past";
        wheelchair: Slot<bool> = "wheelchair", "whether somebody goes by in a wheelchair", "true";
    }
}

impl Value for Frontage {
    const SHAPE: Shape = Shape::Either(&Shape::Length, &Shape::List(&Stretch::SHAPE));

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let Yaml::List(items) = &node.value else {
            return Length::read(node, faults).map(Self::InAll);
        };
        // Every stretch is read before judging, so that each faulty one is told.
        let stretches: Vec<Option<Stretch>> = items.iter().map(|item| Stretch::read(item, faults)).collect();
        stretches.into_iter().collect::<Option<Vec<_>>>().map(Self::Stretches)
    }
}
