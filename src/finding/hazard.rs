//! What of a thing can hurt someone, and the caution that stands on sheets and findings.

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
    /// A bar that somebody holds on to.
    Fall,
    /// Cords that hang.
    Cords,
    /// Glass.
    Glass,
    /// Stone: weight, and dust when cut.
    Stone,
    /// Tile: dust when cut.
    Dust,
    /// Water that scalds, floods or meets power.
    Water,
    /// A counter that stands out farther than it bears.
    Overhang,
}

impl Hazard {
    /// The caution of it, as findings and the office's pages say it.
    pub const fn caution(self) -> &'static str {
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
            Self::Fall => {
                "A bar that gives way lets somebody fall. It is fixed into solid blocking, by the maker's instructions and the local code."
            }
            Self::Cords => {
                "A hanging cord can strangle a child. Have none where children may be. Else keep it short and out of reach, by the maker's instructions and the local code."
            }
            Self::Glass => {
                "Glass breaks and cuts. Safety glazing, its fixing and its handling follow the local code and the maker's instructions."
            }
            Self::Stone => {
                "Stone is heavy and brittle, and its dust harms lungs. Support, handling and cutting are for the fabricator, by the local code."
            }
            Self::Dust => {
                "Tile that is cut gives off dust that harms lungs for good. Cut it wet or with the dust drawn off, and with a mask that fits, by the local rules on silica."
            }
            Self::Water => {
                "Hot water scalds, and leaks rot. Valves, limits and connections are for a licensed plumber, by the maker's instructions and the local code."
            }
            Self::Overhang => {
                "A counter that gives way crushes. An overhang is never a step or a seat. Its support is for the fabricator and licensed trades, by the stone's maker and the local code."
            }
        }
    }
}
