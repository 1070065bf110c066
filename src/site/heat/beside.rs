//! What rises beside a cooking surface, from every place where it may be written.

use crate::book::{BesideWord, Burning, IslandSide, Neighbour, Part, PartIs};
use crate::site::fitting::{Side, rises_above_counter};
use crate::site::plan::{ConvexShape, Plan, Thing, What};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention, Trait, words_of};

use super::asked::{self, Reach};
use super::body::Body;
use super::near::Near;
use super::{Hearth, ONE_THING};

/// What rises past the cooking surface by no more is level with it: counters, trims.
const LEVEL: Length = Length::from_inches(1);

/// Everything at a side that rises above a cooking surface, near enough to count.
pub fn beside<'a>(hearth: &Hearth<'a>, side: Side) -> Vec<Near<'a>> {
    let (Some(surface), Some(reach)) = (hearth.surface(), asked::beside(hearth, side)) else { return vec![] };
    let said = side.of(hearth.fitted.opening).spanned().and_then(|said| of_said(hearth, side, said, &reach, surface));
    let mut all = of_plan(hearth, side, &reach, surface);
    if let Some(said) = said {
        match all.iter_mut().find(|near| (near.distance - said.distance).abs() <= ONE_THING) {
            // One thing in two places: what is said of it in either counts, the worse where they differ.
            Some(twin) => twin.burning = Burning::worse(twin.burning, said.burning),
            None => all.push(said),
        }
    }
    all.retain(|near| near.burning.unwrap_or(Burning::Burns) == Burning::Burns);
    all
}

/// What the opening says stands there.
fn of_said<'a>(
    hearth: &Hearth<'a>,
    side: Side,
    said: &'a Spanned<Neighbour>,
    reach: &Reach,
    surface: Length,
) -> Option<Near<'a>> {
    let neighbour = &said.value;
    let by_words = rises_above_counter(neighbour);
    // Air above the counter beside what is known to rise is told by `fit/air`.
    if neighbour.is_nothing() || (reach.is_air && by_words) || neighbour.gap.is_faulty() {
        return None;
    }
    let low = neighbour.height.get().copied().unwrap_or_default();
    let rises = match neighbour.top.get() {
        Some(top) => Some(*top > surface + LEVEL),
        None if by_words || low >= surface => Some(true),
        None => {
            let is_low = is_counter(hearth, side, reach) || ends_low(hearth, side, reach, surface);
            (is_low && is_called_low(hearth, neighbour)).then_some(false)
        }
    };
    let in_reach = reach.up_to.is_none_or(|up_to| low < surface + up_to);
    let distance = neighbour.gap.get().copied().unwrap_or_default();
    (rises != Some(false) && in_reach).then(|| Near {
        body: Body::Said(said, Some(side)),
        distance,
        burning: neighbour.burning.get().copied(),
        under_a_hood: false,
        may_be_lower: rises.is_none(),
        asked: reach.asked.clone(),
    })
}

/// Whether what is said to stand there is called as what ends at the counter, or as a part of a row: of any other word
/// nobody knows how high it goes, whatever else is low there.
fn is_called_low(hearth: &Hearth<'_>, neighbour: &Neighbour) -> bool {
    let what = &neighbour.what;
    let of_a_cabinet = Mention::Furniture.is_in(what) && neighbour.word() != Some(BesideWord::Shelf);
    let is_low = Mention::Low.is_in(what) || Mention::Drawer.is_in(what) || of_a_cabinet;
    let is_a_filler =
        matches!(neighbour.word(), Some(BesideWord::Filler | BesideWord::Counter | BesideWord::BaseCabinet));
    let said = words_of(what);
    let has_letters = |word: &&String| word.chars().any(char::is_alphabetic);
    let of_its_name = |name: &str| words_of(name).iter().filter(has_letters).any(|word| said.contains(word));
    // What the cooking surface itself stands in says nothing of what is beside it.
    let own = &hearth.fitted.opening.name;
    let is_own = |part: &Part| part.is.word() == own.as_str() || part.holds.iter().any(|held| held.value == own.value);
    let room = hearth.fitted.room;
    let sides = room.islands.iter().flat_map(|island| IslandSide::ALL.map(|side| island.side(side)));
    let parts = room.runs.iter().flat_map(|run| &run.parts).chain(sides.flat_map(|side| &side.parts));
    let of_a_row = parts.into_iter().any(|part| !is_own(part) && of_its_name(part.is.word()));
    let of_an_opening = || {
        let appliance = Kind::of_a_neighbour(what);
        appliance.is_some_and(|kind| !kind.is(Trait::StandsTall) && !kind.is(Trait::Cools))
    };
    // Where nothing is set out, what stands there without a gap is the cabinet under that counter.
    let is_beside = room.runs.is_empty() && neighbour.gap.is_absent();
    is_low || is_a_filler || of_a_row || is_beside || of_an_opening()
}

