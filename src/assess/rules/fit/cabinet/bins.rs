//! Bins against the cabinets that they could go into.

use crate::assess::context::about;
use crate::assess::{Context, say};
use crate::book::{Part, PartIs, ProductOption, Room, Selection, Slot};
use crate::finding::{Remark, Severity, phrase};
use crate::site::panel_thickness;
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

/// A cabinet that bins could go into: how much is inside it, as far as that is known.
struct Inside<'a> {
    name: &'a str,
    at: Span,
    width: Option<Length>,
    depth: Option<Length>,
    height: Option<Length>,
}

/// Bins that go into no cabinet of their room: into the one that is called after them, where there is one.
pub(super) fn judge(
    context: &Context<'_>,
    (room, selection, option): (&Room, &Selection, &ProductOption),
) -> Option<Remark> {
    if !selection.is(Kind::WasteBin) || room.partly_unread {
        return None;
    }
    let all = cabinets(context, room);
    let called: Vec<&Inside<'_>> = all.iter().filter(|one| Mention::Bin.is_in(one.name)).collect();
    let may: Vec<&Inside<'_>> = if called.is_empty() { all.iter().collect() } else { called };
    // The one that comes nearest tells by what it is too small.
    let short: Option<Vec<_>> = may.iter().map(|one| too_small(option, one).map(|short| (short, *one))).collect();
    let ((way, own, there, at), cabinet) = short?.into_iter().min_by_key(|((_, own, there, _), _)| *own - *there)?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` is {} {way}, {} more than there is inside `{}`: about {}",
        selection.name.value,
        say(own),
        way,
        say(own - there),
        cabinet.name,
        say(there)
    );
    let finding = about(room, selection, option, Severity::Query, at, message).also(cabinet.at, "the cabinet");
    Some(
        finding
            .source("common practice: its outside less two sides")
            .remedy("take smaller bins, or a larger cabinet for them"),
    )
}

/// Top, plinth and bottom, which are no inside of what stands under a counter (common practice: a top of 20 mm, a plinth
/// of 100 mm and a panel of 16 mm at least).
const NOT_INSIDE: Length = Length::from_millimetres(136);

/// Every cabinet on the floor, inside.
fn cabinets<'a>(context: &Context<'_>, room: &'a Room) -> Vec<Inside<'a>> {
    let units = context.book.project.units;
    let inside = |part: &'a Part, depth: &Slot<Length>, height: Option<Length>| {
        let (PartIs::Cabinet(name) | PartIs::Tall(name)) = &part.is else { return None };
        let outside = part.width.get().copied();
        let width = outside.map(|wide| wide - panel_thickness(wide, units).times(2));
        let depth = part.depth.get().or(depth.get()).copied();
        let height = part.height.get().copied().or(height);
        let height = height.filter(|_| matches!(part.is, PartIs::Cabinet(_)));
        Some(Inside { name: name.as_str(), at: part.span, width, depth, height })
    };
    let on_floor = room.runs.iter().filter(|run| run.above_floor.is_absent());
    let of_runs = on_floor.flat_map(|run| {
        let below = run.counter.height.get().map(|counter| *counter - NOT_INSIDE);
        let high = run.height.get().copied().or(below);
        run.parts.iter().filter_map(move |part| inside(part, &run.depth, high))
    });
    let of_islands = room.islands.iter().flat_map(|island| {
        let high = island.height.get().map(|counter| *counter - NOT_INSIDE);
        island.sides().flat_map(move |side| side.parts.iter()).filter_map(move |part| inside(part, &Slot::Absent, high))
    });
    of_runs.chain(of_islands).collect()
}

/// In which way bins are too large for a cabinet, and by what.
fn too_small(option: &ProductOption, inside: &Inside<'_>) -> Option<(&'static str, Length, Length, Span)> {
    let size = &option.size;
    let past = |way: &'static str, own: Option<(Length, Span)>, there: Option<Length>| {
        let ((own, at), there) = own.zip(there)?;
        (own > there).then_some((way, own, there, at))
    };
    let of = |slot: &Slot<Length>| slot.spanned().map(|own| (own.value, own.span));
    let high = size.height.spanned().and_then(|own| Some((own.value.least.or(own.value.most)?, own.span)));
    past("wide", of(&size.width), inside.width)
        .or_else(|| past("deep", of(&size.depth), inside.depth))
        .or_else(|| past("high", high, inside.height))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: arithmetic: a cabinet of 400 mm has 364 mm inside.
    #[test]
    fn bins_go_into_a_cabinet_of_their_room() {
        let bins = |parts: &str, size: &str| {
            Trial::of("fit/cabinet")
                .room(&format!(
                    "runs: {{a: {{depth: 560 mm, counter: {{depth: 600 mm, height: 900 mm}}, parts: [{parts}]}}}}"
                ))
                .selection("selection: Bins\nkind: waste bin", &format!("size: {{{size}}}"))
        };
        let called = "{cabinet: waste pull-out, width: 400 mm, drawers: 1}, {cabinet: pans, width: 900 mm, drawers: 3}";
        bins(called, "width: 560 mm, depth: 480 mm, height: 500 mm").finds_one().weighs("query");
        bins(called, "width: 360 mm, depth: 600 mm, height: 500 mm").finds_one().says("deep");
        bins(called, "width: 360 mm, depth: 480 mm, height: 950 mm").finds_one().says("high");
        bins(called, "width: 360 mm, depth: 480 mm, height: 770 mm").finds_one().says("high");
        bins(called, "width: 360 mm, depth: 480 mm, height: 760 mm").stays_silent();
        bins(called, "width: 360 mm, depth: 480 mm, height: 500 mm").stays_silent();
        // Of which nobody says where they go, the largest cabinet has room, or none.
        let other = "{cabinet: base, width: 400 mm, doors: 1}, {cabinet: pans, width: 600 mm, drawers: 3}";
        bins(other, "width: 560 mm, depth: 480 mm, height: 500 mm").stays_silent();
        bins(other, "width: 600 mm, depth: 480 mm, height: 500 mm").finds_one();
        bins("{filler: 50 mm}", "width: 600 mm").stays_silent();
        Trial::of("fit/cabinet").selection("selection: Bins\nkind: waste bin", "size: {width: 600 mm}").stays_silent();
    }
}
