//! A language is a file: what it must hold, and how what is wrong with it is told.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use super::learnt::{first, learn};
use super::{Language, Tongues, say, tags};
use crate::units::{Currency, Date, LeadTime, Money};

fn words(tag: &str) -> super::Words {
    Language::named(tag).unwrap().words()
}

#[test]
fn every_file_of_the_theme_is_whole() {
    Language::check().unwrap();
    assert_eq!(tags().collect::<BTreeSet<_>>(), BTreeSet::from(["en", "es"]));
}

#[test]
fn a_sentence_takes_the_form_of_its_count() {
    assert_eq!(say!(words("en"), "units.selections", n = 1_usize), "1 selection");
    assert_eq!(say!(words("en"), "units.selections", n = 0_usize), "0 selections");
    assert_eq!(say!(words("es"), "units.selections", n = 1_usize), "1 selección");
    assert_eq!(say!(words("es"), "units.selections", n = 3_usize), "3 selecciones");
}

#[test]
fn rows_are_joined_as_the_language_does() {
    let row = |tag: &str, parts: &[&str]| words(tag).series(parts);
    assert_eq!(row("en", &["a", "b", "c"]), "a, b and c");
    assert_eq!(row("es", &["a", "b"]), "a y b");
    // The Real Academia's dictionary of doubts, at `y`: `e` before the sound i, `y` before a diphthong (from memory).
    assert_eq!(row("es", &["Ada", "Inés"]), "Ada e Inés");
    assert_eq!(row("es", &["agua", "hielo"]), "agua y hielo");
    assert_eq!(words("en").series_of_most(&["a", "b", "c", "d"], 2), "a, b and 2 more");
    assert_eq!(words("en").series::<&str>(&[]), "");
}

#[test]
fn days_amounts_and_times_are_the_languages_own() {
    let (day, time) = (Date::parse("2027-01-16").unwrap(), LeadTime::parse("6-8 weeks").unwrap());
    let amount = Money::new(318_000, Currency::USD);
    let said = |tag: &str| say!(words(tag), "item_says.set_aside", amount = amount, name = words(tag).day(day));
    assert_eq!(said("en"), "$3,180.00 for 16 Jan 2027");
    assert_eq!(said("es"), "3.180,00\u{a0}$ para 16 ene 2027");
    assert_eq!(say!(words("es"), "cover_says.takes", time = time), "Tarda 6 a 8 semanas.");
}

/// As `Intl.NumberFormat` of ICU 78 has it, with the data of CLDR 48; but that there `es` sets no point into four
/// figures, which every other Spanish does.
#[test]
fn amounts_and_figures_are_written_as_in_the_country_of_the_book() {
    let of = |tag: &str, country: &str, currency: &str| {
        let words = Tongues::default().in_country(Some(country.into())).named(tag).unwrap().words();
        let amount = Money::parse("12600.50", Currency::parse(currency).unwrap()).unwrap();
        let negative = Money::parse("-12600.50", Currency::parse(currency).unwrap()).unwrap();
        (words.amount(amount), words.amount(negative), words.decimal("25.4"))
    };
    let told = |amount: &str, negative: &str, figure: &str| (amount.into(), negative.into(), figure.into());
    assert_eq!(of("es", "ES", "EUR"), told("12.600,50\u{a0}€", "−12.600,50\u{a0}€", "25,4"));
    assert_eq!(of("es", "US", "USD"), told("$12,600.50", "−$12,600.50", "25.4"));
    assert_eq!(of("en", "US", "USD"), told("$12,600.50", "−$12,600.50", "25.4"));
    assert_eq!(of("en", "IE", "EUR"), told("€12,600.50", "−€12,600.50", "25.4"));
}

/// The first language's file with every word in capitals.
fn made_up() -> String {
    let shout = |line: &str| match line.split_once(": ") {
        Some((key, words)) if !line.trim_start().starts_with('#') && !line.contains(['{', '[']) => {
            format!("{key}: {}", words.to_uppercase())
        }
        _ => line.to_owned(),
    };
    first().lines().map(shout).collect::<Vec<_>>().join("\n")
}

#[test]
fn a_third_language_is_a_file_and_no_code() {
    let shouted = learn("qq", &made_up()).unwrap();
    assert_eq!(shouted.tag(), "qq");
    assert_eq!(say!(shouted.words(), "fit.no"), "DOES NOT FIT");
}

