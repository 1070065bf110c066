//! Whether the pipes over a knee space are covered, where a room is planned for access.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::book::{KneeSpace, ProductOption, Room, Selection};
use crate::finding::{Remark, phrase};
use crate::site::distances::{bowls, covered, knees_under_a_bowl, pipes_covered, planned_for_access};
use crate::vocabulary::{Kind, Mount};

/// How to answer.
const REMEDY: &str = "add `pipes` to that knee space of the room, or order a cover for trap and supplies with the bowl: who cannot feel it is burnt";

/// Asks of each knee space under a basin or a sink, and of each basin that hangs on the wall with its pipes to be seen.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in context.book.rooms.iter().filter(|room| planned_for_access(context.book, room)) {
        let unsaid = |space: &&KneeSpace| {
            !space.pipes.is_faulty() && knees_under_a_bowl(room, space) && pipes_covered(room, space).is_none()
        };
        findings.extend(room.access.knee_spaces.iter().filter(unsaid).map(|space| {
            let name = &space.name.value;
            let message = phrase!("nobody says whether the pipes over the knee space at `{name}` are covered", name);
            let finding = Remark::query(space.name.span, message).room(&room.folder).thing(&space.name);
            finding.source("2010 ADA Standards 606.5").remedy(REMEDY)
        }));
        findings.extend(room.selections.iter().filter(|basin| hangs_uncovered(room, basin)).map(|basin| {
            let message = phrase!("nobody says whether the pipes under `{}` are covered", basin.name.value);
            let finding = Remark::query(basin.name.span, message).room(&room.folder).selection(&basin.name);
            finding.source("2010 ADA Standards 606.5").remedy(REMEDY)
        }));
    }
}

/// Whether a basin hangs on the wall, no knee space is told under it, and nothing covers its pipes.
fn hangs_uncovered(room: &Room, basin: &Selection) -> bool {
    let on_the_wall = |option: &ProductOption| option.mount() == Some(Mount::InNoCabinet);
    let hangs = basin.is(Kind::Basin) && basin.standing().iter().any(on_the_wall);
    let is_told = room.access.knee_spaces.iter().any(|space| bowls(room, space).any(|bowl| bowl.span == basin.span));
    hangs && !is_told && covered(room, std::iter::once(basin)).is_none()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: 2010 ADA Standards 606.5: pipes under lavatories and sinks are insulated or kept from touch.
    #[test]
    fn the_pipes_over_a_knee_space_are_asked_about_in_a_room_planned_for_access() {
        let room = |knees: &str, basin: &str| {
            Trial::of("complete/site")
                .room(&format!("access: {{knee spaces: {{{knees}}}}}"))
                .selection("selection: Basin\nkind: basin", &format!("accessories: [{{name: mixer tap}}{basin}]"))
        };
        let ada = |trial: Trial| trial.book("access profile: 2010 ADA");
        ada(room("basin: {width: 36\"}", ""))
            .finds("nobody says whether the pipes over the knee space at `basin` are covered")
            .weighs("query");
        for covered in ["covered", "insulated", "wrapped", "shielded"] {
            ada(room(&format!("basin: {{width: 36\", pipes: {covered}}}"), "")).stays_silent();
        }
        // What can't be read is told as that, once.
        ada(room("basin: {width: 36\", pipes: yellow}", "")).of_any_yaml().stays_silent();
        ada(room("basin: {width: 36\"}", ", {name: trap cover}")).stays_silent();
        ada(room("desk: {width: 36\"}", "")).stays_silent();
        room("basin: {width: 36\"}", "").stays_silent();
    }

    /// Source: 2010 ADA Standards 606.5, of a basin under which nobody wrote a knee space.
    #[test]
    fn the_pipes_of_a_basin_on_the_wall_are_asked_about_too() {
        let basin = |mount: &str, with: &str, drain: &str| {
            Trial::of("complete/site")
                .opening("place", &format!("{{takes: basin, service: {{drain: '{drain}'}}}}"))
                .selection(
                    "selection: Basin\nkind: basin\nplace: place",
                    &format!("mount: {mount}\naccessories: [{{name: mixer tap}}{with}]"),
                )
        };
        let ada = |trial: Trial| trial.book("access profile: 2010 ADA");
        ada(basin("wall-hung", "", "32 mm, 450 mm AFF"))
            .finds("nobody says whether the pipes under `Basin` are covered")
            .weighs("query");
        ada(basin("on the wall", "", "32 mm, bare")).finds_one();
        ada(basin("wall-hung", ", {name: trap cover}", "32 mm")).stays_silent();
        ada(basin("wall-hung", "", "32 mm, trap insulated")).stays_silent();
        let knees = "access: {knee spaces: {basin: {width: 36\", pipes: covered}}}";
        ada(basin("undermount", "", "32 mm")).room(knees).stays_silent();
        basin("wall-hung", "", "32 mm").stays_silent();
    }
}
