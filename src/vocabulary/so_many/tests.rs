//! How many came, in words of every order.

use super::*;

fn of(words: &str, of: u32) -> Option<SoMany> {
    so_many(words, of.into(), "Pulls pull pieces")
}

#[test]
fn how_many_came_is_understood() {
    let rows = [
        ("1 of 6", 1),
        ("one of six", 1),
        ("4/6", 4),
        ("4 out of 6", 4),
        ("only 4 came", 4),
        ("4 pulls", 4),
        ("4 of 6, 2 to follow", 4),
        ("4, rest later", 4),
        ("4 of 6, rest missing", 4),
        ("4 came, the rest to follow", 4),
        ("rest to follow, 4 came", 4),
        ("4 came, 2 to come", 4),
        ("4 de 6", 4),
        ("vier von 6", 4),
        ("the second", 1),
        ("the last two", 2),
        ("the remaining 4", 4),
        ("a pair", 2),
        ("6 of 6", 6),
        ("five, the other is pending", 5),
    ];
    for (words, count) in rows {
        assert_eq!(of(words, 6), Some(SoMany::Count(count.into())), "{words}");
    }
    for words in ["2 missing", "two are missing", "missing: 2", "2 short", "faltan 2", "2 missing, the rest came"] {
        assert_eq!(of(words, 6), Some(SoMany::AllBut(2.into())), "{words}");
    }
    for words in ["the rest", "the remaining pulls", "rest of 6", "el resto", "the rest came"] {
        assert_eq!(of(words, 6), Some(SoMany::TheRest), "{words}");
    }
}

/// Whether what is missing is told before its number or behind it, first or last.
#[test]
fn each_number_has_what_is_told_of_it() {
    for words in [
        "missing 4, 2 came",
        "missing: 4; 2 arrived",
        "missing 4, came 2",
        "missing 4 2 came",
        "faltan 4, llegaron 2",
        "llegaron 2, faltan 4",
        "4 missing, 2 came",
        "4 missing 2 came",
        "2 came, 4 missing",
        "2, missing 4",
        "came 2, the remaining 4 to follow",
        "2 (4 missing)",
        "4 backordered, 2",
        "2 came, 4 still missing, to follow",
    ] {
        assert_eq!(of(words, 6), Some(SoMany::Count(2.into())), "{words}");
    }
    // It may be told of either, or of what is left of another delivery.
    for words in [
        "the remaining 4 are missing",
        "the remaining 4 to follow",
        "rest: 4, backordered",
        "the other 5 are missing",
        "rest later, 4",
        "2 remaining",
        "2 missing 4",
        "2 and 4 missing",
        "2 came 4 came",
        "2 missing, 4 missing",
        "2 missing, 2 came",
    ] {
        assert_eq!(of(words, 6), None, "{words}");
    }
}

#[test]
fn what_is_not_surely_a_number_is_none() {
    for words in [
        "",
        "x",
        "7",
        "1 of 5",
        "four black ones",
        "not 4",
        "4 too many",
        "none",
        "0",
        "-1",
        "4 and 3",
        "4 scratched",
        "the rest to follow",
        "4 of another make",
        "4 instead of 6",
    ] {
        assert_eq!(of(words, 6), None, "{words}");
    }
}
