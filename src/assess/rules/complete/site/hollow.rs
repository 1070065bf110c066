//! The wall that a recessed cabinet goes into.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::book::DetailName;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::vocabulary::{Hazard, Kind, Mention};

/// Asks what is not known of a wall that is cut open for a cabinet or a lit mirror: each opening once.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    let mut asked = Vec::new();
    for fitted in context.site.fitted().filter(|one| one.selection.is_any(&[Kind::MirrorCabinet, Kind::LitMirror])) {
        let Some(finding) = unsaid(&fitted).filter(|_| !asked.contains(&fitted.opening.span)) else { continue };
        asked.push(fitted.opening.span);
        findings.push(finding);
    }
}

fn unsaid(fitted: &Placement<'_>) -> Option<Remark> {
    let (opening, option) = (fitted.opening, fitted.option);
    let recess = option.detail(DetailName::Recess);
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
    } else if !holds {
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
