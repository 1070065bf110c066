//! Names, titles and descriptions of drawings, for those who hear them.

use super::figures::{Sizes, spoken, spoken_of_a_room};
use super::lettering::{Label, Line, Tone};
use super::scale::Paper;
use crate::drawings::room::RoomPlan;
use crate::drawings::sizes::{
    Between, Deep, Door, Foot, Hand, Hinged, Misfit, Misfits, OpeningFront, OpeningPlan, OpeningSide, OptionPlan,
    ReadAt, Reading,
};
use crate::language::{Words, say};
use crate::units::System;
use crate::units::length::Length;

/// A name that no other drawing of the page has.
pub fn id(item: &str, view: &str, paper: Paper) -> String {
    let paper = match paper {
        Paper::Desk => "desk",
        Paper::Phone => "phone",
    };
    let plain = |c: char| if c.is_ascii_alphanumeric() { c } else { '-' };
    let item: String = item.chars().map(plain).collect();
    format!("{item}-{view}-{paper}")
}

/// What comes out of the wall, and how high.
pub fn service(sizes: Sizes, what: &str, height: Length) -> Label {
    let words = super::lettering::broken(what, 18).into_iter();
    let mut lines: Vec<Line> = words.map(|line| Line::words(line, sizes.small)).collect();
    lines.push(above_floor(sizes, height));
    Label::of(lines)
}

/// A height above the finished floor: `50″ AFF (1270)`.
pub fn above_floor(sizes: Sizes, height: Length) -> Line {
    let first = ("figure", sizes.first(height));
    let runs = match sizes.second(height) {
        Some(second) => sizes.filled("drawn.above_floor", &[first, ("second", second)]),
        None => sizes.filled("drawn.above_floor_alone", &[first]),
    };
    Line::of(runs, sizes.small).toned(Tone::Soft)
}

/// What the front view is called.
pub fn front_title(what: &OpeningFront) -> String {
    match &what.thing {
        Some(thing) => say!(what.words, "drawn.front.title_with", name = thing.name),
        None => say!(what.words, "drawn.front.title", name = what.name),
    }
}

/// How lengths are said: in which units, and in which language.
type In = (System, Words);

/// Sentences one after the other.
fn in_a_row(sentences: impl IntoIterator<Item = Option<String>>) -> String {
    sentences.into_iter().flatten().collect::<Vec<_>>().join(" ")
}

/// The front view in sentences.
pub fn front(what: &OpeningFront) -> String {
    let (opening, words) = (&what.opening, what.words);
    let said: In = (what.units, words);
    let widths: Vec<String> = opening.widths.iter().map(|reading| held(said, reading)).collect();
    let from = match opening.foot {
        Foot::Above(sill) => say!(words, "told.from_sill", height = spoken(said, sill)),
        Foot::Floor => say!(words, "told.from_floor"),
        Foot::Unknown => say!(words, "told.from_its_foot"),
    };
    let key = if opening.measured { "told.opening.is" } else { "told.opening.planned" };
    let (widths, height) = (widths.join(", "), spoken(said, opening.height));
    let mut told = vec![Some(say!(words, key, width = widths, height = height, from = from))];
    if let Some(thing) = &what.thing {
        let (width, height) = (spoken(said, thing.width), between(said, thing.height));
        told.push(Some(say!(words, "told.thing", name = thing.name, width = width, height = height)));
        told.push(door(said, thing.door));
        told.push(laps(said, thing.laps.width, "told.laps.width"));
        told.push(laps(said, thing.laps.height, "told.laps.height"));
        told.push(gap(said, "told.gap.left", thing.gap_left));
        told.push(gap(said, "told.gap.right", what.gap_right().unwrap_or(Length::ZERO)));
        told.push(gap(said, "told.gap.above", what.gap_above().unwrap_or(Length::ZERO)));
        told.extend(what.gap_below().map(|below| gap(said, "told.gap.below", below)));
    }
    told.extend(misfits(said, what.misfits));
    in_a_row(told)
}

/// The side view in sentences.
pub fn side(what: &OpeningSide) -> String {
    let said: In = (what.units, what.words);
    let mut told = vec![Some(match what.depth {
        Some(depth) => say!(what.words, "told.deep", depth = spoken(said, depth)),
        None => say!(what.words, "told.depth_unknown"),
    })];
    if let Some(thing) = &what.thing {
        told.extend(deep(said, thing));
        told.push(past(said, thing, what.counter_edge));
    }
    told.extend(misfits(said, what.misfits));
    in_a_row(told)
}

/// The plan in sentences.
pub fn plan(what: &OpeningPlan) -> String {
    let said: In = (what.units, what.words);
    let mut told = vec![Some(say!(what.words, "told.from_above", width = spoken(said, what.width)))];
    let Some(thing) = &what.thing else { return in_a_row(told) };
    told.extend(deep(said, thing));
    if let (Some(across), false) = (&what.across, thing.door == Door::None) {
        let left = across.distance - super::plan::open_reach(thing);
        told.push(Some(match left.is_negative() {
            true => say!(what.words, "told.meets", what = across.words),
            false => say!(what.words, "told.leaves", gap = spoken(said, left), what = across.words),
        }));
    }
    told.extend(misfits(said, what.misfits));
    in_a_row(told)
}

