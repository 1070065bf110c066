//! A tall cabinet that is stood up in its room.

use crate::assess::fitting::overhead;
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, about, say};
use crate::book::vocabulary::{Hazard, Kind};
use crate::book::{Ceiling, Room};
use crate::finding::{Finding, Severity};
use crate::units::Length;

declare! {
    /// A tall cabinet can't be stood up under the ceiling
    ///
    /// ## What it checks
    /// The diagonal of a cabinet's side (height and depth) against the ceiling above the floor that will be
    /// there, where it can be stood up: under a slope, at the cabinet's own width from the high side. What
    /// goes up there alone, if at all, is asked about. Exactly, by squares: no root is taken.
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
        let is_cabinet = selection.is(Kind::Cabinet);
        let height = option.size.height.spanned().filter(|_| is_cabinet);
        let (Some(height), Some(depth)) = (height, option.size.depth.get()) else { continue };
        let Some(high) = height.value.least.or(height.value.most) else { continue };
        let wide = option.size.width.get().copied();
        let say = |length| say(length, context.book.project.units);
        let of = format!("`{}`, {} high and {} deep,", selection.name.value, say(high), say(*depth));
        let (severity, message) = match where_it_stands_up(context, room, (high, *depth), wide) {
            None | Some(StandsUp::Freely) => continue,
            Some(StandsUp::Nowhere(ceiling)) => {
                (Severity::Stop, format!("{of} is longer across its side than the {} under the ceiling", say(ceiling)))
            }
            Some(StandsUp::AtTheHighSide(ceiling)) => (
                Severity::Query,
                format!("{of} stands up at the high side alone, where the ceiling is {}", say(ceiling)),
            ),
        };
        let finding = about(room, selection, option, RULE.code, severity, height.span, message);
        let remedy = match severity {
            Severity::Stop => "order it in two parts or without its base, or choose a lower one",
            _ => "plan where it is stood up, and have the ceiling measured there; or order it in two parts",
        };
        findings.push(finding.remedy(remedy));
    }
}

/// Where a cabinet can be stood up.
enum StandsUp {
    /// With room to spare.
    Freely,
    /// Close to the high side, if at all: that is so high.
    AtTheHighSide(Length),
    /// Nowhere in the room, which is at most so high.
    Nowhere(Length),
}

/// A cabinet is stood up where the ceiling is high, and then moved to its place: the diagonal of its side
/// is held against the ceiling at its own width from the high side. Exactly, by squares.
fn where_it_stands_up(
    context: &Context<'_>,
    room: &Room,
    (high, deep): (Length, Length),
    wide: Option<Length>,
) -> Option<StandsUp> {
    let square = |length: Length| i128::from(length.nanometres()).pow(2);
    let goes_under = |ceiling: Length| square(high) + square(deep) <= square(ceiling);
    let (low, top) = match room.ceiling.get()? {
        Ceiling::Level(height) => (*height, *height),
        Ceiling::Sloped { low, high, .. } => (*low, *high),
    };
    if goes_under(low) {
        return Some(StandsUp::Freely);
    }
    if !goes_under(top) {
        return Some(StandsUp::Nowhere(top));
    }
    let there = overhead::run(context.plan(room), room).and_then(|run| {
        let from_low_side = run - wide?.max(deep);
        overhead::height_at(low, top, run, from_low_side).filter(|_| !from_low_side.is_negative())
    });
    Some(if there.is_some_and(goes_under) { StandsUp::Freely } else { StandsUp::AtTheHighSide(top) })
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
    }

    /// Geometry: from 60" to 132" over 144" the ceiling is 120" high at 24" from the high side, and 101" at 62".
    /// Where the cabinet stands afterwards is judged by `run/ceiling`.
    #[test]
    fn under_a_slope_it_is_stood_up_where_the_ceiling_is_high() {
        let under = |ceiling: &str, width: &str| {
            Trial::of("fit/stand-up").room(&format!("outline: 16' x 12'\nceiling: {ceiling}")).selection(
                "selection: Pantry\nkind: cabinet",
                &format!("size: {{height: 96\", depth: 28\", width: {width}}}"),
            )
        };
        under("{low: 60\", high: 132\", low at: A}", "24\"").stays_silent();
        under("{low: 60\", high: 132\", rises along: width}", "24\"").stays_silent();
        under("{low: 60\", high: 99\", low at: A}", "24\"").finds_one().weighs("stop");
        under("{low: 60\", high: 104\", low at: A}", "24\"")
            .finds("`Pantry`, 8'-0\" (2438.4 mm) high and 28\" (711.2 mm) deep, stands up at the high side alone, where the ceiling is 8'-8\" (2641.6 mm)")
            .weighs("query");
        pantry("96\"", "{low: 99\", high: 110\"}").finds_one().weighs("query");
        pantry("96\"", "{low: 100\", high: 110\"}").stays_silent();
    }
}
