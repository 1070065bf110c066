//! Lengths against published definitions, check values, and themselves.

use super::*;
use crate::units::{Fault, NumberError};
use proptest::prelude::*;

fn length(written: &str) -> Length {
    Length::parse(written).unwrap_or_else(|error| panic!("`{written}`: {error}"))
}

/// NIST SP 811, appendix B.8, and the 1959 agreement: 1 in = 25.4 mm exactly, 1 ft = 304.8 mm exactly.
/// Source: check values UN-02: 26 ft are 7924.8 mm.
#[test]
fn an_inch_is_25_4_millimetres_exactly() {
    assert_eq!(length("1 in"), length("25.4 mm"));
    assert_eq!(length("1 ft"), length("304.8 mm"));
    assert_eq!(length("26 ft"), length("7924.8 mm"));
    assert_eq!(length("5000 in"), length("127 m"));
    assert_eq!(Length::from_inches(1).nanometres(), 25_400_000);
}

/// Source: check values UN-01, UN-05: 34½ in, 3/8 in, 1/64 in.
#[test]
fn parts_of_an_inch_are_exact_in_nanometres() {
    assert_eq!(length("34 1/2\"").nanometres(), 876_300_000);
    assert_eq!(length("3/8\"").nanometres(), 9_525_000);
    assert_eq!(length("1/64\"").nanometres(), 396_875);
    assert_eq!(Length::from_sixty_fourths(1).nanometres(), 396_875);
}

/// Source: check values UN-04, at both grains.
#[test]
fn millimetres_round_to_the_nearest_grain_and_say_so() {
    let rows = [
        (600, "≈ 23 5/8\"", "≈ 23 5/8\""),
        (900, "≈ 35 7/16\"", "≈ 35 7/16\""),
        (820, "≈ 32 5/16\"", "≈ 32 9/32\""),
        (560, "≈ 22 1/16\"", "≈ 22 1/16\""),
        (450, "≈ 17 11/16\"", "≈ 17 23/32\""),
        (127, "5\"", "5\""),
    ];
    for (millimetres, sixteenth, thirty_second) in rows {
        let length = Length::from_millimetres(millimetres);
        assert_eq!(length.imperial(Grain::Sixteenth).to_string(), sixteenth);
        assert_eq!(length.imperial(Grain::ThirtySecond).to_string(), thirty_second);
    }
}

/// Source: check values UN-06: a 610 mm body does not go into a 24 in opening, though both print 24.
#[test]
fn lengths_that_print_alike_are_still_told_apart() {
    let (body, opening) = (length("610 mm"), length("24\""));
    assert!(body > opening);
    assert_eq!(body.imperial(Grain::Sixteenth).to_string(), "≈ 24\"");
    assert_eq!(opening.imperial(Grain::Sixteenth).to_string(), "24\"");
}

/// Source: check values UN-07: the first five equal 1028.7 mm. The other rows are the same in the notations people type.
#[test]
fn every_notation_of_a_length_reads_the_same() {
    let un_07 = ["3' 4 1/2\"", "3'-4½\"", "40.5\"", "40 1/2 in", "1028.7mm"];
    let more = [
        "3′-4½″",
        "3’ 4½”",
        "3'4 1/2\"",
        "3' - 4 1/2\"",
        "3'–4 1/2\"",
        "3 ft 4 1/2 in",
        "3 FT. 4-1/2 IN.",
        "40-1/2 in",
        "40‑1/2 in",
        "40½\"",
        "40 ½ inches",
        "40 1⁄2\"",
        "40\u{a0}1/2\u{202f}in",
        "40\u{2009}½\u{2009}″",
        "40 1/2''",
        "102.87 cm",
        "1.0287 m",
        "1028.7 millimetres",
        "81/2 inch",
        "  40.500\" ",
    ];
    for written in un_07.into_iter().chain(more) {
        assert_eq!(length(written).nanometres(), 1_028_700_000, "{written}");
    }
    assert_eq!(length("8'"), length("8 ft"));
    assert_eq!(length("8 ft 1 in"), Length::from_inches(97));
    assert_eq!(length("0'-0 3/4\""), length("¾\""));
    assert_eq!(length("1/3 ft"), Length::from_inches(4));
    assert_eq!(length("0 mm"), Length::ZERO);
    assert_eq!(length("-1/2\""), -length("1/2\""));
    assert_eq!(length("−2'-10 1/2\""), -length("34.5 in"));
}

