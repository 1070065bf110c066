//! The circuit at an opening against what the thing draws.

mod told;

use super::{ServiceNeed, asked};
use crate::assess::Context;
use crate::assess::codes::RANGE_CIRCUIT;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::Service;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::vocabulary::supply::{Amount, Power};
use crate::vocabulary::{Hazard, Trait};

declare! {
    /// The circuit has another voltage or fewer amperes than the thing needs
    ///
    /// ## What it checks
    /// Volts and amperes at the opening against those of the maker's sheet: the voltage must be there,
    /// the amperes at least as many. A range of 8 3/4 kW or more wants a circuit of 40 A at least, and
    /// one of more than 12 kW a circuit for its demand: 8 kW, and 5 % more for each kilowatt over 12. What
    /// is plugged in may draw at most 80 % of a 15 A or 20 A circuit. Where the sheet gives watts alone, the amperes
    /// that they come to at its volts. 220 to 240 V are one supply, and so are 110 to 127 V. Where words give the size of
    /// the wire, it must carry what the circuit is rated for; where the sheet asks for a circuit of its own, it must be
    /// one; and of one that is shared, whether it carries both. What asks for three phases gets no fewer. Where a thing
    /// needs power and nothing is told of the circuit, or not how many amperes it has, it asks.
    ///
    /// ## Why it matters
    /// An induction range on the old range's circuit trips it, or worse. A new cable after the walls are
    /// closed costs more than the range.
    ///
    /// ## Remedy
    /// Have an electrician run the circuit that the sheet asks for, or choose what the circuit carries.
    ///
    /// ## Example
    /// ```yaml
    /// service: {power: 240 V 40 A 14-50}     # the sheet asks 50 A
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; NEC 210.19 (ranges of 8 3/4 kW or more: 40 A); NEC Table 220.55, column C and note 1
    /// (demand; that half a kilowatt counts as a whole one is from memory); IRC E3702.3 (80 % of a branch
    /// circuit for what is plugged in).
    "service/circuit", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: powered,
    sources: ["the maker's sheet", "NEC 210.19", "NEC Table 220.55, column C, note 1", "IRC E3702.3"],
    caution: Some(Hazard::Power),
    remedy: "have an electrician run the circuit that the sheet asks for, or choose what this one carries",
    Check::Book(check)
}

/// The share of a 15 A or 20 A circuit that what is plugged in may draw, in percent (IRC E3702.3).
const PLUGGED_SHARE: u32 = 80;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for asked in asked(context, |needs| &needs.power, |service| &service.power) {
        findings.extend(judge(context, &asked));
    }
}

fn judge(context: &Context<'_>, asked: &ServiceNeed<'_, Power>) -> Option<Remark> {
    if let Some(absent) = asked.absent(Service::Power) {
        return Some(absent);
    }
    let there = asked.there?;
    let (needs, there) = (&asked.needs.is, &there.is);
    let name = &asked.fitted.selection.name.value;
    if !needs.runs_on(there) {
        let message =
            phrase!("`{name}` needs {} V, and the circuit has {} V", name, list(&needs.volts), list(&there.volts));
        return Some(asked.finding(Severity::Stop, message));
    }
    if let (Some(amps), Some(has)) = (needs.amps.map(Amount::taken), there.amps.map(Amount::there))
        && has < amps
    {
        let message = phrase!("`{name}` needs a circuit of {amps} A, and there is one of {has} A", name, amps, has);
        return Some(asked.finding(Severity::Stop, message));
    }
    fewer_phases(asked, needs, there)
        .or_else(|| range(context, asked, needs, there))
        .or_else(|| load(context, asked, needs, there))
        .or_else(|| plugged(asked, needs, there))
        .or_else(|| wire(asked, needs, there))
        .or_else(|| own(asked, needs, there))
        .or_else(|| told::judge(asked, needs, there))
}

/// The sheet asks for more phases than there are.
fn fewer_phases(asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    let (wants, has) = (needs.phases?, there.phases?);
    let name = &asked.fitted.selection.name.value;
    let message = phrase!("`{name}` needs {wants} phases, and there is a circuit of {has}", name, wants, has);
    (has < wants).then(|| asked.finding(Severity::Stop, message))
}

/// The wire that the words name carries less than the circuit, or than what the thing needs.
fn wire(asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    let carries = there.wire?;
    let amps = there.amps.map(Amount::there).or(needs.amps.map(Amount::taken)).filter(|amps| carries < *amps)?;
    let message = phrase!(
        "the circuit of `{}` is of {amps} A, and its wire (`{}`) carries {carries} A at most",
        asked.fitted.selection.name.value,
        amps,
        asked.there.map_or("", |there| &there.words),
        carries
    );
    let remedy = "have an electrician look at wire and breaker before anything is connected";
    Some(
        asked.finding(Severity::Query, message).remedy(remedy).source("NEC Table 310.16, IEC 60364-5-52 (from memory)"),
    )
}

