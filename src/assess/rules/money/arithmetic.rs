//! Sums that do not come out.

use std::collections::BTreeMap;

use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Amounts, Context};
use crate::book::{Prices, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, Value, phrase};
use crate::source::Spanned;
use crate::units::{Counted, Money, Wrote};
use crate::vocabulary::Kind;

declare! {
    /// Price, quantity and total do not agree
    ///
    /// ## What it checks
    /// A `total` that the supplier wrote, against price times quantity, with or without what is
    /// ordered with the thing. A price that is for one unit (`price per: sq ft`) against a quantity in
    /// another (`11 boxes`), unless the packing says how much of it a box holds: then all that the boxes hold is
    /// paid for. Sums past what can be held.
    ///
    /// ## Why it matters
    /// A price by the square foot times a count of boxes is wrong by a factor of ten, and looks right.
    ///
    /// ## Remedy
    /// Ask for the quotation again; write price and quantity in one unit.
    ///
    /// ## Example
    /// ```yaml
    /// price: 14.60
    /// price per: sq ft
    /// quantity: 11 boxes     # how many square feet? `sold: {box holds: 9.7 sq ft}` says it
    /// ```
    ///
    /// ## Source
    /// Arithmetic.
    "money/arithmetic", Stop,
    due: GoodsOrdered, tells: [],
    judges: each,
    sources: ["arithmetic"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        let found = unlike_units(room, selection, option).or_else(|| judge(room, selection, option));
        findings.extend(found);
    }
    two_prices(context, findings);
    findings.extend(tax_unsaid(context));
    let amounts = Amounts::of(context.book);
    let rooms = amounts.rooms.iter().filter(|_| amounts.book.past.is_none());
    let sums = std::iter::once((Phrase::from("the whole book"), &amounts.book))
        .chain(rooms.map(|(room, due)| (phrase!("the room `{room}`", room), due)))
        .chain(
            amounts
                .allowances
                .iter()
                .map(|(name, allowance)| (phrase!("the allowance `{name}`", name), &allowance.due)),
        );
    findings.extend(sums.filter_map(|(what, due)| {
        let message = phrase!("the sum of {what} is more than can be reckoned with", what);
        Some(Remark::stop(due.past?, message).remedy("check the prices and quantities"))
    }));
}

/// One model of one finish at two prices.
fn two_prices(context: &Context<'_>, findings: &mut Findings<'_>) {
    type Known<'a> = (&'a Selection, &'a Spanned<Money>);
    let mut known: BTreeMap<[String; 5], Known<'_>> = BTreeMap::new();
    for (room, selection, option) in context.site.options() {
        let (Some(price), Some(model)) = (option.price.spanned(), option.model.get()) else { continue };
        // A top is made to measure, and priced by the job unless it says by what.
        if selection.is(Kind::Counter) && option.price_per.is_absent() {
            continue;
        }
        let per = option.price_per.get().map_or("", String::as_str);
        let of = [option.maker.text(), model, option.finish.text(), option.colour.text(), per];
        let (other, first) = *known.entry(of.map(str::to_lowercase)).or_insert((selection, price));
        // Options of one selection are alternatives, which may be offered at two prices.
        if first.value == price.value || first.span == price.span || other.span == selection.span {
            continue;
        }
        let message = phrase!(
            "`{}` is priced at {}, and `{}`, the same model, at {}",
            selection.name.value,
            price.value,
            other.name.value,
            first.value
        );
        let finding = about(room, selection, option, Severity::Query, price.span, message);
        findings.push(
            finding
                .also(first.span, "the other price")
                .remedy("ask for the quotation again, and write what it says at both"),
        );
    }
}

/// Prices with tax in them, of which nobody says how much that is.
fn tax_unsaid(context: &Context<'_>) -> Option<Remark> {
    let project = &context.book.project;
    let (_, _, priced) = context.site.options().find(|(_, _, option)| option.price.get().is_some())?;
    let is_unsaid = project.prices == Prices::WithTax && project.tax.is_absent();
    is_unsaid.then(|| {
        let message = "tax is in the prices, and nobody says how much it is";
        let at = project.prices_at.or(priced.price.span()).unwrap_or(priced.span);
        Remark::query(at, message).remedy("add `tax: …` to `book.yaml`, as the quotations have it")
    })
}

