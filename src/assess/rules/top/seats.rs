//! How many sit at a counter or table, and whether their knees go under it.

use crate::assess::codes::metric::Printed;
use crate::assess::codes::{Ruling, SEAT_WIDTH};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::Room;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Provenance;
use crate::site::distances::{Seats, seats};
use crate::units::Length;

declare! {
    /// More people are to sit there than the edge holds, or their knees do not go under
    ///
    /// ## What it checks
    /// Each place under `seating`, and each island's side with seats. For each person {24"} of
    /// edge; clear for knees {18"} at a table of {30"}, {15"} at a counter of {36"}, {12"}
    /// at a bar of {42"}: the nearest of the three heights counts. How far a side of an island stands out for knees is
    /// its own `overhang`, else that of the counter on it, else what the cabinets leave of its depth. So an island of {10'},
    /// with {8'} of one side and a short side to sit at, holds five in comfort, and six tightly.
    /// Where no guideline of the country is at hand, {500 mm} for each and {250 mm} for knees are the least at a counter.
    /// The floor behind is `clear/seating`; what carries the overhang is `top/overhang`.
    ///
    /// ## Why it matters
    /// Stools are bought after the stone is cut. Knees that meet the cabinet are never cured.
    ///
    /// ## Remedy
    /// Take a seat away, or deepen the overhang; stone then needs support.
    ///
    /// ## Example
    /// ```yaml
    /// seating:
    ///   island: {edge: 72", seats: 4, height: 36", knee depth: 12"}     # three, and 15"
    /// ```
    ///
    /// ## Source
    /// Kitchen planning guidelines, 31-guideline edition, guideline 9; the island's example is common
    /// practice.
    "top/seats", Query,
    due: CabinetsOrdered, tells: [Client],
    living: "living.top.seats",
    judges: [Counter],
    sources: ["Kitchen planning guidelines, 31-guideline edition, guideline 9", "common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        for seats in seats(context.site, room) {
            findings.extend(edge(context, room, &seats));
            findings.extend(knees(context, room, &seats));
        }
    }
}

/// A seat, where no guideline of the country is at hand: nobody sits in less (common practice).
const SEAT: Length = Length::from_millimetres(500);
/// Room for knees likewise (common practice).
const KNEES: Length = Length::from_millimetres(250);

/// At a table both sides are sat at, and its legs stand where they may: it is asked at counters and bars alone.
fn usual(value: Length, seats: &Seats<'_>) -> Option<Ruling<Length>> {
    let is_a_counter = seats.height.is_some_and(|height| height.value >= COUNTER);
    let usual = Ruling { value, source: "common practice".into(), severity: Severity::Query, own: true };
    is_a_counter.then_some(usual)
}

/// A table is lower (common practice).
const COUNTER: Length = Length::from_millimetres(850);

