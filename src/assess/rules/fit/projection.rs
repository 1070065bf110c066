//! How far a thing stands out.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, behind, say};
use crate::book::Size;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::fitting::setting;
use crate::site::{Placement, counter_depth, deck};
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

declare! {
    /// The thing stands out past the counter, or past the front of its opening
    ///
    /// ## What it checks
    /// The depth with door and handle (with the door, or of the case, where that is all that is
    /// known; with its front panel) and the air behind it, against the counter's edge, or the opening's own depth. More
    /// than {1 1/2"} is a query; where the body or its door stays within that and the handle alone is before it, what is
    /// usual is not told ({3"}), a note to {3 1/2"}, a query past that; of a toilet or a tub, which have no handle, any of it. Of a
    /// refrigerator that stands free its case counts, against its niche where that is deeper than the counter: the doors open before
    /// what is beside them. And what lies in a counter, from back to front with the air behind it, against the
    /// counter's depth less what stands up behind it (a `splash`, tile, a raised back): what is more stops.
    ///
    /// ## Why it matters
    /// "Counter-depth" is a word of the shop. A hand's breadth past the counter narrows the aisle,
    /// and is the first thing that the household sees.
    ///
    /// ## Remedy
    /// Choose a shallower model, recess the outlet behind it, or show the client how far it stands
    /// out and waive this.
    ///
    /// ## Example
    /// ```yaml
    /// counter depth: 25 1/2"     # and a refrigerator 30 5/8" deep with its handle
    /// ```
    ///
    /// ## Source
    /// The maker's sheet: counter-depth units have doors and handles past the counter. {1 1/2"}
    /// for a handle is common practice.
    "fit/projection", Query,
    due: WithThing, tells: [Installer],
    judges: placed,
    sources: ["common practice for a handle"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.site.fitted().filter_map(|fitted| judge(context, &fitted)));
    findings.extend(context.site.fitted().filter_map(|fitted| across_the_counter(context, &fitted)));
}

/// What lies in a counter against the counter itself, from what stands behind it to its front edge.
fn across_the_counter(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let own = fitted.option.size.depth.spanned().filter(|_| fitted.selection.has(Trait::CutIntoCounter))?;
    let air = fitted.option.fit.get().and_then(|fit| fit.air.back.get()).filter(|air| air.holds.is_empty());
    let air = air.map_or(Length::ZERO, |air| air.length);
    let deck = deck(fitted.room, fitted.opening)?;
    let over = Some(own.value + air - deck.clear).filter(|over| *over > Length::ZERO)?;
    let with = if air > Length::ZERO { phrase!(" with {} of air behind it", say(air)) } else { Phrase::default() };
    let before = deck.behind.as_ref().map_or(Phrase::default(), |before| phrase!(" before {}", behind(&before.is)));
    let message = phrase!(
        "`{}` is {} from back to front{with}, {} more than the counter at the opening `{}` is deep{before}: {}",
        fitted.selection.name.value,
        say(own.value + air),
        with,
        say(over),
        fitted.opening.name.value,
        before,
        say(deck.clear)
    );
    let finding = fitted.finding(Severity::Stop, own.span, message).also(deck.at, "the counter");
    let finding = match &deck.behind {
        Some(before) => finding.also(before.at, "what stands behind"),
        None => finding,
    };
    Some(finding.remedy("choose one that is shallower, or have the counter made deeper before it is templated"))
}

fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    // What is meant to be flush is told by its depth; what is meant to stand out is meant.
    if setting(fitted.opening, fitted.option).is_some() || fitted.room.partly_unread {
        return None;
    }
    let usual = if fitted.selection.is_any(&WITHOUT_HANDLES) { HAIR } else { HANDLE };
    let fit = context.site.fitting(fitted);
    // What is too deep for its sheet's opening is told by its depth.
    let told = usual == HAIR && fit.depth.misfit().is_some();
    let out = fit.projection.filter(|out| *out > usual && !told)?;
    let counter = counter_depth(fitted.room, fitted.opening);
    let edge = if counter.best().is_some() { "counter" } else { "front of its opening" };
    let size = &fitted.option.size;
    let spans = [size.depth_with_handle.span(), size.depth_with_door.span(), size.depth.span()];
    let at = spans.into_iter().flatten().next().unwrap_or(fitted.option.span);
    let name = &fitted.selection.name.value;
    let (severity, what) = match handle(&fitted.option.size) {
        // Every range has a handle that one can take hold of.
        Some(handle) if out - handle <= usual && out.max(handle) <= USUAL_HANDLE => return None,
        // A refrigerator's doors open past the fronts beside them: they stand before these, and its case does not.
        _ if fitted.selection.is(Kind::Refrigerator) && case_stays_behind(fitted) => return None,
        // The body stays behind, and only what is taken hold of is before it: told, and nobody is asked.
        Some(handle) if out - handle <= usual && handle <= LONG_HANDLE => {
            (Severity::Note, phrase!("the handle of `{name}`", name))
        }
        _ if size.depth_with_handle.get().is_some() => (Severity::Query, phrase!("`{name}` with its handle", name)),
        _ => (Severity::Query, Phrase::name(name)),
    };
    let message = phrase!("{what} stands {} proud of the {edge}", what, say(out), edge);
    let finding = fitted.finding(severity, at, message).also(fitted.opening.span, "the opening");
    Some(
        finding
            .remedy("choose a shallower model, or show it to those who decide and waive this")
            .source("common practice"),
    )
}

