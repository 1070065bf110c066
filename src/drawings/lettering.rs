//! The words and figures on a drawing, and how much room they take.

use super::scale::Mil;
use crate::language::next_fraction;

/// A piece of a line of lettering.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Run {
    Plain(String),
    /// Set as a true fraction by the font: `1/16`.
    Fraction(String),
}

/// One line of lettering.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    pub runs: Vec<Run>,
    pub size: Mil,
    pub tone: Tone,
}

/// How a line is inked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    Plain,
    Bold,
    /// The softer ink, for the second system of measure and for remarks.
    Soft,
    /// Bold, and shown on paper alone.
    OnPaper,
}

/// Lines that stay together, one under the other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    pub lines: Vec<Line>,
    /// Room between two lines, where a dimension line may run through.
    pub parting: Mil,
}

impl Line {
    /// Words in the plain ink, their fractions set as one each.
    pub fn words(text: impl Into<String>, size: Mil) -> Line {
        let text = text.into();
        let (mut runs, mut rest) = (Vec::new(), text.as_str());
        while let Some((before, fraction, after)) = next_fraction(rest) {
            runs.extend((!before.is_empty()).then(|| Run::Plain(before.to_string())));
            runs.push(Run::Fraction(fraction.to_string()));
            rest = after;
        }
        if runs.is_empty() || !rest.is_empty() {
            runs.push(Run::Plain(rest.to_string()));
        }
        Line { runs, size, tone: Tone::Plain }
    }

    pub fn of(runs: Vec<Run>, size: Mil) -> Line {
        Line { runs, size, tone: Tone::Plain }
    }

    pub fn toned(mut self, tone: Tone) -> Line {
        self.tone = tone;
        self
    }

    pub fn then(mut self, text: impl Into<String>) -> Line {
        self.runs.push(Run::Plain(text.into()));
        self
    }

    /// How wide the line is set.
    pub fn width(&self) -> Mil {
        let thousandths: i64 = self.runs.iter().map(run_width).sum();
        thousandths * self.size / 1000
    }

    /// From the top of the line's room to the next line's.
    pub fn height(&self) -> Mil {
        self.size * 11 / 10
    }

    /// From the top of the line's room to the foot of its letters.
    pub fn baseline(&self) -> Mil {
        self.size * 84 / 100
    }

    /// The inside of an SVG text element.
    pub fn markup(&self) -> String {
        let mut out = String::new();
        for (n, run) in self.runs.iter().enumerate() {
            match run {
                Run::Plain(text) => out.push_str(&escape(text)),
                Run::Fraction(text) if n > 0 => {
                    out.push_str(&format!(r#"<tspan class="fr" dx="-1">{text}</tspan>"#));
                }
                Run::Fraction(text) => {
                    out.push_str(&format!(r#"<tspan class="fr">{text}</tspan>"#));
                }
            }
        }
        out
    }
}

impl Label {
    /// Lines with no room between them.
    pub fn of(lines: Vec<Line>) -> Label {
        Label { lines, parting: 0 }
    }

    /// Lines with room between them for the dimension line.
    pub fn astride(lines: Vec<Line>) -> Label {
        Label { lines, parting: 4_000 }
    }

    pub fn width(&self) -> Mil {
        self.lines.iter().map(Line::width).max().unwrap_or(0)
    }

    pub fn height(&self) -> Mil {
        let lines: Mil = self.lines.iter().map(Line::height).sum();
        lines + self.parting * (self.lines.len().max(1) as Mil - 1)
    }
}

/// Words of a name broken so that no line is longer than `most` letters, where words allow it.
pub fn broken(text: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(shortened(word, most)),
        }
    }
    lines
}

/// A word that is too long for its place ends in a dash of three dots.
fn shortened(word: &str, most: usize) -> String {
    if word.chars().count() <= most.max(2) {
        return word.to_owned();
    }
    let kept: String = word.chars().take(most.max(2) - 1).collect();
    format!("{kept}…")
}

/// Text made safe inside SVG; what XML does not allow is left out.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\u{FFFE}' | '\u{FFFF}' => {}
            control if control.is_control() => {}
            other => out.push(other),
        }
    }
    out
}

/// Advances of Barlow Semi Condensed 600 from the space to the tilde, in thousandths of an em,
/// read from the font; its figures are tabular here.
const ADVANCES: [i64; 95] = [
    200, 302, 315, 642, 507, 802, 635, 153, 298, 298, 380, 465, 232, 364, 242, 417, 507, 507, 507, 507, 507, 507, 507,
    507, 507, 507, 304, 266, 465, 465, 465, 456, 789, 552, 542, 533, 545, 513, 489, 537, 557, 243, 512, 549, 493, 627,
    588, 544, 526, 521, 537, 513, 516, 557, 540, 771, 538, 528, 480, 366, 417, 366, 439, 457, 213, 478, 498, 477, 498,
    484, 333, 490, 491, 235, 231, 478, 219, 747, 491, 490, 502, 502, 342, 446, 328, 489, 460, 677, 466, 446, 412, 334,
    180, 334, 501,
];

fn run_width(run: &Run) -> i64 {
    match run {
        Run::Plain(text) => text.chars().map(advance).sum(),
        // The font's small figures are at most 317 wide, its fraction bar 227.
        Run::Fraction(text) => text.chars().map(|c| if c == '/' { 227 } else { 317 }).sum(),
    }
}

/// A letter's room; what the font does not have is taken as wide.
fn advance(letter: char) -> i64 {
    let place = (letter as usize).wrapping_sub(' ' as usize);
    match letter {
        '\u{2032}' => 487,
        '\u{2033}' => 361,
        '\u{a0}' => 200,
        '\u{b7}' => 220,
        '\u{d7}' => 413,
        '\u{b0}' => 369,
        '\u{e0}'..='\u{24f}' => 640,
        _ => ADVANCES.get(place).copied().unwrap_or(1000),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fraction_keeps_a_real_space_before_it() {
        let runs = vec![Run::Plain("30 ".into()), Run::Fraction("1/16".into())];
        let line = Line::of(runs, 14_000).then("\u{2033}");
        assert_eq!(line.markup(), "30 <tspan class=\"fr\" dx=\"-1\">1/16</tspan>\u{2033}");
    }

    #[test]
    fn a_fraction_in_words_is_set_as_one() {
        let line = Line::words("water, 1/4\u{2033} cold", 1);
        assert_eq!(line.markup(), "water, <tspan class=\"fr\" dx=\"-1\">1/4</tspan>\u{2033} cold");
    }

    #[test]
    fn names_cannot_break_the_drawing() {
        assert_eq!(Line::words("a <b> & \"c\"\u{0}", 1).markup(), "a &lt;b&gt; &amp; &quot;c&quot;");
    }

    #[test]
    fn a_long_name_is_broken_between_words_and_cut_inside_one() {
        assert_eq!(broken("tall cabinet with a very", 12), ["tall cabinet", "with a very"]);
        assert_eq!(broken("Oberflächenbehandlung", 8), ["Oberflä…"]);
    }
}
