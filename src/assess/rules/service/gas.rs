//! Gas at an opening against what the thing takes.

use super::{ServiceNeed, asked, comes_out};
use crate::assess::Context;
use crate::assess::codes::gas::{self, SOURCE, least_size};
use crate::assess::rules::{Check, Findings, declare, judges};
use crate::assess::say;
use crate::assess::words::say_heat;
use crate::book::{Fuel, Service};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::units::Wrote;
use crate::vocabulary::supply::{Amount, Gas, GasKind, is_none};
use crate::vocabulary::{Hazard, Mention};

declare! {
    /// The gas is of another kind, or the branch carries less than the thing takes
    ///
    /// ## What it checks
    /// The kind of gas (a thing for natural gas on a propane supply wants the maker's conversion kit on
    /// the order; where one of the two is not said, it is asked for), whether there is any for what burns gas, and its input against what the branch carries: as the book says, or, where size and
    /// run are given, by the table of the fuel gas code; where nobody says what it carries, that is asked. The run is the longest from meter to outlet, and
    /// a run between two rows takes the longer. A cubic foot counts as 1000 Btu unless the book's `house`
    /// gives the utility's heating value.
    ///
    /// ## Why it matters
    /// A starved burner burns badly and can fill a room with carbon monoxide. A range for the wrong gas
    /// flares.
    ///
    /// ## Remedy
    /// Have a licensed trade run the size that is needed, or order the maker's conversion kit.
    ///
    /// ## Example
    /// ```yaml
    /// service: {gas: "natural gas, 1/2\" pipe, 40 ft"}     # carries 81,000 Btu/h
    /// ```
    ///
    /// ## Source
    /// IFGC Table 402.4(2), IRC Table G2413.4(1): Schedule 40 pipe, natural gas of specific gravity 0.60,
    /// drop of 0.5 in of water; longest-length method, IRC G2413.4.1. Looked up, never computed.
    "service/gas", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: fuelled,
    sources: ["the maker's sheet", "IFGC Table 402.4(2), IRC Table G2413.4(1)", "IRC G2413.4.1"],
    caution: Some(Hazard::Gas),
    Check::Book(check)
}

/// Btu in a cubic foot where the utility's figure is not given: the low end of what suppliers state.
const USUAL_HEATING_VALUE: u32 = 1000;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for asked in asked(context, |needs| &needs.gas, |service| &service.gas) {
        findings.extend(judge(context, &asked));
    }
    findings.extend(context.site.connected().filter_map(|fitted| burns(&fitted)));
}

/// A thing that burns gas, by its fuel or by its name, whose sheet's words nobody wrote down.
fn burns(fitted: &Placement<'_>) -> Option<Remark> {
    let asks = fitted.option.fit.get().is_some_and(|fit| !fit.needs.gas.is_absent());
    let there = &fitted.opening.service.gas;
    let kind = fitted.selection.kind.get()?;
    let fuel = fitted.option.fuel.spanned().map(|fuel| (fuel.value, fuel.span));
    let named = || Some((Fuel::told_by(&fitted.selection.name.value)?, fitted.selection.name.span));
    let (_, at) = fuel.or_else(named).filter(|(fuel, _)| *fuel == Fuel::Gas)?;
    let is_there = there.get().is_some_and(|words| !is_none(&words.words));
    if asks || is_there || there.is_faulty() || !judges::fuelled(*kind) || comes_out(fitted.opening, Service::Gas) {
        return None;
    }
    let (name, opening) = (&fitted.selection.name.value, &fitted.opening.name.value);
    if let Some(denied) = there.spanned() {
        let message = phrase!("`{name}` burns gas, and there is none at the opening `{opening}`", name, opening);
        let finding = fitted.finding(Severity::Stop, denied.span, message).also(at, "burns gas");
        return Some(
            finding
                .remedy("have a licensed trade bring it there before the wall is closed, or choose what does without"),
        );
    }
    let message = phrase!("`{name}` burns gas, and nothing is told of it at the opening `{opening}`", name, opening);
    let finding = fitted.finding(Severity::Query, fitted.opening.span, message).also(at, "burns gas");
    Some(finding.remedy(
        "find out what is there and add it at the opening, `service: {gas: …}`, and what the sheet asks, \
         `fit: {needs: {gas: …}}`",
    ))
}

