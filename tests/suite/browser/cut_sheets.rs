//! A maker's own sheet is opened from the folder of those who build, carried alone to where there is no signal.

use std::fs;
use std::process::Command;

use super::drive;
use crate::cut_sheets::with_the_sheet;

/// A file of one blank page, whole by its own table (PDF 32000-1, 7.5.4).
fn one_page() -> Vec<u8> {
    let objects = [
        "<</Type /Catalog /Pages 2 0 R>>",
        "<</Type /Pages /Kids [3 0 R] /Count 1>>",
        "<</Type /Page /Parent 2 0 R /MediaBox [0 0 612 792]>>",
    ];
    let (mut file, mut table) = ("%PDF-1.4\n".to_owned(), "0000000000 65535 f \n".to_owned());
    for (number, object) in objects.iter().enumerate() {
        table += &format!("{:010} 00000 n \n", file.len());
        file += &format!("{} 0 obj\n{object}\nendobj\n", number + 1);
    }
    let start = file.len();
    file += &format!("xref\n0 4\n{table}trailer\n<</Size 4 /Root 1 0 R>>\nstartxref\n{start}\n%%EOF\n");
    file.into_bytes()
}

/// Independent reader of the file that is attached: Poppler's `pdfinfo`.
#[test]
fn it_opens_without_a_signal_from_every_page_that_leads_to_it() {
    let project = with_the_sheet(&one_page());
    let sheet = project.root().join("rooms/kitchen/sheets/s1.pdf");
    let read = Command::new("pdfinfo").arg(&sheet).output().expect("pdfinfo");
    assert!(String::from_utf8_lossy(&read.stdout).contains("Pages:           1"), "{read:?}");
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    // Carried alone: the rest of what was published is not there.
    let alone = project.beside("on a stick, 100% full & #1");
    fs::rename(out.join("installer"), &alone).unwrap();
    fs::remove_dir_all(&out).unwrap();
    let pages =
        ["index.html", "openings/kitchen/sink.html", "trades/kitchen/fabricator.html", "trades/kitchen/plumber.html"];
    drive("cut_sheets.mjs", &[&[alone.to_str().unwrap(), sheet.to_str().unwrap()], &pages[..]].concat());
}
