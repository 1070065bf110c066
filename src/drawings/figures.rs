//! Lengths as a drawing letters them: the book's own system first, the other in the softer ink.

use super::lettering::{Label, Line, Run, Tone};
use super::scale::{Mil, Paper};
use crate::drawings::sizes::{Between, Limits};
use crate::language::{Part, Words, say};
use crate::units::System;
use crate::units::length::{Length, Shown};

/// The sizes of lettering on a paper, and the system of measure that goes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sizes {
    /// A measured figure.
    pub figure: Mil,
    /// The other system, words and remarks.
    pub small: Mil,
    pub units: System,
    /// Whether lengths are of a room, and told in feet and inches; of things and openings otherwise.
    pub of_rooms: bool,
    pub words: Words,
}

impl Sizes {
    /// What reads well at arm's length, and what still does on a telephone.
    pub const fn on(paper: Paper, units: System, words: Words) -> Sizes {
        match paper {
            Paper::Desk => Sizes { figure: 14_000, small: 12_500, units, of_rooms: false, words },
            Paper::Phone => Sizes { figure: 13_500, small: 12_000, units, of_rooms: false, words },
        }
    }

    /// For lengths of a room.
    pub const fn of_rooms(self) -> Sizes {
        Sizes { of_rooms: true, ..self }
    }

    /// A length in the book's own system: `30 1/16″`, or `764`.
    pub fn first(self, length: Length) -> Vec<Run> {
        match self.units.is_metric() {
            false => self.imperial(length),
            true => vec![Run::Plain(millimetres(self.words, length))],
        }
    }

    /// The same in the other system: `764`, or `30 1/16″`; none where the book leaves it out.
    pub fn second(self, length: Length) -> Option<Vec<Run>> {
        match self.units {
            System::Imperial => Some(vec![Run::Plain(millimetres(self.words, length))]),
            System::Metric => Some(self.imperial(length)),
            System::ImperialOnly | System::MetricOnly => None,
        }
    }

    fn imperial(self, length: Length) -> Vec<Run> {
        let inches = length.inches();
        marked(if self.of_rooms { inches.feet_and_inches() } else { inches })
    }

    /// A line in the softer ink with a length in the other system, if that is shown.
    pub fn beside(self, length: Length) -> Option<Line> {
        Some(self.soft(self.second(length)?))
    }

    /// A length astride its dimension line: the book's system above, the other below.
    pub fn length(self, length: Length) -> Label {
        self.told(Line::of(self.first(length), self.figure), self.second(length))
    }

    /// As [`Sizes::length`], with the words of a key about the first figure.
    pub fn length_of(self, length: Length, key: &str) -> Label {
        let line = Line::of(self.in_words(key, self.first(length)), self.figure);
        self.told(line, self.second(length))
    }

    /// As [`Sizes::length`], with a name after the first figure.
    pub fn length_named(self, length: Length, name: &str) -> Label {
        let line = Line::of(self.first(length), self.figure).then(format!(" {name}"));
        self.told(line, self.second(length))
    }

    /// The words of a key about one figure, which stands in the hole `{figure}`.
    pub fn in_words(self, key: &str, figure: Vec<Run>) -> Vec<Run> {
        self.filled(key, &[("figure", figure)])
    }

    /// The words of a key about several figures, each in its hole.
    pub fn filled(self, key: &str, figures: &[(&str, Vec<Run>)]) -> Vec<Run> {
        let part = |part: Part| match part {
            Part::Words(words) => vec![Run::Plain(words)],
            Part::Hole(name) => {
                figures.iter().find(|(hole, _)| *hole == name).map(|(_, runs)| runs.clone()).unwrap_or_default()
            }
        };
        self.words.parts(key, None).into_iter().flat_map(part).collect()
    }

    /// As [`Sizes::length`], with words after the second figure.
    pub fn reading(self, length: Length, words: &str) -> Label {
        let line = Line::of(self.first(length), self.figure).toned(Tone::Bold);
        let words = (!words.is_empty()).then_some(words);
        let below = match (self.second(length), words) {
            (Some(mut second), Some(words)) => {
                second.push(Run::Plain(format!(" \u{b7} {words}")));
                Some(second)
            }
            (second, words) => second.or(words.map(|words| vec![Run::Plain(words.to_string())])),
        };
        self.told(line, below)
    }

