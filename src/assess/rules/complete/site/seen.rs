//! Whether the sides of cabinets that are seen are finished, where nobody says.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::finding::{Phrase, Remark, phrase};
use crate::site::seen_sides;
use crate::vocabulary::Kind;

/// Asks once of each room whose cabinets are to be ordered.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let cabinets = room
            .selections
            .iter()
            .find(|selection| selection.is(Kind::Cabinet) && selection.place.is_absent() && !selection.is_ordered());
        let Some(cabinets) = cabinets else { continue };
        let seen = seen_sides(context.site.plan(room), room);
        let unsaid = seen.iter().filter(|side| side.finished.is_none());
        let unsaid: Vec<Phrase> = unsaid.map(|side| phrase!("the {} of `{}`", side.side, side.of)).collect();
        if unsaid.is_empty() {
            continue;
        }
        let message = phrase!("nobody says whether what is seen is finished: {}", Phrase::joined(unsaid, ", "));
        let finding = Remark::query(cabinets.name.span, message).room(&room.folder).selection(&cabinets.name);
        findings.push(finding.remedy(
            "say it in the room's plan, `finished` at the part or the island's side, or `finished ends` at the run or at \
             these cabinets; or add a `panel` at the end of the row",
        ));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn ends_that_are_seen_are_asked_about_once_where_cabinets_are_ordered() {
        let kitchen = |run: &str, cabinets: &str| {
            Trial::of("complete/site")
                .room(&format!("runs: {{sink wall: {{left end: open, right end: open, {run}}}}}"))
                .selection("selection: Cabinets\nkind: cabinet", cabinets)
        };
        let parts = "parts: [{cabinet: plates, width: 24\"}, {cabinet: drawers, width: 24\"}]";
        kitchen(parts, "")
            .finds("nobody says whether what is seen is finished: the left end of `plates`, the right end of `drawers`")
            .weighs("query");
        kitchen(&format!("finished ends: both, {parts}"), "").stays_silent();
        kitchen(parts, "finished ends: all").stays_silent();
        Trial::of("complete/site").room(&format!("runs: {{sink wall: {{right end: open, {parts}}}}}")).stays_silent();
    }
}
