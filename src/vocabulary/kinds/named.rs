//! The kind that a name means: any case, one or several, and with words before it that say no more than of
//! what, where or in what style it is.

use super::{Hazard, Kind, Trade, Trait};
use crate::vocabulary::{JOINS, is_joined_otherwise};

/// Words before a kind's own that leave its kind, its hazards and what it needs as they are. What makes another
/// thing of it is not here: a glass shelf breaks, a cabinet door is no room's door, an integrated refrigerator
/// has a panel.
#[rustfmt::skip]
const DESCRIBED: &[&str] = &[
    // How it is built and set.
    "freestanding", "slide-in", "drop-in", "built-in", "undermount", "top-mount", "inset", "apron-front", "farmhouse",
    "Belfast", "butler's", "single bowl", "double bowl", "wall-hung", "wall-mounted", "wall-mount", "floor-standing",
    "floor-mounted", "back-to-wall", "close-coupled", "comfort height", "one-piece", "two-piece", "elongated",
    "front-load", "front-loading", "top-load", "top-loading", "heat pump", "condenser", "condensing", "vented",
    "ventless", "stacked", "pyrolytic", "combi", "compact", "American", "French door", "side-by-side",
    "bottom freezer", "counter-depth", "undercounter", "under-counter", "column", "larder", "tankless", "instant", "chimney", "island", "canopy", "telescopic", "swing", "single lever",
    "pedestal", "vessel", "widespread", "bridge", "pull-out", "pull-down", "three-hole",
    // Of what.
    "subway", "metro", "oak", "ash", "walnut", "maple", "pine", "bamboo", "cork", "timber",
    "wood", "wooden", "butcher block", "engineered", "engineered wood", "engineered timber", "engineered oak",
    "solid", "laminate", "vinyl", "LVP", "LVT", "linoleum", "stainless", "stainless steel", "steel", "brass",
    "chrome", "nickel", "bronze", "copper", "cast iron", "acrylic", "fireclay", "emulsion", "eggshell", "linen",
    "wool", "velvet", "leather", "roman", "roller", "venetian", "blackout", "honeycomb", "woven",
    // Where.
    "kitchen", "scullery", "bar", "wet bar", "prep", "pantry", "bathroom", "ensuite", "powder room", "cloakroom", "laundry", "utility",
    "mudroom", "hall", "bedroom", "guest", "living room", "dining", "dining room", "main", "primary", "corner",
    "base", "wall", "upper", "lower", "tall", "internal", "interior", "exterior", "front", "entrance", "splashback",
    "backsplash", "counter", "coffee", "side", "console", "coat", "tea towel", "cup", "bow", "double", "twin",
    "triple", "GFCI", "USB",
];

/// Minerals, said of what is cut on site or stands on pipes: what else is of stone is heavy, and dusty to cut.
const MINERAL: &[&str] = &[
    "stone",
    "marble",
    "granite",
    "quartz",
    "quartzite",
    "concrete",
    "porcelain",
    "ceramic",
    "cement",
    "mosaic",
    "zellige",
    "terracotta",
];

/// What things are fed with, said before their kind; the fuel itself is told to whoever reads it.
const FED_WITH: &[&str] = &["gas", "electric", "induction", "dual fuel", "ceramic", "propane", "LPG"];

pub(super) fn named(name: &str) -> Option<Kind> {
    let plain = name.trim().to_lowercase();
    exact(&plain).or_else(|| described(&plain))
}

/// The kind with that name, or with several of it.
fn exact(name: &str) -> Option<Kind> {
    let called = |name: &str| Kind::ALL.iter().copied().find(|kind| kind.words().any(|word| is(word, name)));
    called(name).or_else(|| ["s", "es"].iter().find_map(|end| called(name.strip_suffix(end)?)))
}

fn described(name: &str) -> Option<Kind> {
    let without = |words: &[&str], name: &str| -> Option<Kind> {
        words.iter().find_map(|word| {
            let rest = after(word, name)?;
            exact(rest).or_else(|| described(rest))
        })
    };
    let may_be_of_stone = |kind: &Kind| {
        kind.trade() == Trade::Plumbing
            || kind.hazards().iter().any(|hurt| matches!(hurt, Hazard::Stone | Hazard::Dust))
    };
    let mineral = || without(MINERAL, name).filter(may_be_of_stone);
    let fed = || without(FED_WITH, name).filter(|kind| kind.is(Trait::Heats));
    without(DESCRIBED, name).or_else(mineral).or_else(fed)
}

