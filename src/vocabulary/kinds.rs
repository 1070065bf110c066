//! The kinds of selection: what each needs before it can be ordered or fitted, and what holds for it.

use std::fmt;

use super::{Hazard, HoldPoint};

/// The schedule that a kind stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Trade {
    /// Surfaces, cabinets and counters.
    Finish,
    /// Appliances.
    Appliance,
    /// Plumbing fixtures.
    Plumbing,
    /// Lighting.
    Lighting,
    /// Hardware.
    Hardware,
    /// Tile.
    Tile,
}

impl Trade {
    /// All of them, in the order of the office's schedules.
    pub const ALL: [Self; 6] =
        [Self::Finish, Self::Appliance, Self::Plumbing, Self::Lighting, Self::Hardware, Self::Tile];

    /// The schedule's name in file names and `explain`.
    pub fn word(self) -> &'static str {
        match self {
            Self::Finish => "finish",
            Self::Appliance => "appliance",
            Self::Plumbing => "plumbing",
            Self::Lighting => "lighting",
            Self::Hardware => "hardware",
            Self::Tile => "tile",
        }
    }
}

/// What the table says of a kind.
#[derive(Clone, Copy, Debug)]
struct Row {
    trade: Trade,
    opening: bool,
    sheet: bool,
    own: &'static [&'static str],
    hazards: &'static [Hazard],
    traits: &'static [Trait],
    due: HoldPoint,
}

/// What holds for some kinds, whoever makes the thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trait {
    /// It has burners or zones to cook on.
    Cooks,
    /// It is let into a counter from above, and its rim lies on it: its depth says nothing of what stands
    /// out in front.
    DropsIn,
    /// Its front laps over the edge of its hole.
    LapsOver,
    /// It is cut into a counter: nothing can be set down on it.
    CutIntoCounter,
    /// It stands on the floor and parts the counter.
    BreaksCounter,
    /// It reaches past the counter, so that nothing is set down on it.
    StandsTall,
    /// Its handles stand out into a corner's drawers and doors.
    HasHandles,
    /// It washes dishes under a counter.
    WashesDishes,
    /// It stands under a counter in no cabinet, so that the counter spans it.
    InNoCabinet,
    /// Somebody bathes or showers in it.
    Bathes,
}

impl Kind {
    /// What every kind needs.
    pub const COMMON: &'static [&'static str] = &["finish", "supplier", "lead time", "price", "quantity", "photos"];

    /// The kind of that name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|kind| kind.name() == name)
    }

    /// The schedule that it stands in.
    pub const fn trade(self) -> Trade {
        self.row().trade
    }

    /// Whether it must have an opening of its own.
    pub const fn takes_opening(self) -> bool {
        self.row().opening
    }

    /// Whether the maker's sheet must be at hand.
    pub const fn wants_sheet(self) -> bool {
        self.row().sheet
    }

    /// What of it can hurt, unless what is said of the thing rules that out.
    pub const fn hazards(self) -> &'static [Hazard] {
        self.row().hazards
    }

    /// Whether that holds for it.
    pub fn is(self, what: Trait) -> bool {
        self.row().traits.contains(&what)
    }

    /// The hold point by which one of it must be settled.
    pub const fn due(self) -> HoldPoint {
        self.row().due
    }

    /// Everything that it needs; `.` leads into a group.
    pub fn needs(self) -> impl Iterator<Item = &'static str> {
        Self::COMMON.iter().chain(self.row().own).copied()
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// A thing that goes into an opening of its own, by the maker's sheet.
const fn into(trade: Trade) -> Row {
    // What cabinets are built around is due with them; what stands on pipes and wires, before they disappear.
    let due = match trade {
        Trade::Appliance => HoldPoint::CabinetsOrdered,
        Trade::Plumbing | Trade::Lighting => HoldPoint::RoughInClosed,
        Trade::Tile => HoldPoint::TileSet,
        Trade::Finish | Trade::Hardware => HoldPoint::GoodsOrdered,
    };
    Row { trade, opening: true, sheet: true, own: &[], hazards: &[], traits: &[], due }
}

/// A thing that goes onto or over something.
const fn onto(trade: Trade) -> Row {
    Row { opening: false, sheet: false, ..into(trade) }
}

