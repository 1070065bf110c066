//! What a drain goes through on its way, against what the sheet asks.

use crate::assess::rules::service::ServiceNeed;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::units::Wrote;
use crate::vocabulary::Kind;
use crate::vocabulary::supply::{Drain, DrainWay, is_none};

/// A drain that goes another way than the sheet asks, or of which nobody says that it goes that way.
pub(super) fn another(asked: &ServiceNeed<'_, Drain>) -> Option<Remark> {
    let there = asked.there?;
    let (needs, has) = (asked.needs.is.ways, there.is.ways);
    let name = &asked.fitted.selection.name.value;
    let is_a_dishwasher = asked.fitted.selection.is_any(&DISHWASHERS);
    if let (true, Some(wants)) = (is_a_dishwasher, needs.of_a_dishwasher()) {
        let loops = needs.names(DrainWay::HighLoop);
        // An air gap does all that a loop does, and a standpipe is as high as one.
        let is_met =
            has.names(DrainWay::AirGap) || loops && (has.names(DrainWay::HighLoop) || has.names(DrainWay::Standpipe));
        if is_met {
            return None;
        }
        let is = match has.of_a_dishwasher() {
            Some(other) => phrase!("at the opening it is by {} ({})", other, Wrote(&there.words)),
            None if has.without_a_loop => phrase!("by the words at the opening there is none (`{}`)", there.words),
            None => phrase!("nobody says whether it has one at the opening (`{}`)", there.words),
        };
        let message =
            phrase!("`{name}` needs its drain by {} ({}), and {is}", name, wants, Wrote(&asked.needs.words), is);
        return Some(asked.finding(Severity::Query, message).remedy(LOOPED));
    }
    let (needs, has) = (needs.only()?, has.only()?);
    let message = phrase!(
        "`{name}` needs its drain by {needs} ({}), and at the opening it is by {has} ({})",
        name,
        needs.word(),
        Wrote(&asked.needs.words),
        has.word(),
        Wrote(&there.words)
    );
    needs.is_not(has).then(|| asked.finding(Severity::Query, message))
}

const DISHWASHERS: [Kind; 2] = [Kind::Dishwasher, Kind::PanelDishwasher];

const LOOPED: &str = "have the hose led up to the underside of the counter, or through an air gap, and write at the \
                      opening's `drain` what there is: `high loop`, `air gap`";

/// A dishwasher whose sheet says nothing of a loop, and whose drain is told to have none.
pub(super) fn without_a_loop(fitted: &Placement<'_>) -> Option<Remark> {
    let there = fitted.opening.service.drain.spanned()?;
    let needs = fitted.option.fit.get().and_then(|fit| fit.needs.drain.get());
    let is_asked = needs.is_some_and(|needs| needs.is.ways.of_a_dishwasher().is_some());
    if !fitted.selection.is_any(&DISHWASHERS) || is_asked || !there.is.ways.without_a_loop || is_none(&there.words) {
        return None;
    }
    let message: Phrase = phrase!(
        "by the words at the opening (`{}`) the drain of `{}` has neither a high loop nor an air gap",
        there.words,
        fitted.selection.name.value
    );
    let finding = fitted.finding(Severity::Query, there.span, message).remedy(LOOPED);
    Some(finding.source("IRC P2717.1 (from memory), common practice"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn dishwasher(there: &str, needs: &str) -> Trial {
        Trial::of("service/drain")
            .opening("hole", &format!("{{takes: dishwasher, service: {{drain: '{there}'}}}}"))
            .selection("selection: It\nkind: dishwasher\nplace: hole", &format!("fit: {{needs: {{drain: '{needs}'}}}}"))
    }

    /// Source: the maker's sheet; IRC P2717.1 (from memory): without a loop the sink's water runs into the machine.
    #[test]
    fn a_dishwasher_s_hose_is_led_up_where_its_sheet_asks() {
        let sheet = "high loop or air gap";
        for there in
            ["to the disposer", "to the sink tailpiece", "straight to the trap", "1 1/2\" at the sink", "by plumber"]
        {
            dishwasher(there, sheet)
                .finds(&format!("`It` needs its drain by an air gap or a high loop ({sheet}), and nobody says whether it has one at the opening (`{there}`)"))
                .weighs("query")
                .cautions();
        }
        for there in ["low loop", "direct to the waste, no loop", "al sifón, sin bucle", "ohne Schlaufe"] {
            dishwasher(there, sheet)
                .finds(&format!("`It` needs its drain by an air gap or a high loop ({sheet}), and by the words at the opening there is none (`{there}`)"))
                .weighs("query");
        }
        for there in [
            "to the disposer, high loop",
            "air gap at the sink",
            "looped up under the counter",
            "con bucle alto",
            "2\" standpipe",
            "Siphon, Hochschlaufe",
        ] {
            dishwasher(there, sheet).stays_silent();
        }
        dishwasher("high loop", "air gap")
            .finds("`It` needs its drain by an air gap (air gap), and at the opening it is by a high loop (high loop)");
        dishwasher("air gap", "high loop").stays_silent();
    }

    #[test]
    fn one_whose_sheet_says_nothing_is_told_of_no_loop_alone() {
        for there in ["low loop to the trap", "to the trap, no loop"] {
            dishwasher(there, "to the sink trap").finds_one().weighs("query").cautions();
        }
        for there in ["to the sink trap", "al sifón", "to the trap, high loop", "no air gap, high loop"] {
            dishwasher(there, "to the sink trap").stays_silent();
        }
    }
}
