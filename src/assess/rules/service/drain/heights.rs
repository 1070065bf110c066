//! How high a drain is, or a standpipe ends.

use crate::assess::rules::service::ServiceNeed;
use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::site::outlets::height_of_the_drain;
use crate::site::{Placement, counter_height};
use crate::units::{Length, LengthRange, Wrote};
use crate::vocabulary::Kind;
use crate::vocabulary::supply::{Drain, DrainWay};

/// A drain, or the end of a standpipe, that is higher or lower than the sheet allows, or of which nobody says how high
/// it is.
pub(super) fn at_another(context: &Context<'_>, asked: &ServiceNeed<'_, Drain>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let name = &asked.fitted.selection.name.value;
    let Some(limits) = asked.needs.is.pipe.limits else { return above_the_sheet_s(context, asked) };
    let Some((has, at)) = height_of_the_drain(asked.fitted.opening) else {
        if is_looped_high_enough(asked, limits) {
            return None;
        }
        // What is told to be within limits of its own is no figure to compare.
        let message = phrase!(
            "the sheet of `{name}` says how high its drain may be ({}), and nobody says how high it is at the opening `{}`",
            name,
            Wrote(&asked.needs.words),
            asked.fitted.opening.name.value
        );
        let remedy = "measure it from the finished floor and add it to the opening's `drain`: `… AFF`";
        return Some(asked.finding(Severity::Query, message).remedy(remedy));
    };
    let higher = limits.most.filter(|most| has > *most);
    let lower = limits.least.filter(|least| has < *least);
    let message = match (higher, lower) {
        (Some(most), _) => phrase!(
            "the drain for `{name}` is {} above the finished floor, {} higher than its sheet allows",
            name,
            say(has),
            say(has - most)
        ),
        (None, Some(least)) => phrase!(
            "the drain for `{name}` is {} above the finished floor, {} lower than its sheet allows",
            name,
            say(has),
            say(least - has)
        ),
        (None, None) => return None,
    };
    let finding = asked.fitted.finding(Severity::Stop, at, message).also(asked.needs.span, "needs this");
    Some(if lower.is_some() { finding.remedy(RAISED) } else { finding })
}

/// What a hose that is led up to the underside of a counter stays below its top: the counter, and its bend (common practice).
const BELOW_THE_TOP: Length = Length::from_millimetres(150);

/// A hose that is looped up under its counter is as high as that is, which is all that a sheet asks that has a least height
/// for it.
fn is_looped_high_enough(asked: &ServiceNeed<'_, Drain>, limits: LengthRange) -> bool {
    let is_looped = asked.there.is_some_and(|there| there.is.ways.names(DrainWay::HighLoop));
    let top = counter_height(asked.fitted.room, asked.fitted.opening).value();
    let is_high = |top: Length| limits.least.is_some_and(|least| least + BELOW_THE_TOP <= top);
    is_looped && limits.most.is_none_or(|most| top.is_some_and(|top| most >= top)) && top.is_some_and(is_high)
}

/// How much higher than the one height that a sheet names a drain may be (common practice: what a trap's inlet slides).
const SLIDES: Length = Length::from_inches(1);

/// A drain that is higher than the one height that the sheet names. A toilet's is held to its outlet by `fit/rough-in`.
fn above_the_sheet_s(context: &Context<'_>, asked: &ServiceNeed<'_, Drain>) -> Option<Remark> {
    let wants = asked.needs.is.pipe.height.filter(|_| !asked.fitted.selection.is(Kind::Toilet))?;
    let (has, at) = height_of_the_drain(asked.fitted.opening).filter(|(has, _)| *has > wants + SLIDES)?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the drain for `{}` is {} above the finished floor, where its sheet has it at {}",
        asked.fitted.selection.name.value,
        say(has),
        say(wants)
    );
    Some(
        asked
            .fitted
            .finding(Severity::Query, at, message)
            .also(asked.needs.span, "needs this")
            .source("common practice"),
    )
}

const RAISED: &str =
    "have a plumber raise the drain before the wall is closed: too low, it lets a machine empty itself";

/// A washer's standpipe that ends too near to its trap, or too far above it.
pub(super) fn above_its_trap(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let there = fitted.opening.service.drain.spanned()?;
    let above = there.is.above_trap.filter(|_| fitted.selection.is(Kind::Washer))?;
    let (least, most) = STANDPIPE;
    if (least..=most).contains(&above) {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the standpipe for `{}` ends {} above its trap, where {} to {} are usual",
        fitted.selection.name.value,
        say(above),
        say(least),
        say(most)
    );
    let finding = fitted.finding(Severity::Query, there.span, message).source("IRC P2706.1.2 (from memory)");
    Some(finding.remedy("have a plumber make it as long as the code and the machine's sheet ask"))
}

