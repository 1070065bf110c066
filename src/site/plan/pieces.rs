//! The pieces of each row's counter, cut once when all stands in its place.

use super::Plan;
use super::counter::{Stretch, StretchEnd};
use super::thing::{Row, Thing};
use crate::units::Length;

/// A piece of a row's counter.
#[derive(Clone, Copy, Debug)]
pub(super) struct CounterPiece {
    along: (Length, Length),
    depth: Length,
    ends: (PieceEnd, PieceEnd),
}

/// What ends it; things and walls by their numbers.
#[derive(Clone, Copy, Debug)]
enum PieceEnd {
    Thing(usize),
    Corner(usize),
    Wall(usize),
    Open,
}

impl<'a> Plan<'a> {
    /// Cuts the counter of every row.
    pub(super) fn cut_counters(&mut self) {
        let pieces = self.rows.iter().map(|row| self.cut(row).iter().map(|piece| self.by_number(piece)).collect());
        self.pieces = pieces.collect();
    }

    /// The pieces of a row's counter, cut at what stands or is let in, and at inside corners.
    pub(super) fn pieces<'p>(&'p self, row: &'p Row<'a>) -> impl Iterator<Item = Stretch<'p, 'a>> {
        let number = self.rows.iter().position(|other| std::ptr::eq(other, row));
        let pieces = number.and_then(|number| self.pieces.get(number)).map_or(&[][..], Vec::as_slice);
        pieces.iter().filter_map(move |piece| {
            let ends = (self.end(piece.ends.0)?, self.end(piece.ends.1)?);
            Some(Stretch { row, along: piece.along, depth: piece.depth, clear_above: None, ends })
        })
    }

    fn by_number(&self, piece: &Stretch<'_, 'a>) -> CounterPiece {
        let number = |thing: &Thing<'a>| self.things.iter().position(|other| std::ptr::eq(other, thing));
        let end = |end: StretchEnd<'_, 'a>| match end {
            StretchEnd::Thing(thing) => number(thing).map_or(PieceEnd::Open, PieceEnd::Thing),
            StretchEnd::Corner(thing) => number(thing).map_or(PieceEnd::Open, PieceEnd::Corner),
            StretchEnd::Wall(wall) => PieceEnd::Wall(wall),
            StretchEnd::Open => PieceEnd::Open,
        };
        CounterPiece { along: piece.along, depth: piece.depth, ends: (end(piece.ends.0), end(piece.ends.1)) }
    }

    fn end(&self, end: PieceEnd) -> Option<StretchEnd<'_, 'a>> {
        Some(match end {
            PieceEnd::Thing(number) => StretchEnd::Thing(self.things.get(number)?),
            PieceEnd::Corner(number) => StretchEnd::Corner(self.things.get(number)?),
            PieceEnd::Wall(number) => StretchEnd::Wall(number),
            PieceEnd::Open => StretchEnd::Open,
        })
    }
}
