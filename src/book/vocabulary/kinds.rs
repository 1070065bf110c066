//! The kinds of selection: what each needs before it can be ordered or fitted.

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

/// A kind of selection.
#[derive(Debug)]
pub struct Kind {
    /// Its name, as written after `kind:`.
    pub name: &'static str,
    /// The schedule that it stands in.
    pub trade: Trade,
    /// Whether it must have an opening of its own.
    pub opening: bool,
    /// Whether the maker's sheet must be at hand.
    pub sheet: bool,
    /// What it is, in a phrase.
    pub about: &'static str,
    /// The fields that it needs beyond [`Kind::COMMON`]; `.` leads into a group.
    pub own: &'static [&'static str],
    /// What of it can hurt, unless what is said of the thing rules that out.
    pub hazards: &'static [Hazard],
}

/// What can hurt someone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hazard {
    /// Gas.
    Gas,
    /// Electricity.
    Power,
    /// Heat near things that burn.
    Heat,
    /// Air to breathe and to burn.
    Air,
    /// Weight.
    Weight,
    /// A thing that tips over.
    Tipping,
    /// Glass.
    Glass,
    /// Stone: weight, and dust when cut.
    Stone,
    /// Water that scalds, floods or meets power.
    Water,
}

/// A caution, and the hazard that it is of, if it is of one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Caution {
    /// What a thing can do.
    Of(Hazard),
    /// Words of a rule's own.
    Own(&'static str),
}

impl Caution {
    /// The hazard that it is of.
    pub const fn hazard(self) -> Option<Hazard> {
        match self {
            Self::Of(hazard) => Some(hazard),
            Self::Own(_) => None,
        }
    }

    /// What stands on sheets and findings.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Of(hazard) => hazard.words(),
            Self::Own(words) => words,
        }
    }
}

impl Hazard {
    /// The caution of it.
    pub const fn caution(self) -> Caution {
        Caution::Of(self)
    }

    const fn words(self) -> &'static str {
        match self {
            Self::Gas => {
                "Gas can kill. Piping, connection and leak test are for a licensed trade, by the maker's instructions and the local code."
            }
            Self::Power => {
                "Electricity can kill. Circuits and connections are for a licensed electrician, by the maker's instructions and the local code."
            }
            Self::Heat => {
                "Heat sets fire to what burns. Clearances to anything combustible are those of the maker's instructions and the local code, whichever is greater."
            }
            Self::Air => {
                "Exhaust and make-up air decide whether flues draw. Sizes and ducts are set by the maker's instructions, the local code and a licensed trade."
            }
            Self::Weight => "Heavy enough to injure. Enough hands, and proper gear to carry, lift and hold it.",
            Self::Tipping => "It can tip over. The maker's anti-tip fixing goes into solid framing before first use.",
            Self::Glass => {
                "Glass breaks and cuts. Safety glazing, its fixing and its handling follow the local code and the maker's instructions."
            }
            Self::Stone => {
                "Stone is heavy and brittle, and its dust harms lungs. Support, handling and cutting are for the fabricator, by the local code."
            }
            Self::Water => {
                "Hot water scalds, and leaks rot. Valves, limits and connections are for a licensed plumber, by the maker's instructions and the local code."
            }
        }
    }
}

impl Kind {
    /// What every kind needs.
    pub const COMMON: &'static [&'static str] = &["finish", "supplier", "lead time", "price", "quantity", "photos"];

    /// Everything that it needs.
    pub fn needs(&self) -> impl Iterator<Item = &'static str> {
        Self::COMMON.iter().chain(self.own).copied()
    }
}

/// The kind of that name.
pub fn kind(name: &str) -> Option<&'static Kind> {
    KINDS.iter().find(|kind| kind.name == name)
}

const fn into(
    name: &'static str,
    trade: Trade,
    about: &'static str,
    own: &'static [&'static str],
    hazards: &'static [Hazard],
) -> Kind {
    Kind { name, trade, opening: true, sheet: true, about, own, hazards }
}

const fn onto(
    name: &'static str,
    trade: Trade,
    about: &'static str,
    own: &'static [&'static str],
    hazards: &'static [Hazard],
) -> Kind {
    Kind { name, trade, opening: false, sheet: false, about, own, hazards }
}

use Hazard::{Air, Gas, Glass, Heat, Power, Stone, Tipping, Water, Weight};
use Trade::{Appliance, Finish, Hardware, Lighting, Plumbing, Tile};

