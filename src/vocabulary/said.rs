//! What free words of the designer's tell of a thing: its name, a phrase, what is ordered with it.
//!
//! Such words ask and sort; whether something is safe is a field of its own. Everything that is told by words is
//! in this table, so that a word that means something means it everywhere.

mod lists;
mod low;
mod makings;

use lists::{
    AIR_GAP, AIR_SWITCH, BOWL_WORDS, BUILT, CLOSURES, COLD_ALONE, FILLERS, FILTER_TAP, FROM_BELOW, HALLS,
    HANGS_ON_THE_WALL, HEATED, HUNG, KNOBS, LIFTS, LIGHT_WORDS, MAKE_UP_AIR_WORDS, NO_BOWL_WORDS, ON_SITE,
    OUT_OF_THE_WALL, OUTLET_IN_THE_FLOOR, OUTLET_IN_THE_WALL, OWN_CIRCUIT, SHARES_A_BRANCH, SHARES_A_CIRCUIT, SHEENS,
    SIDE_SPRAY, SKIRTING_WORDS, SLIDING_PANE_WORDS, SOAP, STANDS_FREE, TALL_WORDS, TAP_HOLE_WORDS, TAP_WORDS, WOODS,
};
use makings::{
    AROUND_A_HOOD, BINS, BODIES, CUT_TO_LENGTH, DIRECTIONS, DISHWASHERS, FOR_LAUNDRY, FRAMES, OVENS, ROOF_WINDOWS,
    SAFETY_GLASS_WORDS, SHOWER_CURTAIN, SWITCH_OF_A_DISPOSER, VALVES, WALL_FRAMES, WITHOUT_PULLS,
};

