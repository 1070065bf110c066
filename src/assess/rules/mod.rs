//! The rules: one file a rule, listed here.
//!
//! To add one, write `FAMILY/NAME.rs` with its documentation, facts, check and tests, and add its
//! two lines here. `explain`, the office's pages and the SARIF catalogue follow from the list.

use std::collections::HashMap;
use std::sync::LazyLock;

use crate::finding::Hazard;
use crate::finding::{Code, Finding, Severity};
use crate::units::System;

use super::context::Context;

mod approve;
mod clear;
mod complete;
mod depends;
mod due;
pub mod examples;
mod findings;
mod finish;
mod fit;
mod guarded;
pub mod judges;
mod light;
mod money;
mod order;
mod prose;
mod run;
mod service;
mod source;
mod store;
mod top;
mod waive;

pub use due::{Due, for_thing};
pub use findings::Findings;

#[cfg(test)]
mod remedies;
#[cfg(test)]
pub(crate) mod trial;

/// Every rule, in the order in which the families are told.
pub const RULES: &[Rule] = &[
    source::syntax::RULE,
    source::unknown_key::RULE,
    source::wrong_type::RULE,
    source::bare_length::RULE,
    source::duplicate::RULE,
    source::tag::RULE,
    source::unknown_name::RULE,
    source::outside_book::RULE,
    source::too_large::RULE,
    source::stray::RULE,
    source::unchecked::RULE,
    source::unportable::RULE,
    source::geometry::RULE,
    source::contradiction::RULE,
    complete::field::RULE,
    complete::opening::RULE,
    complete::cut_sheet::RULE,
    complete::measured::RULE,
    complete::undecided::RULE,
    complete::accessory::RULE,
    complete::alike::RULE,
    complete::ahead::RULE,
    complete::datum::RULE,
    complete::site::RULE,
    complete::photo::RULE,
    complete::language::RULE,
    fit::width::RULE,
    fit::length::RULE,
    fit::height::RULE,
    fit::depth::RULE,
    fit::play::RULE,
    fit::square::RULE,
    fit::air::RULE,
    fit::face::RULE,
    fit::cabinet::RULE,
    fit::door::RULE,
    fit::clash::RULE,
    fit::projection::RULE,
    fit::way_in::RULE,
    fit::below::RULE,
    fit::holes::RULE,
    fit::reach::RULE,
    fit::pair::RULE,
    fit::panel::RULE,
    fit::recess::RULE,
    fit::rough_in::RULE,
    fit::sink::RULE,
    fit::stand_up::RULE,
    service::circuit::RULE,
    service::receptacle::RULE,
    service::zone::RULE,
    service::gas::RULE,
    service::water::RULE,
    service::drain::RULE,
    service::duct::RULE,
    service::exhaust::RULE,
    service::make_up_air::RULE,
    service::receptacles::RULE,
    service::boxes::RULE,
    clear::above_cooktop::RULE,
    clear::beside_cooktop::RULE,
    clear::hood::RULE,
    clear::glazing::RULE,
    clear::doorway::RULE,
    clear::work_aisle::RULE,
    clear::walkway::RULE,
    clear::triangle::RULE,
    clear::landing::RULE,
    clear::prep::RULE,
    clear::frontage::RULE,
    clear::dishwasher::RULE,
    clear::microwave::RULE,
    clear::seating::RULE,
    clear::toilet::RULE,
    clear::lavatory::RULE,
    clear::shower::RULE,
    clear::bath_floor::RULE,
    clear::headroom::RULE,
    clear::access::RULE,
    clear::door_swing::RULE,
    run::sum::RULE,
    run::filler::RULE,
    run::ceiling::RULE,
    run::ends::RULE,
    top::overhang::RULE,
    top::span::RULE,
    top::slab::RULE,
    top::corner::RULE,
    top::seats::RULE,
    top::template_ready::RULE,
    light::count::RULE,
    light::spacing::RULE,
    light::height::RULE,
    light::drop::RULE,
    light::level::RULE,
    light::bath_zone::RULE,
    light::r#match::RULE,
    store::deep_shelf::RULE,
    store::bins::RULE,
    finish::family::RULE,
    finish::hand::RULE,
    finish::thickness::RULE,
    finish::edge::RULE,
    finish::joint::RULE,
    finish::hardware::RULE,
    order::late::RULE,
    order::soon::RULE,
    order::sequence::RULE,
    order::before::RULE,
    order::quantity::RULE,
    order::expired::RULE,
    order::unchecked::RULE,
    order::received::RULE,
    order::claim::RULE,
    order::supplier::RULE,
    money::allowance::RULE,
    money::currency::RULE,
    money::arithmetic::RULE,
    depends::circle::RULE,
    approve::waiting::RULE,
    approve::one_of_two::RULE,
    approve::conflict::RULE,
    approve::sent_back::RULE,
    approve::condition::RULE,
    approve::stale::RULE,
    approve::depends::RULE,
    approve::unsigned::RULE,
    approve::unwritten::RULE,
    approve::terms::RULE,
    approve::moment::RULE,
    approve::reading::RULE,
    approve::delivery::RULE,
    approve::came::RULE,
    approve::keys::RULE,
    approve::ledger::RULE,
    waive::expired::RULE,
    waive::orphan::RULE,
];

