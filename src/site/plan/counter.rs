//! Counter: its unbroken stretches, what lies over them, and what can be set down beside a thing.

use crate::book::{End, PartIs};
use crate::units::Length;
use crate::vocabulary::Trait;

use super::Plan;
use super::frame::{GRAIN, nm};
use super::thing::{Row, RowOf, Thing, What};

/// What two places may differ by and be one.
const HAIR: Length = Length::from_nanometres(25);

/// A straight piece of counter with nothing in it.
#[derive(Clone, Debug)]
pub struct Stretch<'p, 'a> {
    /// The row that it lies on.
    pub row: &'p Row<'a>,
    /// From the row's frame's left end to its two ends.
    pub along: (Length, Length),
    /// From its back to its front edge.
    pub depth: Length,
    /// From its top to whatever hangs lowest over it; none where nothing does.
    pub clear_above: Option<Length>,
    /// What ends it at its left and its right.
    pub ends: (StretchEnd<'p, 'a>, StretchEnd<'p, 'a>),
}

impl Stretch<'_, '_> {
    /// Its length along the front.
    pub fn length(&self) -> Length {
        self.along.1 - self.along.0
    }
}

/// What ends a stretch of counter.
#[derive(Clone, Copy, Debug)]
pub enum StretchEnd<'p, 'a> {
    /// Something that stands in the counter or beside it.
    Thing(&'p Thing<'a>),
    /// An inside corner, and a thing of the counter that goes on around it.
    Corner(&'p Thing<'a>),
    /// A wall, by its number.
    Wall(usize),
    /// Nothing.
    Open,
}

/// Counter at one side of a thing.
#[derive(Clone, Copy, Debug)]
pub struct Landing<'p, 'a> {
    /// How much, along the front.
    pub counter: Length,
    /// What ends it.
    pub end: StretchEnd<'p, 'a>,
    /// Around an inside corner, how much counter goes on there.
    pub around_corner: Option<Length>,
}

impl<'a> Row<'a> {
    /// Whether the row's counter goes over a thing of it.
    pub fn carries(&self, thing: &Thing<'a>) -> bool {
        let Some(counter) = self.counter else { return false };
        match thing.what {
            What::Part(part) if matches!(part.is, PartIs::Tall(_)) => false,
            _ if thing.has(Trait::BreaksCounter) => false,
            // What is higher than the counter stands up through it.
            _ => match (thing.high, counter.height) {
                (Some(top), Some(height)) => top <= height,
                _ => !thing.has(Trait::StandsTall),
            },
        }
    }
}

impl<'a> Plan<'a> {
    /// Whether a row's counter lies over a thing of it: [`Row::carries`], but for the end panel of something tall,
    /// which goes up beside that as high as it.
    pub fn lies_over(&self, row: &Row<'a>, thing: &Thing<'a>) -> bool {
        row.carries(thing) && !self.is_an_end_panel(row, thing)
    }

