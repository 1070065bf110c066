//! Counters of one selection that meet: at the corner of two runs, or of a run and a peninsula. They are drawn as one,
//! while each run keeps its own pieces.

use crate::book::{Room, Seam, Selection};
use crate::units::Length;

use super::layout::{CounterLayout, Lies, PLAY, laid_in_plan, same_top};
use super::plan::Plan;

/// Counters that are drawn as one, in the directions of the first: to the right along its back, and out from that.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct JoinedCounter {
    /// Each run and island; the first lies as it is drawn alone.
    pub parts: Vec<PlacedLayout>,
    /// Where two of them meet.
    pub joints: Vec<CornerJoint>,
}

/// The layout of a run or an island in its place among those that it meets.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlacedLayout {
    /// The layout.
    pub laid: CounterLayout,
    /// How it is turned.
    pub turned: Turned,
    /// Where the left end of its wall or island lies, at its back.
    pub at: (Length, Length),
}

/// How a layout is turned against the one that others meet, seen from above.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Turned {
    /// Its back is up.
    #[default]
    No,
    /// Its back is at the right.
    WithTheClock,
    /// Its back is down.
    Half,
    /// Its back is at the left.
    AgainstTheClock,
}

impl Turned {
    /// Which way its left end looks to its right end: to the right, and down.
    pub fn way(self) -> (i64, i64) {
        match self {
            Self::No => (1, 0),
            Self::WithTheClock => (0, 1),
            Self::Half => (-1, 0),
            Self::AgainstTheClock => (0, -1),
        }
    }

    /// Whether it lies across.
    pub fn is_upright(self) -> bool {
        self.way().0 == 0
    }
}

/// An upright rectangle: from left to right, and from above down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rectangle {
    /// Its left and its right side.
    pub across: (Length, Length),
    /// Its upper and its lower side.
    pub down: (Length, Length),
}

/// Where two counters meet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CornerJoint {
    /// The two, by their numbers.
    pub between: (usize, usize),
    /// The corner, or the edge that they share.
    pub corner: Rectangle,
    /// What lies between the corner and the end of one of them, which nobody says anything of.
    pub unsaid: Option<Rectangle>,
    /// The one that the joint is written on, and its distance from the left end of that one's wall; none where nobody
    /// says where it is.
    pub seam: Option<(usize, Length)>,
}

impl JoinedCounter {
    /// Of two counters that overlap in a corner one ends at their joint: what of it would lie within the other is that
    /// one's.
    fn end_at_joints(&mut self) {
        for joint in &self.joints {
            let Some((number, along)) = joint.seam else { continue };
            let Some(part) = self.parts.get_mut(number) else { continue };
            let own: Vec<Rectangle> = part
                .laid
                .pieces
                .iter()
                .map(|piece| part.area((piece.from, piece.to), (Length::ZERO, piece.depth)))
                .collect();
            let mut stays = own.iter().map(|piece| !joint.corner.holds(piece));
            if own.iter().all(|piece| joint.corner.holds(piece)) {
                continue;
            }
            part.laid.pieces.retain(|_| stays.next().unwrap_or(true));
            part.laid.seams.retain(|seam| *seam != along);
        }
    }
}

impl Rectangle {
    /// Whether another lies within it.
    fn holds(&self, other: &Self) -> bool {
        let within =
            |one: (Length, Length), other: (Length, Length)| one.0 - PLAY <= other.0 && other.1 <= one.1 + PLAY;
        within(self.across, other.across) && within(self.down, other.down)
    }
}

impl PlacedLayout {
    /// A place of its own, so far along and so far out from its back.
    pub fn place(&self, along: Length, out: Length) -> (Length, Length) {
        let (right, down) = self.turned.way();
        (self.at.0 + along.times(right) - out.times(down), self.at.1 + along.times(down) + out.times(right))
    }

    /// A rectangle of its own.
    pub fn area(&self, along: (Length, Length), out: (Length, Length)) -> Rectangle {
        let (one, other) = (self.place(along.0, out.0), self.place(along.1, out.1));
        Rectangle { across: (one.0.min(other.0), one.0.max(other.0)), down: (one.1.min(other.1), one.1.max(other.1)) }
    }