/// A room's plan in sentences.
pub fn room_plan(what: &RoomPlan) -> String {
    let words = what.words;
    let said: In = (what.units, words);
    let walls = what.walls.iter().map(|wall| match wall.is_open {
        true => say!(words, "told.wall.open", wall = wall.letter),
        false => say!(words, "told.wall.long", wall = wall.letter, length = spoken_of_a_room(said, wall.length)),
    });
    let mut told = vec![Some(say!(words, "told.room", walls = walls.collect::<Vec<_>>().join(", ")))];
    let lights = what.lights.iter().map(|light| light.name.as_str());
    let names = what.things.iter().map(|thing| thing.name.as_str()).chain(lights);
    let things: Vec<&str> = names.filter(|name| !name.is_empty()).collect();
    told.push((!things.is_empty()).then(|| say!(words, "told.in_it", things = things.join(", "))));
    told.push((!what.seats.is_empty()).then(|| say!(words, "told.seats", n = what.seats.len())));
    told.extend(what.slope.as_ref().map(|slope| {
        let (low, high) = (spoken_of_a_room(said, slope.low.0), spoken_of_a_room(said, slope.high.0));
        Some(say!(words, "told.slope", low = low, wall = slope.wall, high = high))
    }));
    told.extend(what.aisles.iter().map(|aisle| Some(say!(words, "told.aisle", width = spoken(said, aisle.wide)))));
    in_a_row(told)
}

/// An option's plan in sentences.
pub fn option(what: &OptionPlan) -> String {
    let said: In = (what.units, what.words);
    let mut told = vec![Some(say!(what.words, "told.option", name = what.name))];
    let (left, right) = (what.gap_left, what.gap_right());
    told.extend(misfits(said, what.misfits));
    told.push(laps(said, what.laps.width, "told.laps.width"));
    if what.misfits.width.is_none() && !left.is_negative() && !right.is_negative() {
        let (left, right) = (spoken(said, left), spoken(said, right));
        told.push(Some(say!(what.words, "told.both_gaps", left = left, right = right)));
    }
    told.push(past(said, &what.thing, what.counter_edge));
    in_a_row(told)
}

fn deep(said: In, thing: &Deep) -> Vec<Option<String>> {
    let words = said.1;
    let part = |key: &str, depth: Option<Length>| depth.map(|depth| say!(words, key, depth = spoken(said, depth)));
    vec![
        Some(say!(words, "told.thing_deep", name = thing.name, depth = spoken(said, thing.body))),
        part("told.with_door", thing.with_door),
        part("told.with_handle", thing.with_handle),
        door(said, thing.door),
    ]
}

fn past(said: In, thing: &Deep, edge: Option<Length>) -> Option<String> {
    let past = thing.past(edge)?;
    let key = if past.is_negative() { "told.ends_behind" } else { "told.ends_past" };
    Some(say!(said.1, key, by = spoken(said, past.abs())))
}

fn held(said: In, reading: &Reading) -> String {
    let width = spoken(said, reading.width);
    let key = match reading.held {
        ReadAt::Top => "told.held.top",
        ReadAt::Middle => "told.held.middle",
        ReadAt::Floor => "told.held.foot",
        ReadAt::Throughout => return width,
    };
    say!(said.1, key, width = width)
}

fn between(said: In, size: Between) -> String {
    match size.least == size.most {
        true => spoken(said, size.least),
        false => say!(said.1, "units.range", least = spoken(said, size.least), most = spoken(said, size.most)),
    }
}

fn door(said: In, door: Door) -> Option<String> {
    Some(match door {
        Door::None | Door::Swings { hinge: Hinged::Unknown, .. } => return None,
        Door::Drops { reach } => say!(said.1, "told.door.drops", reach = spoken(said, reach)),
        Door::Swings { hinge: Hinged::At(Hand::Left), .. } => say!(said.1, "told.door.left"),
        Door::Swings { hinge: Hinged::At(Hand::Right), .. } => say!(said.1, "told.door.right"),
        Door::Swings { hinge: Hinged::BothSides, .. } => say!(said.1, "told.door.both"),
    })
}

/// What is left somewhere; of what is not, the verdict speaks.
fn gap(said: In, key: &str, gap: Length) -> Option<String> {
    (!gap.is_negative()).then(|| say!(said.1, key, gap = spoken(said, gap)))
}

fn laps(said: In, over: Option<Length>, key: &str) -> Option<String> {
    over.map(|over| say!(said.1, key, by = spoken(said, over)))
}

/// What the verdict says does not fit.
fn misfits(said: In, misfits: Misfits) -> Vec<Option<String>> {
    let ways = [
        (misfits.width, "told.too.wide", "told.too.opening_wide"),
        (misfits.height, "told.too.high", "told.too.opening_high"),
        (misfits.depth, "told.too.deep", "told.too.opening_deep"),
    ];
    let told = ways.into_iter().map(|(misfit, small, large)| {
        Some(match misfit? {
            Misfit::TooSmall(by) => say!(said.1, small, by = spoken(said, by)),
            Misfit::TooLarge(by) => say!(said.1, large, by = spoken(said, by)),
        })
    });
    told.collect()
}
