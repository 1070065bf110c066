//! What the plan of a room shows, as typed values: the drawing is made from them, and its mark is of them.

use std::collections::BTreeMap;

use crate::book::{Opening, PartIs, Size, Slot, System};
use crate::ledger::IssuedSheet;
use crate::site::plan::{Aisle, Frame, Hole, HoleIs, Plan, Point, RowOf, Stands, Thing, What};
use crate::units::Length;
use crate::vocabulary::{Kind, Shown, ShownField, ShownGroup, ShownValue, Since, Trait, Version, words};

use super::SheetOf;
use super::built::sheet;
use super::changes::KNOWN_BY;
use super::trades::ceiling;

/// What hangs higher than this is drawn dashed.
const HIGH: Length = Length::from_inches(48);
/// How high a ceiling is under which most people can just stand: 6'-8", or 2 m.
const STANDS: Length = Length::from_inches(80);
/// The same, in round millimetres.
const STANDS_IN_MILLIMETRES: Length = Length::from_millimetres(2000);

words! {
    /// How a thing is drawn.
    pub enum DrawnAs {
        /// Cabinets, fixtures and all else that one sees from above.
        Below = "below",
        /// From the floor to above the counter.
        Tall = "tall",
        /// A filler or a panel.
        Closure = "closure",
        /// Something chosen for an opening.
        Chosen = "chosen",
        /// Above one's head.
        Above = "above",
    }
}

/// How a thing is drawn.
pub fn drawn_as(thing: &Thing<'_>) -> DrawnAs {
    match thing.what {
        _ if thing.low >= HIGH => DrawnAs::Above,
        _ if thing.opening.is_some() => DrawnAs::Chosen,
        _ if thing.is_closure() => DrawnAs::Closure,
        What::Part(part) if matches!(part.is, PartIs::Tall(_)) => DrawnAs::Tall,
        _ => DrawnAs::Below,
    }
}

/// A hood whose opening has no wall hangs over the one thing that is cooked on.
pub struct HungHood<'a> {
    /// Its opening.
    pub opening: &'a Opening,
    /// The front of what it hangs at.
    pub frame: Frame,
    /// From the frame's left end to its left and right side.
    pub along: (Length, Length),
    /// From the frame out to its back and front.
    pub out: (Length, Length),
}

/// The hoods that hang so.
pub fn hoods<'a>(plan: &Plan<'a>) -> Vec<HungHood<'a>> {
    let mut cooks = plan.with(Trait::Cooks);
    let (Some(under), None) = (cooks.next(), cooks.next()) else { return vec![] };
    let hoods = plan.room.openings.iter().filter(|opening| opening.takes_a(Kind::Hood));
    let unplaced = hoods.filter(|opening| plan.opening(opening).is_none());
    let hung = unplaced.filter_map(|opening| {
        let selection = plan.room.goes_into(&opening.name).next();
        let size = selection.and_then(|selection| selection.standing().first()).map(|option| &option.size);
        let own = |of: fn(&Size) -> &Slot<Length>| size.and_then(|size| of(size).get().copied());
        let width = own(|size| &size.width).or_else(|| opening.governing_width())?;
        let depth = own(|size| &size.depth).or_else(|| opening.governing_depth())?;
        let along = under.centre() - width.half();
        let out = (under.out.0 + under.out.1).half() - depth.half();
        Some(HungHood { opening, frame: under.frame, along: (along, along + width), out: (out, out + depth) })
    });
    hung.collect()
}

/// The front edge of a counter over something that it carries.
pub struct CounterEdge<'a> {
    /// The run.
    pub of: &'a str,
    /// The front of its wall.
    pub frame: Frame,
    /// From the frame's left end to both ends.
    pub along: (Length, Length),
    /// From the frame out to it.
    pub front: Length,
}

/// The front edge of each counter, over all that it carries.
pub fn counter_edges<'a>(plan: &Plan<'a>) -> Vec<CounterEdge<'a>> {
    let mut edges = Vec::new();
    for row in &plan.rows {
        let (Some(counter), Stands::Wall(_), RowOf::Run(run)) = (row.counter, row.stands, row.of) else { continue };
        let carried = row.things.iter().filter_map(|at| plan.things.get(*at));
        let carried = carried.filter(|thing| thing.row.is_some() && row.carries(thing));
        edges.extend(carried.map(|thing| CounterEdge {
            of: &run.name.value,
            frame: row.frame,
            along: thing.along,
            front: counter.front,
        }));
    }
    edges
}

