//! Floor to stand on in front of the fixtures of a bath.

use super::{Figure, Measure};
use crate::assess::Context;
use crate::assess::codes::{FRONT_ADVISED, FRONT_CODE, FRONT_SHOWER_CODE, FRONT_TOILET_UPC, Family};
use crate::assess::rules::{Check, Findings, declare};
use crate::book::ClearDistance;
use crate::finding::phrase;
use crate::site::distances::distance;
use crate::vocabulary::Kind;

declare! {
    /// There is too little floor in front of a fixture of the bath
    ///
    /// ## What it checks
    /// The clear floor from the front of toilet, bidet, basin, tub and shower to whatever is opposite
    /// (`in front of toilet` and so on in `clearances`, or `in front` of the opening that takes it). The
    /// model residential code asks for {21"}, and {24"} in front of a shower's entry;
    /// {30"} are advised. What passes the code and misses the advice is a note.
    ///
    /// ## Why it matters
    /// {21"} let one stand. Drying, dressing and helping somebody take {30"}.
    ///
    /// ## Remedy
    /// Choose a shallower fixture, or move what is opposite; where the code's figure is missed, ask the
    /// local building office before rough-in.
    ///
    /// ## Example
    /// ```yaml
    /// clearances: {in front of toilet: 28"}     # enough for the code
    /// ```
    ///
    /// ## Source
    /// Code: IRC R307.1 and P2705.1 ({21"}; {24"} at a shower). Advice: Kitchen and Bath Planning Guidelines,
    /// 2nd edition, bath guideline 4.
    "clear/bath-floor", Query,
    due: RoughInClosed, tells: [Installer],
    judges: [Toilet, Basin, Bathtub, ShowerSet],
    sources: [
        "IRC R307.1, P2705.1",
        "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 4",
    ],
    caution: None,
    Check::Book(check)
}

const ADVISED: Figure = Figure::of(&FRONT_ADVISED);
const CODE: Figure = Figure::of(&FRONT_CODE);
const CODE_AT_A_SHOWER: Figure = Figure::of(&FRONT_SHOWER_CODE);
const CODE_AT_A_TOILET_BY_THE_UPC: Figure = Figure::of(&FRONT_TOILET_UPC);