fn judge(context: &Context<'_>, asked: &ServiceNeed<'_, Gas>) -> Option<Remark> {
    if let Some(absent) = asked.absent(Service::Gas) {
        return Some(absent);
    }
    let there = asked.there?;
    let (needs, there) = (&asked.needs.is, &there.is);
    other_kind(asked, needs, there).or_else(|| too_little(context, asked, needs, there))
}

/// What a thing takes is known, and what the branch carries nobody says.
fn unsaid(asked: &ServiceNeed<'_, Gas>) -> Remark {
    let (name, opening) = (&asked.fitted.selection.name.value, &asked.fitted.opening.name.value);
    let message = phrase!(
        "`{name}` takes gas ({needs}), and nobody says what the branch at the opening `{opening}` carries",
        name,
        Wrote(&asked.needs.words),
        opening
    );
    asked.finding(Severity::Query, message).remedy(
        "have a licensed trade reckon it with all that burns on that branch, and add it to the opening's `gas`: what the \
         branch carries",
    )
}

fn other_kind(asked: &ServiceNeed<'_, Gas>, needs: &Gas, there: &Gas) -> Option<Remark> {
    let (needs, there): (GasKind, GasKind) = match (needs.kind, there.kind) {
        (Some(needs), Some(there)) => (needs, there),
        // A thing is made for gas from the main unless its sheet says otherwise; of a tank it must be known.
        (None, Some(GasKind::Propane)) | (Some(_), None) => return Some(kind_unsaid(asked, needs, there)),
        _ => return None,
    };
    let kit = asked.fitted.option.accessories.iter().any(|with| Mention::ConversionKit.is_in(&with.name.value));
    if needs == there || kit {
        return None;
    }
    let name = &asked.fitted.selection.name.value;
    let message = phrase!("`{name}` is made for {}, and there is {}", name, needs.word(), there.word());
    Some(asked.finding(Severity::Stop, message).remedy(
        "order the maker's conversion kit (under `accessories`, by its name and model), or the model for this gas",
    ))
}

/// Which gas a thing is made for is known, or which gas there is, and not the other.
fn kind_unsaid(asked: &ServiceNeed<'_, Gas>, needs: &Gas, there: &Gas) -> Remark {
    let (name, opening) = (&asked.fitted.selection.name.value, &asked.fitted.opening.name.value);
    let message = match (needs.kind, there.kind) {
        (Some(kind), _) => phrase!(
            "`{name}` is made for {}, and nobody says which gas there is at the opening `{opening}`",
            name,
            kind.word(),
            opening
        ),
        (None, kind) => phrase!(
            "there is {} at the opening `{opening}`, and nobody says for which gas `{name}` is made",
            kind.map_or("gas", GasKind::word),
            opening,
            name
        ),
    };
    let remedy =
        "ask the supplier of gas and the maker's sheet, and write which gas it is: natural gas, or propane or butane";
    asked.finding(Severity::Query, message).remedy(remedy)
}

/// What a branch carries, in Btu an hour: as the book says, or by the table for its size and run.
fn carries(branch: &Gas, heating_value: u32) -> Option<u32> {
    let by_table = || gas::carries(branch.pipe?, branch.run?)?.checked_mul(heating_value);
    branch.btu.map(Amount::there).or_else(by_table)
}

