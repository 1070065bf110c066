//! A larger opening never brings a finding that it is too small.

use std::collections::BTreeSet;

use bookmatch::source::Place;
use proptest::prelude::*;

use super::{Book, found};

/// Rules that tell of too little room; `fit/way-in` is not the opening's.
const TOO_SMALL: &[&str] = &["fit/air", "fit/depth", "fit/height", "fit/width"];

/// A thing and the opening that it goes into, in eighths of an inch.
#[derive(Clone, Debug)]
struct Fit {
    kind: &'static str,
    width: Vec<i64>,
    height: Vec<i64>,
    depth: Vec<i64>,
    body: [i64; 3],
    sheet: Option<[i64; 3]>,
    air: [i64; 4],
}

fn eighths(length: &i64) -> String {
    format!("{}.{:03}\"", length / 8, length % 8 * 125)
}

fn list(points: &[i64]) -> String {
    format!("[{}]", points.iter().map(eighths).collect::<Vec<_>>().join(", "))
}

impl Fit {
    fn book(&self) -> Book {
        let room = format!(
            "name: Kitchen\nopenings:\n  hole:\n    takes: {}\n    width: {}\n    height: {}\n    depth: {}\n",
            self.kind,
            list(&self.width),
            list(&self.height),
            list(&self.depth)
        );
        let three = |[width, height, depth]: &[i64; 3], at_least: &str| {
            let (width, height, depth) = (eighths(width), eighths(height), eighths(depth));
            format!("width: {at_least}{width}, height: {at_least}{height}, depth: {at_least}{depth}")
        };
        let [left, right, top, back] = [0, 1, 2, 3].map(|at| eighths(&self.air[at]));
        let sheet = self
            .sheet
            .as_ref()
            .map_or(String::new(), |sheet| format!("  opening: {{{}}}\n", three(sheet, "at least ")));
        let it = format!(
            "selection: It\nkind: {}\nplace: hole\nsize: {{{}, height to hinge: {}}}\nfit:\n  air: {{left: {left}, right: {right}, top: {top} above hinge, back: {back}, vents at: rear}}\n{sheet}",
            self.kind,
            three(&self.body, ""),
            eighths(&(self.body[1] + 8)),
        );
        vec![
            ("book.yaml".into(), b"title: A\nclient: B\nunits: imperial\ncurrency: USD\n".to_vec()),
            ("rooms/kitchen/room.yaml".into(), room.into_bytes()),
            ("rooms/kitchen/it.yaml".into(), it.into_bytes()),
        ]
    }

    /// Each finding of too little room, as rule and line.
    fn too_small(&self) -> Vec<(&'static str, u32)> {
        let (findings, files) = found(&self.book());
        let faulty = findings.iter().find(|finding| finding.rule.text().starts_with("source/"));
        assert!(faulty.is_none(), "{faulty:?}");
        let told = findings.iter().filter(|finding| {
            let of_air = finding.rule.text() == "fit/air";
            TOO_SMALL.contains(&finding.rule.text()) && (of_air || finding.message.text().contains(" less than "))
        });
        let line = |place: &Place| files.start(place).line;
        told.map(|finding| (finding.rule.text(), line(&finding.place))).collect()
    }
}

fn points() -> impl Strategy<Value = Vec<i64>> {
    prop::collection::vec(180..330_i64, 1..4)
}

fn fits() -> impl Strategy<Value = Fit> {
    let kinds = vec!["refrigerator", "range", "dishwasher", "wall oven", "microwave"];
    let sides = || [180..330_i64, 180..330, 180..330];
    let air = [0..24_i64, 0..24, 0..24, 0..24];
    (prop::sample::select(kinds), points(), points(), points(), sides(), prop::option::of(sides()), air)
        .prop_map(|(kind, width, height, depth, body, sheet, air)| Fit { kind, width, height, depth, body, sheet, air })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn more_room_never_brings_too_little(fit in fits(), more in prop::collection::vec(0..60_i64, 9)) {
        let before = fit.too_small();
        let mut larger = fit.clone();
        let points = larger.width.iter_mut().chain(&mut larger.height).chain(&mut larger.depth);
        points.zip(&more).for_each(|(point, more)| *point += more);
        for finding in larger.too_small() {
            // Where the body goes in at last, what that side still lacks is told as air and no longer as size.
            let was_told = before.contains(&finding) || finding.0 == "fit/air" && before.iter().any(|told| told.1 == finding.1);
            prop_assert!(was_told, "{:?}\nbefore {:?}\n{:?}\nafter {:?}", finding, before, fit, larger);
        }
    }
}

/// The property would hold of rules that are always silent: these are not.
#[test]
fn too_little_room_is_told_of_each_side_and_enough_is_not() {
    let mut fit = Fit {
        kind: "refrigerator",
        width: vec![240],
        height: vec![240],
        depth: vec![180],
        body: [240, 240, 200],
        sheet: Some([241, 241, 200]),
        air: [8; 4],
    };
    let rules = |fit: &Fit| {
        let rules: BTreeSet<&str> = fit.too_small().into_iter().map(|(rule, _)| rule).collect();
        Vec::from_iter(rules)
    };
    assert_eq!(rules(&fit), ["fit/depth", "fit/height", "fit/width"]);
    // An inch is asked for above the hinge, which stands at 31 inches, and half of one is left.
    (fit.width, fit.height, fit.depth) = (vec![300], vec![252], vec![300]);
    assert_eq!(rules(&fit), ["fit/air"]);
    (fit.width, fit.height, fit.depth) = (vec![300], vec![300], vec![300]);
    assert_eq!(rules(&fit), [""; 0]);
}
