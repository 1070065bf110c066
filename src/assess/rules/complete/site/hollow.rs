//! The wall that a recessed cabinet or a tank goes into, and how deep a valve sits in it.

use crate::assess::rules::Findings;
use crate::assess::rules::fit::recess::behind_a_toilet;
use crate::assess::{Context, about};
use crate::book::{DetailName, Opening, ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::source::Span;
use crate::vocabulary::{Hazard, Kind, Mention};

/// Asks what is not known of a wall that is cut open for a cabinet or a lit mirror: each opening once.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    let mut asked = Vec::new();
    let placed = context.site.fitted().filter(|one| one.selection.is_any(&[Kind::MirrorCabinet, Kind::LitMirror]));
    let tanks = context.site.fitted().filter(|one| one.selection.is(Kind::Cistern));
    let tanks = tanks.chain(context.site.options().filter_map(behind_a_toilet));
    for fitted in placed.chain(tanks) {
        let Some(finding) = unsaid(&fitted).filter(|_| !asked.contains(&fitted.opening.span)) else { continue };
        asked.push(fitted.opening.span);
        findings.push(finding);
    }
    let valves = context.site.options().filter_map(valve_unsaid);
    valves.for_each(|(at, finding)| {
        if !asked.contains(&at) {
            asked.push(at);
            findings.push(finding);
        }
    });
}