#[test]
fn unicode_fractions_are_read_where_they_can_be_held() {
    let rows = [('¼', 16), ('½', 32), ('¾', 48), ('⅛', 8), ('⅜', 24), ('⅝', 40), ('⅞', 56)];
    for (fraction, sixty_fourths) in rows {
        assert_eq!(length(&format!("{fraction}\"")), Length::from_sixty_fourths(sixty_fourths));
    }
    for fraction in ['⅓', '⅔', '⅐', '⅑', '⅙', '⅚'] {
        let written = format!("2{fraction}\"");
        assert_eq!(Length::parse(&written), Err(LengthError::NotExact(written)));
    }
}

/// Source: check values SD-28: feet-inch-fraction style of US drafting.
#[test]
fn feet_and_inches_print_in_drafting_style() {
    let drafted = |written: &str| length(written).imperial(Grain::Sixteenth).feet_and_inches().to_string();
    assert_eq!(drafted("34.5\""), "2'-10 1/2\"");
    assert_eq!(drafted("36\""), "3'-0\"");
    assert_eq!(drafted("0.75\""), "0'-0 3/4\"");
    assert_eq!(drafted("11 31/32\""), "≈ 1'-0\"");
    assert_eq!(drafted("-40 1/2\""), "−3'-4 1/2\"");
}

#[test]
fn a_figure_is_in_inches_and_that_of_a_room_in_feet_and_inches() {
    let plain = |written: &str| length(written).imperial(Grain::Sixteenth).to_string();
    assert_eq!(plain("34 1/2\""), "34 1/2\"");
    assert_eq!(plain("35 15/16\""), "35 15/16\"");
    assert_eq!(plain("35 63/64 in"), "≈ 36\"");
    assert_eq!(plain("40 1/2\""), "40 1/2\"");
    assert_eq!(plain("0\""), "0\"");
    assert_eq!(plain("3/16\""), "3/16\"");
    let shown = length("40 1/2\"").imperial(Grain::Sixteenth).feet_and_inches();
    assert_eq!((shown.feet, shown.inches, shown.numerator, shown.denominator), (Some(3), 4, 1, 2));
    assert_eq!(shown.inches().to_string(), "40 1/2\"");
}

#[test]
fn a_tie_between_two_grains_goes_to_the_even_one() {
    let plain = |sixty_fourths| Length::from_sixty_fourths(sixty_fourths).imperial(Grain::Sixteenth).to_string();
    assert_eq!(plain(2), "≈ 0\"");
    assert_eq!(plain(6), "≈ 1/8\"");
    assert_eq!(plain(10), "≈ 1/8\"");
    assert_eq!(plain(-6), "≈ −1/8\"");
}

/// Inches are told in whole millimetres, gaps in tenths, and what was written in tenths as it was.
#[test]
fn millimetres_are_whole_from_fifty_on_unless_tenths_were_written() {
    let rows = [
        ("34 1/2\"", "876 mm"),
        ("600 mm", "600 mm"),
        ("599.5 mm", "599.5 mm"),
        ("609.6 mm", "610 mm"),
        ("1/64\"", "0.4 mm"),
        ("3/8\"", "9.5 mm"),
        ("1 15/16\"", "49.2 mm"),
        ("2\"", "51 mm"),
        ("-10 mm", "−10 mm"),
        ("0 mm", "0 mm"),
        ("0.02 mm", "≈ 0 mm"),
    ];
    for (written, printed) in rows {
        let shown = length(written).metric();
        assert_eq!(shown.to_string(), printed);
        assert_eq!(shown.exact, !printed.contains('≈'));
    }
}

#[test]
fn half_a_length_is_exact_down_to_the_nanometre() {
    assert_eq!(length("1/32\"").half(), length("1/64\""));
    let halves = [(5, 2), (7, 4), (-5, -2), (-7, -4), (6, 3)];
    for (whole, half) in halves {
        assert_eq!(Length::from_nanometres(whole).half().nanometres(), half);
    }
}

#[test]
fn arithmetic_at_the_end_of_the_range_neither_wraps_nor_panics() {
    let most = Length::from_nanometres(i64::MAX);
    assert_eq!(most + Length::from_inches(1), most);
    assert_eq!(most.checked_add(Length::from_inches(1)), None);
    assert_eq!(Length::from_inches(i64::MAX), most);
    assert_eq!((-most - most).abs(), most);
    assert!(!Length::from_nanometres(i64::MIN).imperial(Grain::ThirtySecond).to_string().is_empty());
}

mod refusals {
    use super::*;

