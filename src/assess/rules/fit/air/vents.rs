//! Free cross-sections that the sheet asks for: in the plinth, above, behind.

use crate::assess::{Context, say_vent};
use crate::book::Vents;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::source::Spanned;

const REMEDY: &str = "plan the vents in plinth and cabinet, and add them to the opening: `vents: {bottom: …, top: …}`";

/// Free cross-sections that the sheet asks for, each against the opening's own; what nobody says is asked for once.
pub(super) fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Vec<Remark> {
    let Some(fit) = fitted.option.fit.get() else { return vec![] };
    let there = &fitted.opening.vents;
    let places = [
        ("below", &fit.air.bottom, &there.bottom),
        ("above", &fit.air.top, &there.top),
        ("behind", &fit.air.back, &there.back),
    ];
    let asked = places.into_iter().filter_map(|(place, asked, there)| {
        let asked = asked.spanned()?;
        Some((place, Spanned::new(asked.value.vent?, asked.span), there))
    });
    let (unsaid, said): (Vec<_>, Vec<_>) = asked.partition(|(.., there)| there.is_absent());
    let say = |area| say_vent(area, context.book.project.units);
    let too_small = said.into_iter().filter_map(|(place, asked, there)| {
        let there = there.spanned().filter(|there| there.value < asked.value)?;
        let message = phrase!(
            "{} are free {place} `{}`, less than the {} that the maker's sheet asks for",
            say(there.value),
            place,
            fitted.selection.name.value,
            say(asked.value)
        );
        let finding = fitted.finding(Severity::Stop, there.span, message).also(asked.span, "the sheet");
        Some(finding.remedy("have the vent made larger, or choose a model that asks for less"))
    });
    let mut found: Vec<Remark> = too_small.collect();
    found.extend(breathes_below(fitted));
    if let Some((_, first, _)) = unsaid.first() {
        let asked = unsaid.iter().map(|(place, asked, _)| phrase!("{} {place}", say(asked.value), place));
        let message = phrase!(
            "the sheet of `{}` asks for a free cross-section of {}, and nobody says what is left at the opening `{}`",
            fitted.selection.name.value,
            Phrase::series(asked.collect::<Vec<_>>()),
            fitted.opening.name.value
        );
        let finding = fitted.finding(Severity::Query, fitted.opening.span, message).also(first.span, "the sheet");
        found.push(finding.remedy(REMEDY));
    }
    found
}

/// It breathes through the plinth, and nobody says how much is free there, neither its sheet nor the opening.
fn breathes_below(fitted: &Placement<'_>) -> Option<Remark> {
    let air = &fitted.option.fit.get()?.air;
    let at = air.vents_at.get()?.0.iter().find(|place| place.value == Vents::Bottom)?;
    let is_said = !air.bottom.is_absent() || !fitted.opening.vents.bottom.is_absent();
    let message = phrase!(
        "`{}` breathes at its bottom, and nobody says what is free below it at the opening `{}`",
        fitted.selection.name.value,
        fitted.opening.name.value
    );
    (!is_said).then(|| fitted.finding(Severity::Query, at.span, message).source("common practice").remedy(REMEDY))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn fridge(sheet: &str, opening: &str) -> Trial {
        Trial::of("fit/air")
            .metric()
            .opening("fridge", &format!("{{takes: refrigerator, width: 600 mm{opening}}}"))
            .selection("selection: Fridge\nkind: refrigerator\nplace: fridge", &format!("fit: {{air: {{{sheet}}}}}"))
    }

    /// Source: the sheet's own figures; 31 square inches are 199.999 6 cm² (NIST SP 811: 1 in² is 6.4516 cm²).
    #[test]
    fn a_vent_smaller_than_the_sheet_asks_for_stops() {
        let sheet = "bottom: 200 cm2, top: 200 cm2";
        fridge(sheet, ", vents: {bottom: 200 cm2, top: 150 cm2}")
            .finds("150 cm² are free above `Fridge`, less than the 200 cm² that the maker's sheet asks for")
            .weighs("stop");
        fridge(sheet, ", vents: {bottom: 200 cm2, top: 200 cm²}").stays_silent();
        fridge(sheet, ", vents: {bottom: 0.02 m2, top: 32 sq in}").stays_silent();
        fridge("back: 31 sq in", ", vents: {back: 30 square inches}").finds_one();
        fridge("back: 31 sq in", ", vents: {back: 200 sq cm}").stays_silent();
    }

    #[test]
    fn what_nobody_says_of_vents_is_asked_for_once() {
        fridge("bottom: 200 cm2, top: 200 cm2", "")
            .finds("the sheet of `Fridge` asks for a free cross-section of 200 cm² below and 200 cm² above, and nobody says what is left at the opening `fridge`")
            .weighs("query");
        fridge("bottom: 200 cm2, top: 200 cm2", ", vents: {bottom: 200 cm2}").finds_one().says("200 cm² above");
        for place in ["bottom", "plinth", "base", "toe kick"] {
            fridge(&format!("vents at: [{place}]"), "")
                .finds("`Fridge` breathes at its bottom, and nobody says what is free below it at the opening `fridge`")
                .weighs("query");
            fridge(&format!("vents at: {place}"), ", vents: {bottom: 220 cm2}").stays_silent();
        }
    }
}
