//! A joiner's front panel against the maker's sheet.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about, say, say_range};
use crate::book::{Panel, PartIs, ProductOption, RequiredPanel, Room};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::panels::panel_of;
use crate::site::{Placement, fitting};
use crate::source::{Span, Spanned};
use crate::units::{Length, LengthRange};
use crate::vocabulary::{Hazard, Kind, Trait};

declare! {
    /// A front panel is not of the size, thickness or weight that the maker's sheet asks for
    ///
    /// ## What it checks
    /// The joiner's `panel`, or the selection of that name that is made for the thing, against the sheet's `fit: {panel: …}`: width, height and thickness within its
    /// limits, weight at most what it allows. And panels under a counter against the line of the cabinets'
    /// fronts (`fronts: {height: …}`), or where that is not written against one another in their run. And a dishwasher's
    /// panel, hung from the top of its bay, against the plinth at the foot of its row (`toe kick`).
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
    /// The maker's sheet; that fronts keep one line is common practice.
    "fit/panel", Stop,
    due: WithThing, tells: [Installer],
    judges: panelled,
    sources: ["the maker's sheet", "common practice"],
    caution: Some(Hazard::Weight),
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
    for room in &context.book.rooms {
        findings.extend(out_of_line(context, room));
        findings.extend(context.site.fitted_in(room).filter_map(|fitted| into_the_plinth(context, &fitted)));
    }
}

/// Fronts whose heights differ by no more are in one line: 1/16" (common practice).
const ONE_LINE: Length = Length::from_sixty_fourths(4);

/// A front of so much height: of an appliance under the counter, with its place.
struct Front<'a> {
    of: Placement<'a>,
    height: Spanned<Length>,
}

/// Fronts of appliances under a counter that are higher or lower than the cabinets' own, or than one another.
fn out_of_line(context: &Context<'_>, room: &Room) -> Vec<Remark> {
    let here = context.site.fitted_in(room);
    let fronts: Vec<Front<'_>> = here.filter_map(front).collect();
    let of_cabinets = room.selections.iter().filter(|one| one.is(Kind::Cabinet) && one.place.is_absent());
    let of_cabinets = of_cabinets.filter_map(|one| Some((one, one.settled()?.fronts.height.spanned()?)));
    let mut of_cabinets = of_cabinets.map(|(one, height)| (Phrase::name(&one.name.value), height));
    let mut told = Vec::new();
    if let (Some((name, line)), None) = (of_cabinets.next(), of_cabinets.next()) {
        told.extend(fronts.iter().filter_map(|front| apart(context, front, &name, line)));
        return told;
    }
    for run in &room.runs {
        let opening = |name: &str| fronts.iter().find(|front| front.of.opening.name.eq_ignore_ascii_case(name));
        let in_it = run.parts.iter().filter_map(|part| match &part.is {
            PartIs::Opening(name) => opening(&name.value),
            _ => None,
        });
        let in_it: Vec<_> = in_it.collect();
        let pairs = in_it.iter().zip(in_it.iter().skip(1));
        told.extend(pairs.filter_map(|(one, other)| {
            apart(context, other, &Phrase::name(&one.of.selection.name.value), &one.height)
        }));
    }
    told
}

