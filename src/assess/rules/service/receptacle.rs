//! The receptacle at an opening against the thing's plug.

use super::{ServiceNeed, asked};
use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Remark, Severity, phrase};
use crate::units::Wrote;
use crate::vocabulary::Hazard;
use crate::vocabulary::supply::{Power, is_none};

declare! {
    /// The receptacle has another pattern than the thing's plug
    ///
    /// ## What it checks
    /// The pattern at the opening against the one that the maker's sheet asks for, exactly; a 5-15 plug
    /// goes into a 5-20 receptacle, and a 6-15 into a 6-20. Patterns of other countries go by their standard: BS 1363,
    /// Schuko, AS/NZS 3112, IEC 60309 and others. Where the sheet wants it recessed, one that stands out stops, and one of
    /// which nobody says so is asked about. What has a plug and is to be hard-wired by the words at the opening, or the
    /// other way round, is asked about.
    ///
    /// ## Why it matters
    /// A plug that does not go in is found on delivery day, with the installer paid to leave again.
    ///
    /// ## Remedy
    /// Have an electrician fit the receptacle that the sheet asks for, or order the cord that the maker
    /// offers for the one that is there.
    ///
    /// ## Example
    /// ```yaml
    /// service: {power: 240 V 50 A 10-50}     # the sheet asks 14-50
    /// ```
    ///
    /// ## Source
    /// The maker's sheet. The names of patterns are those of NEMA WD 6; that a 15 A plug goes into a
    /// 20 A receptacle, and the names of other standards, are from memory.
    "service/receptacle", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: powered,
    sources: ["the maker's sheet", "NEMA WD 6 (from memory)"],
    caution: Some(Hazard::Power),
    Check::Book(check)
}

/// The sheet wants its receptacle let into the wall, and it stands out, or nobody says.
fn stands_out(asked: &ServiceNeed<'_, Power>, there: &Power) -> Option<Remark> {
    let point = asked.fitted.opening.points.get().and_then(|points| points.power.get());
    let is_known =
        there.recessed || point.is_some_and(|point| !point.proud.is_absent() || point.beside.get() == Some(&true));
    let name = &asked.fitted.selection.name.value;
    if !asked.needs.is.recessed || is_known {
        return None;
    }
    let message = match there.on_the_surface {
        true => phrase!("`{name}` needs a recessed receptacle, and this one stands out from the wall", name),
        false => phrase!("`{name}` needs a recessed receptacle, and nobody says whether this one is", name),
    };
    let remedy = "have it let into the wall, and write `recessed` at the opening's `power`; or measure how far it stands \
                  out, and add that to the opening's `service points`";
    Some(asked.finding(if there.on_the_surface { Severity::Stop } else { Severity::Query }, message).remedy(remedy))
}

