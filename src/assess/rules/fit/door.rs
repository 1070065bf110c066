//! Doors and drawers: floor in front, and room to swing beside a wall.

#[cfg(test)]
mod tests;
mod unsaid;

use crate::assess::codes::metric;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, casing, say};
use crate::book::Hinge;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::{
    NeededBefore, Side, casing_beside, flank, floor_before, hinge_sides, may_stand_in_the_door_s_way,
    stands_in_the_door_s_way,
};
use crate::source::Span;
use crate::units::{Length, Wrote};
use crate::vocabulary::{Mention, Trait, words_of};

/// What a refrigerator usually needs to a wall at its hinges (trade reports F-11: 2" to 2 1/2").
const USUAL_AT_THE_WALL: Length = Length::from_sixty_fourths(160);

declare! {
    /// A door does not open: too little floor in front, or a wall at its hinges
    ///
    /// ## What it checks
    /// The clear floor in front of the opening against what the sheet asks for, and against the
    /// reach of door or drawer with what of the case stands out. Where the opening does not say what is `in front`,
    /// the plan does: what stands across, and the wall there, unless a door is in it. Where a sheet does not say how far
    /// the door of an oven, a dishwasher, a refrigerator or a washer opens, and such doors may need more floor than there is
    /// ({24"}, {28"}, the width of the thing), it asks. On the side of the hinges, the gap
    /// to a wall, or to anything that stands out past the opening's front, against the sheet's wall
    /// clearance: trim and baseboard are part of the wall, and so is the casing of a door or window in it. What
    /// stands there is as the opening says, else as its run and the plan have it, past fillers and panels, and as
    /// far out as the door of what is chosen there. Where a refrigerator's sheet gives none,
    /// less than {2 1/2"} is asked about. A door that can be hung either way needs one free side.
    /// Exactly as much as asked for passes.
    ///
    /// ## Why it matters
    /// A door that stops at ninety degrees traps the drawers inside for as long as the thing lasts.
    ///
    /// ## Remedy
    /// Add a filler on the hinge side, have the door hung on the other side, or move the opening.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   fridge: {takes: refrigerator, left: {what: wall, gap: 1"}}
    /// ```
    /// A refrigerator hinged at the left that needs {2 1/2"} to a wall cannot open its drawers here.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement; else common practice: {2 1/2"} at the wall.
    "fit/door", Stop,
    due: WithThing, tells: [Installer],
    judges: opens,
    sources: ["the maker's sheet", "the field measurement", "common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        findings.extend(in_front(context, &fitted).or_else(|| unsaid::reach(context, &fitted)));
        let (sides, one_is_enough) = hinge_sides(fitted.option);
        let struck: Vec<_> = sides.iter().filter_map(|side| at_the_hinges(context, &fitted, *side)).collect();
        if !one_is_enough {
            findings.extend(struck);
        } else if struck.len() == sides.len() {
            findings.extend(struck.into_iter().take(1));
        }
    }
}

fn in_front(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let door = fitted.option.fit.get()?.door.get()?;
    let reach = [&door.drops, &door.swings, &door.pulls].into_iter().filter_map(|reach| reach.get().copied()).max();
    let needed = NeededBefore { asked: door.in_front.get().copied(), reach };
    let plan = context.site.plan(fitted.room);
    let short = floor_before(plan, fitted.room, fitted.opening, fitted.option, needed)?;
    let message = phrase!(
        "{} of floor is clear in front of the opening `{}`, {} less than the {} needed to open it",
        say(short.there),
        fitted.opening.name.value,
        say(short.needed - short.there),
        say(short.needed)
    );
    let finding = fitted.finding(Severity::Stop, short.at, message);
    let finding = match short.met {
        Some((name, at)) => finding.also(at, Phrase::name(&name)),
        None => finding,
    };
    Some(finding.remedy("move what stands opposite, or choose a model that reaches less far"))
}

/// How far before its opening a door is looked for that nobody says the swing of (common practice).
const USUAL_SWING: Length = Length::from_inches(24);

/// From the edge of a cabinet's door to its pull (common practice: 1 1/2" to 2 1/2").
const PULL_FROM_ITS_EDGE: Length = Length::from_inches(2);

/// What stands at the hinges: its name, how far away, and where that is written.
struct Struck {
    what: Phrase,
    gap: Length,
    span: Span,
}

