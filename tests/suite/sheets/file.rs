//! What kind of file a sheet is: sound, tagged, with its fonts in it, and always the same.

use super::readers::Pdf;
use super::sample::{house, kitchen, picture};
use bookmatch::publish::SheetLook;
use bookmatch::publish::sheets::{SheetError, sign_off};

#[test]
fn every_font_is_in_the_file() {
    let pdf = Pdf::of(&sign_off(&kitchen(), &SheetLook::default(), &picture).expect("a sheet"));
    let table = pdf.ask("pdffonts", &[], &[]);
    let fonts: Vec<&str> = table.lines().skip(2).collect();
    assert!(fonts.len() >= 4, "{table}");
    for font in fonts {
        assert!(font.contains("Literata") || font.contains("BarlowSemiCondensed"), "{table}");
        // The columns end: … embedded, subset, has Unicode, object number (two words).
        let columns: Vec<&str> = font.split_whitespace().rev().collect();
        assert_eq!(columns[2..5], ["yes", "yes", "yes"], "{table}");
    }
}

#[test]
fn the_file_is_tagged_titled_and_in_a_language() {
    let pdf = Pdf::of(&sign_off(&kitchen(), &SheetLook::default(), &picture).expect("a sheet"));
    assert_eq!(pdf.info("Tagged"), "yes");
    assert_eq!(pdf.info("Title"), "What is being signed: Kitchen · Tansy Row 9 · Issue 3, for approval");
    let inside = pdf.ask("qpdf", &["--json"], &[]);
    assert!(inside.contains("\"/Lang\": \"u:en\""), "no language");
    // ISO 14289-1 (PDF/UA-1), 5: the file says in its metadata that it conforms.
    let metadata = pdf.ask("pdfinfo", &["-meta"], &[]);
    assert!(metadata.contains("<pdfuaid:part>1</pdfuaid:part>"), "{metadata}");
}

#[test]
fn headings_and_pictures_can_be_heard() {
    let pdf = Pdf::of(&sign_off(&kitchen(), &SheetLook::default(), &picture).expect("a sheet"));
    let tags = pdf.ask("pdfinfo", &["-struct"], &[]);
    for needed in ["H1 \"What is being signed\"", "H2 \"Kitchen\"", "H3 \"K-04", "Figure", "Table"] {
        assert!(tags.contains(needed), "no {needed} in:\n{tags}");
    }
    let inside = pdf.ask("qpdf", &["--json"], &[]);
    assert!(inside.contains("\"/Alt\": \"u:A steel range with six burners\""));
}

#[test]
fn an_independent_checker_finds_no_fault() {
    let pdf = Pdf::of(&sign_off(&house(60), &SheetLook::default(), &picture).expect("a sheet"));
    let report = pdf.ask("qpdf", &["--check"], &[]);
    assert!(report.contains("No syntax or stream encoding errors found"), "{report}");
}

#[test]
fn the_same_view_gives_the_same_bytes_on_any_thread() {
    let view = kitchen();
    let first = sign_off(&view, &SheetLook::default(), &picture).expect("a sheet");
    let again = std::thread::scope(|scope| {
        let threads: Vec<_> = (0..4)
            .map(|_| scope.spawn(|| sign_off(&view, &SheetLook::default(), &picture).expect("a sheet")))
            .collect();
        threads.into_iter().map(|thread| thread.join().expect("no panic")).collect::<Vec<_>>()
    });
    assert!(again.iter().all(|bytes| *bytes == first));
}

#[test]
fn no_date_of_making_is_in_the_file() {
    let pdf = Pdf::of(&sign_off(&kitchen(), &SheetLook::default(), &picture).expect("a sheet"));
    assert_eq!(pdf.info("CreationDate"), "");
    assert_eq!(pdf.info("ModDate"), "");
}

#[test]
fn another_content_is_another_file_with_another_identifier() {
    let identifier = |bytes: &[u8]| {
        let trailer = Pdf::of(bytes).ask("qpdf", &["--json", "--json-object=trailer"], &[]);
        trailer.split_once("\"/ID\"").expect("an identifier").1[..60].to_owned()
    };
    let first = sign_off(&kitchen(), &SheetLook::default(), &picture).expect("a sheet");
    let mut changed = kitchen();
    changed.rooms[0].items[0].price = "$4,311.00".to_owned();
    let second = sign_off(&changed, &SheetLook::default(), &picture).expect("a sheet");
    assert_ne!(identifier(&first), identifier(&second));
}

#[test]
fn a_picture_that_is_not_one_is_named_and_a_lost_one_is_told() {
    let mut view = kitchen();
    view.rooms[0].items[0].picture.as_mut().expect("a picture").key = "broken".to_owned();
    let fault = sign_off(&view, &SheetLook::default(), &picture).expect_err("a text file is no picture");
    assert!(matches!(&fault, SheetError::Picture { key, .. } if key == "broken"), "{fault}");
    assert!(fault.to_string().contains("save it anew as JPEG or PNG"), "{fault}");

    view.rooms[0].items[0].picture.as_mut().expect("a picture").key = "lost".to_owned();
    let text = Pdf::of(&sign_off(&view, &SheetLook::default(), &picture).expect("a sheet")).pages().concat();
    assert_eq!(text.matches("No picture").count(), 2, "{text}");
}
