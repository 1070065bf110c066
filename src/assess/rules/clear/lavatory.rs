//! Room around a basin.

use super::{Bound, Figure, Measure};
use crate::assess::Context;
use crate::assess::codes::{
    LAVATORIES_ADVISED, LAVATORIES_CODE, LAVATORY_EDGE, LAVATORY_SIDE_ADVISED, LAVATORY_SIDE_CODE,
};
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{ClearDistance, Room};
use crate::site::distances::{Distance, distance, rims};
use crate::units::Length;

declare! {
    /// A basin stands too near to a wall or to another one, or at an unusual height
    ///
    /// ## What it checks
    /// From the basin's centre to a wall or anything tall beside it: the model codes ask for {15"},
    /// {20"} are advised. From centre to centre of two basins {30"} by the code, {36"}
    /// by advice. At least {4"} from the edge of a basin that hangs or stands free to
    /// the wall. The rim stands {32"} to {43"} above the floor: as `clearances` says, else by the counter that carries the
    /// basin, with its own height where it stands on that, or by how high it hangs.
    ///
    /// ## Why it matters
    /// Elbows. Two people at two basins need {36"} each, and drains stand in the wall before either
    /// basin does.
    ///
    /// ## Remedy
    /// Move the drain before the wall is closed, or take one wider basin instead of two.
    ///
    /// ## Example
    /// ```yaml
    /// clearances: {basin to basin: 32"}     # enough for the code
    /// ```
    ///
    /// ## Source
    /// Code: IRC P2705.1, IRC R307.1, IPC 405.3.1. Advice: Kitchen and Bath Planning Guidelines, 2nd
    /// edition, bath guidelines 5 to 7.
    "clear/lavatory", Query,
    due: RoughInClosed, tells: [Client, Installer],
    living: "living.clear.lavatory",
    judges: [Basin],
    sources: [
        "IRC R307.1, P2705.1, IPC 405.3.1",
        "Kitchen and Bath Planning Guidelines, 2nd edition, bath guidelines 5 to 7",
    ],
    caution: None,
    Check::Book(check)
}

const GUIDELINE_7: &str = "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 7";

/// What is asked of one distance.
struct LavatoryDistance {
    key: ClearDistance,
    is: (&'static str, &'static str),
    advised: Option<Figure>,
    code: Option<Figure>,
    remedy: &'static str,
}

const ASKED: [LavatoryDistance; 5] = [
    LavatoryDistance {
        key: ClearDistance::BasinToSide,
        is: ("the basin's centre", "from what stands beside it"),
        advised: Some(Figure::of(&LAVATORY_SIDE_ADVISED)),
        code: Some(Figure::of(&LAVATORY_SIDE_CODE)),
        remedy: "move the basin before its drain is set",
    },
    LavatoryDistance {
        key: ClearDistance::BasinEdgeToWall,
        is: ("the basin's edge", "from the wall beside it"),
        advised: None,
        code: Some(Figure::of(&LAVATORY_EDGE)),
        remedy: "move the basin before its drain is set, or choose a narrower one",
    },
    LavatoryDistance {
        key: ClearDistance::BasinToBasin,
        is: ("the distance from centre to centre of the basins", ""),
        advised: Some(Figure::of(&LAVATORIES_ADVISED)),
        code: Some(Figure::of(&LAVATORIES_CODE)),
        remedy: "take a longer vanity, or one wider basin instead of two",
    },
    LavatoryDistance {
        key: ClearDistance::BasinHeight,
        is: ("the basin's rim", "above the floor"),
        advised: Some(Figure::advised(Length::from_inches(32), GUIDELINE_7)),
        code: None,
        remedy: "set the vanity to suit those who use it, and ask them",
    },
    LavatoryDistance {
        key: ClearDistance::BasinHeight,
        is: ("the basin's rim", "above the floor"),
        advised: Some(Figure::advised_most(Length::from_inches(43), GUIDELINE_7)),
        code: None,
        remedy: "set the vanity to suit those who use it, and ask them",
    },
];

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(ASKED.iter().filter_map(|asked| measure(context, room, asked)?.judge(context)));
    }
}

fn measure<'a>(context: &Context<'_>, room: &'a Room, asked: &LavatoryDistance) -> Option<Measure<'a>> {
    let (subject, tail) = asked.is;
    Some(Measure {
        room,
        item: None,
        is: (subject.into(), tail),
        there: there(context, room, asked)?,
        advised: asked.advised,
        code: asked.code,
        remedy: asked.remedy,
    })
}

