//! Floor for a chair beside things, and space for feet and knees under them.

use super::super::{Bound, Figure};
use super::{judged, stop};
use crate::assess::Context;
use crate::assess::codes::metric::Printed;
use crate::assess::rules::Findings;
use crate::book::{KneeSpace, Room, Selection};
use crate::finding::{Remark, phrase};
use crate::site::distances::{Distance, bowls, pipes_covered};
use crate::units::Length;
use crate::vocabulary::{Called, Hazard, Kind, Trait};

const WHOSE: &str = "that the access profile asks for";
const KNEES: &str = "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 9, access standard";
/// How deep a space for feet must be, and how much of it counts.
const TOES: (Length, Length) = (Length::from_inches(17), Length::from_inches(25));

/// Up to what height there must be space for knees, and how deep it must be at least at any.
const HIGHEST: Length = Length::from_inches(27);
const LEAST_DEEP: Length = Length::from_inches(8);

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
    // The guideline is one for kitchens: under a basin the standard alone counts.
    let is_a_basin_s = is_under_a_basin(room, space);
    let mut findings = Vec::new();
    if let Some(width) = space.width.spanned().map(Distance::from) {
        let least = asked(Length::from_inches(30), "2010 ADA Standards 306.2.5, 306.3.5");
        let narrow = stop(context, room, is("wide"), width, least);
        let in_a_kitchen = || judged(context, room, is("wide"), width, advised(36)).filter(|_| !is_a_basin_s);
        findings.extend(narrow.or_else(in_a_kitchen));
    }
    let (high, deep) = if is_a_basin_s {
        (asked(HIGHEST, "2010 ADA Standards 306.3.1"), asked(LEAST_DEEP, "2010 ADA Standards 306.3.3"))
    } else {
        (advised(27), advised(19))
    };
    for (slot, tail, figure) in [(&space.height, "high", high), (&space.depth, "deep", deep)] {
        let there = slot.spanned().map(Distance::from);
        findings.extend(there.and_then(|there| judged(context, room, is(tail), there, figure)));
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

/// Whether a knee space is a basin's: by its name, or since its room has basins and nothing of a kitchen.
fn is_under_a_basin(room: &Room, space: &KneeSpace) -> bool {
    let mut over = bowls(room, space).peekable();
    if over.peek().is_some() {
        return over.any(|bowl| bowl.is(Kind::Basin));
    }
    let of_a_kitchen = |one: &Selection| one.is(Kind::Sink) || one.has(Trait::Cooks);
    room.selections.iter().any(|one| one.is(Kind::Basin)) && !room.selections.iter().any(of_a_kitchen)
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

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn access(fields: &str) -> Trial {
        Trial::of("clear/access").book("access profile: 2010 ADA").room(&format!("access: {{{fields}}}"))
    }

    /// Source: check values AD-02, AD-04 (2010 ADA 306.3): 30 wide, 27 high, 8 deep at that height.
    #[test]
    fn a_basin_is_held_to_the_standard_and_not_to_a_kitchen_s_guideline() {
        let bath = |space: &str, of: &str| {
            access(&format!("knee spaces: {{{of}: {{{space}}}}}"))
                .opening("wash place", "{takes: basin}")
                .selection("selection: Wall basin\nkind: basin\nplace: wash place", "mount: wall-hung")
        };
        for of in ["basin", "Wall basin", "wash place", "lavatory"] {
            bath("width: 30\", height: 27\", depth: 11\", toe depth: 17\"", of).stays_silent();
            bath("width: 30\", height: 28\", depth: 8\"", of).stays_silent();
            bath("width: 29\"", of).finds_one().weighs("stop");
            bath("height: 26\"", of)
            .finds(&format!("the knee space at `{of}` is 26\" (660 mm) high, 1\" (25.4 mm) less than the 27\" (686 mm) that the access profile asks for"))
            .weighs("query");
            bath("depth: 7\"", of).finds_one().weighs("query");
        }
        // The guideline of kitchens stays one for them.
        let kitchen = |space: &str| {
            access(&format!("knee spaces: {{sink: {{{space}}}}}"))
                .selection("selection: Sink\nkind: sink", "mount: undermount")
        };
        kitchen("width: 30\"").finds_one().weighs("query");
        kitchen("height: 27\", depth: 11\"").finds_one().weighs("query");
        kitchen("width: 36\", height: 27\", depth: 19\"").stays_silent();
    }
}
