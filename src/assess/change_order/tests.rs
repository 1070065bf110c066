//! Change orders between two small issues.

use serde_json::json;

use super::*;
use crate::ledger::{Purpose, Total};
use crate::shown;

/// An item: id, finish, price, last day to order.
type Row<'a> = (&'a str, &'a str, Option<&'a str>, Option<&'a str>);

fn issue(settled: &str, rows: &[Row<'_>]) -> Issue {
    let items = rows.iter().map(|(id, finish, price, order_by)| {
        let content = json!({"name": id, "options": [{"id": id, "finish": finish}]});
        IssuedItem {
            room: "kitchen".into(),
            item: (*id).into(),
            tag: "K-01".into(),
            name: (*id).into(),
            mark: shown::of(&content),
            also: vec![],
            content,
            price: price.map(str::to_string),
            lead_time: order_by.map(|_| "6 weeks".into()),
            order_by: order_by.map(|day| day.parse().unwrap()),
            supplier: None,
        }
    });
    Issue {
        book: "0123456789abcdef0123456789abcdef".into(),
        number: 1,
        purpose: Purpose::Approval,
        on: "2027-01-15".parse().unwrap(),
        title: "Trial".into(),
        currency: "USD".into(),
        total: Total { settled: settled.into(), with_tax: None },
        terms: None,
        after: None,
        items: items.collect(),
        built: None,
        asked: vec![],
        unapproved: None,
        money: None,
        title_block: None,
    }
}

fn order(from: &[Row<'_>], to: &[Row<'_>]) -> ChangeOrder {
    ChangeOrder::between(&issue("100.00", from), &issue("130.00", to))
}

#[test]
fn what_stayed_is_not_told() {
    let rows = [("range", "steel", Some("3180.00"), Some("2027-02-08"))];
    let same = ChangeOrder::between(&issue("3180.00", &rows), &issue("3180.00", &rows));
    assert!(same.is_nothing() && !same.asks());
}

#[test]
fn an_item_is_told_with_its_money_and_its_days() {
    let from = [("range", "steel", Some("3180.00"), Some("2027-02-08"))];
    let to = [("range", "black", Some("3100.50"), Some("2027-02-01"))];
    let order = order(&from, &to);
    let item = &order.items[0];
    assert_eq!((item.fate, item.days()), (Fate::Changed, Some(-7)));
    assert_eq!(item.money().unwrap().plain(), "-79.50");
    assert_eq!(item.changes[0].words().text(), "finish from steel to black");
    assert_eq!(order.settled.unwrap().by().unwrap().plain(), "-79.50");
    assert!(order.asks());
}

#[test]
fn new_and_gone_items_count_in_full() {
    let order = order(&[("tap", "brass", Some("240.00"), None)], &[("sink", "white", Some("390.00"), None)]);
    let told: Vec<_> =
        order.items.iter().map(|item| (item.item.as_str(), item.fate, item.money().unwrap().plain())).collect();
    assert_eq!(told, [("sink", Fate::Added, "390.00".into()), ("tap", Fate::Gone, "-240.00".into())]);
}

#[test]
fn a_first_choice_is_told_as_a_choice_and_not_as_an_extra() {
    let from = [("tap", "brass", None, None), ("sink", "white", Some("390.00"), None)];
    let to = [("tap", "steel", Some("240.00"), None), ("sink", "black", Some("400.00"), None)];
    let order = order(&from, &to);
    let sums: Vec<_> = order.sums.iter().map(|(sort, sum)| (*sort, sum.plain())).collect();
    assert_eq!(sums, [(Sort::Choice, "240.00".into()), (Sort::Change, "10.00".into())]);
    assert_eq!(order.settled.unwrap().by().unwrap().plain(), "250.00");
}

/// What becomes of an item, and what it costs before and after, in cents.
type Fortune = (u8, Option<i64>, Option<i64>);
/// Ids and prices.
type Side = Vec<(String, Option<String>)>;

proptest::proptest! {
    /// Whatever becomes of items, the total is the sum of its lines, to the cent.
    #[test]
    fn the_total_is_the_sum_of_its_lines(
        rows in proptest::collection::vec((0..8_u8, proptest::option::of(0..9_000_000_i64), proptest::option::of(0..9_000_000_i64)), 0..12)
    ) {
        let plain = |cents: &i64| format!("{}.{:02}", cents / 100, cents % 100);
        let side = |pick: &dyn Fn(&Fortune) -> Option<Option<i64>>| -> Side {
            let rows = rows.iter().enumerate();
            rows.filter_map(|(at, row)| Some((format!("i{at}"), pick(row)?.as_ref().map(plain)))).collect()
        };
        // One in four is new, one in four is gone.
        let from = side(&|(fate, from, _)| (fate % 4 != 0).then_some(*from));
        let to = side(&|(fate, _, to)| (fate % 4 != 1).then_some(*to));
        let rows_of = |side: &'_ [(String, Option<String>)], finish: &'static str| -> Issue {
            let rows: Vec<Row<'_>> = side.iter().map(|(id, price)| (id.as_str(), finish, price.as_deref(), None)).collect();
            issue("0.00", &rows)
        };
        let order = ChangeOrder::between(&rows_of(&from, "oak"), &rows_of(&to, "ash"));
        let sum = |side: &[(String, Option<String>)]| -> i64 {
            side.iter().filter_map(|(_, price)| price.as_ref()?.replace('.', "").parse::<i64>().ok()).sum()
        };
        let by = order.settled.unwrap().by().unwrap().minor;
        proptest::prop_assert_eq!(by, sum(&to) - sum(&from));
        proptest::prop_assert_eq!(by, order.items.iter().filter_map(Changed::money).map(|money| money.minor).sum::<i64>());
        proptest::prop_assert_eq!(by, order.sums.iter().map(|(_, sum)| sum.minor).sum::<i64>());
    }
}

#[test]
fn a_moved_day_alone_is_told_and_asks_for_no_signature() {
    let from = [("range", "steel", Some("3180.00"), Some("2027-02-08"))];
    let to = [("range", "steel", Some("3180.00"), Some("2027-02-10"))];
    let order = order(&from, &to);
    assert_eq!((order.items[0].fate, order.items[0].days(), order.asks()), (Fate::Dated, Some(2), false));
}

#[test]
fn between_currencies_no_difference_is_told() {
    let from = issue("100.00", &[("tap", "brass", Some("240.00"), None)]);
    let to = Issue { currency: "EUR".into(), ..issue("100.00", &[("tap", "steel", Some("240.00"), None)]) };
    let order = ChangeOrder::between(&from, &to);
    assert_eq!((order.settled, order.items[0].money()), (None, None));
}