/// How far a standpipe ends above the weir of its trap (IRC P2706.1.2, from memory).
const STANDPIPE: (Length, Length) = (Length::from_inches(18), Length::from_inches(42));

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: the maker's sheet (1 1/4" at 18" AFF).
    #[test]
    fn a_drain_is_no_higher_than_the_one_height_of_its_sheet() {
        let basin = |there: &str, needs: &str| {
            Trial::of("service/drain")
                .opening("hole", &format!("{{takes: basin, service: {{drain: '{there}'}}}}"))
                .selection(
                    "selection: Basin\nkind: basin\nplace: hole",
                    &format!("fit: {{needs: {{drain: '{needs}'}}}}"),
                )
        };
        basin("1 1/4\" trap, 26\" AFF", "1 1/4\", 18\" AFF")
            .finds("the drain for `Basin` is 26\" (660 mm) above the finished floor, where its sheet has it at 18\" (457 mm)")
            .weighs("query")
            .cautions();
        basin("DN 40, 560 mm über OKFF", "DN 40, 450 mm über OKFF").finds_one();
        basin("1 1/4\" trap, 18 1/2\" AFF", "1 1/4\", 18\" AFF").stays_silent();
        basin("1 1/4\" trap, 16\" AFF", "1 1/4\", 18\" AFF").stays_silent();
    }

    /// Source: the maker's sheet; that a loop goes up to the underside of the counter is common practice.
    #[test]
    fn a_hose_looped_up_under_its_counter_is_as_high_as_that() {
        let dishwasher = |there: &str, needs: &str| {
            Trial::of("service/drain").opening("hole", &format!("{{takes: dishwasher, {there}}}")).selection(
                "selection: It\nkind: dishwasher\nplace: hole",
                &format!("fit: {{needs: {{drain: '{needs}'}}}}"),
            )
        };
        let looped = "counter height: 910 mm, service: {drain: 'looped up under the worktop'}";
        dishwasher(looped, "looped at least 600 mm AFFL").stays_silent();
        dishwasher(looped, "looped at least 850 mm AFFL").finds_one().weighs("query");
        dishwasher("service: {drain: 'looped up under the worktop'}", "looped at least 600 mm AFFL").finds_one();
        dishwasher("counter height: 910 mm, service: {drain: 'hose at the trap'}", "looped at least 600 mm AFFL")
            .finds_one();
    }

    /// Source: the maker's sheet; IRC P2706.1.2 for what stands above a trap (from memory).
    #[test]
    fn a_standpipe_is_neither_too_low_nor_too_high() {
        let washer = |there: &str, needs: &str| {
            Trial::of("service/drain").opening("hole", &format!("{{takes: washer, {there}}}")).selection(
                "selection: Washer\nkind: washer\nplace: hole",
                &format!("fit: {{needs: {{drain: '{needs}'}}}}"),
            )
        };
        let words = |there: &str, needs: &str| washer(&format!("service: {{drain: '{there}'}}"), needs);
        words("2\" standpipe, 20\" AFF", "standpipe, at least 30\" AFF")
            .finds("the drain for `Washer` is 20\" (508 mm) above the finished floor, 10\" (254 mm) lower than its sheet allows")
            .weighs("stop")
            .cautions();
        for needs in ["standpipe, 30\" to 42\" AFF", "standpipe, between 30\" and 42\" above the floor", "30-42\" AFF"]
        {
            words("2\" standpipe, 20\" AFF", needs).finds_one();
            words("2\" standpipe, 60\" AFF", needs).finds_one();
            words("2\" standpipe, 36\" AFF", needs).stays_silent();
        }
        washer(
            "service: {drain: '2\" standpipe'}, service points: {drain: {height: 20\"}}",
            "standpipe, at least 30\" AFF",
        )
        .finds_one();
        washer(
            "service: {drain: '2\" standpipe'}, service points: {drain: {height: 34\"}}",
            "standpipe, at least 30\" AFF",
        )
        .stays_silent();
        words("2\" standpipe", "standpipe, 30\" to 42\" AFF").finds_one().weighs("query");
        words("50 mm standpipe, 700 mm AFF", "standpipe, 600 mm to 1000 mm AFF").stays_silent();
        words("2\" standpipe, 12\" above its trap", "standpipe").finds_one().weighs("query");
        words("2\" standpipe, 30\" above its trap", "standpipe").stays_silent();
    }
}