    /// All of it.
    pub fn whole(&self) -> Rectangle {
        self.area(self.laid.ends(), (Length::ZERO, self.laid.depth()))
    }
}

/// The layouts of a counter: those that meet as one, each other one alone.
pub fn joined_counters(plan: Option<&Plan<'_>>, room: &Room, selection: &Selection) -> Vec<JoinedCounter> {
    let all = laid_in_plan(plan, room, selection);
    let seams = same_top(selection).map_or(&[][..], |top| &top.seams);
    let mut left: Vec<usize> = (0..all.len()).collect();
    let mut joined = Vec::new();
    while !left.is_empty() {
        let mut group = vec![left.remove(0)];
        // Whatever meets one of them, until nothing does.
        let mut at = 0;
        while let Some(one) = group.get(at).copied() {
            let (met, others) = left.into_iter().partition(|other| meet(&all, one, *other));
            left = others;
            let met: Vec<usize> = met;
            group.extend(met);
            at += 1;
        }
        joined.push(together(&all, group, seams));
    }
    joined
}

type InPlan = (CounterLayout, Option<Lies>);

fn meet(all: &[InPlan], one: usize, other: usize) -> bool {
    let placed = |number: usize, base: usize| place(all.get(base)?, all.get(number)?);
    let both = placed(one, one).zip(placed(other, one));
    both.is_some_and(|(base, wing)| corner_of((&base, all.get(one)), (&wing, all.get(other))).is_some())
}

/// Counters by what they are drawn around: the one that meets most of the others, the first of several.
fn together(all: &[InPlan], group: Vec<usize>, seams: &[Seam]) -> JoinedCounter {
    let meets = |one: usize| group.iter().filter(|other| **other != one && meet(all, one, **other)).count();
    let base = group.iter().copied().rev().max_by_key(|one| meets(*one)).unwrap_or_default();
    let order: Vec<usize> = std::iter::once(base).chain(group.into_iter().filter(|one| *one != base)).collect();
    let alone = |laid: &CounterLayout| PlacedLayout {
        laid: laid.clone(),
        turned: Turned::No,
        at: (Length::ZERO, Length::ZERO),
    };
    let placed = |number: &usize| {
        let own = all.get(*number)?;
        all.get(base).and_then(|base| place(base, own)).or_else(|| Some(alone(&own.0)))
    };
    let parts: Vec<PlacedLayout> = order.iter().filter_map(placed).collect();
    let mut joints = Vec::new();
    for (number, one) in parts.iter().enumerate() {
        for (next, other) in parts.iter().enumerate().skip(number + 1) {
            let lies = |at: usize| order.get(at).and_then(|at| all.get(*at));
            let Some((corner, unsaid)) = corner_of((one, lies(number)), (other, lies(next))) else { continue };
            let seam = [(number, one), (next, other)].into_iter().find_map(|(at, part)| {
                Some((at, seam_in(part, one.turned.is_upright() != other.turned.is_upright(), &corner, seams)?))
            });
            joints.push(CornerJoint { between: (number, next), corner, unsaid, seam });
        }
    }
    let mut joined = JoinedCounter { parts, joints };
    joined.end_at_joints();
    joined
}

/// A layout in the directions of another; none where it lies askew to that, or nobody knows where.
fn place((_, base): &InPlan, (laid, own): &InPlan) -> Option<PlacedLayout> {
    let ((base, own), long) = ((base.as_ref()?, own.as_ref()?), Length::from_inches(64));
    let local = |along: Length| {
        let (across, down) = base.frame.local(own.frame.at(along, own.back));
        let length = |part: i128| Some(Length::from_nanometres(i64::try_from(part).ok()?));
        Some((length(across)?, length(down)? - base.back))
    };
    let (start, further) = (local(Length::ZERO)?, local(long)?);
    let way = (further.0 - start.0, further.1 - start.1);
    let all = [Turned::No, Turned::WithTheClock, Turned::Half, Turned::AgainstTheClock];
    let turned = all.into_iter().find(|turned| (long.times(turned.way().0), long.times(turned.way().1)) == way)?;
    Some(PlacedLayout { laid: laid.clone(), turned, at: start })
}

