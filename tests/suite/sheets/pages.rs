//! What stands on the pages, and on which.

use super::readers::Pdf;
use super::sample::{house, kitchen, line, picture};
use bookmatch::publish::SheetLook;
use bookmatch::publish::sheets::sign_off;
use bookmatch::views::paper::sign_off::{PaperSize, SheetSigner, SignOff};

fn set(view: &SignOff) -> Pdf {
    Pdf::of(&sign_off(view, &SheetLook::default(), &picture).expect("a sheet"))
}

fn count(page: &str, word: &str) -> usize {
    page.matches(word).count()
}

#[test]
fn every_page_names_project_issue_date_mark_and_its_own_number() {
    let pages = set(&house(60)).pages();
    assert!(pages.len() > 10, "{} pages", pages.len());
    for (n, page) in pages.iter().enumerate() {
        let number = format!("sheet {} of {}", n + 1, pages.len());
        for needed in [&*number, "Tansy Row 9", "2026-031", "3, for approval", "11 January 2027", "f20a 91c7", "S-00"] {
            assert!(page.contains(needed), "no `{needed}` on page {}:\n{page}", n + 1);
        }
    }
}

#[test]
fn the_page_count_agrees_with_what_the_pages_say() {
    let pdf = set(&house(60));
    assert_eq!(pdf.info("Pages"), pdf.pages().len().to_string());
}

#[test]
fn no_item_is_cut_each_stands_with_all_its_boxes_on_one_page() {
    let view = house(60);
    let pages = set(&view).pages();
    let mut seen = 0;
    for page in &pages {
        let items = view.rooms.iter().flat_map(|room| &room.items);
        let here = items.filter(|item| count(page, &item.tag) == 1).count();
        seen += here;
        for box_or_rule in ["Approved as noted", "Rejected", "Initials", "Note"] {
            assert_eq!(count(page, box_or_rule), here * view.approvers.len(), "{box_or_rule}:\n{page}");
        }
    }
    assert_eq!(seen, 60);
}

#[test]
fn nothing_runs_into_the_title_block_or_out_of_the_frame() {
    // The frame is 9 mm from each edge of A4, 210 × 297 mm (ISO 216); the block is 15 mm high.
    let mm = |length: f64| length * 72.0 / 25.4;
    let words = set(&house(60)).words();
    for word in &words {
        assert!(word.left > mm(9.0) && word.right < mm(210.0 - 9.0), "{word:?}");
        assert!(word.bottom < mm(297.0 - 9.0), "{word:?}");
    }
    let lowest = words.iter().filter(|word| word.text == "Note").map(|word| word.bottom);
    assert!(lowest.fold(0.0, f64::max) < mm(297.0 - 9.0 - 15.0));
}

#[test]
fn an_item_says_all_that_is_signed_for() {
    let text = set(&kitchen()).pages().concat();
    for needed in [
        "K-04",
        "Range",
        "Brushed steel",
        "Quarrow, Six 30",
        "bronze knobs",
        "$4,310.00",
        "c307 5fa2",
        "2 × $470.00 each",
        "$940.00",
        "Gas is connected by a licensed fitter",
    ] {
        assert!(text.contains(needed), "no `{needed}` in:\n{text}");
    }
}

#[test]
fn an_undecided_item_shows_its_options_with_their_prices() {
    let text = set(&kitchen()).pages().concat();
    for needed in ["Still to be chosen", "A, panel-ready", "$5,640.00", "B, steel", "$4,980.00"] {
        assert!(text.contains(needed), "no `{needed}` in:\n{text}");
    }
}

#[test]
fn total_and_signatures_stand_together_on_the_last_page() {
    for approvers in 1..=6 {
        let mut view = house(20 + approvers);
        view.approvers =
            (1..=approvers).map(|n| SheetSigner { name: format!("Signer {n}"), ..SheetSigner::default() }).collect();
        let pages = set(&view).pages();
        let last = pages.last().expect("a page");
        assert!(last.contains("Total to sign for"), "{last}");
        let lines = last.lines().filter(|line| line.contains("Signature") && line.contains("Date"));
        assert_eq!(lines.count(), approvers, "{last}");
        assert!(approvers == 1 || last.contains(&format!("Signer {approvers}")), "{last}");
    }
}

#[test]
fn a_subtotal_stays_with_its_last_item() {
    for items in 1..=9 {
        let mut view = house(items);
        view.rooms.truncate(1);
        view.rooms[0].items.truncate(items);
        view.rooms[0].subtotal = Some(line("Subtotal of the room", "$1.00"));
        let last = view.rooms[0].items.last().expect("an item").tag.clone();
        let pages = set(&view).pages();
        let page = pages.iter().find(|page| page.contains("Subtotal of the room")).expect("a subtotal");
        assert!(page.contains(&last), "{page}");
    }
}

#[test]
fn a_draft_says_so_on_every_page_and_an_issue_does_not() {
    let mut view = house(12);
    assert!(!set(&view).pages().concat().to_lowercase().contains("draft"));
    view.draft = true;
    for page in set(&view).pages() {
        assert!(page.contains("DRAFT. NOT TO BE SIGNED."), "{page}");
    }
}

#[test]
fn the_sheet_is_a4_or_us_letter() {
    // ISO 216 A4: 210 × 297 mm; US letter (ASME Y14.1, size A): 8 1/2 × 11 in; a point is 1/72 in.
    let mut view = kitchen();
    assert_eq!(set(&view).info("Page size"), "595.276 x 841.89 pts (A4)");
    view.paper = PaperSize::UsLetter;
    assert_eq!(set(&view).info("Page size"), "612 x 792 pts (letter)");
}

#[test]
fn a_sheet_in_spanish_has_spanish_boxes() {
    let mut view = kitchen();
    view.language = "es".to_owned();
    let text = set(&view).pages().concat();
    // The boxes are worded as the pages word them: one decision has one name.
    for needed in ["Aprobado con observaciones", "Corregir y volver a presentar", "Rechazado", "hoja 1 de ", "Firma"] {
        assert!(text.contains(needed), "no `{needed}` in:\n{text}");
    }
}

#[test]
fn a_fraction_is_drawn_as_one_and_copied_as_it_was_written() {
    let mut view = kitchen();
    view.rooms[0].items.truncate(1);
    let figures = ["30 7/8\"", "30 7/9\"", "5/8/2027"].map(|value| line("Figure", value));
    view.rooms[0].items[0].description = figures.to_vec();
    let pdf = set(&view);
    let text = pdf.pages().concat();
    assert!(text.contains("30 7/8\"") && text.contains("5/8/2027"), "{text}");
    let words = pdf.words();
    let right = |end: &str| words.iter().find(|word| word.text.ends_with(end)).expect("a figure").right;
    // No ruler divides an inch in nine, so that one is left as figures: wider than the fraction.
    assert!(right("7/8\"") + 2.0 < right("7/9\""), "{words:?}");
}
