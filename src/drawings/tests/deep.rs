//! Invented side views and plans, for the tests and for the eye.

use super::gallery::{beside, face, len, limits, service, too_small};
use crate::drawings::sizes::{
    Across, Behind, Between, Deep, Door, Foot, Hand, Hinged, Laps, Misfits, Needs, OpeningPlan, OpeningSide, OptionPlan,
};
use crate::language::Words;
use crate::units::System;

fn depths(name: &str, behind: &str, [body, door, handle]: [&str; 3], way: Door) -> Deep {
    let read = |text: &str| (!text.is_empty()).then(|| len(text));
    Deep {
        name: name.to_owned(),
        behind: len(behind),
        is_set: true,
        body: len(body),
        with_door: read(door),
        with_handle: read(handle),
        door: way,
    }
}

fn refrigerator() -> Deep {
    let way = Door::Swings { leaf: len("29 3/4\""), hinge: Hinged::At(Hand::Left) };
    depths("refrigerator", "1/2\"", ["23 1/2\"", "24 1/4\"", "26 3/8\""], way)
}

fn range() -> Deep {
    let way = Door::Drops { reach: len("20 1/2\"") };
    depths("range", "0\"", ["24 1/8\"", "26 1/4\"", "28 1/2\""], way)
}

fn side(id: &str, thing: Option<Deep>, heights: [&str; 2], high: &str) -> OpeningSide {
    let name = thing.as_ref().map_or("opening".to_owned(), |thing| thing.name.clone());
    OpeningSide {
        behind: Behind::Wall,
        id: id.to_owned(),
        height: thing.as_ref().map(|_| Between { least: len(heights[0]), most: len(heights[1]) }),
        name,
        opening: face(["30\"", "30\"", "30\""], high),
        depth: Some(len("25 1/4\"")),
        needs: Needs { depth: limits("24\"", ""), ..Needs::default() },
        thing,
        hangs: None,
        counter_edge: Some(len("25 1/2\"")),
        counter: Some(len("36\"")),
        services: vec![service("power 5-15R", "0\"", "50\""), service("water, valve", "0\"", "8\"")],
        misfits: Misfits::default(),
        units: System::Imperial,
        words: Words::default(),
    }
}

/// Every side view of the gallery.
pub fn sides() -> Vec<OpeningSide> {
    let tall = ["69 7/8\"", "69 7/8\""];
    let mut cook = side("k-03", Some(range()), ["35 3/4\"", "36 3/4\""], "36\"");
    cook.services = vec![service("gas 1/2 in", "0\"", "4\"")];
    let mut oven = side("k-04", Some(range()), ["27 3/4\"", "27 3/4\""], "28\"");
    oven.opening.foot = Foot::Above(len("31 1/2\""));
    oven.services.truncate(1);
    oven.counter_edge = None;
    let mut planned = side("k-07-planned", None, tall, "70 1/2\"");
    planned.opening.measured = false;
    let mut deep = side("k-07-deep", Some(refrigerator()), tall, "70 1/2\"");
    deep.misfits.depth = too_small("1/4\"");
    let metric = OpeningSide { id: "k-03-metric".to_owned(), units: System::Metric, ..cook.clone() };
    vec![side("k-07", Some(refrigerator()), tall, "70 1/2\""), cook, oven, planned, deep, metric]
}

fn plan(id: &str, thing: Deep, width: &str) -> OpeningPlan {
    OpeningPlan {
        behind: Behind::Wall,
        id: id.to_owned(),
        name: thing.name.clone(),
        tag: id.to_uppercase(),
        width: len("30 1/16\""),
        depth: Some(len("25 1/4\"")),
        measured: true,
        thing: Some(thing),
        thing_width: Some(len(width)),
        gap_left: len("5/32\""),
        left: beside("wall"),
        right: beside("base cabinet"),
        counter_edge: Some(len("25 1/2\"")),
        across: Some(Across { words: "ledge cabinet".to_owned(), distance: len("78 3/4\"") }),
        misfits: Misfits::default(),
        units: System::Imperial,
        words: Words::default(),
    }
}

/// Every plan of the gallery.
pub fn plans() -> Vec<OpeningPlan> {
    let mut right = plan("k-08", refrigerator(), "29 3/4\"");
    right.left = beside("tall cabinet");
    right.right = beside("wall");
    if let Some(thing) = &mut right.thing {
        thing.door = Door::Swings { leaf: len("29 3/4\""), hinge: Hinged::At(Hand::Right) };
    }
    let mut bare = plan("k-09", refrigerator(), "29 3/4\"");
    bare.thing = None;
    bare.measured = false;
    let mut wide = plan("k-03", range(), "30 1/2\"");
    wide.misfits = Misfits { width: too_small("7/16\""), height: None, depth: too_small("1/4\"") };
    let metric = OpeningPlan { id: "k-07-metric".to_owned(), units: System::Metric, ..right.clone() };
    vec![plan("k-07", refrigerator(), "29 3/4\""), wide, right, bare, metric]
}

/// Three options of one opening: one fits, one stands out, one is too wide.
pub fn options() -> Vec<OptionPlan> {
    let rows = [
        ("a", "29 3/4\"", "5/32\"", ["23 1/2\"", "24 1/4\"", "26 3/8\""]),
        ("b", "29 1/2\"", "1/8\"", ["26\"", "28 1/4\"", "30 1/8\""]),
        ("c", "30 3/8\"", "0\"", ["26\"", "27 1/2\"", "29 3/4\""]),
    ];
    let way = Door::Swings { leaf: len("29\""), hinge: Hinged::At(Hand::Left) };
    rows.map(|(letter, width, gap, sizes)| OptionPlan {
        id: format!("k-07-{letter}"),
        letter: letter.to_uppercase(),
        name: format!("Option {letter}"),
        opening: len("30 1/16\""),
        width: len(width),
        gap_left: len(gap),
        thing: depths("refrigerator", "1/2\"", sizes, way),
        counter_edge: Some(len("25 1/2\"")),
        misfits: Misfits { width: too_small("5/16\"").filter(|_| letter == "c"), ..Misfits::default() },
        laps: Laps::default(),
        units: if letter == "b" { System::Metric } else { System::Imperial },
        words: Words::default(),
    })
    .into()
}
