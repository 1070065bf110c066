//! What the plan of a room says: where its walls are, and where everything stands.

use crate::language::Words;
use crate::units::System;
use crate::units::length::Length;

/// A place in plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlanPoint {
    /// To the right.
    pub x: Length,
    /// Up the paper.
    pub y: Length,
}

/// A room seen from above.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RoomPlan {
    /// Unique in its page; the names inside the drawing begin with it.
    pub id: String,
    /// The room's name.
    pub name: String,
    pub walls: Vec<Wall>,
    /// Doors and windows.
    pub holes: Vec<Hole>,
    /// In the order in which they are drawn.
    pub things: Vec<Thing>,
    /// The front edges of counters.
    pub counter_edges: Vec<(PlanPoint, PlanPoint)>,
    /// Clear ways between what faces each other.
    pub aisles: Vec<Aisle>,
    /// The middles of seats.
    pub seats: Vec<PlanPoint>,
    /// Lights that hang.
    pub lights: Vec<Light>,
    /// The ceiling, where it slopes.
    pub slope: Option<Slope>,
    pub units: System,
    /// The language that it is worded in.
    pub words: Words,
}

/// A wall, cut through.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wall {
    /// The letter that the book knows it by.
    pub letter: String,
    /// Its finished face, from its left end to its right, seen from the room.
    pub face: (PlanPoint, PlanPoint),
    /// The corners of what is cut: the face's two ends, and behind them.
    pub body: Vec<PlanPoint>,
    /// From end to end.
    pub length: Length,
    /// Nothing is built there.
    pub is_open: bool,
}

/// A door or a window in a wall.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hole {
    /// Its corners in the wall: on the face at its left and right, then behind.
    pub corners: [PlanPoint; 4],
    pub is_window: bool,
    /// What each leaf sweeps: its hinge, then from shut to open.
    pub sweeps: Vec<Vec<PlanPoint>>,
}

/// Something that stands or hangs in the room.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Thing {
    pub name: String,
    /// The item's number on the sheets, where there is one.
    pub tag: Option<String>,
    /// Its corners on the floor.
    pub corners: Vec<PlanPoint>,
    pub form: Form,
}

/// How a thing is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Cabinets, fixtures and all else that one sees from above.
    Below,
    /// From the floor to above the counter.
    Tall,
    /// A filler or a panel.
    Closure,
    /// Something chosen for an opening.
    Chosen,
    /// Above one's head: dashed.
    Above,
}

/// A clear way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aisle {
    /// From one front to the other.
    pub ends: (PlanPoint, PlanPoint),
    pub wide: Length,
}

/// A light that hangs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Light {
    pub at: PlanPoint,
    /// Half of how wide it is.
    pub radius: Length,
    /// What it is called, told once for several of a kind.
    pub name: String,
    /// The item's number on the sheets, at the first of several.
    pub tag: Option<String>,
}

/// A ceiling that slopes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Slope {
    /// The letter of the wall that it rises from.
    pub wall: String,
    /// Its least height, and where.
    pub low: (Length, PlanPoint),
    /// Its greatest height, and where.
    pub high: (Length, PlanPoint),
    /// Where one can just stand: how high that is, and from where to where.
    pub stands: Option<(Length, PlanPoint, PlanPoint)>,
}
