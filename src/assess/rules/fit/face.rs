//! Whether a flange covers the cutout's edge.

use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::finding::{Finding, Severity};
use crate::units::Length;

declare! {
    /// The flange or front does not cover the edge of the cutout
    ///
    /// ## What it checks
    /// The cutout's width and height against the flange or front less the overlap that the sheet
    /// wants on each side.
    ///
    /// ## Why it matters
    /// A hole cut to the face of the old oven, not to its body, shows round the new one, and
    /// nothing holds the flange.
    ///
    /// ## Remedy
    /// Have the cutout made smaller, order the maker's wider trim, or choose a model whose flange
    /// covers it.
    ///
    /// ## Example
    /// ```yaml
    /// fit:
    ///   face: {width: 29 3/4", overlap: 3/4"}     # covers a cutout of 28 1/4" at most
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; trade reports F-37 (the face is 1 to 1 1/2 in wider than the body), F-38.
    "fit/face", Stop,
    sources: ["the maker's sheet"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for fitted in context.fitted() {
        judge(context, &fitted, findings);
    }
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>, findings: &mut Vec<Finding>) {
    let say = |length| say(length, context.book.project.units);
    let Some(face) = fitted.option.fit.get().and_then(|fit| fit.face.get()) else { return };
    let overlap = face.overlap.get().copied().unwrap_or(Length::ZERO);
    let height = fitted.opening.height.get().and_then(|readings| readings.0.iter().map(|reading| reading.value).max());
    let width = fitted.opening.width.get().and_then(|readings| readings.0.iter().map(|reading| reading.value).max());
    for (way, front, hole) in [("wide", &face.width, width), ("high", &face.height, height)] {
        let (Some(front), Some(hole)) = (front.spanned(), hole) else { continue };
        let covers = front.value - overlap.times(2);
        if hole > covers {
            let message = format!(
                "the cutout `{}` is {} {way}, and the front of `{}` covers {} at most",
                fitted.opening.name.value,
                say(hole),
                fitted.selection.name.value,
                say(covers)
            );
            let finding =
                fitted.finding(RULE.code, Severity::Stop, front.span, message).also(fitted.opening.span, "the cutout");
            findings.push(finding.remedy("have the cutout made smaller, or order the maker's wider trim"));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade.md F-37: the old oven's face was measured instead of the hole.
    #[test]
    fn a_hole_as_wide_as_the_face_is_not_covered() {
        let oven = |hole: &str| {
            let trial = Trial::of("fit/face").opening("hole", &format!("{{takes: wall oven, width: {hole}}}"));
            trial.selection(
                "selection: Oven\nkind: wall oven\nplace: hole",
                "fit: {face: {width: 29 3/4\", overlap: 3/4\"}}",
            )
        };
        oven("29 3/4\"").finds("the cutout `hole` is 29 3/4\" (≈ 755.6 mm) wide, and the front of `Oven` covers 28 1/4\" (≈ 717.6 mm) at most").weighs("stop");
        oven("[28 1/4\", 28 5/16\", 28 1/4\"]").finds_one();
        oven("28 1/4\"").is_silent();
    }
}
