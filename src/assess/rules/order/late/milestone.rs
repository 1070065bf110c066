//! A thing that waits for a later milestone than the one at which such things are set.

use crate::assess::Context;
use crate::book::{NeededFor, Room, Selection};
use crate::finding::{Remark, phrase};
use crate::units::{Date, Wrote};
use crate::vocabulary::{Kind, sets};

/// What is set at a milestone of the book that is called after it, and says that it is needed for a later one.
pub(super) fn judge(context: &Context<'_>, room: &Room, selection: &Selection) -> Option<Remark> {
    let needed = selection.needed_for.spanned()?;
    let NeededFor::Milestone(own) = &needed.value else { return None };
    let kind = *selection.kind.get()?;
    let milestones = context.dates.milestones.iter().filter(|(name, _)| sets(name, kind));
    let (name, earlier): (&String, &Date) = milestones.min_by_key(|(_, day)| **day)?;
    context.dates.milestones.get(own).filter(|later| *earlier < **later)?;
    if sets(own, kind) || is_for_others(context, room, selection, kind) {
        return None;
    }
    let message = phrase!(
        "`{}` is needed for `{own}`, and the book sets such things at `{}`, on {} already",
        selection.name.value,
        own,
        Wrote(name),
        *earlier
    );
    let finding = Remark::query(needed.span, message).room(&room.folder).selection(&selection.name);
    Some(finding.remedy("write that milestone under `needed for`, by which its last day to order is reckoned"))
}

/// Whether that milestone is another room's alone: things are needed for it, and none of this room.
fn is_for_others(context: &Context<'_>, room: &Room, selection: &Selection, kind: Kind) -> bool {
    let waits = |one: &Selection| {
        let needed = one.needed_for.get();
        matches!(needed, Some(NeededFor::Milestone(name)) if sets(name, kind))
    };
    let here = room.selections.iter().any(|one| !std::ptr::eq(one, selection) && waits(one));
    !here && context.book.selections().any(|(_, one)| waits(one))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_thing_is_needed_for_the_milestone_at_which_it_is_set() {
        let trial = |kind: &str, milestone: &str, needed: &str| {
            Trial::of("order/late")
                .book(&format!("milestones: {{rough-in: 2027-05-03, {milestone}: 2027-05-20, fit-off: 2027-07-01}}"))
                .selection(&format!("selection: It\nkind: {kind}\nneeded for: {needed}"), "")
        };
        trial("floor", "floors laid", "fit-off")
            .finds(
                "`It` is needed for `fit-off`, and the book sets such things at `floors laid`, on 20 May 2027 already",
            )
            .weighs("query");
        trial("counter", "counters set", "fit-off").finds_one();
        trial("counter", "worktops fitted", "fit-off").finds_one();
        trial("cabinet", "cabinets set", "fit-off").finds_one();
        trial("floor", "floors laid", "floors laid").stays_silent();
        trial("floor", "floors laid", "rough-in").stays_silent();
        trial("tap", "counters set", "fit-off").stays_silent();
        trial("floor", "second visit", "fit-off").stays_silent();
    }

    #[test]
    fn the_milestone_of_another_room_is_that_room_s() {
        let trial = |folder: &str| {
            Trial::of("order/late")
                .book("milestones: {counters set: 2027-05-20, fit-off: 2027-07-01}")
                .file(
                    &format!("rooms/{folder}/more.yaml"),
                    "selection: Kitchen top\nkind: counter\nneeded for: counters set\n".to_string(),
                )
                .file("rooms/bath/room.yaml", "name: Bath\n".to_string())
                .selection("selection: Vanity top\nkind: counter\nneeded for: fit-off", "")
        };
        trial("kitchen").finds_one();
        trial("bath").stays_silent();
    }
}
