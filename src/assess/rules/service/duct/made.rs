//! What a duct is made of.

use crate::assess::Context;
use crate::assess::codes::{DRYER_DUCT, Family};
use crate::assess::rules::service::ServiceNeed;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::vocabulary::Kind;
use crate::vocabulary::supply::{Duct, is_no_duct};

/// A duct of another making than the sheet asks, or than is usual for what leaves lint in it.
pub(super) fn otherwise(
    context: &Context<'_>,
    asked: &ServiceNeed<'_, Duct>,
    needs: Duct,
    has: Duct,
) -> Option<Remark> {
    let name = &asked.fitted.selection.name.value;
    let is_dryer = asked.fitted.selection.is(Kind::Dryer);
    let rigid = needs.rigid || needs.flexible == Some(false);
    let metal = needs.metal || needs.plastic == Some(false);
    // What a dryer's piece to its duct is called is a reducer of a hood's.
    let bends = has.flexible == Some(true) && !(is_dryer && has.transition);
    let plastic = has.plastic == Some(true);
    let (severity, message) = if rigid && bends && has.rigid {
        (Severity::Query, phrase!("`{name}` needs a rigid duct, and a part of this one is flexible", name))
    } else if rigid && bends {
        (Severity::Stop, phrase!("`{name}` needs a rigid duct, and there is a flexible one", name))
    } else if metal && plastic {
        (Severity::Stop, phrase!("`{name}` needs a duct of metal, and there is one of plastic", name))
    } else if is_dryer && (plastic || bends && !has.rigid) {
        let what = if plastic { "of plastic" } else { "flexible" };
        let message =
            phrase!("the duct of `{name}` is {what}, where one of smooth metal is usual: lint burns", name, what);
        let ruling = context.rulings().length(&DRYER_DUCT);
        let finding = asked.finding(ruling.map_or(Severity::Query, |ruling| ruling.severity), message);
        return Some(finding.remedy(SMOOTH).source("IRC M1502.4.1 (from memory)"));
    } else if is_dryer && has.screws {
        let message = phrase!("the duct of `{name}` is held together by screws, whose points catch lint", name);
        let finding = asked.finding(Severity::Query, message).source("IRC M1502.4.2 (from memory)");
        return Some(finding.remedy("have its joints taped, or see that no screw reaches into it"));
    } else if is_dryer && rigid && !has.rigid {
        (Severity::Query, phrase!("`{name}` needs a rigid duct, and nobody says whether this one is", name))
    } else {
        return None;
    };
    Some(asked.finding(severity, message).remedy(SMOOTH))
}

const SMOOTH: &str = "plan a smooth duct of metal as the maker's sheet asks, and the flexible piece at the machine alone, in sight and as short as the sheet allows";

/// A hood's duct that is flexible, or of plastic where the code wants metal, and of whose making its sheet says nothing.
pub(super) fn of_a_hood(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let there = fitted.opening.service.duct.spanned()?;
    if !fitted.selection.is(Kind::Hood) || is_no_duct(&there.words) {
        return None;
    }
    let needs = fitted.option.fit.get().and_then(|fit| fit.needs.duct.get()).map(|duct| duct.is).unwrap_or_default();
    let (has, by_code) = (there.is, context.rulings().offers(Family::Irc));
    let bends = has.flexible == Some(true) && !has.rigid && !needs.rigid && needs.flexible.is_none();
    let plastic = has.plastic == Some(true) && by_code && !needs.metal && needs.plastic.is_none();
    let name = &fitted.selection.name.value;
    let message = if plastic {
        phrase!("the duct of `{name}` is of plastic, where one of metal is usual: grease burns", name)
    } else if bends {
        phrase!(
            "the duct of `{name}` is flexible, where a smooth one is usual: its folds slow the air and keep the grease",
            name
        )
    } else {
        return None;
    };
    let finding =
        fitted.finding(Severity::Query, there.span, message).source("IRC M1503.3 (from memory), common practice");
    Some(finding.remedy(SMOOTH_FOR_GREASE))
}

const SMOOTH_FOR_GREASE: &str = "plan a smooth duct, of metal where the local code asks for it, or write what the maker's sheet allows: `fit: {needs: {duct: …}}`";

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn thing(kind: &str, there: &str, needs: &str) -> Trial {
        Trial::of("service/duct")
            .opening("hole", &format!("{{takes: {kind}, service: {{duct: '{there}'}}}}"))
            .selection(
                &format!("selection: It\nkind: {kind}\nplace: hole"),
                &format!("fit: {{needs: {{duct: '{needs}'}}}}"),
            )
    }

    /// Source: IRC M1503.3 (from memory); makers advise against folds everywhere (common practice).
    #[test]
    fn a_hood_s_duct_is_smooth_and_of_metal() {
        for there in [
            "8\" flex duct, 9 ft, through the roof",
            "8\" aluminum flex, 9 ft",
            "200 mm concertina hose, 2 m",
            "DN 200 Alu flex, 2 m",
        ] {
            thing("hood", there, "8\" round")
                .finds("the duct of `It` is flexible, where a smooth one is usual: its folds slow the air and keep the grease")
                .weighs("query")
                .cautions();
        }
        thing("hood", "8\" PVC through the roof, 9 ft", "8\" round")
            .finds("the duct of `It` is of plastic, where one of metal is usual: grease burns")
            .weighs("query");
        // Elsewhere ducts of plastic are what is sold.
        thing("hood", "150 mm rigid PVC, 2 m", "150 mm").book("country: GB").stays_silent();
        thing("hood", "8\" rigid, a short flex at the hood, 9 ft", "8\" round").stays_silent();
        thing("hood", "8\" galvanized, 9 ft, not flexible", "8\" round").stays_silent();
        thing("fan", "4\" insulated flex, 6 ft", "4\" round").stays_silent();
        // The sheet's own word is told as that, once.
        thing("hood", "8\" flex, 9 ft", "8\" rigid").finds_one().weighs("stop");
        thing("hood", "8\" PVC, 9 ft", "8\" metal").finds_one().weighs("stop");
    }

    /// Source: IRC M1502.4.3 (from memory): one transition duct of 8 ft at most, not concealed.
    #[test]
    fn the_piece_at_the_machine_may_bend_as_the_remedy_says() {
        for there in [
            "4\" rigid metal, 12 ft, two elbows, semi-rigid transition 3 ft",
            "4\" rigid metal, 12 ft, two elbows, the flexible piece at the machine alone, in sight and as short as the sheet allows",
            "4\" smooth duct of metal, 12 ft, and the flexible piece at the machine alone",
        ] {
            thing("dryer", there, "4\" rigid metal, at most 64 ft, less 10 ft for each bend").stays_silent();
            thing("dryer", there, "4\"").stays_silent();
        }
        thing("dryer", "4\" rigid metal, 12 ft, semi-rigid transition 10 ft", "4\" rigid metal")
            .finds("`It` needs a rigid duct, and a part of this one is flexible");
        thing("hood", "8\" rigid, 9 ft, flexible transition 1 ft", "8\" rigid").finds_one().weighs("query");
    }

    /// Source: IRC M1502.4.2 (from memory).
    #[test]
    fn no_screw_reaches_into_a_dryer_s_duct() {
        thing("dryer", "4\" rigid with screws, 14 ft", "4\" rigid").finds_one().weighs("query").cautions();
        thing("dryer", "4\" rigid, no screws, 14 ft", "4\" rigid").stays_silent();
    }
}
