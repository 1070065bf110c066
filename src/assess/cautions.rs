//! What of a thing can hurt: it follows from what the thing is, what feeds it and what it is made of.
//!
//! Pages, sheets and findings all ask here. Where nobody says what would rule a hazard out, it is due.

use crate::book::{DetailName, Fuel, Needs, Opening, ProductOption, Room, Selection};
use crate::finding::{Finding, Hazard};
use crate::units::{Length, Weight};
use crate::vocabulary::Kind;
use crate::vocabulary::supply::{Amount, Power, is_none};

use super::things::Things;

/// From this weight on a thing can injure who lifts it (16 kg: the least of the lifting guide's figures at
/// waist height, HSE L23, from memory).
const HEAVY: Weight = Weight::from_femtograms(16_000_000_000_000_000_000);
/// What is lower stands by itself (27 in: where ASTM F2057 begins for furniture that tips, from memory).
const TIPS_FROM: Length = Length::from_inches(27);
/// An insert or a tray is no higher (common practice).
const INSERT: Length = Length::from_inches(6);
/// Power that heats: less only lights burners and turns motors (common practice).
const HEATS_FROM_WATTS: u32 = 2_500;

/// Whatever may be due of a kind of which nothing is said.
pub fn of_kind(kind: Kind) -> Vec<Hazard> {
    kind.hazards().to_vec()
}

/// What of a selection can hurt: of any of its options that still count, each said once.
pub fn of_selection(room: &Room, selection: &Selection) -> Vec<Hazard> {
    let Some(&kind) = selection.kind.get() else { return vec![] };
    let opening = selection.place.get().and_then(|place| room.opening(place));
    let mut all: Vec<Hazard> =
        selection.standing().iter().flat_map(|option| of_option(kind, option, opening)).collect();
    if selection.standing().is_empty() {
        all = of_kind(kind);
    }
    all.sort_unstable();
    all.dedup();
    all
}

fn of_option(kind: Kind, option: &ProductOption, opening: Option<&Opening>) -> Vec<Hazard> {
    let needs = option.fit.get().map(|fit| &fit.needs);
    let needed = [
        (Hazard::Gas, needs.is_some_and(|needs| needs.gas.get().is_some()) || option.fuel.get() == Some(&Fuel::Gas)),
        (Hazard::Power, needs.is_some_and(|needs| needs.power.get().is_some())),
        (Hazard::Water, needs.is_some_and(takes_water)),
        (Hazard::Air, needs.is_some_and(|needs| needs.duct.get().is_some())),
        (Hazard::Weight, weight(option).is_some_and(|weight| weight >= HEAVY)),
        (Hazard::Glass, option.detail(DetailName::Glass).is_some()),
    ];
    let needed = needed.into_iter().filter(|(_, is)| *is).map(|(hazard, _)| hazard);
    let by_kind = kind.hazards().iter().copied().filter(|hazard| !is_ruled_out(*hazard, kind, option, opening));
    needed.chain(by_kind).collect()
}

/// Whether a sheet asks for water or a drain; `none` asks for neither.
fn takes_water(needs: &Needs) -> bool {
    let water = needs.water.get().is_some_and(|water| !is_none(&water.words));
    water || needs.drain.get().is_some_and(|drain| !is_none(&drain.words))
}

/// Whether what is said of a thing rules out what its kind may hurt by.
fn is_ruled_out(hazard: Hazard, kind: Kind, option: &ProductOption, opening: Option<&Opening>) -> bool {
    let height = option.size.height.get().and_then(|height| height.most.or(height.least));
    let light = weight(option).map(|weight| weight < HEAVY);
    match hazard {
        Hazard::Gas => takes_no_gas(option, opening),
        Hazard::Weight => {
            // One cannot see of joinery whether it is heavy.
            let insert = matches!(kind, Kind::Cabinet | Kind::Shelf) && height.is_some_and(|height| height < INSERT);
            light.unwrap_or(insert)
        }
        // What is warmed by power has no water in it where that is said: power alone may turn a pump, or be one of two.
        Hazard::Water if matches!(kind, Kind::FloorHeating | Kind::TowelWarmer) => {
            let water = option.fit.get().and_then(|fit| fit.needs.water.get());
            option.fuel.get() == Some(&Fuel::Electric) || water.is_some_and(|water| is_none(&water.words))
        }
        Hazard::Tipping => height.is_some_and(|height| height < TIPS_FROM),
        Hazard::Stone => {
            option.top.get().and_then(|top| top.material.get()).is_some_and(|material| !material.is_stony())
        }
        Hazard::Power
        | Hazard::Heat
        | Hazard::Air
        | Hazard::Glass
        | Hazard::Dust
        | Hazard::Water
        | Hazard::Fall
        | Hazard::Cords
        | Hazard::Overhang => false,
    }
}

/// Whether a thing is known to take no gas: so said, or its sheet asks for power that heats and for no gas,
/// where no gas is laid to its place.
fn takes_no_gas(option: &ProductOption, opening: Option<&Opening>) -> bool {
    if let Some(fuel) = option.fuel.get() {
        return *fuel != Fuel::Gas;
    }
    let laid = opening.is_some_and(|opening| opening.service.gas.get().is_some());
    let power = option.fit.get().and_then(|fit| fit.needs.power.get()).map(|power| &power.is);
    !laid && power.is_some_and(|power| watts(power).is_some_and(|watts| watts >= HEATS_FROM_WATTS))
}

/// What is certain to be drawn.
fn watts(power: &Power) -> Option<u32> {
    power.watts.map(Amount::there).or_else(|| power.volts.iter().max()?.checked_mul(power.amps?.there()))
}

fn weight(option: &ProductOption) -> Option<Weight> {
    option.fit.get()?.weight.get().copied()
}

/// The caution of a finding: its rule's, where that is due of the thing that it is about. What is about no
/// thing, or about one of which nothing is known, keeps it.
pub fn of_finding(hazard: Hazard, finding: &Finding, things: &Things<'_>) -> Option<Hazard> {
    let due = match (hazard, things.of_finding(finding)) {
        (_, None) => true,
        (Hazard::Stone, Some((room, selection))) => stone_is_near(room, selection),
        (
            Hazard::Gas | Hazard::Heat | Hazard::Weight | Hazard::Tipping | Hazard::Dust | Hazard::Fall | Hazard::Cords,
            Some((room, selection)),
        ) => of_selection(room, selection).contains(&hazard),
        // Wires, pipes, ducts and panes are of the house as well.
        (Hazard::Power | Hazard::Air | Hazard::Glass | Hazard::Water | Hazard::Overhang, _) => true,
    };
    due.then_some(hazard)
}

/// Whether a counter is of stone, or what is let into one may be: a tap's holes are drilled in some counter.
fn stone_is_near(room: &Room, selection: &Selection) -> bool {
    let is_counter = |selection: &&Selection| selection.is(Kind::Counter);
    if is_counter(&selection) {
        return of_selection(room, selection).contains(&Hazard::Stone);
    }
    let mut counters = room.selections.iter().filter(is_counter).peekable();
    counters.peek().is_none() || counters.any(|counter| of_selection(room, counter).contains(&Hazard::Stone))
}

#[cfg(test)]
mod tests;
