//! Glass near tubs and showers.

use crate::assess::codes::{GLASS_ABOVE_STANDING, GLASS_FROM_WATER};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about, say};
use crate::book::{DetailName, Window};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::water::from_water;
use crate::vocabulary::supply::InWords;
use crate::vocabulary::{Breaks, Hazard, Kind, Trait};

declare! {
    /// Glass near a tub or shower is not told to be safety glass
    ///
    /// ## What it checks
    /// Each window, in a wall or in the roof, whose lower edge is less than {60"} above the floor and that is
    /// within {60"} of the edge of a tub or shower, as written or by the plan: its glass must be tempered, laminated, or called safety glass. Where such a window
    /// tells nothing of its glass, it asks. And the glass that is chosen for a shower or a tub, or for a door of such a
    /// room, whose own words say that it is none, or do not say that it is.
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
    judges: [Bathtub, ShowerSet, ShowerGlass, Door],
    sources: ["IRC R308.4.5", "common practice"],
    caution: Some(Hazard::Glass),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    chosen(context, findings);
    let (Some(above), Some(near)) =
        (context.rulings().length(&GLASS_ABOVE_STANDING), context.rulings().length(&GLASS_FROM_WATER))
    else {
        return;
    };
    for room in &context.book.rooms {
        for window in &room.windows {
            let Some(sill) = window.sill.get() else { continue };
            let written = window.from_water.get().map(|away| (*away, ""));
            let by_the_plan = || Some((from_water(context.site.sound_plan(room)?, window)?.0, " by the plan"));
            let Some((away, by)) = written.or_else(by_the_plan) else { continue };
            if *sill >= above.value || away > near.value || is_safe(window) {
                continue;
            }
            let say = |length| say(length, context.book.project.units);
            let glass = match window.glass.get() {
                Some(told) => phrase!("glass that is told to be `{}`", told),
                None => Phrase::from("glass of which nothing is told"),
            };
            let message = phrase!(
                "the window `{}`, {} from the water{by} and {} above the floor, has {glass}",
                window.name.value,
                say(away),
                by,
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

/// Whether its glass is told to be safety glass.
pub(crate) fn is_safe(window: &Window) -> bool {
    window.glass.get().is_some_and(|glass| Breaks::of_words(glass) == Breaks::Safely)
}

/// The glass of a shower or tub, and of a door in a room where somebody bathes: what it is chosen to be.
fn chosen(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        let is_wet = || room.selections.iter().any(|other| other.has(Trait::Bathes));
        let is_glass = selection.is(Kind::ShowerGlass) || selection.is(Kind::Door) && is_wet();
        let Some((glass, at)) = option.words(DetailName::Glass).filter(|_| is_glass) else { continue };
        let name = &selection.name.value;
        let message = match Breaks::of_words(glass) {
            Breaks::Safely => continue,
            Breaks::IntoSplinters => phrase!("by its own words the glass of `{name}` is no safety glass", name),
            Breaks::Unsaid => phrase!("nobody says whether the glass of `{name}` is safety glass", name),
        };
        let finding = about(room, selection, option, Severity::Query, at, message).source("common practice");
        findings.push(finding.remedy("order tempered or laminated glass, and say so: `glass: …`"));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn window(window: &str) -> Trial {
        Trial::of("clear/glazing").room(&format!("windows: {{yard: {{{window}}}}}"))
    }

    #[test]
    fn what_stands_in_a_shower_is_of_safety_glass() {
        let glass = |kind: &str, words: &str| {
            Trial::of("clear/glazing")
                .selection("selection: Mixer\nkind: shower set", "valve: V")
                .selection(&format!("selection: It\nkind: {kind}"), &format!("glass: {words}"))
        };
        for kind in ["shower glass", "shower door", "door"] {
            glass(kind, "3/8\" annealed")
                .finds("by its own words the glass of `It` is no safety glass")
                .weighs("query")
                .cautions()
                .points_at(&["rooms/kitchen/selection-1.yaml:3:8"])
                .remedies("order tempered or laminated glass, and say so: `glass: …`");
            glass(kind, "clear, not tempered").finds_one();
            glass(kind, "8 mm clear").finds("nobody says whether the glass of `It` is safety glass");
            glass(kind, "8 mm clear, toughened").stays_silent();
        }
        glass("pendant", "clear").stays_silent();
        Trial::of("clear/glazing").selection("selection: It\nkind: door", "glass: plain").stays_silent();
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

    /// The tub stands at wall D, 30" deep; the window is in wall A beside it, or in the roof above it.
    #[test]
    fn how_far_the_water_is_follows_from_the_plan() {
        let bath = |window: &str| {
            Trial::of("clear/glazing")
                .room(&format!("outline: 140\" x 100\"\nceiling: {{low: 48\", high: 108\", low at: D}}\nwindows: {{light: {{{window}}}}}"))
                .opening("tub", "{takes: bathtub, wall: D, at: 20\", width: 60\", depth: 30\"}")
        };
        bath("wall: A, at: 40\", width: 20\", sill: 40\", height: 20\", glass: plain").finds_one();
        bath("wall: A, at: 100\", width: 20\", sill: 40\", height: 20\", glass: plain").stays_silent();
        bath("in: roof, wall: D, at: 20\", width: 30\", sill: 56\", height: 30\", glass: plain").finds_one();
        bath("in: roof, wall: D, at: 20\", width: 30\", sill: 56\", height: 30\", glass: tempered").stays_silent();
    }

    #[test]
    fn glass_of_which_nothing_is_told_is_asked_about() {
        window("sill: 42\", from water: 40\"").book("codes: {adopts: [IRC 2021]}").finds_one().weighs("query");
    }
}
