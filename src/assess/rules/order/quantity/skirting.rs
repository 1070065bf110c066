//! Skirting by its length against the walls that are free of doorways and of what stands before them.

use crate::assess::{Context, about, say_room};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, phrase};
use crate::site::plan::{HoleIs, Plan, Stands};
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

use super::trim::{length_of, piece};

/// What stands no higher than that above the floor hides the skirting behind it.
const FOOT: Length = Length::from_inches(6);
/// What stands further from its wall than that leaves skirting behind it.
const BEHIND: Length = Length::from_inches(2);

/// Tells of skirting that does not go around its room; of two kinds of it in a room nobody says which goes where.
pub fn ask(context: &Context<'_>, (room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let of_the_room = room.selections.iter().filter(|one| is_skirting(one)).count();
    if !is_skirting(selection) || of_the_room != 1 {
        return None;
    }
    let ordered = option.quantity.spanned()?;
    let there = length_of(&ordered.value, piece(option))?;
    let walls = free(context.site.sound_plan(room)?)?;
    let say = |length| say_room(length, context.book.project.units);
    let message = phrase!(
        "{} of `{}` are ordered, and the walls of `{}` have {} free of doorways and of what stands before them",
        say(there),
        selection.name.value,
        room.name.text(),
        say(walls)
    );
    (there < walls).then(|| {
        let finding = about(room, selection, option, crate::finding::Severity::Query, ordered.span, message);
        finding.remedy("order the whole length, and some over for corners and cuts").source("arithmetic")
    })
}

fn is_skirting(selection: &Selection) -> bool {
    let called = selection.options.first().map_or("", |option| option.called.as_str());
    selection.is(Kind::Trim) && Mention::Skirting.is_in_any([called, selection.name.value.as_str()])
}

/// The length of all walls less doorways and what stands before them on the floor; none where nothing is drawn of the
/// room's doors, so that it can't be told.
fn free(plan: &Plan<'_>) -> Option<Length> {
    let mut all = Length::ZERO;
    for (number, wall) in plan.walls.iter().enumerate().filter(|(_, wall)| !wall.is_open()) {
        let holes = plan.holes.iter().filter(|hole| hole.wall == number && matches!(hole.is, HoleIs::Door(_)));
        let stands = plan.things.iter().filter(|thing| {
            thing.stands == Stands::Wall(number) && thing.within.is_none() && thing.low < FOOT && thing.out.0 < BEHIND
        });
        let mut taken: Vec<(Length, Length)> =
            holes.map(|hole| hole.along).chain(stands.map(|thing| thing.along)).collect();
        taken.sort_unstable();
        let (mut from, mut free) = (Length::ZERO, Length::ZERO);
        for (start, end) in taken {
            free = free + (start.min(wall.length()) - from).max(Length::ZERO);
            from = from.max(end);
        }
        all = all + free + (wall.length() - from).max(Length::ZERO);
    }
    (!plan.holes.is_empty()).then_some(all)
}
