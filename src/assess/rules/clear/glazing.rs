//! Glass near tubs and showers.

use crate::assess::codes::{GLASS_ABOVE_STANDING, GLASS_FROM_WATER};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::vocabulary::{Hazard, Said};

declare! {
    /// Glass near a tub or shower is not told to be safety glass
    ///
    /// ## What it checks
    /// Each window whose lower edge is less than 60" above the floor and that is within 60" of the edge of
    /// a tub or shower: its glass must be tempered, laminated, or called safety glass. Where such a window
    /// tells nothing of its glass, it asks.
    ///
    /// ## Why it matters
    /// Wet feet slip, and plain glass cuts to the bone.
    ///
    /// ## Remedy
    /// Have the pane replaced by safety glass, or read its etched mark and write it down.
    ///
    /// ## Example
    /// ```yaml
    /// windows:
    ///   yard: {sill: 42", from water: 40", glass: tempered}
    /// ```
    ///
    /// ## Source
    /// IRC R308.4.5. The 2018 edition reads `facing` the wet place, from 2021 on `adjacent`: a window on a
    /// side wall counts by the later text.
    "clear/glazing", Query,
    due: RoughInClosed, tells: [Installer],
    sources: ["IRC R308.4.5"],
    caution: Some(Hazard::Glass.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let (Some(above), Some(near)) =
        (context.rulings().length(&GLASS_ABOVE_STANDING), context.rulings().length(&GLASS_FROM_WATER))
    else {
        return;
    };
    for room in &context.book.rooms {
        for window in &room.windows {
            let (Some(sill), Some(away)) = (window.sill.get(), window.from_water.get()) else { continue };
            let safe = |glass: &String| Said::SafetyGlass.is_in(glass);
            if *sill >= above.value || *away > near.value || window.glass.get().is_some_and(safe) {
                continue;
            }
            let say = |length| say(length, context.book.project.units);
            let glass = window.glass.get().map_or("glass of which nothing is told", String::as_str);
            let message = phrase!(
                "the window `{}`, {} from the water and {} above the floor, has {glass}",
                window.name.value,
                say(*away),
                say(*sill),
                glass
            );
            // Glass of which nothing is told may well be safe.
            let severity = if window.glass.is_absent() { Severity::Query } else { near.severity };
            findings.push(
                Remark::new(severity, window.name.span, message)
                    .room(&room.folder)
                    .thing(&window.name)
                    .remedy(
                        "have the pane replaced by safety glass, or read its etched mark and write what it says: `glass: …`",
                    )
                    .source(near.source.clone()),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn window(window: &str) -> Trial {
        Trial::of("clear/glazing").room(&format!("windows: {{yard: {{{window}}}}}"))
    }

    /// Source: check values IR-44: a bottom at 58, 40 away needs safety glass; 61 away does not.
    #[test]
    fn glass_within_60_inches_of_the_water_is_safety_glass() {
        window("sill: 58\", from water: 40\", glass: plain").finds_one().weighs("query").cautions();
        window("sill: 58\", from water: 40\", glass: plain")
            .book("codes: {adopts: [IRC 2021]}")
            .finds_one()
            .weighs("stop");
        window("sill: 58\", from water: 40\", glass: tempered").stays_silent();
        window("sill: 58\", from water: 61\", glass: plain").stays_silent();
        window("sill: 60\", from water: 40\", glass: plain").stays_silent();
    }

    #[test]
    fn glass_of_which_nothing_is_told_is_asked_about() {
        window("sill: 42\", from water: 40\"").book("codes: {adopts: [IRC 2021]}").finds_one().weighs("query");
    }
}
