//! A thing against its opening, in exact lengths: what is asked, what is there, what is left over.
//!
//! Rules judge these figures and pages show them: there is no second arithmetic. Nothing is rounded
//! here (fit is decided before any rounding for print).

mod asked;
mod before;
mod behind;
mod beside;
mod by_plan;
pub mod cover;
mod flank;
mod flush;
mod foot;
mod gauge;
mod housing;
mod joined;
pub mod nest;
mod out;
mod over;
pub mod overhead;
mod passage;
mod pedestal;
mod square;
mod stack;
#[cfg(test)]
mod tests;
mod unknown;
pub mod waste;

pub use before::{NeededBefore, ShortFloor, floor_before};
pub use behind::{behind_the_back_panel, left_behind};
pub use beside::{
    Rises, Side, hinge_sides, may_stand_in_the_door_s_way, rises, rises_above_counter, stands_in_the_door_s_way,
};
pub use flank::{Flank, FlankIs, casing_beside, flank};
pub use flush::{DepthStack, depth_stack, panel, panel_before, recess, setting};
pub use foot::{Foot, foot};
pub use gauge::{DimensionCheck, Direction, Gaps, Misfit};
pub use housing::{CabinetFigure, FigureBasis, HeldBelow, Housing, held_below};
pub use joined::joined;
pub use out::{case_stands_out, front_edge};
pub use over::{Above, AboveIs, above, is_under_a_counter};
pub use passage::{
    DoorInTheWay, Passage, Passes, door_in_the_way, is_large, least_hall_around_a_corner, least_side, play_on_the_way,
    spare, tightest, way_in,
};
pub use pedestal::{Pedestal, pedestal_under};
pub use square::{OutOfSquare, Skew, out_of_square, square_within};
pub use stack::Stack;
pub use unknown::{floor_is_unknown, is_from_the_present_floor};

use crate::book::{Clearance, Fit, MeasuredFrom, Opening, ProductOption, Room, Slot};
use crate::site::plan::Plan;
use crate::source::{Span, Spanned};
use crate::units::{Length, LengthRange, System};
use crate::vocabulary::{Kind, Mount, Readings, Trait};

/// The usual play in all: 1/8 in, or 3 mm (common practice).
const fn usual_play(units: System) -> Length {
    units.usual(Length::from_sixty_fourths(8), Length::from_millimetres(3))
}

/// A thing against its opening, in every direction.
#[derive(Clone, Debug, Default)]
pub struct Fitting {
    /// Width.
    pub width: DimensionCheck,
    /// Height, from the finished floor for what stands on it.
    pub height: DimensionCheck,
    /// Depth.
    pub depth: DimensionCheck,
    /// The stack by which its depth is judged, where it is meant to be flush.
    pub flush: Option<DepthStack>,
    /// What ends its height from above, where its own readings do not.
    pub under: Option<Above>,
    /// What is still to be laid on the floor, where it was taken off the height.
    pub to_lay: Length,
    /// The directions in which it is not known whether it fits.
    pub unknown: Vec<Direction>,
    /// Those of them that the sheet asks for, and nobody measured.
    pub unmeasured: Vec<Direction>,
    /// Between the thing and the edges of its opening.
    pub gaps: Gaps,
    /// What goes into the hole, as far as it is known.
    pub body: Rectangle,
    /// What is seen in front of it: it may lie over the hole's edge, and is set against what is around.
    pub front: Rectangle,
    /// How far case, door and handle stand out past the counter, or past the opening's front edge;
    /// negative when they stay behind it.
    pub projection: Option<Length>,
}

/// Width and height of a thing's body, or of its front.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Rectangle {
    /// Width.
    pub width: Option<Length>,
    /// Height.
    pub height: Option<Length>,
}

/// What is known not to meet, in each direction: the verdict, the drawings and the form tell these
/// and no others.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Misfits {
    /// Width.
    pub width: Option<Misfit>,
    /// Height.
    pub height: Option<Misfit>,
    /// Depth.
    pub depth: Option<Misfit>,
}

