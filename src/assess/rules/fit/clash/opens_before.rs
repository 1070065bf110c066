//! Doors and drawers of cabinets against what stands across from them: fixtures, furniture, islands and other rows.

use crate::site::plan::{ConvexShape, Plan, Thing, What};
use crate::units::Length;
use crate::vocabulary::{Kind, Trade};

/// What is no higher lies below the lowest drawer, over a foot of 4" (common practice).
const BELOW_FRONTS: Length = Length::from_inches(3);
/// What stands so near before a front lies behind it, which `run/filler` tells.
const COVERED: Length = Length::from_inches(1);

/// Whether a cabinet's doors and drawers can strike a thing.
pub(super) fn may_strike(plan: &Plan<'_>, cabinet: Option<&Thing<'_>>, body: &Thing<'_>) -> bool {
    let Some(cabinet) = cabinet else { return false };
    // The place that is kept for a fixture is no body, nor is where one stands in a shower, nor a rug.
    let is_kept = matches!(body.what, What::Opening) && body.kind.is_none_or(|kind| kind.trade() != Trade::Appliance);
    let lies_flat = body.is(Kind::Rug) || body.high.is_some_and(|high| high <= BELOW_FRONTS);
    let is_stood_in = (body.is(Kind::ShowerSet) || body.is(Kind::ShowerTray)) && body.high.is_none();
    let is_covered = || {
        let before = plan.stands_before(cabinet, cabinet.fronts(), COVERED);
        before.is_some_and(|(other, _)| std::ptr::eq(other, body))
    };
    !is_kept && !lies_flat && !is_stood_in && body.out.1 > body.out.0 && !is_covered()
}

/// What of a thing is struck: across from the cabinet its handles too; around a corner they are judged by `run/filler`.
pub(super) fn struck_part(cabinet: &Thing<'_>, body: &Thing<'_>) -> ConvexShape {
    let is_across = cabinet.frame.faces(&body.frame);
    body.covers(body.out.1 + if is_across { body.handles } else { Length::ZERO })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn room(lines: &str) -> Trial {
        Trial::of("fit/clash").room(lines)
    }

    /// Source: trade reports F-125; arithmetic: a room of 60" less 21" of vanity and 27" of toilet leaves 12" for drawers
    /// of 21".
    #[test]
    fn drawers_and_doors_keep_clear_of_what_stands_across() {
        let vanity = |deep: &str, part: &str, fixture: &str| {
            room(&format!(
                "outline: 8' x {deep}\nruns: {{vanity: {{wall: A, starts: 20\", depth: 21\", height: 32\", parts: [{{cabinet: vanity, width: 36\", {part}}}]}}}}\nfixtures: {{it: {{wall: C, centre: 60\", {fixture}}}}}"
            ))
        };
        let toilet = "width: 14 1/2\", depth: 27\", height: 30\", takes: toilet";
        vanity("60\"", "drawers: 2", toilet)
            .finds("the drawer of `vanity` reaches 21\" (533 mm) and strikes `it` after 12\" (305 mm), 9\" (229 mm) too soon")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:3:72"]);
        vanity("69\"", "drawers: 2", toilet).stays_silent();
        vanity("60\"", "doors: 2", toilet).finds_one().says("the door of `vanity` reaches 18\"");
        vanity("60\"", "doors: 4", toilet).stays_silent();
        vanity("60\"", "drawers: 2", "width: 60\", depth: 30\", height: 20\", takes: bathtub").finds_one();
        vanity("60\"", "drawers: 2", "width: 60\", depth: 30\", height: 24\"").finds_one();
        vanity("60\"", "drawers: 2", "width: 36\", depth: 36\", height: 2\", takes: shower tray").stays_silent();
    }

    /// Source: arithmetic: 59" less 24" and 20" leave 15" between two rows; their drawers reach 25" and 21".
    #[test]
    fn rows_that_face_each_other_leave_room_for_the_drawers_of_either() {
        let rows = |deep: &str, second: &str| {
            room(&format!(
                "outline: 10' x {deep}\nruns:\n  left: {{wall: A, starts: 20\", depth: 24\", height: 34 1/2\", handles: 1\", parts: [{{cabinet: a, width: 60\", drawers: 3}}]}}\n  right: {{wall: C, {second}}}"
            ))
        };
        let facing =
            "starts: 20\", depth: 20\", height: 34 1/2\", handles: 1\", parts: [{cabinet: b, width: 60\", drawers: 3}]";
        rows("59\"", facing).finds_one();
        rows("70\"", facing).stays_silent();
        rows("59\"", "starts: 2\", depth: 20\", parts: [{cabinet: b, width: 20\", drawers: 3}]").stays_silent();
        // What hangs above them is in nobody's way.
        rows("59\"", "starts: 20\", above floor: 54\", depth: 20\", parts: [{cabinet: b, width: 60\"}]").stays_silent();
    }

    /// A row along the next wall that begins 6" before the drawers, and one that ends beside them.
    #[test]
    fn drawers_open_past_the_row_around_the_corner() {
        let corner = |starts: &str| {
            room(&format!(
                "outline: 12' x 10'\nruns:\n  back: {{wall: A, from: right, depth: 24\", parts: [{{cabinet: drawers, width: 24\", drawers: 3}}]}}\n  side: {{wall: B, starts: {starts}, depth: 24\", parts: [{{cabinet: pots, width: 36\"}}]}}"
            ))
        };
        corner("30\"").finds_one().says("strikes `pots` after 6\"");
        corner("52\"").stays_silent();
        let island = |away: &str| {
            room(&format!(
                "outline: 16' x 12'\nruns: {{back: {{wall: A, starts: 60\", depth: 24\", parts: [{{cabinet: drawers, width: 30\", drawers: 3}}]}}}}\nislands: {{island: {{wall: A, at: 48\", away: {away}, size: 96\" x 36\", height: 36\"}}}}"
            ))
        };
        island("34 1/2\"").finds_one().says("strikes `island` after 10 1/2\"");
        island("60\"").stays_silent();
    }
}
