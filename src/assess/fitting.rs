//! A thing against its opening, in exact lengths: what is asked, what is there, what is left over.
//!
//! Rules judge these figures and pages show them: there is no second arithmetic. Nothing is rounded
//! here (fit is decided before any rounding for print).

use crate::book::{Choice, Clearance, Fit, Opening, Plumb, Room, Slot};
use crate::source::Span;
use crate::units::{Length, LengthRange};

/// One direction of a thing against its opening.
#[derive(Clone, Debug, Default)]
pub struct Gauge {
    /// What the maker's sheet asks of the opening.
    pub asked: Option<LengthRange>,
    /// Where the sheet's figure is written.
    pub asked_at: Option<Span>,
    /// The thing's own size: the least, where legs can be set.
    pub body: Option<Length>,
    /// Where its size is written.
    pub body_at: Option<Span>,
    /// Clear space that the sheet asks for on both sides together.
    pub air: Length,
    /// The governing size of the opening.
    pub there: Option<Length>,
    /// Where that is written.
    pub there_at: Option<Span>,
}

impl Gauge {
    /// The least that the opening must be: by the sheet, or by the thing and the air around it,
    /// whichever is more.
    pub fn least(&self) -> Option<Length> {
        let body = self.body.map(|body| body + self.air);
        let asked = self.asked.and_then(|asked| asked.least);
        asked.into_iter().chain(body).max()
    }

    /// What is left when the least is taken from what is there; negative when it does not fit.
    pub fn left_over(&self) -> Option<Length> {
        Some(self.there? - self.least()?)
    }

    /// What is left when the thing itself is taken from what is there: the play in all.
    pub fn play(&self) -> Option<Length> {
        Some(self.there? - self.body?)
    }

    /// By how much the opening is larger than the most that the sheet allows.
    pub fn too_large_by(&self) -> Option<Length> {
        let most = self.asked.and_then(|asked| asked.most)?;
        Some(self.there? - most).filter(|excess| *excess > Length::ZERO)
    }

    /// By how much the opening is too small.
    pub fn too_small_by(&self) -> Option<Length> {
        self.left_over().filter(|left| left.is_negative()).map(Length::abs)
    }
}

/// A thing against its opening, in every direction.
#[derive(Clone, Debug, Default)]
pub struct Fitting {
    /// Width.
    pub width: Gauge,
    /// Height, from the finished floor for what stands on it.
    pub height: Gauge,
    /// Depth.
    pub depth: Gauge,
    /// How far case, door and handle stand out past the counter, or past the opening's front edge;
    /// negative when they stay behind it.
    pub projection: Option<Length>,
}

/// Sets a thing against its opening.
pub fn fitting(room: &Room, opening: &Opening, option: &Choice) -> Fitting {
    let none = Fit::default();
    let fit = option.fit.get().unwrap_or(&none);
    let size = &option.size;
    let sum = |one: &Slot<Clearance>, other: &Slot<Clearance>| everywhere(one) + everywhere(other);
    let width = Gauge {
        body: size.width.get().copied(),
        body_at: size.width.span(),
        air: sum(&fit.air.left, &fit.air.right),
        there: width(opening),
        there_at: opening.width.get().and_then(|readings| readings.least()).map(|least| least.span),
        ..asked(&fit.opening.width)
    };
    let hinge = size.height_to_hinge.get().copied();
    let least_height = size.height.get().and_then(|height| height.least.or(height.most));
    let height = Gauge {
        body: least_height.into_iter().chain(hinge).max(),
        body_at: size.height.span().or_else(|| size.height_to_hinge.span()),
        air: everywhere(&fit.air.top),
        there: height(room, opening),
        there_at: opening.height.get().and_then(|readings| readings.least()).map(|least| least.span),
        ..asked(&fit.opening.height)
    };
    let depth = Gauge {
        body: size.depth.get().copied(),
        body_at: size.depth.span(),
        air: everywhere(&fit.air.back),
        there: opening.depth.get().and_then(|readings| readings.least()).map(|least| least.value),
        there_at: opening.depth.span(),
        ..asked(&fit.opening.depth)
    };
    let projection = projection(opening, option, depth.air);
    Fitting { width, height, depth, projection }
}

fn asked(slot: &Slot<LengthRange>) -> Gauge {
    Gauge { asked: slot.get().copied(), asked_at: slot.span(), ..Gauge::default() }
}

/// A clearance that holds over the whole side; one that holds only somewhere ("above counter") is
/// judged by `fit/air`, not added to the width.
fn everywhere(slot: &Slot<Clearance>) -> Length {
    slot.get().filter(|clearance| clearance.holds.is_empty()).map_or(Length::ZERO, |clearance| clearance.length)
}

/// The governing width: the least reading, or what is left between the two sides seen from one
/// plumb line, `min(right) − max(left)`, whichever is less.
pub fn width(opening: &Opening) -> Option<Length> {
    let least = opening.width.get().and_then(|readings| readings.least()).map(|least| least.value);
    let plumb = opening.plumb.get().and_then(between);
    least.into_iter().chain(plumb).min()
}

/// The width between two sides seen from one plumb line.
pub fn between(plumb: &Plumb) -> Option<Length> {
    Some(*plumb.right.iter().min()? - *plumb.left.iter().max()?)
}

/// The governing height, from the finished floor: what is still to be laid is taken off for an
/// opening that stands on the floor and was not measured from the finished one.
pub fn height(room: &Room, opening: &Opening) -> Option<Length> {
    let least = opening.height.get().and_then(|readings| readings.least())?.value;
    Some(least - build_up(room, opening))
}

/// What is still to be laid under an opening.
pub fn build_up(room: &Room, opening: &Opening) -> Length {
    let on_the_floor = opening.sill.is_absent();
    let finished = opening.from_finished_floor.get().copied().unwrap_or(false);
    let to_lay = room.floor_build_up.get().copied().unwrap_or(Length::ZERO);
    if on_the_floor && !finished { to_lay } else { Length::ZERO }
}

fn projection(opening: &Opening, option: &Choice, air_behind: Length) -> Option<Length> {
    let size = &option.size;
    let out = [&size.depth_with_handle, &size.depth_with_door, &size.depth];
    let out = out.into_iter().find_map(|depth| depth.get().copied())?;
    let depth = opening.depth.get().and_then(|readings| readings.least()).map(|least| least.value);
    let edge = opening.counter_depth.get().copied().or(depth)?;
    Some(out + air_behind - edge)
}
