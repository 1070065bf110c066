//! What must hold for every thing and every opening.

use proptest::prelude::*;

use crate::assess::rules::trial::Trial;
use crate::finding::Severity;
use crate::site::fitting::{Foot, fitting, foot};
use crate::units::Length;

/// The rules that set the thing against its opening.
const RULES: [&str; 5] = ["fit/width", "fit/height", "fit/depth", "fit/play", "fit/projection"];

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
    /// What the rules find: code, weight and whether it is told to be too small.
    fn verdicts(self, units: fn(Trial) -> Trial) -> Vec<(&'static str, Severity, bool)> {
        let of = |rule| {
            let trial = units(Trial::of(rule)).room(&format!("floor build-up: {}", inches(self.build_up)));
            let found = trial
                .opening("it", &self.opening())
                .selection("selection: It\nkind: refrigerator\nplace: it", &self.option())
                .run();
            let told =
                found.findings().iter().map(|told| (rule, told.severity, told.message.text().contains("needed")));
            told.collect::<Vec<_>>()
        };
        RULES.into_iter().flat_map(of).collect()
    }

    fn opening(self) -> String {
        let [width, height, depth] = self.opening.map(inches);
        let cabinet = if self.in_cabinet { ", cabinet: {back panel: whole}" } else { "" };
        format!("{{takes: refrigerator, width: {width}, height: {height}, depth: {depth}{cabinet}}}")
    }

    fn option(self) -> String {
        let [width, height, depth] = self.body.map(inches);
        let [least_width, least_height, least_depth] = self.asked.map(inches);
        let air = inches(self.air);
        format!(
            "size: {{width: {width}, height: {height}, depth: {depth}}}\n\
             fit:\n  opening: {{width: at least {least_width}, height: at least {least_height}, depth: at least {least_depth}}}\n  \
             air: {{left: {air}, top: {air}, back: {air}}}\n"
        )
    }
}

/// A trial is imperial as it stands.
fn imperial(trial: Trial) -> Trial {
    trial
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
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_larger_opening_is_never_newly_too_small(case in case(), more in prop::array::uniform3(0_i64..120)) {
        let mut larger = case;
        for (size, more) in larger.opening.iter_mut().zip(more) {
            *size += more;
        }
        let too_small = |case: Case| {
            let verdicts = case.verdicts(imperial).into_iter();
            verdicts.filter(|(_, _, small)| *small).map(|(rule, ..)| rule).collect::<Vec<_>>()
        };
        let before = too_small(case);
        prop_assert!(too_small(larger).iter().all(|rule| before.contains(rule)));
    }

    #[test]
    fn the_book_s_units_change_no_verdict(case in case()) {
        prop_assert_eq!(case.verdicts(imperial), case.verdicts(Trial::metric));
    }
}

/// The cases above are near enough to the line that both sides of it are met.
#[test]
fn such_cases_fit_and_fail() {
    let fits = Case { opening: [1800; 3], body: [1700; 3], asked: [1700; 3], air: 0, build_up: 0, in_cabinet: false };
    assert!(fits.verdicts(imperial).is_empty());
    let tight = Case { opening: [1700; 3], body: [1700; 3], asked: [1700; 3], air: 1, build_up: 1, in_cabinet: false };
    let rules: Vec<_> = tight.verdicts(imperial).into_iter().map(|(rule, ..)| rule).collect();
    assert_eq!(rules, ["fit/width", "fit/height"]);
}

fn foot_of(opening: &str, room: &str) -> Foot {
    let book = Trial::of("fit/width").room(room).opening("hole", opening).read();
    foot(&book.rooms[0], &book.rooms[0].openings[0])
}

#[test]
fn what_is_cut_into_a_counter_hangs_under_it() {
    let inches = Length::from_inches;
    assert_eq!(foot_of("{takes: dishwasher, height: 34\"}", ""), Foot::Floor);
    assert_eq!(foot_of("{takes: wall oven, sill: 30\", height: 28\"}", ""), Foot::Above(inches(30)));
    assert_eq!(foot_of("{takes: wall oven, height: 28\"}", ""), Foot::Unknown);
    let sink = "{takes: sink, height: 9\", counter height: 36\"}";
    assert_eq!(foot_of(sink, ""), Foot::Above(inches(27)));
    let run = "runs: {north: {wall: A, counter: {height: 36\"}, parts: [{opening: hole}]}}";
    assert_eq!(foot_of("{takes: cooktop, height: 4\"}", run), Foot::Above(inches(32)));
    assert_eq!(foot_of("{takes: sink, height: 9\"}", ""), Foot::Unknown);
}

/// What is there for each of two things that are one on the other, and what the upper one's opening stands on.
fn stacked(room: &str, lower: (&str, &str, &str), upper: (&str, &str, &str)) -> [(Option<Length>, Foot); 2] {
    let it = |name: &str, (kind, _, height): (&str, &str, &str)| {
        (format!("selection: {name}\nkind: {kind}\nplace: {name}"), format!("size: {{{height}}}"))
    };
    let ((low, its), (high, others)) = (it("low", lower), it("high", upper));
    let book = Trial::of("fit/height")
        .book("units: metric\ncurrency: EUR")
        .room(room)
        .opening("low", &format!("{{takes: {}, pair: high, {}}}", lower.0, lower.1))
        .opening("high", &format!("{{takes: {}, {}}}", upper.0, upper.1))
        .selection(&low, &its)
        .selection(&high, &others)
        .read();
    let room = &book.rooms[0];
    ["low", "high"].map(|name| {
        let opening = room.opening(name).unwrap();
        let (_, option) = room.shown_at(opening).unwrap();
        (fitting(None, room, opening, option).height.there, foot(room, opening))
    })
}

/// A washer of 980 mm with a dryer of the same at 990 mm, under 2190 mm over a floor on which 5 mm are to come.
#[test]
fn each_of_two_that_go_in_as_they_are_written_has_the_height_that_is_written() {
    let mm = |millimetres: i64| Length::from_nanometres(millimetres * 1_000_000);
    let of = |low: i64, high: i64| {
        let (low, high) = (format!("height: {low} mm"), format!("height: {high} mm"));
        stacked(
            "floor build-up: 5 mm",
            ("washer", "height: 990 mm", &low),
            ("dryer", "sill: 990 mm, height: 1200 mm", &high),
        )
    };
    let upper = |there: i64, bottom: i64| (Some(mm(there)), Foot::Above(mm(bottom)));
    assert_eq!(of(980, 980), [(Some(mm(990)), Foot::Floor), upper(1195, 990)]);
    // A washer that is higher lifts what stands on it: what both have is what there is.
    assert_eq!(of(1000, 980), [(Some(mm(1000)), Foot::Floor), upper(1185, 1000)]);
    assert_eq!(of(980, 1204), [(Some(mm(981)), Foot::Floor), upper(1205, 980)]);
    // Together they are too high: each is told what the other leaves.
    assert_eq!(of(1000, 1204)[0], (Some(mm(981)), Foot::Floor));
}

/// Oven over oven, and microwave over oven, in a tower: each has its own hole.
#[test]
fn what_is_built_in_over_another_has_its_own_height() {
    let mm = |millimetres: i64| Some(Length::from_nanometres(millimetres * 1_000_000));
    for kind in ["wall oven", "built-in microwave"] {
        let both = stacked(
            "",
            ("wall oven", "sill: 700 mm, height: 595 mm", "height: 595 mm"),
            (kind, "sill: 1320 mm, height: 455 mm", "height: 455 mm"),
        );
        assert_eq!(both.map(|(there, _)| there), [mm(595), mm(455)], "{kind}");
    }
}
