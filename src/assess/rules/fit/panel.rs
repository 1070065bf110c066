//! A joiner's front panel against the maker's sheet.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about, say, say_range};
use crate::book::{AskedPanel, Panel, ProductOption};
use crate::finding::{Phrase, Severity, phrase};
use crate::site::fitting;
use crate::site::panels::panel_of;
use crate::source::Span;
use crate::units::{Length, LengthRange};
use crate::vocabulary::Hazard;

declare! {
    /// A front panel is not of the size, thickness or weight that the maker's sheet asks for
    ///
    /// ## What it checks
    /// The joiner's `panel`, or the selection of that name that is made for the thing, against the sheet's `fit: {panel: …}`: width, height and thickness within its
    /// limits, weight at most what it allows.
    ///
    /// ## Why it matters
    /// A panel that is too tall does not open, one that is too short shows the frame, one that is too
    /// heavy drops. The joiner makes it once; the second one takes weeks.
    ///
    /// ## Remedy
    /// Draw the panel anew by the sheet, from the finished floor and the toe kick as they will be.
    ///
    /// ## Example
    /// ```yaml
    /// panel: {width: 23 3/4", height: 30 1/2", thickness: 3/4", weight: 18 lb}
    /// fit: {panel: {height: 29 13/16" to 30 1/4", weight: 20 lb}}
    /// ```
    ///
    /// ## Source
    /// The maker's sheet.
    "fit/panel", Stop,
    due: WithThing, tells: [Installer],
    sources: ["the maker's sheet"],
    caution: Some(Hazard::Weight.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        let opening = selection.place.get().and_then(|place| room.opening(place));
        let panel = match opening {
            Some(opening) => fitting::panel(room, opening, option),
            None => option.panel.get().cloned(),
        };
        let panel = panel.or_else(|| panel_of(room, selection, option));
        let Some((panel, asked)) = panel.zip(asked(option)) else { continue };
        for (at, fault) in faults(context, &panel, asked) {
            let message = phrase!("the panel of `{}` {fault}", selection.name.value, fault);
            let finding = about(room, selection, option, Severity::Stop, at, message);
            findings.push(finding.remedy("draw the panel anew by the sheet, from the finished floor"));
        }
    }
}

fn asked(option: &ProductOption) -> Option<&AskedPanel> {
    option.fit.get()?.panel.get()
}

fn faults(context: &Context<'_>, panel: &Panel, asked: &AskedPanel) -> Vec<(Span, Phrase)> {
    let say = |length| say(length, context.book.project.units);
    let outside = |way: &str, there: Length, asked: &LengthRange| {
        (!asked.contains(there)).then(|| {
            phrase!(
                "is {} {way}, where its sheet asks {}",
                say(there),
                way,
                say_range(*asked, context.book.project.units)
            )
        })
    };
    let mut faults = Vec::new();
    let mut add = |at: Option<Span>, fault: Option<Phrase>| faults.extend(at.zip(fault));
    let side = |there: Option<&Length>, asked: Option<&LengthRange>, way| {
        there.zip(asked).and_then(|(there, asked)| outside(way, *there, asked))
    };
    add(panel.width.span(), side(panel.width.get(), asked.width.get(), "wide"));
    let height = panel.height.get().and_then(|height| height.least.or(height.most));
    add(panel.height.span(), side(height.as_ref(), asked.height.get(), "high"));
    add(panel.thickness.span(), side(panel.thickness.get(), asked.thickness.get(), "thick"));
    let heavy = panel.weight.get().zip(asked.weight.get()).filter(|(there, most)| there > most);
    add(
        panel.weight.span(),
        heavy.map(|(there, most)| phrase!("weighs {there}, more than the {most} that its sheet allows", there, most)),
    );
    faults
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn dishwasher(panel: &str) -> Trial {
        Trial::of("fit/panel").selection(
            "selection: Dishwasher\nkind: panel dishwasher",
            &format!(
                "panel: {{{panel}}}\nfit: {{panel: {{width: 23 3/4\", height: 29 13/16\" to 30 1/4\", thickness: 3/4\", weight: 20 lb}}}}"
            ),
        )
    }

    /// Source: trade reports F-21: 3/4 × 23 3/4 × 29 13/16 to 30 1/4, at most 20 lb.
    #[test]
    fn a_panel_too_tall_too_short_or_too_heavy_stops() {
        dishwasher("height: 30 1/2\"").finds_one().weighs("stop").cautions();
        dishwasher("height: 29 1/2\"").finds_one();
        let own = |width: &str| {
            Trial::of("fit/panel")
                .selection(
                    "selection: Refrigerator\nkind: refrigerator",
                    "fit: {panel: {width: 35 3/4\", thickness: 3/4\"}}",
                )
                .selection(
                    "selection: Refrigerator panel\nkind: cabinet",
                    &format!("finish: painted\nsize: {{width: {width}, thickness: 3/4\"}}"),
                )
        };
        own("36\"").finds_one().weighs("stop");
        own("35 3/4\"").stays_silent();
        dishwasher("weight: 21 lb").finds(
            "the panel of `Dishwasher` weighs 21 lb (≈ 9.5 kg), more than the 20 lb (≈ 9.1 kg) that its sheet allows",
        );
        dishwasher("width: 23 3/4\", height: 30 1/4\", thickness: 3/4\", weight: 20 lb").stays_silent();
    }
}
