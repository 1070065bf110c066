//! Whether a bowl is carried by what it is said to be fixed to.

use crate::assess::{Context, about, say};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::{Placement, counter_height};
use crate::units::Length;
use crate::vocabulary::supply::Worded;
use crate::vocabulary::{Kind, Mention, Mount, Trait};

/// A bowl that is let in from above, its rim on the counter, and whose cutout is as large as it is: it falls through.
pub(super) fn falls_through(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let (mount, at) = fitted.option.mount_and_place()?;
    // What is let in flush lies in a rebate.
    if mount != Mount::DropIn || Mention::Recessed.is_in(fitted.option.mount_words()) {
        return None;
    }
    let (wide, deep) = (*fitted.option.size.width.get()?, *fitted.option.size.depth.get()?);
    let (there_wide, there_deep) = (fitted.opening.governing_width()?, fitted.opening.governing_depth()?);
    if there_wide < wide || there_deep < deep {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` lies with its rim on the counter, and its cutout is no smaller than it is: {} by {}",
        fitted.selection.name.value,
        say(there_wide),
        say(there_deep)
    );
    let finding = fitted.finding(Severity::Query, at, message).also(fitted.opening.span, "the cutout");
    let remedy = "look at its sheet again: say how it is fixed (`mount`), and have the cutout smaller than its rim by what that lies on";
    Some(finding.remedy(remedy).source("common practice"))
}

/// A basin that stands on a counter, in a room that has nothing for it to stand on.
pub(super) fn stands_on_nothing((room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let (mount, _) = option.understood::<Option<Mount>>()?;
    if !selection.is(Kind::Basin) || *mount != Some(Mount::OnCounter) || room.partly_unread {
        return None;
    }
    let carries =
        |one: &Selection| one.is_any(&[Kind::Counter, Kind::Cabinet, Kind::Shelf]) || one.has(Trait::Furnishes);
    // Where it has no place of its own, what it stands on may be there already.
    let opening = room.opening(selection.place.get()?)?;
    let has_a_counter = counter_height(room, opening).best().is_some();
    let has_rows = room.runs.iter().any(|run| !run.counter.depth.is_absent()) || !room.islands.is_empty();
    if room.selections.iter().any(carries) || has_a_counter || has_rows || room.holds_an_unknown_kind() {
        return None;
    }
    let (worded, at) = option.fact::<Worded<Option<Mount>>>()?;
    let message = phrase!(
        "`{}` is fixed so: `{}`, and the room has no counter, cabinet or shelf for it to stand on",
        selection.name.value,
        worded.words
    );
    let finding = about(room, selection, option, Severity::Query, at, message).source("common practice");
    Some(finding.remedy("add what it stands on to the room's selections, or say how it is fixed: `mount: …`"))
}

/// Counter that is left before a bowl and behind it, together, at the least (common practice).
pub(super) const LEFT_AROUND: Length = Length::from_inches(2);

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: arithmetic: what is as large as its hole has nothing to lie on.
    #[test]
    fn a_bowl_with_its_rim_on_the_counter_does_not_fall_through_its_cutout() {
        let sink = |mount: &str, cutout: &str| {
            Trial::of("fit/sink").opening("sink", &format!("{{takes: sink, {cutout}}}")).selection(
                "selection: Sink\nkind: sink\nplace: sink",
                &format!("mount: {mount}\nreveal: flush\nsize: {{width: 31\", depth: 18\"}}"),
            )
        };
        for mount in ["drop-in", "top-mount", "inset", "self-rimming"] {
            sink(mount, "width: 31\", depth: 18\"")
                .finds("`Sink` lies with its rim on the counter, and its cutout is no smaller than it is: 31\" (787 mm) by 18\" (457 mm)")
                .weighs("query");
            sink(mount, "width: 30 1/4\", depth: 17 1/4\"").stays_silent();
            sink(mount, "width: 31\"").stays_silent();
        }
        sink("undermount", "width: 31\", depth: 18\"").stays_silent();
        sink("flush, in a rebate", "width: 31\", depth: 18\"").stays_silent();
    }

    #[test]
    fn a_basin_on_a_counter_has_one_to_stand_on() {
        let basin = |mount: &str| {
            Trial::of("fit/sink").opening("basin", "{takes: basin}").selection(
                "selection: Basin\nkind: basin\nplace: basin",
                &format!("mount: {mount}\nsize: {{width: 16\", depth: 16\"}}"),
            )
        };
        for mount in ["on the counter", "vessel", "sit-on"] {
            basin(mount).finds_one().weighs("query");
            for carries in ["counter", "vanity", "shelf", "table"] {
                basin(mount).selection(&format!("selection: Under it\nkind: {carries}"), "").stays_silent();
            }
            basin(mount).room("runs: {a: {counter: {depth: 20\"}, parts: [{cabinet: b, width: 30\"}]}}").stays_silent();
        }
        basin("wall-hung").stays_silent();
        basin("pedestal").stays_silent();
    }
}
