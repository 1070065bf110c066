//! Hot and cold at a bowl whose tap mixes them.

use crate::assess::rules::service::comes_out;
use crate::book::{ProductOption, Room, Selection, Service};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::taps::{bowl_of, comes_with};
use crate::site::vanity::vanity_of;
use crate::vocabulary::supply::is_none;
use crate::vocabulary::{Kind, Mention};

/// Only hot or only cold at a bowl whose tap mixes, or no water told beside its drain.
pub(super) fn judge(fitted: &Placement<'_>) -> Option<Remark> {
    let in_a_vanity = vanity_of(fitted.room, fitted.selection).is_some();
    if in_a_vanity { None } else { at(fitted) }
}

/// The same of a basin that stands on a vanity, by what is told behind that.
pub(super) fn behind_a_vanity((room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let vanity = vanity_of(room, selection)?;
    at(&Placement::at((room, vanity.opening), (selection, option)))
}

fn at(fitted: &Placement<'_>) -> Option<Remark> {
    let (room, bowl, opening) = (fitted.room, fitted.selection, fitted.opening);
    if !bowl.is_any(&[Kind::Sink, Kind::Basin]) || opening.service.water.is_faulty() || !has_a_mixer(room, bowl) {
        return None;
    }
    let needs = fitted.option.fit.get().and_then(|fit| fit.needs.water.get());
    let Some(there) = opening.service.water.spanned() else {
        let is_elsewhere = comes_out(opening, Service::Water);
        // Who tells of water at other openings of the room left it out here.
        let is_told = room.openings.iter().any(|other| !other.service.water.is_absent());
        let drain = opening.service.drain.spanned().filter(|_| needs.is_none() && !is_elsewhere && is_told)?;
        let message = phrase!(
            "the drain for `{}` is told at the opening `{}`, and nobody says what water there is",
            bowl.name.value,
            opening.name.value
        );
        let finding = fitted.finding(Severity::Query, drain.span, message);
        return Some(finding.remedy("find out what is there and add it at the opening: `service: {water: …}`"));
    };
    // What the sheet of the bowl asks is held to it there. Words that are not understood may name the other: all the
    // more they are asked about.
    let is_asked = needs.is_some_and(|needs| needs.is.hot || needs.is.cold);
    let has = there.is;
    if is_asked || has.heated_there || has.hot == has.cold || is_none(&there.words) {
        return None;
    }
    let (has, lacks) = if has.cold { ("cold", "hot") } else { ("hot", "cold") };
    let message = phrase!(
        "the tap of `{}` mixes, and by the words at the opening (`{}`) there is {has} water and no {lacks}",
        bowl.name.value,
        there.words,
        has,
        lacks
    );
    let finding = fitted.finding(Severity::Query, there.span, message).source("common practice");
    Some(finding.remedy("have a plumber bring both before the wall is closed, or choose a tap for cold water alone"))
}

/// Whether a tap of the bowl's, or one that comes with it, mixes hot and cold.
fn has_a_mixer(room: &Room, bowl: &Selection) -> bool {
    let mixes = |tap: &Selection, option: &ProductOption| {
        let words = [
            tap.name.value.as_str(),
            option.called.as_str(),
            option.name.text(),
            option.model.text(),
            option.description.text(),
        ];
        !Mention::ColdAlone.is_in_any(words)
    };
    let is_its = |tap: &&Selection| tap.is(Kind::Tap) && bowl_of(room, tap).is_some_and(|own| own.span == bowl.span);
    let mut taps = room.selections.iter().filter(is_its).peekable();
    if taps.peek().is_some() {
        taps.any(|tap| tap.standing().iter().any(|option| mixes(tap, option)))
    } else {
        bowl.standing().iter().any(|option| comes_with(option) && mixes(bowl, option))
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn sink(service: &str, tap: &str, needs: &str) -> Trial {
        Trial::of("service/water")
            .opening("hole", &format!("{{takes: sink, service: {{{service}}}}}"))
            .selection("selection: Sink\nkind: sink\nplace: hole", needs)
            .selection(&format!("selection: {tap}\nkind: tap"), "model: W-4")
    }

    #[test]
    fn a_tap_that_mixes_has_hot_and_cold() {
        sink("water: 'cold only'", "Kitchen faucet", "model: S")
            .finds(
                "the tap of `Sink` mixes, and by the words at the opening (`cold only`) there is cold water and no hot",
            )
            .weighs("query")
            .cautions();
        for one in [
            "15 mm cold, service valve",
            "15 mm cold, flexi tail",
            "mains cold, 15 mm",
            "3/8\" cold stop, 500 mm AFFL",
            "3/8\" cold stop",
            "agua fría 1/2\"",
            "kalt 3/8\"",
            "hot, 3/8\"",
        ] {
            sink(&format!("water: '{one}'"), "Mixer", "model: S").finds_one();
        }
        for both in [
            "3/8\" hot and cold",
            "fría y caliente 1/2\"",
            "Eckventile warm und kalt",
            "3/8\" stops",
            "cold, instant heater under the sink",
            "froide et chaude",
            "koud en warm",
            "koldt og varmt",
            "fredda e calda",
            "cold, 5 l Boiler unter der Spüle",
        ] {
            sink(&format!("water: '{both}'"), "Mixer", "model: S").stays_silent();
        }
        sink("water: '3/8\" cold'", "Cold tap", "model: S").stays_silent();
        sink("water: '3/8\" cold'", "Kaltwasser-Standventil", "model: S").stays_silent();
        // The sheet's own word is told as that, once.
        sink("water: '3/8\" cold'", "Mixer", "fit: {needs: {water: '3/8\" hot and cold'}}").finds_one().weighs("stop");
    }

    #[test]
    fn so_has_one_over_a_vanity() {
        let basin = |water: &str| {
            Trial::of("service/water")
                .opening("vanity", &format!("{{takes: cabinet, service: {{water: '{water}'}}}}"))
                .selection("selection: Vanity\nkind: cabinet\nplace: vanity", "model: V")
                .selection("selection: Basin\nkind: basin", "mount: undermount")
                .selection("selection: Faucet\nkind: tap", "model: W")
        };
        basin("3/8\" cold stop").finds_one().weighs("query");
        basin("3/8\" hot and cold stops").stays_silent();
    }

    #[test]
    fn water_beside_a_drain_is_told() {
        sink("drain: '1 1/2\", 16\" AFF'", "Mixer", "model: S")
            .opening("dishwasher", "{takes: dishwasher, service: {water: '3/8\" hot'}}")
            .finds("the drain for `Sink` is told at the opening `hole`, and nobody says what water there is")
            .weighs("query");
        sink("drain: '1 1/2\", 16\" AFF'", "Mixer", "model: S").stays_silent();
        Trial::of("service/water")
            .opening("hole", "{takes: sink, service: {drain: '1 1/2\"'}, service points: {water: {height: 20\"}}}")
            .selection("selection: Sink\nkind: sink\nplace: hole", "model: S")
            .selection("selection: Mixer\nkind: tap", "model: W")
            .stays_silent();
    }
}
