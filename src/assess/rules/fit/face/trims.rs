//! The trims of two that are built in one over the other.

use crate::assess::{Context, say};
use crate::book::{Opening, ProductOption};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::Housing;
use crate::site::plan::settled;
use crate::units::Length;

use super::{front_height, gap};

/// How far a trim lies over the upper and the lower edge of its cutout: at least as its sheet has it, and as far as a
/// front that is set in the middle is higher than the cutout.
fn overlap(option: &ProductOption, opening: &Opening) -> Option<Length> {
    let covers = || {
        let cutout = opening.height.get()?.least()?.value;
        Some((front_height(option)? - cutout).half()).filter(|over| *over > Length::ZERO)
    };
    in_the_sheet(option).max(covers())
}

fn in_the_sheet(option: &ProductOption) -> Option<Length> {
    option.fit.get()?.face.get()?.overlap.get().copied()
}

/// So far out of the middle a front may be set: 1/8 in (common practice).
const SET_BY_HAND: Length = Length::from_sixty_fourths(8);

/// Trims of two that are built in one over the other, against what is left between their cutouts.
pub(super) fn meet(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let housing = Housing::of(fitted.room, fitted.opening, context.book.project.units)?;
    let top = *fitted.opening.sill.get()? + fitted.opening.height.get()?.greatest()?.value;
    let others = housing.others(fitted.opening).filter_map(|other| fitted.room.opening(&other.value));
    let above = others.filter_map(|other| Some((other, other.sill.spanned().filter(|sill| sill.value >= top)?)));
    let (upper, sill) = above.min_by_key(|(_, sill)| sill.value)?;
    let over = settled(fitted.room, upper)?;
    let there = sill.value - top;
    let by_sheet = in_the_sheet(fitted.option).zip(in_the_sheet(over)).map(|(one, other)| one + other + gap(fitted));
    // A front that is set by hand is not in the middle to the millimetre.
    let (needs, is_said) = match by_sheet.filter(|needs| *needs > there) {
        Some(needs) => (needs, true),
        None => (overlap(fitted.option, fitted.opening)? + overlap(over, upper)? + gap(fitted), false),
    };
    let by_hand = if is_said { Length::ZERO } else { SET_BY_HAND };
    let message = phrase!(
        "between the cutouts `{}` and `{}` there are {}, {} less than their trims need",
        fitted.opening.name.value,
        upper.name.value,
        say(there),
        say(needs - there)
    );
    (needs > there + by_hand).then(|| {
        let severity = if is_said { Severity::Stop } else { Severity::Query };
        let finding = fitted.finding(severity, sill.span, message);
        let finding =
            if is_said { finding } else { finding.source("common practice: a front in the middle of its hole") };
        finding.remedy("set the upper cutout higher, or the lower one lower, before the cabinet is ordered")
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: arithmetic: two trims of 3/4" want 1 1/2" between their holes.
    #[test]
    fn trims_of_two_that_are_stacked_do_not_lie_over_one_another() {
        let tower = |sill: &str, face: &str| {
            Trial::of("fit/face")
                .room("runs: {t: {parts: [{tall: oven tower, width: 33\", holds: [oven, micro]}]}}")
                .opening("oven", "{takes: wall oven, height: 28\", sill: 30\"}")
                .opening("micro", &format!("{{takes: microwave, height: 18\", sill: {sill}}}"))
                .selection(
                    "selection: Oven\nkind: wall oven\nplace: oven",
                    &format!("fit: {{face: {{height: 29 1/2\"{face}}}}}"),
                )
                .selection(
                    "selection: Micro\nkind: microwave\nplace: micro",
                    &format!("fit: {{face: {{height: 19 1/2\"{face}}}}}"),
                )
        };
        let overlap = ", overlap: 3/4\"";
        tower("58 1/4\"", overlap)
            .finds("between the cutouts `oven` and `micro` there are 1/4\" (6.4 mm), 1 1/4\" (31.8 mm) less than their trims need")
            .weighs("stop")
            .points_at(&["rooms/kitchen/room.yaml:5:48"]);
        tower("58 3/4\"", overlap).finds_one();
        tower("59 1/2\"", overlap).stays_silent();
        // Where no sheet says how a front lies over its hole, above and below, it is taken to be in the middle, and asked.
        tower("58 3/4\"", "").finds_one().weighs("query");
        tower("59 1/2\"", "").stays_silent();
    }

    #[test]
    fn trims_of_two_in_one_tower_meet_where_no_sheet_says_how_far_they_lap() {
        let tower = |sill: &str| {
            let it = |name: &str| format!("selection: {name}\nkind: wall oven\nplace: {name}");
            Trial::of("fit/face")
                .room("runs: {a: {parts: [{tall: tower, width: 33\", height: 84\", holds: [low, high]}]}}")
                .opening("low", &format!("{{takes: wall oven, width: 28 1/2\", sill: {sill}, height: 28\"}}"))
                .opening("high", "{takes: wall oven, width: 28 1/2\", sill: 56\", height: 9 1/4\"}")
                .selection(&it("low"), "fit: {face: {width: 30\", height: 28 3/4\"}}")
                .selection(&it("high"), "fit: {face: {width: 30\", height: 10 1/4\"}}")
        };
        tower("27 3/4\"").finds_one().weighs("query").says("between the cutouts `low` and `high`");
        tower("27\"").stays_silent();
    }

    /// Arithmetic: fronts of 29" on 28" and 19 1/8" on 16 3/4" lie 1/2" and 1 3/16" over their edges; sheets that ask
    /// for 1/2" and 3/4" at the least ask for less than the fronts take.
    #[test]
    fn fronts_that_cover_more_than_their_sheets_ask_take_what_they_cover() {
        let tower = |sill: &str| {
            Trial::of("fit/face")
                .room("runs: {t: {parts: [{tall: oven tower, width: 33\", holds: [oven, micro]}]}}")
                .opening("oven", "{takes: wall oven, height: 28\", sill: 32\"}")
                .opening("micro", &format!("{{takes: microwave, height: 16 3/4\", sill: {sill}}}"))
                .selection(
                    "selection: Oven\nkind: wall oven\nplace: oven",
                    "fit: {face: {height: 29\", overlap: 1/2\"}}",
                )
                .selection(
                    "selection: Micro\nkind: microwave\nplace: micro",
                    "fit: {face: {height: 19 1/8\", overlap: 3/4\"}}",
                )
        };
        tower("61 1/4\"")
            .finds("between the cutouts `oven` and `micro` there are 1 1/4\" (31.8 mm), 7/16\" (11.1 mm) less than their trims need")
            .weighs("query");
        tower("62\"").stays_silent();
    }
}
