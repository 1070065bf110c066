//! The cabinet that a thing is cut into.

use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::book::{AskedCabinet, Slot};
use crate::finding::{Finding, Severity};
use crate::source::Spanned;
use crate::units::{Length, LengthRange};

declare! {
    /// The cabinet is not what the thing that is cut into it needs
    ///
    /// ## What it checks
    /// Inside width, depth and height, outside width and back panel of the cabinet against what the
    /// maker's sheet asks for; and the cutout that the sheet asks for against the cabinet's inside
    /// width.
    ///
    /// ## Why it matters
    /// A 36 in cooktop's cutout meets the sides of a 36 in cabinet; an oven half an inch too deep
    /// stands out of its front.
    ///
    /// ## Remedy
    /// Order the cabinet that the sheet asks for, have the back panel cut away where the sheet
    /// allows it, or choose another model.
    ///
    /// ## Example
    /// ```yaml
    /// cabinet: {inside width: 34 1/2"}     # the sheet's cutout is 34 7/8" wide
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; trade reports F-35 (23 in against 23 1/2 in), F-36, F-41 (cutouts of 33
    /// 7/8 to 34 7/8 in against 34 1/2 in inside).
    "fit/cabinet", Stop,
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
    let (Some(fit), Some(cabinet)) = (fitted.option.fit.get(), fitted.opening.cabinet.get()) else { return };
    let none = AskedCabinet::default();
    let asked = fit.cabinet.get().unwrap_or(&none);
    let pairs = [
        ("inside width", &cabinet.inside_width, &asked.inside_width),
        ("inside depth", &cabinet.inside_depth, &asked.inside_depth),
        ("inside height", &cabinet.inside_height, &asked.inside_height),
        ("outside width", &cabinet.outside_width, &asked.outside_width),
    ];
    let mut told_width = false;
    for (what, there, asked) in pairs {
        let (Some(there), Some(asked)) = (there.spanned(), asked.spanned()) else { continue };
        if !asked.contains(there.value) {
            told_width |= what == "inside width";
            findings.push(misfit(context, fitted, what, there, asked));
        }
    }
    if !told_width && asked.inside_width.is_absent() {
        findings.extend(cutout(context, fitted, &cabinet.inside_width, &fit.opening.width));
    }
    if asked.back_cut_away.get() == Some(&true) && cabinet.back_cut_away.get() == Some(&false) {
        let message =
            format!("`{}` needs the cabinet's back panel cut away, and it is whole", fitted.selection.name.value);
        let finding = fitted.finding(RULE.code, Severity::Stop, fitted.opening.span, message);
        findings.push(finding.remedy("have the back panel cut away as the maker's sheet shows"));
    }
}

fn misfit(
    context: &Context<'_>,
    fitted: &Fitted<'_>,
    what: &str,
    there: &Spanned<Length>,
    asked: &Spanned<LengthRange>,
) -> Finding {
    let say = |length| say(length, context.book.project.units);
    let bound = match (asked.least, asked.most) {
        (Some(least), _) if there.value < least => format!("at least {}", say(least)),
        (_, Some(most)) => format!("at most {}", say(most)),
        (Some(least), None) => format!("at least {}", say(least)),
        (None, None) => String::new(),
    };
    let message =
        format!("the cabinet's {what} is {}, and `{}` asks for {bound}", say(there.value), fitted.selection.name.value);
    let finding = fitted.finding(RULE.code, Severity::Stop, there.span, message).also(asked.span, "asks for this");
    finding.remedy("order the cabinet that the sheet asks for, or choose another model")
}

/// The cutout must lie between the cabinet's sides.
fn cutout(
    context: &Context<'_>,
    fitted: &Fitted<'_>,
    inside: &Slot<Length>,
    asked: &Slot<LengthRange>,
) -> Option<Finding> {
    let say = |length| say(length, context.book.project.units);
    let (inside, asked) = (inside.spanned()?, asked.spanned()?);
    let least = asked.least.filter(|least| *least > inside.value)?;
    let message = format!(
        "the cutout of `{}` is {} wide, and the cabinet is {} inside",
        fitted.selection.name.value,
        say(least),
        say(inside.value)
    );
    let finding =
        fitted.finding(RULE.code, Severity::Stop, asked.span, message).also(inside.span, "inside the cabinet");
    Some(finding.remedy("order a wider cabinet, or notch its sides where the sheet allows it"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(cabinet: &str, fit: &str) -> Trial {
        let trial = Trial::of("fit/cabinet").opening("hole", &format!("{{takes: cooktop, cabinet: {{{cabinet}}}}}"));
        trial.selection("selection: Top\nkind: cooktop\nplace: hole", &format!("fit: {{{fit}}}"))
    }

    /// Source: trade.md F-41: a cutout of 34 7/8" in a 36" box that is 34 1/2" inside.
    #[test]
    fn a_cutout_that_meets_the_cabinets_sides_is_told() {
        trial("inside width: 34 1/2\"", "opening: {width: 34 7/8\"}")
            .finds("the cutout of `Top` is 34 7/8\" (≈ 885.8 mm) wide, and the cabinet is 34 1/2\" (876.3 mm) inside");
        trial("inside width: 34 1/2\"", "opening: {width: 33 7/8\"}").is_silent();
        trial("inside width: 34 1/2\"", "opening: {width: 34 1/2\"}").is_silent();
    }

    /// Source: trade.md F-35: 23" where the sheet asks for 23 1/2" at least.
    #[test]
    fn a_cabinet_half_an_inch_too_shallow_is_told() {
        trial("inside depth: 23\"", "cabinet: {inside depth: at least 23 1/2\"}").finds_one().weighs("stop");
        trial("inside depth: 23 1/2\"", "cabinet: {inside depth: at least 23 1/2\"}").is_silent();
    }

    #[test]
    fn a_back_panel_that_must_be_cut_away_is_told() {
        trial("back panel: whole", "cabinet: {back panel: cut away}").finds_one();
        trial("back panel: cut away", "cabinet: {back panel: cut away}").is_silent();
    }
}