impl Fitting {
    /// What does not meet in any direction.
    pub fn misfits(&self) -> Misfits {
        Misfits { width: self.width.misfit(), height: self.height.misfit(), depth: self.depth.misfit() }
    }

    /// By how much a front that may lie over the hole's edges is larger than the hole, both sides
    /// together: no misfit.
    pub fn laps(&self) -> Rectangle {
        let over = |gauge: &DimensionCheck, front: Option<Length>| {
            let over = front.filter(|_| gauge.sheet_alone)? - gauge.there?;
            Some(over).filter(|over| *over > Length::ZERO)
        };
        Rectangle { width: over(&self.width, self.front.width), height: over(&self.height, self.front.height) }
    }
}

/// Sets a thing against its opening, in the plan of its room.
pub fn fitting(plan: Option<&Plan<'_>>, room: &Room, opening: &Opening, option: &ProductOption) -> Fitting {
    let none = Fit::default();
    let fit = option.fit.get().map(AsRef::as_ref).unwrap_or(&none);
    let above = above(plan, room, opening);
    let width = width_gauge(room, opening, option, fit);
    let height = height_gauge(room, opening, option, above.as_ref());
    let depth = depth_gauge(plan, room, opening, option);
    let meant = flush::meant_flush(room, opening, option, &depth);
    let (depth, flush) = meant.map_or((depth, None), |(depth, stack)| (depth, Some(stack)));
    let under = above.filter(|above| above.left(room, opening).is_some_and(|left| height.there == Some(left)));
    let by_reading = reading_above_the_floor(room, opening).is_some_and(|reading| Some(reading.value) == height.there);
    let stack = Stack::of(room, opening).filter(|stack| stack.left_for(room, opening).is_some());
    let to_lay = match &stack {
        Some(stack) => stack.build_up(room),
        None if by_reading => build_up(room, opening),
        None => Length::ZERO,
    };
    let gauges = [(Direction::Width, &width), (Direction::Height, &height), (Direction::Depth, &depth)];
    Fitting {
        under,
        to_lay,
        unknown: unknown::unknown(plan, (room, opening), option, gauges),
        unmeasured: unknown::unmeasured(plan, (room, opening), option, gauges),
        gaps: gaps(&width, &height, fit),
        body: Rectangle { width: width.goes_in(), height: height.goes_in() },
        front: front(&width, &height, fit),
        projection: out::projection(room, opening, option, fit),
        width,
        height,
        depth,
        flush,
    }
}

/// The front as the sheet gives it, else the thing's own size.
fn front(width: &DimensionCheck, height: &DimensionCheck, fit: &Fit) -> Rectangle {
    let face = fit.face.get();
    let width_of_face = face.and_then(|face| face.width.get().copied());
    let height_of_face = face.and_then(|face| face.height.get().copied());
    Rectangle { width: width_of_face.or(width.body), height: height_of_face.or(height.body) }
}

/// The play in all that a thing wants beside itself, and whether its sheet says so; none where the
/// sheet asks for an opening and so has counted the play in.
pub fn least_play(
    opening: &Opening,
    width: &DimensionCheck,
    fit: Option<&Fit>,
    units: System,
) -> Option<(Length, bool)> {
    let of_sheet = fit.and_then(|fit| fit.play.get().copied());
    // What hangs on its wall comes in from the front, and jams nowhere.
    let hangs = opening.takes_one(Trait::Hangs);
    let counted = of_sheet.is_none() && (hangs || width.asked.is_some_and(|asked| asked.least.is_some()));
    (!counted).then(|| (of_sheet.unwrap_or(usual_play(units)), of_sheet.is_some()))
}

