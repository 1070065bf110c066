//! What the words of a circuit do not tell: how many amperes it has, and what else is on it.

use crate::assess::rules::service::ServiceNeed;
use crate::finding::{Remark, Severity, phrase};
use crate::units::Wrote;
use crate::vocabulary::supply::{Amount, Power};

/// A circuit that is shared, or of which nobody says how many amperes it has.
pub(super) fn judge(asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    shared(asked, needs, there).or_else(|| amperes(asked, needs, there))
}

/// The share of a circuit that what is fixed may draw where something is plugged in beside it, in percent (NEC 210.23(A),
/// from memory).
const SHARE: u32 = 50;

/// Something else is on the circuit, and the thing alone draws more than half of what it carries, or nobody says what it
/// carries.
fn shared(asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    there.alone.filter(|alone| !alone)?;
    let drawn = || {
        let volts = needs.volts.iter().chain(&there.volts).copied().max().filter(|volts| *volts > 0)?;
        Some(needs.watts?.taken().div_ceil(volts))
    };
    let takes = drawn().or(needs.amps.map(Amount::taken));
    let has = there.amps.map(Amount::there);
    if let (Some(takes), Some(has)) = (takes, has)
        && takes.saturating_mul(100) <= has.saturating_mul(SHARE)
    {
        return None;
    }
    let message = phrase!(
        "the circuit of `{}` serves something else too (`{}`), and nobody says whether it carries both",
        asked.fitted.selection.name.value,
        asked.there.map_or("", |there| &there.words)
    );
    let remedy = "have an electrician reckon what is drawn together, or run a circuit of its own";
    Some(asked.finding(Severity::Query, message).remedy(remedy).source("NEC 210.23(A) (from memory), common practice"))
}

/// The sheet asks for so many amperes, and neither figure nor receptacle tells how many there are.
fn amperes(asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    let words = asked.there.filter(|there| there.is_understood())?;
    if needs.amps.is_none() || there.amps.is_some() || there.watts.is_some() || there.pattern.is_some() {
        return None;
    }
    let message = phrase!(
        "`{}` needs power ({}), and nobody says how many amperes the circuit at the opening `{}` has: `{}`",
        asked.fitted.selection.name.value,
        Wrote(&asked.needs.words),
        asked.fitted.opening.name.value,
        words.words
    );
    let remedy =
        "look at the breaker and the wire, and write at the opening's `power` volts, amperes and the receptacle";
    Some(asked.finding(Severity::Query, message).remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn hob(there: &str, needs: &str) -> Trial {
        Trial::of("service/circuit")
            .opening("hole", &format!("{{takes: cooktop, service: {{power: \"{there}\"}}}}"))
            .selection("selection: Hob\nkind: cooktop\nplace: hole", &format!("fit: {{needs: {{power: \"{needs}\"}}}}"))
    }

    /// Source: the maker's sheet; NEC 210.23(A) (from memory).
    #[test]
    fn a_shared_circuit_carries_both() {
        hob("230 V, shared with the oven, 32 A", "220-240 V, 7.4 kW, 32 A")
            .finds("the circuit of `Hob` serves something else too (`230 V, shared with the oven, 32 A`), and nobody says whether it carries both")
            .weighs("query")
            .cautions();
        let washer = |there: &str, needs: &str| {
            Trial::of("service/circuit")
                .opening("hole", &format!("{{takes: washer, service: {{power: \"{there}\"}}}}"))
                .selection(
                    "selection: It\nkind: washer\nplace: hole",
                    &format!("fit: {{needs: {{power: \"{needs}\"}}}}"),
                )
        };
        for there in [
            "one double socket shared with the dryer",
            "230 V 16 A, gemeinsam mit dem Trockner",
            "230 V 16 A, mismo circuito que la secadora",
        ] {
            washer(there, "220-240 V 10 A").finds_one().weighs("query");
        }
        washer("120 V 20 A, shared with the disposer", "120 V 8 A").stays_silent();
        washer("120 V 20 A, shared with the disposer", "120 V, 1000 W").stays_silent();
        washer("230 V 16 A, not shared", "220-240 V 10 A").stays_silent();
        // The sheet's own word is told as that, once.
        washer("120 V 20 A 5-20, shared with the dryer", "120 V 15 A, dedicated").finds_one().weighs("stop");
    }

    #[test]
    fn how_many_amperes_there_are_is_asked_where_the_sheet_names_them() {
        for there in ["hard-wired", "240 V"] {
            hob(there, "240 V 40 A").finds_one().weighs("query").cautions();
        }
        for there in ["240 V 40 A", "40 A hard-wired", "14-50", "240 V, 10 kW", "10 A GPO", "as the old one"] {
            hob(there, if there.contains("GPO") { "240 V 10 A" } else { "240 V 40 A" }).stays_silent();
        }
        hob("240 V", "240 V").stays_silent();
    }

    /// Source: the maker's sheet (380-415 V 3N; IEC 60445 for the signs, from memory).
    #[test]
    fn three_phases_are_asked_for_and_two_are_not_enough() {
        hob("400 V 2N, 2 x 16 A", "380-415 V 3N, 7.4 kW, 16 A")
            .finds("`Hob` needs 3 phases, and there is a circuit of 2")
            .weighs("stop")
            .cautions();
        hob("400 V 3N, 3 x 16 A", "380-415 V 3N, 7.4 kW, 16 A").stays_silent();
        hob("400 V 3N, 3 x 16 A", "380-415 V 2N, 7.4 kW, 16 A").stays_silent();
        hob("400 V 16 A", "380-415 V 3N, 7.4 kW, 16 A").stays_silent();
    }
}
