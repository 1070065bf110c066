//! A tap's reach against the bowl that its stream falls into.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about, say};
use crate::book::{DetailName, ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::plan::chosen_for;
use crate::site::taps;
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Hazard, Kind, Mount};

declare! {
    /// A tap's stream falls before or behind the bowl, or too near its rim
    ///
    /// ## What it checks
    /// From the hole's centre to the stream (`spout reach`), against the bowl that the tap serves, from
    /// its back edge to its front (`size: depth`). Where the list of holes says how far the hole is from
    /// the bowl (`to bowl`), a stream that misses the bowl stops. Else the hole is taken {2 1/2"} behind the
    /// bowl, as is usual, or in the wall at its back: a stream less than {2"} past the back edge of a basin,
    /// or {3"} past that of a sink, or in the last quarter before the front edge, is a query; of two taps at one bowl the nearer need only fall inside. What comes out of the wall
    /// reaches a tub past what the plan has `off wall`. And a tap that stands on the counter is higher than the vessel
    /// beside it.
    ///
    /// ## Why it matters
    /// One washes one's hands against the back of the bowl, or the water runs over its front edge.
    ///
    /// ## Remedy
    /// Take a tap that reaches the middle of the bowl, or have its hole drilled nearer or farther.
    ///
    /// ## Example
    /// ```yaml
    /// spout reach: 4"       # into a sink 18" from back to front: the stream falls 1 1/2" past its edge
    /// ```
    ///
    /// ## Source
    /// common practice.
    "fit/reach", Query,
    due: CounterTemplated, tells: [Installer],
    judges: [Sink, Basin, Bathtub, Tap, TubFiller],
    sources: ["common practice"],
    caution: Some(Hazard::Water),
    remedy: "take a tap that reaches the middle of the bowl, or have its hole drilled nearer or farther",
    Check::Book(check)
}

/// Where the hole usually is behind the bowl: 2 1/2 in (common practice).
const BEHIND: Length = Length::from_sixty_fourths(160);
/// How far past the back edge the stream falls at least (common practice).
const INTO_A_BASIN: Length = Length::from_inches(2);
const INTO_A_SINK: Length = Length::from_inches(3);
/// What falls past the back edge at all.
const INSIDE: Length = Length::from_sixty_fourths(1);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        for tap in room.selections.iter().filter(|selection| selection.is_any(&[Kind::Tap, Kind::TubFiller])) {
            let Some(bowl) = taps::served_by(room, tap) else { continue };
            let listed = taps::listed_for(room, tap);
            let to_bowl =
                taps::drilled_for(room, &listed, tap).into_iter().find_map(|hole| hole.to_bowl.get().copied());
            for option in tap.standing() {
                findings.extend(bowl.standing().iter().find_map(|own| low(context, (room, tap, option), (bowl, own))));
                let of_bowls = bowl.standing().iter();
                findings.extend(
                    of_bowls.filter_map(|own| judge(context, (room, tap, option), (bowl, own), to_bowl)).next(),
                );
            }
        }
    }
}

fn judge(
    context: &Context<'_>,
    (room, tap, option): (&Room, &Selection, &ProductOption),
    (bowl, of_bowl): (&Selection, &ProductOption),
    to_bowl: Option<Length>,
) -> Option<Remark> {
    let (reach, at) = option.length(DetailName::SpoutReach)?;
    let on_the_wall = taps::is_on_the_wall(tap, option);
    if taps::stands_free(tap, option) && !on_the_wall {
        // How far from the bowl it stands on the floor nobody says.
        return None;
    }
    if tap.is(Kind::TubFiller) && !on_the_wall {
        return None;
    }
    let deep = side_across(of_bowl, tap)?;
    let off_wall = off_wall(room, bowl);
    let usual = if on_the_wall { off_wall.unwrap_or_default() } else { BEHIND };
    let falls = reach - to_bowl.unwrap_or(usual);
    let least = least_past_the_edge(room, tap, bowl, reach);
    let most = deep.value - deep.value.half().half();
    let misses = falls <= Length::ZERO || falls >= deep.value;
    let severity = match to_bowl {
        None if is_drilled(of_bowl) && !misses => return None,
        Some(_) if misses => Severity::Stop,
        _ if falls < least || falls > most => Severity::Query,
        _ => return None,
    };
    let say = |length: Length| say(length, context.book.project.units);
    let (tap_is, bowl_is) = (&tap.name.value, &bowl.name.value);
    let where_to = if falls == Length::ZERO {
        phrase!("on the back edge of `{bowl_is}`", bowl_is)
    } else if falls < Length::ZERO {
        phrase!("{} before the back edge of `{bowl_is}`", say(-falls), bowl_is)
    } else if falls >= deep.value {
        phrase!("{} past the front edge of `{bowl_is}`", say(falls - deep.value), bowl_is)
    } else {
        phrase!(
            "{} past the back edge of `{bowl_is}`, which is {} from back to front",
            say(falls),
            bowl_is,
            say(deep.value)
        )
    };
    let is_known = to_bowl.is_some() || on_the_wall && off_wall.is_some();
    let as_usual = if is_known { "" } else { ", its hole where it usually is" };
    let message = phrase!("the stream of `{tap_is}` falls {where_to}{as_usual}", tap_is, where_to, as_usual);
    let finding = about(room, tap, option, severity, at, message).also(deep.span, "the bowl");
    Some(finding.source("common practice"))
}

