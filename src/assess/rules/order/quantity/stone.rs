//! A counter that is ordered by its area, against what it lies on.

use crate::assess::context::about;
use crate::assess::{Context, say_area};
use crate::book::ProductOption;
use crate::finding::{Remark, Severity, phrase};
use crate::site::counters::{area_of, length_below, lies_on_alone};
use crate::site::plan::{Plan, RowOf};
use crate::units::Area;
use crate::vocabulary::Kind;

/// Of a hundred parts of what it lies on, so many are ordered at least: who orders by area may have taken the holes of
/// sink and cooktop off (common practice: at most a tenth).
const AT_LEAST: i128 = 90;

/// Counters of which less is ordered than lies below.
pub fn check(context: &Context<'_>) -> Vec<Remark> {
    let counters = context.site.options().filter(|(_, selection, _)| selection.is(Kind::Counter));
    let short = counters.filter_map(|(room, selection, option)| {
        let ordered = option.quantity.spanned()?;
        let there = ordered.value.area()?;
        let pieces = option.top.get().map_or(&[][..], |top| &top.pieces);
        let of_pieces: i128 = pieces
            .iter()
            .map(|piece| i128::from(piece.length.nanometres()) * i128::from(piece.depth.nanometres()))
            .sum();
        let said = option.laid.area.get().or(selection.covers.get()).copied();
        let planned = || {
            let (plan, names) = (context.site.plan(room), lies_on_alone(room, selection, option)?);
            let own = area_of(plan, room, &names)?;
            let splash = splash_of(plan, option, &names);
            Some(Area::from_square_nanometres(own.square_nanometres().saturating_add(splash)))
        };
        let (needs, from) = match (said, of_pieces) {
            (Some(said), _) => (said, "what is said to be laid comes"),
            (None, 0) => (planned()?, "what it lies on by the plan comes"),
            (None, pieces) => (Area::from_square_nanometres(pieces), "its pieces come"),
        };
        let enough =
            there.square_nanometres().saturating_mul(100) >= needs.square_nanometres().saturating_mul(AT_LEAST);
        let say = |area| say_area(area, context.book.project.units);
        let message =
            phrase!("{} of `{}` are ordered, and {from} to {}", ordered.value, selection.name.value, from, say(needs));
        let remedy = phrase!("order {} and what is cut away besides, or correct where it lies", say(needs));
        (!enough).then(|| about(room, selection, option, Severity::Stop, ordered.span, message).remedy(remedy))
    });
    short.collect()
}

/// What a counter's own splash takes along the runs that it lies on, in square nanometres: what is written at the counter is
/// of its material.
fn splash_of(plan: Option<&Plan<'_>>, option: &ProductOption, names: &[&str]) -> i128 {
    let high = option.top.get().and_then(|top| top.splash.get()?.height.get().copied());
    let Some((high, plan)) = high.zip(plan.filter(|plan| plan.is_sound())) else { return 0 };
    let rows =
        plan.rows.iter().filter(|row| matches!(row.of, RowOf::Run(run) if names.contains(&run.name.value.as_str())));
    rows.map(|row| i128::from(length_below(plan, row).nanometres()) * i128::from(high.nanometres())).sum()
}
