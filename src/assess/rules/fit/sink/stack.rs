//! A counter from back to front at a bowl: what stands behind, the tap's hole, the bowl, and what is left before it.

use crate::assess::context::about;
use crate::assess::{Context, say};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::{Deck, Placement, deck, deck_of_a_vanity, taps};
use crate::source::Span;
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
    let bowl = (fitted.room, fitted.selection, fitted.option);
    let deck = deck(fitted.room, fitted.opening)?;
    let (at, message) = too_much(context, bowl, &deck)?;
    Some(worded(fitted.finding(Severity::Query, at, message), &deck))
}

/// The same of a basin in a vanity's top.
pub fn in_a_vanity(context: &Context<'_>, bowl: Bowl<'_>) -> Option<Remark> {
    let (room, selection, option) = bowl;
    let deck = deck_of_a_vanity(room, selection)?;
    let (at, message) = too_much(context, bowl, &deck)?;
    Some(worded(about(room, selection, option, Severity::Query, at, message), &deck))
}

/// A bowl in its room, and one of its options.
pub type Bowl<'a> = (&'a Room, &'a Selection, &'a ProductOption);

fn worded(finding: Remark, deck: &Deck) -> Remark {
    let finding = finding.also(deck.at, "the counter's depth").source("common practice");
    finding.remedy("take a bowl that is less deep, a deeper counter, or a tap beside it")
}

fn too_much(context: &Context<'_>, bowl: Bowl<'_>, deck: &Deck) -> Option<(Span, Phrase)> {
    let (_, selection, option) = bowl;
    let deep = option.size.depth.spanned()?;
    let (hole, least) = match option.mount()? {
        Mount::Under => (deep.value - RIMS, Length::ZERO),
        Mount::DropIn => (deep.value - RIM.times(2), BEHIND_THE_RIM),
        Mount::Apron | Mount::OnCounter | Mount::InNoCabinet => return None,
    };
    let behind = behind_the_hole(bowl).unwrap_or(least).max(least);
    let needs = behind + hole + BEFORE_THE_BOWL;
    if needs <= deck.clear {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` needs about {} of counter from back to front, with what is behind it and {} before it: {} more than the {} there are",
        selection.name.value,
        say(needs),
        say(BEFORE_THE_BOWL),
        say(needs - deck.clear),
        say(deck.clear)
    );
    Some((deep.span, message))
}

/// From what stands behind the counter to the bowl, where a list of holes says how far back a tap's hole is.
fn behind_the_hole((room, selection, _): Bowl<'_>) -> Option<Length> {
    let own = |tap: &&Selection| {
        tap.is(Kind::Tap) && taps::bowl_of(room, tap).is_some_and(|bowl| std::ptr::eq(bowl, selection))
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

    /// Source: arithmetic: 2 1/2", 2", a hole of 12" and 2" are 18 1/2", and 19" less a splash of 3/4" are 18 1/4".
    #[test]
    fn the_top_of_a_vanity_is_as_deep_as_all_of_it() {
        let vanity = |mount: &str, top: &str| {
            Trial::of("fit/sink")
                .opening("vanity", "{takes: cabinet, width: 37\", service: {drain: '1 1/4\", 18\" AFF'}}")
                .selection("selection: Vanity\nkind: cabinet\nplace: vanity", "size: {width: 36\", depth: 18\", height: 33\"}")
                .selection("selection: Basin\nkind: basin", &format!("reveal: flush\nmount: {mount}\nsize: {{width: 17\", depth: 14\"}}"))
                .selection("selection: Basin tap\nkind: basin tap", "holes: 1")
                .selection("selection: Top\nkind: vanity top", &format!("drilled: [{{for: Basin tap, behind: 2 1/2\", to bowl: 2\"}}]\ntop: {{{top}splash: {{thickness: 3/4\", height: 4\"}}}}"))
        };
        for (shallow, deep) in
            [("pieces: {top: 37\" x 19\"}, ", "pieces: {top: 37\" x 20\"}, "), ("depth: 19\", ", "depth: 20\", ")]
        {
            vanity("undermount", shallow).finds_one().says("`Basin` needs about 18 1/2\"").weighs("query");
            vanity("undermount", deep).stays_silent();
            vanity("on the counter", shallow).stays_silent();
        }
        // One that is less deep than the vanity itself is told of that.
        vanity("on the counter", "depth: 16\", ")
            .finds_one()
            .says("`Top` is 16\" (406 mm) deep, 2\" (51 mm) less than the `Vanity` below it");
    }
}