    #[test]
    fn a_bare_number_is_a_kind_of_its_own() {
        for written in ["36", "34 1/2", "40.5", "-3", "½"] {
            let error = Length::parse(written).unwrap_err();
            assert_eq!(error, LengthError::Bare(written.into()));
            assert_eq!(
                error.remedy().text(),
                format!("write `{written}\"` for inches or `{written} mm` for millimetres")
            );
        }
    }

    /// Each row: as written, what is wrong, how to write it.
    fn refused(rows: &[(&str, &str, &str)]) {
        for (written, message, remedy) in rows {
            let error = Length::parse(written).unwrap_err();
            assert_eq!((error.to_string().as_str(), error.remedy().text()), (*message, *remedy), "{written}");
        }
    }

    #[test]
    fn numbers_that_can_not_be_held_or_read_one_way_are_refused() {
        let finer = "round it to a 64th of an inch or a tenth of a millimetre";
        let comma = |n: &str| format!("`{n}` has a comma, which some read as a decimal point and some as thousands");
        refused(&[
            ("1/3\"", "`1/3\"` can't be held exactly", finer),
            ("1/128\"", "`1/128\"` can't be held exactly", finer),
            ("0.0000001 mm", "`0.0000001 mm` can't be held exactly", finer),
            ("1/0\"", "`1/0` divides by zero", "write the fraction with the number below the line, such as `1/2`"),
            ("1001 m", "`1001 m` is longer than 1 km", "check the number and its unit"),
            ("87,6 cm", &comma("87,6"), "write decimals with a point: `87.6`"),
            ("1,028.7 mm", &comma("1,028.7"), "leave the comma out: `1028.7`"),
            ("1,028 mm", &comma("1,028"), "write `1028` or `1.028`, with no comma"),
            (
                "34 5/4\"",
                "`34 5/4` adds a fraction of one or more to a whole number",
                "write a fraction below one after the whole number, such as `34 1/4`",
            ),
        ]);
    }

    #[test]
    fn two_parts_that_do_not_make_one_length_are_refused() {
        let one_system = "write the whole length in one system: feet then inches or one metric unit";
        let past_foot = "`3' 14\"` has a foot or more of inches after the feet";
        let part_foot = "`2.5' 6\"` has a part of a foot and inches after it";
        let one_length = "write one length; where a range may stand, part its ends with `to`";
        refused(&[
            ("3' 20 mm", "`3' 20 mm` mixes units", one_system),
            ("1 m 20 cm", "`1 m 20 cm` mixes units", one_system),
            ("36\" 2'", "`36\" 2'` mixes units", one_system),
            ("3' 14\"", past_foot, "write `4'-2\"`, or inches alone: `50\"`"),
            ("2.5' 6\"", part_foot, "write whole feet before the inches, or feet alone"),
            ("2' 10", "`2' 10` has a number without a unit after the feet", "mark the inches: `2' 10\"`"),
            ("36\" 40\"", "`36\" 40\"` is two lengths where one is wanted", one_length),
            (
                "36\" clear",
                "`clear` follows the length 36\"",
                "take `clear` out; words go behind a `#`, or in a `note` where there is one",
            ),
        ]);
    }

    #[test]
    fn what_has_no_unit_of_length_is_refused() {
        let units = "use `\"`, `in`, `'`, `ft` or `mm`, `cm`, `m`";
        let both = "write a number and its unit: `…\"` or `… mm`";
        refused(&[
            ("36 cubits", "`cubits` is not a unit of length", units),
            ("42 sq ft", "`42 sq ft` is an area, not a length", units),
            ("about 36\"", "`about 36\"` is not a length", both),
            ("+36\"", "`+36\"` is not a length", both),
        ]);
    }

    #[test]
    fn numbers_that_are_none_are_refused() {
        let malformed = |n: &str| LengthError::Number(NumberError::Malformed(n.into()));
        assert_eq!(Length::parse("1.2.3 mm"), Err(malformed("1.2.3")));
        assert_eq!(Length::parse("5. mm"), Err(malformed("5.")));
        assert_eq!(Length::parse("1/\""), Err(malformed("1/")));
        let long = "1".repeat(40);
        assert_eq!(Length::parse(&format!("{long} mm")), Err(LengthError::Number(NumberError::TooLong(long))));
        for written in ["", " ", "\u{a0}"] {
            assert_eq!(Length::parse(written), Err(LengthError::Empty));
        }
    }
}

