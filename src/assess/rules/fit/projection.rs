//! How far the chosen thing stands out past the counter or the cabinets.

use crate::assess::fitting::fitting;
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::finding::{Finding, Severity};
use crate::units::Length;

/// How far out is no surprise: 1" (common practice).
const USUAL: Length = Length::from_inches(1);

declare! {
    /// The thing stands out past the counter or the cabinets
    ///
    /// ## What it checks
    /// Case, door and handle, with the air that the sheet wants behind, against the counter's front
    /// edge, or the opening's own where no counter is beside it. More than 1" is asked about. For
    /// what is fixed with its front on the cabinet, what stands before the case counts.
    ///
    /// ## Why it matters
    /// A refrigerator of the same width and two inches deeper blocks the aisle, and the dishwasher
    /// across the corner no longer opens. On a drawing it is a line; in the room it is a shoulder.
    ///
    /// ## Remedy
    /// Tell the client how far it stands out, or choose a shallower model or a deeper recess.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   fridge: {takes: refrigerator, counter depth: 25 1/2"}
    /// ```
    /// A refrigerator 29 5/8" deep with its handle, with 1" behind it, stands 5 1/8" out.
    ///
    /// ## Source
    /// Common practice: an inch is no surprise.
    "fit/projection", Query,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    findings.extend(context.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let out = fitting(fitted.room, fitted.opening, fitted.option).projection.filter(|out| *out > USUAL)?;
    let size = &fitted.option.size;
    let part = if size.depth_with_handle.get().is_some() {
        "with its handle it"
    } else if size.depth_with_door.get().is_some() {
        "with its door it"
    } else {
        "it"
    };
    let edge = if fitted.opening.counter_depth.get().is_some() { "the counter" } else { "the front of its opening" };
    let message = format!("{part} stands {} proud of {edge}", say(out, context.book.project.units));
    let at = [&size.depth_with_handle, &size.depth_with_door, &size.depth].into_iter().find_map(|depth| depth.span());
    let finding = fitted.finding(RULE.code, Severity::Query, at.unwrap_or(fitted.opening.span), message);
    Some(
        finding
            .source("common practice")
            .remedy("agree it with the client, or choose a shallower model or a deeper recess"),
    )
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn fridge(opening: &str, option: &str) -> Trial {
        Trial::of("fit/projection")
            .opening("fridge", &format!("{{takes: refrigerator, {opening}}}"))
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", option)
    }

    /// Source: trade.md section 4 ("sticks out 5 past counter"), F-07 (a full-depth unit), section 6
    /// (freestanding: 1" to 2" at the rear, 27 1/2" to 31" in all).
    #[test]
    fn a_full_depth_refrigerator_is_said_to_stand_out_and_by_how_much() {
        fridge("counter depth: 25 1/2\"", "size: {depth: 26\", depth with handle: 29 5/8\"}\nfit: {air: {back: 1\"}}")
            .finds("with its handle it stands 5 1/8\" (≈ 130.2 mm) proud of the counter")
            .weighs("query");
        fridge("depth: 24\"", "size: {depth: 29\"}").finds("it stands 5\" (127 mm) proud of the front of its opening");
    }

    #[test]
    fn an_inch_is_no_surprise() {
        fridge("counter depth: 25 1/2\"", "size: {depth with door: 26 1/2\"}").is_silent();
        fridge("counter depth: 25 1/2\"", "size: {depth with door: 26 17/32\"}").finds_one();
    }

    #[test]
    fn a_front_that_sits_on_the_cabinet_stands_out_by_what_is_before_the_case() {
        let sizes = "size: {depth: 23 1/2\", depth with handle: 25 7/8\"}\nfit: {face: {width: 30\"}}";
        fridge("depth: 25\"", sizes)
            .finds("with its handle it stands 2 3/8\" (≈ 60.3 mm) proud of the front of its opening");
    }

    #[test]
    fn what_is_let_into_a_counter_from_above_stands_out_of_nothing() {
        Trial::of("fit/projection")
            .opening("hob", "{takes: cooktop, depth: 19\"}")
            .selection("selection: Cooktop\nkind: cooktop\nplace: hob", "size: {depth: 21\"}")
            .is_silent();
    }

    #[test]
    fn each_option_is_asked_about_while_the_client_still_chooses() {
        let two = "options:\n  - {id: deep, size: {depth: 29\"}}\n  - {id: slim, size: {depth: 24\"}}";
        fridge("depth: 24\"", two).finds("option `deep`: it stands 5\" (127 mm) proud of the front of its opening");
    }
}
