//! Names, titles and descriptions of drawings, for those who hear them.

use super::figures::{Sizes, inches, millimetres, spoken};
use super::lettering::{Label, Line, Tone};
use super::scale::Paper;
use crate::drawings::room::RoomPlan;
use crate::drawings::sizes::{Between, Deep, Door, Hand, Held, OpeningFront, OpeningPlan, OpeningSide, OptionPlan};
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
    let words = format!(" AFF ({})", millimetres(height));
    Line::of(inches(height), sizes.small).then(words).toned(Tone::Soft)
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
    let opening = &what.opening;
    let verb = if opening.measured { "is" } else { "is planned to be" };
    let widths: Vec<String> =
        opening.widths.iter().map(|reading| format!("{}{}", spoken(reading.width), held(reading.held))).collect();
    let from = match opening.sill {
        Some(sill) => format!("from a sill {} above the finished floor", spoken(sill)),
        None => "from the finished floor".to_owned(),
    };
    let (widths, height) = (widths.join(", "), spoken(opening.height));
    let mut text = format!("The opening {verb} {widths} wide and {height} high {from}.");
    if let Some(thing) = &what.thing {
        let (name, width) = (&thing.name, spoken(thing.width));
        text.push_str(&format!(" The {name} is {width} wide and {} high", between(thing.height)));
        text.push_str(&door(thing.door));
        text.push('.');
        text.push_str(&gap("at the left", thing.gap_left));
        text.push_str(&gap("at the right", what.gap_right().unwrap_or(Length::ZERO)));
        text.push_str(&gap("above", what.gap_above().unwrap_or(Length::ZERO)));
    }
    text
}

/// The side view in sentences.
pub fn side(what: &OpeningSide) -> String {
    let mut text = match what.depth {
        Some(depth) => format!("The opening is {} deep.", spoken(depth)),
        None => "The depth of the opening is not given.".to_owned(),
    };
    if let Some(thing) = &what.thing {
        text.push_str(&deep(thing));
        if let Some(edge) = what.counter_edge {
            text.push_str(&past(thing, edge));
        }
    }
    text
}

/// The plan in sentences.
pub fn plan(what: &OpeningPlan) -> String {
    let mut text = format!("Seen from above, the opening is {} wide.", spoken(what.width));
    let Some(thing) = &what.thing else { return text };
    text.push_str(&deep(thing));
    if let (Some(across), false) = (&what.across, thing.door == Door::None) {
        let left = across.distance - super::plan::open_reach(thing);
        let words = &across.words;
        text.push_str(&match left.is_negative() {
            true => format!(" Open, its door meets the {words}."),
            false => format!(" Open, it leaves {} to the {words}.", spoken(left)),
        });
    }
    text
}

/// A room's plan in sentences.
pub fn room_plan(what: &RoomPlan) -> String {
    let walls = what.walls.iter().map(|wall| match wall.is_open {
        true => format!("{} is open", wall.letter),
        false => format!("{} is {} long", wall.letter, spoken(wall.length)),
    });
    let mut text = format!("The room from above. Wall {}.", walls.collect::<Vec<_>>().join(", "));
    let things: Vec<String> =
        what.things.iter().map(|thing| thing.name.clone()).filter(|name| !name.is_empty()).collect();
    if !things.is_empty() {
        text.push_str(&format!(" In it: {}.", things.join(", ")));
    }
    for aisle in &what.aisles {
        text.push_str(&format!(" {} are clear between fronts.", spoken(aisle.wide)));
    }
    text
}

/// An option's plan in sentences.
pub fn option(what: &OptionPlan) -> String {
    let mut text = format!("{}, seen from above.", what.name);
    let over = what.width - what.opening;
    text.push_str(&match over > Length::ZERO {
        true => format!(" It is {} too wide for the opening.", spoken(over)),
        false => {
            let (left, right) = (spoken(what.gap_left), spoken(what.gap_right()));
            format!(" {left} are left at the left and {right} at the right.")
        }
    });
    if let Some(edge) = what.counter_edge {
        text.push_str(&past(&what.thing, edge));
    }
    text
}

fn deep(thing: &Deep) -> String {
    let mut text = format!(" The {} is {} deep", thing.name, spoken(thing.body));
    if let Some(depth) = thing.with_door {
        text.push_str(&format!(", {} with its door", spoken(depth)));
    }
    if let Some(depth) = thing.with_handle {
        text.push_str(&format!(", {} with its handle", spoken(depth)));
    }
    text.push_str(&door(thing.door));
    text.push('.');
    text
}

fn past(thing: &Deep, edge: Length) -> String {
    let past = thing.farthest() - edge;
    let words = if past.is_negative() { "behind" } else { "past" };
    format!(" It ends {} {words} the counter's edge.", spoken(past.abs()))
}

fn held(held: Held) -> &'static str {
    match held {
        Held::Top => " at the top",
        Held::Middle => " in the middle",
        Held::Floor => " at the foot",
        Held::Throughout => "",
    }
}

fn between(size: Between) -> String {
    match size.least == size.most {
        true => spoken(size.least),
        false => format!("{} to {}", spoken(size.least), spoken(size.most)),
    }
}

fn door(door: Door) -> String {
    match door {
        Door::None => String::new(),
        Door::Drops { reach } => format!("; its door drops and reaches {}", spoken(reach)),
        Door::Swings { hinge: Hand::Left, .. } => "; its door is hinged at the left".to_owned(),
        Door::Swings { hinge: Hand::Right, .. } => "; its door is hinged at the right".to_owned(),
    }
}

fn gap(place: &str, gap: Length) -> String {
    match gap.is_negative() {
        true => format!(" It is {} too large {place}.", spoken(gap.abs())),
        false => format!(" {} are left {place}.", spoken(gap)),
    }
}
