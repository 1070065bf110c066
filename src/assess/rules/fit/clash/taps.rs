//! A tap that is higher than what is above it.

use crate::assess::{Context, about, say};
use crate::book::{ProductOption, Room, Selection, WindowOpens};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::counter_height;
use crate::site::fitting::{AboveIs, above};
use crate::site::plan::{HoleIs, Stands};
use crate::site::taps::{bowl_of, stands_free};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Kind;

/// Every tap of a room that stands at its bowl's counter.
pub fn clash(context: &Context<'_>, room: &Room) -> Vec<Remark> {
    let taps = room.selections.iter().filter(|selection| selection.is(Kind::Tap));
    let options = taps.flat_map(|tap| tap.standing().iter().map(move |option| (tap, option)));
    let at_a_counter = options.filter(|(tap, option)| !stands_free(tap, option));
    at_a_counter.flat_map(|(tap, option)| told(context, room, tap, option)).collect()
}

fn told(context: &Context<'_>, room: &Room, tap: &Selection, option: &ProductOption) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let high = option.size.height.spanned()?;
    let bowl = bowl_of(room, tap)?;
    let opening = room.opening(bowl.place.get()?)?;
    let top = counter_height(room, opening).value()? + high.value.least.or(high.value.most)?;
    let plan = context.site.plan(room);
    let over = above(plan, room, opening).and_then(|above| match above.is {
        AboveIs::Hung(name) => Some((phrase!("`{}`, which hangs over it", name), above.edge, above.at)),
        AboveIs::Said => Some((phrase!("what is above `{}`", opening.name.value), above.edge, above.at)),
        AboveIs::Counter(_) | AboveIs::Ceiling => None,
    });
    let windows: Vec<(Phrase, Length, Span)> =
        plan.and_then(|plan| Some((plan, plan.opening(opening)?))).map_or(vec![], |(plan, own)| {
            let behind = plan.holes.iter().filter(|hole| own.stands == Stands::Wall(hole.wall));
            let over_it = behind.filter(|hole| hole.along.0 < own.centre() && own.centre() < hole.along.1);
            let opening_in = over_it.filter_map(|hole| match hole.is {
                HoleIs::Window(window) if window.opens.get() == Some(&WindowOpens::In) => {
                    let what = phrase!("the sill of the window `{}`, which opens into the room", hole.name());
                    Some((what, hole.low?, hole.span()))
                }
                _ => None,
            });
            opening_in.collect()
        });
    let (what, edge, at) = over.into_iter().chain(windows).min_by_key(|(_, edge, _)| *edge)?;
    let by = Some(top - edge).filter(|by| *by > Length::ZERO)?;
    let message = phrase!("`{}` rises to {}, {} higher than {what}", tap.name.value, say(top), say(by), what);
    let finding = about(room, tap, option, Severity::Query, high.span, message).also(at, what_it_is());
    Some(finding.source("common practice").remedy("choose a lower tap, or move one of them"))
}

fn what_it_is() -> Phrase {
    "it meets this".into()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn tap(room: &str, height: &str) -> Trial {
        Trial::of("fit/clash")
            .room(&format!("outline: 12' x 10'\n{room}"))
            .opening("sink", "{takes: sink, width: 31 1/2\", depth: 19\"}")
            .selection("selection: Sink\nkind: sink\nplace: sink", "size: {width: 32\"}")
            .selection("selection: Tall tap\nkind: tap", &format!("size: {{height: {height}}}"))
    }

    const BASE: &str = "  base: {wall: A, starts: 24\", depth: 24\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{cabinet: drawers, width: 18\"}, {cabinet: sink base, width: 36\", holds: [sink]}]}";

    /// Source: trade reports F-57; arithmetic: 36" and 17" are 53".
    #[test]
    fn a_tap_is_no_higher_than_what_hangs_over_it_or_opens_over_it() {
        let window = |opens: &str| {
            format!(
                "windows: {{w: {{wall: A, at: 40\", width: 40\", sill: 40\", height: 40\", opens: {opens}}}}}\nruns:\n{BASE}"
            )
        };
        tap(&window("in"), "17\"")
            .finds("`Tall tap` rises to 53\" (1346 mm), 13\" (330 mm) higher than the sill of the window `w`, which opens into the room")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-1.yaml:3:16"]);
        tap(&window("inward"), "17\"").finds_one();
        tap(&window("in"), "4\"").stays_silent();
        tap(&window("out"), "17\"").stays_silent();
        let shelf = |above_floor: &str| {
            format!(
                "runs:\n{BASE}\n  shelf: {{wall: A, starts: 42\", above floor: {above_floor}, depth: 12\", height: 1 1/2\", parts: [{{cabinet: shelf, width: 36\"}}]}}"
            )
        };
        tap(&shelf("50\""), "17\"").finds_one().says("`shelf`, which hangs over it");
        tap(&shelf("53\""), "17\"").stays_silent();
        // One that comes out of the wall has a place of its own.
        let of_the_wall = |mount: &str| {
            Trial::of("fit/clash")
                .room(&format!("outline: 12' x 10'\n{}", shelf("50\"")))
                .opening("sink", "{takes: sink, width: 31 1/2\", depth: 19\"}")
                .selection("selection: Sink\nkind: sink\nplace: sink", "size: {width: 32\"}")
                .selection("selection: Tall tap\nkind: tap", &format!("size: {{height: 17\"}}{mount}"))
        };
        of_the_wall("").finds_one();
        of_the_wall("\nmount: wall").stays_silent();
    }
}
