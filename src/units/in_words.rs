//! Numbers and stretches of time in words: `two`, `zwei Wochen`, `6 semanas`; understood to say how they are written.

use super::date::LeadTime;

/// Numbers as they are written in words: English, German, Spanish and French.
const NUMBERS: [(u32, &[&str]); 13] = [
    (1, &["one", "a", "an", "ein", "eine", "einen", "eins", "un", "una", "uno", "une", "single"]),
    (2, &["two", "zwei", "dos", "deux", "pair", "couple", "both", "paar", "par", "paire"]),
    (3, &["three", "drei", "tres", "trois"]),
    (4, &["four", "vier", "cuatro", "quatre"]),
    (5, &["five", "fünf", "cinco", "cinq"]),
    (6, &["six", "sechs", "seis"]),
    (7, &["seven", "sieben", "siete", "sept"]),
    (8, &["eight", "acht", "ocho", "huit"]),
    (9, &["nine", "neun", "nueve", "neuf"]),
    (10, &["ten", "zehn", "diez", "dix"]),
    (11, &["eleven", "elf", "once", "onze"]),
    (12, &["twelve", "zwölf", "doce", "douze", "dozen", "dutzend", "docena", "douzaine"]),
    (20, &["twenty", "zwanzig", "veinte", "vingt"]),
];

/// What such a time is called: German, Spanish and French.
const TIMES: [(&str, &[&str]); 6] = [
    ("weeks", &["woche", "wochen", "semana", "semanas", "semaine", "semaines", "wo"]),
    (
        "working days",
        &[
            "arbeitstag",
            "arbeitstage",
            "arbeitstagen",
            "werktag",
            "werktage",
            "werktagen",
            "días laborables",
            "dias laborables",
            "días hábiles",
            "dias habiles",
            "jours ouvrables",
            "jours ouvrés",
        ],
    ),
    ("days", &["tag", "tage", "tagen", "día", "dia", "días", "dias", "jour", "jours"]),
    ("months", &["monat", "monate", "monaten", "mes", "meses", "mois"]),
    (
        "in stock",
        &[
            "auf lager",
            "ab lager",
            "lagernd",
            "lagerware",
            "sofort lieferbar",
            "en stock",
            "disponible",
            "en existencia",
            "en existencias",
            "entrega inmediata",
        ],
    ),
    ("to", &["bis", "a", "à", "hasta"]),
];

/// The number that a word stands for; `a pair` and `a dozen` are numbers too.
pub fn number(words: &str) -> Option<u32> {
    let words = words.trim().to_lowercase();
    let last = words.split_whitespace().last()?;
    // `a pair`, `una docena`: the first word says one of them.
    let first = words.split_whitespace().next().filter(|first| *first != last);
    let is_one = |word: &str| of(word) == Some(1);
    let known = match (first, words.split_whitespace().count()) {
        (None, 1) => true,
        (Some(first), 2) => is_one(first),
        _ => false,
    };
    known.then(|| of(last))?
}

fn of(word: &str) -> Option<u32> {
    NUMBERS.iter().find(|(_, words)| words.contains(&word)).map(|(number, _)| *number)
}

/// A text that begins with a number in words, with its figure instead: `two boxes` is `2 boxes`.
pub fn with_figure(text: &str) -> Option<String> {
    if let Some(number) = number(text) {
        return Some(number.to_string());
    }
    let (first, rest) = text.trim().split_once(char::is_whitespace)?;
    let figure = of(&first.to_lowercase())?;
    Some(format!("{figure} {}", rest.trim()))
}

/// The same stretch of time as it is written here, if it is one in other words. From when it counts may follow and be left
/// out of it: `2 weeks from template`.
pub fn stretch(text: &str) -> Option<String> {
    let (text, written) = in_these_words(text);
    let as_far_as = |length: usize| {
        let (stretch, rest) = written.split_at_checked(length)?;
        let stretch = stretch.join(" ");
        let is_longer = rest.iter().any(|word| word.contains(|letter: char| letter.is_ascii_digit()));
        (!is_longer && LeadTime::parse_as_written(&stretch).is_ok()).then_some(stretch)
    };
    (1..=written.len()).rev().find_map(as_far_as).filter(|written| *written != text)
}

/// The same where all of the words are of it.
pub fn whole_stretch(text: &str) -> Option<String> {
    let (text, written) = in_these_words(text);
    Some(written.join(" ")).filter(|written| *written != text)
}

/// A text in small letters, and its words with those of times and numbers as they are written here.
fn in_these_words(text: &str) -> (String, Vec<String>) {
    let text = text.trim().to_lowercase();
    let in_english = |words: &str| {
        let time = TIMES.iter().find(|(_, others)| others.contains(&words)).map(|(time, _)| (*time).to_string());
        time.or_else(|| of(words).map(|number| number.to_string()))
    };
    let words: Vec<&str> = text.split_whitespace().collect();
    let mut written = Vec::new();
    let mut rest = words.as_slice();
    while let Some((first, others)) = rest.split_first() {
        let two = others.first().map(|second| format!("{first} {second}"));
        let two = two.and_then(|two| in_english(&two));
        rest = if two.is_some() { others.get(1..).unwrap_or_default() } else { others };
        // After a number `a` is the Spanish `to`; before one it is `one`.
        let is_to = !written.is_empty() && matches!(*first, "a" | "à");
        let one = if is_to { Some("to".to_string()) } else { in_english(first) };
        written.push(two.or(one).unwrap_or_else(|| (*first).to_string()));
    }
    (text, written)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_and_times_in_words_are_understood() {
        for (words, figure) in [("two", 2), ("Zwei", 2), ("tres", 3), ("a pair", 2), ("one", 1), ("una docena", 12)] {
            assert_eq!(number(words), Some(figure), "{words}");
        }
        for words in ["", "two boxes", "a lot", "several"] {
            assert_eq!(number(words), None, "{words}");
        }
        assert_eq!(with_figure("two boxes").as_deref(), Some("2 boxes"));
        assert_eq!(with_figure("boxes two"), None);
    }

    #[test]
    fn a_stretch_of_time_in_other_words_is_told_in_these() {
        let rows = [
            ("6 Wochen", "6 weeks"),
            ("6 semanas", "6 weeks"),
            ("6-8 Wochen", "6-8 weeks"),
            ("6 bis 8 Wochen", "6 to 8 weeks"),
            ("4 a 6 semanas", "4 to 6 weeks"),
            ("zwei Wochen", "2 weeks"),
            ("ein Monat", "1 months"),
            ("10 Arbeitstage", "10 working days"),
            ("10 días hábiles", "10 working days"),
            ("auf Lager", "in stock"),
            ("en stock", "in stock"),
            ("two weeks", "2 weeks"),
            ("six to eight weeks", "6 to 8 weeks"),
            ("3 semaines", "3 weeks"),
            ("2 weeks from template", "2 weeks"),
            ("3-4 weeks after deposit", "3-4 weeks"),
            ("6 semanas desde el pedido", "6 weeks"),
            ("in stock at the merchant's", "in stock"),
        ];
        for (written, said) in rows {
            assert_eq!(stretch(written).as_deref(), Some(said), "{written}");
        }
        for written in ["soon", "6", "bald", "6 weeks", "2 weeks or maybe 10"] {
            assert_eq!(stretch(written), None, "{written}");
        }
    }
}
