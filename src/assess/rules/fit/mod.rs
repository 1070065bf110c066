//! The `fit/` rules, and how what is too small or too large is told.

pub mod air;
pub mod below;
pub mod cabinet;
pub mod clash;
pub mod depth;
pub mod door;
pub mod face;
pub mod height;
pub mod holes;
pub mod length;
pub mod pair;
pub mod panel;
pub mod play;
pub mod projection;
pub mod reach;
pub mod recess;
pub mod rough_in;
pub mod sink;
pub mod square;
pub mod stand_up;
pub mod way_in;
pub mod width;

use crate::assess::{Context, say};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::DimensionCheck;
use crate::units::Length;

/// The words for one direction of an opening.
struct Direction {
    /// After the figure: `wide`, `high`, and what is to be known of it.
    word: Phrase,
    /// How to mend what is too small.
    too_small: &'static str,
    /// How to mend what is too large.
    too_large: &'static str,
}

const MORE_THAN_ITS_FIGURE: &str = "look at the sheet for the most that it allows, and write both ends: `… to …`; where it is \
    seen, have the opening made smaller or a filler set";

/// Tells an opening that is too small or too large in one direction.
fn tell(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    gauge: &DimensionCheck,
    direction: &Direction,
) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let is = phrase!("the opening `{}` is {} {}", fitted.opening.name.value, say(gauge.there?), direction.word);
    let at = gauge.there_at.unwrap_or(fitted.opening.span);
    if let Some(short) = gauge.too_small_by() {
        let message = phrase!("{is}, {} less than the {} needed", is, say(short), say(gauge.least()?));
        let finding = fitted.finding(Severity::Stop, at, message).remedy(direction.too_small);
        let asked = gauge.asked.and_then(|asked| asked.least);
        // What governs is pointed at: the thing itself, where it needs more than its sheet asks.
        let by_sheet = asked.is_some() && asked == gauge.least();
        let needs = if by_sheet { gauge.asked_at } else { gauge.body_at.or(gauge.asked_at) };
        return Some(needs.map_or(finding.clone(), |span| finding.also(span, "needs this")));
    }
    if let Some(over) = gauge.body_is_larger_by() {
        return hidden(context, fitted, gauge, (over, direction));
    }
    let most = say(gauge.at_most()?);
    let is = phrase!("the opening `{}` is {most} {}", fitted.opening.name.value, most, direction.word);
    if let Some(over) = gauge.wider_than_its_figure_by() {
        let figure = say(gauge.asked?.most?);
        let message = phrase!("{is}, {} more than the {} of the maker's sheet", is, say(over), figure);
        let finding = fitted.finding(Severity::Query, gauge.largest_at.unwrap_or(at), message);
        return Some(finding.remedy(MORE_THAN_ITS_FIGURE));
    }
    let message = phrase!("{is}, {} more than the maker's sheet allows", is, say(gauge.too_large_by()?));
    // The reading that governs is pointed at.
    let at = gauge.largest_at.unwrap_or(at);
    Some(fitted.finding(Severity::Stop, at, message).remedy(direction.too_large))
}

/// The sheet asks for a hole that the body, with its air, does not go into: the larger of both counts, and the sheet is
/// asked.
fn hidden(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    gauge: &DimensionCheck,
    (over, direction): (Length, &Direction),
) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let needs = gauge.body? + gauge.air;
    let with = if gauge.air > Length::ZERO { " with its air" } else { "" };
    let message = phrase!(
        "`{}`{with} is {} {}, {} more than the opening `{}`, though its sheet asks for an opening that is no larger",
        fitted.selection.name.value,
        with,
        say(needs),
        direction.word,
        say(over),
        fitted.opening.name.value
    );
    let at = gauge.body_at.unwrap_or(fitted.opening.span);
    let finding = fitted.finding(Severity::Query, at, message);
    let finding = gauge.asked_at.map_or(finding.clone(), |span| finding.also(span, "its sheet's opening"));
    Some(finding.remedy(
        "look at its sheet again, or ask its maker which of the two holds: `size` is the case alone; its door and handle \
         belong in `depth with door` and `depth with handle`, its front in `face`",
    ))
}
