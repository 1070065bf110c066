//! The counter on which food is prepared.

use super::{Figure, Measure};
use crate::assess::Context;
use crate::assess::codes::{PREP_DEPTH, PREP_WIDTH};
use crate::assess::rules::{Check, Findings, declare};
use crate::site::distances::preparation;

declare! {
    /// The counter for preparing food is too short or too shallow
    ///
    /// ## What it checks
    /// The unbroken counter beside a sink where food is prepared (`preparation counter`): at least {36"}
    /// long and {24"} deep.
    ///
    /// ## Why it matters
    /// Most of the time in a kitchen is spent there. A joint, a corner or a hob in it takes it away.
    ///
    /// ## Remedy
    /// Move sink or cooktop apart, or give the island a sink.
    ///
    /// ## Example
    /// ```yaml
    /// clearances: {preparation counter: 35" x 25"}
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 12.
    "clear/prep", Query,
    due: CabinetsOrdered, tells: [],
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 12"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let Some((length, depth)) = preparation(context.site, room) else { continue };
        let side = |there, tail, least| Measure {
            room,
            item: None,
            is: ("the counter for preparing food".into(), tail),
            there,
            advised: Some(Figure::of(least)),
            code: None,
            remedy: "move sink or cooktop apart, or give the island a sink",
        };
        let sides = [side(length, "long", &PREP_WIDTH), side(depth, "deep", &PREP_DEPTH)];
        findings.extend(sides.iter().find_map(|measure| measure.judge(context)));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: check values KP-22: 36 by 24 passes, 35 by 25 fails.
    #[test]
    fn thirty_six_by_twenty_four_inches_beside_a_sink() {
        let counter =
            |sides: &str| Trial::of("clear/prep").room(&format!("clearances: {{preparation counter: {sides}}}"));
        counter("36\" x 24\"").stays_silent();
        counter("35\" x 25\"")
            .finds("the counter for preparing food is 35\" (889 mm) long, 1\" (25.4 mm) less than the 36\" (914 mm) advised")
            .weighs("query");
        counter("48\" x 23\"").finds_one();
    }
}
