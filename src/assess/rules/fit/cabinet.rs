//! The cabinet that something is cut into, against what the sheet asks of it.

use crate::assess::fitting::fitting;
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::book::{AskedCabinet, HousingCabinet, Slot};
use crate::finding::{Finding, Severity};
use crate::units::{Length, LengthRange};
use crate::vocabulary::Hazard;

declare! {
    /// The housing cabinet is not as the sheet asks, or the cutout meets its sides
    ///
    /// ## What it checks
    /// What the maker's sheet asks of the cabinet (inside width, depth and height, outside width,
    /// back panel whole or cut away) against the cabinet as it is. And the cutout that the sheet
    /// asks for against the inside of the cabinet, where it asks nothing of the cabinet itself. A
    /// figure that is met exactly passes.
    ///
    /// ## Why it matters
    /// A cutout wider than the cabinet's inside runs through its sides; a back panel or an outlet
    /// keeps an oven from going home.
    ///
    /// ## Remedy
    /// Order a wider or deeper cabinet, or ask its maker whether sides may be notched and the back
    /// cut away.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   cooktop: {takes: cooktop, cabinet: {inside width: 34 1/2", outside width: 36"}}
    /// ```
    /// A cooktop whose cutout is 34 7/8" wide meets the sides of this cabinet.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement.
    "fit/cabinet", Stop,
    due: WithThing, tells: [Installer],
    sources: ["the maker's sheet", "the field measurement"],
    caution: Some(Hazard::Weight.caution()),
    Check::Book(check)
}

const REMEDY: &str = "order a cabinet to the sheet, or ask its maker whether it may be cut";

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for fitted in context.fitted() {
        let Some((fit, cabinet)) = fitted.option.fit.get().zip(fitted.opening.cabinet.get()) else { continue };
        let fitting = fitting(fitted.room, fitted.opening, fitted.option);
        let none = AskedCabinet::default();
        let asked = fit.cabinet.get().unwrap_or(&none);
        let width = [&asked.inside_width, &fit.opening.width];
        let depth = [&asked.inside_depth, &fit.opening.depth];
        for (name, there, asked) in [
            ("inside width", &cabinet.inside_width, either(width, fitting.width.too_small_by())),
            ("inside depth", &cabinet.inside_depth, either(depth, fitting.depth.too_small_by())),
            ("inside height", &cabinet.inside_height, asked.inside_height.get().copied()),
            ("outside width", &cabinet.outside_width, asked.outside_width.get().copied()),
        ] {
            findings.extend(asked.and_then(|asked| measure(context, &fitted, name, there, asked)));
        }
        findings.extend(back(&fitted, asked, cabinet));
    }
}

/// What is asked of the cabinet; else the least that the cutout itself needs, unless the opening is
/// told to be too small for it already.
fn either([cabinet, cutout]: [&Slot<LengthRange>; 2], told: Option<Length>) -> Option<LengthRange> {
    let cutout = cutout.get().filter(|_| told.is_none()).and_then(|cutout| cutout.least).map(LengthRange::at_least);
    cabinet.get().copied().or(cutout)
}

fn measure(
    context: &Context<'_>,
    fitted: &Fitted<'_>,
    name: &str,
    there: &Slot<Length>,
    asked: LengthRange,
) -> Option<Finding> {
    let say = |length| say(length, context.book.project.units);
    let is = there.spanned()?;
    let beyond = |length: Length| Some(length).filter(|length| *length > Length::ZERO);
    let short = asked.least.and_then(|least| Some((beyond(least - is.value)?, "less", least)));
    let over = asked.most.and_then(|most| Some((beyond(is.value - most)?, "more", most)));
    let (by, word, figure) = short.or(over)?;
    let message = format!(
        "the cabinet of the opening `{}` has an {name} of {}, {} {word} than the {} that the maker's sheet asks for",
        fitted.opening.name.value,
        say(is.value),
        say(by),
        say(figure)
    );
    Some(fitted.finding(RULE.code, Severity::Stop, is.span, message).remedy(REMEDY))
}

fn back(fitted: &Fitted<'_>, asked: &AskedCabinet, cabinet: &HousingCabinet) -> Option<Finding> {
    let (wanted, is) = (asked.back_panel.get()?, cabinet.back_panel.spanned()?);
    let message = format!(
        "the back panel of the cabinet of the opening `{}` is {}, and the maker's sheet asks for it {}",
        fitted.opening.name.value, is.value, wanted
    );
    (*wanted != is.value).then(|| fitted.finding(RULE.code, Severity::Stop, is.span, message).remedy(REMEDY))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn into(kind: &str, opening: &str, option: &str) -> Trial {
        Trial::of("fit/cabinet")
            .opening("niche", &format!("{{takes: {kind}, {opening}}}"))
            .selection(&format!("selection: It\nkind: {kind}\nplace: niche"), option)
    }

    /// Source: trade reports F-35 (23" where 23 1/2" is the least).
    #[test]
    fn a_cabinet_too_shallow_inside_is_told() {
        let sheet = "fit: {cabinet: {inside depth: at least 23 1/2\"}}";
        into("wall oven", "cabinet: {inside depth: 23\"}", sheet)
            .finds("the cabinet of the opening `niche` has an inside depth of 23\" (584.2 mm), 1/2\" (12.7 mm) less than the 23 1/2\" (596.9 mm) that the maker's sheet asks for")
            .weighs("stop")
            .cautions();
        into("wall oven", "cabinet: {inside depth: 23 1/2\"}", sheet).stays_silent();
    }

    /// Source: trade reports F-41 (cutout 33 7/8" to 34 7/8" in a 36" cabinet, 34 1/2" inside).
    #[test]
    fn a_cutout_that_meets_the_cabinet_s_sides_is_told() {
        let cabinet = "cabinet: {inside width: 34 1/2\", outside width: 36\"}";
        into("cooktop", cabinet, "fit: {opening: {width: 34 7/8\"}}").finds_one().weighs("stop");
        into("cooktop", cabinet, "fit: {opening: {width: 34 1/2\"}}").stays_silent();
        into("cooktop", cabinet, "fit: {opening: {width: 33 7/8\" to 34 7/8\"}}").stays_silent();
        let two = "options:\n  - {id: wide, fit: {opening: {width: 34 7/8\"}}}\n  - {id: slim}";
        into("cooktop", cabinet, two).finds_one().weighs("query");
    }

    #[test]
    fn a_hole_that_is_too_small_itself_is_told_by_the_width_alone() {
        let both = "width: 34 1/2\", cabinet: {inside width: 34 1/2\"}";
        into("cooktop", both, "fit: {opening: {width: 34 7/8\"}}").stays_silent();
    }

    /// Source: trade reports F-35 (`cut back panel allowed?`), section 6 (30" oven: cabinet about 33").
    #[test]
    fn outside_width_and_back_panel_are_held_to_the_sheet() {
        let sheet = "fit: {cabinet: {outside width: at least 33\", back panel: cut away}}";
        into("wall oven", "cabinet: {outside width: 33\", back panel: whole}", sheet).finds(
            "the back panel of the cabinet of the opening `niche` is whole, and the maker's sheet asks for it cut away",
        );
        into("wall oven", "cabinet: {outside width: 30\", back panel: cut away}", sheet).finds_one();
        into("wall oven", "cabinet: {outside width: 33\", back panel: cut away}", sheet).stays_silent();
    }
}
