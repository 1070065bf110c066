//! Clear space that a thing must breathe through.

use crate::assess::fitting::{Side, fitting, rises_above_counter};
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::book::Fit;
use crate::book::vocabulary::Hazard;
use crate::finding::{Finding, Severity};
use crate::units::Length;

declare! {
    /// The thing gets less clear space than its sheet asks for
    ///
    /// ## What it checks
    /// Each clearance of the sheet that holds only somewhere (`2" above counter`) against what
    /// stands on that side and how far off it is; air behind the thing against the depth of the
    /// opening; and a thing that breathes at its rear or top, enclosed with no air there.
    /// Clearances that hold over a whole side are counted in `fit/width` and `fit/height`.
    ///
    /// ## Why it matters
    /// What can't shed its heat works harder, fails early, or sets fire to what stands beside it.
    ///
    /// ## Remedy
    /// Move what stands beside it, choose a unit that breathes at its front, or plan the grille
    /// that the sheet shows.
    ///
    /// ## Example
    /// ```yaml
    /// right: {what: wall, gap: 1"}     # its sheet: air: {right: 2\" above counter}
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; trade report F-14 (an enclosed unit that vents at the rear).
    "fit/air", Stop,
    sources: ["the maker's sheet"],
    caution: Some(Hazard::Heat.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for fitted in context.fitted() {
        judge(context, &fitted, findings);
    }
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>, findings: &mut Vec<Finding>) {
    let say = |length| say(length, context.book.project.units);
    let Some(fit) = fitted.option.fit.get() else { return };
    for (side, asked) in [(Side::Left, &fit.air.left), (Side::Right, &fit.air.right)] {
        let (Some(asked), Some(beside)) =
            (asked.spanned().filter(|air| !air.holds.is_empty()), side.of(fitted.opening).get())
        else {
            continue;
        };
        let there = beside.gap.get().copied().unwrap_or(Length::ZERO);
        if there < asked.length && rises_above_counter(beside) {
            let message = format!(
                "`{}` asks for {} at its {} {}, and {} stands {} off",
                fitted.selection.name.value,
                say(asked.length),
                side.word(),
                asked.holds,
                beside.what,
                say(there)
            );
            let finding =
                fitted.finding(RULE.code, Severity::Stop, asked.span, message).also(fitted.opening.span, "the opening");
            findings.push(finding.remedy("move what stands beside it, or choose a model that asks for less"));
        }
    }
    findings.extend(behind(fitted, fit));
}

/// A unit that breathes at its rear and is shut in.
fn behind(fitted: &Fitted<'_>, fit: &Fit) -> Option<Finding> {
    let vents = fit.air.vents_at.spanned().filter(|vents| vents.value == "rear" || vents.value == "top")?;
    let given = if vents.value == "rear" { &fit.air.back } else { &fit.air.top };
    if given.get().is_some_and(|air| air.length > Length::ZERO) {
        return None;
    }
    let fit = fitting(fitted.room, fitted.opening, fitted.option);
    let gauge = if vents.value == "rear" { &fit.depth } else { &fit.height };
    let room_there = gauge.there.zip(gauge.body).map(|(there, body)| there - body);
    let enclosed = fitted.opening.cabinet.get().is_some() || fitted.opening.above.get().is_some();
    if !enclosed || room_there.is_some_and(|room| room > Length::ZERO) {
        return None;
    }
    let message = format!("`{}` breathes at its {}, and is shut in there", fitted.selection.name.value, vents.value);
    let finding = fitted.finding(RULE.code, Severity::Query, vents.span, message);
    Some(
        finding.remedy(
            "choose a unit that breathes at its front, or write the clearance and the grille that the sheet shows",
        ),
    )
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(right: &str) -> Trial {
        let trial = Trial::of("fit/air").opening("hole", &format!("{{takes: range, right: {right}}}"));
        trial.selection("selection: It\nkind: range\nplace: hole", "fit: {air: {right: 2\" above counter}}")
    }

    /// Source: design.md's range: 2" above the counter to what stands at its right (the maker's sheet decides).
    #[test]
    fn a_wall_nearer_than_the_sheet_asks_above_the_counter_is_told() {
        range("{what: wall, gap: 1 1/2\"}")
            .finds("`It` asks for 2\" (50.8 mm) at its right above counter, and wall stands 1 1/2\" (38.1 mm) off")
            .weighs("stop")
            .cautions();
        range("{what: wall, gap: 2\"}").is_silent();
        range("base cabinet").is_silent();
    }

    /// Source: trade.md F-14: an enclosed unit that vents at the rear.
    #[test]
    fn a_unit_that_breathes_at_its_rear_is_not_shut_in() {
        let cooler = |vents: &str, depth: &str| {
            let trial = Trial::of("fit/air")
                .opening("hole", &format!("{{takes: refrigerator, depth: {depth}, above: counter}}"));
            trial.selection(
                "selection: It\nkind: refrigerator\nplace: hole",
                &format!("size: {{depth: 24\"}}\nfit: {{air: {{vents at: {vents}}}}}"),
            )
        };
        cooler("rear", "24\"").finds("`It` breathes at its rear, and is shut in there").weighs("query");
        cooler("front", "24\"").is_silent();
        cooler("rear", "25\"").is_silent();
    }
}
