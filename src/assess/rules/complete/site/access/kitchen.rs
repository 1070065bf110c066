//! What nobody says of a kitchen that is planned for access.

use crate::assess::Context;
use crate::book::{AccessDistance, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::vocabulary::{Kind, Trait};

use super::{has, is_told};

/// Asks of a kitchen for all that is not known of it at once.
pub(super) fn ask(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let is_one = |selection: &&Selection| selection.is(Kind::Sink) || selection.has(Trait::Cooks);
    let thing = room.selections.iter().find(is_one).filter(|_| !has(room, &[Kind::Toilet]))?;
    let told = |name| is_told(context, room, &[name]);
    let access = &room.access;
    let sink = has(room, &[Kind::Sink]);
    let cooked = room.selections.iter().any(|selection| selection.has(Trait::Cooks));
    let high = told(AccessDistance::WorkSurfaceHeight) || access.work_surface_adjusts.get() == Some(&true);
    let surface = told(AccessDistance::WorkSurfaceWidth) && high;
    let asked = [
        (access.kitchen.is_absent(), "whether one can leave it at both ends (`kitchen`)"),
        (access.clear_floor.is_empty(), "the clear floor at sink and appliances (`clear floor`)"),
        (cooked && !surface, "the surface to sit at and work (`work surface width`, `work surface height`)"),
        (sink && !told(AccessDistance::SinkRim), "how high the sink's rim is (`sink rim`)"),
        (sink && access.knee_spaces.is_empty(), "the space for knees under the sink (`knee spaces`)"),
        (access.shelves_in_reach.is_absent(), "how much of the shelves is within reach (`shelves in reach`)"),
        (access.controls.is_empty(), "how high switches and outlets are (`controls`)"),
    ];
    let missing: Vec<Phrase> = asked.into_iter().filter(|(asks, _)| *asks).map(|(_, what)| what.into()).collect();
    if missing.is_empty() {
        return None;
    }
    let what = Phrase::series(missing);
    let message = phrase!("the room is planned for access, and nobody says {what}", what);
    let finding = Remark::query(thing.name.span, message).room(&room.folder).selection(&thing.name);
    let remedy = "measure or plan it, and write it under the room's `access`";
    Some(finding.source("2010 ADA Standards 305, 306, 308, 606, 804").remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn kitchen(access: &str) -> Trial {
        Trial::of("complete/site")
            .book("access profile: 2010 ADA")
            .room(&format!("access: {{{access}}}"))
            .selection("selection: Sink\nkind: sink", "mount: on the wall\naccessories: [{name: mixer tap}]")
            .selection("selection: Hob\nkind: cooktop", "model: H")
    }

    const ALL: &str = "kitchen: pass-through, clear floor: {sink: 30\" x 48\"}, work surface width: 30\", work surface height: 34\", sink rim: 34\", knee spaces: {sink: {width: 30\", pipes: covered}}, shelves in reach: 60 %, controls: {switch: {height: 44\"}}";

    /// Source: 2010 ADA Standards 804.2 to 804.5 and 606.3 ask for what is asked here.
    #[test]
    fn a_kitchen_that_is_planned_for_access_says_what_it_offers() {
        kitchen(ALL).stays_silent();
        kitchen("shelves in reach: 60 %, controls: {switch: {height: 44\"}}")
            .finds("the room is planned for access, and nobody says whether one can leave it at both ends (`kitchen`), the clear floor at sink and appliances (`clear floor`), the surface to sit at and work (`work surface width`, `work surface height`), how high the sink's rim is (`sink rim`) and the space for knees under the sink (`knee spaces`)")
            .weighs("query");
        for (field, asks) in [
            ("kitchen: pass-through, ", "whether one can leave it at both ends (`kitchen`)"),
            ("sink rim: 34\", ", "how high the sink's rim is (`sink rim`)"),
            ("shelves in reach: 60 %, ", "how much of the shelves is within reach (`shelves in reach`)"),
        ] {
            kitchen(&ALL.replacen(field, "", 1))
                .finds(&format!("the room is planned for access, and nobody says {asks}"));
        }
        kitchen("").room("access profile: none").stays_silent();
    }
}