fn width_gauge(room: &Room, opening: &Opening, option: &ProductOption, fit: &Fit) -> DimensionCheck {
    // Where nobody measured it, it is as wide as its row leaves it.
    let unmeasured = opening.width.is_absent() && opening.plumb.is_absent();
    let written = room.part_of(&opening.name).and_then(|row| row.part.width.spanned().cloned());
    let left = if written.is_none() && unmeasured { by_plan::left_in_its_run(room, opening) } else { None };
    let bound = left.is_some();
    let planned = written.filter(|_| unmeasured).or(left);
    let gauge = DimensionCheck {
        body: option.size.along().get().copied(),
        body_at: option.size.along().span(),
        air: everywhere(&fit.air.left) + everywhere(&fit.air.right),
        there: opening.governing_width().or(planned.as_ref().map(|planned| planned.value)),
        largest: opening.widest(),
        largest_at: greatest_at(&opening.width),
        there_at: opening
            .width
            .get()
            .and_then(|readings| readings.least())
            .map(|least| least.span)
            .or(planned.map(|planned| planned.span)),
        sheet_alone: lies_over_the_edge(opening, option, fit, &fit.opening.width),
        bound,
        is_of_the_body: fit.is_behind_its_face(&option.size),
        ..asked::width(opening, fit)
    };
    only_if_too_small(gauge)
}

fn height_gauge(room: &Room, opening: &Opening, option: &ProductOption, above: Option<&Above>) -> DimensionCheck {
    let none = Fit::default();
    let fit = option.fit.get().map(AsRef::as_ref).unwrap_or(&none);
    let size = &option.size;
    let hinge = size.height_to_hinge.get().copied();
    let least = size.height.get().and_then(|height| height.least.or(height.most));
    let unread = opening.height.get().is_none();
    let stands_on = pedestal_under(option).and_then(|pedestal| pedestal.height).unwrap_or_default();
    let gauge = |there: Option<Spanned<Length>>, bound: bool| DimensionCheck {
        body: least.into_iter().chain(hinge).max().map(|body| body + stands_on),
        body_at: size.height.span().or_else(|| size.height_to_hinge.span()),
        air: everywhere(&fit.air.top),
        there: there.as_ref().map(|there| there.value),
        there_at: there.map(|there| there.span),
        largest: greatest_height(room, opening, above),
        largest_at: greatest_at(&opening.height),
        sheet_alone: lies_over_the_edge(opening, option, fit, &fit.opening.height),
        bound,
        is_of_the_body: fit.is_behind_its_face(&option.size),
        ..asked::height(opening, fit)
    };
    // What its sheet asks of opening or cabinet is held to the cabinet by `fit/cabinet`.
    let of_cabinet = fit.cabinet.get().is_some_and(|asked| asked.inside_height.get().is_some());
    let is_asked = of_cabinet || fit.opening.height.get().is_some();
    let housed = housing::inside_height(room, opening).filter(|_| opening.height.is_absent() && !is_asked);
    let housed = housed.map(|housed| gauge(Some(Spanned::new(housed.length, housed.span)), true));
    let by_what_is_around = by_plan::beside_its_counter(room, opening, option).or(housed);
    let governing = governing_height(room, opening, above);
    // A slab of known thickness ends its bay exactly; what else is above, it only does not reach.
    let ends_at_a_slab = above.is_some_and(|above| matches!(above.is, AboveIs::Counter(_)));
    let own = gauge(governing, unread && !ends_at_a_slab);
    let own_misses = own.misfit().is_some();
    if let Some(misses) = by_what_is_around.filter(|around| !own_misses && around.misfit().is_some()) {
        return misses;
    }
    // What follows from what is around an opening is told where a thing does not go in, and nowhere else.
    if unread && !own_misses && above.is_some_and(|above| above.is_around(opening)) {
        return DimensionCheck { there: None, there_at: None, largest: None, ..own };
    }
    own
}

/// Where the greatest of several readings is written.
fn greatest_at(readings: &Slot<Readings>) -> Option<Span> {
    Some(readings.get()?.greatest()?.span)
}

