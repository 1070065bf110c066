//! Whether the pipes over a knee space are covered, where a room is planned for access.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::book::KneeSpace;
use crate::finding::{Remark, phrase};
use crate::site::distances::{knees_under_a_bowl, pipes_covered, planned_for_access};

/// Asks of each knee space under a basin or a sink.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in context.book.rooms.iter().filter(|room| planned_for_access(context.book, room)) {
        let unsaid = |space: &&KneeSpace| knees_under_a_bowl(room, space) && pipes_covered(room, space).is_none();
        findings.extend(room.access.knee_spaces.iter().filter(unsaid).map(|space| {
            let name = &space.name.value;
            let message = phrase!("nobody says whether the pipes over the knee space at `{name}` are covered", name);
            let finding = Remark::query(space.name.span, message).room(&room.folder).thing(&space.name);
            finding.source("2010 ADA Standards 606.5").remedy(
                "add `pipes` to that knee space of the room, or order a cover for trap and supplies with the bowl: who cannot \
                 feel it is burnt",
            )
        }));
    }
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
        ada(room("basin: {width: 36\", pipes: covered}", "")).stays_silent();
        ada(room("basin: {width: 36\"}", ", {name: trap cover}")).stays_silent();
        ada(room("desk: {width: 36\"}", "")).stays_silent();
        room("basin: {width: 36\"}", "").stays_silent();
    }
}