/// Fixtures that one stands in front of, their kind, and the words of `clearances` for the floor there.
const FIXTURES: [(&str, Option<Kind>, ClearDistance); 5] = [
    ("toilet", Some(Kind::Toilet), ClearDistance::InFrontOfToilet),
    ("bidet", None, ClearDistance::InFrontOfBidet),
    ("basin", Some(Kind::Basin), ClearDistance::InFrontOfBasin),
    ("tub", Some(Kind::Bathtub), ClearDistance::InFrontOfTub),
    ("shower", Some(Kind::ShowerSet), ClearDistance::InFrontOfShower),
];

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let by_the_upc = context.rulings().editions().year(Family::Upc).is_some();
    for room in &context.book.rooms {
        for (fixture, kind, key) in FIXTURES {
            let Some(there) = distance(context.site, room, key) else { continue };
            let measure = Measure {
                room,
                item: None,
                is: (phrase!("the floor in front of the {fixture}", fixture), "deep"),
                there,
                advised: Some(ADVISED),
                code: Some(match kind {
                    Some(Kind::ShowerSet) => CODE_AT_A_SHOWER,
                    Some(Kind::Toilet) if by_the_upc => CODE_AT_A_TOILET_BY_THE_UPC,
                    _ => CODE,
                }),
                remedy: "choose a shallower fixture or move what is opposite, before rough-in",
            };
            findings.extend(measure.judge(context));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn bath(clearance: &str) -> Trial {
        Trial::of("clear/bath-floor").room(&format!("clearances: {{{clearance}}}"))
    }

    /// Source: check values BP-04, BP-05; top check value 10: 28 in front of a toilet passes the code and misses the advice.
    #[test]
    fn twenty_eight_inches_pass_the_code_and_miss_the_advice() {
        bath("in front of toilet: 28\"")
            .finds("the floor in front of the toilet is 28\" (711 mm) deep, enough for the model code, 2\" (51 mm) less than the 30\" (762 mm) advised")
            .weighs("note");
        bath("in front of toilet: 30\"").stays_silent();
    }

    /// Source: check values BP-05; trade reports F-75: 21 at lavatory, toilet, bidet and tub; 20.9 fails.
    #[test]
    fn the_code_asks_for_twenty_one_inches() {
        for fixture in ["toilet", "bidet", "basin", "tub"] {
            bath(&format!("in front of {fixture}: 21\"")).finds_one().weighs("note");
            bath(&format!("in front of {fixture}: 20.9\"")).finds_one().weighs("query");
        }
    }

    /// Source: check values IR-39: 22 in front of a toilet passes the IRC and fails the UPC, which asks for 24.
    #[test]
    fn the_upc_asks_for_more_in_front_of_a_toilet() {
        let adopts = |code: &str, deep: &str| {
            bath(&format!("in front of toilet: {deep}")).book(&format!("codes: {{adopts: [{code}]}}"))
        };
        adopts("IRC 2021", "22\"").finds_one().weighs("note");
        adopts("UPC 2021", "22\"").finds_one().weighs("stop");
        adopts("UPC 2021", "24\"").finds_one().weighs("note");
        adopts("IRC 2021", "20\"").finds_one().weighs("stop");
    }

    /// Source: check values BP-06: 23 in front of a shower fails; the guideline wants 30.
    #[test]
    fn a_shower_s_entry_needs_twenty_four_inches() {
        bath("in front of shower: 23\"").finds_one().weighs("query");
        bath("in front of shower: 24\"").finds_one().weighs("note");
        bath("in front of shower: 30\"").stays_silent();
    }

    /// Source: geometry of a bath of 5' by 8': the tub takes its end, and the toilet stands beside the tub's entry.
    #[test]
    fn a_tub_is_entered_where_there_is_the_most_floor_before_it() {
        let bath = |deep: &str| {
            Trial::of("clear/bath-floor").room(&format!(
                "outline: 8' x 5'\nfixtures:\n  tub: {{wall: D, centre: 30\", width: 60\", depth: 30\", takes: bathtub}}\n  chest: {{wall: A, centre: 48\", width: 15\", depth: {deep}}}"
            ))
        };
        bath("28\"").stays_silent();
        bath("38\"").stays_silent();
        bath("39\"")
            .finds("the floor in front of the tub is 10 1/2\" (267 mm) deep by the plan, 10 1/2\" (267 mm) less than the 21\" (533 mm) that the model code asks for")
            .points_at(&["rooms/kitchen/room.yaml:4:3"]);
    }

    /// Source: arithmetic: a room of 46" less 24" leaves 22", and of 44" 20".
    #[test]
    fn a_bidet_is_stood_before_too() {
        let bath = |deep: &str| {
            Trial::of("clear/bath-floor").room(&format!(
                "outline: 8' x {deep}\nfixtures: {{it: {{wall: A, centre: 40\", width: 15\", depth: 24\", height: 16\", takes: bidet}}}}"
            ))
        };
        bath("46\"").finds_one().weighs("note");
        bath("44\"").finds_one().weighs("query").says("the floor in front of the bidet is 20\"");
    }

    /// Source: arithmetic: a room of 60" less a vanity of 21" leaves 39" before it, and of 40" 19"; the basin on it, set
    /// out by itself or over a run, has the same.
    #[test]
    fn one_stands_before_the_cabinet_that_carries_a_basin() {
        let bath = |deep: &str, carries: &str| {
            Trial::of("clear/bath-floor").room(&format!(
                "outline: 8' x {deep}\n{carries}  bowl: {{wall: A, centre: 38\", off wall: 4\", width: 17\", depth: 13\", height: 6\", sill: 34\", takes: basin}}"
            ))
        };
        let vanity =
            "fixtures:\n  vanity: {wall: A, centre: 38\", width: 36\", depth: 21\", height: 34\", takes: cabinet}\n";
        let run = "runs: {vanity: {wall: A, starts: 20\", depth: 21\", parts: [{cabinet: v, width: 36\", doors: 2}]}}\nfixtures:\n";
        for carries in [vanity, run] {
            bath("60\"", carries).stays_silent();
            bath("40\"", carries)
                .finds("the floor in front of the basin is 19\" (483 mm) deep by the plan, 2\" (51 mm) less than the 21\" (533 mm) that the model code asks for")
                .weighs("query");
        }
    }

    #[test]
    fn the_opening_s_own_figure_is_taken_where_the_room_has_none() {
        let toilet =
            |room: &str| Trial::of("clear/bath-floor").room(room).opening("toilet", "{takes: toilet, in front: 20\"}");
        toilet("").finds_one().weighs("query");
        toilet("clearances: {in front of toilet: 20 1/2\"}").finds_one();
        let deep = |depth: &str| {
            Trial::of("clear/bath-floor")
                .opening("toilet", "{takes: toilet, in front: 30\", depth: 28\"}")
                .selection("selection: Toilet\nkind: toilet\nplace: toilet", &format!("size: {{depth: {depth}}}"))
        };
        deep("28\"").stays_silent();
        deep("30\"").finds_one().weighs("note");
        Trial::of("clear/bath-floor").opening("range", "{takes: range, in front: 20\"}").stays_silent();
    }
}
