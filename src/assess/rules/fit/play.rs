//! The play with which a thing goes into its opening.

use crate::assess::fitting::fitting;
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::finding::{Finding, Severity};
use crate::units::Length;

/// The least play in all where the sheet says nothing: 1/8" (trade.md F-27, common practice).
const USUAL: Length = Length::from_sixty_fourths(8);

declare! {
    /// The thing goes into its opening with too little play in width
    ///
    /// ## What it checks
    /// The governing width of the opening less the thing's own width, against the play that the
    /// maker's sheet asks for, or 1/8" in all where it asks for none. A thing that does not go in
    /// at all is told by `fit/width` alone.
    ///
    /// ## Why it matters
    /// What just goes in jams when the counters come a hair closer, cannot be drawn out for repair,
    /// and leaves no room for the next model.
    ///
    /// ## Remedy
    /// Have the opening eased where it is narrowest, or choose a narrower model.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   range: {takes: range, width: 29 15/16"}
    /// ```
    /// A range 29 7/8" wide goes in with 1/16" of play.
    ///
    /// ## Source
    /// The maker's own sheet; else common practice: an eighth of an inch in all.
    "fit/play", Query,
    sources: ["the maker's sheet", "common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    findings.extend(context.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let say = |length| say(length, context.book.project.units);
    let width = fitting(fitted.room, fitted.opening, fitted.option).width;
    let asked = fitted.option.fit.get().and_then(|fit| fit.play.get().copied());
    let wanted = asked.unwrap_or(USUAL);
    let play = width.play().filter(|play| *play < wanted && width.too_small_by().is_none())?;
    let whose = if asked.is_some() { "that the maker's sheet asks for" } else { "that is usual" };
    let message = format!(
        "it goes into the opening `{}` with {} of play in all, less than the {} {whose}",
        fitted.opening.name.value,
        say(play),
        say(wanted)
    );
    let at = width.there_at.unwrap_or(fitted.opening.span);
    let finding = fitted.finding(RULE.code, Severity::Query, at, message);
    let finding = finding.source(if asked.is_some() { "the maker's sheet" } else { "common practice" });
    Some(finding.remedy("have the opening eased where it is narrowest, or choose a narrower model"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(width: &str, option: &str) -> Trial {
        Trial::of("fit/play")
            .opening("range", &format!("{{takes: range, width: {width}}}"))
            .selection("selection: Range\nkind: range\nplace: range", option)
    }

    /// Source: trade.md F-27 (29 7/8" between the tops, unit 29 7/8": no play; at least 1/8" in all).
    #[test]
    fn a_range_that_fills_its_opening_is_asked_about() {
        let unit = "size: {width: 29 7/8\"}";
        range("[30\", 29 7/8\", 30\"]", unit)
            .finds("it goes into the opening `range` with 0\" (0 mm) of play in all, less than the 1/8\" (≈ 3.2 mm) that is usual")
            .weighs("query");
        range("30\"", unit).is_silent();
        range("29 63/64\"", unit).finds_one();
    }

    /// Source: the sheet's own figure, here 1/4" (trade.md F-03: warn below 1/4").
    #[test]
    fn the_sheet_s_own_play_counts_before_the_usual_one() {
        let unit = "size: {width: 29 7/8\"}\nfit: {play: 1/4\"}";
        range("30 1/16\"", unit).finds_one().weighs("query");
        range("30 1/8\"", unit).is_silent();
    }

    #[test]
    fn what_does_not_go_in_is_told_by_the_width_alone() {
        range("29 3/4\"", "size: {width: 29 7/8\"}").is_silent();
        range("29 7/8\"", "size: {width: 29 7/8\"}\nfit: {opening: {width: 30\" to 30 1/4\"}}").is_silent();
    }

    #[test]
    fn each_option_is_asked_about_while_the_client_still_chooses() {
        range("30\"", "options:\n  - {id: tight, size: {width: 29 15/16\"}}\n  - {id: loose, size: {width: 29\"}}")
            .finds("option `tight`: it goes into the opening `range` with 1/16\" (≈ 1.6 mm) of play in all, less than the 1/8\" (≈ 3.2 mm) that is usual");
    }
}