/// A rule.
#[derive(Debug)]
pub struct Rule {
    /// Its code: family and fault, such as `fit/width`.
    pub code: Code,
    /// Its usual weight.
    pub severity: Severity,
    /// By when what it finds must be settled.
    pub due: Due,
    /// Whom it tells besides the office.
    pub tells: &'static [Reader],
    /// What living with what it finds means, for the client whom it tells: the key of a sentence of the pages.
    pub living: Option<&'static str>,
    /// Its page: what it checks, why it matters, remedy, example, source; a length stands in its prose as `{15"}`.
    pub docs: &'static str,
    /// Which kinds it judges.
    pub judges: judges::Judges,
    /// The published sources of its figures, or `common practice`, or `from memory`.
    pub sources: &'static [&'static str],
    /// What can hurt someone here, and whose word counts; a waiver never removes it.
    pub caution: Option<Hazard>,
    /// How what it finds is mended, where it says nothing else.
    pub remedy: Option<&'static str>,
    /// How it is checked.
    pub check: Check,
}

/// Who reads pages besides the office, which is told everything.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reader {
    /// Those who decide and pay, and will live with it: what that means is told in plain words, where the
    /// designer lets it be told. What does not fit stands beside each option; what the firm has still to do is
    /// the office's.
    Client,
    /// Those who measure and fit.
    Installer,
}

impl Reader {
    /// What they are called.
    pub fn word(self) -> &'static str {
        match self {
            Self::Client => "client",
            Self::Installer => "installer",
        }
    }
}

/// How a rule is checked.
#[derive(Clone, Copy, Debug)]
pub enum Check {
    /// While the files are read.
    Reading,
    /// On the book that was read.
    Book(fn(&Context<'_>, &mut Findings<'_>)),
    /// On the book's waivers, when all else is found.
    OfWaivers,
}

impl Rule {
    /// The findings of this rule on a book.
    pub fn run(&self, context: &Context<'_>) -> Vec<Finding> {
        match self.check {
            Check::Book(check) => {
                let units = context.book.project.units;
                let found = guarded::run(self, |findings| check(context, findings));
                found.into_iter().map(|found| Finding { remark: found.remark.in_units(units), ..found }).collect()
            }
            Check::Reading | Check::OfWaivers => vec![],
        }
    }

    /// Its page in these units: its figures, and its examples.
    pub fn page(&self, units: System) -> String {
        examples::in_units(&prose::filled(self.docs, units), units)
    }

    /// The fault in a phrase: the first line of its page.
    pub fn summary(&self) -> &'static str {
        self.docs.trim().lines().next().unwrap_or("").trim()
    }
}

/// The rule of the code that is written so.
pub fn rule(code: &str) -> Option<&'static Rule> {
    static BY_CODE: LazyLock<HashMap<&str, &Rule>> =
        LazyLock::new(|| RULES.iter().map(|rule| (rule.code.text(), rule)).collect());
    BY_CODE.get(code).copied()
}

/// The rule of that code; none for a code that no rule declares.
pub fn of(code: Code) -> Option<&'static Rule> {
    rule(code.text())
}

/// The codes that pages tell in figures of their own.
pub const WIDTH: Code = fit::width::RULE.code;
/// See [`WIDTH`].
pub const HEIGHT: Code = fit::height::RULE.code;
/// See [`WIDTH`].
pub const DEPTH: Code = fit::depth::RULE.code;

/// The rules of power and of air that is blown or drawn: whoever brings those is told of them.
pub const OF_WIRES_AND_AIR: [Code; 8] = [
    service::circuit::RULE.code,
    service::receptacle::RULE.code,
    service::receptacles::RULE.code,
    service::boxes::RULE.code,
    service::zone::RULE.code,
    service::duct::RULE.code,
    service::exhaust::RULE.code,
    service::make_up_air::RULE.code,
];
/// The rules of gas, of water and of what drains: likewise.
pub const OF_PIPES: [Code; 4] =
    [service::gas::RULE.code, service::water::RULE.code, service::drain::RULE.code, service::zone::RULE.code];

/// Whether a waiver may set a rule's findings aside: never what can't be read, and never the record.
pub fn can_be_waived(code: Code) -> bool {
    of(code).is_some_and(|rule| rule.due != Due::AtOnce)
}

