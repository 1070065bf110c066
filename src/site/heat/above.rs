//! What is above a cooking surface, from every place where it may be written.

use crate::book::{Burning, Ceiling, Selection, Window, WindowIn};
use crate::site::fitting::build_up;
use crate::site::plan::{ConvexShape, Hole, HoleIs, Plan, Stands, Thing, casing_width};
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

use super::asked;
use super::body::Body;
use super::hood::hood_edge;
use super::near::Near;
use super::{Hearth, LAP, ONE_THING, cooks, is_hood, only};

/// A body, and its lower edge from the finished floor.
type Hanging<'a> = (Body<'a>, Length);

/// Everything above a cooking surface of which a height is known.
pub fn above<'a>(hearth: &Hearth<'a>) -> Vec<Near<'a>> {
    let Some(surface) = hearth.surface() else { return vec![] };
    let said = hearth.fitted.opening.above.spanned();
    let placed = hanging(hearth, surface);
    let one = |low: Length, height: Length| (low - height).abs() <= ONE_THING;
    let mut all: Vec<(Body<'a>, Length, Option<Burning>)> = Vec::new();
    let mut told = said.and_then(|said| Some((said, *said.value.height.get()?)));
    for (body, low) in placed {
        let twin =
            told.filter(|(said, height)| !body.is_building() && one(low, *height) && may_be(&said.value.what, &body));
        // One thing in two places: what is said of it in either counts, the worse where they differ.
        let twin = twin.map(|(said, height)| (height, Body::Said(said, None).burning()));
        if twin.is_some() {
            told = None;
        }
        let (height, said) = twin.map_or((low, None), |(height, said)| (height, said));
        all.push((body, low.min(height), Burning::worse(body.burning(), said)));
    }
    if let Some((said, height)) = told {
        let body = Body::Said(said, None);
        all.push((body, height, body.burning()));
    }
    all.retain(|(body, low, _)| *low > surface || matches!(body, Body::Window(_)));
    let hood = all.iter().filter(|(body, _, burning)| shields(hearth, body, *burning)).map(|(_, low, _)| *low).min();
    let near = |(body, low, burning): (Body<'a>, Length, Option<Burning>)| {
        let under_a_hood = hood.is_some_and(|hood| hood < low);
        let counts = counts_as(hearth, &body, burning, under_a_hood);
        let asked = asked::above(hearth, counts, Some(&body))?;
        Some(Near {
            body,
            distance: (low - surface).max(Length::ZERO),
            burning,
            under_a_hood,
            may_be_lower: false,
            asked,
        })
    };
    all.into_iter().filter_map(near).collect()
}

/// Whether what the opening calls something above it may be that body: a hood is not what is built around one, nor what
/// hangs at its height by another name. As another thing it counts as burning, until somebody says that it does not.
fn may_be(said: &str, body: &Body<'_>) -> bool {
    let is_called = || body.names().into_iter().flatten().any(|name| said.eq_ignore_ascii_case(name));
    let another = Mention::Wood.is_in(said) || Mention::AroundAHood.is_in(said);
    !body.is_hood() || is_called() || Mention::Hood.is_in(said) && !another
}

/// As what it counts: unsaid, as burning; over a hood that does not burn, as shielded; and a hood that is
/// narrower than what it hangs over shields nothing.
fn counts_as(hearth: &Hearth<'_>, body: &Body<'_>, burning: Option<Burning>, under_a_hood: bool) -> Burning {
    match burning.unwrap_or(Burning::Burns) {
        Burning::Burns if under_a_hood => Burning::Shielded,
        Burning::DoesNotBurn if narrow(hearth, body) => Burning::Burns,
        as_said => as_said,
    }
}

/// Whether it is a hood that does not burn, as wide as the cooking surface.
fn shields(hearth: &Hearth<'_>, body: &Body<'_>, burning: Option<Burning>) -> bool {
    body.is_hood() && burning == Some(Burning::DoesNotBurn) && !narrow(hearth, body)
}

