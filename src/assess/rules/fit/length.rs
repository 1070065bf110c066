//! Whether what hangs or stands along something is longer than that.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about, say};
use crate::book::{ClearDistance, ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::distances::{inside_of_a_shower, over_the_shower};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

declare! {
    /// It is longer than the tub, the shower or the room that it is for, or too short
    ///
    /// ## What it checks
    /// Shower glass against the longest side of the tub, the tray or the shower of its room (of the one at its `place`,
    /// where it names one), and, on a tub or a tray, its height against the ceiling there; a rail for a curtain against the sides that it
    /// could close; and bars, mirrors, shelves, rails, furniture and what else has no opening of its own against the longest
    /// side of a room that is closed all around. What says that it is cut or set to its length on site is not told.
    ///
    /// ## Why it matters
    /// Glass is made to measure, and nobody takes it back: what was written for another bath is paid for twice.
    ///
    /// ## Remedy
    /// Choose another size, or mend the figure that was copied wrong, before it is ordered.
    ///
    /// ## Example
    /// ```yaml
    /// kind: shower glass
    /// size: {width: 64", height: 58"}     # and the tub's alcove is 60 1/4" wide
    /// ```
    ///
    /// ## Source
    /// The book's own figures.
    "fit/length", Query,
    due: WithThing, tells: [],
    judges: [ShowerGlass, ShowerTray, Bar, GrabBar, Mirror, LitMirror, Shelf, TowelWarmer, Furniture, StorageFurniture, WindowCovering],
    sources: ["the book's own figures"],
    caution: None,
    Check::Book(check)
}

/// What hangs or stands along a wall, wherever there is room, and goes into no opening.
const ALONG_A_WALL: [Kind; 11] = [
    Kind::ShowerGlass,
    Kind::ShowerTray,
    Kind::Bar,
    Kind::GrabBar,
    Kind::Mirror,
    Kind::LitMirror,
    Kind::Shelf,
    Kind::TowelWarmer,
    Kind::Furniture,
    Kind::StorageFurniture,
    Kind::WindowCovering,
];
/// What one bathes in.
const WASHED_IN: [Kind; 3] = [Kind::Bathtub, Kind::ShowerTray, Kind::ShowerSet];
/// What two figures of one length may differ by: 1/8 in (common practice).
const HAIR: Length = Length::from_sixty_fourths(8);
/// So much is cut off a rail, at most, to close something (common practice).
const CUT_OFF: Length = Length::from_inches(12);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        let cut_on_site = Mention::CutToLength.is_in_any(said(selection, option));
        let Some(long) = option.size.along().spanned().filter(|_| !cut_on_site && !room.partly_unread) else {
            continue;
        };
        let told = past_the_room(context, room, selection, option, long)
            .or_else(|| past_what_it_closes(context, room, selection, option, long))
            .or_else(|| closes_nothing(context, room, selection, option, long));
        findings.extend(told);
        findings.extend(through_the_ceiling(context, room, selection, option));
    }
}

/// The words of a thing that may tell what it is for.
fn said<'a>(selection: &'a Selection, option: &'a ProductOption) -> [&'a str; 5] {
    [
        selection.name.value.as_str(),
        option.called.as_str(),
        option.name.text(),
        option.description.text(),
        option.model.text(),
    ]
}

/// Longer than the longest side of a room that is closed all around.
fn past_the_room(
    context: &Context<'_>,
    room: &Room,
    selection: &Selection,
    option: &ProductOption,
    long: &Spanned<Length>,
) -> Option<Remark> {
    if !selection.is_any(&ALONG_A_WALL) || selection.place.get().is_some() {
        return None;
    }
    let is_open = context.site.plan(room)?.walls.iter().any(|wall| wall.is_open());
    let outline = room.outline.spanned().filter(|_| !is_open)?;
    let (one, other) = outline.value.extent();
    let most = one.max(other);
    (long.value > most + HAIR).then(|| {
        let say = |length| say(length, context.book.project.units);
        let message = phrase!(
            "`{}` is {} long, {} more than the longest side of the room: {}",
            selection.name.value,
            say(long.value),
            say(long.value - most),
            say(most)
        );
        let finding = about(room, selection, option, Severity::Query, long.span, message);
        finding.also(outline.span, "the room").remedy("choose one that is shorter, or mend the figure that is wrong")
    })
}