/// What words may tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mention {
    /// Of a floor rather than a wall.
    Floor,
    /// Air let in for what a hood takes out.
    MakeUpAir,
    /// A kit that makes an appliance burn another gas.
    ConversionKit,
    /// That something is done on site, and not ordered with a thing.
    OnSite,
    /// What a machine is set up on.
    Pedestal,
    /// That a branch of gas serves more than one thing.
    SharesABranch,
    /// That a circuit serves more than one thing.
    SharesACircuit,
    /// That a circuit serves one thing alone.
    OwnCircuit,
    /// Grout.
    Grout,
    /// How a paint shines.
    Sheen,
    /// A hood.
    Hood,
    /// What is built around a hood, and is not the hood.
    AroundAHood,
    /// Drawers.
    Drawer,
    /// Something that is cooked on.
    Cooking,
    /// That it may be heated.
    Heated,
    /// A place where clothes are washed, or what stands there.
    ForLaundry,
    /// A pane of shower glass that is hung.
    HungPane,
    /// A pane of shower glass that slides.
    SlidingPane,
    /// A finish that hides the grain.
    HidesGrain,
    /// A wood whose grain shows.
    Wood,
    /// The direction in which something is laid.
    Direction,
    /// What a door cannot swing into.
    Built,
    /// Furniture, though `wall` may stand beside its name.
    Furniture,
    /// What rises above the counter besides what is built.
    Tall,
    /// What stands under a counter, or is as high as one.
    Low,
    /// A filler or a panel of a row.
    Closure,
    /// A cabinet with nothing in it that stands in the way of what hangs into it.
    EmptyCabinet,
    /// That a side is open.
    Open,
    /// That a thing is let into the wall.
    Recessed,
    /// A tap.
    Tap,
    /// How a tap is made, where a hole is called by it.
    TapHole,
    /// A tap that serves no bowl.
    NoBowl,
    /// A bowl.
    Bowl,
    /// What covers a hole, or goes through one.
    FillsAHole,
    /// A toilet whose outlet goes through the wall.
    OutletInTheWall,
    /// What is gripped and turned.
    Knob,
    /// What is worked by its lever.
    Lever,
    /// A tap that gives cold water alone.
    ColdAlone,
    /// A piece of pipe that leads an outlet another way.
    PipeBend,
    /// A toilet that hangs on the wall.
    HangsOnTheWall,
    /// A toilet whose outlet goes into the floor.
    OutletInTheFloor,
    /// That something is at a side.
    AtTheSide,
    /// That something is behind.
    Behind,
    /// Trim along the foot of a wall.
    Skirting,
    /// A wall.
    Wall,
    /// That a tap comes out of a wall.
    ComesOutOfTheWall,
    /// A hood over an island.
    Island,
    /// What draws air down, and is no hood.
    Downdraft,
    /// A bowl with a front of its own.
    Apron,
    /// A window in the roof.
    RoofWindow,
    /// Glass that does not break into splinters.
    SafetyGlass,
    /// A front panel.
    Panel,
    /// A light.
    Light,
    /// A lift.
    Lift,
    /// A door.
    Door,
    /// A toilet.
    Toilet,
    /// A shower.
    Shower,
    /// Tax on what is sold.
    Tax,
    /// A room that one goes through.
    Hall,
    /// A cover that is pressed on last.
    Plate,
    /// What stands on the floor by itself.
    StandsFree,
    /// What gives soap, through a hole of its own beside a tap.
    SoapDispenser,
    /// An air gap beside a tap.
    AirGap,
    /// A switch beside a tap that works by air.
    AirSwitch,
    /// A switch of a disposer, as the hole for it is called: through a counter it works by air.
    SwitchOfADisposer,
    /// A spray beside a tap.
    SideSpray,
    /// A small tap of its own for what is filtered or boils.
    FilterTap,
    /// That a top takes bowls from below.
    FromBelow,
    /// That a blind hangs between the jambs of its window.
    Inside,
    /// A profile along an edge of tile.
    Profile,
    /// That fronts open without anything that stands before them.
    WithoutPulls,
    /// That a thing is cut or set to its length where it is fitted.
    CutToLength,
    /// A curtain of a shower or a tub.
    ShowerCurtain,
    /// An oven, whatever its language.
    Oven,
    /// A dishwasher, whatever its language.
    Dishwasher,
    /// Bins for waste.
    Bin,
    /// A valve, or its body.
    ValveBody,
    /// The body of a valve, which is in the wall.
    BuiltInBody,
    /// A frame in the wall that a toilet hangs on, with its tank.
    WallFrame,
    /// A frame, of what is known to be beside a toilet.
    Frame,
}

/// How words are met.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Met {
    /// Anywhere, in a longer word too.
    Within,
    /// As a word of its own.
    Whole,
}

/// The words of a text, in lower case and without signs.
pub fn words_of(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    let words = lower.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    words.map(str::to_owned).collect()
}

impl Mention {
    /// Whether a text says so, in whatever case.
    pub fn is_in(self, text: &str) -> bool {
        let lower = text.to_lowercase();
        let (met, known) = self.words();
        match met {
            Met::Within => known.iter().any(|word| lower.contains(word)),
            Met::Whole => words_of(&lower).iter().any(|word| known.contains(&word.as_str())),
        }
    }

