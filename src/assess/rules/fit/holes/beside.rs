//! Holes for what stands on the counter beside the tap: soap, an air gap, a spray, a small tap of its own.

use crate::assess::about;
use crate::book::{Hole, Opening, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::taps;
use crate::source::{Span, Spanned};
use crate::vocabulary::supply::{DrainWay, Worded, is_none};
use crate::vocabulary::{Kind, Mention};

/// What goes through a counter or a rim beside the tap.
const ON_THE_DECK: [Mention; 5] =
    [Mention::SoapDispenser, Mention::AirGap, Mention::AirSwitch, Mention::SideSpray, Mention::FilterTap];

/// Whether a hole is for one of them, and not for the tap.
pub fn has_another_use(purpose: &str) -> bool {
    ON_THE_DECK.into_iter().any(|is| is_for(purpose, is))
}

/// Whether a hole is for that thing. What is drilled through a counter for the switch of a disposer is for one that works by
/// air; a switch of that name that is ordered may be one in the wall.
fn is_for(purpose: &str, is: Mention) -> bool {
    is.is_in(purpose) || is == Mention::AirSwitch && Mention::SwitchOfADisposer.is_in(purpose)
}

/// A thing that wants a hole of its own.
struct OnTheDeck<'a> {
    is: Mention,
    /// What it is called, and where.
    name: &'a str,
    at: Span,
}

/// Every such thing of a room that has no hole, on a list or in the bowl.
pub fn check(room: &Room) -> Vec<Remark> {
    let things = things(room);
    if things.is_empty() {
        return vec![];
    }
    let with_holes = |selection: &&Selection| selection.is_any(&[Kind::Counter, Kind::Sink, Kind::Basin]);
    let options = || room.selections.iter().filter(with_holes).flat_map(Selection::standing);
    let listed: Vec<&Hole> = options().flat_map(|option| &option.drilled).collect();
    let missing = things.into_iter().filter(|thing| !listed.iter().any(|hole| is_for(&hole.purpose, thing.is)));
    let missing: Vec<OnTheDeck<'_>> = missing.collect();
    let spare = spare(room, !listed.is_empty());
    let told = missing.into_iter().skip(spare.unwrap_or(usize::MAX));
    told.map(|thing| finding(room, &thing, listed.is_empty())).collect()
}

/// A tap that comes out of the wall, and a list of holes that has one for it in the deck: so far before what stands behind.
pub fn on_the_wall(room: &Room, tap: &Selection, option: &ProductOption, its: &[&Hole]) -> Option<Remark> {
    let hole = its.iter().find(|hole| !hole.behind.is_absent() || !hole.to_bowl.is_absent())?;
    let name = &tap.name.value;
    let message = phrase!("`{name}` comes out of the wall, and the list has {} for it", name, its.len());
    let finding = || about(room, tap, option, Severity::Query, hole.purpose.span, message);
    taps::is_on_the_wall(tap, option).then(|| {
        finding().remedy("take the hole off the list before the top is drilled, or choose a tap that stands on it")
    })
}

fn finding(room: &Room, thing: &OnTheDeck<'_>, by_the_bowl: bool) -> Remark {
    let name = Phrase::name(thing.name);
    let message = if by_the_bowl {
        phrase!("{name} wants a hole of its own, and the bowl has none left for it", name)
    } else {
        phrase!("{name} wants a hole of its own, and the list has none for it", name)
    };
    let finding = Remark::query(thing.at, message).room(&room.folder);
    finding.source("common practice").remedy(
        "add it to the list of holes of the counter, by what it is for and its diameter, before the template; or say where else it stands",
    )
}

/// How many holes of the only bowl of a room its tap leaves open; none where that can't be told, or no list and no bowl
/// says how many there are.
fn spare(room: &Room, is_listed: bool) -> Option<usize> {
    let mut bowls = room.selections.iter().filter(|selection| selection.is_any(&[Kind::Sink, Kind::Basin]));
    let bowl = bowls.next().filter(|_| bowls.next().is_none());
    let has = bowl.and_then(|bowl| bowl.standing().iter().filter_map(taps::holes).map(|(has, _)| has).max());
    let taps = room.selections.iter().filter(|selection| selection.is(Kind::Tap));
    let taps = taps.filter(|tap| !tap.standing().iter().any(|option| taps::stands_free(tap, option)));
    let takes = taps.map(|tap| tap.standing().iter().filter_map(taps::holes).map(|(takes, _)| takes).min());
    match has {
        // Holes of the bowl are those of the tap; without a list they are all there is.
        Some(has) if has > 0 => Some(has.saturating_sub(takes.sum::<Option<usize>>().unwrap_or(0))),
        _ if is_listed => Some(0),
        _ => None,
    }
}