/// Whether a hood, this one or the room's, is known to be narrower than the cooking surface.
fn narrow(hearth: &Hearth<'_>, body: &Body<'_>) -> bool {
    let hoods = hearth.fitted.room.selections.iter().filter(|selection| is_hood(selection));
    let of_room = hoods.flat_map(Selection::standing);
    let own = body.options().iter().filter(|_| body.is_hood());
    let width = |option: &crate::book::ProductOption| option.size.width.get().copied();
    let narrowest = own.filter_map(width).min().or_else(|| of_room.filter_map(width).min());
    narrowest.zip(hearth.fitted.option.size.width.get()).is_some_and(|(hood, cooks)| hood < *cooks)
}

/// What other places than the opening itself say is above it.
pub fn placed<'a>(hearth: &Hearth<'a>) -> Vec<Body<'a>> {
    let surface = hearth.surface().unwrap_or_default();
    hanging(hearth, surface).into_iter().map(|(body, _)| body).collect()
}

fn hanging<'a>(hearth: &Hearth<'a>, surface: Length) -> Vec<Hanging<'a>> {
    let mut all: Vec<Hanging<'a>> = Vec::new();
    if let Some((plan, own)) = hearth.plan.zip(hearth.placed) {
        all.extend(over(hearth, plan, own, surface));
        all.extend(plan.holes.iter().filter_map(|hole| window_over(hearth, own, hole)));
    }
    all.extend(the_hood(hearth));
    all.extend(said_windows(hearth).filter_map(|window| Some((Body::Window(window), *window.sill.get()?))));
    all.extend(top(hearth, surface).map(|height| (Body::Top(hearth.fitted.opening), height)));
    all.extend(ceiling(hearth).map(|height| (Body::Ceiling(hearth.fitted.room), height)));
    all
}

/// What of the plan lies over it.
fn over<'a>(hearth: &Hearth<'a>, plan: &'a Plan<'a>, own: &Thing<'a>, surface: Length) -> Vec<Hanging<'a>> {
    let (from, to) = hearth.along(own);
    let back = if matches!(own.stands, Stands::Wall(_)) { own.out.0.min(Length::ZERO) } else { own.out.0 };
    let reach = ConvexShape::rectangle(&own.frame, (from + LAP, to - LAP), (back, own.out.1));
    let things = plan.things.iter().filter(|thing| !thing.is_opening(hearth.fitted.opening) && thing.low >= surface);
    let things = things.filter(|thing| thing.footprint().overlaps(&reach));
    things
        .map(|thing| {
            let row = plan.row_of(thing).map(|row| row.of);
            (Body::Placed(hearth.fitted.room, thing, row), lower_edge(thing, hearth))
        })
        .collect()
}

/// The lower edge of a thing of the plan; of a hood, as it is made.
fn lower_edge(thing: &Thing<'_>, hearth: &Hearth<'_>) -> Length {
    let made = || {
        let opening = thing.opening.filter(|_| thing.is(Kind::Hood))?;
        let hood = hearth.fitted.room.goes_into(&opening.name).next()?;
        hood_edge(hood, opening)
    };
    made().unwrap_or(thing.low)
}

/// How high a cooking surface is, where nobody says, to tell what hangs from what stands (common practice).
const USUAL_SURFACE: Length = Length::from_inches(36);

/// What nobody says of what is above a cooking surface.
#[derive(Clone, Copy, Debug)]
pub enum Unsaid<'a> {
    /// Whether anything is there at all.
    Everything,
    /// How high the hood hangs that is chosen for the room.
    HoodsHeight(&'a Selection),
}

/// What nobody says of what is above; none where the opening, the plan, a window or a hood tells.
pub fn unsaid<'a>(hearth: &Hearth<'a>) -> Option<Unsaid<'a>> {
    let surface = hearth.surface().unwrap_or(USUAL_SURFACE);
    let placed = || hanging(hearth, surface).iter().any(|(body, _)| !matches!(body, Body::Ceiling(_)));
    if !hearth.fitted.opening.above.is_absent() || placed() || sets_out_what_hangs(hearth, surface) {
        return None;
    }
    let room = hearth.fitted.room;
    let hood = only(room, is_hood).filter(|_| only(room, cooks).is_some());
    Some(hood.map_or(Unsaid::Everything, Unsaid::HoodsHeight))
}

