//! Invented openings of every sort, for the tests and for the eye.

use crate::drawings::sizes::{
    Beside, Between, Door, Face, Foot, Hand, Hinged, Laps, Limits, Misfit, Misfits, Needs, Neighbour, OpeningFront,
    ReadAt, Reading, Service, Thing,
};
use crate::language::Words;
use crate::units::System;
use crate::units::length::Length;

/// A length as one writes it.
pub fn len(text: &str) -> Length {
    text.parse().expect("a length with its unit")
}

pub fn limits(least: &str, most: &str) -> Limits {
    let read = |text: &str| (!text.is_empty()).then(|| len(text));
    Limits { least: read(least), most: read(most) }
}

pub fn beside(words: &str) -> Neighbour {
    let kind = match words {
        "" => Beside::Open,
        "wall" => Beside::Wall,
        "base cabinet" | "sink base cabinet" | "vanity" => Beside::Base,
        _ => Beside::Tall,
    };
    Neighbour { kind, words: words.to_owned(), underside: None }
}

pub fn service(what: &str, from_left: &str, above_floor: &str) -> Service {
    let (from_left, above_floor) = (len(from_left), len(above_floor));
    Service { what: what.to_owned(), from_left, above_floor }
}

pub fn face(widths: [&str; 3], height: &str) -> Face {
    let held = [ReadAt::Top, ReadAt::Middle, ReadAt::Floor];
    let reading = |n: usize| Reading { held: held[n], width: len(widths[n]) };
    Face {
        widths: vec![reading(0), reading(1), reading(2)],
        height: len(height),
        foot: Foot::Floor,
        floor_build_up: None,
        measured: true,
    }
}

pub fn thing(name: &str, size: [&str; 3], gap_left: &str, door: Door) -> Thing {
    Thing {
        name: name.to_owned(),
        width: len(size[0]),
        height: Between { least: len(size[1]), most: len(size[2]) },
        gap_left: len(gap_left),
        hangs: None,
        handle: door != Door::None,
        laps: Laps::default(),
        door,
    }
}

fn opening(id: &str, name: &str, tag: &str, face: Face) -> OpeningFront {
    OpeningFront {
        id: id.to_owned(),
        name: name.to_owned(),
        tag: tag.to_owned(),
        opening: face,
        thing: None,
        needs: Needs::default(),
        left: beside("wall"),
        right: beside("base cabinet"),
        above: beside(""),
        services: vec![],
        counter: Some(len("36\"")),
        misfits: Misfits::default(),
        units: System::Imperial,
        words: Words::default(),
    }
}

pub fn too_small(by: &str) -> Option<Misfit> {
    Some(Misfit::TooSmall(len(by)))
}

pub fn refrigerator() -> OpeningFront {
    let swings = Door::Swings { leaf: len("29 3/4\""), hinge: Hinged::At(Hand::Left) };
    let size = ["29 3/4\"", "69 7/8\"", "69 7/8\""];
    let mut face = face(["30 1/4\"", "30 1/8\"", "30 1/16\""], "70 1/2\"");
    face.floor_build_up = Some(len("3/4\""));
    OpeningFront {
        thing: Some(thing("refrigerator", size, "5/32\"", swings)),
        needs: Needs {
            width: limits("30\"", "30 1/2\""),
            height: limits("70\"", "70 3/4\""),
            depth: limits("24\"", ""),
        },
        left: beside("tall cabinet"),
        above: Neighbour { underside: Some(len("70 1/2\"")), ..beside("wood cabinet") },
        services: vec![service("power 5-15R", "6\"", "50\""), service("water 1/4 in, valve", "24\"", "8\"")],
        ..opening("k-07", "refrigerator", "K-07", face)
    }
}

pub fn range() -> OpeningFront {
    let drops = Door::Drops { reach: len("20 1/2\"") };
    let size = ["29 7/8\"", "35 3/4\"", "36 3/4\""];
    OpeningFront {
        thing: Some(thing("range", size, "3/32\"", drops)),
        needs: Needs { width: limits("30\"", "30 1/4\""), ..Needs::default() },
        left: beside("base cabinet"),
        above: Neighbour { underside: Some(len("66\"")), ..beside("wood cabinet") },
        services: vec![service("gas 1/2 in", "15\"", "4\""), service("power 5-15R", "22\"", "6\"")],
        ..opening("k-03", "range", "K-03", face(["30 1/8\"", "30\"", "30 1/16\""], "36\""))
    }
}

pub fn dishwasher() -> OpeningFront {
    let drops = Door::Drops { reach: len("26\"") };
    let size = ["598 mm", "860 mm", "905 mm"];
    let mut face = face(["24 1/8\"", "24 1/16\"", "24 1/8\""], "34 1/2\"");
    face.floor_build_up = Some(len("7/16\""));
    OpeningFront {
        thing: Some(thing("dishwasher", size, "1/4\"", drops)),
        left: beside("sink base cabinet"),
        needs: Needs { width: limits("24\"", ""), height: limits("34\"", ""), ..Needs::default() },
        services: vec![service("water, drain and power through the sink base", "0\"", "10\"")],
        ..opening("k-05", "dishwasher", "K-05", face)
    }
}

