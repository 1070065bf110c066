//! What rises beside a cooking surface.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, near_heat, say, where_to_say_it_burns};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::fitting::Side;
use crate::site::heat::{DistanceSource, Hearth, Near, nearest};
use crate::vocabulary::Hazard;

declare! {
    /// What burns is nearer beside a cooking surface than it may be
    ///
    /// ## What it checks
    /// From the sides of a range or cooktop to the nearest of all that rises above its cooking surface:
    /// what stands at the `left` and `right` of the opening, tall units, panels, wall cabinets, appliances,
    /// walls and the casings of doors and windows of the plan. How high a thing at a side stands is its
    /// `top`, the plan, or the counter measured as `landing`, where its words name what stands under one: no word of a
    /// name makes it low, and where nobody says, it is asked. Whether it burns is its `material`; where nobody says, it counts as burning.
    /// The distance is that of the maker's sheet (`fit: {heat: {left: …, right: …, up to: …}}`, or air that
    /// the sheet asks for above the counter), which stops; else {6"}, up to {18"} above the cooking surface,
    /// which is only asked about.
    ///
    /// ## Why it matters
    /// A pan stands out past its burner, and its flame goes up at the side of it.
    ///
    /// ## Remedy
    /// Move the opening, put a base cabinet between, or clad what stands there as the code says. Where it
    /// does not burn, say so in its `material`; where it ends at the counter, write its `top`.
    ///
    /// ## Example
    /// ```yaml
    /// right: {what: pantry, gap: 1", top: 84"}     # 6" is usual
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; common practice for {6"} and {18"}. The maker's instructions
    /// govern.
    "clear/beside-cooktop", Query,
    due: CabinetsOrdered, tells: [Installer],
    judges: cooking,
    sources: ["the maker's sheet", "common practice"],
    caution: Some(Hazard::Heat),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let Some(hearth) = context.hearth(fitted) else { continue };
        let mut unsaid = Vec::new();
        for side in [Side::Left, Side::Right] {
            let near = hearth.beside(side);
            let Some(near) = nearest(&near).filter(|near| near.short().is_some()) else { continue };
            if near.may_be_lower {
                unsaid.push((side, near.clone()));
            } else {
                findings.extend(told(context, &hearth, side, near));
            }
        }
        // What could not be read may be the answer.
        if !fitted.room.partly_unread {
            findings.extend(ask(context, &hearth, &unsaid));
        }
    }
}

/// What is nearer than it may be.
fn told(context: &Context<'_>, hearth: &Hearth<'_>, side: Side, near: &Near<'_>) -> Option<Remark> {
    let short = near.short()?;
    let say = |length| say(length, context.book.project.units);
    let whose = match near.asked.whose {
        DistanceSource::Sheet | DistanceSource::SheetAbove => "its sheet's",
        DistanceSource::Figure => "the usual",
    };
    let unsaid = match near.burning {
        None => "; nobody says whether it burns, and so it counts as burning",
        Some(_) => "",
    };
    let message = phrase!(
        "{} is {} from the {} of the cooking surface of `{}` and rises above it, {} less than {whose} {}{unsaid}",
        near_heat(&near.body),
        say(near.distance),
        side.word(),
        hearth.fitted.selection.name.value,
        say(short),
        whose,
        say(near.asked.length),
        unsaid
    );
    let mut remedy =
        Phrase::from("move the opening, put a base cabinet between, or clad what stands there as the code says");
    if near.burning.is_none() {
        remedy =
            phrase!("say whether it burns: {}; where it does, {remedy}", where_to_say_it_burns(&near.body), remedy);
    }
    let at = near.body.span().unwrap_or(hearth.fitted.opening.span);
    let finding = hearth.fitted.finding(super::weight(&near.asked), at, message);
    Some(finding.remedy(remedy).source(near.asked.source.clone()))
}

/// Asks how high what stands at the sides is: one question, whether it is of one side or of both.
fn ask(context: &Context<'_>, hearth: &Hearth<'_>, unsaid: &[(Side, Near<'_>)]) -> Option<Remark> {
    let (first, near) = unsaid.first()?;
    let say = |length| say(length, context.book.project.units);
    let each = |(side, near): &(Side, Near<'_>)| {
        phrase!("{} at the {} ({} away)", near_heat(&near.body), side.word(), say(near.distance))
    };
    let there: Vec<Phrase> = unsaid.iter().map(each).collect();
    let sides: Vec<Phrase> = unsaid.iter().map(|(side, _)| phrase!("`{}`", side.word())).collect();
    let farthest = unsaid.iter().map(|(_, near)| near.asked.length).max()?;
    let message = phrase!(
        "nobody says how high {} of the cooking surface of `{}` stands; what rises above it and burns stays {} away",
        Phrase::series(there),
        hearth.fitted.selection.name.value,
        say(farthest)
    );
    let remedy = phrase!("add its `top` from the finished floor to the opening's {}", Phrase::series(sides));
    let at = near.body.span().unwrap_or(hearth.fitted.opening.span);
    let finding = hearth.fitted.finding(Severity::Query, at, message);
    let others = unsaid.iter().filter(|(side, _)| side != first);
    let finding =
        others.filter_map(|(_, near)| near.body.span()).fold(finding, |finding, at| finding.also(at, "here too"));
    Some(
        finding
            .remedy(phrase!("{remedy}, or its `material` where it does not burn", remedy))
            .source(near.asked.source.clone()),
    )
}

#[cfg(test)]
mod tests;