/// The sheet asks for a circuit of its own.
fn own(asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    let name = &asked.fitted.selection.name.value;
    let (severity, message) = match (needs.alone, there.alone) {
        (Some(true), Some(false)) => {
            (Severity::Stop, phrase!("`{name}` needs a circuit of its own, and there is one that is shared", name))
        }
        (Some(true), None) => {
            let message = phrase!("`{name}` needs a circuit of its own, and nobody says whether this one is", name);
            let remedy =
                "find out what else is on it, and write `circuit of its own` or `shared` at the opening's `power`";
            return Some(asked.finding(Severity::Query, message).remedy(remedy));
        }
        _ => return None,
    };
    Some(asked.finding(severity, message))
}

/// What a thing draws, where its sheet gives kilowatts and no amperes: a cooking appliance may be reckoned with less
/// than all of it at once, which an electrician decides.
fn load(context: &Context<'_>, asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    let kind = asked.fitted.selection.kind.get()?;
    if needs.amps.is_some() || kind.is(Trait::Cooks) && needs.watts?.taken() >= 8_750 {
        return None;
    }
    let (watts, has) = (needs.watts?.taken(), there.amps?.there());
    let volts = needs.volts.iter().chain(&there.volts).copied().max().filter(|volts| *volts > 0)?;
    let amps = |watts: u32| match volts {
        // Of three phases each carries its share: the root of three, to a thousandth.
        THREE_PHASE.. => watts.saturating_mul(10).div_ceil(volts.saturating_mul(1732) / 100),
        _ => watts.div_ceil(volts),
    };
    let by_code = context.rulings().number(&RANGE_CIRCUIT).map(|_| watts.saturating_mul(DEMAND_BELOW) / 100);
    let (draws, wants) = match kind.is(Trait::Cooks) {
        // Where the code says how much is drawn at once, that is all that counts.
        true => {
            by_code.map_or_else(|| (amps(watts), amps(at_once(watts, volts))), |demand| (amps(demand), amps(demand)))
        }
        false => (amps(watts), amps(watts)),
    };
    if has >= draws {
        return None;
    }
    let severity = if has < wants { Severity::Stop } else { Severity::Query };
    let message = phrase!(
        "`{}` draws {draws} A ({watts} W at {volts} V), and there is a circuit of {has} A",
        asked.fitted.selection.name.value,
        draws,
        watts,
        volts,
        has
    );
    Some(asked.finding(severity, message))
}

/// The share of a cooking appliance of less than 8 3/4 kW that is drawn at once, in percent (NEC Table 220.55, column B,
/// from memory).
const DEMAND_BELOW: u32 = 80;
/// From so many volts on there are three phases.
const THREE_PHASE: u32 = 380;

/// What a cooking appliance is taken to draw at once: the first 10 A, and 30 % of the rest (the usual diversity of
/// household cookers, IET On-Site Guide, from memory).
fn at_once(watts: u32, volts: u32) -> u32 {
    let first = volts.saturating_mul(10).min(watts);
    first.saturating_add((watts - first).saturating_mul(3) / 10)
}

/// A range of 8 3/4 kW or more.
fn range(context: &Context<'_>, asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    let kind = asked.fitted.selection.kind.get()?;
    let watts = needs.watts?.taken();
    let large = kind.is(Trait::Cooks) && watts >= 8_750;
    let least = context.rulings().number(&RANGE_CIRCUIT)?;
    let volts = needs.volts.iter().chain(&there.volts).copied().max().filter(|volts| *volts > 0);
    let drawn = volts.map_or(0, |volts| demand(watts).div_ceil(volts));
    let wants = least.value.max(drawn);
    let has = there.amps.map(Amount::there).filter(|amps| large && *amps < wants)?;
    let message = phrase!(
        "`{}` of {} kW wants a circuit of {wants} A at least, and there is one of {has} A",
        asked.fitted.selection.name.value,
        kilowatts(watts),
        wants,
        has
    );
    Some(asked.finding(least.severity, message).source(least.source))
}

/// The demand of one household range, in watts: 8 kW, and 5 % more for each kilowatt over 12, of which half
/// a one counts as whole (NEC Table 220.55, column C, note 1); never more than its rating.
fn demand(watts: u32) -> u32 {
    let over = watts.saturating_sub(12_000).saturating_add(500) / 1000;
    watts.min(8_000_u32.saturating_add(over.saturating_mul(400)))
}