fn edge(context: &Context<'_>, room: &Room, seats: &Seats<'_>) -> Option<Remark> {
    let (edge, count) = (seats.edge?, i64::from(seats.seats?).max(1));
    let wide = context.rulings().length(&SEAT_WIDTH).or_else(|| usual(SEAT, seats))?;
    let printed = if wide.own { Printed::AsWritten } else { Printed::InInches };
    let asked = printed.least(wide.value.times(count), edge.value, context.book.project.units);
    if edge.value >= asked {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let each = Length::from_nanometres(edge.value.nanometres() / count);
    let message = phrase!(
        "{count} sit at `{}` with {} of edge{}, {} less than the {} advised: {} for each",
        count,
        seats.name,
        say(edge.value),
        by_the_plan(edge.provenance),
        say(asked - edge.value),
        say(asked),
        say(each)
    );
    let finding = Remark::new(wide.severity, edge.at, message).room(&room.folder).source(wide.source);
    Some(finding.remedy("take a seat away, or make the edge longer"))
}

fn knees(context: &Context<'_>, room: &Room, seats: &Seats<'_>) -> Option<Remark> {
    let (depth, height) = (seats.knees?, seats.height?);
    let ruled = super::knee_depth(context, height.value).or_else(|| usual(KNEES, seats))?;
    let printed = if ruled.own { Printed::AsWritten } else { Printed::InInches };
    let asked = printed.least(ruled.value, depth.value, context.book.project.units);
    if depth.value >= asked {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the room for knees at `{}` is {} deep{}, {} less than the {} advised for a top at {}",
        seats.name,
        say(depth.value),
        by_the_plan(depth.provenance),
        say(asked - depth.value),
        say(asked),
        say(height.value)
    );
    let finding = Remark::new(ruled.severity, depth.at, message).room(&room.folder).source(ruled.source);
    Some(finding.remedy("deepen the overhang, and have stone supported by its fabricator's word"))
}

fn by_the_plan(provenance: Provenance) -> &'static str {
    if provenance == Provenance::Plan { " by the plan" } else { "" }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn island(fields: &str) -> Trial {
        Trial::of("top/seats").room(&format!("seating: {{island: {{{fields}}}}}"))
    }

    /// Source: check values KP-15: 72 of edge seat three; a depth of 17 at 30 high fails.
    #[test]
    fn each_has_twenty_four_inches_of_edge() {
        island("edge: 72\", seats: 3").stays_silent();
        island("edge: 72\", seats: 4")
            .finds("4 sit at `island` with 72\" (1829 mm) of edge, 24\" (610 mm) less than the 96\" (2438 mm) advised: 18\" (457 mm) for each")
            .weighs("query");
        island("height: 30\", knee depth: 17\"").finds_one();
        island("height: 30\", knee depth: 18\"").stays_silent();
    }

    /// Source: check values KP-16, KP-17: at 36 high 15 are needed, at 42 high 12 are enough.
    #[test]
    fn knees_need_more_depth_at_a_lower_counter() {
        island("height: 36\", knee depth: 12\"")
            .finds("the room for knees at `island` is 12\" (305 mm) deep, 3\" (76 mm) less than the 15\" (381 mm) advised for a top at 36\" (914 mm)")
            .weighs("query");
        island("height: 36\", knee depth: 15\"").stays_silent();
        island("height: 42\", knee depth: 12\"").stays_silent();
        island("height: 42\", knee depth: 11\"").finds_one();
    }

    /// Source: common practice: eight feet along one side of an island and a short side seat five in comfort, six tightly.
    #[test]
    fn an_island_of_ten_feet_seats_five() {
        let places = |short: &str| {
            Trial::of("top/seats").room(&format!(
                "seating: {{long side: {{edge: 8', seats: 4}}, short side: {{edge: 42\", seats: {short}}}}}"
            ))
        };
        places("1").stays_silent();
        places("2").finds_one();
    }

    /// Source: check values KP-15, KP-16, as the plan of an island has them.
    #[test]
    fn the_plan_answers_where_nobody_wrote_it() {
        let room = |side: &str| {
            Trial::of("top/seats").room(&format!(
                "outline: 16' x 14'\nislands: {{island: {{wall: A, at: 40\", away: 46\", size: 72\" x 42\", height: 36\", room side: {{{side}}}}}}}"
            ))
        };
        room("overhang: 15\", seats: 3").stays_silent();
        room("overhang: 12\", seats: 3").finds_one();
        room("overhang: 15\", seats: 4").finds_one();
        room("seats: 3").stays_silent();
    }

    /// Two bodies in one place are told by themselves, and blind nothing else in the room.
    #[test]
    fn a_clash_elsewhere_in_the_room_hides_nothing() {
        let room = |bench: &str, seats: &str| {
            Trial::of("top/seats").room(&format!(
                "outline: 16' x 14'\nfixtures: {{stool: {{wall: C, centre: 10\", width: 20\", depth: 14\"}}, bench: {{wall: C, centre: {bench}, width: 40\", depth: 14\"}}}}\nislands: {{island: {{wall: A, at: 40\", away: 46\", size: 72\" x 42\", height: 36\", room side: {{overhang: 15\", seats: {seats}}}}}}}"
            ))
        };
        for bench in ["50\"", "39\""] {
            room(bench, "3").stays_silent();
            room(bench, "6").finds_one();
        }
    }

    #[test]
    fn a_figure_that_the_book_sets_stops() {
        let own = "codes: {figures: [{figure: width of a seat, is: 26\", because: wide stools, by: the household}]}";
        island("edge: 72\", seats: 3").book(own).finds_one().weighs("stop");
    }

    /// Source: check values KP-16: at 36 high 15 are needed, wherever it is written how far the top stands out.
    #[test]
    fn room_for_knees_is_known_from_the_counter_and_from_the_cabinets() {
        let island = |more: &str| {
            Trial::of("top/seats").room(&format!(
                "outline: 16' x 14'\nislands: {{island: {{wall: A, at: 50\", away: 70\", size: 84\" x 40\", height: 36\"{more}}}}}"
            ))
        };
        let top = |overhang: &str| {
            island(", room side: {seats: 3}").selection(
                "selection: Top\nkind: counter",
                &format!("top: {{lies on: [island], overhang: {overhang}}}"),
            )
        };
        top("10\"")
            .finds_one()
            .says("the room for knees at `island` is 10\"")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:36"]);
        top("15\"").stays_silent();
        let cabinets = |depth: &str| {
            island(&format!(
                ", depth: {depth}, wall side: {{parts: [{{cabinet: d, width: 82\"}}]}}, room side: {{seats: 3}}"
            ))
        };
        cabinets("28\"").finds_one().says("is 12\" (305 mm) deep by the plan");
        cabinets("25\"").stays_silent();
        // An overhang at the side itself counts first; of cabinets at both sides nothing follows.
        island(", depth: 28\", wall side: {parts: [{cabinet: d, width: 82\"}]}, room side: {seats: 3, overhang: 15\"}")
            .stays_silent();
        island(", room side: {seats: 3}").stays_silent();
    }

    /// Source: common practice: nobody sits in less than 500 mm, nor with less than 250 mm for knees.
    #[test]
    fn where_no_guideline_is_at_hand_what_is_usual_asks() {
        let island = |fields: &str| {
            Trial::of("top/seats")
                .file(
                    "book.yaml",
                    "title: Trial\nclient: Nobody\ncurrency: AUD\nunits: metric\ncountry: AU\n".to_string(),
                )
                .room(&format!("seating: {{island: {{{fields}}}}}"))
        };
        island("edge: 2700 mm, seats: 6, height: 920 mm").finds_one().weighs("query");
        island("edge: 2700 mm, seats: 5, height: 920 mm").stays_silent();
        island("edge: 1600 mm, seats: 4, height: 740 mm").stays_silent();
        island("edge: 2700 mm, seats: 4, height: 920 mm, knee depth: 200 mm").finds_one().weighs("query");
        island("edge: 2700 mm, seats: 4, height: 920 mm, knee depth: 250 mm").stays_silent();
    }
}
