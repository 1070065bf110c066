//! The ceiling above a point, and how steep it is.

use crate::book::{Ceiling, Hanging, Room, Selection};
use crate::site::plan::Plan;
use crate::units::Length;

/// Height of the ceiling where the light of that number hangs: as measured there; by its distance from
/// the low side of a ceiling that slopes; as the plan has it where the lights are set out; or the level
/// ceiling's.
pub fn ceiling_over(
    plan: Option<&Plan<'_>>,
    room: &Room,
    selection: &Selection,
    hangs: &Hanging,
    number: usize,
) -> Option<Length> {
    let measured = hangs.ceiling.get();
    if let Some(height) = measured.and_then(|ceiling| at(&ceiling.0, number)) {
        return Some(height);
    }
    match room.ceiling.get()? {
        Ceiling::Level(height) => Some(*height),
        Ceiling::Sloped { low, high, .. } => {
            let from = hangs.from_low_side.get().and_then(|from| at(&from.0, number));
            match from {
                Some(from) => height_at(*low, *high, run(plan, room)?, from),
                None => in_plan(plan?, selection, number),
            }
        }
    }
}

/// The ceiling over a light that the plan sets out.
fn in_plan(plan: &Plan<'_>, selection: &Selection, number: usize) -> Option<Length> {
    let is_it = |name: &String| *name == selection.name.value;
    let hung = plan.hung.iter().find(|hung| hung.lights.selection.get().is_some_and(is_it))?;
    plan.ceiling_at(*hung.places.get(number)?)
}

/// The height of a ceiling that rises evenly from `low` to `high` over `run`, so far from its low side.
pub fn height_at(low: Length, high: Length, run: Length, from: Length) -> Option<Length> {
    let rise = i128::from(high.nanometres()).checked_sub(low.nanometres().into())?;
    let risen = rise.checked_mul(from.nanometres().into())?.checked_div(run.nanometres().into())?;
    low.checked_add(Length::from_nanometres(i64::try_from(risen).ok()?))
}

/// The horizontal distance over which a sloped ceiling rises: from its low wall across the room, or along
/// the room's length or width.
pub fn run(plan: Option<&Plan<'_>>, room: &Room) -> Option<Length> {
    let Ceiling::Sloped { along_length, .. } = room.ceiling.get()? else { return None };
    plan.and_then(Plan::run_of_slope).or_else(|| {
        let (length, width) = room.outline.get()?.extent();
        Some(if *along_length { length } else { width })
    })
}

/// How a room's ceiling lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Slope {
    /// Level.
    Level,
    /// By so many degrees.
    Degrees(f64),
    /// It slopes, and nobody says over what distance.
    Unknown,
}

/// The slope of the room's ceiling; none where nothing is told of it.
pub fn slope(plan: Option<&Plan<'_>>, room: &Room) -> Option<Slope> {
    let Ceiling::Sloped { low, high, .. } = room.ceiling.get()? else { return Some(Slope::Level) };
    let rise = high.nanometres() - low.nanometres();
    if rise <= 0 {
        return Some(Slope::Level);
    }
    let Some(run) = run(plan, room).filter(|run| *run > Length::ZERO) else { return Some(Slope::Unknown) };
    // An angle is no length: what is compared is a rating in whole degrees.
    #[expect(clippy::cast_precision_loss, reason = "an angle to a tenth of a degree")]
    let (rise, run) = (rise as f64, run.nanometres() as f64);
    Some(Slope::Degrees((rise / run).atan().to_degrees()))
}

/// One figure for each point, or one for all of them.
pub fn at(figures: &[crate::source::Spanned<Length>], number: usize) -> Option<Length> {
    match figures {
        [one] => Some(one.value),
        several => several.get(number).map(|figure| figure.value),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: check values LT-07: 96" and a pitch of 6 in 12, 60" from the low side: 126".
    #[test]
    fn a_ceiling_rises_evenly() {
        let inches = Length::from_inches;
        assert_eq!(height_at(inches(96), inches(156), inches(120), inches(60)), Some(inches(126)));
        assert_eq!(height_at(inches(96), inches(156), Length::ZERO, inches(60)), None);
    }
}
