//! A bowl whose water is told, and whose drain is not.

use crate::assess::rules::service::comes_out;
use crate::book::Service;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::vanity::vanity_of;
use crate::vocabulary::Kind;
use crate::vocabulary::supply::is_none;

/// No drain told beside the water of a bowl, in a room whose other openings tell of one.
pub(super) fn judge(fitted: &Placement<'_>) -> Option<Remark> {
    let (room, bowl, opening) = (fitted.room, fitted.selection, fitted.opening);
    let is_a_bowl = bowl.is_any(&[Kind::Sink, Kind::Basin]) && vanity_of(room, bowl).is_none();
    let is_asked = fitted.option.fit.get().is_some_and(|fit| !fit.needs.drain.is_absent());
    let is_said = !opening.service.drain.is_absent() || comes_out(opening, Service::Drain);
    let is_told = room.openings.iter().any(|other| !other.service.drain.is_absent());
    if !is_a_bowl || is_asked || is_said || !is_told {
        return None;
    }
    let water = opening.service.water.spanned().filter(|water| !is_none(&water.value.words))?;
    let message = phrase!(
        "the water for `{}` is told at the opening `{}`, and nobody says what drain there is",
        bowl.name.value,
        opening.name.value
    );
    let finding = fitted.finding(Severity::Query, water.span, message);
    Some(finding.remedy("find out what is there and add it at the opening: `service: {drain: …}`"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_drain_beside_told_water_is_told() {
        let sink = |service: &str, option: &str, other: &str| {
            Trial::of("service/drain")
                .opening("hole", &format!("{{takes: sink, {service}}}"))
                .opening("dishwasher", &format!("{{takes: dishwasher, service: {{{other}}}}}"))
                .selection("selection: Sink\nkind: sink\nplace: hole", option)
        };
        let (water, other) = ("service: {water: '15 mm hot and cold'}", "drain: '40 mm waste, high loop'");
        sink(water, "model: S", other)
            .finds("the water for `Sink` is told at the opening `hole`, and nobody says what drain there is")
            .weighs("query")
            .cautions();
        // Who tells of no drain in the room leaves it to the plumber.
        sink(water, "model: S", "water: '15 mm cold'").stays_silent();
        sink("service: {water: '15 mm hot and cold', drain: '40 mm waste'}", "model: S", other).stays_silent();
        sink(&format!("{water}, service points: {{drain: {{height: 400 mm}}}}"), "model: S", other).stays_silent();
        // What its sheet asks is asked for by that.
        sink(water, "fit: {needs: {drain: '40 mm'}}", other).finds_one();
    }
}
