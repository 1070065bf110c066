//! Whether an opening is square and plumb.

use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::finding::{Finding, Severity};
use crate::units::Length;

declare! {
    /// The opening is out of square or out of plumb
    ///
    /// ## What it checks
    /// The difference of the two diagonals, and how far each side wanders from one plumb line,
    /// against the figure of the maker's sheet; without one, against 1/8".
    ///
    /// ## Why it matters
    /// A square appliance in an opening that is not shows its gap like a wedge, and its door rubs.
    ///
    /// ## Remedy
    /// Have the opening trued, or plan trim or a scribe that hides the wedge.
    ///
    /// ## Example
    /// ```yaml
    /// diagonals: [46 7/8", 47 1/8"]
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; without one 1/8" (trade reports: two diagonals differ at most 1/8", plumb
    /// within 1/8" over the height, from memory for the plumb).
    "fit/square", Query,
    sources: ["the maker's sheet", "common practice: 1/8 in"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    findings.extend(context.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let say = |length| say(length, context.book.project.units);
    let opening = fitted.opening;
    let of_sheet = fitted.option.fit.get().and_then(|fit| fit.square.get().copied());
    let allowed = of_sheet.unwrap_or(USUAL);
    let diagonals = opening.diagonals.spanned().map(|pair| ((pair.0 - pair.1).abs(), pair.span, "diagonals differ by"));
    let plumb = opening.plumb.spanned().and_then(|plumb| {
        let wander = [&plumb.left, &plumb.right]
            .into_iter()
            .filter_map(|side| Some(*side.iter().max()? - *side.iter().min()?))
            .max()?;
        Some((wander, plumb.span, "side is out of plumb by"))
    });
    let (off, span, how) =
        diagonals.into_iter().chain(plumb).max_by_key(|(off, ..)| *off).filter(|(off, ..)| *off > allowed)?;
    let whose = if of_sheet.is_some() { "the maker's sheet allows" } else { "is usual" };
    let message =
        format!("the opening `{}` is not true: its {how} {}; {} {whose}", opening.name.value, say(off), say(allowed));
    let finding = fitted.finding(RULE.code, Severity::Query, span, message);
    let source = if of_sheet.is_some() { "the maker's sheet" } else { "common practice" };
    Some(finding.remedy("have it trued, or plan a trim or scribe that hides the wedge").source(source))
}

/// The usual limit: 1/8 in (common practice).
const USUAL: Length = Length::from_sixty_fourths(8);

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(opening: &str, option: &str) -> Trial {
        let trial = Trial::of("fit/square").opening("hole", &format!("{{takes: refrigerator, {opening}}}"));
        trial.selection("selection: It\nkind: refrigerator\nplace: hole", option)
    }

    /// Source: trade.md section 3: two diagonals differ by 1/8" at most.
    #[test]
    fn diagonals_may_differ_by_an_eighth() {
        trial("diagonals: [46 7/8\", 47 1/16\"]", "").finds_one().weighs("query");
        trial("diagonals: [46 7/8\", 47\"]", "").is_silent();
        trial("diagonals: [46 7/8\", 47\"]", "fit: {square: 1/16\"}").finds_one();
    }

    /// Source: trade.md F-05 and section 3: each side plumb within 1/8" over the height.
    #[test]
    fn a_side_that_wanders_from_the_plumb_line_is_told() {
        trial("plumb: {left: [1\", 1\", 1 3/16\"], right: [31\", 31\", 31\"]}", "").finds_one();
        trial("plumb: {left: [1\", 1\", 1 1/8\"], right: [31\", 31\", 31\"]}", "").is_silent();
    }
}
