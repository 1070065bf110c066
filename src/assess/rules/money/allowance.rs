//! What is chosen against what the contract allows.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Allowance, Amounts, Context, WithTax};
use crate::book::{Allowed, Book};
use crate::finding::{Phrase, Remark, phrase};
use crate::units::Money;
use crate::vocabulary::{Mention, words_of};

declare! {
    /// What is chosen comes to more than its allowance
    ///
    /// ## What it checks
    /// Each allowance against what draws on it: the settled options first; then those with the least
    /// that the open ones can add. The finding says by how much, and whether anybody wrote down what
    /// the allowance is to pay for (delivery, tax, hook-up).
    /// One that is to pay for tax too (`includes: delivery and tax`) is held against prices with their tax.
    /// What an allowance that something draws on is to pay for besides the things is asked at once, where
    /// it does not say `includes`.
    ///
    /// ## Why it matters
    /// An allowance is a guess that the client takes for a price. A family that allows 5,000 and
    /// chooses 8,000 wants to know on the evening of the choice, not from the last invoice.
    ///
    /// ## Remedy
    /// Show it to those who pay; choose something else, or agree the difference in writing. Say with
    /// `includes` what the allowance is to pay for.
    ///
    /// ## Example
    /// ```yaml
    /// allowances:
    ///   cabinets: {amount: 5000, includes: delivery}     # and a kitchen for 8,000 is chosen
    /// ```
    ///
    /// ## Source
    /// Trade practice: a running balance for each allowance, and a word on what it includes.
    "money/allowance", Query,
    due: GoodsOrdered, tells: [],
    judges: each,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let amounts = Amounts::of(context.book);
    for (name, allowance) in &amounts.allowances {
        let Some(written) = context.book.project.allowances.called(name) else { continue };
        let Some(message) = over(context.book, name, (allowance, written)) else {
            findings.extend(unsaid(context, name, written));
            continue;
        };
        let finding = Remark::query(written.name.span, message);
        let mut remedy =
            Phrase::from("show it to those who pay; choose something else, or agree the difference in writing");
        if written.includes.is_absent() {
            remedy = remedy.then("; and say with `includes` what the allowance is to pay for");
        }
        findings.push(finding.remedy(remedy));
    }
}

/// What an allowance is to pay for is asked at once, while nothing is over.
fn unsaid(context: &Context<'_>, name: &str, written: &Allowed) -> Option<Remark> {
    let drawn =
        context.book.selections().any(|(_, selection)| selection.allowance.get().is_some_and(|own| own == name));
    if !drawn || !written.includes.is_absent() {
        return None;
    }
    let message = phrase!("nobody says what the allowance `{name}` is to pay for besides the things", name);
    let finding = Remark::query(written.name.span, message).source("common practice");
    Some(finding.remedy("add `includes`: delivery, tax, fitting, or `nothing else`"))
}

fn over(book: &Book, name: &str, (allowance, written): (&Allowance, &Allowed)) -> Option<Phrase> {
    let allowed = allowance.allowed;
    let taxed = written.includes.get().is_some_and(|words| pays_for_tax(words)) && book.project.tax.get().is_some();
    let due = |sum: Money| if taxed { WithTax::of(book, sum).total } else { Some(sum) };
    let with = if taxed { " with its tax" } else { "" };
    if let Some(over) = above(allowed, allowance.due.settled.and_then(due)) {
        return Some(phrase!(
            "what is chosen is{with} {over} over the allowance `{name}` of {allowed}",
            with,
            over,
            name,
            allowed
        ));
    }
    let settled = allowance.due.settled.unwrap_or(Money::zero(allowed.currency));
    let least = settled.checked_add(allowance.due.open_least?).ok().and_then(due);
    let over = above(allowed, least)?;
    Some(phrase!(
        "the allowance `{name}` of {allowed} can't be kept: with the least of what is open it is{with} {over} over",
        name,
        allowed,
        with,
        over
    ))
}

