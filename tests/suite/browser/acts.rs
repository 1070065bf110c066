//! What clients and installers do on published pages, in a real browser.

use super::{drive, home};
use crate::project::example::published;
use serde::Deserialize;
use std::fs;
use std::path::Path;

/// Runs a script on the theme's own scripts and a table beside the driver.
fn on_table(script: &str, table: &str) -> String {
    let scripts = Path::new(env!("CARGO_MANIFEST_DIR")).join("themes/standard/scripts");
    let table = home().join(table);
    drive(script, &[scripts.to_str().expect("UTF-8"), table.to_str().expect("UTF-8")])
}

/// Source: RFC 4231 (test cases 1 to 4, 6, 7), FIPS 180-4 examples, RFC 8785 (3.2.2, 3.2.3).
#[test]
fn pages_make_digests_codes_and_canonical_json_as_the_standards_say() {
    assert_eq!(on_table("seal.mjs", "seal-vectors.json").trim(), "12 vectors");
}

/// Rules and whole numbers as `plurals.json` of CLDR has them for Ukrainian and Czech
/// (`pluralRule-count-*` with its `@integer` samples); no browser is asked which language that is.
#[test]
fn scripts_give_counts_the_forms_that_cldr_samples_for_them() {
    let told = |rules: &str, counts: &str| drive("plural.mjs", &[rules, counts]).trim().to_owned();
    let ukrainian = "{\"one\": \"v = 0 and i % 10 = 1 and i % 100 != 11\", \
        \"few\": \"v = 0 and i % 10 = 2..4 and i % 100 != 12..14\", \
        \"many\": \"v = 0 and i % 10 = 0 or v = 0 and i % 10 = 5..9 or v = 0 and i % 100 = 11..14\"}";
    let of = |form: &str, counts: &str| {
        let forms = vec![format!("\"{form}\""); counts.split(',').count()].join(",");
        assert_eq!(told(ukrainian, &format!("[{counts}]")), format!("[{forms}]"), "{counts}");
    };
    of("one", "1,21,31,41,51,61,71,81,101,1001");
    of("few", "2,3,4,22,23,24,32,34,42,62,102,1002");
    of("many", "0,5,11,12,13,14,19,100,1000,10000,100000,1000000");
    let czech = "{\"one\": \"i = 1 and v = 0\", \"few\": \"i = 2..4 and v = 0\", \"many\": \"v != 0\"}";
    assert_eq!(told(czech, "[1,2,4,0,5,19]"), "[\"one\",\"few\",\"few\",\"other\",\"other\",\"other\"]");
}

#[derive(Deserialize)]
struct Vectors {
    rfc8785: Vec<Canonical>,
}

#[derive(Deserialize)]
struct Canonical {
    input: String,
    canonical: String,
}

/// Source: RFC 8785 (3.2.2, 3.2.3), by the crate `serde_json_canonicalizer`.
#[test]
fn what_pages_make_canonical_the_program_makes_canonical_too() {
    let text = fs::read_to_string(home().join("seal-vectors.json")).unwrap();
    for row in serde_json::from_str::<Vectors>(&text).unwrap().rfc8785 {
        let value: serde_json::Value = serde_json::from_str(&row.input).unwrap();
        assert_eq!(serde_json_canonicalizer::to_string(&value).unwrap(), row.canonical);
    }
}

/// The same table is read by the program: `units::length`.
#[test]
fn pages_read_a_tape_as_the_program_does() {
    let rows = on_table("tape.mjs", "tape-readings.json");
    assert!(rows.trim().ends_with("notations"), "{rows}");
}

#[test]
fn a_page_whose_language_writes_decimals_with_a_comma_takes_one() {
    let rows = on_table("tape.mjs", "tape-commas.json");
    assert!(rows.trim().ends_with("notations"), "{rows}");
}

#[test]
fn an_opening_s_sheet_judges_readings_as_they_are_typed_and_keeps_them() {
    let installer = published().join("installer");
    let site = installer.to_str().expect("a path in UTF-8");
    drive("readings.mjs", &[site, "openings/kitchen/refrigerator.html"]);
}
