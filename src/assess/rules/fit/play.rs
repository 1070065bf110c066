//! Whether a thing goes in with room for the hands.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::DetailName;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::least_play;

declare! {
    /// The thing goes in with less play than its sheet asks for, or than is usual
    ///
    /// ## What it checks
    /// What is left over the thing's own width in all, against the play that the maker's sheet asks
    /// for; without one, against {1/8"} in all; for what is made by hand, against what it varies by (`varies by`),
    /// where that is more. What does not fit at all is told by `fit/width`.
    ///
    /// ## Why it matters
    /// An opening that is exactly as wide as the range is a range that jams between two stone tops.
    ///
    /// ## Remedy
    /// Have the opening eased, choose a narrower model, or waive it with the fitter's consent.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   range: {takes: range, width: 29 15/16"}     # for a range 29 7/8" wide
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; without one {1/8"} in all, which is common practice.
    "fit/play", Query,
    due: WithThing, tells: [Installer],
    judges: placed,
    sources: ["the maker's sheet", "common practice for the play in all"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.site.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let fit = context.site.fitting(fitted);
    let width = &fit.width;
    let play = width.play().filter(|play| !play.is_negative() && width.too_small_by().is_none())?;
    let sheet = fitted.option.fit.get().map(AsRef::as_ref);
    let usual = least_play(fitted.opening, width, sheet, context.book.project.units);
    let by_hand = fitted.option.length(DetailName::VariesBy).map(|(varies, _)| varies);
    let by_hand = by_hand.filter(|varies| usual.is_none_or(|(wanted, _)| *varies > wanted));
    let (wanted, whose, source) = match (by_hand, usual) {
        (Some(varies), _) => (varies, "is what one may be larger than another", "the maker's word"),
        (None, Some((wanted, true))) => (wanted, "the maker's sheet asks for", "the maker's sheet"),
        (None, Some((wanted, false))) => (wanted, "is usual", "common practice"),
        (None, None) => return None,
    };
    if play >= wanted {
        return None;
    }
    let message = phrase!(
        "`{}` goes into the opening `{}` with {} of play in all; {} {whose}",
        fitted.selection.name.value,
        fitted.opening.name.value,
        say(play),
        say(wanted),
        whose
    );
    let finding = fitted.finding(Severity::Query, width.there_at.unwrap_or(fitted.opening.span), message);
    Some(finding.remedy("have the opening eased, or agree it with whoever sets it").source(source))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(width: &str, option: &str) -> Trial {
        let trial = Trial::of("fit/play").opening("hole", &format!("{{takes: range, width: {width}}}"));
        trial.selection("selection: It\nkind: range\nplace: hole", option)
    }

    /// Source: trade reports F-27: a field opening of 29 7/8" for a unit of 29 7/8" leaves no play.
    #[test]
    fn a_range_that_jams_is_a_query() {
        range("29 7/8\"", "size: {width: 29 7/8\"}")
            .finds("`It` goes into the opening `hole` with 0\" (0 mm) of play in all; 1/8\" (3.2 mm) is usual")
            .weighs("query");
        range("30\"", "size: {width: 29 7/8\"}").stays_silent();
    }

    #[test]
    fn the_sheets_own_play_counts_before_the_usual_one() {
        range("30\"", "size: {width: 29 7/8\"}\nfit: {play: 1/4\"}").finds_one();
        range("29 15/16\"", "size: {width: 29 7/8\"}\nfit: {play: 1/16\"}").stays_silent();
        range("29 15/16\"", "size: {width: 29 7/8\"}\nfit: {opening: {width: 29 15/16\"}}").stays_silent();
    }

    /// Source: facts of the trade: what is made by hand is made to its own measure.
    #[test]
    fn what_is_made_by_hand_wants_the_play_that_it_varies_by() {
        range("30\"", "size: {width: 29 7/8\"}\nvaries by: 1/4\"")
            .finds("`It` goes into the opening `hole` with 1/8\" (3.2 mm) of play in all; 1/4\" (6.4 mm) is what one may be larger than another");
        range("30 1/8\"", "size: {width: 29 7/8\"}\nvaries by: 1/4\"").stays_silent();
        range("30\"", "size: {width: 29 7/8\"}\nvaries by: 1/16\"").stays_silent();
    }

    #[test]
    fn what_hangs_on_its_wall_comes_in_from_the_front() {
        Trial::of("fit/play")
            .opening("gap", "{takes: hood, width: 600 mm}")
            .selection("selection: It\nkind: hood\nplace: gap", "size: {width: 598 mm}")
            .stays_silent();
    }

    #[test]
    fn what_does_not_fit_at_all_is_told_by_the_width_alone() {
        range("29\"", "size: {width: 29 7/8\"}").stays_silent();
    }

    #[test]
    fn each_option_is_asked_about_while_the_client_still_chooses() {
        range("30\"", "options:\n  - {id: tight, size: {width: 29 15/16\"}}\n  - {id: loose, size: {width: 29\"}}")
            .finds("option `tight`: `It` goes into the opening `hole` with 1/16\" (1.6 mm) of play in all; 1/8\" (3.2 mm) is usual");
    }
}
