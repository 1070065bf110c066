//! Lengths as a drawing letters them: the book's own system first, the other in the softer ink.

use super::lettering::{Label, Line, Run, Tone};
use super::scale::{Mil, Paper};
use crate::drawings::sizes::{Between, Limits, Units};
use crate::language::{Part, Words, say};
use crate::units::length::{Grain, Length};

/// The sizes of lettering on a paper, and the system of measure that goes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sizes {
    /// A measured figure.
    pub figure: Mil,
    /// The other system, words and remarks.
    pub small: Mil,
    pub units: Units,
    pub words: Words,
}

impl Sizes {
    /// What reads well at arm's length, and what still does on a telephone.
    pub const fn on(paper: Paper, units: Units, words: Words) -> Sizes {
        match paper {
            Paper::Desk => Sizes { figure: 14_000, small: 12_500, units, words },
            Paper::Phone => Sizes { figure: 13_500, small: 12_000, units, words },
        }
    }

    /// A length in the book's own system: `30 1/16″`, or `764`.
    pub fn first(self, length: Length) -> Vec<Run> {
        match self.units {
            Units::Imperial => inches(length),
            Units::Metric => vec![Run::Plain(exact_millimetres(length))],
        }
    }

    /// The same in the other system: `764`, or `30 1/16″`.
    pub fn second(self, length: Length) -> Vec<Run> {
        match self.units {
            Units::Imperial => vec![Run::Plain(millimetres(length))],
            Units::Metric => inches(length),
        }
    }

    /// A line in the softer ink with a length in the other system.
    pub fn beside(self, length: Length) -> Line {
        Line::of(self.second(length), self.small).toned(Tone::Soft)
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
        let mut below = self.second(length);
        if !words.is_empty() {
            below.push(Run::Plain(format!(" \u{b7} {words}")));
        }
        self.told(line, below)
    }

    /// One height or two.
    pub fn between(self, size: Between) -> Label {
        if size.least == size.most {
            return self.length(size.least);
        }
        let line = Line::of(self.both(Sizes::first, size), self.figure);
        self.told(line, self.both(Sizes::second, size))
    }

    fn both(self, system: fn(Sizes, Length) -> Vec<Run>, size: Between) -> Vec<Run> {
        let both = [("least", system(self, size.least)), ("most", system(self, size.most))];
        self.filled("units.range", &both)
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
            (Some(least), Some(most)) => {
                let size = Between { least, most };
                (self.both(Sizes::first, size), self.both(Sizes::second, size))
            }
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

    fn told(self, line: Line, below: Vec<Run>) -> Label {
        Label::astride(vec![line, Line::of(below, self.small).toned(Tone::Soft)])
    }
}

/// Inches with their mark: `30 1/16″`; rounded ones begin with `≈`.
pub fn inches(length: Length) -> Vec<Run> {
    let shown = length.imperial(Grain::ThirtySecond).inches();
    let mut plain = String::new();
    if !shown.exact {
        plain.push_str("\u{2248} ");
    }
    if shown.negative {
        plain.push('\u{2212}');
    }
    if shown.numerator == 0 {
        return vec![Run::Plain(format!("{plain}{}\u{2033}", shown.inches))];
    }
    if shown.inches > 0 {
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
pub fn spoken((units, words): (Units, Words), length: Length) -> String {
    let (figure, unit) = match units {
        Units::Imperial => (inches(length), "units.spoken.inches"),
        Units::Metric => (vec![Run::Plain(exact_millimetres(length))], "units.spoken.millimetres"),
    };
    let figure: String = figure
        .into_iter()
        .map(|run| match run {
            Run::Plain(text) | Run::Fraction(text) => text,
        })
        .collect();
    let figure = figure.replace('\u{2033}', "");
    let (about, figure) = figure.strip_prefix("\u{2248} ").map_or((false, figure.as_str()), |rest| (true, rest));
    let figure = if about { say!(words, "units.spoken.about", figure = figure) } else { figure.to_owned() };
    // What is no whole number is spoken of as several.
    match figure == "1" {
        true => say!(words, unit, n = 1_u32),
        false => say!(words, unit, n = figure),
    }
}

/// Millimetres to a tenth, without their unit; rounded ones begin with `≈`.
fn exact_millimetres(length: Length) -> String {
    let size = length.nanometres().unsigned_abs();
    let tenths = (size + 50_000) / 100_000;
    let about = if size.is_multiple_of(100_000) { "" } else { "\u{2248} " };
    let sign = if length.is_negative() && tenths > 0 { "\u{2212}" } else { "" };
    match (tenths / 10, tenths % 10) {
        (whole, 0) => format!("{about}{sign}{whole}"),
        (whole, tenth) => format!("{about}{sign}{whole}.{tenth}"),
    }
}

/// Millimetres without their unit, which the scale bar tells: to a tenth below 50, whole from
/// there up.
pub fn millimetres(length: Length) -> String {
    const MM: i64 = 1_000_000;
    let size = length.nanometres().unsigned_abs();
    let sign = if length.is_negative() { "\u{2212}" } else { "" };
    let tenths = (size + 50_000) / 100_000;
    if size >= 50 * MM.unsigned_abs() || tenths.is_multiple_of(10) {
        return format!("{sign}{}", (size + 500_000) / 1_000_000);
    }
    format!("{sign}{}.{}", tenths / 10, tenths % 10)
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
            assert_eq!(spoken((Units::Imperial, Words::default()), length), inches);
            assert_eq!(millimetres(length), metric);
        }
    }

    #[test]
    fn inches_that_are_rounded_say_so() {
        assert_eq!(spoken((Units::Imperial, Words::default()), Length::from_millimetres(600)), "about 23 5/8 inches");
    }

    /// NIST SP 811 appendix B.8: an inch is 25.4 mm exactly, so 30 1/16 in is 763.5875 mm.
    #[test]
    fn a_metric_book_has_millimetres_first_and_to_a_tenth() {
        let sizes = Sizes::on(Paper::Desk, Units::Metric, Words::default());
        let label = sizes.length(Length::from_millimetres(764));
        assert_eq!(
            [label.lines[0].markup(), label.lines[1].markup()].map(|line| line.replace(" dx=\"-1\"", "")),
            ["764".to_string(), "\u{2248} 30 <tspan class=\"fr\">3/32</tspan>\u{2033}".to_string(),]
        );
        assert!(label.lines[0].size > label.lines[1].size);
        assert_eq!(
            spoken((Units::Metric, Words::default()), Length::from_sixty_fourths(30 * 64 + 4)),
            "about 763.6 millimetres"
        );
        assert_eq!(spoken((Units::Metric, Words::default()), Length::from_millimetres(1)), "1 millimetre");
    }
}