fn depth_gauge(plan: Option<&Plan<'_>>, room: &Room, opening: &Opening, option: &ProductOption) -> DimensionCheck {
    let none = Fit::default();
    let fit = option.fit.get().map(AsRef::as_ref).unwrap_or(&none);
    let own = opening.governing_depth();
    // What its sheet asks of opening or cabinet is held to the cabinet by `fit/cabinet`.
    let of_cabinet = fit.cabinet.get().is_some_and(|asked| asked.inside_depth.get().is_some());
    let is_asked = of_cabinet || fit.opening.depth.get().is_some() || opening.takes_one(Trait::CutIntoCounter);
    let housed = housing::inside_depth(room, opening).filter(|_| own.is_none() && !is_asked);
    let closet = if own.is_none() && housed.is_none() { by_plan::closet_depth(plan, opening) } else { None };
    let is_built_in = opening.cabinet.get().is_some() || fit.cabinet.get().is_some() || fit.face.get().is_some();
    // What has no front of its own goes into its niche whole.
    let is_housed = opening.cabinet.get().is_some() || housing::cabinet_part(room, opening).is_some();
    let is_all_body = opening.takes_a(Kind::PanelRefrigerator) && (is_housed || !opening.sill.is_absent());
    let set_in = is_built_in || housed.is_some() || closet.is_some() || is_all_body;
    let around = housed.map(|housed| Spanned::new(housed.length, housed.span));
    let of_row = fit.opening.depth.get().and_then(|_| by_plan::depth_of_its_row(room, opening));
    let of_row = of_row.filter(|row| closet.as_ref().is_none_or(|closet| row.value <= closet.value));
    let bound = (closet.is_some() && of_row.is_none()) || housed.is_some_and(|housed| housed.by == FigureBasis::AtMost);
    let around = around.or(of_row).or(closet);
    let laps = is_set_in_its_counter(opening, option);
    let is_let_in =
        set_in && !laps || opening.takes_a(Kind::PanelRefrigerator) || opening.takes_a(Kind::PanelDishwasher);
    let gauge = DimensionCheck {
        is_of_the_body: is_let_in && !opening.takes_one(Trait::Hangs) && !lets_in_from_above(opening),
        body: option.size.depth.get().copied(),
        body_at: option.size.depth.span(),
        air: everywhere(&fit.air.back),
        there: own.or(around.as_ref().map(|around| around.value)),
        there_at: if own.is_some() { opening.depth_at() } else { around.map(|around| around.span) },
        bound,
        // What is open in front may stand out of it; how far is told as its projection.
        sheet_alone: !is_all_body && (fit.opening.depth.get().is_some() || !set_in) || lets_in_from_above(opening),
        ..asked::depth(opening, fit)
    };
    only_if_too_small(gauge)
}

/// What is known to be no more than so much can be too small; that a thing fits, it does not tell.
fn only_if_too_small(gauge: DimensionCheck) -> DimensionCheck {
    if gauge.bound && gauge.too_small_by().is_none() {
        return DimensionCheck { there: None, there_at: None, largest: None, ..gauge };
    }
    gauge
}

/// A clearance that holds over the whole side; one that holds only somewhere ("above counter") is
/// judged by `fit/air`, not added to the width.
fn everywhere(slot: &Slot<Clearance>) -> Length {
    slot.get().filter(|clearance| clearance.holds.is_empty()).map_or(Length::ZERO, |clearance| clearance.length)
}

/// Whether the thing's own width and height are those of a front that covers the hole's edge, so
/// that the sheet alone says how large the hole must be.
fn lies_over_the_edge(opening: &Opening, option: &ProductOption, fit: &Fit, asked: &Slot<LengthRange>) -> bool {
    let usually = opening.takes_one(Trait::LapsOver) || is_set_in_its_counter(opening, option);
    fit.face.get().is_some() || lets_in_from_above(opening) || (usually && asked.get().is_some())
}