/// Declares a rule: its doc comment is rustdoc and the page that `explain` shows.
macro_rules! rule {
    (@due AtOnce) => { crate::assess::rules::Due::AtOnce };
    (@due WithThing) => { crate::assess::rules::Due::WithThing };
    (@due WhenSet) => { crate::assess::rules::Due::WhenSet };
    (@judges) => { crate::assess::rules::judges::nothing };
    (@judges $judges:ident) => { crate::assess::rules::judges::$judges };
    (@judges [$($kind:ident),+]) => { |kind| matches!(kind, $(crate::vocabulary::Kind::$kind)|+) };
    (@said) => { None };
    (@said $said:literal) => { Some($said) };
    (@due $point:ident) => { crate::assess::rules::Due::By(crate::vocabulary::HoldPoint::$point) };
    ($(#[doc = $docs:literal])+ $code:literal, $severity:ident, due: $due:ident, tells: [$($reader:ident),*], $(living: $living:literal,)? $(judges: $judges:tt,)? sources: [$($source:literal),* $(,)?], caution: $caution:expr, $(remedy: $remedy:literal,)? Check::$($check:tt)+) => {
        $(#[doc = $docs])+
        pub const RULE: crate::assess::rules::Rule = crate::assess::rules::Rule {
            code: crate::finding::Code::declared($code),
            severity: crate::finding::Severity::$severity,
            due: crate::assess::rules::declare!(@due $due),
            tells: &[$(crate::assess::rules::Reader::$reader),*],
            living: crate::assess::rules::declare!(@said $($living)?),
            judges: crate::assess::rules::declare!(@judges $($judges)?),
            docs: concat!($($docs, "\n"),+),
            sources: &[$($source),*],
            caution: $caution,
            remedy: crate::assess::rules::declare!(@said $($remedy)?),
            check: Check::$($check)+,
        };
    };
}
pub(crate) use rule as declare;

#[cfg(test)]
mod tests {
    use super::*;

    /// The headings of a rule's page, in order.
    const HEADINGS: [&str; 5] = ["## What it checks", "## Why it matters", "## Remedy", "## Example", "## Source"];

    #[test]
    fn every_rule_has_a_page_with_the_fixed_headings_in_order() {
        for rule in RULES {
            let at: Vec<_> = HEADINGS.iter().map(|heading| rule.docs.find(heading)).collect();
            assert!(at.iter().all(Option::is_some) && at.is_sorted(), "{}", rule.code);
            assert!(!rule.sources.is_empty(), "{} names no source", rule.code);
            assert!(!rule.summary().is_empty() && rule.summary().len() < 90, "{}", rule.code);
        }
    }

    /// Who reads a page can open what it cites: reports that only we have are common practice to others.
    #[test]
    fn no_page_cites_what_an_outsider_cannot_open() {
        let is_row = |word: &str| {
            let parts = word.trim_matches(|letter: char| !letter.is_alphanumeric()).split_once('-');
            parts.is_some_and(|(row, number)| {
                row.len() < 3 && row.chars().all(|letter| letter.is_ascii_uppercase()) && number.parse::<u32>().is_ok()
            })
        };
        for rule in RULES {
            assert!(!rule.docs.to_lowercase().contains("trade report"), "{}", rule.code);
            let source = rule.docs.split_once("## Source").map_or("", |(_, source)| source);
            let row =
                rule.sources.iter().copied().chain([source]).flat_map(str::split_whitespace).find(|word| is_row(word));
            assert_eq!(row, None, "{}", rule.code);
        }
    }

    #[test]
    fn codes_are_unique_and_say_where_the_file_is() {
        let mut codes: Vec<_> = RULES.iter().map(|rule| rule.code.text()).collect();
        codes.sort_unstable();
        let count = codes.len();
        codes.dedup();
        assert_eq!(codes.len(), count);
        let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/assess/rules");
        for code in &codes {
            let file = root.join(format!("{}.rs", code.replace('-', "_")));
            assert!(file.is_file(), "`{code}` is not in {}", file.display());
        }
        for family in std::fs::read_dir(&root).unwrap().map(|entry| entry.unwrap().path()).filter(|path| path.is_dir())
        {
            for file in std::fs::read_dir(&family).unwrap().map(|entry| entry.unwrap().path()) {
                let (family, stem) =
                    (family.file_name().unwrap().to_str().unwrap(), file.file_stem().unwrap().to_str().unwrap());
                let code = format!("{family}/{}", stem.replace('_', "-"));
                let is_rule = !matches!(stem, "mod" | "tests");
                assert!(!is_rule || codes.contains(&code.as_str()), "add `{family}::{stem}::RULE` to RULES");
            }
        }
    }
}