/// How far past the back edge it must fall: of two taps the nearer one fills a glass, and need only fall inside.
fn least_past_the_edge(room: &Room, tap: &Selection, bowl: &Selection, reach: Length) -> Length {
    if is_the_nearer_of_two(room, tap, bowl, reach) {
        return INSIDE;
    }
    if bowl.is(Kind::Sink) { INTO_A_SINK } else { INTO_A_BASIN }
}

/// Whether another tap of the same bowl reaches farther, so that this one is the small one beside it.
fn is_the_nearer_of_two(room: &Room, tap: &Selection, bowl: &Selection, reach: Length) -> bool {
    let others = room.selections.iter().filter(|one| one.is(Kind::Tap) && one.span != tap.span);
    let of_this = others.filter(|one| taps::served_by(room, one).is_some_and(|served| served.span == bowl.span));
    of_this
        .flat_map(Selection::standing)
        .any(|other| other.length(DetailName::SpoutReach).is_some_and(|(farther, _)| farther > reach))
}

/// From its back edge to its front: of a tub along a wall, its lesser side.
fn side_across<'a>(of_bowl: &'a ProductOption, tap: &Selection) -> Option<&'a Spanned<Length>> {
    let (wide, deep) = (of_bowl.size.width.spanned(), of_bowl.size.depth.spanned()?);
    Some(wide.filter(|wide| tap.is(Kind::TubFiller) && wide.value < deep.value).unwrap_or(deep))
}

/// How far the plan sets a bowl or a tub off its wall.
fn off_wall(room: &Room, bowl: &Selection) -> Option<Length> {
    let its = room.fixtures.iter().find(|fixture| chosen_for(room, fixture).is_some_and(|one| std::ptr::eq(one, bowl)));
    its?.off_wall.get().copied()
}

/// Whether a bowl is drilled itself: the tap stands on its rim, where its maker wants it. So it may be where what is
/// written of its holes can't be read.
fn is_drilled(of_bowl: &ProductOption) -> bool {
    taps::holes(of_bowl).is_some_and(|(has, _)| has > 0) || of_bowl.unread.contains(&DetailName::Holes)
}