fn judge(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let price = option.price.spanned()?;
    let finding = |severity, span, message: Phrase| about(room, selection, option, severity, span, message);
    if price.value.is_negative() {
        let message = phrase!("the price of `{}` is less than nothing: {}", selection.name.value, price.value);
        let remedy = "write what one costs, without the sign; what is taken off the whole is agreed by itself";
        return Some(finding(Severity::Stop, price.span, message).remedy(remedy));
    }
    let Some(sum) = Amounts::price(option) else {
        let quantity = option.quantity.get().cloned().map_or(Value::Count(1), Value::Quantity);
        let message = phrase!(
            "{} times {quantity}, with its accessories, is more than can be reckoned with",
            price.value,
            quantity
        );
        return Some(finding(Severity::Stop, price.span, message).remedy("check price and quantity"));
    };
    let total = option.total.spanned()?;
    let alone = option.priced().and_then(|times| price.value.times(times.amount).ok());
    if total.value == sum || Some(total.value) == alone {
        return None;
    }
    let quantity = option.priced().map_or(Value::Count(1), Value::Quantity);
    let message =
        phrase!("the total is {}, and {} times {quantity} comes to {sum}", total.value, price.value, quantity, sum);
    let finding = finding(Severity::Stop, total.span, message).also(price.span, "the price of one");
    Some(finding.remedy("ask for the quotation again, and write price, quantity and total as it has them"))
}

