//! How high a microwave stands.

use super::{Bound, Figure, Measure};
use crate::assess::Context;
use crate::assess::codes::metric::Printed;
use crate::assess::codes::{MICROWAVE_LEAST, MICROWAVE_TOP};
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{ClearDistance, Opening, Room};
use crate::finding::{Remark, Severity, phrase};
use crate::site::counter_height;
use crate::site::distances::{Distance, distance};
use crate::site::fitting;
use crate::units::Length;
use crate::vocabulary::Kind;

declare! {
    /// A microwave stands too high or too low
    ///
    /// ## What it checks
    /// The bottom of a microwave's opening: at most {54"} above the floor, and best {3"} below the
    /// cook's shoulder (`shoulder height`), which is a note; below a counter at least {15"} above
    /// the floor.
    ///
    /// ## Why it matters
    /// A hot dish is lifted out with both hands. From above the shoulder it comes down over the face.
    ///
    /// ## Remedy
    /// Set the opening higher or lower before the cabinets are ordered.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   microwave: {takes: microwave, sill: 55"}
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 21.
    "clear/microwave", Query,
    due: CabinetsOrdered, tells: [],
    judges: [Microwave],
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 21"],
    caution: None,
    Check::Book(check)
}

const SOURCE: &str = "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 21";
const HIGHEST: Figure = Figure::most_of(&MICROWAVE_TOP);
const LOWEST: Figure = Figure::of(&MICROWAVE_LEAST).told("advised below a counter");
/// How far below the shoulder its bottom is best.
const BELOW_SHOULDER: Length = Length::from_inches(3);
/// A usual counter, where the opening names none.
const COUNTER: Length = Length::from_inches(36);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let openings = room.openings.iter();
        let openings = openings.filter(|opening| opening.takes_a(Kind::Microwave));
        findings.extend(openings.filter_map(|opening| judge(context, room, opening)));
    }
}

fn judge(context: &Context<'_>, room: &Room, opening: &Opening) -> Option<Remark> {
    let bottom = Distance::from(opening.sill.spanned()?);
    let of = |advised| Measure {
        room,
        item: Some(&opening.name),
        is: (phrase!("the bottom of the opening `{}`", opening.name.value), "above the floor"),
        there: bottom,
        advised: Some(advised),
        code: None,
        remedy: "set the opening so before the cabinets are ordered",
    };
    if is_below_a_counter(context, room, opening, bottom.value) {
        return of(LOWEST).judge(context);
    }
    of(HIGHEST).judge(context).or_else(|| {
        let best = distance(context.site, room, ClearDistance::ShoulderHeight)?.value - BELOW_SHOULDER;
        let whose = "that is best under the cook's shoulder";
        let finding =
            of(Figure { bound: Bound::Most(best), whose, source: SOURCE, printed: Printed::InInches, named: None })
                .judge(context)?;
        Some(Remark { severity: Severity::Note, ..finding })
    })
}

fn is_below_a_counter(context: &Context<'_>, room: &Room, opening: &Opening, bottom: Length) -> bool {
    let counter = counter_height(room, opening).value().unwrap_or(COUNTER);
    fitting::height(context.site.plan(room), room, opening).is_some_and(|height| bottom + height <= counter)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn microwave(opening: &str) -> Trial {
        Trial::of("clear/microwave").opening("niche", &format!("{{takes: microwave, {opening}}}"))
    }

    /// Source: check values KP-34: at most 54; with the shoulder at 56 it is best at 53, and 55 fails.
    #[test]
    fn its_bottom_is_at_most_fifty_four_inches_high() {
        let shoulder = "clearances: {shoulder height: 56\"}";
        microwave("sill: 54\"").stays_silent();
        microwave("sill: 53\"").room(shoulder).stays_silent();
        microwave("sill: 55\"").room(shoulder).finds_one().weighs("query");
        microwave("sill: 54\"").room(shoulder)
            .finds("the bottom of the opening `niche` is 54\" (1372 mm) above the floor, 1\" (25.4 mm) more than the 53\" (1346 mm) that is best under the cook's shoulder")
            .weighs("note");
    }

    /// Source: check values KP-34: below a counter 14 above the floor fails.
    #[test]
    fn below_a_counter_it_is_at_least_fifteen_inches_high() {
        microwave("sill: 15\", height: 16\"").stays_silent();
        microwave("sill: 14\", height: 16\"").finds_one().weighs("query");
    }
}
