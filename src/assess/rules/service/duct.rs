//! The duct at an opening against what the thing needs.

use super::{Asked, asked};
use crate::assess::codes::DRYER_DUCT;
use crate::assess::rules::{Check, declare};
use crate::assess::supply::Pipe;
use crate::assess::{Context, say};
use crate::finding::{Finding, Severity};
use crate::units::Length;
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// The duct is narrower or longer than the thing allows
    ///
    /// ## What it checks
    /// The duct's size against the maker's sheet (a reduction anywhere chokes the fan), and its length
    /// against the most that the sheet allows. Where a dryer's sheet names no length, the code's 35 ft
    /// count, less 5 ft for each tight bend of 90° and 2 1/2 ft for each of 45°.
    ///
    /// ## Why it matters
    /// A choked hood is loud and leaves the smoke; a long dryer duct fills with lint and burns.
    ///
    /// ## Remedy
    /// Plan a larger or shorter duct while the framing is open, or choose a fan for this one.
    ///
    /// ## Example
    /// ```yaml
    /// service: {duct: "6\" round, 20 ft"}     # the sheet asks 8"
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; IRC M1502.4.6 (35 ft; 25 ft before 2009).
    "service/duct", Stop,
    due: RoughInClosed, tells: [Installer],
    sources: ["the maker's sheet", "IRC M1502.4.6"],
    caution: Some(Hazard::Air.caution()),
    Check::Book(check)
}

const REMEDY: &str = "plan a larger or shorter duct while the framing is open, or choose a fan for this one";

/// What a tight bend of 90° takes off a dryer's duct (IRC M1502.4.6).
const BEND: Length = Length::from_inches(60);
/// What a bend of 45° takes off it.
const HALF_BEND: Length = Length::from_inches(30);

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for asked in asked(context, |needs| &needs.duct, |service| &service.duct) {
        findings.extend(judge(context, &asked));
    }
}

fn judge(context: &Context<'_>, asked: &Asked<'_>) -> Option<Finding> {
    let there = asked.there?;
    let say = |length| say(length, context.book.project.units);
    let name = &asked.fitted.selection.name.value;
    let (needs, has) = (Pipe::read(&asked.needs.value), Pipe::read(&there.value));
    if let Some((wants, is)) = needs.size.zip(has.size).filter(|(wants, is)| is < wants) {
        let message = format!("`{name}` needs a {} duct, and there is one of {}", say(wants), say(is));
        return Some(asked.finding(RULE.code, Severity::Stop, message).remedy(REMEDY));
    }
    let run = has.run?;
    if let Some(most) = needs.run {
        let message =
            || format!("the duct of `{name}` is {} long, {} more than its sheet allows", say(run), say(run - most));
        return (run > most).then(|| asked.finding(RULE.code, Severity::Stop, message()).remedy(REMEDY));
    }
    if !asked.fitted.selection.is(Kind::Dryer) {
        return None;
    }
    let whole = context.rulings().length(&DRYER_DUCT)?;
    let off = BEND.times(i64::from(has.bends)) + HALF_BEND.times(i64::from(has.half_bends));
    let most = whole.value - off;
    let message = || {
        let with = if off > Length::ZERO { " with its bends" } else { "" };
        format!(
            "the duct of `{name}` is {} long, {} more than the {} that the code allows{with}",
            say(run),
            say(run - most),
            say(most)
        )
    };
    (run > most)
        .then(|| asked.finding(RULE.code, whole.severity, message()).remedy(REMEDY).source(whole.source.clone()))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn thing(kind: &str, there: &str, needs: &str) -> Trial {
        Trial::of("service/duct")
            .opening("hole", &format!("{{takes: {kind}, service: {{duct: '{there}'}}}}"))
            .selection(
                &format!("selection: It\nkind: {kind}\nplace: hole"),
                &format!("fit: {{needs: {{duct: '{needs}'}}}}"),
            )
    }

    /// Source: trade reports section 7 (duct: 6" up to 400 cfm, 8" beyond; at most 30 ft).
    #[test]
    fn a_duct_that_is_narrower_or_longer_than_the_sheet_allows_stops() {
        thing("hood", "6\" round, 10 ft", "8\" round, at most 30 ft")
            .finds("`It` needs a 8\" (203.2 mm) duct, and there is one of 6\" (152.4 mm)")
            .weighs("stop")
            .cautions();
        thing("hood", "8\" round, 31 ft", "8\" round, at most 30 ft").finds_one();
        thing("hood", "8\" round, 30 ft", "8\" round, at most 30 ft").stays_silent();
    }

    /// Source: check values IR-48: two bends of 90° and one of 45° leave 22 1/2 ft; three of 90° leave 20 ft.
    #[test]
    fn bends_take_off_what_a_dryer_s_duct_may_be_long() {
        thing("dryer", "4\" rigid, 23 ft, two elbows, one bend of 45", "4\" rigid").finds_one().weighs("query");
        thing("dryer", "4\" rigid, 22 ft, two elbows, one bend of 45", "4\" rigid").stays_silent();
        thing("dryer", "4\" rigid, 20 ft, three elbows", "4\" rigid").stays_silent();
        thing("dryer", "4\" rigid, 21 ft, three elbows", "4\" rigid").finds_one();
        thing("dryer", "4\" rigid, 36 ft", "4\" rigid").book("codes: {adopts: [IRC 2018]}").finds_one().weighs("stop");
        thing("dryer", "4\" rigid, 35 ft", "4\" rigid").stays_silent();
    }
}
