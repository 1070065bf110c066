//! A thing that no sheet of the maker's speaks for.

use crate::assess::Context;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Severity, phrase};

declare! {
    /// No sheet of the maker's speaks for the thing, or nobody can tell which
    ///
    /// ## What it checks
    /// Every kind that goes into an opening has the maker's own figures under `fit`, and says by
    /// name, revision and date which sheet they come from.
    ///
    /// ## Why it matters
    /// Shops' pages and articles disagree with makers, by {1"} and more. A sheet without revision or date
    /// can't be compared with the one that comes in the carton.
    ///
    /// ## Remedy
    /// Fetch the maker's installation sheet, write its figures under `fit`, and its name, revision
    /// and date under `sheet`.
    ///
    /// ## Example
    /// ```yaml
    /// fit:
    ///   sheet: {name: 30 C installation, revision: D, date: 2026-09-04}
    /// ```
    ///
    /// ## Source
    /// Common practice: numbers on a shop's page are not a cut sheet (a {27"} cutout, told for
    /// what the sheet gives as {28 1/4"}).
    "complete/cut-sheet", Stop,
    due: WithThing, tells: [],
    judges: placed,
    sources: ["trade practice: the maker's own sheet, with its revision"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        let Some(kind) = selection.kind.get().filter(|kind| kind.wants_sheet()) else { continue };
        if super::hangs_before_the_wall(selection, option) {
            continue;
        }
        let (message, remedy) = match option.fit.get() {
            None if option.fit.is_absent() => (
                phrase!("no sheet of the maker's speaks for the {}", kind.name()),
                "write the figures of the maker's installation sheet under `fit`",
            ),
            Some(fit) if fit.sheet.is_absent() => (
                phrase!("the figures of the {} do not say which sheet they come from", kind.name()),
                "add `fit: {sheet: {name: …, revision: …, date: …}}`",
            ),
            Some(fit) => match fit.sheet.get() {
                Some(sheet) if sheet.revision.is_absent() && sheet.date.is_absent() => (
                    phrase!("the maker's sheet of the {} has neither revision nor date", kind.name()),
                    "add its revision, its date, or both: `fit: {sheet: {revision: …, date: …}}`",
                ),
                _ => continue,
            },
            None => continue,
        };
        let at = if selection.options.len() > 1 { option.id.span } else { selection.span };
        findings.push(about(room, selection, option, Severity::Stop, at, message).remedy(remedy));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(option: &str) -> Trial {
        let trial = Trial::of("complete/cut-sheet").opening("hole", "{takes: warming drawer}");
        trial.selection("selection: It\nkind: warming drawer\nplace: hole", option)
    }

    /// Source: trade reports section 2c: an encyclopedia's 27" cutout for a warming drawer whose sheet says 28 1/4".
    #[test]
    fn a_warming_drawer_without_its_makers_figures_is_told() {
        trial("size: {width: 27\"}").finds("no sheet of the maker's speaks for the warming drawer");
        trial("fit: {sheet: {name: WD, revision: B}, opening: {width: 28 1/4\"}}").stays_silent();
    }

    #[test]
    fn a_sheet_with_neither_revision_nor_date_is_told() {
        trial("fit: {opening: {width: 28 1/4\"}}")
            .finds("the figures of the warming drawer do not say which sheet they come from");
        trial("fit: {sheet: {name: WD}}")
            .finds("the maker's sheet of the warming drawer has neither revision nor date");
        trial("fit: {sheet: {name: WD, date: 2026-09-04}}").stays_silent();
    }
}
