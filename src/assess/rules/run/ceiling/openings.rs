//! Openings that are told to reach higher than the ceiling over them.

use crate::assess::{Context, say, say_room};
use crate::book::{Ceiling, Opening, Room};
use crate::finding::{Remark, phrase};
use crate::units::Length;

/// A height that is read from the present floor, or to a ceiling that is not straight, may be so much more: 1 in (common
/// practice).
pub(super) const UNEVEN: Length = Length::from_inches(1);

/// The opening's own sill and height come out above the ceiling: one of the three is wrong.
pub(super) fn judge(context: &Context<'_>, room: &Room, opening: &Opening) -> Option<Remark> {
    let height = opening.height.get()?.least()?;
    let build_up = room.floor_build_up.get().copied().unwrap_or_default();
    let high = opening.sill.get().copied().unwrap_or_default() + height.value;
    // Under a slope it depends on which of its sides was read: the highest counts.
    let ceiling = super::level(room).or_else(|| highest_over(context, room, opening))?;
    let is_told = || room.goes_into(&opening.name).any(|selection| super::stops(context, room, selection));
    if high <= ceiling + build_up + UNEVEN || is_told() {
        return None;
    }
    let of_room = |length| say_room(length, context.book.project.units);
    let message = phrase!(
        "the opening `{}` reaches {} above the floor, {} more than the {} of the ceiling over it",
        opening.name.value,
        of_room(high),
        say(high - ceiling, context.book.project.units),
        of_room(ceiling)
    );
    let finding = Remark::query(height.span, message).room(&room.folder).opening(&opening.name);
    let finding = match room.ceiling.span() {
        Some(span) => finding.also(span, "the ceiling"),
        None => finding,
    };
    Some(finding.remedy("measure its sill, its height and the ceiling again, and correct the one that is wrong"))
}

/// The highest place of a slope over an opening, where the plan has it, else of the whole room.
fn highest_over(context: &Context<'_>, room: &Room, opening: &Opening) -> Option<Length> {
    let placed = || {
        let plan = context.site.sound_plan(room)?;
        let own = plan.opening(opening).filter(|own| own.out.1 > own.out.0 && own.width() > Length::ZERO)?;
        plan.most_ceiling_over(own, own.out)
    };
    let highest = || match room.ceiling.get()? {
        Ceiling::Sloped { high, .. } => Some(*high),
        Ceiling::Level(_) => None,
    };
    placed().or_else(highest)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: the field measurement (arithmetic: 62" and 38" come to 100").
    #[test]
    fn an_opening_ends_below_its_ceiling() {
        let hood = |opening: &str| {
            Trial::of("run/ceiling").room("ceiling: 96\"").opening("hood", &format!("{{takes: hood, {opening}}}"))
        };
        hood("sill: 62\", height: 38\"")
            .finds("the opening `hood` reaches 8'-4\" (2540 mm) above the floor, 4\" (102 mm) more than the 8'-0\" (2438 mm) of the ceiling over it")
            .weighs("query");
        hood("height: 98\"").finds_one();
        hood("sill: 62\", height: 34\"").stays_silent();
        hood("sill: 62\", height: 35\"").stays_silent();
        hood("sill: 62\"").stays_silent();
    }

    /// Source: arithmetic: a stair that rises from 72" to 100" across 5' leaves no more than 86" over a place 30" deep at
    /// its low side.
    #[test]
    fn an_opening_ends_below_the_slope_over_it() {
        let toilet = |height: &str, plan: &str, place: &str| {
            Trial::of("run/ceiling")
                .room(&format!("{plan}ceiling: {{low: 72\", high: 100\", low at: A}}"))
                .opening("wc", &format!("{{takes: toilet, {place}height: {height}}}"))
        };
        let placed =
            |height: &str| toilet(height, "outline: 5' x 5'\n", "wall: A, at: 10\", width: 30\", depth: 30\", ");
        placed("90\"").finds_one().weighs("query");
        placed("72\"").stays_silent();
        placed("86\"").stays_silent();
        toilet("110\"", "", "").finds_one();
        toilet("90\"", "", "").stays_silent();
    }
}
