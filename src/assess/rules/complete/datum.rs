//! A height whose floor is not known.

use crate::assess::Context;
use crate::assess::rules::{Check, declare};
use crate::book::{Opening, Room, Selection};
use crate::finding::{Finding, Severity};

declare! {
    /// Heights are taken from a floor, and nobody says which
    ///
    /// ## What it checks
    /// A room that gets a new floor (a `floor`, or a `tile` whose pattern, name or `on` says floor)
    /// while openings in it stand on the floor, with neither `floor build-up` nor the opening's
    /// `measured from`.
    ///
    /// ## Why it matters
    /// Right number, wrong datum. Tile laid up to a dishwasher traps it; a panel cut from the
    /// subfloor does not open.
    ///
    /// ## Remedy
    /// Write `floor build-up` in `room.yaml` (all that is still to be laid), or `measured from:
    /// finished floor` at each opening.
    ///
    /// ## Example
    /// ```yaml
    /// floor build-up: 3/4"     # or, at an opening: measured from: finished floor
    /// ```
    ///
    /// ## Source
    /// trade reports F-17 to F-25 and cautions 5 (store the datum with each dimension).
    "complete/datum", Stop,
    sources: ["trade practice: the datum with each dimension"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for room in context.book.rooms.iter().filter(|room| room.floor_build_up.is_absent()) {
        let Some(floor) = room.selections.iter().find(|selection| is_floor(selection)) else { continue };
        let unsaid: Vec<&Opening> = room.openings.iter().filter(|opening| unsaid(opening)).collect();
        if let Some(first) = unsaid.first() {
            let names: Vec<String> = unsaid.iter().map(|opening| format!("`{}`", opening.name.value)).collect();
            let message = format!(
                "the room gets a new floor (`{}`), and nobody says from which floor {} was measured",
                floor.name.value,
                names.join(", ")
            );
            findings.push(finding(room, first, floor, message));
        }
    }
}

fn finding(room: &Room, opening: &Opening, floor: &Selection, message: String) -> Finding {
    let finding =
        Finding::new(RULE.code, Severity::Stop, opening.span, message).room(&room.folder).item(&opening.name.value);
    let remedy = "write `floor build-up: …` in `room.yaml`, or `measured from: finished floor` at the opening";
    finding.also(floor.span, "the floor still to be laid").remedy(remedy)
}

/// A height that was taken from the floor, without a word about which.
fn unsaid(opening: &Opening) -> bool {
    opening.sill.is_absent() && !opening.height.is_absent() && opening.from_finished_floor.is_absent()
}

/// A floor finish: a kind of its own, or tile that says so.
fn is_floor(selection: &Selection) -> bool {
    match selection.kind.get().map(|kind| kind.name) {
        Some("floor") => true,
        Some("tile") => selection.name.value.to_lowercase().contains("floor"),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(floor: &str, opening: &str, room: &str) -> Trial {
        let trial = Trial::of("complete/datum")
            .room(room)
            .opening("hole", &format!("{{takes: dishwasher, height: 34\"{opening}}}"));
        trial.selection(floor, "thickness: 3/8\"")
    }

    /// Source: trade reports F-17, F-25: tile laid up to a dishwasher; boxes set on the subfloor.
    #[test]
    fn a_new_floor_asks_from_which_floor_an_opening_was_measured() {
        let floor = "selection: Floor tile\nkind: tile";
        trial(floor, "", "")
            .finds("the room gets a new floor (`Floor tile`), and nobody says from which floor `hole` was measured");
        trial(floor, ", measured from: finished floor", "").stays_silent();
        trial(floor, ", sill: 31\"", "").stays_silent();
        trial(floor, "", "floor build-up: 3/4\"").stays_silent();
        trial("selection: Wall tile\nkind: tile", "", "").stays_silent();
    }
}
