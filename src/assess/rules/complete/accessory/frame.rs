//! The frame and the tank that carry a toilet on the wall, which are bought by themselves.

use crate::assess::context::about;
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::outlets::hangs_on_the_wall;
use crate::vocabulary::{Kind, Mention};

/// It hangs on the wall, and nothing in the room orders what it hangs on, nor says that it is there.
pub(super) fn judge(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let hangs = selection.is(Kind::Toilet) && hangs_on_the_wall(selection, option);
    let is_ordered = room.selections.iter().any(|one| one.is(Kind::Cistern) || names_one(one));
    if !hangs || is_ordered || is_there(room, selection) || room.partly_unread || room.holds_an_unknown_kind() {
        return None;
    }
    let name = &selection.name.value;
    let message = phrase!("`{name}` hangs on the wall, and nothing in the room orders the frame that carries it", name);
    let finding = about(room, selection, option, Severity::Query, selection.name.span, message);
    Some(finding.source("common practice").remedy(
        "order frame and tank, as a selection (`kind: cistern`) or under `accessories`: they are set before the wall is closed; where they are there, say so in the opening's `blocking`",
    ))
}

/// Whether a selection, or what is ordered or required with it, is called a frame or a tank.
fn names_one(selection: &Selection) -> bool {
    let of = |option: &ProductOption| {
        let with = option.accessories.iter().map(|with| with.name.value.as_str());
        let required = option.requires.iter().map(|line| line.value.as_str());
        let own = [option.name.text(), option.description.text(), option.note.text()];
        Mention::WallFrame.is_in_any(own.into_iter().chain(with).chain(required))
    };
    Mention::WallFrame.is_in(&selection.name) || selection.standing().iter().any(of)
}

/// Whether the words at its place say that it is there.
fn is_there(room: &Room, selection: &Selection) -> bool {
    let Some(opening) = selection.place.get().and_then(|place| room.opening(place)) else { return false };
    let services = &opening.service;
    let blocking = services.blocking.get().map_or("", |told| told.words.as_str());
    let drain = services.drain.get().map_or("", |told| told.words.as_str());
    let water = services.water.get().map_or("", |told| told.words.as_str());
    Mention::WallFrame.is_in_any([blocking, drain, water, opening.note.text()])
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: common practice: a toilet on the wall hangs on a frame that is bought by itself.
    #[test]
    fn a_toilet_on_the_wall_hangs_on_a_frame_that_is_ordered_or_there() {
        let toilet = |there: &str, own: &str| {
            Trial::of("complete/accessory")
                .opening("place", &format!("{{takes: toilet{there}}}"))
                .selection("selection: WC\nkind: toilet\nplace: place", own)
        };
        let hung = "mount: wall-hung";
        toilet("", hung)
            .finds("`WC` hangs on the wall, and nothing in the room orders the frame that carries it")
            .weighs("query");
        toilet("", "mount: wandhängend").finds_one();
        toilet("", "mount: floor").stays_silent();
        toilet("", &format!("{hung}\naccessories: [{{name: carrier and tank}}]")).stays_silent();
        toilet("", hung).selection("selection: Frame\nkind: cistern", "").stays_silent();
        toilet("", hung).selection("selection: Bastidor\nkind: item", "").stays_silent();
        toilet(", service: {blocking: Vorwandelement im Ständerwerk}", hung).stays_silent();
        toilet(", service: {blocking: 'in-wall carrier, set'}", hung).stays_silent();
        toilet(", service: {drain: 'DN 90 at the frame, 220 mm AFF'}", hung).stays_silent();
    }
}