    /// One height or two.
    pub fn between(self, size: Between) -> Label {
        if size.least == size.most {
            return self.length(size.least);
        }
        let (first, second) = self.both(size);
        self.told(Line::of(first, self.figure), second)
    }

    fn both(self, size: Between) -> (Vec<Run>, Option<Vec<Run>>) {
        let range = |least, most| self.filled("units.range", &[("least", least), ("most", most)]);
        let second = self.second(size.least).zip(self.second(size.most));
        (range(self.first(size.least), self.first(size.most)), second.map(|(least, most)| range(least, most)))
    }

    /// What the maker asks: `at least 24″`.
    pub fn limits(self, limits: Limits) -> Option<Label> {
        let one = |length: Length| (self.first(length), self.second(length));
        let of = |key: &str, length: Length| {
            let (first, second) = one(length);
            (self.filled(key, &[("length", first)]), second)
        };
        let (line, below) = match (limits.least, limits.most) {
            (Some(least), Some(most)) if least == most => one(least),
            (Some(least), Some(most)) => self.both(Between { least, most }),
            (Some(least), None) => of("units.at_least", least),
            (None, Some(most)) => of("units.at_most", most),
            (None, None) => return None,
        };
        Some(self.told(Line::of(self.in_words("drawn.needs", line), self.small), below))
    }

    /// A soft remark, broken into lines of at most `most` letters.
    pub fn remark(self, text: &str, most: usize) -> Label {
        let lines = super::lettering::broken(text, most).into_iter();
        Label::of(lines.map(|line| Line::words(line, self.small).toned(Tone::Soft)).collect())
    }

    fn told(self, line: Line, below: Option<Vec<Run>>) -> Label {
        Label::astride([Some(line), below.map(|below| self.soft(below))].into_iter().flatten().collect())
    }

    fn soft(self, runs: Vec<Run>) -> Line {
        Line::of(runs, self.small).toned(Tone::Soft)
    }
}

/// An imperial figure with its marks: `30 1/16″`, `15′-2″`; rounded ones begin with `≈`.
fn marked(shown: Shown) -> Vec<Run> {
    let mut plain = String::new();
    if !shown.exact {
        plain.push_str("\u{2248} ");
    }
    if shown.negative {
        plain.push('\u{2212}');
    }
    if let Some(feet) = shown.feet {
        plain.push_str(&format!("{feet}\u{2032}-"));
    }
    if shown.numerator == 0 {
        return vec![Run::Plain(format!("{plain}{}\u{2033}", shown.inches))];
    }
    if shown.inches > 0 || shown.feet.is_some() {
        plain.push_str(&format!("{} ", shown.inches));
    }
    let fraction = Run::Fraction(format!("{}/{}", shown.numerator, shown.denominator));
    let mark = Run::Plain("\u{2033}".into());
    match plain.is_empty() {
        true => vec![fraction, mark],
        false => vec![Run::Plain(plain), fraction, mark],
    }
}

/// A length as a screen reader says it: `30 1/16 inches`, or `764 millimetres`.
pub fn spoken((units, words): (System, Words), length: Length) -> String {
    if let (true, Some(figure)) = (units.is_metric(), length.metric().metric) {
        return counted(words, "units.spoken.millimetres", &words.decimal(&figure.number()));
    }
    spoken_imperial(words, length.inches())
}

/// A length of a room as a screen reader says it: `15 feet 2 inches`, or `4623 millimetres`.
pub fn spoken_of_a_room((units, words): (System, Words), length: Length) -> String {
    match units.is_metric() {
        true => spoken((units, words), length),
        false => spoken_imperial(words, length.inches().feet_and_inches()),
    }
}

fn spoken_imperial(words: Words, shown: Shown) -> String {
    let sign = if shown.negative { "\u{2212}" } else { "" };
    let figure = match (shown.inches, shown.numerator) {
        (whole, 0) => format!("{sign}{whole}"),
        (0, over) => format!("{sign}{over}/{}", shown.denominator),
        (whole, over) => format!("{sign}{whole} {over}/{}", shown.denominator),
    };
    let inches = (figure != "0" || shown.feet.is_none_or(|feet| feet == 0)).then(|| {
        counted(words, "units.spoken.inches", figure.trim_start_matches(if shown.feet.is_some() { sign } else { "" }))
    });
    let feet =
        shown.feet.filter(|feet| *feet > 0).map(|feet| counted(words, "units.spoken.feet", &format!("{sign}{feet}")));
    let told = feet.into_iter().chain(inches).collect::<Vec<_>>().join(" ");
    if shown.exact { told } else { say!(words, "units.spoken.about", figure = told) }
}

