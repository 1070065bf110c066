//! What the structure tree holds: headings, paragraphs, lists, tables and pictures, each text in one of them.

use super::readers::Pdf;
use super::sample::{house, kitchen, picture};
use bookmatch::publish::SheetLook;
use bookmatch::publish::sheets::sign_off;
use bookmatch::views::paper::sign_off::{PaperSize, SignOff};
use bookmatch::views::paper::sign_off_item::SheetDrawing;

/// What holds text that is read aloud (ISO 32000-1, 14.8.4.3: block-level structure elements; Figure and its kind are in
/// 14.8.4.5). A `Div` or a `Span` alone says nothing of what it is.
const SAYS_WHAT_IT_IS: [&str; 14] =
    ["H1", "H2", "H3", "H4", "P", "L", "LI", "Lbl", "LBody", "TH", "TD", "Caption", "Figure", "Link"];

fn set(view: &SignOff) -> Pdf {
    Pdf::of(&sign_off(view, &SheetLook::default(), &picture).expect("a sheet"))
}

#[test]
fn every_text_stands_in_a_heading_a_paragraph_a_list_or_a_table() {
    for view in [kitchen(), house(12)] {
        let texts = set(&view).texts();
        assert!(texts.len() > 100, "{} texts", texts.len());
        for (tags, text) in &texts {
            assert!(
                tags.iter().any(|tag| SAYS_WHAT_IT_IS.contains(&tag.as_str())),
                "`{text}` stands in {tags:?} alone"
            );
        }
    }
}

#[test]
fn an_item_is_a_heading_facts_are_a_list_and_decisions_a_table_with_named_rows() {
    let texts = set(&kitchen()).texts();
    let within = |text: &str| {
        let alone = texts.iter().find(|(_, told)| told == text);
        let found = alone.or_else(|| texts.iter().find(|(_, told)| told.contains(text)));
        found.unwrap_or_else(|| panic!("no `{text}`")).0.clone()
    };
    let is_in = |text: &str, tag: &str| within(text).iter().any(|one| one == tag);
    for (text, tag) in [
        ("What is being signed", "H1"),
        ("KITCHEN", "H2"),
        ("K-04", "H3"),
        ("A, panel-ready", "H4"),
        ("Each of you signs", "P"),
        ("brushed steel, bronze knobs", "LBody"),
        ("Finish", "Lbl"),
        ("Approved as noted", "TD"),
        ("Ife Okwuosa", "TH"),
        ("Gas is connected", "LBody"),
        ("Total to sign for", "TH"),
        ("$5,683.13", "TD"),
    ] {
        assert!(is_in(text, tag), "`{text}` stands in {:?}, not in {tag}", within(text));
    }
}

/// A drawing stands as one, is read aloud by its own words, and its letters are letters.
#[test]
fn the_layout_of_a_counter_stands_as_a_drawing_that_is_told() {
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 480 96\" role=\"img\" style=\"--drawn:127mm\">\n\
        <title>t</title><rect class=\"obj pap\" x=\"0\" y=\"0\" width=\"480\" height=\"96\"/>\n\
        <text class=\"halo\" x=\"240\" y=\"50\" font-size=\"14\" text-anchor=\"middle\">66 <tspan class=\"fr\" dx=\"-1\">1/2</tspan>\u{2033}</text>\n\
        <text class=\"b ratio halo\" x=\"400\" y=\"80\" font-size=\"12.5\">1:32</text>\n</svg>\n";
    let with = |width: u32| {
        let mut view = kitchen();
        view.rooms[0].items[0].layouts = vec![SheetDrawing {
            name: "Counter, on the long wall".to_owned(),
            svg: svg.replace("0 0 480 96", &format!("0 0 {width} 96")),
            alt: "Layout of the counter. Piece left: 66 1/2 inches long.".to_owned(),
        }];
        set(&view)
    };
    let pdf = with(480);
    let inside = pdf.ask("qpdf", &["--json"], &[]);
    assert!(inside.contains("\"/Alt\": \"u:Layout of the counter. Piece left: 66 1/2 inches long.\""));
    let text = pdf.pages().concat();
    assert!(text.contains("COUNTER, ON THE LONG WALL") && text.contains("1:32"), "{text}");
    assert!(text.contains('\u{2044}'), "its fraction is no fraction: {text}");
    assert!(pdf.ask("pdfinfo", &["-meta"], &[]).contains("<pdfuaid:part>1</pdfuaid:part>"));
    // 1,000 units of 1/96 inch have no room on any sheet: drawn smaller, it says no scale.
    assert!(!with(1000).pages().concat().contains("1:32"));
}

/// 7 pt is about the least that is read at arm's length (common practice).
#[test]
fn no_letter_is_under_seven_points() {
    for paper in [PaperSize::A4, PaperSize::UsLetter] {
        let mut view = house(12);
        view.paper = paper;
        let sizes = set(&view).sizes();
        assert!(sizes.iter().all(|size| *size >= 7.0), "{sizes:?}");
    }
}
