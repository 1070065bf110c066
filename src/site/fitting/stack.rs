//! Two things one on the other: they share one height, taken once from one floor.
//!
//! Where both go in as they are written, each has the height that is written. Else, since what stands on another machine
//! rises and sinks with it, neither has a height of its own: what one has is what the other leaves of both, from the
//! finished floor to what is above the upper one. Verdict, sheets and drawings all ask here.

use crate::book::{MeasuredFrom, Opening, Room};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

/// A stack, as one of its openings sees it.
#[derive(Clone, Copy, Debug)]
pub struct Stack<'a> {
    /// The opening on the floor.
    pub lower: &'a Opening,
    /// The one on it.
    pub upper: &'a Opening,
}

impl<'a> Stack<'a> {
    /// The stack that an opening is part of: two that name each other as a pair, or as what is above, and of
    /// which one begins where the other stands already.
    pub fn of(room: &'a Room, opening: &Opening) -> Option<Self> {
        let own = room.opening(&opening.name.value)?;
        let bottom = |opening: &Opening| opening.sill.get().copied().unwrap_or_default();
        let is_other = |other: &&Opening| bottom(other) != bottom(own) && other.name.value != own.name.value;
        // Those that it names, and those that name it; of several the first that is written.
        let above = own.above.get().map(|above| &above.what);
        let named = own.pair.get().into_iter().chain(above).flat_map(|name| room.openings_called(name));
        let joined =
            named.chain(room.openings_naming(&own.name)).filter(|other| is_other(other) && are_joined(own, other));
        let other = joined.min_by_key(|other| other.span)?;
        let (lower, upper) = if bottom(own) < bottom(other) { (own, other) } else { (other, own) };
        // Two that stand side by side at unlike heights are no stack; the lower one's height may be the bay's.
        let least = lower.height.get().and_then(|height| height.least()).map_or(Length::ZERO, |least| least.value);
        (bottom(upper) > bottom(lower) + least.half().half()).then_some(Self { lower, upper })
    }

    /// Whether an opening is the lower one.
    pub fn is_lower(&self, opening: &Opening) -> bool {
        self.lower.name.value == opening.name.value
    }

