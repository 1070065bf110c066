//! A shut-off that is told to be missing, where no sheet asks for it.

use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::vocabulary::Kind;
use crate::vocabulary::supply::{Valve, is_none};

/// What is shut off with the house (IRC P2903.9.3 leaves out tubs and showers, from memory).
const WITHOUT: [Kind; 4] = [Kind::Bathtub, Kind::ShowerSet, Kind::ShowerTray, Kind::TubFiller];

/// The words at the opening say that nothing shuts its water.
pub(super) fn missing(fitted: &Placement<'_>) -> Option<Remark> {
    let there = fitted.opening.service.water.spanned().filter(|there| !is_none(&there.words))?;
    let needs = fitted.option.fit.get().and_then(|fit| fit.needs.water.get());
    let is_asked = needs.is_some_and(|needs| needs.is.valve == Some(Valve::There));
    if is_asked || there.is.valve != Some(Valve::NotThere) || fitted.selection.is_any(&WITHOUT) {
        return None;
    }
    let message = phrase!(
        "nothing shuts the water of `{}` at its opening by the words there: `{}`",
        fitted.selection.name.value,
        there.words
    );
    let finding = fitted.finding(Severity::Query, there.span, message).source("IRC P2903.9.3 (from memory)");
    Some(finding.remedy("have a plumber set a shut-off that can be reached, and write it: `with shut-off`"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn thing(kind: &str, there: &str, needs: &str) -> Trial {
        Trial::of("service/water")
            .opening("hole", &format!("{{takes: {kind}, service: {{water: '{there}'}}}}"))
            .selection(
                &format!("selection: It\nkind: {kind}\nplace: hole"),
                &format!("fit: {{needs: {{water: '{needs}'}}}}"),
            )
    }

    /// Source: IRC P2903.9.3 (from memory): a stop at each fixture but tubs and showers.
    #[test]
    fn what_has_water_can_be_shut_off() {
        for there in [
            "3/8\" cold, no stop",
            "ohne Absperrung, kalt 3/8\"",
            "agua fría 3/8\" sin llave",
            "3/8\" cold, stop seized",
        ] {
            thing("toilet", there, "cold").finds_one().weighs("query").cautions();
        }
        thing("dishwasher", "3/8\" hot, no shut-off", "3/8\" hot")
            .finds("nothing shuts the water of `It` at its opening by the words there: `3/8\" hot, no shut-off`");
        thing("toilet", "3/8\" cold stop, 7\" AFF", "cold").stays_silent();
        thing("toilet", "3/8\" cold", "cold").stays_silent();
        thing("shower set", "1/2\" hot and cold, no stops", "hot and cold").stays_silent();
        // Where the sheet asks for one, that is told, once.
        thing("dishwasher", "3/8\" hot, no shut-off", "3/8\" hot with shut-off").finds_one().weighs("stop");
    }
}
