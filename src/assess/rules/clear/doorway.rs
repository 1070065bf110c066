//! Doorways that are too narrow to pass with something in both hands.

use super::{Bound, Figure, Measure};
use crate::assess::codes::DOORWAY;
use crate::assess::codes::metric::Printed;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::site::distances::{doorways, planned_for_access};
use crate::site::plan::{Hole, HoleIs, Plan};
use crate::units::Length;

declare! {
    /// A doorway is narrower than is advised
    ///
    /// ## What it checks
    /// The clear width of each doorway (`clearances: {doorways: …}`), between the open leaf and the stop:
    /// at least {32"}, which takes a leaf of {34"}. Where the book is planned by an access profile, {32"} is
    /// what the profile asks for, and less stops; {34"}, which takes a leaf of {36"}, is advised. Of a doorway in the
    /// plan, or an opening that takes a door, a leaf that hangs there takes {2"}, whether its width is written or not.
    /// For access one leaf of a pair must leave enough, and a door counts that is only ordered, or only stands in the
    /// room's `way in`. A doorway of the plan that is higher than its wall, or than the ceiling over it, stops.
    ///
    /// ## Why it matters
    /// Whoever carries a tray, a child or a laundry basket needs it every day, and what is delivered needs
    /// it once.
    ///
    /// ## Remedy
    /// Choose a wider leaf, or hinges that swing the leaf clear of the doorway.
    ///
    /// ## Example
    /// ```yaml
    /// clearances:
    ///   doorways: {hall door: 30"}     # a leaf of 32" leaves no more
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 1 and bath guideline 1; 2010 ADA
    /// Standards 404.2.3.
    "clear/doorway", Query,
    due: CabinetsOrdered, tells: [Installer],
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition", "2010 ADA Standards"],
    caution: None,
    Check::Book(check)
}

const ADVISED: Figure = Figure::of(&DOORWAY);

const FOR_ACCESS: Figure = Figure {
    bound: Bound::Least(Length::from_inches(34)),
    whose: "advised for access",
    source: "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 1, bath guideline 1, access standards",
    printed: Printed::InInches,
    named: None,
};

/// What the profile itself asks for: a stop.
const OF_THE_PROFILE: Figure = Figure {
    bound: Bound::Least(Length::from_inches(32)),
    whose: "that the access profile asks for",
    source: "2010 ADA Standards 404.2.3",
    printed: Printed::ToFiveMillimetres,
    named: None,
};

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(context.site.plan(room).map(|plan| too_high(context, plan)).unwrap_or_default());
        let access = planned_for_access(context.book, room);
        findings.extend(doorways(context.site, room, access).into_iter().filter_map(|(name, there)| {
            let against = |figure| {
                let is = (phrase!("the doorway `{name}`", name), "clear");
                let remedy = "choose a wider leaf, or hinges that swing it clear of the doorway";
                Measure { room, item: None, is, there, advised: Some(figure), code: None, remedy }.judge(context)
            };
            if !access {
                return against(ADVISED);
            }
            let of_profile = against(OF_THE_PROFILE).map(|finding| Remark { severity: Severity::Stop, ..finding });
            of_profile.or_else(|| against(FOR_ACCESS))
        }));
    }
}

