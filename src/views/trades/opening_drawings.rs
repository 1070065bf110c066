//! Draws an opening for its sheet: from the front, from its right, from above.

use crate::book::{Neighbour as Beside, ProductOption, Readings, Selection, Slot};
use crate::drawings::sizes::{
    Across, Behind, Beside as Kind, Between, Door, Face, Foot, Limits, Needs, Neighbour, OpeningFront, OpeningPlan,
    OpeningSide, ReadAt, Reading, Thing,
};
use crate::drawings::{Paper, opening_front, opening_plan, opening_side};
use crate::language::{Words, say};
use crate::site::fitting::{Fitting, Rises, Side, build_up, rises};
use crate::site::heat::Body;
use crate::site::rims::{rim_by_its_place, rim_of};
use crate::site::{self, Around, Overhead};
use crate::units::System;
use crate::units::{Length, LengthRange};
use crate::views::pages::PageBuilder;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::fit::{deep, door, gap_left, laps, misfits};
use crate::views::shared::html::Html;
use crate::views::shared::lines::{flank_name, neighbour_name};
use crate::views::trades::opening::{SheetOpening, name, number};
use crate::vocabulary::{Kind as Of, Mount, Trait};

/// An opening, and how what goes in is set into it: the figures of the verdict.
struct Set<'s, 'a> {
    at: SheetOpening<'a>,
    around: &'s Around<'a>,
    fit: Fitting,
    units: System,
    words: Words,
}

impl PageBuilder<'_> {
    /// The opening's views to scale, as far as its sizes are known; each drawn again for a narrow screen.
    pub fn opening_drawings(&self, around: &Around<'_>, at: SheetOpening<'_>) -> Vec<Drawing> {
        let fit = around.fit.clone().unwrap_or_default();
        let set = Set { at, around, fit, units: self.units(), words: self.words };
        let front = front(&set).map(|front| {
            let narrow = OpeningFront { id: format!("{}-narrow", front.id), ..front.clone() };
            let caption = say!(self.words, "drawn.front.caption");
            drawing(
                self.words,
                "drawn.front.name",
                [opening_front(&front, Paper::Desk), opening_front(&narrow, Paper::Phone)],
                caption,
            )
        });
        let side = side(&set).map(|side| {
            let narrow = OpeningSide { id: format!("{}-narrow", side.id), ..side.clone() };
            let caption = say!(self.words, "drawn.side.caption");
            drawing(
                self.words,
                "drawn.side.name",
                [opening_side(&side, Paper::Desk), opening_side(&narrow, Paper::Phone)],
                caption,
            )
        });
        let plan = plan(&set).map(|plan| {
            let narrow = OpeningPlan { id: format!("{}-narrow", plan.id), ..plan.clone() };
            let opens = plan.thing.as_ref().is_some_and(|thing| thing.door != Door::None);
            let caption = match opens {
                true => say!(self.words, "drawn.plan.caption"),
                false => say!(self.words, "drawn.plan.caption_shut"),
            };
            drawing(
                self.words,
                "drawn.plan.name",
                [opening_plan(&plan, Paper::Desk), opening_plan(&narrow, Paper::Phone)],
                caption,
            )
        });
        [front, side, plan].into_iter().flatten().collect()
    }
}

fn drawing(words: Words, name: &str, [desk, phone]: [String; 2], caption: String) -> Drawing {
    Drawing {
        name: say!(words, name),
        scope: Some(say!(words, "drawn.scope")),
        svg: Html::trusted(desk),
        narrow: Some(Html::trusted(phone)),
        caption: Some(Html::text(&caption)),
    }
}

/// What the front of an opening is drawn from; none without a width and a height.
fn front(set: &Set<'_, '_>) -> Option<OpeningFront> {
    let at = set.at;
    let face = face(set)?;
    // What stands beside rises from the floor: where that is not known, nothing is drawn there.
    let seen = |side| if face.foot == Foot::Unknown { nothing_beside() } else { beside(set, side) };
    Some(OpeningFront {
        id: "front".into(),
        name: name(at).to_lowercase(),
        tag: number(at).trim_end_matches('F').to_string(),
        thing: at.thing.and_then(|of| thing(&set.fit, of, hangs(set))),
        needs: at.thing.map(|(_, option)| needs(option)).unwrap_or_default(),
        left: seen(Side::Left),
        right: seen(Side::Right),
        above: overhead(set),
        services: vec![],
        counter: set.around.counter_height,
        opening: face,
        misfits: misfits(&set.fit),
        units: set.units,
        words: set.words,
    })
}

