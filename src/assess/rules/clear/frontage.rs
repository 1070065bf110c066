//! Counter in all.

use crate::assess::codes::metric::{self, Printed};
use crate::assess::codes::{FRONTAGE, FRONTAGE_DEPTH};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::book::Room;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Provenance;
use crate::site::distances::frontage;
use crate::units::Length;

declare! {
    /// A kitchen has less counter than is advised
    ///
    /// ## What it checks
    /// The `counter frontage` of a kitchen, along its front: at least {158"}. A stretch counts
    /// where it is {24"} deep and has {15"} clear above it.
    ///
    /// ## Why it matters
    /// Landings, preparation and what stands about for good all live on the same counter.
    ///
    /// ## Remedy
    /// Deepen a counter that does not count, or add an island or a peninsula.
    ///
    /// ## Example
    /// ```yaml
    /// clearances:
    ///   counter frontage: [{length: 120", depth: 25"}, {length: 48", depth: 20"}]   # only 120" count
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 25.
    "clear/frontage", Note,
    due: CabinetsOrdered, tells: [],
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 25"],
    caution: None,
    Check::Book(check)
}

const CLEAR_ABOVE: Length = Length::from_inches(15);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.book.rooms.iter().filter_map(|room| judge(context, room)));
}

fn judge(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let of_room = |length| say_room(length, context.book.project.units);
    let (in_all, deep) = (context.rulings().length(&FRONTAGE)?, context.rulings().length(&FRONTAGE_DEPTH)?);
    let units = context.book.project.units;
    let enough = |there: Length, least: Length| there >= metric::advised(least, there, units);
    let (there, left_out) = frontage(context.site, room, deep.value, CLEAR_ABOVE, enough)?;
    let printed = if in_all.own { Printed::AsWritten } else { Printed::InInches };
    let asked = printed.least(in_all.value, there.value, context.book.project.units);
    let short = Some(asked - there.value).filter(|short| *short > Length::ZERO)?;
    let besides = if left_out > Length::ZERO {
        phrase!("; {} more are too shallow or too low under something", say(left_out))
    } else {
        Phrase::default()
    };
    let by_the_plan = if there.provenance == Provenance::Plan { " by the plan" } else { "" };
    let message = phrase!(
        "the counter frontage is {}{by_the_plan}, {} less than the {} advised{besides}",
        of_room(there.value),
        by_the_plan,
        say(short),
        of_room(asked),
        besides
    );
    let severity = if in_all.own { Severity::Stop } else { Severity::Note };
    let finding = Remark::new(severity, there.at, message).room(&room.folder).source(in_all.source);
    Some(finding.remedy("deepen a counter that does not count, or add to one"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn frontage(written: &str) -> Trial {
        Trial::of("clear/frontage").room(&format!("clearances: {{counter frontage: {written}}}"))
    }

    /// Source: check values KP-38: 157.5 fails.
    #[test]
    fn a_hundred_and_fifty_eight_inches_in_all() {
        frontage("158\"").stays_silent();
        frontage("157 1/2\"")
            .finds("the counter frontage is 13'-1 1/2\" (4000 mm), 1/2\" (12.7 mm) less than the 13'-2\" (4013 mm) advised")
            .weighs("note");
    }

    /// Source: check values KP-38: a counter 20 deep counts nothing toward it; 15 are clear above.
    #[test]
    fn shallow_counter_and_counter_under_something_low_do_not_count() {
        frontage("[{length: 120\", depth: 24\"}, {length: 38\", depth: 25\", clear above: 15\"}]").stays_silent();
        frontage("[{length: 120\", depth: 24\"}, {length: 60\", depth: 20\"}]").finds_one();
        frontage("[{length: 120\"}, {length: 60\", clear above: 14\"}]").finds_one();
    }
}
