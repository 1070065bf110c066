//! What nobody says of the recess, the cabinet or the cutout that a thing is set into.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::book::Setting;
use crate::finding::{Remark, Severity, phrase};
use crate::site::fitting::{Housing, depth_stack, recess, setting};
use crate::site::{Placement, made_as};
use crate::units::with_article;
use crate::vocabulary::{Hazard, Said, Trait};

/// Everything that is to be asked of how things are set in.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let asked = [no_recess(&fitted), drawers_below(context, &fitted), type_of_unit(&fitted)];
        findings.extend(asked.into_iter().flatten());
    }
}

fn with_weight(finding: Remark) -> Remark {
    Remark { caution: Some(Hazard::Weight.caution().words()), ..finding }
}

/// It is meant to be flush, and the depth of its recess or its own is not known.
fn no_recess(fitted: &Placement<'_>) -> Option<Remark> {
    let (_, at) = setting(fitted.opening, fitted.option).filter(|(set, _)| *set == Setting::Flush)?;
    let (what, remedy) =
        match (recess(fitted.room, fitted.opening), depth_stack(fitted.room, fitted.opening, fitted.option)) {
            (Some(_), Some(_)) => return None,
            (None, _) => {
                ("how deep its recess is", "add the opening's `depth`, to the front that it is meant to be flush with")
            }
            (_, None) => ("how deep its case is", "add `size: {depth: …}`, and the `panel` that goes before it"),
        };
    let message = phrase!("`{}` is meant to be flush, and nobody says {what}", fitted.selection.name.value, what);
    Some(with_weight(fitted.finding(Severity::Query, at, message).remedy(remedy)))
}

/// It reaches below the counter into a cabinet with drawers, and nobody says where they begin.
fn drawers_below(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let fit = fitted.option.fit.get()?;
    let reaches = fit.below.get().is_some() && fitted.selection.has(Trait::CutIntoCounter);
    let forbidden = fit.not_over.iter().any(|not| Said::Drawer.is_in(&not.value));
    let at = Housing::of(fitted.room, fitted.opening, context.book.project.units)?.drawers()?;
    if !reaches || forbidden || !fitted.opening.below.is_absent() {
        return None;
    }
    let message = phrase!(
        "`{}` stands over drawers, and nobody says how far below the counter they begin",
        fitted.selection.name.value
    );
    let finding = fitted.finding(Severity::Query, at, message);
    Some(finding.remedy("add it to the opening: `below: {what: drawer, clear: …}`"))
}

/// The opening is made for a type of unit, and nobody says what type this one is.
fn type_of_unit(fitted: &Placement<'_>) -> Option<Remark> {
    let made_for = fitted.opening.made_for.spanned()?;
    let is_said = made_as(fitted.option).is_some();
    let message = phrase!(
        "the opening `{}` is made for {} unit, and nobody says how `{}` is made",
        fitted.opening.name.value,
        with_article(&made_for.value.to_string()),
        fitted.selection.name.value
    );
    (!is_said).then(|| {
        let finding = fitted.finding(Severity::Query, made_for.span, message);
        with_weight(finding.remedy("add `made as` to what is chosen, as its sheet has it"))
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn set_in(kind: &str, opening: &str, option: &str) -> Trial {
        Trial::of("complete/site")
            .opening("bay", &format!("{{takes: {kind}, {opening}}}"))
            .selection(&format!("selection: It\nkind: {kind}\nplace: bay"), option)
    }

    #[test]
    fn what_is_meant_flush_wants_the_depth_of_its_recess() {
        let option = "size: {depth: 24\"}";
        set_in("refrigerator", "set: flush", option)
            .finds("`It` is meant to be flush, and nobody says how deep its recess is")
            .weighs("query");
        set_in("refrigerator", "set: flush, depth: 25\"", option).stays_silent();
        set_in("refrigerator", "set: flush, depth: 25\"", "model: R-1").finds_one();
        set_in("refrigerator", "set: proud", option).stays_silent();
    }

    #[test]
    fn the_type_of_unit_is_asked_for_where_the_opening_has_one() {
        set_in("refrigerator", "made for: built-in", "model: R-1").finds_one().weighs("query");
        set_in("refrigerator", "made for: built-in", "made as: built-in").stays_silent();
        set_in("refrigerator", "width: 36\"", "made as: built-in").stays_silent();
    }

    #[test]
    fn drawers_below_a_cooktop_are_set_out() {
        let hob = |part: &str, opening: &str| {
            set_in("cooktop", &format!("above: nothing{opening}"), "fit: {below: 4\"}").room(&format!(
                "runs: {{range wall: {{parts: [{{cabinet: base, width: 36\", {part}, holds: [bay]}}]}}}}"
            ))
        };
        hob("drawers: 3", "").finds("`It` stands over drawers, and nobody says how far below the counter they begin");
        hob("doors: 2", "").stays_silent();
        hob("drawers: 3", ", below: {what: drawer, clear: 5\"}").stays_silent();
    }
}
