//! What is let into a wall against the wall's hollow.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{DetailName, ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::outlets::to_come_on_the_studs;
use crate::source::Span;
use crate::units::with_article;
use crate::units::{Length, Wrote};
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// A recessed cabinet, niche or box goes deeper into the wall than the wall is hollow
    ///
    /// ## What it checks
    /// How far the thing goes into the wall (`recess`, else the depth that the sheet of a cabinet wants for its opening, or
    /// a tank's own) against the cavity between the studs and the
    /// board and tile still to come (of the `hollow`, else the opening's `wall build-up`); and whether something runs
    /// there already. A tank with no opening of its own stands behind the room's only toilet. What of it is not known of a
    /// recessed cabinet `complete/site` asks.
    ///
    /// ## Why it matters
    /// A vent pipe behind the mirror cabinet is found with the saw.
    ///
    /// ## Remedy
    /// Probe the wall, choose a shallower one, or have it stand out of the wall.
    ///
    /// ## Example
    /// ```yaml
    /// hollow: {cavity: 3 1/2", build-up: 7/8", holds: vent pipe}
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement.
    "fit/recess", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: [MirrorCabinet, Tap, ShowerSet, CeilingLight, Fan, LitMirror, Cistern],
    sources: ["the maker's sheet", "the field measurement"],
    caution: Some(Hazard::Power),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.site.fitted().filter_map(|fitted| judge(context, &fitted)));
    findings.extend(context.site.options().filter_map(|one| judge(context, &behind_a_toilet(one)?)));
}

/// A tank that has no opening of its own stands in the wall behind the room's only toilet.
pub(in crate::assess::rules) fn behind_a_toilet<'a>(
    (room, selection, option): (&'a Room, &'a Selection, &'a ProductOption),
) -> Option<Placement<'a>> {
    if !selection.is(Kind::Cistern) || !selection.place.is_absent() {
        return None;
    }
    let mut toilets = room.openings.iter().filter(|opening| opening.takes_a(Kind::Toilet));
    let only = toilets.next().filter(|_| toilets.next().is_none())?;
    Some(Placement::at((room, only), (selection, option)))
}

fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let (recess, at) = goes_in(fitted)?;
    let hollow = fitted.opening.hollow.get()?;
    let name = &fitted.selection.name.value;
    if let Some(holds) = hollow.holds() {
        let message = phrase!("`{name}` goes into a wall that holds {}", name, with_article(Wrote(&holds.value)));
        let finding = fitted.finding(Severity::Stop, holds.span, message);
        return Some(finding.remedy("have it moved by who answers for it, or choose what stands on the wall"));
    }
    let build_up = to_come_on_the_studs(fitted.opening).unwrap_or(Length::ZERO);
    let there = *hollow.cavity.get()? + build_up;
    if recess <= there {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message =
        phrase!("`{name}` goes {} into the wall, {} deeper than it is hollow", name, say(recess), say(recess - there));
    let finding = fitted.finding(Severity::Stop, at, message);
    Some(finding.remedy("choose a shallower one, or have it stand out of the wall by so much"))
}

/// How far it goes into a wall that was probed for it: as it says, else as deep as the sheet of a cabinet wants its
/// opening, and as a tank is.
fn goes_in(fitted: &Placement<'_>) -> Option<(Length, Span)> {
    let (selection, option) = (fitted.selection, fitted.option);
    let of_sheet = || {
        let depth = option.fit.get()?.opening.depth.spanned().filter(|_| selection.is(Kind::MirrorCabinet))?;
        Some((depth.value.least?, depth.span))
    };
    let of_tank = || {
        let depth = option.size.depth.spanned().filter(|_| selection.is(Kind::Cistern))?;
        Some((depth.value, depth.span))
    };
    option.length(DetailName::Recess).or_else(of_sheet).or_else(of_tank)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn mirror(hollow: &str) -> Trial {
        Trial::of("fit/recess")
            .opening("bay", &format!("{{takes: mirror cabinet, hollow: {hollow}}}"))
            .selection("selection: Mirror\nkind: mirror cabinet\nplace: bay", "recess: 4\"")
    }

    /// Source: trade reports F-83: a bay 3 1/2" deep, and a vent pipe inside.
    #[test]
    fn a_cabinet_deeper_than_its_bay_and_a_pipe_in_it_stop() {
        mirror("{cavity: 3 1/2\"}")
            .finds("`Mirror` goes 4\" (102 mm) into the wall, 1/2\" (12.7 mm) deeper than it is hollow");
        mirror("{cavity: 3 1/2\", build-up: 1/2\"}").stays_silent();
        for word in ["nothing", "Nothing", "none", "empty"] {
            mirror(&format!("{{cavity: 5 1/2\", holds: {word}}}")).stays_silent();
        }
        mirror("{cavity: 5 1/2\", holds: vent pipe}")
            .finds("`Mirror` goes into a wall that holds a vent pipe")
            .cautions();
    }

    #[test]
    fn a_tank_stands_in_the_wall_behind_the_room_s_only_toilet() {
        let tank = |cavity: &str, other: &str| {
            Trial::of("fit/recess")
                .opening("toilet", &format!("{{takes: toilet, hollow: {{cavity: {cavity}, holds: nothing}}{other}}}"))
                .selection("selection: Tank\nkind: cistern", "recess: 120 mm")
        };
        tank("75 mm", "")
            .finds("`Tank` goes ≈ 4 3/4\" (120 mm) into the wall, ≈ 1 3/4\" (45 mm) deeper than it is hollow")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:9"]);
        tank("150 mm", "").stays_silent();
        tank("75 mm", ", wall build-up: {back: 50 mm}").stays_silent();
        tank("75 mm", "").opening("other", "{takes: toilet}").stays_silent();
    }

    /// Where nobody says how far it goes in, the sheet of the cabinet and the depth of the tank do.
    #[test]
    fn the_depth_that_the_sheet_wants_for_the_opening_is_in_the_wall() {
        let mirror = |hollow: &str| {
            Trial::of("fit/recess")
                .opening("bay", &format!("{{takes: mirror cabinet, depth: 3 3/4\"{hollow}}}"))
                .selection(
                    "selection: Mirror\nkind: mirror cabinet\nplace: bay",
                    "size: {depth: 4 1/2\"}\nfit: {opening: {depth: at least 3 1/2\"}}",
                )
        };
        mirror(", hollow: {cavity: 2 1/2\"}")
            .finds_one()
            .says("3 1/2\" (89 mm) into the wall, 1\" (25.4 mm) deeper")
            .weighs("stop");
        mirror(", hollow: {cavity: 5 1/2\", holds: vent pipe}").finds_one().says("goes into a wall that holds");
        mirror(", hollow: {cavity: 3 1/2\"}").stays_silent();
        mirror(", hollow: {cavity: 2 1/2\", build-up: 1\"}").stays_silent();
        mirror("").stays_silent();
        let tank = |cavity: &str| {
            Trial::of("fit/recess")
                .opening("toilet", &format!("{{takes: toilet, hollow: {{cavity: {cavity}}}}}"))
                .selection("selection: Tank\nkind: cistern", "size: {width: 500 mm, depth: 120 mm, height: 1120 mm}")
        };
        tank("80 mm").finds_one().weighs("stop");
        tank("120 mm").stays_silent();
    }
}
