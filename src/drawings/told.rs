//! Names, titles and descriptions of drawings, for those who hear them.

use super::figures::{Sizes, spoken};
use super::lettering::{Label, Line, Run, Tone};
use super::scale::Paper;
use crate::drawings::room::RoomPlan;
use crate::drawings::sizes::{
    Between, Deep, Door, Hand, Misfit, Misfits, OpeningFront, OpeningPlan, OpeningSide, OptionPlan, ReadAt, Units,
};
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
    let mut runs = sizes.first(height);
    runs.push(Run::Plain(" AFF (".into()));
    runs.extend(sizes.second(height));
    Line::of(runs, sizes.small).then(")").toned(Tone::Soft)
}

/// What the front view is called.
pub fn front_title(what: &OpeningFront) -> String {
    match &what.thing {
        Some(thing) => format!("Front view of the opening with the {} in it", thing.name),
        None => format!("Front view of the opening for the {}", what.name),
    }
}

/// The front view in sentences.
pub fn front(what: &OpeningFront) -> String {
    let (opening, units) = (&what.opening, what.units);
    let verb = if opening.measured { "is" } else { "is planned to be" };
    let widths: Vec<String> = opening
        .widths
        .iter()
        .map(|reading| format!("{}{}", spoken(units, reading.width), held(reading.held)))
        .collect();
    let from = match opening.sill {
        Some(sill) => format!("from a sill {} above the finished floor", spoken(units, sill)),
        None => "from the finished floor".to_owned(),
    };
    let (widths, height) = (widths.join(", "), spoken(units, opening.height));
    let mut text = format!("The opening {verb} {widths} wide and {height} high {from}.");
    if let Some(thing) = &what.thing {
        let (name, width) = (&thing.name, spoken(units, thing.width));
        text.push_str(&format!(" The {name} is {width} wide and {} high", between(units, thing.height)));
        text.push_str(&door(units, thing.door));
        text.push('.');
        text.push_str(&laps(units, thing.laps.width, "width"));
        text.push_str(&laps(units, thing.laps.height, "height"));
        text.push_str(&gap(units, "at the left", thing.gap_left));
        text.push_str(&gap(units, "at the right", what.gap_right().unwrap_or(Length::ZERO)));
        text.push_str(&gap(units, "above", what.gap_above().unwrap_or(Length::ZERO)));
    }
    text + &misfits(units, what.misfits)
}

/// The side view in sentences.
pub fn side(what: &OpeningSide) -> String {
    let mut text = match what.depth {
        Some(depth) => format!("The opening is {} deep.", spoken(what.units, depth)),
        None => "The depth of the opening is not given.".to_owned(),
    };
    if let Some(thing) = &what.thing {
        text.push_str(&deep(what.units, thing));
        if let Some(edge) = what.counter_edge {
            text.push_str(&past(what.units, thing, edge));
        }
    }
    text + &misfits(what.units, what.misfits)
}

/// The plan in sentences.
pub fn plan(what: &OpeningPlan) -> String {
    let mut text = format!("Seen from above, the opening is {} wide.", spoken(what.units, what.width));
    let Some(thing) = &what.thing else { return text };
    text.push_str(&deep(what.units, thing));
    if let (Some(across), false) = (&what.across, thing.door == Door::None) {
        let left = across.distance - super::plan::open_reach(thing);
        let words = &across.words;
        text.push_str(&match left.is_negative() {
            true => format!(" Open, its door meets the {words}."),
            false => format!(" Open, it leaves {} to the {words}.", spoken(what.units, left)),
        });
    }
    text + &misfits(what.units, what.misfits)
}