/// A basin whose rim lies on its counter, or is held under it: its body is larger than the hole.
fn is_set_in_its_counter(opening: &Opening, option: &ProductOption) -> bool {
    opening.takes_a(Kind::Basin) && matches!(option.mount(), Some(Mount::Under | Mount::DropIn))
}

fn lets_in_from_above(opening: &Opening) -> bool {
    opening.takes_one(Trait::DropsIn)
}

/// The governing height, from the finished floor: what is still to be laid is taken off for an
/// opening that stands on the floor and was not measured from the finished one; what hangs above
/// it counts where it hangs lower.
pub fn height(plan: Option<&Plan<'_>>, room: &Room, opening: &Opening) -> Option<Length> {
    let is_read = opening.height.get().is_some();
    let above = above(plan, room, opening).filter(|above| is_read || !above.is_around(opening));
    governing_height(room, opening, above.as_ref()).map(|there| there.value)
}

fn governing_height(room: &Room, opening: &Opening, above: Option<&Above>) -> Option<Spanned<Length>> {
    if let Some(left) = Stack::of(room, opening).and_then(|stack| stack.left_for(room, opening)) {
        return Some(left);
    }
    if opening.height.is_faulty() {
        return None;
    }
    let reading = reading_above_the_floor(room, opening);
    let above = above.and_then(|above| Some(Spanned::new(above.left(room, opening)?, above.at)));
    reading.into_iter().chain(above).min_by_key(|height| height.value)
}

fn reading_above_the_floor(room: &Room, opening: &Opening) -> Option<Spanned<Length>> {
    let least = opening.height.get().and_then(|readings| readings.least())?;
    Some(Spanned::new(least.value - build_up(room, opening), least.span))
}

/// The height where it is greatest, as [`governing_height`] reckons it; none where a stack decides it.
fn greatest_height(room: &Room, opening: &Opening, above: Option<&Above>) -> Option<Length> {
    if Stack::of(room, opening).and_then(|stack| stack.left_for(room, opening)).is_some() {
        return None;
    }
    let most = opening.height.get().and_then(|readings| readings.greatest())?.value - build_up(room, opening);
    let above = above.and_then(|above| above.left(room, opening));
    above.into_iter().chain([most]).min()
}

/// What is still to be laid under an opening.
pub fn build_up(room: &Room, opening: &Opening) -> Length {
    // From which floor can't be read is told by itself, and nothing else follows from it.
    let from = &opening.measured_from;
    let finished = from.get() == Some(&MeasuredFrom::FinishedFloor) || from.is_faulty();
    let to_lay = room.floor_build_up.get().copied().unwrap_or(Length::ZERO);
    if loses_to_the_floor(room, opening) && !finished { to_lay } else { Length::ZERO }
}

/// Whether a floor that is laid takes from the height of an opening: not of what hangs, nor of what is cut into a counter
/// or built into a cabinet, which move with that or stay where they are.
pub fn loses_to_the_floor(room: &Room, opening: &Opening) -> bool {
    let hangs = opening.takes_one(Trait::Hangs) || opening.takes_one(Trait::CutIntoCounter);
    let housed = || opening.cabinet.get().is_some() || housing::cabinet_part(room, opening).is_some();
    let built_in = opening.takes_a(Kind::PanelRefrigerator) && housed();
    opening.stands_on_the_floor() && !hangs && !built_in
}

fn gaps(width: &DimensionCheck, height: &DimensionCheck, fit: &Fit) -> Gaps {
    let spare = width.play().map(|play| play - width.air);
    let left = spare.map(Length::half);
    Gaps {
        left: left.map(|left| left + everywhere(&fit.air.left)),
        right: spare.zip(left).map(|(spare, left)| spare - left + everywhere(&fit.air.right)),
        top: height.play(),
    }
}