/// What can be bathed in: how long its sides are, and what it is.
fn sides_to_close(context: &Context<'_>, room: &Room, place: Option<&str>) -> Vec<Length> {
    let openings = room.openings.iter().filter(|one| place.is_none_or(|place| one.name.value == place));
    let openings = openings.filter(|one| WASHED_IN.iter().any(|kind| one.takes_a(*kind)));
    let of_openings = openings.flat_map(|one| [one.governing_width(), one.governing_depth()]).flatten();
    let is_there = |one: &&Selection| one.is_any(&WASHED_IN) && place.is_none_or(|place| one.place.text() == place);
    let things = room.selections.iter().filter(is_there).flat_map(Selection::standing);
    let of_things = things.flat_map(|one| [one.size.width.get(), one.size.length.get(), one.size.depth.get()]);
    let mut all: Vec<Length> = of_openings.chain(of_things.flatten().copied()).collect();
    if place.is_none() {
        let written = room.clearances.distances.sides.get(&ClearDistance::Shower);
        all.extend(written.iter().flat_map(|sides| [sides.value.0, sides.value.1]));
        all.extend(
            inside_of_a_shower(context.site, room).iter().flat_map(|inside| [inside.lesser(), inside.greater()]),
        );
    }
    all
}

/// Whether anything is known of what stands at the place that a thing names.
fn place_of<'a>(room: &'a Room, selection: &'a Selection) -> Option<&'a str> {
    let name = selection.place.get()?;
    let opening = room.opening(name)?;
    WASHED_IN.iter().any(|kind| opening.takes_a(*kind)).then_some(name.as_str())
}

/// Glass that is longer than anything that it could stand on or before.
fn past_what_it_closes(
    context: &Context<'_>,
    room: &Room,
    selection: &Selection,
    option: &ProductOption,
    long: &Spanned<Length>,
) -> Option<Remark> {
    if !selection.is(Kind::ShowerGlass) || room.holds_an_unknown_kind() {
        return None;
    }
    let most = sides_to_close(context, room, place_of(room, selection)).into_iter().max()?;
    (long.value > most + HAIR).then(|| {
        let say = |length| say(length, context.book.project.units);
        let message = phrase!(
            "`{}` is {} wide, {} more than the longest side of what is bathed in there: {}",
            selection.name.value,
            say(long.value),
            say(long.value - most),
            say(most)
        );
        let finding = about(room, selection, option, Severity::Query, long.span, message);
        finding.remedy("choose one that is narrower, or mend the figure that is wrong, before the glass is made")
    })
}

/// A rail whose curtain would close no side of a shower or a tub.
fn closes_nothing(
    context: &Context<'_>,
    room: &Room,
    selection: &Selection,
    option: &ProductOption,
    long: &Spanned<Length>,
) -> Option<Remark> {
    if !selection.is(Kind::Bar) || !Mention::ShowerCurtain.is_in_any(said(selection, option)) {
        return None;
    }
    let sides = sides_to_close(context, room, place_of(room, selection));
    let longest = sides.iter().copied().max()?;
    let closes = |side: &Length| *side <= long.value + HAIR && long.value <= *side + CUT_OFF;
    (!sides.iter().any(closes)).then(|| {
        let say = |length| say(length, context.book.project.units);
        let message = phrase!(
            "`{}` is {} long, and no side of what is bathed in there is closed by it: the longest is {}",
            selection.name.value,
            say(long.value),
            say(longest)
        );
        let finding = about(room, selection, option, Severity::Query, long.span, message);
        finding.remedy("choose a rail as long as the side that it closes, or say that it is set to its length on site")
    })
}

