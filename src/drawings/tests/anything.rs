//! Openings that nobody would build, for the property tests.

use crate::drawings::sizes::{
    Across, Behind, Beside, Between, Deep, Door, Face, Foot, Hand, Hinged, Laps, Limits, Misfit, Misfits, Needs,
    Neighbour, OpeningFront, OpeningPlan, OpeningSide, OptionPlan, ReadAt, Reading, Service, Thing,
};
use crate::language::Words;
use crate::units::System;
use crate::units::length::Length;
use proptest::collection::vec;
use proptest::prelude::*;

/// A length in 32nds of an inch, as drawings print it exactly.
fn inches(range: std::ops::Range<i64>) -> impl Strategy<Value = Length> {
    (range.start * 32..range.end * 32).prop_map(|n| Length::from_sixty_fourths(2 * n))
}

fn words() -> impl Strategy<Value = String> {
    let parts = ["wall", "base cabinet", "tall", "pantry & broom", "<shelf>", "Einbauschrank", "2"];
    vec(prop::sample::select(parts.to_vec()), 0..5).prop_map(|parts| parts.join(" "))
}

fn neighbour() -> impl Strategy<Value = Neighbour> {
    let kinds = [Beside::Wall, Beside::Tall, Beside::Base, Beside::Open];
    let kind = prop::sample::select(kinds.to_vec());
    (kind, words(), prop::option::of(inches(20..110))).prop_map(|(kind, words, underside)| Neighbour {
        kind,
        words,
        underside,
    })
}

fn limits() -> impl Strategy<Value = Limits> {
    (prop::option::of(inches(5..90)), prop::option::of(inches(5..90))).prop_map(|(least, most)| Limits { least, most })
}

fn face() -> impl Strategy<Value = Face> {
    let widths = (inches(8..80), vec(inches(0..2), 3), any::<bool>());
    let foot = prop_oneof![Just(Foot::Floor), Just(Foot::Unknown), inches(0..70).prop_map(Foot::Above)];
    let heights = (inches(6..110), foot);
    (widths, heights, prop::option::of(inches(0..3)), any::<bool>()).prop_map(
        |((width, more, one), (height, foot), floor_build_up, measured)| {
            let held = [ReadAt::Top, ReadAt::Middle, ReadAt::Floor];
            let readings = held.iter().zip(more);
            let mut widths: Vec<Reading> =
                readings.map(|(&held, more)| Reading { held, width: width + more }).collect();
            if one {
                widths = vec![Reading { held: ReadAt::Throughout, width }];
            }
            Face { widths, height, foot, floor_build_up, measured }
        },
    )
}

fn door() -> impl Strategy<Value = Door> {
    let hand =
        prop::sample::select(vec![Hinged::At(Hand::Left), Hinged::At(Hand::Right), Hinged::BothSides, Hinged::Unknown]);
    (0..3, inches(5..40), hand).prop_map(|(kind, reach, hinge)| match kind {
        0 => Door::None,
        1 => Door::Drops { reach },
        _ => Door::Swings { leaf: reach, hinge },
    })
}

fn thing() -> impl Strategy<Value = Thing> {
    let size = (inches(4..84), inches(5..100), inches(0..4), inches(-3..12), prop::option::of(inches(0..9)));
    let opens = (door(), any::<bool>(), laps());
    (words(), size, opens).prop_map(|(name, (width, least, more, gap_left, hangs), (door, handle, laps))| {
        let height = Between { least, most: least + more };
        Thing { name, width, height, gap_left, hangs, door, handle, laps }
    })
}

fn units() -> impl Strategy<Value = System> {
    prop::sample::select(vec![System::Imperial, System::Metric])
}

fn misfits() -> impl Strategy<Value = Misfits> {
    let one = || {
        let by = (inches(0..5), any::<bool>());
        prop::option::of(by.prop_map(|(by, small)| if small { Misfit::TooSmall(by) } else { Misfit::TooLarge(by) }))
    };
    (one(), one(), one()).prop_map(|(width, height, depth)| Misfits { width, height, depth })
}

fn laps() -> impl Strategy<Value = Laps> {
    (prop::option::of(inches(0..4)), prop::option::of(inches(0..4))).prop_map(|(width, height)| Laps { width, height })
}