/// The clear ways between fronts that face each other, as far as they are told.
pub fn aisles<'p, 'a>(plan: &'p Plan<'a>) -> impl Iterator<Item = Aisle<'p, 'a>> {
    plan.aisles().into_iter().filter(|aisle| aisle.to.thing().is_some())
}

/// How high a ceiling is under which one can just stand.
pub fn stands(units: System) -> Length {
    if units.is_metric() { STANDS_IN_MILLIMETRES } else { STANDS }
}

/// The plan of a room as it would be issued; none where the book does not tell its outline.
pub fn issued(plan: &Plan<'_>, units: System) -> Option<IssuedSheet> {
    if plan.walls.is_empty() {
        return None;
    }
    let room = plan.room;
    let fields = vec![
        field("sheet", ShownValue::Word(SheetOf::PLAN)),
        field("room", room.folder.shown()),
        field("room name", room.title().to_string().shown()),
        field("ceiling", ceiling(room)),
        field("floor build-up", room.floor_build_up.shown()),
        field(
            "walls",
            list(plan.walls.iter().map(|wall| {
                let ends = [("left end", point(wall.frame.left())), ("length", wall.frame.length().shown())];
                (wall.letter.clone(), [&ends[..], &[("open", wall.is_open().then_some(true).shown())]].concat())
            })),
        ),
        field(
            "doors and windows",
            list(plan.holes.iter().map(|one| (one.name().to_string(), hole(plan, one))).chain(roof(plan))),
        ),
        field(
            "in plan",
            list(plan.things.iter().map(|one| thing(plan, one)).chain(hoods(plan).iter().map(|one| hood(plan, one)))),
        ),
        field("counters", list(counter_edges(plan).iter().map(edge))),
        field("aisles", list(aisles(plan).map(|one| aisle(plan, &one)))),
        field(
            "seats",
            ShownValue::List(room.islands.iter().flat_map(|one| plan.seat_places(one)).map(point).collect()),
        ),
        field("lights", list(plan.hung.iter().map(|hung| lights(plan, hung)))),
        field("slope", slope(plan, units)),
    ];
    Some(sheet(SheetOf::Plan, room, fields, Version::Third))
}

/// The keys of its lists, under which what came or is gone is told.
pub const LISTS: [&str; 6] = ["walls", "doors and windows", "in plan", "counters", "aisles", "lights"];

