//! Whether a thing can be carried in.

mod built_in;
#[cfg(test)]
mod tests;

use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{DetailName, NarrowPoint, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::fitting::{Passage, Passes, is_large, least_hall_around_a_corner, play_on_the_way, tightest, way_in};
use crate::units::{Length, Wrote};
use crate::vocabulary::{Hazard, Kind, Mention, Trade, Trait};

declare! {
    /// The thing can't be carried through a narrow point on the way in
    ///
    /// ## What it checks
    /// The carton, turned whichever way suits, against every narrow point of the book and then of the
    /// room, and where the room has none of its own, against the widest doorway of its plan (between the jambs, or as
    /// measured: a leaf comes off its hinges); at a point that turns, also round a corner between two halls of that width. What is larger
    /// stops; where the body with its doors off passes, that is told to whoever delivers it. What goes through with less than
    /// {1"} of play beside it or above it is asked about: that much is usual, and no sheet's figure.
    /// Inside the room an appliance that stands on the floor comes past what is built in: the widest way from a doorway
    /// to its place, between cabinets, islands and walls.
    /// Where neither size is known, the thing as it stands, and of what is large whether its carton, {3"} more, still
    /// passes: furniture too, a pane of glass or a mirror on its edge, and each
    /// piece of a counter. In a lift (`depth`) a thing must stand, one side to the back. And where an appliance, a fixture, a cabinet or a piece of furniture is large or heavy (no side less than {28"}, one of {60"} or more, or {150 lb}) and no way in is written, it asks, once.
    ///
    /// ## Why it matters
    /// An appliance that does not pass the way in goes back to the shop with up to a third of its
    /// price kept.
    ///
    /// ## Remedy
    /// Take it out of its carton and its doors off, take a door off its hinges, choose another way
    /// or another model; tell whoever delivers.
    ///
    /// ## Example
    /// ```yaml
    /// way in: [{name: hall turn, width: 29", height: 80", turns: true}]
    /// # carton: 32" x 41" x 30"
    /// ```
    ///
    /// ## Source
    /// Geometry: the smallest side with doors off, and {1"} more, which is common practice; at a
    /// corner, a rectangle turned at 45 degrees.
    "fit/way-in", Stop,
    due: GoodsReleased, tells: [Installer],
    judges: carried,
    sources: ["trade practice for the play; geometry for the corner"],
    caution: Some(Hazard::Weight),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        findings.extend(judge(context, room, selection, option));
        findings.extend(as_it_stands(context, room, selection, option));
        findings.extend(flat(context, room, selection, option));
        findings.extend(stone(context, room, selection, option));
    }
    findings.extend(context.site.fitted().filter_map(|fitted| built_in::judge(context, &fitted)));
    findings.extend(no_way_known(context));
    findings.extend(no_depth_known(context));
}

/// A lift that something large goes up in, and nobody says how deep it is: told once.
fn no_depth_known(context: &Context<'_>) -> Option<Remark> {
    let is_lift = |point: &NarrowPoint| Mention::Lift.is_in(&point.name);
    let mut large = context
        .site
        .options()
        .filter(|(_, selection, option)| is_large(option) && !selection.is_ordered() && is_delivered_whole(selection));
    let (point, (room, selection, option)) = large.find_map(|(room, selection, option)| {
        let points = context.book.project.way_in.iter().chain(&room.way_in);
        let lifts: Vec<&NarrowPoint> = points.filter(|point| is_lift(point)).collect();
        let is_told = lifts.iter().any(|lift| !lift.depth.is_absent());
        Some((*lifts.first().filter(|_| !is_told)?, (room, selection, option)))
    })?;
    let message = phrase!(
        "nobody says how deep the {} is, and `{}`, which is large or heavy, goes up in it",
        Wrote(&point.name),
        selection.name.value
    );
    let finding = about(room, selection, option, Severity::Query, point.span, message);
    Some(finding.remedy("measure the cabin from its door to its back wall, and write its depth beside its width"))
}

/// Large or heavy things, and nobody says how anything comes in: told once, of the first of them.
fn no_way_known(context: &Context<'_>) -> Option<Remark> {
    let unsaid = context.book.project.way_in.is_empty() && !context.book.project_unread;
    let is_unknown = |room: &Room| unsaid && room.way_in.is_empty();
    let mut large = context.site.options().filter(|(room, selection, option)| {
        // What is in the house already was carried in.
        is_unknown(room) && is_large(option) && !selection.is_ordered() && is_delivered_whole(selection)
    });
    let (room, selection, option) = large.next()?;
    let name = &selection.name.value;
    let message = phrase!("nobody says what the way in is for `{name}`, which is large or heavy", name);
    let finding = about(room, selection, option, Severity::Query, selection.name.span, message);
    Some(
        finding
            .remedy("measure the narrowest points between truck and room, and add them to `book.yaml`: `way in: […]`"),
    )
}