/// What the side view is drawn from; none without a depth of the opening or of the thing.
fn side(set: &Set<'_, '_>) -> Option<OpeningSide> {
    let at = set.at;
    let edge = set.around.counter_depth;
    let thing = at.thing.and_then(|(selection, option)| deep((option, selection), &set.fit, edge));
    let depth = set.around.depth;
    if thing.is_none() && depth.is_none() {
        return None;
    }
    let height = at.thing.and_then(|(_, option)| option.size.height.get()).and_then(|height| between(*height));
    Some(OpeningSide {
        id: "side".into(),
        name: name(at).to_lowercase(),
        opening: face(set)?,
        depth,
        needs: at.thing.map(|(_, option)| needs(option)).unwrap_or_default(),
        thing,
        hangs: hangs(set),
        height,
        counter_edge: set.around.counter_depth,
        counter: set.around.counter_height,
        services: vec![],
        behind: behind(set),
        misfits: misfits(&set.fit),
        units: set.units,
        words: set.words,
    })
}

/// What the plan is drawn from; none without a width, and without a depth of the opening or of the thing.
fn plan(set: &Set<'_, '_>) -> Option<OpeningPlan> {
    let (at, opening) = (set.at, set.at.opening);
    let width = opening.governing_width()?;
    let edge = set.around.counter_depth;
    let thing = at.thing.and_then(|(selection, option)| deep((option, selection), &set.fit, edge));
    let depth = set.around.depth;
    if thing.is_none() && depth.is_none() {
        return None;
    }
    // The clear floor is measured from the counter's edge, or from the front of what stands there.
    let counter_edge = set.around.counter_depth;
    let face = counter_edge.or(depth);
    let across = opening
        .in_front
        .get()
        .zip(face)
        .map(|(clear, face)| Across { words: say!(set.words, "drawn.opposite"), distance: face + *clear });
    Some(OpeningPlan {
        id: "plan".into(),
        name: name(at).to_lowercase(),
        tag: number(at).trim_end_matches('F').to_string(),
        width,
        depth,
        measured: !opening.is_as_planned(),
        gap_left: gap_left(&set.fit).unwrap_or(Length::ZERO),
        thing,
        thing_width: set.fit.front.width,
        left: beside(set, Side::Left),
        right: beside(set, Side::Right),
        counter_edge,
        across,
        behind: behind(set),
        misfits: misfits(&set.fit),
        units: set.units,
        words: set.words,
    })
}

fn behind(set: &Set<'_, '_>) -> Behind {
    if set.around.in_an_island { Behind::Island } else { Behind::Wall }
}

/// The opening's own sizes; none without a width and a height.
fn face(set: &Set<'_, '_>) -> Option<Face> {
    let (at, opening) = (set.at, set.at.opening);
    let widths = widths(&opening.width);
    let height = set.around.height?;
    if widths.is_empty() || height <= Length::ZERO {
        return None;
    }
    let to_lay = build_up(at.room, opening);
    Some(Face {
        widths,
        height,
        foot: match site::fitting::foot(at.room, opening) {
            site::fitting::Foot::Floor => Foot::Floor,
            site::fitting::Foot::Above(height) => Foot::Above(height),
            site::fitting::Foot::Unknown => Foot::Unknown,
        },
        floor_build_up: Some(to_lay).filter(|to_lay| *to_lay > Length::ZERO),
        measured: !opening.is_as_planned(),
    })
}

fn between(height: LengthRange) -> Option<Between> {
    let least = height.least.or(height.most)?;
    Some(Between { least, most: height.most.unwrap_or(least) })
}

fn widths(slot: &Slot<Readings>) -> Vec<Reading> {
    let Some(Readings(readings)) = slot.get() else { return vec![] };
    let held: &[ReadAt] = match readings.len() {
        1 => &[ReadAt::Throughout],
        2 => &[ReadAt::Floor, ReadAt::Top],
        _ => &[ReadAt::Floor, ReadAt::Middle, ReadAt::Top],
    };
    readings.iter().zip(held).map(|(reading, held)| Reading { held: *held, width: reading.value }).collect()
}