/// What follows a word at the beginning of a name.
fn after<'n>(word: &str, name: &'n str) -> Option<&'n str> {
    let joins = name.char_indices().filter(|(_, letter)| JOINS.contains(letter));
    joins.filter_map(|(at, _)| name.split_at_checked(at)).find_map(|(first, rest)| {
        is(word, first).then(|| rest.trim_start_matches(JOINS)).filter(|rest| !rest.is_empty())
    })
}

fn is(word: &str, name: &str) -> bool {
    is_joined_otherwise(&word.to_lowercase(), name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[rustfmt::skip]
    const SAID: &[(&str, Kind)] = &[
        ("WC", Kind::Toilet), ("wall-hung toilet", Kind::Toilet), ("comfort height toilet", Kind::Toilet),
        ("Belfast sink", Kind::Sink), ("double bowl sink", Kind::Sink), ("wall-hung basin", Kind::Basin),
        ("pulls", Kind::Pull), ("cup handle", Kind::Pull), ("can lights", Kind::CeilingLight),
        ("downlights", Kind::CeilingLight), ("sockets", Kind::Outlet), ("power point", Kind::Outlet),
        ("gas range", Kind::Range), ("dual fuel range cooker", Kind::Range), ("gas cooktop", Kind::Cooktop),
        ("electric dryer", Kind::Dryer), ("front-load washer", Kind::Washer), ("steam oven", Kind::WallOven),
        ("pyrolytic oven", Kind::WallOven), ("kitchen mixer", Kind::Tap), ("sink mixer", Kind::Tap),
        ("bar sink", Kind::Sink), ("undermount bar sink", Kind::Sink), ("prep sink", Kind::Sink), ("bar faucet", Kind::Tap),
        ("vessel basin", Kind::Basin), ("ice maker", Kind::Refrigerator), ("beverage center", Kind::Refrigerator),
        ("bath mixer", Kind::TubFiller), ("bathroom faucet", Kind::Tap), ("laundry faucets", Kind::Tap),
        ("wall tiles", Kind::Tile), ("backsplash tile", Kind::Tile), ("porcelain tile", Kind::Tile),
        ("LVP flooring", Kind::Floor), ("engineered timber floor", Kind::Floor), ("skirting board", Kind::Trim),
        ("emulsion paint", Kind::Paint), ("butcher block counter", Kind::Counter), ("coat hooks", Kind::Hook),
        ("grab bars", Kind::GrabBar), ("closet rod", Kind::Bar), ("bar stools", Kind::Furniture),
        ("dining table", Kind::Furniture), ("sofa", Kind::Furniture), ("wardrobe", Kind::StorageFurniture),
        ("internal door", Kind::Door), ("front door", Kind::Door), ("roman blind", Kind::WindowCovering),
        ("vanity light", Kind::WallLight), ("joinery", Kind::Cabinet), ("under-cabinet light", Kind::StripLight),
        ("LED strip", Kind::StripLight), ("table lamp", Kind::StandingLamp), ("shower tray", Kind::ShowerTray),
        ("floor drain", Kind::Drain), ("shower seat", Kind::ShowerSeat), ("cistern", Kind::Cistern),
        ("towel warmer", Kind::TowelWarmer), ("heated towel rail", Kind::TowelWarmer),
        ("underfloor heating", Kind::FloorHeating), ("waste bin", Kind::WasteBin),
        ("undercounter refrigerator", Kind::Refrigerator), ("undercounter wine fridge", Kind::Refrigerator),
        ("column refrigerator", Kind::Refrigerator), ("gas water heater", Kind::WaterHeater),
        ("tankless water heater", Kind::WaterHeater), ("electric boiler", Kind::WaterHeater),
        ("built-in grill", Kind::Grill), ("propane grill", Kind::Grill), ("lockers", Kind::Cabinet),
        ("mudroom lockers", Kind::Cabinet), ("barn door", Kind::Door), ("oak sliding door", Kind::Door),
        ("sliding shower door", Kind::ShowerGlass),
    ];

    #[test]
    fn one_says_it_as_one_says_it_at_work() {
        for (said, kind) in SAID {
            assert_eq!(Kind::named(said), Some(*kind), "{said}");
        }
    }

    #[test]
    fn a_word_that_makes_another_thing_of_it_is_not_passed_over() {
        for said in [
            "cabinet door",
            "oven door",
            "glass shelf",
            "gas tap",
            "fridge panel",
            "toilet seat cover",
            "stones",
            "gas",
            "kitchen",
            "bath door",
            "electric floor",
        ] {
            assert_eq!(Kind::named(said), None, "{said}");
        }
        assert_eq!(Kind::named("integrated fridge"), Some(Kind::PanelRefrigerator));
        assert_eq!(Kind::named("heated mirror"), None);
    }
}