/// Whether it comes as one piece: what is hung, laid or made on site does not.
fn is_delivered_whole(selection: &Selection) -> bool {
    let trade = selection.kind.get().map(|kind| kind.trade());
    let others = [Kind::Cabinet, Kind::MirrorCabinet];
    matches!(trade, Some(Trade::Appliance | Trade::Plumbing))
        || selection.is_any(&others)
        || selection.has(Trait::Furnishes)
}

/// So much larger than itself is the carton of a thing, in width or in height (common practice: 2" to 4").
const CARTON: Length = Length::from_inches(3);
/// How thick a pane is with what guards its edges (common practice).
const PANE: Length = Length::from_inches(1);
/// How thick a counter is where nobody says (common practice).
const SLAB: Length = Length::from_sixty_fourths(48);

/// Glass or a mirror, of which no carton is known, on its edge.
fn flat(context: &Context<'_>, room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let crated = option.fit.get().is_some_and(|fit| !fit.carton.is_absent());
    if crated || !selection.is_any(&[Kind::ShowerGlass, Kind::Mirror]) {
        return None;
    }
    let wide = option.size.width.spanned()?;
    let high = option.size.height.get().and_then(|height| height.least.or(height.most))?;
    let point = closed(context, room, option, (PANE, wide.value, high))?;
    let message = phrase!("`{}` does not go through the {} on its edge", selection.name.value, Wrote(&point.name));
    let finding =
        about(room, selection, option, Severity::Query, wide.span, message).also(point.span, "the narrow point");
    Some(finding.remedy("ask how it is brought in, or plan it in two panes, before it is made"))
}

/// A counter's piece that does not come in as it is cut.
fn stone(context: &Context<'_>, room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let top = option.top.get()?;
    let thick = option.length(DetailName::Thickness).map_or(SLAB, |(thick, _)| thick);
    let (piece, point) = top
        .pieces
        .iter()
        .find_map(|piece| Some((piece, closed(context, room, option, (thick, piece.length, piece.depth))?)))?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the piece `{}` of `{}`, {} by {}, does not go through the {}",
        piece.name.value,
        selection.name.value,
        say(piece.length),
        say(piece.depth),
        Wrote(&point.name)
    );
    let finding = about(room, selection, option, Severity::Query, piece.name.span, message);
    let finding = finding.also(point.span, "the narrow point");
    Some(finding.remedy("ask the fabricator how it is carried in, or have a seam planned and signed, before it is cut"))
}

/// The first narrow point that something flat does not pass, however it is tilted: so thick, and of those sides.
fn closed<'a>(
    context: &Context<'a>,
    room: &'a Room,
    option: &ProductOption,
    (thick, one, other): (Length, Length, Length),
) -> Option<&'a NarrowPoint> {
    let square = |length: Length| i128::from(length.nanometres()).pow(2);
    let root = |square: i128| Length::from_nanometres(i64::try_from(square.max(0).isqrt()).unwrap_or(i64::MAX));
    let mut points =
        way_in(context.book, room, context.site.door_of(room), option).into_iter().map(|passage| passage.point);
    points.find(|point| {
        // Its lesser side goes through the door's diagonal at most.
        let through = one.min(other) > root(square(point.width) + square(point.height));
        // Between floor and lintel, no less than this of its diagonal lies level.
        let level = root(square(one) + square(other) - square(point.height));
        // In a lift it stands across the cabin at most.
        let lift = point.depth.get().is_some_and(|deep| level > root(square(point.width) + square(*deep)));
        let turn = lift || point.turns && least_hall_around_a_corner(thick.min(level), thick.max(level)) > point.width;
        through || turn
    })
}

