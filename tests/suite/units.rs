//! Our reading of lengths, areas and weights against an independent program: GNU `units` (Debian package `units`).

use bookmatch::units::area::Area;
use bookmatch::units::length::Length;
use bookmatch::units::weight::Weight;
use rust_decimal::Decimal;
use std::io::Write;
use std::process::{Command, Stdio};

/// A measure as a book has it, the same in the notation of the other program, and what we make of it.
struct Row {
    ours: String,
    theirs: String,
    base: i128,
}

#[test]
fn lengths_agree_with_gnu_units_to_the_nanometre() {
    let mut rows = Vec::new();
    for n in 0..80_i64 {
        let (whole, part) = (n * 7, n % 64);
        rows.push(length(format!("{whole} {part}/64\""), format!("{whole} in + {part}|64 in")));
        let (feet, inches, part) = (n * 3, n % 12, n % 16);
        rows.push(length(format!("{feet}'-{inches} {part}/16\""), format!("{feet} ft + {inches} in + {part}|16 in")));
        rows.push(length(format!("{}.{} mm", n * 53, n % 10), format!("{}.{} mm", n * 53, n % 10)));
        rows.push(length(format!("{n}.{:03} m", n * 11), format!("{n}.{:03} m", n * 11)));
        rows.push(length(format!("{}.5 in", n * 2), format!("{}.5 inches", n * 2)));
    }
    let fractions = [('¼', "1|4"), ('½', "1|2"), ('¾', "3|4"), ('⅛', "1|8"), ('⅜', "3|8"), ('⅝', "5|8"), ('⅞', "7|8")];
    for (ours, theirs) in fractions {
        rows.push(length(format!("34{ours}\""), format!("34 in + {theirs} in")));
        rows.push(length(format!("34-{} in", theirs.replace('|', "/")), format!("34 in + {theirs} in")));
    }
    agree(&rows, "nm", 400);
}

#[test]
fn areas_agree_with_gnu_units_to_the_square_nanometre() {
    let mut rows = Vec::new();
    for n in 0..70_i64 {
        rows.push(area(format!("{n}.5 sq ft"), format!("{n}.5 ft^2")));
        rows.push(area(format!("{} sq in", n * 9), format!("{} in^2", n * 9)));
        rows.push(area(format!("{n}.25 m²"), format!("{n}.25 m^2")));
    }
    for n in 1..40_i64 {
        let (wide, deep) = (Length::from_inches(n * 3), Length::from_millimetres(n * 10));
        let base = (wide * deep).square_nanometres();
        rows.push(Row { ours: format!("{wide} × {deep}"), theirs: format!("{} in * {} mm", n * 3, n * 10), base });
    }
    agree(&rows, "nm^2", 200);
}

#[test]
fn weights_agree_with_gnu_units_to_the_femtogram() {
    let mut rows = Vec::new();
    for n in 0..70_i64 {
        rows.push(weight(format!("{} lb", n * 5), format!("{} lb", n * 5)));
        rows.push(weight(format!("{n} 1/2 oz"), format!("{n}.5 oz")));
        rows.push(weight(format!("{n}.4 kg"), format!("{n}.4 kg")));
        rows.push(weight(format!("{n}50 g"), format!("{n}50 g")));
    }
    agree(&rows, "fg", 200);
}

fn length(ours: String, theirs: String) -> Row {
    let base = Length::parse(&ours).unwrap_or_else(|error| panic!("{ours}: {error}")).nanometres().into();
    Row { ours, theirs, base }
}

fn area(ours: String, theirs: String) -> Row {
    let base = Area::parse(&ours).unwrap_or_else(|error| panic!("{ours}: {error}")).square_nanometres();
    Row { ours, theirs, base }
}

fn weight(ours: String, theirs: String) -> Row {
    let base = Weight::parse(&ours).unwrap_or_else(|error| panic!("{ours}: {error}")).femtograms();
    Row { ours, theirs, base }
}

/// Compares every row with the other program's answer, as exact decimals.
fn agree(rows: &[Row], base: &str, at_least: usize) {
    assert!(rows.len() >= at_least, "{} rows are too few", rows.len());
    let answers = ask(rows, base);
    assert_eq!(answers.len(), rows.len(), "one answer to each question");
    for (row, answer) in rows.iter().zip(answers) {
        let theirs = answer.parse().or_else(|_| Decimal::from_scientific(&answer));
        let theirs = theirs.unwrap_or_else(|_| panic!("`{}` has the answer `{answer}`", row.theirs));
        assert_eq!(Decimal::from_i128_with_scale(row.base, 0), theirs, "{} ({base})", row.ours);
    }
}

/// One run for all rows. It reckons in double precision, of which 15 digits are sure: every value here has fewer.
fn ask(rows: &[Row], base: &str) -> Vec<String> {
    let mut child = Command::new("units")
        .args(["--terse", "--output-format", "%.15g"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap_or_else(|error| panic!("this test needs GNU units (apt-get install units): {error}"));
    let questions: String = rows.iter().map(|row| format!("{}\n{base}\n", row.theirs)).collect();
    let mut input = child.stdin.take().expect("its input is piped");
    let writer = std::thread::spawn(move || input.write_all(questions.as_bytes()));
    let output = child.wait_with_output().expect("it runs to its end");
    writer.join().expect("the writer ends").expect("it reads every question");
    String::from_utf8(output.stdout).expect("plain text").lines().map(|line| line.trim().to_string()).collect()
}