/// Every kind.
pub const KINDS: &[Kind] = &[
    into(
        "range",
        Appliance,
        "a cooker with an oven, standing on the floor",
        &["maker", "model", "size.width", "size.height", "size.depth", "size.depth with handle", "fit.needs.power"],
        &[Gas, Power, Heat, Weight, Tipping],
    ),
    into(
        "cooktop",
        Appliance,
        "burners or zones set into a counter",
        &["maker", "model", "size.width", "size.depth", "size.height", "fit.needs.power"],
        &[Gas, Power, Heat],
    ),
    into(
        "wall oven",
        Appliance,
        "an oven built into a cabinet",
        &["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power", "fit.cabinet"],
        &[Power, Heat, Weight],
    ),
    into(
        "microwave",
        Appliance,
        "a microwave, built in or in a drawer",
        &["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power"],
        &[Power, Weight],
    ),
    into(
        "warming drawer",
        Appliance,
        "a heated drawer under an oven",
        &["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power"],
        &[Power, Heat],
    ),
    into(
        "refrigerator",
        Appliance,
        "a refrigerator or freezer",
        &[
            "maker",
            "model",
            "size.width",
            "size.height",
            "size.depth",
            "size.depth with door",
            "size.depth with handle",
            "size.height to hinge",
            "hinge",
            "fit.needs.power",
        ],
        &[Power, Weight, Tipping],
    ),
    into(
        "dishwasher",
        Appliance,
        "a dishwasher under a counter",
        &[
            "maker",
            "model",
            "size.width",
            "size.height",
            "size.depth",
            "fit.needs.power",
            "fit.needs.water",
            "fit.needs.drain",
        ],
        &[Power, Water, Weight],
    ),
    into(
        "panel dishwasher",
        Appliance,
        "a dishwasher behind the joiner's panel",
        &[
            "maker",
            "model",
            "size.width",
            "size.height",
            "size.depth",
            "panel.width",
            "panel.height",
            "panel.thickness",
            "panel.weight",
            "fit.needs.power",
            "fit.needs.water",
            "fit.needs.drain",
        ],
        &[Power, Water, Weight],
    ),
    into(
        "hood",
        Appliance,
        "a hood over a cooktop",
        &["maker", "model", "size.width", "size.height", "size.depth", "airflow", "fit.needs.power", "fit.needs.duct"],
        &[Air, Heat, Power],
    ),
    into(
        "washer",
        Appliance,
        "a clothes washer",
        &[
            "maker",
            "model",
            "size.width",
            "size.height",
            "size.depth",
            "fit.needs.power",
            "fit.needs.water",
            "fit.needs.drain",
        ],
        &[Power, Water, Weight, Tipping],
    ),
    into(
        "dryer",
        Appliance,
        "a clothes dryer",
        &["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power"],
        &[Gas, Power, Heat, Air, Weight, Tipping],
    ),
    onto("disposer", Appliance, "a waste disposer under a sink", &["maker", "model", "size.height"], &[Power, Water]),
    onto("fan", Appliance, "an exhaust fan", &["maker", "model", "airflow"], &[Power, Air]),
    into(
        "sink",
        Plumbing,
        "a kitchen or utility sink",
        &["maker", "model", "size.width", "size.depth", "bowl depth", "mount", "drain"],
        &[Water, Weight],
    ),
    onto("basin", Plumbing, "a washbasin", &["maker", "model", "size.width", "size.depth", "mount", "drain"], &[Water]),
    onto(
        "tap",
        Plumbing,
        "a tap with its handles",
        &["maker", "model", "holes", "spread", "rear travel", "spout reach"],
        &[Water],
    ),
    onto("shower set", Plumbing, "shower head, valve and trim", &["maker", "model", "valve"], &[Water]),
    into(
        "toilet",
        Plumbing,
        "a toilet",
        &["maker", "model", "size.width", "size.depth", "rough-in", "seat height"],
        &[Water, Weight],
    ),
    into(
        "bathtub",
        Plumbing,
        "a bathtub",
        &["maker", "model", "size.width", "size.depth", "size.height", "drain"],
        &[Water, Weight],
    ),
    onto(
        "shower glass",
        Plumbing,
        "a shower screen or door",
        &["maker", "model", "glass", "size.width", "size.height"],
        &[Glass, Weight],
    ),
    onto(
        "pendant",
        Lighting,
        "a light hung from the ceiling",
        &["maker", "model", "size.diameter", "drop", "canopy", "slope rating", "lamp", "kelvin", "dimming"],
        &[Power],
    ),
    onto(
        "wall light",
        Lighting,
        "a light on a wall",
        &["maker", "model", "size.height", "canopy", "lamp", "kelvin", "dimming"],
        &[Power],
    ),
    onto(
        "ceiling light",
        Lighting,
        "a light on or in a ceiling",
        &["maker", "model", "lamp", "kelvin", "dimming"],
        &[Power],
    ),
    onto("pull", Hardware, "a pull on doors and drawers", &["maker", "model", "centre to centre", "projection"], &[]),
    onto("knob", Hardware, "a knob on doors and drawers", &["maker", "model", "size.diameter", "projection"], &[]),
    onto("bar", Hardware, "a towel bar, rail or hook", &["maker", "model", "size.length"], &[]),
    onto(
        "tile",
        Tile,
        "tile on wall or floor",
        &["maker", "model", "face size", "thickness", "joint", "grout", "edge trim", "pattern"],
        &[],
    ),
    onto("cabinet", Finish, "cabinets and their fronts", &["maker", "door style"], &[Weight, Tipping]),
    onto("counter", Finish, "a counter or sill", &["maker", "thickness", "edge"], &[Stone, Weight]),
    onto("floor", Finish, "a floor other than tile", &["maker", "model", "thickness", "pattern"], &[]),
    onto("paint", Finish, "paint or limewash", &["maker", "colour", "sheen"], &[]),
    onto("wallpaper", Finish, "paper or cloth on walls", &["maker", "model", "pattern"], &[]),
    onto("boarding", Finish, "boards on walls or ceiling", &["maker", "thickness", "pattern"], &[]),
    onto("shelf", Finish, "open shelves", &["maker", "size.depth", "thickness"], &[Weight]),
    onto("rug", Finish, "a rug or runner", &["maker", "face size"], &[]),
    into(
        "mirror cabinet",
        Finish,
        "a mirror cabinet, recessed or on the wall",
        &["maker", "model", "size.width", "size.height", "size.depth"],
        &[Glass],
    ),
    onto("mirror", Finish, "a mirror", &["maker", "size.width", "size.height"], &[Glass]),
    onto("stair part", Finish, "treads, rails and balusters", &["maker", "thickness"], &[]),
];