type Fields = Vec<(&'static str, ShownValue)>;

/// A list of which each is known by its name; of several of one name by their order too.
fn list(all: impl Iterator<Item = (String, Fields)>) -> ShownValue {
    let mut seen: BTreeMap<String, usize> = BTreeMap::new();
    let each = all.map(|(name, fields)| {
        let count = seen.entry(name.clone()).and_modify(|count| *count += 1).or_insert(1);
        let id = if *count == 1 { name.clone() } else { format!("{name} {count}") };
        let named = [(KNOWN_BY, id.shown()), ("name", name.shown())];
        group(named.into_iter().chain(fields))
    });
    ShownValue::List(each.collect())
}

fn hole(plan: &Plan<'_>, hole: &Hole<'_>) -> Fields {
    let leaf = plan.door_sweeps(hole).first().map(|sweep| sweep.reach);
    let (is, hinge) = match hole.is {
        HoleIs::Door(door) => ("door", leaf.and_then(|_| door.hinge.get().copied())),
        HoleIs::Window(_) => ("window", None),
    };
    vec![
        ("is", ShownValue::Word(is)),
        ("wall", plan.walls.get(hole.wall).map(|wall| wall.letter.clone()).shown()),
        ("left side", hole.along.0.shown()),
        ("right side", hole.along.1.shown()),
        ("swings in on", hinge.shown()),
        ("leaf", leaf.shown()),
    ]
}

fn roof(plan: &Plan<'_>) -> impl Iterator<Item = (String, Fields)> {
    let told = plan.roof_windows().into_iter().map(|(window, corners)| {
        let corners = ShownValue::List(corners.into_iter().map(point).collect());
        (window.name.value.clone(), vec![("is", ShownValue::Word("roof window")), ("corners", corners)])
    });
    told.collect::<Vec<_>>().into_iter()
}

/// What a thing is called. Its number is fixed once it is issued, and is in no mark.
fn called(plan: &Plan<'_>, thing: &Thing<'_>) -> String {
    let selection = thing.opening.and_then(|opening| plan.room.goes_into(&opening.name).next());
    match (selection, thing.part().map(|part| &part.is)) {
        (Some(selection), _) => selection.name.value.clone(),
        (None, Some(PartIs::Filler(_))) => "filler".into(),
        (None, Some(PartIs::Panel(_))) => "panel".into(),
        (None, Some(PartIs::Gap(_))) => "gap".into(),
        (None, _) => thing.name.to_string(),
    }
}

fn thing(plan: &Plan<'_>, thing: &Thing<'_>) -> (String, Fields) {
    let mut fields = vec![("drawn as", drawn_as(thing).shown())];
    fields.extend(place(plan, thing.stands, (thing.along, thing.out), || thing.footprint().corners().to_vec()));
    (called(plan, thing), fields)
}

/// Where something is: by the wall that it stands at, or by its corners.
fn place(
    plan: &Plan<'_>,
    stands: Stands,
    (along, out): ((Length, Length), (Length, Length)),
    corners: impl Fn() -> Vec<Point>,
) -> Fields {
    let at_wall = match stands {
        Stands::Wall(number) => plan.walls.get(number),
        Stands::Island(..) => None,
    };
    let Some(wall) = at_wall else {
        return vec![("corners", ShownValue::List(corners().into_iter().map(point).collect()))];
    };
    vec![
        ("wall", wall.letter.shown()),
        ("left side", along.0.shown()),
        ("right side", along.1.shown()),
        ("back", out.0.shown()),
        ("front", out.1.shown()),
    ]
}

fn hood(plan: &Plan<'_>, hood: &HungHood<'_>) -> (String, Fields) {
    let selection = plan.room.goes_into(&hood.opening.name).next();
    let name = selection.map_or(hood.opening.name.as_str(), |selection| selection.name.as_str()).to_string();
    let corners = hood.frame.rectangle(hood.along, hood.out).into_iter().map(point).collect();
    (name, vec![("drawn as", DrawnAs::Above.shown()), ("corners", ShownValue::List(corners))])
}

fn edge(edge: &CounterEdge<'_>) -> (String, Fields) {
    let fields =
        vec![("left side", edge.along.0.shown()), ("right side", edge.along.1.shown()), ("front", edge.front.shown())];
    (edge.of.to_string(), fields)
}

fn aisle(plan: &Plan<'_>, aisle: &Aisle<'_, '_>) -> (String, Fields) {
    let to = aisle.to.thing().map_or_else(String::new, |thing| called(plan, thing));
    let name = format!("{} – {to}", called(plan, aisle.from));
    (name, vec![("front", plan.front(aisle.from).shown()), ("wide", aisle.wide.shown())])
}

fn lights(plan: &Plan<'_>, hung: &crate::site::plan::Hung<'_>) -> (String, Fields) {
    let named = hung.lights.selection.get();
    let selection = plan.room.selections.iter().find(|selection| Some(&selection.name.value) == named);
    let size = selection.and_then(|selection| selection.standing().first()).map(|option| &option.size);
    let wide = size.and_then(|size| size.diameter.get().or(size.width.get()).copied());
    let name = selection.map_or(hung.lights.name.as_str(), |selection| selection.name.as_str()).to_string();
    let places = ShownValue::List(hung.places.iter().copied().map(point).collect());
    (name, vec![("wide", wide.shown()), ("places", places)])
}

fn slope(plan: &Plan<'_>, units: System) -> ShownValue {
    let Some(slope) = plan.roof_slope() else { return ShownValue::Nothing };
    let line = plan.ceiling_line(&slope, stands(units));
    group([
        ("wall", plan.walls.get(slope.wall).map(|wall| wall.letter.clone()).shown()),
        ("low", slope.low.0.shown()),
        ("low at", point(slope.low.1)),
        ("high", slope.high.0.shown()),
        ("high at", point(slope.high.1)),
        ("one stands from", line.map_or(ShownValue::Nothing, |line| point(line.0))),
        ("one stands to", line.map_or(ShownValue::Nothing, |line| point(line.1))),
    ])
}

fn point(point: Point) -> ShownValue {
    ShownValue::Sides(vec![point.x, point.y])
}

fn group(fields: impl IntoIterator<Item = (&'static str, ShownValue)>) -> ShownValue {
    ShownValue::Group(fields.into_iter().map(|(key, value)| field(key, value)).collect::<ShownGroup>())
}

fn field(key: &'static str, value: ShownValue) -> ShownField {
    ShownField::new(key, Since::Second, value)
}