/// Whether the case with the air behind it stays in its niche, or behind the counter's edge, and door and handle are no
/// more than they usually are.
fn case_stays_behind(fitted: &Placement<'_>) -> bool {
    let size = &fitted.option.size;
    let with = size.depth_with_handle.get().or(size.depth_with_door.get());
    let air = fitted.option.fit.get().and_then(|fit| fit.air.back.get());
    let air = air.filter(|air| air.holds.is_empty()).map_or(Length::ZERO, |air| air.length);
    let edges = [counter_depth(fitted.room, fitted.opening).value(), fitted.opening.governing_depth()];
    let edge = edges.into_iter().flatten().max();
    let case = size.depth.get().copied();
    let before = case.zip(with).map(|(case, with)| *with - case);
    // What stands under a counter has its doors in line with what is beside it.
    let is_tall = size.height.get().and_then(|high| high.least.or(high.most)).is_none_or(|high| high >= TALL);
    is_tall
        && before.is_some_and(|before| before > Length::ZERO && before <= DOOR_AND_HANDLE)
        && case.zip(edge).is_some_and(|(case, edge)| case + air <= edge + HAIR)
}

/// How far a refrigerator's door and handle stand before its case, at most (common practice).
const DOOR_AND_HANDLE: Length = Length::from_inches(7);
/// What is lower stands under a counter (common practice).
const TALL: Length = Length::from_inches(48);
/// How far the handle of a range or an oven stands out, at most, as they are made (common practice).
const USUAL_HANDLE: Length = Length::from_inches(3);

/// How far a handle stands before the door, or before the body where that has none.
fn handle(size: &Size) -> Option<Length> {
    let before = size.depth_with_door.get().or(size.depth.get())?;
    Some(*size.depth_with_handle.get()? - *before)
}