/// Whether so much counter to set things down on is measured at that side.
fn is_counter(hearth: &Hearth<'_>, side: Side, reach: &Reach) -> bool {
    let landing = hearth.fitted.opening.landing.get();
    let landing = landing.and_then(|landing| if side == Side::Left { landing.left.get() } else { landing.right.get() });
    landing.is_some_and(|landing| landing.counter >= reach.asked.length)
}

/// Whether the plan sets out what stands there on the floor, and nothing of it rises.
fn ends_low(hearth: &Hearth<'_>, side: Side, reach: &Reach, surface: Length) -> bool {
    let Some((plan, own)) = hearth.plan.zip(hearth.placed) else { return false };
    let near = |thing: &&Thing<'_>| {
        let other = !thing.is_opening(hearth.fitted.opening) && !holds(plan, thing, own) && thing.low < surface;
        other && away(hearth, own, side, reach, &thing.footprint()).is_some()
    };
    let mut things = plan.things.iter().filter(near).peekable();
    things.peek().is_some() && things.all(|thing| !rises(thing, surface))
}

/// So far the glass of a cooktop may lie over what stands beside its own cabinet (common practice: 830 mm on 800 mm).
const LIES_OVER: Length = Length::from_inches(1);

/// How far a shape is from that side, where it stands beside the cooking surface and near enough to count.
fn away(hearth: &Hearth<'_>, own: &Thing<'_>, side: Side, reach: &Reach, shape: &ConvexShape) -> Option<Length> {
    let (left, right) = hearth.along(own);
    let out = (own.out.0, own.out.1.max(own.out.0 + Length::from_inches(1)));
    let (first, last) = shape.beside(&own.frame, out)?;
    let gap = if side == Side::Left { left - last } else { first - right };
    (gap >= -LIES_OVER && gap < reach.asked.length).then(|| gap.max(Length::ZERO))
}

/// What the plan says stands there.
fn of_plan<'a>(hearth: &Hearth<'a>, side: Side, reach: &Reach, surface: Length) -> Vec<Near<'a>> {
    let Some((plan, own)) = hearth.plan.zip(hearth.placed) else { return vec![] };
    let away = |shape: &ConvexShape| away(hearth, own, side, reach, shape);
    let near = |body: Body<'a>, distance| Near {
        burning: body.burning(),
        body,
        distance,
        under_a_hood: false,
        may_be_lower: false,
        asked: reach.asked.clone(),
    };
    let things = plan.things.iter().filter(|thing| {
        !thing.is_opening(hearth.fitted.opening)
            && !holds(plan, thing, own)
            && rises(thing, surface)
            && reach.up_to.is_none_or(|up_to| thing.low < surface + up_to)
    });
    let things = things.filter_map(|thing| {
        let row = plan.row_of(thing).map(|row| row.of);
        Some(near(Body::Placed(hearth.fitted.room, thing, row), away(&thing.footprint())?))
    });
    let walls = plan.walls.iter().filter(|wall| {
        !wall.is_open() && wall.height().is_none_or(|height| height > surface + LEVEL) && wall.frame != own.frame
    });
    let walls = walls.filter_map(|wall| {
        let face = ConvexShape::new(vec![wall.frame.left(), wall.frame.right()]);
        Some(near(Body::Wall(wall), away(&face)?))
    });
    let up_to = reach.up_to.map(|up_to| surface + up_to);
    let casings = plan.casings().into_iter().filter(|casing| casing.stands_between(surface + LEVEL, up_to));
    let casings = casings.filter_map(|casing| Some(near(Body::Casing(casing.of), away(&casing.shape)?)));
    things.chain(walls).chain(casings).collect()
}

/// Whether a thing stands higher than the cooking surface.
fn rises(thing: &Thing<'_>, surface: Length) -> bool {
    match (thing.high, thing.what) {
        (Some(high), _) => high > surface + LEVEL,
        (None, _) if thing.low >= surface => true,
        (None, What::Part(part)) => {
            matches!(part.is, PartIs::Tall(_)) || thing.has(Trait::Cools) || thing.is(Kind::WallOven)
        }
        (None, _) => thing.has(Trait::Cools) || thing.is(Kind::WallOven),
    }
}

/// Whether one is cut into the other, or into what that one is cut into.
fn holds(plan: &Plan<'_>, holder: &Thing<'_>, held: &Thing<'_>) -> bool {
    let mut within = held.within;
    while let Some(thing) = within.and_then(|at| plan.things.get(at)) {
        if std::ptr::eq(thing, holder) {
            return true;
        }
        within = thing.within;
    }
    false
}