impl Row {
    const fn needs(self, own: &'static [&'static str]) -> Self {
        Self { own, ..self }
    }

    const fn hurts(self, hazards: &'static [Hazard]) -> Self {
        Self { hazards, ..self }
    }

    const fn due(self, due: HoldPoint) -> Self {
        Self { due, ..self }
    }

    const fn is(self, traits: &'static [Trait]) -> Self {
        Self { traits, ..self }
    }
}

macro_rules! kinds {
    ($($kind:ident: $name:literal, $about:literal => $row:expr;)*) => {
        /// A kind of selection.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Kind {
            $(#[doc = $about] $kind,)*
        }

        impl Kind {
            /// All of them, in the order in which they are listed.
            pub const ALL: &'static [Self] = &[$(Self::$kind),*];

            /// Its name, as written after `kind:`.
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$kind => $name,)*
                }
            }

            /// What it is, in a phrase.
            pub const fn about(self) -> &'static str {
                match self {
                    $(Self::$kind => $about,)*
                }
            }

            const fn row(self) -> &'static Row {
                match self {
                    $(Self::$kind => { const ROW: Row = $row; &ROW })*
                }
            }
        }
    };
}

use Hazard::{Air, Dust, Gas, Glass, Heat, Power, Stone, Tipping, Water, Weight};
use Trade::{Appliance, Finish, Hardware, Lighting, Plumbing, Tile};
use Trait::{
    Bathes, BreaksCounter, Cooks, CutIntoCounter, DropsIn, HasHandles, InNoCabinet, LapsOver, StandsTall, WashesDishes,
};

