//! A tall cabinet that is stood up in its room.

use crate::assess::rules::{Check, declare};
use crate::assess::{Context, about, say};
use crate::book::vocabulary::Hazard;
use crate::book::{Ceiling, Room};
use crate::finding::{Finding, Severity};
use crate::units::Length;

declare! {
    /// A tall cabinet can't be stood up under the ceiling
    ///
    /// ## What it checks
    /// The diagonal of a cabinet's side (height and depth) against the least height of the ceiling above
    /// the floor that will be there. Exactly, by squares: no root is taken.
    ///
    /// ## Why it matters
    /// A cabinet of 95 1/2" fits under a ceiling of 96" and can't be tilted up under it.
    ///
    /// ## Remedy
    /// Order it in two parts, or without its base, or a lower one.
    ///
    /// ## Example
    /// ```yaml
    /// kind: cabinet
    /// size: {height: 94", depth: 24"}        # 97" across its side
    /// ```
    ///
    /// ## Source
    /// Pythagoras; trade practice.
    "fit/stand-up", Stop,
    sources: ["geometry", "common practice"],
    caution: Some(Hazard::Weight.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (room, selection, option) in context.options() {
        let is_cabinet = selection.kind.get().is_some_and(|kind| kind.name == "cabinet");
        let height = option.size.height.spanned().filter(|_| is_cabinet);
        let (Some(height), Some(depth), Some(ceiling)) = (height, option.size.depth.get(), least_ceiling(room)) else {
            continue;
        };
        let Some(high) = height.value.least.or(height.value.most) else { continue };
        let square = |length: Length| i128::from(length.nanometres()).pow(2);
        if square(high) + square(*depth) <= square(ceiling) {
            continue;
        }
        let say = |length| say(length, context.book.project.units);
        let message = format!(
            "`{}`, {} high and {} deep, is longer across its side than the {} under the ceiling",
            selection.name.value,
            say(high),
            say(*depth),
            say(ceiling)
        );
        let finding = about(room, selection, option, RULE.code, Severity::Stop, height.span, message);
        findings.push(finding.remedy("order it in two parts or without its base, or choose a lower one"));
    }
}

/// The least height of the ceiling, from the finished floor.
fn least_ceiling(room: &Room) -> Option<Length> {
    match *room.ceiling.get()? {
        Ceiling::Level(height) => Some(height),
        Ceiling::Sloped { low, .. } => Some(low),
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn pantry(height: &str, ceiling: &str) -> Trial {
        Trial::of("fit/stand-up")
            .room(&format!("ceiling: {ceiling}"))
            .selection("selection: Pantry\nkind: cabinet", &format!("size: {{height: {height}, depth: 28\"}}"))
    }

    /// Source: trade reports section 7 (diagonal less than the ceiling); the triangle of 28, 96, 100 has whole sides.
    #[test]
    fn a_pantry_longer_across_its_side_than_the_ceiling_is_high_stops() {
        pantry("96\"", "99 15/16\"").finds_one().weighs("stop").cautions();
        pantry("96\"", "100\"").stays_silent();
        pantry("96\"", "{low: 99\", high: 110\"}").finds_one();
    }
}
