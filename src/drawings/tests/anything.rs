//! Openings that nobody would build, for the property tests.

use crate::drawings::sizes::{
    Beside, Between, Door, Face, Hand, Held, Limits, Needs, Neighbour, OpeningFront, Reading, Service, Thing,
};
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
    let heights = (inches(6..110), prop::option::of(inches(0..70)));
    (widths, heights, prop::option::of(inches(0..3)), any::<bool>()).prop_map(
        |((width, more, one), (height, sill), floor_build_up, measured)| {
            let held = [Held::Top, Held::Middle, Held::Floor];
            let readings = held.iter().zip(more);
            let mut widths: Vec<Reading> =
                readings.map(|(&held, more)| Reading { held, width: width + more }).collect();
            if one {
                widths = vec![Reading { held: Held::Throughout, width }];
            }
            Face { widths, height, sill, floor_build_up, measured }
        },
    )
}

fn thing() -> impl Strategy<Value = Thing> {
    let hand = prop::sample::select(vec![Hand::Left, Hand::Right]);
    let door = (0..3, inches(5..40), hand).prop_map(|(kind, reach, hinge)| match kind {
        0 => Door::None,
        1 => Door::Drops { reach },
        _ => Door::Swings { leaf: reach, hinge },
    });
    let size = (inches(4..84), inches(5..100), inches(0..4), inches(-3..12));
    (words(), size, door, any::<bool>()).prop_map(|(name, (width, least, more, gap_left), door, handle)| {
        let height = Between { least, most: least + more };
        Thing { name, width, height, gap_left, door, handle }
    })
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
    (named, needs, beside, services(), counter).prop_map(
        |((name, opening, thing), (width, height, depth), (left, right, above), services, counter)| OpeningFront {
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
