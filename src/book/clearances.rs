//! What is clear in a room, as measured or planned.

use std::collections::BTreeMap;

use crate::source::Spanned;
use crate::source::yaml::{Node, Value as Yaml};
use crate::units::Length;
use crate::vocabulary::{Called, Faults, FieldType, Gathers, Named, Readings, Slot, Value, Words, name, record, words};

record! {
    group
    #[derive(Default)]
    pub struct Clearances = CLEARANCES("clearances", "distances in the room as measured or planned; a list where there are several, of which the least counts") {
        doorways: Named<Called<Length>> = "doorways",
            "clear width of each doorway, between the open leaf and the stop",
            "{hall door: 32\"}";
        triangle: Slot<Triangle> = "triangle",
            "the ways between sink, cooking and refrigerator",
            "{sink to cooking: 60\", cooking to refrigerator: 72\", refrigerator to sink: 84\"}";
        frontage: Slot<Frontage> = "counter frontage",
            "all counter that can be worked at, along its front, or each stretch of it",
            "[{length: 96\", depth: 25 1/2\", clear above: 18\"}]";
    }
    figures distances: Distances<ClearDistance> => unmarked by ClearDistance {
        WorkAisle = "work aisle": Readings, "between counters or appliances that face each other", "42\"";
        Walkway = "walkway": Readings,
            "a way through, with a counter or an appliance on one side at most",
            "36\"";
        PreparationCounter = "preparation counter": (Length, Length),
            "the unbroken counter beside a sink where food is prepared, width and depth",
            "36\" x 24\"";
        DishwasherToSink = "dishwasher to sink": Readings,
            "from the dishwasher's edge to the nearest edge of a sink",
            "24\"";
        StandingSpaceAtDishwasher = "standing space at dishwasher": Readings,
            "between the dishwasher and whatever stands at a right angle to it",
            "21\"";
        ShoulderHeight = "shoulder height": Readings,
            "height of the cook's shoulder from the finished floor",
            "56\"";
        InFrontOfToilet = "in front of toilet": Readings,
            "clear floor from the toilet's front to whatever is opposite",
            "30\"";
        InFrontOfBidet = "in front of bidet": Readings,
            "clear floor from the bidet's front to whatever is opposite",
            "30\"";
        InFrontOfBasin = "in front of basin": Readings,
            "clear floor from the basin's front to whatever is opposite",
            "30\"";
        InFrontOfTub = "in front of tub": Readings,
            "clear floor from the tub's side to whatever is opposite",
            "30\"";
        InFrontOfShower = "in front of shower": Readings, "clear floor in front of the shower's entry", "30\"";
        ToiletToSide = "toilet to side": Readings,
            "from the toilet's centre to the nearest wall, cabinet or tub beside it",
            "18\"";
        ToiletToNextFixture = "toilet to next fixture": Readings,
            "from the toilet's centre to the centre of the fixture beside it",
            "36\"";
        ToiletCompartment = "toilet compartment": (Length, Length),
            "inside of a compartment for the toilet, width and depth",
            "36\" x 66\"";
        PaperHolderAheadOfBowl = "paper holder ahead of bowl": Readings,
            "from the toilet's front edge forward to the paper",
            "10\"";
        PaperHolderHeight = "paper holder height": Readings,
            "centre of the paper from the finished floor",
            "26\"";
        BasinToSide = "basin to side": Readings,
            "from the basin's centre to the wall or anything tall beside it",
            "20\"";
        BasinEdgeToWall = "basin edge to wall": Readings,
            "from the edge of a basin that hangs or stands free to the wall beside it",
            "4\"";
        BasinToBasin = "basin to basin": Readings, "from centre to centre of two basins", "36\"";
        BasinHeight = "basin height": Readings, "top of the basin's rim from the finished floor", "34\"";
        Shower = "shower": (Length, Length), "inside of the shower between finished faces", "36\" x 42\"";
        ShowerSeatHeight = "shower seat height": Readings, "top of the shower's seat from its floor", "18\"";
        ShowerSeatDepth = "shower seat depth": Readings, "depth of a seat that is fixed in the shower", "15\"";
        ShowerHead = "shower head": Readings,
            "height of the shower head's outlet in the wall, from the shower's floor",
            "80\"";
        ShowerWallCovering = "shower wall covering": Readings,
            "how high the waterproof covering goes, from the shower's floor",
            "84\"";
        HeadroomAtShower = "headroom at shower": Readings,
            "ceiling above the shower's floor under the head",
            "84\"";
        HeadroomAtToilet = "headroom at toilet": Readings,
            "ceiling above the toilet and the floor in front of it",
            "84\"";
        HeadroomAtBasin = "headroom at basin": Readings,
            "ceiling above the basin and the floor in front of it",
            "84\"";
        HeadroomAtTub = "headroom at tub": Readings,
            "ceiling above the tub and the floor in front of it",
            "84\"";
    }
}

/// Distances by their names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Distances<Name> {
    /// Single distances.
    pub lengths: BTreeMap<Name, Readings>,
    /// Rectangles: width and depth.
    pub sides: BTreeMap<Name, Spanned<(Length, Length)>>,
}

impl<Name> Default for Distances<Name> {
    fn default() -> Self {
        Self { lengths: BTreeMap::new(), sides: BTreeMap::new() }
    }
}

impl<Name: Ord> Distances<Name> {
    /// The least of the distances of that name.
    pub fn least(&self, name: Name) -> Option<&Spanned<Length>> {
        self.lengths.get(&name)?.least()
    }
}

impl<Name: Words + Ord> Gathers<Readings> for Distances<Name> {
    type Name = Name;

    fn gather(&mut self, name: Name, value: Spanned<Readings>) {
        self.lengths.insert(name, value.value);
    }
}

impl<Name: Words + Ord> Gathers<(Length, Length)> for Distances<Name> {
    type Name = Name;

    fn gather(&mut self, name: Name, value: Spanned<(Length, Length)>) {
        self.sides.insert(name, value);
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
        to: Slot<String> = "to", "the opening at its other end", "fridge" as name::Opening;
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
    const TYPE: FieldType = FieldType::Either(&FieldType::Length, &FieldType::List(&Stretch::TYPE));

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let Yaml::List(items) = &node.value else {
            return Length::read(node, faults).map(Self::InAll);
        };
        // Every stretch is read before judging, so that each faulty one is told.
        let stretches: Vec<Option<Stretch>> = items.iter().map(|item| Stretch::read(item, faults)).collect();
        stretches.into_iter().collect::<Option<Vec<_>>>().map(Self::Stretches)
    }
}
