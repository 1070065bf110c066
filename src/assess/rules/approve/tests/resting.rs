//! What is ordered before that which it rests on is approved.

use super::*;

const SHEET: &str = "fit: {sheet: {name: RS, revision: A}}";

/// Trim that rests on the range, ordered or soon to be.
fn trim(record: Record, order: &str) -> Trial {
    let trim = format!("selection: Trim\nkind: stair part\ndepends on: [Range]\n{order}\n");
    record.now("order/before", SHEET).file("rooms/kitchen/trim.yaml", trim)
}

/// Source: trade reports section 5 (nothing is ordered around what may still change).
#[test]
fn once_a_record_exists_what_is_unsigned_is_not_settled() {
    let placed = "order: {placed on: 2027-01-14}";
    let message = "`Trim` was ordered on 14 Jan 2027, and `Range`, which it depends on, is not approved";
    trim(issued(BOTH, SHEET), placed).finds(message).weighs("stop");
    let one = || issued(BOTH, SHEET).by_link("ada", "range", Approved);
    trim(one(), placed).finds(message);
    trim(one().by_link("sven", "range", Rejected), placed).finds_one();
    trim(one().by_link("sven", "range", Approved), placed).stays_silent();
    let near = "needed for: 2027-02-08\nlead time: 2 weeks";
    trim(issued(BOTH, SHEET), near)
        .finds("`Trim` must be ordered by 25 Jan 2027, and `Range`, which it depends on, is not approved")
        .weighs("query");
}

/// Before anything was issued nobody was asked, and a book without approvers asks nobody.
#[test]
fn without_a_record_or_an_approver_no_approval_is_wanted() {
    let trial = book("order/before", BOTH, SHEET);
    trial
        .file(
            "rooms/kitchen/trim.yaml",
            "selection: Trim\nkind: stair part\ndepends on: [Range]\norder: {placed on: 2027-01-14}\n",
        )
        .stays_silent();
    trim(issued("", SHEET), "order: {placed on: 2027-01-14}").stays_silent();
}
