//! The receptacle at an opening against the thing's plug.

use super::asked;
use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Severity, phrase};
use crate::units::Wrote;
use crate::vocabulary::Hazard;

declare! {
    /// The receptacle has another pattern than the thing's plug
    ///
    /// ## What it checks
    /// The pattern at the opening against the one that the maker's sheet asks for, exactly; a 5-15 plug
    /// goes into a 5-20 receptacle, and a 6-15 into a 6-20.
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
    /// 20 A receptacle is from memory.
    "service/receptacle", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: powered,
    sources: ["the maker's sheet", "NEMA WD 6 (from memory)"],
    caution: Some(Hazard::Power),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for asked in asked(context, |needs| &needs.power, |service| &service.power) {
        let Some(there) = asked.there else { continue };
        let (needs, there) = (&asked.needs.is, &there.is);
        if needs.plugs_into(there) != Some(false) {
            continue;
        }
        let message = phrase!(
            "`{}` has a {} plug, and the receptacle is a {}",
            asked.fitted.selection.name.value,
            Wrote(needs.pattern.as_deref().unwrap_or_default()),
            Wrote(there.pattern.as_deref().unwrap_or_default())
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
}