/// A valve in the wall whose sheet is exact, and of which nobody says how deep it sits.
fn valve_unsaid((room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<(Span, Remark)> {
    option.fit.get()?.valve_depth.get()?;
    let name = &selection.name.value;
    let opening = selection.place.get().and_then(|place| room.opening(place));
    let hollow = opening.and_then(|opening| opening.hollow.get());
    let is_unread = |opening: &&Opening| {
        opening.hollow.is_faulty() || hollow.is_some_and(|hollow| hollow.valve.is_faulty() || hollow.from.is_faulty())
    };
    if opening.is_some_and(|opening| is_unread(&opening)) || selection.place.is_faulty() {
        return None;
    }
    let measure =
        "measure it before the wall is closed, and add it to the opening: `hollow: {valve: …, from: …, build-up: …}`";
    let (at, message, remedy) = match (opening, hollow.and_then(|hollow| hollow.valve.span())) {
        (None, _) if selection.place.get().is_some() => return None,
        (None, _) => (
            selection.name.span,
            phrase!("nobody says how deep in the wall the valve of `{name}` sits: it has no opening", name),
            "give it an opening, with `place: …`, and say there how deep the valve sits: `hollow: {valve: …, from: …}`",
        ),
        (Some(opening), None) => {
            (opening.name.span, phrase!("nobody says how deep in the wall the valve of `{name}` sits", name), measure)
        }
        (Some(_), Some(at)) if hollow.is_some_and(|hollow| hollow.from.is_absent()) => {
            (at, phrase!("nobody says what the depth of the valve of `{name}` was measured from", name), measure)
        }
        _ => return None,
    };
    let finding = about(room, selection, option, Severity::Query, at, message).remedy(remedy);
    Some((at, Remark { caution: None, ..finding }))
}

fn unsaid(fitted: &Placement<'_>) -> Option<Remark> {
    let (opening, option) = (fitted.opening, fitted.option);
    let recess = option.detail(DetailName::Recess);
    if recess.is_none() && fitted.selection.is(Kind::Cistern) {
        return None;
    }
    if recess.is_none() && !Mention::Recessed.is_in(option.mount_words()) || opening.hollow.is_faulty() {
        return None;
    }
    let name = &fitted.selection.name.value;
    let hollow = opening.hollow.get();
    let cavity = hollow.is_some_and(|hollow| !hollow.cavity.is_absent());
    let holds = hollow.is_some_and(|hollow| !hollow.holds.is_absent());
    let (message, remedy) = if recess.is_none() {
        (
            phrase!("`{name}` is recessed, and nobody says how far it goes into the wall", name),
            "add `recess: …` from its sheet: from the finished face to its back",
        )
    } else if !cavity {
        (
            phrase!("`{name}` goes into the wall, and nobody says how deep that is hollow", name),
            "probe the wall, and add it to the opening: `hollow: {cavity: …, build-up: …, holds: nothing}`",
        )
    } else if !holds && !fitted.selection.is(Kind::Cistern) {
        (
            phrase!("`{name}` goes into the wall, and nobody says whether a pipe or a cable runs there", name),
            "probe the wall, and add what runs there to the opening: `hollow: {holds: nothing}`, if it is so",
        )
    } else {
        return None;
    };
    let finding = fitted.finding(Severity::Query, opening.name.span, message).remedy(remedy);
    Some(Remark { caution: Some(Hazard::Power), ..finding })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade reports F-79: a valve that is set too deep takes no trim.
    #[test]
    fn how_deep_a_valve_sits_is_asked_where_its_sheet_is_exact() {
        let valve = |kind: &str, opening: &str| {
            let shower = |place: &str, trial: Trial| {
                trial.selection(
                    &format!("selection: It\nkind: {kind}{place}"),
                    "fit: {sheet: {name: V, revision: B}, valve depth: 2 3/8\" to 3 1/2\"}",
                )
            };
            match opening {
                "" => shower("", Trial::of("complete/site")),
                fields => shower(
                    "\nplace: bay",
                    Trial::of("complete/site").opening("bay", &format!("{{takes: {kind}{fields}}}")),
                ),
            }
        };
        for kind in ["shower set", "bath filler"] {
            valve(kind, "")
                .finds("nobody says how deep in the wall the valve of `It` sits: it has no opening")
                .weighs("query")
                .points_at(&["rooms/kitchen/selection-0.yaml:1:12"]);
            valve(kind, ", width: 12\"")
                .finds("nobody says how deep in the wall the valve of `It` sits")
                .points_at(&["rooms/kitchen/room.yaml:3:3"]);
            valve(kind, ", hollow: {valve: 3\"}")
                .finds("nobody says what the depth of the valve of `It` was measured from");
            valve(kind, ", hollow: {valve: 3\", from: finished wall}").stays_silent();
            valve(kind, ", hollow: {valve: 3\", from: studs, build-up: 1\"}").stays_silent();
        }
        Trial::of("complete/site").selection("selection: It\nkind: shower set", "valve: VB-2").stays_silent();
    }

    #[test]
    fn the_wall_that_a_tank_stands_in_is_probed() {
        let tank = |toilet: &str| {
            Trial::of("complete/site")
                .opening("wc", &format!("{{takes: toilet{toilet}}}"))
                .selection("selection: Tank\nkind: cistern", "recess: 165 mm")
        };
        tank("").finds("`Tank` goes into the wall, and nobody says how deep that is hollow").weighs("query");
        tank(", hollow: {cavity: 180 mm}").stays_silent();
    }

    /// Source: trade reports F-83: a vent pipe in the bay, found with the saw.
    #[test]
    fn the_wall_that_a_recessed_cabinet_goes_into_is_probed() {
        let cabinet = |opening: &str, option: &str| {
            Trial::of("complete/site")
                .opening("bay", &format!("{{takes: mirror cabinet, width: 14 1/2\"{opening}}}"))
                .selection("selection: Mirror\nkind: mirror cabinet\nplace: bay", option)
        };
        cabinet("", "recess: 3 1/2\"")
            .finds("`Mirror` goes into the wall, and nobody says how deep that is hollow")
            .weighs("query")
            .cautions()
            .points_at(&["rooms/kitchen/room.yaml:3:3"]);
        cabinet(", hollow: {cavity: 3 1/2\"}", "recess: 3 1/2\"")
            .finds("`Mirror` goes into the wall, and nobody says whether a pipe or a cable runs there");
        cabinet(", hollow: {cavity: 3 1/2\", holds: nothing}", "recess: 3 1/2\"").stays_silent();
        cabinet(", hollow: {cavity: 3 1/2\", holds: nothing}", "mount: recessed")
            .finds("`Mirror` is recessed, and nobody says how far it goes into the wall");
        cabinet("", "mount: on the wall").stays_silent();
        cabinet("", "").stays_silent();
    }
}