/// All that a room orders, or plans, to go through its counter or bowl beside the tap.
fn things(room: &Room) -> Vec<OnTheDeck<'_>> {
    const WITH: [Kind; 4] = [Kind::Tap, Kind::Sink, Kind::Disposer, Kind::Basin];
    let known = |name: &'_ Spanned<String>| ON_THE_DECK.into_iter().find(|is| is.is_in(&name.value));
    let mut all: Vec<OnTheDeck<'_>> = Vec::new();
    let with = room.selections.iter().filter(|selection| selection.is_any(&WITH)).filter_map(Selection::settled);
    let words = with.flat_map(|option: &ProductOption| {
        option.accessories.iter().map(|with| &with.name).chain(option.requires.iter())
    });
    let items = room.selections.iter().filter(|selection| selection.is(Kind::Item)).map(|item| &item.name);
    for name in words.chain(items) {
        if let Some(is) = known(name).filter(|is| !all.iter().any(|one| one.is == *is)) {
            all.push(OnTheDeck { is, name: &name.value, at: name.span });
        }
    }
    // An ice maker's gap is over the floor drain that it runs into.
    let drains_at_the_sink = |opening: &&Opening| {
        let takes = opening.takes.get();
        takes.is_none_or(|kind| matches!(kind, Kind::Sink | Kind::Disposer | Kind::Dishwasher | Kind::PanelDishwasher))
    };
    let drains = room.openings.iter().filter(drains_at_the_sink);
    let drains = drains.filter_map(|opening| opening.service.drain.spanned());
    // `high loop, no air gap` plans none.
    let mut gaps = drains.filter(|drain| {
        let Worded { words, is } = &drain.value;
        Mention::AirGap.is_in(words) && is.ways.names(DrainWay::AirGap) && !is_none(words)
    });
    let gap = gaps.next().filter(|_| !all.iter().any(|one| one.is == Mention::AirGap));
    all.extend(gap.map(|drain| OnTheDeck { is: Mention::AirGap, name: "air gap", at: drain.span }));
    all
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn kitchen(counter: &str, sink: &str, tap: &str) -> Trial {
        Trial::of("fit/holes")
            .selection("selection: Counter\nkind: counter", counter)
            .selection("selection: Sink\nkind: sink", sink)
            .selection("selection: Kitchen tap\nkind: tap", &format!("holes: 1\n{tap}"))
    }

    const LIST: &str = "drilled: [{for: kitchen tap, diameter: 1 3/8\"}]";
    const UNDER: &str = "mount: undermount";

    /// Source: trade reports F-55, for what stands beside the tap.
    #[test]
    fn what_stands_beside_the_tap_has_a_hole_of_its_own() {
        let soap = "accessories: [{name: soap dispenser}]";
        kitchen(LIST, UNDER, soap)
            .finds("`soap dispenser` wants a hole of its own, and the list has none for it")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-2.yaml:4:22"]);
        let both = "drilled: [{for: kitchen tap, diameter: 1 3/8\"}, {for: soap, diameter: 1 1/4\"}]";
        kitchen(both, UNDER, soap).stays_silent();
        kitchen(LIST, UNDER, "requires: [side spray]\naccessories: [{name: side spray}]").finds_one();
        kitchen(LIST, UNDER, "").selection("selection: Air switch\nkind: accessory", "model: A-1").finds_one();
        for hole in ["disposer switch", "disposal button", "pneumatic switch", "air button"] {
            let list =
                format!("drilled: [{{for: kitchen tap, diameter: 1 3/8\"}}, {{for: {hole}, diameter: 1 1/4\"}}]");
            kitchen(&list, UNDER, "").selection("selection: Air switch\nkind: accessory", "model: A-1").stays_silent();
        }
        // One that is in the wall wants no hole.
        kitchen(LIST, UNDER, "").selection("selection: Disposer switch\nkind: accessory", "model: A-1").stays_silent();
        kitchen(LIST, UNDER, "accessories: [{name: plate}]").stays_silent();
        kitchen(LIST, UNDER, "").stays_silent();
        for tap in ["monobloc", "monobloc, 35 mm", "mixer"] {
            kitchen(&format!("drilled: [{{for: '{tap}', diameter: 1 3/8\"}}]"), UNDER, "").stays_silent();
        }
        kitchen("drilled: [{for: cooktop, diameter: 1 3/8\"}]", UNDER, "").finds_one();
        // What the plumber is to fit: an air gap.
        let gap = |counter: &str, drain: &str| {
            kitchen(counter, UNDER, "").opening("dw", &format!("{{takes: dishwasher, service: {{drain: '{drain}'}}}}"))
        };
        gap(LIST, "to the tailpiece, air gap").finds_one().says("`air gap`");
        gap(LIST, "to the tailpiece, high loop").stays_silent();
        kitchen(LIST, UNDER, "")
            .opening("ice", "{takes: refrigerator, service: {drain: 'floor drain with 1\" air gap'}}")
            .stays_silent();
        for planned in [
            "high loop, no air gap",
            "high loop to the sink tailpiece; no air gap (not required here)",
            "high loop to the disposer, without air gap",
            "high loop, air gap not required",
            "high loop instead of an air gap",
        ] {
            gap(LIST, planned).stays_silent();
        }
        gap(LIST, "no high loop, air gap").finds_one();
        gap("drilled: [{for: kitchen tap}, {for: air gap}]", "to the tailpiece, air gap").stays_silent();
    }

    #[test]
    fn a_bowl_has_holes_enough_for_tap_and_what_stands_beside_it() {
        let soap = "accessories: [{name: soap dispenser}]";
        kitchen("", "mount: drop-in\nholes: 1", soap)
            .finds("`soap dispenser` wants a hole of its own, and the bowl has none left for it");
        kitchen("", "mount: drop-in\nholes: 2", soap).stays_silent();
    }
}
