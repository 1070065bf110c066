//! Services whose words say nothing that a thing's needs can be held against.

use crate::book::{Needs, Service, Services, Slot};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::units::Wrote;
use crate::vocabulary::supply::{Duct, Gas, InWords, Power, Valve, Water, Worded, is_none};
use crate::vocabulary::{Hazard, Words};

/// A service: its key, what is to be written of it, and what of it can hurt.
struct Asks<T> {
    key: Service,
    needs: fn(&Needs) -> &Slot<Worded<T>>,
    there: fn(&Services) -> &Slot<Worded<T>>,
    how: &'static str,
    hazard: Hazard,
}

const POWER: Asks<Power> = Asks {
    key: Service::Power,
    needs: |needs| &needs.power,
    there: |service| &service.power,
    how: "volts, amperes and the receptacle",
    hazard: Hazard::Power,
};
const GAS: Asks<Gas> = Asks {
    key: Service::Gas,
    needs: |needs| &needs.gas,
    there: |service| &service.gas,
    how: "the kind of gas, and what the branch carries or its size and length",
    hazard: Hazard::Gas,
};
const WATER: Asks<Water> = Asks {
    key: Service::Water,
    needs: |needs| &needs.water,
    there: |service| &service.water,
    how: "its size, hot or cold, and whether it has a shut-off",
    hazard: Hazard::Water,
};
const DUCT: Asks<Duct> = Asks {
    key: Service::Duct,
    needs: |needs| &needs.duct,
    there: |service| &service.duct,
    how: "its size and length",
    hazard: Hazard::Air,
};

/// What is to be written so that it can be understood, of each service of a thing.
pub fn ask(fitted: &Placement<'_>) -> impl Iterator<Item = Remark> {
    let needs = fitted.option.fit.get().map(|fit| &fit.needs);
    // Of a shut-off that nobody tells, `service/water` speaks.
    let has_valve = needs.and_then(|needs| needs.water.get()).is_some_and(|water| water.is.valve == Some(Valve::There));
    let water = if has_valve { None } else { at_opening(fitted, &WATER) };
    [at_opening(fitted, &POWER), at_opening(fitted, &GAS), water, at_opening(fitted, &DUCT)].into_iter().flatten()
}

/// The sheet is exact, and nothing that is written at the opening can be held against it.
fn at_opening<T: InWords + Default + PartialEq>(fitted: &Placement<'_>, service: &Asks<T>) -> Option<Remark> {
    let needs = (service.needs)(&fitted.option.fit.get()?.needs).spanned()?;
    let there = (service.there)(&fitted.opening.service).spanned()?;
    // What is told not to be there is told by the rule of the service.
    if !needs.is_understood() || there.is_understood() || is_none(&there.words) {
        return None;
    }
    let Asks { key, how, .. } = service;
    let message = phrase!(
        "`{}` needs {key} ({}), and what is written of it at the opening `{}` can't be understood: `{}`",
        fitted.selection.name.value,
        key.word(),
        Wrote(&needs.words),
        fitted.opening.name.value,
        there.words
    );
    let finding = fitted.finding(Severity::Query, there.span, message).also(needs.span, "needs this");
    let finding =
        finding.remedy(phrase!("write at the opening what is there, `service: {{{key}: …}}`: {how}", key.word(), how));
    Some(Remark { caution: Some(service.hazard), ..finding })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(service: &str, needs: &str) -> Trial {
        Trial::of("complete/site")
            .opening("range", &format!("{{takes: range, above: nothing, service: {{{service}}}}}"))
            .selection("selection: Range\nkind: range\nplace: range", &format!("fit: {{needs: {{{needs}}}}}"))
    }

    #[test]
    fn words_that_say_nothing_of_what_the_sheet_is_exact_about_are_asked_again() {
        range("power: as the old one", "power: 240 V 40 A")
            .finds("`Range` needs power (240 V 40 A), and what is written of it at the opening `range` can't be understood: `as the old one`")
            .weighs("query")
            .cautions()
            .remedies("write at the opening what is there, `service: {power: …}`: volts, amperes and the receptacle");
        range("gas: 'yes'", "gas: 'natural gas, 51000 Btu/h'").finds_one();
        range("water: existing", "water: 3/8\" hot").finds_one();
        range("water: existing", "water: 3/8\" hot with shut-off").stays_silent();
        range("duct: as before", "duct: 8\" round").finds_one();
    }

    #[test]
    fn words_that_are_understood_in_part_or_that_nothing_asks_about_stay() {
        range("power: 40 A", "power: 240 V 40 A").stays_silent();
        range("power: as the old one", "power: as the sheet says").stays_silent();
        range("power: as the old one", "gas: 'natural gas, 51000 Btu/h'").stays_silent();
    }

    /// A receptacle is not asked for besides, where nothing of the power is understood.
    #[test]
    fn nobody_is_asked_twice() {
        range("power: as the old one", "power: 240 V 50 A 14-50").finds_one();
    }
}
