//! A size of a measured opening that the maker's sheet asks for, and that nothing in the book tells.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::Direction;

/// Asks once of each opening. One that nobody measured yet is asked for by `complete/measured`.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    let mut asked = Vec::new();
    for fitted in context.site.fitted().filter(|fitted| fitted.opening.measured.get().is_some()) {
        if asked.contains(&fitted.opening.span) {
            continue;
        }
        if let Some(finding) = remark(&fitted, &context.site.fitting(&fitted).unmeasured) {
            asked.push(fitted.opening.span);
            findings.push(finding);
        }
    }
}

fn remark(fitted: &Placement<'_>, lacking: &[Direction]) -> Option<Remark> {
    lacking.first()?;
    let names = Phrase::joined(lacking.iter().map(|direction| Phrase::name(direction.name())), ", ");
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