/// Glass on the rim of a tub or on a tray that is higher than what is above that.
fn through_the_ceiling(
    context: &Context<'_>,
    room: &Room,
    selection: &Selection,
    option: &ProductOption,
) -> Option<Remark> {
    let high = option.size.height.spanned().filter(|_| selection.is(Kind::ShowerGlass))?;
    let glass = high.value.least.or(high.value.most)?;
    let of = |kind: Kind| room.selections.iter().filter(move |one| one.is(kind)).flat_map(Selection::standing);
    let heights = |kind: Kind| of(kind).map(|one| one.size.height.get().and_then(|height| height.least));
    let tub = heights(Kind::Bathtub).flatten().min();
    let tray = heights(Kind::ShowerTray).map(Option::unwrap_or_default).min();
    // Where there is a shower too, the glass may stand on its floor.
    let shower = room.clearances.distances.sides.contains_key(&ClearDistance::Shower).then_some(Length::ZERO);
    let (rim, on_a_tub) = match (tub, tray.or(shower)) {
        (Some(tub), None) => (tub, true),
        (_, Some(floor)) => (floor, false),
        (None, None) => return None,
    };
    let ceiling = over_the_shower(context.site, room)?.value;
    (rim + glass > ceiling).then(|| {
        let say = |length| say(length, context.book.project.units);
        let (name, over) = (&selection.name.value, say(rim + glass - ceiling));
        let message = if on_a_tub {
            phrase!(
                "`{}` is {} high on a tub of {}, {} more than there is under the ceiling",
                name,
                say(glass),
                say(rim),
                over
            )
        } else {
            phrase!(
                "`{}` is {} high on a shower's floor of {}, {} more than there is under the ceiling",
                name,
                say(glass),
                say(rim),
                over
            )
        };
        let finding = about(room, selection, option, Severity::Query, high.span, message);
        finding.remedy("choose one that is lower, or mend the figure that is wrong, before the glass is made")
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    const BATH: &str = "outline: 8' 6\" x 5' 6\"\nceiling: 8' 0\"";

    fn tub(glass: &str) -> Trial {
        Trial::of("fit/length")
            .room(BATH)
            .opening("tub", "{takes: bathtub, width: 60 1/4\", depth: 30 1/2\"}")
            .selection("selection: Tub\nkind: bathtub\nplace: tub", "size: {width: 60\", depth: 30\", height: 20\"}")
            .selection("selection: Glass\nkind: shower glass", glass)
    }

    /// Source: arithmetic: 64" before a tub of 60 1/4".
    #[test]
    fn glass_is_no_longer_than_its_tub() {
        tub("size: {width: 64\", height: 58\"}")
            .finds("`Glass` is 64\" (1626 mm) wide, 3 3/4\" (95 mm) more than the longest side of what is bathed in there: 60 1/4\" (1530 mm)")
            .weighs("query");
        tub("size: {width: 60 1/4\", height: 58\"}").stays_silent();
        tub("size: {width: 30\", height: 58\"}").stays_silent();
        tub("size: {width: 84\", height: 58\"}\ndescription: cut to length on site").stays_silent();
        // The tub at which it is placed, by its opening or by its own size.
        let placed = |width: &str| {
            Trial::of("fit/length")
                .room(BATH)
                .opening("tub", "{takes: bathtub}")
                .selection("selection: Tub\nkind: bathtub\nplace: tub", "size: {width: 1500 mm, depth: 700 mm}")
                .selection("selection: Glass\nkind: shower screen\nplace: tub", &format!("size: {{width: {width}}}"))
        };
        placed("1600 mm").finds_one();
        placed("800 mm").stays_silent();
    }

    /// Source: arithmetic: a screen of 1700 mm before a tray of 1600 mm, which is written in four places.
    #[test]
    fn glass_is_no_longer_than_its_shower() {
        let shower = |room: &str, tray: &str, width: &str| {
            Trial::of("fit/length")
                .room(&format!("outline: 2400 mm x 1800 mm\n{room}"))
                .selection("selection: Tray\nkind: shower tray", tray)
                .selection(
                    "selection: Screen\nkind: shower screen",
                    &format!("size: {{width: {width}, height: 2000 mm}}"),
                )
        };
        let sized = "size: {width: 1600 mm, depth: 800 mm}";
        shower("", sized, "1700 mm").finds_one().weighs("query");
        shower("", sized, "1600 mm").stays_silent();
        shower("clearances: {shower: 1600 mm x 800 mm}", "", "1700 mm").finds_one();
        shower("clearances: {shower: 1600 mm x 800 mm}", "", "1000 mm").stays_silent();
        // Of a shower of which no size is known, the room is what is left.
        shower("", "", "1800 mm").stays_silent();
        shower("", "", "2500 mm").finds_one().says("more than the longest side of the room");
    }

    /// Source: arithmetic: 84" on a rim of 20" under a ceiling of 96".
    #[test]
    fn glass_on_a_tub_ends_under_the_ceiling() {
        tub("size: {width: 30\", height: 84\"}")
            .finds("`Glass` is 84\" (2134 mm) high on a tub of 20\" (508 mm), 8\" (203 mm) more than there is under the ceiling")
            .weighs("query");
        tub("size: {width: 30\", height: 76\"}").stays_silent();
        // On a tray, and under a slope at its highest.
        let shower = |ceiling: &str, tray: &str, high: &str| {
            Trial::of("fit/length")
                .room(&format!("outline: 3600 mm x 2700 mm\nceiling: {ceiling}"))
                .selection(
                    "selection: Tray\nkind: shower tray",
                    &format!("size: {{width: 900 mm, depth: 900 mm{tray}}}"),
                )
                .selection("selection: Glass\nkind: shower glass", &format!("size: {{width: 900 mm, height: {high}}}"))
        };
        for ceiling in ["2500 mm", "{low: 1900 mm, high: 2500 mm, rises along: width, low at: C}"] {
            shower(ceiling, ", height: 30 mm", "2490 mm").finds_one().says("on a shower's floor of").weighs("query");
            shower(ceiling, ", height: 30 mm", "2470 mm").stays_silent();
            shower(ceiling, "", "2490 mm").stays_silent();
        }
    }

    #[test]
    fn nothing_is_longer_than_its_room() {
        let of = |kind: &str, size: &str| {
            Trial::of("fit/length")
                .room("outline: 7' 0\" x 5' 0\"")
                .selection(&format!("selection: It\nkind: {kind}"), size)
        };
        for (kind, key) in
            [("towel bar", "length"), ("mirror", "width"), ("shelf", "length"), ("hanging rail", "length")]
        {
            of(kind, &format!("size: {{{key}: 96\"}}")).finds_one().weighs("query");
            of(kind, &format!("size: {{{key}: 84\"}}")).stays_silent();
            of(kind, &format!("size: {{{key}: 96\"}}\ndescription: stock length, cut to fit")).stays_silent();
        }
        // What is sold by its length is no one piece, and a room that is open goes on.
        of("baseboard", "size: {length: 96\"}").stays_silent();
        Trial::of("fit/length")
            .room("outline: 7' 0\" x 5' 0\"\nwalls: {A: {is: open}}")
            .selection("selection: It\nkind: shelf", "size: {length: 96\"}")
            .stays_silent();
        Trial::of("fit/length").selection("selection: It\nkind: shelf", "size: {length: 96\"}").stays_silent();
    }

    /// Source: arithmetic: a rail of 48" closes neither 60" nor, cut down, 32".
    #[test]
    fn a_curtain_s_rail_closes_a_side_of_its_shower() {
        let rail = |length: &str, more: &str| {
            Trial::of("fit/length")
                .room("clearances: {shower: 60\" x 32\"}")
                .selection("selection: Shower curtain rod\nkind: bar", &format!("size: {{length: {length}}}\n{more}"))
        };
        rail("48\"", "").finds("`Shower curtain rod` is 48\" (1219 mm) long, and no side of what is bathed in there is closed by it: the longest is 60\" (1524 mm)").weighs("query");
        rail("60\"", "").stays_silent();
        rail("66\"", "").stays_silent();
        rail("36\"", "").stays_silent();
        rail("48\"", "description: telescopic, to 72\"").stays_silent();
    }
}
