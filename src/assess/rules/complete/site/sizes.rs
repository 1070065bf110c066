//! A size of a measured opening that the maker's sheet asks for, and that nothing in the book tells.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::{Fitting, Housing, Stack, above};
use crate::vocabulary::Trait;

/// Asks once of each opening. One that nobody measured yet is asked for by `complete/measured`.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    let mut asked = Vec::new();
    for fitted in context.site.fitted().filter(|fitted| fitted.opening.measured.get().is_some()) {
        if asked.contains(&fitted.opening.span) {
            continue;
        }
        let fitting = context.site.fitting(&fitted);
        let lacking = lacking(context, &fitted, &fitting);
        if let Some(finding) = remark(&fitted, &lacking) {
            asked.push(fitted.opening.span);
            findings.push(finding);
        }
    }
}

/// The sizes that the sheet asks for, that the opening lacks, and that nothing around it bounds.
fn lacking(context: &Context<'_>, fitted: &Placement<'_>, fitting: &Fitting) -> Vec<&'static str> {
    let (room, opening) = (fitted.room, fitted.opening);
    let Some(asked) = fitted.option.fit.get().map(|fit| &fit.opening) else { return vec![] };
    let plan = context.site.plan(room);
    let housing = Housing::of(room, opening, context.book.project.units);
    let housed = |known: bool| housing.is_some() && known;
    let is_in_a_row = room.part_of(&opening.name).is_some() || plan.is_some_and(|plan| plan.opening(opening).is_some());
    let no_width = opening.width.is_absent() && opening.plumb.is_absent() && fitting.width.there.is_none();
    let no_width = no_width && !housed(housing.as_ref().is_some_and(|housing| housing.inside_width.is_some()));
    let ends_above = above(plan, room, opening).is_some() || Stack::of(room, opening).is_some();
    let stands_free = opening.takes_one(Trait::BreaksCounter) || opening.takes_one(Trait::DropsIn);
    let no_height = opening.height.is_absent() && fitting.height.there.is_none() && !ends_above && !stands_free;
    let no_height = no_height && !housed(housing.as_ref().is_some_and(|housing| housing.inside_height.is_some()));
    let no_depth = opening.depth.is_absent() && fitting.depth.there.is_none() && !is_in_a_row;
    let no_depth = no_depth && !housed(housing.as_ref().is_some_and(|housing| housing.inside_depth.is_some()));
    let lacks = [
        ("width", asked.width.get().is_some() && no_width),
        ("height", asked.height.get().is_some() && no_height),
        ("depth", asked.depth.get().is_some() && no_depth),
    ];
    lacks.into_iter().filter_map(|(name, lacks)| lacks.then_some(name)).collect()
}

fn remark(fitted: &Placement<'_>, lacking: &[&'static str]) -> Option<Remark> {
    lacking.first()?;
    let names = Phrase::joined(lacking.iter().map(|name| Phrase::name(name)), ", ");
    let message = phrase!(
        "the opening `{}` is measured without {names}, for which the sheet of `{}` asks",
        fitted.opening.name.value,
        names,
        fitted.selection.name.value
    );
    let finding = fitted.finding(Severity::Query, fitted.opening.span, message);
    Some(Remark { caution: None, ..finding }.remedy("measure that too, and add it to the opening"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: arithmetic: what nobody measured can't be held to the sheet.
    #[test]
    fn a_size_that_the_sheet_asks_for_and_nobody_measured_is_asked_for() {
        let fridge = |opening: &str| {
            Trial::of("complete/site")
                .opening("cold", &format!("{{takes: refrigerator, width: 36\"{opening}}}"))
                .selection(
                    "selection: Fridge\nkind: refrigerator\nplace: cold",
                    "fit: {opening: {width: 36\", height: at least 71\"}}",
                )
        };
        let measured = ", measured: {on: 2027-01-11, by: Jo}";
        fridge(measured)
            .finds("the opening `cold` is measured without `height`, for which the sheet of `Fridge` asks")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:3:3"]);
        fridge(&format!("{measured}, height: 72\"")).stays_silent();
        fridge(&format!("{measured}, above: {{what: shelf, height: 72\"}}")).stays_silent();
        fridge(measured).room("ceiling: 96\"").stays_silent();
        // One that is as planned is asked for as a whole, by `complete/measured`.
        fridge("").stays_silent();
    }
}
