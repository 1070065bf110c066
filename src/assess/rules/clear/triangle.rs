//! The ways between sink, cooking and refrigerator.

use crate::assess::codes::metric::Printed;
use crate::assess::codes::{LEG_ACROSS, LEG_LEAST, LEG_MOST, Ruling, TRIANGLE};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::book::{Room, Triangle};
use crate::finding::{Phrase, Remark, phrase};
use crate::source::{Span, Spanned};
use crate::units::Length;

declare! {
    /// The ways between sink, cooking and refrigerator are too long, too short or in the way
    ///
    /// ## What it checks
    /// Each leg of the `triangle` between {48"} and {108"}, from the middle of each front;
    /// their sum at most {312"}; none cuts more than {12"} across an island.
    ///
    /// ## Why it matters
    /// Everything that is cooked is carried along these three lines.
    ///
    /// ## Remedy
    /// Move one of the three centres, or shorten the island that stands between.
    ///
    /// ## Example
    /// ```yaml
    /// clearances:
    ///   triangle: {sink to cooking: 108", cooking to refrigerator: 108", refrigerator to sink: 108"}
    /// ```
    /// Each leg is short enough, and the three together are {12"} too long.
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 3.
    "clear/triangle", Query,
    due: CabinetsOrdered, tells: [],
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 3"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let Some(triangle) = room.clearances.triangle.spanned() else { continue };
        findings.extend(legs(context, room, triangle));
        findings.extend(cut(context, room, &triangle.value));
    }
}

/// Legs that are too long or too short, in one finding; their sum, where no leg alone is at fault.
fn legs(context: &Context<'_>, room: &Room, triangle: &Spanned<Triangle>) -> Option<Remark> {
    let units = context.book.project.units;
    let named = [
        ("sink to cooking", &triangle.value.sink_to_cooking),
        ("cooking to refrigerator", &triangle.value.cooking_to_refrigerator),
        ("refrigerator to sink", &triangle.value.refrigerator_to_sink),
    ];
    let legs: Vec<_> = named.into_iter().filter_map(|(name, leg)| Some((name, leg.spanned()?))).collect();
    let rulings = context.rulings();
    let (least, most, all) = (rulings.length(&LEG_LEAST)?, rulings.length(&LEG_MOST)?, rulings.length(&TRIANGLE)?);
    let printed = if least.own { Printed::AsWritten } else { Printed::InInches };
    let is_wrong = |leg: Length| leg < printed.least(least.value, leg, units) || leg > most.value;
    let wrong: Vec<_> = legs.iter().filter(|(_, leg)| is_wrong(leg.value)).collect();
    if let Some((_, first)) = wrong.first() {
        let told: Vec<_> =
            wrong.iter().map(|(name, leg)| phrase!("{name} {}", name, say_room(leg.value, units))).collect();
        let asked =
            phrase!("{} to {} are advised for each way", say_room(least.value, units), say_room(most.value, units));
        let message = phrase!("{}; {asked}", Phrase::joined(told, ", "), asked);
        let ruling = if least.severity < most.severity { least } else { most };
        return Some(finding(room, first.span, ruling, message, "move one of the three nearer or farther"));
    }
    let sum: Length = legs.iter().map(|(_, leg)| leg.value).sum();
    let over = (legs.len() == named.len() && sum > all.value).then(|| sum - all.value)?;
    let message = phrase!(
        "sink, cooking and refrigerator are {} apart all around, {} more than the {} advised",
        say_room(sum, units),
        say(over, units),
        say_room(all.value, units)
    );
    Some(finding(room, triangle.span, all, message, "move one of the three nearer to the others"))
}

fn cut(context: &Context<'_>, room: &Room, triangle: &Triangle) -> Option<Remark> {
    let (units, most) = (context.book.project.units, context.rulings().length(&LEG_ACROSS)?);
    let cut = triangle.cuts_into_island.spanned().filter(|cut| cut.value > most.value)?;
    let message = phrase!(
        "a way between sink, cooking and refrigerator cuts {} across the island; {} are advised at the most",
        say(cut.value, units),
        say(most.value, units)
    );
    Some(finding(room, cut.span, most, message, "shorten the island, or move one of the three"))
}

fn finding(room: &Room, at: Span, missed: Ruling<Length>, message: Phrase, remedy: &'static str) -> Remark {
    Remark::new(missed.severity, at, message).room(&room.folder).source(missed.source).remedy(remedy)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn triangle(legs: [&str; 3]) -> Trial {
        let [one, two, three] = legs;
        Trial::of("clear/triangle").room(&format!(
            "clearances:\n  triangle: {{sink to cooking: {one}\", cooking to refrigerator: {two}\", refrigerator to sink: {three}\"}}"
        ))
    }

    /// Source: check values KP-03; top check value 3: three legs of 108 pass each and fail together; 60 + 72 + 84 = 216 passes.
    #[test]
    fn the_three_ways_together_are_at_most_twenty_six_feet() {
        triangle(["60", "72", "84"]).stays_silent();
        triangle(["108", "108", "108"])
            .finds("sink, cooking and refrigerator are 27'-0\" (8230 mm) apart all around, 12\" (305 mm) more than the 26'-0\" (7925 mm) advised")
            .weighs("query");
        triangle(["108", "108", "96"]).stays_silent();
    }

    /// Source: check values KP-04: 47.9 fails, 108 passes, 109 fails.
    #[test]
    fn each_way_is_four_to_nine_feet() {
        triangle(["47.9", "72", "84"]).finds_one();
        triangle(["48", "108", "84"]).stays_silent();
        triangle(["60", "109", "84"]).finds(
            "cooking to refrigerator 9'-1\" (2769 mm); 4'-0\" (1219 mm) to 9'-0\" (2743 mm) are advised for each way",
        );
        triangle(["120", "120", "120"]).finds_one();
    }

    /// Source: check values KP-05: 12 passes, 12.5 fails.
    #[test]
    fn none_cuts_more_than_a_foot_across_an_island() {
        let cut = |by: &str| {
            Trial::of("clear/triangle").room(&format!("clearances: {{triangle: {{cuts into island: {by}}}}}"))
        };
        cut("12\"").stays_silent();
        cut("12 1/2\"").finds_one();
    }

    #[test]
    fn two_legs_alone_have_no_sum() {
        Trial::of("clear/triangle").room("clearances: {triangle: {sink to cooking: 100\"}}").stays_silent();
    }
}
