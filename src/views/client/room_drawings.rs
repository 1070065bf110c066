//! Draws a room: its plan, as everything stands by the book.

use crate::book::Room;
use crate::drawings::room::{Aisle, Form, Hole, Light, PlanPoint, RoomPlan, Slope, Thing, Wall};
use crate::drawings::{Paper, room_plan};
use crate::language::say;
use crate::shown::SheetOf;
use crate::shown::plan::{CounterEdge, DrawnAs, aisles, counter_edges, drawn_as, hoods, stands};
use crate::site::plan::{Frame, HoleIs, Plan, Plans, Point};
use crate::units::Length;
use crate::views::pages::PageBuilder;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::html::{Html, show};
use crate::views::shared::lines::thing_name;

/// How thick walls are drawn: 4 1/2", which no string tells.
const WALL: Length = Length::from_sixty_fourths(288);

/// Half of how wide a light is drawn whose size nobody says: 6".
const USUAL_LIGHT: Length = Length::from_inches(6);

impl PageBuilder<'_> {
    /// The room to scale, where the book tells its outline; drawn again for a narrow screen.
    pub fn room_drawings(&self, plans: &Plans<'_>, room: &Room) -> Vec<Drawing> {
        let Some(plan) = plans.room(room).filter(|plan| !plan.walls.is_empty()) else { return vec![] };
        let what = self.plan_of(plan);
        let mark = self.sheet_mark((&room.folder, "", SheetOf::PLAN));
        let narrow = RoomPlan { id: format!("{}-narrow", what.id), ..what.clone() };
        let drawing = Drawing {
            name: say!(self.words, "drawn.plan.name"),
            scope: Some(say!(self.words, "drawn.room.scope")),
            svg: Html::trusted(room_plan(&what, Paper::Desk)),
            narrow: Some(Html::trusted(room_plan(&narrow, Paper::Phone))),
            caption: mark.map(|mark| show!(self.words, "drawn.room.mark", mark = mark)),
        };
        vec![drawing]
    }

    fn plan_of(&self, plan: &Plan<'_>) -> RoomPlan {
        let mut things: Vec<Thing> = plan.things.iter().map(|thing| self.standing(plan, thing)).collect();
        things.extend(self.hoods_without_a_place(plan));
        things.extend(plan.roof_windows().into_iter().map(|(window, corners)| Thing {
            name: window.name.value.clone(),
            tag: None,
            corners: corners.into_iter().map(at).collect(),
            form: Form::Above,
        }));
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
            counter_edges: edges(plan),
            aisles: clear_ways(plan),
            seats: plan.room.islands.iter().flat_map(|island| plan.seat_places(island)).map(at).collect(),
            lights: self.lights(plan),
            slope: self.slope(plan),
            units: self.units(),
            words: self.words,
        }
    }

    /// A hood whose opening has no wall hangs over the one thing that is cooked on.
    fn hoods_without_a_place(&self, plan: &Plan<'_>) -> Vec<Thing> {
        let drawn = hoods(plan).into_iter().map(|hood| {
            let selection = plan.room.goes_into(&hood.opening.name).next();
            Thing {
                name: selection.map_or(hood.opening.name.as_str(), |selection| selection.name.as_str()).to_lowercase(),
                tag: selection.and_then(|selection| self.chrome.item_link(plan.room, selection).number),
                corners: rectangle(&hood.frame, hood.along, hood.out).to_vec(),
                form: Form::Above,
            }
        });
        drawn.collect()
    }

    /// Lights where they are set out.
    fn lights(&self, plan: &Plan<'_>) -> Vec<Light> {
        let room = plan.room;
        let of_one = |hung: &crate::site::plan::Hung<'_>| {
            let named = hung.lights.selection.get();
            let selection = room.selections.iter().find(|selection| Some(&selection.name.value) == named);
            let option = selection.and_then(|selection| selection.standing().first());
            let wide = option.and_then(|option| option.size.diameter.get().or(option.size.width.get()).copied());
            let name = selection.map_or(hung.lights.name.as_str(), |selection| selection.name.as_str()).to_lowercase();
            let tag = selection.and_then(|selection| self.chrome.item_link(room, selection).number);
            let each = hung.places.iter().enumerate().map(|(number, place)| Light {
                at: at(*place),
                radius: wide.map_or(USUAL_LIGHT, Length::half),
                name: if number == 0 { name.clone() } else { String::new() },
                tag: tag.clone().filter(|_| number == 0),
            });
            each.collect::<Vec<_>>()
        };
        plan.hung.iter().flat_map(of_one).collect()
    }

    /// The slope of the ceiling, with the line on which one can just stand.
    fn slope(&self, plan: &Plan<'_>) -> Option<Slope> {
        let slope = plan.roof_slope()?;
        let stands = stands(self.units());
        let line = plan.ceiling_line(&slope, stands);
        Some(Slope {
            wall: plan.walls.get(slope.wall)?.letter.clone(),
            low: (slope.low.0, at(slope.low.1)),
            high: (slope.high.0, at(slope.high.1)),
            stands: line.map(|(from, to)| (stands, at(from), at(to))),
        })
    }

    fn standing(&self, plan: &Plan<'_>, thing: &crate::site::plan::Thing<'_>) -> Thing {
        let room = plan.room;
        let selection = thing.opening.and_then(|opening| room.goes_into(&opening.name).next());
        let form = match drawn_as(thing) {
            DrawnAs::Below => Form::Below,
            DrawnAs::Tall => Form::Tall,
            DrawnAs::Closure => Form::Closure,
            DrawnAs::Chosen => Form::Chosen,
            DrawnAs::Above => Form::Above,
        };
        Thing {
            name: selection
                .map_or_else(|| thing_name(self.words, thing), |selection| selection.name.value.clone())
                .to_lowercase(),
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
fn edges(plan: &Plan<'_>) -> Vec<(PlanPoint, PlanPoint)> {
    let edge = |one: CounterEdge<'_>| {
        let end = |along| at(one.frame.at(along, one.front));
        (end(one.along.0), end(one.along.1))
    };
    counter_edges(plan).into_iter().map(edge).collect()
}

/// The clear ways between fronts that face each other.
fn clear_ways(plan: &Plan<'_>) -> Vec<Aisle> {
    let told = aisles(plan).map(|aisle| {
        let front = plan.front(aisle.from);
        let end = |out| at(aisle.from.frame.at(aisle.from.centre(), out));
        Aisle { ends: (end(front), end(front + aisle.wide)), wide: aisle.wide }
    });
    told.collect()
}
