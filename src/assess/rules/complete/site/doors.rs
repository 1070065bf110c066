//! Doors of which nobody says which doorway they are for.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::doorways::doorway_of;
use crate::units::Quantity;
use crate::vocabulary::Kind;

/// A single door, in a room with several doorways, that nothing ties to one of them: its width and its hand can't be
/// held against any.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    let doors = context.book.selections().filter(|(_, selection)| selection.is(Kind::Door));
    findings.extend(doors.filter_map(|(room, selection)| loose(room, selection)));
}

fn loose(room: &Room, selection: &Selection) -> Option<Remark> {
    let is_one =
        |option: &ProductOption| option.quantity.get().and_then(Quantity::whole).is_none_or(|count| count == 1);
    let several = room.doors.len() > 1 && selection.place.is_absent() && selection.standing().iter().all(is_one);
    if !several || selection.options.is_empty() || doorway_of(room, selection).is_some() {
        return None;
    }
    let message = phrase!("nobody says which doorway `{}` is for", selection.name.value);
    let names = Phrase::joined(room.doors.iter().map(|door| phrase!("`{}`", door.name.value)), ", ");
    let finding = Remark::query(selection.name.span, message).room(&room.folder).thing(&selection.name);
    Some(finding.remedy(phrase!("name it with `place: …`: {}", names)))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_door_is_for_a_doorway() {
        let room = |door: &str, option: &str| {
            Trial::of("complete/site")
                .room("outline: 3600 mm x 3000 mm\ndoors: {bedroom door: {wall: A, at: 200 mm, width: 760 mm}, hall door: {wall: B, at: 200 mm, width: 760 mm}}")
                .selection(&format!("selection: {door}\nkind: door"), option)
        };
        room("White door", "model: D")
            .finds("nobody says which doorway `White door` is for")
            .weighs("query")
            .remedies("name it with `place: …`: `bedroom door`, `hall door`");
        room("White door", "place: hall door").stays_silent();
        room("Hall door", "model: D").stays_silent();
        room("White doors", "quantity: 2").stays_silent();
    }
}
