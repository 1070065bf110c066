//! How far out of its opening a thing stands: case, door and handle.

use crate::book::{Opening, ProductOption, Room};
use crate::units::Length;
use crate::vocabulary::Trait;

use super::thing::Thing;

/// How far from its frame the parts of a thing reach.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Depths {
    /// The case.
    pub case: Length,
    /// Its door, shut.
    pub door: Length,
    /// The handle.
    pub handle: Length,
}

/// The option that is chosen for an opening, or the only one.
pub fn settled<'a>(room: &'a Room, opening: &Opening) -> Option<&'a ProductOption> {
    room.goes_into(&opening.name).next().and_then(|selection| selection.settled())
}

/// How far case, door and handle of an option reach out from the frame of the place that it goes
/// into, the air behind it counted; a front that covers its cutout stops the case at the opening's front.
/// None where its depth is not known.
pub fn depths(thing: &Thing<'_>, option: &ProductOption) -> Option<Depths> {
    if thing.has(Trait::DropsIn) {
        return None;
    }
    let size = &option.size;
    let case =
        size.depth.get().or_else(|| size.depth_with_door.get()).or_else(|| size.depth_with_handle.get()).copied()?;
    let door = size.depth_with_door.get().copied().unwrap_or(case).max(case);
    let handle = size.depth_with_handle.get().copied().unwrap_or(door).max(door);
    let fit = option.fit.get();
    let behind = fit.and_then(|fit| fit.air.back.get()).filter(|air| air.holds.is_empty());
    let behind = behind.map_or(Length::ZERO, |air| air.length);
    let from = match fit.and_then(|fit| fit.face.get()) {
        Some(_) => thing.out.1 - case,
        None => thing.out.0 + behind,
    };
    // What stands back from its front panel or its counter is flush with it.
    Some(Depths { case: from + case, door: from + door, handle: from + handle })
}