fn services() -> impl Strategy<Value = Vec<Service>> {
    let service = (words(), inches(-5..80), inches(0..80)).prop_map(|(what, from_left, above_floor)| Service {
        what,
        from_left,
        above_floor,
    });
    vec(service, 0..5)
}

/// Any front view.
pub fn front() -> impl Strategy<Value = OpeningFront> {
    let beside = (neighbour(), neighbour(), neighbour());
    let needs = (limits(), limits(), limits());
    let counter = prop::option::of(inches(28..44));
    let named = (words(), face(), prop::option::of(thing()));
    (named, needs, beside, services(), (counter, misfits(), units())).prop_map(
        |(
            (name, opening, thing),
            (width, height, depth),
            (left, right, above),
            services,
            (counter, misfits, units),
        )| OpeningFront {
            misfits,
            units,
            words: Words::default(),
            id: "k-01".to_owned(),
            tag: "K-01".to_owned(),
            needs: Needs { width, height, depth },
            name,
            opening,
            thing,
            left,
            right,
            above,
            services,
            counter,
        },
    )
}

fn deep() -> impl Strategy<Value = Deep> {
    let more = || prop::option::of(inches(0..5));
    (words(), inches(0..4), inches(4..40), more(), more(), door()).prop_map(
        |(name, behind, body, door, handle, way)| {
            let with_door = door.map(|more| body + more);
            let with_handle = handle.map(|more| with_door.unwrap_or(body) + more);
            Deep { name, behind, is_set: true, body, with_door, with_handle, door: way }
        },
    )
}

/// Any side view.
pub fn side() -> impl Strategy<Value = OpeningSide> {
    let counter = (prop::option::of(inches(20..30)), prop::option::of(inches(28..44)));
    let depth = (prop::option::of(inches(5..40)), limits(), prop::option::of(deep()));
    (face(), (inches(5..100), inches(0..4)), depth, counter, services(), (misfits(), units())).prop_map(
        |(opening, (least, more), (depth, needs, thing), (counter_edge, counter), services, (misfits, units))| {
            OpeningSide {
                misfits,
                units,
                behind: if opening.floor_build_up.is_some() { Behind::Island } else { Behind::Wall },
                words: Words::default(),
                id: "k-01".to_owned(),
                name: "thing".to_owned(),
                height: thing.is_some().then_some(Between { least, most: least + more }),
                needs: Needs { depth: needs, ..Needs::default() },
                opening,
                depth,
                hangs: counter_edge.filter(|_| thing.is_some()),
                thing,
                counter_edge,
                counter,
                services,
            }
        },
    )
}

/// Any plan.
pub fn plan() -> impl Strategy<Value = OpeningPlan> {
    let widths = (inches(8..80), inches(4..84), inches(-3..12));
    let depths = (prop::option::of(inches(5..40)), prop::option::of(inches(20..30)));
    let across = prop::option::of((words(), inches(30..140)));
    let deep = prop::option::of(deep());
    let said = (any::<bool>(), misfits(), units());
    (widths, depths, across, deep, (neighbour(), neighbour()), said).prop_map(
        |((width, wide, gap_left), (depth, counter_edge), across, thing, (left, right), (measured, misfits, units))| {
            OpeningPlan {
                misfits,
                units,
                behind: if measured { Behind::Wall } else { Behind::Island },
                words: Words::default(),
                id: "k-01".to_owned(),
                name: "thing".to_owned(),
                tag: "K-01".to_owned(),
                thing_width: thing.is_some().then_some(wide),
                across: across.map(|(words, distance)| Across { words, distance }),
                width,
                depth,
                measured,
                thing,
                gap_left,
                left,
                right,
                counter_edge,
            }
        },
    )
}

/// Any option in its opening.
pub fn option() -> impl Strategy<Value = OptionPlan> {
    let widths = (inches(8..80), inches(4..84), inches(-3..12));
    let said = (misfits(), laps(), units());
    (widths, deep(), prop::option::of(inches(20..30)), said).prop_map(
        |((opening, width, gap_left), thing, counter_edge, (misfits, laps, units))| OptionPlan {
            misfits,
            laps,
            units,
            words: Words::default(),
            id: "k-01-a".to_owned(),
            letter: "A".to_owned(),
            name: "Option A".to_owned(),
            opening,
            width,
            gap_left,
            thing,
            counter_edge,
        },
    )
}
