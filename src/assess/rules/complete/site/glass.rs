//! Windows of a bath of which nobody says how far they are from the water.

use crate::assess::Context;
use crate::assess::codes::GLASS_ABOVE_STANDING;
use crate::assess::rules::Findings;
use crate::assess::rules::clear::glazing::is_safe;
use crate::book::{Room, Window};
use crate::finding::{Remark, Severity, phrase};
use crate::site::water::from_water;
use crate::vocabulary::{Hazard, Trait};

/// Asks of each low window in a room where somebody bathes.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    let Some(above) = context.rulings().length(&GLASS_ABOVE_STANDING) else { return };
    for room in context.book.rooms.iter().filter(|room| has_water(room)) {
        let low = |window: &&Window| window.sill.get().is_some_and(|sill| *sill < above.value);
        let unknown = |window: &&Window| {
            let planned = || context.site.sound_plan(room).and_then(|plan| from_water(plan, window));
            window.from_water.is_absent() && !is_safe(window) && planned().is_none()
        };
        findings.extend(room.windows.iter().filter(low).filter(unknown).map(|window| told(room, window)));
    }
}

fn has_water(room: &Room) -> bool {
    room.openings.iter().any(|opening| opening.takes_one(Trait::Bathes))
        || room.selections.iter().any(|selection| selection.has(Trait::Bathes))
}

fn told(room: &Room, window: &Window) -> Remark {
    let message = phrase!("nobody says how far the window `{}` is from the tub or shower", window.name.value);
    let finding = Remark::new(Severity::Query, window.name.span, message).room(&room.folder);
    let finding = finding
        .thing(&window.name)
        .remedy("add `from water`, or the places of both to the plan; or read the pane's etched mark: `glass: …`");
    Remark { caution: Some(Hazard::Glass), ..finding }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_low_window_in_a_bath_has_a_distance_or_safe_glass() {
        let bath = |window: &str| {
            Trial::of("complete/site")
                .room(&format!("windows: {{yard: {{{window}}}}}"))
                .opening("tub", "{takes: bathtub, width: 60\"}")
        };
        bath("sill: 36\"").finds("nobody says how far the window `yard` is from the tub or shower").cautions();
        bath("sill: 36\", from water: 70\"").stays_silent();
        bath("sill: 36\", glass: tempered").stays_silent();
        bath("sill: 64\"").stays_silent();
        Trial::of("complete/site").room("windows: {yard: {sill: 36\"}}").stays_silent();
    }
}