/// Neither carton nor body without doors is known: the thing as it stands, against the way in.
fn as_it_stands(context: &Context<'_>, room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let fit = option.fit.get();
    let is_known = fit.is_some_and(|fit| !fit.carton.is_absent() || !fit.doors_off.is_absent());
    if is_known || !is_delivered_whole(selection) {
        return None;
    }
    let passages = way_in(context.book, room, context.site.door_of(room), option);
    let (spare, point) = narrowest(&passages, |passage| passage.body)?;
    let furniture = selection.has(Trait::Furnishes);
    let crated = matches!(selection.kind.get().map(|kind| kind.trade()), Some(Trade::Appliance | Trade::Plumbing));
    let is_close = crated && is_large(option) && spare < CARTON && !selection.is_ordered();
    if !spare.is_negative() && !is_close {
        return None;
    }
    let (name, by) = (&selection.name.value, say(spare.abs(), context.book.project.units));
    let message = match furniture {
        _ if !spare.is_negative() => phrase!(
            "`{}` as it stands goes through the {} with {} to spare, and nobody says how large its carton is",
            name,
            Wrote(&point.name),
            by
        ),
        true => phrase!(
            "`{}` as it stands is {} too large for the {}, and nobody says how large its carton is, or it in its parts",
            name,
            by,
            Wrote(&point.name)
        ),
        false => phrase!(
            "`{}` as it stands is {} too large for the {}, and nobody says how large its carton is, or it without doors",
            name,
            by,
            Wrote(&point.name)
        ),
    };
    let finding = about(room, selection, option, Severity::Query, option.size.width.span()?, message);
    let remedy = match furniture {
        true => "ask the maker whether it comes in parts or its legs come off, and add the largest: `fit: {carton: …}`",
        false => "ask the maker for the carton and for the body without doors: `fit: {carton: …, doors off: …}`",
    };
    Some(finding.also(point.span, "the narrow point").remedy(remedy))
}

fn judge(context: &Context<'_>, room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let say = |length: Length| say(length.abs(), context.book.project.units);
    let fit = option.fit.get()?;
    let name = &selection.name.value;
    let passages = way_in(context.book, room, context.site.door_of(room), option);
    let carton = narrowest(&passages, |passage| passage.carton);
    let bare = narrowest(&passages, |passage| passage.doors_off);
    let passes = |found: &Option<(Length, &NarrowPoint)>| {
        found.map(|(spare, _)| Passes::with(spare, context.book.project.units))
    };
    let tight = |what: Phrase, (spare, point): (Length, &NarrowPoint)| {
        phrase!(
            "{what} goes through the {} with {} to spare; {} is usual",
            what,
            Wrote(&point.name),
            say(spare),
            say(play_on_the_way(context.book.project.units))
        )
    };
    let large = |what: Phrase, (spare, point): (Length, &NarrowPoint)| {
        phrase!("{what} is {} too large for the {}", what, say(spare), Wrote(&point.name))
    };
    let crate_of = || phrase!("the carton of `{name}`", name);
    let bare_of = || phrase!("`{name}`, doors off,", name);
    let (severity, message, at, point) = match (carton.zip(passes(&carton)), bare.zip(passes(&bare))) {
        (Some((_, Passes::Freely)), _) | (None, None | Some((_, Passes::Freely))) => return None,
        (_, Some((short, Passes::Not))) => (Severity::Stop, large(bare_of(), short), fit.doors_off.span()?, short.1),
        (Some((close, Passes::Tightly)), _) => (Severity::Query, tight(crate_of(), close), fit.carton.span()?, close.1),
        (Some((short, Passes::Not)), bare) => {
            let (severity, rest) = match bare {
                // It is known how it goes in: whoever delivers it is told, and nobody is asked.
                Some((_, Passes::Freely)) => (Severity::Note, "; it goes in out of its carton, doors off"),
                Some(_) => (Severity::Query, "; it goes in out of its carton, doors off"),
                None => (Severity::Stop, ", and the size without it is not known"),
            };
            (severity, large(crate_of(), short).then(rest), fit.carton.span()?, short.1)
        }
        (None, Some((close, Passes::Tightly))) => {
            (Severity::Query, tight(bare_of(), close), fit.doors_off.span()?, close.1)
        }
    };
    let finding = about(room, selection, option, severity, at, message).also(point.span, "the narrow point");
    Some(finding.remedy("plan how it is carried (out of its carton, doors off, another way), or choose another model"))
}

/// The point with the least left, and how much that is.
fn narrowest<'a>(
    passages: &[Passage<'a>],
    spare: impl Fn(&Passage<'a>) -> Option<Length>,
) -> Option<(Length, &'a NarrowPoint)> {
    tightest(passages, spare).map(|(left, passage)| (left, passage.point))
}
