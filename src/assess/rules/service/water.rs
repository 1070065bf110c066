//! Water at an opening against what the thing needs.

use super::asked;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::Service;
use crate::finding::{Severity, phrase};
use crate::vocabulary::Hazard;

declare! {
    /// The water line is smaller, of the wrong kind, or without its shut-off
    ///
    /// ## What it checks
    /// The line at the opening against the maker's sheet: its size (at least the sheet's), hot and cold
    /// where the sheet asks for them, and a shut-off where it asks for one. Where nobody tells of it, it asks;
    /// where it is told not to be there (`none`), it stops.
    ///
    /// ## Why it matters
    /// A dishwasher on cold water washes badly and a refrigerator without a valve can't be taken out.
    ///
    /// ## Remedy
    /// Have a plumber run or change the line before the wall is closed.
    ///
    /// ## Example
    /// ```yaml
    /// service: {water: "3/8\" cold"}     # the sheet asks hot
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement.
    "service/water", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: piped,
    sources: ["the maker's sheet", "the field measurement"],
    caution: Some(Hazard::Water),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for asked in asked(context, |needs| &needs.water, |service| &service.water) {
        if let Some(absent) = asked.absent(Service::Water) {
            findings.push(absent);
            continue;
        }
        let Some(there) = asked.there else { continue };
        let name = &asked.fitted.selection.name.value;
        let (needs, has) = (asked.needs.is, there.is);
        let told = has.hot || has.cold;
        let fault = match (needs.size, has.size) {
            (Some(needs), Some(has)) if has < needs => {
                let say = |length| say(length, context.book.project.units);
                phrase!("`{name}` needs a {} water line, and there is one of {}", name, say(needs), say(has))
            }
            _ if told && needs.hot && !has.hot => phrase!("`{name}` needs hot water, and the line is cold", name),
            _ if told && needs.cold && !has.cold => phrase!("`{name}` needs cold water, and the line is hot", name),
            _ if needs.shut_off && !has.shut_off => {
                phrase!("`{name}` needs a shut-off, and none is told at the opening", name)
            }
            _ => continue,
        };
        findings.push(
            asked
                .finding(Severity::Stop, fault)
                .remedy("have a plumber run or change the line before the wall is closed"),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn dishwasher(there: &str, needs: &str) -> Trial {
        Trial::of("service/water")
            .opening("hole", &format!("{{takes: dishwasher, service: {{water: '{there}'}}}}"))
            .selection("selection: It\nkind: dishwasher\nplace: hole", &format!("fit: {{needs: {{water: '{needs}'}}}}"))
    }

    /// Source: the maker's sheet, in the trade's words (3/8" hot with a shut-off).
    #[test]
    fn a_smaller_line_cold_for_hot_and_a_missing_valve_stop() {
        dishwasher("1/4\" hot", "3/8\" hot").finds_one().weighs("stop").cautions();
        dishwasher("3/8\" cold", "3/8\" hot").finds("`It` needs hot water, and the line is cold");
        dishwasher("3/8\" hot", "3/8\" hot with shut-off").finds_one();
        dishwasher("1/2\" hot and cold with shut-off", "3/8\" hot with shut-off").stays_silent();
        dishwasher("3/8\"", "3/8\" hot").stays_silent();
        for valve in ["shutoff valve", "Shut-off", "stopcock", "isolating valve", "angle stop"] {
            dishwasher(&format!("3/8\" hot, {valve}"), "3/8\" hot with shut-off").stays_silent();
        }
        dishwasher("3/8\" hot, no shut-off", "3/8\" hot with shut-off").finds_one();
        dishwasher("3/8\" Cold", "3/8\" Hot").finds_one();
    }

    #[test]
    fn what_nobody_wrote_is_asked_and_what_is_not_there_stops() {
        Trial::of("service/water")
            .opening("hole", "{takes: dishwasher}")
            .selection("selection: It\nkind: dishwasher\nplace: hole", "fit: {needs: {water: '3/8\" hot'}}")
            .finds("`It` needs water (3/8\" hot), and nothing is told of it at the opening `hole`")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:3:3"]);
        dishwasher("none", "3/8\" hot")
            .finds("`It` needs water (3/8\" hot), and there is none at the opening `hole`")
            .weighs("stop");
        Trial::of("service/water")
            .opening("hole", "{takes: dishwasher, service points: {water: {height: 8\"}}}")
            .selection("selection: It\nkind: dishwasher\nplace: hole", "fit: {needs: {water: '3/8\" hot'}}")
            .stays_silent();
    }
}
