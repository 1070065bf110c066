//! Aisles between what faces each other.

use crate::units::Length;

use super::Plan;
use super::clear::{Clear, Met};
use super::thing::{HEAD, Stands, Thing, What};

/// The way between two fronts, or between a front and a wall.
#[derive(Clone, Copy, Debug)]
pub struct Aisle<'p, 'a> {
    /// A thing of the row (or one alone) where it is narrowest.
    pub from: &'p Thing<'a>,
    /// What is across from it.
    pub to: Met<'p, 'a>,
    /// How wide it is there.
    pub wide: Length,
}

impl Aisle<'_, '_> {
    /// Whether one works on both sides: counter, cabinets or appliances are at both.
    pub fn is_for_work(&self) -> bool {
        self.to.thing().is_some_and(|to| to.is_worked_at())
    }
}

/// What bounds an aisle at one side: the wall that things stand at, or an island, by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Side {
    Wall(usize),
    Island(usize),
}

impl Side {
    fn of(thing: &Thing<'_>) -> Self {
        match thing.stands {
            Stands::Wall(wall) => Self::Wall(wall),
            Stands::Island(island, _) => Self::Island(island),
        }
    }

    fn met(met: &Met<'_, '_>) -> Self {
        match met {
            Met::Thing(thing) => Self::of(thing),
            Met::Wall(wall) => Self::Wall(*wall),
        }
    }
}

impl<'a> Plan<'a> {
    /// The aisles of a room: before each row, island and appliance, to whatever is across, each pair
    /// of rows once, where it is narrowest. Rows at one wall that end at one line bound one aisle: it is told once.
    pub fn aisles(&self) -> Vec<Aisle<'_, 'a>> {
        let mut narrowest: Vec<((usize, usize), Aisle<'_, 'a>)> = Vec::new();
        for thing in self.things.iter().filter(|thing| thing.is_worked_at() && thing.low < HEAD) {
            if matches!(thing.what, What::Island(_)) {
                continue;
            }
            let Some(clear) = self.across_from(thing, self.front(thing)) else { continue };
            let aisle = Aisle { from: thing, to: clear.to, wide: clear.distance };
            let one = self.group(thing);
            let other = match clear.to {
                Met::Thing(other) => self.group(other),
                Met::Wall(number) => self.things.len() + self.rows.len() + number,
            };
            let pair = (one.min(other), one.max(other));
            match narrowest.iter_mut().find(|(known, _)| *known == pair) {
                Some((_, known)) if known.wide <= aisle.wide => {}
                Some((_, known)) => *known = aisle,
                None => narrowest.push((pair, aisle)),
            }
        }
        let mut told: Vec<((Side, Side), Length, bool)> = Vec::new();
        let mut aisles: Vec<Aisle<'_, 'a>> = narrowest.into_iter().map(|(_, aisle)| aisle).collect();
        aisles.retain(|aisle| {
            let (one, other) = (Side::of(aisle.from), Side::met(&aisle.to));
            let known = ((one.min(other), one.max(other)), aisle.wide, aisle.is_for_work());
            let is_new = !told.contains(&known);
            told.push(known);
            is_new
        });
        aisles
    }

    /// The aisle for work before a thing whose front is so far out: to what one works at across from it.
    pub fn aisle_before(&self, thing: &Thing<'a>, front: Length) -> Option<Length> {
        let is_worked_at = thing.is_worked_at() && thing.low < HEAD;
        let clear = self.across_from(thing, front).filter(|_| is_worked_at)?;
        clear.to.thing().is_some_and(Thing::is_worked_at).then_some(clear.distance)
    }

    /// What is straight across from a front: what stands across an inside corner has no aisle to it.
    fn across_from(&self, thing: &Thing<'a>, front: Length) -> Option<Clear<'_, 'a>> {
        let is_aside = |other: &Thing<'a>| !matches!(other.what, What::Island(_)) && !thing.frame.faces(&other.frame);
        self.clear_of(thing, front, &is_aside)
    }

    /// A number for what belongs together: a run, an island with its sides, or one thing alone.
    fn group(&self, thing: &Thing<'a>) -> usize {
        let alone = |thing: &Thing<'a>| {
            self.things.iter().position(|other| std::ptr::eq(other, thing)).unwrap_or(0) + self.rows.len()
        };
        match (thing.stands, thing.within.and_then(|at| self.things.get(at))) {
            (Stands::Island(..), Some(island)) => alone(island),
            (_, Some(holder)) => holder.row.unwrap_or_else(|| alone(holder)),
            (_, None) => thing.row.unwrap_or_else(|| alone(thing)),
        }
    }
}
