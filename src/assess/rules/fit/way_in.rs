//! Whether a thing can be carried in.

use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{DetailName, NarrowPoint, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::fitting::{PLAY_ON_THE_WAY, Passage, Passes, is_large, least_hall_around_a_corner, way_in};
use crate::units::{Length, Wrote};
use crate::vocabulary::{Hazard, Kind, Trade};

declare! {
    /// The thing can't be carried through a narrow point on the way in
    ///
    /// ## What it checks
    /// The carton, turned whichever way suits, against every narrow point of the book and then of the
    /// room; at a point that turns, also round a corner between two halls of that width. What is larger
    /// stops; where the body with its doors off passes, it is a query. What goes through with less than
    /// {1"} of play beside it or above it is asked about: that much is usual, and no sheet's figure.
    /// Where neither size is known, the thing as it stands: a pane of glass or a mirror on its edge, and each
    /// piece of a counter. And where an appliance, a fixture or a cabinet is large or heavy (no side less than {28"}, one of {60"} or more, or 150 lb) and no way in is written, it asks, once.
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
    findings.extend(no_way_known(context));
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
    matches!(trade, Some(Trade::Appliance | Trade::Plumbing)) || selection.is_any(&[Kind::Cabinet, Kind::MirrorCabinet])
}

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
    let mut points = way_in(context.book, room, option).into_iter().map(|passage| passage.point);
    points.find(|point| {
        // Its lesser side goes through the door's diagonal at most.
        let through = one.min(other) > root(square(point.width) + square(point.height));
        // Between floor and lintel, no less than this of its diagonal lies level.
        let level = root(square(one) + square(other) - square(point.height));
        let turn = point.turns && least_hall_around_a_corner(thick.min(level), thick.max(level)) > point.width;
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
    let passages = way_in(context.book, room, option);
    let (short, point) = tightest(&passages, |passage| passage.body).filter(|(spare, _)| spare.is_negative())?;
    let message = phrase!(
        "`{}` as it stands is {} too large for the {}, and nobody says how large its carton is, or it without doors",
        selection.name.value,
        say(short.abs(), context.book.project.units),
        Wrote(&point.name)
    );
    let finding = about(room, selection, option, Severity::Query, option.size.width.span()?, message);
    Some(
        finding
            .also(point.span, "the narrow point")
            .remedy("ask the maker for the carton and for the body without doors: `fit: {carton: …, doors off: …}`"),
    )
}

fn judge(context: &Context<'_>, room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let say = |length: Length| say(length.abs(), context.book.project.units);
    let fit = option.fit.get()?;
    let name = &selection.name.value;
    let passages = way_in(context.book, room, option);
    let carton = tightest(&passages, |passage| passage.carton);
    let bare = tightest(&passages, |passage| passage.doors_off);
    let passes = |found: &Option<(Length, &NarrowPoint)>| found.map(|(spare, _)| Passes::with(spare));
    let tight = |what: Phrase, (spare, point): (Length, &NarrowPoint)| {
        phrase!(
            "{what} goes through the {} with {} to spare; {} is usual",
            what,
            Wrote(&point.name),
            say(spare),
            say(PLAY_ON_THE_WAY)
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

/// The point with the least left, the first of equals.
fn tightest<'a>(
    passages: &[Passage<'a>],
    spare: impl Fn(&Passage<'a>) -> Option<Length>,
) -> Option<(Length, &'a NarrowPoint)> {
    passages.iter().filter_map(|passage| Some((spare(passage)?, passage.point))).min_by_key(|(spare, _)| *spare)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(fit: &str, way: &str) -> Trial {
        let trial = Trial::of("fit/way-in").book(&format!("way in: [{way}]")).opening("hole", "{takes: refrigerator}");
        trial.selection("selection: Fridge\nkind: refrigerator\nplace: hole", &format!("fit: {{{fit}}}"))
    }

    /// Source: trade reports F-111: a 29" door and a unit of 30" × 33 1/2".
    #[test]
    fn a_unit_wider_than_the_door_is_told() {
        let door = "{name: kitchen door, width: 29\", height: 80\"}";
        trial("doors off: 30\" x 33 1/2\" x 68\"", door)
            .finds("`Fridge`, doors off, is 1\" (25.4 mm) too large for the kitchen door")
            .weighs("stop")
            .cautions();
        let wider = "{name: kitchen door, width: 31\", height: 80\"}";
        trial("doors off: 30\" x 33 1/2\" x 68\"", wider).stays_silent();
    }

    #[test]
    fn what_goes_in_only_out_of_its_carton_is_a_query() {
        let door = "{name: porch door, width: 33\", height: 80\"}";
        trial("carton: 34\" x 36\" x 72\", doors off: 30\" x 33\" x 68\"", door)
            .finds("the carton of `Fridge` is 1\" (25.4 mm) too large for the porch door; it goes in out of its carton, doors off")
            .weighs("query");
    }

    #[test]
    fn a_room_has_narrow_points_of_its_own() {
        let trial = trial("carton: 30\" x 30\" x 60\"", "{name: front door, width: 34\", height: 80\"}");
        trial.room("way in: [{name: stair, width: 30\", height: 76\"}]").finds_one();
    }

    /// Source: geometry; a hall 34" wide that turns takes a slab of 93 1/2" and no more.
    #[test]
    fn glass_stone_and_cabinets_come_in_too() {
        let hall = |thing: &str, option: &str| {
            Trial::of("fit/way-in")
                .book("way in: [{name: hall, width: 34\", height: 80\", turns: true}]")
                .selection(&format!("selection: It\nkind: {thing}"), option)
        };
        let top = |piece: &str| hall("counter", &format!("thickness: 1 1/4\"\ntop: {{pieces: {{long: {piece}}}}}"));
        top("130\" x 40\"")
            .finds("the piece `long` of `It`, 130\" (3302 mm) by 40\" (1016 mm), does not go through the hall")
            .weighs("query");
        top("90\" x 26\"").stays_silent();
        hall("shower glass", "size: {width: 84\", height: 110\"}")
            .finds("`It` does not go through the hall on its edge");
        hall("shower glass", "size: {width: 30\", height: 78\"}").stays_silent();
        hall("mirror", "size: {width: 84\", height: 110\"}").finds_one();
        hall("cabinet", "size: {width: 36\", height: 96\", depth: 36\"}").finds_one().weighs("query");
        hall("cabinet", "size: {width: 24\", height: 78\", depth: 24\"}").stays_silent();
    }

    /// Source: trade reports F-111 (smallest dimension and 1"): exactly an inch more passes, a hair less is
    /// asked about, and only what is larger than the point is told as too large.
    #[test]
    fn an_inch_of_play_is_usual_and_the_narrowest_point_is_named() {
        let door = |width: &str, height: &str| {
            format!("{{name: porch, width: 40\", height: 80\"}}, {{name: stair, width: {width}, height: {height}}}")
        };
        let carton = "carton: 30\" x 70\" x 33\"";
        trial(carton, &door("31\"", "80\"")).stays_silent();
        trial(carton, &door("30 1/2\"", "80\""))
            .finds(
                "the carton of `Fridge` goes through the stair with 1/2\" (12.7 mm) to spare; 1\" (25.4 mm) is usual",
            )
            .weighs("query");
        trial(carton, &door("29 15/16\"", "80\""))
            .finds("the carton of `Fridge` is 1/16\" (1.6 mm) too large for the stair, and the size without it is not known")
            .weighs("stop");
        trial("carton: 30\" x 70\" x 33\", doors off: 30\" x 69\" x 31\"", &door("29 1/2\"", "80\""))
            .finds("`Fridge`, doors off, is 1/2\" (12.7 mm) too large for the stair")
            .cautions();
        trial("doors off: 30\" x 69\" x 31\"", &door("30 1/2\"", "80\"")).finds_one().weighs("query");
        // As high as the door, to half an inch.
        trial("carton: 30\" x 79 1/2\" x 33\"", &door("34\"", "80\"")).stays_silent();
    }

    /// Geometry: halls 38" wide take `q + 2p ≤ 38" × √8 = 107.48"`; the play of an inch is wanted once.
    #[test]
    fn a_long_box_must_get_round_the_corner_too() {
        let hall = |turns: bool| format!("{{name: hall, width: 38\", height: 80\", turns: {turns}}}");
        let tub = "carton: 60\" x 80\" x 30\"";
        trial(tub, &hall(false)).stays_silent();
        trial(tub, &hall(true)).finds_one().weighs("stop");
        trial("carton: 44\" x 79\" x 30\"", &hall(true)).stays_silent();
        trial("carton: 45\" x 79\" x 30\"", &hall(true)).finds_one().weighs("query");
        trial("carton: 37\" x 79\" x 37\"", &hall(true)).stays_silent();
    }

    #[test]
    fn what_has_no_opening_is_carried_in_too_and_a_choice_still_open_is_a_query() {
        let two = "options:\n  - {id: wide, fit: {carton: 40\" x 70\" x 40\"}}\n  - {id: slim}";
        Trial::of("fit/way-in")
            .book("way in: [{name: stair, width: 32\", height: 76\"}]")
            .selection("selection: Tub\nkind: bathtub", two)
            .finds_one()
            .weighs("query")
            .cautions();
    }

    #[test]
    fn the_way_in_is_asked_for_where_something_large_or_heavy_comes() {
        let fridge = |option: &str| {
            Trial::of("fit/way-in")
                .opening("hole", "{takes: refrigerator}")
                .selection("selection: Fridge\nkind: refrigerator\nplace: hole", option)
        };
        fridge("size: {width: 36\", depth: 29\", height: 70\"}")
            .finds("nobody says what the way in is for `Fridge`, which is large or heavy")
            .weighs("query")
            .cautions()
            .points_at(&["rooms/kitchen/selection-0.yaml:1:12"]);
        fridge("fit: {weight: 150 lb}").finds_one();
        fridge("fit: {weight: 149 lb}").stays_silent();
        fridge("size: {width: 24\", depth: 24\", height: 34\"}").stays_silent();
        let two = fridge("fit: {weight: 300 lb}").selection("selection: Tub\nkind: bathtub", "fit: {weight: 300 lb}");
        two.finds_one();
        fridge("fit: {weight: 300 lb}").room("way in: [{name: door, width: 36\", height: 80\"}]").stays_silent();
    }

    #[test]
    fn without_a_carton_s_size_the_thing_itself_is_tried() {
        let fridge = |width: &str, fit: &str| {
            Trial::of("fit/way-in")
                .book(&format!("way in: [{{name: kitchen door, width: {width}, height: 80\"}}]"))
                .opening("hole", "{takes: refrigerator}")
                .selection(
                    "selection: Fridge\nkind: refrigerator\nplace: hole",
                    &format!("size: {{width: 36\", depth: 30\", height: 70\"}}\n{fit}"),
                )
        };
        fridge("29\"", "")
            .finds("`Fridge` as it stands is 1\" (25.4 mm) too large for the kitchen door, and nobody says how large its carton is, or it without doors")
            .weighs("query");
        fridge("30\"", "").stays_silent();
        fridge("29\"", "fit: {doors off: 36\" x 27\" x 69\"}").stays_silent();
    }
}
