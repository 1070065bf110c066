//! Sizes of a duct that their words write without a unit: `150 dia`, `220 x 90`, `3-1/4 x 10`.

/// What follows a diameter.
const DIAMETERS: [&str; 5] = ["dia", "dia.", "diam", "diam.", "diameter"];
/// What stands between two sides.
const TIMES: [&str; 3] = ["x", "×", "by"];
/// What has two sides and is no duct, by the beginnings of words.
const OTHERS: [&str; 11] =
    ["stud", "joist", "batten", "timber", "rafter", "noggin", "lath", "post", "beam", "tile", "bend"];
/// What says of two figures what they are in, or that they are no sides.
const UNITS: [&str; 14] =
    ["mm", "cm", "m", "in", "in.", "inch", "inches", "ft", "feet", "\"", "″", "°", "deg", "degrees"];

/// A text in small letters in which each such size has its unit: no duct is as many inches wide as it is millimetres.
pub(super) fn with_units(lower: &str) -> String {
    let phrases = lower.split_inclusive([',', ';']);
    phrases.map(of_phrase).collect()
}

/// What says that sides are those of a duct, where they do not begin the phrase: `through a 90 x 45 wall`.
const DUCTS: [&str; 16] = [
    "duct", "channel", "flat", "rectang", "kanal", "conducto", "conduit", "galvan", "metal", "steel", "alumin",
    "plastic", "pvc", "oval", "stack", "tubo",
];

fn of_phrase(phrase: &str) -> String {
    let begins = phrase.trim_start().starts_with(|letter: char| letter.is_ascii_digit());
    let is_of_a_duct = begins || DUCTS.iter().any(|word| phrase.contains(word));
    let lead = phrase.get(..phrase.len() - phrase.trim_start().len()).unwrap_or_default();
    let spaced = phrase.replace('×', " x ");
    let words: Vec<String> = spaced.split_whitespace().flat_map(apart).collect();
    let mut written: Vec<String> = Vec::with_capacity(words.len());
    for (at, word) in words.iter().enumerate() {
        let before = at.checked_sub(1).and_then(|before| words.get(before));
        let next = words.get(at + 1).map(String::as_str).unwrap_or_default();
        let is_second = before.is_some_and(|sign| TIMES.contains(&sign.as_str()));
        let first = at.checked_sub(2).and_then(|first| words.get(first));
        let of_sides = first.filter(|_| is_second && is_of_a_duct).and_then(|first| unit_of_sides(first, word, next));
        let of_round = || DIAMETERS.contains(&bare(next)).then(|| unit_of_round(word)).flatten();
        let Some(unit) = of_sides.or_else(of_round) else {
            written.push(word.clone());
            continue;
        };
        // Inches stand after both sides; millimetres after the second are both's.
        if let (true, Some(first)) =
            (is_second && unit == "\"", at.checked_sub(2).and_then(|first| written.get_mut(first)))
        {
            first.push_str(unit);
        }
        written.push(format!("{}{unit}{}", bare(word), word.get(bare(word).len()..).unwrap_or_default()));
    }
    format!("{lead}{}", written.join(" "))
}

/// `220x90` as three words, `150dia` as two.
fn apart(word: &str) -> Vec<String> {
    let is_number = |text: &str| text.starts_with(|letter: char| letter.is_ascii_digit());
    if let Some((one, other)) = word.split_once('x').filter(|(one, other)| is_number(one) && is_number(other)) {
        return vec![one.to_owned(), "x".to_owned(), other.to_owned()];
    }
    let digits = word.trim_start_matches(|letter: char| letter.is_ascii_digit());
    match (digits.len() < word.len() && DIAMETERS.contains(&bare(digits)), word.strip_suffix(digits)) {
        (true, Some(number)) => vec![number.to_owned(), digits.to_owned()],
        _ => vec![word.to_owned()],
    }
}

/// Without the signs that end a phrase.
fn bare(word: &str) -> &str {
    word.trim_end_matches([',', ';', ')'])
}

