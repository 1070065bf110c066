//! The chosen thing's depth against its opening.

use crate::assess::fitting::fitting;
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::finding::{Finding, Severity};

declare! {
    /// The opening is not as deep as the thing, or its sheet, needs
    ///
    /// ## What it checks
    /// The least depth of the opening, to the wall or to whatever stands before it (an outlet, a
    /// valve, a baseboard), against the depth that the maker's sheet asks for, or for what is built
    /// in, against the body and the air behind it.
    ///
    /// ## Why it matters
    /// Width and height are measured, depth is believed. A refrigerator box that is deep enough for
    /// the old unit leaves the new one standing in the aisle.
    ///
    /// ## Remedy
    /// Choose a shallower model, or have what stands behind it recessed (outlet, valve) or moved.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   oven: {takes: wall oven, depth: 23"}     # its sheet asks for 23 1/2"
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement; trade reports F-07, F-15, F-35, F-121.
    "fit/depth", Stop,
    sources: ["the maker's sheet", "the field measurement"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    findings.extend(context.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let say = |length| say(length, context.book.project.units);
    let depth = fitting(fitted.room, fitted.opening, fitted.option).depth;
    let (there, name) = (depth.there?, &fitted.opening.name.value);
    let at = depth.there_at.unwrap_or(fitted.opening.span);
    if let Some(short) = depth.too_small_by() {
        let message = format!(
            "the opening `{name}` is {} deep, {} less than the {} needed",
            say(there),
            say(short),
            say(depth.least()?)
        );
        let finding = fitted.finding(RULE.code, Severity::Stop, at, message);
        let finding =
            finding.remedy("choose a shallower model, or have what stands behind it recessed and measured again");
        let asked = depth.asked_at.or(depth.body_at);
        return Some(asked.map_or(finding.clone(), |span| finding.also(span, "needs this")));
    }
    let excess = depth.too_large_by()?;
    let message =
        format!("the opening `{name}` is {} deep, {} more than the maker's sheet allows", say(there), say(excess));
    let finding = fitted.finding(RULE.code, Severity::Stop, at, message);
    Some(finding.remedy("fur the back out to the depth that the sheet asks for"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn oven(depth: &str) -> Trial {
        let trial = Trial::of("fit/depth").opening("hole", &format!("{{takes: wall oven, depth: {depth}}}"));
        trial.selection("selection: It\nkind: wall oven\nplace: hole", "fit: {opening: {depth: at least 23 1/2\"}}")
    }

    /// Source: trade.md F-35: a wall-oven cabinet 23" deep where the sheet asks for 23 1/2" at least.
    #[test]
    fn an_oven_cabinet_half_an_inch_too_shallow_is_told() {
        oven("23\"").finds(
            "the opening `hole` is 23\" (584.2 mm) deep, 1/2\" (12.7 mm) less than the 23 1/2\" (596.9 mm) needed",
        );
        oven("23 1/2\"").is_silent();
    }

    #[test]
    fn the_least_of_several_depths_governs() {
        oven("[24\", 23 1/4\"]").finds_one();
    }
}