/// A tap that stands on the counter beside a vessel, and is no higher in all.
fn low(
    context: &Context<'_>,
    (room, tap, option): (&Room, &Selection, &ProductOption),
    (bowl, of_bowl): (&Selection, &ProductOption),
) -> Option<Remark> {
    if of_bowl.mount() != Some(Mount::OnCounter) || taps::stands_free(tap, option) || tap.is(Kind::TubFiller) {
        return None;
    }
    if is_drilled(of_bowl) {
        return None;
    }
    let tall = option.size.height.spanned()?;
    let high = tall.value.most.or(tall.value.least)?;
    let rim = of_bowl.size.height.get().and_then(|height| height.least.or(height.most)).filter(|rim| high <= *rim)?;
    let say = |length: Length| say(length, context.book.project.units);
    let (name, bowl) = (&tap.name.value, &bowl.name.value);
    let message = phrase!(
        "`{name}` is {} high in all, and the rim of `{bowl}`, beside which it stands, {}",
        name,
        say(high),
        bowl,
        say(rim)
    );
    let finding = about(room, tap, option, Severity::Stop, tall.span, message);
    Some(finding.remedy("take a tap for a vessel, whose spout is above its rim, or one that comes out of the wall"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn tap(kind: &str, deep: &str, reach: &str) -> Trial {
        Trial::of("fit/reach")
            .selection(&format!("selection: Bowl\nkind: {kind}"), &format!("size: {{depth: {deep}}}"))
            .selection("selection: Tap\nkind: tap", &format!("spout reach: {reach}"))
    }

    #[test]
    fn a_stream_falls_well_into_its_bowl() {
        tap("sink", "18\"", "4\"")
            .finds("the stream of `Tap` falls 1 1/2\" (38.1 mm) past the back edge of `Bowl`, which is 18\" (457 mm) from back to front, its hole where it usually is")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-1.yaml:3:14"]);
        tap("sink", "18\"", "8 1/4\"").stays_silent();
        tap("basin", "14\"", "6 1/4\"").stays_silent();
        tap("basin", "10\"", "10 1/4\"").finds_one();
        tap("basin", "16\"", "2\"").finds_one();
    }

    #[test]
    fn holes_that_can_t_be_read_are_told_once() {
        let basin = |holes: &str| {
            Trial::of("fit/reach")
                .selection("selection: Bowl\nkind: basin", &format!("size: {{depth: 16\"}}\nholes: {holes}"))
                .selection("selection: Tap\nkind: tap", "spout reach: 4\"")
        };
        basin("1").stays_silent();
        basin("one").of_any_yaml().stays_silent();
        basin("0").finds_one();
    }

    #[test]
    fn a_small_tap_beside_another_need_only_fall_inside() {
        let two = |reach: &str| {
            tap("sink", "18\"", "9\"").selection("selection: Filter tap\nkind: tap", &format!("spout reach: {reach}"))
        };
        two("5\"").stays_silent();
        two("2\"").finds_one().says("`Filter tap`");
        tap("sink", "18\"", "5\"").finds_one();
    }

    #[test]
    fn where_the_hole_is_known_a_stream_that_misses_the_bowl_stops() {
        let drilled = |to_bowl: &str, reach: &str| {
            tap("sink", "18\"", reach)
                .selection("selection: Counter\nkind: counter", &format!("drilled: [{{for: tap, to bowl: {to_bowl}}}]"))
        };
        drilled("5\"", "4 3/4\"")
            .finds("the stream of `Tap` falls 1/4\" (6.4 mm) before the back edge of `Bowl`")
            .weighs("stop");
        drilled("1\"", "4\"").stays_silent();
        drilled("1\"", "3 1/2\"").finds_one().weighs("query");
    }

    #[test]
    fn a_tap_of_another_bowl_says_nothing_of_this_one() {
        let two = |name: &str| {
            Trial::of("fit/reach")
                .selection("selection: Prep sink\nkind: sink", "size: {depth: 10\"}")
                .selection("selection: Main sink\nkind: sink", "size: {depth: 20\"}")
                .selection(&format!("selection: {name}\nkind: tap"), "spout reach: 10 1/2\"")
        };
        two("Main tap").stays_silent();
        two("Prep tap").finds_one();
        two("Pot filler").stays_silent();
    }

    #[test]
    fn a_filler_on_the_wall_reaches_a_tub_that_stands_off_it() {
        let tub = |off_wall: &str| {
            Trial::of("fit/reach")
                .room(&format!("outline: 9' x 7'\nfixtures: {{tub: {{wall: A, centre: 50\", off wall: {off_wall}, selection: Tub}}}}"))
                .selection("selection: Tub\nkind: bathtub", "size: {width: 60\", depth: 30\"}")
                .selection("selection: Tub spout\nkind: tub filler", "mount: on the wall\nspout reach: 8\"")
        };
        tub("8\"")
            .finds("the stream of `Tub spout` falls on the back edge of `Tub`")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-1.yaml:4:14"]);
        tub("2\"").stays_silent();
    }

    #[test]
    fn a_tap_is_higher_than_the_vessel_beside_it() {
        let vessel = |high: &str, more: &str| {
            Trial::of("fit/reach")
                .selection(
                    "selection: Basin\nkind: basin",
                    "mount: vessel\nsize: {width: 17\", depth: 14\", height: 6\"}",
                )
                .selection(
                    "selection: Basin tap\nkind: basin tap",
                    &format!("spout reach: 8\"\nsize: {{height: {high}}}{more}"),
                )
        };
        vessel("5\"", "")
            .finds(
                "`Basin tap` is 5\" (127 mm) high in all, and the rim of `Basin`, beside which it stands, 6\" (152 mm)",
            )
            .weighs("stop")
            .points_at(&["rooms/kitchen/selection-1.yaml:4:16"]);
        vessel("12\"", "").stays_silent();
        vessel("5\"", "\nmount: on the wall").stays_silent();
    }
}
