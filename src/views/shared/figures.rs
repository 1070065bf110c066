//! Figures as pages print them: the book's own units, dates, money.

use crate::book::Book;
use crate::finding::Phrase;
use crate::language::{Words, say};
use crate::ledger::Moment;
use crate::units::{Date, Length, LengthRange, Money};
use crate::views::shared::html::Html;
use crate::views::shared::wording::Wording;
use crate::vocabulary::HoldPoint;

/// How a book writes its figures.
pub fn wording(book: &Book, words: Words) -> Wording {
    Wording { system: book.project.units, words, ..Wording::default() }
}

/// A length.
pub fn length(wording: Wording, length: Length) -> Html {
    wording.length(length)
}

/// A length for a sentence.
pub fn in_prose(wording: Wording, length: Length) -> Html {
    wording.in_prose(length)
}

/// A range with the other system beside it.
pub fn range(wording: Wording, range: LengthRange) -> Html {
    match wording.range_second(range) {
        Some(second) => wording.range(range).then(" ").then(second),
        None => wording.range(range),
    }
}

/// An amount, or a dash.
pub fn money(wording: Wording, amount: Option<Money>) -> Html {
    amount.map_or_else(|| Html::text("–"), |amount| wording.money(amount))
}

/// A day, or a dash.
pub fn day(words: Words, date: Option<Date>) -> String {
    date.map_or_else(|| "–".into(), |date| words.day(date))
}

/// The day of a moment, in universal time: `16 Jan 2027`.
pub fn day_of(words: Words, moment: Moment) -> String {
    moment.day().map_or_else(String::new, |day| words.day(day))
}

/// `1 selection`, `3 selections`.
pub fn count(number: usize, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
}

/// A finding's words for a page: what is quoted stands between quotation marks.
pub fn quoted(words: &Phrase) -> Html {
    Html::text(&words.printed(["“", "”"]))
}

/// What a hold point is called: a usual one in the reader's language, one of the book's own as it is written.
pub fn hold_point(words: Words, name: &str) -> String {
    let key = match HoldPoint::named(name) {
        None => return name.to_owned(),
        Some(HoldPoint::GoodsOrdered) => "hold_points.goods_ordered",
        Some(HoldPoint::RoughInClosed) => "hold_points.rough_in_closed",
        Some(HoldPoint::CabinetsOrdered) => "hold_points.cabinets_ordered",
        Some(HoldPoint::GoodsReleased) => "hold_points.goods_released",
        Some(HoldPoint::CounterTemplated) => "hold_points.counter_templated",
        Some(HoldPoint::TileSet) => "hold_points.tile_set",
        Some(HoldPoint::GlassMeasured) => "hold_points.glass_measured",
    };
    say!(words, key)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_quoted_stands_between_quotation_marks() {
        assert_eq!(quoted(&Phrase::from("`Hood` over `Range`: 3")), Html::text("“Hood” over “Range”: 3"));
        assert_eq!(quoted(&Phrase::from("no marks")), Html::text("no marks"));
    }
}
