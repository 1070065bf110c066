//! Draws a room: its plan, as everything stands by the book.

use crate::book::{PartIs, Room};
use crate::drawings::room::{Aisle, Form, Hole, PlanPoint, RoomPlan, Thing, Wall};
use crate::drawings::{Paper, room_plan};
use crate::language::say;
use crate::site::plan::{Frame, HoleIs, Plan, Plans, Point, Stands, What};
use crate::units::Length;
use crate::views::pages::PageBuilder;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::html::Html;

/// How thick walls are drawn: 4 1/2", which no string tells.
const WALL: Length = Length::from_sixty_fourths(288);

/// What hangs higher than this is drawn dashed.
const HIGH: Length = Length::from_inches(48);

impl PageBuilder<'_> {
    /// The room to scale, where the book tells its outline; drawn again for a narrow screen.
    pub fn room_drawings(&self, plans: &Plans<'_>, room: &Room) -> Vec<Drawing> {
        let Some(plan) = plans.room(room).filter(|plan| !plan.walls.is_empty()) else { return vec![] };
        let what = self.plan_of(plan);
        let narrow = RoomPlan { id: format!("{}-narrow", what.id), ..what.clone() };
        let drawing = Drawing {
            name: say!(self.words, "drawn.plan.name"),
            scope: Some(say!(self.words, "drawn.room.scope")),
            svg: Html::trusted(room_plan(&what, Paper::Desk)),
            narrow: Some(Html::trusted(room_plan(&narrow, Paper::Phone))),
            caption: None,
        };
        vec![drawing]
    }

    fn plan_of(&self, plan: &Plan<'_>) -> RoomPlan {
        let mut things: Vec<Thing> = plan.things.iter().map(|thing| self.standing(plan, thing)).collect();
        // What is cut into a cabinet lies over it, and what hangs over all.
        things.sort_by_key(|thing| match thing.form {
            Form::Above => 2,
            Form::Chosen => 1,
            Form::Below | Form::Tall | Form::Closure => 0,
        });
        RoomPlan {
            id: format!("plan-{}", plan.room.folder),
            name: plan.room.title().to_string(),
            walls: (0..plan.walls.len()).filter_map(|number| wall(plan, number)).collect(),
            holes: plan.holes.iter().map(|hole| self::hole(plan, hole)).collect(),
            things,
            counter_edges: counter_edges(plan),
            aisles: aisles(plan),
            units: self.units(),
            words: self.words,
        }
    }

    fn standing(&self, plan: &Plan<'_>, thing: &crate::site::plan::Thing<'_>) -> Thing {
        let room = plan.room;
        let selection = thing.opening.and_then(|opening| room.goes_into(&opening.name).next());
        let form = match thing.what {
            _ if thing.low >= HIGH => Form::Above,
            _ if thing.opening.is_some() => Form::Chosen,
            _ if thing.is_closure() => Form::Closure,
            What::Part(part) if matches!(part.is, PartIs::Tall(_)) => Form::Tall,
            _ => Form::Below,
        };
        Thing {
            name: selection.map_or(thing.name, |selection| selection.name.value.as_str()).to_lowercase(),
            tag: selection.and_then(|selection| self.chrome.item_link(room, selection).number),
            corners: thing.footprint().corners().iter().copied().map(at).collect(),
            form,
        }
    }
}

fn at(point: Point) -> PlanPoint {
    PlanPoint { x: point.x, y: point.y }
}

fn rectangle(frame: &Frame, along: (Length, Length), out: (Length, Length)) -> [PlanPoint; 4] {
    [
        at(frame.at(along.0, out.0)),
        at(frame.at(along.1, out.0)),
        at(frame.at(along.1, out.1)),
        at(frame.at(along.0, out.1)),
    ]
}

/// A wall, drawn on around the outer corners of the room.
fn wall(plan: &Plan<'_>, number: usize) -> Option<Wall> {
    let wall = plan.walls.get(number)?;
    let frame = wall.frame;
    let length = frame.length();
    let on = |end: Point| {
        let others = plan.walls.iter().enumerate().filter(|(other, _)| *other != number).map(|(_, other)| other.frame);
        let mut far = others.filter_map(|other| match (other.left() == end, other.right() == end) {
            (true, _) => Some(other.right()),
            (_, true) => Some(other.left()),
            _ => None,
        });
        let turns_out = far.any(|far| frame.local(far).1 > 0);
        if turns_out { WALL } else { Length::ZERO }
    };
    let along = (-on(frame.left()), length + on(frame.right()));
    Some(Wall {
        letter: wall.letter.clone(),
        face: (at(frame.left()), at(frame.right())),
        body: rectangle(&frame, along, (-WALL, Length::ZERO)).to_vec(),
        length,
        is_open: wall.is_open(),
    })
}

fn hole<'a>(plan: &Plan<'a>, hole: &crate::site::plan::Hole<'a>) -> Hole {
    let sweeps = plan.door_sweeps(hole).into_iter();
    Hole {
        corners: rectangle(&hole.frame, hole.along, (Length::ZERO, -WALL)),
        is_window: matches!(hole.is, HoleIs::Window(_)),
        sweeps: sweeps.map(|sweep| sweep.shape.corners().iter().copied().map(at).collect()).collect(),
    }
}

/// The front edge of each counter, over all that it carries.
fn counter_edges(plan: &Plan<'_>) -> Vec<(PlanPoint, PlanPoint)> {
    let mut edges = Vec::new();
    for row in &plan.rows {
        let (Some(counter), Stands::Wall(_)) = (row.counter, row.stands) else { continue };
        let carried = row.things.iter().filter_map(|at| plan.things.get(*at));
        let carried = carried.filter(|thing| thing.row.is_some() && row.carries(thing));
        edges.extend(carried.map(|thing| {
            let edge = |along| at(row.frame.at(along, counter.front));
            (edge(thing.along.0), edge(thing.along.1))
        }));
    }
    edges
}

/// The clear ways between fronts that face each other.
fn aisles(plan: &Plan<'_>) -> Vec<Aisle> {
    let across = plan.aisles().into_iter().filter(|aisle| aisle.to.thing().is_some());
    let told = across.map(|aisle| {
        let front = plan.front(aisle.from);
        let end = |out| at(aisle.from.frame.at(aisle.from.centre(), out));
        Aisle { ends: (end(front), end(front + aisle.wide)), wide: aisle.wide }
    });
    told.collect()
}