/// The unit of two sides that have none.
fn unit_of_sides(one: &str, other: &str, next: &str) -> Option<&'static str> {
    let ends_there = bare(other).len() < other.len();
    let is_other = OTHERS.iter().any(|word| next.starts_with(word)) || UNITS.contains(&bare(next));
    if is_other && !ends_there {
        return None;
    }
    let whole = |text: &str| bare(text).parse::<u32>().ok();
    match (whole(one), whole(other)?) {
        (Some(40..=400), 40..=400) => Some(" mm"),
        // Sizes with a quarter of an inch are those of a rectangular duct in a wall.
        (None, 8..=14) if one.ends_with("/4") || one.ends_with(['¼', '½', '¾']) => Some("\""),
        _ => None,
    }
}

/// The unit of a diameter that has none.
fn unit_of_round(word: &str) -> Option<&'static str> {
    match word.parse::<u32>().ok()? {
        40..=400 => Some(" mm"),
        3..=16 => Some("\""),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Duct, InWords};
    use super::*;

    #[test]
    fn a_size_without_a_unit_is_read_in_the_one_that_it_can_be_in() {
        for (words, read) in [
            ("150 dia rigid duct, 1.2 m", "150 mm dia rigid duct, 1.2 m"),
            ("150dia. rigid", "150 mm dia. rigid"),
            ("6 dia, 9 ft", "6\" dia, 9 ft"),
            ("220 x 90, 3 m", "220 x 90 mm, 3 m"),
            ("220x90 flat", "220 x 90 mm flat"),
            ("3-1/4 x 10 galvanized, 8 ft", "3-1/4\" x 10\" galvanized, 8 ft"),
            ("3 1/4 x 12, 8 ft", "3 1/4\" x 12\", 8 ft"),
            ("3¼ × 10 duct", "3¼\" x 10\" duct"),
        ] {
            assert_eq!(with_units(words), read, "{words}");
        }
        for whole in [
            "220 x 90 mm flat",
            "3 1/4\" x 10\", 8 ft",
            "8\" round, 2 x 45° bends",
            "8\" round between 2 x 6 studs",
            "through 100 x 50 joists",
            "150 mm rigid, through the 90 x 45 wall",
            "150 mm, hatch 300 x 300 in the ceiling",
            "150 mm, 2 x 90 bends",
            "8\" dia",
        ] {
            assert_eq!(with_units(whole), whole, "{whole}");
        }
    }

    #[test]
    fn a_duct_has_its_size_however_it_is_written() {
        let narrowest = |words: &str| Duct::of_words(words).pipe.narrowest;
        for (words, is) in [
            ("conducto rígido Ø150, 3 m, a cubierta", "150 mm"),
            ("Rundrohr Ø 150, 3 m, ein Bogen 90°", "150 mm"),
            ("Spiralrohr NW 150, 3 m, übers Dach", "150 mm"),
            ("150 dia rigid duct, 1.2 m", "150 mm"),
            ("Ø 120 mm, 2 m", "120 mm"),
            ("Ø 6 in, 9 ft", "6\""),
            ("Flachkanal 220 x 90, 3 m", "220 x 90 mm"),
            ("3-1/4 x 10 galvanized, 8 ft to wall cap", "3 1/4\" x 10\""),
        ] {
            assert!(narrowest(is).is_some());
            assert_eq!(narrowest(words), narrowest(is), "{words}");
        }
        // What is not used has no size here.
        let collar = "8\" round, transition from the 3 1/4\" x 14\" collar is not needed, 9 ft";
        let grille = "125 mm wall grille is not used; 150 mm round, 1.2 m, cowl outside";
        assert_eq!((narrowest(collar), narrowest(grille)), (narrowest("8\""), narrowest("150 mm")));
        let bent = Duct::of_words("Rundrohr Ø 150, 3 metros, ein Bogen 90°").pipe;
        assert_eq!((bent.bends, bent.run), (1, Some("3 m".parse().unwrap())));
        assert_eq!(Duct::of_words("8 inch rigid metal, nine feet, out the roof").pipe.run, Some("9'".parse().unwrap()));
    }
}