    /// The other opening.
    pub fn other(&self, opening: &Opening) -> &'a Opening {
        if self.is_lower(opening) { self.upper } else { self.lower }
    }

    /// What is still to be laid under both: taken off once, and not where either was measured from the
    /// finished floor.
    pub fn build_up(&self, room: &Room) -> Length {
        let finished =
            [self.lower, self.upper].iter().any(|one| one.measured_from.get() == Some(&MeasuredFrom::FinishedFloor));
        if finished || !self.lower.sill.is_absent() {
            return Length::ZERO;
        }
        room.floor_build_up.get().copied().unwrap_or_default()
    }

    /// The height that an opening's thing has: as it is written where both go in so, else what the other one and the kit
    /// between them leave; none where the other's height is not known yet.
    pub fn left_for(&self, room: &Room, opening: &Opening) -> Option<Spanned<Length>> {
        // What is built in has a hole of its own, which no other rises or sinks.
        if [self.lower, self.upper].iter().all(|one| one.takes_one(Trait::LapsOver) || one.cabinet.get().is_some()) {
            return None;
        }
        let others = height_of_what_is_chosen(room, self.other(opening))?;
        let bottom = self.lower.sill.get().copied().unwrap_or_default();
        let (top, span) = self.top(room)?;
        let ends = self.end_of_the_lower(room).filter(|_| self.is_lower(opening));
        let least = |left: Spanned<Length>| ends.into_iter().chain([left]).min_by_key(|left| left.value);
        if let Some((lower, upper)) = self.as_written(room) {
            return least(if self.is_lower(opening) { lower } else { upper });
        }
        let both = top - bottom - others - self.kit(room);
        // What stands below takes no more of it than it needs.
        let takes = most_needed(room, self.lower).filter(|needs| self.is_lower(opening) && *needs <= both);
        let of_both = Spanned::new(takes.map_or(both, |needs| self.below_the_sill(room).max(needs).min(both)), span);
        // Where the upper one is written to begin inside the lower one's height, that ends what stands below it.
        let sill = self.upper.sill.spanned().filter(|_| self.is_lower(opening) && self.overlaps(room));
        let below = sill.map(|sill| Spanned::new(sill.value - bottom - self.kit(room), sill.span));
        below.into_iter().chain([of_both]).min_by_key(|left| left.value).and_then(least)
    }

    /// Where the lower one's own height ends below the upper one, as it was measured, or something else is above it
    /// there: that is what it has.
    fn end_of_the_lower(&self, room: &Room) -> Option<Spanned<Length>> {
        let bottom = self.lower.sill.get().copied().unwrap_or_default();
        let sill = *self.upper.sill.get()? - bottom;
        let height = self.lower.height.get().and_then(|height| height.least());
        // One that reaches to the upper one rises and sinks with it.
        let ends = height.filter(|height| height.value < sill);
        let measured = ends.map(|height| Spanned::new(height.value - self.build_up(room), height.span));
        let above = self.lower.above.get().filter(|above| !above.what.eq_ignore_ascii_case(&self.upper.name.value));
        let hangs = above.and_then(|above| above.height.spanned());
        let hangs = hangs.map(|edge| Spanned::new(edge.value - bottom, edge.span));
        measured.into_iter().chain(hangs).filter(|end| end.value < sill).min_by_key(|end| end.value)
    }

    /// How high the upper one's bottom is above the finished floor: as it is written where both go in so, else as high as
    /// what stands below it and the kit; none where that is not known.
    pub fn upper_bottom(&self, room: &Room) -> Option<Length> {
        self.left_for(room, self.upper)?;
        if self.as_written(room).is_some() {
            return self.upper.sill.get().copied();
        }
        let bottom = self.lower.sill.get().copied().unwrap_or_default();
        Some(bottom + height_of_what_is_chosen(room, self.lower)? + self.kit(room))
    }

    /// The heights of both as they are written, where all that may still stand in them goes in so.
    fn as_written(&self, room: &Room) -> Option<(Spanned<Length>, Spanned<Length>)> {
        let sill = self.upper.sill.spanned()?;
        let (top, span) = self.top(room)?;
        let (lower, upper) = (self.below_the_sill(room), top - sill.value);
        let goes_in = most_needed(room, self.lower)? <= lower && most_needed(room, self.upper)? <= upper;
        goes_in.then(|| (Spanned::new(lower, sill.span), Spanned::new(upper, span)))
    }

    /// From the lower one's bottom to the kit under the upper one's, as that is written.
    fn below_the_sill(&self, room: &Room) -> Length {
        let bottom = |opening: &Opening| opening.sill.get().copied().unwrap_or_default();
        bottom(self.upper) - bottom(self.lower) - self.kit(room)
    }

    /// Whether the lower one's own height reaches into the upper one, and is not that of the whole bay: it ends below
    /// the middle of what stands there.
    fn overlaps(&self, room: &Room) -> bool {
        let bottom = self.lower.sill.get().copied().unwrap_or_default();
        let lower = self.lower.height.get().and_then(|height| height.least()).map(|height| bottom + height.value);
        let upper = self.upper.height.get().and_then(|height| height.least()).map(|height| height.value);
        let upper = upper.or_else(|| height_of_what_is_chosen(room, self.upper));
        lower
            .zip(self.upper.sill.get().copied())
            .zip(upper)
            .is_some_and(|((top, sill), upper)| top > sill && top < sill + upper.half())
    }

    /// Where the room for both ends, from the finished floor.
    fn top(&self, room: &Room) -> Option<(Length, crate::source::Span)> {
        let to_lay = self.build_up(room);
        let sill = *self.upper.sill.get()?;
        let least = |opening: &'a Opening| opening.height.get().and_then(|height| height.least());
        let upper = least(self.upper).map(|height| (sill + height.value - to_lay, height.span));
        // A height of the lower one that goes past the upper one's bottom is that of the whole bay.
        let whole = least(self.lower).filter(|height| height.value > sill && !self.overlaps(room));
        let bottom = self.lower.sill.get().copied().unwrap_or_default();
        let whole = whole.map(|height| (bottom + height.value - to_lay, height.span));
        let above = self.upper.above.get().and_then(|above| above.height.spanned());
        let above = above.map(|edge| (edge.value, edge.span));
        [upper, whole, above].into_iter().flatten().min_by_key(|(top, _)| *top)
    }

    /// What the kit between them adds, by the sheet of either.
    fn kit(&self, room: &Room) -> Length {
        let kits = [self.lower, self.upper].into_iter().flat_map(|opening| {
            let option = crate::site::plan::settled(room, opening)?;
            option.fit.get()?.joining_kit.get().copied()
        });
        kits.max().unwrap_or_default()
    }
}

/// The least height of what is chosen for an opening.
fn height_of_what_is_chosen(room: &Room, opening: &Opening) -> Option<Length> {
    let height = crate::site::plan::settled(room, opening)?.size.height.get()?;
    height.least.or(height.most)
}

/// The height that the most demanding of what may still stand in an opening needs; none where that of one is not known.
fn most_needed(room: &Room, opening: &Opening) -> Option<Length> {
    let options = room.goes_into(&opening.name).flat_map(|selection| selection.standing().iter());
    let needs = options.map(|option| {
        let body = option.size.height.get().and_then(|height| height.least.or(height.most))?;
        let asked = option.fit.get().and_then(|fit| fit.opening.height.get()?.least);
        Some(asked.map_or(body, |asked| asked.max(body)))
    });
    needs.collect::<Option<Vec<Length>>>()?.into_iter().max()
}

fn are_joined(one: &Opening, other: &Opening) -> bool {
    // A hood hangs over what cooks, and stands on nothing.
    let hangs = |of: &Opening| of.takes_one(Trait::Cooks) || of.takes.get() == Some(&Kind::Hood);
    let names = |of: &Opening, named: &Opening| {
        let name = &named.name.value;
        let above = || of.above.get().is_some_and(|above| above.what.eq_ignore_ascii_case(name));
        of.pair.get() == Some(name) || (above() && !hangs(of) && !hangs(named))
    };
    names(one, other) || names(other, one)
}