/// What the opening says stands there, where a door would strike it; else what its row or the plan says past fillers.
fn struck(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    side: Side,
    (needed, is_asked): (Length, bool),
) -> Option<Struck> {
    let said = side.of(fitted.opening).spanned();
    let by_words = said
        .filter(|said| !said.gap.is_faulty() && stands_in_the_door_s_way(said, fitted.room, fitted.opening))
        .map(|said| Struck {
            what: phrase!("`{}`", said.what),
            gap: said.gap.get().copied().unwrap_or(Length::ZERO),
            span: said.span,
        });
    let placed = || {
        let beside = flank(fitted.room, context.site.plan(fitted.room), fitted.opening, side)?;
        let what = beside.what;
        if beside.is_proud {
            return Some(Struck { what: phrase!("`{}`", what), gap: beside.gap, span: beside.span });
        }
        // Only where the sheet says how far its door comes round: else nobody knows whether it reaches the pull.
        let pull = is_asked && beside.pull_is_proud;
        let gap = beside.gap + PULL_FROM_ITS_EDGE;
        pull.then(|| Struck { what: phrase!("the pull of `{}`", what), gap, span: beside.span })
    };
    let at_the_wall_across = || {
        let plan = context.site.plan(fitted.room)?;
        let swings = fitted.option.fit.get().and_then(|fit| fit.door.get()?.swings.get().copied());
        let beside = casing_beside(plan, fitted.opening, side, swings.unwrap_or(USUAL_SWING))?;
        Some(Struck { what: casing(beside.of), gap: beside.gap, span: fitted.opening.span })
    };
    let near = |struck: &Struck| struck.gap < needed;
    // Where the opening itself says that it is free there, that was looked at.
    // A filler or a panel ends the run there, and not what stands past it.
    let is_said =
        said.is_some_and(|said| said.is_nothing() || !said.gap.is_absent() && !Mention::Closure.is_in(&said.what));
    let is_said = is_said && !said.is_some_and(|said| may_stand_in_the_door_s_way(said));
    let looked_up = || placed().into_iter().chain(at_the_wall_across()).min_by_key(|struck| struck.gap);
    by_words.filter(near).or_else(|| looked_up().filter(|struck| !is_said && near(struck)))
}

fn at_the_hinges(context: &Context<'_>, fitted: &Placement<'_>, side: Side) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let door = fitted.option.fit.get().and_then(|fit| fit.door.get());
    let asked = door.and_then(|door| door.wall_clearance.get().copied());
    let is_refrigerator = fitted.selection.has(Trait::Cools);
    let most = asked.or_else(|| is_refrigerator.then_some(USUAL_AT_THE_WALL))?;
    let Some(struck) = struck(context, fitted, side, (most, asked.is_some())) else {
        return unknown_beside(context, fitted, side, most);
    };
    let needed = asked.unwrap_or(metric::advised(USUAL_AT_THE_WALL, struck.gap, context.book.project.units));
    let (severity, whose) = match asked {
        Some(_) => (Severity::Stop, "that the maker's sheet asks for"),
        None => (Severity::Query, "that is usual"),
    };
    let angle = door.map_or("", |door| door.angle.text());
    let to_open = if angle.is_empty() { Phrase::default() } else { phrase!(" to open to {angle}", Wrote(angle)) };
    let message = phrase!(
        "{} is {} from the hinges at the {} of the opening `{}`, {} less than the {} {whose}{to_open}",
        struck.what,
        say(struck.gap),
        side.word(),
        fitted.opening.name.value,
        say(needed - struck.gap),
        say(needed),
        whose,
        to_open
    );
    let finding = || fitted.finding(severity, struck.span, message);
    let source = if asked.is_some() { "" } else { "common practice" };
    // With a door at each side there is no other side to hang one on.
    let remedy = match fitted.option.hinge.get() {
        Some(Hinge::Both) => "add a filler there, or choose one whose doors open in less",
        _ => "add a filler there, or have the door hung on the other side",
    };
    (struck.gap < needed).then(|| finding().source(source).remedy(remedy))
}

/// Something is told to stand nearer than the door wants, and neither a figure, nor a known word, nor the plan says
/// whether the door meets it.
fn unknown_beside(context: &Context<'_>, fitted: &Placement<'_>, side: Side, needed: Length) -> Option<Remark> {
    let said = side.of(fitted.opening).spanned().filter(|said| may_stand_in_the_door_s_way(said))?;
    let gap = said.gap.get().copied().filter(|gap| *gap < needed)?;
    // What the plan has there under the same name stands as far out as the plan says.
    let is_the_same = |planned: &str| words_of(planned).iter().any(|word| words_of(&said.what).contains(word));
    let planned = flank(fitted.room, context.site.plan(fitted.room), fitted.opening, side);
    let is_planned = planned.is_some_and(|planned| is_the_same(&planned.what));
    if is_planned || said.depth.is_faulty() {
        return None;
    }
    let message = phrase!(
        "`{}` is {} from the hinges at the {} of the opening `{}`, and nobody says how far it stands out",
        said.what,
        say(gap, context.book.project.units),
        side.word(),
        fitted.opening.name.value
    );
    let remedy = phrase!(
        "measure it from the wall behind and add it at the opening, `{side}: {{what: …, depth: …}}`; of a wall, write \
         `wall`",
        side.word()
    );
    Some(fitted.finding(Severity::Query, said.span, message).remedy(remedy))
}
