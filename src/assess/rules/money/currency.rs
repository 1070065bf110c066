//! An amount in another currency than the book's.

use crate::assess::rules::{Check, declare};

declare! {
    /// An amount is in another currency than the book's
    ///
    /// ## What it checks
    /// Every price, cost, total and allowance that is written with a sign or with letters: they must
    /// be those of the book's `currency`.
    ///
    /// ## Why it matters
    /// A tap at 540 in one currency is not a tap at 540 in another, and a sum of both is no sum.
    ///
    /// ## Remedy
    /// Give the amount in the book's currency, at the rate that the supplier invoices.
    ///
    /// ## Example
    /// ```yaml
    /// price: 540.00 EUR     # in a book whose `currency` is USD
    /// ```
    ///
    /// ## Source
    /// ISO 4217 (letters and decimals of currencies).
    "money/currency", Stop,
    due: GoodsOrdered, tells: [],
    judges: each,
    sources: ["ISO 4217"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn tap(price: &str) -> Trial {
        Trial::of("money/currency").selection("selection: Tap\nkind: tap", &format!("price: {price}"))
    }

    #[test]
    fn an_amount_in_another_currency_is_told() {
        tap("540.00 EUR").finds("an amount in `EUR` stands where USD is wanted").weighs("stop");
        tap("€540").finds_one();
        tap("540.00 USD").stays_silent();
        tap("$540").stays_silent();
    }

    #[test]
    fn an_allowance_in_another_currency_is_told() {
        let book = |amount: &str| Trial::of("money/currency").book(&format!("allowances: {{tile: {amount}}}"));
        book("3800 EUR").finds_one();
        book("{amount: 3800 EUR}").finds_one();
        book("3800").stays_silent();
    }
}
