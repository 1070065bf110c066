//! Change orders between two small issues.

use serde_json::json;

use super::*;
use crate::ledger::{Purpose, Total};
use crate::marks;

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
            mark: marks::of(&content),
            content,
            price: price.map(str::to_string),
            lead_time: order_by.map(|_| "6 weeks".into()),
            order_by: order_by.map(|day| day.parse().unwrap()),
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
        items: items.collect(),
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
    assert_eq!(item.changes[0].words(), "finish from steel to black");
    assert_eq!(order.settled.unwrap().by().unwrap().plain(), "30.00");
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
fn while_one_side_is_open_no_money_is_told() {
    let order = order(&[("tap", "brass", None, None)], &[("tap", "steel", Some("240.00"), None)]);
    assert_eq!(order.items[0].money(), None);
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
