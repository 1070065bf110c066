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

/// Whether a selection is called such a frame or tank, or such is ordered or required with a toilet: a frame of what else
/// is in the room, a screen, a mirror or a door, carries nothing.
fn names_one(selection: &Selection) -> bool {
    let is_toilet = selection.is(Kind::Toilet);
    if !is_toilet && !selection.is(Kind::Item) {
        return false;
    }
    let of = |option: &ProductOption| {
        let with = option.accessories.iter().map(|with| with.name.value.as_str());
        let required = option.requires.iter().map(|line| line.value.as_str());
        let is_beside = |text: &str| Mention::WallFrame.is_in(text) || Mention::Frame.is_in(text);
        let told = [option.description.text(), option.note.text()];
        let of_a_toilet = || with.chain(required).any(is_beside) || Mention::WallFrame.is_in_any(told);
        Mention::WallFrame.is_in(option.name.text()) || is_toilet && of_a_toilet()
    };
    let of_one = Mention::Frame.is_in(&selection.name) && Mention::Toilet.is_in(&selection.name);
    let is_called = Mention::WallFrame.is_in(&selection.name) || of_one && !is_toilet;
    is_called || selection.standing().iter().any(of)
}

/// Whether the words at its place say that it is there.
fn is_there(room: &Room, selection: &Selection) -> bool {
    let Some(opening) = selection.place.get().and_then(|place| room.opening(place)) else { return false };
    let services = &opening.service;
    let blocking = services.blocking.get().map_or("", |told| told.words.as_str());
    let drain = services.drain.get().map_or("", |told| told.words.as_str());
    let water = services.water.get().map_or("", |told| told.words.as_str());
    let pipes = [drain, water];
    Mention::WallFrame.is_in_any([blocking, opening.note.text()].into_iter().chain(pipes))
        || Mention::Frame.is_in_any(pipes)
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
        toilet("", &format!("{hung}\naccessories: [{{name: frame}}]")).stays_silent();
        for item in ["Toilet frame", "Frame for the WC", "In-wall system"] {
            toilet("", hung).selection(&format!("selection: {item}\nkind: item"), "").stays_silent();
        }
    }

    /// Frames of other things, and framed walls, carry no toilet.
    #[test]
    fn a_frame_of_something_else_carries_no_toilet() {
        let beside = |other: &str, own: &str| {
            Trial::of("complete/accessory")
                .opening("place", "{takes: toilet}")
                .selection("selection: WC\nkind: toilet\nplace: place", "mount: wall-hung")
                .selection(&format!("selection: {other}"), own)
        };
        let message = "`WC` hangs on the wall, and nothing in the room orders the frame that carries it";
        let is_told = |trial: Trial| trial.run().findings().iter().any(|finding| finding.message.text() == message);
        for other in [
            "Frameless shower screen\nkind: shower glass",
            "Mirror, black frame\nkind: mirror",
            "Door with frame\nkind: door",
            "Frame of the mirror\nkind: item",
        ] {
            assert!(is_told(beside(other, "")), "{other}");
        }
        assert!(is_told(beside("Vanity\nkind: cabinet", "description: framed in oak")));
        assert!(!is_told(beside("Concealed tank\nkind: item", "")));
        Trial::of("complete/accessory")
            .opening("place", "{takes: toilet, service: {blocking: 2x4 framed wall}}")
            .selection("selection: WC\nkind: toilet\nplace: place", "mount: wall-hung")
            .finds(message);
    }
}
