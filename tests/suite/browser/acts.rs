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
fn an_opening_s_sheet_judges_readings_as_they_are_typed_and_keeps_them() {
    let installer = published().join("installer");
    let site = installer.to_str().expect("a path in UTF-8");
    drive("readings.mjs", &[site, "openings/kitchen/refrigerator.html"]);
}