/// What has no handle that may stand out.
const WITHOUT_HANDLES: [Kind; 2] = [Kind::Toilet, Kind::Bathtub];
/// What two readings of one depth may differ by: 1/8 in (common practice).
const HAIR: Length = Length::from_sixty_fourths(8);
/// More before a body than any handle stands out is a door as well: 3 1/2 in (common practice).
const LONG_HANDLE: Length = Length::from_sixty_fourths(224);
/// What a handle usually stands out: 1 1/2 in (common practice).
const HANDLE: Length = Length::from_sixty_fourths(96);

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade reports F-08; look: a refrigerator 30 5/8" deep with its handle at a 25 1/2" counter.
    #[test]
    fn a_refrigerator_a_hands_breadth_past_the_counter_is_a_query() {
        let fridge = |depth: &str| {
            let trial = Trial::of("fit/projection").opening("hole", "{takes: refrigerator, counter depth: 25 1/2\"}");
            trial.selection(
                "selection: Fridge\nkind: refrigerator\nplace: hole",
                &format!("size: {{depth with handle: {depth}}}"),
            )
        };
        fridge("30 5/8\"")
            .finds("`Fridge` with its handle stands 5 1/8\" (130 mm) proud of the counter")
            .weighs("query");
        fridge("27\"").stays_silent();
    }

    #[test]
    fn a_handle_is_no_surprise_and_each_option_still_open_is_judged() {
        let two = "options:\n  - {id: deep, size: {depth: 25 17/32\"}}\n  - {id: slim, size: {depth: 25 1/2\"}}";
        Trial::of("fit/projection")
            .opening("hole", "{takes: refrigerator, depth: 24\"}")
            .selection("selection: Fridge\nkind: refrigerator\nplace: hole", two)
            .finds("option `deep`: `Fridge` stands 1 17/32\" (38.9 mm) proud of the front of its opening");
    }

    /// Source: trade reports section 6 (wall oven 23 1/2" deep): behind its front it goes in, whatever is left there.
    #[test]
    fn a_front_that_sits_on_the_cabinet_stands_out_by_what_is_before_the_case() {
        Trial::of("fit/projection")
            .opening("hole", "{takes: wall oven, depth: 25\"}")
            .selection(
                "selection: Oven\nkind: wall oven\nplace: hole",
                "size: {depth: 23 1/2\", depth with handle: 26 5/8\"}\nfit: {face: {width: 30\"}}",
            )
            .finds("the handle of `Oven` stands 3 1/8\" (79 mm) proud of the front of its opening")
            .weighs("note");
    }

    /// Source: arithmetic: a body of 25 1/8" at a counter of 25 1/2", its handle 3 3/8" before it.
    #[test]
    fn a_handle_is_not_the_body() {
        let range = |sizes: &str| {
            Trial::of("fit/projection")
                .opening("hole", "{takes: range, counter depth: 25 1/2\"}")
                .selection("selection: Range\nkind: range\nplace: hole", &format!("size: {{{sizes}}}"))
        };
        range("depth: 25 1/8\", depth with handle: 28 1/2\"")
            .finds("the handle of `Range` stands 3\" (76 mm) proud of the counter")
            .weighs("note");
        range("depth: 25 1/8\", depth with door: 27 1/2\", depth with handle: 29\"")
            .finds("`Range` with its handle stands 3 1/2\" (89 mm) proud of the counter")
            .weighs("query");
        range("depth: 24\", depth with handle: 30 5/8\"").finds_one().weighs("query");
        // As every range is made: a body of 25 3/4" and its handle 2 5/8" before it.
        range("depth: 25 3/4\", depth with handle: 28 3/8\"").stays_silent();
        range("depth: 635 mm, depth with handle: 710 mm").stays_silent();
        range("depth: 27 1/2\"").finds("`Range` stands 2\" (51 mm) proud of the counter").weighs("query");
        range("depth: 24\", depth with handle: 27\"").stays_silent();
    }

    /// Source: arithmetic: 620 mm of case and 30 mm of air stay in a niche of 720 mm, 700 mm and 30 mm do not.
    #[test]
    fn the_doors_of_a_refrigerator_that_stands_free_are_before_its_niche() {
        let fridge = |opening: &str, sizes: &str| {
            Trial::of("fit/projection").opening("niche", &format!("{{takes: refrigerator, {opening}}}")).selection(
                "selection: Fridge\nkind: refrigerator\nplace: niche",
                &format!("size: {{{sizes}}}\nfit: {{air: {{back: 30 mm}}}}"),
            )
        };
        let doors = "depth with door: 720 mm, depth with handle: 775 mm";
        fridge("depth: 720 mm", &format!("depth: 620 mm, {doors}")).stays_silent();
        fridge("depth: 720 mm, counter depth: 600 mm", &format!("depth: 620 mm, {doors}")).stays_silent();
        fridge("depth: 720 mm", "depth: 760 mm, depth with door: 800 mm, depth with handle: 855 mm").finds_one();
        fridge("counter depth: 600 mm", &format!("depth: 620 mm, {doors}")).finds_one().weighs("query");
        // Under a counter its doors are in line with what is beside it.
        fridge("depth: 720 mm, counter depth: 600 mm", &format!("height: 820 mm, depth: 570 mm, {doors}")).finds_one();
        // As deep before its case as no door is.
        fridge("depth: 720 mm", "depth: 580 mm, depth with handle: 790 mm").finds_one().weighs("query");
    }

    /// Source: arithmetic: a counter of 25 1/2" before a splash of 3/4" takes 24 3/4".
    #[test]
    fn what_lies_in_a_counter_is_no_deeper_than_the_counter_before_its_splash() {
        let hob = |depth: &str, counter: &str, option: &str| {
            Trial::of("fit/projection")
                .room(&format!("runs: {{hob wall: {{counter: {{{counter}}}, parts: [{{cabinet: base, width: 36\", holds: [hob]}}]}}}}"))
                .opening("hob", "{takes: cooktop}")
                .selection("selection: Hob\nkind: cooktop\nplace: hob", &format!("size: {{depth: {depth}}}\n{option}"))
        };
        let splash = "depth: 25 1/2\", splash: {thickness: 3/4\"}";
        hob("25\"", splash, "")
            .finds("`Hob` is 25\" (635 mm) from back to front, 1/4\" (6.4 mm) more than the counter at the opening `hob` is deep before the splash of `hob wall`: 24 3/4\" (629 mm)")
            .weighs("stop");
        hob("24 3/4\"", splash, "").stays_silent();
        hob("23\"", splash, "fit: {air: {back: 2\"}}").finds_one();
        hob("25 1/2\"", "depth: 25 1/2\"", "").stays_silent();
        // A raised back along the room's side of an island.
        let island = |back: &str| {
            Trial::of("fit/projection")
                .room(&format!("islands: {{island: {{size: 84\" x 28\", wall side: {{parts: [{{cabinet: base, width: 36\", holds: [hob]}}]}}, room side: {{splash: {{thickness: {back}, height: 6\"}}}}}}}}"))
                .opening("hob", "{takes: cooktop}")
                .selection("selection: Hob\nkind: cooktop\nplace: hob", "size: {depth: 23\"}")
        };
        island("5\"").stays_silent();
        island("6\"").finds_one();
    }

    #[test]
    fn a_toilet_has_no_handle_that_may_stand_out() {
        let toilet = |depth: &str| {
            Trial::of("fit/projection")
                .opening("place", "{takes: toilet, depth: 600 mm}")
                .selection("selection: Toilet\nkind: toilet\nplace: place", &format!("size: {{depth: {depth}}}"))
        };
        toilet("620 mm").finds_one().weighs("query");
        toilet("600 mm").stays_silent();
    }

    #[test]
    fn what_is_let_into_a_counter_from_above_stands_out_of_nothing() {
        Trial::of("fit/projection")
            .opening("hob", "{takes: cooktop, depth: 19\"}")
            .selection("selection: Cooktop\nkind: cooktop\nplace: hob", "size: {depth: 21\"}")
            .stays_silent();
    }
}
