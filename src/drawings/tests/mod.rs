//! Drawings read back from their SVG.

mod anything;
mod chains;
mod deep;
mod gallery;
mod geometry;
mod labels;
mod read_back;
mod rooms;

use super::*;
use labels::fault as fault_of_lettering;
use roxmltree::Document;
use std::collections::BTreeSet;

const PAPERS: [(Paper, &str); 2] = [(Paper::Desk, "desk"), (Paper::Phone, "phone")];

/// Every drawing of the gallery with its name.
fn drawn() -> Vec<(String, String)> {
    let mut all = Vec::new();
    for (paper, name) in PAPERS {
        for what in gallery::fronts() {
            all.push((format!("{}-front-{name}", what.id), opening_front(&what, paper)));
        }
        for what in deep::sides() {
            all.push((format!("{}-side-{name}", what.id), opening_side(&what, paper)));
        }
        for what in deep::plans() {
            all.push((format!("{}-plan-{name}", what.id), opening_plan(&what, paper)));
        }
    }
    for (paper, name) in PAPERS {
        for what in rooms::rooms() {
            all.push((format!("{}-room-{name}", what.id), room_plan(&what, paper)));
        }
    }
    for what in deep::options() {
        all.push((format!("{}-option-desk", what.id), option_plan(&what)));
    }
    all
}

/// With `DRAWINGS_TO` set to a folder, each drawing is written there to be looked at.
#[expect(clippy::disallowed_methods, reason = "drawings for a person to look at")]
#[test]
fn every_drawing_of_the_gallery_is_well_formed_and_titled() {
    let mut ids = BTreeSet::new();
    for (name, svg) in &drawn() {
        let document = Document::parse(svg).unwrap_or_else(|fault| panic!("{name}: {fault}\n{svg}"));
        let root = document.root_element();
        assert_eq!(root.attribute("role"), Some("img"), "{name}");
        let told = root.attribute("aria-labelledby").expect("a name");
        for id in told.split(' ') {
            let by_id = document.descendants().find(|node| node.attribute("id") == Some(id));
            let text = by_id.and_then(|node| node.text()).unwrap_or_default();
            assert!(text.len() > 10, "{name}: `{id}` says nothing");
        }
        for id in document.descendants().filter_map(|node| node.attribute("id")) {
            assert!(ids.insert(id.to_owned()), "{name}: `{id}` stands in another drawing too");
        }
        if let Ok(folder) = std::env::var("DRAWINGS_TO") {
            std::fs::write(format!("{folder}/{name}.svg"), svg).expect("the folder can be written");
        }
    }
}

/// With `RENEW` set the kept drawing is written anew, to be looked at before it is committed.
#[expect(clippy::disallowed_methods, reason = "the kept drawing is renewed")]
#[test]
fn a_drawing_is_the_same_to_the_byte_as_the_one_kept() {
    let kept = concat!(env!("CARGO_MANIFEST_DIR"), "/src/drawings/tests/range.svg");
    let svg = opening_front(&gallery::range(), Paper::Phone);
    if std::env::var_os("RENEW").is_some() {
        std::fs::write(kept, &svg).expect("the kept drawing can be written");
    }
    let kept = std::fs::read_to_string(kept).expect("the kept drawing is there");
    assert_eq!(svg, kept, "look at the drawing, then renew it with RENEW=1");
}

#[test]
fn the_description_says_what_does_not_fit() {
    let svg = opening_front(&gallery::too_wide(), Paper::Desk);
    assert!(svg.contains("It is 5/16 inches too wide for the opening."), "{svg}");
    let svg = opening_plan(&deep::plans()[0], Paper::Desk);
    assert!(svg.contains("Open, it leaves 24 1/4 inches to the ledge cabinet."), "{svg}");
}

/// Microwaves and ovens hide the edges of the hole that they fit (trade reports section 6).
#[test]
fn a_front_that_lies_over_the_edges_of_its_hole_is_no_misfit() {
    let svg = opening_front(&gallery::lapping(), Paper::Desk);
    assert!(
        svg.contains(" laps over") && svg.contains("lies over the opening's edges by 1 1/2 inches in all"),
        "{svg}"
    );
    assert!(!svg.contains("too wide") && !svg.contains("too tall") && !svg.contains("misfit"), "{svg}");
}

/// The scale holds on paper alone; a screen stretches the drawing and has the bar.
#[test]
fn a_metric_book_s_drawings_are_in_millimetres_at_metric_scales() {
    let svg = opening_front(&gallery::metric(), Paper::Desk);
    assert!(svg.contains("<text class=\"b ratio halo\"") && svg.contains(">1:20</text>"), "{svg}");
    assert!(
        svg.contains("The opening is about 763.6 millimetres") || svg.contains("millimetres at the foot wide"),
        "{svg}"
    );
    assert!(!svg.contains(" inches"), "{svg}");
    assert!(!opening_front(&gallery::metric(), Paper::Phone).contains("1:"));
}

#[test]
fn what_is_only_planned_is_marked_to_be_verified() {
    let planned = opening_front(&gallery::planned(), Paper::Desk);
    assert!(planned.contains("VIF: as planned, not yet measured"));
    assert!(!opening_front(&gallery::range(), Paper::Desk).contains("VIF"));
}