/// Whether an allowance is to pay for tax, by its words, which say it in one way: `delivery and tax`, and not
/// `before tax`.
fn pays_for_tax(includes: &str) -> bool {
    let parts = includes.split([',', ';', '+', '&']).flat_map(|part| part.split(" and "));
    let parts = parts.flat_map(|part| part.split(" y ")).flat_map(|part| part.split(" e "));
    let parts = parts.flat_map(|part| part.split(" und "));
    parts.map(words_of).any(|words| {
        let is_tax = |word: &String| Mention::Tax.is_in(word);
        let goes_with_it = |word: &String| BESIDE_TAX.contains(&word.as_str()) || is_tax(word);
        words.iter().any(is_tax) && words.iter().all(goes_with_it)
    })
}

/// What may stand beside the word itself.
const BESIDE_TAX: [&str; 9] = ["sales", "use", "state", "local", "all", "the", "its", "el", "los"];

fn above(allowed: Money, due: Option<Money>) -> Option<Money> {
    let over = due?.checked_sub(allowed).ok()?;
    (over.minor > 0).then_some(over)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn cabinets(price: &str) -> Trial {
        Trial::of("money/allowance")
            .book("allowances: {cabinets: {amount: 5000, includes: delivery}}")
            .selection(&format!("selection: Cabinets\nkind: cabinet\nallowance: cabinets\n{price}"), "quantity: 1")
    }

    /// Source: trade reports F-107: 5,000 allowed, 8,000 picked.
    #[test]
    fn a_kitchen_past_its_allowance_is_told_with_how_much() {
        cabinets("price: 8000").finds("what is chosen is $3,000.00 over the allowance `cabinets` of $5,000.00");
        cabinets("price: 5000").stays_silent();
        cabinets("price: 5000.01").finds_one().weighs("query");
    }

    #[test]
    fn an_allowance_that_no_open_option_keeps_is_told_before_the_choice() {
        let open = |least: u32| format!("options: [{{id: a, price: {least}}}, {{id: b, price: 15000}}]");
        cabinets(&open(8000)).finds(
            "the allowance `cabinets` of $5,000.00 can't be kept: with the least of what is open it is $3,000.00 over",
        );
        cabinets(&open(4800)).stays_silent();
    }

    /// Source: trade reports F-106: what it includes is asked before anything is over.
    #[test]
    fn what_an_allowance_includes_is_asked_at_once() {
        let of = |allowance: &str| {
            Trial::of("money/allowance")
                .book(&format!("allowances: {{tile: {allowance}, lamps: 300}}"))
                .selection("selection: Tile\nkind: tile\nallowance: tile", "price: 10\nquantity: 1")
        };
        of("3800")
            .finds("nobody says what the allowance `tile` is to pay for besides the things")
            .weighs("query")
            .points_at(&["book.yaml:5:14"]);
        of("{amount: 3800, includes: delivery and tax}").stays_silent();
    }

    /// Source: trade reports F-106.
    #[test]
    fn the_remedy_asks_what_an_allowance_includes_when_nobody_says() {
        let trial = |allowance: &str| {
            let found = Trial::of("money/allowance")
                .book(&format!("allowances: {{cabinets: {allowance}}}"))
                .selection("selection: Cabinets\nkind: cabinet\nallowance: cabinets", "price: 8000")
                .finds_one();
            found.findings()[0].remedy.text().contains("includes")
        };
        assert!(trial("5000"));
        assert!(!trial("{amount: 5000, includes: delivery}"));
    }

    /// Source: arithmetic: 960 and 7 % are 1,027.20.
    #[test]
    fn an_allowance_that_pays_for_tax_is_held_against_prices_with_their_tax() {
        let of = |includes: &str, price: &str| {
            Trial::of("money/allowance")
                .book(&format!("tax: 7 %\nallowances: {{bath: {{amount: 1000, includes: \"{includes}\"}}}}"))
                .selection(
                    "selection: Column\nkind: shower set\nallowance: bath",
                    &format!("price: {price}\nquantity: 1"),
                )
        };
        for words in ["delivery and tax", "delivery, sales tax", "entrega e IVA", "tax"] {
            of(words, "960.00").finds("what is chosen is with its tax $27.20 over the allowance `bath` of $1,000.00");
            of(words, "930.00").stays_silent();
        }
        for words in ["delivery", "delivery, before tax", "delivery; tax is extra"] {
            of(words, "960.00").stays_silent();
        }
        of("tax", "960.00").book("prices: with tax").stays_silent();
    }
}
