//! A counter from back to front at a bowl: what stands behind, the tap's hole, the bowl, and what is left before it.

use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::{deck, taps};
use crate::units::Length;
use crate::vocabulary::{Kind, Mount};

use super::RIM;

/// The least counter that is left before a hole for a bowl (common practice).
const BEFORE_THE_BOWL: Length = Length::from_inches(2);
/// The least between the centre of a tap's hole and a bowl (common practice: half its hole, and as much stone).
const BEHIND_THE_BOWL: Length = Length::from_sixty_fourths(96);
/// The least behind the hole for a bowl that is let in from above (common practice).
const BEHIND_THE_RIM: Length = Length::from_inches(1);
/// What the rim of an undermount bowl takes of its outside, front and back together (common practice).
const RIMS: Length = Length::from_inches(2);

/// Tells of a counter that is too shallow for all of it.
pub fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let deck = deck(fitted.room, fitted.opening)?;
    let deep = fitted.option.size.depth.spanned()?;
    let (hole, least) = match fitted.option.mount()? {
        Mount::Under => (deep.value - RIMS, Length::ZERO),
        Mount::DropIn => (deep.value - RIM.times(2), BEHIND_THE_RIM),
        Mount::Apron | Mount::OnCounter | Mount::InNoCabinet => return None,
    };
    let behind = behind_the_hole(fitted).unwrap_or(least).max(least);
    let needs = behind + hole + BEFORE_THE_BOWL;
    if needs <= deck.clear {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` needs about {} of counter from back to front, with what is behind it and {} before it: {} more than the {} there are",
        fitted.selection.name.value,
        say(needs),
        say(BEFORE_THE_BOWL),
        say(needs - deck.clear),
        say(deck.clear)
    );
    let finding = fitted.finding(Severity::Query, deep.span, message).also(deck.at, "the counter's depth");
    Some(
        finding.source("common practice").remedy("take a bowl that is less deep, a deeper counter, or a tap beside it"),
    )
}

/// From what stands behind the counter to the bowl, where a list of holes says how far back a tap's hole is.
fn behind_the_hole(fitted: &Placement<'_>) -> Option<Length> {
    let room = fitted.room;
    let own = |tap: &&crate::book::Selection| {
        tap.is(Kind::Tap) && taps::bowl_of(room, tap).is_some_and(|bowl| std::ptr::eq(bowl, fitted.selection))
    };
    let each = room.selections.iter().filter(own).flat_map(|tap| {
        let listed = taps::listed_for(room, tap);
        taps::drilled_for(room, &listed, tap)
    });
    let far =
        each.filter_map(|hole| Some(*hole.behind.get()? + hole.to_bowl.get().copied().unwrap_or(BEHIND_THE_BOWL)));
    far.max()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn basin(deep: &str, mount: &str, hole: &str) -> Trial {
        Trial::of("fit/sink")
            .room("outline: 9' x 7'\nruns: {v: {wall: A, counter: {depth: 22\", height: 34\", splash: {thickness: 3/4\", height: 4\"}}, parts: [{cabinet: vanity, width: 36\", holds: [basin]}]}}")
            .opening("basin", "{takes: basin}")
            .selection("selection: Basin\nkind: basin\nplace: basin", &format!("reveal: flush\nmount: {mount}\nsize: {{width: 17\", depth: {deep}}}"))
            .selection("selection: Basin tap\nkind: basin tap", "holes: 1")
            .selection("selection: Top\nkind: vanity top", &format!("drilled: [{{for: Basin tap, {hole}}}]"))
    }

    /// Source: arithmetic: 2 1/2", 2", a hole of 16" and 2" are 22 1/2", and 22" less a splash of 3/4" are 21 1/4".
    #[test]
    fn a_bowl_its_tap_and_what_is_left_before_it_go_on_the_counter() {
        let hole = "behind: 2 1/2\", to bowl: 2\"";
        basin("18\"", "undermount", hole)
            .finds("`Basin` needs about 22 1/2\" (572 mm) of counter from back to front, with what is behind it and 2\" (51 mm) before it: 1 1/4\" (31.8 mm) more than the 21 1/4\" (540 mm) there are")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:6:27"]);
        basin("16\"", "undermount", hole).stays_silent();
        basin("18\"", "undermount", "behind: 2 1/2\"").finds_one();
        basin("18\"", "undermount", "diameter: 1 3/8\"").stays_silent();
        basin("20\"", "drop-in", "diameter: 1 3/8\"").finds_one();
        basin("17\"", "drop-in", "diameter: 1 3/8\"").stays_silent();
        basin("18\"", "on the counter", hole).stays_silent();
    }
}