/// Doorways that are higher than their wall, or than the ceiling at it.
fn too_high(context: &Context<'_>, plan: &Plan<'_>) -> Vec<Remark> {
    let doors = plan.holes.iter().filter(|hole| matches!(hole.is, HoleIs::Door(_)));
    let judge = |hole: &Hole<'_>| {
        let HoleIs::Door(door) = hole.is else { return None };
        let high = door.height.spanned()?;
        let ends = [hole.along.0, hole.along.1].map(|along| plan.ceiling_at(hole.frame.at(along, Length::ZERO)));
        let wall = plan.walls.get(hole.wall)?.height();
        let (least, what) = ends
            .into_iter()
            .flatten()
            .map(|ceiling| (ceiling, "the ceiling over it"))
            .chain(wall.map(|wall| (wall, "its wall")))
            .min_by_key(|(least, _)| *least)?;
        let over = Some(high.value - least).filter(|over| *over > Length::ZERO)?;
        let say = |length| say(length, context.book.project.units);
        let message = phrase!(
            "the doorway `{}` is {} high, {} more than {what}, {}",
            hole.name(),
            say(high.value),
            say(over),
            what,
            say(least)
        );
        let finding = Remark::stop(high.span, message).room(&plan.room.folder).part(hole.name());
        Some(finding.remedy("move it to a higher wall, or have a lower leaf made, before it is framed"))
    };
    doors.filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: arithmetic: a door of 80" in a knee wall of 48", and where a ceiling rises from 60" at wall C.
    #[test]
    fn a_doorway_is_no_higher_than_its_wall_and_the_ceiling_there() {
        let attic = |room: &str, wall: &str| {
            Trial::of("clear/doorway").room(&format!(
                "outline: 12' x 10'\n{room}\ndoors: {{attic: {{wall: {wall}, at: 40\", width: 36\", height: 80\"}}}}"
            ))
        };
        let sloped = "ceiling: {low: 60\", high: 102\", low at: C}";
        attic(sloped, "C")
            .finds("the doorway `attic` is 80\" (2032 mm) high, 20\" (508 mm) more than the ceiling over it, 60\" (1524 mm)")
            .weighs("stop");
        attic(sloped, "A").stays_silent();
        attic("walls: {B: {height: 48\"}}", "B").finds_one().says("32\" (813 mm) more than its wall");
        attic("ceiling: 96\"", "B").stays_silent();
        attic("ceiling: 78\"", "B").finds_one();
    }

    /// Source: 2010 ADA Standards 404.2.3 (32" clear): a doorway is as wide with an outline as without one.
    #[test]
    fn a_doorway_counts_wherever_it_stands() {
        let bath = |door: &str| {
            Trial::of("clear/doorway")
                .book("access profile: 2010 ADA")
                .room(&format!("doors: {{bath door: {{{door}}}}}"))
        };
        bath("width: 30\"").finds_one().weighs("stop");
        bath("leaf: 33\", width: 34\"").finds_one().weighs("stop");
        bath("width: 36\", slides: yes").stays_silent();
        bath("width: 36\", leaf: 36\"").stays_silent();
    }

    /// Source: Kitchen and Bath Planning Guidelines, 2nd edition: a leaf of 34" leaves 32"; 2010 ADA Standards 404.2.2:
    /// one leaf of a pair must do.
    #[test]
    fn a_leaf_takes_two_inches_whether_it_is_written_or_not() {
        let bath = |room: &str| Trial::of("clear/doorway").room(room);
        let door = |fields: &str| bath(&format!("doors: {{bath door: {{{fields}}}}}"));
        door("width: 32\", hinge: left, swings: in")
            .finds("the doorway `bath door` is 30\" (762 mm) clear by the plan, 2\" (51 mm) less than the 32\" (813 mm) advised")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:2:9"]);
        door("width: 34\", swings: out").stays_silent();
        // An opening in the wall has no leaf.
        door("width: 32\"").stays_silent();
        door("width: 32\"").selection("selection: Bath door\nkind: door", "size: {width: 32\"}").finds_one();
        door("width: 50\", leaf: 25\", hinge: both").stays_silent();
        door("width: 50\", leaf: 25\", hinge: both").book("access profile: 2010 ADA").finds_one().weighs("stop");
        door("width: 70\", hinge: both").book("access profile: 2010 ADA").finds_one().weighs("query");
        Trial::of("clear/doorway").opening("bath door", "{takes: door, width: 33\"}").finds_one();
        Trial::of("clear/doorway").opening("bath door", "{takes: door, width: 34\"}").stays_silent();
        // What was measured counts.
        bath("doors: {bath door: {width: 32\", hinge: left}}\nclearances: {doorways: {bath door: 32\"}}")
            .stays_silent();
    }

    #[test]
    fn for_access_a_door_counts_wherever_it_is_named() {
        let ada = || Trial::of("clear/doorway").book("access profile: 2010 ADA");
        let ordered = |wide: &str| {
            ada().selection("selection: Bath door\nkind: interior door", &format!("size: {{width: {wide}}}"))
        };
        ordered("28\"").finds_one().weighs("stop").points_at(&["rooms/kitchen/selection-0.yaml:3:15"]);
        ordered("36\"").stays_silent();
        let way = |wide: &str| ada().room(&format!("way in: [{{name: bath door, width: {wide}, height: 80\"}}]"));
        way("28\"").finds_one().weighs("stop");
        way("34\"").stays_silent();
    }

    fn doorway(width: &str) -> Trial {
        Trial::of("clear/doorway").room(&format!("clearances: {{doorways: {{hall door: {width}}}}}"))
    }

    /// Source: check values KP-01, BP-01: 32 passes, 31 3/4 and 31 miss the advice.
    #[test]
    fn thirty_two_inches_clear_are_advised() {
        doorway("32\"").stays_silent();
        doorway("31 3/4\"")
            .finds("the doorway `hall door` is 31 3/4\" (806 mm) clear, 1/4\" (6.4 mm) less than the 32\" (813 mm) advised")
            .weighs("query");
        doorway("31\"").finds_one();
    }

    /// Source: check values KP-01, BP-01: for access 32 is not enough, 34 is.
    #[test]
    fn for_access_thirty_four_are() {
        doorway("34\"").book("access profile: 2010 ADA").stays_silent();
        doorway("32\"").book("access profile: 2010 ADA").finds_one();
        doorway("32\"").book("access profile: 2010 ADA").room("access profile: none").stays_silent();
    }

    /// Source: 2010 ADA Standards 404.2.3: 32 clear passes, 31 3/4 does not.
    #[test]
    fn the_access_profile_itself_asks_for_thirty_two() {
        let ada = |width: &str| doorway(width).book("access profile: 2010 ADA");
        ada("31 3/4\"").finds("the doorway `hall door` is 31 3/4\" (806 mm) clear, 1/4\" (6.4 mm) less than the 32\" (813 mm) that the access profile asks for").weighs("stop");
        ada("32\"").finds_one().weighs("query");
    }

    #[test]
    fn each_doorway_is_told_by_its_name() {
        let two = "clearances: {doorways: {hall door: 30\", pantry: 28\"}}";
        Trial::of("clear/doorway").room(two).run().counts(2);
    }
}
