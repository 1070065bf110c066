//! Lengths, money and weights as pages print them: a real fraction, and the other system beside it.

use crate::book::System;
use crate::language::{Words, say};
use crate::units::length::Shown;
use crate::units::{Area, Figure, Length, LengthRange, Money, Weight};
use crate::views::shared::html::{Html, SOFT, show};

/// How a book writes its figures: which system stands first, and what its lengths are of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Wording {
    /// Shown first; the other stands beside it in the softer ink.
    pub system: System,
    /// Whether they are of a room or a run of one, and told in feet and inches; of things and openings otherwise.
    pub of_rooms: bool,
    /// The language.
    pub words: Words,
}

impl Wording {
    /// For lengths of a room.
    #[must_use]
    pub const fn of_rooms(self) -> Self {
        Self { of_rooms: true, ..self }
    }

    /// For a table or a drawing: `30 1/16″ 763.6 mm`, the second in the softer ink.
    pub fn length(&self, length: Length) -> Html {
        let (first, second) = self.both(length);
        beside(dim(self.figure(first)), second.map(|second| soft(self.figure(second))))
    }

    /// For a sentence: `30 1/16″ (763.6 mm)`.
    pub fn in_prose(&self, length: Length) -> Html {
        let (first, second) = self.both(length);
        let second = second.map(|second| soft(Html::text("(").then(self.figure(second)).then(")")));
        beside(dim(self.figure(first)), second)
    }

    /// For a sentence of plain text: `30 1/16" (763.6 mm)`, or the other way round.
    pub fn said(&self, length: Length) -> String {
        self.words.decimal(&crate::finding::Value::Length(length, self.system).printed())
    }

    /// The first system alone, where a row is short and the other stands below.
    pub fn first(&self, length: Length) -> Html {
        dim(self.figure(self.both(length).0))
    }

    /// The other system alone, for the second line; none where the book leaves it out.
    pub fn second(&self, length: Length) -> Option<Html> {
        self.both(length).1.map(|second| soft(self.figure(second)))
    }

    /// A range in the first system: `30″ to 30 1/4″`, `at least 24″`.
    pub fn range(&self, range: LengthRange) -> Html {
        self.worded(range, |length| self.first(length))
    }

    /// The same range in the other system, for the second line; none where the book leaves it out.
    pub fn range_second(&self, range: LengthRange) -> Option<Html> {
        (!self.system.is_alone()).then(|| self.worded(range, |length| self.second(length).unwrap_or_default()))
    }

    /// Sides in their order: `32″ × 41″ × 30″`, then the other system, if it stands beside.
    pub fn sides(&self, sides: &[Length]) -> Html {
        let line = |shown: &dyn Fn(Length) -> Html| {
            sides.iter().enumerate().fold(Html::default(), |line, (at, side)| {
                let line = if at > 0 { line.then(" × ") } else { line };
                line.then(shown(*side))
            })
        };
        // Each side is a run of its own, so that a narrow page may break between them.
        let second = (!self.system.is_alone()).then(|| line(&|side| self.second(side).unwrap_or_default()));
        beside(line(&|side| self.first(side)), second)
    }

    /// A weight, then the other system, if it stands beside.
    pub fn weight(&self, weight: Weight) -> Html {
        let (first, second) = self.system.in_order(weight.imperial(), weight.metric());
        let text = |figure: Figure| Html::text(&self.words.decimal(&figure.to_string()));
        beside(dim(text(first)), second.map(|second| soft(text(second))))
    }

    /// An area, then the other system, if it stands beside.
    pub fn area(&self, area: Area) -> Html {
        let (first, second) = self.system.in_order(area.imperial(), area.metric());
        let text = |figure: Figure| Html::text(&figure.to_string());
        beside(dim(text(first)), second.map(|second| soft(text(second))))
    }

    fn worded(&self, range: LengthRange, shown: impl Fn(Length) -> Html) -> Html {
        match (range.least, range.most) {
            (Some(least), Some(most)) if least == most => shown(least),
            (Some(least), Some(most)) => show!(self.words, "units.range", least = shown(least), most = shown(most)),
            (Some(least), None) => show!(self.words, "units.at_least", length = shown(least)),
            (None, Some(most)) => show!(self.words, "units.at_most", length = shown(most)),
            (None, None) => show!(self.words, "units.any"),
        }
    }

    /// An amount, digit under digit, that never breaks.
    pub fn money(&self, amount: Money) -> Html {
        let amount = say!(self.words, "units.amount", amount = amount);
        Html::trusted(format!("<span class=\"num\">{}</span>", Html::text(&amount).as_str()))
    }

    fn figure(&self, shown: Shown) -> Html {
        figure(self.words, shown)
    }

    fn both(&self, length: Length) -> (Shown, Option<Shown>) {
        let inches = length.inches();
        let imperial = if self.of_rooms { inches.feet_and_inches() } else { inches };
        self.system.in_order(imperial, length.metric())
    }
}

