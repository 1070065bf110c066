//! A door and its doorway, a blind and its window: as they are ordered, and as they are there.

use crate::book::{DoorHinge, Doorway, Hinge, ProductOption, Room, Selection};
use crate::site::doorways::{doorway_of, window_of};
use crate::site::told::{Provenance, SourcedFigure, Spot};
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

use super::{Differ, TOLERANCE, Twice};

/// A leaf may be so much larger or smaller than the clear width or height of its doorway: rebates, and what is cut
/// off at the bottom: 2 in (common practice).
const REBATES: Length = Length::from_inches(2);
/// How far a leaf reaches behind the head of its frame at most: 5/8 in (common practice).
const REBATE: Length = Length::from_sixty_fourths(40);
/// A blind within its window is narrower by so much at most: 1 in (common practice).
const WITHIN: Length = Length::from_inches(1);

/// Doors and blinds of a room that differ from where they go.
pub(super) fn of_room(room: &Room) -> Vec<Twice<'_>> {
    let options = room.selections.iter().flat_map(|one| one.standing().iter().map(move |option| (one, option)));
    let mut all: Vec<Twice<'_>> = options.flat_map(|(selection, option)| of_option(room, selection, option)).collect();
    all.extend(room.doors.iter().flat_map(|doorway| of_doorway(room, doorway)));
    all
}

/// A doorway's own leaf against its jambs, and against what is said to be clear of it.
fn of_doorway<'a>(room: &'a Room, doorway: &'a Doorway) -> impl Iterator<Item = Twice<'a>> {
    let spot = || Spot::Doorway(&doorway.name);
    let single = doorway.hinge.get() != Some(&DoorHinge::Both) && doorway.slides.get() != Some(&true);
    let leaf = doorway.leaf.spanned().filter(|_| single).map(|leaf| SourcedFigure::planned(leaf, spot()));
    let jambs = doorway.width.spanned().map(|width| SourcedFigure::planned(width, spot()));
    let wide = leaf.zip(jambs).and_then(|(leaf, jambs)| {
        let twice = |how| Some(Twice::of(&doorway.name, "the leaf", (leaf, jambs), how));
        match () {
            () if leaf.value > jambs.value + REBATES => twice(Differ::MoreThan("the width between its jambs")),
            // Beside a narrow leaf a pane may stand.
            () if leaf.value + SIDE_LIGHT < jambs.value => {
                twice(Differ::LessThan("the width between its jambs")).map(Twice::asked)
            }
            () => None,
        }
    });
    let clear = room.clearances.doorways.iter().find(|clear| clear.name.value == doorway.name.value);
    let clear = clear.map(|clear| SourcedFigure::written(&clear.value, Spot::Clearances));
    let clear = clear
        .zip(leaf)
        .filter(|(clear, leaf)| clear.value > leaf.value + TOLERANCE)
        .map(|(clear, leaf)| Twice::of(&doorway.name, "the clear width", (clear, leaf), Differ::MoreThan("its leaf")));
    wide.into_iter().chain(clear)
}

/// A leaf that leaves so much between its jambs is not all that closes them: 4 in (common practice).
const SIDE_LIGHT: Length = Length::from_inches(4);

fn of_option<'a>(room: &'a Room, selection: &'a Selection, option: &'a ProductOption) -> Vec<Twice<'a>> {
    if selection.is(Kind::WindowCovering) {
        return blind(room, selection, option).into_iter().collect();
    }
    let Some(doorway) = doorway_of(room, selection).filter(|_| selection.is(Kind::Door)) else { return vec![] };
    [width(selection, option, doorway), height(selection, option, doorway), hand(selection, option, doorway)]
        .into_iter()
        .flatten()
        .collect()
}

fn width<'a>(selection: &'a Selection, option: &'a ProductOption, doorway: &'a Doorway) -> Option<Twice<'a>> {
    let own = SourcedFigure::written(option.size.width.spanned()?, Spot::Selection(&selection.name));
    let spot = Spot::Doorway(&doorway.name);
    if let Some(leaf) = doorway.leaf.spanned() {
        let there = SourcedFigure::planned(leaf, spot);
        let apart = (own.value - there.value).abs() > TOLERANCE;
        return apart.then(|| Twice::of(&selection.name, "the width", (own, there), Differ::Apart));
    }
    // Of two leaves each is half of it, or what nobody says.
    let between = doorway.width.spanned().filter(|_| doorway.hinge.get() != Some(&DoorHinge::Both))?;
    let there = SourcedFigure::planned(between, spot);
    let apart = (own.value - there.value).abs() > REBATES;
    apart.then(|| Twice::of(&selection.name, "the width", (own, there), Differ::Apart))
}

fn height<'a>(selection: &'a Selection, option: &'a ProductOption, doorway: &'a Doorway) -> Option<Twice<'a>> {
    let height = option.size.height.spanned()?;
    let value = height.value.least.or(height.value.most)?;
    let spot = Spot::Selection(&selection.name);
    let own = SourcedFigure { value, at: height.span, provenance: Provenance::Written, spot };
    let there = SourcedFigure::planned(doorway.height.spanned()?, Spot::Doorway(&doorway.name));
    let apart = own.value > there.value + REBATE || own.value + REBATES < there.value;
    apart.then(|| Twice::of(&selection.name, "the height", (own, there), Differ::Apart))
}

fn hand<'a>(selection: &'a Selection, option: &'a ProductOption, doorway: &'a Doorway) -> Option<Twice<'a>> {
    let there = doorway.hinge.spanned()?;
    let hinge = option.hinge.spanned()?;
    let own = match hinge.value {
        Hinge::Left => DoorHinge::Left,
        Hinge::Right => DoorHinge::Right,
        Hinge::Either | Hinge::Both | Hinge::None => return None,
    };
    if own == there.value || there.value == DoorHinge::Both {
        return None;
    }
    let there = SourcedFigure::planned(there, Spot::Doorway(&doorway.name));
    Some(Twice::of_hinges(selection, (own, hinge.span), there))
}

/// A blind or curtains that do not cover the width or the height of their window.
fn blind<'a>(room: &'a Room, selection: &'a Selection, option: &'a ProductOption) -> Option<Twice<'a>> {
    let window = window_of(room, selection)?;
    let one = option.size.width.spanned()?;
    let pieces = option.quantity.get().and_then(crate::units::Quantity::whole).unwrap_or(1).max(1);
    let spot = Spot::Selection(&selection.name);
    let own = SourcedFigure {
        value: one.value.times(i64::try_from(pieces).unwrap_or(i64::MAX)),
        at: one.span,
        provenance: Provenance::Written,
        spot,
    };
    let there = SourcedFigure::planned(window.width.spanned()?, Spot::Window(&window.name));
    // Between the jambs it is no wider than they are apart.
    if Mention::Inside.is_in(option.mount_words()) {
        let how = Differ::MoreThan("the width inside its window");
        return (own.value > there.value).then(|| Twice::of(&selection.name, "the width", (own, there), how));
    }
    let how = Differ::LessThan("the width of its window");
    (own.value + WITHIN < there.value).then(|| Twice::of(&selection.name, "the width", (own, there), how))
}