/// What is plugged into a 15 A or 20 A circuit.
fn plugged(asked: &ServiceNeed<'_, Power>, needs: &Power, there: &Power) -> Option<Remark> {
    let (watts, has) = (needs.watts?.taken(), there.amps.map(Amount::there).filter(|amps| matches!(amps, 15 | 20))?);
    let volts = needs.volts.iter().chain(&there.volts).copied().find(|volts| *volts > 0)?;
    let most = volts.checked_mul(has)?.checked_mul(PLUGGED_SHARE)? / 100;
    if needs.hardwired || watts <= most {
        return None;
    }
    let message = phrase!(
        "`{}` draws {watts} W, more than the {most} W that may be plugged into a circuit of {has} A",
        asked.fitted.selection.name.value,
        watts,
        most,
        has
    );
    Some(asked.finding(Severity::Query, message).source("IRC E3702.3"))
}

fn kilowatts(watts: u32) -> Phrase {
    phrase!("{}.{}", watts / 1000, watts % 1000 / 100)
}

fn list(volts: &[u32]) -> Phrase {
    Phrase::joined(volts.iter().copied(), "/")
}

#[cfg(test)]
mod tests {
    use super::demand;
    use crate::assess::rules::trial::Trial;

    fn range(there: &str, needs: &str) -> Trial {
        Trial::of("service/circuit")
            .opening("hole", &format!("{{takes: range, service: {{power: {there}}}}}"))
            .selection("selection: Range\nkind: range\nplace: hole", &format!("fit: {{needs: {{power: \"{needs}\"}}}}"))
    }

    /// Source: trade reports F-33: an existing 40 A circuit, an induction unit that lists 50 A.
    #[test]
    fn a_circuit_of_40_a_under_a_range_of_50_stops() {
        range("240 V 40 A 14-50", "240 V 50 A 14-50")
            .finds("`Range` needs a circuit of 50 A, and there is one of 40 A")
            .weighs("stop")
            .cautions();
        range("240 V 50 A 14-50", "240 V 50 A 14-50").stays_silent();
        range("240 V 50 A 14-50", "240 V 40 A 14-50").stays_silent();
    }

    /// Source: arithmetic (watts by volts); the diversity of cookers by the IET On-Site Guide, from memory.
    #[test]
    fn watts_come_to_amperes_where_the_sheet_gives_none() {
        let range = |there: &str, needs: &str| range(there, needs).book("country: GB");
        range("230 V 13 A", "230 V 7.4 kW")
            .finds("`Range` draws 33 A (7400 W at 230 V), and there is a circuit of 13 A")
            .weighs("stop")
            .cautions();
        range("230 V 13 A", "230 V, 7400 W").finds_one();
        range("230 V 20 A", "230 V 7.4 kW").finds_one().weighs("query");
        range("230 V 32 A", "230 V 7.3 kW").stays_silent();
        range("400 V 16 A", "400 V 7.4 kW").stays_silent();
        let dryer = |there: &str| {
            Trial::of("service/circuit")
                .opening("hole", &format!("{{takes: dryer, service: {{power: {there}}}}}"))
                .selection("selection: Dryer\nkind: dryer\nplace: hole", "fit: {needs: {power: 240 V 5.6 kW}}")
        };
        dryer("240 V 20 A").finds_one().weighs("stop");
        dryer("240 V 30 A").stays_silent();
    }

    /// Source: IEC 60038 (230 V within a tenth) and ANSI C84.1, from memory: one supply has several names.
    #[test]
    fn one_supply_by_another_name_is_no_other_voltage() {
        for needs in ["220-240 V 16 A", "220–240 V 16 A", "220/240 V 16 A", "240 V 16 A", "220 V 16 A"] {
            range("230 V 16 A", needs).stays_silent();
        }
        range("120 V 15 A", "115 V 12 A").stays_silent();
        range("230 V 16 A", "400 V 16 A").finds("`Range` needs 400 V, and the circuit has 230 V").weighs("stop");
        range("120 V 16 A", "220-240 V 16 A").finds_one().weighs("stop");
    }

    /// Source: trade reports F-33: 8 AWG carries 40 A.
    #[test]
    fn a_wire_that_carries_less_than_its_breaker_is_asked_about() {
        range("'240 V 50 A 14-50, 8 AWG copper'", "240 V 50 A 14-50")
            .finds("the circuit of `Range` is of 50 A, and its wire (`240 V 50 A 14-50, 8 AWG copper`) carries 40 A at most")
            .weighs("query")
            .cautions();
        range("'240 V 50 A 14-50, #10 wire'", "240 V 50 A 14-50").finds_one();
        range("'230 V 32 A, 2.5 mm2 cable'", "230 V 32 A").finds_one();
        range("'240 V, 50 A breaker on 40 A wire'", "240 V 50 A").finds_one().weighs("stop");
        range("'240 V 50 A 14-50, 6 AWG copper'", "240 V 50 A 14-50").stays_silent();
        range("'230 V 32 A, 6 mm² cable'", "230 V 32 A").stays_silent();
    }

