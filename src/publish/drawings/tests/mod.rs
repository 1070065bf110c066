//! Drawings read back from their SVG.

mod gallery;

use super::*;

/// With `DRAWINGS_TO` set to a folder, each drawing is written there to be looked at.
#[test]
fn every_drawing_of_the_gallery_is_well_formed() {
    let mut drawn = Vec::new();
    for what in gallery::fronts() {
        for (paper, name) in [(Paper::Desk, "desk"), (Paper::Phone, "phone")] {
            drawn.push((format!("{}-front-{name}", what.id), opening_front(&what, paper)));
        }
    }
    for (name, svg) in &drawn {
        roxmltree::Document::parse(svg).unwrap_or_else(|fault| panic!("{name}: {fault}\n{svg}"));
        if let Ok(folder) = std::env::var("DRAWINGS_TO") {
            std::fs::write(format!("{folder}/{name}.svg"), svg).expect("the folder can be written");
        }
    }
}
