//! What nobody says of a bath that is planned for access.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::book::{AccessDistance, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::distances::{bowls, for_access_there, planned_for_access};
use crate::vocabulary::{Kind, Mount};

/// Asks of each bath for all that is not known of it at once, and of each basin in a cabinet for its knee space.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in context.book.rooms.iter().filter(|room| planned_for_access(context.book, room) && !room.partly_unread) {
        findings.extend(of_bath(context, room));
        findings.extend(room.selections.iter().filter(|basin| has_no_knee_space(room, basin)).map(|basin| {
            let name = &basin.name.value;
            let message = phrase!("nobody says what space for knees there is under `{name}`", name);
            let finding = Remark::query(basin.name.span, message).room(&room.folder).selection(&basin.name);
            finding
                .source("2010 ADA Standards 606.2")
                .remedy("say under the room's `access` how wide, high and deep it is; a closed vanity leaves none")
        }));
    }
}

fn has_no_knee_space(room: &Room, basin: &Selection) -> bool {
    let is_in_a_cabinet = |mount: Mount| mount.is_in_a_cabinet() || mount == Mount::OnCounter;
    let is_set = basin.standing().iter().any(|option| option.mount().is_some_and(is_in_a_cabinet));
    let is_told = room.access.knee_spaces.iter().any(|space| bowls(room, space).any(|bowl| bowl.span == basin.span));
    basin.is(Kind::Basin) && is_set && !is_told
}

/// Whether a room has something of those kinds, chosen or in its plan.
fn has(room: &Room, kinds: &[Kind]) -> bool {
    let of = |kind: Option<&Kind>| kind.is_some_and(|kind| kinds.contains(kind));
    room.selections.iter().any(|selection| of(selection.kind.get()))
        || room.openings.iter().any(|opening| of(opening.takes.get()))
        || room.fixtures.iter().any(|fixture| of(fixture.takes.get()))
}

fn of_bath(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let toilet = room.selections.iter().find(|selection| selection.is(Kind::Toilet))?;
    let is_told =
        |names: &[AccessDistance]| names.iter().all(|name| for_access_there(context.site, room, *name).is_some());
    let shower = has(room, &[Kind::ShowerSet, Kind::ShowerTray, Kind::ShowerGlass]);
    let asked = [
        (!is_told(&[AccessDistance::TurningCircle]), "the floor on which a chair turns (`turning circle`)"),
        (
            !is_told(&[AccessDistance::ToiletSpaceFromSideWall, AccessDistance::ToiletSpaceFromRearWall]),
            "the clear floor around the toilet (`toilet space from side wall`, `toilet space from rear wall`)",
        ),
        (
            !is_told(&[AccessDistance::SideGrabBar, AccessDistance::RearGrabBar]) && !has(room, &[Kind::GrabBar]),
            "the bars at the toilet (`side grab bar`, `rear grab bar`)",
        ),
        (
            (has(room, &[Kind::GrabBar]) || is_told(&[AccessDistance::SideGrabBar]))
                && !is_told(&[AccessDistance::GrabBarHeight]),
            "how high the bars are (`grab bar height`)",
        ),
        (shower && room.access.shower_type.is_absent(), "how one comes into the shower (`shower type`)"),
    ];
    let missing: Vec<Phrase> = asked.into_iter().filter(|(asks, _)| *asks).map(|(_, what)| what.into()).collect();
    if missing.is_empty() {
        return None;
    }
    let what = Phrase::series(missing);
    let message = phrase!("the room is planned for access, and nobody says {what}", what);
    let finding = Remark::query(toilet.name.span, message).room(&room.folder).selection(&toilet.name);
    Some(
        finding
            .source("2010 ADA Standards 304, 604, 608")
            .remedy("measure or plan it, and write it under the room's `access`"),
    )
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: 2010 ADA Standards 304.3, 604.3, 604.5 and 608.2 ask for what is asked here.
    #[test]
    fn a_bath_that_is_planned_for_access_says_what_it_offers() {
        let bath = |room: &str| {
            Trial::of("complete/site")
                .room(room)
                .selection("selection: Toilet\nkind: toilet", "rough-in: 12\"")
                .selection("selection: Column\nkind: shower set", "valve: own")
        };
        let ada = |room: &str| bath(room).book("access profile: 2010 ADA");
        ada("")
            .finds("the room is planned for access, and nobody says the floor on which a chair turns (`turning circle`), the clear floor around the toilet (`toilet space from side wall`, `toilet space from rear wall`), the bars at the toilet (`side grab bar`, `rear grab bar`) and how one comes into the shower (`shower type`)")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:1:12"]);
        let all = "access: {turning circle: 60\", toilet space from side wall: 60\", toilet space from rear wall: 56\", side grab bar: 42\", rear grab bar: 36\", grab bar height: 34\", shower type: roll-in}";
        ada(all).stays_silent();
        ada(&all.replace("turning circle: 60\", ", "")).finds(
            "the room is planned for access, and nobody says the floor on which a chair turns (`turning circle`)",
        );
        bath("").stays_silent();
        ada("access profile: none").stays_silent();
        // A plan with all that takes floor tells of the floor itself; one that lacks something may be wrong.
        let plan = "outline: 9' x 8'\nfixtures: {t: {wall: A, centre: 18\", width: 15\", depth: 28\", takes: toilet, selection: Toilet}}";
        let rest = "access: {side grab bar: 42\", rear grab bar: 36\", grab bar height: 34\", shower type: roll-in}";
        ada(&format!("{plan}\n{rest}")).stays_silent();
        ada(&format!("{plan}\n{rest}")).selection("selection: Linen\nkind: wardrobe", "model: L").finds_one();
    }

    /// Source: 2010 ADA Standards 606.2: a forward approach with space for knees under a lavatory.
    #[test]
    fn a_basin_in_a_cabinet_says_what_space_there_is_for_knees() {
        let basin = |room: &str, mount: &str| {
            Trial::of("complete/site").book("access profile: 2010 ADA").room(room).selection(
                "selection: Basin\nkind: basin",
                &format!("mount: {mount}\naccessories: [{{name: mixer tap}}]"),
            )
        };
        basin("", "undermount").finds("nobody says what space for knees there is under `Basin`").weighs("query");
        basin("access: {knee spaces: {basin: {width: 36\", pipes: covered}}}", "undermount").stays_silent();
    }
}