    #[test]
    fn a_circuit_of_its_own_is_not_shared() {
        range("'120 V 15 A, shared with the refrigerator'", "120 V 15 A, dedicated")
            .finds_one()
            .weighs("stop")
            .cautions();
        range("'120 V 15 A'", "120 V 15 A, circuit of its own").finds_one().weighs("query");
        range("'120 V 15 A, dedicated'", "120 V 15 A, circuit of its own").stays_silent();
        for own in ["not shared", "own breaker", "circuit to itself", "nothing else on it", "circuit for it only"] {
            range(&format!("'120 V 15 A, {own}'"), "120 V 15 A, dedicated").stays_silent();
        }
        for not_sure in ["one outlet on the kitchen circuit", "own switch", "not shared with the dryer"] {
            range(&format!("'120 V 15 A, {not_sure}'"), "120 V 15 A, dedicated").finds_one().weighs("query");
        }
        range("'120 V 15 A, not on its own circuit'", "120 V 15 A, dedicated").finds_one().weighs("stop");
        // Of one that the sheet does not want alone it is asked whether it carries both.
        range("'120 V 15 A, shared with the refrigerator'", "120 V 15 A").finds_one().weighs("query");
        range("'120 V 20 A, shared with the refrigerator'", "120 V 5 A").stays_silent();
    }

    #[test]
    fn another_voltage_stops_and_one_of_two_will_do() {
        range("120 V 20 A", "240 V 20 A").finds("`Range` needs 240 V, and the circuit has 120 V");
        range("120/240 V 50 A", "240 V 50 A").stays_silent();
    }

    /// Source: check values IR-22: 8 3/4 kW wants 40 A.
    #[test]
    fn a_large_range_wants_40_a_whatever_its_sheet_leaves_out() {
        range("240 V 30 A", "240 V, 8.75 kW")
            .finds("`Range` of 8.7 kW wants a circuit of 40 A at least, and there is one of 30 A")
            .weighs("query");
        range("240 V 30 A", "240 V, 8.7 kW").stays_silent();
        range("240 V 40 A", "240 V, 8.75 kW").stays_silent();
        range("240 V 39 A", "240 V, 8.75 kW").finds_one();
        range("240 V 30 A", "240 V, 11.2 kW").book("codes: {adopts: [NEC 2020]}").finds_one().weighs("stop");
    }

    /// Source: check values IR-23; top check value 18: 12 kW are a demand of 8.0 kW, 14 kW of 8.8 kW (36.7 A at 240 V).
    #[test]
    fn a_very_large_range_wants_a_circuit_for_its_demand() {
        assert_eq!((demand(12_000), demand(14_000)), (8_000, 8_800));
        assert_eq!(demand(14_000) * 10 / 240, 366, "36.7 A, cut off after the tenth");
        range("240 V 40 A", "240 V, 14 kW").stays_silent();
        range("240 V 36 A", "240 V, 14 kW").finds_one();
        range("240 V 40 A", "240 V, 18 kW")
            .finds("`Range` of 18.0 kW wants a circuit of 44 A at least, and there is one of 40 A");
    }

    /// Source: check values IR-24: 16 A of a 20 A circuit, 12 A of a 15 A circuit may be plugged in.
    #[test]
    fn what_is_plugged_in_draws_at_most_four_fifths() {
        range("120 V 20 A", "120 V, 1921 W").finds_one();
        range("120 V 20 A", "120 V, 1920 W").stays_silent();
        range("120 V 15 A", "120 V, 1440 W").stays_silent();
        range("120 V 20 A", "120 V, 2000 W, hardwired").stays_silent();
    }

    #[test]
    fn typography_changes_no_verdict() {
        for there in ["120–240 V 50 A", "120/240\u{a0}V, 50\u{202f}A", "≈240 V, ≥50 A"] {
            range(&format!("'{there}'"), "240 V 50 A").stays_silent();
        }
        range("'120–240 V, ≥40 A'", "240 V 40–50 A").finds("`Range` needs a circuit of 50 A, and there is one of 40 A");
        range("240 V 30 A", "240\u{a0}V, ≥8.75\u{a0}kW").finds_one();
    }

    #[test]
    fn power_of_which_nothing_is_told_is_asked_for() {
        Trial::of("service/circuit")
            .opening("hole", "{takes: range}")
            .selection("selection: Range\nkind: range\nplace: hole", "fit: {needs: {power: 120 V 15 A 5-15}}")
            .finds_one()
            .weighs("query");
    }
}