fn too_little(context: &Context<'_>, asked: &ServiceNeed<'_, Gas>, needs: &Gas, there: &Gas) -> Option<Remark> {
    let value = context.book.project.house.heating_value.get().copied().filter(|value| *value > 0);
    let value = value.unwrap_or(USUAL_HEATING_VALUE);
    let takes = needs.btu?.taken();
    let Some(carries) = carries(there, value) else { return Some(unsaid(asked)) };
    if carries >= takes {
        return None;
    }
    let name = &asked.fitted.selection.name.value;
    let units = context.book.project.units;
    let message =
        phrase!("`{name}` takes {}, and the branch carries {}", name, say_heat(takes, units), say_heat(carries, units));
    let wanted = there.run.and_then(|run| least_size(takes.div_ceil(value), run));
    let remedy = wanted.map_or_else(
        || "have a licensed trade run a branch that carries it, or choose what takes less".into(),
        |size| {
            let size = say(size, units);
            phrase!("have a licensed trade run {size} pipe at least, by their own reckoning of the whole system", size)
        },
    );
    // A figure that the book gives is the field's own; the table speaks with the code's word.
    let source = if there.btu.is_some() { "" } else { SOURCE };
    Some(asked.finding(Severity::Stop, message).remedy(remedy).source(source))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(there: &str, needs: &str) -> Trial {
        Trial::of("service/gas")
            .opening("hole", &format!("{{takes: range, service: {{gas: '{there}'}}}}"))
            .selection("selection: Range\nkind: range\nplace: hole", &format!("fit: {{needs: {{gas: '{needs}'}}}}"))
    }

    /// Source: check values IR-25/26, IR-33: 120 cubic feet an hour at 40 ft: 1/2" carries 81, 3/4" carries 170.
    #[test]
    fn a_branch_that_carries_too_little_stops_and_the_size_that_would_do_is_named() {
        range("natural gas, 1/2\" pipe, 40 ft", "natural gas, 120000 Btu/h")
            .finds("`Range` takes 120000 Btu/h, and the branch carries 81000 Btu/h")
            .weighs("stop")
            .cautions()
            .remedies(
                "have a licensed trade run 3/4\" (19 mm) pipe at least, by their own reckoning of the whole system",
            );
        range("natural gas, 3/4\" pipe, 40 ft", "natural gas, 120000 Btu/h").stays_silent();
        range("natural gas, 1/2\" pipe, 45 ft", "natural gas, 73000 Btu/h").finds_one();
        range("natural gas, 1/2\" pipe, 45 ft", "natural gas, 72000 Btu/h").stays_silent();
    }

    /// Source: trade reports F-47 (a range for the wrong gas); facts.md, law 4.
    #[test]
    fn which_gas_it_is_is_asked_where_one_side_alone_says_it() {
        range("LPG, carries 70000 Btu/h", "mains gas, 51000 Btu/h").finds_one().weighs("stop").cautions();
        range("mains gas, carries 70000 Btu/h", "LPG, 51000 Btu/h").finds_one().weighs("stop");
        range("propane, carries 70000 Btu/h", "51000 Btu/h")
            .finds("there is propane or butane at the opening `hole`, and nobody says for which gas `Range` is made")
            .weighs("query")
            .cautions();
        range("town gas, carries 70000 Btu/h", "natural gas, 51000 Btu/h")
            .finds("`Range` is made for natural gas, and nobody says which gas there is at the opening `hole`")
            .weighs("query");
        range("natural gas, carries 70000 Btu/h", "51000 Btu/h").stays_silent();
    }

    #[test]
    fn what_burns_gas_wants_gas_though_its_sheet_s_words_are_not_written() {
        let burns = |name: &str, lines: &str, service: &str| {
            Trial::of("service/gas")
                .opening("hole", &format!("{{takes: range, service: {{{service}}}}}"))
                .selection(&format!("selection: {name}\nkind: range\nplace: hole"), lines)
        };
        burns("Range", "fuel: gas", "power: 120 V 15 A")
            .finds("`Range` burns gas, and nothing is told of it at the opening `hole`")
            .weighs("query")
            .cautions();
        burns("Gas range", "", "power: 120 V 15 A").finds_one();
        burns("Range", "fuel: gas", "gas: none").finds_one().weighs("stop");
        burns("Range", "fuel: gas", "gas: 'natural gas, carries 70000 Btu/h'").stays_silent();
        burns("Gas range", "fuel: induction", "power: 240 V 50 A").stays_silent();
        burns("Range", "", "power: 240 V 50 A").stays_silent();
    }

    /// A branch is sized by what it carries (IFGC 402.3, from memory): where the sheet gives the input and nobody says
    /// what the branch carries, that is asked, and a kind alone is no answer.
    #[test]
    fn what_the_branch_carries_is_asked_for_where_the_sheet_gives_the_input() {
        for (there, needs) in [
            ("natural gas", "natural gas, 51,000 Btu/h"),
            ("yes", "51 kBtu/h"),
            ("natural gas, 1/2\" pipe", "natural gas, 51000 Btu/h"),
            ("gas natural", "gas natural, 11 kW"),
            ("natural gas, 22 mm pipe, 12 m", "natural gas, 11 kW"),
        ] {
            range(there, needs).finds_one().weighs("query").cautions();
        }
        range("natural gas", "natural gas, 51,000 Btu/h").finds(
            "`Range` takes gas (natural gas, 51,000 Btu/h), and nobody says what the branch at the opening `hole` carries",
        );
        for (there, needs) in [
            ("natural gas, branch carries 65 kBtu/h", "natural gas, 51,000 Btu/h"),
            ("natural gas, 1/2\" pipe, 40 ft", "natural gas, 51,000 Btu/h"),
            ("gas natural, 15 kW", "gas natural, 11 kW"),
            ("natural gas", "natural gas"),
        ] {
            range(there, needs).stays_silent();
        }
    }

    /// Source: 1 Btu (IT) an hour is 0.293 071 W (ISO 31-4, from memory).
    #[test]
    fn in_a_metric_book_heat_is_told_in_kilowatts() {
        range("natural gas, 10 kW", "natural gas, 11.5 kW")
            .metric()
            .finds("`Range` takes 11.5 kW, and the branch carries 10 kW");
    }

    /// What comes in bottles is no gas of the main, whatever it is called.
    #[test]
    fn butane_is_no_natural_gas() {
        for bottled in ["butano", "butane bottle", "GLP", "G30", "bombona"] {
            range(bottled, "gas natural, 9 kW")
                .finds("`Range` is made for natural gas, and there is propane or butane");
            range(bottled, "GLP").stays_silent();
        }
        range("G20, 15 kW", "natural gas, 9 kW").stays_silent();
        range("G20, 15 kW", "butane, 9 kW").finds_one();
    }

    /// Source: check values IR-35: 60 000 Btu/h are 60 cubic feet at 1000 Btu, 54.5 at 1100.
    #[test]
    fn the_utility_s_heating_value_counts_where_the_book_gives_it() {
        range("natural gas, 1/2\" pipe, 80 ft", "natural gas, 60000 Btu/h").finds_one();
        range("natural gas, 1/2\" pipe, 80 ft", "natural gas, 60000 Btu/h")
            .book("house: {heating value: 1100}")
            .stays_silent();
    }

    /// Source: trade reports F-47: wrong gas type; a kit is needed for LP.
    #[test]
    fn a_range_for_natural_gas_on_propane_wants_its_kit_ordered() {
        let propane = |more: &str| {
            Trial::of("service/gas")
                .opening("hole", "{takes: range, service: {gas: 'propane tank, branch carries 65000 Btu/h'}}")
                .selection(
                    "selection: Range\nkind: range\nplace: hole",
                    &format!("fit: {{needs: {{gas: 'natural gas, 50000 Btu/h'}}}}\n{more}"),
                )
        };
        propane("").finds("`Range` is made for natural gas, and there is propane or butane").weighs("stop");
        propane("accessories: [{name: LP conversion kit}]").stays_silent();
    }
}
