//! A washbasin against the cabinet that it stands in, where it has no opening of its own.

use crate::assess::context::about;
use crate::assess::{Context, say};
use crate::book::{Opening, Plainly, ProductOption, Room, Selection, Slot};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::fitting::Side;
use crate::site::vanity::vanity_of;
use crate::site::{deck_of_a_vanity, panel_thickness, top_of_a_vanity};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Mount};

use super::carried::LEFT_AROUND;
use super::{CLIPS, RIM};

/// Width and depth of each basin against each cabinet that may still be chosen below it: the first that is too
/// small.
pub fn ask(context: &Context<'_>, (room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let vanity = vanity_of(room, selection).filter(|_| selection.is(Kind::Basin))?;
    let mount = option.mount();
    if mount == Some(Mount::OnCounter) {
        return on_it(context, (room, selection, option), vanity.selection);
    }
    if mount == Some(Mount::InNoCabinet) {
        return None;
    }
    let around = if mount == Some(Mount::Under) { CLIPS.times(2) } else { -RIM.times(2) };
    let say = |length| say(length, context.book.project.units);
    let (name, below) = (&selection.name.value, &vanity.selection.name.value);
    let told = |cabinet: &ProductOption| {
        let narrow = || {
            let (wide, outside) = (option.size.width.get()?, cabinet.size.width.spanned()?);
            let inside = outside.value - panel_thickness(outside.value, context.book.project.units).times(2);
            let needs = *wide + around;
            let message = phrase!(
                "`{name}` needs {} inside its cabinet, {} more than the {} there are in `{below}`, which is {} wide outside",
                name,
                say(needs),
                say(needs - inside),
                say(inside),
                below,
                say(outside.value)
            );
            (needs > inside).then_some((outside.span, message))
        };
        let shallow = || {
            let (deep, outside) = (option.size.depth.get()?, cabinet.size.depth.spanned()?);
            let over = *deep - outside.value;
            let message = phrase!("`{name}` is {} deep, {} more than `{below}`", name, say(*deep), say(over), below);
            (over > Length::ZERO).then_some((outside.span, message))
        };
        narrow().or_else(shallow).or_else(|| nothing_is_left(context, selection, option, (below, cabinet)))
    };
    let (at, message) = vanity.selection.standing().iter().find_map(told)?;
    let finding = about(room, selection, option, Severity::Query, at, message).also(selection.name.span, "the basin");
    Some(finding.source("common practice"))
}

