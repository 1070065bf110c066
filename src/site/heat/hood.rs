//! A hood: how high its lower edge hangs, and how much of a cooking surface it does not hang over.

use crate::book::{Opening, Selection};
use crate::site::plan::{Stands, Thing};
use crate::units::{Length, LengthRange};

/// A hood may be so far out of the middle and be over it all the same (common practice).
const OUT_OF_THE_MIDDLE: Length = Length::from_inches(1);

/// The lower edge of a hood from the finished floor: where its opening begins, as written. One that hangs from the
/// top of its opening and can't be set so low that it ends there reaches lower.
pub fn hood_edge(hood: &Selection, opening: &Opening) -> Option<Length> {
    let sill = *opening.sill.get()?;
    Some(skirt(hood, opening).map_or(sill, |skirt| skirt.min(sill)))
}

/// The skirt of a hood that hangs from the top of its opening, set as short as it can be.
fn skirt(hood: &Selection, opening: &Opening) -> Option<Length> {
    let top = *opening.sill.get()? + opening.height.get()?.least()?.value;
    let least = |height: &LengthRange| height.least.or(height.most);
    let tallest = hood.standing().iter().filter_map(|option| option.size.height.get().and_then(least)).max()?;
    Some(top - tallest)
}

/// How a hood hangs to the side of what it is to catch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Aside {
    /// How much of the cooking surface's width it is not over, though it is wide enough.
    pub uncovered: Length,
    /// How wide the cooking surface is.
    pub of: Length,
    /// From the middle of the one to the middle of the other, along the front; none where they are at unlike walls.
    pub between_middles: Option<Length>,
}

/// How a hood hangs beside a cooking surface; none where it is over it, or where its place is not known.
pub fn aside(hood: &Thing<'_>, cooks: &Thing<'_>) -> Option<Aside> {
    let of = cooks.width();
    let at_one_face = hood.stands == cooks.stands;
    let has_depth = hood.out.1 > hood.out.0;
    let over = match (at_one_face, has_depth) {
        (true, _) => Some(hood.along),
        (false, true) => {
            let shape = hood.footprint();
            shape.beside(&cooks.frame, cooks.out).filter(|_| cooks.out.1 > cooks.out.0)
        }
        // What hangs from the ceiling over an island may be set out from a wall, its depth unsaid.
        (false, false) if matches!(cooks.stands, Stands::Island(..)) => return None,
        (false, false) => None,
    };
    let covered = over.map_or(Length::ZERO, |(from, to)| to.min(cooks.along.1) - from.max(cooks.along.0));
    let narrower = over.map_or(Length::ZERO, |(from, to)| of - (to - from)).max(Length::ZERO);
    let uncovered = of - covered.max(Length::ZERO);
    let middle = |(from, to): (Length, Length)| (from + to).half();
    let between_middles = over.map(|over| (middle(over) - middle(cooks.along)).abs());
    // What a narrow hood leaves free at both sides is told by its width.
    (uncovered > narrower + OUT_OF_THE_MIDDLE).then_some(Aside { uncovered, of, between_middles })
}
