//! The inside of a shower.

use crate::book::{ClearDistance, Room};
use crate::site::{Provenance, Site};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Kind;

use super::rectangle;

/// The inside of a shower, between finished faces.
#[derive(Clone, Copy, Debug)]
pub struct ShowerInside {
    /// Its sides.
    pub sides: (Length, Length),
    /// Where they are written.
    pub at: Span,
    /// Who says so.
    pub provenance: Provenance,
}

impl ShowerInside {
    /// Its lesser side.
    pub fn lesser(&self) -> Length {
        self.sides.0.min(self.sides.1)
    }

    /// Its greater side.
    pub fn greater(&self) -> Length {
        self.sides.0.max(self.sides.1)
    }
}

/// What may tell the inside of a shower.
const KINDS: [Kind; 3] = [Kind::ShowerSet, Kind::ShowerTray, Kind::ShowerGlass];

/// The inside of a room's narrowest shower: as `clearances` says, else as the plan, an opening, or the tray that is
/// chosen has it.
pub fn inside_of_a_shower(site: &Site<'_>, room: &Room) -> Option<ShowerInside> {
    if let Some(written) = rectangle(room, ClearDistance::Shower) {
        return Some(ShowerInside { sides: written.value, at: written.span, provenance: Provenance::Written });
    }
    let narrowest = |all: Vec<ShowerInside>| all.into_iter().min_by_key(|inside| (inside.lesser(), inside.greater()));
    let placed = site.plan(room).map_or_else(Vec::new, |plan| {
        let is_one = |thing: &&crate::site::plan::Thing<'_>| {
            let sides = [thing.width(), thing.out.1 - thing.out.0];
            thing.kind.is_some_and(|kind| KINDS.contains(&kind)) && sides.into_iter().all(|side| side > THINNER)
        };
        let showers = plan.things.iter().filter(is_one);
        let provenance = Provenance::Plan;
        let inside = showers.map(|thing| ShowerInside {
            sides: (thing.width(), thing.out.1 - thing.out.0),
            at: thing.span,
            provenance,
        });
        inside.collect()
    });
    let openings = || {
        let takes = room.openings.iter().filter(|it| it.takes_a(Kind::ShowerSet) || it.takes_a(Kind::ShowerTray));
        let inside = takes.filter_map(|opening| {
            let sides = (opening.governing_width()?, opening.governing_depth()?);
            Some(ShowerInside { sides, at: opening.name.span, provenance: Provenance::Written })
        });
        inside.collect()
    };
    let trays = || {
        let trays = room.selections.iter().filter(|one| one.is(Kind::ShowerTray)).flat_map(|one| one.standing());
        let inside = trays.filter_map(|tray| {
            let (wide, deep) = (tray.size.width.spanned()?, *tray.size.depth.get()?);
            let sides = (wide.value, deep);
            Some(ShowerInside { sides, at: wide.span, provenance: Provenance::Written })
        });
        inside.collect()
    };
    narrowest(placed).or_else(|| narrowest(openings())).or_else(|| narrowest(trays()))
}

/// What is less deep is a pane or a valve, and no place to stand in.
const THINNER: Length = Length::from_inches(12);