/// A bowl under a top that is as deep as its vanity, so that no counter is left before and behind it.
fn nothing_is_left(
    context: &Context<'_>,
    selection: &Selection,
    option: &ProductOption,
    (below, cabinet): (&str, &ProductOption),
) -> Option<(Span, Phrase)> {
    let (deep, outside) = (*option.size.depth.get()?, cabinet.size.depth.spanned()?);
    if option.mount() != Some(Mount::Under) || deep + LEFT_AROUND <= outside.value {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{name}` is {} from back to front, and `{below}` {}: too little counter is left before and behind it",
        selection.name.value,
        say(deep),
        below,
        say(outside.value)
    );
    Some((outside.span, message))
}

/// A bowl that stands on a vanity is no wider and no deeper than that.
fn on_it(
    context: &Context<'_>,
    (room, selection, option): (&Room, &Selection, &ProductOption),
    vanity: &Selection,
) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let told = |cabinet: &ProductOption| {
        let over = |own: &Slot<Length>, there: &Slot<Length>| {
            let (own, there) = (*own.get()?, there.spanned()?);
            (own > there.value).then_some((own, own - there.value, there.span))
        };
        let wide = over(&option.size.width, &cabinet.size.width).map(|found| (found, "wide"));
        wide.or_else(|| over(&option.size.depth, &cabinet.size.depth).map(|found| (found, "deep")))
    };
    let ((own, over, at), way) = vanity.standing().iter().find_map(told)?;
    let message = phrase!(
        "`{}` stands on `{}` and is {} {way}, {} more than that",
        selection.name.value,
        vanity.name.value,
        say(own),
        way,
        say(over)
    );
    let finding = about(room, selection, option, Severity::Query, at, message).also(selection.name.span, "the basin");
    Some(finding.source("common practice").remedy("take a larger vanity, or a smaller bowl"))
}

/// The top of a vanity against the vanity itself, in a room that has one of each.
pub fn top(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let only = |kind: Kind| {
        let mut all = room.selections.iter().filter(move |selection| selection.is(kind));
        all.next().filter(|_| all.next().is_none())
    };
    let carried = vanity_of(room, only(Kind::Basin)?)?;
    let vanity = carried.selection;
    let top = only(Kind::Counter).filter(|_| only(Kind::Cabinet).is_some())?;
    let (long, at) = length_of_top(top.settled()?)?;
    let cabinet = vanity.settled()?.size.width.spanned()?;
    let say = |length| say(length, context.book.project.units);
    if let Some((between, over)) = past_the_walls(carried.opening, long) {
        let message = phrase!(
            "`{}` is {} long, {} more than the {} between the walls at its ends",
            top.name.value,
            say(long),
            say(over),
            say(between)
        );
        let finding = Remark::query(at, message).room(&room.folder).selection(&top.name);
        return Some(finding.remedy("have it templated between the finished walls, and cut with play at both ends"));
    }
    let over = long - cabinet.value;
    if over >= Length::ZERO && over <= OVERHANGS {
        return None;
    }
    let by = if over < Length::ZERO { "shorter" } else { "longer" };
    let message = phrase!(
        "`{}` is {} long, {} {by} than `{}`",
        top.name.value,
        say(long),
        say(over.abs()),
        by,
        vanity.name.value
    );
    let finding = Remark::query(at, message).room(&room.folder).selection(&top.name);
    let finding = finding.also(cabinet.span, "the vanity's width").source("common practice");
    Some(
        finding
            .remedy("order the top to the vanity, with its overhang; or say in its `top: pieces` what else it covers"),
    )
}

/// A top that ends before the front of the vanity below it, in a room of one basin.
pub fn shallow_top(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let basin = room.selections.iter().find(|selection| selection.is(Kind::Basin))?;
    let vanity = vanity_of(room, basin)?.selection;
    let deck = deck_of_a_vanity(room, basin)?;
    let deep = deck.clear + deck.behind.map_or(Length::ZERO, |behind| behind.thickness);
    let cabinet = vanity.settled()?.size.depth.spanned()?;
    let short = Some(cabinet.value - deep).filter(|short| *short > HAIR)?;
    let (top, _) = top_of_a_vanity(room, basin)?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` is {} deep, {} less than the `{}` below it",
        top.name.value,
        say(deep),
        say(short),
        vanity.name.value
    );
    let finding = Remark::query(deck.at, message).room(&room.folder).selection(&top.name);
    let finding = finding.also(cabinet.span, "the vanity's depth").source("common practice");
    Some(finding.remedy("make the top as deep as the vanity, with what stands out before its fronts"))
}

/// How much longer a top is than there is between the walls at both ends of its vanity.
fn past_the_walls(opening: &Opening, long: Length) -> Option<(Length, Length)> {
    let wall = |side: Side| {
        let said = side.of(opening).get().filter(|said| said.plainly() == Some(Plainly::Wall))?;
        Some(said.gap.get().copied().unwrap_or_default())
    };
    let between = opening.governing_width()? + wall(Side::Left)? + wall(Side::Right)?;
    (long > between).then_some((between, long - between))
}

/// Two figures of one length may differ by so much: 1/8 in (common practice).
const HAIR: Length = Length::from_sixty_fourths(8);

/// How far a vanity's top stands out past it, both ends together, at most (common practice: 1" at each).
const OVERHANGS: Length = Length::from_inches(3);

