//! The theme's ink on its paper, by day and by night, against the contrast that WCAG 2.2 asks for.

use std::collections::BTreeMap;

/// Least contrast of text (WCAG 2.2, success criterion 1.4.3, level AA).
const TEXT: f64 = 4.5;
/// Least contrast of what must be seen and is no text (success criterion 1.4.11).
const NON_TEXT: f64 = 3.0;

/// A colour as CSS writes it: `#767676`.
fn channels(colour: &str) -> [f64; 3] {
    let hex = colour.strip_prefix('#').unwrap_or_else(|| panic!("`{colour}` is no colour"));
    let hex: String = if hex.len() == 3 { hex.chars().flat_map(|c| [c, c]).collect() } else { hex.into() };
    [0, 2, 4].map(|at| f64::from(u8::from_str_radix(&hex[at..at + 2], 16).expect("two hex digits")) / 255.0)
}

/// Relative luminance, as WCAG 2.2 defines it.
fn luminance(colour: &str) -> f64 {
    let linear = |channel: f64| match channel <= 0.04045 {
        true => channel / 12.92,
        false => ((channel + 0.055) / 1.055).powf(2.4),
    };
    let [red, green, blue] = channels(colour).map(linear);
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

fn contrast(one: &str, other: &str) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

/// The colours of the theme: by day, and as they are changed by night.
fn colours() -> [BTreeMap<String, String>; 2] {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/themes/standard/css/10-tokens.css");
    let css = std::fs::read_to_string(path).expect("the theme's tokens");
    let (day, night) = css.split_once("prefers-color-scheme: dark").expect("tokens for the night");
    let night = night.split_once('\n').expect("one line").0;
    let read = |css: &str| -> BTreeMap<String, String> {
        let tokens = css.split("--").skip(1).filter_map(|token| token.split_once(": #"));
        tokens
            .map(|(name, rest)| (name.into(), format!("#{}", rest.split([';', ' ', '}']).next().unwrap_or(""))))
            .collect()
    };
    let day = read(day);
    let mut by_night = day.clone();
    by_night.extend(read(night));
    [day, by_night]
}

/// Source: check values SD-21; top check value 25: on white #767676 has 4.542 and passes, #777777 4.478 and
/// fails; #949494 has 3.033, #959595 2.995.
#[test]
fn contrast_is_reckoned_as_published() {
    for (grey, ratio) in [("#767676", 4.542), ("#777777", 4.478), ("#949494", 3.033), ("#959595", 2.995)] {
        let ours = contrast(grey, "#fff");
        assert!((ours - ratio).abs() < 0.0006, "{grey}: {ours}");
    }
    assert!(contrast("#767676", "#fff") >= TEXT && contrast("#777777", "#fff") < TEXT);
    assert!(contrast("#949494", "#fff") >= NON_TEXT && contrast("#959595", "#fff") < NON_TEXT);
}

#[test]
fn ink_can_be_read_on_every_paper_by_day_and_by_night() {
    let [day, night] = colours();
    assert_ne!(day["paper"], night["paper"], "the night has a paper of its own");
    for tokens in [&day, &night] {
        for (ink, ground) in
            [("ink", "paper"), ("ink", "paper-2"), ("ink-2", "paper"), ("ink-2", "paper-2"), ("plate-ink", "plate")]
        {
            let ratio = contrast(&tokens[ink], &tokens[ground]);
            assert!(ratio >= TEXT, "{ink} {} on {ground} {}: {ratio:.2}", tokens[ink], tokens[ground]);
        }
        let ratio = contrast(&tokens["hatch"], &tokens["paper"]);
        assert!(ratio >= NON_TEXT, "hatching {} on {}: {ratio:.2}", tokens["hatch"], tokens["paper"]);
    }
}
