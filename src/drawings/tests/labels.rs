//! No label lies on another or leaves the drawing.

use super::read_back::{texts, view_box};
use super::{PAPERS, anything, drawn};
use crate::drawings::{opening_front, opening_plan, opening_side, option_plan};
use proptest::prelude::*;
use roxmltree::Document;

/// What is wrong with a drawing's lettering, if anything.
pub fn fault(svg: &str) -> Option<String> {
    let document = Document::parse(svg).expect("XML");
    let (texts, sheet) = (texts(&document), view_box(&document));
    for (n, (words, frame)) in texts.iter().enumerate() {
        if frame.with(&sheet) != sheet {
            return Some(format!("`{words}` leaves the drawing: {frame:?} in {sheet:?}"));
        }
        if let Some((other, _)) = texts[..n].iter().find(|(_, other)| other.meets(frame)) {
            return Some(format!("`{words}` lies on `{other}`"));
        }
    }
    None
}

#[test]
fn a_label_on_another_is_seen_by_this_test() {
    let text = |x| format!(r#"<text x="{x}" y="20" font-size="12" text-anchor="start">gap</text>"#);
    let svg = |x| format!(r#"<svg viewBox="0 0 60 30">{}{}</svg>"#, text(1), text(x));
    assert_eq!(fault(&svg(30)), None);
    assert_eq!(fault(&svg(10)).as_deref(), Some("`gap` lies on `gap`"));
    assert!(fault(&svg(50)).is_some_and(|fault| fault.contains("leaves the drawing")));
}

#[test]
fn no_label_of_the_gallery_lies_on_another_or_leaves_the_drawing() {
    for (name, svg) in drawn() {
        assert_eq!(fault(&svg), None, "{name}");
    }
}

proptest! {
    #[test]
    fn no_label_of_any_front_lies_on_another_or_leaves_the_drawing(what in anything::front()) {
        for (paper, name) in PAPERS {
            prop_assert_eq!(fault(&opening_front(&what, paper)), None, "{}", name);
        }
    }

    #[test]
    fn no_label_of_any_side_lies_on_another_or_leaves_the_drawing(what in anything::side()) {
        for (paper, name) in PAPERS {
            prop_assert_eq!(fault(&opening_side(&what, paper)), None, "{}", name);
        }
    }

    #[test]
    fn no_label_of_any_plan_lies_on_another_or_leaves_the_drawing(what in anything::plan()) {
        for (paper, name) in PAPERS {
            prop_assert_eq!(fault(&opening_plan(&what, paper)), None, "{}", name);
        }
    }

    #[test]
    fn no_label_of_any_option_lies_on_another_or_leaves_the_drawing(what in anything::option()) {
        prop_assert_eq!(fault(&option_plan(&what)), None);
    }
}