kinds! {
    Range: "range", "a cooker with an oven, standing on the floor" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "size.depth with handle",
                "fit.needs.power",
            ])
            .hurts(&[Gas, Power, Heat, Weight, Tipping])
            .is(&[Cooks, BreaksCounter, HasHandles]);
    Cooktop: "cooktop", "burners or zones set into a counter" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.depth", "size.height", "fit.needs.power"])
            .hurts(&[Gas, Power, Heat])
            .is(&[Cooks, DropsIn, CutIntoCounter]);
    WallOven: "wall oven", "an oven built into a cabinet" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power", "fit.cabinet"])
            .hurts(&[Power, Heat, Weight])
            .is(&[LapsOver, StandsTall, HasHandles]);
    Microwave: "microwave", "a microwave, built in or in a drawer" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power"])
            .hurts(&[Power, Weight])
            .is(&[LapsOver]);
    WarmingDrawer: "warming drawer", "a heated drawer under an oven" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power"])
            .hurts(&[Power, Heat])
            .is(&[LapsOver]);
    Refrigerator: "refrigerator", "a refrigerator or freezer" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "size.depth with door",
                "size.depth with handle", "size.height to hinge", "hinge", "fit.needs.power",
            ])
            .hurts(&[Power, Weight, Tipping])
            .is(&[StandsTall, HasHandles]);
    Dishwasher: "dishwasher", "a dishwasher under a counter" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power", "fit.needs.water",
                "fit.needs.drain",
            ])
            .hurts(&[Power, Water, Weight])
            .is(&[HasHandles, WashesDishes, InNoCabinet]);
    PanelDishwasher: "panel dishwasher", "a dishwasher behind the joiner's panel" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "panel.width", "panel.height",
                "panel.thickness", "panel.weight", "fit.needs.power", "fit.needs.water", "fit.needs.drain",
            ])
            .hurts(&[Power, Water, Weight])
            .is(&[WashesDishes, InNoCabinet]);
    Hood: "hood", "a hood over a cooktop" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "airflow", "fit.needs.power",
                "fit.needs.duct",
            ])
            .hurts(&[Air, Heat, Power]);
    Washer: "washer", "a clothes washer" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power", "fit.needs.water",
                "fit.needs.drain",
            ])
            .hurts(&[Power, Water, Weight, Tipping])
            .is(&[InNoCabinet]);
    Dryer: "dryer", "a clothes dryer" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power"])
            .hurts(&[Gas, Power, Heat, Air, Weight, Tipping])
            .is(&[InNoCabinet]);
    Disposer: "disposer", "a waste disposer under a sink" =>
        onto(Appliance)
            .needs(&["maker", "model", "size.height"])
            .hurts(&[Power, Water]);
    Fan: "fan", "an exhaust fan" =>
        onto(Appliance)
            .needs(&["maker", "model", "airflow"])
            .hurts(&[Power, Air]);
    Sink: "sink", "a kitchen or utility sink" =>
        into(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "bowl depth", "mount", "drain"])
            .hurts(&[Water, Weight])
            .is(&[DropsIn, CutIntoCounter])
            .due(HoldPoint::CabinetsOrdered);
    Basin: "basin", "a washbasin" =>
        onto(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "mount", "drain"])
            .hurts(&[Water])
            .is(&[CutIntoCounter]);
    Tap: "tap", "a tap with its handles" =>
        onto(Plumbing)
            .needs(&["maker", "model", "holes", "spread", "rear travel", "spout reach"])
            .hurts(&[Water]);
    ShowerSet: "shower set", "shower head, valve and trim" =>
        onto(Plumbing)
            .needs(&["maker", "model", "valve"])
            .hurts(&[Water])
            .is(&[Bathes]);
    Toilet: "toilet", "a toilet" =>
        into(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "rough-in", "seat height"])
            .hurts(&[Water, Weight]);
    Bathtub: "bathtub", "a bathtub" =>
        into(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "size.height", "drain"])
            .hurts(&[Water, Weight])
            .is(&[Bathes]);
    ShowerGlass: "shower glass", "a shower screen or door" =>
        onto(Plumbing)
            .needs(&["maker", "model", "glass", "size.width", "size.height"])
            .hurts(&[Glass, Weight])
            .is(&[Bathes])
            .due(HoldPoint::GlassMeasured);
    Pendant: "pendant", "a light hung from the ceiling" =>
        onto(Lighting)
            .needs(&[
                "maker", "model", "size.diameter", "drop", "canopy", "slope rating", "lamp", "kelvin", "dimming",
            ])
            .hurts(&[Power]);
    WallLight: "wall light", "a light on a wall" =>
        onto(Lighting)
            .needs(&["maker", "model", "size.height", "canopy", "lamp", "kelvin", "dimming"])
            .hurts(&[Power]);
    CeilingLight: "ceiling light", "a light on or in a ceiling" =>
        onto(Lighting)
            .needs(&["maker", "model", "lamp", "kelvin", "dimming"])
            .hurts(&[Power]);
    Pull: "pull", "a pull on doors and drawers" =>
        onto(Hardware)
            .needs(&["maker", "model", "centre to centre", "projection"]);
    Knob: "knob", "a knob on doors and drawers" =>
        onto(Hardware)
            .needs(&["maker", "model", "size.diameter", "projection"]);
    Bar: "bar", "a towel bar, rail or hook" =>
        onto(Hardware)
            .needs(&["maker", "model", "size.length"]);
    Tile: "tile", "tile on wall or floor" =>
        onto(Tile)
            .needs(&["maker", "model", "face size", "thickness", "joint", "grout", "edge trim", "pattern"])
            .hurts(&[Dust]);
    Cabinet: "cabinet", "cabinets and their fronts" =>
        onto(Finish)
            .needs(&["maker", "door style"])
            .hurts(&[Weight, Tipping])
            .due(HoldPoint::CabinetsOrdered);
    Counter: "counter", "a counter or sill" =>
        onto(Finish)
            .needs(&["maker", "thickness", "edge"])
            .hurts(&[Stone, Weight])
            .due(HoldPoint::CounterTemplated);
    Floor: "floor", "a floor other than tile" =>
        onto(Finish)
            .needs(&["maker", "model", "thickness", "pattern"]);
    Paint: "paint", "paint or limewash" =>
        onto(Finish)
            .needs(&["maker", "colour", "sheen"]);
    Wallpaper: "wallpaper", "paper or cloth on walls" =>
        onto(Finish)
            .needs(&["maker", "model", "pattern"]);
    Boarding: "boarding", "boards on walls or ceiling" =>
        onto(Finish)
            .needs(&["maker", "thickness", "pattern"]);
    Shelf: "shelf", "open shelves" =>
        onto(Finish)
            .needs(&["maker", "size.depth", "thickness"])
            .hurts(&[Weight]);
    Rug: "rug", "a rug or runner" =>
        onto(Finish)
            .needs(&["maker", "face size"]);
    MirrorCabinet: "mirror cabinet", "a mirror cabinet, recessed or on the wall" =>
        into(Finish)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth"])
            .hurts(&[Glass])
            .due(HoldPoint::RoughInClosed);
    Mirror: "mirror", "a mirror" =>
        onto(Finish)
            .needs(&["maker", "size.width", "size.height"])
            .hurts(&[Glass]);
    StairPart: "stair part", "treads, rails and balusters" =>
        onto(Finish)
            .needs(&["maker", "thickness"]);
}