#[test]
fn what_is_wrong_with_a_file_is_told_by_file_and_line() {
    let line = |text: &str, of: &str| text.lines().position(|line| line.contains(of)).unwrap() + 1;
    let broken = |from: &str, to: &str| {
        let text = first().replacen(from, to, 1);
        let error = learn("qx", &text).unwrap_err();
        (text, error)
    };
    let (text, error) = broken("  verify: Verify in field\n", "");
    assert_eq!(
        error.to_string(),
        format!("`words/qx.yaml`, line {}, column 3: `fit.verify` is missing", line(&text, "  \"yes\": Fits"))
    );
    let (text, error) = broken("verify: Verify in field", "verify: Verify in field\n  verfiy: x");
    assert_eq!(
        error.to_string(),
        format!(
            "`words/qx.yaml`, line {}, column 11: `fit.verfiy` is a key of no page; `words/en.yaml` has no such key",
            line(&text, "verfiy")
        )
    );
    let (text, error) = broken("each: \"{gap} on each side\"", "each: \"{gup} on each side\"");
    assert_eq!(
        (error.at.line as usize, error.what.as_str()),
        (line(&text, "{gup}"), "`fit.gaps.each` has `{gup}`, which nothing fills")
    );
    let (_, error) = broken("each: \"{gap} on each side\"", "each: \"on each side\"");
    assert_eq!(error.what, "`fit.gaps.each` lacks `{gap}` in the form `other`");
    let (_, error) = broken("each: \"{gap} on each side\"", "each: \"{gap on each side\"");
    assert_eq!(error.what, "a brace of `{gap on each side` is not closed");
    let (_, error) = broken("plural: {one: \"i = 1 and v = 0\"}", "plural: {one: \"i = 1 and v = 0\", few: \"n = 2\"}");
    assert!(error.what.ends_with("lacks the plural form `few`"), "{error}");
    let (_, error) = broken("plural: {one: \"i = 1 and v = 0\"}", "plural: {one: one}");
    assert_eq!(error.what, "`one: one` is no plural rule as the CLDR writes it");
    let (_, error) = broken("  thousands: \",\"\n", "  thousands: \",\"\n  thousands: \".\"\n");
    assert_eq!(error.what, "`thousands` stands twice in its group");
}

/// Every text of a folder of this program or of its theme.
fn texts(folder: &Path, texts: &mut Vec<String>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        match path.extension().and_then(|ending| ending.to_str()) {
            _ if path.is_dir() => self::texts(&path, texts),
            Some("rs" | "html" | "js" | "css" | "typ") => texts.push(fs::read_to_string(path).unwrap()),
            _ => {}
        }
    }
}

/// What stands between quotation marks and reads as a key of a group that the first language has.
fn keys_in(text: &str) -> impl Iterator<Item = &str> {
    let is_key = |word: &&str| {
        word.contains('.') && !word.ends_with('.') && word.chars().all(|c| c.is_ascii_lowercase() || "._".contains(c))
    };
    text.split('"').skip(1).step_by(2).filter(is_key)
}

/// A pattern of a finding as it stands in code: its quotation marks escaped.
fn as_written(pattern: &str) -> String {
    format!("\"{}\"", pattern.replace('"', "\\\""))
}

#[test]
fn every_pattern_that_findings_are_worded_by_stands_in_the_code() {
    let mut all = Vec::new();
    texts(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), &mut all);
    // A text that goes on in the next line is one text.
    let lines = all.concat();
    let code: String =
        lines.split("\\\n").enumerate().map(|(at, part)| if at > 0 { part.trim_start() } else { part }).collect();
    for tag in tags() {
        for key in words(tag).keys() {
            let Some(pattern) = key.strip_prefix("findings.") else { continue };
            assert!(code.contains(&as_written(pattern)), "{tag}: no finding says `{pattern}`");
        }
    }
}

/// Keys made of a word of the book, a shape, or the answer of a server.
const MADE: &[&str] = &[
    "state.",
    "means.",
    "hand.by_",
    "hand.told_",
    "hand.no_",
    "act.is_",
    "act.wants_",
    "tape.",
    "lines.",
    "values.",
    "parts.",
    "fields.",
    "findings.",
    "cautions.",
    "language.",
    "abbreviations.list.",
    "item.",
    "paper.",
    "on_paper.",
    "delivery.of.",
    "trades.name.",
    "trades.whose.",
    "trades.lead.",
    "trades.fields.",
    "trades.tables.",
];

#[test]
fn every_key_that_code_says_has_words_and_no_words_are_left_over() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut all = Vec::new();
    ["src/assess/rules", "src/views", "src/drawings", "src/publish", "src/language", "themes/standard"]
        .iter()
        .for_each(|folder| texts(&root.join(folder), &mut all));
    let english = words("en").keys();
    let groups: BTreeSet<&str> = english.iter().filter_map(|key| key.split('.').next()).collect();
    let files = [".html", ".typ", ".json", ".yaml", ".jpg", ".css", ".js", ".pdf", ".svg"];
    // Rules of the review are no keys: they are written with a stroke.
    for key in all.iter().flat_map(|text| keys_in(text)) {
        let is_ours = key.split('.').next().is_some_and(|group| groups.contains(group));
        let is_file = files.iter().any(|ending| key.ends_with(ending));
        let of_itself = key.starts_with("language.");
        assert!(!is_ours || is_file || of_itself || english.contains(key), "`{key}` has no words");
    }
    let whole = all.concat();
    for key in english.iter().filter(|key| !MADE.iter().any(|group| key.starts_with(group))) {
        let last = key.rsplit('.').next().unwrap();
        let in_a_script = whole.contains(&format!("w.{key}"));
        assert!(whole.contains(&format!("\"{key}\"")) || in_a_script, "`{key}` ({last}) is said nowhere");
    }
}
