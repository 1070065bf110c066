//! What nobody says of a bath or a kitchen that is planned for access.

mod kitchen;

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::book::{AccessDistance, Opening, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::distances::{bowls, for_access_there, planned_for_access};
use crate::site::plan::chosen_for;
use crate::vocabulary::{Kind, Mention, Mount};

/// Asks of each bath for all that is not known of it at once, and of each basin in a cabinet for its knee space.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in context.book.rooms.iter().filter(|room| planned_for_access(context.book, room) && !room.partly_unread) {
        findings.extend(of_bath(context, room).or_else(|| kitchen::ask(context, room)));
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
    let asked = [floors(context, room), bars(context, room), shower(context, room), reached(context, room)];
    let missing: Vec<Phrase> =
        asked.into_iter().flatten().filter(|(asks, _)| *asks).map(|(_, what)| what.into()).collect();
    if missing.is_empty() {
        return None;
    }
    let what = Phrase::series(missing);
    let message = phrase!("the room is planned for access, and nobody says {what}", what);
    let finding = Remark::query(toilet.name.span, message).room(&room.folder).selection(&toilet.name);
    Some(
        finding
            .source("2010 ADA Standards 304, 305, 308, 603, 604, 608")
            .remedy("measure or plan it, and write it under the room's `access`"),
    )
}

