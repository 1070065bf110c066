//! Drawings read back from their SVG.

mod deep;
mod gallery;

use super::*;

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
    for what in deep::options() {
        all.push((format!("{}-option-desk", what.id), option_plan(&what)));
    }
    all
}

/// With `DRAWINGS_TO` set to a folder, each drawing is written there to be looked at.
#[test]
fn every_drawing_of_the_gallery_is_well_formed() {
    for (name, svg) in &drawn() {
        roxmltree::Document::parse(svg).unwrap_or_else(|fault| panic!("{name}: {fault}\n{svg}"));
        if let Ok(folder) = std::env::var("DRAWINGS_TO") {
            std::fs::write(format!("{folder}/{name}.svg"), svg).expect("the folder can be written");
        }
    }
}
