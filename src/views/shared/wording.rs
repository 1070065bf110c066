//! Lengths, money and weights as pages print them: a real fraction, and the other system beside it.

use crate::book::System;
use crate::language::{Words, say};
use crate::units::length::{Grain, Shown};
use crate::units::{Length, LengthRange, Money, Weight};
use crate::views::shared::html::{Html, show};

/// How a book writes its figures: which system stands first, and how fine the fractions are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Wording {
    /// Shown first; the other stands beside it in the softer ink.
    pub system: System,
    /// Of the imperial figures.
    pub grain: Grain,
    /// The language.
    pub words: Words,
}

impl Wording {
    /// For a table or a drawing: `30 1/16″ 763.6 mm`, the second in the softer ink.
    pub fn length(&self, length: Length) -> Html {
        let (first, second) = self.both(length);
        dim(figure(first)).then(" ").then(soft(figure(second)))
    }

    /// For a sentence: `30 1/16″ (763.6 mm)`.
    pub fn in_prose(&self, length: Length) -> Html {
        let (first, second) = self.both(length);
        dim(figure(first)).then(" ").then(soft(Html::text("(").then(figure(second)).then(")")))
    }

    /// For a sentence of plain text: `30 1/16" (763.6 mm)`, or the other way round.
    pub fn said(&self, length: Length) -> String {
        crate::finding::Value::Length(length, self.system).to_string()
    }

    /// The first system alone, where a row is short and the other stands below.
    pub fn first(&self, length: Length) -> Html {
        dim(figure(self.both(length).0))
    }

    /// The other system alone, for the second line.
    pub fn second(&self, length: Length) -> Html {
        soft(figure(self.both(length).1))
    }

    /// A range in the first system: `30″ to 30 1/4″`, `at least 24″`.
    pub fn range(&self, range: LengthRange) -> Html {
        self.worded(range, |length| self.first(length))
    }

    /// The same range in the other system, for the second line.
    pub fn range_second(&self, range: LengthRange) -> Html {
        self.worded(range, |length| self.second(length))
    }

    /// Sides in their order: `32″ × 41″ × 30″`, then the other system.
    pub fn sides(&self, sides: &[Length]) -> Html {
        let line = |shown: &dyn Fn(Length) -> Html| {
            sides.iter().enumerate().fold(Html::default(), |line, (at, side)| {
                let line = if at > 0 { line.then(" × ") } else { line };
                line.then(shown(*side))
            })
        };
        // Each side is a run of its own, so that a narrow page may break between them.
        line(&|side| self.first(side)).then(" ").then(line(&|side| self.second(side)))
    }

    /// A weight, then the other system.
    pub fn weight(&self, weight: Weight) -> Html {
        let (imperial, metric) = (weight.imperial().to_string(), weight.metric().to_string());
        let (first, second) = match self.system {
            System::Imperial => (imperial, metric),
            System::Metric => (metric, imperial),
        };
        dim(Html::text(&first)).then(" ").then(soft(Html::text(&second)))
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

    fn both(&self, length: Length) -> (Shown, Shown) {
        let (imperial, metric) = (length.imperial(self.grain), length.metric());
        match self.system {
            System::Imperial => (imperial, metric),
            System::Metric => (metric, imperial),
        }
    }
}

/// One printed figure, with its fraction marked up: it copies as `30 1/16″` and is set as a fraction.
///
/// The space before a fraction never breaks, nor does the one before a unit.
pub fn figure(shown: Shown) -> Html {
    if let Some(metric) = shown.metric {
        return Html::text(&metric.to_string().replace(' ', "\u{a0}"));
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

fn dim(inner: Html) -> Html {
    Html::trusted(format!("<span class=\"dim\">{}</span>", inner.as_str()))
}

fn soft(inner: Html) -> Html {
    Html::trusted(format!("<span class=\"mm\">{}</span>", inner.as_str()))
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
        let html = figure(length("30 1/16\"").imperial(Grain::Sixteenth));
        assert_eq!(html.as_str(), "30\u{a0}<i class=\"fr w\">1/16</i>″");
        let bare = figure(length("5/32\"").imperial(Grain::ThirtySecond));
        assert_eq!(bare.as_str(), "<i class=\"fr\">5/32</i>″");
    }

    #[test]
    fn figures_read_as_the_plain_ones_do() {
        for written in ["0\"", "24\"", "1/2\"", "34 1/2\"", "40 1/2\"", "-3/8\"", "600 mm", "763.59 mm"] {
            for shown in [length(written).imperial(Grain::Sixteenth), length(written).metric()] {
                let expected = shown.to_string().replace('"', "″").replace('\'', "′");
                assert_eq!(plain(&figure(shown)), expected, "{written}");
            }
        }
    }

    #[test]
    fn the_books_own_system_stands_first() {
        let imperial = Wording::default();
        let metric = Wording { system: System::Metric, ..imperial };
        assert_eq!(plain(&imperial.in_prose(length("1/2\""))), "1/2″ (12.7 mm)");
        assert_eq!(plain(&metric.length(length("24\""))), "609.6 mm 24″");
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
        assert_eq!(plain(&Wording::default().sides(&sides)), "32″ × 3′-5″ × 30″ 812.8 mm × 1041.4 mm × 762 mm");
    }
}
