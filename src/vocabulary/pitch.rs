//! The steepest ceiling that a canopy is made for, read from a maker's words: `up to 30°`, `6/12`, `6 in 12`.

use super::supply::InWords;

/// The steepest slope that words allow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pitch {
    /// So many degrees; none for a level ceiling alone.
    Degrees(f64),
    /// Any slope.
    Any,
}

/// No angle that is read is anything but a number.
impl Eq for Pitch {}

impl InWords for Option<Pitch> {
    fn of_words(words: &str) -> Self {
        Pitch::read(words)
    }
}

impl Pitch {
    /// Whether a ceiling that slopes by so many degrees is not too steep. A tenth of a degree is nothing
    /// that a canopy feels.
    pub fn allows(self, slope: f64) -> bool {
        match self {
            Self::Any => true,
            Self::Degrees(most) => slope <= most + 0.1,
        }
    }

    /// What words say; none where they can be understood in no way, or in two.
    fn read(words: &str) -> Option<Self> {
        let plain = words.to_lowercase().replace(['°', 'º', '˚'], " degrees ").replace(['∕', '⁄', '∶'], "/");
        let tokens = tokens(&plain);
        let said = |wanted: &[&str]| {
            tokens.iter().any(|token| matches!(token, Token::Word(word) if wanted.contains(&word.as_str())))
        };
        let figures = angles(&tokens)?;
        if let Some(most) = figures.iter().copied().reduce(f64::max) {
            return Some(Self::Degrees(most));
        }
        let denied = said(&["not", "no", "none", "never", "non", "nicht", "kein", "keine"]);
        match (
            said(&["level", "flat", "eben", "ebene", "waagrecht", "waagerecht", "plano", "llano"]) || denied,
            said(&["any", "all", "every", "jede", "jeder", "alle", "cualquier", "cualquiera"]),
        ) {
            (true, false) => Some(Self::Degrees(0.0)),
            (false, true) => Some(Self::Any),
            _ => None,
        }
    }
}

/// A figure, a word or a mark between two figures.
#[derive(Clone, Debug, PartialEq)]
enum Token {
    Figure(f64),
    Word(String),
    Mark(char),
}

fn tokens(plain: &str) -> Vec<Token> {
    let mut found = Vec::new();
    let mut letters = plain.chars().peekable();
    while let Some(letter) = letters.next() {
        let mut run = String::from(letter);
        let figures = letter.is_ascii_digit();
        if !figures && !letter.is_alphabetic() {
            if matches!(letter, '/' | ':' | '%' | '"' | '\'' | '″' | '′') {
                found.push(Token::Mark(letter));
            }
            continue;
        }
        while let Some(next) =
            letters.next_if(|next| if figures { next.is_ascii_digit() || *next == '.' } else { next.is_alphabetic() })
        {
            run.push(next);
        }
        match run.trim_end_matches('.').parse() {
            Ok(figure) if figures => found.push(Token::Figure(figure)),
            _ => found.push(Token::Word(run)),
        }
    }
    // `6" in 12"` is `6 in 12`.
    found.retain(|token| !matches!(token, Token::Mark('"' | '\'' | '″' | '′')));
    found
}

/// Every angle in degrees that the words name; none where a figure is left whose unit nobody says.
fn angles(tokens: &[Token]) -> Option<Vec<f64>> {
    let mut found = Vec::new();
    let mut rest = tokens;
    loop {
        rest = match rest {
            [] => return Some(found),
            [Token::Figure(rise), Token::Mark('/' | ':'), Token::Figure(run), left @ ..] => {
                found.push(pitch(*rise, *run)?);
                left
            }
            [Token::Figure(rise), Token::Word(by), Token::Figure(run), left @ ..] if by == "in" => {
                found.push(pitch(*rise, *run)?);
                left
            }
            [Token::Figure(grade), Token::Mark('%'), left @ ..] => {
                found.push(pitch(*grade, 100.0)?);
                left
            }
            // `0-30 degrees`, `15 to 45 deg`: the unit stands after the last.
            [Token::Figure(degrees), left @ ..] if unit_follows(left) => {
                found.push(Some(*degrees).filter(|degrees| *degrees <= 90.0)?);
                left
            }
            [Token::Figure(_), ..] => return None,
            [_, left @ ..] => left,
        };
    }
}

/// Whether degrees are the unit of a figure: right after it, or after the next one of a range.
fn unit_follows(rest: &[Token]) -> bool {
    let is_unit = |token: &Token| matches!(token, Token::Word(word) if matches!(word.as_str(), "degrees" | "degree" | "deg" | "degs" | "grad" | "grados" | "grado"));
    match rest {
        [unit, ..] if is_unit(unit) => true,
        [Token::Figure(_), unit, ..] => is_unit(unit),
        [Token::Word(to), Token::Figure(_), unit, ..] if to == "to" => is_unit(unit),
        _ => false,
    }
}

/// Rise over run as an angle. A rise past its run is hardly a roof: it may be written the other way.
fn pitch(rise: f64, run: f64) -> Option<f64> {
    (run > 0.0 && rise <= run).then(|| (rise / run).atan().to_degrees())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: check values LT-08: a pitch of 6/12 is 26.6 degrees, 8/12 33.7.
    #[test]
    fn a_pitch_is_read_in_each_way_in_which_it_is_written() {
        for words in
            ["6/12", "6:12", "6 in 12", "up to 6-in-12", "6\" in 12\"", "max. pitch 6 : 12", "50 %", "4/12 to 6/12"]
        {
            let Some(Pitch::Degrees(degrees)) = Pitch::read(words) else { panic!("{words}") };
            assert!((degrees - 26.565).abs() < 0.001, "{words}: {degrees}");
        }
        for words in [
            "up to 30 degrees",
            "geeignet bis 30 Grad",
            "hasta 30 grados",
            "30°",
            "30 deg",
            "30deg.",
            "0-30°",
            "0° to 30°",
            "15 to 30 degrees",
            "30 degrees max",
        ] {
            assert_eq!(Pitch::read(words), Some(Pitch::Degrees(30.0)), "{words}");
        }
    }

    #[test]
    fn level_alone_any_slope_and_what_can_not_be_read() {
        for words in ["level ceilings only", "flat", "not for sloped ceilings", "none"] {
            assert_eq!(Pitch::read(words), Some(Pitch::Degrees(0.0)), "{words}");
        }
        assert_eq!(Pitch::read("any slope"), Some(Pitch::Any));
        for words in ["30", "6", "sloped", "yes", "12:6", "120 degrees", "see sheet", "6/0", "up to 30 or 6/12"] {
            assert_eq!(Pitch::read(words), None, "{words}");
        }
    }
}
