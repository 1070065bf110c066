//! Floor for a chair beside things, and space for feet and knees under them.

use super::super::{Bound, Figure};
use super::{judged, stop};
use crate::assess::Context;
use crate::assess::codes::metric::Printed;
use crate::assess::rules::Findings;
use crate::book::{KneeSpace, Room};
use crate::finding::{Remark, phrase};
use crate::site::distances::{Distance, pipes_covered};
use crate::units::Length;
use crate::vocabulary::Called;
use crate::vocabulary::Hazard;

const WHOSE: &str = "that the access profile asks for";
const KNEES: &str = "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 9, access standard";
/// How deep a space for feet must be, and how much of it counts.
const TOES: (Length, Length) = (Length::from_inches(17), Length::from_inches(25));

/// Holds clear floors and knee spaces against the profile.
pub fn check(context: &Context<'_>, room: &Room, findings: &mut Findings<'_>) {
    findings.extend(clear_floors(context, room));
    for space in &room.access.knee_spaces {
        findings.extend(knee_space(context, room, space));
    }
}

fn asked(least: Length, source: &'static str) -> Figure {
    Figure { bound: Bound::Least(least), whose: WHOSE, source, printed: Printed::ToFiveMillimetres, named: None }
}

/// 30" by 48", either way around; the space for feet under the same thing counts toward its depth.
fn clear_floors(context: &Context<'_>, room: &Room) -> Vec<Remark> {
    let figure = |inches| asked(Length::from_inches(inches), "2010 ADA Standards 305.3");
    let floors = room.access.clear_floor.iter();
    let judge = |floor: &Called<(Length, Length)>| {
        let Called { name, value: sides } = floor;
        let under = room.access.knee_spaces.iter().find(|space| space.name.value == name.value);
        let feet = under.and_then(|space| space.toe_depth.get()).map_or(Length::ZERO, |toes| counted(*toes));
        let (width, depth) = (sides.value.0, sides.value.1 + feet);
        let side = |value| Distance::written(value, sides.span);
        let is = |tail| (phrase!("the clear floor at `{}`", name.value), tail);
        stop(context, room, is("in its lesser direction"), side(width.min(depth)), figure(30))
            .or_else(|| stop(context, room, is("in its greater direction"), side(width.max(depth)), figure(48)))
    };
    floors.filter_map(judge).collect()
}

/// How much of a space for feet counts.
pub fn counted(toes: Length) -> Length {
    toes.min(TOES.1)
}

/// How deep a space for knees must be at a height between 9" and 27": 11" less 1" for each 6" of height.
pub fn knee_depth(height: Length) -> Option<Length> {
    let (low, high) = (Length::from_inches(9), Length::from_inches(27));
    let shrinks = Length::from_nanometres((height - low).nanometres() / 6);
    (height >= low && height <= high).then_some(Length::from_inches(11) - shrinks)
}

fn knee_space(context: &Context<'_>, room: &Room, space: &KneeSpace) -> Vec<Remark> {
    let name = &space.name.value;
    let is = |tail| (phrase!("the knee space at `{name}`", name), tail);
    let advised = |inches| Figure { whose: "advised for access", ..asked(Length::from_inches(inches), KNEES) };
    let mut findings = Vec::new();
    if let Some(width) = space.width.spanned().map(Distance::from) {
        let least = asked(Length::from_inches(30), "2010 ADA Standards 306.2.5, 306.3.5");
        let narrow = stop(context, room, is("wide"), width, least);
        findings.extend(narrow.or_else(|| judged(context, room, is("wide"), width, advised(36))));
    }
    for (slot, tail, inches) in [(&space.height, "high", 27), (&space.depth, "deep", 19)] {
        let there = slot.spanned().map(Distance::from);
        findings.extend(there.and_then(|there| judged(context, room, is(tail), there, advised(inches))));
    }
    if let Some(toes) = space.toe_depth.spanned() {
        let figure = asked(TOES.0, "2010 ADA Standards 306.2");
        findings.extend(stop(
            context,
            room,
            (phrase!("the space for feet at `{name}`", name), "deep"),
            toes.into(),
            figure,
        ));
    }
    findings.extend(bare_pipes(room, space));
    findings.extend(space.knees.iter().find_map(|knees| {
        let figure = asked(knee_depth(knees.at)?, "2010 ADA Standards 306.3.3, 306.3.4");
        let at = crate::assess::say(knees.at, context.book.project.units);
        let is = (phrase!("the space for knees at `{name}`, at a height of {at},", name, at), "deep");
        stop(context, room, is, (&knees.deep).into(), figure)
    }));
    findings
}

/// Pipes that a knee touches.
fn bare_pipes(room: &Room, space: &KneeSpace) -> Option<Remark> {
    let (_, at) = pipes_covered(room, space).filter(|(covered, _)| !covered)?;
    let message = phrase!("the pipes over the knee space at `{}` are bare", space.name.value);
    let finding = Remark::stop(at, message).room(&room.folder).source("2010 ADA Standards 606.5");
    Some(Remark {
        caution: Some(Hazard::Water),
        ..finding.remedy("cover or wrap trap and supplies, or carry them where no knee comes")
    })
}
