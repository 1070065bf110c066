//! The chosen thing's height against its opening.

mod below_its_counter;
mod level;

use super::{Direction, tell};
use crate::assess::rules::run::ceiling;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::Placement;
use crate::site::fitting::{AboveIs, Stack};
use crate::units::Length;

declare! {
    /// The thing is higher than its opening, or the opening higher than its sheet allows
    ///
    /// ## What it checks
    /// The least height of the opening from the finished floor (what is still to be laid is taken
    /// off where it was measured from the present floor; the lower edge of what hangs above, by the opening or
    /// by the plan, the underside of the counter that it stands under and the ceiling there count too) against the height that the maker's sheet asks for, and against the thing's own least
    /// height, its hinge cap included, with the air that the sheet wants above it. A single figure
    /// of the sheet is the least for what stands on the floor. Of two that are stacked (a `pair` of which
    /// one begins above the other, or what is `above` by its opening's name) one has what the other and
    /// the kit leave of both: the floor is taken off once. Where the opening has no height, a range is held to the
    /// counter beside it, and what a cabinet holds to what that leaves. The top of a range that stays more than {1/4"} below its
    /// counter is asked about, and so is an opening that is farther out of level than the legs can be set.
    ///
    /// ## Why it matters
    /// A new floor takes the height away that a dishwasher needs. A refrigerator is as high as its
    /// hinge cap, not as its door.
    ///
    /// ## Remedy
    /// Choose a lower model, have the opening raised or the floor stop short with the maker's
    /// consent, and measure again from the finished floor.
    ///
    /// ## Example
    /// ```yaml
    /// floor build-up: 1 1/2"
    /// openings:
    ///   dishwasher: {takes: dishwasher, height: 34 1/2"}     # 33" when the tile is laid
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement.
    "fit/height", Stop,
    due: WithThing, tells: [Installer],
    judges: placed,
    sources: ["the maker's sheet", "the field measurement"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.site.fitted().filter_map(|fitted| {
        let told = judge(context, &fitted).or_else(|| below_its_counter::judge(context, &fitted));
        told.or_else(|| level::judge(context, &fitted))
    }));
}

fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    // Of two that may be stacked neither is judged where the place of the other could not be read.
    let paired = fitted.opening.pair.get().into_iter().flat_map(|name| fitted.room.openings_called(name));
    let mut joined = paired.chain(fitted.room.openings_naming(&fitted.opening.name));
    if joined.any(|other| other.height.is_faulty() || other.sill.is_faulty()) {
        return None;
    }
    let stack =
        Stack::of(fitted.room, fitted.opening).filter(|stack| stack.left_for(fitted.room, fitted.opening).is_some());
    // Two that are stacked have one height between them: it is told at the lower one.
    if stack.is_some_and(|stack| !stack.is_lower(fitted.opening) && stack.left_for(fitted.room, stack.lower).is_some())
    {
        return None;
    }
    let fitting = context.site.fitting(fitted);
    // What reaches past the ceiling itself, its air left out, is told by `run/ceiling`.
    let at_the_ceiling = fitting.under.as_ref().is_some_and(|above| above.is == AboveIs::Ceiling);
    if at_the_ceiling && stack.is_none() && ceiling::stops(context, fitted.room, fitted.selection) {
        return None;
    }
    let laid = Some(fitting.to_lay).filter(|to_lay| *to_lay > Length::ZERO);
    let over = match stack {
        Some(stack) => Some(phrase!("`{}`", stack.upper.name.value)),
        None => fitting.under.as_ref().and_then(|above| ends_under(&above.is)),
    };
    let under = over.map_or(Phrase::default(), |over| phrase!(" under {over}", over));
    let once = |to_lay| phrase!("high{under} once {} of floor is laid", under, say(to_lay, context.book.project.units));
    let direction = Direction {
        word: laid.map_or_else(|| phrase!("high{under}", under), once),
        too_small: "choose a lower model, or have the opening raised and measured again from the finished floor",
        too_large: "order the maker's filler or trim, or have the opening made lower",
    };
    tell(context, fitted, &fitting.height, &direction)
}

/// What ends the height from above, where the opening itself does not say.
fn ends_under(is: &AboveIs) -> Option<Phrase> {
    match is {
        AboveIs::Said => None,
        AboveIs::Hung(name) | AboveIs::Counter(name) => Some(phrase!("`{}`", name)),
        AboveIs::Ceiling => Some(Phrase::from("the ceiling")),
    }
}

#[cfg(test)]
mod tests;