/// A figure and its unit; what is no whole number is spoken of as several.
fn counted(words: Words, unit: &str, figure: &str) -> String {
    match figure == "1" {
        true => say!(words, unit, n = 1_u32),
        false => say!(words, unit, n = figure),
    }
}

/// Millimetres without their unit, which the scale bar tells.
pub fn millimetres(words: Words, length: Length) -> String {
    length.metric().metric.map_or_else(String::new, |figure| words.decimal(&figure.number()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NIST SP 811 appendix B.8: an inch is 25.4 mm exactly.
    #[test]
    fn a_length_is_told_in_both_systems() {
        let rows = [
            (30 * 64 + 4, "30 1/16 inches", "764"),
            (10, "5/32 inches", "4"),
            (20, "5/16 inches", "7.9"),
            (70 * 64 + 32, "70 1/2 inches", "1791"),
            (-20, "\u{2212}5/16 inches", "\u{2212}7.9"),
            (64, "1 inch", "25.4"),
        ];
        for (sixty_fourths, inches, metric) in rows {
            let length = Length::from_sixty_fourths(sixty_fourths);
            assert_eq!(spoken((System::Imperial, Words::default()), length), inches);
            assert_eq!(millimetres(Words::default(), length), metric);
        }
    }

    #[test]
    fn inches_that_are_rounded_say_so() {
        assert_eq!(spoken((System::Imperial, Words::default()), Length::from_millimetres(600)), "about 23 5/8 inches");
    }

    /// NIST SP 811 appendix B.8: an inch is 25.4 mm exactly, so 30 1/16 in is 763.5875 mm.
    #[test]
    fn a_metric_book_has_millimetres_first() {
        let sizes = Sizes::on(Paper::Desk, System::Metric, Words::default());
        let label = sizes.length(Length::from_millimetres(764));
        assert_eq!(
            [label.lines[0].markup(), label.lines[1].markup()].map(|line| line.replace(" dx=\"-1\"", "")),
            ["764".to_string(), "\u{2248} 30 <tspan class=\"fr\">1/16</tspan>\u{2033}".to_string(),]
        );
        assert!(label.lines[0].size > label.lines[1].size);
        assert_eq!(
            spoken((System::Metric, Words::default()), Length::from_sixty_fourths(30 * 64 + 4)),
            "764 millimetres"
        );
        assert_eq!(spoken((System::Metric, Words::default()), Length::from_millimetres(1)), "1 millimetre");
    }

    #[test]
    fn a_room_is_told_in_feet_and_inches() {
        let sizes = Sizes::on(Paper::Desk, System::Imperial, Words::default()).of_rooms();
        let told = |inches: i64| Line::of(sizes.first(Length::from_inches(inches)), 1).markup();
        assert_eq!(
            [told(182), told(144), told(8)],
            ["15\u{2032}-2\u{2033}", "12\u{2032}-0\u{2033}", "0\u{2032}-8\u{2033}"]
        );
        let spoken = |inches: i64| spoken_of_a_room((System::Imperial, Words::default()), Length::from_inches(inches));
        assert_eq!(
            [spoken(182), spoken(144), spoken(8), spoken(13)],
            ["15 feet 2 inches", "12 feet", "8 inches", "1 foot 1 inch"]
        );
    }

    #[test]
    fn a_drawing_in_one_system_has_nothing_of_the_other() {
        let sizes = Sizes::on(Paper::Desk, System::MetricOnly, Words::default());
        let lines = |label: Label| label.lines.iter().map(Line::markup).collect::<Vec<_>>();
        assert_eq!(lines(sizes.length(Length::from_inches(24))), ["610"]);
        assert_eq!(lines(sizes.reading(Length::from_millimetres(600), "top")), ["600", "top"]);
        let limits = Limits { least: Some(Length::from_millimetres(600)), most: None };
        assert_eq!(sizes.limits(limits).map(lines), Some(vec!["needs at least 600".to_string()]));
        assert_eq!(sizes.beside(Length::from_inches(24)), None);
    }
}