/// The front as it is seen: it may lie over the edges of the hole.
fn thing(fit: &Fitting, (selection, option): (&Selection, &ProductOption), hangs: Option<Length>) -> Option<Thing> {
    let least = fit.front.height?;
    let most = option.size.height.get().and_then(|height| height.most).filter(|_| fit.height.body == Some(least));
    Some(Thing {
        name: selection.name.value.to_lowercase(),
        width: fit.front.width?,
        height: Between { least, most: most.unwrap_or(least).max(least) },
        gap_left: gap_left(fit)?,
        hangs,
        door: door(option),
        handle: option.size.depth_with_handle.get().is_some(),
        laps: laps(fit),
    })
}

/// How far below the top of its opening what hangs from it has its own: a sink or a hob hangs from its counter, a basin on
/// the wall, or any bowl that is in no cabinet, as high as its rim is. None of what stands, and of what does not go in.
fn hangs(set: &Set<'_, '_>) -> Option<Length> {
    let (at, height) = (set.at, set.around.height?);
    let (selection, option) = at.thing.filter(|_| at.opening.takes_one(Trait::CutIntoCounter))?;
    let own = option.size.height.get()?;
    if misfits(&set.fit).height.is_some() || own.least.or(own.most)? > height {
        return None;
    }
    let bottom = match site::fitting::foot(at.room, at.opening) {
        site::fitting::Foot::Above(bottom) => bottom,
        site::fitting::Foot::Floor => Length::ZERO,
        site::fitting::Foot::Unknown => return Some(Length::ZERO),
    };
    let is_free = option.mount() == Some(Mount::InNoCabinet);
    let rim = match (selection.is(Of::Basin), is_free) {
        (true, _) => rim_of(at.room, selection, option),
        (false, true) => rim_by_its_place(at.room, selection, option),
        (false, false) => None,
    };
    let below = rim.map_or(Length::ZERO, |rim| bottom + height - rim.value);
    Some(below.max(Length::ZERO).min(height - own.least.or(own.most)?))
}

fn needs(option: &ProductOption) -> Needs {
    let limits = |slot: &Slot<LengthRange>| {
        slot.get().map_or_else(Limits::default, |range| Limits { least: range.least, most: range.most })
    };
    option.fit.get().map_or_else(Needs::default, |fit| Needs {
        width: limits(&fit.opening.width),
        height: limits(&fit.opening.height),
        depth: limits(&fit.opening.depth),
    })
}

fn overhead(set: &Set<'_, '_>) -> Neighbour {
    match &set.around.above {
        Overhead::Said(said) => neighbour(set.words, said, None),
        Overhead::Hung(words, edge) => Neighbour { kind: Kind::Tall, words: words.clone(), underside: Some(*edge) },
        Overhead::OverHeat(body, edge) => {
            let kind = if matches!(body, Body::Top(_) | Body::Ceiling(_)) { Kind::Wall } else { Kind::Tall };
            let words = crate::views::trades::opening_heat::body(set.words, body);
            Neighbour { kind, words, underside: Some(*edge) }
        }
    }
}

fn beside(set: &Set<'_, '_>, side: Side) -> Neighbour {
    match set.around.beside(side) {
        site::Beside::Said(said) => neighbour(set.words, said, set.around.counter_height),
        site::Beside::Stands(told) => Neighbour {
            kind: match (told.is_built, told.is_tall) {
                (true, _) => Kind::Wall,
                (false, true) => Kind::Tall,
                (false, false) => Kind::Base,
            },
            words: flank_name(set.words, told),
            underside: None,
        },
    }
}

fn nothing_beside() -> Neighbour {
    Neighbour { kind: Kind::Open, words: String::new(), underside: None }
}

fn neighbour(words: Words, slot: &Slot<Beside>, counter: Option<Length>) -> Neighbour {
    slot.get().map_or_else(nothing_beside, |beside| {
        let kind = match rises(beside, counter) {
            Rises::Nothing => return nothing_beside(),
            Rises::ToTheCounter => Kind::Base,
            Rises::AboveTheCounter | Rises::Unsaid => Kind::Tall,
            Rises::Built => Kind::Wall,
        };
        Neighbour { kind, words: neighbour_name(words, beside), underside: beside.height.get().copied() }
    })
}