/// One of the two has a plug and the other has none. A fused spur takes either.
fn without_a_plug(asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    let name = &asked.fitted.selection.name.value;
    let (message, remedy) = match (&needs.pattern, &there.pattern) {
        (Some(plug), None) if there.hardwired && !there.fused_spur && !needs.hardwired => (
            phrase!(
                "`{name}` has a {} plug, and by its words the supply is hard-wired",
                name,
                Wrote(&plug.to_string())
            ),
            "have an electrician fit the receptacle that the sheet asks for, or order what the maker offers for wiring it in",
        ),
        (None, Some(found)) if needs.hardwired && !needs.fused_spur && !there.hardwired => (
            phrase!(
                "`{name}` is hard-wired by its sheet, and there is a receptacle, a {}",
                name,
                Wrote(&found.to_string())
            ),
            "have an electrician fit a box to wire it in, or order the maker's cord for this receptacle",
        ),
        _ => return None,
    };
    Some(asked.finding(Severity::Query, message).remedy(remedy))
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for asked in asked(context, |needs| &needs.power, |service| &service.power) {
        let told = asked.there.filter(|there| there.is_understood() && !is_none(&there.words));
        findings.extend(told.and_then(|there| stands_out(&asked, &there.is)));
        let Some(there) = asked.there else { continue };
        let (needs, there) = (&asked.needs.is, &there.is);
        findings.extend(without_a_plug(&asked, needs, there));
        let (Some(plug), Some(found)) = (&needs.pattern, &there.pattern) else { continue };
        if plug.goes_into(found) {
            continue;
        }
        let message = phrase!(
            "`{}` has a {} plug, and the receptacle is a {}",
            asked.fitted.selection.name.value,
            Wrote(&plug.to_string()),
            Wrote(&found.to_string())
        );
        let remedy =
            "have an electrician fit the receptacle that the sheet asks for, or order the maker's cord for this one";
        findings.push(asked.finding(Severity::Stop, message).remedy(remedy));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(there: &str, needs: &str) -> Trial {
        Trial::of("service/receptacle")
            .opening("hole", &format!("{{takes: range, service: {{power: {there}}}}}"))
            .selection("selection: Range\nkind: range\nplace: hole", &format!("fit: {{needs: {{power: {needs}}}}}"))
    }

    /// Source: trade reports F-33: both 10-50 and 14-50 are met with.
    #[test]
    fn a_plug_of_another_pattern_stops() {
        range("240 V 50 A 10-50", "240 V 50 A 14-50")
            .finds("`Range` has a 14-50 plug, and the receptacle is a 10-50")
            .weighs("stop")
            .cautions();
        range("240 V 50 A 14-50", "240 V 50 A 14-50").stays_silent();
        range("120 V 20 A 5-20", "120 V 15 A 5-15").stays_silent();
        range("240 V 50 A", "240 V 50 A 14-50").stays_silent();
    }

    /// Source: the maker's sheet: what has a plug goes into no box.
    #[test]
    fn a_plug_wants_a_receptacle_and_what_is_hard_wired_none() {
        for there in ["hard-wired", "hardwired, 20 A", "hard-wired 120 V 20 A", "120 V 20 A junction box"] {
            range(&format!("\"{there}\""), "120 V 15 A 5-15")
                .finds("`Range` has a 5-15 plug, and by its words the supply is hard-wired")
                .weighs("query")
                .cautions();
        }
        range("\"240 V 40 A, 14-50\"", "\"240 V 40 A, hard-wired\"")
            .finds("`Range` is hard-wired by its sheet, and there is a receptacle, a 14-50")
            .weighs("query");
        range("\"240 V 40 A, hard-wired\"", "\"240 V 40 A, hard-wired\"").stays_silent();
        range("\"230 V 13 A fused spur\"", "230 V 10 A BS 1363").stays_silent();
        range("\"230 V 10 A GPO\"", "\"230 V, 3 A fused spur\"").stays_silent();
        range("\"120 V 20 A 5-20, not hard-wired\"", "120 V 15 A 5-15").stays_silent();
        range("\"240 V 40 A 14-50\"", "\"240 V 40 A 14-50 or hard-wired\"").stays_silent();
    }

    /// Source: trade reports F-31 (a receptacle behind the appliance).
    #[test]
    fn a_recessed_one_is_recessed() {
        let sheet = "\"120 V 20 A 5-20, recessed\"";
        range("\"120 V 20 A 5-20, surface box at the rear\"", sheet)
            .finds("`Range` needs a recessed receptacle, and this one stands out from the wall")
            .weighs("stop")
            .cautions();
        range("120 V 20 A 5-20", sheet).finds_one().weighs("query");
        range("none", sheet).stays_silent();
        range("\"120 V 20 A 5-20, recessed at the rear\"", sheet).stays_silent();
        range("120 V 20 A 5-20}, service points: {power: {proud: 0\"}", sheet).stays_silent();
    }

    #[test]
    fn patterns_of_other_countries_are_compared_too() {
        range("230 V 16 A Schuko", "230 V 10 A BS 1363")
            .finds("`Range` has a BS 1363 plug, and the receptacle is a Schuko")
            .weighs("stop")
            .cautions();
        range("230 V 10 A AS 3112", "230 V 10 A BS 1363").finds_one();
        range("230 V 15 A 5-15", "230 V 10 A BS 1363").finds_one();
        range("'16 A blue commando socket, IEC 60309'", "230 V 10 A BS 1363").finds_one();
        range("230 V 13 A switched socket", "230 V 10 A BS 1363").stays_silent();
        range("230 V 10 A GPO", "230 V 10 A AS/NZS 3112").stays_silent();
        range("230 V 16 A CEE 7/5", "230 V 10 A Schuko").stays_silent();
    }
}
