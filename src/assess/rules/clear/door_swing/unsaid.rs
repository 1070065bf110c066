//! Doors of which nobody says where they swing, or on which side they hang: where it makes a difference.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::book::{DoorHinge, DoorSwing, Doorway};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::plan::{Hole, HoleIs, Plan};
use crate::source::Span;
use crate::vocabulary::Words;

use super::{Opening, met_first};

/// What a door would meet.
struct Meets<'a> {
    hung: DoorHinge,
    name: &'a str,
    at: Span,
}

/// A door that swings into the room, and meets something on whichever side it hangs.
pub(super) fn either_way(context: &Context<'_>, plan: &Plan<'_>) -> Vec<Remark> {
    let _ = context;
    let told = doors(plan).filter(|(door, _)| door.swings.get() == Some(&DoorSwing::In) && door.hinge.is_absent());
    let told = told.filter_map(|(door, hole)| {
        let all = meets(plan, door, hole);
        let [one, other] = all.as_slice() else { return None };
        let names = if one.name == other.name {
            phrase!("`{}`", one.name)
        } else {
            phrase!("`{}` or `{}`", one.name, other.name)
        };
        let message = phrase!("`{}` meets {names} on whichever side it hangs", door.name.value, names);
        let finding = Remark::query(hole.span(), message).room(&plan.room.folder).part(hole.name());
        Some(finding.also(one.at, Phrase::name(one.name)).remedy("let it swing out or slide, or move what it meets"))
    });
    told.collect()
}

/// Asks for what nobody says of a door, where it may meet something.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for plan in context.book.rooms.iter().filter_map(|room| context.site.plan(room)) {
        findings.extend(doors(plan).filter_map(|(door, hole)| unsaid(plan, door, hole)));
    }
}

fn unsaid(plan: &Plan<'_>, door: &Doorway, hole: &Hole<'_>) -> Option<Remark> {
    let all = meets(plan, door, hole);
    let first = all.first()?;
    let swings = door.swings.get() == Some(&DoorSwing::In);
    if swings && all.len() > 1 {
        return None;
    }
    let name = &door.name.value;
    let (side, met) = (first.hung, first.name);
    let message = match (swings, door.hinge.get()) {
        (true, _) => {
            phrase!("nobody says on which side `{name}` hangs: on the {side} it meets `{met}`", name, side.word(), met)
        }
        (false, Some(_)) => {
            phrase!("nobody says whether `{name}` swings into the room: there it meets `{met}`", name, met)
        }
        (false, None) => phrase!(
            "nobody says where `{name}` swings, nor on which side it hangs: into the room, hung on the {side}, it meets `{met}`",
            name,
            side.word(),
            met
        ),
    };
    let finding = Remark { caution: None, ..Remark::query(hole.span(), message) }.room(&plan.room.folder);
    let finding = finding.thing(&door.name).also(first.at, Phrase::name(met));
    Some(
        finding.remedy(
            "add `swings: in` or `swings: out`, and `hinge: left` or `hinge: right` as seen from inside the room",
        ),
    )
}

/// Doors with a leaf of which the side or the way is nowhere said; one that slides or swings out needs neither.
fn doors<'p, 'a>(plan: &'p Plan<'a>) -> impl Iterator<Item = (&'a Doorway, &'p Hole<'a>)> {
    plan.holes.iter().filter_map(|hole| {
        let HoleIs::Door(door) = hole.is else { return None };
        let is_read = !door.swings.is_faulty() && !door.hinge.is_faulty() && !door.slides.is_faulty();
        let may_swing = door.slides.get() != Some(&true) && door.swings.get() != Some(&DoorSwing::Out);
        let is_told = !door.swings.is_absent() && !door.hinge.is_absent();
        (is_read && may_swing && !is_told && !door.has_no_leaf()).then_some((door, hole))
    })
}

/// What it would meet, hung on each side that it may hang on.
fn meets<'p>(plan: &'p Plan<'_>, door: &Doorway, hole: &'p Hole<'_>) -> Vec<Meets<'p>> {
    let hinges = door.hinge.get().map_or(vec![DoorHinge::Left, DoorHinge::Right], |hinge| vec![*hinge]);
    let meets = |hung: DoorHinge| {
        let sweeps = plan.door_sweeps_hung(hole, hung).into_iter();
        let opened = sweeps.map(|sweep| Opening { name: hole.name(), sweep, span: hole.span(), hole: Some(hole) });
        let first = opened.filter_map(|opened| met_first(plan, &opened).into_iter().min_by_key(|(_, free)| *free));
        let (body, _) = first.min_by_key(|(_, free)| *free)?;
        Some(Meets { hung, name: body.name, at: body.span })
    };
    hinges.into_iter().filter_map(meets).collect()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn bath(rule: &'static str, door: &str, centre: &str) -> Trial {
        Trial::of(rule).room(&format!(
            "outline: 5' x 5'\ndoors: {{bath door: {{wall: C, at: 13\", width: 34\", leaf: 34\"{door}}}}}\nfixtures:\n  wc: {{wall: A, centre: {centre}, width: 15\", depth: 30\", height: 30\", takes: toilet}}"
        ))
    }

    /// Source: trade reports F-125.
    #[test]
    fn where_a_door_swings_is_asked_where_it_makes_a_difference() {
        let ask = |door: &str, centre: &str| bath("complete/site", door, centre);
        ask("", "30\"")
            .finds("nobody says where `bath door` swings, nor on which side it hangs: into the room, hung on the left, it meets `wc`")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:3:9"])
            .remedies("add `swings: in` or `swings: out`, and `hinge: left` or `hinge: right` as seen from inside the room");
        ask(", hinge: left", "30\"").finds("nobody says whether `bath door` swings into the room: there it meets `wc`");
        ask(", swings: out", "30\"").stays_silent();
        ask(", slides: true", "30\"").stays_silent();
        ask(", swings: in, hinge: left", "30\"").stays_silent();
        // Either way it meets it: that is told, and nothing is asked.
        ask(", swings: in", "30\"").stays_silent();
    }

    #[test]
    fn what_is_met_on_either_side_is_told() {
        let swings = |door: &str, centre: &str| bath("clear/door-swing", door, centre);
        swings(", swings: in", "30\"").finds("`bath door` meets `wc` on whichever side it hangs").weighs("query");
        swings("", "30\"").stays_silent();
        swings(", swings: out", "30\"").stays_silent();
    }
}