/// The distance that is most amiss: of several rims the lowest, or the highest.
fn there(context: &Context<'_>, room: &Room, asked: &LavatoryDistance) -> Option<Distance> {
    if asked.key != ClearDistance::BasinHeight {
        return distance(context.site, room, asked.key);
    }
    let all = rims(room).into_iter();
    match asked.advised?.bound {
        Bound::Least(_) => all.min_by_key(|rim| rim.value),
        Bound::Most(_) => all.max_by_key(|rim| rim.value),
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn bath(clearance: &str) -> Trial {
        Trial::of("clear/lavatory").room(&format!("clearances: {{{clearance}}}"))
    }

    /// Source: check values BP-07, BP-08: 18 passes the code and misses the advice, 14.9 misses the code.
    #[test]
    fn a_basin_s_centre_is_fifteen_inches_from_a_wall_and_better_twenty() {
        bath("basin to side: 20\"").stays_silent();
        bath("basin to side: 18\"").finds_one().weighs("note");
        bath("basin to side: 15\"").finds_one().weighs("note");
        bath("basin to side: 14.9\"").finds_one().weighs("query");
    }

    /// Source: check values BP-09: 3.5 from its edge to the wall fails.
    #[test]
    fn a_free_basin_s_edge_is_four_inches_from_the_wall() {
        bath("basin edge to wall: 4\"").stays_silent();
        bath("basin edge to wall: 3 1/2\"")
            .finds("the basin's edge is 3 1/2\" (89 mm) from the wall beside it, 1/2\" (12.7 mm) less than the 4\" (102 mm) that the model code asks for");
    }

    /// Source: check values BP-10: 32 passes the code and misses the advice, 29 misses the code.
    #[test]
    fn two_basins_are_thirty_inches_apart_and_better_thirty_six() {
        bath("basin to basin: 36\"").stays_silent();
        bath("basin to basin: 32\"").finds_one().weighs("note");
        bath("basin to basin: 29\"").finds_one().weighs("query");
    }

    /// Source: check values BP-11: 34.5 is within 32 to 43.
    #[test]
    fn a_rim_stands_between_thirty_two_and_forty_three_inches() {
        for height in ["32\"", "34 1/2\"", "43\""] {
            bath(&format!("basin height: {height}")).stays_silent();
        }
        bath("basin height: 31\"").finds_one();
        bath("basin height: 44\"").finds_one().weighs("query");
    }

    /// Source: check values BP-11, wherever the height of the rim follows from.
    #[test]
    fn a_rim_follows_from_what_carries_the_basin() {
        let basin = |room: &str, option: &str| {
            Trial::of("clear/lavatory").room(room).selection("selection: Basin\nkind: basin\nplace: basin", option)
        };
        let run = |high: &str| {
            format!(
                "runs: {{vanity: {{counter: {{depth: 22\", height: {high}}}, parts: [{{cabinet: vanity, width: 36\", holds: [basin]}}]}}}}"
            )
        };
        let vessel = "mount: on the counter\nsize: {height: 6 1/2\"}";
        let set = |high: &str, option: &str| basin(&run(high), option).opening("basin", "{takes: basin}");
        set("38\"", vessel)
            .finds("the basin's rim is 44 1/2\" (1130 mm) above the floor, 1 1/2\" (38.1 mm) more than the 43\" (1092 mm) advised")
            .weighs("query");
        set("31\"", vessel).stays_silent();
        set("38\"", "mount: undermount\nsize: {height: 6\"}").stays_silent();
        // What was measured counts.
        set("38\"", vessel).of_any_yaml().room("clearances: {basin height: 36\"}").stays_silent();
        let hung = |sill: &str| {
            basin("", "mount: wall-hung\nsize: {height: 6\"}").opening("basin", &format!("{{takes: basin{sill}}}"))
        };
        hung(", sill: 42\"").finds_one().points_at(&["rooms/kitchen/room.yaml:4:31"]);
        hung(", sill: 28\"").stays_silent();
        hung("").stays_silent();
        let vanity = |sill: &str| {
            Trial::of("clear/lavatory")
                .opening("vanity", &format!("{{takes: vanity, sill: {sill}, service: {{drain: '1 1/4\", 18\" AFF'}}}}"))
                .selection("selection: Vanity\nkind: vanity\nplace: vanity", "size: {height: 20\"}")
                .selection("selection: Top\nkind: vanity top", "thickness: 3/4\"")
                .selection("selection: Basin\nkind: basin", "mount: vessel\nsize: {height: 5 1/2\"}")
        };
        vanity("20\"").finds_one();
        vanity("10\"").stays_silent();
    }

    /// Source: check values BP-07, BP-08.
    #[test]
    fn a_wall_that_its_opening_names_counts_without_a_plan() {
        let basin =
            |opening: &str| Trial::of("clear/lavatory").opening("basin", &format!("{{takes: basin, {opening}}}"));
        basin("width: 24\", left: {what: wall, gap: 0\"}").finds_one().weighs("query");
        basin("width: 40\", left: {what: wall, gap: 0\"}").stays_silent();
        basin("width: 24\", left: {what: vanity, gap: 0\"}").stays_silent();
    }
}