    /// Whether any of some texts says so.
    pub fn is_in_any<'t>(self, texts: impl IntoIterator<Item = &'t str>) -> bool {
        texts.into_iter().any(|text| self.is_in(text))
    }

    /// What goes through a hole of its own beside a tap: those alone are asked for here.
    fn beside_a_tap(self) -> (Met, &'static [&'static str]) {
        match self {
            Self::SoapDispenser => (Met::Whole, SOAP),
            Self::AirGap => (Met::Within, AIR_GAP),
            Self::AirSwitch => (Met::Within, AIR_SWITCH),
            Self::SwitchOfADisposer => (Met::Within, SWITCH_OF_A_DISPOSER),
            Self::SideSpray => (Met::Within, SIDE_SPRAY),
            Self::FilterTap => (Met::Within, FILTER_TAP),
            Self::TapHole => (Met::Whole, TAP_HOLE_WORDS),
            _ => (Met::Whole, FILLERS),
        }
    }

    /// What taps, toilets and what is worked in a bath are called: those alone are asked for here.
    fn of_a_bath(self) -> (Met, &'static [&'static str]) {
        match self {
            Self::Shower => (Met::Within, &["shower", "ducha", "dusche", "douche"]),
            Self::Toilet => (Met::Whole, &["toilet", "wc", "inodoro"]),
            Self::OutletInTheWall => (Met::Within, OUTLET_IN_THE_WALL),
            Self::OutletInTheFloor => (Met::Within, OUTLET_IN_THE_FLOOR),
            Self::Knob => (Met::Within, KNOBS),
            Self::Lever => (Met::Within, &["lever", "palanca", "monomando", "hebel"]),
            Self::ColdAlone => (Met::Within, COLD_ALONE),
            Self::PipeBend => (
                Met::Within,
                &[
                    "bend",
                    "bent",
                    "turned",
                    "elbow",
                    "angled",
                    "swan neck",
                    "90°",
                    "90 deg",
                    "codo",
                    "acodado",
                    "bogen",
                    "coude",
                ],
            ),
            _ => (Met::Within, HANGS_ON_THE_WALL),
        }
    }

    /// How a thing is made, or to which size, and what else the table has grown by.
    fn of_its_making(self) -> (Met, &'static [&'static str]) {
        match self {
            Self::WithoutPulls => (Met::Within, WITHOUT_PULLS),
            Self::CutToLength => (Met::Within, CUT_TO_LENGTH),
            Self::ShowerCurtain => (Met::Within, SHOWER_CURTAIN),
            Self::Oven => (Met::Whole, OVENS),
            Self::Dishwasher => (Met::Within, DISHWASHERS),
            Self::Bin => (Met::Whole, BINS),
            Self::ValveBody => (Met::Whole, VALVES),
            Self::BuiltInBody => (Met::Whole, BODIES),
            Self::WallFrame => (Met::Within, WALL_FRAMES),
            Self::Frame => (Met::Whole, FRAMES),
            Self::AroundAHood => (Met::Within, AROUND_A_HOOD),
            Self::ForLaundry => (Met::Within, FOR_LAUNDRY),
            _ => (Met::Within, &["profile", "perfil", "profil", "edge channel", "schiene"]),
        }
    }

    fn words(self) -> (Met, &'static [&'static str]) {
        match self {
            Self::Floor => (Met::Within, &["floor", "boden", "suelo", "vloer", "pavimento"]),
            Self::MakeUpAir => (Met::Within, MAKE_UP_AIR_WORDS),
            Self::ConversionKit => (Met::Within, &["conversion"]),
            Self::OnSite => (Met::Whole, ON_SITE),
            Self::Pedestal => (Met::Whole, &["pedestal", "pedestals", "riser", "pedestal-drawer"]),
            Self::SharesABranch => (Met::Whole, SHARES_A_BRANCH),
            Self::SharesACircuit => (Met::Within, SHARES_A_CIRCUIT),
            Self::OwnCircuit => (Met::Within, OWN_CIRCUIT),
            Self::Grout => (Met::Within, &["grout"]),
            Self::Sheen => (Met::Within, SHEENS),
            Self::Hood => (Met::Within, &["hood", "extractor", "campana", "dunstabzug", "dunsthaube", "abzugshaube"]),
            Self::Drawer => (Met::Within, &["drawer", "cajón", "cajones", "gaveta", "schublade"]),
            Self::Cooking => (Met::Within, &["cooktop", "range", "burner", "hob", "stove", "cooker"]),
            Self::Heated => (Met::Whole, HEATED),
            Self::HungPane => (Met::Whole, HUNG),
            Self::SlidingPane => (Met::Whole, SLIDING_PANE_WORDS),
            Self::HidesGrain => (Met::Within, &["paint", "lacquer", "pintad", "lacad", "lackiert"]),
            Self::Wood => (Met::Whole, WOODS),
            Self::Direction => (Met::Whole, DIRECTIONS),
            Self::Built => (Met::Whole, BUILT),
            Self::Furniture => (Met::Whole, &["cabinet", "cabinets", "cupboard", "oven", "unit", "shelf"]),
            Self::Tall => (Met::Whole, TALL_WORDS),
            Self::Low => (Met::Whole, low::LOW),
            Self::EmptyCabinet => (Met::Whole, &["cabinet", "cabinets", "cupboard", "doors", "door", "empty", "open"]),
            Self::Closure => (Met::Whole, CLOSURES),
            Self::Open => (Met::Whole, &["open"]),
            Self::Recessed => (Met::Within, &["recess", "built-in", "built in", "flush", "let in"]),
            Self::Tap => (Met::Whole, TAP_WORDS),
            Self::NoBowl => (Met::Whole, NO_BOWL_WORDS),
            Self::Bowl => (Met::Whole, BOWL_WORDS),
            Self::AtTheSide => (Met::Whole, &["side", "sidewall", "beside"]),
            Self::Behind => (Met::Whole, &["rear", "back", "behind"]),
            Self::Skirting => (Met::Within, SKIRTING_WORDS),
            Self::Wall => (Met::Whole, &["wall", "walls", "pared", "paredes", "muro", "wand", "wände", "mur", "murs"]),
            Self::ComesOutOfTheWall => (Met::Whole, OUT_OF_THE_WALL),
            Self::Island => (Met::Within, &["island"]),
            Self::Downdraft => (Met::Within, &["downdraft"]),
            Self::Apron => (Met::Within, &["apron"]),
            Self::RoofWindow => (Met::Within, ROOF_WINDOWS),
            Self::SafetyGlass => (Met::Within, SAFETY_GLASS_WORDS),
            Self::Panel => (Met::Whole, &["panel", "panels"]),
            Self::Lift => (Met::Within, LIFTS),
            Self::Door => (Met::Whole, &["door", "doorway", "puerta", "porte", "tür"]),
            Self::Tax => (Met::Whole, &["tax", "taxes", "vat", "iva", "gst", "hst", "mwst", "tva", "impuestos"]),
            Self::Hall => (Met::Whole, HALLS),
            Self::Plate => (Met::Whole, &["plate", "plates", "placa", "platte", "betätigungsplatte", "drückerplatte"]),
            Self::StandsFree => (Met::Within, STANDS_FREE),
            Self::FromBelow => (Met::Within, FROM_BELOW),
            Self::SoapDispenser | Self::AirGap | Self::AirSwitch | Self::SwitchOfADisposer => self.beside_a_tap(),
            Self::SideSpray | Self::FilterTap | Self::FillsAHole | Self::TapHole => self.beside_a_tap(),
            Self::Inside => (Met::Within, &["inside", "within", "recess", "reveal", "jamb", "laibung"]),
            Self::Shower | Self::Knob | Self::Lever | Self::Toilet => self.of_a_bath(),
            Self::OutletInTheWall | Self::OutletInTheFloor => self.of_a_bath(),
            Self::ColdAlone | Self::PipeBend | Self::HangsOnTheWall => self.of_a_bath(),
            Self::Light => (Met::Whole, LIGHT_WORDS),
            _ => self.of_its_making(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Mention;

    #[test]
    fn words_are_met_in_any_case_whole_or_within_others() {
        assert!(Mention::MakeUpAir.is_in("Make-up air damper") && Mention::Cooking.is_in("the cooktop"));
        assert!(Mention::Tap.is_in("Kitchen TAP, bridge") && !Mention::Tap.is_in("tapestry"));
        assert!(Mention::Floor.is_in_any(["Wall tile", "Floor tile"]) && !Mention::Floor.is_in_any(["Wall tile"]));
    }
}
