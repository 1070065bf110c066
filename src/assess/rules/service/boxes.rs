//! Where switches and outlets are set.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::boxes::{Misplaced, SetBox, misplaced};
use crate::site::plan::Plan;
use crate::vocabulary::Hazard;

declare! {
    /// A switch or an outlet is where it can't be set, or where nobody should or can reach it
    ///
    /// ## What it checks
    /// The place of each of the room's `switches` and `outlets` by the plan: in a doorway or a window, in the trim around
    /// one that says how wide it is (`casing`), above the ceiling, in the wall of a tub or a shower within {90"} of the
    /// floor, behind what stands there (a switch behind anything, an outlet behind a tall unit that nothing is built
    /// into), in an upstand of {8"} or less behind a counter, in one place with another, or, of a switch, within {12"} of
    /// the jamb that a door hangs on which swings into the room. What touches at most passes.
    ///
    /// ## Why it matters
    /// The electrician sets boxes by the sheet, before tub, doors and cabinets are there.
    ///
    /// ## Remedy
    /// Move it, before the wall is closed; a licensed electrician says where the local code allows one near water.
    ///
    /// ## Example
    /// ```yaml
    /// outline: 10' x 8'
    /// fixtures: {tub: {takes: bathtub, wall: B, centre: 30", width: 60", depth: 32"}}
    /// switches: {bath switch: {wall: B, centre: 30", height: 46"}}
    /// ```
    ///
    /// ## Source
    /// The book's own figures; common practice.
    "service/boxes", Query,
    due: RoughInClosed, tells: [Installer],
    sources: ["the book's own figures", "common practice"],
    caution: Some(Hazard::Power),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for plan in context.site.plans().filter(|plan| plan.is_sound() && !plan.room.partly_unread) {
        findings.extend(misplaced(plan).iter().map(|(one, wrong)| told(context, plan, one, *wrong)));
    }
}

fn told(context: &Context<'_>, plan: &Plan<'_>, one: &SetBox<'_>, wrong: Misplaced<'_>) -> Remark {
    // What can't be there at all, and what nobody may reach from the water.
    let severity = match wrong {
        Misplaced::InAHole(..) | Misplaced::AboveTheCeiling(_) => Severity::Stop,
        // Of no height nobody knows whether it is reached.
        Misplaced::InTheWet(..) if one.height.is_some() => Severity::Stop,
        _ => Severity::Query,
    };
    let remark = Remark::new(severity, one.span, message(context, one, wrong)).remedy(remedy(wrong));
    let remark = remark.room(&plan.room.folder).part(one.name);
    match wrong {
        Misplaced::InAHole(name, at)
        | Misplaced::InACasing(name, at)
        | Misplaced::InTheWet(name, at)
        | Misplaced::Behind(name, at)
        | Misplaced::WithAnother(name, at)
        | Misplaced::BehindADoor(name, at) => remark.also(at, Phrase::name(name)),
        Misplaced::AboveTheCeiling(_) | Misplaced::InAnUpstand(..) => remark,
    }
}

fn message(context: &Context<'_>, one: &SetBox<'_>, wrong: Misplaced<'_>) -> Phrase {
    let (name, units) = (one.name, context.book.project.units);
    match wrong {
        Misplaced::InAHole(hole, _) => phrase!("`{name}` is set in the wall where `{}` is", name, hole),
        Misplaced::InACasing(hole, _) => phrase!("`{name}` is set in the casing of `{}`", name, hole),
        Misplaced::AboveTheCeiling(there) => {
            let high = say_room(one.height.unwrap_or(there), units);
            phrase!("`{name}` is set {} high, where the ceiling is {}", name, high, say_room(there, units))
        }
        Misplaced::InTheWet(wet, _) => {
            phrase!("`{name}` is set in the wall of `{}`, within reach of whoever is in it", name, wet)
        }
        Misplaced::Behind(thing, _) => phrase!("`{name}` is set behind `{}`, and can't be reached", name, thing),
        Misplaced::InAnUpstand(run, high) => {
            let high = say(high, units);
            phrase!("`{name}` is set in the upstand behind the counter of `{}`, {} high", name, run, high)
        }
        Misplaced::WithAnother(other, _) => phrase!("`{name}` and `{}` are set in one place", name, other),
        Misplaced::BehindADoor(door, _) => {
            phrase!("`{name}` is set on the side that `{}` hangs on, and is behind it when it stands open", name, door)
        }
    }
}

fn remedy(wrong: Misplaced<'_>) -> &'static str {
    match wrong {
        Misplaced::InAHole(..) => "correct its place, or that of the door or window",
        Misplaced::InACasing(..) => "move it clear of the casing before the box is set",
        Misplaced::AboveTheCeiling(_) => "correct its height, or its place under the slope",
        Misplaced::InTheWet(..) => {
            "move it out of reach of the tub or shower; a licensed electrician says how far the local code asks"
        }
        Misplaced::Behind(..) => {
            "move it beside what stands there; where it is meant to be inside, waive this and say why"
        }
        Misplaced::InAnUpstand(..) => "set it above the upstand, before the top is templated",
        Misplaced::WithAnother(..) => "move one of them, or make them one box with its `count`",
        Misplaced::BehindADoor(..) => "set it on the other side, or hang the door there",
    }
}

#[cfg(test)]
mod tests;