pub fn wall_oven() -> OpeningFront {
    let drops = Door::Drops { reach: len("18 3/4\"") };
    let size = ["28 3/8\"", "27 3/4\"", "27 3/4\""];
    let mut face = face(["28 9/16\"", "28 1/2\"", "28 17/32\""], "28\"");
    face.foot = Foot::Above(len("31 1/2\""));
    OpeningFront {
        thing: Some(thing("wall oven", size, "1/16\"", drops)),
        left: beside("tall oven cabinet"),
        right: beside("tall oven cabinet"),
        above: beside("cabinet"),
        services: vec![service("power 240 V 30 A", "4\"", "20\"")],
        ..opening("k-04", "wall oven", "K-04", face)
    }
}

pub fn microwave() -> OpeningFront {
    let swings = Door::Swings { leaf: len("19\""), hinge: Hinged::At(Hand::Left) };
    let size = ["20 1/2\"", "12 1/4\"", "12 1/4\""];
    let mut face = face(["24\"", "24\"", "23 31/32\""], "15\"");
    face.foot = Foot::Above(len("54\""));
    OpeningFront {
        thing: Some(thing("microwave", size, "1 3/4\"", swings)),
        left: beside("wall"),
        right: beside("wall cabinet"),
        above: beside("wall cabinet"),
        services: vec![service("power 5-15R", "20\"", "62\"")],
        ..opening("k-06", "microwave shelf", "K-06", face)
    }
}

pub fn sink() -> OpeningFront {
    let size = ["32 7/8\"", "10\"", "10\""];
    let mut face = face(["33\"", "33 1/16\"", "33\""], "34 1/2\"");
    face.widths.truncate(1);
    face.widths[0].held = ReadAt::Throughout;
    OpeningFront {
        thing: Some(thing("apron sink", size, "1/16\"", Door::None)),
        left: beside("base cabinet"),
        services: vec![
            service("hot", "12\"", "20\""),
            service("cold", "20\"", "20\""),
            service("drain 1 1/2 in", "16\"", "16\""),
        ],
        ..opening("k-02", "sink", "K-02", face)
    }
}

pub fn toilet() -> OpeningFront {
    let size = ["15\"", "29 1/2\"", "29 1/2\""];
    OpeningFront {
        thing: Some(thing("toilet", size, "8 5/8\"", Door::None)),
        needs: Needs { width: limits("30\"", ""), ..Needs::default() },
        right: beside("vanity"),
        counter: Some(len("34\"")),
        services: vec![service("water", "10\"", "8\"")],
        ..opening("b-04", "toilet", "B-04", face(["32 1/4\"", "32 1/4\"", "32 3/8\""], "86\""))
    }
}

pub fn niche() -> OpeningFront {
    let mut face = face(["60\"", "60 1/8\"", "60 1/4\""], "72\"");
    face.foot = Foot::Above(len("4\""));
    OpeningFront { right: beside("wall"), above: beside("wall"), ..opening("b-07", "niche", "B-07", face) }
}

pub fn too_wide() -> OpeningFront {
    let swings = Door::Swings { leaf: len("30 3/8\""), hinge: Hinged::At(Hand::Left) };
    let size = ["30 3/8\"", "69 3/4\"", "69 3/4\""];
    OpeningFront {
        id: "k-07-c".to_owned(),
        thing: Some(thing("refrigerator", size, "0\"", swings)),
        misfits: Misfits { width: too_small("5/16\""), ..Misfits::default() },
        ..refrigerator()
    }
}

pub fn too_tall() -> OpeningFront {
    let drops = Door::Drops { reach: len("26\"") };
    let size = ["24 3/8\"", "34 5/8\"", "34 5/8\""];
    OpeningFront {
        id: "k-05-b".to_owned(),
        thing: Some(thing("dishwasher", size, "0\"", drops)),
        misfits: Misfits { width: too_small("5/16\""), height: too_small("1/8\""), depth: None },
        ..dishwasher()
    }
}

/// Its front lies over the edges of a hole that it fits.
pub fn lapping() -> OpeningFront {
    let mut what = microwave();
    what.id = "k-06-over".to_owned();
    if let Some(thing) = &mut what.thing {
        (thing.width, thing.gap_left) = (len("25 1/2\""), len("-3/4\""));
        thing.height = Between { least: len("16 1/2\""), most: len("16 1/2\"") };
        thing.laps = Laps { width: Some(len("1 1/2\"")), height: Some(len("1 1/2\"")) };
    }
    what
}

/// A hole that is larger than the sheet allows, in a metric book.
pub fn too_large() -> OpeningFront {
    let large = Some(Misfit::TooLarge(len("7 mm")));
    OpeningFront {
        id: "k-04-metric".to_owned(),
        units: System::Metric,
        words: Words::default(),
        misfits: Misfits { width: large, height: large, depth: None },
        ..wall_oven()
    }
}

pub fn metric() -> OpeningFront {
    OpeningFront { id: "k-07-metric".to_owned(), units: System::Metric, ..refrigerator() }
}

pub fn planned() -> OpeningFront {
    let mut what = range();
    what.id = "k-03-planned".to_owned();
    what.opening.widths.truncate(1);
    what.opening.widths[0].held = ReadAt::Throughout;
    what.opening.measured = false;
    what
}

pub fn bare() -> OpeningFront {
    OpeningFront { id: "k-07-bare".to_owned(), thing: None, ..refrigerator() }
}

/// Every front view of the gallery.
pub fn fronts() -> Vec<OpeningFront> {
    vec![
        refrigerator(),
        range(),
        dishwasher(),
        wall_oven(),
        microwave(),
        sink(),
        toilet(),
        niche(),
        too_wide(),
        too_tall(),
        bare(),
        planned(),
        lapping(),
        too_large(),
        metric(),
    ]
}
