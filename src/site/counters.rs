//! Which runs and islands a counter lies on.

use crate::book::{ProductOption, Room, Selection};
use crate::vocabulary::Kind;

/// Whether an option of a counter covers the run, island or place to sit of that name. A room's only
/// counter, of which nobody says where it lies, covers them all.
pub fn covers(room: &Room, option: &ProductOption, name: &str) -> bool {
    match option.top.get().map_or(&[][..], |top| &top.lies_on) {
        [] => is_alone(room),
        names => names.iter().any(|covered| covered.value == name),
    }
}

/// Whether a room has one counter alone.
pub fn is_alone(room: &Room) -> bool {
    let counters = |selection: &&Selection| selection.is(Kind::Counter);
    room.selections.iter().filter(counters).count() == 1
}