/// How long a top is that is cut in one piece.
fn length_of_top(option: &ProductOption) -> Option<(Length, Span)> {
    let pieces = option.top.get().map_or(&[][..], |top| &top.pieces);
    match pieces {
        [only] => Some((only.length, only.name.span)),
        [] => {
            let wide = option.size.width.spanned().or_else(|| option.size.length.spanned())?;
            Some((wide.value, wide.span))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn basin(basin: &str, vanity: &str) -> Trial {
        Trial::of("fit/sink")
            .opening("vanity", "{takes: cabinet, width: 40\", service: {drain: '1 1/4\", 18\" AFF'}}")
            .selection("selection: Vanity\nkind: cabinet\nplace: vanity", &format!("size: {{{vanity}, height: 30\"}}"))
            .selection("selection: Basin\nkind: basin", &format!("reveal: flush\n{basin}"))
    }

    /// Source: trade reports F-51, for basins: common practice.
    #[test]
    fn a_basin_goes_into_the_cabinet_that_stands_before_its_pipes() {
        let under = |size: &str| format!("mount: undermount\nsize: {{{size}}}");
        basin(&under("width: 22\", depth: 15\""), "width: 24\", depth: 21\"")
            .finds("`Basin` needs 23\" (584 mm) inside its cabinet, 1/2\" (12.7 mm) more than the 22 1/2\" (572 mm) there are in `Vanity`, which is 24\" (610 mm) wide outside")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:4:15"]);
        basin(&under("width: 20\", depth: 15\""), "width: 24\", depth: 21\"").stays_silent();
        basin(&under("width: 18\", depth: 16\""), "width: 24\", depth: 14\"")
            .finds("`Basin` is 16\" (406 mm) deep, 2\" (51 mm) more than `Vanity`");
        basin(&under("width: 17\", depth: 21\""), "width: 35\", depth: 21\"")
            .finds("`Basin` is 21\" (533 mm) from back to front, and `Vanity` 21\" (533 mm): too little counter is left before and behind it");
        basin(&under("width: 17\", depth: 19\""), "width: 35\", depth: 21\"").stays_silent();
        basin("mount: on the counter\nsize: {width: 24\", depth: 14\"}", "width: 24\", depth: 14\"").stays_silent();
        basin("mount: drop-in\nsize: {width: 23\", depth: 15\"}", "width: 24\", depth: 21\"").stays_silent();
    }

    #[test]
    fn a_bowl_that_stands_on_a_vanity_stands_on_all_of_it() {
        let bowl = |size: &str| basin(&format!("mount: vessel\nsize: {{{size}}}"), "width: 24\", depth: 18\"");
        bowl("width: 26\", depth: 15\"")
            .finds("`Basin` stands on `Vanity` and is 26\" (660 mm) wide, 2\" (51 mm) more than that")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:4:15"]);
        bowl("width: 20\", depth: 19\"").finds_one().says("19\" (483 mm) deep");
        bowl("width: 24\", depth: 18\"").stays_silent();
    }

    /// Source: common practice: a top as long as its vanity, or an inch longer at each end.
    #[test]
    fn a_vanity_s_top_is_as_long_as_the_vanity() {
        let top = |lines: &str| {
            basin("mount: undermount\nsize: {width: 18\", depth: 15\"}", "width: 36\", depth: 21\"")
                .selection("selection: Top\nkind: vanity top", lines)
        };
        top("size: {width: 49\", depth: 22\"}")
            .finds("`Top` is 49\" (1245 mm) long, 13\" (330 mm) longer than `Vanity`")
            .weighs("query");
        top("top: {pieces: {top: 30\" x 22\"}}").finds_one().says("6\" (152 mm) shorter");
        top("size: {width: 37\", depth: 22\"}").stays_silent();
        top("top: {pieces: {top: 36\" x 22\"}}").stays_silent();
    }

    /// Source: arithmetic: between two walls 37" apart goes no top of 38".
    #[test]
    fn a_top_between_two_walls_is_no_longer_than_they_are_apart() {
        let top = |sides: &str, long: &str| {
            Trial::of("fit/sink")
                .opening(
                    "vanity",
                    &format!("{{takes: cabinet, width: 37\", {sides}, service: {{drain: '1 1/4\", 18\" AFF'}}}}"),
                )
                .selection(
                    "selection: Vanity\nkind: cabinet\nplace: vanity",
                    "size: {width: 36\", depth: 21\", height: 33\"}",
                )
                .selection(
                    "selection: Basin\nkind: basin",
                    "reveal: flush\nmount: undermount\nsize: {width: 17\", depth: 14\"}",
                )
                .selection("selection: Top\nkind: vanity top", &format!("top: {{pieces: {{top: {long} x 22\"}}}}"))
        };
        let walls = "left: wall, right: {what: wall, gap: 0\"}";
        top(walls, "38\"")
            .finds_one()
            .says("1\" (25.4 mm) more than the 37\" (940 mm) between the walls")
            .weighs("query");
        top(walls, "37\"").stays_silent();
        top("left: wall, right: {what: wall, gap: 1\"}", "38\"").stays_silent();
        top("left: wall, right: nothing", "38\"").stays_silent();
    }
}