    /// Whether a panel of which nobody says how high it is stands beside something tall of its row, or a filler that
    /// nothing lower stands beside, panels left out of sight.
    fn is_an_end_panel(&self, row: &Row<'a>, thing: &Thing<'a>) -> bool {
        let closure = thing.part().filter(|part| part.height.is_absent()).map(|part| &part.is);
        let is_tall = |other: &Thing<'a>| {
            let part = other.part().is_some_and(|part| matches!(part.is, PartIs::Tall(_)));
            part || (other.has(Trait::StandsTall) && !row.carries(other))
        };
        let there = || row.things.iter().filter_map(|at| self.things.get(*at));
        let at = |place: Length, end: End| {
            there().find(|other| touch(if end == End::Left { other.along.1 } else { other.along.0 }, place))
        };
        let beside = |past_panels: bool, end: End| {
            let of = |thing: &Thing<'a>| if end == End::Left { thing.along.0 } else { thing.along.1 };
            let mut next = at(of(thing), end);
            while let Some(panel) = next.filter(|next| past_panels && next.is_closure() && next.width() > Length::ZERO)
            {
                next = at(of(panel), end);
            }
            next
        };
        let ends =
            |past_panels: bool| [End::Left, End::Right].into_iter().filter_map(move |end| beside(past_panels, end));
        match closure {
            Some(PartIs::Panel(_)) => ends(false).any(is_tall),
            Some(PartIs::Filler(_)) => ends(true).next().is_some() && ends(true).all(is_tall),
            _ => false,
        }
    }

    /// Every straight piece of counter that nothing breaks, cut at sinks and cooktops, at inside corners,
    /// and where something else begins to hang over it.
    pub fn stretches(&self) -> Vec<Stretch<'_, 'a>> {
        self.rows.iter().flat_map(|row| self.stretches_of(row)).collect()
    }

    /// The same of one row.
    pub fn stretches_of<'p>(&'p self, row: &'p Row<'a>) -> Vec<Stretch<'p, 'a>> {
        self.pieces(row).flat_map(|piece| self.by_clearance(piece)).collect()
    }

    /// Counter to the left or right of a thing that stands in a row or is cut into one; none for a thing
    /// of no row, or where part of the row could not be placed.
    pub fn landing(&self, thing: &Thing<'a>, side: End) -> Option<Landing<'_, 'a>> {
        let row = self.row_of(thing).filter(|row| row.is_whole && row.counter.is_some())?;
        let edge = self.past_its_end_panel(row, thing, side);
        let near = |length: Length| touch(length, edge);
        let piece = self.pieces(row).find(|piece| match side {
            End::Left => near(piece.along.1),
            End::Right => near(piece.along.0),
        });
        let Some(piece) = piece else {
            let beside = self.beside(thing, side);
            let end = match beside.map(|beside| beside.to) {
                Some(super::Met::Thing(other)) => StretchEnd::Thing(other),
                Some(super::Met::Wall(number)) => StretchEnd::Wall(number),
                None => StretchEnd::Open,
            };
            return Some(Landing { counter: Length::ZERO, end, around_corner: None });
        };
        let end = if side == End::Left { piece.ends.0 } else { piece.ends.1 };
        let around_corner = match end {
            StretchEnd::Corner(thing) => self.goes_on_at(thing),
            _ => None,
        };
        Some(Landing { counter: piece.length(), end, around_corner })
    }

    /// The side of a thing that stands in a row, or of the end panel beside it.
    fn past_its_end_panel(&self, row: &Row<'a>, thing: &Thing<'a>, side: End) -> Length {
        let edge = if side == End::Left { thing.along.0 } else { thing.along.1 };
        let mut others = row.things.iter().filter_map(|at| self.things.get(*at));
        let panel = others.find(|other| {
            let touches = if side == End::Left { other.along.1 } else { other.along.0 };
            touch(touches, edge) && self.is_an_end_panel(row, other)
        });
        panel.map_or(edge, |panel| if side == End::Left { panel.along.0 } else { panel.along.1 })
    }

    /// How long the piece of counter over a thing is: of two that a sink parts, the shorter, from whichever end they are
    /// looked at.
    fn goes_on_at(&self, thing: &Thing<'a>) -> Option<Length> {
        let over = |piece: &Stretch<'_, 'a>| piece.along.0 < thing.along.1 && piece.along.1 > thing.along.0;
        self.pieces(self.row_of(thing)?).filter(over).map(|piece| piece.length()).min()
    }

    /// Cuts a row's counter at what stands or is let in, and at inside corners.
    pub(super) fn cut<'p>(&'p self, row: &'p Row<'a>) -> Vec<Stretch<'p, 'a>> {
        let Some(counter) = row.counter else { return vec![] };
        let mut pieces: Vec<Stretch<'p, 'a>> = Vec::new();
        let things = row.things.iter().filter_map(|at| self.things.get(*at));
        let things: Vec<&Thing<'a>> = things.filter(|thing| thing.row.is_some()).collect();
        for (number, thing) in things.iter().enumerate() {
            if !self.lies_over(row, thing) {
                continue;
            }
            match pieces.last_mut().filter(|piece| touch(piece.along.1, thing.along.0)) {
                Some(piece) => piece.along.1 = thing.along.1,
                None => {
                    let before = number.checked_sub(1).and_then(|at| things.get(at)).copied();
                    let end = before.filter(|before| touch(before.along.1, thing.along.0));
                    pieces.push(Stretch {
                        row,
                        along: thing.along,
                        depth: counter.depth(),
                        clear_above: None,
                        ends: (end.map_or(StretchEnd::Open, StretchEnd::Thing), StretchEnd::Open),
                    });
                }
            }
            let after = things.get(number + 1).filter(|after| touch(after.along.0, thing.along.1));
            if let (Some(piece), Some(after)) = (pieces.last_mut(), after.filter(|after| !self.lies_over(row, after))) {
                piece.ends.1 = StretchEnd::Thing(after);
            }
        }
        if let (RowOf::Side(..), Some(first)) = (row.of, pieces.first_mut()) {
            first.along.0 = Length::ZERO;
        }
        if let (RowOf::Side(..), Some(last)) = (row.of, pieces.last_mut()) {
            last.along.1 = row.frame.length();
        }
        pieces.into_iter().flat_map(|piece| self.without_what_is_let_in(self.to_the_corners(piece))).collect()
    }

    /// Ends a piece at the front of a counter or thing that stands across its end.
    fn to_the_corners<'p>(&'p self, mut piece: Stretch<'p, 'a>) -> Stretch<'p, 'a> {
        let Some(counter) = piece.row.counter else { return piece };
        let frame = piece.row.frame;
        let others = self.standing().filter(|(other, _)| {
            let row = self.row_of(other).map(std::ptr::from_ref);
            other.is_in_the_way() && row != Some(std::ptr::from_ref(piece.row))
        });
        for (other, covered) in others {
            let across = (counter.back, counter.front + Length::from_inches(1));
            let Some((first, last)) = covered.to_front.beside(&frame, across) else { continue };
            let goes_on = self.row_of(other).is_some_and(|row| row.carries(other));
            let end = if goes_on { StretchEnd::Corner(other) } else { StretchEnd::Thing(other) };
            let middle = piece.along.0 + piece.length().half();
            if last >= piece.along.0 - HAIR && first <= piece.along.0 && last < middle {
                piece.along.0 = last.max(piece.along.0);
                piece.ends.0 = end;
            } else if first <= piece.along.1 + HAIR && last >= piece.along.1 && first > middle {
                piece.along.1 = first.min(piece.along.1);
                piece.ends.1 = end;
            }
        }
        let wall = |at: Length| self.wall_at(&piece, at);
        if matches!(piece.ends.0, StretchEnd::Open)
            && let Some(number) = wall(piece.along.0)
        {
            piece.ends.0 = StretchEnd::Wall(number);
        }
        if matches!(piece.ends.1, StretchEnd::Open)
            && let Some(number) = self.wall_at(&piece, piece.along.1)
        {
            piece.ends.1 = StretchEnd::Wall(number);
        }
        piece
    }

    /// The wall that stands across a piece of counter at a place along it.
    fn wall_at(&self, piece: &Stretch<'_, 'a>, at: Length) -> Option<usize> {
        let middle = piece.row.frame.at(at, (piece.row.counter?.back + piece.row.counter?.front).half());
        self.walls.iter().position(|wall| {
            let (along, out) = wall.frame.local(middle);
            !wall.is_open() && out.abs() <= GRAIN && along >= 0 && along <= nm(wall.frame.length())
        })
    }

    /// Cuts a piece at sinks and cooktops.
    fn without_what_is_let_in<'p>(&'p self, piece: Stretch<'p, 'a>) -> Vec<Stretch<'p, 'a>> {
        let mut cuts: Vec<&Thing<'a>> = self
            .things
            .iter()
            .filter(|thing| thing.has(Trait::CutIntoCounter))
            .filter(|thing| self.row_of(thing).is_some_and(|row| std::ptr::eq(row, piece.row)))
            .filter(|thing| thing.along.0 < piece.along.1 && thing.along.1 > piece.along.0)
            .collect();
        cuts.sort_by_key(|thing| thing.along);
        let mut left = piece.clone();
        let mut pieces = Vec::new();
        for cut in cuts {
            let mut before = left.clone();
            before.along.1 = cut.along.0;
            before.ends.1 = StretchEnd::Thing(cut);
            left.along.0 = cut.along.1;
            left.ends.0 = StretchEnd::Thing(cut);
            pieces.push(before);
        }
        pieces.push(left);
        pieces.retain(|piece| piece.length() > Length::ZERO);
        pieces
    }

    /// Cuts a piece where something begins or ends to hang over it.
    fn by_clearance<'p>(&'p self, piece: Stretch<'p, 'a>) -> Vec<Stretch<'p, 'a>> {
        let Some(top) = piece.row.counter.and_then(|counter| counter.height) else { return vec![piece] };
        let Some(counter) = piece.row.counter else { return vec![piece] };
        let over = self.standing().filter(|(thing, _)| thing.low >= top && !matches!(thing.what, What::Island(_)));
        let over: Vec<(Length, Length, Length)> = over
            .filter_map(|(thing, covered)| {
                let (first, last) = covered.footprint.beside(&piece.row.frame, (counter.back, counter.front))?;
                Some((first.max(piece.along.0), last.min(piece.along.1), thing.low - top))
            })
            .filter(|(first, last, _)| first < last)
            .collect();
        let mut places: Vec<Length> = over.iter().flat_map(|(first, last, _)| [*first, *last]).collect();
        places.extend([piece.along.0, piece.along.1]);
        places.sort_unstable();
        places.dedup();
        let between = places.windows(2).filter_map(|pair| match pair {
            [from, to] => {
                let here = over.iter().filter(|(first, last, _)| first < to && last > from);
                let clear_above = here.map(|(_, _, clear)| *clear).min();
                Some(Stretch { along: (*from, *to), clear_above, ..piece.clone() })
            }
            _ => None,
        });
        between.collect()
    }
}

/// Whether two places along a frame are one.
fn touch(one: Length, other: Length) -> bool {
    nm(one - other).abs() <= GRAIN
}
