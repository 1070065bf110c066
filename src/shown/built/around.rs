//! What the sheet of an opening shows of the room around it, as a typed value.

use crate::book::{NarrowPoint, Opening, Room};
use crate::site::fitting::{AboveIs, Side, out_of_square};
use crate::site::heat::{Body, Hearth, Near, Where, nearest};
use crate::site::plan::{PlanFault, Wrong};
use crate::site::{Around, Beside, Overhead};
use crate::vocabulary::{Shown, ShownValue};

use super::group;

/// All that the sheet takes from elsewhere than the opening and the maker's sheet.
pub fn shown(around: &Around<'_>, room: &Room, opening: &Opening) -> ShownValue {
    let square = out_of_square(room, opening)
        .map_or(ShownValue::Nothing, |skew| group([("out", skew.out.shown()), ("within", skew.within.shown())]));
    let points = around.way_in.iter().map(|passage| passage.point);
    let points = points.chain(around.door.as_ref().map(|door| &door.point));
    group([
        ("height", around.height.shown()),
        ("depth", around.depth.shown()),
        ("ends under", ends_under(around)),
        ("counter height", around.counter_height.shown()),
        ("counter depth", around.counter_depth.shown()),
        // Stated either way, so that every sheet of this release holds something of the room.
        ("in an island", around.in_an_island.shown()),
        ("in its place", ShownValue::List(around.in_its_place.iter().map(in_its_place).collect())),
        ("above", overhead(&around.above)),
        ("left", beside(&around.left)),
        ("right", beside(&around.right)),
        ("near heat", around.hearth.as_ref().map_or(ShownValue::Nothing, near_heat)),
        ("out of square", square),
        ("way in", ShownValue::List(points.map(point).collect())),
    ])
}

/// Both that stand in one place, and how far they would have to move: the verdict says it.
fn in_its_place(fault: &PlanFault) -> ShownValue {
    let item = fault.item.shown();
    match &fault.wrong {
        Wrong::Clashes { other, along, in_height, out } => group([
            ("name", other.shown()),
            ("where", item),
            ("along", along.shown()),
            ("in height", in_height.shown()),
            ("out", out.shown()),
        ]),
        Wrong::Closes { door, by, of } => {
            group([("name", door.shown()), ("where", item), ("closes", by.shown()), ("of", of.shown())])
        }
        _ => ShownValue::Nothing,
    }
}

fn ends_under(around: &Around<'_>) -> ShownValue {
    match around.fit.as_ref().and_then(|fit| fit.under.as_ref()).map(|above| &above.is) {
        Some(AboveIs::Hung(name) | AboveIs::Counter(name)) => name.shown(),
        Some(AboveIs::Ceiling) => ShownValue::Word("ceiling"),
        Some(AboveIs::Said) | None => ShownValue::Nothing,
    }
}

/// What the opening says itself is among its own fields.
fn overhead(above: &Overhead<'_>) -> ShownValue {
    match above {
        Overhead::Said(_) => ShownValue::Nothing,
        Overhead::Hung(name, edge) => group([("name", name.shown()), ("lower edge", edge.shown())]),
        Overhead::OverHeat(of, edge) => group([("name", body(of)), ("lower edge", edge.shown())]),
    }
}

fn beside(beside: &Beside<'_>) -> ShownValue {
    match beside {
        Beside::Said(_) => ShownValue::Nothing,
        Beside::Stands(flank) => {
            let reaches = match (flank.is_built, flank.is_tall) {
                (true, _) => "all the way",
                (false, true) => "above the counter",
                (false, false) => "to the counter",
            };
            group([("name", flank.what.shown()), ("reaches", ShownValue::Word(reaches))])
        }
    }
}

/// What must stay clear on each side of what is cooked on, and what is nearest there.
fn near_heat(hearth: &Hearth<'_>) -> ShownValue {
    let sides = [
        ("above", Where::Above, hearth.above()),
        ("left", Where::Beside(Side::Left), hearth.beside(Side::Left)),
        ("right", Where::Beside(Side::Right), hearth.beside(Side::Right)),
    ];
    group(sides.map(|(key, place, all)| {
        let found = nearest(&all);
        let asked = found.map(|near| near.asked.clone()).or_else(|| hearth.asks(place));
        let asked = asked.map_or(ShownValue::Nothing, |asked| {
            group([("clear", asked.length.shown()), ("by", asked.source.shown())])
        });
        (key, group([("nearest", found.map_or(ShownValue::Nothing, near)), ("asked", asked)]))
    }))
}

fn near(near: &Near<'_>) -> ShownValue {
    group([
        ("name", body(&near.body)),
        ("distance", near.distance.shown()),
        ("burning", near.burning.shown()),
        ("under a hood", near.under_a_hood.then_some(true).shown()),
    ])
}

fn body(body: &Body<'_>) -> ShownValue {
    let names: Vec<String> = body.names().into_iter().flatten().map(str::to_string).collect();
    if names.is_empty() { ShownValue::Word(body.word()) } else { names.join(", ").shown() }
}

fn point(point: &NarrowPoint) -> ShownValue {
    let NarrowPoint { name, width, height, depth, turns, .. } = point;
    group([
        ("name", name.shown()),
        ("width", width.shown()),
        ("height", height.shown()),
        ("depth", depth.shown()),
        ("turns", turns.then_some(true).shown()),
    ])
}
