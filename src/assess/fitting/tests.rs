//! What must hold for every thing and every opening.

use proptest::prelude::*;

use crate::assess::assess;
use crate::finding::Severity;
use crate::read::read;
use crate::source::Folder;
use crate::units::{Date, Length};

/// A refrigerator and an opening, in 64ths of an inch.
#[derive(Clone, Copy, Debug)]
struct Case {
    opening: [i64; 3],
    body: [i64; 3],
    asked: [i64; 3],
    air: i64,
    build_up: i64,
    in_cabinet: bool,
}

impl Case {
    /// What the `fit/` rules find: code, weight and whether it is told to be too small.
    fn verdicts(self, units: &str) -> Vec<(&'static str, Severity, bool)> {
        let folder = Folder::in_memory(vec![
            ("book.yaml", format!("title: T\nclient: C\nunits: {units}\ncurrency: USD\n").into_bytes()),
            ("rooms/kitchen/room.yaml", self.room().into_bytes()),
            ("rooms/kitchen/it.yaml", self.selection().into_bytes()),
        ]);
        let reading = read(&folder).unwrap();
        assert!(reading.findings.is_empty(), "{:?}", reading.findings);
        let findings = assess(&reading.book, vec![], Date::parse("2027-01-15").unwrap()).findings;
        let fits = findings.into_iter().filter(|finding| finding.rule.starts_with("fit/"));
        fits.map(|finding| (finding.rule, finding.severity, finding.message.contains("needed"))).collect()
    }

    fn room(self) -> String {
        let [width, height, depth] = self.opening.map(inches);
        let cabinet = if self.in_cabinet { ", cabinet: {back panel: whole}" } else { "" };
        format!(
            "name: Kitchen\nfloor build-up: {}\nopenings:\n  it: {{takes: refrigerator, width: {width}, height: {height}, depth: {depth}{cabinet}}}\n",
            inches(self.build_up)
        )
    }

    fn selection(self) -> String {
        let [width, height, depth] = self.body.map(inches);
        let [least_width, least_height, least_depth] = self.asked.map(inches);
        let air = inches(self.air);
        format!(
            "selection: It\nkind: refrigerator\nplace: it\nsize: {{width: {width}, height: {height}, depth: {depth}}}\n\
             fit:\n  opening: {{width: at least {least_width}, height: at least {least_height}, depth: at least {least_depth}}}\n  \
             air: {{left: {air}, top: {air}, back: {air}}}\n"
        )
    }
}

fn inches(sixty_fourths: i64) -> String {
    Length::from_sixty_fourths(sixty_fourths).to_string()
}

fn case() -> impl Strategy<Value = Case> {
    let near = || prop::array::uniform3(1700_i64..1800);
    (near(), near(), near(), 0_i64..40, 0_i64..96, any::<bool>()).prop_map(
        |(opening, body, asked, air, build_up, in_cabinet)| Case { opening, body, asked, air, build_up, in_cabinet },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_larger_opening_is_never_newly_too_small(case in case(), more in prop::array::uniform3(0_i64..120)) {
        let mut larger = case;
        for (size, more) in larger.opening.iter_mut().zip(more) {
            *size += more;
        }
        let too_small = |case: Case| {
            let verdicts = case.verdicts("imperial").into_iter();
            verdicts.filter(|(_, _, small)| *small).map(|(rule, ..)| rule).collect::<Vec<_>>()
        };
        let before = too_small(case);
        prop_assert!(too_small(larger).iter().all(|rule| before.contains(rule)));
    }

    #[test]
    fn the_book_s_units_change_no_verdict(case in case()) {
        prop_assert_eq!(case.verdicts("imperial"), case.verdicts("metric"));
    }
}

/// The cases above are near enough to the line that both sides of it are met.
#[test]
fn such_cases_fit_and_fail() {
    let fits = Case { opening: [1800; 3], body: [1700; 3], asked: [1700; 3], air: 0, build_up: 0, in_cabinet: false };
    assert!(fits.verdicts("imperial").is_empty());
    let tight = Case { opening: [1700; 3], body: [1700; 3], asked: [1700; 3], air: 1, build_up: 1, in_cabinet: false };
    let rules: Vec<_> = tight.verdicts("imperial").into_iter().map(|(rule, ..)| rule).collect();
    assert_eq!(rules, ["fit/width", "fit/height"]);
}