/// The front of what stands under a counter: the joiner's panel, else the face that its sheet gives.
fn front(of: Placement<'_>) -> Option<Front<'_>> {
    if of.opening.takes_one(Trait::StandsTall) || !of.opening.sill.is_absent() || of.selection.settled().is_none() {
        return None;
    }
    let panel =
        fitting::panel(of.room, of.opening, of.option).or_else(|| panel_of(of.room, of.selection, of.option))?;
    let (range, at) = panel.height.get().zip(panel.height.span())?;
    Some(Front { of, height: Spanned::new(range.least.or(range.most)?, at) })
}

fn apart(context: &Context<'_>, front: &Front<'_>, other: &Phrase, line: &Spanned<Length>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let by = Some((front.height.value - line.value).abs()).filter(|by| *by > ONE_LINE)?;
    let message = phrase!(
        "the panel of `{}` is {} high, and the fronts of {} beside it {}: their lines are {} apart",
        front.of.selection.name.value,
        say(front.height.value),
        other,
        say(line.value),
        say(by)
    );
    let finding = front.of.finding(Severity::Query, front.height.span, message).also(line.span, "the other line");
    let remedy = "draw both to one line, or have the client agree to the step; what the sheet allows comes first";
    Some(finding.source("common practice: fronts keep one line").remedy(remedy))
}

/// A dishwasher's panel reaches below the top of the recess at the foot of its row, where the plinth goes through.
fn into_the_plinth(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let stands = fitted.opening.stands_on_the_floor() && fitted.opening.takes_one(Trait::WashesDishes);
    let row = fitted.room.part_of(&fitted.opening.name).filter(|_| stands)?;
    let of_run = row.run.map(|run| &run.toe_kick);
    let toe_kick = of_run.or_else(|| row.island.map(|island| &island.toe_kick))?.spanned()?;
    let panel = fitting::panel(fitted.room, fitted.opening, fitted.option)?;
    let height = panel.height.get().and_then(|height| height.least.or(height.most))?;
    let there = context.site.fitting(fitted).height.there?;
    let into = Some(height + toe_kick.value - there).filter(|into| *into > Length::ZERO)?;
    let message = phrase!(
        "the panel of `{}` is {} high and reaches {} into the plinth, which is {} high",
        fitted.selection.name.value,
        say(height),
        say(into),
        say(toe_kick.value)
    );
    let finding = fitted.finding(Severity::Query, panel.height.span()?, message).also(toe_kick.span, "the plinth");
    let finding = finding.source("common practice: a panel ends above the plinth");
    Some(
        finding
            .remedy("draw the panel anew from the finished floor and the toe kick, or have the plinth cut away there"),
    )
}

fn asked(option: &ProductOption) -> Option<&RequiredPanel> {
    option.fit.get()?.panel.get()
}

fn faults(context: &Context<'_>, panel: &Panel, asked: &RequiredPanel) -> Vec<(Span, Phrase)> {
    let say = |length| say(length, context.book.project.units);
    let outside = |way: &'static str, there: Length, asked: &LengthRange| {
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

    #[test]
    fn panels_under_a_counter_keep_the_line_of_the_fronts_beside_them() {
        let run = |fronts: &str, washer: &str| {
            Trial::of("fit/panel")
                .room(
                    "runs: {wet side: {parts: [{opening: dish}, {cabinet: sink base, width: 36\"}, {opening: wine}]}}",
                )
                .opening("dish", "{takes: panel dishwasher, width: 24\"}")
                .opening("wine", "{takes: refrigerator, sill: 4\"}")
                .selection(
                    "selection: Dishwasher\nkind: panel dishwasher\nplace: dish",
                    &format!("panel: {{height: {washer}, width: 23 3/4\"}}"),
                )
                .selection("selection: Cabinets\nkind: cabinet", fronts)
        };
        run("fronts: {doors: 2, height: 30 1/4\"}", "29 13/16\"")
            .finds("the panel of `Dishwasher` is 29 13/16\" (757 mm) high, and the fronts of `Cabinets` beside it 30 1/4\" (768 mm): their lines are 7/16\" (11.1 mm) apart")
            .weighs("query");
        run("fronts: {doors: 2, height: 30 1/4\"}", "30 1/4\"").stays_silent();
        run("fronts: {doors: 2, height: 30 1/4\"}", "30 3/16\"").stays_silent();
        run("fronts: {doors: 2}", "29 13/16\"").stays_silent();
        let two = |other: &str| {
            Trial::of("fit/panel")
                .room(
                    "runs: {wet side: {parts: [{opening: left}, {cabinet: sink base, width: 36\"}, {opening: right}]}}",
                )
                .opening("left", "{takes: panel dishwasher, width: 24\"}")
                .opening("right", "{takes: panel dishwasher, width: 24\"}")
                .selection("selection: First\nkind: panel dishwasher\nplace: left", "panel: {height: 30\"}")
                .selection("selection: Second\nkind: panel dishwasher\nplace: right", "")
                .selection("selection: Second panel\nkind: cabinet", &format!("size: {{height: {other}}}"))
        };
        two("29 1/2\"").finds_one();
        two("30\"").stays_silent();
    }

    /// Source: arithmetic: a bay of 34 3/4" over a plinth of 6" leaves 28 3/4".
    #[test]
    fn a_panel_ends_above_the_plinth_of_its_row() {
        let panel = |toe_kick: &str, high: &str| {
            Trial::of("fit/panel")
                .room(&format!("runs: {{w: {{toe kick: {toe_kick}, parts: [{{opening: bay}}]}}}}"))
                .opening("bay", "{takes: panel dishwasher, width: 24\", height: 34 3/4\"}")
                .selection("selection: It\nkind: panel dishwasher\nplace: bay", &format!("panel: {{height: {high}}}"))
        };
        panel("6\"", "30\"")
            .finds("the panel of `It` is 30\" (762 mm) high and reaches 1 1/4\" (31.8 mm) into the plinth, which is 6\" (152 mm) high")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:4:17"]);
        panel("4\"", "33 1/2\"").finds_one();
        panel("4\"", "30 3/4\"").stays_silent();
    }
}
