//! How far a thing stands out.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::counter_depth;
use crate::site::fitting::{fitting, setting};
use crate::units::Length;

declare! {
    /// The thing stands out past the counter, or past the front of its opening
    ///
    /// ## What it checks
    /// The depth with door and handle (with the door, or of the case, where that is all that is
    /// known; with its front panel) and the air behind it, against the counter's edge, or the opening's own depth. More
    /// than 1 1/2" is a query.
    ///
    /// ## Why it matters
    /// "Counter-depth" is a word of the shop. A hand's breadth past the counter narrows the aisle,
    /// and is the first thing that the household sees.
    ///
    /// ## Remedy
    /// Choose a shallower model, recess the outlet behind it, or show the client how far it stands
    /// out and waive this.
    ///
    /// ## Example
    /// ```yaml
    /// counter depth: 25 1/2"     # and a refrigerator 30 5/8" deep with its handle
    /// ```
    ///
    /// ## Source
    /// The maker's sheet: counter-depth units have doors and handles past the counter. 1 1/2" (38 mm)
    /// for a handle is common practice.
    "fit/projection", Query,
    due: WithThing, tells: [Installer],
    sources: ["common practice: 1 1/2 in for a handle"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.site.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    // What is meant to be flush is told by its depth; what is meant to stand out is meant.
    if setting(fitted.opening, fitted.option).is_some() {
        return None;
    }
    let out = fitting(context.site.plan(fitted.room), fitted.room, fitted.opening, fitted.option)
        .projection
        .filter(|out| *out > HANDLE)?;
    let counter = counter_depth(fitted.room, fitted.opening);
    let edge = if counter.best().is_some() { "counter" } else { "front of its opening" };
    let size = &fitted.option.size;
    let spans = [size.depth_with_handle.span(), size.depth_with_door.span(), size.depth.span()];
    let at = spans.into_iter().flatten().next().unwrap_or(fitted.option.span);
    let message = phrase!("`{}` stands {} proud of the {edge}", fitted.selection.name.value, say(out), edge);
    let finding = fitted.finding(Severity::Query, at, message).also(fitted.opening.span, "the opening");
    Some(
        finding
            .remedy("choose a shallower model, or show it to those who decide and waive this")
            .source("common practice"),
    )
}

/// What a handle usually stands out: 1 1/2 in (common practice).
const HANDLE: Length = Length::from_sixty_fourths(96);

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade reports F-08; look: a refrigerator 30 5/8" deep with its handle at a 25 1/2" counter.
    #[test]
    fn a_refrigerator_a_hands_breadth_past_the_counter_is_a_query() {
        let fridge = |depth: &str| {
            let trial = Trial::of("fit/projection").opening("hole", "{takes: refrigerator, counter depth: 25 1/2\"}");
            trial.selection(
                "selection: Fridge\nkind: refrigerator\nplace: hole",
                &format!("size: {{depth with handle: {depth}}}"),
            )
        };
        fridge("30 5/8\"").finds("`Fridge` stands 5 1/8\" (≈ 130.2 mm) proud of the counter").weighs("query");
        fridge("27\"").stays_silent();
    }

    #[test]
    fn a_handle_is_no_surprise_and_each_option_still_open_is_judged() {
        let two = "options:\n  - {id: deep, size: {depth: 25 17/32\"}}\n  - {id: slim, size: {depth: 25 1/2\"}}";
        Trial::of("fit/projection")
            .opening("hole", "{takes: refrigerator, depth: 24\"}")
            .selection("selection: Fridge\nkind: refrigerator\nplace: hole", two)
            .finds("option `deep`: `Fridge` stands 1 17/32\" (≈ 38.9 mm) proud of the front of its opening");
    }

    /// Source: trade reports section 6 (wall oven 23 1/2" deep): behind its front it goes in, whatever is left there.
    #[test]
    fn a_front_that_sits_on_the_cabinet_stands_out_by_what_is_before_the_case() {
        Trial::of("fit/projection")
            .opening("hole", "{takes: wall oven, depth: 25\"}")
            .selection(
                "selection: Oven\nkind: wall oven\nplace: hole",
                "size: {depth: 23 1/2\", depth with handle: 25 7/8\"}\nfit: {face: {width: 30\"}}",
            )
            .finds("`Oven` stands 2 3/8\" (≈ 60.3 mm) proud of the front of its opening");
    }

    #[test]
    fn what_is_let_into_a_counter_from_above_stands_out_of_nothing() {
        Trial::of("fit/projection")
            .opening("hob", "{takes: cooktop, depth: 19\"}")
            .selection("selection: Cooktop\nkind: cooktop\nplace: hob", "size: {depth: 21\"}")
            .stays_silent();
    }
}