/// Whether the plan sets out what hangs at the wall that a cooking surface stands at.
fn sets_out_what_hangs(hearth: &Hearth<'_>, surface: Length) -> bool {
    let Some((plan, own)) = hearth.plan.zip(hearth.placed) else { return false };
    let hangs = |thing: &Thing<'_>| thing.stands == own.stands && thing.low >= surface && thing.row.is_some();
    plan.things.iter().any(|thing| !thing.is_opening(hearth.fitted.opening) && hangs(thing))
}

/// The room's one hood over its one cooking surface, where the plan does not place both.
fn the_hood<'a>(hearth: &Hearth<'a>) -> Option<Hanging<'a>> {
    let room = hearth.fitted.room;
    let hood = only(room, is_hood)?;
    only(room, cooks)?;
    let opening = room.opening(hood.place.get()?)?;
    if hearth.placed.is_some() && hearth.plan.is_some_and(|plan| plan.opening(opening).is_some()) {
        return None;
    }
    Some((Body::Hood(hood, opening), hood_edge(hood, opening)?))
}

/// A window of the plan in the wall behind, over it: its sill.
fn window_over<'a>(hearth: &Hearth<'a>, own: &Thing<'a>, hole: &Hole<'a>) -> Option<Hanging<'a>> {
    let HoleIs::Window(window) = hole.is else { return None };
    let (from, to) = hearth.along(own);
    let over = own.stands == Stands::Wall(hole.wall) && hole.along.0 < to - LAP && from + LAP < hole.along.1;
    let over = over && hole.high.zip(hearth.surface()).is_none_or(|(high, surface)| high > surface);
    // Its trim goes round it: the lower edge is that of the casing.
    over.then_some((Body::Window(window), hole.low? - casing_width(hole.is).copied().unwrap_or_default()))
}

/// Windows that are said to be above a cooking surface, in a room that has one.
fn said_windows<'a>(hearth: &Hearth<'a>) -> impl Iterator<Item = &'a Window> {
    let room = hearth.fitted.room;
    let one = only(room, cooks).is_some();
    let plan = hearth.plan;
    let said = move |window: &&Window| one && window.wall.get().is_none() && is_said_above_cooking(window, plan);
    room.windows.iter().filter(said)
}

/// Whether a window's words name something that is cooked on; one in the roof is far above it.
pub fn is_said_above_cooking(window: &Window, plan: Option<&Plan<'_>>) -> bool {
    let planned = plan.map(|plan| plan.in_the_roof.as_slice()).unwrap_or_default();
    if window.stands_in.get() == Some(&WindowIn::Roof) || planned.iter().any(|planned| std::ptr::eq(*planned, window)) {
        return false;
    }
    let Some(under) = window.above.get() else { return false };
    Mention::Cooking.is_in(under)
}

/// Windows that open above it, by their place in the plan.
pub fn windows_over<'a>(hearth: &Hearth<'a>) -> Vec<&'a Window> {
    let Some((plan, own)) = hearth.plan.zip(hearth.placed) else { return vec![] };
    let window = |hole: &Hole<'a>| match hole.is {
        HoleIs::Window(window) => window_over(hearth, own, hole).map(|_| window),
        HoleIs::Door(_) => None,
    };
    plan.holes.iter().filter_map(window).collect()
}

/// Where the opening itself ends over what stands in it; a height that is no more than what stands there needs is its
/// counter's.
fn top(hearth: &Hearth<'_>, surface: Length) -> Option<Length> {
    let opening = hearth.fitted.opening;
    let stands = hearth.fitted.selection.is(Kind::Range) && opening.stands_on_the_floor();
    let height = opening.height.get().filter(|_| stands)?.least()?.value;
    Some(height - build_up(hearth.fitted.room, opening)).filter(|top| *top > surface + OVER_IT)
}

/// An opening that ends so far over what is cooked on ends over it: 6 in (common practice: a range's raised back is lower).
const OVER_IT: Length = Length::from_inches(6);

/// The ceiling over it, where that is known.
fn ceiling(hearth: &Hearth<'_>) -> Option<Length> {
    match (hearth.plan.zip(hearth.placed), hearth.fitted.room.ceiling.get()?) {
        (_, Ceiling::Level(height)) => Some(*height),
        (Some((plan, own)), Ceiling::Sloped { .. }) => plan.ceiling_over(own, own.out),
        (None, Ceiling::Sloped { .. }) => None,
    }
}
