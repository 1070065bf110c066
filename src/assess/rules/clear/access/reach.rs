//! What can be reached from a chair.

use super::super::{Bound, Figure};
use super::stop;
use crate::assess::codes::metric::Printed;
use crate::assess::rules::Findings;
use crate::assess::{Context, about, say};
use crate::book::{Control, Reach, Room, WallBox};
use crate::finding::{Remark, Severity, phrase};
use crate::site::distances::Distance;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

const LOWEST: Length = Length::from_inches(15);
const REMEDY: &str = "move it to where nothing stands in front of it, or lower it";

/// Why nothing can be reached over what stands in front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Barred {
    /// It is deeper than so much.
    TooDeep(Length),
    /// It is higher than so much.
    TooHigh(Length),
}

/// Holds every control against the profile.
pub fn check(context: &Context<'_>, room: &Room, findings: &mut Findings<'_>) {
    for control in &room.access.controls {
        findings.extend(reached(context, room, control));
        findings.extend(twists(context, room, control));
    }
    findings.extend(handled(context, room));
    findings.extend(in_walls(context, room));
}

/// Switches and outlets that are set out in the plan, and not told again under `controls`.
fn in_walls(context: &Context<'_>, room: &Room) -> Vec<Remark> {
    let is_told = |set: &&WallBox| room.access.controls.iter().any(|control| control.name.value == set.name.value);
    let bounds = [Bound::Most(Length::from_inches(48)), Bound::Least(LOWEST)];
    let out_of_reach = |set: &WallBox, is_switch: bool| {
        let height = set.height.spanned()?;
        let is = || (phrase!("`{}`", set.name.value), "above the floor");
        let found = bounds.iter().find_map(|bound| {
            stop(context, room, is(), Distance::from(height), figure(*bound, "2010 ADA Standards 308.2"))
        });
        // What is plugged in once and stays may be lower.
        let severity = if is_switch { Severity::Stop } else { Severity::Query };
        Some(Remark { severity, ..found? })
    };
    let switches = room.switches.iter().filter(|set| !is_told(set)).filter_map(|set| out_of_reach(set, true));
    let outlets = room.outlets.iter().filter(|set| !is_told(set)).filter_map(|set| out_of_reach(set, false));
    switches.chain(outlets).collect()
}

fn figure(bound: Bound, source: &'static str) -> Figure {
    Figure { bound, whose: "that can be reached there", source, printed: Printed::ToFiveMillimetres, named: None }
}

/// What is worked by hand, and may have knobs.
const HANDLED: [Kind; 4] = [Kind::Tap, Kind::TubFiller, Kind::ShowerSet, Kind::DoorHandle];

/// A tap or a handle that is gripped and turned, by what it is called.
fn handled(context: &Context<'_>, room: &Room) -> Vec<Remark> {
    let of_room = context.site.options().filter(|(of, _, _)| of.folder == room.folder);
    let knobs = of_room.filter(|(_, selection, option)| {
        let words = [option.name.text(), option.model.text(), option.description.text(), selection.name.value.as_str()];
        selection.is_any(&HANDLED) && Mention::Knob.is_in_any(words) && !Mention::Lever.is_in_any(words)
    });
    knobs
        .map(|(room, selection, option)| {
            let message =
                phrase!("`{}` must be gripped tightly, pinched or twisted, by what it is called", selection.name.value);
            let finding = about(room, selection, option, Severity::Query, selection.name.span, message);
            finding
                .source("2010 ADA Standards 309.4")
                .remedy("choose one with a lever, or one that a closed fist can work")
        })
        .collect()
}

/// The highest that can be reached forward over something so deep.
pub fn forward(depth: Option<Length>) -> Result<Length, Barred> {
    let inches = Length::from_inches;
    match depth {
        Some(depth) if depth > inches(25) => Err(Barred::TooDeep(inches(25))),
        Some(depth) if depth > inches(20) => Ok(inches(44)),
        _ => Ok(inches(48)),
    }
}

/// The highest that can be reached to the side over something so deep and so high.
pub fn side(depth: Option<Length>, height: Option<Length>) -> Result<Length, Barred> {
    let inches = Length::from_inches;
    if height.is_some_and(|height| height > inches(34)) {
        return Err(Barred::TooHigh(inches(34)));
    }
    match depth {
        Some(depth) if depth > inches(24) => Err(Barred::TooDeep(inches(24))),
        Some(depth) if depth > inches(10) => Ok(inches(46)),
        _ => Ok(inches(48)),
    }
}

fn reached(context: &Context<'_>, room: &Room, control: &Control) -> Option<Remark> {
    let (depth, height) = (control.over_depth.get().copied(), control.over_height.get().copied());
    let (highest, source) = if control.reach.get() == Some(&Reach::Side) {
        (side(depth, height), "2010 ADA Standards 308.3")
    } else {
        (forward(depth), "2010 ADA Standards 308.2")
    };
    let is = || (phrase!("`{}`", control.name.value), "above the floor");
    let there = Distance::from(&control.height);
    let figure = |bound| figure(bound, source);
    match highest {
        Ok(highest) => stop(context, room, is(), there, figure(Bound::Most(highest)))
            .or_else(|| stop(context, room, is(), there, figure(Bound::Least(LOWEST)))),
        Err(barred) => Some(told(context, room, control, barred).source(source)),
    }
}

fn told(context: &Context<'_>, room: &Room, control: &Control, barred: Barred) -> Remark {
    let say = |length| say(length, context.book.project.units);
    let why = match barred {
        Barred::TooDeep(most) => phrase!("more than {} deep", say(most)),
        Barred::TooHigh(most) => phrase!("more than {} high", say(most)),
    };
    let message = phrase!("`{}` cannot be reached from a chair over something {why}", control.name.value, why);
    Remark::stop(control.name.span, message).room(&room.folder).remedy(REMEDY)
}

fn twists(context: &Context<'_>, room: &Room, control: &Control) -> Option<Remark> {
    let twists = control.twists.spanned().filter(|twists| twists.value)?;
    let message = phrase!("`{}` must be gripped tightly, pinched or twisted", control.name.value);
    let finding = Remark::query(twists.span, message).room(&room.folder);
    let force = match context.book.project.units.in_order("5 lbf", "22.2 N") {
        (first, Some(second)) => phrase!("{first} ({second})", first, second),
        (first, None) => first.into(),
    };
    let remedy = phrase!("choose one that a closed fist can work, with {force} at most", force);
    Some(finding.source("2010 ADA Standards 309.4").remedy(remedy))
}
