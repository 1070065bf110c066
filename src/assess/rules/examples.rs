//! Examples of the handbook in a book's own units: they are written in inches, feet and pounds.

use crate::units::{Area, Length, System, Weight};

/// No measure in an example is written longer: `10' 11 15/16"`.
const LONGEST: usize = 14;

const MILLIMETRE: i64 = 1_000_000;

/// A page with its examples, and what its prose quotes, as a book in these units is written: in whole millimetres,
/// in kilograms and in square metres where it is metric.
pub fn in_units(page: &str, units: System) -> String {
    parted(page, |text| example(text, units), str::to_string)
}

/// A page with primes at the figures of its prose, as pages print them.
pub fn with_primes(page: &str) -> String {
    parted(page, str::to_string, primes)
}

/// A page with what it quotes and its prose as two functions have them.
fn parted(page: &str, quoted: impl Fn(&str) -> String, prose: impl Fn(&str) -> String) -> String {
    let inline = |text: &str| {
        let parts = text.split('`').enumerate();
        let parts = parts.map(|(at, part)| if at % 2 == 1 { quoted(part) } else { prose(part) });
        parts.collect::<Vec<_>>().join("`")
    };
    let blocks = page.split("```").enumerate();
    let blocks = blocks.map(|(at, block)| if at % 2 == 1 { quoted(block) } else { inline(block) });
    blocks.collect::<Vec<_>>().join("```")
}

/// Quotes after figures are marks of inches and feet.
fn primes(text: &str) -> String {
    let mut before = ' ';
    let prime = |letter: char| {
        let told = match letter {
            '"' if before.is_ascii_digit() => '\u{2033}',
            '\'' if before.is_ascii_digit() => '\u{2032}',
            other => other,
        };
        before = letter;
        told
    };
    text.chars().map(prime).collect()
}

fn example(text: &str, units: System) -> String {
    if units.is_metric() { in_metric(text) } else { text.to_string() }
}

/// A text with each measure in imperial units written in metric ones.
pub fn in_metric(text: &str) -> String {
    let mut told = String::new();
    let mut rest = text;
    let mut before = ' ';
    while let Some(first) = rest.chars().next() {
        let begins = first.is_ascii_digit() && !before.is_alphanumeric() && !matches!(before, '/' | '.' | '-');
        if let Some((measure, after)) = measure_at(rest).filter(|_| begins) {
            told += &measure;
            (rest, before) = (after, 'm');
            continue;
        }
        told.push(first);
        before = first;
        rest = rest.strip_prefix(first).unwrap_or_default();
    }
    told
}

/// The longest imperial measure that a text begins with, in metric units, and what comes after it.
fn measure_at(text: &str) -> Option<(String, &str)> {
    let is_of_it = |letter: &char| letter.is_ascii_digit() || matches!(letter, ' ' | '/' | '.' | '\'' | '"');
    let reach = text.chars().take_while(is_of_it).take(LONGEST).count();
    let ends = text.char_indices().take(reach).filter(|(_, letter)| matches!(letter, '\'' | '"'));
    let ends: Vec<usize> = ends.map(|(at, letter)| at + letter.len_utf8()).collect();
    let marked = ends.into_iter().rev().find_map(|end| {
        let (written, after) = text.split_at_checked(end)?;
        Some((in_millimetres(Length::parse(written).ok()?), after))
    });
    marked.or_else(|| with_word(text))
}

/// As [`measure_at`], where the unit is a word.
fn with_word(text: &str) -> Option<(String, &str)> {
    [" sq ft", " lb", " ft"].into_iter().find_map(|unit| {
        let (number, after) = text.split_once(unit)?;
        let whole_word = !after.starts_with(char::is_alphanumeric);
        let is_number = number.chars().all(|letter| letter.is_ascii_digit() || matches!(letter, ' ' | '/' | '.'));
        let written = text.get(..number.len() + unit.len()).filter(|_| whole_word && is_number)?;
        let plain = |figure: String| figure.replace("≈ ", "").replace('²', "2");
        let measure = match unit {
            " sq ft" => plain(Area::parse(written).ok()?.metric().to_string()),
            " lb" => plain(Weight::parse(written).ok()?.metric().to_string()),
            _ => in_millimetres(Length::parse(written).ok()?),
        };
        Some((measure, after))
    })
}

fn in_millimetres(length: Length) -> String {
    format!("{} mm", (length.nanometres() + MILLIMETRE / 2) / MILLIMETRE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::RULES;

    /// Source: the inch is 25.4 mm (international yard and pound agreement, 1959).
    #[test]
    fn lengths_are_written_in_whole_millimetres_and_nothing_else_changes() {
        let told = [
            ("width: 30\"", "width: 762 mm"),
            ("size: 12' 0\" x 9' 6\"", "size: 3658 mm x 2896 mm"),
            ("[30 1/16\", 30\"]  # 1/8\" is usual", "[764 mm, 762 mm]  # 3 mm is usual"),
            ("needs: {power: 120 V 15 A 5-15}", "needs: {power: 120 V 15 A 5-15}"),
            ("on: 2027-01-14", "on: 2027-01-14"),
            ("model: \"K-30\"", "model: \"K-30\""),
            ("sold: {box holds: 9.7 sq ft}, weight: 18 lb", "sold: {box holds: 0.9 m2}, weight: 8.2 kg"),
            ("duct: \"20 ft\"", "duct: \"6096 mm\""),
        ];
        for (written, wanted) in told {
            assert_eq!(in_metric(written), wanted);
        }
        assert_eq!(in_units("30\"\n```yaml\na: 1\"\n```\n30\"", System::Metric), "30\"\n```yaml\na: 25 mm\n```\n30\"");
        assert_eq!(in_units("of `2\" above` at 3'-0\"", System::MetricOnly), "of `51 mm above` at 3'-0\"");
        assert_eq!(with_primes("of `2\" above` at 3'-0\""), "of `2\" above` at 3′-0″");
    }

    #[test]
    fn no_example_of_a_metric_book_is_in_inches_and_each_is_read_as_before() {
        for rule in RULES {
            let page: Vec<&str> = rule.docs.lines().map(|line| line.strip_prefix(' ').unwrap_or(line)).collect();
            let (page, told) = (page.join("\n"), in_units(&page.join("\n"), System::Metric));
            for (written, metric) in page.split("```").zip(told.split("```")).skip(1).step_by(2) {
                let inches = metric.char_indices().any(|(at, letter)| {
                    letter == '"' && metric[..at].ends_with(|before: char| before.is_ascii_digit())
                });
                assert!(!inches, "{}: {metric}", rule.code);
                let read =
                    |text: &str| serde_yaml::from_str::<serde_yaml::Value>(text.trim_start_matches("yaml")).is_ok();
                assert_eq!(read(written), read(metric), "{}: {metric}", rule.code);
            }
        }
    }
}
