//! The usual hold points of a job.

/// A usual hold point: a moment after which a mistake is dear, in the order in which work meets them
/// (trade practice).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HoldPoint {
    /// An item is ordered: its own last day to order.
    GoodsOrdered,
    /// Pipes, wires and ducts disappear behind boards.
    RoughInClosed,
    /// The cabinets are ordered, with every hole in them.
    CabinetsOrdered,
    /// An item is released to be delivered: the day on which it must be in hand.
    GoodsReleased,
    /// The counters are templated.
    CounterTemplated,
    /// Tile is set.
    TileSet,
    /// Shower glass is measured.
    GlassMeasured,
}

impl HoldPoint {
    /// All of them.
    pub const ALL: [Self; 7] = [
        Self::GoodsOrdered,
        Self::RoughInClosed,
        Self::CabinetsOrdered,
        Self::GoodsReleased,
        Self::CounterTemplated,
        Self::TileSet,
        Self::GlassMeasured,
    ];

    /// The one of that name; none for a hold point of the book's own.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|point| point.name() == name)
    }

    /// Its name, as a book dates it.
    pub fn name(self) -> &'static str {
        match self {
            Self::GoodsOrdered => "goods ordered",
            Self::RoughInClosed => "rough-in closed",
            Self::CabinetsOrdered => "cabinets ordered",
            Self::GoodsReleased => "goods released",
            Self::CounterTemplated => "counter templated",
            Self::TileSet => "tile set",
            Self::GlassMeasured => "glass measured",
        }
    }

    /// The milestones that date it when the book does not, the telling one first.
    pub fn milestones(self) -> &'static [&'static str] {
        match self {
            Self::RoughInClosed => {
                &["rough-in", "roughing-in", "rough-ins", "first fix", "1st fix", "instalaciones", "rohinstallation"]
            }
            Self::CounterTemplated => {
                &["counter template", "counter templating", "template", "plantilla de encimera", "plantilla"]
            }
            Self::GlassMeasured => &["glass measure", "tile set", "alicatado", "fliesen"],
            Self::TileSet => &["tiling", "alicatado", "fliesen"],
            Self::GoodsOrdered | Self::GoodsReleased | Self::CabinetsOrdered => &[],
        }
    }

    /// Which of its names, and of those of its milestones, a name is, the telling one first: in any case, and with spaces
    /// or hyphens.
    pub fn rank(self, milestone: &str) -> Option<usize> {
        let plain = |name: &str| name.trim().to_lowercase().replace('-', " ");
        let own = plain(milestone);
        std::iter::once(self.name()).chain(self.milestones().iter().copied()).position(|name| plain(name) == own)
    }
}

/// Milestones at which things of a kind are set, as books call them; none of most kinds.
const SETTING: [(super::Kind, &[&str]); 3] = [
    (super::Kind::Floor, &["floors laid", "floor laid", "flooring", "floors", "suelos", "bodenbelag"]),
    (
        super::Kind::Counter,
        &["counters set", "counter set", "countertops set", "worktops fitted", "worktops", "benchtops", "encimeras"],
    ),
    (super::Kind::Cabinet, &["cabinets set", "cabinets", "cabinetry", "cabinets fitted", "units fitted", "muebles"]),
];

/// Whether a milestone of that name is the one at which things of a kind are set.
pub fn sets(milestone: &str, kind: super::Kind) -> bool {
    SETTING.iter().filter(|(of, _)| *of == kind).any(|(_, names)| {
        let plain = milestone.trim().to_lowercase().replace('-', " ");
        names.contains(&plain.as_str())
    })
}
