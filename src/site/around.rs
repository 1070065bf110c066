//! What the sheet of an opening shows of the room around it: what ends it, stands beside it, lies near its heat, and
//! the way in. The sheet, its drawings and its mark are made from this one answer.

use crate::book::{Book, Neighbour, Opening, ProductOption, Room, Selection, Slot};
use crate::units::Length;

use super::doorways::way_through;
use super::fitting::{
    Above, AboveIs, DoorInTheWay, Fitting, Flank, Passage, Side, Stack, above, door_in_the_way, fitting, flank, height,
    way_in,
};
use super::heat::{Body, Hearth, HeatFigures};
use super::plan::{Plan, PlanFault, Plans};
use super::{Placement, counter_depth, counter_height, is_in_an_island};

/// What stands farther away is not shown as standing beside (common practice: a hand's breadth).
const NEAR: Length = Length::from_inches(4);

/// An opening with what goes in, in its room.
#[derive(Debug)]
pub struct Around<'a> {
    /// The thing against its opening; nothing of it where nothing is chosen.
    pub fit: Option<Fitting>,
    /// Height of the opening, by all that ends it.
    pub height: Option<Length>,
    /// Depth of the opening.
    pub depth: Option<Length>,
    /// Top of the counter from the finished floor.
    pub counter_height: Option<Length>,
    /// From the wall to the counter's front edge.
    pub counter_depth: Option<Length>,
    /// Whether an island is behind it, and no wall.
    pub in_an_island: bool,
    /// Bodies that stand where it is to stand.
    pub in_its_place: Vec<PlanFault>,
    /// What is above.
    pub above: Overhead<'a>,
    /// What is at its left.
    pub left: Beside<'a>,
    /// What is at its right.
    pub right: Beside<'a>,
    /// What is cooked on there.
    pub hearth: Option<Hearth<'a>>,
    /// Every narrow point on the way to it, where the size of what is carried is known.
    pub way_in: Vec<Passage<'a>>,
    /// The room's own door by its plan, where that is the narrowest of them.
    pub door: Option<DoorInTheWay>,
}

/// What is above an opening.
#[derive(Clone, Debug)]
pub enum Overhead<'a> {
    /// What the opening says, where it says it.
    Said(&'a Slot<Neighbour>),
    /// A thing of the plan, by its name, and its lower edge from the finished floor.
    Hung(String, Length),
    /// What is lowest over what is cooked on, and its lower edge from the finished floor.
    OverHeat(Body<'a>, Length),
}

/// What is at a side of an opening.
#[derive(Clone, Debug)]
pub enum Beside<'a> {
    /// What the opening says, where it says it.
    Said(&'a Slot<Neighbour>),
    /// What is near by its row or the plan.
    Stands(Flank),
}

impl<'a> Around<'a> {
    /// Of an opening, with the thing that its sheet shows, and the figures of heat where no maker gives any.
    pub fn of(
        (book, plans): (&'a Book, &'a Plans<'a>),
        (room, opening): (&'a Room, &'a Opening),
        thing: Option<(&'a Selection, &'a ProductOption)>,
        figures: HeatFigures,
    ) -> Self {
        let plan = plans.room(room);
        let fit = thing.map(|(_, option)| fitting(plan, room, opening, option));
        let hearth = thing.and_then(|thing| Hearth::of(Placement::at((room, opening), thing), plan, figures));
        let is_carried = |option: &ProductOption| {
            option.fit.get().is_some_and(|fit| fit.carton.get().is_some() || fit.doors_off.get().is_some())
        };
        let carried = thing.map(|(_, option)| option).filter(|option| is_carried(option));
        Self {
            height: fit.as_ref().and_then(|fit| fit.height.there).or_else(|| height(plan, room, opening)),
            depth: fit.as_ref().and_then(|fit| fit.depth.there).or_else(|| opening.governing_depth()),
            counter_height: counter_height(room, opening).value(),
            counter_depth: counter_depth(room, opening).value(),
            in_an_island: is_in_an_island(room, opening),
            in_its_place: plan.map_or_else(Vec::new, |plan| plan.in_the_place_of(opening).cloned().collect()),
            above: overhead(plan, (room, opening), hearth.as_ref()),
            left: beside(plan, (room, opening), Side::Left),
            right: beside(plan, (room, opening), Side::Right),
            way_in: carried.map_or_else(Vec::new, |option| way_in(book, room, None, option)),
            door: carried.and_then(|option| door_in_the_way(book, room, &way_through(plan?)?, option)),
            fit,
            hearth,
        }
    }

    /// What is at a side.
    pub fn beside(&self, side: Side) -> &Beside<'a> {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }
}

/// Over a cooking surface what the verdict finds lowest there, wherever it is written; else what the plan has hang
/// there, or as the opening says.
fn overhead<'a>(
    plan: Option<&Plan<'a>>,
    (room, opening): (&'a Room, &'a Opening),
    hearth: Option<&Hearth<'a>>,
) -> Overhead<'a> {
    if let Some((body, edge)) = hearth.and_then(Hearth::overhead) {
        return Overhead::OverHeat(body, edge);
    }
    let stack = Stack::of(room, opening).filter(|stack| stack.is_lower(opening));
    if let Some((stack, edge)) = stack.and_then(|stack| Some((stack, stack.upper_bottom(room)?))) {
        return Overhead::Hung(stack.upper.name.value.clone(), edge);
    }
    match above(plan, room, opening) {
        Some(Above { is: AboveIs::Hung(name), edge, .. }) => Overhead::Hung(name, edge),
        _ => Overhead::Said(&opening.above),
    }
}

/// As the opening says, else as its row or the plan tells of what is near.
fn beside<'a>(plan: Option<&Plan<'a>>, (room, opening): (&'a Room, &'a Opening), side: Side) -> Beside<'a> {
    let said = side.of(opening);
    if !said.is_absent() {
        return Beside::Said(said);
    }
    let told = flank(room, plan, opening, side).filter(|told| told.gap <= NEAR);
    told.map_or(Beside::Said(said), Beside::Stands)
}
