//! Which kinds a rule judges: what `explain KIND` lists, from each rule's own declaration.

use crate::vocabulary::{Hazard, Kind, Trade, Trait};

/// Whether a rule judges things of a kind.
pub type Judges = fn(Kind) -> bool;

/// None: it judges the files, the record, or a room whatever is chosen in it.
pub fn nothing(_: Kind) -> bool {
    false
}

/// Whatever is chosen.
pub fn each(_: Kind) -> bool {
    true
}

/// What somebody makes and delivers.
pub fn goods(kind: Kind) -> bool {
    kind != Kind::Labour
}

/// What goes into an opening, and what is let into a counter or a wall.
pub fn placed(kind: Kind) -> bool {
    kind.takes_opening() || matches!(kind, Kind::Basin | Kind::Cabinet | Kind::ShowerSet | Kind::Disposer | Kind::Fan)
}

/// What is carried in whole.
pub fn carried(kind: Kind) -> bool {
    let large = matches!(kind.trade(), Trade::Appliance | Trade::Plumbing);
    large || stands(kind) || matches!(kind, Kind::Counter | Kind::Door) || kind.is(Trait::Furnishes)
}

/// What may be as tall as the room.
pub fn stands(kind: Kind) -> bool {
    let tall = matches!(kind, Kind::Cabinet | Kind::Mirror | Kind::LitMirror | Kind::MirrorCabinet | Kind::ShowerGlass);
    tall || kind == Kind::StorageFurniture || kind.trade() == Trade::Appliance
}

/// What has a door or a drawer.
pub fn opens(kind: Kind) -> bool {
    let appliance = kind.trade() == Trade::Appliance && kind.takes_opening();
    (appliance && !matches!(kind, Kind::Cooktop | Kind::Grill | Kind::Hood)) || kind == Kind::MirrorCabinet
}

/// What is cooked on.
pub fn cooking(kind: Kind) -> bool {
    kind.is(Trait::Cooks)
}

/// What is cooked on, and what draws its air off.
pub fn cooking_and_its_air(kind: Kind) -> bool {
    cooking(kind) || kind == Kind::Hood
}

/// What needs power.
pub fn powered(kind: Kind) -> bool {
    kind.hazards().contains(&Hazard::Power)
}

/// What may burn gas.
pub fn fuelled(kind: Kind) -> bool {
    kind.hazards().contains(&Hazard::Gas)
}

/// What stands on pipes, and what makes ice.
pub fn piped(kind: Kind) -> bool {
    kind.hazards().contains(&Hazard::Water) || kind.is(Trait::Cools)
}

/// What stands on wires, pipes or ducts.
pub fn served(kind: Kind) -> bool {
    powered(kind) || fuelled(kind) || piped(kind)
}

/// Lights.
pub fn lights(kind: Kind) -> bool {
    matches!(
        kind,
        Kind::Pendant | Kind::WallLight | Kind::CeilingLight | Kind::StripLight | Kind::StandingLamp | Kind::LitMirror
    )
}

/// What a joiner's panel may stand before.
pub fn panelled(kind: Kind) -> bool {
    matches!(kind, Kind::Refrigerator | Kind::PanelRefrigerator | Kind::Dishwasher | Kind::PanelDishwasher)
}

/// What lies on walls, floors and cabinets.
pub fn surfaces(kind: Kind) -> bool {
    kind == Kind::Tile
        || matches!(
            kind,
            Kind::Counter
                | Kind::Splashback
                | Kind::Floor
                | Kind::Paint
                | Kind::Wallpaper
                | Kind::Boarding
                | Kind::Trim
        )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::{RULES, rule};

    #[test]
    fn every_rule_of_a_thing_judges_some_kind_and_every_kind_is_judged_by_some() {
        for family in ["fit/", "light/", "finish/", "store/", "money/"] {
            for rule in RULES.iter().filter(|rule| rule.code.text().starts_with(family)) {
                assert!(Kind::ALL.iter().any(|kind| (rule.judges)(*kind)), "{}", rule.code);
            }
        }
        for kind in Kind::ALL {
            assert!(RULES.iter().any(|rule| (rule.judges)(*kind)), "{kind}");
        }
    }

    #[test]
    fn a_kind_is_judged_by_what_can_be_met_of_it() {
        let judges = |code: &str, kind| (rule(code).unwrap().judges)(kind);
        assert!(judges("service/gas", Kind::Range) && !judges("service/gas", Kind::Refrigerator));
        assert!(judges("fit/holes", Kind::Tap) && !judges("fit/holes", Kind::Tile));
        assert!(judges("light/drop", Kind::Pendant) && !judges("light/drop", Kind::Sink));
        assert!(!judges("fit/width", Kind::Paint) && !judges("order/late", Kind::Labour));
    }
}
