//! A height whose floor is not known, and a width whose walls are not.

mod services;

use crate::assess::Context;
use crate::assess::rules::fit::rough_in;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{Opening, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::site;
use crate::site::fitting::{floor_is_unknown, is_from_the_present_floor};

declare! {
    /// A dimension is taken from a floor or a wall, and nobody says from which face
    ///
    /// ## What it checks
    /// A room that gets a new floor (a `floor`, or a `tile` whose pattern, name or `on` says floor)
    /// while openings in it stand on the floor, with neither `floor build-up` nor the opening's
    /// `measured from`. A height that was read on site from the floor of that day, of a bottom, a counter
    /// or a service, where nobody says what is still to be laid on it: it is not known, and the older one
    /// does not count in its place. The height of a service that its words count from a floor without its covering (subfloor,
    /// slab) is asked about. And an opening that was measured between studs, where nobody says what
    /// is still to come on them: its width is not known, and no fit is decided on it.
    ///
    /// ## Why it matters
    /// Right number, wrong datum. Tile laid up to a dishwasher traps it; a panel cut from the
    /// subfloor does not open. {1/2"} of board and {1/2"} of tile on each side take
    /// {2"} from an alcove.
    ///
    /// ## Remedy
    /// Write `floor build-up` in `room.yaml` (all that is still to be laid), or `measured from:
    /// finished floor` at each opening. Between studs, write `wall build-up`: board, mortar and tile, on
    /// each wall that gets them.
    ///
    /// ## Example
    /// ```yaml
    /// floor build-up: 3/4"     # or, at an opening: measured from: finished floor
    /// openings:
    ///   tub: {takes: bathtub, width: 61 3/4", measured between: studs, wall build-up: {left: 7/8", right: 7/8"}}
    /// ```
    ///
    /// ## Source
    /// Common practice: each dimension is kept with its datum.
    "complete/datum", Stop,
    due: WithThing, tells: [Installer],
    judges: placed,
    sources: ["trade practice: the datum with each dimension"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let unknown = room.openings.iter().filter(|opening| opening.to_come_on_its_walls().is_none());
        findings.extend(unknown.filter_map(|opening| between_studs(room, opening)));
    }
    findings.extend(context.site.fitted().flat_map(|fitted| rough_in::from_bare_studs(&fitted)));
    for room in &context.book.rooms {
        findings.extend(room.openings.iter().filter_map(|opening| read_from_the_present_floor(room, opening)));
        findings.extend(room.openings.iter().filter_map(|opening| services::from_the_rough_floor(room, opening)));
    }
    for room in context.book.rooms.iter().filter(|room| room.floor_build_up.is_absent()) {
        let Some(floor) = room.selections.iter().find(|selection| site::is_floor(selection)) else { continue };
        let unsaid: Vec<&Opening> = room.openings.iter().filter(|opening| floor_is_unknown(room, opening)).collect();
        if let Some(first) = unsaid.first() {
            let names: Vec<Phrase> = unsaid.iter().map(|opening| Phrase::name(&opening.name.value)).collect();
            let message = phrase!(
                "the room gets a new floor (`{}`), and nobody says from which floor {} was measured",
                floor.name.value,
                Phrase::joined(names, ", ")
            );
            findings.push(finding(room, first, floor, message));
        }
    }
}

fn between_studs(room: &Room, opening: &Opening) -> Option<Remark> {
    let name = &opening.name.value;
    let message = phrase!("the opening `{name}` was measured between studs, and nobody says what comes on them", name);
    let finding = Remark::stop(opening.measured_between.span()?, message);
    let remedy = "write `wall build-up: {left: …, right: …, back: …}`, or measure it again between the finished walls";
    Some(finding.room(&room.folder).opening(&opening.name).remedy(remedy))
}

/// Heights that were read from the floor of that day. Where the opening's own height hangs on the same, it asks.
fn read_from_the_present_floor(room: &Room, opening: &Opening) -> Option<Remark> {
    let asks =
        !opening.unlevelled.is_empty() && !is_from_the_present_floor(room, opening) && !room.floor_build_up.is_faulty();
    let name = asks.then_some(&opening.name.value)?;
    let message = phrase!(
        "heights at `{name}` were read from the floor of that day, and nobody says what is still to be laid on it: they \
         are not known",
        name
    );
    let finding = Remark::stop(opening.span, message).room(&room.folder).opening(&opening.name);
    let floor = room.selections.iter().find(|selection| site::is_floor(selection));
    let finding =
        floor.into_iter().fold(finding, |finding, floor| finding.also(floor.span, "the floor still to be laid"));
    Some(finding.remedy("write `floor build-up: …` in `room.yaml`, or read them again from the finished floor"))
}

fn finding(room: &Room, opening: &Opening, floor: &Selection, message: Phrase) -> Remark {
    let finding = Remark::stop(opening.span, message).room(&room.folder).opening(&opening.name);
    let remedy = "write `floor build-up: …` in `room.yaml`, or `measured from: finished floor` at the opening";
    finding.also(floor.span, "the floor still to be laid").remedy(remedy)
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
        trial(floor, ", measured from: present floor", "").finds_one();
        trial(floor, ", measured from: present floor", "floor build-up: 3/4\"").stays_silent();
        trial(floor, ", sill: 31\"", "").stays_silent();
        trial(floor, "", "floor build-up: 3/4\"").stays_silent();
        trial("selection: Wall tile\nkind: tile", "", "").stays_silent();
    }

    /// Source: trade reports F-77, F-85: measured from the stud, board 1/2" and tile 1/2" to come; a tub
    /// in an alcove.
    #[test]
    fn a_width_between_studs_asks_what_comes_on_them() {
        let alcove = |rule: &'static str, more: &str| {
            Trial::of(rule)
                .opening("alcove", &format!("{{takes: bathtub, width: 61 1/2\"{more}}}"))
                .selection("selection: Tub\nkind: bathtub\nplace: alcove", "size: {width: 60\"}")
        };
        let studs = ", measured between: studs";
        alcove("complete/datum", studs)
            .finds("the opening `alcove` was measured between studs, and nobody says what comes on them")
            .weighs("stop");
        alcove("complete/datum", &format!("{studs}, wall build-up: {{left: 1\", right: 1\"}}")).stays_silent();
        alcove("complete/datum", "").stays_silent();
        alcove("fit/width", &format!("{studs}, wall build-up: {{left: 1\", right: 1\"}}")).finds(
            "the opening `alcove` is 59 1/2\" (1511 mm) wide, 1/2\" (12.7 mm) less than the 60\" (1524 mm) needed",
        );
        alcove("fit/width", &format!("{studs}, wall build-up: {{left: 3/4\"}}")).stays_silent();
        alcove("fit/width", studs).stays_silent();
    }
}