/// By how much two stretches are apart; below nothing, how much they share.
fn apart(one: (Length, Length), other: (Length, Length)) -> Length {
    one.0.max(other.0) - one.1.min(other.1)
}

/// Where two counters meet, and what lies between them that is of neither: over a corner cabinet that only one of two
/// runs holds.
fn corner_of(
    one: (&PlacedLayout, Option<&InPlan>),
    other: (&PlacedLayout, Option<&InPlan>),
) -> Option<(Rectangle, Option<Rectangle>)> {
    let (a, b) = (one.0.whole(), other.0.whole());
    let (across, down) = (apart(a.across, b.across), apart(a.down, b.down));
    let touch = across <= PLAY && down <= PLAY && across.min(down) < -PLAY;
    if one.0.turned.is_upright() == other.0.turned.is_upright() {
        let edge = |one: (Length, Length), other: (Length, Length)| {
            (one.0.max(other.0).min(one.1.min(other.1)), one.1.min(other.1).max(one.0.max(other.0)))
        };
        // Runs in one line have no corner: each is drawn alone.
        let in_line = one.0.laid.has_wall && other.0.laid.has_wall;
        return (touch && !in_line)
            .then(|| (Rectangle { across: edge(a.across, b.across), down: edge(a.down, b.down) }, None));
    }
    let (level, upright) = if one.0.turned.is_upright() { (other, one) } else { (one, other) };
    let corner = Rectangle { across: upright.0.whole().across, down: level.0.whole().down };
    if touch {
        return Some((corner, None));
    }
    // Each must reach into the corner, or end where the cabinet does that stands there in the other's row.
    let short_of_level = apart(upright.0.whole().down, corner.down);
    let short_of_upright = apart(level.0.whole().across, corner.across);
    if short_of_level > PLAY && short_of_upright <= -PLAY {
        let deep = corner.down.1 - corner.down.0;
        let unsaid = between(upright.0.whole().down, corner.down);
        let held = carried_at(level, corner.across)? >= short_of_level + deep - PLAY;
        return held.then_some((corner, Some(Rectangle { across: corner.across, down: unsaid })));
    }
    if short_of_upright > PLAY && short_of_level <= -PLAY {
        let deep = corner.across.1 - corner.across.0;
        let unsaid = between(level.0.whole().across, corner.across);
        let held = carried_at(upright, corner.down)? >= short_of_upright + deep - PLAY;
        return held.then_some((corner, Some(Rectangle { across: unsaid, down: corner.down })));
    }
    None
}

/// What lies between two stretches that are apart.
fn between(one: (Length, Length), other: (Length, Length)) -> (Length, Length) {
    if one.1 <= other.0 { (one.1, other.0) } else { (other.1, one.0) }
}

/// The width of what carries a counter at the end that lies in a corner.
fn carried_at((placed, in_plan): (&PlacedLayout, Option<&InPlan>), corner: (Length, Length)) -> Option<Length> {
    let lies = in_plan?.1.as_ref()?;
    let ends = placed.laid.ends();
    let place = |along: Length| {
        let (across, down) = placed.place(along, Length::ZERO);
        if placed.turned.is_upright() { down } else { across }
    };
    let is_in = |along: Length| corner.0 - PLAY <= place(along) && place(along) <= corner.1 + PLAY;
    if is_in(ends.0) {
        return Some(lies.carried.0);
    }
    is_in(ends.1).then_some(lies.carried.1)
}

/// A seam of a part within a corner, from the left end of its wall.
fn seam_in(part: &PlacedLayout, is_a_corner: bool, corner: &Rectangle, seams: &[Seam]) -> Option<Length> {
    let on = part.laid.on.as_ref()?;
    let here = seams.iter().filter(|seam| seam.on.get() == Some(on)).filter_map(|seam| seam.from_left.get().copied());
    let stretch = if part.turned.is_upright() { corner.down } else { corner.across };
    // An edge that two counters share all along is no place along either of them.
    if !is_a_corner && stretch.1 - stretch.0 > PLAY {
        return None;
    }
    let mut within = here.filter(|along| {
        let (across, down) = part.place(*along, Length::ZERO);
        let place = if part.turned.is_upright() { down } else { across };
        stretch.0 - PLAY <= place && place <= stretch.1 + PLAY
    });
    within.next()
}
