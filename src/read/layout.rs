//! Reads a room's plan: outline, walls, doors, windows, fixtures, hung lights.

use crate::book::vocabulary::{DOORWAY, FIXTURE, HUNG, ROOM, WALL, WINDOW};
use crate::book::{Burning, Doorway, End, Fixture, HungLights, Layout, Outline, Slot, WallNote, Window};
use crate::finding::Code;
use crate::source::Spanned;
use crate::source::yaml::{Node, Value};
use crate::units::Length;
use crate::vocabulary::values::{kind_name, length, positive_length, readings, scalar, text, two_sides, whole, yes_no};
use crate::vocabulary::{Faults, Fields, NameOf, Record, Shape, Value as _, values};

use super::run;

/// Length and width, or corners.
pub fn outline(node: &Node, faults: &mut Faults) -> Option<Outline> {
    match &node.value {
        Value::Scalar { .. } => two_sides(node, faults).map(|(length, width)| Outline::Rectangle(length, width)),
        Value::List(items) if !items.is_empty() => {
            // Every corner is read before judging, so that each faulty one is told.
            let corners: Vec<_> = items.iter().map(|item| corner(item, faults)).collect();
            corners.into_iter().collect::<Option<Vec<_>>>().map(Outline::Corners)
        }
        _ => {
            if let Some(field) = ROOM.field("outline") {
                faults.wrong_type(node, &field.shape);
            }
            None
        }
    }
}

fn corner(node: &Node, faults: &mut Faults) -> Option<Spanned<(Length, Length)>> {
    if let Value::List(items) = &node.value
        && let [across, up] = items.as_slice()
    {
        let (across, up) = (length(across, faults), length(up, faults));
        return Some(Spanned::new((across?, up?), node.span));
    }
    let message = format!("a corner should be two lengths, and is {}", node.what());
    faults.stop(
        Code::WRONG_TYPE,
        node.span,
        message,
        "write how far right and how far up: `[…, …]`, each with its unit",
    );
    None
}

/// All that stands where in a room.
pub fn layout(fields: &mut Fields<'_>, faults: &mut Faults) -> Layout {
    Layout {
        walls: each(fields, "walls", &WALL, faults, wall),
        doors: each(fields, "doors", &DOORWAY, faults, doorway),
        windows: each(fields, "windows", &WINDOW, faults, window),
        runs: each(fields, "runs", &crate::book::vocabulary::RUN, faults, run::run),
        islands: each(fields, "islands", &crate::book::vocabulary::ISLAND, faults, run::island),
        fixtures: each(fields, "fixtures", &FIXTURE, faults, fixture),
        lights: each(fields, "lights", &HUNG, faults, hung),
    }
}

/// Reads one of a kind of thing that the designer names.
type ReadNamed<T> = fn(Spanned<String>, &mut Fields<'_>, &mut Faults) -> T;

fn each<T>(
    fields: &mut Fields<'_>,
    key: &'static str,
    record: &'static Record,
    faults: &mut Faults,
    read: ReadNamed<T>,
) -> Vec<T> {
    let mut all = Vec::new();
    for (name, node) in fields.named(key, faults) {
        faults.item = Some(name.clone());
        if let Some(mut inner) = Fields::of(node, record, faults) {
            all.push(read(name.clone(), &mut inner, faults));
            inner.finish(faults);
        }
        faults.item = None;
    }
    all
}

/// The name of something else in the book; whether it is there is looked at when all is read.
pub fn name(node: &Node, faults: &mut Faults) -> Option<String> {
    scalar(node, &Shape::Name(NameOf::Opening), faults).map(str::to_string)
}

/// One of the words of a field.
pub fn word(
    fields: &mut Fields<'_>,
    record: &'static Record,
    key: &'static str,
    faults: &mut Faults,
) -> Slot<&'static str> {
    values::word(fields, record, key, faults).map_or(Slot::Absent, Slot::Given)
}

/// An end of a wall; the left one if left out.
pub fn end(fields: &mut Fields<'_>, record: &'static Record, faults: &mut Faults) -> End {
    values::word(fields, record, "from", faults).map_or(End::Left, |word| End::of(word.value))
}

fn wall(letter: Spanned<String>, fields: &mut Fields<'_>, faults: &mut Faults) -> WallNote {
    WallNote {
        letter,
        name: fields.read("name", faults, text),
        length: fields.read("length", faults, readings),
        height: fields.read("height", faults, positive_length),
        is: word(fields, &WALL, "is", faults),
        burning: fields.read("material", faults, Burning::read),
    }
}

fn doorway(own: Spanned<String>, fields: &mut Fields<'_>, faults: &mut Faults) -> Doorway {
    Doorway {
        name: own,
        wall: fields.read("wall", faults, name),
        at: fields.read("at", faults, positive_length),
        width: fields.read("width", faults, positive_length),
        height: fields.read("height", faults, positive_length),
        leaf: fields.read("leaf", faults, positive_length),
        hinge: word(fields, &DOORWAY, "hinge", faults),
        swings: word(fields, &DOORWAY, "swings", faults),
        slides: fields.read("slides", faults, yes_no),
        casing: fields.read("casing", faults, positive_length),
        casing_thickness: fields.read("casing thickness", faults, positive_length),
        burning: fields.read("material", faults, Burning::read),
        free_swing: fields.read("free swing", faults, positive_length),
    }
}

fn window(own: Spanned<String>, fields: &mut Fields<'_>, faults: &mut Faults) -> Window {
    let place = values::word(fields, &WINDOW, "in", faults);
    Window {
        name: own,
        in_roof: place.map_or(Slot::Absent, |place| Slot::Given(place.map(|word| word == "roof"))),
        wall: fields.read("wall", faults, name),
        at: fields.read("at", faults, positive_length),
        width: fields.read("width", faults, positive_length),
        sill: fields.read("sill", faults, positive_length),
        height: fields.read("height", faults, positive_length),
        opens: word(fields, &WINDOW, "opens", faults),
        glass: fields.read("glass", faults, text),
        from_water: fields.read("from water", faults, positive_length),
        above: fields.read("above", faults, text),
        casing: fields.read("casing", faults, positive_length),
        casing_thickness: fields.read("casing thickness", faults, positive_length),
        burning: fields.read("material", faults, Burning::read),
    }
}

fn fixture(own: Spanned<String>, fields: &mut Fields<'_>, faults: &mut Faults) -> Fixture {
    Fixture {
        name: own,
        wall: fields.read("wall", faults, name),
        centre: fields.read("centre", faults, positive_length),
        from: end(fields, &FIXTURE, faults),
        off_wall: fields.read("off wall", faults, positive_length),
        width: fields.read("width", faults, positive_length),
        depth: fields.read("depth", faults, positive_length),
        height: fields.read("height", faults, positive_length),
        sill: fields.read("sill", faults, positive_length),
        takes: fields.read("takes", faults, kind_name),
        selection: fields.read("selection", faults, name),
        opening: fields.read("opening", faults, name),
        burning: fields.read("material", faults, Burning::read),
        door: fields.read("door", faults, positive_length),
        hinge: word(fields, &FIXTURE, "hinge", faults),
    }
}

fn hung(own: Spanned<String>, fields: &mut Fields<'_>, faults: &mut Faults) -> HungLights {
    HungLights {
        name: own,
        selection: fields.read("selection", faults, name),
        over: fields.read("over", faults, name),
        count: fields.read("count", faults, whole),
        at: fields.read("at", faults, readings),
    }
}