/// One printed figure, with its fraction marked up: it copies as `30 1/16″` and is set as a fraction.
///
/// The space before a fraction never breaks, nor does the one before a unit.
fn figure(words: Words, shown: Shown) -> Html {
    if let Some(metric) = shown.metric {
        return Html::text(&words.decimal(&metric.to_string()).replace(' ', "\u{a0}"));
    }
    let mut text = String::new();
    text.push_str(if shown.exact { "" } else { "≈\u{a0}" });
    text.push_str(if shown.negative { "−" } else { "" });
    if let Some(feet) = shown.feet {
        // The sans sets the mark of feet wide: the page draws the hyphen nearer.
        text.push_str(&format!("{feet}<i class=\"ft\">′</i>-"));
    }
    let whole = shown.inches != 0 || shown.feet.is_some() || shown.numerator == 0;
    if whole {
        text.push_str(&shown.inches.to_string());
    }
    let fraction = match (shown.numerator, whole) {
        (0, _) => String::new(),
        (over, true) => format!("\u{a0}<i class=\"fr w\">{over}/{}</i>", shown.denominator),
        (over, false) => format!("<i class=\"fr\">{over}/{}</i>", shown.denominator),
    };
    Html::trusted(text).then(Html::trusted(fraction)).then("″")
}

/// A figure with the other system after it, if that is shown.
fn beside(first: Html, second: Option<Html>) -> Html {
    match second {
        Some(second) => first.then(" ").then(second),
        None => first,
    }
}

fn dim(inner: Html) -> Html {
    Html::trusted(format!("<span class=\"dim\">{}</span>", inner.as_str()))
}

fn soft(inner: Html) -> Html {
    Html::trusted(format!("{SOFT}{}</span>", inner.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(html: &Html) -> String {
        let mut text = String::new();
        let mut in_tag = false;
        for letter in html.as_str().chars() {
            match letter {
                '<' => in_tag = true,
                '>' => in_tag = false,
                '\u{a0}' if !in_tag => text.push(' '),
                other if !in_tag => text.push(other),
                _ => {}
            }
        }
        text
    }

    fn length(text: &str) -> Length {
        Length::parse(text).unwrap()
    }

    #[test]
    fn a_fraction_is_marked_up_and_copies_as_it_is_written() {
        let html = figure(Words::default(), length("30 1/16\"").inches());
        assert_eq!(html.as_str(), "30\u{a0}<i class=\"fr w\">1/16</i>″");
        let bare = figure(Words::default(), length("5/32\"").inches());
        assert_eq!(bare.as_str(), "<i class=\"fr\">5/32</i>″");
    }

    #[test]
    fn figures_read_as_the_plain_ones_do() {
        for written in ["0\"", "24\"", "1/2\"", "34 1/2\"", "40 1/2\"", "-3/8\"", "600 mm", "763.59 mm"] {
            let inches = length(written).inches();
            for shown in [inches, inches.feet_and_inches(), length(written).metric()] {
                let expected = shown.to_string().replace('"', "″").replace('\'', "′");
                assert_eq!(plain(&figure(Words::default(), shown)), expected, "{written}");
            }
        }
    }

    #[test]
    fn the_books_own_system_stands_first() {
        let imperial = Wording::default();
        let metric = Wording { system: System::Metric, ..imperial };
        assert_eq!(plain(&imperial.in_prose(length("1/2\""))), "1/2″ (12.7 mm)");
        assert_eq!(plain(&metric.length(length("24\""))), "610 mm 24″");
    }

    #[test]
    fn ranges_are_told_in_words() {
        let wording = Wording::default();
        let range = |text| plain(&wording.range(LengthRange::parse(text).unwrap()));
        assert_eq!(range("30\" to 30 1/4\""), "30″ to 30 1/4″");
        assert_eq!(range("at least 24\""), "at least 24″");
        assert_eq!(range("at most 35\""), "at most 35″");
        assert_eq!(range("24\""), "24″");
    }

    #[test]
    fn sides_keep_their_order() {
        let sides = [length("32\""), length("41\""), length("30\"")];
        assert_eq!(plain(&Wording::default().sides(&sides)), "32″ × 41″ × 30″ 813 mm × 1041 mm × 762 mm");
    }

    #[test]
    fn things_are_told_in_inches_and_rooms_in_feet_and_inches() {
        let range = LengthRange::parse("30\" to 8'").unwrap();
        assert_eq!(plain(&Wording::default().range(range)), "30″ to 96″");
        assert_eq!(plain(&Wording::default().of_rooms().range(range)), "2′-6″ to 8′-0″");
    }

    #[test]
    fn what_a_book_leaves_out_leaves_no_trace() {
        let metric = Wording { system: System::MetricOnly, ..Wording::default() };
        assert_eq!(plain(&metric.length(length("24\""))), "610 mm");
        assert_eq!(plain(&metric.in_prose(length("1/2\""))), "12.7 mm");
        assert_eq!(plain(&metric.sides(&[length("24\""), length("600 mm")])), "610 mm × 600 mm");
        assert_eq!(plain(&metric.weight(Weight::parse("93 kg").unwrap())), "93 kg");
        assert_eq!(metric.second(length("24\"")), None);
        assert_eq!(metric.range_second(LengthRange::parse("at least 24\"").unwrap()), None);
        assert_eq!(metric.said(length("24\"")), "610 mm");
    }
}
