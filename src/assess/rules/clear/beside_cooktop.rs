//! What rises beside a cooking surface.

use crate::assess::fitting::Side;
use crate::assess::heat::{Hearth, Near, Whose, nearest};
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, say};
use crate::book::vocabulary::Hazard;
use crate::finding::Finding;

declare! {
    /// What burns is nearer beside a cooking surface than it may be
    ///
    /// ## What it checks
    /// From the sides of a range or cooktop to the nearest of all that rises above its cooking surface:
    /// what stands at the `left` and `right` of the opening, tall units, panels, wall cabinets, appliances
    /// and walls of the plan. Whether it burns is its `material`; where nobody says, it counts as burning.
    /// The distance is that of the maker's sheet (`fit: {heat: {left: …, right: …, up to: …}}`, or air that
    /// the sheet asks for above the counter), which stops; else 6", up to 18" above the cooking surface,
    /// which is only asked about.
    ///
    /// ## Why it matters
    /// A pan stands out past its burner, and its flame goes up at the side of it.
    ///
    /// ## Remedy
    /// Move the opening, put a base cabinet between, or clad what stands there as the code says. Where it
    /// does not burn, say so in its `material`.
    ///
    /// ## Example
    /// ```yaml
    /// right: {what: pantry, gap: 1", top: 84"}     # 6" is usual
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; common practice for 6" and 18" (trade reports section 6 have 18" up to the
    /// cabinets at the sides). The maker's instructions govern.
    "clear/beside-cooktop", Query,
    sources: ["the maker's sheet", "common practice"],
    caution: Some(Hazard::Heat.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for fitted in context.fitted() {
        let Some(hearth) = Hearth::of(fitted, context.plan(fitted.room), context.rulings()) else { continue };
        for side in [Side::Left, Side::Right] {
            let near = hearth.beside(side);
            findings.extend(nearest(&near).and_then(|near| told(context, &hearth, side, near)));
        }
    }
}

/// What is nearer than it may be.
fn told(context: &Context<'_>, hearth: &Hearth<'_>, side: Side, near: &Near<'_>) -> Option<Finding> {
    let short = near.short()?;
    let say = |length| say(length, context.book.project.units);
    let whose = match near.asked.whose {
        Whose::Sheet | Whose::SheetAbove => "its sheet's",
        Whose::Figure => "the usual",
    };
    let unsaid = match (near.may_be_lower, near.burning) {
        (true, _) => "; nobody says whether it rises above the counter, and so it counts as rising",
        (false, None) => "; nobody says whether it burns, and so it counts as burning",
        (false, Some(_)) => "",
    };
    let message = format!(
        "{} is {} from the {} of the cooking surface of `{}` and rises above it, {} less than {whose} {}{unsaid}",
        near.body.words(),
        say(near.distance),
        side.word(),
        hearth.fitted.selection.name.value,
        say(short),
        say(near.asked.length)
    );
    let mut remedy =
        "move the opening, put a base cabinet between, or clad what stands there as the code says".to_string();
    if near.burning.is_none() {
        remedy = format!("say whether it burns: {}; where it does, {remedy}", near.body.field());
    }
    if near.may_be_lower {
        remedy = format!("add its `top` from the finished floor to the opening's `{}`; or {remedy}", side.word());
    }
    let at = near.body.span().unwrap_or(hearth.fitted.opening.span);
    let finding = hearth.fitted.finding(RULE.code, near.asked.severity, at, message);
    Some(finding.remedy(remedy).source(near.asked.source.clone()))
}

#[cfg(test)]
mod tests;