/// What is asked of a bath, and whether it is.
type Asks = Vec<(bool, &'static str)>;

fn is_told(context: &Context<'_>, room: &Room, names: &[AccessDistance]) -> bool {
    names.iter().all(|name| for_access_there(context.site, room, *name).is_some())
}

/// The floor to turn on, around the toilet, and before the other things.
fn floors(context: &Context<'_>, room: &Room) -> Asks {
    let told = |names: &[AccessDistance]| is_told(context, room, names);
    let more = has(room, &[&[Kind::Basin][..], &SHOWER[..]].concat());
    vec![
        (!told(&[AccessDistance::TurningCircle]), "the floor on which a chair turns (`turning circle`)"),
        (
            !told(&[AccessDistance::ToiletSpaceFromSideWall, AccessDistance::ToiletSpaceFromRearWall]),
            "the clear floor around the toilet (`toilet space from side wall`, `toilet space from rear wall`)",
        ),
        (more && room.access.clear_floor.is_empty(), "the clear floor at each fixture (`clear floor`)"),
    ]
}

/// The bars at the toilet: how long they are, where the one at its side begins unless the plan sets bars out, and how high.
fn bars(context: &Context<'_>, room: &Room) -> Asks {
    let told = |name| is_told(context, room, &[name]);
    let set_out = room.fixtures.iter().any(|fixture| {
        let chosen = chosen_for(room, fixture);
        fixture.takes.get() == Some(&Kind::GrabBar) || chosen.is_some_and(|one| one.is(Kind::GrabBar))
    });
    let (side, rear) = (told(AccessDistance::SideGrabBar), told(AccessDistance::RearGrabBar));
    let begins = set_out || told(AccessDistance::SideGrabBarFromRearWall);
    let high = told(AccessDistance::GrabBarHeight);
    vec![
        (!side && !rear && !set_out, "the bars at the toilet (`side grab bar`, `rear grab bar`)"),
        (!side && rear && !set_out, "the bar at the toilet's side (`side grab bar`)"),
        (side && !rear && !set_out, "the bar behind the toilet (`rear grab bar`)"),
        (side && !begins, "where the bar at the toilet's side begins (`side grab bar from rear wall`)"),
        ((has(room, &[Kind::GrabBar]) || side) && !high, "how high the bars are (`grab bar height`)"),
        (
            (has(room, &[Kind::GrabBar]) || side || rear) && !is_held(room),
            "what in the wall holds the bars (`service: {blocking: …}` at the opening)",
        ),
    ]
}

/// Whether an opening tells what is in the wall behind bars, or none of the room has any, or a bar is set out there and
/// asked by itself.
fn is_held(room: &Room) -> bool {
    let at = |opening: &&Opening| {
        opening.takes.get().is_some_and(|kind| *kind == Kind::GrabBar || Kind::GrabBar.hangs_from(*kind))
    };
    let placed = room.selections.iter().any(|one| one.is(Kind::GrabBar) && !one.place.is_absent());
    let mut openings = room.openings.iter().filter(at).peekable();
    placed || openings.peek().is_none() || openings.any(|opening| !opening.service.blocking.is_absent())
}

const SHOWER: [Kind; 3] = [Kind::ShowerSet, Kind::ShowerTray, Kind::ShowerGlass];

/// How one comes into the shower, through what and over what.
fn shower(context: &Context<'_>, room: &Room) -> Asks {
    if !has(room, &SHOWER) {
        return vec![];
    }
    let told = |name| is_told(context, room, &[name]);
    vec![
        (room.access.shower_type.is_absent(), "how one comes into the shower (`shower type`)"),
        (!told(AccessDistance::ShowerEntry), "how wide its entry is (`shower entry`)"),
        (!told(AccessDistance::ShowerThreshold), "how high the step at its entry is (`shower threshold`)"),
    ]
}

/// What must be seen or reached, sitting.
fn reached(context: &Context<'_>, room: &Room) -> Asks {
    let told = |name| is_told(context, room, &[name]);
    let mirror = has(room, &[Kind::Mirror, Kind::LitMirror, Kind::MirrorCabinet]);
    let in_the_shower = room.access.controls.iter().any(|control| Mention::Shower.is_in(&control.name));
    let shower = has(room, &SHOWER) && !in_the_shower;
    vec![
        (shower && !told(AccessDistance::ShowerControls), "how high the shower's controls are (`shower controls`)"),
        (mirror && !told(AccessDistance::Mirror), "how low the mirror begins (`mirror`)"),
        (
            room.access.controls.is_empty() && room.switches.iter().all(|set| set.height.is_absent()),
            "how high switches and outlets are (`controls`)",
        ),
    ]
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn bath(room: &str) -> Trial {
        Trial::of("complete/site")
            .room(room)
            .selection("selection: Toilet\nkind: toilet", "rough-in: 12\"")
            .selection("selection: Column\nkind: shower set", "valve: own")
    }

    fn ada(room: &str) -> Trial {
        bath(room).book("access profile: 2010 ADA")
    }

    const FLOOR: &str = "turning circle: 60\", toilet space from side wall: 60\", toilet space from rear wall: 56\"";
    const BARS: &str =
        "side grab bar: 42\", side grab bar from rear wall: 12\", rear grab bar: 36\", grab bar height: 34\"";
    const SHOWER: &str =
        "shower type: roll-in, shower entry: 60\", shower threshold: 1/2\", shower controls: 42\", mirror: 38\"";
    const REACH: &str = "clear floor: {shower: 60\" x 36\"}, controls: {switch: {height: 44\"}}";

    /// Source: 2010 ADA Standards 304.3, 604.3, 604.5 and 608.2 ask for what is asked here.
    #[test]
    fn a_bath_that_is_planned_for_access_says_what_it_offers() {
        ada("")
            .finds("the room is planned for access, and nobody says the floor on which a chair turns (`turning circle`), the clear floor around the toilet (`toilet space from side wall`, `toilet space from rear wall`), the clear floor at each fixture (`clear floor`), the bars at the toilet (`side grab bar`, `rear grab bar`), how one comes into the shower (`shower type`), how wide its entry is (`shower entry`), how high the step at its entry is (`shower threshold`), how high the shower's controls are (`shower controls`) and how high switches and outlets are (`controls`)")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:1:12"]);
        let all = format!("access: {{{FLOOR}, {BARS}, {SHOWER}, {REACH}}}");
        ada(&all).stays_silent();
        bath("").stays_silent();
        ada("access profile: none").stays_silent();
    }

    /// Source: 2010 ADA Standards 305, 308, 603, 604 and 608, each of one fact that is left out.
    #[test]
    fn each_fact_that_a_bath_for_access_lacks_is_asked_for() {
        let all = format!("access: {{{FLOOR}, {BARS}, {SHOWER}, {REACH}}}");
        for (field, asks) in [
            ("side grab bar: 42\", ", "the bar at the toilet's side (`side grab bar`)"),
            (
                "side grab bar from rear wall: 12\", ",
                "where the bar at the toilet's side begins (`side grab bar from rear wall`)",
            ),
            ("rear grab bar: 36\", ", "the bar behind the toilet (`rear grab bar`)"),
            ("grab bar height: 34\", ", "how high the bars are (`grab bar height`)"),
            ("shower entry: 60\", ", "how wide its entry is (`shower entry`)"),
            ("shower threshold: 1/2\", ", "how high the step at its entry is (`shower threshold`)"),
            ("shower controls: 42\", ", "how high the shower's controls are (`shower controls`)"),
            ("clear floor: {shower: 60\" x 36\"}, ", "the clear floor at each fixture (`clear floor`)"),
            (", controls: {switch: {height: 44\"}}", "how high switches and outlets are (`controls`)"),
        ] {
            let lacks = all.replacen(field, "", 1);
            assert_ne!(lacks, all, "{field}");
            ada(&lacks).finds(&format!("the room is planned for access, and nobody says {asks}"));
        }
        let set_out = all.replace(", controls: {switch: {height: 44\"}}", "");
        ada(&format!("{set_out}\nswitches: {{light: {{wall: A, centre: 30\", height: 44\"}}}}")).stays_silent();
        let walls = |service: &str| ada(&all).opening("wc", &format!("{{takes: toilet{service}}}"));
        walls("").finds("the room is planned for access, and nobody says what in the wall holds the bars (`service: {blocking: …}` at the opening)");
        walls(", service: {blocking: plywood 30 to 40 in AFF}").stays_silent();
        let mirror = |room: &str| ada(room).selection("selection: Mirror\nkind: mirror", "model: M");
        mirror(&all).stays_silent();
        mirror(&all.replace(", mirror: 38\"", ""))
            .finds("the room is planned for access, and nobody says how low the mirror begins (`mirror`)");
    }

    #[test]
    fn what_is_ordered_or_planned_for_access_tells_of_itself() {
        let all = format!("access: {{{FLOOR}, {BARS}, {SHOWER}, {REACH}}}");
        // Bars by their names, the valve of a shower among the controls.
        let ordered = all.replace("side grab bar: 42\", ", "").replace("rear grab bar: 36\", ", "");
        ada(&ordered)
            .selection("selection: Side grab bar\nkind: grab bar", "size: {length: 42\"}")
            .selection("selection: Rear grab bar\nkind: grab bar", "size: {length: 36\"}")
            .stays_silent();
        ada(&all.replace("shower controls: 42\", ", "").replace("{switch:", "{shower valve:")).stays_silent();
        ada(&all.replace("turning circle: 60\", ", "")).finds(
            "the room is planned for access, and nobody says the floor on which a chair turns (`turning circle`)",
        );
        // A plan with all that takes floor tells of the floor itself; one that lacks something may be wrong.
        let plan = "outline: 9' x 8'\nfixtures: {t: {wall: A, centre: 18\", width: 15\", depth: 28\", takes: toilet, selection: Toilet}}";
        let rest = format!("access: {{{BARS}, {SHOWER}, {REACH}}}");
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