proptest! {
    #[test]
    fn an_imperial_figure_reads_as_the_length_it_shows(parts in -500_000..500_000_i64) {
        for (grain, size) in [(Grain::Sixteenth, 4), (Grain::ThirtySecond, 2)] {
            let length = Length::from_sixty_fourths(parts * size);
            let shown = length.imperial(grain);
            prop_assert!(shown.exact);
            for form in [shown, shown.inches(), shown.feet_and_inches()] {
                prop_assert_eq!(Length::parse(&form.to_string()), Ok(length));
            }
        }
    }

    #[test]
    fn a_metric_figure_reads_as_the_length_it_shows(tenths in -10_000_000..10_000_000_i64) {
        let length = Length::from_nanometres(tenths * 100_000);
        prop_assert!(length.metric().exact);
        let read = Length::parse(&length.metric().to_string());
        // On the grid of 1/64" it came from inches, and is told to the millimetre.
        let off = Length::from_nanometres(if tenths * 100_000 % 396_875 == 0 { 500_000 } else { 0 });
        prop_assert!(read.clone().is_ok_and(|read| (read - length).abs() <= off), "{read:?}");
    }

    #[test]
    fn the_exact_form_of_any_length_reads_as_that_length(nanometres in -1_000_000_000_000..=1_000_000_000_000_i64) {
        let length = Length::from_nanometres(nanometres);
        prop_assert_eq!(Length::parse(&length.to_string()), Ok(length));
    }

    #[test]
    fn a_rounded_figure_is_off_by_half_a_grain_at_most(nanometres in 0..100_000_000_000_i64) {
        let length = Length::from_nanometres(nanometres);
        for grain in [Grain::Sixteenth, Grain::ThirtySecond] {
            let shown = length.imperial(grain).to_string();
            let read = Length::parse(shown.trim_start_matches("≈ ")).unwrap();
            prop_assert!((read - length).abs().times(2 * grain.parts()) <= Length::from_inches(1));
            prop_assert_eq!(read == length, !shown.contains('≈'));
        }
    }

    #[test]
    fn sums_of_64ths_are_exact(parts in proptest::collection::vec(-100_000..100_000_i64, 0..50)) {
        let sum: Length = parts.iter().map(|n| Length::from_sixty_fourths(*n)).sum();
        prop_assert_eq!(sum, Length::from_sixty_fourths(parts.iter().sum()));
    }

    #[test]
    fn the_order_of_what_is_written_is_the_order_of_lengths(a in 0..20_000_i64, b in 0..20_000_i64) {
        let read = |n: i64| Length::parse(&format!("{} {}/64\"", n / 64, n % 64)).unwrap();
        prop_assert_eq!(read(a).cmp(&read(b)), a.cmp(&b));
    }

    #[test]
    fn no_text_makes_the_reader_panic(text in "[0-9 ./,'\"½⅓x×±a-m²–-]{0,12}|\\PC{0,12}") {
        let _ = Length::parse(&text);
        let _ = crate::units::range::LengthRange::parse(&text);
        let _ = crate::units::size::Sides::parse(&text);
        let _ = crate::units::area::Area::parse(&text);
        let _ = crate::units::quantity::Quantity::parse(&text);
        let _ = crate::units::percent::Percent::parse(&text);
        let _ = crate::units::money::Money::parse(&text, crate::units::money::Currency::USD);
        let _ = crate::units::date::Date::parse(&text);
        let _ = crate::units::date::LeadTime::parse(&text);
    }
}

/// One row of the table that pages read as well.
#[derive(serde::Deserialize)]
struct Notation {
    written: String,
    /// What a number without a unit counts in.
    bare: Option<String>,
    nanometres: Option<String>,
    imperial: Option<String>,
    metric: Option<String>,
}

/// The same table is read by the pages of installers: `tests/browser/tape.mjs`.
#[test]
fn a_tape_reads_as_the_table_says_that_pages_go_by() {
    let table = include_str!("../../../tests/browser/tape-readings.json");
    let rows: Vec<Notation> = serde_json::from_str(table).unwrap();
    assert!(rows.len() > 40);
    for row in rows {
        let bare = row.bare.as_deref().and_then(crate::units::find_unit);
        let length = parse_in(&row.written, bare).ok();
        let nanometres = length.map(|length| length.nanometres().to_string());
        assert_eq!(nanometres, row.nanometres, "`{}` counted in {:?}", row.written, row.bare);
        // A sheet sets the finer grain where the coarser would round.
        assert_eq!(length.map(|length| length.inches().to_string()), row.imperial, "`{}`", row.written);
        assert_eq!(length.map(|length| length.metric().to_string()), row.metric, "`{}`", row.written);
    }
}
