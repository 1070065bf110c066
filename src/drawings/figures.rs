//! Lengths as a drawing letters them: inches with true fractions, millimetres in the softer ink.

use super::lettering::{Label, Line, Run, Tone};
use super::scale::{Mil, Paper};
use crate::drawings::sizes::{Between, Limits};
use crate::units::length::{Grain, Length};

/// The sizes of lettering on a paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sizes {
    /// A measured figure.
    pub figure: Mil,
    /// Millimetres, words and remarks.
    pub small: Mil,
}

impl Sizes {
    /// What reads well at arm's length, and what still does on a telephone.
    pub const fn on(paper: Paper) -> Sizes {
        match paper {
            Paper::Desk => Sizes { figure: 14_000, small: 12_500 },
            Paper::Phone => Sizes { figure: 13_500, small: 12_000 },
        }
    }

    /// A length astride its dimension line: inches above, millimetres below.
    pub fn length(self, length: Length) -> Label {
        self.told(Line::of(inches(length), self.figure), millimetres(length))
    }

    /// As [`Sizes::length`], with words after the inches.
    pub fn length_of(self, length: Length, words: &str) -> Label {
        let line = Line::of(inches(length), self.figure).then(format!(" {words}"));
        self.told(line, millimetres(length))
    }

    /// As [`Sizes::length`], with words after the millimetres.
    pub fn reading(self, length: Length, words: &str) -> Label {
        let line = Line::of(inches(length), self.figure).toned(Tone::Bold);
        let below = match words {
            "" => millimetres(length),
            words => format!("{} \u{b7} {words}", millimetres(length)),
        };
        self.told(line, below)
    }

    /// One height or two.
    pub fn between(self, size: Between, words: &str) -> Label {
        if size.least == size.most {
            return self.length_of(size.least, words);
        }
        let mut runs = inches(size.least);
        runs.push(Run::Plain(" to ".into()));
        runs.extend(inches(size.most));
        let line = Line::of(runs, self.figure).then(format!(" {words}"));
        let below = format!("{} to {}", millimetres(size.least), millimetres(size.most));
        self.told(line, below)
    }

    /// What the maker asks: `at least 24″`.
    pub fn limits(self, limits: Limits) -> Option<Label> {
        let (line, below) = match (limits.least, limits.most) {
            (Some(least), Some(most)) if least == most => (Line::of(inches(least), self.small), millimetres(least)),
            (Some(least), Some(most)) => {
                let mut runs = inches(least);
                runs.push(Run::Plain(" to ".into()));
                runs.extend(inches(most));
                let below = format!("{} to {}", millimetres(least), millimetres(most));
                (Line::of(runs, self.small), below)
            }
            (Some(least), None) => (Line::of(inches(least), self.small).after("at least "), millimetres(least)),
            (None, Some(most)) => (Line::of(inches(most), self.small).after("at most "), millimetres(most)),
            (None, None) => return None,
        };
        Some(self.told(line.after("needs "), below))
    }

    /// A soft remark, broken into lines of at most `most` letters.
    pub fn remark(self, text: &str, most: usize) -> Label {
        let lines = super::lettering::broken(text, most).into_iter();
        Label::of(lines.map(|line| Line::words(line, self.small).toned(Tone::Soft)).collect())
    }

    fn told(self, line: Line, below: String) -> Label {
        Label::astride(vec![line, Line::words(below, self.small).toned(Tone::Soft)])
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

/// Inches as a screen reader says them: `30 1/16 inches`.
pub fn spoken(length: Length) -> String {
    let inches: String = inches(length)
        .into_iter()
        .map(|run| match run {
            Run::Plain(text) | Run::Fraction(text) => text,
        })
        .collect();
    let inches = inches.replace('\u{2033}', "").replace("\u{2248} ", "about ");
    let one = if inches == "1" { "inch" } else { "inches" };
    format!("{inches} {one}")
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
            assert_eq!(spoken(length), inches);
            assert_eq!(millimetres(length), metric);
        }
    }

    #[test]
    fn inches_that_are_rounded_say_so() {
        assert_eq!(spoken(Length::from_millimetres(600)), "about 23 5/8 inches");
    }
}
