//! Where a dishwasher stands, and where one stands beside it.

use super::{Figure, Measure};
use crate::assess::Context;
use crate::assess::codes::{DISHWASHER_STANDING, DISHWASHER_TO_SINK};
use crate::assess::rules::{Check, Findings, declare};
use crate::book::ClearDistance;
use crate::site::distances::distance;

declare! {
    /// A dishwasher stands too far from the sink, or leaves no room to stand beside its door
    ///
    /// ## What it checks
    /// From the dishwasher's edge to the nearest edge of a sink at most {36"}; between it and
    /// whatever stands at a right angle to it at least {21"} to stand in. Beside a sink set in
    /// the corner, that is from the sink's middle to the edge of the open door.
    ///
    /// ## Why it matters
    /// Plates drip on the way, and whoever loads it stands beside its open door.
    ///
    /// ## Remedy
    /// Move the dishwasher nearer to the sink, and off the corner.
    ///
    /// ## Example
    /// ```yaml
    /// clearances: {dishwasher to sink: 40", standing space at dishwasher: 18"}
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 13.
    "clear/dishwasher", Query,
    due: CabinetsOrdered, tells: [],
    judges: [Dishwasher, PanelDishwasher],
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 13"],
    caution: None,
    Check::Book(check)
}

const TO_SINK: Figure = Figure::most_of(&DISHWASHER_TO_SINK);
const TO_STAND: Figure = Figure::of(&DISHWASHER_STANDING);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let asked = [
            (ClearDistance::DishwasherToSink, "the dishwasher", "from the sink", TO_SINK, "move it nearer to the sink"),
            (
                ClearDistance::StandingSpaceAtDishwasher,
                "the space to stand beside the dishwasher",
                "wide",
                TO_STAND,
                "move it off the corner",
            ),
        ];
        findings.extend(asked.into_iter().filter_map(|(key, subject, tail, advised, remedy)| {
            let measure = Measure {
                room,
                item: None,
                is: (subject.into(), tail),
                there: distance(context.site, room, key)?,
                advised: Some(advised),
                code: None,
                remedy,
            };
            measure.judge(context)
        }));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn kitchen(clearance: &str) -> Trial {
        Trial::of("clear/dishwasher").room(&format!("clearances: {{{clearance}}}"))
    }

    /// Source: check values KP-23: 36 passes, 36.5 fails.
    #[test]
    fn at_most_thirty_six_inches_from_the_sink() {
        kitchen("dishwasher to sink: 36\"").stays_silent();
        kitchen("dishwasher to sink: 36 1/2\"")
            .finds("the dishwasher is 36 1/2\" (927 mm) from the sink, 1/2\" (12.7 mm) more than the 36\" (914 mm) advised")
            .weighs("query");
    }

    /// Source: check values KP-24: 20.5 fails, 21 passes.
    #[test]
    fn at_least_twenty_one_inches_to_stand_in() {
        kitchen("standing space at dishwasher: 20 1/2\"").finds_one().weighs("query");
        kitchen("standing space at dishwasher: 21\"").stays_silent();
    }
}
