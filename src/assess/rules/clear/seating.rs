//! Room to sit at a counter or table, and to pass behind.

use super::{Figure, Measure};
use crate::assess::codes::{
    KNEES_AT_30, KNEES_AT_36, KNEES_AT_42, SEAT_WIDTH, SEATED_EDGE, SEATED_NO_TRAFFIC, SEATED_WALK,
};
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, room_facts::Fact};
use crate::book::{Room, Seating};
use crate::finding::Finding;
use crate::source::Spanned;
use crate::units::Length;

declare! {
    /// Seats have too little edge, too little room for knees, or too little floor behind
    ///
    /// ## What it checks
    /// Each place under `seating`. For each person 24" (609.6 mm) of edge; clear for knees 18" (457.2 mm)
    /// at a table of 30", 15" (381 mm) at a counter of 36", 12" (304.8 mm) at a bar of 42": the nearest of
    /// the three heights counts. Behind the seats, from the edge to whatever is there: 32" (812.8 mm)
    /// where nobody passes, 36" (914.4 mm) where one edges past, 44" (1117.6 mm) where one walks past, 60"
    /// (1524 mm) for a wheelchair.
    ///
    /// ## Why it matters
    /// Stools are bought after the stone is cut. Knees that meet the cabinet are never cured.
    ///
    /// ## Remedy
    /// Take a seat away, deepen the overhang (stone then needs support), or move the island.
    ///
    /// ## Example
    /// ```yaml
    /// seating:
    ///   island: {edge: 72", seats: 3, height: 36", knee depth: 12", behind: 43", traffic: walk past}
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guidelines 8 and 9.
    "clear/seating", Query,
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guidelines 8, 9"],
    caution: None,
    Check::Book(check)
}

const FOR_A_WHEELCHAIR: Figure =
    Figure::advised(Length::from_inches(60), "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 8")
        .told("advised where somebody passes in a wheelchair");
/// Height of a surface up to which a depth for knees holds: halfway to the next of 30", 36" and 42".
const KNEE_DEPTH: [(Length, Figure); 2] =
    [(Length::from_inches(33), Figure::of(&KNEES_AT_30)), (Length::from_inches(39), Figure::of(&KNEES_AT_36))];
const KNEE_DEPTH_AT_A_BAR: Figure = Figure::of(&KNEES_AT_42);

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for room in &context.book.rooms {
        for seating in &room.seating {
            let measures = [edge(context, room, seating), knees(room, seating), behind(room, seating)];
            findings.extend(measures.iter().flatten().filter_map(|measure| measure.judge(context)));
        }
    }
}

fn of<'a>(
    room: &'a Room,
    is: (String, &'static str),
    there: &Spanned<Length>,
    figure: Figure,
    remedy: &'static str,
) -> Measure<'a> {
    Measure {
        rule: RULE.code,
        room,
        item: None,
        is,
        there: Fact::from(there),
        advised: Some(figure),
        code: None,
        remedy,
    }
}

fn edge<'a>(context: &Context<'_>, room: &'a Room, seating: &Seating) -> Option<Measure<'a>> {
    let (edge, seats) = (seating.edge.spanned()?, *seating.seats.get()?);
    let is = (format!("the edge for {seats} at `{}`", seating.name.value), "long");
    let each = context.rulings().length(&SEAT_WIDTH)?.value;
    let figure = Figure::advised(each.times(seats.into()), SEAT_WIDTH.source);
    Some(of(room, is, edge, figure, "take a seat away, or make the edge longer"))
}

fn knees<'a>(room: &'a Room, seating: &Seating) -> Option<Measure<'a>> {
    let (depth, height) = (seating.knee_depth.spanned()?, *seating.height.get()?);
    let asked = KNEE_DEPTH.iter().find(|(below, _)| height < *below).map_or(KNEE_DEPTH_AT_A_BAR, |(_, depth)| *depth);
    let figure = asked.told("advised at that height");
    let is = (format!("the room for knees at `{}`", seating.name.value), "deep");
    Some(of(room, is, depth, figure, "deepen the overhang, and have stone supported by its fabricator's word"))
}

fn behind<'a>(room: &'a Room, seating: &Seating) -> Option<Measure<'a>> {
    let wheelchair = seating.wheelchair.get().copied().unwrap_or(false);
    let figure = match seating.traffic.get().copied() {
        _ if wheelchair => FOR_A_WHEELCHAIR,
        Some("walk past") => Figure::of(&SEATED_WALK).told("advised where one walks past"),
        Some("edge past") => Figure::of(&SEATED_EDGE).told("advised where one edges past"),
        _ => Figure::of(&SEATED_NO_TRAFFIC).told("advised where nobody passes"),
    };
    let is = (format!("the floor behind the seats at `{}`", seating.name.value), "deep");
    Some(of(room, is, seating.behind.spanned()?, figure, "move the island, or make the overhang shallower"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn island(fields: &str) -> Trial {
        Trial::of("clear/seating").room(&format!("seating: {{island: {{{fields}}}}}"))
    }

    /// Source: check values KP-12, KP-13, KP-14: 32 with no traffic passes, 35 to edge past and 43 to walk past fail; 60 in a wheelchair.
    #[test]
    fn the_floor_behind_depends_on_who_passes() {
        island("behind: 32\", traffic: none").stays_silent();
        island("behind: 31\"").finds_one();
        island("behind: 36\", traffic: edge past").stays_silent();
        island("behind: 35\", traffic: edge past").finds_one();
        island("behind: 44\", traffic: walk past").stays_silent();
        island("behind: 43\", traffic: walk past")
            .finds("the floor behind the seats at `island` is 3'-7\" (1092.2 mm) deep, 1\" (25.4 mm) less than the 3'-8\" (1117.6 mm) advised where one walks past")
            .weighs("query");
        island("behind: 60\", wheelchair: true").stays_silent();
        island("behind: 59\", traffic: walk past, wheelchair: true").finds_one();
    }

    /// Source: check values KP-15: 72 of edge seat three; a depth of 17 at 30 high fails.
    #[test]
    fn each_has_twenty_four_inches_of_edge() {
        island("edge: 72\", seats: 3").stays_silent();
        island("edge: 72\", seats: 4").finds_one();
        island("height: 30\", knee depth: 17\"").finds_one();
        island("height: 30\", knee depth: 18\"").stays_silent();
    }

    /// Source: check values KP-16, KP-17; top check value 5: at 36 high 15 are needed, at 42 high 12 are enough.
    #[test]
    fn knees_need_more_depth_at_a_lower_counter() {
        island("height: 36\", knee depth: 12\"").finds_one().weighs("query");
        island("height: 36\", knee depth: 15\"").stays_silent();
        island("height: 42\", knee depth: 12\"").stays_silent();
        island("height: 42\", knee depth: 11\"").finds_one();
    }
}