/// A price for one unit, a quantity in another.
fn unlike_units(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let (per, quantity) = (option.price_per.spanned()?, option.quantity.spanned()?);
    if option.priced().is_some() {
        return None;
    }
    let message = phrase!("the price is for one {}, and the quantity is {}", Wrote(&per.value), quantity.value);
    let finding = about(room, selection, option, Severity::Stop, per.span, message);
    let remedy = match quantity.value.counted() {
        Counted::Boxes => "write price and quantity in one unit, or `sold: {box holds: …}` in the unit of the price",
        _ => "write price and quantity in one unit",
    };
    Some(finding.also(quantity.span, "the quantity").remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_top_is_priced_by_the_job() {
        let tops = |more: &str| {
            Trial::of("money/arithmetic")
                .selection(
                    "selection: Benchtops\nkind: counter",
                    &format!("maker: Q\nmodel: Mist\nfinish: honed\nprice: 7600.00{more}"),
                )
                .selection(
                    "selection: Pantry top\nkind: counter",
                    &format!("maker: Q\nmodel: Mist\nfinish: honed\nprice: 1650.00{more}"),
                )
        };
        tops("").stays_silent();
        tops("\nprice per: sq ft\nquantity: 4 sq ft").finds_one();
    }

    #[test]
    fn one_model_of_one_finish_has_one_price() {
        let bars = |other: &str| {
            Trial::of("money/arithmetic")
                .selection("selection: Bar\nkind: bar", "maker: Marl\nmodel: TB-24\nfinish: brass\nprice: 96.00")
                .selection("selection: Second bar\nkind: bar", other)
        };
        bars("maker: Marl\nmodel: TB-24\nfinish: brass\nprice: 69.00")
            .finds("`Second bar` is priced at $69.00, and `Bar`, the same model, at $96.00")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-1.yaml:6:8"]);
        bars("maker: Marl\nmodel: TB-24\nfinish: brass\nprice: 96.00").stays_silent();
        bars("maker: Marl\nmodel: TB-24\nfinish: black\nprice: 69.00").stays_silent();
        Trial::of("money/arithmetic")
            .selection("selection: Bar\nkind: bar\noptions: [{id: a, model: TB, price: 96.00}, {id: b, model: TB, price: 69.00}]", "")
            .stays_silent();
        bars("maker: Marl\nmodel: TB-18\nfinish: brass\nprice: 69.00").stays_silent();
    }

    #[test]
    fn tax_that_is_in_the_prices_is_known() {
        let book = |lines: &str| {
            Trial::of("money/arithmetic").book(lines).selection("selection: Bar\nkind: bar", "price: 96.00")
        };
        book("prices: with tax")
            .finds("tax is in the prices, and nobody says how much it is")
            .weighs("query")
            .points_at(&["book.yaml:5:9"]);
        book("prices: with tax\ntax: 19 %").stays_silent();
        book("prices: before tax").stays_silent();
    }

    fn tile(option: &str) -> Trial {
        Trial::of("money/arithmetic").selection("selection: Floor\nkind: tile", option)
    }

    #[test]
    fn a_total_that_is_not_price_times_quantity_is_told() {
        let pull = |total: &str| tile(&format!("price: 22.00\nquantity: 20\ntotal: {total}"));
        pull("440").stays_silent();
        pull("404").finds("the total is $404.00, and $22.00 times 20 comes to $440.00").weighs("stop");
    }

    #[test]
    fn a_total_may_hold_what_is_ordered_with_the_thing() {
        let with = |total: &str| tile(&format!("price: 1340\ntotal: {total}\naccessories: [{{name: kit, price: 64}}]"));
        with("1340").stays_silent();
        with("1404").stays_silent();
        with("1400").finds_one();
    }

    #[test]
    fn a_price_by_the_square_foot_and_a_quantity_in_boxes_are_told() {
        let per = |per: &str, quantity: &str| tile(&format!("price: 14.60\nprice per: {per}\nquantity: {quantity}"));
        per("sq ft", "11 boxes").finds("the price is for one sq ft, and the quantity is 11 boxes");
        per("sq ft", "108 square feet").stays_silent();
        per("box", "11 boxes").stays_silent();
        per("piece", "11").stays_silent();
        per("sq m", "108 sq ft").finds_one();
    }

    /// Arithmetic: 12 boxes of 1.44 m² are 17.28 m², at 42.50 are 734.40.
    #[test]
    fn what_boxes_hold_is_paid_by_the_unit_of_the_price() {
        let boxes = |holds: &str, per: &str, total: &str| {
            tile(&format!(
                "price: 42.50\nprice per: {per}\nquantity: 12 boxes\nsold: {{box holds: {holds}}}\ntotal: {total}"
            ))
        };
        boxes("1.44 m2", "m2", "734.40").stays_silent();
        boxes("1.44 square metres", "m²", "734.40").stays_silent();
        boxes("1.44 m2", "m2", "510").finds("the total is $510.00, and $42.50 times 17.28 m2 comes to $734.40");
        boxes("8 pieces", "piece", "4080").stays_silent();
        boxes("8", "each", "4080").stays_silent();
        // What a box holds in another unit says nothing of the price.
        boxes("15.5 sq ft", "m2", "734.40").finds("the price is for one m2, and the quantity is 12 boxes");
        boxes("8 pieces", "m2", "734.40").finds_one();
    }

    #[test]
    fn what_can_t_be_held_is_told_and_not_left_out_of_the_sum() {
        tile("price: 90000000000000.00\nquantity: 5000000000").finds_one();
    }

    #[test]
    fn a_sum_that_can_t_be_held_is_told_and_never_begins_anew() {
        let most = "price: 90000000000000000.00";
        let two = |other: &str| tile(most).selection("selection: Other\nkind: tile", other);
        two(most).finds("the sum of the whole book is more than can be reckoned with").weighs("stop");
        two("price: 5.00").stays_silent();
    }

    #[test]
    fn a_price_is_no_less_than_nothing() {
        let priced = |price: &str| {
            Trial::of("money/arithmetic").selection("selection: Pull\nkind: pull", &format!("price: {price}"))
        };
        priced("-2900.00").finds_one().weighs("stop").says("the price of `Pull` is less than nothing");
        priced("2900.00").stays_silent();
    }
}
