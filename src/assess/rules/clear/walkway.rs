//! Ways through a room.

use super::{Figure, Measure, passage};
use crate::assess::Context;
use crate::assess::codes::WALKWAY;
use crate::assess::rules::{Check, Findings, declare};
use crate::site::distances::aisles;

declare! {
    /// A way through the room is too narrow
    ///
    /// ## What it checks
    /// The `walkway`, a way that has a counter or an appliance on one side at most: at least {36"}
    ///. Between counters that face each other, `clear/work-aisle` asks for more. In a hall, or in any narrow room with
    /// two doorways, the way past each thing that stands there, by the plan or by what its opening has `in front`; where
    /// one washes or cooks, other rules judge the floor.
    ///
    /// ## Why it matters
    /// Two people meet there, one of them with a full pan.
    ///
    /// ## Remedy
    /// Move what stands in the way, or choose something shallower.
    ///
    /// ## Example
    /// ```yaml
    /// clearances: {walkway: 34"}
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 7.
    "clear/walkway", Query,
    due: CabinetsOrdered, tells: [Client],
    living: "living.clear.walkway",
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 7"],
    caution: None,
    Check::Book(check)
}

const ADVISED: Figure = Figure::of(&WALKWAY);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(aisles(context.site, room, false).into_iter().filter_map(|(name, there)| {
            let measure = Measure {
                room,
                item: None,
                is: (name, "wide"),
                there,
                advised: Some(ADVISED),
                code: passage(context),
                remedy: "move what stands in the way, or choose something shallower",
            };
            measure.judge(context)
        }));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: check values KP-11: 36 passes.
    #[test]
    fn a_walkway_is_thirty_six_inches_wide() {
        let walkway = |width: &str| Trial::of("clear/walkway").room(&format!("clearances: {{walkway: {width}}}"));
        walkway("36\"").stays_silent();
        walkway("35\"")
            .finds("the walkway is 35\" (889 mm) wide, 1\" (25.4 mm) less than the 36\" (914 mm) advised")
            .weighs("query");
    }

    /// Source: check values IR-43: 35 fails where the International Building Code applies.
    #[test]
    fn the_building_code_asks_for_thirty_six_where_it_is_adopted() {
        let walkway = |width: &str, code: &str| {
            Trial::of("clear/walkway")
                .book(&format!("codes: {{adopts: [{code}]}}"))
                .room(&format!("clearances: {{walkway: {width}}}"))
        };
        walkway("35\"", "IBC 2018").finds_one().weighs("stop");
        walkway("36\"", "IBC 2018").stays_silent();
        walkway("35\"", "IRC 2021").finds_one().weighs("query");
    }

    /// Source: check values KP-11, in a hall.
    #[test]
    fn one_goes_past_what_stands_in_a_hall() {
        let room = |name: &str, lines: &str| Trial::of("clear/walkway").room_called(name, lines);
        let console = |deep: &str| {
            format!(
                "outline: 14' x 4'\nfixtures: {{console: {{wall: A, centre: 60\", width: 48\", depth: {deep}, height: 34\"}}}}"
            )
        };
        room("Hall", &console("24\""))
            .finds("the way past `console` is 24\" (610 mm) wide by the plan, 12\" (305 mm) less than the 36\" (914 mm) advised")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:3:12"]);
        room("Hall", &console("12\"")).stays_silent();
        room("Bedroom", &console("24\"")).stays_silent();
        room("Upper landing", &console("24\"")).finds_one();
        room("Flur", &console("24\"")).finds_one();
        // Two doorways and a narrow room are a way through by any name; what one washes in is none by any name.
        let doors = "\ndoors: {one: {wall: B, at: 4\", width: 30\"}, other: {wall: D, at: 4\", width: 30\"}}";
        room("Boot room", &format!("{}{doors}", console("24\""))).finds_one();
        room("Boot room", &format!("{}{doors}", console("12\""))).stays_silent();
        for name in ["Hall bath", "Hallway bathroom", "Entry powder"] {
            let toilet = "\nopenings: {wc: {takes: toilet}}";
            room(name, &format!("{}{toilet}", console("24\""))).stays_silent();
        }
        room("Hall", &format!("{}\nclearances: {{walkway: 36\"}}", console("24\""))).stays_silent();
        let run = |deep: &str| {
            format!(
                "outline: 14' x 4'\nruns: {{shoes: {{wall: A, starts: 40\", depth: {deep}, height: 34\", parts: [{{cabinet: a, width: 30\"}}, {{cabinet: b, width: 30\"}}]}}}}"
            )
        };
        room("Entry hall", &run("26\"")).finds_one();
        room("Entry hall", &run("10\"")).stays_silent();
        room("Pasillo", "openings: {shoes: {takes: cabinet, depth: 26\", in front: 22\"}}").finds_one();
        room("Pasillo", "openings: {shoes: {takes: cabinet, depth: 12\", in front: 36\"}}").stays_silent();
    }
}
