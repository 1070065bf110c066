//! The ceiling above a point, and how steep it is.

use crate::book::{Ceiling, Hanging, Room};
use crate::units::Length;

/// Height of the ceiling where the light of that number hangs: as measured there, by its distance
/// from the low side of a ceiling that slopes, or the level ceiling's.
pub fn ceiling_over(room: &Room, hangs: &Hanging, number: usize) -> Option<Length> {
    let measured = hangs.ceiling.get();
    if let Some(height) = measured.and_then(|ceiling| at(&ceiling.0, number)) {
        return Some(height);
    }
    match room.ceiling.get()? {
        Ceiling::Level(height) => Some(*height),
        Ceiling::Sloped { low, high, .. } => {
            let from = at(&hangs.from_low_side.get()?.0, number)?;
            height_at(*low, *high, run(room)?, from)
        }
    }
}

/// The height of a ceiling that rises evenly from `low` to `high` over `run`, so far from its low side.
pub fn height_at(low: Length, high: Length, run: Length, from: Length) -> Option<Length> {
    let rise = i128::from(high.nanometres()).checked_sub(low.nanometres().into())?;
    let risen = rise.checked_mul(from.nanometres().into())?.checked_div(run.nanometres().into())?;
    low.checked_add(Length::from_nanometres(i64::try_from(risen).ok()?))
}

/// The horizontal distance over which a sloped ceiling rises.
pub fn run(room: &Room) -> Option<Length> {
    let (length, width) = room.outline.get()?.extent();
    match room.ceiling.get()? {
        Ceiling::Sloped { along_length, .. } => Some(if *along_length { length } else { width }),
        Ceiling::Level(_) => None,
    }
}

/// The slope of the room's ceiling in degrees; none for a level one, or where its run is not known.
pub fn slope(room: &Room) -> Option<f64> {
    let Ceiling::Sloped { low, high, .. } = room.ceiling.get()? else { return None };
    let rise = high.nanometres() - low.nanometres();
    // An angle is no length: what is compared is a rating in whole degrees.
    #[expect(clippy::cast_precision_loss, reason = "an angle to a tenth of a degree")]
    let (rise, run) = (rise as f64, run(room)?.nanometres() as f64);
    (run > 0.0 && rise > 0.0).then(|| (rise / run).atan().to_degrees())
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
