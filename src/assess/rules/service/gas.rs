//! Gas at an opening against what the thing takes.

mod valve;

use super::{ServiceNeed, asked, comes_out};
use crate::assess::Context;
use crate::assess::codes::gas::{self, SOURCE, least_size};
use crate::assess::rules::{Check, Findings, declare, judges};
use crate::assess::say;
use crate::assess::words::say_heat;
use crate::book::{Fuel, Service};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::units::{Length, Wrote};
use crate::vocabulary::supply::{Amount, Both, Gas, GasKind, is_none};
use crate::vocabulary::{Hazard, Mention};

declare! {
    /// The gas is of another kind, or the branch carries less than the thing takes
    ///
    /// ## What it checks
    /// The kind of gas (a thing for natural gas on a propane supply wants the maker's conversion kit on
    /// the order; where one of the two is not said, it is asked for), whether there is any for what burns gas, and its input against what the branch carries: as the book says, or, where size and
    /// run are given, by the table of the fuel gas code; where nobody says what it carries, that is asked. The run is the longest from meter to outlet, and
    /// a run between two rows takes the longer. A cubic foot counts as 1000 Btu unless the book's `house`
    /// gives the utility's heating value. The table is of steel pipe, and of a branch that serves one thing: for tubing,
    /// copper, or a branch that is shared, it asks; so it does where the sheet's input can't be understood. And the valve that
    /// shuts it: where the words say that there is none, or where the sheet asks for one and nobody tells of it.
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
    /// drop of 0.5 in of water; longest-length method, IRC G2413.4.1. Looked up, never computed. That each appliance has its
    /// valve, IRC G2420.5, from memory.
    "service/gas", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: fuelled,
    sources: ["the maker's sheet", "IFGC Table 402.4(2), IRC Table G2413.4(1)", "IRC G2413.4.1", "IRC G2420.5 (from memory)"],
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
    findings.extend(context.site.connected().filter_map(|fitted| valve::judge(&fitted)));
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
    other_kind(asked, needs, there)
        .or_else(|| too_little(context, asked, needs, there))
        .or_else(|| narrower(context, asked, needs, there))
}

/// The branch is a smaller pipe than the sheet names.
fn narrower(context: &Context<'_>, asked: &ServiceNeed<'_, Gas>, sheet: &Gas, branch: &Gas) -> Option<Remark> {
    let (needs, there) = (sheet.pipe?, branch.pipe?);
    let say = |length| say(length, context.book.project.units);
    let name = &asked.fitted.selection.name.value;
    let message = phrase!(
        "the sheet of `{name}` asks for a gas pipe of {}, and the branch is one of {}",
        name,
        say(needs),
        say(there)
    );
    (there + NAMED_ALIKE < needs).then(|| {
        asked
            .finding(Severity::Query, message)
            .remedy("have a licensed trade size the branch, by the maker's sheet and the code, before it is closed in")
    })
}

/// Pipes of one nominal size are called so much apart in inches and in millimetres (1/2 and DN 15, from memory).
const NAMED_ALIKE: Length = Length::from_millimetres(3);

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

fn other_kind(asked: &ServiceNeed<'_, Gas>, sheet: &Gas, branch: &Gas) -> Option<Remark> {
    if sheet.both == Some(Both::Either) {
        return None;
    }
    let (needs, there): (GasKind, GasKind) = match (sheet.kind, branch.kind) {
        (Some(needs), Some(there)) => (needs, there),
        // A thing is made for gas from the main unless its sheet says otherwise; of a tank it must be known.
        (None, Some(GasKind::Propane)) | (Some(_), None) => return Some(kind_unsaid(asked, sheet, branch)),
        _ => return None,
    };
    let kit = asked.fitted.option.accessories.iter().any(|with| Mention::ConversionKit.is_in(&with.name.value));
    if needs == there || kit || sheet.both == Some(Both::KitComes) {
        return None;
    }
    let name = &asked.fitted.selection.name.value;
    if sheet.both == Some(Both::Convertible) {
        let message = phrase!("`{name}` can be converted to {}, and nothing orders the kit", name, there.word());
        return Some(asked.finding(Severity::Query, message).remedy(
            "order the maker's conversion kit (under `accessories`, by its name and model), and have a licensed trade fit it",
        ));
    }
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

/// What a branch carries, in Btu an hour: as the book says, or by the table of steel for its size and run.
fn carries(branch: &Gas, heating_value: u32) -> Option<u32> {
    let by_table = || gas::carries(branch.pipe?, branch.run?)?.checked_mul(heating_value);
    branch.btu.map(Amount::there).or_else(|| if branch.other_pipe { None } else { by_table() })
}

/// What the sheet says that it takes can be understood in no way, or in more than one.
fn input_unsaid(asked: &ServiceNeed<'_, Gas>) -> Remark {
    let name = &asked.fitted.selection.name.value;
    let message = phrase!(
        "how much gas `{name}` takes can't be understood from its sheet's words: `{}`",
        name,
        Wrote(&asked.needs.words)
    );
    asked.finding(Severity::Query, message).remedy(
        "write the input of the whole appliance with its unit, as its rating plate has it: `total 65000 Btu/h`, `19 kW`",
    )
}

/// More than this thing is on the branch, and nobody says what is left for it.
fn shared(asked: &ServiceNeed<'_, Gas>) -> Remark {
    let (name, opening) = (&asked.fitted.selection.name.value, &asked.fitted.opening.name.value);
    let message = phrase!(
        "the branch at the opening `{opening}` serves more than `{name}`, and nobody says what it carries for it alone",
        opening,
        name
    );
    asked.finding(Severity::Query, message).remedy(
        "have a licensed trade reckon the branch with all that burns on it, and write in the opening's `gas` the one \
         figure that it carries for this thing",
    )
}

fn too_little(context: &Context<'_>, asked: &ServiceNeed<'_, Gas>, needs: &Gas, there: &Gas) -> Option<Remark> {
    let value = context.book.project.house.heating_value.get().copied().filter(|value| *value > 0);
    let value = value.unwrap_or(USUAL_HEATING_VALUE);
    if needs.unclear {
        return Some(input_unsaid(asked));
    }
    let Some(takes) = needs.btu.map(Amount::taken) else {
        return carries(there, value).map(|_| input_unsaid(asked));
    };
    let Some(carries) = carries(there, value) else { return Some(unsaid(asked)) };
    if carries >= takes {
        return (there.shared || there.unclear).then(|| shared(asked));
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
mod tests;
