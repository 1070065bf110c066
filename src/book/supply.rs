//! Where services come out of walls, where makers' sheets want them, and what is plugged in along counters.

use super::Slot;
use crate::source::{Span, Spanned};
use crate::units::{Length, LengthRange};

/// One thing of each service.
#[derive(Clone, Debug)]
pub struct Each<T> {
    /// Of the receptacle or box.
    pub power: Slot<T>,
    /// Of the stub or valve.
    pub gas: Slot<T>,
    /// Of the stop valve.
    pub water: Slot<T>,
    /// Of the drain.
    pub drain: Slot<T>,
    /// Of the duct.
    pub duct: Slot<T>,
}

impl<T> Default for Each<T> {
    fn default() -> Self {
        let none = || Slot::Absent;
        Self { power: none(), gas: none(), water: none(), drain: none(), duct: none() }
    }
}

impl<T> Each<T> {
    /// Each with its name.
    pub fn named(&self) -> [(&'static str, &Slot<T>); 5] {
        [
            ("power", &self.power),
            ("gas", &self.gas),
            ("water", &self.water),
            ("drain", &self.drain),
            ("duct", &self.duct),
        ]
    }
}

/// Where a service comes out, seen from the front.
#[derive(Clone, Debug, Default)]
pub struct ServicePoint {
    /// From the opening's left edge to its centre.
    pub from_left: Slot<Length>,
    /// Its centre from the finished floor.
    pub height: Slot<Length>,
    /// How far it stands out from the finished wall.
    pub proud: Slot<Length>,
    /// Whether it is in the cabinet beside.
    pub beside: Slot<bool>,
}

/// Where a maker's sheet wants a service.
#[derive(Clone, Debug, Default)]
pub struct ServiceZone {
    /// From the opening's left edge to its centre.
    pub from_left: Slot<LengthRange>,
    /// Its centre from the finished floor.
    pub height: Slot<LengthRange>,
    /// The most that it may stand out.
    pub proud: Slot<Length>,
    /// Whether it must be in the cabinet beside.
    pub beside: Slot<bool>,
}

/// A stretch of counter.
#[derive(Clone, Debug)]
pub struct CounterRun {
    /// Its name in the room.
    pub name: Spanned<String>,
    /// Its length.
    pub length: Slot<Length>,
    /// Its depth.
    pub depth: Slot<Length>,
    /// Whether it is an island or a peninsula.
    pub island: Slot<bool>,
    /// Receptacles that serve it.
    pub receptacles: Slot<u32>,
    /// Whether a box is provided for a later one.
    pub provision: Slot<bool>,
    /// Where it is written.
    pub span: Span,
}
