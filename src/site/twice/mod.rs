//! What is written of one fact in two places, and differs.

mod access;
mod beside;
mod counter;
mod distance;
mod fixture;
mod floor;
mod hand;
mod handles;
mod landing;
mod leaf;
mod lights;
mod opening;
mod seam;
#[cfg(test)]
mod tests;
mod width;

use crate::book::{Room, Selection};
use crate::source::{Span, Spanned};
use crate::units::Length;
use crate::vocabulary::Words;

use super::Site;
use super::told::{Answer, Provenance, SourcedFigure, Spot};

/// Two tellings of a figure of one thing may differ by so much: 1/8 in (common practice).
const TOLERANCE: Length = Length::from_sixty_fourths(8);

/// A fact that two places tell differently.
#[derive(Clone, Debug)]
pub struct Twice<'a> {
    /// What it is of.
    pub about: &'a Spanned<String>,
    /// What it is, as a phrase: `the counter height`.
    pub what: &'static str,
    /// How what it is and what it is of are said together.
    pub joined: Joined,
    /// What counts meanwhile.
    pub counts: SourcedFigure<'a, ComparedValue<'a>>,
    /// What differs from it.
    pub differs: SourcedFigure<'a, ComparedValue<'a>>,
    /// How the two differ.
    pub how: Differ,
    /// Whether either of them decides a fit; else it is asked.
    pub decides_a_fit: bool,
}

/// What is said of a thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ComparedValue<'a> {
    /// How long it is.
    Length(Length),
    /// How many there are.
    Count(u32),
    /// What one word says of it: on which side it is, what it is made of.
    Word(&'a str),
}

/// How a fact and its thing are said together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Joined {
    /// `the width of` it.
    Of,
    /// `what stands below` it.
    At,
}

/// How two tellings differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Differ {
    /// They tell one fact, and are apart.
    Apart,
    /// An inside is larger than its outside.
    InsideOut,
    /// It is more than what is called so.
    MoreThan(&'static str),
    /// It is less than what is called so.
    LessThan(&'static str),
}

impl<'a> Twice<'a> {
    /// Two lengths: what counts, and what differs from it.
    fn of(
        about: &'a Spanned<String>,
        what: &'static str,
        (counts, differs): (SourcedFigure<'a>, SourcedFigure<'a>),
        how: Differ,
    ) -> Self {
        let (counts, differs) = (counts.map(ComparedValue::Length), differs.map(ComparedValue::Length));
        Self { about, what, joined: Joined::Of, counts, differs, how, decides_a_fit: true }
    }

    /// Two sides that a door hangs on: as it is chosen, and as its place has it.
    fn of_hinges<S: Words>(selection: &'a Selection, (own, at): (S, Span), there: SourcedFigure<'a, S>) -> Self {
        let spot = Spot::Selection(&selection.name);
        let value = ComparedValue::Word(own.word());
        Self {
            about: &selection.name,
            what: "the hinge side",
            joined: Joined::Of,
            counts: SourcedFigure { value, at, provenance: Provenance::Written, spot },
            differs: there.map(|side| ComparedValue::Word(side.word())),
            how: Differ::Apart,
            decides_a_fit: true,
        }
    }

    /// The same, of what is at a place that its words name: above, below.
    fn at_it(self) -> Self {
        Self { joined: Joined::At, ..self }
    }

    /// The same, where no fit rests on it.
    fn asked(self) -> Self {
        Self { decides_a_fit: false, ..self }
    }
}

/// Every fact of a room that is written in two places which differ.
pub fn of_room<'a>(site: &'a Site<'a>, room: &'a Room) -> Vec<Twice<'a>> {
    let plan = site.plan(room);
    let mut all: Vec<Twice<'a>> =
        room.openings.iter().flat_map(|opening| opening::of_opening(room, opening, plan)).collect();
    once_for_one_cabinet(&mut all);
    all.extend(room.openings.iter().flat_map(|opening| beside::of_opening(room, opening)));
    all.extend(distance::of_room(site, room));
    all.extend(room.openings.iter().flat_map(|opening| landing::of_opening(site, room, opening)));
    all.extend(width::of_room(room));
    all.extend(fixture::of_room(room));
    all.extend(counter::of_room(room));
    all.extend(seam::of_room(site, room));
    all.extend(lights::of_room(room));
    all.extend(hand::of_room(room));
    all.extend(handles::of_room(room));
    all.extend(floor::of_room(room));
    all.extend(access::of_room(site, room));
    all.extend(leaf::of_room(room));
    all
}

/// Of several openings that are in one cabinet, and say the same of it, the first tells of what it differs from.
fn once_for_one_cabinet(all: &mut Vec<Twice<'_>>) {
    let mut told: Vec<(&str, ComparedValue<'_>, Span)> = Vec::new();
    all.retain(|twice| {
        let of_a_cabinet =
            matches!(twice.counts.spot, Spot::CabinetOf(_)) && matches!(twice.differs.spot, Spot::Part(..));
        let this = (twice.what, twice.counts.value, twice.differs.at);
        let is_known = of_a_cabinet && told.contains(&this);
        told.push(this);
        !is_known
    });
}

fn differing<'a>(
    about: &'a Spanned<String>,
    what: &'static str,
    answer: &Answer<'a>,
    tolerance: Length,
) -> Option<Twice<'a>> {
    let (counts, differs) = answer.differing(tolerance)?;
    Some(Twice::of(about, what, (*counts, *differs), Differ::Apart))
}