/// A room's plan in sentences.
pub fn room_plan(what: &RoomPlan) -> String {
    let walls = what.walls.iter().map(|wall| match wall.is_open {
        true => format!("{} is open", wall.letter),
        false => format!("{} is {} long", wall.letter, spoken(what.units, wall.length)),
    });
    let mut text = format!("The room from above. Wall {}.", walls.collect::<Vec<_>>().join(", "));
    let things: Vec<String> =
        what.things.iter().map(|thing| thing.name.clone()).filter(|name| !name.is_empty()).collect();
    if !things.is_empty() {
        text.push_str(&format!(" In it: {}.", things.join(", ")));
    }
    for aisle in &what.aisles {
        text.push_str(&format!(" {} are clear between fronts.", spoken(what.units, aisle.wide)));
    }
    text
}

/// An option's plan in sentences.
pub fn option(what: &OptionPlan) -> String {
    let mut text = format!("{}, seen from above.", what.name);
    let (left, right) = (what.gap_left, what.gap_right());
    text.push_str(&misfits(what.units, what.misfits));
    text.push_str(&laps(what.units, what.laps.width, "width"));
    if what.misfits.width.is_none() && !left.is_negative() && !right.is_negative() {
        let (left, right) = (spoken(what.units, left), spoken(what.units, right));
        text.push_str(&format!(" {left} are left at the left and {right} at the right."));
    }
    if let Some(edge) = what.counter_edge {
        text.push_str(&past(what.units, &what.thing, edge));
    }
    text
}

fn deep(units: Units, thing: &Deep) -> String {
    let mut text = format!(" The {} is {} deep", thing.name, spoken(units, thing.body));
    if let Some(depth) = thing.with_door {
        text.push_str(&format!(", {} with its door", spoken(units, depth)));
    }
    if let Some(depth) = thing.with_handle {
        text.push_str(&format!(", {} with its handle", spoken(units, depth)));
    }
    text.push_str(&door(units, thing.door));
    text.push('.');
    text
}

fn past(units: Units, thing: &Deep, edge: Length) -> String {
    let past = thing.farthest() - edge;
    let words = if past.is_negative() { "behind" } else { "past" };
    format!(" It ends {} {words} the counter's edge.", spoken(units, past.abs()))
}

fn held(held: ReadAt) -> &'static str {
    match held {
        ReadAt::Top => " at the top",
        ReadAt::Middle => " in the middle",
        ReadAt::Floor => " at the foot",
        ReadAt::Throughout => "",
    }
}

fn between(units: Units, size: Between) -> String {
    match size.least == size.most {
        true => spoken(units, size.least),
        false => format!("{} to {}", spoken(units, size.least), spoken(units, size.most)),
    }
}

fn door(units: Units, door: Door) -> String {
    match door {
        Door::None => String::new(),
        Door::Drops { reach } => format!("; its door drops and reaches {}", spoken(units, reach)),
        Door::Swings { hinge: Hand::Left, .. } => "; its door is hinged at the left".to_owned(),
        Door::Swings { hinge: Hand::Right, .. } => "; its door is hinged at the right".to_owned(),
    }
}

/// What is left somewhere; of what is not, the verdict speaks.
fn gap(units: Units, place: &str, gap: Length) -> String {
    if gap.is_negative() { String::new() } else { format!(" {} are left {place}.", spoken(units, gap)) }
}

fn laps(units: Units, over: Option<Length>, way: &str) -> String {
    let told = |over| format!(" In {way} its front lies over the opening's edges by {} in all.", spoken(units, over));
    over.map_or(String::new(), told)
}

/// What the verdict says does not fit.
fn misfits(units: Units, misfits: Misfits) -> String {
    let ways = [(misfits.width, "wide"), (misfits.height, "high"), (misfits.depth, "deep")];
    let told = ways.into_iter().filter_map(|(misfit, way)| {
        Some(match misfit? {
            Misfit::TooSmall(by) => format!(" It is {} too {way} for the opening.", spoken(units, by)),
            Misfit::TooLarge(by) => {
                format!(" The opening is {} more {way} than the maker's sheet allows.", spoken(units, by))
            }
        })
    });
    told.collect()
}
