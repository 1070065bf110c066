//! The kinds of selection: what each needs before it can be ordered or fitted, and what holds for it.

use std::fmt;

use crate::finding::{Piece, Say};

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
    /// What stands in no other schedule.
    Other,
}

impl Trade {
    /// All of them, in the order of the office's schedules.
    pub const ALL: [Self; 7] =
        [Self::Finish, Self::Appliance, Self::Plumbing, Self::Lighting, Self::Hardware, Self::Tile, Self::Other];

    /// The schedule's name in file names and `explain`.
    pub fn word(self) -> &'static str {
        match self {
            Self::Finish => "finish",
            Self::Appliance => "appliance",
            Self::Plumbing => "plumbing",
            Self::Lighting => "lighting",
            Self::Hardware => "hardware",
            Self::Tile => "tile",
            Self::Other => "other",
        }
    }
}

/// What nearly every kind needs.
const COMMON: &[&str] = &["finish", "supplier", "lead time", "price", "quantity", "photos"];

/// What anything that is paid for may have.
const MAY: &[&str] = &["id", "name", "product", "description", "note", "cost", "price per", "total", "order"];

/// What goods may have besides: whatever somebody makes and delivers.
const GOODS_MAY: &[&str] = &[
    "maker",
    "model",
    "finish",
    "colour",
    "size",
    "material",
    "supplier",
    "lead time",
    "quantity",
    "photos",
    "sample seen",
    "nature",
    "requires",
    "cut sheet",
    "accessories",
    "varies by",
    "fit",
];

/// What goes into an opening may have besides.
const PLACED_MAY: &[&str] = &["set", "made as"];

/// What the table says of a kind.
#[derive(Clone, Copy, Debug)]
struct Row {
    trade: Trade,
    opening: bool,
    sheet: bool,
    common: &'static [&'static str],
    own: &'static [&'static str],
    may: &'static [&'static [&'static str]],
    own_may: &'static [&'static str],
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
    /// It is a piece of furniture, brought in as it stands.
    Furnishes,
    /// It heats by gas or by electricity.
    Heats,
    /// It keeps food cold.
    Cools,
    /// It hangs on a wall or under a ceiling, or is let into a wall.
    Hangs,
}

impl Kind {
    /// The kind of that name, or of another word that the trade has for it: one or several, in any case, described
    /// or not.
    pub fn named(name: &str) -> Option<Self> {
        named::named(name)
    }

    /// The appliance, or the sink, that somebody's words beside an opening name, where they name one.
    pub fn of_a_neighbour(words: &str) -> Option<Self> {
        named::named(words).filter(|kind| kind.trade() == Trade::Appliance || *kind == Self::Sink)
    }

    /// Its name, then the other words that the trade has for it, here and there.
    pub fn words(self) -> impl Iterator<Item = &'static str> + Clone {
        [self.name()].into_iter().chain(self.also().iter().copied())
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

    /// What one of it may have besides what it needs: fields that make sense of it.
    pub fn may_have(self) -> impl Iterator<Item = &'static str> {
        let row = self.row();
        let needed = move |key: &&str| !self.needs().any(|path| path == *key);
        row.may.iter().copied().flatten().chain(row.own_may).copied().filter(needed)
    }

    /// Whether its front may be a panel that the joiner makes.
    pub fn takes_a_panel(self) -> bool {
        self.may_have().chain(self.needs()).any(|key| key.split('.').next() == Some("panel"))
    }

    /// Everything that it needs; `.` leads into a group.
    pub fn needs(self) -> impl Iterator<Item = &'static str> {
        self.row().common.iter().chain(self.row().own).copied()
    }
}

impl crate::units::Told for Kind {}

impl Say for Kind {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        self.name().add_to(pieces);
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
        Trade::Finish | Trade::Hardware | Trade::Other => HoldPoint::GoodsOrdered,
    };
    let may: &[&[&str]] = &[MAY, GOODS_MAY, PLACED_MAY];
    Row {
        trade,
        opening: true,
        sheet: true,
        common: COMMON,
        own: &[],
        may,
        own_may: &[],
        hazards: &[],
        traits: &[],
        due,
    }
}

/// A thing that goes onto or over something.
const fn onto(trade: Trade) -> Row {
    Row { opening: false, sheet: false, may: &[MAY, GOODS_MAY], ..into(trade) }
}

impl Row {
    /// Needs these in place of what nearly every kind needs.
    const fn instead(self, common: &'static [&'static str]) -> Self {
        Self { common, ..self }
    }

    const fn needs(self, own: &'static [&'static str]) -> Self {
        Self { own, ..self }
    }

    /// May have these besides what any of its like may.
    const fn may(self, own_may: &'static [&'static str]) -> Self {
        Self { own_may, ..self }
    }

    /// Is no goods: nobody makes and delivers it.
    const fn no_goods(self) -> Self {
        Self { may: &[MAY], ..self }
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
    ($($kind:ident: $name:literal $(| $also:literal)*, $about:literal => $row:expr;)*) => {
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

            pub(super) const fn also(self) -> &'static [&'static str] {
                match self {
                    $(Self::$kind => &[$($also),*],)*
                }
            }

            /// What it is, in a phrase.
            pub const fn about(self) -> &'static str {
                match self {
                    $(Self::$kind => $about,)*
                }
            }

            pub(super) const fn row(self) -> &'static Row {
                match self {
                    $(Self::$kind => { const ROW: Row = $row; &ROW })*
                }
            }
        }
    };
}

mod hangs_from;
mod named;
mod near;
mod table;
pub use near::near_kinds;
pub use table::Kind;

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    #[test]
    fn no_word_means_two_kinds() {
        let mut seen: BTreeMap<&str, Kind> = BTreeMap::new();
        for kind in Kind::ALL {
            for word in kind.words() {
                let other = seen.insert(word, *kind);
                assert!(other.is_none(), "`{word}` is a {kind} and a {other:?}");
                assert_eq!(word, word.trim().to_lowercase());
            }
        }
    }

    #[test]
    fn the_trade_s_other_words_are_understood_american_and_british() {
        for (word, kind) in [
            ("faucet", Kind::Tap),
            ("sconce", Kind::WallLight),
            ("countertop", Kind::Counter),
            ("worktop", Kind::Counter),
            ("backsplash", Kind::Splashback),
            ("vanity", Kind::Cabinet),
            ("cooker", Kind::Range),
            ("hob", Kind::Cooktop),
            ("skirting", Kind::Trim),
            ("baseboard", Kind::Trim),
            ("towel rail", Kind::Bar),
            ("fridge", Kind::Refrigerator),
        ] {
            assert_eq!(Kind::named(word), Some(kind), "{word}");
        }
    }

    #[test]
    fn no_kind_asks_for_what_makes_no_sense() {
        let needs = |kind: Kind, path: &str| kind.needs().any(|need| need == path);
        assert!(!needs(Kind::Hook, "size.length") && needs(Kind::Bar, "size.length"));
        assert!(!needs(Kind::PanelRefrigerator, "size.depth with handle") && needs(Kind::PanelRefrigerator, "hinge"));
        assert!(!needs(Kind::Labour, "lead time") && !needs(Kind::Labour, "photos"));
        assert!(Kind::Item.needs().eq(["supplier", "lead time", "price", "photos"]));
        assert!(!Kind::CountertopAppliance.takes_opening() && !Kind::CountertopAppliance.wants_sheet());
    }
}
