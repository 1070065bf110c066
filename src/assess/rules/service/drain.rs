//! The drain at an opening against what the thing needs.

use super::asked;
use crate::assess::codes::metric::advised;
use crate::assess::codes::{BASIN_TRAP, Figure, Ruling, SINK_TRAP, WASHER_TRAP};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::units::Length;
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// The drain is smaller or higher than the thing needs
    ///
    /// ## What it checks
    /// The drain at the opening against the maker's sheet: its size at least the sheet's, its height at
    /// most the sheet's. Whatever the sheet says, the trap's least size by the plumbing code: 1 1/4" for a
    /// basin, 1 1/2" for a kitchen sink or a tub, 2" for a laundry trough or a washer's standpipe.
    ///
    /// ## Why it matters
    /// A drain that is too high leaves a deep sink without a fall, and a disposer without room.
    ///
    /// ## Remedy
    /// Have a plumber lower or change the drain before the wall is closed, or choose a shallower bowl.
    ///
    /// ## Example
    /// ```yaml
    /// service: {drain: "1 1/2\", 20\" AFF"}     # the sheet asks at most 16" AFF
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; IRC Table P3201.7 (trap sizes).
    "service/drain", Stop,
    due: RoughInClosed, tells: [Installer],
    sources: ["the maker's sheet", "IRC Table P3201.7"],
    caution: Some(Hazard::Water.caution()),
    remedy: "have a plumber lower or change the drain before the wall is closed",
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for asked in asked(context, |needs| &needs.drain, |service| &service.drain) {
        let Some(there) = asked.there else { continue };
        let say = |length| say(length, context.book.project.units);
        let name = &asked.fitted.selection.name.value;
        let (needs, has) = (asked.needs.is.pipe, there.is.pipe);
        let units = context.book.project.units;
        let smaller = needs.size.zip(has.size).filter(|(needs, has)| *has < advised(*needs, *has, units));
        let higher = needs.height.zip(has.height).filter(|(most, has)| needs.at_most && has > most);
        let fault = match (smaller, higher) {
            (Some((needs, has)), _) => {
                phrase!("`{name}` needs a {} drain, and there is one of {}", name, say(needs), say(has))
            }
            (None, Some((needs, has))) => phrase!(
                "the drain for `{name}` is {} above the finished floor, {} higher than its sheet allows",
                name,
                say(has),
                say(has - needs)
            ),
            (None, None) => continue,
        };
        findings.push(asked.finding(Severity::Stop, fault));
    }
    findings.extend(context.site.fitted().filter_map(|fitted| trap(context, &fitted)));
}

/// The trap's least size by the code.
fn trap(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let figure: &'static Figure = match fitted.selection.kind.get()? {
        Kind::Basin => &BASIN_TRAP,
        Kind::Sink | Kind::Bathtub => &SINK_TRAP,
        Kind::Washer => &WASHER_TRAP,
        _ => return None,
    };
    let there = fitted.opening.service.drain.spanned()?;
    let least: Ruling<Length> = context.rulings().length(figure)?;
    let units = context.book.project.units;
    // Pipes are named by a rounded size: what is 2" in inches is 50 mm in metric.
    let has = there.is.pipe.size.filter(|has| *has < advised(least.value, *has, units))?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the drain for `{}` is {}, less than the {} of the {}",
        fitted.selection.name.value,
        say(has),
        say(least.value),
        figure.name
    );
    Some(fitted.finding(least.severity, there.span, message).source(least.source))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn sink(there: &str, needs: &str) -> Trial {
        Trial::of("service/drain")
            .opening("hole", &format!("{{takes: sink, service: {{drain: '{there}'}}}}"))
            .selection("selection: Sink\nkind: sink\nplace: hole", &format!("fit: {{needs: {{drain: '{needs}'}}}}"))
    }

    /// Source: trade reports F-59 (drain too high for a deep bowl).
    #[test]
    fn a_drain_too_high_or_too_small_stops() {
        sink("1 1/2\", 20\" AFF", "1 1/2\", at most 16\" AFF")
            .finds("the drain for `Sink` is 20\" (508 mm) above the finished floor, 4\" (101.6 mm) higher than its sheet allows")
            .weighs("stop")
            .cautions();
        sink("1 1/2\", 16\" AFF", "1 1/2\", at most 16\" AFF").stays_silent();
        sink("1 1/2\"", "2\"").finds_one();
    }

    /// Source: check values IR-46: a kitchen sink on 1 1/4" fails.
    #[test]
    fn a_trap_under_the_code_s_least_is_asked_about_and_stops_where_the_code_is_adopted() {
        sink("1 1/4\"", "center").finds_one().weighs("query");
        sink("1 1/4\"", "center").book("codes: {adopts: [IRC 2021]}").finds_one().weighs("stop");
        sink("1 1/2\"", "center").stays_silent();
    }

    /// Source: nominal sizes of drain pipe, NPS 1 1/2 beside DN 40 and NPS 2 beside DN 50 (from memory).
    #[test]
    fn a_pipe_named_in_rounded_millimetres_is_the_one_named_in_inches() {
        let washer = |drain: &str| {
            Trial::of("service/drain")
                .book("codes: {adopts: [IRC 2021]}")
                .opening("hole", &format!("{{takes: washer, service: {{drain: {drain}}}}}"))
                .selection("selection: Washer\nkind: washer\nplace: hole", "fit: {needs: {drain: standpipe}}")
        };
        washer("50 mm standpipe").stays_silent();
        washer("40 mm standpipe").finds_one();
    }
}
